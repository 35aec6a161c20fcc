/// Looking at characters and words; keeping the first error.
#include "formula/formula_reader.h"

#include <algorithm>

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}
bool isBlank(char c)
{
    return c == ' ' || c == '\t' || c == '\n';
}

} // namespace

std::size_t FormulaReader::afterBlanks(std::size_t pos) const
{
    while (pos < m_text.size() && isBlank(m_text[pos]))
        ++pos;
    return pos;
}

std::string_view FormulaReader::wordAt(std::size_t pos) const
{
    if (!isLetter(at(pos)))
        return {};
    std::size_t end = pos + 1;
    while (isLetter(at(end)) || isDigit(at(end)))
        ++end;
    return m_text.substr(pos, end - pos);
}

bool FormulaReader::takeWord(std::string_view word)
{
    if (wordAt(m_pos) != word)
        return false;
    m_pos += word.size();
    return true;
}

bool FormulaReader::fails(ErrorKind kind, std::string words, std::size_t begin, std::size_t end)
{
    if (!m_failed) {
        error = Error{kind, std::move(words), {}, Place{span(begin, std::min(end, m_text.size())), {}, 0}};
        m_failed = true;
    }
    return false;
}

bool FormulaReader::failsWith(ErrorKind kind, std::string words, std::size_t begin, std::size_t end,
                              std::string fixWords, std::string text)
{
    if (m_failed)
        return false;
    fails(kind, std::move(words), begin, end);
    addFix(std::move(fixWords), begin, end, std::move(text));
    return false;
}

void FormulaReader::addFix(std::string words, std::size_t begin, std::size_t end, std::string text)
{
    error.fixes.push_back({std::move(words), span(begin, end), std::move(text)});
}

bool FormulaReader::failsAs(Error other)
{
    if (!m_failed)
        error = std::move(other);
    m_failed = true;
    return false;
}

} // namespace puteal
