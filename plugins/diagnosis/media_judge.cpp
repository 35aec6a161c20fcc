/// Judges a water by every limit of a medium.
///
/// Rules:
///  1 a blank test that the medium has a limit for gives "cannot tell yet", never "works".
///  2 a bounded reading decides only if all it allows agrees.
///  3 more iron, manganese, sulfide, chlorine or tannin never makes the verdict better.
///  4 near a limit counts as marginal: a share of the limit, for pH an absolute width.
#include "media_judge.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr double carriesAnyForm = 0.3;   // mg/L as Fe, the form matters above [common practice, no source]
constexpr double stainsBlack = 0.05;     // mg/L as Mn [40 CFR 143.3]
constexpr double manganeseOverAir = 8.0; // pH from which air and a coating take manganese [common practice]
constexpr double oxygenShare = 0.15;     // of the iron [table of oxidizing media]
constexpr double chlorineHarms[] = {0.5, 1.0}; // mg/L, on a light coating [common practice, no source]
constexpr double contactorChlorine = 0.5;      // mg/L free chlorine at least [AWWA Opflow, December 2021]
constexpr double withPeroxide = 10.0; // mg/L as Fe over catalytic carbon, then an open tank [common practice]
constexpr double tanninDisturbs = 0.5; // mg/L [common practice, no source]

std::string shownOf(const Argument &a, const char *unit)
{
    return a.shown().empty() ? figures(a.number()) + unit : a.shown();
}

/// A sum or a single reading as the ends of what it allows.
struct Reading {
    double least = 0, most = HUGE_VAL;
    bool known = false;
    bool openAbove = false; ///< as in >3: the bound itself is not reached
    std::string words;
};

Reading readingOf(const Argument &a, const char *noun, const char *unit)
{
    if (a.missing())
        return {};
    return {a.least(), a.most(), true, a.above(), std::string(noun) + " " + shownOf(a, unit)};
}

Reading together(const Argument &iron, const Argument &manganese)
{
    const Reading fe = readingOf(iron, "iron", " mg/L as Fe"),
                  mn = readingOf(manganese, "manganese", " mg/L as Mn");
    Reading sum{
        fe.least + mn.least, fe.most + mn.most, fe.known && mn.known, fe.openAbove || mn.openAbove, {}};
    sum.words = fe.known && mn.known ? "the sum of " + fe.words + " and " + mn.words
                : fe.known           ? fe.words + " alone"
                                     : mn.words + " alone";
    return sum;
}

std::string limitWords(double value, const char *unit, From from)
{
    return figures(value) + unit + " (" + wordsOf(from) + ")";
}

void judgeAtMost(const Reading &water, const char *test, const char *unit, const Limit &limit, double near,
                 Findings &found)
{
    if (limit.none())
        return;
    const bool habit = limit.from == From::practice, habitOut = limit.outermostFrom == From::practice;
    const auto grade = [&](double x) {
        return lessThan(limit.outermost, x)              ? willNotWork
               : lessThan(limit.works * (1.0 - near), x) ? marginal
                                                         : works;
    };
    const std::string outermost = limitWords(limit.outermost, unit, limit.outermostFrom);
    if (grade(water.least) == willNotWork || (water.openAbove && atMost(limit.outermost, water.least)))
        return found.add(willNotWork, water.words + " is above the limit " + outermost, habitOut);
    if (!water.known)
        return found.add(cannotTell, std::string("needs: ") + test + ", limit " + outermost);
    if (grade(water.least) != grade(water.most))
        return found.add(cannotTell, water.words + " does not show which side of the limit " +
                                         limitWords(limit.works, unit, limit.from) +
                                         " it is on; ask for a finer test");
    const std::string inner = limitWords(limit.works, unit, limit.from);
    if (grade(water.most) == works)
        return found.add(works, water.words + " is within the limit " + inner, habit);
    found.add(marginal,
              water.words + (lessThan(limit.works, water.least)
                                 ? " is above " + inner + ", outermost limit " + outermost
                                 : " is close to the limit " + inner),
              habit);
}

