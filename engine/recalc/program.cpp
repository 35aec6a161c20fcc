/// The program behind its interface: building, evaluating, facts of nodes.
#include "recalc/program.h"

#include <cmath>

#include <fmt/format.h>

#include "compile/error_number.h"
#include "recalc/program_model.h"

namespace puteal
{

const std::vector<std::string> &limitStateWords()
{
    static const std::vector<std::string> words{"within", "near", "outside", "no limit", "missing test"};
    return words;
}

std::unique_ptr<Program> Program::build(const Workbook &workbook, const UnitTable &units,
                                        std::shared_ptr<const Registry> registry)
{
    return std::make_unique<ProgramModel>(buildModel(workbook, units, std::move(registry)));
}

Values ProgramModel::evaluate() const
{
    Values values;
    Evaluator evaluator(m_model, values);
    evaluator.fill();
    evaluator.workAll();
    return values;
}

Changed ProgramModel::evaluateNumbers(const std::vector<std::pair<CellAt, double>> &numbers,
                                      Values &values) const
{
    Evaluator evaluator(m_model, values);
    for (const auto &[at, number] : numbers) {
        const NodeId node = m_model.layout.nodeOf(at);
        if (node != noNode && m_model.content[node] == Content::number && evaluator.setNumber(node, number))
            evaluator.wake(node);
    }
    evaluator.sweep();
    return std::move(evaluator).take();
}

Changed ProgramModel::update(const Workbook &workbook, const std::vector<CellAt> &edited, Values &values)
{
    {
        const std::lock_guard<std::mutex> lock(m_factsMutex);
        m_facts.clear();
    }
    return updateModel(m_model, workbook, edited, values);
}

LimitNodes ProgramModel::limitNodes(const CellAt &at) const
{
    const auto known = m_model.limits.find(m_model.layout.nodeOf(at));
    return known == m_model.limits.end() ? LimitNodes{} : known->second;
}

const NodeFacts &ProgramModel::facts(NodeId node) const
{
    const std::lock_guard<std::mutex> lock(m_factsMutex);
    std::unique_ptr<const NodeFacts> &known = m_facts[node];
    if (!known)
        known = std::make_unique<const NodeFacts>(factsOf(node));
    return *known;
}

bool ProgramModel::isFormula(NodeId node) const
{
    if (m_model.tree[node] != 0)
        return true;
    return m_model.content[node] == Content::failed && facts(node).isFormula;
}

NodeFacts ProgramModel::factsOf(NodeId node) const
{
    NodeFacts facts;
    if (node >= m_model.nodes())
        return facts;
    facts.role = m_model.roleOf(node);
    facts.at = m_model.cellOf(node);
    const CellType &type = m_model.typeOf(node);
    facts.type = type.type;
    facts.shown = type.shown;
    if (const auto error = m_model.errors.find(node); error != m_model.errors.end())
        facts.error = error->second;
    if (const auto notes = m_model.notes.find(node); notes != m_model.notes.end())
        facts.cautions = notes->second;
    facts.tree = m_model.texts[m_model.tree[node]].tree;
    facts.isFormula = facts.tree != nullptr;
    if (facts.tree) {
        if (auto binding = bindAt(m_model, *facts.tree, facts.at))
            facts.binding = std::make_shared<const Binding>(std::move(*binding));
        if (m_model.content[node] != Content::formula) // else the check has them
            facts.cautions = facts.tree->notes;
    }
    if (m_model.content[node] == Content::formula) {
        facts.checked = m_model.entries[m_model.entry[node]].checked;
        facts.cautions.insert(facts.cautions.end(), facts.checked->cautions.begin(),
                              facts.checked->cautions.end());
    }
    if (m_model.content[node] == Content::failed && m_model.isCell(node)) {
        // What does not parse was still meant as a formula.
        const Sheet &sheet = m_model.book.sheets[facts.at.sheet];
        const CellContext context = contextOf(m_model, facts.at);
        if (!facts.isFormula && !context.error) {
            const auto typed =
                readTyped(sheet.cell(facts.at.column, facts.at.line).typed(),
                          TypedContext{&m_model.units, &m_model.lists, context.list, context.setUnit});
            facts.isFormula = typed && typed->form == TypedForm::formula;
        }
        if (context.setUnit)
            facts.shown = *context.setUnit;
    }
    return facts;
}

LimitState ProgramModel::state(const CellAt &at, const Values &values) const
{
    const NodeId node = limitNodes(at).state;
    if (node == noNode)
        return LimitState::noLimit;
    const double number = values.number[node];
    return std::isnan(number) ? LimitState::missingTest : static_cast<LimitState>(static_cast<int>(number));
}

} // namespace puteal
