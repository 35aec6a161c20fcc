/// Exact trade measures for plugins, so that none types them again. A plugin calculates in the units it
/// declares and needs these only where a relation mixes systems.
#pragma once

namespace puteal::sdk::measure
{

inline constexpr double literPerGallon = 3.785411784;        // 231 in^3, exact [NIST Handbook 44, appendix C]
inline constexpr double mgPerGrain = 64.79891;               // exact [NIST Handbook 44, appendix C]
inline constexpr double gramPerPound = 453.59237;            // exact [NIST SP 811, appendix B]
inline constexpr double mmPerInch = 25.4;                    // exact [NIST SP 811, appendix B]
inline constexpr double inchPerFoot = 12.0;                  // exact [NIST Handbook 44, appendix C]
inline constexpr double gallonPerCubicFoot = 1728.0 / 231.0; // exact [NIST Handbook 44, appendix C]
inline constexpr double mgPerLiterPerGpg = mgPerGrain / literPerGallon; // 17.11806, a grain in a US gallon
inline constexpr double minutePerDay = 1440.0;
inline constexpr double dayPerYear = 365.0; // trade accounting year, the same as the unit yr
inline constexpr double pi = 3.14159265358979323846;

} // namespace puteal::sdk::measure
