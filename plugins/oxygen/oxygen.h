/// Rows of the oxygen plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace oxygen
{

extern const puteal_function oxygenSaturationRow, oxygenBudgetRow;
extern const puteal_function oxygenPartialPressureRow, airEntryRow;
extern const puteal_function airPocketOxygenRow, airPocketDaysRow, airPocketVolumeRow;
extern const puteal_function airPocketIntervalRow, airPocketLimitRow;
extern const puteal_function saturationShareRow, oxygenNeededRow, oxygenRemainingRow, aerationLimitRow;
extern const puteal_function venturiAirFlowRow, venturiDrawsRow, hydrogenSulfideShareRow;

/// Water vapor over water, atm.
double vaporPressure(double kelvin);

/// Oxygen in water in balance with moist air, mg/L, at degC and psi_abs.
double saturationOf(double temperature, double pressure);

inline constexpr double oxygenShare = 0.20946;          // of dry air by volume [recalled, not confirmed]
inline constexpr double pascalPerPsi = 6894.757293168;  // [NIST SP 811, appendix B]
inline constexpr double pascalPerAtmosphere = 101325.0; // exact [NIST SP 811, appendix B]
inline constexpr double psiPerAtmosphere = pascalPerAtmosphere / pascalPerPsi;
inline constexpr double gasConstant = 8.314462618; // J/(mol K), exact [SI 2019]
inline constexpr double seaLevelAir = 14.696;      // psi_abs, the standard atmosphere rounded
inline constexpr double kelvinAtZero = 273.15;     // degC to K, exact [NIST SP 811, appendix B]

inline constexpr const char headSafety[] =
    "An air head stores energy: relief valve and vacuum breaker, pressure off before opening. Never blow "
    "compressed air into a fiberglass tank; a compressor made for the head has its relief set below the "
    "rating "
    "of the tank. Test for methane first.";
inline constexpr const char aerationSafety[] =
    "Test for methane before any aeration: air and methane in a tank can explode. Sulfide gas is "
    "poisonous: "
    "vent outdoors.";

} // namespace oxygen
