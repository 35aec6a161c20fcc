/// Written and read back: the file's own reader says what it cannot hold.
#include "session/fits_file.h"

#include <fmt/format.h>

#include "base/limits.h"
#include "file/reader.h"
#include "file/writer.h"
#include "sheet/typed_text.h"

namespace puteal
{

namespace
{

/// What stands beside a cell must fit its text and itself.
Result<void> besideFits(const UndoStep::CellChange &change, const Workbook &workbook, const TextJudge &judge)
{
    const auto &[at, before, after] = change;
    if (!after.attributes)
        return {};
    if (const auto clash = clashWithin(*after.attributes))
        return fail(ErrorKind::refused, *clash);
    const ColumnKind kind = workbook.sheets[at.sheet].column(at.column).kind;
    if (const auto clash = clashWithText(*after.attributes, after.typed(), kind, judge))
        return fail(ErrorKind::refused, *clash);
    return {};
}

Result<void> refused(const std::string &words)
{
    return fail(ErrorKind::refused, "the file could not hold this: " + words);
}

/// Name of the first thing beside the cell that reads back otherwise.
std::string_view firstDifference(const Attributes &a, const Attributes &b)
{
    if (a.name != b.name)
        return "name";
    if (a.unit != b.unit)
        return "set unit";
    if (a.sources != b.sources)
        return "source";
    if (a.figures != b.figures || a.places != b.places)
        return "number of figures or places";
    if (a.list != b.list || a.choices != b.choices)
        return "list of choices";
    if (a.limit != b.limit)
        return "limit";
    if (a.tolerance != b.tolerance)
        return "tolerance";
    if (a.ask != b.ask)
        return "question";
    return "note";
}

/// A workbook of that one cell, with the declarations it may use.
Workbook aloneWith(const Workbook &workbook, const CellAt &at, const Cell &cell)
{
    Workbook alone;
    alone.things = workbook.things;
    alone.lists = workbook.lists;
    alone.sources = workbook.sources;
    const Sheet &sheet = workbook.sheets[at.sheet];
    Sheet &only = alone.sheets.emplace_back(sheet.key(), sheet.title());
    only.insertColumn(0, sheet.column(at.column));
    only.insertLines(0, 1);
    only.setCell(0, 0, cell);
    return alone;
}

Result<void> attributesFit(const UndoStep::CellChange &change, const Workbook &workbook)
{
    const auto &[at, before, after] = change;
    if (!after.attributes || before.attributes == after.attributes)
        return {};
    const Workbook alone = aloneWith(workbook, at, after);
    const auto back = readWorkbook(writeWorkbook(alone));
    if (!back)
        return refused(back.error().words);
    if (*back == alone)
        return {};
    const Cell *read = back->cell({0, 0, 0});
    if (!read)
        return refused("something beside the cell holds a line break");
    return refused(
        fmt::format("the {} would read back otherwise",
                    firstDifference(*after.attributes, read->attributes ? *read->attributes : Attributes{})));
}

bool declares(const Edit &edit)
{
    if (const auto *beside = std::get_if<SetAttributes>(&edit))
        return !beside->declared.empty();
    return std::holds_alternative<SetSources>(edit) || std::holds_alternative<SetLists>(edit) ||
           std::holds_alternative<SetCharts>(edit) || std::holds_alternative<SetExpectations>(edit) ||
           std::holds_alternative<ChangeColumn>(edit) || std::holds_alternative<AddColumn>(edit) ||
           std::holds_alternative<SetTitle>(edit) || std::holds_alternative<ChangeSheet>(edit) ||
           std::holds_alternative<AddSheet>(edit);
}

Result<void> declarationsFit(const Workbook &workbook)
{
    const auto back = readWorkbook(writeWorkbook(workbook));
    if (!back)
        return refused(back.error().words);
    if (back->sources.size() > workbook.sources.size())
        return fail(ErrorKind::refused,
                    fmt::format("the source {} is still used; take it away at its cells first",
                                back->sources.back().id));
    if (!(*back == workbook))
        return refused("something in it is empty, holds a line break or has blanks at its ends");
    return {};
}

std::uint64_t placesOf(const Workbook &workbook)
{
    std::uint64_t places = 0;
    for (const Sheet &sheet : workbook.sheets)
        places += std::uint64_t{sheet.lineCount()} * (sheet.columnCount() + 1U);
    return places;
}

Result<void> filledAfter(const UndoStep &step, const Workbook &workbook)
{
    if (step.after)
        return filledFit(*step.after, 0);
    std::int64_t more = 0;
    for (const auto &change : step.cells)
        more += (change.after.blank() ? 0 : 1) - (change.before.blank() ? 0 : 1);
    return more > 0 ? filledFit(workbook, more) : Result<void>();
}

/// The cells of the lines that a pasted block found and did not add.
Result<void> blockFits(const SetBlock &edit, const UndoStep &step, const Workbook &workbook,
                       const TextJudge &judge)
{
    for (std::uint32_t r = 0; r < edit.rows.size(); ++r)
        for (std::uint32_t c = 0; c < edit.rows[r].size(); ++c) {
            const CellAt at{edit.topLeft.sheet, edit.topLeft.column + c, edit.topLeft.line + r};
            const Cell *before = workbook.cell(at);
            if (!before)
                return {};
            if (auto fits = besideFits({at, *before, *step.after->cell(at)}, *step.after, judge); !fits)
                return fits;
        }
    return {};
}

} // namespace

Result<void> placesFit(const Workbook &workbook, std::uint64_t more)
{
    const std::uint64_t places = placesOf(workbook) + more;
    if (places <= limits::places)
        return {};
    return fail(ErrorKind::limit,
                fmt::format("the sheets would have {} places (lines times columns) together, {} are the "
                            "most; use a second workbook",
                            places, limits::places));
}

Result<void> filledFit(const Workbook &workbook, std::int64_t more)
{
    if (placesOf(workbook) <= limits::filledCells) // no need to count
        return {};
    std::int64_t filled = more;
    for (const Sheet &sheet : workbook.sheets)
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            for (std::uint32_t l = 0; l < sheet.lineCount(); ++l)
                filled += sheet.cell(c, l).blank() ? 0 : 1;
    if (filled <= std::int64_t{limits::filledCells})
        return {};
    return fail(ErrorKind::limit, fmt::format("the workbook would have {} filled cells, {} are the most; use "
                                              "a second workbook",
                                              filled, limits::filledCells));
}

Result<void> fitsFile(const Edit &edit, const UndoStep &step, const Workbook &workbook)
{
    if (auto fits = filledAfter(step, workbook); !fits)
        return fits;
    const TextJudge judge(workbook.things, workbook.lists);
    for (const auto &change : step.cells) {
        if (auto fits = besideFits(change, workbook, judge); !fits)
            return fits;
        if (auto fits = attributesFit(change, workbook); !fits)
            return fits;
    }
    if (const auto *beside = std::get_if<SetAttributes>(&edit); beside && step.after) {
        const Cell &before = *workbook.cell(beside->at), &after = *step.after->cell(beside->at);
        if (auto fits = besideFits({beside->at, before, after}, *step.after, judge); !fits)
            return fits;
    }
    if (const auto *block = std::get_if<SetBlock>(&edit); block && step.after)
        if (auto fits = blockFits(*block, step, workbook, judge); !fits)
            return fits;
    if (step.after && declares(edit))
        return declarationsFit(*step.after);
    return {};
}

} // namespace puteal
