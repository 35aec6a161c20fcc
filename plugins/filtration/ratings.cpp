/// Load on a bed, what a printed rating implies, and when two gauge readings ask for a change. (R3, R6)
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

double solidsLoad(double iron, double volume, double area)
{
    return iron * volume * measure::literPerGallon / measure::mgPerGrain / area;
}

double impliedUse(double rating, double people, double time, Reply &reply)
{
    constexpr double least = 40, most = 110; // gal a day, what people use [common practice, no source]
    const double use = rating / people / time;
    if (lessThan(use, least) || lessThan(most, use))
        reply.caution("unusual_use", "people use 40 to 110 gal a day: look for the conditions of the rating");
    return use;
}

double impliedDays(double rating, double people, double use, Reply &reply)
{
    if (atMost(use * people, 0))
        return reply.refuse(0, "nobody uses water, so the rating never runs out");
    return rating / (people * use);
}

double impliedCapacity(double rating, double iron)
{
    constexpr double mgPerGram = 1000.0;
    return rating * measure::literPerGallon * iron / mgPerGram;
}

double changeAt(double firstVolume, double firstLoss, double secondVolume, double secondLoss, double limit,
                Reply &reply)
{
    if (!lessThan(firstVolume, secondVolume))
        return reply.refuse(3, "the second reading must be later than the first");
    if (!lessThan(firstLoss, secondLoss))
        return reply.refuse(4, "the pressure loss has not risen: read again later");
    const double rate = std::log(secondLoss / firstLoss) / (secondVolume - firstVolume);
    const double at = firstVolume + std::log(limit / firstLoss) / rate;
    if (atMost(at, secondVolume))
        reply.caution("due", "the limit is reached: change it now");
    return at;
}

constexpr Parameter iron =
    Parameter("iron", "mg/L as Fe", "iron that stays in the filter").hard(0, 1000).usual(0, 30);
constexpr Parameter rating =
    Parameter("rating", "gal/cartridge", "gallons on the label").hard(1, 1e7).usual(1000, 100000);
constexpr Parameter people =
    Parameter("people", "person", "people the rating is meant for").hard(0.1, 1000).usual(1, 12);

constexpr puteal_parameter loadTakes[] = {
    iron,
    Parameter("volume", "gal", "water between two washes").hard(0, 1e6).usual(100, 5000),
    Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20),
};
constexpr const char *loadSources[] = {"hb44", "definition", nullptr};
constexpr puteal_example loadExamples[] = {
    example("bed_iron_load(3 mg/L as Fe, 900 gal, bed_area(10 in))", "289.189 grain/ft^2 as Fe", 1e-5,
            "computed", "hb44"),
    example("bed_iron_load(5 mg/L as Fe, 1200 gal, bed_area(12 in))", "446.279 grain/ft^2 as Fe", 1e-5,
            "computed", "hb44"),
    example("bed_iron_load(3 mg/L as Fe, 900 gal, 0.5454 ft^2)", "289.18 grain/ft^2 as Fe", 1e-3, "computed",
            "definition"),
};
constexpr puteal_example loadRefusals[] = {refusal("bed_iron_load(3 mg/L as Fe, 900 gal, 0 ft^2)",
                                                   "`area` must be at least 0.01 ft^2; it is 0 ft^2")};

constexpr puteal_parameter useTakes[] = {
    rating, people,
    Parameter("time", "day/cartridge", "time the label promises").hard(1, 3650).usual(30, 365)};
constexpr const char *impliedSources[] = {"practice", "definition", nullptr};
constexpr puteal_example useExamples[] = {
    example("rating_use_per_person(26000 gal/cartridge, 4 person, 104 day/cartridge)",
            "62.5 gal/(day*person)", 1e-12, "common practice", "practice"),
    example("rating_use_per_person(50000 gal/cartridge, 4 person, 365 day/cartridge)",
            "34.2466 gal/(day*person)", 1e-5, "computed", "definition"),
};
constexpr puteal_caution useCautions[] = {caution("unusual_use", "below 40 or above 110 gal a day")};
constexpr puteal_example useRefusals[] = {
    refusal("rating_use_per_person(26000 gal/cartridge, 0 person, 104 day/cartridge)",
            "`people` must be at least 0.1 person; it is 0 person"),
};

constexpr puteal_parameter daysTakes[] = {
    rating, people,
    Parameter("use", "gal/(day*person)", "use of one person a day").hard(0, 1000).usual(40, 110)};
