/// May a softener carry the iron of this water: the ladder of published and habitual limits, with missing
/// tests. (R4, R5)
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

// Limits of the ladder, mg/L of iron and manganese together unless said otherwise.
constexpr double nothingToCarry = 0.3; // [12 Va. Admin. Code 5-590-900]: on the resin, oxidized or not
constexpr double cleanerFrom = 0.5;    // resin cleaner becomes a running cost [common practice]
constexpr double pretreatFrom = 1.0;   // [35 Ill. Adm. Code 604.805; consumer pamphlet on iron]
constexpr double efficientTo = 2.0;    // [trade association, high-efficiency settings]
constexpr double mostCarried = 5.0;    // [home guides, units rated for it]
constexpr double sulfideTasted = 0.05; // mg/L as H2S, taste threshold [Virginia Coop. Extension 356-488]
constexpr double highPh = 8.0;         // above it dissolved iron does not stay dissolved [common practice]
constexpr double leastHardness = 3.0;  // gpg, below it too little exchanges to shed iron [common practice]

/// What a test allows the true value to be.
struct Reading {
    bool known = false;
    double least = 0, most = HUGE_VAL;
    std::string shown;
    explicit Reading(const Argument &a) : known(!a.missing())
    {
        if (known) {
            least = a.least();
            most = a.most();
            shown = a.shown();
        }
    }
};

/// Collects what speaks against a softener; the worst grade decides, its first words are the reason.
class Finding
{
public:
    void add(Verdict grade, std::string words)
    {
        if (m_words.empty() || grade > m_grade) {
            m_grade = grade;
            m_words = std::move(words);
        }
    }
    Verdict grade() const { return m_grade; }
    const std::string &words() const { return m_words; }

private:
    Verdict m_grade = works;
    std::string m_words;
};

std::string needs(const std::string &what)
{
    return "needs the " + what + " test";
}

void judgeSulfide(const Reading &sulfide, Finding &found)
{
    if (!sulfide.known)
        found.add(cannotTell, needs("hydrogen sulfide"));
    else if (lessThan(sulfideTasted, sulfide.least))
        found.add(willNotWork, "hydrogen sulfide " + sulfide.shown + " is above the limit 0.05 mg/L as H2S");
    else if (lessThan(sulfideTasted, sulfide.most))
        found.add(cannotTell, "hydrogen sulfide " + sulfide.shown +
                                  " does not show whether it is at most 0.05 mg/L as "
                                  "H2S; ask for a finer test");
}

/// Grade of a sum of iron and manganese that may be carried as dissolved ions.
Verdict gradeOfSum(double sum)
{
    return lessThan(mostCarried, sum) ? willNotWork : lessThan(efficientTo, sum) ? marginal : works;
}

std::string sumWords(double least, double most)
{
    return least == most      ? figures(least) + " mg/L"
           : std::isinf(most) ? "above " + figures(least) + " mg/L"
                              : "between " + figures(least) + " and " + figures(most) + " mg/L";
}

void judgeSum(const Reading &iron, const Reading &manganese, Finding &found)
{
    const double least = iron.least + manganese.least, most = iron.most + manganese.most;
    const std::string water = "iron and manganese together " + sumWords(least, most);
    if (gradeOfSum(least) == willNotWork) {
        found.add(willNotWork,
                  iron.known && !manganese.known
                      ? "iron " + iron.shown + " is above the limit 5 mg/L of iron and manganese together"
                      : water + " are above the limit 5 mg/L");
    } else if (!iron.known) {
        found.add(cannotTell, needs("iron"));
    } else if (!manganese.known) {
        found.add(cannotTell, needs("manganese"));
    } else if (gradeOfSum(least) != gradeOfSum(most)) {
        found.add(cannotTell,
                  water +
                      " do not show which side of the limits 2 and 5 mg/L they are on; ask for a finer test");
    } else if (gradeOfSum(most) == marginal) {
        found.add(marginal,
                  water + " are above 2 mg/L (limit 5 mg/L): a stage for iron ahead is the better answer");
    } else if (lessThan(pretreatFrom, most)) {
        found.add(works, water + " are below the limit 2 mg/L; resin cleaner every 1 to 3 months");
    } else if (lessThan(cleanerFrom, most)) {
        found.add(works, water + " are below the limit 1 mg/L; resin cleaner once a year");
    } else {
        found.add(works, water + " are below the limit 0.5 mg/L above which resin cleaner is needed");
    }
}

/// Colored, bound or unknown iron matters once there is more of it than may lie on a resin anyway.
void judgeForm(const Argument &form, const Reading &iron, Finding &found)
{
    const bool certain = lessThan(nothingToCarry, iron.least), possible = lessThan(nothingToCarry, iron.most);
    if (!possible)
        return;
    if (form.missing() || form.choice() == unknownForm) {
        found.add(cannotTell, "the form of the iron is not known; a softener carries dissolved iron only");
    } else if (form.choice() != dissolved) {
        const std::string iron0 = iron.known ? "iron " + iron.shown : "iron not tested";
        found.add(certain ? willNotWork : cannotTell, std::string("the iron is ") +
                                                          ironFormWords[form.choice()] +
                                                          ": a softener carries dissolved iron only (" +
                                                          iron0 + ", limit 0.3 mg/L of other iron)");
    }
}

