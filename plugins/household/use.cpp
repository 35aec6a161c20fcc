/// Water a household uses in a day and a year, and what a wash adds to its septic system. (R1, R2)
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

double septicShare(double wash, double interval, double design, Reply &reply)
{
    const double share = wash / interval / design;
    if (lessThan(0.1,
                 share)) // a tenth more water is where designers begin to ask [common practice, no source]
        reply.caution("much", "more than a tenth of what the septic system is laid out for");
    return share;
}

constexpr puteal_parameter dailyTakes[] = {
    Parameter("people", "person", "people in the house, averages allowed").hard(0, 1000).usual(1, 12),
    Parameter("use", "gal/(day*person)", "use of one person a day").hard(0, 1000).usual(25, 200),
};
constexpr const char *dailySources[] = {"usgs_circular_1441", "penn_state", "practice", nullptr};
constexpr puteal_example dailyExamples[] = {
    example("daily_use(1000 person, 76.7 gal/(day*person))", "76706 gal/day", 1e-3, "published",
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

constexpr puteal_parameter septicTakes[] = {
    Parameter("wash", "gal/event", "water one wash sends to the drain").hard(0, 10000).usual(20, 300),
    Parameter("interval", "day/event", "days between washes").hard(0.1, 365).usual(1, 14),
    Parameter("design", "gal/day", "what the septic system is laid out for").hard(1, 100000).usual(150, 1000),
};
constexpr const char *septicSources[] = {"massdep_title5", "ny_fact_sheet", "definition", "practice",
                                         nullptr};
constexpr puteal_example septicExamples[] = {
    example("septic_share(70.9 gal/event, 3 day/event, 330 gal/day)", "7.2 %", 0.01, "computed",
            "ny_fact_sheet"),
    example("septic_share(75 gal/event, 4 day/event, 300 gal/day)", "6.25 %", 1e-9, "computed", "definition"),
};
constexpr puteal_example septicRefusals[] = {
    refusal("septic_share(70.9 gal/event, 3 day/event, 0 gal/day)",
            "`design` must be at least 1 gal/day; it is 0 gal/day"),
};
constexpr puteal_caution septicCautions[] = {caution("much", "more than 10 % of the design flow")};

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
        .by("37.2 gal/day a person + 69.2 gal/day")
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

constinit const puteal_function septicShareRow =
    Function("septic_share", "Share of the septic system",
             "What washes add to a septic system as a share of its design flow.", call<septicShare>)
        .takes(septicTakes)
        .gives("", "share of the design flow")
        .by("wash / interval / design")
        .from(septicSources)
        .shownBy(septicExamples)
        .refusing(septicRefusals)
        .warning(septicCautions)
        .safely("Rules on wash water and septic systems differ by state; some bar softener waste altogether. "
                "Confirm with "
                "the local health office.");

} // namespace household
