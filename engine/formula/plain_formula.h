/// A formula's text with typographic characters outside quoted words replaced by their plain twins.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace puteal
{

/// Plain text to parse, and the way back to the typed bytes. Quoted words keep their characters; live parts
/// in braces inside them are formula text again.
class PlainFormula
{
public:
    PlainFormula(std::string_view typed, bool isWordsCell);

    std::string_view text() const { return m_same ? m_typed : std::string_view(m_plain); }
    /// Offsets in text() to offsets in what was typed.
    Span typedSpan(Span plain) const;
    bool same() const { return m_same; }

private:
    void appendFormula(std::size_t begin, std::size_t end);
    void appendVerbatim(std::size_t begin, std::size_t end);
    std::size_t formulaUntil(std::size_t pos, bool inBraces);
    std::size_t wordsUntil(std::size_t pos, bool curly, bool whole);

    std::string_view m_typed;
    std::string m_plain;
    std::vector<std::uint32_t> m_origin; ///< for each plain byte the typed byte it came from
    bool m_same = true;
};

} // namespace puteal
