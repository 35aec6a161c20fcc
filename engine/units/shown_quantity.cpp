/// A quantity as text that can be typed back.
#include "units/shown_quantity.h"

#include <algorithm>
#include <cmath>

#include "base/number.h"

namespace puteal
{

namespace
{

constexpr int defaultFigures = 3;
constexpr int cents = 2;
constexpr double smallRate = 1.0; // dollars a unit: below it cents say too little

std::string boundMark(Bound bound)
{
    return bound == Bound::exact ? "" : bound == Bound::below ? "<" : ">";
}

bool isMoneyText(const Unit &unit)
{
    return !unit.text.empty() && unit.text.front() == '$';
}

/// At least two places of `text` when it has places at all: 0.5 -> 0.50.
std::string withCents(std::string text)
{
    const auto point = text.find('.');
    if (point == std::string::npos)
        return text;
    while (text.size() - point - 1 < cents)
        text += '0';
    return text;
}

std::string moneyDigits(double x, bool isRate, const Rounding &rounding)
{
    if (rounding.places >= 0)
        return toPlaces(x, rounding.places);
    if (rounding.figures > 0)
        return toFigures(x, rounding.figures);
    if (isRate && x != 0 && x < smallRate)
        return withCents(trimZeros(toFigures(x, defaultFigures)));
    const std::string text = toPlaces(x, cents);
    return text.ends_with(".00") ? text.substr(0, text.size() - 3) : text;
}

ShownQuantity money(double x, Bound bound, const Unit &unit, const Rounding &rounding)
{
    const std::string digits = moneyDigits(std::fabs(x), unit.text.size() > 1, rounding);
    const bool minus = x < 0 && digits.find_first_of("123456789") != std::string::npos;
    return {boundMark(bound) + (minus ? "-$" : "$") + grouped(digits) + unit.text.substr(1), ""};
}

} // namespace

ShownQuantity showQuantity(double base, Bound bound, const Unit &unit, const Rounding &rounding)
{
    const double x = unit.fromBase(base);
    if (isMoneyText(unit))
        return money(x, bound, unit, rounding);
    const std::string digits = rounding.places >= 0
                                   ? toPlaces(x, rounding.places)
                                   : toFigures(x, rounding.figures > 0 ? rounding.figures : defaultFigures);
    return {boundMark(bound) + digits, unit.text};
}

ShownQuantity showTrimmed(double base, Bound bound, const Unit &unit, int figures)
{
    if (isMoneyText(unit))
        return showQuantity(base, bound, unit, {});
    return {boundMark(bound) + trimZeros(toFigures(unit.fromBase(base), figures)), unit.text};
}

} // namespace puteal
