/// The text a parser reads: looking at characters and words, and the first error.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace puteal
{

class FormulaReader
{
public:
    explicit FormulaReader(std::string_view plain) : m_text(plain) {}

    Error error; ///< the first one; spans are offsets into the plain text

protected:
    char at(std::size_t pos) const { return pos < m_text.size() ? m_text[pos] : '\0'; }
    void skipBlanks() { m_pos = afterBlanks(m_pos); }
    std::size_t afterBlanks(std::size_t pos) const;
    /// The word that starts at pos, capitals and figures in it; may be empty.
    std::string_view wordAt(std::size_t pos) const;
    bool takeWord(std::string_view word);
    bool failed() const { return m_failed; }
    std::string piece(std::size_t begin, std::size_t end) const
    {
        return std::string(m_text.substr(begin, end - begin));
    }
    std::string piece(Span s) const { return piece(s.begin, s.end); }
    static Span span(std::size_t begin, std::size_t end)
    {
        return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    }

    /// All return false, so that a rule can end with them. Only the first error is kept.
    bool fails(ErrorKind kind, std::string words, std::size_t begin, std::size_t end);
    bool failsWith(ErrorKind kind, std::string words, std::size_t begin, std::size_t end,
                   std::string fixWords, std::string text);
    bool failsAs(Error other);
    void addFix(std::string words, std::size_t begin, std::size_t end, std::string text);

    std::string_view m_text;
    std::size_t m_pos = 0;

private:
    bool m_failed = false;
};

} // namespace puteal
