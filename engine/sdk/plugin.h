/// Header-only C++ on top of the contract: an author writes plain functions and two small tables.
///
///     double saltPerYear(double saltPerEvent, double interval) { return saltPerEvent * 365 / interval; }
///     constinit const puteal_function saltPerYearRow = Function("salt_per_year", ..., call<saltPerYear>) ...
///
/// A function takes its arguments in order, each as `double` (number in the declared unit; choice: index;
/// yes/no: bool; date: days since 1970-01-01), or as `const Argument &` (range, missing, bounded, label), and
/// may take `Reply &` last to refuse, caution or reason.
#pragma once

#include <cmath>
#include <cstdio>
#include <string>

#include "sdk/call.h"
#include "sdk/choices.h"
#include "sdk/contract.h"
#include "sdk/dates.h"
#include "sdk/measures.h"
#include "sdk/parameter.h"
#include "sdk/substances.h"
#include "sdk/tables.h"
#include "sdk/water.h"

namespace puteal::sdk
{

/// The one comparison of the product: relative slack 1e-12, the same as in formulas.
inline bool atMost(double a, double b)
{
    // The slack of an infinite end (a reading such as >3) would be infinite and swallow the comparison.
    return a <= b || (std::isfinite(a) && a <= b + 1e-12 * std::fmax(std::fabs(a), std::fabs(b)));
}
inline bool lessThan(double a, double b)
{
    return !atMost(b, a);
}
inline bool nearlyEqual(double a, double b)
{
    return atMost(a, b) && atMost(b, a);
}

/// "%.4g"-like short text for words a function writes itself.
inline std::string figures(double x, int n = 3)
{
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.*g", n, x);
    return buffer;
}

} // namespace puteal::sdk

#define PUTEAL_EXPORT extern "C" __attribute__((visibility("default")))
