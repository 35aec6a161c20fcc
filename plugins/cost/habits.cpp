/// How long parts last and how often work comes round, as the trade reckons: defaults to write over. (R8)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

struct Span {
    double low, high;
};

constexpr const char *endWords[] = {"low", "high", nullptr};
enum End : int { lowEnd, highEnd };

double endOf(const Span &span, int end)
{
    return end == highEnd ? span.high : span.low;
}

constexpr const char *partWords[] = {"valve seals",
                                     "valve motor",
                                     "control valve",
                                     "filter tank",
                                     "solution tank",
                                     "bladder tank",
                                     "resin",
                                     "resin with iron",
                                     "coated light medium",
                                     "greensand",
                                     "manganese dioxide ore",
                                     "catalytic carbon",
                                     "carbon",
                                     "feed pump",
                                     "feed pump tube",
                                     "injector kit",
                                     "air compressor",
                                     "air vent",
                                     "ozone cell",
                                     "cartridge housing",
                                     "ultraviolet lamp",
                                     nullptr};
// years [common practice, no source]
constexpr Span lives[] = {{7, 10},  {10, 12}, {12, 15}, {15, 20}, {8, 10}, {8, 12},  {10, 15},
                          {5, 8},   {3, 6},   {5, 8},   {7, 10},  {3, 5},  {1, 3},   {5, 8},
                          {0.5, 1}, {1, 1},   {5, 7},   {5, 8},   {2, 5},  {10, 10}, {1, 1}};
static_assert(std::size(lives) + 1 == std::size(partWords));

double usualLife(int part, int end, Reply &reply)
{
    reply.caution("habit", "a habit of the trade: put the maker's figure or your own records in its place");
    return endOf(lives[part], end);
}

constexpr const char *taskWords[] = {"gauges and levels",
                                     "brine tank check",
                                     "brine tank cleaning",
                                     "resin cleaner",
                                     "cartridge",
                                     "fed solution",
                                     "injector cleaning",
                                     "injector rebuild",
                                     "wash flow at the drain",
                                     "air vent and screen",
                                     "neutralizer top-up",
                                     "bacteria and nitrate test",
                                     "tank precharge",
                                     nullptr};
// months [common practice, no source]; weekly is a quarter of a month here
constexpr Span intervals[] = {{0.25, 1}, {1, 1}, {12, 12}, {1, 6},   {6, 12},  {1, 3},  {3, 6},
                              {12, 24},  {6, 6}, {6, 12},  {12, 12}, {12, 12}, {12, 12}};
static_assert(std::size(intervals) + 1 == std::size(taskWords));

double serviceInterval(int task, int end, Reply &reply)
{
    reply.caution("habit", "a habit of the trade: water, use and the maker's manual decide");
    return endOf(intervals[task], end);
}

constexpr puteal_parameter lifeTakes[] = {
    Parameter("part", "", "part that wears out").oneOf(partWords),
    Parameter("end", "", "short or long end of what is met").oneOf(endWords).otherwise(lowEnd, "A"),
};
constexpr const char *habitSources[] = {"practice", nullptr};
constexpr puteal_example lifeExamples[] = {
    example("usual_life(\"resin with iron\")", "5 yr", 1e-12, "common practice", "practice"),
    example("usual_life(\"resin\", \"high\")", "15 yr", 1e-12, "common practice", "practice"),
    example("usual_life(\"feed pump tube\")", "6 month", 1e-12, "common practice", "practice"),
    example("usual_life(\"cartridge housing\")", "10 yr", 1e-12, "common practice", "practice"),
};
constexpr puteal_example lifeRefusals[] = {
    refusal(
        "usual_life(\"wire\")",
        "\"wire\" is not in the list: valve seals, valve motor, control valve, filter tank, solution tank, "
        "bladder tank, resin, resin with iron, coated light medium, greensand, manganese dioxide ore, "
        "catalytic carbon, carbon, feed pump, feed pump tube, injector kit, air compressor, air vent, "
        "ozone cell, cartridge housing, ultraviolet lamp"),
};
constexpr puteal_caution habitCautions[] = {caution("habit", "always: no published source")};

constexpr puteal_parameter intervalTakes[] = {
    Parameter("task", "", "work that comes round").oneOf(taskWords),
    Parameter("end", "", "short or long end of what is met").oneOf(endWords).otherwise(lowEnd, "A"),
};
constexpr puteal_example intervalExamples[] = {
    example("service_interval(\"cartridge\")", "6 month", 1e-12, "common practice", "practice"),
    example("service_interval(\"fed solution\", \"high\")", "3 month", 1e-12, "common practice", "practice"),
    example("service_interval(\"bacteria and nitrate test\")", "1 yr", 1e-12, "common practice", "practice"),
};
constexpr puteal_example intervalRefusals[] = {
    refusal("service_interval(\"lawn\")",
            "\"lawn\" is not in the list: gauges and levels, brine tank check, brine tank cleaning, resin "
            "cleaner, cartridge, fed solution, injector cleaning, injector rebuild, wash flow at the drain, "
            "air vent and screen, neutralizer top-up, bacteria and nitrate test, tank precharge"),
};

} // namespace

constinit const puteal_function usualLifeRow =
    Function("usual_life", "Usual life of a part",
             "Years a part is reckoned to last when nothing better is known, for replacements_cost.",
             call<usualLife>)
        .takes(lifeTakes)
        .gives("yr", "life of the part")
        .by("table of trade habits")
        .from(habitSources)
        .shownBy(lifeExamples)
        .refusing(lifeRefusals)
        .warning(habitCautions);

constinit const puteal_function serviceIntervalRow =
    Function("service_interval", "Usual service interval",
             "Time after which work on a device usually comes round, for a calendar to edit.",
             call<serviceInterval>)
        .takes(intervalTakes)
        .gives("month", "time between two of them")
        .by("table of trade habits")
        .from(habitSources)
        .shownBy(intervalExamples)
        .refusing(intervalRefusals)
        .warning(habitCautions)
        .safely(
            "Take the pressure off and the power away before opening anything; a test that finds bacteria "
            "goes to the health office.");

} // namespace cost
