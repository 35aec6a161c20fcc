/// Numbers and near-dates of typed cells.
#include "units/typed_number.h"

#include <algorithm>
#include <array>
#include <string>

#include <fmt/format.h>

#include "base/number.h"
#include "units/value.h"

namespace puteal
{

namespace
{

constexpr std::size_t longestGrouped = 64;

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
char at(std::string_view text, std::size_t i)
{
    return i < text.size() ? text[i] : '\0';
}
Span spanOf(std::size_t begin, std::size_t end)
{
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

std::size_t digits(std::string_view text, std::size_t pos)
{
    std::size_t i = pos;
    while (isDigit(at(text, i)))
        ++i;
    return i - pos;
}

tl::unexpected<Error> writeInstead(std::string words, Span span, const std::string &text)
{
    auto error = fail(ErrorKind::syntax, std::move(words), span);
    error.value().fixes.push_back({"write " + text, span, text});
    return error;
}

int figuresOf(std::string_view number)
{
    const std::string_view mantissa = number.substr(0, std::min(number.find_first_of("eE"), number.size()));
    const std::size_t first = mantissa.find_first_of("123456789");
    if (first == std::string_view::npos)
        return 1;
    return static_cast<int>(
        std::count_if(mantissa.begin() + static_cast<std::ptrdiff_t>(first), mantissa.end(), isDigit));
}

/// End of digits, commas and points: the whole piece a person meant as one number.
std::size_t numberPiece(std::string_view text, std::size_t pos)
{
    std::size_t end = pos;
    while (isDigit(at(text, end)) ||
           ((at(text, end) == ',' || at(text, end) == '.') && isDigit(at(text, end + 1))))
        ++end;
    return end;
}

/// 1,250 and 1,250,000.5; anything else with a comma is refused.
Result<std::optional<TypedNumber>> readGrouped(std::string_view text, std::size_t pos)
{
    const std::size_t piece = numberPiece(text, pos);
    const std::string_view whole = text.substr(pos, piece - pos);
    const std::size_t first = digits(text, pos);
    std::size_t i = pos + first;
    bool good = first <= 3 && at(text, pos) != '0';
    while (good && at(text, i) == ',' && digits(text, i + 1) > 0) {
        good = digits(text, i + 1) == 3;
        i += 4;
    }
    if (good && at(text, i) == '.')
        i += 1 + digits(text, i + 1);
    good = good && i == piece && piece - pos <= longestGrouped;
    if (!good) {
        const bool oneComma =
            std::count(whole.begin(), whole.end(), ',') == 1 && whole.find('.') == std::string_view::npos;
        std::string plain(whole);
        std::replace(plain.begin(), plain.end(), ',', '.');
        if (oneComma)
            return writeInstead("a decimal is written with a point: write " + plain, spanOf(pos, piece),
                                plain);
        return fail(ErrorKind::syntax, "commas stand before groups of three figures, as in 1,250.5",
                    spanOf(pos, piece));
    }
    std::array<char, longestGrouped> buffer{};
    std::size_t n = 0;
    for (const char c : whole)
        if (c != ',')
            buffer[n++] = c;
    const std::string_view plain(buffer.data(), n);
    return std::optional<TypedNumber>{
        TypedNumber{readNumber(plain).value_or(0), figuresOf(plain), piece, false}};
}

/// `/4` behind the integer that ends at `pos`: the part of a fraction, or none.
Result<std::optional<double>> readDenominator(std::string_view text, std::size_t pos, std::size_t &end)
{
    const std::size_t n = at(text, pos) == '/' ? digits(text, pos + 1) : 0;
    end = pos + 1 + n;
    if (n == 0 || at(text, end) == '.' || at(text, end) == ',' || at(text, end) == 'e' ||
        at(text, end) == 'E')
        return std::optional<double>{};
    const double value = readNumber(text.substr(pos + 1, n)).value_or(0);
    const std::size_t after = text.find_first_not_of(' ', end);
    if (value == 0 && after != std::string_view::npos &&
        std::string_view("<>=!+-*/^?").find(text[after]) != std::string_view::npos)
        return std::optional<double>{}; // part of a formula, which tells the division by zero itself
    if (value == 0)
        return fail(ErrorKind::notFinite, "a fraction has no 0 below the line", spanOf(pos + 1, end));
    return std::optional<double>{value};
}

/// 3/4 and 1 1/2 at `pos`, where `first` digits stand.
Result<std::optional<TypedNumber>> readFraction(std::string_view text, std::size_t pos, std::size_t first)
{
    std::size_t begin = pos, count = first, end = 0;
    double whole = 0;
    if (at(text, pos + first) == ' ') {
        begin = pos + first + 1;
        count = digits(text, begin);
        whole = readNumber(text.substr(pos, first)).value_or(0);
        if (count == 0)
            return std::optional<TypedNumber>{};
    }
    const auto below = readDenominator(text, begin + count, end);
    if (!below)
        return tl::unexpected<Error>(below.error());
    if (!*below)
        return std::optional<TypedNumber>{};
    const double above = readNumber(text.substr(begin, count)).value_or(0);
    return std::optional<TypedNumber>{TypedNumber{whole + above / **below, 0, end, true}};
}

} // namespace

Result<std::optional<TypedNumber>> readTypedNumber(std::string_view text, std::size_t pos)
{
    const std::size_t sign = at(text, pos) == '-' ? 1 : 0;
    const std::size_t begin = pos + sign;
    const std::size_t first = digits(text, begin);
    if (first == 0) {
        const std::size_t after = at(text, begin) == '.' ? digits(text, begin + 1) : 0;
        if (after == 0)
            return std::optional<TypedNumber>{};
        const std::string plain = "0" + std::string(text.substr(begin, after + 1));
        return writeInstead("a number starts with a figure: write " + plain, spanOf(begin, begin + 1 + after),
                            plain);
    }
    const char next = at(text, begin + first);
    Result<std::optional<TypedNumber>> number = std::optional<TypedNumber>{};
    if (next == ',' ||
        (next == '.' && at(text, numberPiece(text, begin) - 1) != '.' &&
         text.substr(begin, numberPiece(text, begin) - begin).find(',') != std::string_view::npos)) {
        if (!isDigit(at(text, begin + first + 1)))
            return number;
        number = readGrouped(text, begin);
    } else if (next == '.' && at(text, begin + first + 1) == '.') {
        return number; // 5..10: the formula parser tells where a range of values may stand
    } else if (next == '.' && !isDigit(at(text, begin + first + 1))) {
        const std::string plain(text.substr(begin, first));
        return writeInstead("a number does not end with a point: write " + plain,
                            spanOf(begin, begin + first + 1), plain);
    } else {
        if (next == '/' || next == ' ')
            number = readFraction(text, begin, first);
        if (number && !*number) {
            const std::size_t length = numberLength(text, begin);
            const std::string_view plain = text.substr(begin, length);
            const auto value = readNumber(plain);
            if (!value)
                return fail(ErrorKind::notFinite, "this number is too large: the largest is about 1.7e308",
                            spanOf(begin, begin + length));
            if (*value == 0.0 && plain.substr(0, plain.find_first_of("eE")).find_first_of("123456789") !=
                                     std::string_view::npos)
                return fail(ErrorKind::notFinite, "this number is too small to be told from 0: write 0",
                            spanOf(begin, begin + length));
            number = std::optional<TypedNumber>{TypedNumber{*value, figuresOf(plain), begin + length, false}};
        }
    }
    if (number && *number && sign)
        (*number)->value = -(*number)->value;
    return number;
}

bool looksLikeDate(std::string_view text)
{
    std::size_t i = 0;
    for (int part = 0; part < 3; ++part) {
        const std::size_t n = digits(text, i);
        if (n == 0)
            return false;
        i += n;
        if (part < 2 && at(text, i) != '-' && at(text, i) != '/')
            return false;
        i += part < 2 ? 1 : 0;
    }
    return i == text.size();
}

Error dateRefusal(std::string_view text)
{
    std::array<std::string, 3> part;
    std::size_t i = 0;
    for (std::string &p : part) {
        p = text.substr(i, digits(text, i));
        i += p.size() + 1;
    }
    const auto number = [](const std::string &s) { return s.size() > 4 ? 9999 : std::stoi(s); };
    std::string guess;
    if (part[0].size() == 4)
        guess = fmt::format("{}-{:02}-{:02}", part[0], number(part[1]), number(part[2]));
    else if (part[2].size() == 4 && number(part[0]) > 12)
        guess = fmt::format("{}-{:02}-{:02}", part[2], number(part[1]), number(part[0]));
    else if (part[2].size() == 4 && number(part[1]) > 12)
        guess = fmt::format("{}-{:02}-{:02}", part[2], number(part[0]), number(part[1]));
    const Span span = spanOf(0, text.size());
    Error error{ErrorKind::syntax, {}, {}, Place{span, {}, 0}};
    if (!guess.empty() && guess != text && readDate(guess)) {
        error.words = fmt::format("a date is year-month-day: write {}", guess);
        error.fixes.push_back({"write " + guess, span, guess});
    } else if (part[0].size() == 4) {
        error.words = fmt::format("`{}` is not in the calendar", text);
    } else {
        error.words =
            "a date is year-month-day, as in 2026-05-12; for a calculation put blanks round the signs";
    }
    return error;
}

} // namespace puteal
