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
