/// Small phrases of function help: ranges, defaults, source marks.
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "functions/functions_page.h"

namespace puteal
{

std::string rangeWords(double low, double high, const std::string &unit)
{
    const std::string after = unit.empty() || unit.find('\'') != std::string::npos ? "" : " " + unit;
    const bool openLow = std::isinf(low), openHigh = std::isinf(high);
    if (openLow && openHigh)
        return {};
    if (openHigh)
        return fmt::format("{}{} or more", shortest(low), after);
    if (openLow)
        return fmt::format("at most {}{}", shortest(high), after);
    return fmt::format("{} to {}{}", shortest(low), shortest(high), after);
}

std::string defaultWords(const ParameterInfo &parameter)
{
    const auto &p = parameter;
    if (p.kind == ValueKind::choice) {
        const auto i = static_cast<std::size_t>(p.fallback);
        return i < p.choices.size() ? p.choices[i] : "";
    }
    if (p.kind == ValueKind::yesNo)
        return p.fallback != 0 ? "yes" : "no";
    if (p.kind == ValueKind::date)
        return dateText(static_cast<std::int64_t>(p.fallback));
    const auto &unit = p.pattern.text;
    // a default worked out from constants is shown to six figures, as results are
    const std::string exact = shortest(p.fallback), six = trimZeros(toFigures(p.fallback, 6));
    return (exact.size() > 10 ? six : exact) +
           (unit.empty() || unit.find('\'') != std::string::npos ? "" : " " + unit);
}

std::string markWords(const std::string &mark)
{
    switch (mark.size() == 1 ? mark[0] : '\0') {
    case 'L':
        return "laboratory";
    case 'F':
        return "field kit";
    case 'M':
        return "measured on site";
    case 'D':
        return "driller's log";
    case 'S':
        return "standard";
    case 'H':
        return "handbook";
    case 'E':
        return "equipment data sheet";
    case 'P':
        return "price list";
    case 'T':
        return "trade practice";
    case 'R':
        return "recalled and unconfirmed";
    case 'C':
        return "customer";
    case 'A':
        return "assumed";
    case 'W':
        return "worked out";
    default:
        return mark;
    }
}

} // namespace puteal
