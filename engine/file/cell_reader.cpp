/// Cells, filled runs and what stands beside them.
#include "file/sheet_reader.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "file/attribute_text.h"

namespace puteal
{

namespace
{

/// A cell of a words column: quoted words, or words as they are when somebody left the quotation marks out.
std::string wordsOf(std::string_view tail)
{
    if (tail.size() < 2 || tail.front() != '"' || tail.back() != '"')
        return std::string(tail);
    const std::string_view inner = tail.substr(1, tail.size() - 2);
    if (inner.find('\\') == std::string_view::npos && inner.find('"') == std::string_view::npos)
        return std::string(inner);
    auto words = unquoted(tail);
    return words ? std::move(*words) : std::string(tail);
}

} // namespace

bool SheetReader::goodTail(std::string_view key, std::string_view tail)
{
    if (tail.size() < 2 || tail[0] != ' ' || tail[1] == ' ')
        return refuse(
            fmt::format("after `{}:` stand one blank and the text: a blank cell has no record", key));
    return true;
}

/// Quotation marks and escapes of words do not count: what a cell holds does.
bool SheetReader::shortEnough(std::string_view text)
{
    if (text.size() <= limits::cellCharacters || codePoints(text) <= limits::cellCharacters)
        return true;
    return refuse(fmt::format("the cell has {} characters, {} are the most: shorten it", codePoints(text),
                              limits::cellCharacters));
}

bool SheetReader::cell(std::uint32_t c, std::string_view tail)
{
    const std::string &key = m_sheet.column(c).key;
    Open &open = m_open[c];
    if (m_lines.empty())
        return refuse(fmt::format("the cell `{}` stands before the first `line`: put `line` in front", key));
    if (m_lines.back().skipped)
        return refuse(fmt::format(
            "the cell `{}` stands under `skip`: put `line` in front, and count the skip again", key));
    if (open.given == m_lines.size())
        return refuse(
            fmt::format("`{}` stands twice on this line: keep one, or put `line` between them", key));
    if (open.text || open.stopped == m_lines.size())
        return refuse(fmt::format(
            "`{0}` is filled from line {1} on: take this cell out, or put `stop {0}` on a line above", key,
            open.runBegin));
    if (open.givenAt == m_lines.size())
        return refuse(
            fmt::format("`{0}` has an `at {0}` on this line: put those attributes under the cell", key));
    if (!goodTail(key, tail))
        return false;
    if (++m_state.filled > limits::filledCells)
        return refuse(
            fmt::format("there are more than {} filled cells: split the workbook", limits::filledCells));
    open.given = static_cast<std::uint32_t>(m_lines.size());
    m_last = c;
    Cell &to = open.cells.back();
    const bool isWords = m_sheet.column(c).kind == ColumnKind::words;
    std::string text = isWords ? wordsOf(tail.substr(1)) : std::string(tail.substr(1));
    if (!shortEnough(text))
        return false;
    if (!text.empty())
        to.text = std::make_shared<const std::string>(std::move(text));
    if (m_state.scanner.indentedNext() && !beside(c, Under::cell, to.typed(), to.attributes))
        return false;
    if (to.text || to.attributes) // comments before nothing belong to what follows
        keepBefore(key);
    return true;
}

bool SheetReader::fill(std::string_view rest)
{
    const std::string_view key = leadingWord(rest);
    const auto c = m_sheet.columnByKey(key);
    if (!c || !rest.substr(key.size()).starts_with(':'))
        return refuse("`fill` takes a column, a colon and a formula, as in fill year: year[-1] + 1");
    if (m_lines.empty() || m_lines.back().skipped)
        return refuse(fmt::format("`fill {}` stands under no `line`: put `line` in front", key));
    Open &open = m_open[*c];
    if (m_sheet.column(*c).kind == ColumnKind::words)
        return refuse(fmt::format(
            "`{}` is a column of words, which are never filled: write the words on each line", key));
    if (open.given == m_lines.size() || open.givenAt == m_lines.size())
        return refuse(
            fmt::format("`{}` stands twice on this line: keep one, or put `line` between them", key));
    if (open.text || open.stopped == m_lines.size())
        return refuse(fmt::format("`{0}` is already filled from line {1} on: put `stop {0}` on a line above",
                                  key, open.runBegin));
    const std::string_view tail = rest.substr(key.size() + 1);
    if (!goodTail(key, tail) || !shortEnough(tail.substr(1)))
        return false;
    if (!m_state.judge().refersToCell(tail.substr(1)))
        return refuse(fmt::format("`{}` refers to no cell, so it cannot be filled: write it on each line",
                                  cleanTyped(tail.substr(0, 60))));
    keepBefore(std::string(key));
    if (++m_state.filled > limits::filledCells)
        return refuse(
            fmt::format("there are more than {} filled cells: split the workbook", limits::filledCells));
    open.given = open.runBegin = static_cast<std::uint32_t>(m_lines.size());
    open.runFileLine = m_state.scanner.number;
    open.text = std::make_shared<const std::string>(tail.substr(1));
    open.beside.reset();
    if (!beside(*c, Under::fill, *open.text, open.beside))
        return false;
    open.cells.back() = Cell{open.text, open.beside};
    ++m_running;
    return true;
}

bool SheetReader::stop(Parts parts)
{
    if (parts.atEnd())
        return refuse("`stop` takes the columns whose runs end here, as in stop year balance");
    while (!parts.atEnd()) {
        const std::string_view key = parts.word();
        const auto c = m_sheet.columnByKey(key);
        if (!c || !m_open[*c].text)
            return refuse(fmt::format("`stop {}` ends no run: take it out, or put `fill {}` on a line above",
                                      cleanTyped(key.substr(0, 64)), cleanTyped(key.substr(0, 64))));
        Open &open = m_open[*c];
        if (open.runBegin == m_lines.size())
            return refuse(fmt::format("`stop {0}` stands on the line of its own fill: a run has two lines or "
                                      "more, write `{0}:` instead "
                                      "of `fill {0}:`",
                                      key));
        if (m_lines.back().skipped)
            return refuse(fmt::format(
                "`stop {}` stands under `skip`: put `line` in front, and count the skip again", key));
        open.text.reset();
        open.beside.reset();
        open.stopped = static_cast<std::uint32_t>(m_lines.size());
        --m_running;
    }
    keepBefore("stop");
    return true;
}

bool SheetReader::at(std::string_view key)
{
    const auto c = m_sheet.columnByKey(key);
    if (!c)
        return refuse("`at` takes a column of this sheet, as in at amount");
    if (m_lines.empty() || m_lines.back().skipped)
        return refuse(fmt::format("`at {}` stands under no `line`: put `line` in front", key));
    Open &open = m_open[*c];
    const bool inRun = open.text || open.stopped == m_lines.size();
    if ((open.given == m_lines.size() && !inRun) || open.givenAt == m_lines.size())
        return refuse(
            fmt::format("`{}` stands twice on this line: put its attributes under one record", key));
    open.givenAt = static_cast<std::uint32_t>(m_lines.size());
    Cell &to = open.cells.back();
    SharedAttributes extra;
    if (!beside(*c, Under::at, to.typed(), extra))
        return false;
    if (!extra)
        return true;
    keepBefore(std::string(key));
    if (!inRun || !to.attributes) {
        to.attributes = extra;
        return true;
    }
    const Attributes all = overlaid(*to.attributes, *extra);
    if (const auto clash = clashWithin(all))
        return refuse(*clash);
    to.attributes = std::make_shared<const Attributes>(all);
    return m_state.countOther();
}

bool SheetReader::beside(std::uint32_t c, Under under, std::string_view text, SharedAttributes &out)
{
    if (!m_state.scanner.indentedNext())
        return true;
    const std::string_view block = m_state.scanner.indentedBlock();
    if (const auto seen = m_seen.find(block); seen != m_seen.end()) {
        m_state.scanner.skipBlock(block);
        out = seen->second;
        return true;
    }
    Attributes read;
    if (!besideChecked(c, under, text, read) || !m_state.countOther())
        return false;
    const bool anywhere = read.name.empty() && read.ask.empty() && read.tolerance.empty();
    out = std::make_shared<const Attributes>(std::move(read));
    if (anywhere)
        m_seen.emplace(block, out);
    return true;
}

bool SheetReader::besideChecked(std::uint32_t c, Under under, std::string_view text, Attributes &out)
{
    while (m_state.scanner.indentedNext()) {
        if (!m_state.next())
            return false;
        std::string_view record = m_state.scanner.line;
        if (record.size() < 3 || record[1] != ' ')
            return refuse("what stands under a cell is indented by two blanks");
        record.remove_prefix(2);
        const bool named = !out.name.empty();
        if (const auto words = addAttribute(record, out); !words.empty())
            return refuse(words);
        if (const auto clash = clashWithin(out))
            return refuse(*clash);
        const bool textMatters = record.starts_with("ask ") || record.starts_with("tolerance ");
        if (textMatters)
            if (const auto clash = clashWithText(out, text, m_sheet.column(c).kind, m_state.judge()))
                return refuse(*clash);
        if (named || out.name.empty())
            continue;
        if (under == Under::fill)
            return refuse(fmt::format(
                "`name` stands under `fill {0}`: a name belongs to one cell, put it under `at {0}`",
                m_sheet.column(c).key));
        if (!checkedName(out.name))
            return false;
    }
    for (const MarkId &mark : out.sources)
        m_state.useMark(mark);
    if (out.limit && !out.limit->mark.empty())
        m_state.useMark(out.limit->mark);
    return true;
}

bool SheetReader::checkedName(const std::string &name)
{
    const auto &things = m_state.book.things;
    const bool unit = (m_state.isUnitWord && m_state.isUnitWord(name)) ||
                      std::find(things.begin(), things.end(), name) != things.end();
    if (auto good = checkName(m_sheet, name, unit); !good)
        return refuse(good.error().words);
    const auto line = static_cast<std::uint32_t>(m_lines.size());
    if (const auto [taken, fresh] = m_named.emplace(name, line); !fresh)
        return refuse(fmt::format("`{}` already names line {} of sheet {}: take another name", name,
                                  taken->second, m_sheet.key()));
    return true;
}

} // namespace puteal
