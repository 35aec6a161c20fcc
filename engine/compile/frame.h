/// One evaluation: the operands of the cell being worked out, and what it gives besides its number.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/text.h"
#include "compile/compile.h"
#include "sheet/workbook.h"

namespace puteal
{

/// How a cell shows its value.
struct ShownFacts {
    StaticType type;
    Unit unit;
    int figures = 0;
    int places = -1;
};

/// What an evaluation may ask about cells; nodes are the numbers the operands carry.
class EvalHost
{
public:
    virtual ~EvalHost() = default;
    virtual std::uint32_t intern(std::string_view words) = 0;
    virtual const std::string &words(std::uint32_t id) const = 0;
    virtual std::uint32_t reasonOf(std::uint32_t node) const = 0;
    virtual ShownFacts shownFacts(std::uint32_t node) const = 0;
    /// The item words of the cell's line, else its name or place: how people call it.
    virtual std::string label(std::uint32_t node) const = 0;
    /// Name, or key and line, without quotes: `raw_iron`, `cost[3]`, `costs.total`.
    virtual std::string cellWords(std::uint32_t node) const = 0;
    virtual const ChoiceLists &lists() const = 0;
    /// A day in base time.
    virtual double dayInBase() const = 0;
};

/// Compensated running figures of a range that starts at a node: extended, not begun again, by the next
/// longer range.
struct Fold {
    std::uint32_t done = 0;  ///< lines taken in
    std::uint32_t taken = 0; ///< of them not blank
    double sum = 0.0, rest = 0.0;
    double product = 1.0;
    double least = 0.0, most = 0.0;
    double error = 0.0; ///< the first error number when `failed`
    bool failed = false;
    bool usedRule = false;
    double total() const { return sum + rest; }
};
/// Valid for one pass in dependency order (a range is final before its first reader).
using FoldMemo = std::unordered_map<std::uint64_t, Fold>;

inline constexpr std::uint32_t noCell = 0xFFFFFFFFU;

/// Reason and deciding argument of one site.
struct SiteOutcome {
    std::uint32_t reason = 0;
    std::int32_t decided = -1;   ///< argument (worst)
    std::uint32_t node = noCell; ///< cell the value was taken from (pick, lookup, worst of a range)
};

struct EvalFrame {
    const CompiledFormula *formula = nullptr;
    const std::uint32_t *operands = nullptr; ///< node of each slot, then first node and count of each range
    const double *number = nullptr;          ///< by node
    const std::uint8_t *bounds = nullptr;    ///< Bound by node; null when the workbook has no bounded reading
    const Shape *shape = nullptr;            ///< kept values of the running expression
    EvalHost *host = nullptr;
    FoldMemo *folds = nullptr; ///< null: every range is begun anew
    BelowRule below = BelowRule::bound;
    double aboveFactor = 1.0; ///< what a reading above its bound is multiplied by

    std::vector<Error> errors; ///< by index of the error number
    std::vector<Caution> cautions;
    std::vector<SiteOutcome> sites;
    bool usedRule = false;

    void begin(const CompiledFormula &compiled, const std::uint32_t *nodes);
    /// Notes an error and gives its number.
    double failed(Error error);
    std::uint32_t rangeFirst(int range) const
    {
        return operands[formula->operands.size() + 2U * static_cast<std::size_t>(range)];
    }
    std::uint32_t rangeCount(int range) const
    {
        return operands[formula->operands.size() + 2U * static_cast<std::size_t>(range) + 1];
    }
    /// A reading by the workbook's rule.
    double ruled(double x, Bound bound);
};

/// Fills the slots and runs the expression. `shape` is the compiled formula's in this thread.
double runFrame(EvalFrame &frame, Shape &shape);

/// The trampolines behind `fn`, `wd` and `er`.
double evaluateSite(EvalFrame &frame, std::uint32_t site, const double *arguments, int count);
double evaluateWords(EvalFrame &frame, std::uint32_t words);
double evaluateFailure(EvalFrame &frame, std::uint32_t failure);

/// Value of the piece of the formula under `node`, operands as in `frame`. Slow: for messages and live words.
double evaluatePiece(const EvalFrame &frame, NodeIndex node);

/// Reason (words id) of the piece of the formula under `node` after it ran; 0 = none.
std::uint32_t reasonOfPiece(const EvalFrame &frame, NodeIndex node);

/// What the number of a result says about the cell, cheaply: status, and the number to store (errors that
/// arose here get `self` as origin; a reading of a blank cell keeps the blank cell).
struct Verdict {
    ErrorKind status = ErrorKind::none;
    double number = 0.0;
};
Verdict verdictOf(const EvalFrame &frame, double result, std::uint32_t self);

/// The full error behind a result that is an error of this cell (not for status waiting). Works it out anew.
Error describeFailure(const EvalFrame &frame, double result);

/// Adds the caution when the rule for bounded readings moves `result` by more than 1 %.
void noteRule(EvalFrame &frame, Shape &shape, double result);

} // namespace puteal
