/// Parts of finite life in the long run: what is left at the end, what to put aside, what lasts forever. (R2,
/// R3)
#include "cost.h"

#include <numeric>

namespace cost
{

using namespace puteal::sdk;

namespace
{

double residualValue(double price, double life, double study)
{
    // the part in use is the last that was placed before the end, with the slack of every comparison
    const double parts = std::fmax(1.0, std::ceil(study / life * (1 - 1e-12)));
    return price * std::fmax(0.0, parts * life - study) / life;
}

double yearlyReserve(double price, double life, double rate)
{
    return price / seriesCompound(rate, life);
}

double capitalizedCost(double cost, double rate)
{
    return cost / rate;
}

double lifeByHours(double rated, double hours, double days, double longest, Reply &reply)
{
    const double used = hours * days; // hours a year
    if (atMost(used, 0))
        return reply.refuse(2, "it never runs, so its hours never end: give hours and days above 0");
    if (lessThan(longest, rated / used))
        reply.caution("calendar", "the longest time is shorter than what the hours allow");
    return std::fmin(longest, rated / used);
}

double lifeByVolume(double rated, double use, double longest, Reply &reply)
{
    if (atMost(use, 0))
        return reply.refuse(2, "nothing flows, so its gallons never end: give a use above 0");
    if (lessThan(longest, rated / use))
        reply.caution("calendar", "the longest time is shorter than what the gallons allow");
    return std::fmin(longest, rated / use);
}

double commonStudy(const Argument &lives, Reply &reply)
{
    constexpr int longest = 200; // years of any study here
    if (lives.count() == 0 || !isFilled(lives))
        return reply.refuse(1, blankLine);
    int years = 1;
    for (std::size_t i = 0; i < lives.count(); ++i) {
        const int life = wholeYears(lives.begin()[i]);
        if (life < 1)
            return reply.refuse(1, "lives must be whole years here: round them, or count what is left by "
                                   "residual_value");
        years = std::lcm(years, life);
        if (years > longest)
            return reply.refuse(1, "the lives meet only after more than 200 years: choose a study and count "
                                   "what is left by residual_value");
    }
    return years;
}

constexpr Parameter life = Parameter("life", "yr", "how long the part lasts").hard(0.05, 200).usual(0.5, 30);

constexpr puteal_parameter residualTakes[] = {
    Parameter("price", "$", "price of the part"),
    life,
    Parameter("study", "yr", "length of the study; nothing is replaced at its end").hard(0, 200).usual(1, 40),
};
constexpr const char *lastingSources[] = {"handbook135", "definition", nullptr};
constexpr puteal_example residualExamples[] = {
    example("residual_value($380, 7 yr, 15 yr)", "$325.714286", 1e-8, "computed", "definition"),
    example("residual_value($380, 7 yr, 14 yr)", "$0", 1e-12, "computed", "definition"),
    example("residual_value($1200, 20 yr, 15 yr)", "$300", 1e-12, "computed", "definition"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("residual_value($380, 0 yr, 15 yr)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter reserveTakes[] = {
    Parameter("price", "$", "price of one replacement, labor included"),
    life,
    rateParameter.otherwise(0, "A"),
};
constexpr const char *reserveSources[] = {"interest_tables", "interest_tables_half", "definition", nullptr};
constexpr puteal_example reserveExamples[] = {
    example("yearly_reserve($1000, 12 yr, 0.25 %)", "$82.19/yr", 6e-5, "published", "interest_tables"),
    example("yearly_reserve($1000, 15 yr, 0.5 %)", "$64.36/yr", 8e-5, "published", "interest_tables_half"),
    example("yearly_reserve($450, 6 yr, 5 %)", "$66.157861/yr", 1e-8, "computed", "definition"),
    example("yearly_reserve($450, 6 yr)", "$75/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example reserveRefusals[] = {
    refusal("yearly_reserve($450, 0 yr, 5 %)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter foreverTakes[] = {
    Parameter("cost", "$/yr", "even yearly cost without an end"),
    Parameter("rate", "", "rate a year, as 5 %").hard(0.001, highestRate).usual(0.01, 0.15),
};
constexpr const char *foreverSources[] = {"definition", nullptr};
constexpr puteal_example foreverExamples[] = {
    example("capitalized_cost($66.157861/yr, 5 %)", "$1323.15722", 1e-9, "computed", "definition"),
    example("capitalized_cost($100/yr, 4 %)", "$2500", 1e-12, "computed", "definition"),
};
constexpr puteal_example foreverRefusals[] = {
    refusal("capitalized_cost($100/yr, 0)", "`rate` must be at least 0.001; it is 0"),
};

constexpr Parameter longestLife =
    Parameter("longest", "yr", "longest time it may stay in whatever it has done")
        .hard(0.05, 200)
        .usual(0.5, 20)
        .otherwise(200, "A");
constexpr puteal_caution calendarCautions[] = {caution("calendar", "the longest time decides")};
constexpr puteal_parameter hoursTakes[] = {
    Parameter("rated", "hr", "hours the part is rated for").hard(1, 1e6).usual(500, 100000),
    Parameter("hours", "hr/day", "how long it runs a day").hard(0, 24).usual(0.1, 24),
    Parameter("days", "day/yr", "days a year it is switched on")
        .hard(0, 366)
        .usual(20, 365)
        .otherwise(365, "A"),
    longestLife,
};
constexpr const char *dutySources[] = {"definition", "practice", nullptr};
constexpr puteal_example hoursExamples[] = {
    example("life_by_hours(9000 hr, 24 hr/day)", "1.02739726 yr", 1e-8, "common practice", "practice"),
    example("life_by_hours(8760 hr, 12 hr/day)", "2 yr", 1e-12, "computed", "definition"),
    example("life_by_hours(9000 hr, 24 hr/day, 100 day/yr, 2 yr)", "2 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example hoursRefusals[] = {
    refusal("life_by_hours(9000 hr, 0 hr/day)",
            "it never runs, so its hours never end: give hours and days above 0"),
};

constexpr puteal_parameter gallonsTakes[] = {
    Parameter("rated", "gal", "gallons the part is rated for").hard(1, 1e9).usual(1000, 1e6),
    Parameter("use", "gal/yr", "water through it in a year").hard(0, 1e9).usual(1000, 500000),
    longestLife,
};
constexpr puteal_example gallonsExamples[] = {
    example("life_by_volume(26000 gal, 250 gal/day)", "104 day", 1e-12, "common practice", "practice"),
    example("life_by_volume(100000 gal, 87600 gal/yr)", "1.141552511 yr", 1e-9, "computed", "definition"),
    example("life_by_volume(100000 gal, 15600 gal/yr, 1 yr)", "1 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example gallonsRefusals[] = {
    refusal("life_by_volume(26000 gal, 0 gal/yr)",
            "nothing flows, so its gallons never end: give a use above 0"),
};

constexpr puteal_parameter commonTakes[] = {
    Parameter("lives", "yr", "lives of the options, whole years").range().hard(1, 200).usual(1, 40),
};
constexpr puteal_example commonExamples[] = {
    example("life: 4 yr, 6 yr; common_study(life[:])", "12 yr", 1e-12, "computed", "definition"),
    example("life: 5 yr, 15 yr, 3 yr; common_study(life[:])", "15 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example commonRefusals[] = {
    refusal("life: 17 yr, 19 yr; common_study(life[:])",
            "the lives meet only after more than 200 years: choose a study and count what is left by "
            "residual_value"),
    refusal("life: 4 yr, 2.5 yr; common_study(life[:])",
            "lives must be whole years here: round them, or count what is left by residual_value"),
};

} // namespace

constinit const puteal_function residualValueRow =
    Function("residual_value", "Value left at the end",
             "What the last part of finite life is still worth at the end of the study, in a straight line "
             "over its life. Discount it by present_value_factor.",
             call<residualValue>)
        .takes(residualTakes)
        .gives("$", "value at the end of the study")
        .by("price * (time the part in use would still last) / life")
        .from(lastingSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals);

constinit const puteal_function yearlyReserveRow =
    Function("yearly_reserve", "Yearly reserve for a replacement",
             "Even yearly sum to put aside so that it pays a part when its life ends.", call<yearlyReserve>)
        .takes(reserveTakes)
        .gives("$/yr", "sum to put aside at the end of each year")
        .by("price * rate / ((1 + rate)^(life / 1 yr) - 1); price / life at rate 0")
        .from(reserveSources)
        .shownBy(reserveExamples)
        .refusing(reserveRefusals);

constinit const puteal_function capitalizedCostRow =
    Function("capitalized_cost", "Capitalized cost",
             "Present value of a yearly cost that never ends, as care for a system that is always renewed.",
             call<capitalizedCost>)
        .takes(foreverTakes)
        .gives("$", "present value")
        .by("cost / rate")
        .from(foreverSources)
        .shownBy(foreverExamples)
        .refusing(foreverRefusals);

constinit const puteal_function lifeByHoursRow =
    Function("life_by_hours", "Life by hours of use",
             "Years a lamp, cell, pump or compressor lasts from the hours it is rated for.",
             call<lifeByHours>)
        .takes(hoursTakes)
        .gives("yr", "life")
        .by("least of rated / (hours * days) and longest")
        .from(dutySources)
        .shownBy(hoursExamples)
        .refusing(hoursRefusals)
        .warning(calendarCautions);

constinit const puteal_function lifeByVolumeRow =
    Function("life_by_volume", "Life by gallons",
             "Years a part lasts from the gallons it is rated for; never longer than the calendar lets it.",
             call<lifeByVolume>)
        .takes(gallonsTakes)
        .gives("yr", "life")
        .by("least of rated / use and longest")
        .from(dutySources)
        .shownBy(gallonsExamples)
        .refusing(gallonsRefusals)
        .warning(calendarCautions);

constinit const puteal_function commonStudyRow =
    Function("common_study", "Common length of study",
             "Shortest time after which options of unequal lives all end together, so that they can be "
             "compared over equal years.",
             call<commonStudy>)
        .takes(commonTakes)
        .gives("yr", "length of the study")
        .by("least common multiple of the lives")
        .from(lastingSources)
        .shownBy(commonExamples)
        .refusing(commonRefusals);

} // namespace cost
