/// Is a sample or a reading good enough to decide by: where it was taken, its age, a field kit's step,
/// purging.
#include <algorithm>

#include "diagnosis.h"
#include "verdicts.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

/// States of a limit as sheets show them.
constexpr const char *stateWords[] = {"within", "near", "outside", "no limit", "missing test", nullptr};
enum State : int { within, near, outside, noLimit, missingTest };

int tell(State state, const std::string &why, Reply &reply)
{
    reply.reason(why);
    return state;
}

constexpr const char *sideWords[] = {"at most", "at least", nullptr};

int fieldKit(const Argument &reading, const Argument &limit, const Argument &step, int side, Reply &reply)
{
    if (reading.missing())
        return tell(missingTest, "needs: " + named(reading), reply);
    const double low = limit.number() - step.number(), high = limit.number() + step.number();
    const std::string words = described(reading);
    const State under = side == 0 ? within : outside, over = side == 0 ? outside : within;
    // <0.2 with a step that reaches to 0.2 is under the band; >0.4 likewise over it.
    if (reading.below() ? atMost(reading.number(), low) : lessThan(reading.most(), low))
        return tell(
            under, words + " is below the limit " + limit.shown() + " by more than a step of " + step.shown(),
            reply);
    if (reading.above() ? atMost(high, reading.number()) : lessThan(high, reading.least()))
        return tell(
            over, words + " is above the limit " + limit.shown() + " by more than a step of " + step.shown(),
            reply);
    return tell(near,
                words + " does not decide against the limit " + limit.shown() + " with a step of " +
                    step.shown() + ": send a sample to a laboratory",
                reply);
}

constexpr const char *placeWords[] = {"raw tap", "after a device", "first draw", nullptr};
enum Place : int { rawTap, afterDevice, firstDraw };
constexpr const char *questionWords[] = {"well water", "plumbing", nullptr};

int sampleState(const Argument &place, const Argument &age, const Argument &steady, int question,
                const Argument &longest, Reply &reply)
{
    const bool plumbing = question == 1;
    if (place.missing())
        return tell(missingTest, "needs: where the sample was taken", reply);
    if (place.choice() == afterDevice)
        return tell(outside,
                    "taken after a device: it says nothing about the raw water; take one ahead of it", reply);
    if (plumbing && place.choice() == rawTap)
        return tell(outside, "run water shows the well: the plumbing asks for a first draw after a night",
                    reply);
    if (!plumbing && place.choice() == firstDraw)
        return tell(outside, "a first draw shows the plumbing: take one of run water", reply);
    if (age.missing())
        return tell(missingTest, "needs: the date of the sample", reply);
    if (!plumbing && steady.missing())
        return tell(missingTest, "needs: whether the water ran until temperature, pH and color held steady",
                    reply);
    const std::string old =
        "the sample is " + (age.shown().empty() ? figures(age.number()) + " day" : age.shown()) +
        " old, limit " + (longest.shown().empty() ? figures(longest.number()) + " day" : longest.shown());
    if (lessThan(longest.number(), age.number()))
        return tell(near, old + ": take a new one before anything is sold", reply);
    if (!plumbing && !steady.yes())
        return tell(near, "the water had not run until temperature, pH and color held steady", reply);
    return tell(within, old, reply);
}

constexpr const char *testWords[] = {
    "pH",   "hydrogen sulfide", "dissolved oxygen", "carbon dioxide", "temperature",
    "iron", "hardness",         "coliform",         nullptr};
enum Test : int { testPh, testSulfide, testOxygen, testCarbonDioxide, testTemperature, testIron };
constexpr const char *whereWords[] = {"at the site", "laboratory", "laboratory, fixed on the spot", nullptr};

int testPlace(int test, const Argument &where, Reply &reply)
{
    if (where.missing())
        return tell(missingTest, std::string("needs: where ") + testWords[test] + " was measured", reply);
    const bool site = where.choice() == 0, fixed = where.choice() == 2;
    if (test >= testIron)
        return site
                   ? tell(near,
                          std::string(testWords[test]) +
                              " at the site is a field reading: a laboratory decides",
                          reply)
                   : tell(within, std::string(testWords[test]) + " keeps in a bottle prepared for it", reply);
    if (site)
        return tell(within, std::string(testWords[test]) + " was measured at the site", reply);
    if (test == testSulfide && fixed)
        return tell(within, "hydrogen sulfide was fixed on the spot; that bottle serves no other test",
                    reply);
    return tell(outside,
                test == testPh
                    ? "pH read in a laboratory a day later is 0.5 to 1 too high: measure it at the site"
                    : std::string(testWords[test]) + " does not keep in a bottle: measure it at the site",
                reply);
}

