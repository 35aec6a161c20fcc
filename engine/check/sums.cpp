/// + and -: amounts of one type, readings on a scale, dates, and percentages beside other numbers.
#include <fmt/format.h>

#include "base/number.h"
#include "check/advice.h"
#include "check/clash.h"
#include "check/fixes.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

bool isTime(const QuantityType &type)
{
    Dimension time;
    time.sixths[static_cast<std::size_t>(Base::time)] = 6;
    return type.dimension == time && type.things.empty() && type.substances.empty();
}

QuantityType timeType()
{
    QuantityType type;
    type.dimension.sixths[static_cast<std::size_t>(Base::time)] = 6;
    return type;
}

Done sumOfDates(Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    const bool adds = draft.node(i).op == Op::add;
    const bool left = draft.kind(a) == ValueKind::date, right = draft.kind(b) == ValueKind::date;
    if (left && right) {
        if (adds)
            return failOver(ErrorKind::kind,
                            fmt::format("cannot add {} and {}: two dates can only be subtracted",
                                        named(draft, a), named(draft, b)),
                            draft.span(b), draft.span(a));
        draft.setQuantity(i, timeType());
        const UnitWord *day = draft.units().find("day");
        if (day)
            draft.at(i).shown = Unit{"day", day->factor, 0.0, day->type};
        return {};
    }
    const NodeIndex date = left ? a : b, other = left ? b : a;
    if (right && !adds)
        return failOver(ErrorKind::kind,
                        fmt::format("cannot subtract {} from {}: only a date minus a date or a time",
                                    named(draft, b), named(draft, a)),
                        draft.span(b), draft.span(a));
    if (draft.kind(other) == ValueKind::quantity &&
        (isTime(draft.quantity(other)) || isBareZero(draft, other))) {
        if (isBareZero(draft, other))
            retype(draft, other, timeType());
        draft.setKind(i, ValueKind::date);
        if (const UnitWord *day = draft.units().find("day"))
            draft.at(i).constant = day->factor; // what comes out must lie in the calendar
        return {};
    }
    Error error{ErrorKind::kind,
                fmt::format("cannot {} {} {} {}: a date takes a time, such as 30 day",
                            adds ? "add" : "subtract", named(draft, adds ? date : other),
                            adds ? "and" : "from", named(draft, adds ? other : date)),
                {},
                Place{draft.span(other), draft.span(date), 0}};
    if (isLiteral(draft, other) && draft.quantity(other).isPure())
        offer(draft, error, "write " + source(draft, other) + " day", draft.span(other),
              source(draft, other) + " day");
    return tl::unexpected<Error>(std::move(error));
}

/// "55 degF" taken for a difference: the fix spells the difference.
void offerDifference(const Draft &draft, Error &error, NodeIndex i)
{
    Unit unit = draft.at(i).shown;
    if (!isLiteral(draft, i) || unit.text.empty())
        return;
    if (unit.text.ends_with("_abs"))
        unit.text.resize(unit.text.size() - 4);
    else
        unit.text = "delta_" + unit.text;
    const std::string text = numberIn(draft, i, unit);
    error.words += "; for a difference write " + text;
    offer(draft, error, "write " + text, draft.span(i), text);
}

/// Point arithmetic: reading - reading = difference, reading +- difference = reading.
std::optional<Done> sumOfReadings(Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    const Scale left = draft.quantity(a).scale, right = draft.quantity(b).scale;
    if ((left == Scale::plain && right == Scale::plain) ||
        draft.quantity(a).dimension != draft.quantity(b).dimension)
        return std::nullopt;
    const bool adds = draft.node(i).op == Op::add;
    QuantityType result = draft.quantity(left != Scale::plain ? a : b);
    if (left != Scale::plain && right != Scale::plain) {
        if (!adds) {
            result.scale = Scale::plain;
            draft.setQuantity(i, result);
            return Done{};
        }
        Error error{ErrorKind::unit,
                    fmt::format("cannot add {} and {}: both are {}", named(draft, a), named(draft, b),
                                left == Scale::temperatureReading ? "temperatures" : "absolute pressures"),
                    {},
                    Place{draft.span(b), draft.span(a), 0}};
        offerDifference(draft, error, b);
        return Done{tl::unexpected<Error>(std::move(error))};
    }
    if (right != Scale::plain && !adds)
        return Done{failOver(ErrorKind::unit,
                             fmt::format("cannot subtract {} from {}: a reading is no difference",
                                         named(draft, b), named(draft, a)),
                             draft.span(b), draft.span(a))};
    draft.setQuantity(i, result);
    draft.at(i).shown = draft.at(left != Scale::plain ? a : b).shown;
    return Done{};
}

bool isPercentLiteral(const Draft &draft, NodeIndex i)
{
    return isLiteral(draft, i) && draft.at(i).shown.text == "%";
}

/// Between pure numbers `+ 5 %` may be meant as 5 % more; only beside the literal 1 or another % it is clear.
void percentCaution(Draft &draft, NodeIndex i, NodeIndex share, NodeIndex other)
{
    if (!isPercentLiteral(draft, share) || !draft.quantity(other).isPure() ||
        draft.at(other).shown.text == "%")
        return;
    const Node &number = draft.node(other);
    if (number.kind == NodeKind::number && number.typed == 1.0 && number.unit == 0)
        return;
    const bool adds = draft.node(i).op == Op::add;
    const std::string text = source(draft, share);
    draft.caution("percent_as_number",
                  fmt::format("{} is taken as the number {} here; for {} {} write {} * (1 {} {})", text,
                              shortest(draft.at(share).shown.toBase(draft.node(share).typed)), text,
                              adds ? "more" : "less", wrapped(draft, other), adds ? '+' : '-', text),
                  draft.span(i));
}

Done sumOfAmounts(Draft &draft, NodeIndex i, NodeIndex a, NodeIndex b)
{
    const Verb verb = draft.node(i).op == Op::add ? Verb::add : Verb::subtract;
    if (auto done = sumOfReadings(draft, i, a, b))
        return *done;
    const Misfit misfit = agree(draft, a, b, Adopt::none);
    if (misfit != Misfit::none)
        return clash(draft, verb, i, a, b, misfit);
    const QuantityType type = draft.quantity(a);
    if (type.isPure()) {
        percentCaution(draft, i, b, a);
        if (verb == Verb::add)
            percentCaution(draft, i, a, b);
    }
    draft.setQuantity(i, type);
    return {};
}

} // namespace

Done checkSum(Draft &draft, NodeIndex i)
{
    const NodeIndex a = draft.child(i, 0), b = draft.child(i, 1);
    for (const NodeIndex side : {a, b})
        if (Done done = checkNode(draft, side); !done)
            return done;
    if (draft.kind(a) == ValueKind::date || draft.kind(b) == ValueKind::date)
        return sumOfDates(draft, i, a, b);
    const std::string deed = draft.node(i).op == Op::add ? "add" : "subtract";
    for (const NodeIndex side : {a, b})
        if (Done done = needAmount(draft, side, deed); !done)
            return done;
    return sumOfAmounts(draft, i, a, b);
}

} // namespace puteal::checking
