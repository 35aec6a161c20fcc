/// Units of a call against its signature: unit variables, fixed units, units with a substance from a choice.
#include <algorithm>

#include <fmt/format.h>

#include "check/calls.h"
#include "check/clash.h"
#include "check/shown_unit.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

constexpr int one = 6; // sixths

bool isLoneVariable(const UnitPattern &pattern)
{
    return pattern.variables.size() == 1 && pattern.variables.front().second == one &&
           pattern.unit.text.empty() && pattern.substanceFrom < 0;
}

bool takesUnit(const Draft &draft, const Call &call, const Slot &slot)
{
    return call.parameter(slot).kind == ValueKind::quantity && draft.kind(slot.node) == ValueKind::quantity;
}

Adopt adoptionOf(General general)
{
    switch (general) {
    case General::none:
    case General::within:
    case General::interpolate:
    case General::lookup:
        return Adopt::cells;
    case General::min:
    case General::max:
    case General::clamp:
    case General::roundTo:
    case General::ceilTo:
    case General::floorTo:
        return Adopt::literals;
    default:
        return Adopt::none;
    }
}

/// The argument whose type the others follow: cells before literals, told before untold, never a bare 0.
int rank(const Draft &draft, NodeIndex i)
{
    const QuantityType &type = draft.quantity(i);
    const bool told = !type.substances.empty() || !type.things.empty();
    if (isBareZero(draft, i))
        return 0;
    return (isLiteral(draft, i) ? 1 : 3) + (told ? 1 : 0);
}

std::vector<Slot> membersOf(const Draft &draft, const Call &call, char variable)
{
    std::vector<Slot> members;
    for (const Slot &slot : call.slots) {
        const UnitPattern &pattern = call.parameter(slot).pattern;
        if (takesUnit(draft, call, slot) && isLoneVariable(pattern) &&
            pattern.variables.front().first == variable)
            members.push_back(slot);
    }
    return members;
}

Done noReadings(const Draft &draft, const Call &call, const Slot &slot)
{
    const bool temperature = draft.quantity(slot.node).scale == Scale::temperatureReading;
    return fail(ErrorKind::unit,
                fmt::format("{} takes no {}: {}", call.function->name,
                            temperature ? "temperature" : "absolute pressure",
                            temperature ? "subtract another temperature first"
                                        : "subtract the air first, as in gauge(p, air)"),
                draft.span(slot.node));
}

Done unifyVariable(Draft &draft, const Call &call, char variable)
{
    const std::vector<Slot> members = membersOf(draft, call, variable);
    if (members.empty())
        return {};
    const Slot *lead = &members.front();
    for (const Slot &member : members)
        if (rank(draft, member.node) > rank(draft, lead->node))
            lead = &member;
    const Scale scale = draft.quantity(lead->node).scale;
    if (scale != Scale::plain && !call.parameter(*lead).pattern.readings)
        return noReadings(draft, call, *lead);
    const General general = call.function->general;
    const Adopt mode = adoptionOf(general);
    const Verb verb = general == General::sum || general == General::mean ? Verb::add : Verb::compare;
    for (int pass = 0; pass < 2; ++pass)
        for (const Slot &member : members) {
            if (member.node == lead->node)
                continue;
            // beside readings a parameter that takes none is a difference: within(t, 55 degF, 2 delta_degF)
            const bool difference = scale != Scale::plain && !call.parameter(member).pattern.readings;
            QuantityType wanted = draft.quantity(lead->node);
            wanted.scale = difference ? Scale::plain : wanted.scale;
            const Misfit misfit = difference ? fit(draft, member.node, wanted, mode)
                                             : agree(draft, lead->node, member.node, mode);
            if (misfit != Misfit::none)
                return lead->node < member.node
                           ? clash(draft, verb, call.node, lead->node, member.node, misfit)
                           : clash(draft, verb, call.node, member.node, lead->node, misfit);
        }
    draft.variables.emplace_back(variable, draft.quantity(lead->node));
    return {};
}

const QuantityType *solved(const Draft &draft, char variable)
{
    for (const auto &[letter, type] : draft.variables)
        if (letter == variable)
            return &type;
    return nullptr;
}

/// type = fixed * known variables * x^p gives x.
Done solveComposite(Draft &draft, const UnitPattern &pattern, NodeIndex node, char unknown, int power)
{
    QuantityType rest = quotient(draft.quantity(node), pattern.unit.type);
    for (const auto &[letter, sixths] : pattern.variables) {
        QuantityType raised;
        const QuantityType *type = solved(draft, letter);
        if (letter == unknown || !type)
            continue;
        if (raise(*type, sixths, one, raised))
            rest = quotient(rest, raised);
    }
    QuantityType type;
    if (!raise(rest, one, power, type))
        return fail(ErrorKind::unit, fmt::format("no unit fits {} here", named(draft, node)),
                    draft.span(node));
    draft.variables.emplace_back(unknown, type);
    return {};
}

