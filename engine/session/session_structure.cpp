/// Edits that move lines, columns, sheets or names, and those of the workbook's own records.
#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "session/applier.h"

namespace puteal
{

using Kind = StructuralChange::Kind;

/// Texts are rewritten as of before, then `alter` moves things, then the new texts go to their places.
template<class Alter>
UndoStep Applier::structural(std::string words, const StructuralChange &change, Alter alter)
{
    const RewrittenWorkbook texts = rewriteAll(state.m_workbook, change, state.m_units);
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

template<class Alter>
UndoStep Applier::whole(std::string words, Alter alter)
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

Result<void> Applier::wordIsFree(std::uint32_t sheet, const std::string &word) const
{
    const Sheet &page = state.m_workbook.sheets[sheet];
    for (std::uint32_t c = 0; c < page.columnCount(); ++c)
        for (std::uint32_t l = 0; l < page.lineCount(); ++l) {
            const CellAt at{sheet, c, l};
            const auto &tree = state.m_program->facts(state.m_program->nodeOf(at)).tree;
            // A formula that names a word nobody has yet waits for it: taking it on is what its author wants.
            if (tree && isBareWordIn(*tree, word) && bind(*tree, state.m_workbook, at))
                return fail(ErrorKind::name,
                            fmt::format("`{}` already means something in {}; choose another word", word,
                                        state.placeWords(at)));
        }
    return {};
}

Result<void> Applier::nameFits(const CellAt &at, const std::string &name) const
{
    if (name.empty() || name == state.m_workbook.cell(at)->beside().name)
        return {};
    if (auto good = checkName(state.m_workbook.sheets[at.sheet], name, state.m_units.isUnitWord(name), at);
        !good)
        return good;
    return wordIsFree(at.sheet, name);
}

Result<void> Applier::keyFits(std::uint32_t sheet, const std::string &key,
                              std::optional<std::uint32_t> self) const
{
    const Sheet &page = state.m_workbook.sheets[sheet];
    if (self && page.column(*self).key == key)
        return {};
    if (!isName(key, true) || isReservedWord(key))
        return fail(
            ErrorKind::name,
            fmt::format("`{}` is no column key; use small letters, digits and _, first a letter", key));
    if (state.m_units.isUnitWord(key))
        return fail(ErrorKind::name, fmt::format("`{}` is a unit word; choose another key", key));
    if (page.columnByKey(key))
        return fail(ErrorKind::name,
                    fmt::format("the sheet already has a column `{}`; choose another key", key));
    if (page.named(key, sheet))
        return fail(ErrorKind::name,
                    fmt::format("`{}` is the name of a cell of this sheet; choose another key", key));
    return wordIsFree(sheet, key);
}

Result<void> Applier::sheetKeyFits(const std::string &key, std::optional<std::uint32_t> self) const
{
    if (self && state.m_workbook.sheets[*self].key() == key)
        return {};
    if (!isName(key) || isReservedWord(key))
        return fail(
            ErrorKind::name,
            fmt::format("`{}` is no sheet key; use two or more small letters, digits and _, first a letter",
                        key));
    if (state.m_workbook.sheetByKey(key))
        return fail(ErrorKind::name, fmt::format("there is a sheet `{}` already; choose another key", key));
    return {};
}

Result<UndoStep> Applier::make(const SetAttributes &edit)
{
    if (auto there = place(edit.at); !there)
        return tl::unexpected(there.error());
    if (auto good = nameFits(edit.at, edit.attributes.name); !good)
        return tl::unexpected(good.error());
    if (!edit.attributes.unit.empty())
        if (auto unit = readUnit(edit.attributes.unit, state.m_units); !unit)
            return tl::unexpected(unit.error());
    if (!edit.attributes.list.empty() && !state.m_workbook.listByName(edit.attributes.list))
        return fail(ErrorKind::name,
                    fmt::format("there is no list `{}` in this workbook", edit.attributes.list));
    const auto isDeclaredHere = [&](const std::string &mark) {
        return std::any_of(edit.declared.begin(), edit.declared.end(),
                           [&](const SourceMark &source) { return source.id == mark; });
    };
    for (const auto &mark : edit.attributes.sources)
        if (!state.m_workbook.sourceById(mark) && !isDeclaredHere(mark))
            return fail(ErrorKind::name,
                        fmt::format("the source {} is not declared; declare it first", mark));
    Cell cell = *state.m_workbook.cell(edit.at);
    cell.attributes = edit.attributes.empty() ? nullptr : std::make_shared<const Attributes>(edit.attributes);
    if (!edit.declared.empty())
        return declaredWith(edit, std::move(cell));
    UndoStep step;
    step.words = fmt::format("what stands beside line {}", edit.at.line + 1);
    step.focus = edit.at;
    change(step, edit.at, std::move(cell));
    return step;
}

Result<UndoStep> Applier::declaredWith(const SetAttributes &edit, Cell cell)
{
    for (const SourceMark &source : edit.declared) {
        if (auto good = markFits(source); !good)
            return tl::unexpected(good.error());
        if (state.m_workbook.sourceById(source.id))
            return fail(ErrorKind::name, fmt::format("there is a source {} already", source.id));
    }
    UndoStep step = whole(
        fmt::format("source {} at line {}", edit.declared.front().id, edit.at.line + 1), [&](Workbook &book) {
            book.sources.insert(book.sources.end(), edit.declared.begin(), edit.declared.end());
            book.sheets[edit.at.sheet].setCell(edit.at.column, edit.at.line, std::move(cell));
        });
    step.focus = edit.at;
    return step;
}

Result<UndoStep> Applier::make(const InsertLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.at > sheet.lineCount() || edit.count == 0)
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    if (sheet.lineCount() + edit.count > limits::linesPerSheet)
        return fail(ErrorKind::limit, fmt::format("a sheet holds at most {} lines, this would make {}",
                                                  limits::linesPerSheet, sheet.lineCount() + edit.count));
    StructuralChange change;
    change.kind = Kind::insertLines;
    change.sheet = edit.sheet;
    change.at = edit.at;
    change.count = edit.count;
    change.side = edit.side;
    UndoStep step =
        structural(fmt::format("insert {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
                   [&](Workbook &book) { book.sheets[edit.sheet].insertLines(edit.at, edit.count); });
    step.focus = CellAt{edit.sheet, 0, edit.at};
    return step;
}

Result<UndoStep> Applier::make(const DeleteLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.count == 0 || edit.at + edit.count > sheet.lineCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    StructuralChange change;
    change.kind = Kind::deleteLines;
    change.sheet = edit.sheet;
    change.at = edit.at;
    change.count = edit.count;
    UndoStep step =
        structural(fmt::format("delete {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
                   [&](Workbook &book) { book.sheets[edit.sheet].deleteLines(edit.at, edit.count); });
    step.focus = CellAt{edit.sheet, 0, std::min(edit.at, std::max(sheet.lineCount() - edit.count, 1U) - 1)};
    return step;
}

Result<UndoStep> Applier::make(const MoveLines &edit)
{
    const Sheet &sheet = state.m_workbook.sheets[edit.sheet];
    if (edit.count == 0 || edit.from + edit.count > sheet.lineCount() || edit.to > sheet.lineCount())
        return fail(ErrorKind::range, fmt::format("the sheet has {} lines", sheet.lineCount()));
    if (edit.to >= edit.from && edit.to <= edit.from + edit.count)
        return UndoStep{};
    StructuralChange change;
    change.kind = Kind::moveLines;
    change.sheet = edit.sheet;
    change.at = edit.from;
    change.count = edit.count;
    change.to = edit.to;
    UndoStep step = structural(
        fmt::format("move {} line{}", edit.count, edit.count == 1 ? "" : "s"), change,
        [&](Workbook &book) { book.sheets[edit.sheet].moveLines(edit.from, edit.count, edit.to); });
    step.focus = CellAt{edit.sheet, 0, edit.to > edit.from ? edit.to - edit.count : edit.to};
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
    UndoStep step =
        structural(edit.name.empty() ? fmt::format("take the name {} away", old)
                                     : fmt::format("rename {} to {}", old, edit.name),
                   change, [&](Workbook &book) {
                       Cell named = *book.cell(edit.at);
                       named.attributes =
                           beside.empty() ? nullptr : std::make_shared<const Attributes>(beside);
                       book.sheets[edit.at.sheet].setCell(edit.at.column, edit.at.line, std::move(named));
                   });
    step.focus = edit.at;
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
    UndoStep step = whole(fmt::format("add sheet {}", edit.key), [&](Workbook &book) {
        Sheet sheet(edit.key, edit.title.empty() ? edit.key : edit.title);
        sheet.insertColumn(0, Column{"item", ColumnKind::words, "Item", 32, {}});
        sheet.insertColumn(1, Column{"amount", ColumnKind::amounts, "Amount", 18, {}});
        sheet.insertLines(0, 30);
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
    UndoStep step = structural(fmt::format("delete sheet {}", change.oldWord), change,
                               [&](Workbook &book) { book.sheets.erase(book.sheets.begin() + edit.sheet); });
    step.focus = CellAt{edit.sheet > 0 ? edit.sheet - 1 : 0, 0, 0};
    return step;
}

Result<void> Applier::markFits(const SourceMark &source) const
{
    if (source.id.empty() || markWord(source.id[0]).empty() || markWord(source.id[0]) != source.kind)
        return fail(ErrorKind::name,
                    fmt::format("the source mark {} needs a letter of the list with its word", source.id));
    return {};
}

Result<UndoStep> Applier::make(const SetSources &edit)
{
    for (const SourceMark &source : edit.sources)
        if (auto good = markFits(source); !good)
            return tl::unexpected(good.error());
    return whole("declare sources", [&](Workbook &book) { book.sources = edit.sources; });
}

Result<UndoStep> Applier::make(const SetLists &edit)
{
    return whole("declare lists", [&](Workbook &book) { book.lists = edit.lists; });
}

Result<UndoStep> Applier::make(const SetTitle &edit)
{
    return whole("title of the workbook", [&](Workbook &book) { book.title = edit.title; });
}

Result<UndoStep> Applier::make(const SetCharts &edit)
{
    return whole("charts", [&](Workbook &book) { book.charts = edit.charts; });
}

Result<UndoStep> Applier::make(const SetExpectations &edit)
{
    if (edit.sheet >= state.m_workbook.sheets.size())
        return fail(ErrorKind::range, "there is no such sheet");
    return whole("expectations",
                 [&](Workbook &book) { book.sheets[edit.sheet].expectations = edit.expectations; });
}

} // namespace puteal
