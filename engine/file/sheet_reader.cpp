/// Columns, lines and the end of a sheet.
#include "file/sheet_reader.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "file/attribute_text.h"

namespace puteal
{

bool SheetReader::read()
{
    if (!head())
        return false;
    while (!m_ended && m_state.next()) {
        if (!record()) {
            m_state.sheet.clear();
            m_state.sheetLine = 0;
            return false;
        }
    }
    if (m_state.error)
        return false;
    if (!m_ended)
        return m_state.refuseAt(
            fmt::format(
                "the file ends inside this sheet, so it was cut: take the copy kept beside it, or add "
                "`end {} {}` and `end workbook`",
                m_sheet.key(), m_lines.size()),
            m_state.scanner.number + 1, 0);
    m_state.sheet.clear();
    m_state.sheetLine = 0;
    return true;
}

bool SheetReader::head()
{
    Parts parts(m_state.scanner.line);
    parts.word();
    const std::string key(parts.word());
    std::string title;
    if (!isName(key, true) || !parts.quotedWords(title) || !parts.atEnd())
        return refuse("`sheet` takes a key and words in quotation marks, as in sheet water \"Water test\"");
    if (isReservedWord(key))
        return refuse(fmt::format("`{}` is a word of the formula language: give the sheet another key", key));
    if (m_state.book.sheetByKey(key))
        return refuse(fmt::format("the sheet {} stands twice: give one of them another key", key));
    m_begin = m_state.scanner.bytesLeft();
    m_sheet = Sheet(key, title);
    m_state.settle(m_sheet.keptAtHead, "");
    m_state.sheet = key;
    return true;
}

std::optional<std::uint32_t> SheetReader::keyOf(std::string_view record)
{
    const auto count = static_cast<std::uint32_t>(m_open.size());
    for (std::uint32_t step = 1; step <= count; ++step) {
        const std::uint32_t c = m_last + step < count ? m_last + step : m_last + step - count;
        if (record.starts_with(m_open[c].prefix))
            return c;
    }
    return std::nullopt;
}

bool SheetReader::record()
{
    const std::string_view text = m_state.scanner.line;
    if (const auto c = keyOf(text))
        return cell(*c, text.substr(m_open[*c].prefix.size()));
    if (text == "line")
        return line();
    const std::string_view word = leadingWord(text);
    if (!word.empty() && text.substr(word.size()).starts_with(':'))
        return unknownKey(word);
    if (m_state.keep())
        return !m_state.error;
    Parts parts(text);
    if (word.empty() || parts.word() != word)
        return refuse(fmt::format("`{}` is no record: take it out, or put # in front to keep it as a comment",
                                  cleanTyped(text.substr(0, 40))));
    if (word == "column")
        return column(parts);
    if (word == "line")
        return refuse("`line` stands alone: put what follows it into the next line");
    if (word == "skip")
        return skip(parts);
    if (word == "fill")
        return fill(parts.rest());
    if (word == "stop")
        return stop(parts);
    if (word == "at")
        return at(parts.rest());
    if (word == "expect")
        return expect(parts.rest());
    if (word == "end")
        return end(parts);
    return refuse(fmt::format("`{0}` stands inside sheet {1}, which has no end: put `end {1} {2}` in front",
                              word, m_sheet.key(), m_lines.size()));
}

bool SheetReader::unknownKey(std::string_view key)
{
    std::vector<std::string> keys;
    for (std::uint32_t c = 0; c < m_sheet.columnCount(); ++c)
        keys.push_back(m_sheet.column(c).key);
    const auto close =
        key.size() > limits::nameCharacters ? std::vector<std::string>() : closest(key, keys, 1);
    return refuse(fmt::format("`{}` is no column of sheet {}: {}", key.substr(0, limits::nameCharacters),
                              m_sheet.key(),
                              !close.empty() ? "write " + close.front() + ", or add the column"
                              : keys.empty() ? "add a `column` record under `sheet`"
                                             : "its columns are " + joined(keys)));
}

bool SheetReader::column(Parts parts)
{
    if (!m_lines.empty())
        return refuse("`column` stands above the first line of its sheet: move it there");
    if (m_sheet.columnCount() >= limits::columnsPerSheet)
        return refuse(fmt::format("the sheet has more than {} columns: split it", limits::columnsPerSheet));
    Column column;
    column.key = parts.word();
    const std::string_view kind = parts.word();
    std::uint64_t width = 0;
    if ((kind != "words" && kind != "amounts") || !parts.quotedWords(column.title) || !parts.count(width) ||
        !parts.atEnd() || width == 0 || width > 1000)
        return refuse("`column` takes a key, words or amounts, a title and a width from 1 to 1000, as in "
                      "column item words \"Item\" 30");
    if (auto key = checkColumnKey(m_sheet, column.key); !key)
        return refuse(key.error().words);
    column.kind = kind == "words" ? ColumnKind::words : ColumnKind::amounts;
    column.width = static_cast<std::uint32_t>(width);
    m_state.settle(m_sheet.keptAtHead, column.key);
    while (m_state.scanner.indentedNext()) {
        if (!m_state.next() || !m_state.countOther())
            return false;
        Attributes &a = column.attributes;
        if (const auto words = addAttribute(m_state.scanner.line.substr(2), a); !words.empty())
            return refuse(words);
        if (!a.name.empty() || a.limit || !a.tolerance.empty() || !a.ask.empty() || a.hide || a.lock ||
            !a.note.empty())
            return refuse("under a column stand unit, figures, places, source and choices only: put the rest "
                          "under cells");
        if (const auto clash = clashWithin(a))
            return refuse(*clash);
    }
    for (const MarkId &mark : column.attributes.sources)
        m_state.useMark(mark);
    m_sheet.insertColumn(m_sheet.columnCount(), std::move(column));
    m_open.emplace_back();
    m_open.back().prefix = m_sheet.column(m_sheet.columnCount() - 1).key + ':';
    m_last = m_sheet.columnCount() - 1;
    return true;
}

bool SheetReader::line()
{
    return addLines(1, false);
}

bool SheetReader::skip(Parts parts)
{
    std::uint64_t count = 0;
    if (!parts.count(count) || !parts.atEnd() || count == 0)
        return refuse("`skip` takes a number of lines from 1 up, as in skip 12");
    return addLines(count, true);
}

bool SheetReader::addLines(std::uint64_t count, bool skipped)
{
    if (m_lines.size() + count > limits::linesPerSheet)
        return refuse(fmt::format("the sheet has more than {} lines: split it", limits::linesPerSheet));
    m_state.places += count * (m_open.size() + 1);
    if (m_state.places > limits::places)
        return refuse(fmt::format(
            "the sheets have more than {} places (lines times columns) together: split the workbook",
            limits::places));
    m_state.filled += count * m_running;
    if (m_state.filled > limits::filledCells)
        return refuse(
            fmt::format("there are more than {} filled cells: split the workbook", limits::filledCells));
    if (m_lines.size() == 256)
        reserveLines();
    const std::size_t first = m_lines.size();
    Line fresh;
    fresh.skipped = skipped;
    m_lines.resize(first + count, fresh);
    m_state.sheetLine = static_cast<std::uint32_t>(first + 1);
    if (!m_state.pending.empty())
        m_state.settle(m_lines[first].kept, "");
    m_state.pendingUnknown = false;
    m_state.sheetLine = static_cast<std::uint32_t>(m_lines.size());
    for (Open &open : m_open) {
        if (open.text)
            open.cells.resize(m_lines.size(), Cell{open.text, open.beside});
        else if (count == 1)
            open.cells.emplace_back();
        else
            open.cells.resize(m_lines.size());
    }
    m_last = static_cast<std::uint32_t>(m_open.size()) - (m_open.empty() ? 0U : 1U);
    return true;
}

/// Room for as many lines as the rest of the text holds when they go on as they began; never past the bounds.
void SheetReader::reserveLines()
{
    const std::size_t left = m_state.scanner.bytesLeft(), perLine = (m_begin - left) / m_lines.size() + 1;
    const std::size_t bound =
        (limits::places - std::min(m_state.places, limits::places)) / (m_open.size() + 1);
    const std::size_t lines =
        m_lines.size() + std::min({left / perLine + 1, bound, std::size_t{limits::linesPerSheet}});
    m_lines.reserve(lines);
    for (Open &open : m_open)
        open.cells.reserve(lines);
}

bool SheetReader::expect(std::string_view rest)
{
    const auto sign = rest.find(" = ");
    Expectation expectation;
    if (sign == std::string_view::npos || !isCleanTyped(rest.substr(0, sign)) || sign == 0 ||
        !isCleanTyped(rest.substr(sign + 3)) || sign + 3 == rest.size())
        return refuse(
            "`expect` takes a reference, = and an amount, as in expect setting = 25 gpg within 1 %");
    expectation.reference = rest.substr(0, sign);
    expectation.tail = rest.substr(sign + 3);
    if (!m_expected.insert(expectation.reference).second)
        return refuse(fmt::format("`{}` is expected twice: keep one", expectation.reference));
    m_state.settle(m_sheet.keptAtEnd, "expect " + expectation.reference);
    m_sheet.expectations.push_back(std::move(expectation));
    return m_state.countOther();
}

bool SheetReader::end(Parts parts)
{
    const std::string_view key = parts.word();
    const std::string_view digits = parts.rest();
    std::uint64_t count = 0;
    if (key == "workbook" && digits.empty() && m_sheet.key() != "workbook")
        return refuse(
            fmt::format("sheet {0} has no end: put `end {0} {1}` in front", m_sheet.key(), m_lines.size()));
    if (key != m_sheet.key())
        return refuse(
            fmt::format("this ends `{}`, but the sheet here is {}: look at both, the end of one was lost",
                        cleanTyped(key.substr(0, 64)), m_sheet.key()));
    if (!parts.count(count) || !parts.atEnd())
        return refuse(fmt::format("`end` takes the sheet's key and its number of lines: write `end {} {}`",
                                  key, m_lines.size()));
    for (std::uint32_t c = 0; c < m_open.size(); ++c)
        if (m_open[c].text)
            return m_state.refuseAt(
                fmt::format("`fill {0}` has no stop: put `stop {0}` under the last line of the run",
                            m_sheet.column(c).key),
                m_open[c].runFileLine, m_open[c].runBegin);
    if (count != m_lines.size()) {
        if (!m_state.corrections)
            return m_state.refuseAt(
                fmt::format("{} has {} lines, not {}: look at the merge, then `puteal recount FILE`",
                            m_sheet.key(), m_lines.size(), count),
                m_state.scanner.number, 0);
        const std::size_t offset =
            m_state.scanner.offset() + static_cast<std::size_t>(digits.data() - m_state.scanner.line.data());
        m_state.corrections->push_back({offset, digits.size(), static_cast<std::uint32_t>(m_lines.size())});
    }
    return finish();
}

bool SheetReader::finish()
{
    m_state.settle(m_sheet.keptAtEnd, "=");
    std::vector<std::vector<Cell>> cells;
    for (Open &open : m_open)
        cells.push_back(std::move(open.cells));
    m_sheet.load(std::move(cells), std::move(m_lines));
    m_state.book.sheets.push_back(std::move(m_sheet));
    return m_ended = true;
}

bool readSheet(ReadState &state)
{
    return SheetReader(state).read();
}

} // namespace puteal
