/// Verdicts of a method on one limit each. A blank test is never "works"; a bounded reading decides only if
/// all it allows agrees; more of what is limited never makes a verdict better.
#include "diagnosis.h"
#include "verdicts.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

/// Worst of the ends of what a reading allows, when both agree; nothing otherwise.
template<class Judge>
bool agree(const Argument &value, Judge judge, Verdict &verdict)
{
    if (!value.below() && !value.above()) {
        verdict = judge(value.number());
        return true;
    }
    const Verdict atLeast = judge(value.least()), atMostEnd = judge(value.most());
    verdict = atLeast;
    return atLeast == atMostEnd;
}

int screenAtMost(const Argument &value, const Argument &limit, double near, Reply &reply)
{
    if (value.missing())
        return needs(value, reply);
    // The bound of ">3" is itself not reached, so it is already above a limit of 3.
    if (value.above() && atMost(limit.number(), value.number()))
        return settle(willNotWork, described(value) + " is above the limit " + limit.shown(), reply);
    const auto judge = [&](double x) {
        return !atMost(x, limit.number()) ? willNotWork : atMost(x, limit.number() - near) ? works : marginal;
    };
    Verdict verdict = cannotTell;
    if (!agree(value, judge, verdict))
        return settle(cannotTell,
                      described(value) + " does not show whether it is at most " + limit.shown() +
                          "; ask for a finer test",
                      reply);
    const char *words = verdict == willNotWork ? " is above the limit "
                        : verdict == marginal  ? " is close to the limit "
                                               : " is within the limit ";
    return settle(verdict, described(value) + words + limit.shown(), reply);
}

int screenAtLeast(const Argument &value, const Argument &limit, double near, Reply &reply)
{
    if (value.missing())
        return needs(value, reply);
    // The bound of "<7" is itself not reached, so it is already below a limit of 7.
    if (value.below() && atMost(value.number(), limit.number()))
        return settle(willNotWork, described(value) + " is below the limit " + limit.shown(), reply);
    const auto judge = [&](double x) {
        return !atMost(limit.number(), x) ? willNotWork : atMost(limit.number() + near, x) ? works : marginal;
    };
    Verdict verdict = cannotTell;
    if (!agree(value, judge, verdict))
        return settle(cannotTell,
                      described(value) + " does not show whether it is at least " + limit.shown() +
                          "; ask for a finer test",
                      reply);
    const char *words = verdict == willNotWork ? " is below the limit "
                        : verdict == marginal  ? " is close to the limit "
                                               : " is above the limit ";
    return settle(verdict, described(value) + words + limit.shown(), reply);
}

int screenNone(const Argument &value, const Argument &detectable, Reply &reply)
{
    if (value.missing())
        return needs(value, reply);
    if (value.above() && atMost(detectable.number(), value.number()))
        return settle(willNotWork, described(value) + ": none is tolerated", reply);
    Verdict verdict = cannotTell;
    const auto judge = [&](double x) { return atMost(x, detectable.number()) ? works : willNotWork; };
    if (!agree(value, judge, verdict))
        return settle(cannotTell,
                      described(value) + " does not show that there is none; ask for a test that detects " +
                          detectable.shown(),
                      reply);
    if (verdict == willNotWork)
        return settle(willNotWork,
                      described(value) + ": none is tolerated, " + detectable.shown() + " is detectable",
                      reply);
    return settle(works, described(value) + " is not above the detectable " + detectable.shown(), reply);
}

int screenNo(const Argument &condition, Reply &reply)
{
    if (condition.missing())
        return needs(condition, reply);
    return settle(condition.yes() ? willNotWork : works,
                  named(condition) + (condition.yes() ? ": yes, must be no" : ": no"), reply);
}

int screenYes(const Argument &condition, Reply &reply)
{
    if (condition.missing())
        return needs(condition, reply);
    return settle(condition.yes() ? works : willNotWork,
                  named(condition) + (condition.yes() ? ": yes" : ": no, must be yes"), reply);
}

constexpr const char *sources[] = {"practice", nullptr};
constexpr double none = 0.0;

constexpr puteal_parameter atMostTakes[] = {
    Parameter("value", "'u", "the water's value; a blank test gives cannot tell yet")
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("limit", "'u", "highest value the method takes"),
    Parameter("near", "'u", "width of the band below the limit that counts as marginal")
        .hard(0, HUGE_VAL)
        .otherwise(none, "A"),
};
constexpr puteal_example atMostExamples[] = {
    example("screen_at_most(6.2 mg/L as Fe, 3 mg/L as Fe)", "will not work", 0, "common practice",
            "practice"),
    example("screen_at_most(3 mg/L as Fe, 3 mg/L as Fe)", "works", 0, "computed", "practice"),
    example("screen_at_most(2.5 mg/L as Fe, 3 mg/L as Fe, 0.6 mg/L as Fe)", "marginal", 0, "common practice",
            "practice"),
};
constexpr puteal_example atMostRefusals[] = {
    refusal("screen_at_most(2.5, 3, -1)", "`near` must be at least 0; it is -1"),
};

