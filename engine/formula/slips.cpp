/// What people put between two pieces of a formula: words, signs, marks of feet and inches.
#include "formula/slips.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

constexpr const char *tolerance =
    "is no operator: how far a reading may be off is the tolerance of its cell; "
    "to subtract write -";

} // namespace

bool Slips::told(ErrorKind kind, std::string words, std::size_t begin, std::size_t end)
{
    return !fails(kind, std::move(words), begin, end);
}

bool Slips::toldWith(ErrorKind kind, std::string words, std::size_t begin, std::size_t end, std::string text)
{
    std::string fixWords = text.empty() ? "leave it out" : fmt::format("write {}", trimmed(text));
    return !failsWith(kind, std::move(words), begin, end, std::move(fixWords), std::move(text));
}

bool Slips::wordSlip(std::size_t pos, std::string_view word)
{
    const std::size_t end = pos + word.size(), next = afterBlanks(end);
    const std::string_view then = wordAt(next);
    const bool number = isDigit(at(next)) || at(next) == '$' || at(next) == '(';
    if ((word == "x" || word == "X") && number)
        return toldWith(ErrorKind::syntax, "write * to multiply", pos, end, "*");
    if (isKnown(word) || word == "pi")
        return false;
    if (word == "of" && (number || !then.empty()))
        return toldWith(ErrorKind::syntax, "write * to take a share of something", pos, end, "*");
    if (word == "per" && m_units.find(then)) {
        std::size_t begin = pos;
        while (begin > 0 && at(begin - 1) == ' ')
            --begin;
        const std::string text = fmt::format("/{}", then);
        fails(ErrorKind::unit, fmt::format("write {} for per {}", text, then), pos, next + then.size());
        addFix("write " + text, begin, next + then.size(), text);
        return true;
    }
    if ((word == "to" || word == "in" || word == "into") && m_units.find(then))
        return toldWith(ErrorKind::syntax, fmt::format("write -> to show it in {}", then), pos, end, "->");
    if ((word == "k" || word == "K") && pos > 0 && isDigit(at(pos - 1)))
        return told(ErrorKind::syntax,
                    "write the number out, as in 24000, or with a power of ten, as in 24e3", pos, end);
    const char before = pos > 0 ? m_text[m_text.find_last_not_of(' ', pos - 1)] : ' ';
    if (isDigit(before) || before == '%' || before == ')')
        return false;
    for (std::uint16_t id = 0; !UnitTable::substanceWord(id).empty(); ++id)
        if (UnitTable::substanceWord(id) == word || UnitTable::substanceName(id) == word) {
            const std::string text = "as " + UnitTable::substanceWord(id);
            return toldWith(ErrorKind::substance, fmt::format("write {} to say of what it is", text), pos,
                            end, text);
        }
    return false;
}

bool Slips::signSlip(std::size_t pos)
{
    if (at(pos) == '+' && (at(pos + 1) == '-' || m_text.substr(pos).starts_with("+/-"))) {
        const std::size_t end = pos + (at(pos + 1) == '-' ? 2 : 3);
        return toldWith(ErrorKind::syntax, fmt::format("`{}` {}", piece(pos, end), tolerance), pos, end, "-");
    }
    const std::string_view word = at(pos) == '-' ? wordAt(pos + 1) : std::string_view{};
    const char behind = at(pos + 1 + word.size());
    if (word.empty() || pos == 0 || !isDigit(at(pos - 1)) || behind == '(' || behind == '[' ||
        behind == '.' || !m_units.isUnitWord(word) || isKnown(word))
        return false;
    return toldWith(ErrorKind::syntax,
                    fmt::format("a unit follows its number without a dash: write {} {}",
                                piece(m_text.find_last_not_of("0123456789./", pos - 1) + 1, pos), word),
                    pos, pos + 1, " ");
}

bool Slips::quoteSlip(std::size_t pos)
{
    const char c = at(pos);
    if (pos == 0 || !isDigit(at(pos - 1)) || (c != '\'' && c != '"'))
        return false;
    const bool group = c == '\'' && isDigit(at(pos + 1)) && isDigit(at(pos + 2)) && isDigit(at(pos + 3)) &&
                       !isDigit(at(pos + 4));
    if (group)
        return toldWith(ErrorKind::syntax, "numbers in a formula have no grouping marks: leave ' out", pos,
                        pos + 1, "");
    const char *unit = c == '\'' ? " ft" : " in";
    return toldWith(ErrorKind::syntax, "feet are written ft and inches in, as in 5 ft + 3 in", pos, pos + 1,
                    unit);
}

/// A second number right behind an amount is mostly the rest of it: 5 ft 3 in.
bool Slips::secondNumber(std::size_t pos)
{
    std::size_t end = pos;
    while (isDigit(at(end)) || (end > pos && at(end) == '.' && isDigit(at(end + 1))))
        ++end;
    if (end == pos || !m_units.isUnitWord(wordAt(afterBlanks(end))))
        return false;
    fails(ErrorKind::syntax,
          fmt::format("an operator is missing before `{}`: to add it write +", piece(pos, end)), pos, end);
    addFix("write +", pos, pos, "+ ");
    return true;
}

