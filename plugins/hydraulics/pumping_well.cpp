/// What a pumping test tells: specific capacity, time to a level, recovery, minutes until a store is empty.
/// (R2)
#include "hydraulics.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

double mean(const Argument &column)
{
    double sum = 0.0;
    for (const double x : column)
        sum += x;
    return sum / static_cast<double>(column.count());
}

double specificCapacity(const Argument &flows, const Argument &falls, Reply &reply)
{
    const std::size_t n = flows.count();
    if (n == 0 || falls.count() != n)
        return reply.refuse(0, "the two ranges must have the same lines");
    const double flow = mean(flows), fall = mean(falls);
    if (!std::isfinite(flow) || !std::isfinite(fall))
        return reply.refuse(0, "a line is blank: fill it or take it out of the range");
    if (n == 1)
        return flow / fall;
    double across = 0.0, along = 0.0, down = 0.0, deepest = 0.0; // sums about the means
    for (std::size_t i = 0; i < n; ++i) {
        const double q = flows.begin()[i] - flow, s = falls.begin()[i] - fall;
        across += q * s;
        along += q * q;
        down += s * s;
        deepest = std::fmax(deepest, falls.begin()[i]);
    }
    if (nearlyEqual(along + flow * flow, flow * flow))
        return reply.refuse(1, "all lines have the same flow: a fit needs at least two flows");
    if (atMost(across, 0))
        return reply.refuse(2, "the drawdown does not grow with the flow: check the readings");
    const double slope = across / along, atNoFlow = fall - slope * flow;
    if (lessThan(across * across, 0.95 * along * down)) // [common practice, no source]
        reply.caution(
            "scatter",
            "the readings scatter about the line: let the level settle at each flow and read again");
    if (lessThan(0.1 * deepest,
                 std::fabs(atNoFlow))) // a tenth of the deepest reading [common practice, no source]
        reply.caution("offset", "the line misses no drawdown at no flow: check the resting level");
    return 1.0 / slope;
}

double timeToLevel(double flow, double specificCapacity, double diameter, double fall, Reply &reply)
{
    if (atMost(flow / specificCapacity, fall))
        return reply.refuse(4, "the level never falls that far: it settles at " +
                                   figures(flow / specificCapacity, 4) + " ft");
    return -gallonPerFoot(diameter) / specificCapacity * std::log1p(-fall * specificCapacity / flow);
}

double residualDrawdown(double fall, double specificCapacity, double diameter, double time)
{
    return fall * leftAfter(time, specificCapacity, diameter);
}

double timeToEmpty(double storage, double flow, double yield, Reply &reply)
{
    if (atMost(flow, yield))
        return reply.refuse(2, "the well gives as much as is drawn, so it never empties");
    return storage / (flow - yield);
}

constexpr Parameter bore =
    Parameter("diameter", "in", "inside diameter of the bore").hard(0.5, 120).usual(2, 48);
constexpr Parameter capacity =
    Parameter("specific_capacity", "gpm/ft", "flow for a foot of drawdown").hard(0.0001, 1e6).usual(0.01, 20);

constexpr puteal_parameter capacityTakes[] = {
    Parameter("flow", "gpm", "steady flows of the test, a line each")
        .range()
        .hard(0.001, 10000)
        .usual(0.5, 100),
    Parameter("drawdown", "ft", "settled fall of the level at each flow")
        .range()
        .hard(0.001, 5000)
        .usual(0.5, 300),
};
constexpr const char *capacitySources[] = {"kwader_2021", "definition", "practice", nullptr};
constexpr puteal_example capacityExamples[] = {
    example("flow: 50 gpm; fall: 10 ft; specific_capacity(flow[:], fall[:])", "5 gpm/ft", 1e-9, "published",
            "kwader_2021"),
    example("flow: 2 gpm, 4 gpm, 6 gpm, 8 gpm; fall: 5.1 ft, 9.8 ft, 15.2 ft, 19.9 ft; "
            "specific_capacity(flow[:], fall[:])",
            "0.401606 gpm/ft", 1e-5, "computed", "definition"),
    example("flow: 5 gpm; fall: 12.5 ft; specific_capacity(flow[:], fall[:])", "0.4 gpm/ft", 1e-9, "computed",
            "definition"),
    example("flow: 2 gpm, 4 gpm, 6 gpm, 8 gpm; fall: 8 ft, 6 ft, 16 ft, 14 ft; specific_capacity(flow[:], "
            "fall[:])",
            "0.714286 gpm/ft", 1e-5, "computed", "definition"),
};
constexpr puteal_example capacityRefusals[] = {
    refusal("flow: 5 gpm, 5 gpm; fall: 12 ft, 13 ft; specific_capacity(flow[:], fall[:])",
            "all lines have the same flow: a fit needs at least two flows"),
    refusal("flow: 5 gpm, 8 gpm; fall: 12 ft, 9 ft; specific_capacity(flow[:], fall[:])",
            "the drawdown does not grow with the flow: check the readings"),
};
constexpr puteal_caution capacityCautions[] = {
    caution("scatter", "share of the scatter explained below 0.95"),
    caution("offset", "drawdown at no flow above a tenth of the deepest")};

