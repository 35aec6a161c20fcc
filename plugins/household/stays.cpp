/// Houses that are not lived in all year: days somebody is there, and how long the water stands between. (R5)
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

double occupiedDays(double visits, double stay, Reply &reply)
{
    const double days = visits * stay;
    if (lessThan(366, days))
        return reply.refuse(2, "the visits make more than a year: fewer visits or shorter ones");
    return days;
}

double idleGap(double visits, double stay, double longest, Reply &reply)
{
    const double gap = measure::dayPerYear / visits - stay;
    if (lessThan(gap, 0))
        return reply.refuse(2, "the visits make more than a year: fewer visits or shorter ones");
    if (lessThan(longest, gap))
        reply.caution("stale",
                      "water stands longer than " + figures(longest) +
                          " days: beds grow bacteria, solutions weaken, air heads empty; wash before "
                          "use");
    return gap;
}

constexpr Parameter visits =
    Parameter("visits", "event/yr", "how often a year somebody comes").hard(1, 366).usual(2, 60);
constexpr Parameter stay = Parameter("stay", "day/event", "how long a visit is").hard(0.1, 366).usual(1, 120);

constexpr puteal_parameter occupiedTakes[] = {visits, stay};
constexpr const char *staySources[] = {"definition", "practice", nullptr};
constexpr puteal_example occupiedExamples[] = {
    example("occupied_days(26 event/yr, 2.5 day/event)", "65 day/yr", 1e-12, "computed", "definition"),
    example("occupied_days(1 event/yr, 100 day/event)", "100 day/yr", 1e-12, "computed", "definition"),
    example("yearly_use(240 gal/day, occupied_days(26 event/yr, 2.5 day/event))", "15600 gal/yr", 1e-12,
            "computed", "definition"),
};
constexpr puteal_example occupiedRefusals[] = {
    refusal("occupied_days(52 event/yr, 10 day/event)",
            "the visits make more than a year: fewer visits or shorter ones"),
};

constexpr puteal_parameter gapTakes[] = {
    visits,
    stay,
    Parameter("longest", "day", "longest time water may stand before a caution; 7 to 14 are met")
        .hard(1, 366)
        .usual(7, 14)
        .otherwise(14, "T"),
};
constexpr puteal_example gapExamples[] = {
    example("idle_gap(26 event/yr, 2.5 day/event)", "11.53846154 day", 1e-9, "computed", "definition"),
    example("idle_gap(1 event/yr, 100 day/event)", "265 day", 1e-12, "computed", "definition"),
    example("idle_gap(52 event/yr, 7 day/event)", "0.01923077 day", 1e-6, "computed", "definition"),
};
constexpr puteal_example gapRefusals[] = {
    refusal("idle_gap(52 event/yr, 10 day/event)",
            "the visits make more than a year: fewer visits or shorter ones"),
};
constexpr puteal_caution gapCautions[] = {caution("stale", "water stands longer than the longest time")};

} // namespace

constinit const puteal_function occupiedDaysRow =
    Function("occupied_days", "Days somebody is there",
             "Days a year a cabin or second home is lived in. Size on a full day, budget on the year.",
             call<occupiedDays>)
        .takes(occupiedTakes)
        .gives("day/yr", "days a year when somebody is there")
        .by("visits * stay")
        .from(staySources)
        .shownBy(occupiedExamples)
        .refusing(occupiedRefusals);

constinit const puteal_function idleGapRow =
    Function("idle_gap", "Time between visits",
             "How long water stands between visits that are spread evenly over the year; a closed season is "
             "longer.",
             call<idleGap>)
        .takes(gapTakes)
        .gives("day", "time nobody is there")
        .by("365 day / visits - stay")
        .from(staySources)
        .shownBy(gapExamples)
        .refusing(gapRefusals)
        .warning(gapCautions)
        .safely("Flush standing water from every tap before drinking, hot lines and shower heads too.");

} // namespace household
