/// Entry of the checker and the plain forms of nodes: literals, words, yes/no, choices between two results.
#include "check/checker.h"

#include <numbers>

#include <fmt/format.h>

#include "check/agreement.h"
#include "check/clash.h"
#include "check/fixes.h"
#include "check/shown_unit.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal
{

using namespace checking;

namespace checking
{

namespace
{

Done checkWords(Draft &draft, NodeIndex i, std::uint32_t list)
{
    const Node &node = draft.node(i);
    draft.setKind(i, ValueKind::words);
    const auto &parts = draft.tree.wordsParts[node.extra];
    for (const LivePart &part : parts)
        if (Done done = checkTolerant(draft, part.value, 0, true); !done)
            return done;
    if (list != 0 && parts.empty())
        return becomeChoice(draft, i, list);
    return {};
}

Done checkTernary(Draft &draft, NodeIndex i, std::uint32_t list)
{
    const NodeIndex condition = draft.child(i, 0), yes = draft.child(i, 1), no = draft.child(i, 2);
    if (Done done = checkNode(draft, condition); !done)
        return done;
    if (Done done = needYesNo(draft, condition, "before ? stands a yes/no"); !done)
        return done;
    if (Done done = checkTolerant(draft, yes, list, false); !done)
        return done;
    if (Done done = checkTolerant(draft, no, list, false); !done)
        return done;
    return checkBranches(draft, i, yes, no);
}

Done checkNegate(Draft &draft, NodeIndex i)
{
    const NodeIndex child = draft.child(i, 0);
    if (Done done = checkNode(draft, child); !done)
        return done;
    if (Done done = needAmount(draft, child, "negate"); !done)
        return done;
    const QuantityType type = draft.quantity(child);
    if (type.scale != Scale::plain)
        return fail(ErrorKind::unit,
                    fmt::format("cannot negate {}: it is a reading on a scale, not a difference",
                                named(draft, child)),
                    draft.span(i));
    draft.setQuantity(i, type);
    draft.at(i).shown = draft.at(child).shown;
    return {};
}

Done checkNot(Draft &draft, NodeIndex i)
{
    const NodeIndex child = draft.child(i, 0);
    if (Done done = checkNode(draft, child); !done)
        return done;
    if (Done done = needYesNo(draft, child, "after not stands a yes/no"); !done)
        return done;
    draft.setKind(i, ValueKind::yesNo);
    return {};
}

void checkNumber(Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    CheckedNode &checked = draft.at(i);
    checked.type.kind = ValueKind::quantity;
    checked.shown = draft.tree.units[node.unit];
    checked.type.quantity = checked.shown.type;
    checked.constant = node.number;
}

void checkDate(Draft &draft, NodeIndex i)
{
    const UnitWord *day = draft.units().find("day");
    draft.setKind(i, ValueKind::date);
    draft.at(i).constant = draft.node(i).number * (day ? day->factor : 86400.0);
}

/// Quoted words under a ternary or a call that waits for a list: done where the words are.
Done dispatch(Draft &draft, NodeIndex i, std::uint32_t list)
{
    const Node &node = draft.node(i);
    switch (node.kind) {
    case NodeKind::number:
        checkNumber(draft, i);
        return {};
    case NodeKind::pi:
        draft.setKind(i, ValueKind::quantity);
        draft.at(i).constant = std::numbers::pi;
        return {};
    case NodeKind::words:
        return checkWords(draft, i, list);
    case NodeKind::yesNo:
        draft.setKind(i, ValueKind::yesNo);
        draft.at(i).constant = node.number;
        return {};
    case NodeKind::date:
        checkDate(draft, i);
        return {};
    case NodeKind::reference:
        return checkReference(draft, i);
    case NodeKind::call:
        return checkCall(draft, i, list);
    case NodeKind::negate:
        return checkNegate(draft, i);
    case NodeKind::logicalNot:
        return checkNot(draft, i);
    case NodeKind::binary:
        return checkBinary(draft, i);
    case NodeKind::ternary:
        return checkTernary(draft, i, list);
    case NodeKind::convert:
        return checkConvert(draft, i);
    }
    return {};
}

} // namespace

Done checkNode(Draft &draft, NodeIndex i, std::uint32_t list)
{
    return dispatch(draft, i, list);
}

Done checkTolerant(Draft &draft, NodeIndex i, std::uint32_t list, bool anyError)
{
    Done done = checkNode(draft, i, list);
    if (done)
        return done;
    const ErrorKind kind = done.error().kind;
    if (!anyError && kind != ErrorKind::blank && kind != ErrorKind::waiting)
        return done;
    draft.at(i).type = StaticType{};
    draft.at(i).error = std::make_shared<const Error>(std::move(done.error()));
    return {};
}

Done needYesNo(const Draft &draft, NodeIndex i, const std::string &where)
{
    if (draft.kind(i) == ValueKind::yesNo)
        return {};
    return fail(ErrorKind::kind, fmt::format("{}, not {}", where, named(draft, i)), draft.span(i));
}

Done checkBranches(Draft &draft, NodeIndex whole, NodeIndex a, NodeIndex b)
{
    CheckedNode &result = draft.at(whole);
    if (draft.at(a).error && draft.at(b).error)
        return tl::unexpected<Error>(*draft.at(a).error);
    if (draft.at(a).error || draft.at(b).error) {
        const NodeIndex good = draft.at(a).error ? b : a;
        result.type = draft.at(good).type;
        result.type.bound = Bound::exact;
        result.shown = draft.at(good).shown;
        return {};
    }
    if (Done done = shareChoices(draft, a, b); !done)
        return done;
    const StaticType &left = draft.at(a).type, &right = draft.at(b).type;
    if (left.kind != right.kind)
        return failOver(
            ErrorKind::kind,
            fmt::format("both results must be of one kind: {}, {}", named(draft, a), named(draft, b)),
            draft.span(b), draft.span(a));
    if (left.list != right.list)
        return failOver(ErrorKind::kind,
                        fmt::format("both results must be of one list: {} ({}), {} ({})",
                                    quotedPiece(draft, a), listWords(draft, left.list), quotedPiece(draft, b),
                                    listWords(draft, right.list)),
                        draft.span(b), draft.span(a));
    if (left.kind == ValueKind::quantity)
        if (const Misfit misfit = agree(draft, a, b, Adopt::none); misfit != Misfit::none)
            return clash(draft, Verb::choose, whole, a, b, misfit);
    result.type = draft.at(a).type;
    result.type.bound = Bound::exact;
    if (result.type.kind == ValueKind::quantity)
        result.shown = shownFor(draft, whole, result.type.quantity);
    return {};
}

namespace
{

Result<Checked> walk(const Tree &tree, const Binding &binding, const CheckContext &context, bool offerFixes)
{
    Draft draft{tree, binding, context, offerFixes};
    draft.out.nodes.resize(tree.nodes.size());
    const std::uint32_t list = tree.nodes[tree.root].kind == NodeKind::convert ? 0 : context.choiceList;
    if (Done done = checkNode(draft, tree.root, list); !done)
        return tl::unexpected<Error>(std::move(done.error()));
    if (Done done = checkRoot(draft, tree.root); !done)
        return tl::unexpected<Error>(std::move(done.error()));
    return std::move(draft.out);
}

} // namespace

Result<Checked> checkWithoutFixes(const Tree &tree, const Binding &binding, const CheckContext &context)
{
    return walk(tree, binding, context, false);
}

} // namespace checking

Result<Checked> check(const Tree &tree, const Binding &binding, const CheckContext &context)
{
    Result<Checked> checked = checking::walk(tree, binding, context, true);
    if (checked) // how the text was read is to be known beside the result
        checked->cautions.insert(checked->cautions.begin(), tree.notes.begin(), tree.notes.end());
    return checked;
}

} // namespace puteal
