/// Rows of the oxygen plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace oxygen
{

extern const puteal_function oxygenSaturationRow, oxygenBudgetRow;
extern const puteal_function oxygenPartialPressureRow, airEntryRow;
extern const puteal_function airPocketOxygenRow, airPocketDaysRow, airPocketVolumeRow;

/// Water vapor over water, atm.
double vaporPressure(double kelvin);

inline constexpr double oxygenShare = 0.20946; // of dry air by volume [recalled, not confirmed]
inline constexpr double psiPerAtmosphere = 101325.0 / 6894.757293168; // [NIST SP 811, appendix B]
inline constexpr double seaLevelAir = 14.696;  // psi_abs, the standard atmosphere rounded
inline constexpr double kelvinAtZero = 273.15; // degC to K, exact [NIST SP 811, appendix B]

} // namespace oxygen
