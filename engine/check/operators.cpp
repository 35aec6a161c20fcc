/// Comparison, and, or, power; what may stand beside an operator at all.
#include <cmath>

#include <fmt/format.h>

#include "base/text.h"
#include "check/advice.h"
#include "check/clash.h"
#include "check/fixes.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

bool isOrder(Op op)
{
    return op == Op::less || op == Op::atMost || op == Op::greater || op == Op::atLeast;
}

Done checkLogical(Draft &draft, NodeIndex i)
{
    const std::string word = draft.node(i).op == Op::logicalAnd ? "and" : "or";
    for (const NodeIndex side : draft.node(i).children) {
        // the right side may not be needed, so a blank there is no error yet
        const bool first = side == draft.child(i, 0);
        if (Done done = first ? checkNode(draft, side) : checkTolerant(draft, side, 0, false); !done)
            return done;
        if (draft.at(side).error)
            continue;
        if (Done done = needYesNo(draft, side, fmt::format("on both sides of {} stands a yes/no", word));
            !done)
            return done;
    }
    draft.setKind(i, ValueKind::yesNo);
    return {};
}

Done noOrder(const Draft &draft, NodeIndex i, NodeIndex a)
{
    const Node &node = draft.node(i);
    const std::string op = draft.tree.text.substr(node.opSpan.begin, node.opSpan.end - node.opSpan.begin);
    const ValueKind kind = draft.kind(a);
    if (kind == ValueKind::choice)
        return fail(ErrorKind::kind, fmt::format("choices have no {}: compare with == or use worst(...)", op),
                    node.opSpan);
    return fail(ErrorKind::kind,
                fmt::format("{} no {}: compare with == or !=",
                            kind == ValueKind::yesNo ? "yes/no has" : "words have", op),
                node.opSpan);
}

/// The value of a formula of bare numbers, as an exponent may be.
std::optional<double> constantNumber(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    if (node.kind == NodeKind::number && draft.quantity(i).isPure())
        return node.number;
    if (node.kind == NodeKind::negate) {
        const auto inner = constantNumber(draft, node.children[0]);
        return inner ? std::optional<double>(-*inner) : std::nullopt;
    }
    if (node.kind != NodeKind::binary)
        return std::nullopt;
    const auto a = constantNumber(draft, node.children[0]), b = constantNumber(draft, node.children[1]);
    if (!a || !b)
        return std::nullopt;
    switch (node.op) {
    case Op::add:
        return *a + *b;
    case Op::subtract:
        return *a - *b;
    case Op::multiply:
        return *a * *b;
    case Op::divide:
        return *a / *b;
    default:
        return std::nullopt;
    }
}

/// Numerator over 6 of an exponent in sixths; none when it is none.
std::optional<int> sixths(double exponent)
{
    const double scaled = exponent * 6;
    const double whole = std::round(scaled);
    if (!(std::abs(scaled - whole) < 1e-9) || std::abs(whole) > 120)
        return std::nullopt;
    return static_cast<int>(whole);
}

tl::unexpected<Error> powerNeedsPure(const Draft &draft, NodeIndex i)
{
    const NodeIndex base = draft.child(i, 0), exponent = draft.child(i, 1);
    const Unit &unit = draft.at(base).shown;
    const std::string divided = fmt::format("({} / (1 {}))", wrapped(draft, base), unit.text);
    Error error{
        ErrorKind::unit,
        fmt::format("a power like {} needs a pure number on its left: divide by a unit first, as in {}^{}",
                    brief(draft, exponent), divided, source(draft, exponent)),
        {},
        Place{draft.span(base), draft.span(exponent), 0}};
    if (!unit.text.empty())
        offer(draft, error, "write " + divided, draft.span(base), divided);
    return tl::unexpected<Error>(std::move(error));
}

/// `has_softener == "yes"`: the quotes make words of it.
tl::unexpected<Error> otherKind(const Draft &draft, NodeIndex a, NodeIndex b)
{
    Error error{ErrorKind::kind,
                fmt::format("cannot compare {} and {}", named(draft, a), named(draft, b)),
                {},
                Place{draft.span(b), draft.span(a), 0}};
    for (const auto &[words, other] : {std::pair{a, b}, std::pair{b, a}}) {
        const Node &node = draft.node(words);
        if (node.kind != NodeKind::words || draft.kind(other) != ValueKind::yesNo)
            continue;
        if (node.name == "yes" || node.name == "no")
            offerAloud(draft, error, fmt::format("write {} without quotes", node.name), draft.span(words),
                       node.name);
    }
    return tl::unexpected<Error>(std::move(error));
}

