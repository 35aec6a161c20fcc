/// What a feeder must give, how long its tank lasts, and what the water gets at another flow. (R3)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

constexpr const char *pumpWords[] = {"constant speed", "constant pressure", nullptr};
enum PumpKind : int { constantSpeed, constantPressure };
constexpr const char *feederWords[] = {"flow proportional", "fixed rate", nullptr};
enum FeederKind : int { flowProportional, fixedRate };

/// A strength in the wrong unit shows here: feeders and injectors work at 100 parts of water and more for
/// one.
void judgeStrength(double dose, double strength, Reply &reply)
{
    if (lessThan(0.02 * strength,
                 dose)) // twice the usual least ratio of injectors [common practice, no source]
        reply.caution("weak_solution", "more than 2 % of the flow would be solution: check the unit of the "
                                       "strength, bleach of 5.25 trade percent holds 52,500 mg/L");
}

double feedRate(double flow, double dose, double strength, int pump, Reply &reply)
{
    if (!atMost(dose, strength))
        return reply.refuse(3, "the solution is weaker than the dose: check the units of the two");
    judgeStrength(dose, strength, reply);
    if (pump == constantPressure) // at 1 gpm a feeder set for 10 gpm gives ten times the dose
        reply.caution("constant_pressure",
                      "the flow of this pump varies: a flow-proportional or flow-switched feeder only, see "
                      "dose_at_flow");
    return flow * measure::minutePerDay * dose / strength;
}

double feedSetting(double rate, double capacity, Reply &reply)
{
    if (!atMost(rate, capacity))
        return reply.refuse(1, "the pump cannot give that much: a stronger solution or a larger pump");
    const double setting = rate / capacity;
    if (lessThan(setting, 0.1)) // a tenth to nine tenths is where feeders hold their rate [common practice]
        reply.caution("low", "below 10 % a feeder does not hold its rate: a weaker solution");
    else if (lessThan(0.9, setting))
        reply.caution("high", "above 90 % nothing is left for wear: a stronger solution");
    return setting;
}

double solutionDays(double tank, double use, double dose, double strength, Reply &reply)
{
    if (!atMost(dose, strength))
        return reply.refuse(4, "the solution is weaker than the dose: check the units of the two");
    judgeStrength(dose, strength, reply);
    const double perDay = use * dose / strength;
    if (atMost(perDay, 0))
        return reply.refuse(0, "nothing is fed, so the tank never empties: give a use and a dose above 0");
    const double days = tank / perDay;
    if (lessThan(30, days)) // bleach is best used within a month [common practice, no source]
        reply.caution("old", "more than 30 days: a solution loses strength, mix a smaller or a weaker tank");
    return days;
}

double doseAtFlow(double dose, double setFlow, double flow, int feeder, Reply &reply)
{
    if (feeder == flowProportional)
        return dose;
    const double times = setFlow / flow;
    if (lessThan(1.2, times)) // a fifth off is where a residual test shows it [common practice, no source]
        reply.caution("too_much", "the feeder gives more than a fifth too much at this flow: a "
                                  "flow-proportional feeder or a steadier flow");
    else if (lessThan(times, 0.8))
        reply.caution("too_little", "the feeder gives more than a fifth too little at this flow: set it for "
                                    "the highest flow");
    return dose * times;
}

constexpr puteal_parameter rateTakes[] = {
    Parameter("flow", "gpm",
              "flow while the feeder runs: the well pump's at mid pressure if it is wired to the pump")
        .hard(0, 1000)
        .usual(1, 30),
    Parameter("dose", "'u", "what the water is to get").hard(0, HUGE_VAL),
    Parameter("strength", "'u", "strength of the solution").hard(1e-9, HUGE_VAL),
    Parameter("pump", "", "how the well pump is driven; a variable-speed drive keeps a constant pressure")
        .oneOf(pumpWords)
        .otherwise(constantSpeed, "A"),
};
constexpr puteal_caution weakCaution = caution("weak_solution", "a dose above 2 % of the strength");
constexpr puteal_caution rateCautions[] = {caution("constant_pressure", "a pump of constant pressure"),
                                           weakCaution};
constexpr const char *rateSources[] = {"treatment_math", "geometry", "practice", nullptr};
constexpr puteal_example rateExamples[] = {
    example("feed_rate(10 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)", "13.7143 gal/day", 1e-5, "computed",
            "treatment_math"),
    example("feed_rate(7 gpm, 3 mg/L as Cl2, 5250 mg/L as Cl2)", "5.76 gal/day", 1e-9, "computed",
            "treatment_math"),
    example("feed_rate(12 gpm, 8 mg/L as H2O2, 70000 mg/L as H2O2)", "1.97486 gal/day", 1e-5, "computed",
            "treatment_math"),
    // 52.5 typed for 52,500 mg/L
    example("feed_rate(10 gpm, 5 mg/L as Cl2, 52.5 mg/L as Cl2)", "1371.43 gal/day", 1e-5, "computed",
            "treatment_math"),
};
constexpr puteal_example rateRefusals[] = {
    refusal("feed_rate(10 gpm, 5 mg/L as Cl2, 1 mg/L as Cl2)",
            "the solution is weaker than the dose: check the units of the two"),
    refusal("feed_rate(-10 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)",
            "`flow` must be at least 0 gpm; it is -10 gpm"),
};

