/// Least pH by the way of oxidation.
#include "diagnosis.h"
#include "media.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr const char *routeWords[] = {
    "air in a tank", "air over a coated medium", "chlorine", "chlorine over manganese dioxide",
    "permanganate",  "permanganate bed",         "peroxide", nullptr};
enum Route : int { airTank, airMedium, chlorine, chlorineMedium, permanganate, permanganateBed, peroxide };
constexpr const char *targetWords[] = {"iron", "manganese", nullptr};
constexpr const char *figureWords[] = {"lowest", "comfortable", nullptr};

/// Lowest figure and the one that leaves room, with where each comes from.
struct LeastPh {
    double lowest, comfortable;
    const char *lowestFrom, *comfortableFrom;
};
constexpr char habit[] = "common practice", recalled[] = "recalled, not confirmed", handbook[] = "handbook";

constexpr LeastPh table[][2] = {
    {{7.2, 7.5, habit, habit}, {9, 9.5, recalled, recalled}},       // [common practice; recalled]
    {{6.8, 7, handbook, habit}, {8, 8.5, habit, habit}},            // [table of oxidizing media]
    {{6.5, 6.5, recalled, recalled}, {8.5, 9, recalled, recalled}}, // [recalled]
    {{6.2, 6.2, habit, habit}, {6, 6.5, handbook, handbook}},       // [AWWA Opflow, December 2021]
    {{6.5, 6.5, recalled, recalled}, {7, 7.5, habit, habit}},       // [recalled; common practice]
    {{6.2, 6.7, habit, handbook}, {6.7, 6.7, handbook, handbook}},  // [table of oxidizing media]
    {{6, 6.5, habit, habit}, {unset, unset, handbook, handbook}},   // [common practice]
};

double leastPh(int route, int target, int figure, Reply &reply)
{
    const LeastPh &row = table[route][target];
    if (std::isnan(row.lowest))
        return reply.refuse(
            2, "peroxide does not take manganese at the pH of well water: choose another oxidant");
    const char *from = figure == 0 ? row.lowestFrom : row.comfortableFrom;
    const std::string hurry = route == airTank && target == 0
                                  ? "; in cold water the time decides, see iron_half_life"
                                  : std::string();
    reply.reason(std::string(targetWords[target]) + " by " + routeWords[route] + ", " + figureWords[figure] +
                 " figure (" + from + ")" + hurry);
    if (from == recalled)
        reply.caution("recalled",
                      "this figure is recalled and not confirmed: make a jar test at the pH of the water");
    return figure == 0 ? row.lowest : row.comfortable;
}

constexpr puteal_parameter takes[] = {
    Parameter("route", "", "how it is oxidized").oneOf(routeWords),
    Parameter("target", "", "what is oxidized").oneOf(targetWords),
    Parameter("figure", "", "lowest figure in use, or the one that leaves room")
        .oneOf(figureWords)
        .otherwise(1, "T"),
};
constexpr const char *sources[] = {"oxidizing_media", "opflow2021", "practice", "recalled", nullptr};
constexpr puteal_example examples[] = {
    example("least_oxidation_ph(\"air over a coated medium\", \"iron\", \"lowest\")", "6.8", 0, "published",
            "oxidizing_media"),
    example("least_oxidation_ph(\"permanganate bed\", \"manganese\")", "6.7", 0, "published",
            "oxidizing_media"),
    example("least_oxidation_ph(\"chlorine over manganese dioxide\", \"manganese\", \"lowest\")", "6", 0,
            "published", "opflow2021"),
    example("least_oxidation_ph(\"air in a tank\", \"iron\")", "7.5", 0, "common practice", "practice"),
    example("least_oxidation_ph(\"peroxide\", \"iron\")", "6.5", 0, "common practice", "practice"),
    example("least_oxidation_ph(\"air in a tank\", \"manganese\")", "9.5", 0, "memory", "recalled"),
    example("least_oxidation_ph(\"chlorine\", \"manganese\", \"lowest\")", "8.5", 0, "memory", "recalled"),
};
constexpr puteal_example refusals[] = {
    refusal("least_oxidation_ph(\"peroxide\", \"manganese\")",
            "peroxide does not take manganese at the pH of well water: choose another oxidant"),
};
constexpr puteal_caution cautions[] = {caution("recalled", "the figure is recalled, not confirmed")};

} // namespace

constinit const puteal_function leastOxidationPhRow =
    Function("least_oxidation_ph", "Least pH of an oxidation",
             "pH from which a way of oxidation takes iron or manganese; texts differ by half a unit, so the "
             "lowest and a "
             "comfortable figure are kept apart.",
             call<leastPh>)
        .takes(takes)
        .gives("", "least pH, with where it comes from")
        .by("table: one row a route and target")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions);

} // namespace diagnosis
