/// The published rate laws: every one is first order in dissolved iron at a fixed pH and oxygen pressure.
/// (R1, R2)
#include "kinetics.h"

namespace kinetics
{

using namespace puteal::sdk;

namespace
{

constexpr double kelvinAtZero = 273.15; // exact [NIST SP 811, appendix B]
constexpr double secondPerMinute = 60.0;

/// Hydroxide, mol/L. The older fit of the ion product stands in the texts the two bimolecular constants come
/// from, the newer one in the USGS database: 14.000 at 25 degC.
double hydroxideOlder(double ph, double kelvin)
{
    const double pKw =
        4470.99 / kelvin + 0.017060 * kelvin - 6.0875; // [Stumm and Morgan, Aquatic Chemistry, 1981]
    return std::pow(10.0, ph - pKw);
}
double hydroxideUsgs(double ph, double kelvin)
{
    const double pKw = 283.9710 + 0.05069842 * kelvin - 13323.00 / kelvin - 102.24447 * std::log10(kelvin) +
                       1119669.0 / (kelvin * kelvin); // [USGS PHREEQC database]
    return std::pow(10.0, ph - pKw);
}

/// Iron as Fe2+, FeOH+ and Fe(OH)2, each with its own constant; made for 25 degC and water in balance with
/// air.
double threeSpeciesRate(double hydroxide, double oxygen)
{
    const double first = std::pow(10.0, 4.50) * hydroxide, // stepwise constants [public lagoon model]
        second = first * std::pow(10.0, 2.93) * hydroxide, third = second * std::pow(10.0, 3.57) * hydroxide;
    const double whole = 1.0 + first + second + third;
    const double inAir =
        (6.0e-5 + 1.7 * first + 4.3e5 * second) / whole; // 1/min [Morgan and Lahav 2007, as coded]
    constexpr double airAt25 =
        0.20946 * (1.0 - 0.0313); // atm of oxygen in moist air at 25 degC [APHA pressure form]
    return inAir * oxygen / airAt25;
}

/// Oxygen in water at 25 to 0 degC and one atmosphere of it, mol/L [Benson and Krause in APHA 1985].
double oxygenMolar(double kelvin, double oxygen)
{
    const double inAir = std::exp(-139.34411 + 1.575701e5 / kelvin - 6.642308e7 / std::pow(kelvin, 2) +
                                  1.243800e10 / std::pow(kelvin, 3) - 8.621949e11 / std::pow(kelvin, 4));
    const double vapor =
        std::exp(11.8571 - 3840.70 / kelvin - 216961.0 / (kelvin * kelvin)); // [APHA pressure form]
    return inAir / 1000.0 / molarMass("O2") * oxygen / (0.20946 * (1.0 - vapor));
}

} // namespace

double rateOf(double ph, double temperature, double oxygen, int law)
{
    const double kelvin = temperature + kelvinAtZero;
    switch (law) {
    case davisonSeed: // L^2 / (mol^2 atm min) [Davison and Seed 1983: about 2e13, recalled]
        return 2.0e13 * std::pow(hydroxideOlder(ph, kelvin), 2) * oxygen;
    case usgsExample: // 1/s and L^2 / (mol^2 atm s) [USGS PHREEQC version 3, example 9]
        return secondPerMinute * (2.91e-9 + 1.33e12 * std::pow(hydroxideUsgs(ph, kelvin), 2) * oxygen);
    case threeSpecies:
        return threeSpeciesRate(hydroxideUsgs(ph, kelvin), oxygen);
    case millero: // L^3 / (mol^3 min) at no salt [Millero and others 1987, as coded in public routines]
        return std::pow(10.0, 21.56 - 1545.0 / kelvin) * std::pow(hydroxideUsgs(ph, kelvin), 2) *
               oxygenMolar(kelvin, oxygen);
    default: // L^2 / (mol^2 atm min) [Stumm and Lee 1961: 8.0e13 +- 2.5e13, recalled]
        return 8.0e13 * std::pow(hydroxideOlder(ph, kelvin), 2) * oxygen;
    }
}

void cautionLaw(double temperature, int law, Reply &reply)
{
    if (!lessThan(temperature, 20) && !lessThan(30, temperature))
        return;
    if (law == threeSpecies)
        reply.caution("made_for_25",
                      "these constants were found at 25 degC; away from it only the change of the ion "
                      "product of water is counted");
    if (law == usgsExample)
        reply.caution("made_for_25",
                      "this constant is used at 25 degC in its source; away from it only the change of "
                      "the ion product of water is counted");
}

void cautionFloc(double iron, Reply &reply)
{
    if (lessThan(5, iron)) // mg/L: above a few, no single figure is published [common practice]
        reply.caution("floc", "with this much iron its own fresh floc takes part: it goes faster than worked "
                              "here, and a filter fills fast");
}

} // namespace kinetics