double cupTime(const Argument &ph, Reply &reply)
{
    constexpr double whole = 24.0, usualTime = 2.0, slow = 7.0; // hr, hr, pH [common practice, no source]
    if (ph.missing() || lessThan(ph.number(), slow)) {
        reply.reason((ph.missing() ? std::string("pH not known") : "pH " + ph.shown() + " is below 7") +
                     ": iron shows too slowly for less than 24 h; a bleach cup answers at once");
        return whole;
    }
    reply.reason("pH " + ph.shown() + " is at least 7: dissolved iron shows in one to two hours");
    return usualTime;
}

double casingPurge(double stored, double flow, double volumes, Reply &reply)
{
    constexpr double hour = 60.0; // min, longer is no purge anybody waits for [common practice, no source]
    const double time = stored * volumes / flow;
    if (lessThan(hour, time))
        reply.caution(
            "long", "more than an hour: purge until temperature, pH and color hold steady instead, at a flow "
                    "the well stands");
    return time;
}

/// Whether the last readings before `end` all lie within a width of their mean.
bool steadyEnd(const double *end, std::size_t count, double width)
{
    const double *last = end - count;
    double mean = 0.0;
    for (std::size_t i = 0; i < count; ++i)
        mean += last[i] / static_cast<double>(count);
    return std::all_of(last, end, [&](double x) { return atMost(std::fabs(x - mean), width); });
}

/// Lines up to the last one that is filled in: those below are readings still to come.
std::size_t linesRead(const Argument &temperatures, const Argument &phs)
{
    std::size_t lines = temperatures.count();
    while (lines > 0 && std::isnan(temperatures.begin()[lines - 1]) && std::isnan(phs.begin()[lines - 1]))
        --lines;
    return lines;
}

