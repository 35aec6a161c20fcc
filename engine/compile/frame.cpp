/// Running one compiled formula: slots filled, expression run, reasons read, rule for bounded readings noted.
#include "compile/frame.h"

#include <fmt/format.h>

#include <cmath>

#include "compile/error_number.h"

namespace puteal
{

void EvalFrame::begin(const CompiledFormula &compiled, const std::uint32_t *nodes)
{
    formula = &compiled;
    operands = nodes;
    errors.clear();
    cautions.clear();
    sites.assign(compiled.sites.size(), SiteOutcome{});
    usedRule = false;
}

double EvalFrame::failed(Error error)
{
    const ErrorKind kind = error.kind;
    if (errors.size() < 4000)
        errors.push_back(std::move(error));
    return errorNumber(kind, originHere, static_cast<std::uint32_t>(errors.size()));
}

double EvalFrame::ruled(double x, Bound bound)
{
    if (bound == Bound::exact || std::isnan(x))
        return x;
    usedRule = true;
    if (bound == Bound::above)
        return x * aboveFactor;
    return below == BelowRule::bound ? x : below == BelowRule::half ? x / 2 : 0.0;
}

double runFrame(EvalFrame &frame, Shape &shape)
{
    const CompiledFormula &formula = *frame.formula;
    double *slot = shape.operands();
    for (std::uint32_t k = 0; k < formula.loaded; ++k) {
        const std::uint32_t node = frame.operands[k];
        const double x = frame.number[node];
        slot[k] = formula.operands[k].use == OperandUse::byRule && frame.bounds
                      ? frame.ruled(x, static_cast<Bound>(frame.bounds[node]))
                      : x;
    }
    ShapeCache &cache = ShapeCache::ofThread();
    EvalFrame *outer = cache.frame;
    cache.frame = &frame;
    frame.shape = &shape;
    const double value = shape.eval();
    cache.frame = outer;
    return value;
}

double evaluateFailure(EvalFrame &frame, std::uint32_t failure)
{
    if (!frame.formula)
        return errorNumber(ErrorKind::waiting, originHere);
    return frame.failed(*frame.formula->checked->nodes[frame.formula->failures[failure]].error);
}

double evaluatePiece(const EvalFrame &frame, NodeIndex node)
{
    const CompiledFormula &whole = *frame.formula;
    const auto piece = compileFormula(whole.tree, whole.checked, *whole.registry, node);
    if (!piece)
        return errorNumber(ErrorKind::limit, originHere);
    const CompiledFormula &part = **piece;
    std::vector<std::uint32_t> nodes;
    for (const Operand &operand : part.operands) {
        int slot = whole.slotOf(operand.reference, operand.use);
        if (slot < 0) // the whole reads it in another way only
            slot = whole.slotOf(operand.reference,
                                operand.use == OperandUse::plain ? OperandUse::byRule : OperandUse::plain);
        if (slot < 0)
            return errorNumber(ErrorKind::waiting, originHere);
        nodes.push_back(frame.operands[slot]);
    }
    for (const std::uint32_t reference : part.ranges)
        for (std::size_t r = 0; r < whole.ranges.size(); ++r)
            if (whole.ranges[r] == reference) {
                nodes.push_back(frame.rangeFirst(static_cast<int>(r)));
                nodes.push_back(frame.rangeCount(static_cast<int>(r)));
            }
    EvalFrame inner;
    inner.number = frame.number;
    inner.bounds = frame.bounds;
    inner.host = frame.host;
    inner.below = frame.below;
    inner.begin(part, nodes.data());
    return runFrame(inner, ShapeCache::ofThread().get(part.shape));
}

std::uint32_t reasonOfPiece(const EvalFrame &frame, NodeIndex n)
{
    const Tree &tree = *frame.formula->tree;
    const Node &node = tree.nodes[n];
    const std::int32_t place = frame.formula->placeOf[n];
    if (node.kind == NodeKind::reference) {
        const std::uint32_t reference = frame.formula->firstAlike(node.extra);
        for (const OperandUse use : {OperandUse::plain, OperandUse::byRule})
            if (const int slot = frame.formula->slotOf(reference, use); slot >= 0)
                return frame.host->reasonOf(frame.operands[slot]);
        return 0;
    }
    if (node.kind == NodeKind::convert)
        return reasonOfPiece(frame, node.children[0]);
    if (node.kind == NodeKind::ternary && place >= 0) {
        const double test = frame.shape->kept()[place];
        return std::isnan(test) ? 0 : reasonOfPiece(frame, node.children[test != 0.0 ? 1 : 2]);
    }
    if (node.kind != NodeKind::call)
        return 0;
    const CheckedNode &checked = frame.formula->checked->nodes[n];
    switch (checked.function->general) {
    case General::because: {
        const double words = evaluatePiece(frame, checked.arguments[1].node);
        return std::isnan(words) ? 0 : static_cast<std::uint32_t>(words);
    }
    case General::ifError:
        return place < 0
                   ? 0
                   : reasonOfPiece(frame,
                                   checked.arguments[std::isfinite(frame.shape->kept()[place]) ? 0 : 1].node);
    default:
        break;
    }
    if (place < 0 || checked.function->general == General::why)
        return 0;
    const SiteOutcome &outcome = frame.sites[static_cast<std::size_t>(place)];
    if (outcome.node != noCell)
        return frame.host->reasonOf(outcome.node);
    if (outcome.decided >= 0)
        return reasonOfPiece(frame, checked.arguments[static_cast<std::size_t>(outcome.decided)].node);
    return outcome.reason;
}

namespace
{

/// Does another reading of the bounds move the result by more than 1 %?
bool moves(const EvalFrame &frame, double result, double other)
{
    if (std::isnan(other))
        return true;
    if (frame.formula->checked->nodes[frame.formula->root].type.kind != ValueKind::quantity)
        return other != result;
    return std::fabs(other - result) > 0.01 * std::max(std::fabs(result), std::fabs(other));
}

std::string readingWords(const EvalFrame &frame)
{
    std::vector<std::string> names;
    for (std::uint32_t k = 0; k < frame.formula->loaded; ++k)
        if (frame.formula->operands[k].use == OperandUse::byRule && frame.bounds &&
            frame.bounds[frame.operands[k]] != 0)
            names.push_back("`" + frame.host->cellWords(frame.operands[k]) + "`");
    if (names.empty())
        return "readings known only as a bound count";
    if (names.size() > 3)
        return fmt::format("{}, {} and {} more are known only as a bound and count", names[0], names[1],
                           names.size() - 2);
    return joined(names) + (names.size() == 1 ? " is known only as a bound and counts"
                                              : " are known only as a bound and count");
}

} // namespace

void noteRule(EvalFrame &frame, Shape &shape, double result)
{
    if (std::isnan(result))
        return;
    for (const BelowRule rule : {BelowRule::zero, BelowRule::bound}) {
        EvalFrame other;
        other.number = frame.number;
        other.bounds = frame.bounds;
        other.host = frame.host;
        other.below = rule;
        other.aboveFactor =
            rule == BelowRule::zero ? 1.0 : 2.0; // "above" has no far end: twice stands for it
        other.begin(*frame.formula, frame.operands);
        if (!moves(frame, result, runFrame(other, shape)))
            continue;
        const std::string_view as = frame.below == BelowRule::bound  ? "at the bound"
                                    : frame.below == BelowRule::half ? "at half the bound"
                                                                     : "as zero";
        frame.cautions.push_back(
            {"bounded_reading",
             fmt::format("{} {}; that moves the result by more than 1 %: ask for a finer test",
                         readingWords(frame), as),
             {}});
        return;
    }
}

} // namespace puteal
