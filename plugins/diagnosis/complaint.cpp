/// Complaint first: what a stain, its place, a color or a smell points to, as points for each cause.
///
/// Rules:
///  1 a blank observation gives no points; nothing seen at all is undecided and no error.
///  2 a cause is named from three points and one ahead of every other.
///  3 points are judgment, not statistics; they choose the first test, never a device.
#include <array>
#include <string>
#include <vector>

#include "diagnosis.h"
#include "observations.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

constexpr const char *causeWords[] = {"iron",      "manganese", "plumbing",     "iron bacteria",
                                      "tannin",    "sulfide",   "water heater", "bacteria in the air",
                                      "undecided", nullptr};
constexpr std::size_t causes = 8;
constexpr int undecided = 8;
constexpr const char *firstTest[causes + 1] = {
    "test total and dissolved iron, pH and hardness",
    "test manganese, iron and pH",
    "compare a first draw with run water: pH, alkalinity, copper, lead and iron",
    "look for slime in the tank, then a culture or a microscope",
    "test tannin and color; a reducing agent leaves it colored",
    "test hydrogen sulfide at the site, with iron and pH",
    "smell hot and cold apart: look at the heater anode",
    "it grows on wet surfaces and is cleaned off; it is no iron",
    "look closer: color and place of the stain, hot or cold, first water or always"};

constexpr const char *stainWords[] = {"none",       "rust", "rust and black", "black",
                                      "blue-green", "pink", nullptr};
constexpr const char *whereWords[] = {"everywhere",    "laundry",     "toilet tank",
                                      "hot side only", "one fixture", nullptr};
constexpr const char *smellWords[] = {"none", "cold and hot", "hot only", nullptr};

using Row = std::array<int, causes>;
// Points in the order of the causes [all: common practice, no source; the sign of stain and smell rows
// follows EPA's table of noticeable effects].
constexpr Row stainRows[] = {{-2, -2, 0, 0, 0, 0, 0, -3}, {3, 0, 1, 1, 0, 0, 0, -2},
                             {3, 4, 0, 1, 0, 0, 0, -2},   {0, 3, 0, 0, 0, 2, 0, 0},
                             {-1, -1, 5, 0, 0, 0, 0, 0},  {0, 0, 0, 0, 0, 0, 0, 4}};
constexpr Row whereRows[] = {{1, 1, -1, 0, 1, 1, -3, -1},
                             {1, 1, -1, 0, 1, 0, -1, -2},
                             {0, 0, 0, 1, 0, 0, -3, 1},
                             {-3, -3, 1, -2, -2, -2, 3, 0},
                             {-3, -3, 3, -1, -3, -3, -1, 1}};
constexpr Row drawRows[] = {{0, 0, 0, 0, -3, 0, 0, 0},
                            {1, 0, 0, 1, 3, 0, 0, 0},
                            {1, 0, 1, 1, -1, 0, 0, 0},
                            {0, 2, 0, 0, 0, 2, 0, 0},
                            {0, 0, 0, 0, 0, 0, 0, 0}};
constexpr Row smellRows[] = {
    {0, 0, 0, 0, 0, -3, -1, 0}, {0, 0, 0, 1, 0, 4, -2, 0}, {0, 0, 0, 0, 0, -1, 5, 0}};
constexpr Row slimeThere = {0, 0, 0, 5, 0, 0, 0, -1}, slimeNot = {0, 0, 0, -1, 0, 0, 0, 0};
constexpr Row afterRest = {-2, -2, 3, 0, -2, 0, 0, 0}, always = {0, 0, -1, 0, 0, 0, 0, 0};
constexpr Row acid = {0, 0, 1, 0, 0, 0, 0, 0};
constexpr double acidBelow = 7.0; // pH, copper and iron of the plumbing dissolve [common practice, no source]

struct Complaint {
    const Argument &stain, &where, &draw, &smell, &slime, &afterRest, &ph;
};

struct Score {
    Row points{};
    std::vector<std::string> evidence;
    bool seen = false;

    void add(const Row &row, const std::string &words)
    {
        for (std::size_t i = 0; i < causes; ++i)
            points[i] += row[i];
        evidence.push_back(words);
        seen = true;
    }
};

