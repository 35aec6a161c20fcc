/// Guarded forms: operations in which plain evaluation would lose an error or read it as a number.
#pragma once

#include <string_view>
#include <vector>

namespace puteal
{

/// One function of the emitted language with a fixed number of arguments.
struct Guard {
    std::string_view name;
    double (*one)(double) = nullptr;
    double (*two)(double, double) = nullptr;
    double (*three)(double, double, double) = nullptr;
    double (*five)(double, double, double, double, double) = nullptr;
    double (*many)(const double *, int) = nullptr;
};
const std::vector<Guard> &guards();

/// Comparison of two numbers one of which may be known only as a bound. `op` as enum Op, bounds as enum
/// Bound. Gives 1, 0, or an undecided error when not the whole range agrees.
double compareBounded(double op, double boundA, double boundB, double a, double b);

/// round_to, ceil_to, floor_to with the common slack; a step that is not above 0 is a notFinite error.
double roundTo(double x, double step);
double ceilTo(double x, double step);
double floorTo(double x, double step);

} // namespace puteal
