/// Water a household uses in a day and a year. (R1, R5)
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

double dailyUse(double people, double use)
{
    return people * use;
}

double indoorUse(double people)
{
    return 37.2 * people + 69.2; // gal/day, 1999 end-use study [LBNL, Well-pump energy calculation method]
}

double yearlyUse(double use, double days)
{
    return use * days;
}

double useByPeriod(const Argument &days, const Argument &people, double use, double washes, double wash,
                   double gap, Reply &reply)
{
    if (days.count() == 0 || people.count() != days.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    if (lessThan(14, gap)) // beds and tanks turn stale [common practice, no source]
        reply.caution("stale", "idle for more than 14 days: beds grow bacteria, solutions weaken, air heads "
                               "empty; wash before use");
    double sum = 0.0, total = 0.0;
    for (std::size_t i = 0; i < days.count(); ++i) {
        const double day = days.begin()[i], person = people.begin()[i];
        if (!std::isfinite(day + person))
            return reply.refuse(0, "a line is blank: fill it or take it out of the range");
        total += day;
        sum += day * person * use;
    }
    constexpr double longestYear = 366; // days
    if (lessThan(longestYear, total))
        return reply.refuse(1, "the periods make more than a year: they overlap");
    return sum + washes * wash;
}

constexpr puteal_parameter dailyTakes[] = {
    Parameter("people", "person", "people in the house, averages allowed").hard(0, 1000).usual(1, 12),
    Parameter("use", "gal/(day*person)", "use of one person a day").hard(0, 1000).usual(25, 200),
};
constexpr const char *dailySources[] = {"drilling_resource", "usgs_circular_1441", "penn_state", "practice",
                                        nullptr};
constexpr puteal_example dailyExamples[] = {
    example("daily_use(4 person, 50 gal/(day*person))", "200 gal/day", 1e-12, "published", "penn_state"),
    example("daily_use(4 person, 100 gal/(day*person))", "400 gal/day", 1e-12, "published",
            "drilling_resource"),
    example("daily_use(4 person, 76.7059 gal/(day*person))", "306.82 gal/day", 2e-5, "computed",
            "usgs_circular_1441"),
    example("daily_use(4 person, 60 gal/(day*person))", "240 gal/day", 1e-9, "common practice", "practice"),
    example("daily_use(4 person, 62.5 gal/(day*person))", "250 gal/day", 1e-9, "common practice", "practice"),
};
constexpr puteal_example dailyRefusals[] = {
    refusal("daily_use(-4 person, 60 gal/(day*person))",
            "`people` must be at least 0 person; it is -4 person"),
};

constexpr puteal_parameter indoorTakes[] = {
    Parameter("people", "person", "people in the house").hard(1, 100).usual(1, 8),
};
constexpr const char *indoorSources[] = {"lbnl_well_pump", nullptr};
constexpr puteal_example indoorExamples[] = {
    example("indoor_use(4 person)", "218 gal/day", 1e-9, "computed", "lbnl_well_pump"),
    example("indoor_use(1 person)", "106.4 gal/day", 1e-9, "computed", "lbnl_well_pump"),
    example("indoor_use(2.6 person)", "165.92 gal/day", 1e-9, "computed", "lbnl_well_pump"),
};
constexpr puteal_example indoorRefusals[] = {
    refusal("indoor_use(0 person)", "`people` must be at least 1 person; it is 0 person"),
};

constexpr puteal_parameter yearlyTakes[] = {
    Parameter("use", "gal/day", "use on a day when somebody is there").hard(0, 100000).usual(30, 2000),
    Parameter("days", "day/yr", "days a year when somebody is there").hard(0, 366).usual(20, 365),
};
constexpr const char *yearlySources[] = {"definition", nullptr};
constexpr puteal_example yearlyExamples[] = {
    example("yearly_use(240 gal/day, 365 day/yr)", "87600 gal/yr", 1e-9, "computed", "definition"),
    example("yearly_use(240 gal/day, 65 day/yr)", "15600 gal/yr", 1e-9, "computed", "definition"),
};
constexpr puteal_example yearlyRefusals[] = {
    refusal("yearly_use(240 gal/day, 400 day/yr)", "`days` must be at most 366 day/yr; it is 400 day/yr"),
};

constexpr puteal_parameter periodTakes[] = {
    Parameter("days", "day/yr", "days of each period").range().hard(0, 366).usual(0, 366),
    Parameter("people", "person", "people there in each period").range().hard(0, 1000).usual(0, 12),
    Parameter("use", "gal/(day*person)", "use of one person a day").hard(0, 1000).usual(25, 200),
    Parameter("washes", "event/yr", "washes and regenerations on a clock, whether anybody is there or not")
        .hard(0, 3660)
        .usual(0, 365)
        .otherwise(0, "A"),
    Parameter("wash", "gal/event", "water of one wash").hard(0, 10000).usual(0, 300).otherwise(0, "A"),
    Parameter("gap", "day", "longest time nobody is there").hard(0, 366).usual(0, 300).otherwise(0, "A"),
};
constexpr puteal_example periodExamples[] = {
    example("days: 65 day/yr; people: 4 person; use_by_period(days[:], people[:], 60 gal/(day*person))",
            "15600 gal/yr", 1e-12, "computed", "definition"),
    example("days: 100 day/yr; people: 3 person; use_by_period(days[:], people[:], 55 gal/(day*person))",
            "16500 gal/yr", 1e-12, "computed", "definition"),
    example("days: 60 day/yr, 20 day/yr; people: 2 person, 6 person; use_by_period(days[:], people[:], 60 "
            "gal/(day*person), 50 event/yr, 70 gal/event, 90 day)",
            "17900 gal/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example periodRefusals[] = {
    refusal("days: 200 day/yr, 200 day/yr; people: 2 person, 4 person; use_by_period(days[:], people[:], 60 "
            "gal/(day*person))",
            "the periods make more than a year: they overlap"),
};
constexpr puteal_caution periodCautions[] = {caution("stale", "idle for more than 14 days")};

} // namespace

constinit const puteal_function dailyUseRow =
    Function("daily_use", "Use per day", "Water a household uses on a day when all are there.",
             call<dailyUse>)
        .takes(dailyTakes)
        .gives("gal/day", "use per day")
        .by("people * use")
        .from(dailySources)
        .shownBy(dailyExamples)
        .refusing(dailyRefusals);

constinit const puteal_function indoorUseRow =
    Function(
        "indoor_use", "Indoor use by regression",
        "Indoor use of a household by a published regression: each further person adds less than the first.",
        call<indoorUse>)
        .takes(indoorTakes)
        .gives("gal/day", "indoor use per day")
        .by("37.2 gal/(day*person) * people + 69.2 gal/day")
        .from(indoorSources)
        .shownBy(indoorExamples)
        .refusing(indoorRefusals);

constinit const puteal_function yearlyUseRow =
    Function("yearly_use", "Use per year",
             "Water used in a year: size on the day when people are there, budget on the year.",
             call<yearlyUse>)
        .takes(yearlyTakes)
        .gives("gal/yr", "use per year")
        .by("use * days")
        .from(yearlySources)
        .shownBy(yearlyExamples)
        .refusing(yearlyRefusals);

constinit const puteal_function useByPeriodRow =
    Function("use_by_period", "Use per year by periods",
             "Water of a year from a calendar of who is there when, with the washes that run by the clock. "
             "Size on the fullest day, budget on the year.",
             call<useByPeriod>)
        .takes(periodTakes)
        .gives("gal/yr", "use per year")
        .by("sum of days * people * use + washes * wash")
        .from(yearlySources)
        .shownBy(periodExamples)
        .refusing(periodRefusals)
        .warning(periodCautions);

} // namespace household