/// Where decimals have commas, arguments are parted by semicolons: both are mended at once.
bool Slips::semicolonSlip(std::size_t pos)
{
    if (!m_inArguments)
        return told(ErrorKind::syntax, "`;` has no meaning here: a formula gives one value", pos, pos + 1);
    std::string text(m_text);
    bool decimals = false;
    for (std::size_t i = 1; i + 1 < text.size(); ++i)
        if (text[i] == ',' && isDigit(text[i - 1]) && isDigit(text[i + 1])) {
            text[i] = '.';
            decimals = true;
        }
    if (!decimals)
        return !failsWith(ErrorKind::syntax, "arguments are parted by commas", pos, pos + 1, "write a comma",
                          ",");
    std::replace(text.begin(), text.end(), ';', ',');
    fails(ErrorKind::syntax, "arguments are parted by commas, and a decimal is written with a point", pos,
          pos + 1);
    addFix("write it so", 0, m_text.size(), text);
    return true;
}

/// 'words' in curly single marks.
bool Slips::curlyWords(std::size_t pos, std::size_t end)
{
    const std::size_t close = m_text.find("\xE2\x80\x99", end);
    if (close == std::string_view::npos)
        return told(ErrorKind::syntax, "words stand in double quotation marks", pos, end);
    const std::string text = "\"" + piece(end, close) + "\"";
    return toldWith(ErrorKind::syntax, "words stand in double quotation marks: write " + text, pos, close + 3,
                    text);
}

bool Slips::characterSlip(std::size_t pos, std::size_t end)
{
    struct Row {
        std::string_view character, words, fix;
        bool hasFix = true;
    };
    static constexpr Row rows[] = {
        {"\xCF\x80", "write pi", "pi"},
        {"\xE2\x80\x93", "write - for minus", "-"}, // en dash
        {"\xE2\x80\x94", "write - for minus", "-"}, // em dash
        {"\xE2\x80\x90", "write - for minus", "-"}, // hyphen
        {"\xE2\x80\x91", "write - for minus", "-"}, // no-break hyphen
        {"\xE2\x80\xB2", "feet are written ft", " ft"},
        {"\xE2\x80\xB3", "inches are written in", " in"},
        {"\xC2\xBD", "write 0.5 for a half", "0.5"},
        {"\xC2\xBC", "write 0.25 for a quarter", "0.25"},
        {"\xC2\xBE", "write 0.75 for three quarters", "0.75"},
        {"\xE2\x88\x9A", "write sqrt( ) for a root", {}, false},
        {"\xC2\xB0", "write degF or degC", {}, false},
        {"\xC2\xBA", "write degF or degC", {}, false},
        {"\xC2\xA2", "money is in dollars, as in $0.05", {}, false},
        {"\xE2\x82\xAC", "money is in dollars, as in $5", {}, false},
        {"\xC2\xA3", "money is in dollars, as in $5", {}, false},
        {"\xE2\x80\x8B", "an invisible character stands here: delete it", ""}, // blank of no width
        {"\xE2\x80\x8C", "an invisible character stands here: delete it", ""},
        {"\xE2\x80\x8D", "an invisible character stands here: delete it", ""},
        {"\xE2\x81\xA0", "an invisible character stands here: delete it", ""},
        {"\xEF\xBB\xBF", "an invisible character stands here: delete it", ""},
        {"\xC2\xAD", "an invisible character stands here: delete it", ""}, // soft hyphen
        {"[", "brackets stand right behind a column key, for example cost[8]", {}, false},
        {"~", "a formula takes the value itself: leave ~ out", ""},
    };
    const std::string character = piece(pos, end);
    if (character == "\xC2\xB1")
        return told(ErrorKind::syntax, fmt::format("`\xC2\xB1` {}", tolerance), pos, end);
    if (character == "\xE2\x80\x98" || character == "\xE2\x80\x9A")
        return curlyWords(pos, end);
    for (const Row &row : rows)
        if (character == row.character)
            return row.hasFix
                       ? toldWith(ErrorKind::syntax, std::string(row.words), pos, end, std::string(row.fix))
                       : told(ErrorKind::syntax, std::string(row.words), pos, end);
    return false;
}

bool Slips::notMade()
{
    const std::string_view text = trimmed(m_text);
    if (text != "N/A" && text != "#N/A" && text != "-" && text != "--" && text != "?")
        return false;
    const auto begin = static_cast<std::size_t>(text.data() - m_text.data());
    return told(ErrorKind::syntax, "a test that was not made leaves its cell blank", begin,
                begin + text.size());
}

} // namespace puteal
