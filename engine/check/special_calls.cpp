/// General functions that follow no signature: if_error, because, why, known, state, worst, pick, lookup,
/// forms.
#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

#include "base/text.h"
#include "check/calls.h"
#include "check/clash.h"
#include "check/pairs.h"
#include "check/shown_unit.h"
#include "check/walk.h"
#include "check/words.h"
#include "sdk/substances.h"

namespace puteal::checking
{

namespace
{

constexpr int one = 6; // sixths

Done ifError(Draft &draft, const Call &call)
{
    const NodeIndex value = call.slots[0].node, otherwise = call.slots[1].node;
    if (Done done = checkTolerant(draft, value, call.list, false); !done)
        return done;
    if (Done done = checkNode(draft, otherwise, call.list); !done)
        return done;
    return checkBranches(draft, call.node, value, otherwise);
}

Done because(Draft &draft, const Call &call)
{
    const NodeIndex value = call.slots[0].node, words = call.slots[1].node;
    if (Done done = checkNode(draft, value, call.list); !done)
        return done;
    if (Done done = checkNode(draft, words); !done)
        return done;
    if (draft.kind(words) != ValueKind::words)
        return fail(ErrorKind::kind,
                    fmt::format("because takes words as its reason, not {}", named(draft, words)),
                    draft.span(words));
    draft.at(call.node).type = draft.at(value).type;
    draft.at(call.node).shown = draft.at(value).shown;
    return {};
}

Done why(Draft &draft, const Call &call)
{
    if (Done done = checkNode(draft, call.slots[0].node); !done)
        return done;
    draft.setKind(call.node, ValueKind::words);
    return {};
}

Done known(Draft &draft, const Call &call)
{
    if (Done done = checkTolerant(draft, call.slots[0].node, 0, false); !done)
        return done;
    draft.setKind(call.node, ValueKind::yesNo);
    return {};
}

Done state(Draft &draft, const Call &call)
{
    const NodeIndex cell = call.slots[0].node;
    if (draft.node(cell).kind != NodeKind::reference || isRange(draft, cell))
        return fail(ErrorKind::arguments,
                    fmt::format("state takes one cell, not {}", quotedPiece(draft, cell)), draft.span(cell));
    if (Done done = checkTolerant(draft, cell, 0, true); !done)
        return done;
    draft.setKind(call.node, ValueKind::choice, draft.context.lists->intern(call.function->resultChoices));
    return {};
}

/// The list of a choice among the arguments, else the one the place of the call wants.
std::uint32_t listAmong(const Draft &draft, const Call &call)
{
    for (const Slot &slot : call.slots)
        if (draft.kind(slot.node) == ValueKind::choice)
            return draft.at(slot.node).type.list;
    return call.list;
}

Done worst(Draft &draft, const Call &call)
{
    for (const Slot &slot : call.slots) {
        const bool lone = call.slots.size() == 1 && isBareKey(draft, slot.node);
        if (lone)
            return bareKeyWhereRange(draft, slot.node);
        if (Done done = isRange(draft, slot.node) ? checkRange(draft, slot.node, false)
                                                  : checkNode(draft, slot.node, call.list);
            !done)
            return done;
    }
    const std::uint32_t list = listAmong(draft, call);
    for (const Slot &slot : call.slots) {
        if (list != 0 && draft.kind(slot.node) == ValueKind::words && isWordsOnly(draft, slot.node))
            if (Done done = becomeChoice(draft, slot.node, list); !done)
                return done;
        const StaticType &type = draft.at(slot.node).type;
        if (type.kind == ValueKind::blank)
            return fail(ErrorKind::blank, fmt::format("`{}` is blank", source(draft, slot.node)),
                        draft.span(slot.node));
        if (type.kind != ValueKind::choice)
            return fail(ErrorKind::kind,
                        fmt::format("worst takes choices of one list, not {}", named(draft, slot.node)),
                        draft.span(slot.node));
        if (type.list != list)
            return fail(ErrorKind::kind,
                        fmt::format("worst takes choices of one list: {} is one of {}, not of {}",
                                    quotedPiece(draft, slot.node), listWords(draft, type.list),
                                    listWords(draft, list)),
                        draft.span(slot.node));
    }
    draft.setKind(call.node, ValueKind::choice, list);
    return {};
}

Done resultFromRange(Draft &draft, const Call &call, NodeIndex range)
{
    if (draft.kind(range) == ValueKind::blank)
        return fail(ErrorKind::blank, fmt::format("`{}` is blank", source(draft, range)), draft.span(range));
    draft.at(call.node).type = draft.at(range).type;
    draft.at(call.node).shown = draft.at(range).shown;
    return {};
}

Done pick(Draft &draft, const Call &call)
{
    for (const Slot &slot : call.slots)
        if (Done done = checkArgument(draft, call, slot); !done)
            return done;
    if (Done done = unifyUnits(draft, call); !done)
        return done;
    return resultFromRange(draft, call, call.slots[0].node);
}

Done lookup(Draft &draft, const Call &call)
{
    for (const Slot &slot : call.slots)
        if (Done done = checkArgument(draft, call, slot); !done)
            return done;
    const NodeIndex key = call.slots[0].node, keys = call.slots[1].node;
    if (draft.kind(keys) == ValueKind::blank)
        return fail(ErrorKind::blank, fmt::format("`{}` is blank", source(draft, keys)), draft.span(keys));
    if (Done done = shareChoices(draft, key, keys); !done)
        return done;
    const StaticType &wanted = draft.at(keys).type, &given = draft.at(key).type;
    if (wanted.kind != given.kind || wanted.list != given.list)
        return failOver(ErrorKind::kind,
                        fmt::format("lookup cannot find {} in {}", named(draft, key), named(draft, keys)),
                        draft.span(key), draft.span(keys));
    if (wanted.kind == ValueKind::quantity)
        if (const Misfit misfit = agree(draft, key, keys, Adopt::cells); misfit != Misfit::none)
            return clash(draft, Verb::compare, call.node, key, keys, misfit);
    return resultFromRange(draft, call, call.slots[2].node);
}

/// Factor from an amount of one substance to another form of it, by mass (or by count of molecules).
struct FormChange {
    std::uint16_t to = 0;
    double byMass = 1.0, byAmount = 1.0;
};

Result<FormChange> asCaco3(const Draft &draft, NodeIndex x, std::uint16_t from)
{
    const sdk::Substance &substance = sdk::substances[from];
    const auto to = UnitTable::substanceId("CaCO3");
    if (substance.charge == 0 || !to)
        return fail(ErrorKind::substance, fmt::format("{} has no charges to count as CaCO3", substance.name),
                    draft.span(x));
    const double charge = std::abs(substance.charge);
    const double equivalent = sdk::molarMass("CaCO3") / 2; // two charges a formula unit
    return FormChange{*to, equivalent / (substance.molarMass / charge), charge / 2};
}

Result<FormChange> asElement(const Draft &draft, NodeIndex x, std::uint16_t from)
{
    const sdk::Substance &substance = sdk::substances[from];
    const std::string element(elementOf(substance.word));
    const auto to = UnitTable::substanceId(element);
    if (element.empty() || !to)
        return fail(ErrorKind::substance,
                    fmt::format("as_element knows no element to tell {} as", substance.name), draft.span(x));
    const double atoms = elementAtoms(substance.word);
    return FormChange{*to, atoms * sdk::molarMass(element.c_str()) / substance.molarMass, atoms};
}

Done changeForm(Draft &draft, const Call &call)
{
    if (Done done = checkArgument(draft, call, call.slots[0]); !done)
        return done;
    const NodeIndex x = call.slots[0].node;
    QuantityType type = draft.quantity(x);
    const General general = call.function->general;
    double factor = 1.0;
    if (general == General::plain) {
        type.substances = Labels{};
    } else {
        const auto items = type.substances.items();
        const int mass = type.dimension.sixths[static_cast<std::size_t>(Base::mass)];
        const int amount = type.dimension.sixths[static_cast<std::size_t>(Base::amount)];
        if (items.size() != 1 || items.front().second != one || mass + amount != one)
            return fail(ErrorKind::substance,
                        fmt::format("{} takes an amount of one substance, such as 3 mg/L as Fe, not {}",
                                    call.function->name, named(draft, x)),
                        draft.span(x));
        const std::uint16_t from = items.front().first;
        const auto change = general == General::asCaco3 ? asCaco3(draft, x, from) : asElement(draft, x, from);
        if (!change)
            return tl::unexpected<Error>(change.error());
        type.substances = Labels{};
        type.substances.add(change->to, one);
        factor = amount == one ? change->byAmount : change->byMass;
    }
    draft.at(call.node).type = StaticType{ValueKind::quantity, draft.at(x).type.bound, 0, type};
    draft.at(call.node).shown = respelled(draft, draft.at(x).shown, type);
    draft.at(call.node).constant = factor;
    return {};
}

} // namespace

Result<bool> checkSpecial(Draft &draft, const Call &call)
{
    const auto is = [](Done done) {
        return done ? Result<bool>(true) : Result<bool>(tl::unexpected<Error>(std::move(done.error())));
    };
    const General general = call.function->general;
    const bool oneValue = general == General::ifError || general == General::because ||
                          general == General::why || general == General::known;
    for (const Slot &slot : call.slots)
        if (oneValue && isRange(draft, slot.node))
            return tl::unexpected<Error>(rangeWhereValue(draft, call, slot).value());
    switch (general) {
    case General::ifError:
        return is(ifError(draft, call));
    case General::because:
        return is(because(draft, call));
    case General::why:
        return is(why(draft, call));
    case General::known:
        return is(known(draft, call));
    case General::state:
        return is(state(draft, call));
    case General::worst:
        return is(worst(draft, call));
    case General::pick:
        return is(pick(draft, call));
    case General::lookup:
        return is(lookup(draft, call));
    case General::asCaco3:
    case General::asElement:
    case General::plain:
        return is(changeForm(draft, call));
    default:
        return false;
    }
}

} // namespace puteal::checking
