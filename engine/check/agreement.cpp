/// Literals and cells that take over what the other side is an amount of; words that become listed words.
#include "check/agreement.h"

#include <fmt/format.h>

#include "base/text.h"
#include "check/fixes.h"
#include "check/shown_unit.h"
#include "check/words.h"

namespace puteal::checking
{

bool isLiteral(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    return node.kind == NodeKind::number ||
           (node.kind == NodeKind::negate && isLiteral(draft, node.children[0]));
}

bool isBareZero(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    return node.kind == NodeKind::number && node.unit == 0 && node.typed == 0.0;
}

void retype(Draft &draft, NodeIndex i, const QuantityType &type)
{
    CheckedNode &checked = draft.at(i);
    checked.type.quantity = type;
    checked.shown = respelled(draft, checked.shown, type);
    if (draft.node(i).kind == NodeKind::negate)
        retype(draft, draft.child(i, 0), type);
}

Misfit fit(Draft &draft, NodeIndex i, const QuantityType &wanted, Adopt mode)
{
    const QuantityType given = draft.quantity(i);
    if (given == wanted)
        return Misfit::none;
    if (isBareZero(draft, i)) {
        if (wanted.scale == Scale::temperatureReading)
            return Misfit::scale;
        retype(draft, i, wanted);
        return Misfit::none;
    }
    if (given.dimension != wanted.dimension)
        return Misfit::dimension;
    if (given.scale != wanted.scale)
        return Misfit::scale;
    const bool literal = isLiteral(draft, i);
    if (given.things != wanted.things && !(literal && mode != Adopt::none && given.things.empty()))
        return Misfit::things;
    if (given.substances != wanted.substances) {
        if (!given.substances.empty() || mode == Adopt::none || (mode == Adopt::literals && !literal))
            return Misfit::substance;
        if (!literal)
            draft.caution("assumed_substance",
                          fmt::format("{} does not say of what; it is taken {}", quotedPiece(draft, i),
                                      substanceWords(wanted)),
                          draft.span(i));
    }
    retype(draft, i, wanted);
    return Misfit::none;
}

bool cancels(const Unit &unit)
{
    return !unit.text.empty() && unit.text != "%" && unit.type.isPure() && unit.factor != 1.0;
}

bool isUnitless(const Draft &draft, NodeIndex i)
{
    return draft.quantity(i).isPure() && draft.at(i).shown.text.empty() && !isBareZero(draft, i);
}

namespace
{

/// `days_per_year + 10`: 10 what? The number one stands for the whole and is clear.
bool isTrap(const Draft &draft, NodeIndex number, NodeIndex beside)
{
    return isLiteral(draft, number) && isUnitless(draft, number) && draft.node(number).typed != 1.0 &&
           cancels(draft.at(beside).shown);
}

} // namespace

Misfit agree(Draft &draft, NodeIndex a, NodeIndex b, Adopt mode)
{
    if (isTrap(draft, a, b) || isTrap(draft, b, a))
        return Misfit::dimension;
    const Misfit misfit = fit(draft, a, draft.quantity(b), mode);
    if (misfit == Misfit::none)
        return misfit;
    const Misfit other = fit(draft, b, draft.quantity(a), mode);
    return other == Misfit::none ? other : std::max(misfit, other);
}

bool isWordsOnly(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    if (draft.at(i).error)
        return true;
    switch (node.kind) {
    case NodeKind::words:
        return draft.tree.wordsParts[node.extra].empty();
    case NodeKind::ternary:
        return isWordsOnly(draft, node.children[1]) && isWordsOnly(draft, node.children[2]);
    case NodeKind::call: {
        if (draft.kind(i) != ValueKind::words || !draft.at(i).function)
            return false;
        const General general = draft.at(i).function->general;
        if (general == General::because)
            return isWordsOnly(draft, node.children[0]);
        return general == General::ifError && isWordsOnly(draft, node.children[0]) &&
               isWordsOnly(draft, node.children[1]);
    }
    default:
        return false;
    }
}

namespace
{

Done wordBecomesChoice(Draft &draft, NodeIndex i, std::uint32_t list)
{
    const std::string &word = draft.node(i).name;
    const auto index = draft.context.lists->indexOf(list, word);
    if (!index) {
        Error error{ErrorKind::kind,
                    fmt::format("{} is not in the list: {}", puteal::quoted(word), listWords(draft, list)),
                    {},
                    Place{draft.span(i), {}, 0}};
        for (const std::string &near : closest(word, draft.context.lists->words(list), 2))
            offer(draft, error, "write " + puteal::quoted(near), draft.span(i), puteal::quoted(near));
        return tl::unexpected<Error>(std::move(error));
    }
    draft.setKind(i, ValueKind::choice, list);
    draft.at(i).isConstantChoice = true;
    draft.at(i).constant = static_cast<double>(*index);
    return {};
}

} // namespace

Done becomeChoice(Draft &draft, NodeIndex i, std::uint32_t list)
{
    const Node &node = draft.node(i);
    if (draft.at(i).error || draft.kind(i) == ValueKind::choice)
        return {};
    if (node.kind == NodeKind::words)
        return wordBecomesChoice(draft, i, list);
    const bool isTernary = node.kind == NodeKind::ternary;
    const bool both = isTernary || draft.at(i).function->general == General::ifError;
    const std::size_t first = isTernary ? 1 : 0;
    if (Done done = becomeChoice(draft, node.children[first], list); !done)
        return done;
    if (both)
        if (Done done = becomeChoice(draft, node.children[first + 1], list); !done)
            return done;
    draft.setKind(i, ValueKind::choice, list);
    return {};
}

Done shareChoices(Draft &draft, NodeIndex a, NodeIndex b)
{
    if (draft.kind(a) == ValueKind::choice && draft.kind(b) == ValueKind::words && isWordsOnly(draft, b))
        return becomeChoice(draft, b, draft.at(a).type.list);
    if (draft.kind(b) == ValueKind::choice && draft.kind(a) == ValueKind::words && isWordsOnly(draft, a))
        return becomeChoice(draft, a, draft.at(b).type.list);
    return {};
}

} // namespace puteal::checking
