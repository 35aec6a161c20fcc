/// Edits that move lines, columns, sheets or names: every text that refers to them is rewritten.
#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "session/applier.h"
#include "session/fits_file.h"

namespace puteal
{

using Kind = StructuralChange::Kind;

namespace
{

/// Longer names make longer texts: none may outgrow what a cell holds.
Result<void> textsFit(const RewrittenWorkbook &texts, const Workbook &before)
{
    for (const TextChange &change : texts.changes)
        if (change.part == TextPart::cell && codePoints(change.newText) > limits::cellCharacters)
            return fail(ErrorKind::limit,
                        fmt::format("sheet {} line {} would have {} characters, {} are the most; shorten it "
                                    "first",
                                    before.sheets[change.before.sheet].key(), change.before.line + 1,
                                    codePoints(change.newText), limits::cellCharacters));
    return {};
}

} // namespace

/// Texts are rewritten as of before, then `alter` moves things, then the new texts go to their places.
Result<UndoStep> Applier::structural(std::string words, const StructuralChange &change, const Alter &alter)
{
    const RewrittenWorkbook texts = rewriteAll(state.m_workbook, change, state.m_units);
    if (auto fit = textsFit(texts, state.m_workbook); !fit)
        return tl::unexpected(fit.error());
    auto after = std::make_shared<Workbook>(state.m_workbook);
    alter(*after);
    applyTexts(*after, texts);
    UndoStep step;
    step.words = std::move(words);
    step.notes = texts.notes;
    step.before = std::make_shared<const Workbook>(state.m_workbook);
    step.after = std::move(after);
    return step;
}

UndoStep Applier::whole(std::string words, const Alter &alter)
{
    auto after = std::make_shared<Workbook>(state.m_workbook);
    alter(*after);
    UndoStep step;
    step.words = std::move(words);
    if (*after == state.m_workbook)
        return step;
    step.before = std::make_shared<const Workbook>(state.m_workbook);
    step.after = std::move(after);
    return step;
}

Result<UndoStep> Applier::make(const InsertLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.at > sheet.lineCount() || edit.count == 0)
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    const std::uint64_t lines = std::uint64_t{sheet.lineCount()} + edit.count;
    if (lines > limits::linesPerSheet)
        return fail(ErrorKind::limit, fmt::format("a sheet holds at most {} lines, this would make {}",
                                                  limits::linesPerSheet, lines));
    if (auto fits = placesFit(state.m_workbook, std::uint64_t{edit.count} * (sheet.columnCount() + 1U));
        !fits)
        return tl::unexpected(fits.error());
    StructuralChange change;
    change.kind = Kind::insertLines;
    change.sheet = edit.sheet;
    change.at = edit.at;
    change.count = edit.count;
    change.side = edit.side;
    auto step = structural(fmt::format("insert {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
                           [&](Workbook &book) { book.sheets[edit.sheet].insertLines(edit.at, edit.count); });
    if (step)
        step->focus = CellAt{edit.sheet, 0, edit.at};
    return step;
}

Result<UndoStep> Applier::make(const DeleteLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.count == 0 || edit.at >= sheet.lineCount() || edit.count > sheet.lineCount() - edit.at)
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    StructuralChange change;
    change.kind = Kind::deleteLines;
    change.sheet = edit.sheet;
    change.at = edit.at;
    change.count = edit.count;
    auto step = structural(fmt::format("delete {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
                           [&](Workbook &book) { book.sheets[edit.sheet].deleteLines(edit.at, edit.count); });
    if (step)
        step->focus =
            CellAt{edit.sheet, 0, std::min(edit.at, std::max(sheet.lineCount() - edit.count, 1U) - 1)};
    return step;
}

Result<UndoStep> Applier::make(const MoveLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.count == 0 || edit.from >= sheet.lineCount() || edit.count > sheet.lineCount() - edit.from ||
        edit.to > sheet.lineCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    if (edit.to >= edit.from && edit.to <= edit.from + edit.count)
        return UndoStep{};
    StructuralChange change;
    change.kind = Kind::moveLines;
    change.sheet = edit.sheet;
    change.at = edit.from;
    change.count = edit.count;
    change.to = edit.to;
    auto step = structural(
        fmt::format("move {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
        [&](Workbook &book) { book.sheets[edit.sheet].moveLines(edit.from, edit.count, edit.to); });
    if (step)
        step->focus = CellAt{edit.sheet, 0, edit.to > edit.from ? edit.to - edit.count : edit.to};
    return step;
}

Result<UndoStep> Applier::make(const RenameCell &edit)
{
    if (auto there = place(edit.at); !there)
        return tl::unexpected(there.error());
    if (auto good = nameFits(edit.at, edit.name); !good)
        return tl::unexpected(good.error());
    const Cell &cell = *state.m_workbook.cell(edit.at);
    const std::string old = cell.beside().name;
    if (old == edit.name)
        return UndoStep{};
    Attributes beside = cell.beside();
    beside.name = edit.name;
    if (old.empty())
        return make(SetAttributes{edit.at, beside});
    StructuralChange change;
    change.kind = edit.name.empty() ? Kind::deleteName : Kind::renameName;
    change.sheet = edit.at.sheet;
    change.oldWord = old;
    change.newWord = edit.name;
    auto step =
        structural(edit.name.empty() ? fmt::format("take the name {} away", old)
                                     : fmt::format("rename {} to {}", old, edit.name),
                   change, [&](Workbook &book) {
                       Cell named = *book.cell(edit.at);
                       named.attributes =
                           beside.empty() ? nullptr : std::make_shared<const Attributes>(beside);
                       book.sheets[edit.at.sheet].setCell(edit.at.column, edit.at.line, std::move(named));
                   });
    if (step)
        step->focus = edit.at;
    return step;
}

Result<UndoStep> Applier::make(const AddColumn &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.at > sheet.columnCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} columns", sheet.columnCount()));
    if (sheet.columnCount() >= limits::columnsPerSheet)
        return fail(ErrorKind::limit, fmt::format("a sheet holds at most {} columns; use a second sheet",
                                                  limits::columnsPerSheet));
    if (auto fits = placesFit(state.m_workbook, sheet.lineCount()); !fits)
        return tl::unexpected(fits.error());
    if (auto good = keyFits(edit.sheet, edit.column.key, {}); !good)
        return tl::unexpected(good.error());
    return whole(fmt::format("add column {}", edit.column.key),
                 [&](Workbook &book) { book.sheets[edit.sheet].insertColumn(edit.at, edit.column); });
}

Result<UndoStep> Applier::make(const ChangeColumn &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.column >= sheet.columnCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} columns", sheet.columnCount()));
    if (auto good = keyFits(edit.sheet, edit.newColumn.key, edit.column); !good)
        return tl::unexpected(good.error());
    if (!edit.newColumn.attributes.unit.empty())
        if (auto unit = readUnit(edit.newColumn.attributes.unit, state.m_units); !unit)
            return tl::unexpected(unit.error());
    const auto alter = [&](Workbook &book) { book.sheets[edit.sheet].column(edit.column) = edit.newColumn; };
    const std::string old = sheet.column(edit.column).key;
    if (old == edit.newColumn.key)
        return whole(fmt::format("change column {}", old), alter);
    StructuralChange change;
    change.kind = Kind::renameColumn;
    change.sheet = edit.sheet;
    change.at = edit.column;
    change.oldWord = old;
    change.newWord = edit.newColumn.key;
    return structural(fmt::format("rename column {} to {}", old, edit.newColumn.key), change, alter);
}

