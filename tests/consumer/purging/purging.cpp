/// A plugin of one file: how long a well is run before its water is sampled.
#include "sdk/plugin.h"

using namespace puteal::sdk;

namespace
{

double purgeTime(double stored, double flow, double volumes, Reply &reply)
{
    constexpr double longest = 240.0; // half a working day [common practice, no source]
    const double time = volumes * stored / flow;
    if (lessThan(longest, time))
        reply.caution("weak_well", "longer than half a working day: purge to a steady temperature instead");
    return time;
}

constexpr puteal_parameter takes[] = {
    Parameter("stored", "gal", "water standing in the bore").hard(0.1, 100000).usual(10, 5000),
    Parameter("flow", "gpm", "flow at which it is pumped").hard(0.01, 1000).usual(0.5, 50),
    Parameter("volumes", "", "how many times the stored water is drawn")
        .hard(0.1, 20)
        .usual(1, 5)
        .otherwise(3, "T"),
};
constexpr const char *from[] = {"practice", nullptr};
constexpr puteal_example examples[] = {
    example("purge_time(220 gal, 0.8 gpm)", "825 min", 1e-9, "computed", "practice"),
    example("purge_time(100 gal, 10 gpm, 1)", "10 min", 1e-9, "computed", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal("purge_time(100 gal, 0 gpm)", "`flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution cautions[] = {caution("weak_well", "longer than 240 minutes")};

constinit const puteal_function purgeTimeRow =
    Function("purge_time", "Time to purge a well", "Minutes a well is run before a sample is taken.",
             call<purgeTime>)
        .takes(takes)
        .gives("min", "time until the stored water was drawn that many times")
        .by("volumes * stored / flow")
        .from(from)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely("A well is run and sampled under the rules of the local health department.");

double retestDay(double sampled, double interval, Reply &reply)
{
    const double due = sampled + interval;
    if (lessThan(due, dayOf(1950, 1, 1)))
        return reply.refuse(1, "before 1950: read the date again");
    reply.reason("sampled on " + dateWords(sampled));
    return due;
}

constexpr puteal_parameter retestTakes[] = {
    Parameter("sampled", "", "day of the sample").date(),
    Parameter("interval", "day", "days until the next one").hard(1, 3650).usual(30, 730).otherwise(365, "T"),
};
constexpr puteal_example retestExamples[] = {
    example("retest_day(2026-05-12)", "2027-05-12", 0, "computed", "practice"),
    example("retest_day(2024-02-28, 2 day)", "2024-03-01", 0, "computed", "practice"),
};
constexpr puteal_example retestRefusals[] = {
    refusal("retest_day(1926-05-12)", "before 1950: read the date again"),
};

constinit const puteal_function retestDayRow =
    Function("retest_day", "Day of the next test", "Day on which the water is tested again.", call<retestDay>)
        .takes(retestTakes)
        .givesDate("day of the next test")
        .by("sampled + interval")
        .from(from)
        .shownBy(retestExamples)
        .refusing(retestRefusals);

constexpr puteal_source sources[] = {
    source("practice", "T", "common practice, no source: three casing volumes")};
const puteal_function functions[] = {purgeTimeRow, retestDayRow};
constinit const puteal_plugin self = plugin("purging", "Purging before a sample", 1, 0, sources, functions);

} // namespace

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &self;
}
