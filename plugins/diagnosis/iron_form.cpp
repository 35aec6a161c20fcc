/// Iron form, its confidence and the test that would settle the doubt: three answers over one scoring.
#include "diagnosis.h"
#include "observations.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

/// Next tests, in the order of the choice list.
constexpr const char *nextTestWords[] = {"nothing more", "laboratory pair, filtered and unfiltered",
                                         "24 h cup",     "reducing-agent cup",
                                         "tannin test",  "bacteria test",
                                         nullptr};
enum NextTest : int { nothingMore, laboratoryPair, longCup, reducingCup, tanninTest, bacteriaTest };

constexpr double organicBound = 0.3; // mg/L dissolved iron beside organic color [common practice, no source]
constexpr double swapMargin = 1.2;   // filtered above total by more is no noise [common practice, no source]

std::string joined(const std::vector<std::string> &parts, const char *between)
{
    std::string out;
    for (const std::string &part : parts)
        out += (out.empty() ? "" : between) + part;
    return out;
}

bool pairIsSwapped(const Observations &seen)
{
    return !seen.totalIron.missing() && !seen.dissolvedIron.missing() &&
           lessThan(seen.totalIron.most() * swapMargin, seen.dissolvedIron.least());
}

double refuseSwapped(Reply &reply)
{
    return reply.refuse(
        7, "the filtered sample shows more iron than the unfiltered one: look for swapped bottles or a "
           "dirty filter");
}

std::string reasonFor(const Observations &seen, const Scoring &scoring, FormVerdict verdict)
{
    if (seen.none())
        return "no observation yet";
    std::string words = joined(scoring.evidence, ", ");
    if (words.empty())
        words = "nothing that tells one form from another";
    if (verdict.form == unknownForm)
        words = "the observations do not decide: " + words;
    if (verdict.form == organic && !seen.dissolvedIron.missing() &&
        lessThan(organicBound, seen.dissolvedIron.least()))
        words += "; organic-bound iron: make a jar test first";
    if (verdict.form == bacterial) {
        Scoring rest = scoring;
        rest.points[scoredBacterial] = 0;
        const Scored second = rest.best();
        constexpr const char *names[scoredCount] = {"dissolved", "oxidized", "", "organic", "colloidal"};
        if (second != scoredBacterial && rest.points[second] >= enoughPoints)
            words += std::string("; beside it ") + names[second] + " iron";
    }
    if (!scoring.notes.empty())
        words += "; " + joined(scoring.notes, "; ");
    return words;
}

NextTest settle(NextTest test, const char *why, Reply &reply)
{
    reply.reason(why);
    return test;
}

NextTest nextTest(const Observations &seen, const Scoring &scoring, FormVerdict verdict, Reply &reply)
{
    constexpr double sure = 0.9; // no more cup tests from here [common practice, no source]
    if (seen.none())
        return settle(longCup,
                      "no observation yet: draw raw water into a white cup and look again after 24 h", reply);
    if (verdict.form == bacterial && verdict.confidence < sure)
        return settle(bacteriaTest, "a culture or a microscope tells iron bacteria from mineral slime",
                      reply);
    const bool maybeOrganic = verdict.form == organic || verdict.form == colloidal;
    if (maybeOrganic && seen.tannin.missing())
        return settle(tanninTest, "tannin tells organic color from fine iron", reply);
    if (verdict.confidence >= sure)
        return settle(nothingMore, "what was seen agrees", reply);
    if (!seen.swampySmell.missing() && seen.swampySmell.yes() && seen.slime.missing())
        return settle(bacteriaTest, "a swampy smell points to iron bacteria: look for slime in the tank",
                      reply);
    if (!scoring.standingCounts)
        return settle(longCup, "a cup that stood 24 h is missing or does not count yet", reply);
    const bool colored = !seen.draw.missing() && seen.draw.choice() != drawnClear;
    if (colored && seen.reducingCup.missing())
        return settle(reducingCup,
                      "a reducing agent clears iron and leaves organic color; never mix it with bleach",
                      reply);
    if (scoring.share == FilteredShare::notKnown)
        return settle(laboratoryPair, "the share of iron that passes the filter settles it", reply);
    if (seen.tannin.missing() && verdict.form == unknownForm)
        return settle(tanninTest, "tannin tells organic color from fine iron", reply);
    return settle(nothingMore, "no cheap test is left: make a jar test of the method", reply);
}