Done compareKinds(Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    if (Done done = shareChoices(draft, a, b); !done)
        return done;
    const StaticType &left = draft.at(a).type, &right = draft.at(b).type;
    if (left.kind != right.kind)
        return otherKind(draft, a, b);
    if (left.list != right.list)
        return failOver(ErrorKind::kind,
                        fmt::format("cannot compare {} ({}) and {} ({}): they are choices of two lists",
                                    quotedPiece(draft, a), listWords(draft, left.list), quotedPiece(draft, b),
                                    listWords(draft, right.list)),
                        draft.span(b), draft.span(a));
    if (isOrder(draft.node(i).op) && left.kind != ValueKind::quantity && left.kind != ValueKind::date)
        return noOrder(draft, i, a);
    return {};
}

} // namespace

Done needAmount(const Draft &draft, NodeIndex i, const std::string &deed)
{
    const ValueKind kind = draft.kind(i);
    if (kind == ValueKind::quantity)
        return {};
    Error error{
        ErrorKind::kind, fmt::format("cannot {} {}", deed, named(draft, i)), {}, Place{draft.span(i), {}, 0}};
    if (kind == ValueKind::words) {
        error.words += ": words are no amount; to show a value inside words put the cell in braces, as in "
                       "\"{name}\"";
    } else if (kind == ValueKind::yesNo) {
        const std::string text = "(" + source(draft, i) + " ? 1 : 0)";
        error.words += ": yes/no is not a number; to count it write " + text;
        offer(draft, error, "write " + text, draft.span(i), text);
    } else if (kind == ValueKind::choice) {
        error.words += ": a choice is not a number";
    }
    return tl::unexpected<Error>(std::move(error));
}

Done checkComparison(Draft &draft, NodeIndex i)
{
    const NodeIndex a = draft.child(i, 0), b = draft.child(i, 1);
    if (Done done = checkNode(draft, a); !done)
        return done;
    if (Done done = checkNode(draft, b); !done)
        return done;
    if (Done done = compareKinds(draft, i, a, b); !done)
        return done;
    if (draft.kind(a) == ValueKind::quantity)
        if (const Misfit misfit = agree(draft, a, b, Adopt::cells); misfit != Misfit::none)
            return clash(draft, Verb::compare, i, a, b, misfit);
    draft.setKind(i, ValueKind::yesNo);
    return {};
}

Done checkPower(Draft &draft, NodeIndex i)
{
    const NodeIndex base = draft.child(i, 0), exponent = draft.child(i, 1);
    for (const NodeIndex side : {base, exponent}) {
        if (Done done = checkNode(draft, side); !done)
            return done;
        if (Done done = needAmount(draft, side, "raise"); !done)
            return done;
    }
    if (!draft.quantity(exponent).isPure())
        return fail(ErrorKind::unit, fmt::format("a power is a pure number, not {}", named(draft, exponent)),
                    draft.span(exponent));
    const QuantityType type = draft.quantity(base);
    if (type.isPure()) {
        draft.setQuantity(i, type);
        return {};
    }
    if (type.scale != Scale::plain)
        return fail(ErrorKind::unit,
                    fmt::format("cannot raise {}: it is a reading on a scale", named(draft, base)),
                    draft.span(base));
    const auto constant = constantNumber(draft, exponent);
    const auto top = constant ? sixths(*constant) : std::nullopt;
    QuantityType raised;
    if (!top || !raise(type, *top, 6, raised))
        return powerNeedsPure(draft, i);
    draft.setQuantity(i, raised);
    return {};
}

Done checkBinary(Draft &draft, NodeIndex i)
{
    switch (draft.node(i).op) {
    case Op::add:
    case Op::subtract:
        return checkSum(draft, i);
    case Op::multiply:
    case Op::divide:
        return checkMultiply(draft, i);
    case Op::power:
        return checkPower(draft, i);
    case Op::logicalAnd:
    case Op::logicalOr:
        return checkLogical(draft, i);
    default:
        return checkComparison(draft, i);
    }
}

} // namespace puteal::checking
