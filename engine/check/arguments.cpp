/// One argument against its parameter: a range or a value, its kind, its list, whether it may be blank.
#include <fmt/format.h>

#include "base/text.h"
#include "check/calls.h"
#include "check/fixes.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

/// "sum", "min" and the like with nothing but a column key: the column was meant.
bool isLoneBareKey(const Draft &draft, const Call &call, const Slot &slot)
{
    return call.slots.size() == 1 && call.parameter(slot).rangeOrValue && isBareKey(draft, slot.node);
}

std::string wantedKind(const ParameterInfo &parameter)
{
    switch (parameter.kind) {
    case ValueKind::quantity:
        return "an amount";
    case ValueKind::yesNo:
        return "yes or no";
    case ValueKind::choice: {
        std::string words = "one of ";
        for (const std::string &word : parameter.choices)
            words += (&word == &parameter.choices.front() ? "" : ", ") + word;
        return parameter.choices.empty() ? "a choice" : words;
    }
    case ValueKind::words:
        return "words in quotes";
    case ValueKind::date:
        return "a date";
    case ValueKind::blank:
        break;
    }
    return "a value";
}

tl::unexpected<Error> wrongKind(const Draft &draft, const Call &call, const Slot &slot)
{
    const ParameterInfo &parameter = call.parameter(slot);
    return fail(ErrorKind::kind,
                fmt::format("{} takes {} as {}, not {}", call.function->name, parameter.name,
                            wantedKind(parameter), named(draft, slot.node)),
                draft.span(slot.node));
}

Done checkChoice(Draft &draft, const Call &call, const Slot &slot)
{
    const ParameterInfo &parameter = call.parameter(slot);
    const StaticType &type = draft.at(slot.node).type;
    if (parameter.choices.empty())
        return type.kind == ValueKind::choice ? Done{} : Done(wrongKind(draft, call, slot));
    const std::uint32_t list = draft.context.lists->intern(parameter.choices);
    if (type.kind == ValueKind::words && isWordsOnly(draft, slot.node))
        return becomeChoice(draft, slot.node, list);
    if (type.kind != ValueKind::choice)
        return wrongKind(draft, call, slot);
    if (type.list == list)
        return {};
    return fail(ErrorKind::kind,
                fmt::format("{} takes {} as {}, but {} is one of {}", call.function->name, parameter.name,
                            wantedKind(parameter), quotedPiece(draft, slot.node),
                            listWords(draft, type.list)),
                draft.span(slot.node));
}

Done checkRangeArgument(Draft &draft, const Call &call, const Slot &slot)
{
    const ParameterInfo &parameter = call.parameter(slot);
    if (!parameter.range && !parameter.rangeOrValue)
        return rangeWhereValue(draft, call, slot);
    bool hasOnly = false;
    for (const Slot &other : call.slots)
        hasOnly = hasOnly || (call.parameter(other).name == "only" && other.node != slot.node);
    const General general = call.function->general;
    return checkRange(draft, slot.node, hasOnly || general == General::count);
}

Done needsRange(const Draft &draft, const Call &call, const Slot &slot)
{
    if (isBareKey(draft, slot.node))
        return bareKeyWhereRange(draft, slot.node);
    return fail(ErrorKind::range,
                fmt::format("{} takes {} as a range, such as cost[2:9] or cost[:], not {}",
                            call.function->name, call.parameter(slot).name, quotedPiece(draft, slot.node)),
                draft.span(slot.node));
}

/// A blank passed on as missing: its type, where one is known, is checked like any other.
bool passesMissing(Draft &draft, const ParameterInfo &parameter, const Slot &slot, Done &done)
{
    const bool blank = !done && done.error().kind == ErrorKind::blank;
    if (!blank || !(parameter.mayBeMissing || parameter.rangeOrValue))
        return false;
    if (draft.node(slot.node).kind != NodeKind::reference)
        return false;
    draft.setKind(slot.node, ValueKind::blank);
    draft.at(slot.node).isBlank = true;
    done = Done{};
    return true;
}

} // namespace

tl::unexpected<Error> rangeWhereValue(const Draft &draft, const Call &call, const Slot &slot)
{
    return fail(ErrorKind::range,
                fmt::format("{} takes {} as one value, not the range {}", call.function->name,
                            call.parameter(slot).name, source(draft, slot.node)),
                draft.span(slot.node));
}

Done checkArgument(Draft &draft, const Call &call, const Slot &slot)
{
    const ParameterInfo &parameter = call.parameter(slot);
    if (isLoneBareKey(draft, call, slot))
        return bareKeyWhereRange(draft, slot.node);
    if (isRange(draft, slot.node)) {
        if (Done done = checkRangeArgument(draft, call, slot); !done)
            return done;
    } else if (parameter.range) {
        return needsRange(draft, call, slot);
    } else {
        const bool choices = parameter.kind == ValueKind::choice && !parameter.choices.empty();
        const std::uint32_t list = choices ? draft.context.lists->intern(parameter.choices) : 0;
        Done done = checkNode(draft, slot.node, list);
        if (passesMissing(draft, parameter, slot, done))
            return {};
        if (!done)
            return done;
    }
    const ValueKind kind = draft.kind(slot.node);
    if (parameter.anyKind || (kind == ValueKind::blank && isRange(draft, slot.node)))
        return {};
    if (parameter.kind == ValueKind::choice)
        return checkChoice(draft, call, slot);
    return kind == parameter.kind ? Done{} : Done(wrongKind(draft, call, slot));
}

} // namespace puteal::checking
