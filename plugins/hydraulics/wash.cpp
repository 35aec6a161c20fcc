/// Can the well wash this filter: four separate tests over one shared body, and the test by a measured flow.
/// (R7)
#include "wash.h"
#include "hydraulics.h"
#include "pump_curve.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

/// What all tests of the well start from.
struct Wash {
    double flow, time, staticLevel, specificCapacity, bore, earlier;
    /// Drawdown `after` minutes with a drawdown left from before.
    double fallAfter(double minutes, double before) const
    {
        return flow / specificCapacity * -std::expm1(-minutes * specificCapacity / gallonPerFoot(bore)) +
               before * leftAfter(minutes, specificCapacity, bore);
    }
    double fallAtEnd() const { return fallAfter(time, earlier); }
};

/// The first of the shared arguments that is blank, in words, or nullptr.
const char *firstMissing(const Argument &flow, const Argument &time, const Argument &level,
                         const Argument &capacity, const Argument &bore)
{
    return flow.missing()       ? "the flow of the wash"
           : time.missing()     ? "the length of the wash"
           : level.missing()    ? "the resting level of the well"
           : capacity.missing() ? "the specific capacity of the well, from a pumping test"
           : bore.missing()     ? "the diameter of the bore"
                                : nullptr;
}

double washPump(const Argument &flows, const Argument &heads, const Argument &flow, const Argument &time,
                const Argument &level, const Argument &capacity, const Argument &bore, double pressure,
                double diameter, double length, double otherUse, double earlier, double coefficient,
                double fittings, Reply &reply)
{
    if (const char *what = firstMissing(flow, time, level, capacity, bore))
        return needsFirst(what, reply);
    const PumpCurve curve(flows, heads);
    if (curve.isBlank())
        return needsFirst("the pump's curve, or a flow measured at the drain", reply);
    if (curve.fault())
        return reply.refuse(1, curve.fault());
    const Wash wash{flow.number() + otherUse, time.number(), level.number(),
                    capacity.number(),        bore.number(), earlier};
    if (lessThan(wash.flow, curve.firstFlow()))
        return needsFirst("lines of the pump's curve down to the flow of the wash", reply);
    if (!curve.reaches(wash.flow)) {
        reply.reason("the wash takes " + gpm(wash.flow) + "; the pump's curve ends at " +
                     gpm(curve.lastFlow()) + ": beyond pump run-out, whatever the well gives");
        return willNotWork;
    }
    const double need = wash.staticLevel + wash.fallAtEnd() +
                        (1.0 + fittings) * hazenWilliams(wash.flow, diameter, length, coefficient) +
                        headPerPsi * pressure;
    const double have = curve.head(wash.flow, straight);
    return atLeast(have, need,
                   "at the end of the wash the pump works against " + feet(need) + " and makes " +
                       feet(have) + " at " + gpm(wash.flow),
                   reply);
}

double levelVerdict(double fall, double intake, double cover, double staticLevel, const char *when,
                    Reply &reply)
{
    const double allowed = intake - cover - staticLevel;
    return atLeast(allowed, fall,
                   std::string("the level falls ") + feet(fall) + when + ", and " + feet(allowed) +
                       " stand above the cover of the pump",
                   reply);
}

double washLevel(const Argument &flow, const Argument &time, const Argument &level, const Argument &capacity,
                 const Argument &bore, const Argument &intake, double otherUse, double earlier, double cover,
                 Reply &reply)
{
    if (const char *what = firstMissing(flow, time, level, capacity, bore))
        return needsFirst(what, reply);
    if (intake.missing())
        return needsFirst("the depth of the pump's intake", reply);
    const Wash wash{flow.number() + otherUse, time.number(), level.number(),
                    capacity.number(),        bore.number(), earlier};
    return levelVerdict(wash.fallAtEnd(), intake.number(), cover, wash.staticLevel, " by the end of the wash",
                        reply);
}

