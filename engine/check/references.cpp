/// Types of cells and ranges; blanks, cells that failed, and bare keys where a range is wanted.
#include <fmt/format.h>

#include "check/fixes.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

/// A blank cell's type is known when a set unit or a list says it.
bool isTypedBlank(const CellType &cell)
{
    return cell.type.kind == ValueKind::blank &&
           (cell.type.list != 0 || !cell.shown.text.empty() || !cell.type.quantity.isPure());
}

StaticType typeOfBlank(const CellType &cell)
{
    StaticType type = cell.type;
    type.kind = type.list != 0 ? ValueKind::choice : ValueKind::quantity;
    return type;
}

const ReferenceText &written(const Draft &draft, NodeIndex i)
{
    return draft.tree.references[draft.node(i).extra];
}

/// "`cost` line 5 of the range ($)" in a message about a range.
std::string misfitWords(const Draft &draft, const CellAt &at, const StaticType &type, const Unit &shown)
{
    const std::string what =
        type.kind == ValueKind::quantity ? unitWords(draft, shown, type.quantity) : kindWords(type);
    return fmt::format("`{}` ({})", cellWords(draft, at), what);
}

struct RangeTally {
    StaticType type;
    Unit shown;
    CellAt first;
    bool any = false;
    std::optional<StaticType> blankType; ///< of a blank cell with a set unit or list
    Unit blankShown;
};

bool sameType(const StaticType &a, const StaticType &b)
{
    return a.kind == b.kind && a.list == b.list && a.quantity == b.quantity;
}

} // namespace

bool isRange(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    return node.kind == NodeKind::reference && draft.binding.references[node.extra].isRange;
}

bool isBareKey(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    if (node.kind != NodeKind::reference || !draft.context.workbook)
        return false;
    const ReferenceText &reference = written(draft, i);
    const BoundReference &bound = draft.binding.references[node.extra];
    if (reference.indexed || reference.gone || bound.isRange ||
        bound.cell.sheet >= draft.context.workbook->sheets.size())
        return false;
    return draft.context.workbook->sheets[bound.cell.sheet].columnByKey(reference.word) == bound.cell.column;
}

tl::unexpected<Error> bareKeyWhereRange(const Draft &draft, NodeIndex i)
{
    const std::string key = source(draft, i);
    const std::string whole = key + "[:]", above = key + "[1:-1]";
    Error error{
        ErrorKind::range,
        fmt::format(
            "`{}` alone is the cell on this line: write {} for the whole column or {} for the lines above",
            key, whole, above),
        {},
        Place{draft.span(i), {}, 0}};
    offer(draft, error, fmt::format("write {} for the whole column", whole), draft.span(i), whole);
    offer(draft, error, fmt::format("write {} for the lines above", above), draft.span(i), above);
    return tl::unexpected<Error>(std::move(error));
}

Done checkReference(Draft &draft, NodeIndex i)
{
    const BoundReference &bound = draft.binding.references[draft.node(i).extra];
    if (bound.isRange)
        return fail(ErrorKind::range, "a range stands only in a call; make a column for it", draft.span(i));
    const CellType cell = draft.context.types->typeOf(bound.cell);
    if (cell.failed || cell.circular)
        return fail(ErrorKind::waiting, fmt::format("waits for `{}`", source(draft, i)), draft.span(i));
    CheckedNode &checked = draft.at(i);
    checked.shown = cell.shown;
    checked.type = cell.type;
    if (cell.type.kind != ValueKind::blank)
        return {};
    if (!isTypedBlank(cell))
        return fail(ErrorKind::blank, fmt::format("`{}` is blank", source(draft, i)), draft.span(i));
    checked.type = typeOfBlank(cell);
    checked.isBlank = true;
    return {};
}

Done checkRange(Draft &draft, NodeIndex i, bool skipFailed)
{
    const RangeAt &range = draft.binding.references[draft.node(i).extra].range;
    RangeTally tally;
    for (std::uint32_t line = range.first; line <= range.last; ++line) {
        const CellAt at{range.sheet, range.column, line};
        const CellType cell = draft.context.types->typeOf(at);
        if (cell.failed || cell.circular) {
            if (skipFailed)
                continue;
            return fail(ErrorKind::waiting, fmt::format("waits for `{}`", cellWords(draft, at)),
                        draft.span(i));
        }
        if (cell.type.kind == ValueKind::blank) {
            if (!tally.blankType && isTypedBlank(cell)) {
                tally.blankType = typeOfBlank(cell);
                tally.blankShown = cell.shown;
            }
            continue;
        }
        if (!tally.any) {
            tally = RangeTally{cell.type, cell.shown, at, true, tally.blankType, tally.blankShown};
        } else if (!sameType(tally.type, cell.type)) {
            return fail(ErrorKind::range,
                        fmt::format("the cells of {} are not of one kind: {}, but {}", quotedPiece(draft, i),
                                    misfitWords(draft, tally.first, tally.type, tally.shown),
                                    misfitWords(draft, at, cell.type, cell.shown)),
                        draft.span(i));
        }
    }
    CheckedNode &checked = draft.at(i);
    checked.type = tally.any ? tally.type : tally.blankType.value_or(StaticType{});
    checked.type.bound = Bound::exact;
    checked.shown = tally.any ? tally.shown : tally.blankShown;
    return {};
}

} // namespace puteal::checking