double ironForm(const Argument &draw, const Argument &standing, const Argument &reducing,
                const Argument &slime, const Argument &smell, const Argument &total, const Argument &filtered,
                const Argument &tannin, const Argument &ph, const Argument &waited, Reply &reply)
{
    const Observations seen{draw, standing, reducing, slime, smell, total, filtered, tannin, ph, waited};
    if (pairIsSwapped(seen))
        return refuseSwapped(reply);
    const Scoring scoring = scoreOf(seen);
    const FormVerdict verdict = verdictOf(seen, scoring);
    reply.reason(reasonFor(seen, scoring, verdict));
    return verdict.form;
}

double ironFormConfidence(const Argument &draw, const Argument &standing, const Argument &reducing,
                          const Argument &slime, const Argument &smell, const Argument &total,
                          const Argument &filtered, const Argument &tannin, const Argument &ph,
                          const Argument &waited, Reply &reply)
{
    const Observations seen{draw, standing, reducing, slime, smell, total, filtered, tannin, ph, waited};
    if (pairIsSwapped(seen))
        return refuseSwapped(reply);
    const Scoring scoring = scoreOf(seen);
    const FormVerdict verdict = verdictOf(seen, scoring);
    reply.reason(reasonFor(seen, scoring, verdict));
    return verdict.confidence;
}

double ironFormNextTest(const Argument &draw, const Argument &standing, const Argument &reducing,
                        const Argument &slime, const Argument &smell, const Argument &total,
                        const Argument &filtered, const Argument &tannin, const Argument &ph,
                        const Argument &waited, Reply &reply)
{
    const Observations seen{draw, standing, reducing, slime, smell, total, filtered, tannin, ph, waited};
    if (pairIsSwapped(seen))
        return refuseSwapped(reply);
    const Scoring scoring = scoreOf(seen);
    return nextTest(seen, scoring, verdictOf(seen, scoring), reply);
}

constexpr puteal_parameter takes[] = {
    Parameter("draw", "", "raw water in a white cup, fresh from the tap").oneOf(drawWords).mayBeMissing(),
    Parameter("standing", "", "the same cup after it stood").oneOf(standingWords).mayBeMissing(),
    Parameter("reducing_cup", "", "colored water with a pinch of reducing agent, after 15 minutes")
        .oneOf(cupWords)
        .mayBeMissing(),
    Parameter("slime", "", "gelatinous film below the water line of the toilet tank, or strings")
        .yesNo()
        .mayBeMissing(),
    Parameter("swampy_smell", "", "swampy, oily or cucumber smell").yesNo().mayBeMissing(),
    Parameter("total_iron", "mg/L as Fe", "laboratory: iron of the unfiltered, acidified raw sample")
        .hard(0, 1000)
        .usual(0, 30)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("dissolved_iron", "mg/L as Fe",
              "laboratory: iron of the sample filtered in the field before acid")
        .hard(0, 1000)
        .usual(0, 30)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("tannin", "mg/L as tannin", "tannin of the raw water")
        .hard(0, 1000)
        .usual(0, 10)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("ph", "", "pH measured at the site").hard(0, 14).usual(5, 9).mayBeMissing(),
    Parameter("waited", "hr", "how long the cup stood").hard(0, 1000).usual(0, 72).mayBeMissing(),
};
constexpr const char *sources[] = {"practice",    "standing_glass", "iron_pamphlet",
                                   "wsc_hotline", "vce356",         nullptr};
