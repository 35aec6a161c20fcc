/// Takes a workbook text apart into lines and refuses what no line may hold.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace puteal
{

class LineScanner
{
public:
    explicit LineScanner(std::string_view text) : m_text(text) {}

    /// Goes to the next line. False at the end of the text, or when the line cannot stand (then `problem`
    /// says why).
    bool next();

    std::string_view line;    ///< without its line feed
    std::uint32_t number = 0; ///< 1-based
    std::string problem;

    std::size_t offset() const { return static_cast<std::size_t>(line.data() - m_text.data()); }
    std::size_t bytesLeft() const { return m_text.size() - m_pos; }
    /// The next line begins with a blank.
    bool indentedNext() const { return m_pos < m_text.size() && m_text[m_pos] == ' '; }
    /// All indented lines that follow, line feeds included.
    std::string_view indentedBlock() const;
    /// Passes over `block`, which was checked before.
    void skipBlock(std::string_view block);

private:
    bool refuse(std::string words);
    bool firstBytes();
    bool checkBytes();

    std::string_view m_text;
    std::size_t m_pos = 0;
};

/// One record's parts from left to right, separated by one blank.
class Parts
{
public:
    explicit Parts(std::string_view text) : m_rest(text) {}
    bool atEnd() const { return m_rest.empty(); }
    std::string_view rest() const { return m_rest; }
    /// Up to the next blank; "" at the end.
    std::string_view word();
    /// A quoted text; false when none stands here or it is broken.
    bool quotedWords(std::string &out);
    /// A whole number without sign, at most 10 digits; false when none stands here.
    bool count(std::uint64_t &out);

private:
    bool separated(std::size_t end);
    std::string_view m_rest;
};

} // namespace puteal
