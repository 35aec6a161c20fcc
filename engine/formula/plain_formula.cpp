/// Segments of a typed formula: formula text gets plain twins, quoted words stay as they are.
#include "formula/plain_formula.h"

#include <algorithm>

#include "base/text.h"

namespace puteal
{

namespace
{

constexpr std::string_view curlyQuotes[] = {"\xE2\x80\x9C", "\xE2\x80\x9D", "\xE2\x80\x9E"};

std::size_t curlyAt(std::string_view text, std::size_t pos)
{
    for (const std::string_view quote : curlyQuotes)
        if (text.substr(pos).starts_with(quote))
            return quote.size();
    return 0;
}

} // namespace

PlainFormula::PlainFormula(std::string_view typed, bool isWordsCell) : m_typed(typed)
{
    m_same = std::none_of(typed.begin(), typed.end(),
                          [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
    if (m_same)
        return;
    m_plain.reserve(typed.size() + 16);
    m_origin.reserve(typed.size() + 16);
    if (isWordsCell)
        wordsUntil(0, false, true);
    else
        formulaUntil(0, false);
    m_origin.push_back(static_cast<std::uint32_t>(typed.size()));
}

void PlainFormula::appendFormula(std::size_t begin, std::size_t end)
{
    const PlainText piece = plainTwins(m_typed.substr(begin, end - begin));
    m_plain += piece.text;
    for (std::size_t i = 0; i < piece.text.size(); ++i)
        m_origin.push_back(static_cast<std::uint32_t>(begin) + piece.origin[i]);
}

void PlainFormula::appendVerbatim(std::size_t begin, std::size_t end)
{
    m_plain += m_typed.substr(begin, end - begin);
    for (std::size_t i = begin; i < end; ++i)
        m_origin.push_back(static_cast<std::uint32_t>(i));
}

/// Formula text from pos on; in braces it ends behind the closing brace.
std::size_t PlainFormula::formulaUntil(std::size_t pos, bool inBraces)
{
    std::size_t begin = pos;
    while (pos < m_typed.size()) {
        if (inBraces && m_typed[pos] == '}') {
            appendFormula(begin, pos + 1);
            return pos + 1;
        }
        const std::size_t curly = curlyAt(m_typed, pos);
        if (!inBraces && (m_typed[pos] == '"' || curly > 0)) {
            appendFormula(begin, pos + std::max<std::size_t>(curly, 1));
            pos = begin = wordsUntil(pos + std::max<std::size_t>(curly, 1), curly > 0, false);
        } else {
            ++pos;
        }
    }
    appendFormula(begin, pos);
    return pos;
}

/// Words from behind the opening quote to behind the closing one (to the end for a whole words cell). What
/// was opened by a straight quote is closed by one; curly ones are closed by either.
std::size_t PlainFormula::wordsUntil(std::size_t pos, bool curly, bool whole)
{
    std::size_t begin = pos;
    while (pos < m_typed.size()) {
        const char c = m_typed[pos];
        const char next = pos + 1 < m_typed.size() ? m_typed[pos + 1] : '\0';
        if (!whole && c == '\\') {
            const std::size_t close = next == 'u' ? m_typed.find('}', pos) : std::string_view::npos;
            pos = close == std::string_view::npos ? std::min(pos + 2, m_typed.size()) : close + 1;
        } else if (c == '{' && next == '{') {
            pos += 2;
        } else if (c == '{') {
            appendVerbatim(begin, pos + 1);
            pos = begin = formulaUntil(pos + 1, true);
        } else if (!whole && (c == '"' || (curly && curlyAt(m_typed, pos) > 0))) {
            const std::size_t end = pos + (c == '"' ? 1 : curlyAt(m_typed, pos));
            appendVerbatim(begin, pos);
            appendFormula(pos, end);
            return end;
        } else {
            ++pos;
        }
    }
    appendVerbatim(begin, pos);
    return pos;
}

Span PlainFormula::typedSpan(Span plain) const
{
    if (m_same)
        return plain;
    const auto last = static_cast<std::uint32_t>(m_plain.size());
    const std::uint32_t begin = std::min(plain.begin, last);
    const std::uint32_t end = std::clamp(plain.end, begin, last);
    if (end == begin)
        return {m_origin[begin], m_origin[begin]};
    std::uint32_t after = end; // the end of the character that the last plain byte came from
    while (after < last && m_origin[after] == m_origin[end - 1])
        ++after;
    return {m_origin[begin], m_origin[after]};
}

} // namespace puteal