constexpr puteal_parameter settingTakes[] = {
    Parameter("rate", "gal/day", "solution to be fed, see feed_rate").hard(0, 10000).usual(0.5, 30),
    Parameter("pump_capacity", "gal/day", "what the feeder gives at its highest setting")
        .hard(0.1, 10000)
        .usual(3, 60),
};
constexpr puteal_example settingExamples[] = {
    example("feed_setting(5.76 gal/day, 10 gal/day)", "57.6 %", 1e-9, "computed", "geometry"),
    example("feed_setting(feed_rate(7 gpm, 3 mg/L as Cl2, 5250 mg/L as Cl2), 24 gal/day)", "24 %", 1e-9,
            "computed", "geometry"),
};
constexpr puteal_example settingRefusals[] = {
    refusal("feed_setting(13.7 gal/day, 10 gal/day)",
            "the pump cannot give that much: a stronger solution or a larger pump"),
};
constexpr puteal_caution settingCautions[] = {caution("low", "below 10 %"), caution("high", "above 90 %")};

constexpr puteal_parameter daysTakes[] = {
    Parameter("tank", "gal", "solution in a full tank").hard(0.1, 10000).usual(5, 60),
    Parameter("use", "gal/day", "water treated: the household's use, not the pump's flow")
        .hard(0, 100000)
        .usual(50, 1000),
    Parameter("dose", "'u", "what the water gets").hard(0, HUGE_VAL),
    Parameter("strength", "'u", "strength of the solution").hard(1e-9, HUGE_VAL),
};
constexpr puteal_example daysExamples[] = {
    example("solution_days(15 gal, 300 gal/day, 5 mg/L as Cl2, 5250 mg/L as Cl2)", "52.5 day/event", 1e-9,
            "computed", "geometry"),
    example("solution_days(15 gal, 250 gal/day, 8 mg/L as H2O2, 70000 mg/L as H2O2)", "525 day/event", 1e-9,
            "computed", "geometry"),
    // 52.5 typed for 52,500 mg/L
    example("solution_days(15 gal, 300 gal/day, 5 mg/L as Cl2, 52.5 mg/L as Cl2)", "0.525 day/event", 1e-9,
            "computed", "geometry"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("solution_days(15 gal, 300 gal/day, 0 mg/L as Cl2, 5250 mg/L as Cl2)",
            "nothing is fed, so the tank never empties: give a use and a dose above 0"),
};
constexpr puteal_caution daysCautions[] = {caution("old", "more than 30 days"), weakCaution};

constexpr puteal_parameter flowTakes[] = {
    Parameter("dose", "'u", "dose the feeder is set for").hard(0, HUGE_VAL),
    Parameter("set_flow", "gpm", "flow it is set for").hard(0.01, 1000).usual(1, 30),
    Parameter("flow", "gpm", "flow that runs now: at cut-in, at cut-out, at one tap")
        .hard(0.01, 1000)
        .usual(0.5, 30),
    Parameter("feeder", "", "whether the feeder follows the flow or is only switched with it")
        .oneOf(feederWords)
        .otherwise(fixedRate, "A"),
};
constexpr const char *flowSources[] = {"practice", "geometry", nullptr};
constexpr puteal_example flowExamples[] = {
    example("dose_at_flow(5 mg/L as Cl2, 10 gpm, 1 gpm)", "50 mg/L as Cl2", 1e-9, "computed", "geometry"),
    example("dose_at_flow(5 mg/L as Cl2, 10 gpm, 1 gpm, \"flow proportional\")", "5 mg/L as Cl2", 1e-9,
            "computed", "geometry"),
    example("dose_at_flow(3 mg/L as H2O2, 7 gpm, 10 gpm)", "2.1 mg/L as H2O2", 1e-9, "computed", "geometry"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("dose_at_flow(5 mg/L as Cl2, 10 gpm, 0 gpm)", "`flow` must be at least 0.01 gpm; it is 0 gpm"),
};
constexpr puteal_caution flowCautions[] = {caution("too_much", "more than a fifth too much"),
                                           caution("too_little", "more than a fifth too little")};

} // namespace

constinit const puteal_function feedRateRow =
    Function("feed_rate", "Feed rate", "Solution a feeder must give while the water runs.", call<feedRate>)
        .takes(rateTakes)
        .gives("gal/day", "solution, as if the water ran all day")
        .by("flow * dose / strength")
        .from(rateSources)
        .shownBy(rateExamples)
        .refusing(rateRefusals)
        .warning(rateCautions)
        .safely(feederSafety);

constinit const puteal_function feedSettingRow =
    Function("feed_setting", "Feeder setting", "Setting of a feeder as a share of its capacity.",
             call<feedSetting>)
        .takes(settingTakes)
        .gives("", "share of the pump's capacity")
        .by("rate / pump_capacity")
        .from(rateSources)
        .shownBy(settingExamples)
        .refusing(settingRefusals)
        .warning(settingCautions)
        .safely(feederSafety);

constinit const puteal_function solutionDaysRow =
    Function("solution_days", "Days a tank of solution lasts", "Days until a full solution tank is empty.",
             call<solutionDays>)
        .takes(daysTakes)
        .gives("day/event", "days between fillings")
        .by("tank * strength / (use * dose)")
        .from(rateSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions)
        .safely(feederSafety);

constinit const puteal_function doseAtFlowRow =
    Function("dose_at_flow", "Dose at another flow",
             "What the water gets when the flow is not the one the feeder was set for. The output of a well "
             "pump falls by 20 to 40 % from cut-in to cut-out, and a pump of constant pressure gives what "
             "the taps take.",
             call<doseAtFlow>)
        .takes(flowTakes)
        .gives("'u", "dose")
        .by("dose * set_flow / flow; a flow-proportional feeder: dose")
        .from(flowSources)
        .shownBy(flowExamples)
        .refusing(flowRefusals)
        .warning(flowCautions)
        .safely(feederSafety);

} // namespace dosing