void judgePh(const Medium &medium, const Water &water, Findings &found)
{
    if (medium.leastPh.none() && medium.mostPh.none())
        return;
    if (water.ph.missing())
        return found.add(cannotTell, "needs: pH" + (medium.leastPh.none()
                                                        ? std::string()
                                                        : ", limit " + limitWords(medium.leastPh.works, "",
                                                                                  medium.leastPh.from)));
    const double ph = water.ph.number();
    const std::string words = "pH " + shownOf(water.ph, "");
    if (const Limit &low = medium.leastPh; !low.none()) {
        const bool habit = low.from == From::practice;
        const std::string inner = limitWords(low.works, "", low.from);
        if (lessThan(ph, low.outermost))
            found.add(willNotWork,
                      words + " is below the limit " + limitWords(low.outermost, "", low.outermostFrom),
                      habit);
        else if (lessThan(ph, low.works + water.nearPh))
            found.add(marginal,
                      words + (lessThan(ph, low.works) ? " is below " : " is close to the limit ") + inner,
                      habit);
        else
            found.add(works, words + " is above the limit " + inner, habit);
    }
    if (const Limit &high = medium.mostPh; !high.none()) {
        const std::string limit = limitWords(high.works, "", high.from);
        if (lessThan(high.works, ph))
            found.add(willNotWork, words + " is above the limit " + limit, true);
        else if (lessThan(high.works - water.nearPh, ph))
            found.add(marginal, words + " is close to the limit " + limit, true);
    }
}

/// What the medium asks of the water ahead: an oxidant, or none of it.
void judgeFeed(int medium, const Water &water, Findings &found)
{
    constexpr unsigned none = 1u << noFeed, air = 1u << airFeed, chlorine = 1u << chlorineFeed,
                       permanganate = 1u << permanganateFeed, peroxide = 1u << peroxideFeed,
                       any = none | air | chlorine | permanganate | peroxide;
    constexpr unsigned takes[mediumCount] = {none | air | chlorine,
                                             permanganate | chlorine,
                                             permanganate | chlorine,
                                             air | chlorine,
                                             chlorine,
                                             air | peroxide,
                                             any,
                                             any,
                                             any,
                                             none,
                                             any};
    constexpr const char *wanted[mediumCount] = {"air",
                                                 "permanganate or chlorine",
                                                 "permanganate or chlorine",
                                                 "air or chlorine",
                                                 "chlorine",
                                                 "air or peroxide",
                                                 "",
                                                 "",
                                                 "",
                                                 "nothing: an oxidant turns iron to rust on the resin",
                                                 ""};
    if (takes[medium] == any)
        return;
    if (water.feed.missing())
        return found.add(cannotTell,
                         std::string("needs: what is fed ahead; this medium takes ") + wanted[medium]);
    const int feed = water.feed.choice();
    if ((takes[medium] >> feed & 1u) == 0)
        found.add(willNotWork,
                  std::string(feed == noFeed ? "nothing" : feedWords[feed]) +
                      " is fed ahead; this medium takes " + wanted[medium] +
                      (feed == peroxideFeed && medium <= contactor
                           ? ": peroxide wastes away on manganese dioxide"
                           : ""),
                  true);
}

Verdict gradeOfForm(int medium, int form, int feed)
{
    const bool killed = feed != noFeed && feed != airFeed; // an oxidant without a break keeps bacteria down
    const bool bed = medium != coatedLight && medium != resin && medium != ironCartridge;
    if (form == bacterial)
        return bed && killed ? marginal : willNotWork;
    if (medium == resin)
        return form == dissolved ? works : willNotWork;
    if (form == organic || form == colloidal)
        return marginal;
    return medium == sand && form != oxidized && feed == noFeed ? willNotWork : works;
}

