/// Head of a pump at a flow, and the flow at which pump and system meet. (R5, R6)
#include "hydraulics.h"
#include "pump_curve.h"
#include "sdk/roots.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

double pumpHead(const Argument &flows, const Argument &heads, double flow, int shape, double speed,
                Reply &reply)
{
    const PumpCurve curve(flows, heads, speed);
    if (curve.fault())
        return reply.refuse(1, curve.fault());
    if (!curve.reaches(flow))
        return reply.refuse(3, "the curve goes from " + figures(curve.firstFlow(), 4) + " to " +
                                   figures(curve.lastFlow(), 4) + " gpm; beyond it the pump runs out");
    if (curve.isCoarse())
        reply.caution("coarse", "fewer than four lines draw a coarse curve");
    return curve.head(flow, shape);
}

struct System {
    double staticLevel, specificCapacity, pressure, diameter, length, coefficient, fittings;
    double head(double flow) const
    {
        return staticLevel + flow / specificCapacity +
               (1.0 + fittings) * hazenWilliams(flow, diameter, length, coefficient) + headPerPsi * pressure;
    }
};

double operatingFlow(const Argument &flows, const Argument &heads, double staticLevel,
                     double specificCapacity, double pressure, double diameter, double length,
                     double coefficient, double fittings, int shape, double speed, Reply &reply)
{
    const PumpCurve curve(flows, heads, speed);
    if (curve.fault())
        return reply.refuse(1, curve.fault());
    if (curve.isCoarse())
        reply.caution("coarse", "fewer than four lines draw a coarse curve");
    const System system{staticLevel, specificCapacity, pressure, diameter, length, coefficient, fittings};
    const auto surplus = [&](double flow) { return curve.head(flow, shape) - system.head(flow); };
    const double low = curve.firstFlow(), high = curve.lastFlow();
    if (lessThan(surplus(low), 0))
        return reply.refuse(5, "the pump cannot lift that far: at " + figures(low, 4) + " gpm it makes " +
                                   figures(curve.head(low, shape), 4) + " ft, and " +
                                   figures(system.head(low), 4) + " ft are needed");
    if (lessThan(0, surplus(high)))
        return reply.refuse(2, "the pump would run out: at the end of its curve, " + figures(high, 4) +
                                   " gpm, it makes more head than is needed; throttle it or add lines");
    return crossing(low, high, surplus); // it falls all the way, so there is only one
}

constexpr puteal_parameter headTakes[] = {
    Parameter("pump_flow", "gpm", "flows of the pump's curve, rising").range().hard(0, 10000).usual(0, 50),
    Parameter("pump_head", "ft_head", "heads of the pump's curve at these flows")
        .range()
        .hard(0, 5000)
        .usual(0, 800),
    Parameter("flow", "gpm", "flow asked for").hard(0, 10000).usual(0, 50),
    Parameter("curve", "", "lines joined straight, or smooth without overshoot")
        .oneOf(curveWords)
        .otherwise(straight, "A"),
    Parameter("speed", "", "speed of the motor as a share of the speed the curve is drawn for, as 90 %")
        .hard(0.1, 2)
        .usual(0.6, 1)
        .otherwise(1, "A"),
};
constexpr const char *headSources[] = {"fritsch_carlson", "definition", "recalled", nullptr};
#define TEST_PUMP                                                                                            \
    "q: 0 gpm, 2 gpm, 4 gpm, 6 gpm, 8 gpm, 10 gpm, 12 gpm, 14 gpm; h: 330 ft_head, 322 ft_head, 308 "        \
    "ft_head, 288 ft_head, 262 ft_head, 228 ft_head, 186 ft_head, 136 ft_head; "
constexpr puteal_example headExamples[] = {
    example(TEST_PUMP "pump_head(q[:], h[:], 7 gpm)", "275 ft_head", 1e-12, "computed", "definition"),
    example(TEST_PUMP "pump_head(q[:], h[:], 9 gpm, \"smooth\")", "246.014035 ft_head", 1e-8, "computed",
            "fritsch_carlson"),
    example(TEST_PUMP "pump_head(q[:], h[:], 7 gpm, \"smooth\")", "275.857246 ft_head", 1e-8, "computed",
            "fritsch_carlson"),
    example("q: 0 gpm, 8 gpm; h: 300 ft_head, 200 ft_head; pump_head(q[:], h[:], 4 gpm)", "250 ft_head",
            1e-12, "computed", "definition"),
    example(TEST_PUMP "pump_head(q[:], h[:], 9 gpm, \"straight\", 90 %)", "184.68 ft_head", 1e-12, "computed",
            "recalled"),
};
constexpr puteal_example headRefusals[] = {
    refusal(TEST_PUMP "pump_head(q[:], h[:], 15 gpm)",
            "the curve goes from 0 to 14 gpm; beyond it the pump runs out"),
    refusal("q: 0 gpm, 4 gpm; h: 100 ft_head, 120 ft_head; pump_head(q[:], h[:], 2 gpm)",
            "the heads of the pump curve must fall from line to line"),
};
constexpr puteal_caution curveCautions[] = {caution("coarse", "fewer than four lines")};

