/// The published limits of iron on a softener one by one, and when high efficiency can be reached. (R4, R5)
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

constexpr const char *rules[] = {"Virginia waterworks",
                                 "Illinois waterworks",
                                 "consumer pamphlet",
                                 "high efficiency",
                                 "home guides",
                                 "older handbook",
                                 nullptr};

struct Limit {
    double milligrams;
    const char *words;
};
constexpr Limit limits[] = {
    {0.3,
     "12 Va. Admin. Code 5-590-900: iron and manganese together, oxidized or not, at most 0.3 mg/L on the "
     "resin"},                                                                                      // [va590]
    {1, "35 Ill. Adm. Code 604.805: pretreatment from 1 mg/L of iron, manganese or both together"}, // [il604]
    {1,
     "consumer pamphlet on iron: a softener for less than 1 mg/L of dissolved iron and manganese"}, // [pamphlet]
    {2,
     "trade association: below 2 mg/L of iron, or 4,000 grain a pound is not reached"}, // [smart_softeners]
    {5,
     "home guides: about 5 mg/L of dissolved iron if the unit is rated for it, not in naturally soft water"},
    {10, "older handbook: up to 10 mg/L with a strong backwash; others do not follow it"}, // [iron_handbook]
};

double ironLimit(int rule, Reply &reply)
{
    if (rule == 5)
        reply.caution("not_followed",
                      "no newer text follows the older handbook: plan a stage for iron above 2 "
                      "to 5 mg/L");
    reply.reason(limits[rule].words);
    return limits[rule].milligrams;
}

constexpr puteal_parameter limitTakes[] = {
    Parameter("rule", "", "who says it; public codes bind waterworks, not a house").oneOf(rules),
};
constexpr const char *limitSources[] = {"va590",     "il604",         "iron_pamphlet", "smart_softeners",
                                        "iron_home", "iron_handbook", nullptr};
constexpr puteal_example limitExamples[] = {
    example("softener_iron_limit(\"Virginia waterworks\")", "0.3 mg/L as Fe", 1e-9, "published", "va590"),
    example("softener_iron_limit(\"Illinois waterworks\")", "1 mg/L as Fe", 1e-9, "published", "il604"),
    example("softener_iron_limit(\"consumer pamphlet\")", "1 mg/L as Fe", 1e-9, "published", "iron_pamphlet"),
    example("softener_iron_limit(\"high efficiency\")", "2 mg/L as Fe", 1e-9, "published", "smart_softeners"),
    example("softener_iron_limit(\"home guides\")", "5 mg/L as Fe", 1e-9, "published", "iron_home"),
    example("softener_iron_limit(\"older handbook\")", "10 mg/L as Fe", 1e-9, "published", "iron_handbook"),
};
constexpr puteal_example limitRefusals[] = {
    refusal(
        "softener_iron_limit(\"hearsay\")",
        "\"hearsay\" is not in the list: Virginia waterworks, Illinois waterworks, consumer pamphlet, high "
        "efficiency, home guides, older handbook"),
};
constexpr puteal_caution limitCautions[] = {caution("not_followed", "the older handbook's limit")};

constexpr double efficientIron = 2, efficientSolids = 750; // mg/L [Getting smart with softeners]

bool highEfficiency(double iron, double solids, Reply &reply)
{
    if (!lessThan(iron, efficientIron)) {
        reply.reason("iron " + figures(iron) + " mg/L is not below 2 mg/L");
        return false;
    }
    if (!lessThan(solids, efficientSolids)) {
        reply.reason("dissolved solids " + figures(solids) + " mg/L are not below 750 mg/L");
        return false;
    }
    reply.reason("iron " + figures(iron) + " mg/L (limit 2), dissolved solids " + figures(solids) +
                 " mg/L (limit 750)");
    return true;
}

constexpr puteal_parameter efficientTakes[] = {
    Parameter("iron", "mg/L as Fe", "dissolved iron of the raw water").hard(0, 1000).usual(0, 10),
    Parameter("dissolved_solids", "mg/L as TDS", "dissolved solids of the raw water")
        .hard(0, 100000)
        .usual(20, 3000),
};
constexpr const char *efficientSources[] = {"smart_softeners", nullptr};
constexpr puteal_example efficientExamples[] = {
    example("high_salt_efficiency_possible(1 mg/L as Fe, 400 mg/L as TDS)", "yes", 0, "published",
            "smart_softeners"),
    example("high_salt_efficiency_possible(2 mg/L as Fe, 400 mg/L as TDS)", "no", 0, "published",
            "smart_softeners"),
    example("high_salt_efficiency_possible(1 mg/L as Fe, 750 mg/L as TDS)", "no", 0, "published",
            "smart_softeners"),
};
constexpr puteal_example efficientRefusals[] = {
    refusal("high_salt_efficiency_possible(-1 mg/L as Fe, 400 mg/L as TDS)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};

} // namespace

constinit const puteal_function ironLimitRow =
    Function(
        "softener_iron_limit", "Published limits of iron on a softener",
        "How much dissolved iron (with manganese, where the text says so) one published rule lets onto a "
        "softener. They differ thirtyfold: name the rule beside the number. softener_iron_verdict weighs "
        "them.",
        call<ironLimit>)
        .takes(limitTakes)
        .gives("mg/L as Fe", "most iron, with the rule's words as reason")
        .by("the printed limit")
        .from(limitSources)
        .shownBy(limitExamples)
        .refusing(limitRefusals)
        .warning(limitCautions);

constinit const puteal_function highEfficiencyRow =
    Function(
        "high_salt_efficiency_possible", "High salt efficiency possible",
        "Whether a water lets a softener reach 4,000 grain for a pound of salt: less than 2 mg/L of iron "
        "and less than 750 mg/L of dissolved solids.",
        call<highEfficiency>)
        .takes(efficientTakes)
        .givesYesNo("within both limits, with the reason")
        .by("iron < 2 mg/L and dissolved_solids < 750 mg/L")
        .from(efficientSources)
        .shownBy(efficientExamples)
        .refusing(efficientRefusals);

} // namespace softening
