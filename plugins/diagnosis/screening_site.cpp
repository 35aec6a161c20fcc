/// Verdicts on what the site allows: how a feeder follows the pump, where wash water may go, a cartridge's
/// grade.
#include "diagnosis.h"
#include "verdicts.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr const char *pumpWords[] = {"switched by pressure", "constant pressure", "variable speed", nullptr};
enum Pump : int { switched, constantPressure, variableSpeed };
constexpr const char *controlWords[] = {"runs with the pump", "flow switch", "proportional to flow", nullptr};
enum Control : int { withPump, flowSwitch, proportional };

int screenFeeder(const Argument &pump, const Argument &control, const Argument &set, const Argument &least,
                 Reply &reply)
{
    constexpr double evenRatio = 2.0; // dose at least flow over dose at set flow [common practice, no source]
    if (pump.missing())
        return needs(pump, reply);
    if (control.missing())
        return needs(control, reply);
    const std::string how = controlWords[control.choice()];
    if (control.choice() == proportional)
        return settle(works, "the feeder is proportional to flow: the dose stays the same at any flow",
                      reply);
    if (pump.choice() == switched)
        return settle(works,
                      "the pump is switched by pressure and runs at one rate: a feeder with " + how +
                          " meets that rate",
                      reply);
    if (set.missing())
        return needs(set, reply);
    if (least.missing())
        return needs(least, reply);
    if (lessThan(set.number(), least.number()))
        return settle(willNotWork, "the least flow is above the flow the feeder is set for: set it anew",
                      reply);
    const double ratio = set.number() / least.number();
    const std::string words = "set for " + described(set) + " the feeder gives " + figures(ratio) +
                              " times the dose at " + described(least) + " on a pump of " +
                              pumpWords[pump.choice()];
    if (atMost(ratio, 1.0 + 0.1)) // flows within 10 % are the same [common practice, no source]
        return settle(works, words, reply);
    if (control.choice() == withPump || lessThan(evenRatio, ratio))
        return settle(willNotWork,
                      words + ", limit " + figures(control.choice() == withPump ? 1.1 : evenRatio) +
                          ": make it proportional to flow",
                      reply);
    return settle(marginal, words + ", limit " + figures(evenRatio) + ": proportional to flow is better",
                  reply);
}

constexpr const char *drainWords[] = {"allowed", "allowed with a permit", "ask", "not allowed", nullptr};
enum Drain : int { allowed, withPermit, ask, notAllowed };

int screenDischarge(const Argument &rule, Reply &reply)
{
    if (rule.missing() || rule.choice() == ask)
        return settle(cannotTell, "needs: what the local health office says on wash water", reply);
    if (rule.choice() == withPermit)
        return settle(marginal, "wash water: allowed with a permit, which must be there before the work",
                      reply);
    return rule.choice() == allowed
               ? settle(works, "wash water: allowed by the local rule, over an air gap", reply)
               : settle(willNotWork, "wash water: not allowed by the local rule", reply);
}

int screenGrade(const Argument &grade, double fine, double coarse, Reply &reply)
{
    if (grade.missing())
        return needs(grade, reply);
    const std::string words = described(grade), floc = ": fresh iron floc is 0.1 to 10 micron";
    if (atMost(grade.number(), fine))
        return settle(marginal,
                      words + " is at most " + figures(fine) + " micron" + floc + ", it holds a part only",
                      reply);
    if (lessThan(coarse, grade.number()))
        return settle(willNotWork, words + " is above the limit " + figures(coarse) + " micron" + floc,
                      reply);
    return settle(
        marginal,
        words + " is within the limit " + figures(coarse) + " micron" + floc + ", much of it passes", reply);
}

constexpr const char *sources[] = {"practice", "hb44", nullptr};
constexpr puteal_parameter feederTakes[] = {
    Parameter("pump", "", "how the well pump is run").oneOf(pumpWords).mayBeMissing(),
    Parameter("control", "", "what starts and paces the feeder").oneOf(controlWords).mayBeMissing(),
    Parameter("set_flow", "gpm", "flow the feeder is set for").hard(0.1, 1000).usual(1, 30).mayBeMissing(),
    Parameter("least_flow", "gpm", "least flow at which it runs")
        .hard(0.01, 1000)
        .usual(0.2, 20)
        .mayBeMissing(),
};
constexpr puteal_example feederExamples[] = {
    // ten times the dose at a tenth of the flow
    example("screen_feeder(\"constant pressure\", \"runs with the pump\", 10 gpm, 1 gpm)", "will not work", 0,
            "computed", "hb44"),
    example("screen_feeder(\"constant pressure\", \"proportional to flow\", 10 gpm, 1 gpm)", "works", 0,
            "common practice", "practice"),
    example("screen_feeder(\"variable speed\", \"flow switch\", 8 gpm, 5 gpm)", "marginal", 0,
            "common practice", "practice"),
    example("screen_feeder(\"switched by pressure\", \"runs with the pump\", 8 gpm, 8 gpm)", "works", 0,
            "common practice", "practice"),
};
constexpr puteal_example feederRefusals[] = {
    refusal("screen_feeder(\"constant pressure\", \"flow switch\", 10 gpm, 0 gpm)",
            "`least_flow` must be at least 0.01 gpm; it is 0 gpm")};

