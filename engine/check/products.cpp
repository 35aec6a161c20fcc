/// * and /: exponents add; what is left must still say of what it is an amount.
#include <fmt/format.h>

#include "check/advice.h"
#include "check/clash.h"
#include "check/fixes.h"
#include "check/shown_unit.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

/// Numbers, cells and calls under a product, from left to right.
void factors(const Draft &draft, NodeIndex i, std::vector<NodeIndex> &out)
{
    const Node &node = draft.node(i);
    const bool opens = node.kind == NodeKind::binary && (node.op == Op::multiply || node.op == Op::divide);
    if (!opens && node.kind != NodeKind::negate) {
        out.push_back(i);
        return;
    }
    for (const NodeIndex child : node.children)
        factors(draft, child, out);
}

/// The unit of a factor with one more tag, so that its tags account for its mass.
std::optional<Unit> toldUnit(const Draft &draft, NodeIndex factor, std::uint16_t substance)
{
    QuantityType type = draft.quantity(factor);
    type.substances.add(substance, missingTags(type));
    return retagged(draft.at(factor).shown, type, draft.units());
}

struct Untold {
    NodeIndex factor = 0;
    Unit unit; ///< as it should be written
};

/// The factor that does not say of what (literals first) and how to write it with a substance of the others.
std::optional<Untold> findUntold(const Draft &draft, NodeIndex i)
{
    std::vector<NodeIndex> all;
    factors(draft, i, all);
    std::vector<std::uint16_t> known;
    for (const NodeIndex factor : all)
        if (tagsFit(draft.quantity(factor)))
            for (const auto &[id, sixths] : draft.quantity(factor).substances.items())
                known.push_back(id);
    if (known.empty())
        for (const NodeIndex factor : all)
            for (const auto &[id, sixths] : draft.quantity(factor).substances.items())
                known.push_back(id);
    for (const bool literals : {true, false})
        for (const NodeIndex factor : all) {
            if (isLiteral(draft, factor) != literals || missingTags(draft.quantity(factor)) == 0)
                continue;
            for (const std::uint16_t substance : known)
                if (auto unit = toldUnit(draft, factor, substance))
                    return Untold{factor, *unit};
        }
    return std::nullopt;
}

tl::unexpected<Error> untold(const Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    const auto found = findUntold(draft, i);
    if (!found)
        return failOver(
            ErrorKind::substance,
            fmt::format("{} and {} do not say together what the result is an amount of: give each mass its "
                        "substance, or use plain(...)",
                        named(draft, a), named(draft, b)),
            draft.span(a), draft.span(b));
    const bool literal = isLiteral(draft, found->factor);
    const std::string unit = unitWords(draft, found->unit, found->unit.type);
    const std::string text = literal ? numberIn(draft, found->factor, found->unit) : unit;
    Error error{
        ErrorKind::substance,
        literal
            ? fmt::format("`{}` does not say of what: write {}", source(draft, found->factor), text)
            : fmt::format("{} does not say of what: give it the unit {}", named(draft, found->factor), unit),
        {},
        Place{draft.span(found->factor), {}, 0}};
    if (literal)
        offer(draft, error, "write " + text, draft.span(found->factor), text);
    return tl::unexpected<Error>(std::move(error));
}

/// Absolute pressures may be divided by each other and scaled by pure numbers; temperatures not at all.
Done productOfReadings(Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    const QuantityType left = draft.quantity(a), right = draft.quantity(b);
    const bool divides = draft.node(i).op == Op::divide;
    const bool temperature =
        left.scale == Scale::temperatureReading || right.scale == Scale::temperatureReading;
    if (!temperature && divides && left.scale == right.scale) {
        draft.setQuantity(i, quotient(left, right));
        return {};
    }
    if (!temperature && left.scale == Scale::absolutePressure && right.isPure()) {
        draft.setQuantity(i, left);
        return {};
    }
    if (!temperature && !divides && left.isPure()) {
        draft.setQuantity(i, right);
        return {};
    }
    const NodeIndex reading = left.scale != Scale::plain ? a : b;
    const std::string why = temperature
                                ? "a temperature is a reading on a scale; subtract another temperature first"
                                : "divide absolute pressures by each other first, in parentheses";
    return failOver(
        ErrorKind::unit,
        fmt::format("cannot {} {}: {}", divides ? "divide" : "multiply", named(draft, reading), why),
        draft.span(reading), draft.span(reading == a ? b : a));
}

} // namespace

Done checkMultiply(Draft &draft, NodeIndex i)
{
    const NodeIndex a = draft.child(i, 0), b = draft.child(i, 1);
    const bool divides = draft.node(i).op == Op::divide;
    for (const NodeIndex side : {a, b}) {
        if (Done done = checkNode(draft, side); !done)
            return done;
        if (Done done = needAmount(draft, side, divides ? "divide" : "multiply"); !done)
            return done;
    }
    const QuantityType &left = draft.quantity(a), &right = draft.quantity(b);
    if (left.scale != Scale::plain || right.scale != Scale::plain)
        return productOfReadings(draft, i, a, b);
    QuantityType type = divides ? quotient(left, right) : product(left, right);
    const bool oneUntold = left.substances.empty() != right.substances.empty();
    if (divides && oneUntold && left.dimension == right.dimension && !left.dimension.isPure()) {
        type.substances = Labels{};
    } else if (!tagsFit(type) && hasMatter(left) && hasMatter(right)) {
        return untold(draft, i, a, b);
    }
    draft.setQuantity(i, type);
    return {};
}

} // namespace puteal::checking
