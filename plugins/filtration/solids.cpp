/// Solids a cartridge takes up on a stated basis, its area, its loading and what its water costs. (R3, R7)
#include "solids.h"
#include "filtration.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

constexpr double mgPerGram = 1000.0;
double daysBySolids(int basis, double holds, double iron, double use, double manganese, double sulfide,
                    double sediment, double longest, Reply &reply)
{
    const double solids = solidsOf(basis, iron, manganese, sulfide, sediment);
    const double perDay = solids * use * measure::literPerGallon / mgPerGram;
    reply.reason(figures(solids) + " mg/L counted as " + basisWords[basis]);
    if (basis != asSolids && lessThan(0, manganese + sulfide + sediment))
        reply.caution("left_out", "manganese, sulfide and sediment are not in this basis: take all solids");
    if (atMost(longest * perDay, holds)) {
        reply.caution("calendar", "the calendar decides: an old cartridge grows bacteria");
        return longest;
    }
    const double days = holds / perDay;
    if (lessThan(days, 30)) // a month is the least a family will keep up with [common practice, no source]
        reply.caution("often", "a change more often than once a month is seldom kept up");
    return days;
}

double cartridgeArea(double diameter, double length)
{
    return measure::pi * diameter * length / (measure::inchPerFoot * measure::inchPerFoot);
}

double cartridgeLoading(double flow, double diameter, double length, double count, Reply &reply)
{
    // 5 gpm through 2.5 in by 9.75 in is what a slim cartridge is used at, at most [common practice, no
    // source]
    const double most = 5.0 / cartridgeArea(2.5, 9.75),
                 loading = flow / (cartridgeArea(diameter, length) * count);
    if (lessThan(most, loading))
        reply.caution("high",
                      "more than 5 gpm for each slim 10 in cartridge: a larger one, or several side by side");
    return loading;
}

double costPerVolume(double price, double gallons)
{
    constexpr double gallonPerKilogallon = 1000.0;
    return price * gallonPerKilogallon / gallons;
}

