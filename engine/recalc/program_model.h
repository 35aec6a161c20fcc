/// The program behind its interface: a model and the facts told about it.
#pragma once

#include <mutex>

#include "recalc/evaluator.h"

namespace puteal
{

class ProgramModel final : public Program
{
public:
    explicit ProgramModel(Model model) : m_model(std::move(model)) {}

    Changed update(const Workbook &workbook, const std::vector<CellAt> &edited, Values &values) override;
    Values evaluate() const override;
    Result<Values> evaluate(const std::vector<Override> &overrides) const override;
    Changed evaluateNumbers(const std::vector<std::pair<CellAt, double>> &numbers,
                            Values &values) const override;

    std::size_t nodeCount() const override { return m_model.nodes(); }
    NodeId nodeOf(const CellAt &at) const override { return m_model.layout.nodeOf(at); }
    CellAt cellOf(NodeId node) const override { return m_model.cellOf(node); }
    const StaticType &typeOf(NodeId node) const override { return m_model.typeOf(node).type; }
    bool isFormula(NodeId node) const override;
    const NodeFacts &facts(NodeId node) const override;
    NodeId limitLow(const CellAt &at) const override { return limitNodes(at).low; }
    NodeId limitHigh(const CellAt &at) const override { return limitNodes(at).high; }
    NodeId stateNode(const CellAt &at) const override { return limitNodes(at).state; }
    std::vector<CellAt> precedents(const CellAt &at, std::size_t most) const override;
    std::vector<CellAt> dependents(const CellAt &at, std::size_t most) const override;
    std::vector<std::pair<std::uint32_t, std::uint32_t>> sheetEdges() const override;

    LimitState state(const CellAt &at, const Values &values) const override;
    std::optional<Error> errorOf(NodeId node, const Values &values) const override;
    Preview preview(const Workbook &workbook, const CellAt &at, std::string_view text, const Values &values,
                    Whole whole) const override;
    std::vector<ExpectationResult> expectations(const Workbook &workbook,
                                                const Values &values) const override;

    const ChoiceLists &lists() const override { return m_model.lists; }
    const UnitTable &units() const override { return m_model.units; }
    const Registry &registry() const override { return *m_model.registry; }

private:
    LimitNodes limitNodes(const CellAt &at) const;
    NodeFacts factsOf(NodeId node) const;

    Model m_model;
    mutable std::mutex m_factsMutex;
    mutable std::unordered_map<NodeId, std::unique_ptr<const NodeFacts>> m_facts; ///< told so far
};

/// A formula that stands in no cell, worked out with given values.
struct LooseResult {
    std::optional<Error> error;
    std::shared_ptr<const Tree> tree;
    std::shared_ptr<const Binding> binding;
    std::shared_ptr<const Checked> checked;
    double number = 0.0;
    std::string words, reason;
    std::vector<Caution> cautions;
};
/// `context` says what is wanted; `node` is the cell whose place it takes, noNode for none (no circle is
/// looked for).
LooseResult workLoose(const Model &model, const Values &values, Tree tree, const CheckContext &context,
                      NodeId node);

/// "waits for `filter_area`" of an error number that came from elsewhere.
Error waitingFor(const Model &model, double number, std::uint32_t fromSheet);

// update.cpp
Changed updateModel(Model &model, const Workbook &workbook, const std::vector<CellAt> &edited,
                    Values &values);

} // namespace puteal