Done fitParameter(Draft &draft, const Call &call, const Slot &slot, const Unit &unit)
{
    Unit wanted = unit;
    const QuantityType &given = draft.quantity(slot.node);
    if (cancels(unit) && isUnitless(draft, slot.node))
        return wrongUnit(draft, *call.function, call.parameter(slot), slot.node, unit, Misfit::dimension);
    // a parameter that says nothing of a substance takes any
    if (wanted.type.substances.empty() && given.dimension == wanted.type.dimension)
        wanted.type.substances = given.substances;
    const Misfit misfit = fit(draft, slot.node, wanted.type, Adopt::cells);
    if (misfit == Misfit::none)
        return {};
    return wrongUnit(draft, *call.function, call.parameter(slot), slot.node, unit, misfit);
}

Done fitPattern(Draft &draft, const Call &call, const Slot &slot)
{
    const UnitPattern &pattern = call.parameter(slot).pattern;
    if (pattern.variables.empty() && pattern.substanceFrom < 0)
        return fitParameter(draft, call, slot, pattern.unit);
    int unknown = 0;
    std::pair<char, int> last{};
    for (const auto &variable : pattern.variables)
        if (!solved(draft, variable.first)) {
            ++unknown;
            last = variable;
        }
    if (unknown == 1)
        return solveComposite(draft, pattern, slot.node, last.first, last.second);
    if (unknown > 1)
        return {};
    if (pattern.substanceFrom >= 0)
        if (auto substance = chosenSubstance(draft, call, pattern.substanceFrom); !substance)
            return tl::unexpected<Error>(substance.error());
    const auto type = patternType(draft, call, pattern);
    if (!type)
        return {};
    const Unit unit = pattern.variables.empty() ? respelled(draft, pattern.unit, *type)
                                                : draft.units().defaultUnit(*type, draft.context.system);
    return fitParameter(draft, call, slot, unit);
}

} // namespace

Result<std::uint16_t> chosenSubstance(const Draft &draft, const Call &call, int parameter)
{
    const ParameterInfo &choice = call.function->parameters[static_cast<std::size_t>(parameter)];
    const auto node = call.argument(static_cast<std::uint32_t>(parameter));
    std::size_t index = static_cast<std::size_t>(choice.fallback);
    if (node) {
        if (!draft.at(*node).isConstantChoice)
            return fail(ErrorKind::arguments,
                        fmt::format("{} takes {} as a word in quotes, because its result is an amount of it",
                                    call.function->name, choice.name),
                        draft.span(*node));
        index = static_cast<std::size_t>(draft.at(*node).constant);
    }
    if (index < choice.choiceSubstances.size())
        if (const auto id = UnitTable::substanceId(choice.choiceSubstances[index]))
            return *id;
    return fail(ErrorKind::arguments,
                fmt::format("{}: this {} stands for no substance", call.function->name, choice.name),
                draft.node(call.node).opSpan);
}

std::optional<QuantityType> patternType(const Draft &draft, const Call &call, const UnitPattern &pattern)
{
    if (isLoneVariable(pattern)) {
        const QuantityType *type = solved(draft, pattern.variables.front().first);
        return type ? std::optional<QuantityType>(*type) : std::nullopt;
    }
    QuantityType type = pattern.unit.type;
    for (const auto &[letter, sixths] : pattern.variables) {
        const QuantityType *known = solved(draft, letter);
        QuantityType raised;
        if (!known || !raise(*known, sixths, one, raised))
            return std::nullopt;
        type = product(type, raised);
    }
    if (pattern.substanceFrom >= 0)
        if (const auto substance = chosenSubstance(draft, call, pattern.substanceFrom))
            type.substances.add(*substance, missingTags(type));
    return type;
}

Done unifyUnits(Draft &draft, const Call &call)
{
    std::string letters;
    for (const Slot &slot : call.slots) {
        const UnitPattern &pattern = call.parameter(slot).pattern;
        if (isLoneVariable(pattern) && letters.find(pattern.variables.front().first) == std::string::npos)
            letters += pattern.variables.front().first;
    }
    for (const char letter : letters)
        if (Done done = unifyVariable(draft, call, letter); !done)
            return done;
    for (const Slot &slot : call.slots) {
        if (!takesUnit(draft, call, slot) || isLoneVariable(call.parameter(slot).pattern) ||
            call.parameter(slot).anyKind)
            continue;
        if (Done done = fitPattern(draft, call, slot); !done)
            return done;
    }
    return {};
}

} // namespace puteal::checking