double washRepeat(const Argument &flow, const Argument &time, const Argument &level, const Argument &capacity,
                  const Argument &bore, const Argument &intake, const Argument &pause, double otherUse,
                  double cover, Reply &reply)
{
    if (const char *what = firstMissing(flow, time, level, capacity, bore))
        return needsFirst(what, reply);
    if (intake.missing())
        return needsFirst("the depth of the pump's intake", reply);
    if (pause.missing())
        return needsFirst("the pause until the next wash or peak", reply);
    const Wash wash{flow.number() + otherUse, time.number(), level.number(),
                    capacity.number(),        bore.number(), 0.0};
    const double left = wash.fallAtEnd() * leftAfter(pause.number(), wash.specificCapacity, wash.bore);
    const std::string when =
        " by the end of the second wash, which starts with " + feet(left) + " of drawdown left";
    return levelVerdict(wash.fallAfter(wash.time, left), intake.number(), cover, wash.staticLevel,
                        when.c_str(), reply);
}

constexpr Parameter lift = Parameter("static_level", "ft", "height from the resting water up to the valve")
                               .hard(-1000, 5000)
                               .usual(0, 500)
                               .mayBeMissing();
constexpr Parameter level =
    Parameter("static_level", "ft", "depth of the resting water below the top of the well")
        .hard(-100, 5000)
        .usual(0, 500)
        .mayBeMissing();
constexpr Parameter capacity =
    Parameter("specific_capacity", "gpm/ft", "flow for a foot of drawdown, see specific_capacity")
        .hard(0.0001, 1e6)
        .usual(0.01, 20)
        .mayBeMissing();
constexpr Parameter bore =
    Parameter("diameter", "in", "inside diameter of the bore").hard(0.5, 120).usual(2, 48).mayBeMissing();
constexpr Parameter intake = Parameter("intake", "ft", "depth of the pump's intake below the top of the well")
                                 .hard(0, 5000)
                                 .usual(20, 600)
                                 .mayBeMissing();
constexpr Parameter otherUse = Parameter("other_use", "gpm", "water the house draws meanwhile")
                                   .hard(0, 1000)
                                   .usual(0, 10)
                                   .otherwise(0, "A");
constexpr Parameter earlier = Parameter("earlier", "ft", "drawdown left from before, see residual_drawdown")
                                  .hard(0, 5000)
                                  .usual(0, 300)
                                  .otherwise(0, "A");
constexpr Parameter cover = Parameter("cover", "ft", "water that must stay above the intake")
                                .hard(0, 500)
                                .usual(5, 50)
                                .otherwise(20, "T");

constexpr puteal_parameter pumpTakes[] = {
    Parameter("pump_flow", "gpm", "flows of the pump's curve, rising").range().hard(0, 10000).usual(0, 50),
    Parameter("pump_head", "ft_head", "heads of the pump's curve at these flows")
        .range()
        .hard(0, 5000)
        .usual(0, 800),
    washFlow,
    washTime,
    lift,
    capacity,
    bore,
    Parameter("pressure", "psi", "pressure the valve needs while it washes, with any rise of the drain")
        .hard(0, 300)
        .usual(20, 40),
    Parameter("pipe_diameter", "in", "inside diameter of the pipe").hard(0.1, 48).usual(0.75, 4),
    Parameter("pipe_length", "ft", "length of the pipe").hard(0, 100000).usual(5, 1000),
    otherUse,
    earlier,
    Parameter("coefficient", "", "Hazen-Williams coefficient: new plastic 150, old steel 95")
        .hard(40, 170)
        .usual(80, 150)
        .otherwise(150, "H"),
    Parameter("fittings", "", "allowance for fittings on top of the pipe")
        .hard(0, 5)
        .usual(0, 1)
        .otherwise(0.1, "T"),
};
#define TEST_PUMP                                                                                            \
    "q: 0 gpm, 2 gpm, 4 gpm, 6 gpm, 8 gpm, 10 gpm, 12 gpm, 14 gpm; h: 330 ft_head, 322 ft_head, 308 "        \
    "ft_head, 288 ft_head, 262 ft_head, 228 ft_head, 186 ft_head, 136 ft_head; "
