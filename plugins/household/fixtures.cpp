/// Peak flow of a house from its bathrooms, or from fixture units by plumbing code. (R3, R4)
#include "household.h"

#include <algorithm>

namespace household
{

using namespace puteal::sdk;

namespace
{

struct Step {
    double bathrooms, gallons, flow; ///< up to so many bathrooms
};
// The seven-minute table [recalled, not confirmed; the seven minutes are published in National Driller].
constexpr Step steps[] = {{1, 45, 7}, {1.5, 75, 10}, {2.5, 98, 14}, {4, 122, 17}};

const Step &stepFor(double bathrooms)
{
    const Step *step = steps;
    while (step != std::end(steps) - 1 && lessThan(step->bathrooms, bathrooms))
        ++step;
    return *step;
}

double peakByBathrooms(double bathrooms, Reply &reply)
{
    reply.caution("recalled", recalledRows);
    return stepFor(bathrooms).flow;
}

double peakVolume(double bathrooms, Reply &reply)
{
    reply.caution("recalled", recalledRows);
    return stepFor(bathrooms).gallons;
}

constexpr const char *fixtureWords[] = {"bathroom group with tank",
                                        "bathroom group with valve",
                                        "bathtub",
                                        "bidet",
                                        "combination fixture",
                                        "dishwasher",
                                        "kitchen sink",
                                        "laundry tray",
                                        "lavatory",
                                        "shower",
                                        "washing machine",
                                        "toilet with tank",
                                        "toilet with valve",
                                        nullptr};
// Private use, hot and cold together [2018 International Plumbing Code, table E103.3(2); the last four
// recalled].
constexpr double fixtureLoads[] = {3.6, 8.0, 1.4, 2.0, 3.0, 1.4, 1.4, 1.4, 0.7, 1.4, 1.4, 2.2, 6.0};

constexpr int firstRecalled = 9; // shower

double fixtureUnits(int fixture, Reply &reply)
{
    if (fixture >= firstRecalled)
        reply.caution("recalled", recalledRows);
    return fixtureLoads[fixture];
}

struct Point {
    double units, tank, valve; ///< fixture units, gpm with flush tanks and with flush valves
};
constexpr double none = -1; // the table begins higher in this column
// Table B.5.4 of the National Standard Plumbing Code; rows 20 to 100 stand between its printed rows
// [recalled].
constexpr Point national[] = {
    {3, 3, none},   {4, 4, none},   {5, 4.5, 22},    {6, 5, 23},      {7, 6, 24},      {8, 7, 25},
    {9, 7.5, 26},   {10, 8, 27},    {11, 8.5, 28},   {12, 9, 29},     {13, 10, 29.5},  {14, 10.5, 30},
    {20, 14, 35},   {30, 20, 42},   {40, 25, 46},    {60, 32, 54},    {80, 38, 61.2},  {100, 43.5, 67.5},
    {120, 49, 74},  {140, 53, 78},  {160, 57, 83},   {180, 61, 87},   {200, 65, 91},   {225, 70, 95},
    {250, 75, 100}, {300, 85, 110}, {400, 105, 125}, {500, 125, 140}, {750, 170, 175}, {1000, 210, 210}};
constexpr double printedTo = 14, printedFrom = 120;
// Table E103.3(3) of the International Plumbing Code [recalled, not confirmed].
constexpr Point international[] = {{1, 3, none},   {2, 5, none},     {3, 6.5, none},  {4, 8, none},
                                   {5, 9.4, 15},   {6, 10.7, 17.4},  {8, 12.8, 22.2}, {10, 14.6, 27},
                                   {15, 17.5, 31}, {20, 19.6, 35},   {30, 23.3, 42},  {40, 26.3, 46},
                                   {50, 29.1, 50}, {100, 43.5, 67.5}};

constexpr const char *codeWords[] = {"National Standard Plumbing Code", "International Plumbing Code",
                                     nullptr};
enum Code : int { nationalCode, internationalCode };
constexpr const char *flushWords[] = {"tanks", "valves", nullptr};
enum Flush : int { tanks, valves };

template<std::size_t N>
double between(const Point (&table)[N], double units, double Point::*column, Reply &reply)
{
    const Point *first =
        std::find_if(std::begin(table), std::end(table), [&](const Point &p) { return p.*column >= 0; });
    const Point *last = std::end(table) - 1;
    if (lessThan(units, first->units))
        return reply.refuse(1, "the table begins at " + figures(first->units) +
                                   " fixture units: add the flows of the fixtures instead");
    if (lessThan(last->units, units))
        return reply.refuse(1, "the table ends at " + figures(last->units, 4) +
                                   " fixture units: a public building is for an engineer");
    const Point *above = first + 1;
    while (above != last && above->units < units)
        ++above;
    const Point &low = above[-1], &high = *above;
    return low.*column + (units - low.units) / (high.units - low.units) * (high.*column - low.*column);
}

double peakByUnits(double units, int code, int flush, Reply &reply)
{
    const auto column = flush == valves ? &Point::valve : &Point::tank;
    if (code == internationalCode) {
        reply.caution("recalled", "the rows of this code are recalled: check them against the code in force");
        return between(international, units, column, reply);
    }
    if (lessThan(printedTo, units) && lessThan(units, printedFrom))
        reply.caution(
            "recalled",
            "between 14 and 120 fixture units the rows are recalled: check them against the code in force");
    return between(national, units, column, reply);
}

constexpr puteal_parameter bathTakes[] = {
    Parameter("bathrooms", "each", "bathrooms, halves allowed; beyond four count fixture units")
        .hard(1, 4)
        .usual(1, 4),
};
constexpr const char *bathSources[] = {"seven_minutes", "national_driller", nullptr};
constexpr puteal_example bathExamples[] = {
    example("peak_flow_by_bathrooms(1 each)", "7 gpm", 1e-12, "memory", "seven_minutes"),
    example("peak_flow_by_bathrooms(2 each)", "14 gpm", 1e-12, "memory", "seven_minutes"),
};
constexpr puteal_caution bathCautions[] = {caution("recalled", "always: the rows are recalled")};
constexpr puteal_example bathRefusals[] = {
    refusal("peak_flow_by_bathrooms(5 each)", "`bathrooms` must be at most 4 each; it is 5 each")};
constexpr puteal_example volumeExamples[] = {
    example("peak_volume_by_bathrooms(1.5 each)", "75 gal", 1e-12, "memory", "seven_minutes"),
    example("peak_volume_by_bathrooms(3 each)", "122 gal", 1e-12, "memory", "seven_minutes"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("peak_volume_by_bathrooms(0 each)", "`bathrooms` must be at least 1 each; it is 0 each")};

constexpr puteal_parameter fixtureTakes[] = {
    Parameter("fixture", "", "fixture of a private house").oneOf(fixtureWords)};
constexpr const char *fixtureSources[] = {"ipc_2018", "recalled", nullptr};
constexpr puteal_example fixtureExamples[] = {
    example("fixture_units(\"bathroom group with tank\")", "3.6", 1e-12, "published", "ipc_2018"),
    example("fixture_units(\"kitchen sink\")", "1.4", 1e-12, "published", "ipc_2018"),
    example("fixture_units(\"dishwasher\")", "1.4", 1e-12, "published", "ipc_2018"),
    example("fixture_units(\"lavatory\")", "0.7", 1e-12, "published", "ipc_2018"),
    example("fixture_units(\"washing machine\")", "1.4", 1e-12, "memory", "recalled"),
};
constexpr puteal_example fixtureRefusals[] = {
    refusal("fixture_units(\"fountain\")", "\"fountain\" is not in the list: bathroom group with tank, "
                                           "bathroom group with valve, bathtub, bidet, combination "
                                           "fixture, dishwasher, kitchen sink, laundry tray, lavatory, "
                                           "shower, washing machine, toilet with tank, toilet with valve"),
};

constexpr puteal_caution fixtureCautions[] = {
    caution("recalled", "shower, washing machine, toilet with tank or valve")};

constexpr puteal_parameter unitTakes[] = {
    Parameter("units", "", "fixture units together, see fixture_units").hard(0, 1000).usual(3, 300),
    Parameter("code", "", "whose table; the two differ by half and more below 20 units")
        .oneOf(codeWords)
        .otherwise(nationalCode, "S"),
    Parameter("flush", "", "what the toilets flush with").oneOf(flushWords).otherwise(tanks, "T"),
};
constexpr const char *unitSources[] = {"nspc_b54", "recalled", "definition", nullptr};
constexpr puteal_example unitExamples[] = {
    example("peak_flow_by_fixture_units(10)", "8 gpm", 1e-12, "published", "nspc_b54"),
    example("peak_flow_by_fixture_units(5)", "4.5 gpm", 1e-12, "published", "nspc_b54"),
    example("peak_flow_by_fixture_units(120)", "49 gpm", 1e-12, "published", "nspc_b54"),
    example("peak_flow_by_fixture_units(10, \"National Standard Plumbing Code\", \"valves\")", "27 gpm",
            1e-12, "published", "nspc_b54"),
    example("peak_flow_by_fixture_units(1000, \"National Standard Plumbing Code\", \"valves\")", "210 gpm",
            1e-12, "published", "nspc_b54"),
    example("peak_flow_by_fixture_units(11.5)", "8.75 gpm", 1e-12, "computed", "nspc_b54"),
    example("peak_flow_by_fixture_units(130)", "51 gpm", 1e-12, "computed", "nspc_b54"),
    example("peak_flow_by_fixture_units(350)", "95 gpm", 1e-12, "computed", "nspc_b54"),
    example("peak_flow_by_fixture_units(10, \"International Plumbing Code\")", "14.6 gpm", 1e-12, "memory",
            "recalled"),
};
constexpr puteal_example unitRefusals[] = {
    refusal("peak_flow_by_fixture_units(2)",
            "the table begins at 3 fixture units: add the flows of the fixtures instead"),
    refusal("peak_flow_by_fixture_units(120, \"International Plumbing Code\")",
            "the table ends at 100 fixture units: a public building is for an engineer"),
};
constexpr puteal_caution unitCautions[] = {
    caution("recalled", "the International Plumbing Code, or between 14 and 120 fixture units")};

constexpr const char codeNote[] = "Pipe sizes follow the plumbing code in force where the house stands; the "
                                  "building department says which.";

} // namespace

constinit const puteal_function peakByBathroomsRow =
    Function("peak_flow_by_bathrooms", "Peak flow by bathrooms",
             "Peak flow of a house over seven minutes, in the steps of a trade table.", call<peakByBathrooms>)
        .takes(bathTakes)
        .gives("gpm", "peak flow")
        .by("step table: 1 bathroom 7, 1.5 10, to 2.5 14, to 4 17 gpm")
        .from(bathSources)
        .shownBy(bathExamples)
        .refusing(bathRefusals)
        .warning(bathCautions);

constinit const puteal_function peakVolumeRow =
    Function("peak_volume_by_bathrooms", "Peak volume by bathrooms",
             "Water a house draws in its seven-minute peak, in the steps of a trade table.", call<peakVolume>)
        .takes(bathTakes)
        .gives("gal", "water of the peak")
        .by("step table: 1 bathroom 45, 1.5 75, to 2.5 98, to 4 122 gal")
        .from(bathSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .warning(bathCautions);

constinit const puteal_function fixtureUnitsRow =
    Function("fixture_units", "Fixture units",
             "Water supply fixture units of one fixture in private use, hot and cold together.",
             call<fixtureUnits>)
        .takes(fixtureTakes)
        .gives("", "water supply fixture units")
        .by("table E103.3(2) of the International Plumbing Code")
        .from(fixtureSources)
        .shownBy(fixtureExamples)
        .refusing(fixtureRefusals)
        .warning(fixtureCautions)
        .safely(codeNote);

constinit const puteal_function peakByUnitsRow =
    Function("peak_flow_by_fixture_units", "Peak flow by fixture units",
             "Probable peak flow for a sum of fixture units, by the table of a plumbing code. At 10 units "
             "with flush tanks the National Standard Plumbing Code says 8 gpm, the International "
             "Plumbing Code 14.6.",
             call<peakByUnits>)
        .takes(unitTakes)
        .gives("gpm", "probable peak flow")
        .by("straight between the rows of the code's table")
        .from(unitSources)
        .shownBy(unitExamples)
        .refusing(unitRefusals)
        .warning(unitCautions)
        .safely(codeNote);

} // namespace household
