/// The health gate of a water: from the tests, whether to stop and refer, to go on with a caution, or to test
/// first.
#include "referral.h"

#include <algorithm>

using namespace puteal::sdk;

namespace limits
{
namespace
{

/// What was found, each with its words; the worst decides.
class Findings
{
public:
    void add(Finding finding, const std::string &words) { m_all.push_back({finding, words}); }
    void uses(const Limit &row)
    {
        if (!m_recalled && row.value == recalled)
            m_recalled = &row;
    }
    Finding worst() const
    {
        Finding most = nothingFound;
        for (const Found &found : m_all)
            most = std::max(most, found.finding);
        return most;
    }
    std::string words() const
    {
        if (m_all.empty())
            return "no finding on these tests; what was not tested is not known";
        std::string text;
        auto sorted = m_all;
        std::stable_sort(sorted.begin(), sorted.end(),
                         [](const Found &a, const Found &b) { return a.finding > b.finding; });
        for (const Found &found : sorted)
            text += (text.empty() ? "" : "; ") + found.words;
        return text;
    }
    void say(double date, Reply &reply) const
    {
        laterCaution(date, reply);
        if (m_recalled)
            recalledCaution(*m_recalled, reply);
        reply.reason(words());
    }

private:
    struct Found {
        Finding finding;
        std::string words;
    };
    std::vector<Found> m_all;
    const Limit *m_recalled = nullptr;
};

/// Holds a reading against a row; `over` is what it means to be above it.
Side hold(const Asked &what, const Argument &test, const Limit &row, double nearPart, Finding over,
          Findings &found)
{
    found.uses(row);
    const Reading reading(test);
    const std::string value = nameOf(what) + " " + reading.shown, limited = limitWords(row, what);
    const double limit = inBasis(row.high, row, what);
    const Side side = sideOf(reading, limit, nearPart * limit);
    if (side == Side::over)
        found.add(over, value + " is above the " + limited);
    else if (side == Side::unclear)
        found.add(testsMissing,
                  value + " does not show whether it is at most the " + limited + "; ask for a finer test");
    else if (side == Side::close)
        found.add(nearLimit, value + " is close to the " + limited + ": repeat the test");
    return side;
}

void missingTest(const std::string &name, Findings &found)
{
    found.add(testsMissing, name + " was not tested");
}

/// The lowest limit a caution starts from: limits for health and advisories, else the aesthetic one.
const Limit *cautionRow(const Asked &what, double date)
{
    const Limit *least = strictest(what, forHealth, date), *advised = strictest(what, forAdvice, date);
    if (!least || (advised && inBasis(advised->high, *advised, what) < inBasis(least->high, *least, what)))
        least = advised;
    return least ? least : strictest(what, forAesthetics, date);
}

struct Tests {
    double date;
    const Argument &arsenic, &nitrate, &nitrite, &lead, &uranium, &bacteria, &fuelSmell, &publicUse,
        &manganese, &sodium, &sulfate;
    double near;
};

constexpr Asked stopSubstances[] = {
    {arsenic, "As"}, {nitrate, "N"}, {nitrite, "N"}, {lead, "Pb"}, {uranium, "U"}};
constexpr Finding stopFindings[] = {overArsenic, overNitrate, overNitrite, overLead, overUranium};

/// The first substance no jurisdiction limits on that day: the day is then surely wrong.
const Asked *unlimitedOn(double date)
{
    for (const Asked &what : stopSubstances)
        if (!strictest(what, forHealth, date))
            return &what;
    return nullptr;
}

void judgeStops(const Tests &tests, Findings &found)
{
    const Argument *const readings[] = {&tests.arsenic, &tests.nitrate, &tests.nitrite, &tests.lead,
                                        &tests.uranium};
    for (int i = 0; i < 5; ++i) {
        const Asked &what = stopSubstances[i];
        if (readings[i]->missing()) {
            missingTest(nameOf(what), found);
            continue;
        }
        const Side side = hold(what, *readings[i], *strictest(what, forHealth, tests.date),
                               tests.near / 100.0, stopFindings[i], found);
        if (what.item == lead && side != Side::over && readings[i]->least() > 0.0)
            found.add(someLead,
                      "lead " + readings[i]->shown() +
                          " was found: flush before drinking, test a first draw, look at the plumbing");
    }
}

/// Nitrate and nitrite do the same harm: the parts of their limits are added up [WHO, recalled].
void judgeTogether(const Tests &tests, Findings &found)
{
    if (tests.nitrate.missing() || tests.nitrite.missing())
        return;
    const Asked first{nitrate, "N"}, second{nitrite, "N"};
    const Limit &one = *strictest(first, forHealth, tests.date),
                &other = *strictest(second, forHealth, tests.date);
    const double nitrateLimit = inBasis(one.high, one, first),
                 nitriteLimit = inBasis(other.high, other, second);
    const double least = tests.nitrate.least() / nitrateLimit + tests.nitrite.least() / nitriteLimit,
                 most = tests.nitrate.most() / nitrateLimit + tests.nitrite.most() / nitriteLimit;
    const std::string words = "nitrate " + tests.nitrate.shown() + " and nitrite " + tests.nitrite.shown() +
                              " act together: as parts of their limits, " + figures(nitrateLimit) + " and " +
                              figures(nitriteLimit) + " mg/L as N, they ";
    if (lessThan(1, least) && atMost(tests.nitrate.least(), nitrateLimit) &&
        atMost(tests.nitrite.least(), nitriteLimit))
        found.add(overNitrite, words + "add up to " + figures(least) + ", above 1 (WHO; recalled)");
    else if (lessThan(1, most) && std::isfinite(most) && atMost(least, 1))
        found.add(nearLimit, words + "may add up to " + figures(most) + ", above 1 (WHO; recalled)");
}

void judgeSeen(const Tests &tests, Findings &found)
{
    if (tests.bacteria.missing())
        missingTest("bacteria", found);
    else if (tests.bacteria.choice() == withEColi)
        found.add(eColiFound, "E. coli found, limit none in 100 mL: do not drink the water");
    else if (tests.bacteria.choice() == coliformOnly)
        found.add(coliformFound,
                  "total coliform found without E. coli, limit none in 100 mL: inspect the wellhead, "
                  "disinfect, test again, then quote");
    if (tests.fuelSmell.missing())
        missingTest("smell of fuel or solvent", found);
    else if (tests.fuelSmell.yes())
        found.add(fuelSmelled, "smell of fuel or solvent: yes, limit none; no flame near the taps");
    if (tests.publicUse.missing())
        found.add(testsMissing,
                  "not known whether it is a rental, a day-care or serves 25 people for 60 days a year");
    else if (tests.publicUse.yes())
        found.add(publicSystem,
                  "a rental, a day-care or 25 people for 60 days a year: a public system with its own rules");
}

void judgeCautions(const Tests &tests, Findings &found)
{
    const struct {
        Asked what;
        const Argument &test;
        Finding over;
    } cautions[] = {{{manganese, "Mn"}, tests.manganese, muchManganese},
                    {{sodium, "Na"}, tests.sodium, muchSodium},
                    {{sulfate, "SO4"}, tests.sulfate, muchSulfate}};
    for (const auto &row : cautions) {
        const Limit *limit = cautionRow(row.what, tests.date);
        if (row.test.missing())
            missingTest(nameOf(row.what), found);
        else if (limit && hold(row.what, row.test, *limit, 0.0, row.over, found) == Side::over &&
                 row.over == muchManganese)
            found.add(muchManganese, "bottled water for infants until the follow-up test");
    }
}

template<bool asGrade>
double healthReferral(double date, const Argument &arsenicTest, const Argument &nitrateTest,
                      const Argument &nitriteTest, const Argument &leadTest, const Argument &uraniumTest,
                      const Argument &bacteria, const Argument &fuelSmell, const Argument &publicUse,
                      const Argument &manganeseTest, const Argument &sodiumTest, const Argument &sulfateTest,
                      double near, Reply &reply)
{
    if (const Asked *what = unlimitedOn(date))
        return reply.refuse(1, "no jurisdiction of the table had a health limit for " + nameOf(*what) +
                                   " on " + dateWords(date) + ": check the date");
    const Tests tests{date,      arsenicTest, nitrateTest,   nitriteTest, leadTest,    uraniumTest, bacteria,
                      fuelSmell, publicUse,   manganeseTest, sodiumTest,  sulfateTest, near};
    Findings found;
    judgeStops(tests, found);
    judgeTogether(tests, found);
    judgeSeen(tests, found);
    judgeCautions(tests, found);
    found.say(date, reply);
    const Finding worst = found.worst();
    return asGrade ? static_cast<double>(referralOf(worst)) : static_cast<double>(worst);
}

constexpr Parameter reading(const char *name, const char *unit, const char *meaning, double usualHigh)
{
    return Parameter(name, unit, meaning).hard(0, 1000000).usual(0, usualHigh).mayBeMissing().mayBeBounded();
}
constexpr puteal_parameter takes[] = {
    Parameter("date", "", "day the water is judged, as a rule today: the limits in force on it count").date(),
    reading("arsenic", "mg/L as As", "arsenic; blank is a missing test", 0.5),
    reading("nitrate", "mg/L as N", "nitrate as nitrogen; blank is a missing test", 100),
    reading("nitrite", "mg/L as N", "nitrite as nitrogen; blank is a missing test", 10),
    reading("lead", "mg/L as Pb", "lead, first draw; blank is a missing test", 0.5),
    reading("uranium", "mg/L as U", "uranium; blank is a missing test", 1),
    Parameter("bacteria", "", "what the bacteria test found").oneOf(bacteriaWords).mayBeMissing(),
    Parameter("fuel_smell", "", "the water smells of fuel or solvent").yesNo().mayBeMissing(),
    Parameter("public_use", "", "a rental, a day-care, or 25 people for 60 days a year")
        .yesNo()
        .mayBeMissing(),
    reading("manganese", "mg/L as Mn", "manganese; blank is a missing test", 5),
    reading("sodium", "mg/L as Na", "sodium as it is drunk; blank is a missing test", 1000),
    reading("sulfate", "mg/L as SO4", "sulfate; blank is a missing test", 2000),
    Parameter("near", "%", "part of a stop limit below it that asks for a second test")
        .hard(0, 100)
        .usual(5, 50)
        .otherwise(20, "T"),
};

#define LIMITS_TESTS(As, N, NO2, Pb, U, bacteria, fuel, publicUse, Mn, Na, SO4)                              \
    "(2026-10-12, " As " mg/L as As, " N " mg/L as N, " NO2 " mg/L as N, " Pb " mg/L as Pb, " U              \
    " mg/L as U, \"" bacteria "\", " fuel ", " publicUse ", " Mn " mg/L as Mn, " Na " mg/L as Na, " SO4      \
    " mg/L as SO4)"

constexpr puteal_example referralExamples[] = {
    example("health_referral" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.004", "none found", "no", "no",
                                           "0.05", "18", "46"),
            "nothing on these tests", 0, "common practice", "practice"),
    example("health_referral" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.004", "none found", "no", "no",
                                           "0.24", "18", "46"),
            "caution and go on", 0, "published", "journal_manganese"),
    example("health_referral" LIMITS_TESTS("0.003", "11", "0", "0", "0.004", "none found", "no", "no", "0.05",
                                           "18", "46"),
            "stop and refer", 0, "published", "cfr265_iii"),
    example("health_referral" LIMITS_TESTS("0.011", "1.2", "0", "0", "0.004", "none found", "no", "no",
                                           "0.05", "18", "46"),
            "stop and refer", 0, "published", "epa_arsenic"),
    example("health_referral" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.025", "none found", "no", "no",
                                           "0.05", "18", "46"),
            "stop and refer", 0, "published", "canada_uranium"),
    example("health_referral" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.004", "E. coli", "no", "no", "0.05",
                                           "18", "46"),
            "stop and refer", 0, "published", "fao_who"),
    example("health_referral" LIMITS_TESTS("0.003", "7.9", "0.7", "0", "0.004", "none found", "no", "no",
                                           "0.05", "18", "46"),
            "stop and refer", 0, "memory", "recalled_who"),
    example("arsenic: ; health_referral(2028-01-01, arsenic[1], 1.2 mg/L as N, 0 mg/L as N, 0 mg/L as Pb, "
            "0.004 mg/L as "
            "U, \"none found\", no, no, 0.05 mg/L as Mn, 18 mg/L as Na, 46 mg/L as SO4)",
            "tests missing", 0, "common practice", "practice"),
};
constexpr puteal_example findingExamples[] = {
    example("health_finding" LIMITS_TESTS("0.003", "11", "0", "0", "0.004", "none found", "no", "no", "0.24",
                                          "18", "46"),
            "nitrate", 0, "published", "cfr265_iii"),
    example("health_finding" LIMITS_TESTS("0.003", "1.2", "0", "0.002", "0.004", "none found", "no", "no",
                                          "0.05", "25", "46"),
            "some lead", 0, "common practice", "practice"),
    example("health_finding" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.004", "none found", "no", "no", "0.05",
                                          "25", "46"),
            "sodium", 0, "published", "epa_sodium"),
    example("health_finding" LIMITS_TESTS("0.003", "1.2", "0", "0", "0.004", "none found", "no", "no", "0.05",
                                          "18", "300"),
            "sulfate", 0, "published", "cfr143_3"),
    example("arsenic: ; health_finding(2028-01-01, arsenic[1], 1.2 mg/L as N, 0 mg/L as N, 0 mg/L as Pb, "
            "0.004 mg/L as U, "
            "\"none found\", no, no, 0.05 mg/L as Mn, 18 mg/L as Na, 46 mg/L as SO4)",
            "tests missing", 0, "common practice", "practice"),
};
constexpr puteal_example referralRefusals[] = {
    refusal("health_referral(1960-01-01, 0 mg/L as As, 0 mg/L as N, 0 mg/L as N, 0 mg/L as Pb, 0 mg/L as U, "
            "\"none found\", "
            "no, no, 0 mg/L as Mn, 0 mg/L as Na, 0 mg/L as SO4)",
            "no jurisdiction of the table had a health limit for arsenic on 1960-01-01: check the date"),
    refusal("health_referral(2026-10-12, -1 mg/L as As, 0 mg/L as N, 0 mg/L as N, 0 mg/L as Pb, 0 mg/L as U, "
            "\"none found\", "
            "no, no, 0 mg/L as Mn, 0 mg/L as Na, 0 mg/L as SO4)",
            "`arsenic` must be at least 0 mg/L as As; it is -1 mg/L as As"),
};
constexpr puteal_example findingRefusals[] = {
    refusal("health_finding(1990-01-01, 0 mg/L as As, 0 mg/L as N, 0 mg/L as N, 0 mg/L as Pb, 0 mg/L as U, "
            "\"none found\", "
            "no, no, 0 mg/L as Mn, 0 mg/L as Na, 0 mg/L as SO4)",
            "no jurisdiction of the table had a health limit for uranium on 1990-01-01: check the date"),
};
constexpr const char relation[] = "stop: E. coli, fuel or solvent smell, nitrate, nitrite, arsenic, lead or "
                                  "uranium above the strictest health limit in "
                                  "force, nitrate / limit + nitrite / limit above 1, public use; tests "
                                  "missing: a blank, or a bound above its limit; "
                                  "caution: total coliform, manganese, any lead, "
                                  "within near of a stop limit, sodium, sulfate";
