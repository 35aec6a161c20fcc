/// Rows of the kinetics plugin's functions, and the laws they share.
#pragma once

#include "sdk/plugin.h"

namespace kinetics
{

extern const puteal_function oxidationRateRow, halfLifeRow, oxidationTimeRow, ironRemainingRow,
    oxidationPhRow;

/// Published laws of the oxidation of dissolved iron by oxygen, in the order of the choice list.
enum Law : int { stummLee, davisonSeed, usgsExample, threeSpecies, millero };
inline constexpr const char *lawWords[] = {"Stumm and Lee",    "Davison and Seed", "USGS example 9",
                                           "Morgan and Lahav", "Millero 1987",     nullptr};

/// Share of the iron that turns in a minute, 1/min: temperature degC, oxygen pressure atm.
double rateOf(double ph, double temperature, double oxygen, int law);

/// Cautions about a law away from where it was found, and about iron that fresh floc takes up faster.
void cautionLaw(double temperature, int law, puteal::sdk::Reply &reply);
void cautionFloc(double iron, puteal::sdk::Reply &reply);

inline constexpr double leastPh = 5, mostPh = 9.5;
inline constexpr puteal::sdk::Parameter temperatureParameter =
    puteal::sdk::Parameter("temperature", "degC",
                           "temperature of the water; a well is colder than a textbook")
        .hard(0, 40)
        .usual(2, 30);
inline constexpr puteal::sdk::Parameter oxygenParameter =
    puteal::sdk::Parameter(
        "oxygen_pressure", "atm_abs",
        "pressure of the oxygen alone, see oxygen_partial_pressure; 0.207 atm_abs in open air")
        .hard(1e-4, 10)
        .usual(0.05, 1.5);
inline constexpr puteal::sdk::Parameter lawParameter =
    puteal::sdk::Parameter(
        "law", "",
        "whose constant: Stumm and Lee is the fast bound, Davison and Seed (natural waters) four times "
        "slower; "
        "show both. USGS example 9 agrees with the fast one, Morgan and Lahav goes by iron species, Millero "
        "1987 is for water without salt")
        .oneOf(lawWords)
        .otherwise(stummLee, "R");
inline constexpr puteal::sdk::Parameter ironParameter =
    puteal::sdk::Parameter("iron", "mg/L as Fe", "dissolved iron at the start")
        .hard(1e-6, 1000)
        .usual(0.1, 30);
inline constexpr puteal::sdk::Parameter targetParameter =
    puteal::sdk::Parameter("target", "mg/L as Fe", "dissolved iron at the end")
        .hard(1e-6, 1000)
        .usual(0.05, 1);
inline constexpr char airSafety[] = "Test for methane before any aeration: air and methane in a tank can "
                                    "explode. Oxidized iron is not disinfected "
                                    "water.";

} // namespace kinetics
