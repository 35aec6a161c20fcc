/// What may stand at the caret of a formula that is being typed; reads words and signs only, so a formula may
/// be as unfinished as it likes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace puteal
{

struct TypingPlace {
    enum class Wants : unsigned char {
        nothing,
        operand,    ///< a name, a column, a sheet, a function, a listed word
        joint,      ///< what joins two values: and, or, ->
        unit,       ///< after a number, after ->, below the line of a unit
        substance,  ///< after as, in braces behind a unit
        cell,       ///< in live braces: a reference and nothing else
        listedWord, ///< inside quotation marks
    };
    Wants wants = Wants::operand;
    std::size_t start = 0;    ///< byte where the word begins; for a listed word its quotation mark
    std::string word;         ///< as far as it is typed, in plain letters, without a quotation mark
    std::string sheet;        ///< what stands before a point
    std::string function;     ///< the innermost call that is open, "" = none
    std::size_t argument = 0; ///< which of its arguments, from 0
    std::string compared;     ///< the reference before == or !=
    bool firstOfUnit = false; ///< right after the number, not below the line
    bool afterNumber = false; ///< the unit belongs to a number, not to a ->
};

/// `beforeCaret` is the text up to the caret.
TypingPlace typingPlace(std::string_view beforeCaret, bool isWordsCell);

/// Where the word ends in which the caret stands.
std::size_t endOfTypedWord(std::string_view text, std::size_t caret);

} // namespace puteal
