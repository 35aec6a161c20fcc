/// Why a result is an error: the smallest piece that is not finite, and a sentence with the value that caused
/// it.
#include <fmt/format.h>

#include <cmath>

#include "compile/error_number.h"
#include "compile/frame.h"
#include "compile/shown_text.h"

namespace puteal
{

namespace
{

bool arisesHere(double value)
{
    return std::isinf(value) || (std::isnan(value) && errorOrigin(value) == originHere);
}

/// Finds the piece whose own operation fails: all it is worked out from is fine.
class Search
{
public:
    explicit Search(const EvalFrame &frame) : m_frame(frame), m_tree(*frame.formula->tree) {}

    NodeIndex smallest(NodeIndex n) const
    {
        for (const NodeIndex child : usedBy(n))
            if (arisesHere(value(child)))
                return smallest(child);
        return n;
    }
    double value(NodeIndex n) const { return evaluatePiece(m_frame, n); }

private:
    /// Pieces that count for the value of n, in the order they are worked out.
    std::vector<NodeIndex> usedBy(NodeIndex n) const
    {
        const Node &node = m_tree.nodes[n];
        const CheckedNode &checked = m_frame.formula->checked->nodes[n];
        if (checked.error)
            return {};
        if (node.kind == NodeKind::ternary) {
            const double test = value(node.children[0]);
            if (std::isnan(test))
                return {node.children[0]};
            return {node.children[test != 0.0 ? 1 : 2]};
        }
        if (node.kind == NodeKind::binary && (node.op == Op::logicalAnd || node.op == Op::logicalOr)) {
            const double first = value(node.children[0]);
            if (std::isnan(first) || (first != 0.0) == (node.op == Op::logicalOr))
                return {node.children[0]};
            return {node.children[1]};
        }
        if (node.kind != NodeKind::call)
            return node.children;
        if (checked.function->general == General::ifError)
            return {checked.arguments[1].node};
        std::vector<NodeIndex> used;
        for (const ArgumentPlan &plan : checked.arguments)
            if (plan.from == ArgumentPlan::From::node)
                used.push_back(plan.node);
        return used;
    }