constexpr puteal_example daysExamples[] = {
    example("rating_days(26000 gal/cartridge, 4 person, 62.5 gal/(day*person))", "104 day/cartridge", 1e-12,
            "common practice", "practice"),
    example("rating_days(10000 gal/cartridge, 2 person, 50 gal/(day*person))", "100 day/cartridge", 1e-12,
            "computed", "definition"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("rating_days(26000 gal/cartridge, 4 person, 0 gal/(day*person))",
            "nobody uses water, so the rating never runs out"),
};

constexpr puteal_parameter massTakes[] = {
    rating, Parameter("rated_iron", "mg/L as Fe", "iron the label's rating was made at")
                .hard(0.01, 100)
                .usual(0.3, 5)};
constexpr const char *massSources[] = {"hb44", "definition", nullptr};
constexpr puteal_example massExamples[] = {
    example("rating_iron_capacity(26000 gal/cartridge, 1 mg/L as Fe)", "98.4207 g/cartridge as Fe", 1e-6,
            "computed", "hb44"),
    example("rating_iron_capacity(100000 gal/cartridge, 3 mg/L as Fe)", "1135.62 g/cartridge as Fe", 1e-5,
            "computed", "definition"),
};
constexpr puteal_example massRefusals[] = {
    refusal("rating_iron_capacity(26000 gal/cartridge, 0 mg/L as Fe)",
            "`rated_iron` must be at least 0.01 mg/L as Fe; it is 0 mg/L as Fe"),
};

constexpr puteal_parameter changeTakes[] = {
    Parameter("first_volume", "'u", "meter at the first reading, or mass held by then"),
    Parameter("first_loss", "psi", "pressure loss then").hard(0.01, 150).usual(0.5, 15),
    Parameter("second_volume", "'u", "meter at the second reading"),
    Parameter("second_loss", "psi", "pressure loss then").hard(0.01, 150).usual(0.5, 20),
    Parameter("limit", "psi", "pressure loss at which it is changed")
        .hard(0.01, 150)
        .usual(5, 25)
        .otherwise(10, "T"),
};
constexpr const char *changeSources[] = {"definition", "practice", nullptr};
constexpr puteal_example changeExamples[] = {
    example("cartridge_change_at(5000 gal, 2 psi, 12000 gal, 4 psi)", "21253.5 gal", 1e-5, "computed",
            "definition"),
    example("cartridge_change_at(0 g, 1 psi, 100 g, 15 psi)", "85.0274 g", 1e-5, "computed", "definition"),
};
constexpr puteal_example changeRefusals[] = {
    refusal("cartridge_change_at(5000 gal, 4 psi, 12000 gal, 4 psi)",
            "the pressure loss has not risen: read again later"),
    refusal("cartridge_change_at(12000 gal, 2 psi, 5000 gal, 4 psi)",
            "the second reading must be later than the first"),
};
constexpr puteal_caution changeCautions[] = {caution("due", "the limit is at or before the second reading")};
constexpr const char housingSafety[] =
    "Take the pressure off before opening a housing, and stay below its rating.";

} // namespace

constinit const puteal_function solidsLoadRow =
    Function("bed_iron_load", "Load of a bed between washes",
             "Iron that a square foot of bed holds from one wash to the next.", call<solidsLoad>)
        .takes(loadTakes)
        .gives("grain/ft^2 as Fe", "load of the bed")
        .by("iron * volume / area")
        .from(loadSources)
        .shownBy(loadExamples)
        .refusing(loadRefusals);

constinit const puteal_function impliedUseRow =
    Function("rating_use_per_person", "Use a rating implies",
             "Use of one person that a label takes for granted; 40 to 110 gal a day is ordinary.",
             call<impliedUse>)
        .takes(useTakes)
        .gives("gal/(day*person)", "use of one person a day")
        .by("rating / (people * time)")
        .from(impliedSources)
        .shownBy(useExamples)
        .refusing(useRefusals)
        .warning(useCautions);

constinit const puteal_function impliedDaysRow =
    Function("rating_days", "Days a rating implies", "Days in which a household uses the gallons on a label.",
             call<impliedDays>)
        .takes(daysTakes)
        .gives("day/cartridge", "days until the gallons are used")
        .by("rating / (people * use)")
        .from(impliedSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals);

constinit const puteal_function impliedCapacityRow =
    Function("rating_iron_capacity", "Iron a rating implies",
             "Iron a cartridge holds if the gallons on its label are true at the iron they were made at. "
             "Without the conditions of the test a rating is unverified.",
             call<impliedCapacity>)
        .takes(massTakes)
        .gives("g/cartridge as Fe", "iron held")
        .by("rating * rated_iron")
        .from(massSources)
        .shownBy(massExamples)
        .refusing(massRefusals);

constinit const puteal_function changeAtRow =
    Function("cartridge_change_at", "When a cartridge is due",
             "Meter reading, or mass held, at which the pressure loss reaches its limit, from two gauge "
             "readings at one flow.",
             call<changeAt>)
        .takes(changeTakes)
        .gives("'u", "reading at the limit")
        .by("first_volume + ln(limit / first_loss) / (ln(second_loss / first_loss) / (second_volume - "
            "first_volume))")
        .from(changeSources)
        .shownBy(changeExamples)
        .refusing(changeRefusals)
        .warning(changeCautions)
        .safely(housingSafety);

} // namespace filtration