double purgeSteady(const Argument &temperatures, const Argument &phs, double count, double width,
                   double phWidth, Reply &reply)
{
    if (temperatures.count() != phs.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    const std::size_t lines = linesRead(temperatures, phs);
    if (!(count >= 1 && count <= static_cast<double>(lines)))
        return reply.refuse(0, "fewer readings than are compared: read on, five minutes apart");
    const auto n = static_cast<std::size_t>(count);
    const double *warmEnd = temperatures.begin() + lines, *acidEnd = phs.begin() + lines;
    for (const double *end : {warmEnd, acidEnd})
        if (std::any_of(end - n, end, [](double x) { return std::isnan(x); }))
            return reply.refuse(0, "a line is blank: fill it or take it out of the range");
    const bool warm = steadyEnd(warmEnd, n, width), acid = steadyEnd(acidEnd, n, phWidth);
    reply.reason(std::string("temperature ") + (warm ? "holds" : "does not hold") + " within " +
                 figures(width) + " delta_degC and pH " + (acid ? "holds" : "does not hold") + " within " +
                 figures(phWidth) + " of the mean of the last " + std::to_string(n) + " readings");
    return warm && acid ? 1.0 : 0.0;
}

constexpr const char *practice[] = {"practice", nullptr};

constexpr puteal_parameter kitTakes[] = {
    Parameter("reading", "'u", "what the kit shows; blank is a missing test").mayBeMissing().mayBeBounded(),
    Parameter("limit", "'u", "limit it is held against"),
    Parameter("step", "'u", "smallest step of the kit").hard(0, HUGE_VAL),
    Parameter("side", "", "whether the limit is a most or a least").oneOf(sideWords).otherwise(0, "A"),
};
constexpr puteal_example kitExamples[] = {
    example("field_kit_state(0.1 mg/L as Fe, 0.3 mg/L as Fe, 0.1 mg/L as Fe)", "within", 0, "common practice",
            "practice"),
    example("field_kit_state(0.2 mg/L as Fe, 0.3 mg/L as Fe, 0.1 mg/L as Fe)", "near", 0, "common practice",
            "practice"),
    example("field_kit_state(0.5 mg/L as Fe, 0.3 mg/L as Fe, 0.1 mg/L as Fe)", "outside", 0,
            "common practice", "practice"),
    example("field_kit_state(7.4, 6.8, 0.5, \"at least\")", "within", 0, "common practice", "practice"),
};
constexpr puteal_example kitRefusals[] = {
    refusal("field_kit_state(0.2, 0.3, -0.1)", "`step` must be at least 0; it is -0.1")};

constexpr puteal_parameter sampleTakes[] = {
    Parameter("place", "", "where the sample was taken").oneOf(placeWords).mayBeMissing(),
    Parameter("age", "day", "age of the sample today").hard(0, 36500).usual(0, 3650).mayBeMissing(),
    Parameter("steady", "", "the water ran until temperature, pH and color held steady")
        .yesNo()
        .mayBeMissing(),
    Parameter("question", "", "what the sample is asked about").oneOf(questionWords).otherwise(0, "A"),
    Parameter("longest", "day", "age from which it is too old to sell by")
        .hard(1, 3650)
        .usual(30, 730)
        .otherwise(365, "T"),
};
constexpr puteal_example sampleExamples[] = {
    example("sample_state(\"raw tap\", 44 day, yes)", "within", 0, "common practice", "practice"),
    example("sample_state(\"raw tap\", 400 day, yes)", "near", 0, "common practice", "practice"),
    example("sample_state(\"after a device\", 44 day, yes)", "outside", 0, "common practice", "practice"),
    example("sample_state(\"first draw\", 10 day, no, \"plumbing\")", "within", 0, "common practice",
            "practice"),
};
constexpr puteal_example sampleRefusals[] = {
    refusal("sample_state(\"raw tap\", -3 day, yes)", "`age` must be at least 0 day; it is -3 day")};

constexpr puteal_parameter placeTakes[] = {
    Parameter("test", "", "what was measured").oneOf(testWords),
    Parameter("where", "", "where it was measured").oneOf(whereWords).mayBeMissing(),
};
constexpr const char *placeSources[] = {"vce356", "practice", nullptr};
constexpr puteal_example placeExamples[] = {
    example("test_place_state(\"hydrogen sulfide\", \"at the site\")", "within", 0, "published", "vce356"),
    example("test_place_state(\"hydrogen sulfide\", \"laboratory, fixed on the spot\")", "within", 0,
            "published", "vce356"),
    example("test_place_state(\"hydrogen sulfide\", \"laboratory\")", "outside", 0, "published", "vce356"),
    example("test_place_state(\"pH\", \"laboratory\")", "outside", 0, "common practice", "practice"),
    example("test_place_state(\"iron\", \"at the site\")", "near", 0, "common practice", "practice"),
};
constexpr puteal_example placeRefusals[] = {
    refusal("test_place_state(\"pH\", \"kitchen\")",
            "\"kitchen\" is not in the list: at the site, laboratory, laboratory, fixed on the spot")};

constexpr puteal_parameter cupTakes[] = {Parameter("ph", "", "pH measured at the site; blank counts as acid")
                                             .hard(0, 14)
                                             .usual(5, 9)
                                             .mayBeMissing()};
constexpr puteal_example cupExamples[] = {
    example("cup_standing_time(6.4)", "24 hr", 0, "common practice", "practice"),
    example("cup_standing_time(7.2)", "2 hr", 0, "common practice", "practice"),
};
constexpr puteal_example cupRefusals[] = {
    refusal("cup_standing_time(72)", "`ph` must be at most 14; it is 72")};

constexpr puteal_parameter casingTakes[] = {
    Parameter("stored", "gal", "water in the casing, see bore_storage").hard(0, 1e6).usual(20, 1000),
    Parameter("flow", "gpm", "flow the well stands").hard(0.01, 1000).usual(0.5, 30),
    Parameter("volumes", "", "casing volumes to draw").hard(0.1, 20).usual(1, 5).otherwise(3, "T"),
};
constexpr const char *casingSources[] = {"hb44", "colorado_purge", "practice", nullptr};
constexpr puteal_example casingExamples[] = {
    example("casing_purge_time(220.32 gal, 0.8 gpm)", "13.77 hr", 1e-6, "computed", "hb44"),
    example("casing_purge_time(65 gal, 5 gpm)", "39 min", 1e-9, "computed", "hb44"),
};
constexpr puteal_example casingRefusals[] = {
    refusal("casing_purge_time(220 gal, 0 gpm)", "`flow` must be at least 0.01 gpm; it is 0 gpm")};
constexpr puteal_caution casingCautions[] = {caution("long", "more than an hour")};

constexpr puteal_parameter steadyTakes[] = {
    Parameter("temperatures", "degC", "readings in their order").range(),
    Parameter("phs", "", "readings of pH in the same lines").range(),
    Parameter("count", "", "how many of the last readings are compared")
        .hard(2, 20)
        .usual(2, 5)
        .otherwise(3, "T"),
    Parameter("width", "delta_degC", "temperature may differ so much from the mean")
        .hard(0, 20)
        .usual(0.1, 2)
        .otherwise(1, "H"),
    Parameter("ph_width", "", "pH may differ so much from the mean")
        .hard(0, 3)
        .usual(0.05, 0.3)
        .otherwise(0.1, "H"),
};
constexpr const char *steadySources[] = {"colorado_purge", "practice", nullptr};
constexpr puteal_example steadyExamples[] = {
    example("t: 14 degC, 11.5 degC, 10.6 degC, 10.5 degC, 10.4 degC; p: 7.9, 7.4, 7.2, 7.2, 7.15; "
            "purge_steady(t[:], p[:])",
            "yes", 0, "computed", "colorado_purge"),
    example("t: 14 degC, 11.5 degC, 10.6 degC; p: 7.9, 7.4, 7.2; purge_steady(t[:], p[:])", "no", 0,
            "computed", "colorado_purge"),
    // the line of the reading still to come is blank
    example(
        "t: 11.5 degC, 10.6 degC, 10.5 degC, 10.4 degC, ; p: 7.4, 7.2, 7.2, 7.15, ; purge_steady(t[:], p[:])",
        "yes", 0, "computed", "colorado_purge"),
};
constexpr puteal_example steadyRefusals[] = {
    refusal("t: 14 degC, 11.5 degC; p: 7.9, 7.4; purge_steady(t[:], p[:])",
            "fewer readings than are compared: read on, five minutes apart"),
};

} // namespace

