/// Solids a bed holds on a stated basis, and which of three clocks decides its wash. (R2, R7)
#include "filtration.h"
#include "solids.h"

namespace filtration
{

using namespace puteal::sdk;

namespace
{

double bedSolids(int basis, double iron, double volume, double area, double manganese, double sulfide,
                 double sediment, Reply &reply)
{
    const double solids = solidsOf(basis, iron, manganese, sulfide, sediment);
    reply.reason(figures(solids) + " mg/L counted as " + basisWords[basis]);
    if (basis != asSolids && lessThan(0, manganese + sulfide + sediment))
        reply.caution("left_out", "manganese, sulfide and sediment are not in this basis: take all solids");
    return solids * volume * measure::literPerGallon / measure::mgPerGrain / area;
}

double washInterval(const Argument &load, const Argument &loss, const Argument &habit, Reply &reply)
{
    const Argument *clocks[] = {&habit, &load, &loss};
    constexpr const char *names[] = {"habit", "load of solids", "pressure loss"};
    std::size_t first = 0;
    std::string words;
    for (std::size_t i = 0; i < 3; ++i) {
        if (clocks[i]->missing())
            continue;
        words += (words.empty() ? "" : ", ") + std::string(names[i]) + " " + figures(clocks[i]->number()) +
                 " day/event";
        if (lessThan(clocks[i]->number(), clocks[first]->number()))
            first = i;
    }
    reply.reason(std::string(names[first]) + " decides: " + words);
    if (load.missing() && loss.missing())
        reply.caution("habit_only", "habit alone decides: work out the load, or read the gauges after a run");
    const double days = clocks[first]->number();
    return lessThan(days, 1) ? days : std::floor(days * (1.0 + 1e-12)); // a clock counts whole days
}

constexpr puteal_parameter solidsTakes[] = {
    Parameter("basis", "", "what is counted: iron, dry ferric hydroxide, or all dry solids")
        .oneOf(basisWords, basisSubstances),
    Parameter("iron", "mg/L as Fe", "iron that stays in the bed").hard(0, 1000).usual(0, 30),
    Parameter("volume", "gal", "water between two washes").hard(0, 1e6).usual(100, 5000),
    Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20),
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
};
constexpr const char *solidsSources[] = {"iupac2021", "hb44", nullptr};
constexpr puteal_example solidsExamples[] = {
    example("bed_solids_load(\"iron\", 3 mg/L as Fe, 900 gal, bed_area(10 in))", "289.189 grain/ft^2 as Fe",
            1e-5, "computed", "hb44"),
    // 19.559 g of dry floc on 0.5454 ft^2
    example("bed_solids_load(\"iron floc\", 3 mg/L as Fe, 900 gal, bed_area(10 in)) * bed_area(10 in)",
            "19.559 g as FeOH3", 1e-4, "computed", "iupac2021"),
    example("bed_solids_load(\"iron\", 5 mg/L as Fe, 1200 gal, bed_area(12 in))", "446.279 grain/ft^2 as Fe",
            1e-5, "computed", "hb44"),
};
constexpr puteal_example solidsRefusals[] = {
    refusal("bed_solids_load(\"iron\", 3 mg/L as Fe, 900 gal, 0 ft^2)",
            "`area` must be at least 0.01 ft^2; it is 0 ft^2")};
constexpr puteal_caution solidsCautions[] = {
    caution("left_out", "manganese, sulfide or sediment given on a basis that leaves them out")};

constexpr puteal_parameter washTakes[] = {
    Parameter("by_load", "day/event", "days until the bed holds its load, see backwash_interval")
        .hard(0.01, 3650)
        .usual(0.5, 60)
        .mayBeMissing(),
    Parameter("by_loss", "day/event",
              "days until the pressure loss is reached, see filter_run_by_pressure_loss")
        .hard(0.01, 3650)
        .usual(0.5, 60)
        .mayBeMissing(),
    Parameter("by_habit", "day/event",
              "longest run by habit; 1 to 3 days with sulfide, bacteria or an air head")
        .hard(0.1, 365)
        .usual(1, 7)
        .otherwise(3, "T"),
};
constexpr const char *washSources[] = {"practice", "definition", nullptr};
constexpr puteal_example washExamples[] = {
    example("shortest_backwash_interval(5.18692 day/event, 6 day/event)", "3 day/event", 0, "common practice",
            "practice"),
    example("shortest_backwash_interval(5.18692 day/event, 6 day/event, 14 day/event)", "5 day/event", 0,
            "computed", "definition"),
    example("shortest_backwash_interval(5.18692 day/event, 2.7 day/event)", "2 day/event", 0, "computed",
            "definition"),
    // line 1 is blank: neither load nor pressure loss is known
    example("d: , 9 day/event; shortest_backwash_interval(d[1], d[1])", "3 day/event", 0, "common practice",
            "practice"),
};
constexpr puteal_example washRefusals[] = {
    refusal("shortest_backwash_interval(0 day/event, 6 day/event)",
            "`by_load` must be at least 0.01 day/event; it is 0 day/event")};
constexpr puteal_caution washCautions[] = {caution("habit_only", "neither load nor pressure loss is known")};

} // namespace

constinit const puteal_function bedSolidsRow =
    Function("bed_solids_load", "Solids of a bed between washes",
             "Solids that a square foot of bed holds from one wash to the next, on a stated basis. "
             "bed_iron_load counts "
             "iron only; texts give limits of 500 to 1,200 grain/ft^2 as iron (common practice).",
             call<bedSolids>)
        .takes(solidsTakes)
        .gives("grain/ft^2 as 'basis", "solids of the bed, with what was counted")
        .by("solids * volume / area; solids: iron; 1.9136 * iron; or 1.9136 * iron + 1.5824 * manganese + "
            "0.9408 * "
            "sulfide + sediment")
        .from(solidsSources)
        .shownBy(solidsExamples)
        .refusing(solidsRefusals)
        .warning(solidsCautions);

constinit const puteal_function washIntervalRow =
    Function("shortest_backwash_interval", "Days between washes, by the clock that decides",
             "Whole days between washes: the shortest of load, pressure loss and habit, with which of them "
             "decides.",
             call<washInterval>)
        .takes(washTakes)
        .gives("day/event", "days between washes, whole and rounded down")
        .by("least of those known, rounded down to whole days; below one day not rounded")
        .from(washSources)
        .shownBy(washExamples)
        .refusing(washRefusals)
        .warning(washCautions)
        .safely(pressureSafety);

} // namespace filtration
