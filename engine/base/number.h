/// Reading and writing bare numbers without the locale.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "base/limits.h"

namespace puteal
{

/// Length of the number `digits [ "." digits ] [ e [sign] digits ]` at `text[pos]`, 0 when there is none.
/// No sign, no inf, no nan, no leading or trailing dot.
std::size_t numberLength(std::string_view text, std::size_t pos);

/// The double nearest to a whole text of that form (an optional leading '-' is read too); none on overflow.
std::optional<double> readNumber(std::string_view text);

/// Shortest text that reads back to the same double; "0" for -0. Never scientific between 1e-5 and 1e15.
std::string shortest(double x);

/// `figures` significant figures, half away from zero on the shortest decimal text, zeros kept, no grouping.
std::string toFigures(double x, int figures);

/// `places` decimal places, half away from zero on the shortest decimal text.
std::string toPlaces(double x, int places);

/// Puts grouping commas into the integer part: 1250.5 -> 1,250.5.
std::string grouped(std::string_view plain);

/// Drops trailing zeros after the decimal point (and the point).
std::string trimZeros(std::string_view plain);

/// The one comparison of the product: equal within limits::slack of the larger magnitude.
inline bool nearlyEqual(double a, double b)
{
    return a == b || std::fabs(a - b) <= limits::slack * std::max(std::fabs(a), std::fabs(b));
}
/// a <= b, a < b with that slack.
inline bool atMost(double a, double b)
{
    return a <= b || nearlyEqual(a, b);
}
inline bool lessThan(double a, double b)
{
    return a < b && !nearlyEqual(a, b);
}

} // namespace puteal
