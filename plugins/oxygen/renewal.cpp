/// How often an air pocket is renewed, and which of its three limits decides. (R3, R4, R5)
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

namespace
{

constexpr const char *limitWords[] = {"calendar", "carried off", "used up", nullptr};
enum Limit : int { byCalendar, byCarrying, byUse };

struct Renewal {
    double days;
    Limit limit;
};

double daysFor(double oxygenHeld, double use, double each)
{
    const double perDay = use * measure::literPerGallon * each / 1000.0; // g/day
    return lessThan(0, perDay) ? oxygenHeld / perDay : HUGE_VAL;
}

/// The least of three: what oxidation uses, what the water carries off, the calendar.
Renewal renewalOf(double oxygenHeld, double use, double budget, double takenUp, double calendar, Reply &reply)
{
    const double used = daysFor(oxygenHeld, use, budget), carried = daysFor(oxygenHeld, use, takenUp);
    if (lessThan(takenUp, budget))
        reply.caution("too_little", "the water takes up less oxygen than oxidation uses: measure the oxygen, "
                                    "or part of the iron stays dissolved");
    Renewal renewal{calendar, byCalendar};
    if (lessThan(carried, renewal.days))
        renewal = {carried, byCarrying};
    if (lessThan(used, renewal.days))
        renewal = {used, byUse};
    const auto days = [](double x) {
        return std::isfinite(x) ? figures(x) + " days" : std::string("no end");
    };
    reply.reason("carried off by the water in " + days(carried) + ", used by oxidation in " + days(used) +
                 ", by the calendar in " + days(calendar) + ": " + limitWords[renewal.limit] + " decides");
    return renewal;
}

double airPocketInterval(double oxygenHeld, double use, double budget, double takenUp, double calendar,
                         Reply &reply)
{
    const double days = renewalOf(oxygenHeld, use, budget, takenUp, calendar, reply).days;
    if (lessThan(days, 1))
        reply.caution("daily",
                      "the pocket is spent within a day: renew it more than once a day or add a compressor");
    return days;
}

int airPocketLimit(double oxygenHeld, double use, double budget, double takenUp, double calendar,
                   Reply &reply)
{
    return renewalOf(oxygenHeld, use, budget, takenUp, calendar, reply).limit;
}

constexpr puteal_parameter renewalTakes[] = {
    Parameter("oxygen", "g as O2", "oxygen in the pocket, see air_pocket_oxygen").hard(0, 10000).usual(1, 30),
    Parameter("use", "gal/day", "water through the pocket").hard(0, 100000).usual(50, 1000),
    Parameter("budget", "mg/L as O2", "oxygen that oxidation uses, see oxygen_budget")
        .hard(0, 100)
        .usual(0, 10),
    Parameter("taken_up", "mg/L as O2", "oxygen a liter carries away in all; measure it")
        .hard(0, 100)
        .usual(1, 12),
    Parameter("calendar", "day/event", "longest time between two washes")
        .hard(0.1, 60)
        .usual(1, 7)
        .otherwise(3, "T"),
};
constexpr const char *renewalSources[] = {"definition", "practice", nullptr};
constexpr puteal_example intervalExamples[] = {
    example("air_pocket_interval(6.5517 g as O2, 300 gal/day, 0.429735 mg/L as O2, 4 mg/L as O2)",
            "1.442 day/event", 1e-3, "computed", "definition"),
    example("air_pocket_interval(6.5517 g as O2, 300 gal/day, 0.429735 mg/L as O2, 0.429735 mg/L as O2, 30 "
            "day/event)",
            "13.425 day/event", 1e-4, "computed", "definition"),
    example("air_pocket_interval(6.5517 g as O2, 60 gal/day, 0.429735 mg/L as O2, 4 mg/L as O2)",
            "3 day/event", 1e-9, "common practice", "practice"),
};
constexpr puteal_example intervalRefusals[] = {
    refusal("air_pocket_interval(6.5517 g as O2, 300 gal/day, -1 mg/L as O2, 4 mg/L as O2)",
            "`budget` must be at least 0 mg/L as O2; it is -1 mg/L as O2"),
};
constexpr puteal_caution intervalCautions[] = {
    caution("daily", "less than one day"),
    caution("too_little", "less taken up than oxidation uses"),
};
constexpr puteal_example limitExamples[] = {
    example("air_pocket_limit(6.5517 g as O2, 300 gal/day, 0.429735 mg/L as O2, 4 mg/L as O2)", "carried off",
            0, "computed", "definition"),
    example("air_pocket_limit(6.5517 g as O2, 60 gal/day, 0.429735 mg/L as O2, 4 mg/L as O2)", "calendar", 0,
            "common practice", "practice"),
};
constexpr puteal_example limitRefusals[] = {
    refusal("air_pocket_limit(-1 g as O2, 300 gal/day, 0.43 mg/L as O2, 4 mg/L as O2)",
            "`oxygen` must be at least 0 g as O2; it is -1 g as O2"),
};
constexpr puteal_caution limitCautions[] = {caution("too_little", "less taken up than oxidation uses")};

} // namespace

constinit const puteal_function airPocketIntervalRow =
    Function("air_pocket_interval", "Days between renewals of an air pocket",
             "Days until an air pocket must be renewed: the least of what oxidation uses, what the water "
             "carries off and the calendar. The water carries off far more than iron uses; what stays is "
             "rich in nitrogen, so the oxygen falls late in the cycle.",
             call<airPocketInterval>)
        .takes(renewalTakes)
        .gives("day/event", "days between renewals, with its reason")
        .by("least of oxygen / (use * budget), oxygen / (use * taken_up), calendar")
        .from(renewalSources)
        .shownBy(intervalExamples)
        .refusing(intervalRefusals)
        .warning(intervalCautions)
        .safely(headSafety);

constinit const puteal_function airPocketLimitRow =
    Function("air_pocket_limit", "What limits an air pocket",
             "Which limit decides when an air pocket is renewed.", call<airPocketLimit>)
        .takes(renewalTakes)
        .givesOneOf(limitWords, "the limit that decides, with its reason")
        .by("the least of the three of air_pocket_interval")
        .from(renewalSources)
        .shownBy(limitExamples)
        .refusing(limitRefusals)
        .warning(limitCautions)
        .safely(headSafety);

} // namespace oxygen
