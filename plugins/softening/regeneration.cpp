/// How often a softener regenerates, and the salt and water that takes.
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

// ----------------------------------------------------------------------------------
// days_between_regenerations (R1)

double daysBetween(double capacity, double use, double hardness, double reserve, Reply &reply)
{
    const double load = use * hardness; // grain a day
    if (load <= 0)
        return reply.refuse(use <= 0 ? 2 : 3, "nothing to soften: use and hardness must both be above 0");
    if (atMost(capacity, reserve))
        return reply.refuse(
            4, "the reserve takes up the whole capacity: lower the reserve or raise the capacity");
    const double days = (capacity - reserve) / load;
    if (lessThan(days, 3)) // published habit: not oftener than every third day
        reply.caution("too_often",
                      "regenerates more often than every 3 days: a larger bed or two tanks are usual");
    if (lessThan(14, days)) // published habit: not longer than two weeks, about 6 days where there is iron
        reply.caution("too_long",
                      "longer than 14 days between regenerations: a calendar override is usual, and with "
                      "iron about 6 days");
    return days;
}

constexpr puteal_parameter daysTakes[] = {
    Parameter("capacity", "grain as CaCO3", "hardness the whole bed takes out between regenerations")
        .hard(1, 1e7)
        .usual(5000, 200000),
    Parameter("use", "gal/day", "water softened in a day").hard(0, 1e5).usual(20, 1500),
    Parameter("hardness", "gpg", "compensated hardness, see compensated_hardness")
        .hard(0, 1000)
        .usual(1, 100),
    Parameter("reserve", "grain as CaCO3", "capacity kept back, often one day's load; 0 for twin tanks")
        .hard(0, 1e7)
        .otherwise(0, "A"),
};
constexpr const char *daysSources[] = {"trade_sizing", "trade_settings", "practice", nullptr};
constexpr puteal_example daysExamples[] = {
    example("days_between_regenerations(30000 grain as CaCO3, 400 gal/day, 15 gpg)", "5 day/event", 1e-9,
            "published", "trade_sizing"),
    example("days_between_regenerations(20000 grain as CaCO3, 400 gal/day, 15 gpg)", "3.333 day/event", 2e-4,
            "published", "trade_sizing"),
    example("days_between_regenerations(25000 grain as CaCO3, 240 gal/day, 21 gpg)", "4.96 day/event", 0.001,
            "published", "trade_settings"),
    example("days_between_regenerations(30000 grain as CaCO3, 240 gal/day, 21 gpg)", "5.95 day/event", 0.001,
            "published", "trade_settings"),
    example("days_between_regenerations(22000 grain as CaCO3, 240 gal/day, 21 gpg)", "4.36 day/event", 0.002,
            "published", "trade_settings"),
    example("days_between_regenerations(36000 grain as CaCO3, 240 gal/day, 21 gpg)", "7.143 day/event", 1e-4,
            "published", "trade_settings"),
    example("days_between_regenerations(36000 grain as CaCO3, 300 gal/day, 25 gpg, 7500 grain as CaCO3)",
            "3.8 day/event", 1e-9, "computed", "practice"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("days_between_regenerations(30000 grain as CaCO3, 0 gal/day, 15 gpg)",
            "nothing to soften: use and hardness must both be above 0"),
    refusal("days_between_regenerations(30000 grain as CaCO3, 300 gal/day, 15 gpg, 30000 grain as CaCO3)",
            "the reserve takes up the whole capacity: lower the reserve or raise the capacity"),
};
constexpr puteal_caution daysCautions[] = {
    caution("too_often", "less than 3 days between regenerations"),
    caution("too_long", "more than 14 days between regenerations"),
};

// -----------------------------------------------------------------------------------------------------
// salt_per_year

double saltPerYear(double salt, double interval)
{
    return salt * measure::dayPerYear / interval;
}

constexpr puteal_parameter saltTakes[] = {
    Parameter("salt", "lb/event as NaCl", "salt for one regeneration").hard(0, 1000).usual(2, 60),
    Parameter("interval", "day/event", "days between regenerations, whole days for a clock")
        .hard(0.1, 365)
        .usual(1, 30),
};
constexpr const char *saltSources[] = {"trade_sizing", nullptr};
constexpr puteal_example saltExamples[] = {
    example("salt_per_year(6 lb/event as NaCl, 3.3 day/event) * (30 day)", "55 lb as NaCl", 0.01, "published",
            "trade_sizing"),
    example("salt_per_year(12 lb/event as NaCl, 3 day/event)", "1460 lb/yr as NaCl", 1e-9, "computed",
            "trade_sizing"),
    example("salt_per_year(20 lb/event as NaCl, 5 day/event)", "1460 lb/yr as NaCl", 1e-9, "computed",
            "trade_sizing"),
};
constexpr puteal_example saltRefusals[] = {
    refusal("salt_per_year(12 lb/event as NaCl, 0 day/event)",
            "`interval` must be at least 0.1 day/event; it is 0 day/event"),
};

// -------------------------------------------------------------------------------------------
// regeneration_water (R2)

double regenerationWater(double resin, double water)
{
    return resin * water;
}

constexpr puteal_parameter waterTakes[] = {
    Parameter("resin", "ft^3", "volume of resin").hard(0.01, 100).usual(0.5, 10),
    Parameter("water", "gal/ft^3",
              "water of one whole regeneration for a cubic foot; 30 low, 75 normal, 100 high")
        .hard(1, 500)
        .usual(30, 100)
        .otherwise(50, "T"),
};
constexpr const char *waterSources[] = {"trade_sizing", "nsf44", "practice", nullptr};
constexpr puteal_example waterExamples[] = {
    example("regeneration_water(1.5 ft^3)", "75 gal/event", 1e-9, "computed", "practice"),
    example("regeneration_water(1 ft^3, 75 gal/ft^3)", "75 gal/event", 1e-9, "computed", "trade_sizing"),
};
constexpr puteal_example waterRefusals[] = {
    refusal("regeneration_water(0 ft^3)", "`resin` must be at least 0.01 ft^3; it is 0 ft^3"),
};

} // namespace

constinit const puteal_function daysBetweenRow =
    Function("days_between_regenerations", "Days between regenerations",
             "How long a bed lasts between regenerations. Round down to whole days for a clock: "
             "floor_to(..., 1 day).",
             call<daysBetween>)
        .takes(daysTakes)
        .gives("day/event", "days between regenerations, not rounded")
        .by("(capacity - reserve) / (use * hardness)")
        .from(daysSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions);

constinit const puteal_function saltPerYearRow =
    Function("salt_per_year", "Salt a year",
             "Salt used in a year of 365 days, the unused part of a clock's cycle included.",
             call<saltPerYear>)
        .takes(saltTakes)
        .gives("lb/yr as NaCl", "salt used in a year")
        .by("salt / interval")
        .from(saltSources)
        .shownBy(saltExamples)
        .refusing(saltRefusals);

constinit const puteal_function regenerationWaterRow =
    Function("regeneration_water", "Water of a regeneration",
             "Water sent to the drain by one regeneration: wash, brining, rinses.", call<regenerationWater>)
        .takes(waterTakes)
        .gives("gal/event", "water of one regeneration")
        .by("resin * water")
        .from(waterSources)
        .shownBy(waterExamples)
        .refusing(waterRefusals)
        .safely("Brine to a septic tank or to the ground is ruled locally: ask the health department first.");

} // namespace softening
