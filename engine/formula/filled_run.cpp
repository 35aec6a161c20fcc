/// Runs are derived from equal neighbors, never stored.
#include "formula/filled_run.h"

#include <algorithm>

namespace puteal
{

namespace
{

bool sameText(const Cell &a, const Cell &b)
{
    return a.text && b.text && (a.text == b.text || *a.text == *b.text);
}

bool refersToCell(const std::string &text, const UnitTable &units)
{
    const auto tree = parseFormula(text, units);
    return tree && !tree->references.empty();
}

/// Is the cell right under the run a formula with a range that ends on the run's last line?
bool totalUnder(const Workbook &workbook, const RunAt &run, const UnitTable &units)
{
    const Sheet &sheet = workbook.sheets[run.sheet];
    const std::uint32_t line = run.last + 1;
    if (line >= sheet.lineCount() || sheet.cell(run.column, line).blank())
        return false;
    const auto tree = parseFormula(sheet.cell(run.column, line).typed(), units);
    if (!tree)
        return false;
    return std::any_of(tree->references.begin(), tree->references.end(), [&](const ReferenceText &reference) {
        if (!reference.last || reference.word != sheet.column(run.column).key ||
            (!reference.sheet.empty() && reference.sheet != sheet.key()))
            return false;
        const std::int64_t end =
            reference.last->isSigned ? std::int64_t{line} + reference.last->value : reference.last->value - 1;
        return end == run.last;
    });
}

} // namespace

Looks looksOf(const Tree &tree)
{
    Looks looks;
    for (const ReferenceText &reference : tree.references)
        for (const auto *index : {&reference.first, &reference.last})
            if (*index && (*index)->isSigned) {
                looks.up = looks.up || (*index)->value < 0;
                looks.down = looks.down || (*index)->value > 0;
            }
    return looks;
}

std::pair<std::uint32_t, std::uint32_t> filledRun(const Workbook &workbook, const CellAt &at,
                                                  const UnitTable &units)
{
    const std::pair alone{at.line, at.line};
    const Sheet &sheet = workbook.sheets[at.sheet];
    const Cell &cell = sheet.cell(at.column, at.line);
    if (cell.blank() || sheet.column(at.column).kind != ColumnKind::amounts)
        return alone;
    auto [first, last] = alone;
    while (first > 0 && sameText(sheet.cell(at.column, first - 1), cell))
        --first;
    while (last + 1 < sheet.lineCount() && sameText(sheet.cell(at.column, last + 1), cell))
        ++last;
    return first < last && refersToCell(cell.typed(), units) ? std::pair{first, last} : alone;
}

bool gapJoins(const Workbook &workbook, const RunAt &run, const Looks &looks, const StructuralChange &change,
              const UnitTable &units)
{
    const LineMap map(change);
    if (change.sheet != run.sheet || (!map.isInsertion() && !map.isMove()))
        return false;
    if (map.isMove() && map.blockFirst() <= run.last && map.blockEnd() > run.first)
        return false; // lines of the run itself move
    const std::uint32_t gap = map.gap(), lines = workbook.sheets[run.sheet].lineCount();
    if (gap > run.first && gap <= run.last)
        return true;
    if (gap == run.first)
        return (map.isInsertion() && change.side == InsertSide::above) || (looks.up && gap > 0);
    if (gap != run.last + 1)
        return false;
    return (map.isInsertion() && change.side == InsertSide::below) || (looks.down && gap < lines) ||
           totalUnder(workbook, run, units);
}

bool isFree(const Cell &cell)
{
    return cell.blank() && cell.beside().ask.empty() && cell.beside().tolerance.empty();
}

std::vector<Takeover> takeovers(const Workbook &workbook, const StructuralChange &change,
                                const UnitTable &units)
{
    std::vector<Takeover> result;
    const LineMap map(change);
    if (!map.isInsertion() && !map.isMove())
        return result;
    const Sheet &sheet = workbook.sheets[change.sheet];
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c) {
        // the run above the gap and the one below it; the side of the command decides between the two
        std::vector<std::uint32_t> lines;
        if (map.gap() > 0 && map.gap() <= sheet.lineCount())
            lines.push_back(map.gap() - 1);
        if (map.gap() < sheet.lineCount())
            lines.insert(change.side == InsertSide::above ? lines.begin() : lines.end(), map.gap());
        for (const std::uint32_t line : lines) {
            const auto [first, last] = filledRun(workbook, {change.sheet, c, line}, units);
            if (first == last)
                continue;
            const auto tree = parseFormula(sheet.cell(c, line).typed(), units);
            if (tree && gapJoins(workbook, {change.sheet, c, first, last}, looksOf(*tree), change, units)) {
                result.push_back({c, line});
                break;
            }
        }
    }
    return result;
}

std::vector<Takeover> takeovers(const Workbook &workbook, std::uint32_t sheet, std::uint32_t at,
                                InsertSide side, const UnitTable &units)
{
    StructuralChange change;
    change.kind = StructuralChange::Kind::insertLines;
    change.sheet = sheet;
    change.at = at;
    change.side = side;
    return takeovers(workbook, change, units);
}

} // namespace puteal
