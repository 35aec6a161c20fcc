/// Edits that touch single cells, and undo: everything else is in session_structure.cpp.
#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "session/applier.h"
#include "session/fits_file.h"

namespace puteal
{

namespace
{

/// The cells of the nodes and those edited, sorted, each once.
std::vector<CellAt> cellsOf(const Program &program, const std::vector<NodeId> &nodes,
                            std::vector<CellAt> edited)
{
    std::vector<CellAt> cells;
    cells.reserve(nodes.size() + edited.size());
    for (const NodeId node : nodes)
        cells.push_back(program.cellOf(node));
    // Nodes come in the order of their cells but for limits and expectations.
    if (!std::is_sorted(cells.begin(), cells.end()))
        std::sort(cells.begin(), cells.end());
    const auto known = static_cast<std::ptrdiff_t>(cells.size());
    std::sort(edited.begin(), edited.end());
    cells.insert(cells.end(), edited.begin(), edited.end());
    std::inplace_merge(cells.begin(), cells.begin() + known, cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    return cells;
}

} // namespace

ChangeSet SessionState::applyCells(const std::vector<UndoStep::CellChange> &cells, bool forward)
{
    std::vector<CellAt> edited;
    edited.reserve(cells.size());
    for (const auto &change : cells) {
        m_workbook.sheets[change.at.sheet].setCell(change.at.column, change.at.line,
                                                   forward ? change.after : change.before);
        edited.push_back(change.at);
    }
    m_overview.reset();
    const Changed changed = m_program->update(m_workbook, edited, m_values);
    ChangeSet set;
    set.changed = cellsOf(*m_program, changed.nodes, std::move(edited));
    set.charts = chartKeys();
    return set;
}

ChangeSet SessionState::goThrough(const UndoStep &step, bool forward)
{
    ChangeSet set;
    if (step.after) {
        m_workbook = forward ? *step.after : *step.before;
        rebuild();
        set.structure = true;
        set.charts = chartKeys();
    } else if (forward) {
        set = applyCells(step.cells, true);
    } else {
        set = applyCells({step.cells.rbegin(), step.cells.rend()}, false);
    }
    set.words = step.words;
    set.focus = step.focus;
    return set;
}

ChangeSet SessionState::carryOut(UndoStep step)
{
    ChangeSet set = goThrough(step, true);
    set.notes = step.notes;
    if (m_saved > m_done)
        m_saved = static_cast<std::size_t>(-1);
    m_steps.resize(m_done);
    m_steps.push_back(std::move(step));
    ++m_done;
    return set;
}

ChangeSet SessionState::undo()
{
    return canUndo() ? goThrough(m_steps[--m_done], false) : ChangeSet{};
}

ChangeSet SessionState::redo()
{
    return canRedo() ? goThrough(m_steps[m_done++], true) : ChangeSet{};
}

namespace
{

/// The sheet an edit works on, if it names one.
std::optional<std::uint32_t> sheetOf(const Edit &edit)
{
    return std::visit(
        [](const auto &one) -> std::optional<std::uint32_t> {
            if constexpr (requires { one.sheet; })
                return one.sheet;
            else if constexpr (requires { one.topLeft; })
                return one.topLeft.sheet;
            else
                return {};
        },
        edit);
}

} // namespace

Result<ChangeSet> SessionState::apply(const Edit &edit)
{
    if (const auto sheet = sheetOf(edit); sheet && *sheet >= m_workbook.sheets.size())
        return fail(ErrorKind::range, "there is no such sheet");
    Applier applier(*this);
    auto step = std::visit([&](const auto &one) { return applier.make(one); }, edit);
    if (!step)
        return tl::unexpected(step.error());
    if (step->cells.empty() && !step->after)
        return ChangeSet{};
    if (auto fits = fitsFile(edit, *step, m_workbook); !fits)
        return tl::unexpected(fits.error());
    ChangeSet set = carryOut(std::move(*step));
    set.rewritten = applier.rewritten;
    return set;
}

namespace
{

Result<void> checkText(const std::string &text)
{
    if (codePoints(text) > limits::cellCharacters)
        return fail(
            ErrorKind::limit,
            fmt::format("a cell holds at most {} characters, this text has {}; split it over several lines",
                        limits::cellCharacters, codePoints(text)));
    if (!isCleanText(text))
        return fail(ErrorKind::syntax,
                    "the text holds control characters or is no UTF-8; paste it as plain text");
    return {};
}

/// As the file holds it: no blanks at the ends; an amount or formula is one line of text, so tabs and line
/// breaks in it are blanks.
std::string tidied(std::string_view text, ColumnKind kind)
{
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos)
        return {};
    std::string tidy(text.substr(first, text.find_last_not_of(blanks) + 1 - first));
    if (kind == ColumnKind::amounts)
        std::replace_if(
            tidy.begin(), tidy.end(), [](char c) { return c == '\t' || c == '\r' || c == '\n'; }, ' ');
    return tidy;
}

/// The unit that a bare number typed into the cell takes: its set unit, or the unit the cell had before.
std::optional<Unit> unitOf(const Sheet &sheet, std::uint32_t column, std::uint32_t line,
                           const UnitTable &units)
{
    const Attributes beside = sheet.effective(column, line);
    if (!beside.unit.empty()) {
        const auto set = readUnit(beside.unit, units);
        return set ? std::optional(*set) : std::nullopt;
    }
    const Cell &old = sheet.cell(column, line);
    if (old.blank())
        return {};
    const auto before = readTyped(old.typed(), {&units, nullptr, 0, nullptr});
    const bool hasUnit = before && before->form == TypedForm::value && before->value.hasUnit &&
                         before->value.type.kind == ValueKind::quantity;
    return hasUnit ? std::optional(before->value.unit) : std::nullopt;
}

} // namespace

/// The cell as it will be stored.
Result<Cell> Applier::typed(const Sheet &sheet, std::uint32_t column, std::uint32_t line,
                            const std::string &raw)
{
    const std::string text = tidied(raw, sheet.column(column).kind);
    if (auto clean = checkText(text); !clean)
        return tl::unexpected(clean.error());
    Cell cell = sheet.cell(column, line);
    cell.text.reset();
    if (text.empty())
        return cell;
    std::string stored = text;
    if (sheet.column(column).kind == ColumnKind::amounts)
        if (const auto unit = unitOf(sheet, column, line, state.m_units)) {
            const auto read = readTyped(text, {&state.m_units, nullptr, 0, &*unit});
            if (read && read->rewritten)
                stored = *read->rewritten;
        }
    if (stored != text)
        rewritten = stored;
    cell.text = std::make_shared<const std::string>(std::move(stored));
    return cell;
}

Result<void> Applier::place(const CellAt &at) const
{
    if (state.m_workbook.cell(at))
        return {};
    return fail(ErrorKind::range, "there is no such cell; the sheet is smaller");
}

void Applier::change(UndoStep &step, const CellAt &at, Cell after)
{
    const Cell &before = *state.m_workbook.cell(at);
    if (before == after)
        return;
    step.cells.push_back({at, before, std::move(after)});
}

Result<UndoStep> Applier::make(const SetText &edit)
{
    if (auto there = place(edit.at); !there)
        return tl::unexpected(there.error());
    auto cell = typed(state.m_workbook.sheets[edit.at.sheet], edit.at.column, edit.at.line, edit.text);
    if (!cell)
        return tl::unexpected(cell.error());
    UndoStep step;
    step.words = fmt::format("{} line {}", cell->blank() ? "clear" : "type into", edit.at.line + 1);
    step.focus = edit.at;
    change(step, edit.at, std::move(*cell));
    return step;
}

Result<UndoStep> Applier::make(const ClearBlock &edit)
{
    UndoStep step;
    step.words = "clear cells";
    step.focus = CellAt{edit.sheet, edit.left, edit.first};
    for (std::uint32_t c = edit.left; c <= edit.right; ++c)
        for (std::uint32_t l = edit.first; l <= edit.last; ++l) {
            const CellAt at{edit.sheet, c, l};
            if (auto there = place(at); !there)
                return tl::unexpected(there.error());
            Cell cell = *state.m_workbook.cell(at);
            cell.text.reset();
            change(step, at, std::move(cell));
        }
    return step;
}

Result<UndoStep> Applier::make(const FillDown &edit)
{
    UndoStep step;
    step.words = fmt::format("fill down {} lines", edit.last - edit.first);
    step.focus = CellAt{edit.sheet, edit.left, edit.first};
    for (std::uint32_t c = edit.left; c <= edit.right; ++c) {
        if (auto there = place({edit.sheet, c, edit.first}); !there)
            return tl::unexpected(there.error());
        const Cell &model = *state.m_workbook.cell({edit.sheet, c, edit.first});
        for (std::uint32_t l = edit.first + 1; l <= edit.last; ++l) {
            const CellAt at{edit.sheet, c, l};
            if (auto there = place(at); !there)
                return tl::unexpected(there.error());
            Cell cell = *state.m_workbook.cell(at);
            cell.text = model.text;
            change(step, at, std::move(cell));
        }
    }
    return step;
}

Result<UndoStep> Applier::make(const SetBlock &edit)
{
    const auto &[s, left, top] = edit.topLeft;
    const Sheet &sheet = state.m_workbook.sheets[s];
    const std::size_t columns = sheet.columnCount() - std::min(left, sheet.columnCount());
    for (const auto &row : edit.rows)
        if (row.size() > columns)
            return fail(
                ErrorKind::range,
                fmt::format("the text has {} columns, the sheet has {} from here on; add columns first",
                            row.size(), columns));
    const std::uint64_t needed = std::uint64_t{top} + edit.rows.size();
    if (needed > limits::linesPerSheet)
        return fail(ErrorKind::limit, fmt::format("a sheet holds at most {} lines, this needs {}",
                                                  limits::linesPerSheet, needed));
    UndoStep step;
    step.words = fmt::format("paste {} line{}", edit.rows.size(), edit.rows.size() == 1 ? "" : "s");
    step.focus = edit.topLeft;
    std::shared_ptr<Workbook> grown; // null = the block fits
    if (needed > sheet.lineCount()) {
        const auto more = static_cast<std::uint32_t>(needed - sheet.lineCount());
        if (auto fits = placesFit(state.m_workbook, std::uint64_t{more} * (sheet.columnCount() + 1U)); !fits)
            return tl::unexpected(fits.error());
        grown = std::make_shared<Workbook>(state.m_workbook);
        grown->sheets[s].insertLines(sheet.lineCount(), more);
    }
    for (std::uint32_t r = 0; r < edit.rows.size(); ++r)
        for (std::uint32_t c = 0; c < edit.rows[r].size(); ++c) {
            auto cell = typed(grown ? grown->sheets[s] : sheet, left + c, top + r, edit.rows[r][c]);
            if (!cell)
                return tl::unexpected(cell.error());
            if (grown)
                grown->sheets[s].setCell(left + c, top + r, std::move(*cell));
            else
                change(step, {s, left + c, top + r}, std::move(*cell));
        }
    rewritten.reset();
    if (grown) {
        step.before = std::make_shared<const Workbook>(state.m_workbook);
        step.after = std::move(grown);
    }
    return step;
}

} // namespace puteal
