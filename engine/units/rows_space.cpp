/// Unit words of length, area, volume and flow, in dm and dm^3 (= L).
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr Exponents length{1}, area{2}, volume{3}, flow{3, 0, -1};

constexpr double inch = 0.254;             // 2.54 cm exactly [nist811 B.8]
constexpr double foot = 3.048;             // 0.3048 m exactly [nist811 B.8]
constexpr double gallon = 3.785411784;     // 231 in^3 exactly [nist44 appendix C]
constexpr double imperialGallon = 4.54609; // exactly [nist811 B.8]
constexpr double minute = 60.0, hour = 3600.0, day = 86400.0;
constexpr double cubicFoot = 28.316846592; // (0.3048 m)^3 exactly
constexpr double squareFoot = 9.290304;    // (0.3048 m)^2 exactly

constexpr UnitRow rows[] = {
    {"m", "meter meters metre metres", "meter", "meters", 10, length, "base unit of the SI", "si"},
    {"km", "kilometer kilometers", "kilometer", "kilometers", 1e4, length, "1000 m", "si"},
    {"dm", "decimeter decimeters", "decimeter", "decimeters", 1, length, "0.1 m", "si"},
    {"cm", "centimeter centimeters", "centimeter", "centimeters", 0.1, length, "0.01 m", "si"},
    {"mm", "millimeter millimeters", "millimeter", "millimeters", 0.01, length, "0.001 m", "si"},
    {"um", "micrometer micrometers", "micrometer", "micrometers", 1e-5, length, "1e-6 m", "si"},
    {"micron", "microns", "micron", "microns", 1e-5, length, "1e-6 m", "nist811",
     "the trade's word for a filter's grade"},
    {"nm", "nanometer nanometers", "nanometer", "nanometers", 1e-8, length, "1e-9 m", "si"},
    {"in", "inch inches", "inch", "inches", inch, length, "2.54 cm exactly", "nist811"},
    {"mil", "mils", "mil", "mils", inch / 1000, length, "0.001 in", "nist811"},
    {"ft", "foot feet", "foot", "feet", foot, length, "0.3048 m exactly", "nist811"},
    {"yd", "yard yards", "yard", "yards", 3 * foot, length, "3 ft", "nist811"},
    {"mi", "mile miles", "mile", "miles", 5280 * foot, length, "5280 ft", "nist811"},

    {"acre", "acres", "acre", "acres", 43560 * squareFoot, area, "43,560 ft^2 of the international foot",
     "nist811", "NIST SP 811 prints the acre of the survey foot, 4 parts in a million larger"},
    {"ha", "hectare hectares", "hectare", "hectares", 1e6, area, "10,000 m^2", "si"},

    {"L", "l liter liters litre litres", "liter", "liters", 1, volume, "1 dm^3", "si"},
    {"mL", "ml milliliter milliliters", "milliliter", "milliliters", 1e-3, volume, "0.001 L", "si"},
    {"uL", "ul microliter microliters", "microliter", "microliters", 1e-6, volume, "1e-6 L", "si"},
    {"dL", "dl deciliter deciliters", "deciliter", "deciliters", 0.1, volume, "0.1 L", "si"},
    {"100mL", "100ml", "100 milliliters", "100 milliliters", 0.1, volume,
     "100 mL; only after / in counts of bacteria", "usage"},
    {"gal", "gallon gallons", "US gallon", "US gallons", gallon, volume, "231 in^3", "nist44"},
    {"qt", "quart quarts", "US quart", "US quarts", gallon / 4, volume, "1/4 gal", "nist44"},
    {"pt", "pint pints", "US pint", "US pints", gallon / 8, volume, "1/8 gal", "nist44"},
    {"cup", "cups", "US cup", "US cups", gallon / 16, volume, "1/16 gal", "nist44"},
    {"fl_oz", "floz", "US fluid ounce", "US fluid ounces", gallon / 128, volume, "1/128 gal", "nist44"},
    {"tbsp", "tablespoon tablespoons", "tablespoon", "tablespoons", gallon / 256, volume, "1/2 fl_oz",
     "nist44"},
    {"tsp", "teaspoon teaspoons", "teaspoon", "teaspoons", gallon / 768, volume, "1/6 fl_oz", "nist44"},
    {"kgal", "kilogallon kilogallons", "thousand US gallons", "thousand US gallons", 1000 * gallon, volume,
     "1000 gal", "nist44"},
    {"Mgal", "", "million US gallons", "million US gallons", 1e6 * gallon, volume, "1,000,000 gal", "nist44"},
    {"gal_imp", "", "imperial gallon", "imperial gallons", imperialGallon, volume, "4.54609 L exactly",
     "nist811"},
    {"qt_imp", "", "imperial quart", "imperial quarts", imperialGallon / 4, volume, "1/4 gal_imp", "nist811"},
    {"pt_imp", "", "imperial pint", "imperial pints", imperialGallon / 8, volume, "1/8 gal_imp", "nist811"},
    {"fl_oz_imp", "", "imperial fluid ounce", "imperial fluid ounces", imperialGallon / 160, volume,
     "1/160 gal_imp", "nist811"},
    {"acre_ft", "", "acre-foot", "acre-feet", 43560 * cubicFoot, volume,
     "43,560 ft^3 of the international foot", "nist811"},

    {"gpm", "", "US gallon per minute", "US gallons per minute", gallon / minute, flow, "231 in^3 per minute",
     "nist44"},
    {"gph", "", "US gallon per hour", "US gallons per hour", gallon / hour, flow, "231 in^3 per hour",
     "nist44"},
    {"gpd", "", "US gallon per day", "US gallons per day", gallon / day, flow, "231 in^3 per day", "nist44"},
    {"mgd", "MGD", "million US gallons per day", "million US gallons per day", 1e6 * gallon / day, flow,
     "1,000,000 gal per day", "nist44"},
    {"gpm_imp", "", "imperial gallon per minute", "imperial gallons per minute", imperialGallon / minute,
     flow, "4.54609 L per minute", "nist811"},
    {"cfm", "", "cubic foot per minute", "cubic feet per minute", cubicFoot / minute, flow,
     "1 ft^3 per minute", "nist811"},
    {"cfs", "", "cubic foot per second", "cubic feet per second", cubicFoot, flow, "1 ft^3 per second",
     "nist811"},
    {"Lpm", "lpm LPM", "liter per minute", "liters per minute", 1 / minute, flow, "1 L per minute", "si"},
};

} // namespace

UnitRows spaceRows()
{
    return {rows, sizeof rows / sizeof rows[0]};
}

} // namespace puteal