constexpr puteal_parameter levelTakes[] = {
    Parameter("flow", "gpm", "flow of the pump").hard(0.01, 10000).usual(1, 50),
    capacity,
    bore,
    Parameter("drawdown", "ft", "fall of the level asked for").hard(0, 5000).usual(1, 300),
};
constexpr const char *levelSources[] = {"definition", "hb44", nullptr};
constexpr puteal_example levelExamples[] = {
    example("time_to_level(10 gpm, 0.1 gpm/ft, 6 in, 60 ft)", "13.45845 min", 1e-6, "computed", "definition"),
    example("time_to_level(10 gpm, 0.1 gpm/ft, 6 in, 80 ft)", "23.63937 min", 1e-6, "computed", "definition"),
    example("time_to_level(7 gpm, 0.1 gpm/ft, 6 in, 60 ft)", "28.58146 min", 1e-6, "computed", "definition"),
};
constexpr puteal_example levelRefusals[] = {
    refusal("time_to_level(12 gpm, 0.5 gpm/ft, 6 in, 60 ft)",
            "the level never falls that far: it settles at 24 ft"),
};

constexpr puteal_parameter residualTakes[] = {
    Parameter("drawdown", "ft", "fall of the level when the pump stopped").hard(0, 5000).usual(0, 300),
    capacity,
    bore,
    Parameter("time", "min", "rest since then").hard(0, 100000).usual(1, 1440),
};
constexpr puteal_example residualExamples[] = {
    example("residual_drawdown(49.375 ft, 0.1 gpm/ft, 6 in, 30 min)", "6.40421 ft", 1e-5, "computed",
            "definition"),
    example("residual_drawdown(49.375 ft, 0.1 gpm/ft, 6 in, 60 min)", "0.83066 ft", 1e-5, "computed",
            "definition"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("residual_drawdown(49 ft, 0 gpm/ft, 6 in, 30 min)",
            "`specific_capacity` must be at least 0.0001 gpm/ft; it is 0 gpm/ft"),
};

constexpr puteal_parameter emptyTakes[] = {
    Parameter("storage", "gal", "water that can be drawn").hard(0, 1e6).usual(20, 2000),
    Parameter("flow", "gpm", "water drawn").hard(0, 10000).usual(1, 50),
    Parameter("yield", "gpm", "what the well gives meanwhile").hard(0, 10000).usual(0.2, 50),
};
constexpr const char *emptySources[] = {"definition", "practice", nullptr};
constexpr puteal_example emptyExamples[] = {
    example("time_to_empty(150 gal, 14 gpm, 1 gpm)", "11.5385 min", 1e-5, "computed", "definition"),
    example("time_to_empty(150 gal, 1 gpm, 0 gpm)", "150 min", 1e-9, "common practice", "practice"),
};
constexpr puteal_example emptyRefusals[] = {
    refusal("time_to_empty(150 gal, 4 gpm, 4 gpm)",
            "the well gives as much as is drawn, so it never empties"),
};

} // namespace

constinit const puteal_function specificCapacityRow =
    Function("specific_capacity", "Specific capacity of a well",
             "Flow a well gives for a foot of drawdown: from one reading its ratio, from several the slope "
             "of the fitted "
             "line. It falls with higher flow and when a fracture falls dry.",
             call<specificCapacity>)
        .takes(capacityTakes)
        .gives("gpm/ft", "specific capacity")
        .by("flow / drawdown; from several lines 1 / slope of drawdown over flow")
        .from(capacitySources)
        .shownBy(capacityExamples)
        .refusing(capacityRefusals)
        .warning(capacityCautions)
        .safely(wellSafety);

constinit const puteal_function timeToLevelRow =
    Function("time_to_level", "Time until a level is reached",
             "Time until pumping has drawn the level of a bore down by a depth, with inflow in proportion to "
             "the drawdown.",
             call<timeToLevel>)
        .takes(levelTakes)
        .gives("min", "pumping time")
        .by("-(pi / 4 * diameter^2) / specific_capacity * ln(1 - drawdown * specific_capacity / flow)")
        .from(levelSources)
        .shownBy(levelExamples)
        .refusing(levelRefusals)
        .safely(wellSafety);

constinit const puteal_function residualDrawdownRow =
    Function("residual_drawdown", "Drawdown left after a rest",
             "Drawdown that is left some time after the pump stopped.", call<residualDrawdown>)
        .takes(residualTakes)
        .gives("ft", "drawdown left")
        .by("drawdown * exp(-time * specific_capacity / (pi / 4 * diameter^2))")
        .from(levelSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals)
        .safely(wellSafety);

constinit const puteal_function timeToEmptyRow =
    Function("time_to_empty", "Time until a store is empty",
             "Time until water stored in a bore or tank is drawn down by more than the well gives.",
             call<timeToEmpty>)
        .takes(emptyTakes)
        .gives("min", "time until it is empty")
        .by("storage / (flow - yield)")
        .from(emptySources)
        .shownBy(emptyExamples)
        .refusing(emptyRefusals)
        .safely(wellSafety);

} // namespace hydraulics