constexpr puteal_example formExamples[] = {
    example("iron_form(\"clear\", \"rust deposit\", \"clears\", no, no, 3 mg/L as Fe, 2.8 mg/L as Fe, 0 mg/L "
            "as tannin, 7.2, 24 hr)",
            "dissolved", 0, "common practice", "practice"),
    example("iron_form(\"rust\", \"settles\", \"clears\", no, no, 3 mg/L as Fe, 0.3 mg/L as Fe, 0 mg/L as "
            "tannin, 7.2, 24 hr)",
            "oxidized", 0, "common practice", "practice"),
    example("iron_form(\"yellow or tea\", \"stays even\", \"stays\", no, no, 1.1 mg/L as Fe, 1 mg/L as Fe, "
            "1.2 mg/L as tannin, 7, 24 hr)",
            "organic", 0, "common practice", "practice"),
    example("iron_form(\"clear\", \"rust deposit\", \"clears\", yes, no, 3 mg/L as Fe, 1.5 mg/L as Fe, 0 "
            "mg/L as tannin, 7.2, 24 hr)",
            "bacterial", 0, "common practice", "practice"),
    example("iron_form(\"clear\", \"rust deposit\", \"clears\", no, no, 3 mg/L as Fe, 1.5 mg/L as Fe, 0 mg/L "
            "as tannin, 7.2, 24 hr)",
            "mixed", 0, "common practice", "practice"),
};
constexpr puteal_example confidenceExamples[] = {
    example("iron_form_confidence(\"clear\", \"rust deposit\", \"clears\", no, no, 3 mg/L as Fe, 2.8 mg/L as "
            "Fe, 0.2 mg/L as tannin, 7.2, 24 hr)",
            "0.95", 1e-9, "common practice", "practice"),
    example("iron_form_confidence(\"clear\", \"rust deposit\", \"clears\", yes, no, 0.2 mg/L as Fe, 0.2 mg/L "
            "as Fe, 0 mg/L as tannin, 7.2, 24 hr)",
            "0.75", 1e-9, "common practice", "practice"),
};
constexpr puteal_example nextExamples[] = {
    example("iron_form_next_test(\"clear\", \"rust deposit\", \"clears\", no, no, 3 mg/L as Fe, 2.8 mg/L as "
            "Fe, 0 mg/L as tannin, 7.2, 24 hr)",
            "nothing more", 0, "common practice", "practice"),
    example("iron_form_next_test(\"clear\", \"rust deposit\", \"clears\", yes, no, 3 mg/L as Fe, 2.8 mg/L as "
            "Fe, 0 mg/L as tannin, 7.2, 24 hr)",
            "bacteria test", 0, "common practice", "practice"),
    example("iron_form_next_test(\"clear\", \"clear after 24 h\", \"clears\", no, no, 0.2 mg/L as Fe, 0.2 "
            "mg/L as Fe, 0.3 mg/L as tannin, 6.4, 2 hr)",
            "24 h cup", 0, "common practice", "practice"),
};
constexpr const char swapped[] =
    "the filtered sample shows more iron than the unfiltered one: look for swapped bottles or a dirty filter";
