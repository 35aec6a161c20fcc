/// Where a function changes its sign, found by halving a bracket: no derivative, no first guess, always an
/// end. Not part of plugin.h: include it where it is needed.
#pragma once

#include <cmath>

namespace puteal::sdk
{

/// The place between `low` and `high` where `f` changes its sign, rising or falling, to the last bits of a
/// double. An end at which `f` is zero is the answer itself. NaN where the signs at the two ends are the
/// same: look at the ends first and say in words what is wrong.
template<class F>
double crossing(double low, double high, const F &f)
{
    const double atLow = f(low), atHigh = f(high);
    if (atLow == 0.0)
        return low;
    if (atHigh == 0.0)
        return high;
    if (!(atLow < 0.0 && atHigh > 0.0) && !(atLow > 0.0 && atHigh < 0.0))
        return std::nan("");
    constexpr int mostSteps = 2200; // more than lead from the greatest double down to the least
    for (int step = 0; step < mostSteps; ++step) {
        const double middle = low + (high - low) / 2.0;
        if (middle == low || middle == high)
            break;
        const double there = f(middle);
        if (there == 0.0)
            return middle;
        ((there > 0.0) == (atHigh > 0.0) ? high : low) = middle;
    }
    return low;
}

} // namespace puteal::sdk