Score scoreOf(const Complaint &c)
{
    Score out;
    if (!c.stain.missing())
        out.add(stainRows[c.stain.choice()], std::string("stain: ") + stainWords[c.stain.choice()]);
    if (!c.where.missing())
        out.add(whereRows[c.where.choice()], std::string("place: ") + whereWords[c.where.choice()]);
    if (!c.draw.missing())
        out.add(drawRows[c.draw.choice()], std::string("at the tap: ") + drawWords[c.draw.choice()]);
    if (!c.smell.missing())
        out.add(smellRows[c.smell.choice()], std::string("smell: ") + smellWords[c.smell.choice()]);
    if (!c.slime.missing())
        out.add(c.slime.yes() ? slimeThere : slimeNot,
                c.slime.yes() ? "slime in the tank" : "no slime in the tank");
    if (!c.afterRest.missing())
        out.add(c.afterRest.yes() ? afterRest : always,
                c.afterRest.yes() ? "only in the first water after a rest" : "in run water too");
    if (!c.ph.missing() && lessThan(c.ph.number(), acidBelow) && out.seen)
        out.add(acid, "pH " + (c.ph.shown().empty() ? figures(c.ph.number()) : c.ph.shown()) + " is below 7");
    return out;
}

constexpr int enough = 3; // points to name a cause [common practice, no source]

/// The leading cause, and how many others are as high.
int leading(const Score &score)
{
    std::size_t best = 0;
    for (std::size_t i = 1; i < causes; ++i)
        if (score.points[i] > score.points[best])
            best = i;
    if (score.points[best] < enough)
        return undecided;
    for (std::size_t i = 0; i < causes; ++i)
        if (i != best && score.points[i] == score.points[best])
            return undecided;
    return static_cast<int>(best);
}

std::string wordsOf(const Complaint &c, const Score &score, int cause)
{
    std::string words;
    for (const std::string &piece : score.evidence)
        words += (words.empty() ? "" : ", ") + piece;
    if (words.empty())
        words = "nothing seen yet";
    std::string beside;
    for (std::size_t i = 0; i < causes; ++i)
        if (static_cast<int>(i) != cause && score.points[i] >= enough)
            beside += (beside.empty() ? "" : " or ") + std::string(causeWords[i]);
    if (!beside.empty())
        words += cause == undecided ? "; it may be " + beside : "; beside it maybe " + beside;
    if (!c.draw.missing() && c.draw.choice() == drawnMilky)
        words += "; milky water that clears from below upward is gas: ask for a methane test first";
    return words + "; " + firstTest[cause];
}

double complaintCause(const Argument &stain, const Argument &where, const Argument &draw,
                      const Argument &smell, const Argument &slime, const Argument &rest, const Argument &ph,
                      Reply &reply)
{
    const Complaint complaint{stain, where, draw, smell, slime, rest, ph};
    const Score score = scoreOf(complaint);
    const int cause = leading(score);
    reply.reason(wordsOf(complaint, score, cause));
    return cause;
}

double complaintScore(int cause, const Argument &stain, const Argument &where, const Argument &draw,
                      const Argument &smell, const Argument &slime, const Argument &rest, const Argument &ph,
                      Reply &reply)
{
    const Complaint complaint{stain, where, draw, smell, slime, rest, ph};
    const Score score = scoreOf(complaint);
    reply.reason(wordsOf(complaint, score, cause));
    return score.points[static_cast<std::size_t>(cause)];
}

constexpr const char *bleachWords[] = {"rust floc", "black or brown", "color fades", "no change", nullptr};
constexpr const char *bleachMeans[] = {"dissolved iron", "manganese", "organic color", "nothing shown",
                                       nullptr};

double bleachCup(int seen, Reply &reply)
{
    constexpr const char *why[] = {"bleach turns dissolved iron to rust within ten minutes, at any pH",
                                   "bleach turns manganese dark within ten minutes",
                                   "bleach takes the color of tannin away",
                                   "no iron, manganese or color that bleach would show in ten minutes"};
    reply.reason(why[seen]);
    return seen;
}

constexpr const char *sheenWords[] = {"breaks into plates", "flows together", nullptr};
constexpr const char *sheenMeans[] = {"bacteria or mineral film", "petroleum", nullptr};

double sheen(int seen, Reply &reply)
{
    reply.reason(
        seen == 0
            ? "a film that breaks like ice when it is poked is bacterial or mineral"
            : "a film that flows together again is oil or fuel: stop, do not use the water, and call the "
              "health department");
    return seen;
}

// "iron" .. "bacteria in the air": what may be asked for points
constexpr const char *scoredWords[] = {"iron",   "manganese", "plumbing",     "iron bacteria",
                                       "tannin", "sulfide",   "water heater", "bacteria in the air",
                                       nullptr};
