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

constexpr puteal_source sources[] = {
    source("practice", "T", "common practice, no source: three casing volumes")};
const puteal_function functions[] = {purgeTimeRow};
constinit const puteal_plugin self = plugin("purging", "Purging before a sample", 1, 0, sources, functions);

} // namespace

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &self;
}
