/// Published figures as they stand: use of one person, use by bedrooms, flows and washes to plan for. (R1)
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

constexpr const char *personWords[] = {
    "own well",     "public supply",           "lowest state", "highest state", "indoors five cities",
    "indoors 2016", "indoors saving fixtures", "planning low", "planning high", "quotes",
    nullptr};
// gal a person and day
constexpr double personUse[] = {
    76.7, // 3,260 Mgal/d for 42.5 million people, gardens with it [USGS Circular 1441]
    82.3, // 23,300 Mgal/d for 283 million people, gardens with it [USGS Circular 1441]
    35,   // public supply of Connecticut, 2015 [summary of USGS Circular 1441]
    184,  // public supply of Idaho, 2015 [summary of USGS Circular 1441]
    74,   // 0.28 m^3 [National Academies, record 6287, p. 56]
    58.6, // 138 gal/day a household [recalled; 33.1 / 0.24 agrees]
    45.2, // [Vickers, as quoted by Beckley Water]
    50,   // [Penn State Extension; Missouri Extension G1801]
    100,  // [Penn State Extension; Missouri Extension G1801]
    60,   // [common practice, no source]
};

double usePerPerson(int figure)
{
    return personUse[figure];
}

constexpr const char *bedroomWords[] = {"New York planning", "New Hampshire design flow", nullptr};
// gal a bedroom and day [New York Fact Sheet 2; N.H. Env-Ws 372.10 table 372-1]
constexpr double bedroomUse[] = {110, 150};

double useByBedrooms(double bedrooms, int rule)
{
    return bedrooms * bedroomUse[rule];
}

constexpr const char *flowWords[] = {"two fixtures at once", "least for a home", "washing a filter", nullptr};
// gpm [New York Fact Sheet 2; Nebraska Acreage Owners Guide; Missouri Extension G1801]
constexpr double flows[] = {5, 10, 10};

double recommendedFlow(int basis)
{
    return flows[basis];
}

constexpr const char *deviceWords[] = {"softener", "backwashing filter", nullptr};
constexpr const char *endWords[] = {"low", "high", nullptr};
// gal an event, low and high [Penn State Extension and Missouri G1801; Missouri G1801]
constexpr double washes[][2] = {{50, 100}, {100, 200}};

double washWater(int device, int end)
{
    return washes[device][end];
}

constexpr puteal_parameter personTakes[] = {
    Parameter("figure", "",
              "whose figure; those not called indoors take gardens in; states are the ends of public supply")
        .oneOf(personWords),
};
constexpr const char *personSources[] = {"usgs_circular_1441", "usgs_summary", "national_academies",
                                         "beckley_water",      "penn_state",   "missouri_g1801",
                                         "recalled",           "practice",     nullptr};
constexpr puteal_example personExamples[] = {
    example("use_per_person(\"own well\") * 42.5e6 person", "3260e6 gal/day", 3e-4, "published",
            "usgs_circular_1441"),
    example("use_per_person(\"public supply\") * 283e6 person", "23300e6 gal/day", 1e-3, "published",
            "usgs_circular_1441"),
    example("use_per_person(\"lowest state\")", "35 gal/(day*person)", 1e-12, "published", "usgs_summary"),
    example("use_per_person(\"highest state\")", "184 gal/(day*person)", 1e-12, "published", "usgs_summary"),
    example("use_per_person(\"indoors five cities\") * 1 day * 1 person", "0.28 m^3", 1e-3, "published",
            "national_academies"),
    example("use_per_person(\"indoors saving fixtures\")", "45.2 gal/(day*person)", 1e-12, "published",
            "beckley_water"),
    example("use_per_person(\"planning low\")", "50 gal/(day*person)", 1e-12, "published", "penn_state"),
    example("use_per_person(\"planning high\")", "100 gal/(day*person)", 1e-12, "published",
            "missouri_g1801"),
    example("use_per_person(\"quotes\")", "60 gal/(day*person)", 1e-12, "common practice", "practice"),
    example("use_per_person(\"indoors 2016\")", "58.6 gal/(day*person)", 1e-12, "memory", "recalled"),
};
constexpr puteal_example personRefusals[] = {
    refusal(
        "use_per_person(\"usual\")",
        "\"usual\" is not in the list: own well, public supply, lowest state, highest state, indoors five "
        "cities, indoors 2016, indoors saving fixtures, planning low, planning high, quotes"),
};