constexpr Parameter stain = Parameter("stain", "", "color of the stain").oneOf(stainWords).mayBeMissing();
constexpr Parameter where = Parameter("where", "", "where it shows").oneOf(whereWords).mayBeMissing();
constexpr Parameter draw =
    Parameter("draw", "", "raw water in a white cup, fresh from the tap").oneOf(drawWords).mayBeMissing();
constexpr Parameter smell = Parameter("smell", "", "smell of rotten eggs").oneOf(smellWords).mayBeMissing();
constexpr Parameter slime =
    Parameter("slime", "", "gelatinous film in the toilet tank, or strings").yesNo().mayBeMissing();
constexpr Parameter rest =
    Parameter("after_rest", "", "only in the first water after a rest").yesNo().mayBeMissing();
constexpr Parameter ph =
    Parameter("ph", "", "pH measured at the site").hard(0, 14).usual(5, 9).mayBeMissing();
constexpr puteal_parameter causeTakes[] = {stain, where, draw, smell, slime, rest, ph};
constexpr puteal_parameter scoreTakes[] = {Parameter("cause", "", "cause asked about").oneOf(scoredWords),
                                           stain,
                                           where,
                                           draw,
                                           smell,
                                           slime,
                                           rest,
                                           ph};
constexpr puteal_parameter bleachTakes[] = {
    Parameter("seen", "", "raw water ten minutes after a few drops of bleach").oneOf(bleachWords)};
constexpr puteal_parameter sheenTakes[] = {
    Parameter("seen", "", "film on the water, poked with a stick").oneOf(sheenWords)};

constexpr const char *sources[] = {"epa_secondary", "vce356", "bedford_pink", "practice", nullptr};
constexpr const char *habit[] = {"practice", nullptr};
constexpr puteal_example causeExamples[] = {
    example("complaint_cause(\"rust\", \"everywhere\", \"clear\", \"none\", no, no, 7.2)", "iron", 0,
            "published", "epa_secondary"),
    example("complaint_cause(\"black\", \"laundry\", \"clear\", \"none\", no, no, 7.2)", "manganese", 0,
            "published", "epa_secondary"),
    example("complaint_cause(\"blue-green\", \"everywhere\", \"clear\", \"none\", no, no, 6.2)", "plumbing",
            0, "published", "epa_secondary"),
    example("complaint_cause(\"black\", \"everywhere\", \"black\", \"cold and hot\", no, no, 7.2)", "sulfide",
            0, "published", "vce356"),
    example("complaint_cause(\"pink\", \"one fixture\", \"clear\", \"none\", no, no, 7.2)",
            "bacteria in the air", 0, "published", "bedford_pink"),
    example("complaint_cause(\"rust\", \"one fixture\", \"clear\", \"none\", no, yes, 6.4)", "plumbing", 0,
            "common practice", "practice"),
    example("complaint_cause(\"none\", \"hot side only\", \"clear\", \"hot only\", no, no, 7.2)",
            "water heater", 0, "common practice", "practice"),
    example("complaint_cause(\"rust\", \"toilet tank\", \"rust\", \"none\", yes, no, 7.2)", "iron bacteria",
            0, "common practice", "practice"),
    example("complaint_cause(\"none\", \"everywhere\", \"yellow or tea\", \"none\", no, no, 7.2)", "tannin",
            0, "common practice", "practice"),
};
constexpr puteal_example causeRefusals[] = {
    refusal("complaint_cause(\"rust\", \"everywhere\", \"clear\", \"none\", no, no, 72)",
            "`ph` must be at most 14; it is 72"),
};
constexpr puteal_example scoreExamples[] = {
    example("complaint_score(\"iron\", \"rust\", \"everywhere\", \"clear\", \"none\", no, no, 7.2)", "4", 0,
            "common practice", "practice"),
    example("complaint_score(\"manganese\", \"rust and black\", \"everywhere\", \"clear\", \"none\", no, no, "
            "7.2)",
            "5", 0, "common practice", "practice"),
    example(
        "complaint_score(\"plumbing\", \"blue-green\", \"one fixture\", \"clear\", \"none\", no, yes, 6.2)",
        "12", 0, "common practice", "practice"),
};
constexpr puteal_example scoreRefusals[] = {
    refusal("complaint_score(\"iron\", \"rust\", \"everywhere\", \"clear\", \"none\", no, no, 72)",
            "`ph` must be at most 14; it is 72"),
};
constexpr puteal_example bleachExamples[] = {
    example("bleach_cup_meaning(\"rust floc\")", "dissolved iron", 0, "common practice", "practice"),
    example("bleach_cup_meaning(\"black or brown\")", "manganese", 0, "common practice", "practice"),
};
constexpr puteal_example bleachRefusals[] = {
    refusal("bleach_cup_meaning(\"foam\")",
            "\"foam\" is not in the list: rust floc, black or brown, color fades, no change")};
