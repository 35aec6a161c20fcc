/// Verdicts on the form of the iron, on the service flow of a bed, and on its backwash.
#include "diagnosis.h"
#include "verdicts.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

int screenForm(const Argument &form, bool takesDissolved, bool takesOxidized, bool takesBacterial,
               bool takesOrganic, Reply &reply)
{
    if (form.missing() || form.choice() == unknownForm)
        return needs(form, reply);
    bool takes = false;
    switch (form.choice()) {
    case dissolved:
        takes = takesDissolved;
        break;
    case oxidized:
        takes = takesOxidized;
        break;
    case mixed:
        takes = takesDissolved && takesOxidized;
        break;
    case bacterial:
        takes = takesBacterial;
        break;
    default: // colloidal iron needs the same handling as organic iron
        takes = takesOrganic;
    }
    const std::string which = ironFormWords[form.choice()];
    return settle(takes ? works : willNotWork,
                  takes ? "takes " + which + " iron" : "does not take " + which + " iron", reply);
}

int screenFlow(const Argument &continuous, const Argument &peak, double area, double usualLoading,
               double shortPeak, Reply &reply)
{
    constexpr double nearShare = 0.9; // flows within 10 % of a limit are near [common practice, no source]
    const auto over = [&](const Argument &flow, double limit) {
        return described(flow) + " is " + figures(flow.number() / area) + " gpm/ft^2 on the bed, limit " +
               figures(limit) + " gpm/ft^2";
    };
    const double steady = continuous.missing() ? 0.0 : continuous.number() / area;
    const double brief = peak.missing() ? 0.0 : peak.number() / area;
    if (!atMost(steady, usualLoading))
        return settle(willNotWork, over(continuous, usualLoading), reply);
    if (!atMost(brief, shortPeak))
        return settle(willNotWork, over(peak, shortPeak), reply);
    if (continuous.missing())
        return needs(continuous, reply);
    if (peak.missing())
        return needs(peak, reply);
    if (!atMost(brief, usualLoading))
        return settle(marginal, over(peak, usualLoading) + ", good for 10 minutes only", reply);
    if (!atMost(steady, usualLoading * nearShare))
        return settle(marginal, over(continuous, usualLoading), reply);
    return settle(works, over(continuous, usualLoading), reply);
}

int screenBackwash(const Argument &available, const Argument &needed, double near, Reply &reply)
{
    if (available.missing())
        return needs(available, reply);
    if (!atMost(needed.number(), available.number()))
        return settle(willNotWork,
                      described(available) + " is less than the " + needed.shown() + " a wash needs", reply);
    if (!atMost(needed.number() * (1.0 + near), available.number()))
        return settle(marginal, described(available) + " is barely the " + needed.shown() + " a wash needs",
                      reply);
    return settle(works, described(available) + " covers the " + needed.shown() + " a wash needs", reply);
}

constexpr const char *sources[] = {"practice", nullptr};

constexpr puteal_parameter formTakes[] = {
    Parameter("form", "", "form the iron is in").oneOf(ironFormWords).mayBeMissing(),
    Parameter("dissolved", "", "the method takes dissolved iron").yesNo(),
    Parameter("oxidized", "", "the method takes oxidized iron").yesNo(),
    Parameter("bacterial", "", "the method takes iron bacteria").yesNo(),
    Parameter("organic", "", "the method takes organic and colloidal iron").yesNo(),
};
constexpr puteal_example formExamples[] = {
    example("screen_form(\"dissolved\", yes, no, no, no)", "works", 0, "common practice", "practice"),
    example("screen_form(\"mixed\", yes, no, no, no)", "will not work", 0, "common practice", "practice"),
    example("screen_form(\"unknown\", yes, yes, yes, yes)", "cannot tell yet", 0, "common practice",
            "practice"),
};
constexpr puteal_example formRefusals[] = {
    refusal(
        "screen_form(\"rusty\", yes, no, no, no)",
        "\"rusty\" is not in the list: dissolved, oxidized, mixed, bacterial, organic, colloidal, unknown"),
};