constinit const puteal_function fieldKitRow =
    Function("field_kit_state", "Field-kit reading beside a limit",
             "A field kit has a step: a reading within one step of a limit does not decide and goes to a "
             "laboratory.",
             call<fieldKit>)
        .takes(kitTakes)
        .givesOneOf(stateWords, "state, with limit, step and reading")
        .by("within a step of the limit: near; else within or outside by the side of the limit; blank: "
            "missing test")
        .from(practice)
        .shownBy(kitExamples)
        .refusing(kitRefusals)
        .safely("A field kit never settles a health question: coliform, nitrate, arsenic and lead go to a "
                "certified "
                "laboratory.");

constinit const puteal_function sampleStateRow =
    Function(
        "sample_state", "Is a sample good to decide by",
        "Judges where and when a sample was taken. A sample after a device or a first draw does not feed a "
        "diagnosis of the well; over 12 months old is near.",
        call<sampleState>)
        .takes(sampleTakes)
        .givesOneOf(stateWords, "state of the sample, with what is wrong")
        .by("outside: after a device, first draw for the well, run water for the plumbing; near: older than "
            "longest, or "
            "not run steady; blank: missing test")
        .from(practice)
        .shownBy(sampleExamples)
        .refusing(sampleRefusals);

constinit const puteal_function testPlaceRow =
    Function("test_place_state", "Where a test must be made",
             "pH, hydrogen sulfide, oxygen, carbon dioxide and temperature change in a bottle: they are "
             "measured at the "
             "site.",
             call<testPlace>)
        .takes(placeTakes)
        .givesOneOf(stateWords, "state of the reading, with what is wrong")
        .by("pH, sulfide, oxygen, carbon dioxide, temperature: at the site, sulfide also fixed on the spot; "
            "others in a "
            "laboratory")
        .from(placeSources)
        .shownBy(placeExamples)
        .refusing(placeRefusals);

constinit const puteal_function cupTimeRow =
    Function("cup_standing_time", "Waiting time of a cup test",
             "How long a cup of raw water must stand before it says anything about dissolved iron.",
             call<cupTime>)
        .takes(cupTakes)
        .gives("hr", "least standing time")
        .by("below pH 7 or unknown 24 h, else 2 h")
        .from(practice)
        .shownBy(cupExamples)
        .refusing(cupRefusals)
        .safely("Bleach and reducing agent never meet in a cup: the mixture heats and gives off gas.");

constinit const puteal_function casingPurgeRow =
    Function("casing_purge_time", "Time to purge a casing",
             "Time in which a flow draws so many casing volumes: on a weak well many hours, so that steady "
             "readings are "
             "the better sign.",
             call<casingPurge>)
        .takes(casingTakes)
        .gives("min", "time of the purge")
        .by("volumes * stored / flow")
        .from(casingSources)
        .shownBy(casingExamples)
        .refusing(casingRefusals)
        .warning(casingCautions);

constinit const puteal_function purgeSteadyRow =
    Function("purge_steady", "Have the readings held steady",
             "Whether temperature and pH held steady over the last readings, so that the sample is of the "
             "well and not "
             "of the pipe. Widths of 1 degC and 0.1 pH are printed in a state record; for temperature 0.2 "
             "degC is also "
             "in use (recalled).",
             call<purgeSteady>)
        .takes(steadyTakes)
        .givesYesNo("yes where both held steady")
        .by("each of the last count readings within width of their mean, for temperature and pH; blank lines "
            "at the end "
            "are readings to come")
        .from(steadySources)
        .shownBy(steadyExamples)
        .refusing(steadyRefusals);

} // namespace diagnosis