constexpr puteal_parameter bedroomTakes[] = {
    Parameter("bedrooms", "each", "bedrooms of the house").hard(1, 50).usual(1, 6),
    Parameter("rule", "", "whose rule; the second also holds for holiday homes")
        .oneOf(bedroomWords)
        .otherwise(0, "S"),
};
constexpr const char *bedroomSources[] = {"ny_fact_sheet", "nh_372", nullptr};
constexpr puteal_example bedroomExamples[] = {
    example("use_by_bedrooms(1 each)", "110 gal/day", 1e-12, "published", "ny_fact_sheet"),
    example("use_by_bedrooms(1 each, \"New Hampshire design flow\")", "150 gal/day", 1e-12, "published",
            "nh_372"),
    example("use_by_bedrooms(3 each)", "330 gal/day", 1e-12, "computed", "ny_fact_sheet"),
    example("use_by_bedrooms(4 each, \"New Hampshire design flow\")", "600 gal/day", 1e-12, "computed",
            "nh_372"),
};
constexpr puteal_example bedroomRefusals[] = {
    refusal("use_by_bedrooms(0 each)", "`bedrooms` must be at least 1 each; it is 0 each"),
};

constexpr puteal_parameter flowTakes[] = {
    Parameter("basis", "", "what the flow is for").oneOf(flowWords),
};
constexpr const char *flowSources[] = {"ny_fact_sheet", "nebraska_acreage", "missouri_g1801", nullptr};
constexpr puteal_example flowExamples[] = {
    example("recommended_flow(\"two fixtures at once\")", "5 gpm", 1e-12, "published", "ny_fact_sheet"),
    example("recommended_flow(\"least for a home\")", "10 gpm", 1e-12, "published", "nebraska_acreage"),
    example("recommended_flow(\"washing a filter\")", "10 gpm", 1e-12, "published", "missouri_g1801"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("recommended_flow(\"garden\")", "\"garden\" is not in the list: two fixtures at once, least "
                                            "for a home, washing a filter"),
};

constexpr puteal_parameter washTakes[] = {
    Parameter("device", "", "what is washed or regenerated").oneOf(deviceWords),
    Parameter("end", "", "which end of the published range").oneOf(endWords).otherwise(1, "A"),
};
constexpr const char *washSources[] = {"penn_state", "missouri_g1801", nullptr};
constexpr puteal_example washExamples[] = {
    example("wash_water(\"softener\", \"low\")", "50 gal/event", 1e-12, "published", "penn_state"),
    example("wash_water(\"softener\")", "100 gal/event", 1e-12, "published", "penn_state"),
    example("wash_water(\"backwashing filter\", \"low\")", "100 gal/event", 1e-12, "published",
            "missouri_g1801"),
    example("wash_water(\"backwashing filter\")", "200 gal/event", 1e-12, "published", "missouri_g1801"),
};
constexpr puteal_example washRefusals[] = {
    refusal("wash_water(\"cartridge\")", "\"cartridge\" is not in the list: softener, backwashing filter"),
};

} // namespace

constinit const puteal_function usePerPersonRow =
    Function(
        "use_per_person", "Use of one person",
        "Published figures for the water one person uses in a day. They differ more than twofold: meter the "
        "house where it matters.",
        call<usePerPerson>)
        .takes(personTakes)
        .gives("gal/(day*person)", "use of one person a day")
        .by("the figure as published")
        .from(personSources)
        .shownBy(personExamples)
        .refusing(personRefusals);

constinit const puteal_function useByBedroomsRow =
    Function("use_by_bedrooms", "Use by bedrooms",
             "Water a day to plan for by the bedrooms of a house, as health departments count.",
             call<useByBedrooms>)
        .takes(bedroomTakes)
        .gives("gal/day", "use per day")
        .by("bedrooms * 110 or 150 gal/day")
        .from(bedroomSources)
        .shownBy(bedroomExamples)
        .refusing(bedroomRefusals)
        .safely(
            "Septic systems and wells are laid out by the rule in force where the house stands; the health "
            "office says which.");

constinit const puteal_function recommendedFlowRow =
    Function(
        "recommended_flow", "Recommended flow",
        "Published least flows: two fixtures of 2.5 gpm running at once, a home, a filter that is washed.",
        call<recommendedFlow>)
        .takes(flowTakes)
        .gives("gpm", "flow the source recommends")
        .by("the figure as published")
        .from(flowSources)
        .shownBy(flowExamples)
        .refusing(flowRefusals);

constinit const puteal_function washWaterRow =
    Function("wash_water", "Water of a wash by rule of thumb",
             "Published range for the water one wash or regeneration takes, while the device is not chosen "
             "yet; then backwash_gallons or regeneration_water.",
             call<washWater>)
        .takes(washTakes)
        .gives("gal/event", "water of one wash")
        .by("the figure as published: softener 50 to 100, filter 100 to 200 gal")
        .from(washSources)
        .shownBy(washExamples)
        .refusing(washRefusals);

} // namespace household