constexpr puteal_parameter solidsTakes[] = {
    Parameter("basis", "", "what the stated capacity counts: iron, dry ferric hydroxide, or all dry solids")
        .oneOf(basisWords, basisSubstances),
    Parameter("holds", "g/cartridge as 'basis", "what a cartridge holds before its pressure loss ends it")
        .hard(0.1, 100000)
        .usual(20, 1000),
    Parameter("iron", "mg/L as Fe", "iron that stays in the cartridge").hard(0, 1000).usual(0, 10),
    Parameter("use", "gal/day", "water through the cartridge").hard(0, 100000).usual(20, 1000),
    Parameter("manganese", "mg/L as Mn", "manganese that stays as oxide")
        .hard(0, 100)
        .usual(0, 5)
        .otherwise(0, "A"),
    Parameter("sulfide", "mg/L as H2S", "hydrogen sulfide that stays as sulfur")
        .hard(0, 100)
        .usual(0, 10)
        .otherwise(0, "A"),
    Parameter("sediment", "mg/L as solids", "sand, silt and other solids of the water")
        .hard(0, 10000)
        .usual(0, 50)
        .otherwise(0, "A"),
    Parameter("longest", "day/cartridge", "longest time a cartridge may stay in")
        .hard(1, 3650)
        .usual(90, 365)
        .otherwise(365, "T"),
};
constexpr const char *solidsSources[] = {"iupac2021", "hb44", "practice", nullptr};
constexpr puteal_example solidsExamples[] = {
    example("cartridge_days_by_solids(\"iron floc\", 50 g/cartridge as FeOH3, 0.5 mg/L as Fe, 240 gal/day)",
            "57.52 day/cartridge", 1e-4, "computed", "iupac2021"),
    example("cartridge_days_by_solids(\"iron\", 50 g/cartridge as Fe, 0.5 mg/L as Fe, 240 gal/day)",
            "110.07 day/cartridge", 1e-4, "computed", "hb44"),
    example("cartridge_days_by_solids(\"iron floc\", 150 g/cartridge as FeOH3, 2 mg/L as Fe, 250 gal/day)",
            "41.41 day/cartridge", 2e-4, "computed", "iupac2021"),
    example("cartridge_days_by_solids(\"iron floc\", 100 g/cartridge as FeOH3, 2.4 mg/L as Fe, 240 gal/day)",
            "23.967 day/cartridge", 1e-4, "computed", "iupac2021"),
    // 1.91362 * 2.4 + 1.58244 * 0.12 = 4.78258 mg/L of dry solids
    example("cartridge_days_by_solids(\"all solids\", 100 g/cartridge as solids, 2.4 mg/L as Fe, 240 "
            "gal/day, 0.12 "
            "mg/L as Mn)",
            "23.0155 day/cartridge", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example solidsRefusals[] = {
    refusal("cartridge_days_by_solids(\"iron\", 0 g/cartridge as Fe, 0.5 mg/L as Fe, 240 gal/day)",
            "`holds` must be at least 0.1 g/cartridge; it is 0 g/cartridge"),
};
constexpr puteal_caution solidsCautions[] = {
    caution("left_out", "manganese, sulfide or sediment given on a basis that leaves them out"),
    caution("calendar", "the longest time is shorter than what the cartridge would hold"),
    caution("often", "less than 30 days"),
};

constexpr Parameter diameter =
    Parameter("diameter", "in", "outside diameter of the cartridge").hard(0.5, 24).usual(2.5, 4.5);
constexpr Parameter length = Parameter("length", "in", "length of the cartridge").hard(1, 80).usual(9, 40);
constexpr puteal_parameter areaTakes[] = {diameter, length};
constexpr const char *areaSources[] = {"hb44", "practice", nullptr};
constexpr puteal_example areaExamples[] = {
    example("cartridge_area(2.5 in, 9.75 in)", "0.532 ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_area(2.5 in, 20 in)", "1.091 ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_area(4.5 in, 9.75 in)", "0.957 ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_area(4.5 in, 20 in)", "1.963 ft^2", 1e-3, "computed", "hb44"),
};
constexpr puteal_example areaRefusals[] = {
    refusal("cartridge_area(0 in, 20 in)", "`diameter` must be at least 0.5 in; it is 0 in")};

constexpr puteal_parameter loadingTakes[] = {
    Parameter("flow", "gpm", "flow through the cartridges").hard(0, 1000).usual(0.5, 20), diameter, length,
    Parameter("count", "", "cartridges side by side").hard(1, 100).usual(1, 4).otherwise(1, "A")};
constexpr puteal_example loadingExamples[] = {
    example("cartridge_loading(5 gpm, 2.5 in, 9.75 in)", "9.4 gpm/ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_loading(5 gpm, 2.5 in, 20 in)", "4.58 gpm/ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_loading(5 gpm, 4.5 in, 9.75 in)", "5.22 gpm/ft^2", 1e-3, "computed", "hb44"),
    example("cartridge_loading(5 gpm, 4.5 in, 20 in)", "2.55 gpm/ft^2", 2e-3, "computed", "hb44"),
};
constexpr puteal_example loadingRefusals[] = {
    refusal("cartridge_loading(5 gpm, 2.5 in, 9.75 in, 0)", "`count` must be at least 1; it is 0")};
constexpr puteal_caution loadingCautions[] = {caution("high", "more than 9.4 gpm/ft^2")};

constexpr puteal_parameter costTakes[] = {
    Parameter("price", "$/cartridge", "price of a cartridge").hard(0, 1e6).usual(1, 500),
    Parameter("gallons", "gal/cartridge", "water it treats in this house, not the label's")
        .hard(1, 1e7)
        .usual(500, 100000),
};
constexpr const char *costSources[] = {"definition", nullptr};
constexpr puteal_example costExamples[] = {
    example("cartridge_cost_per_volume($45/cartridge, 26000 gal/cartridge)", "$1.730769/kgal", 1e-6,
            "computed", "definition"),
    example("cartridge_cost_per_volume($18/cartridge, 10000 gal/cartridge)", "$1.80/kgal", 1e-12, "computed",
            "definition"),
    example("cartridge_cost_per_volume($65/cartridge, 50000 gal/cartridge)", "$1.30/kgal", 1e-12, "computed",
            "definition"),
};
constexpr puteal_example costRefusals[] = {
    refusal("cartridge_cost_per_volume($45/cartridge, 0 gal/cartridge)",
            "`gallons` must be at least 1 gal/cartridge; it is 0 gal/cartridge")};
constexpr const char housingSafety[] =
    "Take the pressure off before opening a housing. Dissolved iron passes a sediment "
    "cartridge: know the form first.";

} // namespace

constinit const puteal_function cartridgeDaysBySolidsRow =
    Function("cartridge_days_by_solids", "Cartridge days by solids",
             "Days until a cartridge holds its mass of solids. The same grams last twice as long counted as "
             "iron as "
             "counted as dry floc: the basis of the capacity must be said.",
             call<daysBySolids>)
        .takes(solidsTakes)
        .gives("day/cartridge", "days a cartridge lasts, with the solids counted")
        .by("least of holds / (solids * use) and longest; solids: iron; 1.9136 * iron; or 1.9136 * iron + "
            "1.5824 * "
            "manganese + 0.9408 * sulfide + sediment")
        .from(solidsSources)
        .shownBy(solidsExamples)
        .refusing(solidsRefusals)
        .warning(solidsCautions)
        .safely(housingSafety);

constinit const puteal_function cartridgeAreaRow =
    Function("cartridge_area", "Area of a cartridge", "Outside area of a round cartridge.",
             call<cartridgeArea>)
        .takes(areaTakes)
        .gives("ft^2", "outside area")
        .by("pi * diameter * length")
        .from(areaSources)
        .shownBy(areaExamples)
        .refusing(areaRefusals);

constinit const puteal_function cartridgeLoadingRow =
    Function("cartridge_loading", "Flow over a cartridge's area",
             "Flow over the outside area of cartridges side by side. Real ratings depend on micron, make and "
             "port.",
             call<cartridgeLoading>)
        .takes(loadingTakes)
        .gives("gpm/ft^2", "flow over the area")
        .by("flow / (count * pi * diameter * length)")
        .from(areaSources)
        .shownBy(loadingExamples)
        .refusing(loadingRefusals)
        .warning(loadingCautions);

constinit const puteal_function cartridgeCostRow =
    Function("cartridge_cost_per_volume", "Cost of cartridges for the water",
             "What cartridges cost for a thousand gallons.", call<costPerVolume>)
        .takes(costTakes)
        .gives("$/kgal", "cost of a thousand gallons")
        .by("price / gallons")
        .from(costSources)
        .shownBy(costExamples)
        .refusing(costRefusals);

} // namespace filtration
