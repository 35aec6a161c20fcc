/// What a formula gives, held against `->`, the cell's set unit and choices, and the type a limit needs.
#include <fmt/format.h>

#include "check/advice.h"
#include "check/agreement.h"
#include "check/clash.h"
#include "check/fixes.h"
#include "check/shown_unit.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

/// How a result is put into a unit that is asked for.
struct Presented {
    StaticType type;
    Unit shown;
};

std::string droppedWords(const std::string &thing, int sixths)
{
    return sixths < 0 ? fmt::format("per {}, one at a time", thing)
                      : fmt::format("{} counted as a plain number", thing);
}

/// Counted things of the result that the unit does not carry are dropped, but never persons; none are put in.
Result<std::vector<std::string>> dropThings(const Draft &draft, const QuantityType &given,
                                            const QuantityType &wanted)
{
    Labels left = given.things;
    for (const auto &[id, sixths] : wanted.things.items())
        left.add(id, -sixths);
    std::vector<std::string> dropped;
    for (const auto &[id, sixths] : left.items()) {
        const std::string thing = draft.units().thingWord(id);
        if (wanted.things.sixths(id) != 0 || thing == "person")
            return fail(ErrorKind::unit, thing);
        dropped.push_back(droppedWords(thing, sixths));
    }
    return dropped;
}

Result<Presented> present(Draft &draft, NodeIndex child, const Unit &unit, bool set, const Span &where)
{
    if (draft.kind(child) != ValueKind::quantity)
        return fail(
            ErrorKind::kind,
            set ? fmt::format("this cell is set to {}, but the formula gives {}",
                              unitWords(draft, unit, unit.type), kindWords(draft.at(child).type))
                : fmt::format("only an amount can be shown in {}, not {}", unit.text, named(draft, child)),
            where);
    StaticType type = draft.at(child).type;
    const bool takes = isLiteral(draft, child) && (type.quantity.things.empty() || isBareZero(draft, child));
    if (takes && fit(draft, child, unit.type, Adopt::literals) == Misfit::none)
        type = draft.at(child).type;
    const bool trap = isLiteral(draft, child) && isUnitless(draft, child) && cancels(unit);
    if (trap || type.quantity.dimension != unit.type.dimension)
        return wrongResult(draft, child, unit, set, Misfit::dimension, where);
    if (type.quantity.scale != unit.type.scale)
        return wrongResult(draft, child, unit, set, Misfit::scale, where);
    const auto dropped = dropThings(draft, type.quantity, unit.type);
    if (!dropped)
        return wrongResult(draft, child, unit, set, Misfit::things, where);
    if (!unit.type.substances.empty()) {
        if (!type.quantity.substances.empty() && type.quantity.substances != unit.type.substances)
            return wrongResult(draft, child, unit, set, Misfit::substance, where);
        type.quantity.substances = unit.type.substances;
    }
    type.quantity.things = unit.type.things;
    for (const std::string &words : *dropped)
        draft.out.thingsDropped.push_back(words);
    return Presented{type, respelled(draft, unit, type.quantity)};
}

Done rootChoice(Draft &draft, NodeIndex root)
{
    const std::uint32_t list = draft.context.choiceList;
    if (draft.kind(root) == ValueKind::words && isWordsOnly(draft, root))
        return becomeChoice(draft, root, list);
    const StaticType &type = draft.at(root).type;
    if (type.kind == ValueKind::choice && type.list == list)
        return {};
    const std::string given =
        type.kind == ValueKind::choice ? "one of " + listWords(draft, type.list) : kindWords(type);
    return fail(
        ErrorKind::kind,
        fmt::format("this cell holds one of {}, but the formula gives {}", listWords(draft, list), given),
        draft.span(root));
}

/// A limit against the cell it belongs to: the same kind, and the unit of the cell.
Done rootExpected(Draft &draft, NodeIndex root)
{
    const StaticType &wanted = draft.context.expected;
    if (draft.kind(root) != wanted.kind)
        return fail(
            ErrorKind::kind,
            fmt::format("the limit is {}, but the cell holds {}", named(draft, root), kindWords(wanted)),
            draft.span(root));
    if (wanted.kind != ValueKind::quantity)
        return {};
    const bool cellUntold = wanted.quantity.substances.empty();
    QuantityType target = wanted.quantity;
    if (cellUntold)
        target.substances = draft.quantity(root).substances;
    const Misfit misfit = fit(draft, root, target, Adopt::cells);
    if (misfit == Misfit::none) {
        if (cellUntold && !target.substances.empty())
            draft.caution(
                "assumed_substance",
                fmt::format("the cell does not say of what; it is taken {}", substanceWords(target)),
                draft.span(root));
        draft.out.nodes[root].type.quantity = target;
        return {};
    }
    const Unit unit = draft.units().defaultUnit(wanted.quantity, draft.context.system);
    Error error{misfit == Misfit::substance ? ErrorKind::substance : ErrorKind::unit,
                fmt::format("the limit is {}, but the cell is in {}", named(draft, root),
                            unitWords(draft, unit, wanted.quantity)),
                {},
                Place{draft.span(root), {}, 0}};
    advise(draft, error, root, unit, misfit);
    return tl::unexpected<Error>(std::move(error));
}

Unit unitAfterArrow(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    Unit unit = draft.tree.units[node.unit];
    if (node.asSubstance < 0 || !unit.type.substances.empty())
        return unit;
    const Unit &base = node.unit == 0 ? draft.at(node.children[0]).shown : unit;
    const auto told =
        tagged(untagged(base, draft.units()), static_cast<std::uint16_t>(node.asSubstance), draft.units());
    return told ? *told : unit;
}

} // namespace

Done checkConvert(Draft &draft, NodeIndex i)
{
    const NodeIndex child = draft.child(i, 0);
    if (Done done = checkNode(draft, child); !done)
        return done;
    const Node &node = draft.node(i);
    auto presented = present(draft, child, unitAfterArrow(draft, i), false, node.opSpan);
    if (!presented)
        return tl::unexpected<Error>(std::move(presented.error()));
    draft.at(i).type = presented->type;
    draft.at(i).shown = std::move(presented->shown);
    return {};
}

Done checkRoot(Draft &draft, NodeIndex root)
{
    if (draft.context.choiceList != 0)
        if (Done done = rootChoice(draft, root); !done)
            return done;
    if (draft.context.expected.kind != ValueKind::blank)
        if (Done done = rootExpected(draft, root); !done)
            return done;
    Checked &out = draft.out;
    out.type = draft.at(root).type;
    out.shown = draft.at(root).shown;
    if (!draft.context.setUnit)
        return {};
    const Node &node = draft.node(root);
    auto presented = present(draft, root, *draft.context.setUnit, true, draft.span(root));
    if (!presented)
        return tl::unexpected<Error>(std::move(presented.error()));
    out.type = presented->type;
    out.type.bound = draft.at(root).type.bound;
    if (node.kind != NodeKind::convert)
        out.shown = std::move(presented->shown);
    else
        out.shown = respelled(draft, out.shown, out.type.quantity);
    return {};
}

} // namespace puteal::checking
