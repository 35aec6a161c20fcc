/// Refusals with their place, kept records, and the bounds of everything that is no cell.
#include "file/read_state.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/limits.h"

namespace puteal
{

namespace
{

constexpr std::array<std::string_view, 19> keywords{
    "puteal", "title", "uses", "thing", "below", "units", "list",  "source", "sheet", "end",
    "column", "line",  "skip", "fill",  "stop",  "at",    "chart", "plot",   "expect"};

bool isConflictMark(std::string_view line)
{
    return line.starts_with("<<<<<<<") || line.starts_with(">>>>>>>") || line.starts_with("=======");
}

} // namespace

std::string_view leadingWord(std::string_view line)
{
    std::size_t end = 0;
    while (end < line.size() && ((line[end] >= 'a' && line[end] <= 'z') ||
                                 (line[end] >= '0' && line[end] <= '9') || line[end] == '_'))
        ++end;
    return line.substr(0, end);
}

bool isKeyword(std::string_view word)
{
    return std::find(keywords.begin(), keywords.end(), word) != keywords.end();
}

std::string ReadState::place(std::uint32_t fileLine, std::uint32_t line) const
{
    if (sheet.empty())
        return fmt::format("file line {}", fileLine);
    if (line == 0)
        return fmt::format("sheet {} (file line {})", sheet, fileLine);
    return fmt::format("sheet {} line {} (file line {})", sheet, line, fileLine);
}

bool ReadState::refuseAt(const std::string &words, std::uint32_t fileLine, std::uint32_t line)
{
    if (!error)
        error = Error{ErrorKind::file,
                      fileLine == 0 ? words : place(fileLine, line) + ": " + words,
                      {},
                      Place{{}, {}, fileLine}};
    return false;
}

bool ReadState::countOther(std::size_t n)
{
    others += n;
    if (others > limits::otherRecords)
        return refuse(
            fmt::format("there are more than {} comments, sources, lists and attributes: split the workbook",
                        limits::otherRecords));
    return true;
}

bool ReadState::next()
{
    if (scanner.next())
        return true;
    if (!scanner.problem.empty())
        return refuse(scanner.problem);
    return false;
}

bool ReadState::keep()
{
    const std::string_view line = scanner.line;
    const bool indented = line.starts_with(' ');
    const std::string_view word = leadingWord(line);
    const bool unknown = !word.empty() && word[0] >= 'a' && word[0] <= 'z' && !isKeyword(word) &&
                         (word.size() == line.size() || line[word.size()] == ' ');
    if (indented && !pendingUnknown) {
        refuse("this stands under no cell: put it under its cell, and comments above the cell");
        return true;
    }
    if (!indented && !unknown && !line.empty() && line[0] != '#') {
        if (!isConflictMark(line))
            return false;
        refuse("a merge left both sides here: keep one, take the lines with <<<<<<<, ======= and >>>>>>> "
               "out, then run "
               "`puteal recount FILE`");
        return true;
    }
    if (countOther())
        pending.emplace_back(line);
    pendingUnknown = indented || unknown;
    return true;
}

void ReadState::settle(std::vector<Kept> &to, const std::string &before)
{
    pendingUnknown = false;
    if (pending.empty())
        return;
    for (std::string &text : pending)
        to.push_back({before, std::move(text)});
    pending.clear();
}

void ReadState::useMark(const std::string &mark)
{
    if (!marksUsed.contains(mark))
        marksUsed.emplace(mark, MarkUse{place(scanner.number, sheetLine), scanner.number});
}

const TextJudge &ReadState::judge()
{
    if (!m_judge)
        m_judge.emplace(book.things, book.lists);
    return *m_judge;
}

} // namespace puteal
