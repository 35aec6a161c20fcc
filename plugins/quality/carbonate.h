/// Constants of the carbonate system, activity, and what the indices of saturation share.
#pragma once

#include <cmath>
#include <cstdint>

#include "sdk/plugin.h"

namespace quality
{

/// -log10 of the constants at degC, 0 to 90 degC [Plummer and Busenberg 1982, as printed in public
/// geochemical code].
struct CarbonateConstants {
    double first, second, calcite;
};

inline CarbonateConstants carbonateConstants(double temperature)
{
    const double t = temperature + 273.15, lg = std::log10(t); // K, exact [NIST SP 811, appendix B]
    return {356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * lg + 1684915 / (t * t),
            107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * lg + 563713.9 / (t * t),
            171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * lg};
}

/// How free carbon dioxide is told from alkalinity and pH; one list for all functions that do so.
inline constexpr const char *carbonDioxideForms[] = {"short", "thermodynamic", "USGS", nullptr};
enum CarbonDioxideForm : int { shortForm, thermodynamic, usgsForm };

/// Free carbon dioxide is this times 10^-pH times alkalinity, mg/L as CaCO3.
inline double carbonDioxideFactor(double temperature, int form)
{
    using puteal::sdk::molarMass;
    const double perEquivalent = molarMass("CaCO3") / 2.0;
    if (form == thermodynamic) {
        const double kelvin = temperature + 273.15;                        // exact [NIST SP 811, appendix B]
        const double pk1 = 3404.71 / kelvin + 0.032786 * kelvin - 14.8435; // [recalled, not confirmed]
        return std::pow(10.0, pk1) * molarMass("CO2") / perEquivalent;
    }
    if (form == usgsForm) // 1.60 times bicarbonate in mg/L [USGS methods, p. 280]
        return 1.60e6 * molarMass("HCO3") / perEquivalent;
    return 2.0e6; // Standard Methods 4500-CO2 [recalled]
}

inline constexpr double coldFrom = 15; // degC, below it the short forms tell a tenth too little or more
inline constexpr puteal::sdk::Parameter carbonDioxideTemperature =
    puteal::sdk::Parameter("temperature", "degC", "temperature of the water; the thermodynamic form uses it")
        .hard(0, 50)
        .usual(2, 30)
        .otherwise(25, "A");
inline constexpr puteal::sdk::Parameter carbonDioxideForm =
    puteal::sdk::Parameter(
        "form", "",
        "short = 2 times alkalinity, handbook; thermodynamic = with the temperature; USGS = "
        "1.60 times bicarbonate, the agency's methods of 1979, for waters below 800 mg/L of "
        "solids")
        .oneOf(carbonDioxideForms)
        .otherwise(shortForm, "R");

/// -log10 of the activity factor of an ion of one charge: Davies, with the ionic strength 2.5e-5 * TDS of
/// Langelier and the dielectric constant as in Standard Methods 2330 [recalled, not confirmed].
inline double activityExponent(double temperature, double solids)
{
    const double t = temperature + 273.15, strength = 2.5e-5 * solids, root = std::sqrt(strength);
    const double dielectric = 60954 / (t + 116) - 68.937;     // [recalled]
    const double a = 1.82e6 * std::pow(dielectric * t, -1.5); // [recalled]
    return a * (root / (1 + root) - 0.3 * strength);
}

inline constexpr const char noCalcium[] =
    "without calcium hardness there is no index: use the water ahead of the softener";
inline constexpr const char noAlkalinity[] = "without alkalinity there is no index";

/// `first` counts the calcium argument from 1; alkalinity follows it.
inline bool refusedEmpty(std::uint32_t first, double calcium, double alkalinity, puteal::sdk::Reply &reply)
{
    if (puteal::sdk::atMost(calcium, 0))
        reply.refuse(first, noCalcium);
    else if (puteal::sdk::atMost(alkalinity, 0))
        reply.refuse(first + 1, noAlkalinity);
    else
        return false;
    return true;
}

inline constexpr puteal::sdk::Parameter calciumParameter =
    puteal::sdk::Parameter("calcium_hardness", "mg/L as CaCO3", "calcium share of the hardness")
        .hard(0, 10000)
        .usual(10, 600);

inline constexpr const char corrosiveSafety[] =
    "Corrosive water may carry lead and copper: test the first draw and ask the health department.";

} // namespace quality