constexpr const char safety[] =
    "A stop goes to the health department before anything is recommended or sold. No finding on these tests "
    "does not say "
    "that the water is fit to drink: it says what was tested. Anybody who fell ill sees a physician first.";

} // namespace

constinit const puteal_function healthReferralRow =
    Function("health_referral", "Stop and refer, caution, or go on",
             "Holds the health tests of a raw water against the strictest limits in force on the day it is "
             "judged. Any stop "
             "leaves the recommendation empty; blank tests are named. why(cell) lists every finding with "
             "limit and value.",
             call<healthReferral<true>>)
        .takes(takes)
        .givesOneOf(referralWords, "grade of the referral")
        .by(relation)
        .from(judgedSources)
        .shownBy(referralExamples)
        .refusing(referralRefusals)
        .warning(tableCautions)
        .safely(safety);

constinit const puteal_function healthFindingRow =
    Function("health_finding", "Worst health finding",
             "The worst finding behind health_referral, for health_contact; why(cell) lists all of them.",
             call<healthReferral<false>>)
        .takes(takes)
        .givesOneOf(findingWords, "worst finding of the tests")
        .by(relation)
        .from(judgedSources)
        .shownBy(findingExamples)
        .refusing(findingRefusals)
        .warning(tableCautions)
        .safely(safety);

} // namespace limits
