/// Unit words of mass, time, amount, money, share and concentration, in mg, s, mmol, USD.
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr Exponents pure{}, mass{0, 1}, time{0, 0, 1}, amount{0, 0, 0, 0, 1}, money{0, 0, 0, 0, 0, 0, 1},
    concentration{-3, 1};

constexpr double pound = 453592.37;        // 0.45359237 kg exactly [nist811 B.8]
constexpr double grain = 64.79891;         // exactly [nist811 B.8]; 7000 grains are one pound
constexpr double gallon = 3.785411784;     // 231 in^3 exactly [nist44 appendix C]
constexpr double imperialGallon = 4.54609; // exactly [nist811 B.8]
constexpr double minute = 60.0, hour = 3600.0, day = 86400.0;
constexpr double year = 365 * day;                         // trade accounting
constexpr double carbonate = 40.078 + 12.011 + 3 * 15.999; // CaCO3, g/mol [iupac]
constexpr double lime = 40.078 + 15.999;                   // CaO, g/mol [iupac]

constexpr const char *gauge = "a concentration counted as calcium carbonate";

constexpr UnitRow rows[] = {
    {"kg", "kilogram kilograms", "kilogram", "kilograms", 1e6, mass, "base unit of the SI", "si"},
    {"g", "gram grams", "gram", "grams", 1e3, mass, "0.001 kg", "si"},
    {"mg", "milligram milligrams", "milligram", "milligrams", 1, mass, "0.001 g", "si"},
    {"ug", "mcg microgram micrograms", "microgram", "micrograms", 1e-3, mass, "1e-6 g", "si"},
    {"ng", "nanogram nanograms", "nanogram", "nanograms", 1e-6, mass, "1e-9 g", "si"},
    {"lb", "lbs pound pounds", "pound", "pounds", pound, mass, "0.45359237 kg exactly", "nist811",
     "a mass; a force is lbf"},
    {"oz", "ounce ounces", "ounce", "ounces", pound / 16, mass, "1/16 lb", "nist811",
     "a mass; a volume is fl_oz"},
    {"grain", "grains", "grain", "grains", grain, mass, "64.79891 mg exactly", "nist811"},
    {"kgr", "kilograin kilograins", "thousand grains", "thousand grains", 1000 * grain, mass, "1000 grain",
     "trade", "softener capacity"},
    {"ton", "tons", "short ton", "short tons", 2000 * pound, mass, "2000 lb", "nist811"},
    {"ton_metric", "tonne tonnes", "metric ton", "metric tons", 1e9, mass, "1000 kg", "si"},

    {"s", "sec secs second seconds", "second", "seconds", 1, time, "base unit of the SI", "si"},
    {"ms", "millisecond milliseconds", "millisecond", "milliseconds", 1e-3, time, "0.001 s", "si"},
    {"min", "mins minute minutes", "minute", "minutes", minute, time, "60 s", "si"},
    {"hr", "h hrs hour hours", "hour", "hours", hour, time, "3600 s", "si"},
    {"day", "d days", "day", "days", day, time, "24 hr", "si"},
    {"week", "wk weeks", "week", "weeks", 7 * day, time, "7 day", "usage"},
    {"month", "months", "month", "months", year / 12, time, "yr/12", "trade",
     "30.42 day: trade accounting, not the calendar"},
    {"yr", "yrs year years", "year", "years", year, time, "365 day", "trade",
     "365 day: trade accounting, not the calendar"},

    {"mol", "mole moles", "mole", "moles", 1e3, amount, "base unit of the SI", "si"},
    {"mmol", "millimole millimoles", "millimole", "millimoles", 1, amount, "0.001 mol", "si"},
    {"umol", "micromole micromoles", "micromole", "micromoles", 1e-3, amount, "1e-6 mol", "si"},
    {"nmol", "nanomole nanomoles", "nanomole", "nanomoles", 1e-6, amount, "1e-9 mol", "si"},
    {"eq", "", "equivalent", "equivalents", 1e3 * carbonate / 2, mass,
     "50.043 g as CaCO3: half its molar mass", "iupac",
     "one equivalent of anything is 50.043 g counted as calcium carbonate; as_caco3() gives it", "CaCO3"},
    {"meq", "", "milliequivalent", "milliequivalents", carbonate / 2, mass, "50.043 mg as CaCO3", "iupac",
     "one milliequivalent of anything is 50.043 mg counted as calcium carbonate; as_caco3() gives it",
     "CaCO3"},
    {"ueq", "", "microequivalent", "microequivalents", 1e-3 * carbonate / 2, mass, "50.043 ug as CaCO3",
     "iupac", "", "CaCO3"},

    {"$", "USD usd dollar dollars", "dollar", "dollars", 1, money, "US dollar, nominal", "usage",
     "the price year is a note"},

    {"%", "percent", "percent", "percent", 0.01, pure, "0.01", "si", "+ 5 % of something is * (1 + 5 %)"},
    {"ppm", "", "part per million", "parts per million", 1, concentration, "1 mg/L in dilute water", "trade",
     "ppm is read as mg/L: right in dilute water, not in brine or stock solutions", "", "", 0, Scale::plain,
     "mg/L"},
    {"ppb", "", "part per billion", "parts per billion", 1e-3, concentration, "1 ug/L in dilute water",
     "trade", "ppb is read as ug/L: right in dilute water, not in brine or stock solutions", "", "", 0,
     Scale::plain, "ug/L"},
    {"gpg", "", "grain per US gallon", "grains per US gallon", grain / gallon, concentration,
     "1 grain/gal as CaCO3", "nist811", gauge, "CaCO3"},
    {"clark", "", "Clark degree", "Clark degrees", grain / imperialGallon, concentration,
     "1 grain/gal_imp as CaCO3", "nist811", gauge, "CaCO3"},
    {"dH", "", "German degree of hardness", "German degrees of hardness", 10 * carbonate / lime,
     concentration, "10 mg/L of calcium oxide, as CaCO3", "iupac",
     "definition from memory; 17.848 mg/L as CaCO3", "CaCO3"},
    {"fH", "", "French degree of hardness", "French degrees of hardness", 10, concentration,
     "10 mg/L as CaCO3", "memory", gauge, "CaCO3"},
    {"trade_pct", "", "trade percent", "trade percent", 1e4, concentration, "10 g/L of available chlorine",
     "trade", "strength of bleach by volume; weight percent is something else", "Cl2"},
};

} // namespace

UnitRows amountRows()
{
    return {rows, sizeof rows / sizeof rows[0]};
}

} // namespace puteal
