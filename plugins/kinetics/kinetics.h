/// Rows of the kinetics plugin's functions, and the laws they share.
#pragma once

#include "sdk/plugin.h"

namespace kinetics
{

extern const puteal_function oxidationRateRow, halfLifeRow, oxidationTimeRow, ironRemainingRow;

/// Published laws of the oxidation of dissolved iron by oxygen, in the order of the choice list.
enum Law : int { stummLee, davisonSeed, usgsExample, threeSpecies, millero };
inline constexpr const char *lawWords[] = {"Stumm and Lee",    "Davison and Seed", "USGS example 9",
                                           "Morgan and Lahav", "Millero 1987",     nullptr};

/// Share of the iron that turns in a minute, 1/min: temperature degC, oxygen pressure atm.
double rateOf(double ph, double temperature, double oxygen, int law);

} // namespace kinetics
