/// Values and errors as text.
#include "show/shown.h"

#include <algorithm>

#include "base/number.h"
#include "base/text.h"
#include "units/shown_value.h"

namespace puteal
{

namespace
{

double dayOf(const UnitTable &units)
{
    return units.find("day")->factor;
}

/// Carets under [begin, end) of a line, in code points.
void addCarets(std::string &line, std::string_view text, Span span)
{
    const std::size_t begin = std::min<std::size_t>(span.begin, text.size());
    const std::size_t end = std::min<std::size_t>(std::max(span.end, span.begin), text.size());
    const std::size_t first = codePoints(text.substr(0, begin));
    const std::size_t count = std::max<std::size_t>(1, codePoints(text.substr(begin, end - begin)));
    line.resize(std::max(line.size(), first + count), ' ');
    std::fill_n(line.begin() + static_cast<std::ptrdiff_t>(first), count, '^');
}

/// The part of a text from one code point to another.
std::string_view part(std::string_view text, std::size_t from, std::size_t to)
{
    const auto byteOf = [&](std::size_t point) {
        std::size_t i = 0;
        for (; i < text.size() && point > 0; --point)
            for (++i; i < text.size() && (static_cast<unsigned char>(text[i]) & 0xC0U) == 0x80U;)
                ++i;
        return i;
    };
    const std::size_t begin = byteOf(from);
    return text.substr(begin, byteOf(to) - begin);
}

/// Leaves of a line too long for a terminal the part that is pointed at, with dots where it was cut.
void cutAroundCarets(std::string &line, std::string &carets)
{
    constexpr std::size_t widest = 160, around = 40; // characters
    constexpr std::string_view dots = "... ";
    const std::size_t length = codePoints(line);
    if (length <= widest)
        return;
    const std::size_t first = carets.find('^');
    const std::size_t from = first > around ? first - around : 0;
    const std::size_t to = std::min({length, carets.size() + around, from + widest});
    const std::string_view before = from > 0 ? dots : std::string_view();
    carets = std::string(before.size(), ' ') + carets.substr(from, to - from);
    carets.erase(carets.find_last_of('^') + 1);
    line = std::string(before) + std::string(part(line, from, to)) + (to < length ? " ..." : "");
}

} // namespace

std::string showValue(const StaticType &type, double number, const std::string &words, const Unit &unit,
                      const Rounding &rounding, const ChoiceLists &lists, const UnitTable &units)
{
    if (type.kind == ValueKind::quantity)
        return showQuantity(number, type.bound, unit, rounding).text();
    return showOther(type, number, words, lists, dayOf(units));
}

std::string showPlain(const StaticType &type, double number, const std::string &words, const Unit &unit,
                      int figures, const ChoiceLists &lists, const UnitTable &units)
{
    if (type.kind == ValueKind::quantity)
        return showTrimmed(number, type.bound, unit, figures).text();
    return showOther(type, number, words, lists, dayOf(units));
}

std::string errorLine(const Error &error)
{
    std::string line = error.words;
    if (!error.fixes.empty()) {
        const Fix &fix = error.fixes.front();
        const bool said = line.find(fix.words) != std::string::npos ||
                          (!fix.text.empty() && line.find(fix.text) != std::string::npos);
        if (!said)
            line += "; " + fix.words;
    }
    while (!line.empty() && line.back() == '.')
        line.pop_back();
    return line;
}

std::string pointed(std::string_view text, const Error &error)
{
    std::string shown(text);
    std::replace(shown.begin(), shown.end(), '\t', ' ');
    if (!error.place.span)
        return shown;
    std::string carets;
    addCarets(carets, text, *error.place.span);
    if (error.place.other)
        addCarets(carets, text, *error.place.other);
    cutAroundCarets(shown, carets);
    return shown + "\n" + carets;
}

} // namespace puteal
