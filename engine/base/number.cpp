/// Bare numbers to and from text: decimal digits are rounded on the shortest text, so 0.285 to two places is
/// 0.29.
#include "base/number.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>

#include "base/limits.h"

namespace puteal
{

namespace
{

constexpr int mostPlainExponent = 15;  // 1e15 and above are written with an exponent
constexpr int leastPlainExponent = -5; // below 1e-5 too

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// x = 0.d1d2d3... * 10^point, with the digits of the shortest text.
struct Digits {
    bool negative = false;
    std::string digits; ///< no leading zero; empty for 0
    int point = 0;
};

Digits digitsOf(double x)
{
    Digits result;
    result.negative = std::signbit(x) && x != 0.0;
    if (x == 0.0 || !std::isfinite(x))
        return result;
    char buffer[40];
    const auto end =
        std::to_chars(buffer, buffer + sizeof buffer, std::fabs(x), std::chars_format::scientific).ptr;
    const char *p = buffer;
    for (; p != end && *p != 'e'; ++p)
        if (*p != '.')
            result.digits += *p;
    int exponent = 0;
    const char *first = p + 1;
    if (*first == '+')
        ++first;
    std::from_chars(first, end, exponent);
    result.point = exponent + 1;
    while (result.digits.size() > 1 && result.digits.back() == '0')
        result.digits.pop_back();
    return result;
}

/// Keeps the first `keep` digits, half away from zero; may move the point by one. `keep` may be 0 or
/// negative.
void roundTo(Digits &d, int keep)
{
    if (keep < 0) {
        d.digits.clear();
        return;
    }
    const auto n = static_cast<std::size_t>(keep);
    if (n >= d.digits.size())
        return;
    const bool up = d.digits[n] >= '5';
    d.digits.resize(n);
    if (!up)
        return;
    std::size_t i = n;
    while (i > 0) {
        --i;
        if (d.digits[i] != '9') {
            ++d.digits[i];
            return;
        }
        d.digits[i] = '0';
    }
    d.digits.insert(d.digits.begin(), '1');
    ++d.point;
}

std::string plainText(const Digits &d, int places)
{
    std::string text;
    if (d.point <= 0)
        text = "0";
    for (int i = 0; i < d.point; ++i)
        text += static_cast<std::size_t>(i) < d.digits.size() ? d.digits[static_cast<std::size_t>(i)] : '0';
    if (places > 0) {
        text += '.';
        for (int i = d.point; i < d.point + places; ++i)
            text += i >= 0 && static_cast<std::size_t>(i) < d.digits.size()
                        ? d.digits[static_cast<std::size_t>(i)]
                        : '0';
    }
    const bool isZero = text.find_first_not_of("0.") == std::string::npos;
    return d.negative && !isZero ? "-" + text : text;
}

std::string scientificText(const Digits &d, int figures)
{
    std::string text = d.negative ? "-" : "";
    text += d.digits[0];
    if (figures > 1) {
        text += '.';
        for (std::size_t i = 1; i < static_cast<std::size_t>(figures); ++i)
            text += i < d.digits.size() ? d.digits[i] : '0';
    }
    return text + "e" + std::to_string(d.point - 1);
}

bool wantsExponent(const Digits &d)
{
    return d.point > mostPlainExponent || d.point <= leastPlainExponent;
}

} // namespace

std::size_t numberLength(std::string_view text, std::size_t pos)
{
    std::size_t i = pos;
    while (i < text.size() && isDigit(text[i]))
        ++i;
    if (i == pos)
        return 0;
    if (i + 1 < text.size() && text[i] == '.' && isDigit(text[i + 1])) {
        ++i;
        while (i < text.size() && isDigit(text[i]))
            ++i;
    }
    if (i + 1 < text.size() && (text[i] == 'e' || text[i] == 'E')) {
        std::size_t j = i + 1;
        if (j + 1 < text.size() && (text[j] == '+' || text[j] == '-'))
            ++j;
        if (isDigit(text[j])) {
            while (j < text.size() && isDigit(text[j]))
                ++j;
            i = j;
        }
    }
    return i - pos;
}

std::optional<double> readNumber(std::string_view text)
{
    const std::size_t sign = !text.empty() && text.front() == '-' ? 1 : 0;
    const std::size_t length = numberLength(text, sign);
    if (length == 0 || sign + length != text.size())
        return {};
    double x = 0.0;
    const auto result = std::from_chars(text.data() + sign, text.data() + text.size(), x);
    if (result.ec == std::errc::result_out_of_range) {
        // from_chars does not say which way; only a negative exponent or 0.000... can be too small
        const auto e = text.find_first_of("eE");
        const bool tiny = (e != std::string_view::npos && text[e + 1] == '-') || text[sign] == '0';
        if (!tiny)
            return {};
        x = 0.0;
    } else if (result.ec != std::errc{}) {
        return {};
    }
    return sign ? -x : x;
}

std::string shortest(double x)
{
    if (std::isnan(x))
        return "nan";
    if (std::isinf(x))
        return x > 0 ? "inf" : "-inf";
    const Digits d = digitsOf(x);
    if (d.digits.empty())
        return "0";
    const int count = static_cast<int>(d.digits.size());
    return wantsExponent(d) ? scientificText(d, count) : plainText(d, std::max(0, count - d.point));
}

std::string toFigures(double x, int figures)
{
    if (!std::isfinite(x))
        return shortest(x);
    figures = std::max(1, figures);
    Digits d = digitsOf(x);
    if (d.digits.empty())
        return "0";
    roundTo(d, figures);
    return wantsExponent(d) ? scientificText(d, figures) : plainText(d, std::max(0, figures - d.point));
}

std::string toPlaces(double x, int places)
{
    if (!std::isfinite(x))
        return shortest(x);
    places = std::max(0, places);
    Digits d = digitsOf(x);
    if (d.point > mostPlainExponent)
        return shortest(x);
    roundTo(d, d.point + places);
    return plainText(d, places);
}

std::string grouped(std::string_view plain)
{
    const std::size_t begin = !plain.empty() && plain.front() == '-' ? 1 : 0;
    std::size_t end = begin;
    while (end < plain.size() && isDigit(plain[end]))
        ++end;
    if (end < plain.size() && plain.find_first_of("eE", end) != std::string_view::npos)
        return std::string(plain);
    std::string text(plain);
    for (std::size_t i = end; i > begin + 3; i -= 3)
        text.insert(i - 3, ",");
    return text;
}

std::string trimZeros(std::string_view plain)
{
    const std::size_t point = plain.find('.');
    if (point == std::string_view::npos)
        return std::string(plain);
    std::size_t end = plain.find_first_of("eE");
    if (end == std::string_view::npos)
        end = plain.size();
    std::size_t keep = end;
    while (keep > point + 1 && plain[keep - 1] == '0')
        --keep;
    if (keep == point + 1)
        keep = point;
    return std::string(plain.substr(0, keep)) + std::string(plain.substr(end));
}

} // namespace puteal
