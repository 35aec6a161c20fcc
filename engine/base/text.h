/// UTF-8 text: validation, plain twins of typographic characters, escapes of quoted words, identifiers.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace puteal
{

/// True for well-formed UTF-8 without NUL and control characters other than tab and line feed.
bool isCleanText(std::string_view text);

/// lower_snake_case, starts with a letter, 2..64 characters (1 allowed with `oneLetter`).
bool isName(std::string_view word, bool oneLetter = false);

/// The words no name may equal: and or not yes no as pi gone.
bool isReservedWord(std::string_view word);

/// "Raw iron, ferrous" -> "raw_iron_ferrous": a name offered from words (may be empty).
std::string nameFromWords(std::string_view words);

/// Quotes words for a file or formula: \" \\ \n \t \u{hex} for other control characters.
std::string quoted(std::string_view words);
// the standard library's manipulator of that name would win by argument-dependent lookup
inline std::string quoted(const char *words)
{
    return quoted(std::string_view(words));
}
inline std::string quoted(const std::string &words)
{
    return quoted(std::string_view(words));
}
inline std::string quoted(std::string &words)
{
    return quoted(std::string_view(words));
}

/// Reads a whole quoted text ("...") back; error spans are offsets into `text`.
Result<std::string> unquoted(std::string_view text);

/// Up to `most` of `candidates` close to `word` (edit distance, prefix), best first.
std::vector<std::string> closest(std::string_view word, const std::vector<std::string> &candidates,
                                 std::size_t most = 3);

/// "a", "a and b", "a, b and c".
std::string joined(const std::vector<std::string> &items);

/// Number of code points.
std::size_t codePoints(std::string_view text);

/// Text with typographic characters replaced by their plain twins (micro sign, superscripts, dots and
/// crosses, minus, curly quotes, no-break and thin blanks ...), and for each byte of it (and its end) the
/// byte it came from.
struct PlainText {
    std::string text;
    std::vector<std::uint32_t> origin; ///< text.size() + 1 entries
};
PlainText plainTwins(std::string_view text);

/// Without blanks, tabs and line feeds at either end.
std::string_view trimmed(std::string_view text);

} // namespace puteal