constexpr puteal_example formRefusals[] = {
    refusal("iron_form(\"clear\", \"rust deposit\", \"clears\", no, no, 2 mg/L as Fe, 3 mg/L as Fe, 0 mg/L "
            "as tannin, 7.2, 24 hr)",
            swapped),
    refusal("iron_form(\"clear\", \"rust deposit\", \"clears\", no, no, 3 mg/L as Fe, 2 mg/L as Fe, 0 mg/L "
            "as tannin, 72, 24 hr)",
            "`ph` must be at most 14; it is 72"),
};
constexpr puteal_example confidenceRefusals[] = {
    refusal("iron_form_confidence(\"clear\", \"rust deposit\", \"clears\", no, no, 2 mg/L as Fe, 3 mg/L as "
            "Fe, 0 mg/L as tannin, 7.2, 24 hr)",
            swapped),
};
constexpr puteal_example nextRefusals[] = {
    refusal("iron_form_next_test(\"clear\", \"rust deposit\", \"clears\", no, no, 2 mg/L as Fe, 3 mg/L as "
            "Fe, 0 mg/L as tannin, 7.2, 24 hr)",
            swapped),
};
constexpr const char relation[] =
    "points for each observation, dissolved / oxidized / bacterial / organic / colloidal: clear at the tap "
    "2/-3/0/-2/-1; "
    "yellow or rust colored -3/2/0/1/2; milky -1/0/0/0/2; black none; deposit in clear water 3/0/0/-1/-1; "
    "color settles 0/3/1/-3/-3; color stays even -1/-3/0/3/3; clear after 24 h -3/-3/0/0/-1, below pH 7 or "
    "not known 0/-3/0/0/-1; "
    "reducing agent clears 0/1/0/-3/1, does not 0/-2/0/3/-1; slime 0/0/5/0/0; smell 0/0/2/0/0; filtered "
    "share from 0.8 3/-3/0/1/0, "
    "between 1/1/0/0/0, to 0.2 -3/3/1/-1/-2; tannin above 0.5 mg/L 0/0/0/3/0, to 0.1 mg/L 0/0/0/-3/0; a form "
    "needs 4 points, "
    "bacterial is named before any other; mixed where dissolved and oxidized both have 4, or where the share "
    "lies between 0.2 and 0.8 and neither organic nor colloidal leads with 4";
constexpr const char safety[] =
    "A verdict on iron says nothing about health: test coliform, nitrate, arsenic and lead as the health "
    "department asks. "
    "Bleach and reducing agent never meet in a cup: the mixture heats and gives off gas.";

} // namespace

constinit const puteal_function ironFormRow =
    Function("iron_form", "Form of the iron",
             "Tells from cup tests and the laboratory pair which form the iron is in. Every observation may "
             "be blank; "
             "with none the form is unknown.",
             call<ironForm>)
        .takes(takes)
        .givesOneOf(ironFormWords, "form of the iron, with what speaks for it")
        .by(relation)
        .from(sources)
        .shownBy(formExamples)
        .refusing(formRefusals)
        .safely(safety);

constinit const puteal_function ironFormConfidenceRow =
    Function("iron_form_confidence", "Confidence in the form of the iron",
             "How sure the verdict of iron_form is: 0 with no observation, 0.95 at most. The steps are "
             "judgment, not statistics.",
             call<ironFormConfidence>)
        .takes(takes)
        .gives("", "confidence, 0 to 1")
        .by("points of the leading form: from 8 0.95, from 6 0.90, from 4 0.75, from 2 0.50, less 0; mixed "
            "0.80; at most 0.30 when two forms "
            "below 4 points are within one of each other")
        .from(sources)
        .shownBy(confidenceExamples)
        .refusing(confidenceRefusals)
        .safely(safety);

constinit const puteal_function ironFormNextTestRow =
    Function("iron_form_next_test", "Next test for the form of the iron",
             "Names the one test that would settle the doubt left by iron_form.", call<ironFormNextTest>)
        .takes(takes)
        .givesOneOf(nextTestWords, "test to make next, with its reason")
        .by("nothing seen or no cup that counts: 24 h cup; bacteria named below 0.90: bacteria test; organic "
            "or colloidal without tannin: tannin test; from 0.90: nothing more; a swampy smell and slime not "
            "looked for: "
            "bacteria test; "
            "colored without a reducing cup: reducing-agent cup; no filtered share: laboratory pair; else "
            "tannin test where the form is unknown, or nothing more")
        .from(sources)
        .shownBy(nextExamples)
        .refusing(nextRefusals)
        .safely(safety);

} // namespace diagnosis
