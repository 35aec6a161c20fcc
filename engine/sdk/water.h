/// Viscosity and density of clean water for plugins, so that no two of them differ.
#pragma once

#include <cmath>

namespace puteal::sdk::water
{

/// mPa*s at degC: form of Kestin, Sokolov and Wakeham [recalled, not confirmed; the tests hold it against
/// IAPWS R12-08].
inline double viscosity(double temperature)
{
    const double below = 20.0 - temperature;
    const double power =
        below / (temperature + 96.0) * (1.2364 - 1.37e-3 * below + 5.7e-6 * below * below); // [recalled]
    return 1.002 * std::pow(10.0, power);                                                   // [recalled]
}

/// kg/m^3 at degC and one atmosphere [recalled, not confirmed; the tests hold it against IAPWS-IF97].
inline double density(double temperature)
{
    const double t = temperature, from = t - 3.9863;                                    // [recalled]
    return 1000.0 * (1.0 - (t + 288.9414) * from * from / (508929.2 * (t + 68.12963))); // [recalled]
}

} // namespace puteal::sdk::water