/// Forms of iron that a medium does not take, once there is enough iron for it to matter.
void judgeForm(int medium, const Water &water, Findings &found)
{
    if (medium == plainCarbon || medium == calcite)
        return;
    const double least = water.iron.missing() ? 0.0 : water.iron.least(),
                 most = water.iron.missing() ? HUGE_VAL : water.iron.most();
    if (atMost(most, carriesAnyForm))
        return found.add(works, "iron " + shownOf(water.iron, " mg/L as Fe") +
                                    " is at most 0.3 mg/L: its form does not matter");
    if (water.form.missing() || water.form.choice() == unknownForm)
        return found.add(cannotTell, "needs: the form of the iron (it matters above 0.3 mg/L)");
    const int form = water.form.choice();
    const Argument &feed = water.feed;
    const bool feedDecides = gradeOfForm(medium, form, noFeed) != gradeOfForm(medium, form, chlorineFeed);
    if (feed.missing() && feedDecides)
        return found.add(cannotTell,
                         std::string("needs: what is fed ahead of ") + ironFormWords[form] + " iron");
    Verdict grade = gradeOfForm(medium, form, feed.missing() ? noFeed : feed.choice());
    const std::string iron =
        water.iron.missing() ? "iron not tested" : "iron " + shownOf(water.iron, " mg/L as Fe");
    if (grade == works)
        return found.add(works, std::string("takes ") + ironFormWords[form] + " iron (" + iron + ")");
    if (!lessThan(carriesAnyForm, least))
        grade = cannotTell; // perhaps too little iron to matter
    const char *advice = form == bacterial ? "disinfect first, then feed an oxidant without a break"
                         : form == organic || form == colloidal ? "make a jar test and a pilot first"
                         : medium == sand                       ? "sand holds oxidized iron only"
                                                                : "resin carries dissolved iron only";
    found.add(grade,
              std::string("the iron is ") + ironFormWords[form] + " (" + iron +
                  ", limit 0.3 mg/L): " + advice,
              true);
}

/// A reading beside a mark: known to be above it, known not to be, or neither.
enum class Beside { under, over, open };
Beside besideOf(const Argument &a, double mark)
{
    // The bound of ">0.5" is itself not reached, so it is already above 0.5.
    if (lessThan(mark, a.least()) || (a.above() && atMost(mark, a.number())))
        return Beside::over;
    return atMost(a.most(), mark) ? Beside::under : Beside::open;
}

void judgeManganesePassing(int medium, const Water &water, Findings &found)
{
    if (medium != coatedLight && medium != manganeseOre && medium != catalyticCarbon)
        return;
    if (medium == coatedLight && !water.ph.missing() && atMost(manganeseOverAir, water.ph.number()))
        return;
    if (medium == manganeseOre && !water.feed.missing() && water.feed.choice() == chlorineFeed)
        return;
    if (water.manganese.missing())
        return found.add(cannotTell, "needs: manganese, limit 0.05 mg/L as Mn (state code)");
    const std::string words = "manganese " + shownOf(water.manganese, " mg/L as Mn");
    const Beside beside = besideOf(water.manganese, stainsBlack);
    if (beside == Beside::open)
        found.add(cannotTell,
                  words + " does not show whether it is at most 0.05 mg/L as Mn; ask for a finer test");
    else if (beside == Beside::over)
        found.add(marginal,
                  words + " is above 0.05 mg/L as Mn and " +
                      (medium == coatedLight    ? "stays in the water below pH 8"
                       : medium == manganeseOre ? "is taken well only with chlorine ahead"
                                                : "mostly stays in the water"),
                  true);
}

void judgeOxygen(const Water &water, Findings &found)
{
    if (water.oxygen.missing() || water.iron.missing())
        return found.add(cannotTell, water.oxygen.missing()
                                         ? "needs: dissolved oxygen, 15 % of the iron (handbook)"
                                         : "needs: iron");
    const double there = water.oxygen.number();
    const auto grade = [&](double iron) {
        return lessThan(there, oxygenShare * iron)                        ? willNotWork
               : lessThan(there, oxygenShare * iron * (1.0 + water.near)) ? marginal
                                                                          : works;
    };
    const Verdict least = grade(water.iron.least()), most = grade(water.iron.most());
    const std::string oxygen = "oxygen " + shownOf(water.oxygen, " mg/L as O2"),
                      iron = shownOf(water.iron, " mg/L as Fe");
    if (least != most)
        return found.add(cannotTell, "iron " + iron + " does not show whether " + oxygen +
                                         " is 15 % of it (handbook); ask for a finer test");
    found.add(most, (most == willNotWork ? "too little " : "") + oxygen + " for the " +
                        figures(oxygenShare * water.iron.number()) +
                        " mg/L that 15 % of the iron asks for (handbook)");
}