Result<UndoStep> Applier::make(const DeleteColumn &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.column >= sheet.columnCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} columns", sheet.columnCount()));
    if (sheet.columnCount() == 1)
        return fail(ErrorKind::range, "a sheet needs at least one column");
    StructuralChange change;
    change.kind = Kind::deleteColumn;
    change.sheet = edit.sheet;
    change.at = edit.column;
    change.oldWord = sheet.column(edit.column).key;
    return structural(fmt::format("delete column {}", change.oldWord), change,
                      [&](Workbook &book) { book.sheets[edit.sheet].deleteColumn(edit.column); });
}

Result<UndoStep> Applier::make(const AddSheet &edit)
{
    if (edit.at > state.m_workbook.sheets.size())
        return fail(ErrorKind::range,
                    fmt::format("the workbook has {} sheets", state.m_workbook.sheets.size()));
    if (state.m_workbook.sheets.size() >= limits::sheets)
        return fail(ErrorKind::limit, fmt::format("a workbook holds at most {} sheets", limits::sheets));
    if (auto good = sheetKeyFits(edit.key, {}); !good)
        return tl::unexpected(good.error());
    Sheet sheet = freshSheet(edit.key, edit.title.empty() ? edit.key : edit.title);
    if (auto fits =
            placesFit(state.m_workbook, std::uint64_t{sheet.lineCount()} * (sheet.columnCount() + 1U));
        !fits)
        return tl::unexpected(fits.error());
    UndoStep step = whole(fmt::format("add sheet {}", edit.key), [&](Workbook &book) {
        book.sheets.insert(book.sheets.begin() + edit.at, std::move(sheet));
    });
    step.focus = CellAt{edit.at, 0, 0};
    return step;
}

Result<UndoStep> Applier::make(const ChangeSheet &edit)
{
    if (edit.sheet >= state.m_workbook.sheets.size())
        return fail(ErrorKind::range, "there is no such sheet");
    if (auto good = sheetKeyFits(edit.key, edit.sheet); !good)
        return tl::unexpected(good.error());
    const auto alter = [&](Workbook &book) {
        book.sheets[edit.sheet].setKey(edit.key);
        book.sheets[edit.sheet].setTitle(edit.title);
    };
    const std::string old = state.m_workbook.sheets[edit.sheet].key();
    if (old == edit.key)
        return whole(fmt::format("title of sheet {}", old), alter);
    StructuralChange change;
    change.kind = Kind::renameSheet;
    change.sheet = edit.sheet;
    change.oldWord = old;
    change.newWord = edit.key;
    return structural(fmt::format("rename sheet {} to {}", old, edit.key), change, alter);
}

Result<UndoStep> Applier::make(const DeleteSheet &edit)
{
    if (edit.sheet >= state.m_workbook.sheets.size())
        return fail(ErrorKind::range, "there is no such sheet");
    if (state.m_workbook.sheets.size() == 1)
        return fail(ErrorKind::range, "a workbook needs at least one sheet");
    StructuralChange change;
    change.kind = Kind::deleteSheet;
    change.sheet = edit.sheet;
    change.oldWord = state.m_workbook.sheets[edit.sheet].key();
    auto step = structural(fmt::format("delete sheet {}", change.oldWord), change,
                           [&](Workbook &book) { book.sheets.erase(book.sheets.begin() + edit.sheet); });
    if (step)
        step->focus = CellAt{edit.sheet > 0 ? edit.sheet - 1 : 0, 0, 0};
    return step;
}

} // namespace puteal
