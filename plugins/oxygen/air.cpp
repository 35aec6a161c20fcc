/// Oxygen pressure in moist air, and oxygen that has no business in a sample with dissolved iron.
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

double vaporPressure(double kelvin)
{
    // [APHA pressure form as coded in a public oxygen routine]
    return std::exp(11.8571 - 3840.70 / kelvin - 216961.0 / (kelvin * kelvin));
}

namespace
{

double oxygenPartialPressure(double temperature, double pressure)
{
    return oxygenShare * (pressure - vaporPressure(temperature + kelvinAtZero));
}

constexpr double airedFrom = 2.0; // mg/L of oxygen [common practice, no source]
constexpr double ironFrom = 1.0;  // mg/L of iron [common practice, no source]

bool airEntry(double oxygenFound, double iron, Reply &reply)
{
    const bool entered = lessThan(airedFrom, oxygenFound) && lessThan(ironFrom, iron);
    if (entered)
        reply.reason(
            "oxygen is above 2 mg/L (" + figures(oxygenFound) + ") beside dissolved iron above 1 mg/L (" +
            figures(iron) +
            "): iron-bearing ground water has less than 0.5; look for air in the sampling, a leaking drop "
            "pipe, a cascading well");
    else
        reply.reason("oxygen " + figures(oxygenFound) + " mg/L (2 or less), dissolved iron " + figures(iron) +
                     " mg/L (1 or less): one of them leaves no doubt about the sample");
    return entered;
}

constexpr puteal_parameter pressureTakes[] = {
    Parameter("temperature", "degC", "temperature of the water").hard(0, 40).usual(2, 30),
    Parameter("pressure", "atm_abs", "absolute pressure of the air over the water")
        .hard(0.2, 10)
        .usual(0.6, 6)
        .otherwise(1, "S"),
};
constexpr const char *pressureSources[] = {"oxygen_code", "recalled", nullptr};
constexpr puteal_example pressureExamples[] = {
    example("oxygen_partial_pressure(10 degC)", "0.20692 atm_abs", 1e-4, "computed", "oxygen_code"),
    example("oxygen_partial_pressure(10 degC, 54.7 psi_abs)", "0.77708 atm_abs", 1e-4, "computed",
            "oxygen_code"),
};
constexpr puteal_example pressureRefusals[] = {
    refusal("oxygen_partial_pressure(50 degC)", "`temperature` must be at most 40 degC; it is 50 degC"),
};

constexpr puteal_parameter entryTakes[] = {
    Parameter("oxygen", "mg/L as O2", "oxygen of the raw water, measured at the site")
        .hard(0, 60)
        .usual(0, 15),
    Parameter("iron", "mg/L as Fe", "dissolved iron of the raw water").hard(0, 1000).usual(0, 30),
};
constexpr const char *entrySources[] = {"practice", nullptr};
constexpr puteal_example entryExamples[] = {
    example("air_entry_suspected(4 mg/L as O2, 3 mg/L as Fe)", "yes", 0, "common practice", "practice"),
    example("air_entry_suspected(0.3 mg/L as O2, 3 mg/L as Fe)", "no", 0, "common practice", "practice"),
    example("air_entry_suspected(8 mg/L as O2, 0.1 mg/L as Fe)", "no", 0, "common practice", "practice"),
};
constexpr puteal_example entryRefusals[] = {
    refusal("air_entry_suspected(-1 mg/L as O2, 3 mg/L as Fe)",
            "`oxygen` must be at least 0 mg/L as O2; it is -1 mg/L as O2"),
};

} // namespace

constinit const puteal_function oxygenPartialPressureRow =
    Function("oxygen_partial_pressure", "Oxygen pressure in air",
             "Share of the air's absolute pressure that oxygen has over water, the water vapor taken off.",
             call<oxygenPartialPressure>)
        .takes(pressureTakes)
        .gives("atm_abs", "pressure of the oxygen alone")
        .by("0.20946 * (pressure - Pw), ln Pw = 11.8571 - 3840.70/T - 216961/T^2, T in K, Pw in atm")
        .from(pressureSources)
        .shownBy(pressureExamples)
        .refusing(pressureRefusals);

constinit const puteal_function airEntryRow =
    Function("air_entry_suspected", "Air in the sample",
             "Tells a sample of raw water that has met air: dissolved iron and much oxygen do not stand side "
             "by side "
             "in ground water.",
             call<airEntry>)
        .takes(entryTakes)
        .givesYesNo("air got in, with its reason")
        .by("yes when oxygen > 2 mg/L and iron > 1 mg/L")
        .from(entrySources)
        .shownBy(entryExamples)
        .refusing(entryRefusals);

} // namespace oxygen
