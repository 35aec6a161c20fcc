/// Water a regeneration may take, takes for each thousand grains, and takes in a year. (R2)
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

constexpr double mostPerKilograin = 5.0; // gal for 1,000 grain [NSF/ANSI 44 clause 7 as quoted]

double waterRatio(double water, double capacity, Reply &reply)
{
    const double ratio = water / (capacity / 1000);
    if (lessThan(mostPerKilograin, ratio))
        reply.caution("above_rating",
                      "more than 5 gal for 1,000 grain, the efficiency rating of NSF/ANSI 44");
    return ratio;
}

constexpr puteal_parameter ratioTakes[] = {
    Parameter("water", "gal/event", "water of one whole regeneration, see regeneration_water")
        .hard(0, 10000)
        .usual(20, 500),
    Parameter("capacity", "grain as CaCO3", "hardness the whole bed takes out between regenerations")
        .hard(1, 1e7)
        .usual(5000, 200000),
};
constexpr const char *ratioSources[] = {"nsf44", "trade_sizing", nullptr};
constexpr puteal_example ratioExamples[] = {
    example("regeneration_water_ratio(5 gal/event, 1000 grain as CaCO3)", "5 gal/kgr{CaCO3}", 1e-9,
            "published", "nsf44"),
    example("regeneration_water_ratio(120 gal/event, 24000 grain as CaCO3)", "5 gal/kgr{CaCO3}", 1e-9,
            "computed", "nsf44"),
    example("regeneration_water_ratio(75 gal/event, 36000 grain as CaCO3)", "2.083333 gal/kgr{CaCO3}", 1e-6,
            "computed", "trade_sizing"),
};
constexpr puteal_example ratioRefusals[] = {
    refusal("regeneration_water_ratio(120 gal/event, 0 grain as CaCO3)",
            "`capacity` must be at least 1 grain as CaCO3; it is 0 grain as CaCO3"),
};
constexpr puteal_caution ratioCautions[] = {caution("above_rating", "more than 5 gal for 1,000 grain")};

double waterBound(double capacity, double ratio)
{
    return capacity / 1000 * ratio;
}

constexpr puteal_parameter boundTakes[] = {
    Parameter("capacity", "grain as CaCO3", "hardness the whole bed takes out between regenerations")
        .hard(0, 1e7)
        .usual(5000, 200000),
    Parameter("ratio", "gal/kgr{CaCO3}", "water allowed for 1,000 grain")
        .hard(0.1, 50)
        .usual(2, 5)
        .otherwise(mostPerKilograin, "S"),
};
constexpr const char *boundSources[] = {"nsf44", nullptr};
constexpr puteal_example boundExamples[] = {
    example("regeneration_water_bound(1000 grain as CaCO3)", "5 gal/event", 1e-9, "published", "nsf44"),
    example("regeneration_water_bound(24000 grain as CaCO3)", "120 gal/event", 1e-9, "computed", "nsf44"),
};
constexpr puteal_example boundRefusals[] = {
    refusal("regeneration_water_bound(-1 grain as CaCO3)",
            "`capacity` must be at least 0 grain as CaCO3; it is -1 grain as CaCO3"),
};

double waterPerYear(double water, double interval)
{
    return water * measure::dayPerYear / interval;
}

constexpr puteal_parameter yearTakes[] = {
    Parameter("water", "gal/event",
              "water of one whole regeneration; trade and extension texts print 50 to 100")
        .hard(0, 10000)
        .usual(20, 500),
    Parameter("interval", "day/event", "days between regenerations").hard(0.1, 365).usual(1, 30),
};
constexpr const char *yearSources[] = {"definition", "penn_state", "missouri", nullptr};
constexpr puteal_example yearExamples[] = {
    example("regeneration_water_per_year(75 gal/event, 4 day/event)", "6843.75 gal/yr", 1e-9, "computed",
            "definition"),
    example("regeneration_water_per_year(50 gal/event, 7 day/event)", "2607.142857 gal/yr", 1e-8, "computed",
            "definition"),
};
constexpr puteal_example yearRefusals[] = {
    refusal("regeneration_water_per_year(75 gal/event, 0 day/event)",
            "`interval` must be at least 0.1 day/event; it is 0 day/event"),
};

constexpr const char drain[] =
    "Brine to a septic tank or to the ground is ruled locally: ask the health department first.";

} // namespace

constinit const puteal_function waterRatioRow =
    Function("regeneration_water_ratio", "Regeneration water for 1,000 grain",
             "Water sent to the drain for each thousand grains of hardness, to set beside the 5 gal that the "
             "standard's efficiency rating allows.",
             call<waterRatio>)
        .takes(ratioTakes)
        .gives("gal/kgr{CaCO3}", "water for 1,000 grain")
        .by("water / capacity")
        .from(ratioSources)
        .shownBy(ratioExamples)
        .refusing(ratioRefusals)
        .warning(ratioCautions)
        .safely(drain);

constinit const puteal_function waterBoundRow =
    Function("regeneration_water_bound", "Most regeneration water",
             "The most water a regeneration may take within the standard's efficiency rating.",
             call<waterBound>)
        .takes(boundTakes)
        .gives("gal/event", "most water of one regeneration")
        .by("capacity * ratio")
        .from(boundSources)
        .shownBy(boundExamples)
        .refusing(boundRefusals)
        .safely(drain);

constinit const puteal_function waterPerYearRow =
    Function("regeneration_water_per_year", "Regeneration water a year",
             "Water sent to the drain in a year of 365 days: the share of a septic field or a well that "
             "softening takes.",
             call<waterPerYear>)
        .takes(yearTakes)
        .gives("gal/yr", "water of a year's regenerations")
        .by("water / interval")
        .from(yearSources)
        .shownBy(yearExamples)
        .refusing(yearRefusals)
        .safely(drain);

} // namespace softening