int ironVerdict(const Argument &form, const Argument &ironTest, const Argument &manganeseTest,
                const Argument &sulfideTest, bool airOrOxidantAhead, const Argument &bacteria,
                const Argument &hardness, double ph, Reply &reply)
{
    const Reading iron(ironTest), manganese(manganeseTest), sulfide(sulfideTest), hard(hardness);
    Finding found;
    if (airOrOxidantAhead)
        found.add(willNotWork, "air or an oxidant ahead of the resin turns dissolved iron (" +
                                   (iron.known ? iron.shown : std::string("not tested")) +
                                   ", limit: none ahead) to rust on it");
    if (bacteria.missing())
        found.add(cannotTell, needs("iron bacteria"));
    else if (bacteria.yes())
        found.add(willNotWork, "iron bacteria are present (limit: none): they slime the resin");
    judgeForm(form, iron, found);
    judgeSulfide(sulfide, found);
    judgeSum(iron, manganese, found);
    if (!hard.known)
        found.add(cannotTell, needs("hardness"));
    else if (lessThan(hard.most, leastHardness))
        found.add(marginal,
                  "hardness " + hard.shown + " is below 3 gpg: too little is exchanged to shed the iron");
    else if (lessThan(hard.least, leastHardness))
        found.add(cannotTell, "hardness " + hard.shown +
                                  " does not show whether it is at least 3 gpg; ask for a finer test");
    const double most = iron.most + manganese.most;
    if (found.grade() <= marginal && lessThan(cleanerFrom, most))
        reply.caution("resin_cleaner",
                      "above 0.5 mg/L of iron and manganese, resin cleaner belongs to the running cost");
    if (found.grade() <= marginal && lessThan(highPh, ph) && lessThan(nothingToCarry, iron.most))
        reply.caution("precipitates", "above pH 8 iron turns to rust inside the bed");
    reply.reason(found.words());
    return found.grade();
}

constexpr puteal_parameter takes[] = {
    Parameter("form", "", "form the iron is in").oneOf(ironFormWords).mayBeMissing(),
    Parameter("iron", "mg/L as Fe", "total iron of the raw water")
        .hard(0, 1000)
        .usual(0, 20)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("manganese", "mg/L as Mn", "manganese of the raw water")
        .hard(0, 100)
        .usual(0, 5)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("sulfide", "mg/L as H2S", "hydrogen sulfide, tested at the site")
        .hard(0, 100)
        .usual(0, 10)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("air_or_oxidant_ahead", "", "air, chlorine, peroxide or ozone is added ahead of the softener")
        .yesNo(),
    Parameter("bacteria", "", "iron bacteria are present").yesNo().mayBeMissing(),
    Parameter("hardness", "gpg", "total hardness of the raw water")
        .hard(0, 1000)
        .usual(0, 100)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("ph", "", "pH measured at the site; above 8 iron precipitates in the bed")
        .hard(0, 14)
        .usual(6.5, 8)
        .otherwise(7, "A"),
};
constexpr const char *sources[] = {"va590",         "il604",  "ut309",    "wi811", "smart_softeners",
                                   "iron_pamphlet", "vce356", "practice", nullptr};
constexpr puteal_example examples[] = {
    example("softener_iron_verdict(\"dissolved\", 0.2 mg/L as Fe, 0.05 mg/L as Mn, 0 mg/L as H2S, no, no, 15 "
            "gpg)",
            "works", 0, "published", "va590"),
    example(
        "softener_iron_verdict(\"dissolved\", 1.6 mg/L as Fe, 0.1 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
        "works", 0, "common practice", "practice"),
    example(
        "softener_iron_verdict(\"dissolved\", 3 mg/L as Fe, 0.1 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
        "marginal", 0, "common practice", "practice"),
    example(
        "softener_iron_verdict(\"dissolved\", 6 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
        "will not work", 0, "common practice", "practice"),
    example("softener_iron_verdict(\"oxidized\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
            "will not work", 0, "common practice", "practice"),
    example(
        "softener_iron_verdict(\"dissolved\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, yes, no, 15 gpg)",
        "will not work", 0, "published", "wi811"),
    example("softener_iron_verdict(\"unknown\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
            "cannot tell yet", 0, "common practice", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal(
        "softener_iron_verdict(\"dissolved\", -1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, no, no, 15 gpg)",
        "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};
constexpr puteal_caution cautions[] = {
    caution("resin_cleaner", "more than 0.5 mg/L of iron and manganese on a softener"),
    caution("precipitates", "pH above 8 with iron on a softener"),
};

} // namespace

constinit const puteal_function ironVerdictRow =
    Function("softener_iron_verdict", "May a softener carry this iron",
             "Judges whether a softener can carry the iron and manganese of this water. A blank test gives "
             "cannot tell yet, "
             "never works; what is known to be too much decides without it.",
             call<ironVerdict>)
        .takes(takes)
        .givesOneOf(verdictWords, "verdict, with its reason")
        .by("will not work: air or oxidant ahead, iron bacteria, iron above 0.3 mg/L that is not dissolved, "
            "sulfide above "
            "0.05 mg/L, iron + manganese above 5 mg/L; marginal: above 2 mg/L, or hardness below 3 gpg")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely(
            "Resin cleaner is an acid or a reducing agent: gloves and goggles, never together with bleach.");

} // namespace softening