constexpr const char *drainSources[] = {"massdep_title5", "practice", nullptr};
constexpr puteal_parameter drainTakes[] = {
    Parameter("rule", "", "local rule on the place wash water goes to; ask is a missing test")
        .oneOf(drainWords)
        .mayBeMissing()};
constexpr puteal_example drainExamples[] = {
    // softener waste to any septic system in Massachusetts
    example("screen_discharge(\"not allowed\")", "will not work", 0, "published", "massdep_title5"),
    // to a drywell with the approval of the local Board of Health
    example("screen_discharge(\"allowed with a permit\")", "marginal", 0, "published", "massdep_title5"),
    example("screen_discharge(\"ask\")", "cannot tell yet", 0, "common practice", "practice"),
    example("screen_discharge(\"allowed\")", "works", 0, "common practice", "practice"),
};
constexpr puteal_example drainRefusals[] = {
    refusal("screen_discharge(\"maybe\")",
            "\"maybe\" is not in the list: allowed, allowed with a permit, ask, not allowed")};

constexpr const char *habit[] = {"practice", nullptr};
constexpr puteal_parameter gradeTakes[] = {
    Parameter("grade", "um", "nominal grade of the cartridge").hard(0.05, 1000).usual(0.5, 50).mayBeMissing(),
    Parameter("fine", "um", "grade from which down most floc is held")
        .hard(0.05, 100)
        .usual(0.5, 5)
        .otherwise(1, "T"),
    Parameter("coarse", "um", "grade above which floc passes")
        .hard(0.05, 1000)
        .usual(5, 30)
        .otherwise(10, "T"),
};
constexpr puteal_example gradeExamples[] = {
    example("screen_cartridge_grade(30 um)", "will not work", 0, "common practice", "practice"),
    example("screen_cartridge_grade(5 um)", "marginal", 0, "common practice", "practice"),
    example("screen_cartridge_grade(1 um)", "marginal", 0, "common practice", "practice"),
};
constexpr puteal_example gradeRefusals[] = {
    refusal("screen_cartridge_grade(0 um)", "`grade` must be at least 0.05 um; it is 0 um")};

} // namespace

constinit const puteal_function screenFeederRow =
    Function("screen_feeder", "Screen: feeder and pump",
             "Judges whether a chemical feeder keeps its dose on this pump. On a constant-pressure or "
             "variable-speed pump "
             "a feeder set for 10 gpm gives ten times the dose at 1 gpm.",
             call<screenFeeder>)
        .takes(feederTakes)
        .givesOneOf(verdictWords, "verdict on the feeder, with the dose at least flow")
        .by("proportional, or a pump switched by pressure: works; else set_flow / least_flow to 1.1 works; "
            "with a flow "
            "switch to 2 marginal; above will not work")
        .from(sources)
        .shownBy(feederExamples)
        .refusing(feederRefusals)
        .safely("An overdose of chlorine or peroxide reaches the taps: test the residual at low flow. Bleach "
                "never with "
                "acid, ammonia, peroxide, permanganate or resin cleaner.");

constinit const puteal_function screenDischargeRow =
    Function("screen_discharge", "Screen: place for wash water",
             "Judges the local rule on wash water. \"ask\" is a missing test, never within.",
             call<screenDischarge>)
        .takes(drainTakes)
        .givesOneOf(verdictWords, "verdict on the place for wash water")
        .by("allowed: works; with a permit: marginal; ask or blank: cannot tell yet; not allowed: will not "
            "work")
        .from(drainSources)
        .shownBy(drainExamples)
        .refusing(drainRefusals)
        .safely("Rules on wash water and septic systems differ by state; some bar softener waste altogether. "
                "Confirm "
                "with the local health office.");

constinit const puteal_function screenGradeRow =
    Function("screen_cartridge_grade", "Screen: grade of a sediment cartridge",
             "Judges a sediment cartridge against oxidized iron. Even a fine one holds a part of the floc, "
             "and dissolved "
             "iron passes any: it is the cheapest thing to try.",
             call<screenGrade>)
        .takes(gradeTakes)
        .givesOneOf(verdictWords, "verdict on the grade")
        .by("above coarse: will not work; else marginal, since floc of 0.1 micron passes any of them")
        .from(habit)
        .shownBy(gradeExamples)
        .refusing(gradeRefusals);

} // namespace diagnosis
