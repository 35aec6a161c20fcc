/// Does a medium work on this water: one verdict over every limit of the medium.
#include "diagnosis.h"
#include "media_judge.h"

namespace diagnosis
{

using namespace puteal::sdk;

namespace
{

double mediaCheck(int id, const Argument &form, const Argument &ph, const Argument &iron,
                  const Argument &manganese, const Argument &sulfide, const Argument &oxygen,
                  const Argument &chlorine, const Argument &tannin, const Argument &feed, double near,
                  double nearPh, Reply &reply)
{
    Findings found;
    judgeMedium(id, {form, ph, iron, manganese, sulfide, oxygen, chlorine, tannin, feed, near, nearPh},
                found);
    reply.reason(found.words());
    if (found.worst() != cannotTell && found.restOnHabit())
        reply.caution("habit",
                      "a limit that decides here is common practice without a source: the data sheet of "
                      "the medium rules");
    return found.worst();
}

constexpr puteal_parameter takes[] = {
    Parameter("medium", "", "the medium, or the iron cartridge").oneOf(mediumWords),
    Parameter("form", "", "form the iron is in").oneOf(ironFormWords).mayBeMissing(),
    Parameter("ph", "", "pH of the water that reaches the medium").hard(0, 14).usual(5, 9).mayBeMissing(),
    Parameter("iron", "mg/L as Fe", "total iron of that water")
        .hard(0, 1000)
        .usual(0, 30)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("manganese", "mg/L as Mn", "manganese of that water")
        .hard(0, 100)
        .usual(0, 5)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("sulfide", "mg/L as H2S", "hydrogen sulfide, tested at the site")
        .hard(0, 100)
        .usual(0, 10)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("oxygen", "mg/L as O2",
              "dissolved oxygen that reaches the medium; only the coated light medium asks")
        .hard(0, 100)
        .usual(0, 45)
        .mayBeMissing(),
    Parameter("chlorine", "mg/L as Cl2", "free chlorine that reaches the medium, 0 where none is fed")
        .hard(0, 1000)
        .usual(0, 10)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("tannin", "mg/L as tannin", "tannin of the water")
        .hard(0, 1000)
        .usual(0, 10)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("feed", "", "what is fed or let in ahead").oneOf(feedWords).mayBeMissing(),
    Parameter("near", "", "share of a limit that counts as marginal")
        .hard(0, 1)
        .usual(0, 0.5)
        .otherwise(0.2, "T"),
    Parameter("near_ph", "", "width beside a limit of pH that counts as marginal")
        .hard(0, 2)
        .usual(0, 0.5)
        .otherwise(0.2, "T"),
};
constexpr const char *sources[] = {"oxidizing_media", "uga858",     "vce356",
                                   "epa_secondary",   "opflow2021", "va590",
                                   "ph_adjustment",   "practice",   nullptr};
constexpr puteal_example examples[] = {
    // the table asks for pH 6.8 and oxygen of 15 % of the iron
    example("media_check(\"coated light medium\", \"dissolved\", 6.5, 3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as "
            "H2S, 4 "
            "mg/L as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"air\")",
            "will not work", 0, "published", "oxidizing_media"),
    example("media_check(\"coated light medium\", \"dissolved\", 7.4, 3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as "
            "H2S, 0.4 "
            "mg/L as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"air\")",
            "will not work", 0, "published", "oxidizing_media"),
    example("media_check(\"coated light medium\", \"dissolved\", 7.4, 3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as "
            "H2S, 4 "
            "mg/L as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"air\")",
            "works", 0, "common practice", "practice"),
    example("media_check(\"manganese greensand\", \"dissolved\", 7.2, 5 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L "
            "as H2S, 0 "
            "mg/L as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"permanganate\")",
            "marginal", 0, "common practice", "practice"),
    example("media_check(\"manganese greensand\", \"dissolved\", 7.2, 10 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L "
            "as H2S, "
            "0 mg/L as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"permanganate\")",
            "will not work", 0, "published", "oxidizing_media"),
    example("media_check(\"carbon\", \"dissolved\", 7.2, 0.1 mg/L as Fe, 0 mg/L as Mn, 0.5 mg/L as H2S, 0 "
            "mg/L as "
            "O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"none\")",
            "will not work", 0, "published", "uga858"),
    example("media_check(\"iron cartridge\", \"dissolved\", 7.4, 2 mg/L as Fe, 0.1 mg/L as Mn, 0 mg/L as "
            "H2S, 0 mg/L "
            "as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"none\")",
            "works", 0, "common practice", "practice"),
    example("media_check(\"iron cartridge\", \"unknown\", 7.4, 2 mg/L as Fe, 0.1 mg/L as Mn, 0 mg/L as H2S, "
            "0 mg/L "
            "as O2, 0 mg/L as Cl2, 0 mg/L as tannin, \"none\")",
            "cannot tell yet", 0, "common practice", "practice"),
};
constexpr puteal_example refusals[] = {
    refusal("media_check(\"calcite\", \"dissolved\", 72, 0.1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, 0 mg/L "
            "as O2, "
            "0 mg/L as Cl2, 0 mg/L as tannin, \"none\")",
            "`ph` must be at most 14; it is 72"),
};
constexpr puteal_caution cautions[] = {
    caution("habit", "a limit that decides is common practice without a source")};

} // namespace

constinit const puteal_function mediaCheckRow =
    Function("media_check", "Does a medium work on this water",
             "Holds the water against every limit of a medium and gives the worst verdict with the limits "
             "that decide. "
             "Silica above 40 mg/L, oil and polyphosphate are not asked: with them make a pilot test; nor is "
             "ammonia, which takes oxygen and chlorine ahead of the iron. The "
             "limits are "
             "shown by media_ph_limit, media_iron_limit and media_sulfide_limit.",
             call<mediaCheck>)
        .takes(takes)
        .givesOneOf(verdictWords, "verdict, with the limits that decide")
        .by("worst of: pH between its limits; iron (with manganese for oxidizing media and resin), "
            "manganese, sulfide "
            "at most their limits, near them marginal; a form of iron the medium takes; the oxidant it "
            "needs; oxygen at "
            "least 15 % of the iron and chlorine at most 0.5 (to 1 marginal) mg/L over a light coating; "
            "tannin above 0.5 "
            "mg/L and manganese that stays: marginal")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely("A medium that removes iron says nothing about health: arsenic, lead, nitrate and coliform "
                "are tested "
                "and treated on their own. Bleach, permanganate and peroxide are kept apart from each other "
                "and from "
                "acids.");

} // namespace diagnosis
