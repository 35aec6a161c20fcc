/// The bound, checked and compiled workbook in evaluation order, and its evaluation. Only this folder knows
/// the order.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "check/checker.h"
#include "recalc/values.h"
#include "sheet/workbook.h"

namespace puteal
{

/// State of a cell against its limit, in the order of the choice list state() gives.
enum class LimitState : std::uint8_t { within, near, outside, noLimit, missingTest };
/// The words of that list: within, near, outside, no limit, missing test.
const std::vector<std::string> &limitStateWords();

/// What a hidden node is for.
enum class NodeRole : std::uint8_t {
    cell,
    limitLow,
    limitHigh,
    state,
    expectation,
    expectationReference,
    chartReference
};

/// Static facts of one node after binding, checking and compiling.
struct NodeFacts {
    NodeRole role = NodeRole::cell;
    CellAt at; ///< the cell it is or belongs to
    bool isFormula = false;
    StaticType type;
    Unit shown;
    std::optional<Error> error;       ///< parse, bind or check error, or circular
    std::vector<Caution> cautions;    ///< static ones
    std::shared_ptr<const Tree> tree; ///< formulas (null when it does not parse)
    std::shared_ptr<const Binding> binding;
    std::shared_ptr<const Checked> checked;
};

/// Exact counts for tests and benches.
struct EvaluationCounts {
    std::size_t compiledShapes = 0;
    std::size_t evaluated = 0;
};

/// One input replaced for an evaluation (--set, studies): typed text read as if typed into the cell.
struct Override {
    CellAt at;
    std::string text;
};

/// What an update or evaluation changed.
struct Changed {
    std::vector<NodeId> nodes; ///< value, kind, cautions, error or reason differ from before; sorted
    EvaluationCounts counts;
};

/// Immutable to the outside except through `update`. Not thread-safe for update; evaluate on a const Program
/// may run in several threads (each with its own Values).
class Program
{
public:
    /// Builds everything. Never fails: what cannot be bound or checked is an error at its node.
    static std::unique_ptr<Program> build(const Workbook &workbook, const UnitTable &units,
                                          std::shared_ptr<const Registry> registry);
    virtual ~Program() = default;

    /// Cells were edited (text or attributes) but no line, column or sheet moved: re-reads those cells,
    /// re-checks what depends on them where types changed, recalculates what depends on them into `values`.
    virtual Changed update(const Workbook &workbook, const std::vector<CellAt> &edited, Values &values) = 0;

    /// Full evaluation.
    virtual Values evaluate() const = 0;
    /// Full evaluation with inputs replaced; an override that changes a type re-checks in a copy. Errors: no
    /// such cell, text that cannot be read there, a formula where a value is wanted, unit that does not fit
    /// the set unit.
    virtual Result<Values> evaluate(const std::vector<Override> &overrides) const = 0;
    /// Evaluates into existing Values after overriding plain numbers of typed quantity cells (base units), by
    /// cut-off; for studies and properties. Cells must be typed values of unchanged type.
    virtual Changed evaluateNumbers(const std::vector<std::pair<CellAt, double>> &numbers,
                                    Values &values) const = 0;

    virtual std::size_t nodeCount() const = 0;
    /// noNode outside; the cells of a column follow one another.
    virtual NodeId nodeOf(const CellAt &at) const = 0;
    virtual CellAt cellOf(NodeId node) const = 0; ///< the cell it is or belongs to
    virtual const StaticType &typeOf(NodeId node) const = 0;
    virtual bool isFormula(NodeId node) const = 0;
    /// Everything known of a node, told once and kept until the next update: for few nodes, not for all.
    virtual const NodeFacts &facts(NodeId node) const = 0;
    virtual NodeId limitLow(const CellAt &at) const = 0;  ///< also the single bound of <=, >= ...
    virtual NodeId limitHigh(const CellAt &at) const = 0; ///< of low .. high
    virtual NodeId stateNode(const CellAt &at) const = 0; ///< noNode without a limit
    /// Cells a cell's formula (and its limit) reads; cells that read it. Ranges are expanded up to `most`.
    virtual std::vector<CellAt> precedents(const CellAt &at, std::size_t most = 1000) const = 0;
    virtual std::vector<CellAt> dependents(const CellAt &at, std::size_t most = 1000) const = 0;
    /// Sheets (index pairs from, to) between which some cell refers.
    virtual std::vector<std::pair<std::uint32_t, std::uint32_t>> sheetEdges() const = 0;

    virtual LimitState state(const CellAt &at, const Values &values) const = 0;
    /// The error a cell shows: its own, or "waits for `x`" naming the origin cell.
    virtual std::optional<Error> errorOf(NodeId node, const Values &values) const = 0;

    /// Checks and evaluates a formula or typed text as if it stood in `at`, without changing anything (slip
    /// preview).
    struct Preview {
        std::optional<Error> error;
        std::shared_ptr<const Tree> tree;
        std::shared_ptr<const Binding> binding;
        std::shared_ptr<const Checked> checked;
        StaticType type;
        Unit shown;
        double number = 0.0;
        std::string words;
        std::vector<Caution> cautions;
        std::string reason;
    };
    /// A piece of a formula is looked at with the cell's set unit ignored; a limit must fit its cell.
    enum class Whole : std::uint8_t { formula, piece, limit };
    virtual Preview preview(const Workbook &workbook, const CellAt &at, std::string_view text,
                            const Values &values, Whole whole = Whole::formula) const = 0;

    virtual const ChoiceLists &lists() const = 0;
    virtual const UnitTable &units() const = 0;
    virtual const Registry &registry() const = 0;

    /// One expectation after evaluation.
    struct ExpectationResult {
        std::uint32_t sheet = 0, index = 0;
        bool met = false;
        std::string
            words; ///< "setting is 25 gpg as expected" / "setting is 24 gpg, expected 25 gpg within 1 %"
        std::optional<Error> error;
    };
    virtual std::vector<ExpectationResult> expectations(const Workbook &workbook,
                                                        const Values &values) const = 0;
};

} // namespace puteal