constexpr puteal_parameter flowTakes[] = {
    headTakes[0],
    headTakes[1],
    Parameter("static_level", "ft", "height from the resting water up to the outlet")
        .hard(-1000, 5000)
        .usual(0, 500),
    Parameter("specific_capacity", "gpm/ft", "flow for a foot of drawdown once the level has settled")
        .hard(0.0001, 1e6)
        .usual(0.01, 20),
    Parameter("pressure", "psi", "pressure wanted at the outlet").hard(0, 300).usual(20, 80),
    Parameter("diameter", "in", "inside diameter of the pipe").hard(0.1, 48).usual(0.75, 4),
    Parameter("length", "ft", "length of the pipe").hard(0, 100000).usual(5, 1000),
    Parameter("coefficient", "", "Hazen-Williams coefficient: new plastic 150, old steel 95")
        .hard(40, 170)
        .usual(80, 150)
        .otherwise(150, "H"),
    Parameter("fittings", "", "allowance for fittings on top of the pipe")
        .hard(0, 5)
        .usual(0, 1)
        .otherwise(0.1, "T"),
    headTakes[3],
    headTakes[4],
};
constexpr const char *flowSources[] = {"definition", "illinois_906", "nist811", "practice", nullptr};
constexpr puteal_example flowExamples[] = {
    example(TEST_PUMP "operating_flow(q[:], h[:], 60 ft, 1 gpm/ft, 25 psi, 1.049 in, 200 ft)", "13.36458 gpm",
            1e-6, "computed", "definition"),
    example(TEST_PUMP "operating_flow(q[:], h[:], 60 ft, 1 gpm/ft, 50 psi, 1.049 in, 200 ft)", "11.25029 gpm",
            1e-6, "computed", "definition"),
    example(TEST_PUMP
            "operating_flow(q[:], h[:], 60 ft, 1 gpm/ft, 25 psi, 1.049 in, 200 ft, 150, 10 %, \"smooth\")",
            "13.39457 gpm", 1e-6, "computed", "definition"),
    // no pipe: 300 - 12.5 Q meets 60 + Q + 57.6675
    example("q: 0 gpm, 16 gpm; h: 300 ft_head, 100 ft_head; operating_flow(q[:], h[:], 60 ft, 1 gpm/ft, 25 "
            "psi, 1.049 in, 0 ft)",
            "13.50611 gpm", 1e-6, "computed", "definition"),
    // at four fifths of the speed: 192 - 10 Q meets 60 + Q + 57.6675
    example("q: 0 gpm, 16 gpm; h: 300 ft_head, 100 ft_head; operating_flow(q[:], h[:], 60 ft, 1 gpm/ft, 25 "
            "psi, 1.049 in, 0 ft, 150, 10 %, \"straight\", 80 %)",
            "6.757500 gpm", 1e-6, "computed", "definition"),
};
constexpr puteal_example flowRefusals[] = {
    refusal(TEST_PUMP "operating_flow(q[:], h[:], 300 ft, 1 gpm/ft, 40 psi, 1.049 in, 200 ft)",
            "the pump cannot lift that far: at 0 gpm it makes 330 ft, and 392.3 ft are needed"),
    refusal(TEST_PUMP "operating_flow(q[:], h[:], 10 ft, 1 gpm/ft, 20 psi, 1.38 in, 50 ft)",
            "the pump would run out: at the end of its curve, 14 gpm, it makes more head than is needed; "
            "throttle it or add lines"),
};

double waterHorsepower(double flow, double head)
{
    return flow * head / 3960.0; // gpm and ft [water pumping costs, engineeringtoolbox.com d_1527]
}

constexpr puteal_parameter powerTakes[] = {
    Parameter("flow", "gpm", "flow of the pump").hard(0, 10000).usual(1, 50),
    Parameter("head", "ft_head", "head it makes, see total_dynamic_head").hard(0, 5000).usual(20, 800),
};
constexpr const char *powerSources[] = {"pumping_costs", "definition", nullptr};
constexpr puteal_example powerExamples[] = {
    example("water_horsepower(10 gpm, 150 ft_head)", "0.378788 hp", 1e-6, "computed", "pumping_costs"),
    example("water_horsepower(3960 gpm, 1 ft_head)", "1 hp", 1e-12, "computed", "definition"),
};
constexpr puteal_example powerRefusals[] = {
    refusal("water_horsepower(10 gpm, -1 ft_head)", "`head` must be at least 0 ft_head; it is -1 ft_head"),
};

} // namespace

constinit const puteal_function waterHorsepowerRow =
    Function("water_horsepower", "Water horsepower",
             "Power that goes into the water itself; the motor takes two or three times as much.",
             call<waterHorsepower>)
        .takes(powerTakes)
        .gives("hp", "power in the water")
        .by("flow * head / 3960 (gpm, ft)")
        .from(powerSources)
        .shownBy(powerExamples)
        .refusing(powerRefusals)
        .safely(wellSafety);

constinit const puteal_function pumpHeadRow =
    Function("pump_head", "Head of a pump at a flow", "Head a pump makes at a flow, read from its curve.",
             call<pumpHead>)
        .takes(headTakes)
        .gives("ft_head", "head of the pump")
        .by("between two lines of the curve, straight or by a cubic that never overshoots; at another speed "
            "speed^2 * pump_head(flow / speed)")
        .from(headSources)
        .shownBy(headExamples)
        .refusing(headRefusals)
        .warning(curveCautions)
        .safely(wellSafety);

constinit const puteal_function operatingFlowRow =
    Function("operating_flow", "Operating point of a pump",
             "Flow at which the pump's curve meets lift, drawdown, friction and pressure together.",
             call<operatingFlow>)
        .takes(flowTakes)
        .gives("gpm", "flow at the operating point")
        .by("pump_head(flow) = static_level + flow / specific_capacity + (1 + fittings) * "
            "hazen_williams_loss + 2.3067 ft_head/psi * pressure")
        .from(flowSources)
        .shownBy(flowExamples)
        .refusing(flowRefusals)
        .warning(curveCautions)
        .safely(wellSafety);

} // namespace hydraulics
