/// Energy a pump takes for water lifted and pressed, and small devices that run by the hour. (R5)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double pumpingEnergy(double head, double volume, double efficiency)
{
    // Conventional foot of water, 2989.067 Pa at 1000 kg/m^3 and 9.80665 m/s^2 [NIST SP 811, appendix B]
    constexpr double joulePerGallonFoot = 0.3048 * 9.80665 * measure::literPerGallon;
    constexpr double joulePerKilowattHour = 3.6e6; // exact [NIST SP 811, appendix B]
    return head * volume * joulePerGallonFoot / joulePerKilowattHour / efficiency;
}

double deviceEnergy(double power, double hours, double days)
{
    constexpr double wattPerKilowatt = 1000;
    return power / wattPerKilowatt * hours * days;
}

constexpr puteal_parameter takes[] = {
    Parameter("head", "ft_head", "lift, pressure and losses together").hard(0, 3000).usual(50, 500),
    Parameter("volume", "gal", "water pumped").hard(0, HUGE_VAL),
    Parameter("efficiency", "", "wire to water; small submersible pumps 0.3 to 0.5")
        .hard(0.01, 1)
        .usual(0.2, 0.7)
        .otherwise(0.4, "T"),
};
constexpr const char *sources[] = {"pumping_costs", "nist811", "practice", nullptr};
constexpr puteal_example examples[] = {
    // the published case is 0.002 $/h to one figure: 10 gpm, 10 ft, 0.9 * 0.9, at 0.10 $/kWh
    example("pumping_energy(10 ft_head, 600 gal, 0.81) * $0.10/kWh", "$0.002", 0.2, "published",
            "pumping_costs"),
    // the same by its own formula: 0.746 * 10 * 10 * 0.10 / (3960 * 0.81)
    example("pumping_energy(10 ft_head, 600 gal, 0.81) * $0.10/kWh", "$0.00232573", 1.1e-3, "computed",
            "pumping_costs"),
    example("pumping_energy(1 mH2O, 1 m^3, 1)", "0.00272407 kWh", 2e-6, "computed", "nist811"),
    example("pumping_energy(150 ft_head, 1000 gal)", "1.17863 kWh", 1e-6, "computed", "nist811"),
    example("pumping_energy(100 ft_head, 1000 gal, 1)", "0.314301 kWh", 1e-4, "computed", "nist811"),
    example("pumping_energy(150 ft_head, 13000 gal)", "15.3222 kWh", 1e-5, "computed", "nist811"),
};
constexpr puteal_example refusals[] = {
    refusal("pumping_energy(150 ft_head, 1000 gal, 40)",
            "`efficiency` must be at most 1; it is 40: for 40 percent write 40 %"),
};

constexpr puteal_parameter deviceTakes[] = {
    Parameter("power", "W", "what the device draws while it runs").hard(0, 20000).usual(1, 1500),
    Parameter("hours", "hr/day", "how long it runs a day").hard(0, 24).usual(0.1, 24),
    Parameter("days", "day/yr", "days a year it is switched on")
        .hard(0, 366)
        .usual(20, 365)
        .otherwise(365, "A"),
};
constexpr const char *deviceSources[] = {"nist811", "definition", nullptr};
constexpr puteal_example deviceExamples[] = {
    example("device_energy(40 W, 24 hr/day)", "350.4 kWh/yr", 1e-12, "computed", "nist811"),
    example("device_energy(150 W, 2 hr/day, 100 day/yr)", "30 kWh/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example deviceRefusals[] = {
    refusal("device_energy(40 W, 25 hr/day)", "`hours` must be at most 24 hr/day; it is 25 hr/day"),
};

} // namespace

constinit const puteal_function pumpingEnergyRow =
    Function("pumping_energy", "Pumping energy", "Electric energy for pumped water.", call<pumpingEnergy>)
        .takes(takes)
        .gives("kWh", "electric energy")
        .by("head * volume / efficiency")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .safely(
            "Pump wiring belongs to a licensed electrician: power off and locked before any work on a pump.");

constinit const puteal_function deviceEnergyRow =
    Function("device_energy", "Energy of a device",
             "Electric energy a lamp, cell, compressor, feeder or valve takes in a year.", call<deviceEnergy>)
        .takes(deviceTakes)
        .gives("kWh/yr", "electric energy a year")
        .by("power * hours * days")
        .from(deviceSources)
        .shownBy(deviceExamples)
        .refusing(deviceRefusals)
        .safely("Outlets near water belong to a licensed electrician and on a ground-fault breaker; no power "
                "strip on a wet floor.");

} // namespace cost
