/// Days a cartridge lasts. (R3)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

double shorter(double days, double longest, Reply &reply)
{
    if (lessThan(longest, days)) {
        reply.caution("calendar", "the calendar decides: an old cartridge grows bacteria");
        return longest;
    }
    if (lessThan(days, 30)) // a month is the least a family will keep up with [common practice, no source]
        reply.caution("often", "a change more often than once a month is seldom kept up");
    return days;
}

double cartridgeDays(double rating, double ratedIron, double iron, double use, double longest, Reply &reply)
{
    if (atMost(use, 0))
        return longest;
    // A rating shrinks with more iron; with less it does not stretch, since volume may be what ends it.
    const double share = lessThan(ratedIron, iron) ? ratedIron / iron : 1.0;
    return shorter(rating * share / use, longest, reply);
}

double cartridgeDaysByMass(double holds, double iron, double use, double longest, Reply &reply)
{
    constexpr double mgPerGram = 1000.0;
    const double perDay = iron * use * measure::literPerGallon / mgPerGram;
    if (atMost(perDay, 0))
        return longest;
    return shorter(holds / perDay, longest, reply);
}

constexpr puteal_parameter daysTakes[] = {
    Parameter("rating", "gal/cartridge",
              "gallons on the label; it is optimistic, plan half in the first season")
        .hard(1, 1e7)
        .usual(1000, 100000),
    Parameter("rated_iron", "mg/L as Fe", "iron the label's rating was made at")
        .hard(0.01, 100)
        .usual(0.3, 5),
    Parameter("iron", "mg/L as Fe", "iron of the water").hard(0, 1000).usual(0, 5),
    Parameter("use", "gal/day", "water through the cartridge").hard(0, 100000).usual(20, 1000),
    Parameter("longest", "day/cartridge", "longest time a cartridge may stay in")
        .hard(1, 3650)
        .usual(90, 365)
        .otherwise(365, "T"),
};
constexpr const char *daysSources[] = {"practice", "hb44", nullptr};
constexpr puteal_example daysExamples[] = {
    example("cartridge_days(26000 gal/cartridge, 3 mg/L as Fe, 3 mg/L as Fe, 250 gal/day)",
            "104 day/cartridge", 1e-9, "common practice", "practice"),
    example("cartridge_days(26000 gal/cartridge, 1 mg/L as Fe, 3 mg/L as Fe, 250 gal/day)",
            "34.667 day/cartridge", 1e-4, "computed", "practice"),
    example("cartridge_days(30000 gal/cartridge, 1 mg/L as Fe, 3 mg/L as Fe, 200 gal/day)",
            "50 day/cartridge", 1e-9, "computed", "practice"),
    example("cartridge_days(30000 gal/cartridge, 1 mg/L as Fe, 0.3 mg/L as Fe, 200 gal/day)",
            "150 day/cartridge", 1e-9, "computed", "practice"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("cartridge_days(26000 gal/cartridge, 0 mg/L as Fe, 3 mg/L as Fe, 250 gal/day)",
            "`rated_iron` must be at least 0.01 mg/L as Fe; it is 0 mg/L as Fe"),
};
constexpr puteal_caution cautions[] = {
    caution("calendar", "the longest time is shorter than what the cartridge would hold"),
    caution("often", "less than 30 days"),
};

constexpr puteal_parameter massTakes[] = {
    Parameter("holds", "g/cartridge as Fe", "iron a cartridge holds before its pressure loss ends it")
        .hard(0.1, 100000)
        .usual(20, 500),
    Parameter("iron", "mg/L as Fe", "iron that stays in the cartridge").hard(0, 1000).usual(0, 5),
    Parameter("use", "gal/day", "water through the cartridge").hard(0, 100000).usual(20, 1000),
    Parameter("longest", "day/cartridge", "longest time a cartridge may stay in")
        .hard(1, 3650)
        .usual(90, 365)
        .otherwise(365, "T"),
};
constexpr const char *massSources[] = {"hb44", "practice", nullptr};
constexpr puteal_example massExamples[] = {
    example("cartridge_days_by_iron(50 g/cartridge as Fe, 0.5 mg/L as Fe, 240 gal/day)",
            "110.07 day/cartridge", 1e-4, "computed", "hb44"),
    example("cartridge_days_by_iron(60 g/cartridge as Fe, 0.35 mg/L as Fe, 250 gal/day)",
            "181.147 day/cartridge", 1e-4, "computed", "hb44"),
    example("cartridge_days_by_iron(150 g/cartridge as Fe, 2 mg/L as Fe, 250 gal/day)",
            "79.2516 day/cartridge", 1e-4, "computed", "hb44"),
};
constexpr puteal_example massRefusals[] = {
    refusal("cartridge_days_by_iron(0 g/cartridge as Fe, 2 mg/L as Fe, 250 gal/day)",
            "`holds` must be at least 0.1 g/cartridge as Fe; it is 0 g/cartridge as Fe"),
};

constexpr const char cartridgeSafety[] = "Take the pressure off before opening a housing. Dissolved iron "
                                         "passes a sediment cartridge: know the form first.";

} // namespace

constinit const puteal_function cartridgeDaysRow =
    Function("cartridge_days", "Days a rated cartridge lasts",
             "Days between changes from the gallons on the label. More iron than the label's shortens them; "
             "less does "
             "not stretch them.",
             call<cartridgeDays>)
        .takes(daysTakes)
        .gives("day/cartridge", "days between changes")
        .by("least of rating * least(1, rated_iron / iron) / use and longest")
        .from(daysSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(cautions)
        .safely(cartridgeSafety);

constinit const puteal_function cartridgeDaysByMassRow =
    Function("cartridge_days_by_iron", "Days a cartridge lasts by what it holds",
             "Days between changes from the grams of iron a cartridge holds.", call<cartridgeDaysByMass>)
        .takes(massTakes)
        .gives("day/cartridge", "days between changes")
        .by("least of holds / (iron * use) and longest")
        .from(massSources)
        .shownBy(massExamples)
        .refusing(massRefusals)
        .warning(cautions)
        .safely(cartridgeSafety);

} // namespace filtration
