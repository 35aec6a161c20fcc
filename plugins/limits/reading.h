/// What a laboratory reading allows, and where it lies to a limit.
#pragma once

#include <string>

#include "sdk/plugin.h"

namespace limits
{

/// What a test allows the true value to be.
struct Reading {
    bool known, below, above;
    double least, most;
    std::string shown;
    explicit Reading(const puteal::sdk::Argument &a)
        : known(!a.missing()), below(a.below()), above(a.above()), least(a.least()), most(a.most()),
          shown(a.shown())
    {
    }
};
/// Where a reading lies to a highest value allowed: under it, under it but within the band, over it, or both
/// are possible.
enum class Side { under, close, over, unclear };
Side sideOf(const Reading &reading, double limit, double band);

} // namespace limits
