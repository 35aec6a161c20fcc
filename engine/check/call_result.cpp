/// What a call gives by its signature, and whether its ranges stand beside each other.
#include <fmt/format.h>

#include "check/calls.h"
#include "check/shown_unit.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

const RangeAt &rangeOf(const Draft &draft, NodeIndex i)
{
    return draft.binding.references[draft.node(i).extra].range;
}

/// Result of a unit variable no argument could tell: all of its arguments are blank.
Done blankArguments(const Draft &draft, const Call &call)
{
    for (const Slot &slot : call.slots)
        if (draft.kind(slot.node) == ValueKind::blank)
            return fail(ErrorKind::blank, fmt::format("`{}` is blank", source(draft, slot.node)),
                        draft.span(slot.node));
    return fail(ErrorKind::unit,
                fmt::format("the unit of {} cannot be told from these arguments", call.function->name),
                draft.node(call.node).opSpan);
}

Done setAmount(Draft &draft, const Call &call)
{
    const UnitPattern &pattern = call.function->result;
    if (pattern.substanceFrom >= 0)
        if (auto substance = chosenSubstance(draft, call, pattern.substanceFrom); !substance)
            return tl::unexpected<Error>(substance.error());
    auto type = patternType(draft, call, pattern);
    if (!type)
        return blankArguments(draft, call);
    if (call.function->general == General::stdev)
        type->scale = Scale::plain;
    draft.setQuantity(call.node, *type);
    return {};
}

} // namespace

Done checkLines(const Draft &draft, const Call &call)
{
    std::optional<NodeIndex> first;
    for (const Slot &slot : call.slots) {
        if (!isRange(draft, slot.node))
            continue;
        const ParameterInfo &parameter = call.parameter(slot);
        if (!first || parameter.repeats) {
            first = slot.node;
            continue;
        }
        const RangeAt &a = rangeOf(draft, *first), &b = rangeOf(draft, slot.node);
        const std::uint32_t linesA = a.last - a.first + 1, linesB = b.last - b.first + 1;
        const bool shifted = parameter.name == "only" && a.sheet == b.sheet && a.first != b.first;
        if (linesA != linesB)
            return failOver(ErrorKind::range,
                            fmt::format("{} and {} must have as many lines: {} and {}",
                                        quotedPiece(draft, *first), quotedPiece(draft, slot.node), linesA,
                                        linesB),
                            draft.span(slot.node), draft.span(*first));
        if (shifted)
            return failOver(ErrorKind::range,
                            fmt::format("{} must be the same lines as {}", quotedPiece(draft, slot.node),
                                        quotedPiece(draft, *first)),
                            draft.span(slot.node), draft.span(*first));
    }
    return {};
}

Done setResult(Draft &draft, const Call &call)
{
    const FunctionInfo &function = *call.function;
    switch (function.resultKind) {
    case ValueKind::quantity:
        return setAmount(draft, call);
    case ValueKind::choice:
        draft.setKind(call.node, ValueKind::choice, draft.context.lists->intern(function.resultChoices));
        return {};
    default:
        draft.setKind(call.node, function.resultKind);
        return {};
    }
}

} // namespace puteal::checking
