/// Names, quoted words, close words, joined words.
#include "base/text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <iterator>

#include <utf8.h>

#include "base/limits.h"

namespace puteal
{

namespace
{

constexpr std::array<std::string_view, 8> reserved{"and", "or", "not", "yes", "no", "as", "pi", "gone"};
constexpr std::uint32_t lastCodePoint = 0x10FFFF;

bool isLower(char c)
{
    return c >= 'a' && c <= 'z';
}
bool isUpper(char c)
{
    return c >= 'A' && c <= 'Z';
}
bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
char lower(char c)
{
    return isUpper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

Span spanOf(std::size_t begin, std::size_t end)
{
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

/// Edit distance with neighbors swapped counting one.
std::size_t distance(std::string_view a, std::string_view b)
{
    std::vector<std::vector<std::size_t>> d(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = 0; i <= a.size(); ++i)
        d[i][0] = i;
    for (std::size_t j = 0; j <= b.size(); ++j)
        d[0][j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i)
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t same = a[i - 1] == b[j - 1] ? 0 : 1;
            d[i][j] = std::min({d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + same});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i][j] = std::min(d[i][j], d[i - 2][j - 2] + 1);
        }
    return d[a.size()][b.size()];
}

/// Reads \u{hex} at text[i] == 'u'; returns the index of '}' or npos, and the code point.
std::size_t readHex(std::string_view text, std::size_t i, std::uint32_t &point)
{
    if (i + 1 >= text.size() || text[i + 1] != '{')
        return std::string_view::npos;
    const std::size_t close = text.find('}', i + 2);
    if (close == std::string_view::npos || close == i + 2 || close > i + 8)
        return std::string_view::npos;
    const auto result = std::from_chars(text.data() + i + 2, text.data() + close, point, 16);
    const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
    if (result.ec != std::errc{} || result.ptr != text.data() + close || point == 0 ||
        point > lastCodePoint || surrogate)
        return std::string_view::npos;
    return close;
}

} // namespace

bool isCleanText(std::string_view text)
{
    if (!utf8::is_valid(text.begin(), text.end()))
        return false;
    return std::none_of(text.begin(), text.end(), [](char c) {
        const auto u = static_cast<unsigned char>(c);
        return (u < 0x20 && c != '\t' && c != '\n') || u == 0x7F;
    });
}

bool isName(std::string_view word, bool oneLetter)
{
    if (word.size() < (oneLetter ? 1U : 2U) || word.size() > limits::nameCharacters || !isLower(word.front()))
        return false;
    return word.back() != '_' && word.find("__") == std::string_view::npos &&
           std::all_of(word.begin(), word.end(), [](char c) { return isLower(c) || isDigit(c) || c == '_'; });
}

bool isReservedWord(std::string_view word)
{
    return std::find(reserved.begin(), reserved.end(), word) != reserved.end();
}

std::string nameFromWords(std::string_view words)
{
    std::string name;
    for (const char c : words) {
        const char l = lower(c);
        if (isLower(l) || (isDigit(l) && !name.empty()))
            name += l;
        else if (!name.empty() && name.back() != '_')
            name += '_';
    }
    name.resize(std::min(name.size(), limits::nameCharacters));
    while (!name.empty() && name.back() == '_')
        name.pop_back();
    if (isReservedWord(name))
        name += "_value";
    return name.size() < 2 ? std::string{} : name;
}

std::string quoted(std::string_view words)
{
    static constexpr std::string_view hex = "0123456789abcdef";
    std::string text = "\"";
    for (const char c : words) {
        const auto u = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            (text += '\\') += c;
        else if (c == '\n')
            text += "\\n";
        else if (c == '\t')
            text += "\\t";
        else if (u < 0x20 || u == 0x7F)
            ((text += "\\u{") += hex[u / 16], text += hex[u % 16]) += '}';
        else
            text += c;
    }
    return text + '"';
}

Result<std::string> unquoted(std::string_view text)
{
    if (text.empty() || text.front() != '"')
        return fail(ErrorKind::syntax, "words start with a quotation mark", spanOf(0, text.size()));
    std::string words;
    for (std::size_t i = 1; i < text.size(); ++i) {
        if (text[i] == '"') {
            if (i + 1 != text.size())
                return fail(ErrorKind::syntax, "nothing may follow the closing quotation mark",
                            spanOf(i + 1, text.size()));
            return words;
        }
        if (text[i] != '\\') {
            words += text[i];
            continue;
        }
        const std::size_t start = i++;
        const char c = i < text.size() ? text[i] : '\0';
        std::uint32_t point = 0;
        if (c == '"' || c == '\\') {
            words += c;
        } else if (c == 'n' || c == 't') {
            words += c == 'n' ? '\n' : '\t';
        } else if (const auto close = c == 'u' ? readHex(text, i, point) : std::string_view::npos;
                   close != std::string_view::npos) {
            utf8::append(point, std::back_inserter(words));
            i = close;
        } else {
            return fail(ErrorKind::syntax,
                        "after a backslash only \", \\, n, t or u{hex} may stand; write \\\\ for a backslash",
                        spanOf(start, std::min(i + 1, text.size())));
        }
    }
    return fail(ErrorKind::syntax, "the closing quotation mark is missing", spanOf(0, text.size()));
}

std::vector<std::string> closest(std::string_view word, const std::vector<std::string> &candidates,
                                 std::size_t most)
{
    struct Rated {
        std::size_t rate;
        const std::string *word;
    };
    std::vector<Rated> rated;
    std::string small(word);
    std::transform(small.begin(), small.end(), small.begin(), lower);
    const std::size_t reach = word.size() < 3 ? 1 : 1 + word.size() / 4;
    for (const std::string &candidate : candidates) {
        std::string other = candidate;
        std::transform(other.begin(), other.end(), other.begin(), lower);
        const std::size_t apart = other.size() > small.size() + reach || small.size() > other.size() + reach
                                      ? reach + 1 // too unequal in length to be close
                                      : distance(small, other);
        const bool prefix = small.size() >= 3 &&
                            (other.starts_with(small) || (other.size() >= 3 && small.starts_with(other)));
        if (apart <= reach && apart < std::max(small.size(), other.size()))
            rated.push_back({2 * apart + (candidate[0] == word[0] ? 0U : 1U), &candidate});
        else if (prefix)
            rated.push_back({2 * reach + 2, &candidate});
    }
    std::stable_sort(rated.begin(), rated.end(),
                     [](const Rated &a, const Rated &b) { return a.rate < b.rate; });
    std::vector<std::string> result;
    for (std::size_t i = 0; i < rated.size() && i < most; ++i)
        result.push_back(*rated[i].word);
    return result;
}

std::string joined(const std::vector<std::string> &items)
{
    std::string text;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (i > 0)
            text += i + 1 == items.size() ? " and " : ", ";
        text += items[i];
    }
    return text;
}

std::size_t codePoints(std::string_view text)
{
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string_view trimmed(std::string_view text)
{
    const auto begin = text.find_first_not_of(" \t\n");
    if (begin == std::string_view::npos)
        return {};
    return text.substr(begin, text.find_last_not_of(" \t\n") - begin + 1);
}

} // namespace puteal