constexpr puteal_parameter flowTakes[] = {
    Parameter("continuous", "gpm", "flow that runs for long").hard(0, 1000).usual(0, 50).mayBeMissing(),
    Parameter("peak", "gpm", "short peak, up to 10 minutes").hard(0, 1000).usual(0, 50).mayBeMissing(),
    Parameter("area", "ft^2", "area of the bed").hard(0.01, 1000).usual(0.2, 20),
    Parameter("usual_loading", "gpm/ft^2", "highest loading for a flow that lasts")
        .hard(0.1, 100)
        .usual(2, 10)
        .otherwise(5, "T"),
    Parameter("short_peak", "gpm/ft^2", "highest loading for a short peak")
        .hard(0.1, 100)
        .usual(5, 15)
        .otherwise(10, "T"),
};
constexpr puteal_example flowExamples[] = {
    example("screen_flow(2 gpm, 3 gpm, 0.7854 ft^2)", "works", 0, "common practice", "practice"),
    example("screen_flow(3 gpm, 7 gpm, 0.7854 ft^2)", "marginal", 0, "common practice", "practice"),
    example("screen_flow(3 gpm, 9 gpm, 0.7854 ft^2)", "will not work", 0, "common practice", "practice"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("screen_flow(2 gpm, 3 gpm, 0 ft^2)", "`area` must be at least 0.01 ft^2; it is 0 ft^2"),
};

constexpr puteal_parameter backwashTakes[] = {
    Parameter("available", "gpm", "flow measured at the site, held for the length of a wash")
        .hard(0, 1000)
        .usual(0, 50)
        .mayBeMissing(),
    Parameter("needed", "gpm", "flow the wash needs at the coldest water").hard(0, 1000).usual(0, 50),
    Parameter("near", "", "margin above the need that counts as marginal")
        .hard(0, 1)
        .usual(0, 0.5)
        .otherwise(0.1, "T"),
};
constexpr puteal_example backwashExamples[] = {
    example("screen_backwash(7 gpm, 9.42 gpm)", "will not work", 0, "common practice", "practice"),
    example("screen_backwash(7 gpm, 6.54 gpm)", "marginal", 0, "common practice", "practice"),
    example("screen_backwash(7 gpm, 5.45 gpm)", "works", 0, "common practice", "practice"),
};
constexpr puteal_example backwashRefusals[] = {
    refusal("screen_backwash(-7 gpm, 5.45 gpm)", "`available` must be at least 0 gpm; it is -7 gpm"),
};

} // namespace

constinit const puteal_function screenFormRow =
    Function("screen_form", "Screen: form of the iron",
             "Judges whether a method takes the form the iron is in.", call<screenForm>)
        .takes(formTakes)
        .givesOneOf(verdictWords, "verdict on the form")
        .by("mixed needs dissolved and oxidized; colloidal counts as organic; unknown: cannot tell yet")
        .from(sources)
        .shownBy(formExamples)
        .refusing(formRefusals);

constinit const puteal_function screenFlowRow =
    Function("screen_flow", "Screen: service flow",
             "Judges a bed on two flows: what runs for long and what peaks for up to 10 minutes.",
             call<screenFlow>)
        .takes(flowTakes)
        .givesOneOf(verdictWords, "verdict on the service flow")
        .by("continuous / area <= usual_loading (from 0.9 of it marginal); peak / area <= usual_loading, to "
            "short_peak marginal, above will not work")
        .from(sources)
        .shownBy(flowExamples)
        .refusing(flowRefusals);

constinit const puteal_function screenBackwashRow =
    Function("screen_backwash", "Screen: backwash flow",
             "Judges whether the flow measured at the site washes the bed.", call<screenBackwash>)
        .takes(backwashTakes)
        .givesOneOf(verdictWords, "verdict on the backwash")
        .by("will not work: available < needed; marginal: available < needed * (1 + near); else works")
        .from(sources)
        .shownBy(backwashExamples)
        .refusing(backwashRefusals)
        .safely("An under-washed bed looks fine for months and then fouls. Work on a well or pump belongs to "
                "a licensed driller or pump installer.");

} // namespace diagnosis