void judgeContactorChlorine(const Water &water, Findings &found)
{
    if (water.chlorine.missing())
        return found.add(cannotTell, "needs: free chlorine ahead of the bed, at least 0.5 mg/L (handbook)");
    const auto grade = [&](double there) {
        return lessThan(there, contactorChlorine)                        ? willNotWork
               : lessThan(there, contactorChlorine * (1.0 + water.near)) ? marginal
                                                                         : works;
    };
    const Verdict least = grade(water.chlorine.least()), most = grade(water.chlorine.most());
    found.add(least == most ? least : cannotTell, "free chlorine " + shownOf(water.chlorine, " mg/L as Cl2") +
                                                      ", at least 0.5 mg/L as Cl2 is needed (handbook)");
}

void judgeOxygenAndChlorine(int medium, const Water &water, Findings &found)
{
    if (medium == contactor)
        judgeContactorChlorine(water, found);
    if (medium != coatedLight)
        return;
    judgeAtMost(readingOf(water.chlorine, "free chlorine", " mg/L as Cl2"),
                "free chlorine, 0 where none is fed", " mg/L as Cl2", {chlorineHarms[0], chlorineHarms[1]},
                0.0, found);
    judgeOxygen(water, found);
}

void judgeTannin(int medium, const Water &water, Findings &found)
{
    if (medium == plainCarbon || medium == sand || medium == calcite || medium == contactor)
        return;
    if (water.tannin.missing())
        return found.add(cannotTell, "needs: tannin, limit 0.5 mg/L (common practice)");
    const std::string words = "tannin " + shownOf(water.tannin, " mg/L");
    const Beside beside = besideOf(water.tannin, tanninDisturbs);
    if (beside == Beside::over)
        found.add(marginal, words + " is above 0.5 mg/L (common practice): make a pilot test first", true);
    else if (beside == Beside::open)
        found.add(cannotTell, words + " does not show whether it is at most 0.5 mg/L; ask for a finer test");
    else
        found.add(works, words + " is within the limit 0.5 mg/L (common practice)", true);
}

} // namespace

void judgeMedium(int id, const Water &water, Findings &found)
{
    const Medium &medium = mediumOf(id);
    const Argument &iron = water.iron, &manganese = water.manganese;
    judgePh(medium, water, found);
    Limit ironLimit = medium.iron;
    if (id == catalyticCarbon && !water.feed.missing() && water.feed.choice() == peroxideFeed)
        ironLimit.outermost = withPeroxide;
    judgeAtMost(medium.withManganese ? together(iron, manganese) : readingOf(iron, "iron", " mg/L as Fe"),
                medium.withManganese && !iron.missing() ? "manganese" : "iron", " mg/L", ironLimit,
                water.near, found);
    judgeAtMost(readingOf(manganese, "manganese", " mg/L as Mn"), "manganese", " mg/L as Mn",
                medium.manganese, water.near, found);
    const bool noneTolerated = medium.sulfide.works < 0.1; // nothing is near to none
    judgeAtMost(readingOf(water.sulfide, "hydrogen sulfide", " mg/L as H2S"),
                "hydrogen sulfide, tested at the site", " mg/L as H2S", medium.sulfide,
                noneTolerated ? 0.0 : water.near, found);
    judgeForm(id, water, found);
    judgeFeed(id, water, found);
    judgeManganesePassing(id, water, found);
    judgeOxygenAndChlorine(id, water, found);
    judgeTannin(id, water, found);
}

} // namespace diagnosis
