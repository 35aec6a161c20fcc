/// Unit words of pressure, temperature, energy, power, force, viscosity and electricity, in dm, mg, s, K, A.
#include "units/unit_rows.h"

namespace puteal
{

namespace
{

constexpr Exponents pressure{-1, 1, -2}, temperature{0, 0, 0, 1}, energy{2, 1, -2}, power{2, 1, -3},
    force{1, 1, -2}, viscosity{-1, 1, -1}, kinematic{2, 0, -1}, current{0, 0, 0, 0, 0, 1},
    charge{0, 0, 1, 0, 0, 1}, voltage{2, 1, -3, 0, 0, -1}, conductance{-2, -1, 3, 0, 0, 2};

constexpr double pascal = 1e5;                 // 1 kg/(m s^2) in mg, dm, s
constexpr double newton = 1e7;                 // 1 kg m/s^2
constexpr double joule = 1e8;                  // 1 kg m^2/s^2
constexpr double gravity = 9.80665;            // m/s^2, standard, exactly [nist811 B.8]
constexpr double poundForce = 4.4482216152605; // N, 0.45359237 kg x standard gravity, exactly [nist811 B.8]
constexpr double psi = poundForce * pascal / (0.0254 * 0.0254);
constexpr double atmosphere = 101325 * pascal;           // exactly [nist811 B.8]
constexpr double meterOfWater = 1000 * gravity * pascal; // conventional water, 1000 kg/m^3 [nist811 B.8]
constexpr double meterOfMercury =
    13595.1 * gravity * pascal;                       // conventional mercury, 13,595.1 kg/m^3 [nist811 B.8]
constexpr double btu = 1055.05585262 * joule;         // International Table, exactly [nist811 B.8]
constexpr double freezing = 273.15;                   // K, exactly [si]
constexpr double fahrenheit = 5.0 / 9.0;              // K, exactly [nist811 B.8]
constexpr double fahrenheitZero = 459.67 * 5.0 / 9.0; // K at 0 degF, exactly [nist811 B.8]

constexpr const char *gauge = "a pressure difference, so also a gauge pressure";
constexpr const char *absolute = "an absolute pressure; absolute() and gauge() convert";
constexpr const char *reading = "a temperature reading";
constexpr const char *difference = "a temperature difference";

constexpr UnitRow absoluteRow(const char *word, const char *singular, const char *plural, double factor,
                              const char *definition)
{
    return {word,
            "",
            singular,
            plural,
            factor,
            pressure,
            definition,
            "nist811",
            absolute,
            "",
            "",
            0,
            Scale::absolutePressure};
}

constexpr UnitRow rows[] = {
    {"Pa", "pascal pascals", "pascal", "pascals", pascal, pressure, "1 N/m^2", "si", gauge},
    {"kPa", "", "kilopascal", "kilopascals", 1e3 * pascal, pressure, "1000 Pa", "si", gauge},
    {"MPa", "", "megapascal", "megapascals", 1e6 * pascal, pressure, "1,000,000 Pa", "si", gauge},
    {"bar", "bars", "bar", "bars", 1e5 * pascal, pressure, "100,000 Pa", "nist811", gauge},
    {"mbar", "", "millibar", "millibars", 100 * pascal, pressure, "100 Pa", "nist811", gauge},
    {"psi", "psig", "pound per square inch", "pounds per square inch", psi, pressure, "1 lbf/in^2", "nist811",
     gauge},
    {"atm", "", "standard atmosphere", "standard atmospheres", atmosphere, pressure, "101,325 Pa exactly",
     "nist811", gauge},
    {"ft_head", "ftH2O", "foot of water", "feet of water", 0.3048 * meterOfWater, pressure,
     "1 ft of conventional water, 1000 kg/m^3", "nist811", "2.3067 ft_head are one psi"},
    {"in_head", "inH2O", "inch of water", "inches of water", 0.0254 * meterOfWater, pressure,
     "1 in of conventional water, 1000 kg/m^3", "nist811", gauge},
    {"mH2O", "m_head", "meter of water", "meters of water", meterOfWater, pressure,
     "1 m of conventional water, 1000 kg/m^3", "nist811", gauge},
    {"cmH2O", "", "centimeter of water", "centimeters of water", 0.01 * meterOfWater, pressure,
     "1 cm of conventional water, 1000 kg/m^3", "nist811", gauge},
    {"inHg", "", "inch of mercury", "inches of mercury", 0.0254 * meterOfMercury, pressure,
     "1 in of conventional mercury, 13,595.1 kg/m^3", "nist811", gauge},
    {"mmHg", "", "millimeter of mercury", "millimeters of mercury", 0.001 * meterOfMercury, pressure,
     "1 mm of conventional mercury, 13,595.1 kg/m^3", "nist811", gauge},
    {"torr", "", "torr", "torr", atmosphere / 760, pressure, "1/760 atm", "nist811", gauge},
    absoluteRow("Pa_abs", "pascal absolute", "pascals absolute", pascal, "1 Pa above vacuum"),
    absoluteRow("kPa_abs", "kilopascal absolute", "kilopascals absolute", 1e3 * pascal, "1 kPa above vacuum"),
    absoluteRow("bar_abs", "bar absolute", "bars absolute", 1e5 * pascal, "1 bar above vacuum"),
    absoluteRow("mbar_abs", "millibar absolute", "millibars absolute", 100 * pascal, "1 mbar above vacuum"),
    {"psi_abs", "psia", "pound per square inch absolute", "pounds per square inch absolute", psi, pressure,
     "1 psi above vacuum", "nist811", absolute, "", "", 0, Scale::absolutePressure},
    absoluteRow("atm_abs", "atmosphere absolute", "atmospheres absolute", atmosphere, "1 atm above vacuum"),
    absoluteRow("inHg_abs", "inch of mercury absolute", "inches of mercury absolute", 0.0254 * meterOfMercury,
                "1 inHg above vacuum"),
    absoluteRow("mmHg_abs", "millimeter of mercury absolute", "millimeters of mercury absolute",
                0.001 * meterOfMercury, "1 mmHg above vacuum"),

    {"K", "kelvin kelvins", "kelvin", "kelvins", 1, temperature, "base unit of the SI", "si", reading, "", "",
     0, Scale::temperatureReading},
    {"degC", "celsius", "degree Celsius", "degrees Celsius", 1, temperature, "K above 273.15 K", "si",
     reading, "", "", freezing, Scale::temperatureReading},
    {"degF", "fahrenheit", "degree Fahrenheit", "degrees Fahrenheit", fahrenheit, temperature,
     "5/9 K, 0 degF is 459.67 steps above absolute zero", "nist811", reading, "", "", fahrenheitZero,
     Scale::temperatureReading},
    {"delta_K", "", "kelvin of difference", "kelvins of difference", 1, temperature, "1 K as a difference",
     "si", difference},
    {"delta_degC", "", "degree Celsius of difference", "degrees Celsius of difference", 1, temperature,
     "1 K as a difference", "si", difference},
    {"delta_degF", "", "degree Fahrenheit of difference", "degrees Fahrenheit of difference", fahrenheit,
     temperature, "5/9 K as a difference", "nist811", difference},

    {"J", "joule joules", "joule", "joules", joule, energy, "1 N m", "si"},
    {"kJ", "", "kilojoule", "kilojoules", 1e3 * joule, energy, "1000 J", "si"},
    {"MJ", "", "megajoule", "megajoules", 1e6 * joule, energy, "1,000,000 J", "si"},
    {"Wh", "", "watt hour", "watt hours", 3600 * joule, energy, "3600 J", "nist811"},
    {"kWh", "", "kilowatt hour", "kilowatt hours", 3.6e6 * joule, energy, "3,600,000 J", "nist811"},
    {"BTU", "Btu", "British thermal unit", "British thermal units", btu, energy,
     "1055.05585262 J, International Table", "nist811"},
    {"W", "watt watts", "watt", "watts", joule, power, "1 J/s", "si"},
    {"mW", "", "milliwatt", "milliwatts", 1e-3 * joule, power, "0.001 W", "si"},
    {"kW", "kilowatt kilowatts", "kilowatt", "kilowatts", 1e3 * joule, power, "1000 W", "si"},
    {"hp", "horsepower", "horsepower", "horsepower", 550 * 0.3048 * poundForce *joule, power, "550 ft lbf/s",
     "nist811"},

    {"N", "newton newtons", "newton", "newtons", newton, force, "1 kg m/s^2", "si"},
    {"kN", "", "kilonewton", "kilonewtons", 1e3 * newton, force, "1000 N", "si"},
    {"lbf", "", "pound-force", "pounds-force", poundForce *newton, force, "4.4482216152605 N exactly",
     "nist811"},
    {"cP", "", "centipoise", "centipoise", 1e-3 * pascal, viscosity, "0.001 Pa s", "nist811"},
    {"mPas", "", "millipascal second", "millipascal seconds", 1e-3 * pascal, viscosity, "0.001 Pa s", "si"},
    {"cSt", "", "centistokes", "centistokes", 1e-4, kinematic, "1e-6 m^2/s", "nist811"},

    {"A", "amp amps ampere amperes", "ampere", "amperes", 1, current, "base unit of the SI", "si"},
    {"mA", "", "milliampere", "milliamperes", 1e-3, current, "0.001 A", "si"},
    {"Ah", "", "ampere hour", "ampere hours", 3600, charge, "3600 A s", "nist811"},
    {"V", "volt volts", "volt", "volts", joule, voltage, "1 W/A", "si"},
    {"mV", "millivolt millivolts", "millivolt", "millivolts", 1e-3 * joule, voltage, "0.001 V", "si"},
    {"S", "siemens", "siemens", "siemens", 1 / joule, conductance, "1 A/V", "si"},
    {"mS", "", "millisiemens", "millisiemens", 1e-3 / joule, conductance, "0.001 S", "si"},
    {"uS", "umho", "microsiemens", "microsiemens", 1e-6 / joule, conductance, "1e-6 S", "si",
     "conductivity is uS/cm at 25 degC"},
};

} // namespace

UnitRows physicsRows()
{
    return {rows, sizeof rows / sizeof rows[0]};
}

} // namespace puteal