    const EvalFrame &m_frame;
    const Tree &m_tree;
};

/// Tells a value after a piece in words: ": `flow` is 0 gpm", nothing after a literal.
std::string because(const EvalFrame &frame, NodeIndex n, double value)
{
    const Tree &tree = *frame.formula->tree;
    const NodeIndex inner = tree.nodes[n].kind == NodeKind::negate ? tree.nodes[n].children[0] : n;
    if (tree.nodes[inner].kind == NodeKind::number)
        return {}; // a literal says it itself
    return fmt::format(": `{}` is {}", pieceText(frame, n), shownPiece(frame, n, value));
}

Error at(const EvalFrame &frame, NodeIndex n, std::string words)
{
    return Error{
        ErrorKind::notFinite, std::move(words), {}, Place{frame.formula->tree->nodes[n].span, {}, 0}};
}

Error ofCall(const EvalFrame &frame, const Search &search, NodeIndex n)
{
    const CheckedNode &checked = frame.formula->checked->nodes[n];
    const NodeIndex first = checked.arguments.front().node;
    const double x = search.value(first);
    switch (checked.function->general) {
    case General::sqrt:
        return at(frame, first, "root of a negative number" + because(frame, first, x));
    case General::ln:
    case General::log10:
        return at(frame, first,
                  (x == 0.0 ? "logarithm of zero" : "logarithm of a negative number") +
                      because(frame, first, x) + "; a logarithm needs a number above 0");
    case General::asin:
    case General::acos:
        return at(frame, first, "an angle needs a number from -1 to 1" + because(frame, first, x));
    case General::roundTo:
    case General::ceilTo:
    case General::floorTo: {
        const NodeIndex step = checked.arguments[1].node;
        return at(frame, step, "a step must be above 0" + because(frame, step, search.value(step)));
    }
    case General::clamp: {
        const NodeIndex low = checked.arguments[1].node;
        return at(frame, low,
                  "the lower end lies above the upper end" + because(frame, low, search.value(low)));
    }
    default:
        return at(frame, n, "the result is too large to be worked out");
    }
}

Error ofOperation(const EvalFrame &frame, const Search &search, NodeIndex n)
{
    const Node &node = frame.formula->tree->nodes[n];
    if (node.kind == NodeKind::call)
        return ofCall(frame, search, n);
    if (frame.formula->checked->nodes[n].type.kind == ValueKind::date)
        return at(frame, n, "this date lies outside the calendar: years go from 1 to 9999");
    if (node.kind == NodeKind::binary && node.op == Op::divide) {
        const NodeIndex divisor = node.children[1];
        const double by = search.value(divisor);
        if (by == 0.0)
            return at(frame, divisor, "divides by zero" + because(frame, divisor, by));
    }
    if (node.kind == NodeKind::binary && node.op == Op::power) {
        const double base = search.value(node.children[0]), exponent = search.value(node.children[1]);
        if (base == 0.0 && exponent < 0.0)
            return at(frame, node.children[0],
                      "divides by zero: zero to a negative power" + because(frame, node.children[0], base));
        if (base < 0.0 && exponent != std::floor(exponent))
            return at(frame, node.children[0],
                      "root of a negative number: a power that is no whole number" +
                          because(frame, node.children[0], base));
    }
    return at(frame, n, "the result is too large to be worked out");
}

/// "`<0.02 mg/L` does not show whether it is `<= 0.010 mg/L`; ask for a finer test"
Error undecided(const EvalFrame &frame, const Search &search, NodeIndex n)
{
    static constexpr std::string_view signs[] = {"==", "!=", "<", "<=", ">", ">="};
    static constexpr std::string_view turned[] = {"==", "!=", ">", ">=", "<", "<="};
    const Node &node = frame.formula->tree->nodes[n];
    Error error{ErrorKind::undecided, {}, {}, Place{node.span, {}, 0}};
    if (node.kind != NodeKind::binary || node.op < Op::equal || node.op > Op::atLeast) {
        error.words = "a reading known only as a bound does not decide this; ask for a finer test";
        return error;
    }
    const auto sign = static_cast<std::size_t>(node.op) - static_cast<std::size_t>(Op::equal);
    const bool leftIsBound = frame.formula->checked->nodes[node.children[0]].type.bound != Bound::exact;
    const NodeIndex reading = node.children[leftIsBound ? 0 : 1], other = node.children[leftIsBound ? 1 : 0];
    error.words =
        fmt::format("`{}` does not show whether it is `{} {}`; ask for a finer test",
                    shownPiece(frame, reading, search.value(reading)),
                    leftIsBound ? signs[sign] : turned[sign], shownPiece(frame, other, search.value(other)));
    error.place.span = frame.formula->tree->nodes[reading].span;
    return error;
}

} // namespace

Verdict verdictOf(const EvalFrame &frame, double result, std::uint32_t self)
{
    if (std::isinf(result))
        return {ErrorKind::notFinite, errorNumber(ErrorKind::notFinite, self)};
    const ErrorKind kind = errorKind(result);
    const std::uint32_t origin = errorOrigin(result);
    if (origin == originHere)
        return {kind, errorNumber(kind, self)};
    ErrorKind status = ErrorKind::waiting;
    if (kind == ErrorKind::blank)
        for (std::size_t k = 0; k < frame.formula->operands.size(); ++k)
            if (frame.operands[k] == origin && frame.formula->operands[k].use != OperandUse::state)
                status = ErrorKind::blank;
    return {status, errorNumber(kind, origin)};
}

Error describeFailure(const EvalFrame &frame, double result)
{
    const ErrorKind kind = std::isinf(result) ? ErrorKind::notFinite : errorKind(result);
    const std::uint32_t origin = std::isinf(result) ? originHere : errorOrigin(result);
    if (origin == originHere) {
        if (const std::uint32_t index = errorIndex(result);
            std::isnan(result) && index > 0 && index <= frame.errors.size())
            return frame.errors[index - 1];
        const Search search(frame);
        const NodeIndex n = search.smallest(frame.formula->root);
        if (kind == ErrorKind::undecided)
            return undecided(frame, search, n);
        if (kind == ErrorKind::limit)
            return Error{kind,
                         "the formula is too long to be worked out: put a part of it in a cell of its own",
                         {},
                         {}};
        return ofOperation(frame, search, n);
    }
    Error error{kind, fmt::format("`{}` is blank", frame.host->cellWords(origin)), {}, {}};
    const Tree &tree = *frame.formula->tree;
    for (const Node &node : tree.nodes)
        if (node.kind == NodeKind::reference) {
            const std::uint32_t reference = frame.formula->firstAlike(node.extra);
            for (std::size_t k = 0; k < frame.formula->operands.size(); ++k)
                if (frame.formula->operands[k].reference == reference && frame.operands[k] == origin) {
                    error.place.span = node.span;
                    return error;
                }
        }
    return error;
}

} // namespace puteal
