/// Lines and the parts of a record.
#include "file/line_scanner.h"

#include <algorithm>
#include <cstring>

#include <fmt/format.h>

#include "base/text.h"

namespace puteal
{

namespace
{

/// True when all bytes are printable ASCII: eight at a time, since every byte of every file passes here.
bool isPlainAscii(std::string_view line)
{
    constexpr std::uint64_t ones = 0x0101010101010101ULL;
    constexpr std::uint64_t high = 0x8080808080808080ULL;
    const char *p = line.data();
    std::size_t left = line.size();
    std::uint64_t bad = 0;
    for (; left >= 8; left -= 8, p += 8) {
        std::uint64_t w;
        std::memcpy(&w, p, 8);
        const std::uint64_t below = (w - ones * 0x20) & ~w;                            // a byte below 0x20
        const std::uint64_t del = ((w ^ (ones * 0x7f)) - ones) & ~(w ^ (ones * 0x7f)); // a byte 0x7f
        bad |= (below | del | w) & high;
    }
    for (; left > 0; --left, ++p) {
        const auto c = static_cast<unsigned char>(*p);
        if (c < 0x20 || c >= 0x7f)
            return false;
    }
    return bad == 0;
}

} // namespace

bool LineScanner::refuse(std::string words)
{
    problem = std::move(words);
    return false;
}

bool LineScanner::next()
{
    if (m_pos >= m_text.size())
        return false;
    ++number;
    if (number == 1 && !firstBytes())
        return false;
    const char *begin = m_text.data() + m_pos;
    const void *end = std::memchr(begin, '\n', m_text.size() - m_pos);
    if (!end)
        return refuse(
            "the last line has no line end: add one, or take the copy kept beside the file if it was cut");
    line = std::string_view(begin, static_cast<std::size_t>(static_cast<const char *>(end) - begin));
    m_pos += line.size() + 1;
    if (!isPlainAscii(line) && !checkBytes())
        return false;
    if (!line.empty() && line.back() == ' ')
        return refuse("blanks stand at the end of this line: take them out");
    return true;
}

/// What the first bytes tell before anything else is said of a file that is none of ours.
bool LineScanner::firstBytes()
{
    if (m_text.starts_with("\xEF\xBB\xBF"))
        return refuse("the file starts with a byte order mark: save it as UTF-8 without one");
    if (m_text.starts_with("\xFF\xFE") || m_text.starts_with("\xFE\xFF"))
        return refuse("the file is UTF-16 text: save it as UTF-8");
    constexpr std::size_t seen = 4096;
    const std::string_view head = m_text.substr(0, seen);
    const std::string_view first = head.substr(0, head.find('\n'));
    const bool control = std::any_of(first.begin(), first.end(), [](char c) {
        return static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) == 0x7f;
    });
    if (!first.starts_with("puteal") && (control || !isCleanText(first)))
        return refuse(
            "the first line is not `puteal workbook 1`: this is some other file, or its first line was lost");
    if (first.size() == head.size() && first.find('\r') != std::string_view::npos)
        return refuse(
            "the lines of this file end with carriage returns alone: save it with plain line feeds");
    return true;
}

bool LineScanner::checkBytes()
{
    if (line.ends_with('\r'))
        return refuse("this line ends with a carriage return: save the file with plain line feeds");
    for (const char c : line)
        if (const auto byte = static_cast<unsigned char>(c); byte < 0x20 || byte == 0x7f)
            return refuse(
                c == '\t'
                    ? std::string("a tab stands in this line: write blanks, or \\t inside quoted words")
                    : fmt::format("the control character {:02x} stands in this line: take it out", byte));
    if (!isCleanText(line))
        return refuse("the bytes of this line are no UTF-8 text: save the file as UTF-8");
    return true;
}

std::string_view LineScanner::indentedBlock() const
{
    std::size_t end = m_pos;
    while (end < m_text.size() && m_text[end] == ' ') {
        const auto feed = m_text.find('\n', end);
        if (feed == std::string_view::npos)
            return m_text.substr(m_pos);
        end = feed + 1;
    }
    return m_text.substr(m_pos, end - m_pos);
}

void LineScanner::skipBlock(std::string_view block)
{
    for (const char c : block)
        number += c == '\n';
    m_pos += block.size();
}

bool Parts::separated(std::size_t end)
{
    if (end == m_rest.size()) {
        m_rest = {};
        return true;
    }
    if (m_rest[end] != ' ' || end + 1 == m_rest.size() || m_rest[end + 1] == ' ')
        return false;
    m_rest.remove_prefix(end + 1);
    return true;
}

std::string_view Parts::word()
{
    const std::size_t end = std::min(m_rest.find(' '), m_rest.size());
    const std::string_view found = m_rest.substr(0, end);
    if (!separated(end)) {
        m_rest.remove_prefix(end); // two blanks: the rest can be no part
        return found;
    }
    return found;
}

bool Parts::quotedWords(std::string &out)
{
    if (m_rest.empty() || m_rest.front() != '"')
        return false;
    std::size_t end = 1;
    while (end < m_rest.size() && m_rest[end] != '"')
        end += m_rest[end] == '\\' ? 2U : 1U;
    if (end >= m_rest.size())
        return false;
    auto words = unquoted(m_rest.substr(0, end + 1));
    if (!words)
        return false;
    out = std::move(*words);
    return separated(end + 1);
}

bool Parts::count(std::uint64_t &out)
{
    std::size_t end = 0;
    out = 0;
    for (; end < m_rest.size() && m_rest[end] >= '0' && m_rest[end] <= '9'; ++end)
        out = out * 10 + static_cast<std::uint64_t>(m_rest[end] - '0');
    return end > 0 && end <= 10 && separated(end);
}

} // namespace puteal
