/// Peak flow of a household, from its outlets or from the hours the day's use falls into. (R3)
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

double peakByOutlets(double outlets, double largest, Reply &reply)
{
    if (lessThan(25, outlets)) // the rule is made for one home [common practice, no source]
        reply.caution("many", "more than 25 outlets: count fixture units instead");
    return std::fmax(outlets,
                     largest); // 1 gpm an outlet [National Driller, Booster systems for low-yield wells]
}

double peakInHours(double use, double hours)
{
    constexpr double minutePerHour = 60.0;
    return use / (hours * minutePerHour);
}

constexpr puteal_parameter outletTakes[] = {
    Parameter("outlets", "each",
              "faucets, appliances, toilets and hose bibs; hot and cold of one sink count once")
        .hard(1, 1000)
        .usual(3, 25),
    Parameter("largest", "gpm", "flow of the largest single outlet: a shower, tub or 1/2 in hose takes 5 gpm")
        .hard(0, 100)
        .usual(2, 10)
        .otherwise(5, "H"),
};
constexpr const char *outletSources[] = {"national_driller", "penn_state", "practice", nullptr};
constexpr puteal_example outletExamples[] = {
    example("peak_flow_by_outlets(10 each)", "10 gpm", 1e-9, "published", "national_driller"),
    example("peak_flow_by_outlets(6 each)", "6 gpm", 1e-9, "computed", "national_driller"),
    example("peak_flow_by_outlets(3 each)", "5 gpm", 1e-9, "computed", "penn_state"),
};
constexpr puteal_example outletRefusals[] = {
    refusal("peak_flow_by_outlets(0 each)", "`outlets` must be at least 1 each; it is 0 each"),
};
constexpr puteal_caution outletCautions[] = {caution("many", "more than 25 outlets")};

constexpr puteal_parameter hourTakes[] = {
    Parameter("use", "gal/day", "use per day").hard(0, 100000).usual(30, 2000),
    Parameter("hours", "hr", "time into which the whole day's use falls").hard(0.1, 24).usual(0.5, 4),
};
constexpr const char *hourSources[] = {"penn_state", "missouri_g1801", nullptr};
constexpr puteal_example hourExamples[] = {
    example("peak_flow_in_hours(400 gal/day, 2 hr)", "3.3333 gpm", 2e-5, "computed", "penn_state"),
    example("peak_flow_in_hours(240 gal/day, 1 hr)", "4 gpm", 1e-9, "computed", "missouri_g1801"),
};
constexpr puteal_example hourRefusals[] = {
    refusal("peak_flow_in_hours(400 gal/day, 0 hr)", "`hours` must be at least 0.1 hr; it is 0 hr"),
};

} // namespace

constinit const puteal_function peakByOutletsRow =
    Function("peak_flow_by_outlets", "Peak flow by outlets",
             "Peak flow of a house: one gallon a minute for each outlet, at least the largest single one.",
             call<peakByOutlets>)
        .takes(outletTakes)
        .gives("gpm", "peak flow")
        .by("greater of 1 gpm * outlets and largest")
        .from(outletSources)
        .shownBy(outletExamples)
        .refusing(outletRefusals)
        .warning(outletCautions);

constinit const puteal_function peakInHoursRow =
    Function("peak_flow_in_hours", "Peak flow by hours",
             "Peak flow if the whole day's water is drawn within some hours.", call<peakInHours>)
        .takes(hourTakes)
        .gives("gpm", "peak flow")
        .by("use * 1 day / hours")
        .from(hourSources)
        .shownBy(hourExamples)
        .refusing(hourRefusals);

} // namespace household