constexpr puteal_parameter atLeastTakes[] = {
    Parameter("value", "'u", "the water's value; a blank test gives cannot tell yet")
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("limit", "'u", "lowest value the method takes"),
    Parameter("near", "'u", "width of the band above the limit that counts as marginal")
        .hard(0, HUGE_VAL)
        .otherwise(none, "A"),
};
constexpr puteal_example atLeastExamples[] = {
    example("screen_at_least(6.4, 7)", "will not work", 0, "common practice", "practice"),
    example("screen_at_least(7.1, 7, 0.2)", "marginal", 0, "common practice", "practice"),
    example("screen_at_least(7.6, 7, 0.2)", "works", 0, "common practice", "practice"),
};
constexpr puteal_example atLeastRefusals[] = {
    refusal("screen_at_least(7.6, 7, -0.2)", "`near` must be at least 0; it is -0.2"),
};

constexpr puteal_parameter noneTakes[] = {
    Parameter("value", "'u", "the water's value; a blank test gives cannot tell yet")
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("detectable", "'u", "what a fit test detects or a nose notices").hard(0, HUGE_VAL),
};
constexpr puteal_example noneExamples[] = {
    example("screen_none(0.4 mg/L as H2S, 0.05 mg/L as H2S)", "will not work", 0, "common practice",
            "practice"),
    example("screen_none(0 mg/L as H2S, 0.05 mg/L as H2S)", "works", 0, "common practice", "practice"),
};
constexpr puteal_example noneRefusals[] = {
    refusal("screen_none(0.4, -1)", "`detectable` must be at least 0; it is -1"),
};

constexpr puteal_parameter noTakes[] = {
    Parameter("condition", "", "must be no; blank gives cannot tell yet").yesNo().mayBeMissing(),
};
constexpr puteal_example noExamples[] = {
    example("screen_no(yes)", "will not work", 0, "computed", "practice"),
    example("screen_no(no)", "works", 0, "computed", "practice"),
};
constexpr puteal_parameter yesTakes[] = {
    Parameter("condition", "", "must be yes; blank gives cannot tell yet").yesNo().mayBeMissing(),
};
constexpr puteal_example yesExamples[] = {
    example("screen_yes(yes)", "works", 0, "computed", "practice"),
    example("screen_yes(no)", "will not work", 0, "computed", "practice"),
};
constexpr puteal_example noRefusals[] = {
    refusal("screen_no(2 ft)", "screen_no takes condition as yes or no, not 2 ft")};
constexpr puteal_example yesRefusals[] = {
    refusal("screen_yes(2 ft)", "screen_yes takes condition as yes or no, not 2 ft")};

} // namespace

constinit const puteal_function screenAtMostRow =
    Function("screen_at_most", "Screen: at most", "Judges one limit of a method that must not be passed.",
             call<screenAtMost>)
        .takes(atMostTakes)
        .givesOneOf(verdictWords, "verdict on this limit, with limit and value")
        .by("will not work: value > limit; marginal: value > limit - near; else works; a bounded reading "
            "decides only if all it allows agrees")
        .from(sources)
        .shownBy(atMostExamples)
        .refusing(atMostRefusals);

constinit const puteal_function screenAtLeastRow =
    Function("screen_at_least", "Screen: at least", "Judges one limit of a method that must be reached.",
             call<screenAtLeast>)
        .takes(atLeastTakes)
        .givesOneOf(verdictWords, "verdict on this limit, with limit and value")
        .by("will not work: value < limit; marginal: value < limit + near; else works; a bounded reading "
            "decides only if all it allows agrees")
        .from(sources)
        .shownBy(atLeastExamples)
        .refusing(atLeastRefusals);

constinit const puteal_function screenNoneRow =
    Function("screen_none", "Screen: none tolerated", "Judges a method that tolerates none of something.",
             call<screenNone>)
        .takes(noneTakes)
        .givesOneOf(verdictWords, "verdict on this limit, with the value")
        .by("will not work: value > detectable; else works; a bounded reading decides only if all it allows "
            "agrees")
        .from(sources)
        .shownBy(noneExamples)
        .refusing(noneRefusals);

constinit const puteal_function screenNoRow =
    Function("screen_no", "Screen: must not be", "Judges a condition that must not hold.", call<screenNo>)
        .takes(noTakes)
        .givesOneOf(verdictWords, "verdict on this condition")
        .by("no: works; yes: will not work; blank: cannot tell yet")
        .from(sources)
        .shownBy(noExamples)
        .refusing(noRefusals);

constinit const puteal_function screenYesRow =
    Function("screen_yes", "Screen: must be", "Judges a condition that must hold.", call<screenYes>)
        .takes(yesTakes)
        .givesOneOf(verdictWords, "verdict on this condition")
        .by("yes: works; no: will not work; blank: cannot tell yet")
        .from(sources)
        .shownBy(yesExamples)
        .refusing(yesRefusals);

} // namespace diagnosis
