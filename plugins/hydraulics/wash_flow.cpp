/// Can the well wash this filter: test 4, of the rate, and the test by a flow measured at the drain. (R7)
#include "hydraulics.h"
#include "wash.h"

namespace hydraulics
{

using namespace puteal::sdk;

namespace
{

double washRate(const Argument &flow, const Argument &area, const Argument &rate, const Argument &drain,
                Reply &reply)
{
    if (rate.missing())
        return needsFirst("the backwash rate of the medium at the coldest water", reply);
    if (area.missing())
        return needsFirst("the area of the bed", reply);
    if (flow.missing())
        return needsFirst("the flow the well can give at the valve", reply);
    if (drain.missing())
        return needsFirst("the flow that drain line and flow control pass", reply);
    const double need = area.number() * rate.number(), have = std::fmin(flow.number(), drain.number());
    const char *by = drain.number() < flow.number() ? "the drain passes " : "the well gives ";
    return atLeast(have, need, "the bed takes " + gpm(need) + " and " + by + gpm(have), reply);
}

double washMeasured(const Argument &needed, const Argument &time, const Argument &measured,
                    const Argument &held, const Argument &pressure, double least, Reply &reply)
{
    if (needed.missing())
        return needsFirst("the flow of the wash", reply);
    if (time.missing())
        return needsFirst("the length of the wash", reply);
    constexpr const char run[] =
        "a measured flow: run it 15 minutes at the drain and note flow and pressure"; // [common practice, no
                                                                                      // source]
    if (measured.missing() || held.missing() || pressure.missing())
        return needsFirst(run, reply);
    const std::string seen = gpm(measured.number()) + " held for " + figures(held.number(), 4) + " min at " +
                             figures(pressure.number(), 4) + " psi";
    constexpr double usualMost = 30; // psi a wash takes at most [common practice, no source]
    const bool tooLittle = lessThan(measured.number(), needed.number());
    if (tooLittle && lessThan(std::fmax(usualMost, least), pressure.number())) {
        reply.reason("measured " + seen +
                     ", more pressure than a wash needs, and a pump gives more against less: "
                     "open the drain until near " +
                     figures(least, 4) + " psi are left and measure again");
        return cannotTell;
    }
    if (tooLittle) // too little is too little, however short the test
        return atLeast(measured.number(), needed.number(),
                       "the wash takes " + gpm(needed.number()) + "; measured " + seen, reply);
    if (lessThan(pressure.number(), least)) {
        reply.reason("measured " + seen + "; a wash needs " + figures(least, 4) +
                     " psi at the valve: measure again against that pressure");
        return cannotTell;
    }
    if (lessThan(held.number(), time.number())) {
        reply.reason("measured " + seen + ", less than one wash of " + figures(time.number(), 4) +
                     " min: run it 15 minutes at the drain");
        return cannotTell;
    }
    return atLeast(measured.number(), needed.number(),
                   "the wash takes " + gpm(needed.number()) + "; measured " + seen, reply);
}

constexpr puteal_parameter rateTakes[] = {
    Parameter("flow", "gpm", "flow the well gives at the valve, see operating_flow")
        .hard(0, 10000)
        .usual(2, 30)
        .mayBeMissing(),
    Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20).mayBeMissing(),
    Parameter("rate", "gpm/ft^2", "backwash rate of the medium at the coldest water")
        .hard(0, 100)
        .usual(4, 30)
        .mayBeMissing(),
    Parameter("drain", "gpm", "flow that drain line and flow control pass")
        .hard(0, 10000)
        .usual(2, 30)
        .mayBeMissing(),
};
constexpr puteal_example rateExamples[] = {
    example("backwash_rate_test(13.4 gpm, 0.5454 ft^2, 10 gpm/ft^2, 8 gpm)", "works", 0, "computed",
            "definition"),
    example("backwash_rate_test(13.4 gpm, 1.3963 ft^2, 10.74 gpm/ft^2, 15 gpm)", "will not work", 0,
            "computed", "definition"),
    example("backwash_rate_test(10 gpm, 0.7854 ft^2, 12 gpm/ft^2, 10 gpm)", "marginal", 0, "computed",
            "definition"),
};
constexpr puteal_example rateRefusals[] = {
    refusal("backwash_rate_test(13.4 gpm, 0 ft^2, 10 gpm/ft^2, 8 gpm)",
            "`area` must be at least 0.01 ft^2; it is 0 ft^2"),
};

constexpr puteal_parameter measuredTakes[] = {
    washFlow,
    washTime,
    Parameter("measured_flow", "gpm", "steady flow seen at the drain")
        .hard(0, 10000)
        .usual(1, 50)
        .mayBeMissing(),
    Parameter("held", "min", "time it was held").hard(0, 10000).usual(1, 60).mayBeMissing(),
    Parameter("pressure", "psi", "pressure at the valve meanwhile").hard(0, 300).usual(10, 60).mayBeMissing(),
    Parameter("least_pressure", "psi", "least pressure a wash needs at the valve")
        .hard(0, 150)
        .usual(15, 40)
        .otherwise(20, "T"),
};
constexpr puteal_example measuredExamples[] = {
    example("backwash_measured_test(5.5 gpm, 16 min, 7 gpm, 16 min, 25 psi)", "works", 0, "common practice",
            "practice"),
    example("backwash_measured_test(5.5 gpm, 16 min, 7 gpm, 3 min, 25 psi)", "cannot tell yet", 0,
            "common practice", "practice"),
    example("backwash_measured_test(8 gpm, 16 min, 7 gpm, 3 min, 25 psi)", "will not work", 0,
            "common practice", "practice"),
    example("backwash_measured_test(8 gpm, 16 min, 7 gpm, 16 min, 60 psi)", "cannot tell yet", 0,
            "common practice", "practice"),
};
constexpr puteal_example measuredRefusals[] = {
    refusal("backwash_measured_test(5.5 gpm, -16 min, 7 gpm, 3 min, 25 psi)",
            "`wash_time` must be at least 0 min; it is -16 min"),
};

} // namespace

constinit const puteal_function washRateRow =
    Function("backwash_rate_test", "Backwash test 4: the rate",
             "Whether well and drain pass the flow that lifts the bed.", call<washRate>)
        .takes(rateTakes)
        .givesOneOf(verdictWords, "verdict; why(cell) says the flows")
        .by("lesser of flow and drain >= area * rate; near within a tenth")
        .from(washSources)
        .shownBy(rateExamples)
        .refusing(rateRefusals)
        .safely(wellSafety);

constinit const puteal_function washMeasuredRow =
    Function("backwash_measured_test", "Backwash test by a measured flow",
             "Whether a flow measured at the drain, held for a time at a pressure, is enough for the wash. "
             "Less than one wash of steady flow tells nothing yet.",
             call<washMeasured>)
        .takes(measuredTakes)
        .givesOneOf(verdictWords, "verdict; why(cell) says what was measured")
        .by("measured_flow >= wash_flow, near within a tenth; it tells nothing yet when held < wash_time or "
            "pressure < least_pressure, nor too little of it above 30 psi")
        .from(washSources)
        .shownBy(measuredExamples)
        .refusing(measuredRefusals)
        .safely(wellSafety);

} // namespace hydraulics
