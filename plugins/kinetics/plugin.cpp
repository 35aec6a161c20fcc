/// The kinetics plugin: how fast oxygen oxidizes dissolved iron.
///
/// Requirements
///  R1 Published constants differ fourfold, so whose constant is an argument.
///  R2 The temperature enters through the ion product of water: no rate of a warm laboratory for a cold well.
///  R3 A higher pH or more oxygen never makes iron last longer.
///  R4 Every result is called an order of magnitude.
///  R5 A time or a remainder that fails in the field (no detention that long, stains left) says so.
#include "kinetics.h"

using namespace puteal::sdk;

namespace kinetics
{
namespace
{

constexpr puteal_source sources[] = {
    source("stumm_lee", "R",
           "Stumm and Lee 1961: 8.0e13 +- 2.5e13 L^2/(mol^2 atm min) at 20.5 degC; value recalled, within "
           "0.3 % of the "
           "USGS example"),
    source("davison_seed", "R",
           "Davison and Seed 1983, Geochimica et Cosmochimica Acta 47:67: about 2e13 in fresh natural "
           "waters; value "
           "recalled"),
    source("usgs_example9", "H",
           "USGS PHREEQC version 3, example 9 (Parkhurst and Appelo, USGS TM 6-A43, 2013): 1.33e12 1/(s M^2 "
           "atm) and "
           "2.91e-9 1/s, with its printed results"),
    source("morgan_lahav", "H",
           "Morgan and Lahav 2007, constants as coded in a public lagoon-ecology model; its unit, 1/min, is "
           "recalled"),
    source("millero1987", "H",
           "Millero and others 1987: log k = 21.56 - 1545/T, M^-3 min^-1, as coded in public sea-water "
           "routines"),
    source("ion_product", "H",
           "ion product of water: Stumm and Morgan, Aquatic Chemistry, 1981, p. 127, as quoted in a public "
           "waste-water "
           "model; and the USGS PHREEQC database"),
    source("state_codes", "S",
           "Wis. Admin. Code NR 811.52, Okla. Admin. Code 252:626-9-7 and 12 Va. Admin. Code 5-590-920: 30 "
           "minutes of detention behind aeration"),
    source("cfr143", "S", "40 CFR 143.3, US secondary drinking water limits: iron 0.3 mg/L"),
    source(
        "iron_speciation", "H",
        "King 1998, Environmental Science and Technology 32:2997: carbonate complexes speed oxidation up in "
        "hard water; fresh floc does too, common practice"),
    source("inverse", "W", "worked out: the time turned around"),
    source("apha1985", "H",
           "oxygen saturation of APHA 1985 as quoted in a public watershed-model theory manual"),
};

const puteal_function functions[] = {oxidationRateRow, halfLifeRow, oxidationTimeRow, ironRemainingRow,
                                     oxidationPhRow};
constinit const puteal_plugin self = plugin("kinetics", "Oxidation by oxygen", 1, 1, sources, functions);

} // namespace
} // namespace kinetics

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &kinetics::self;
}