constexpr puteal_example pumpExamples[] = {
    example(TEST_PUMP
            "backwash_pump_test(q[:], h[:], 8 gpm, 10 min, 60 ft, 1 gpm/ft, 6 in, 25 psi, 1.049 in, 200 ft)",
            "works", 0, "computed", "definition"),
    example(
        TEST_PUMP
        "backwash_pump_test(q[:], h[:], 10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 25 psi, 1.049 in, 200 ft)",
        "works", 0, "computed", "definition"),
    example(TEST_PUMP
            "backwash_pump_test(q[:], h[:], 15 gpm, 10 min, 60 ft, 1 gpm/ft, 6 in, 25 psi, 1.049 in, 200 ft)",
            "will not work", 0, "computed", "definition"),
};
constexpr puteal_example pumpRefusals[] = {
    refusal("q: 0 gpm, 4 gpm; h: 100 ft_head, 120 ft_head; backwash_pump_test(q[:], h[:], 2 gpm, 10 min, 60 "
            "ft, 1 gpm/ft, 6 in, 25 psi, 1.049 in, 200 ft)",
            "the heads of the pump curve must fall from line to line"),
};

constexpr puteal_parameter levelTakes[] = {washFlow, washTime, level,   capacity, bore,
                                           intake,   otherUse, earlier, cover};
constexpr puteal_example levelExamples[] = {
    example("backwash_level_test(8 gpm, 10 min, 60 ft, 1 gpm/ft, 6 in, 140 ft)", "works", 0, "computed",
            "definition"),
    example("backwash_level_test(10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft)", "works", 0, "computed",
            "definition"),
    example("backwash_level_test(10 gpm, 15 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft)", "will not work", 0,
            "computed", "definition"),
};
constexpr puteal_example levelRefusals[] = {
    refusal("backwash_level_test(-10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft)",
            "`wash_flow` must be at least 0 gpm; it is -10 gpm"),
};

constexpr puteal_parameter repeatTakes[] = {
    washFlow,
    washTime,
    level,
    capacity,
    bore,
    intake,
    Parameter("pause", "min", "rest until the next wash, regeneration or morning peak")
        .hard(0, 100000)
        .usual(0, 1440)
        .mayBeMissing(),
    otherUse,
    cover};
constexpr puteal_example repeatExamples[] = {
    example("backwash_repeat_test(10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft, 60 min)", "works", 0,
            "computed", "definition"),
    example("backwash_repeat_test(10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft, 20 min)", "marginal", 0,
            "computed", "definition"),
    example("backwash_repeat_test(10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft, 0 min)", "will not work",
            0, "computed", "definition"),
};
constexpr puteal_example repeatRefusals[] = {
    refusal("backwash_repeat_test(10 gpm, 10 min, 60 ft, 0.1 gpm/ft, 6 in, 140 ft, -5 min)",
            "`pause` must be at least 0 min; it is -5 min"),
};

} // namespace

constinit const puteal_function washPumpRow =
    Function("backwash_pump_test", "Backwash test 1: the pump",
             "Whether the pump still makes the wash's flow and pressure at the end of the wash, when the "
             "level is lowest. The pressure tank helps once "
             "and does not count.",
             call<washPump>)
        .takes(pumpTakes)
        .givesOneOf(verdictWords, "verdict; why(cell) says the heads")
        .by("pump head at wash_flow + other_use >= static_level + drawdown at the end + friction + 2.3067 "
            "ft_head/psi * pressure; near within a tenth")
        .from(washSources)
        .shownBy(pumpExamples)
        .refusing(pumpRefusals)
        .safely(wellSafety);

constinit const puteal_function washLevelRow =
    Function("backwash_level_test", "Backwash test 2: the level",
             "Whether the pump keeps its cover of water until the end of the wash.", call<washLevel>)
        .takes(levelTakes)
        .givesOneOf(verdictWords, "verdict; why(cell) says the levels")
        .by("drawdown at the end <= intake - cover - static_level; near within a tenth")
        .from(washSources)
        .shownBy(levelExamples)
        .refusing(levelRefusals)
        .safely(wellSafety);

constinit const puteal_function washRepeatRow =
    Function("backwash_repeat_test", "Backwash test 3: back to back",
             "Whether a second wash, a softener or the morning peak of the same flow still finds water after "
             "a pause.",
             call<washRepeat>)
        .takes(repeatTakes)
        .givesOneOf(verdictWords, "verdict; why(cell) says the levels")
        .by("drawdown at the end of the second wash, from what the pause leaves, <= intake - cover - "
            "static_level; near within a tenth")
        .from(washSources)
        .shownBy(repeatExamples)
        .refusing(repeatRefusals)
        .safely(wellSafety);

} // namespace hydraulics
