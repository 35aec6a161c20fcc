/// Equilibrium constants of the carbonate system and activity, shared by carbon dioxide, alkalinity and
/// saturation.
#pragma once

#include <cmath>

namespace quality
{

/// -log10 of the constants at degC, 0 to 90 degC [Plummer and Busenberg 1982, as printed in public
/// geochemical code].
struct CarbonateConstants {
    double first, second, calcite, water;
};

inline CarbonateConstants carbonateConstants(double temperature)
{
    const double t = temperature + 273.15, lg = std::log10(t); // K, exact [NIST SP 811, appendix B]
    return {356.3094 + 0.06091964 * t - 21834.37 / t - 126.8339 * lg + 1684915 / (t * t),
            107.8871 + 0.03252849 * t - 5151.79 / t - 38.92561 * lg + 563713.9 / (t * t),
            171.9065 + 0.077993 * t - 2839.319 / t - 71.595 * lg,
            283.9710 + 0.05069842 * t - 13323.00 / t - 102.24447 * lg + 1119669 / (t * t)};
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

} // namespace quality