constexpr puteal_example sheenExamples[] = {
    example("sheen_meaning(\"breaks into plates\")", "bacteria or mineral film", 0, "common practice",
            "practice"),
    example("sheen_meaning(\"flows together\")", "petroleum", 0, "common practice", "practice"),
};
constexpr puteal_example sheenRefusals[] = {
    refusal("sheen_meaning(\"sinks\")", "\"sinks\" is not in the list: breaks into plates, flows together")};
constexpr const char relation[] =
    "points iron / manganese / plumbing / iron bacteria / tannin / sulfide / water heater / bacteria in the "
    "air: stain "
    "none -2/-2/0/0/0/0/0/-3, rust 3/0/1/1/0/0/0/-2, rust and black 3/4/0/1/0/0/0/-2, black 0/3/0/0/0/2/0/0, "
    "blue-green -1/-1/5/0/0/0/0/0, pink 0/0/0/0/0/0/0/4; everywhere 1/1/-1/0/1/1/-3/-1, laundry "
    "1/1/-1/0/1/0/-1/-2, "
    "toilet tank 0/0/0/1/0/0/-3/1, hot side only -3/-3/1/-2/-2/-2/3/0, one fixture -3/-3/3/-1/-3/-3/-1/1; at "
    "the tap "
    "clear tannin -3, tea 1/0/0/1/3/0/0/0, rust 1/0/1/1/-1/0/0/0, black 0/2/0/0/0/2/0/0; smell none sulfide "
    "-3 heater "
    "-1, cold and hot 0/0/0/1/0/4/-2/0, hot only sulfide -1 heater 5; slime bacteria 5, none -1; after a "
    "rest "
    "-2/-2/3/0/-2/0/0/0, else plumbing -1; pH below 7 plumbing 1";
constexpr const char safety[] =
    "A stain says nothing about health: test coliform, nitrate, arsenic and lead as the health department "
    "asks. "
    "Blue-green stains mean that the water dissolves the plumbing: let water run before drinking until lead "
    "and "
    "copper are tested. A smell of fuel or solvent: stop and call the health department.";

} // namespace

constinit const puteal_function complaintCauseRow =
    Function("complaint_cause", "What a complaint points to",
             "Names the likely cause of a stain, color or smell before any test, with what speaks for it and "
             "the test to "
             "make first. Every observation may be blank.",
             call<complaintCause>)
        .takes(causeTakes)
        .givesOneOf(causeWords, "cause, with the evidence and the first test")
        .by("the cause with most points of complaint_score, from 3 and ahead of every other; else undecided")
        .from(sources)
        .shownBy(causeExamples)
        .refusing(causeRefusals)
        .safely(safety);

constinit const puteal_function complaintScoreRow =
    Function(
        "complaint_score", "Points of a cause",
        "Points that a complaint gives to one cause, for a column of scores. The points are judgment, not "
        "statistics.",
        call<complaintScore>)
        .takes(scoreTakes)
        .gives("", "points of the cause")
        .by(relation)
        .from(sources)
        .shownBy(scoreExamples)
        .refusing(scoreRefusals)
        .safely(safety);

constinit const puteal_function bleachCupRow =
    Function("bleach_cup_meaning", "What a bleach cup shows",
             "Reads a cup of raw water ten minutes after a few drops of bleach; below pH 7 it answers where "
             "a standing "
             "cup needs 24 h.",
             call<bleachCup>)
        .takes(bleachTakes)
        .givesOneOf(bleachMeans, "what the bleach showed")
        .by("rust floc: dissolved iron; black or brown: manganese; color fades: organic color")
        .from(habit)
        .shownBy(bleachExamples)
        .refusing(bleachRefusals)
        .safely("Bleach and reducing agent never meet in a cup: the mixture heats and gives off gas. Bleach "
                "never with "
                "acid, ammonia, peroxide or permanganate.");

constinit const puteal_function sheenRow =
    Function("sheen_meaning", "What a sheen on the water is",
             "Tells a film of iron bacteria or minerals from oil by poking it.", call<sheen>)
        .takes(sheenTakes)
        .givesOneOf(sheenMeans, "what the film is")
        .by("breaks into plates: bacterial or mineral; flows together: petroleum")
        .from(habit)
        .shownBy(sheenExamples)
        .refusing(sheenRefusals)
        .safely("Oil or fuel in a well is a matter for the health department, and its vapor burns: stop and "
                "refer.");

} // namespace diagnosis
