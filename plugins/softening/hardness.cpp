/// Hardness as a softener meets it: the setting with its iron allowance, the true load, the sodium given
/// back.
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

// One equivalent of hardness is half a mole of calcium carbonate; iron and manganese carry two charges each,
// so mass turns into mass as CaCO3 by the ratio of molar masses [IUPAC 2021].
constexpr double gpgPerIron = molarMass("CaCO3") / molarMass("Fe") / measure::mgPerLiterPerGpg;
constexpr double gpgPerManganese = molarMass("CaCO3") / molarMass("Mn") / measure::mgPerLiterPerGpg;
// Two sodium (or potassium) ions replace one hardness ion.
constexpr double sodiumPerGpg = 2 * molarMass("Na") / molarMass("CaCO3") * measure::mgPerLiterPerGpg;
constexpr double potassiumPerGpg = 2 * molarMass("K") / molarMass("CaCO3") * measure::mgPerLiterPerGpg;

constexpr Parameter rawHardness =
    Parameter("hardness", "gpg", "total hardness of the raw water").hard(0, 1000).usual(0, 100);
constexpr Parameter dissolvedIron =
    Parameter("iron", "mg/L as Fe", "dissolved (ferrous) iron of the raw water").hard(0, 100).usual(0, 10);
constexpr Parameter dissolvedManganese =
    Parameter("manganese", "mg/L as Mn", "dissolved manganese of the raw water")
        .hard(0, 50)
        .usual(0, 5)
        .otherwise(0, "A");

// ----------------------------------------------------------------------------------------
// compensated_hardness (R1, R2)

double compensatedHardness(double hardness, double iron, double manganese, double ironAllowance,
                           double manganeseAllowance, Reply &reply)
{
    if (lessThan(5, iron)) {
        reply.caution("iron_high",
                      "dissolved iron above 5 mg/L is more than a softener should carry: the setting "
                      "alone does not help, see softener_iron_verdict");
    }
    return hardness + ironAllowance * iron + manganeseAllowance * manganese;
}

constexpr puteal_parameter compensatedTakes[] = {
    rawHardness,
    dissolvedIron,
    dissolvedManganese,
    Parameter("iron_allowance", "gpg/(mg{Fe}/L)",
              "setting added for each mg/L of iron; trade texts print 2 to 5")
        .hard(0, 20)
        .usual(2, 5)
        .otherwise(5, "T"),
    Parameter("manganese_allowance", "gpg/(mg{Mn}/L)", "setting added for each mg/L of manganese")
        .hard(0, 20)
        .usual(2, 5)
        .otherwise(2, "T"),
};
constexpr const char *compensatedSources[] = {"trade_settings", "practice", nullptr};
constexpr puteal_example compensatedExamples[] = {
    example("compensated_hardness(18 gpg, 1.5 mg/L as Fe, 0 mg/L as Mn, 2 gpg/(mg{Fe}/L))", "21 gpg", 1e-9,
            "published", "trade_settings"),
    example("compensated_hardness(20 gpg, 3 mg/L as Fe)", "35 gpg", 1e-9, "published", "trade_settings"),
    // printed for metric displays as 86 mg/L for each mg/L of iron
    example("compensated_hardness(342 mg/L as CaCO3, 3 mg/L as Fe)", "600 mg/L as CaCO3", 0.003, "published",
            "trade_settings"),
    example("compensated_hardness(10 gpg, 0.5 mg/L as Fe, 1 mg/L as Mn, 2 gpg/(mg{Fe}/L), 2 gpg/(mg{Mn}/L))",
            "13 gpg", 1e-9, "published", "trade_settings"),
    example("compensated_hardness(10 gpg, 1 mg/L as Fe)", "15 gpg", 1e-9, "common practice", "practice"),
    example("compensated_hardness(15 gpg, 2 mg/L as Fe, 0.5 mg/L as Mn, 4 gpg/(mg{Fe}/L))", "24 gpg", 1e-9,
            "computed", "practice"),
};
constexpr puteal_example compensatedRefusals[] = {
    refusal("compensated_hardness(-1 gpg, 1 mg/L as Fe)", "`hardness` must be at least 0 gpg; it is -1 gpg"),
};
constexpr puteal_caution compensatedCautions[] = {caution("iron_high", "dissolved iron above 5 mg/L as Fe")};

// -----------------------------------------------------------------------------------------------
// exchange_load (R1)

double exchangeLoad(double hardness, double iron, double manganese)
{
    return hardness + gpgPerIron * iron + gpgPerManganese * manganese;
}

constexpr puteal_parameter loadTakes[] = {rawHardness, dissolvedIron, dissolvedManganese};
constexpr const char *loadSources[] = {"iupac2021", "hb44", nullptr};
constexpr puteal_example loadExamples[] = {
    example("exchange_load(15.2115 gpg, 2.4 mg/L as Fe, 0.12 mg/L as Mn)", "15.47554 gpg", 1e-5, "computed",
            "iupac2021"),
    example("exchange_load(3.00443 gpg, 6 mg/L as Fe, 0.5 mg/L as Mn)", "3.68582 gpg", 1e-5, "computed",
            "iupac2021"),
};
constexpr puteal_example loadRefusals[] = {
    refusal("exchange_load(10 gpg, -1 mg/L as Fe)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};

// ------------------------------------------------------------------------------- sodium_added,
// potassium_added (R1)

double sodiumAdded(double hardness, Reply &reply)
{
    const double sodium = sodiumPerGpg * hardness;
    if (lessThan(20, sodium)) // guidance figure for a diet of 500 mg sodium a day [EPA 822-R-03-006]
        reply.caution("sodium_diet",
                      "more than 20 mg/L of sodium is added, the guidance figure for a 500 mg a day diet: "
                      "say so to anyone on a low-sodium diet");
    return sodium;
}
double potassiumAdded(double hardness, Reply &reply)
{
    if (lessThan(0, hardness))
        reply.caution("potassium_diet",
                      "potassium is added: people with kidney trouble should ask their doctor first");
    return potassiumPerGpg * hardness;
}

constexpr puteal_parameter removedTakes[] = {
    Parameter("hardness", "gpg", "true hardness taken out, not the compensated setting")
        .hard(0, 1000)
        .usual(0, 100),
};
constexpr const char *sodiumSources[] = {"iupac2021",     "hb44",   "trade_sodium",
                                         "sodium_quarts", "epa822", nullptr};
constexpr puteal_example sodiumExamples[] = {
    example("sodium_added(20 gpg)", "157 mg/L as Na", 0.005, "published", "trade_sodium"),
    example("sodium_added(1 gpg)", "7.86 mg/L as Na", 0.001, "published", "trade_sodium"),
    example("sodium_added(1 gpg)", "7.5 mg/qt as Na", 0.01, "published", "sodium_quarts"),
    example("sodium_added(15.2115 gpg)", "119.62 mg/L as Na", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example sodiumRefusals[] = {
    refusal("sodium_added(-2 gpg)", "`hardness` must be at least 0 gpg; it is -2 gpg"),
};
constexpr puteal_caution sodiumCautions[] = {caution("sodium_diet", "more than 20 mg/L as Na added")};

constexpr const char *potassiumSources[] = {"iupac2021", "hb44", nullptr};
constexpr puteal_example potassiumExamples[] = {
    example("potassium_added(1 gpg)", "13.37424 mg/L as K", 1e-5, "computed", "iupac2021"),
    example("potassium_added(10 gpg)", "133.7424 mg/L as K", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example potassiumRefusals[] = {
    refusal("potassium_added(-2 gpg)", "`hardness` must be at least 0 gpg; it is -2 gpg"),
};
constexpr puteal_caution potassiumCautions[] = {caution("potassium_diet", "any potassium added")};

} // namespace

constinit const puteal_function compensatedHardnessRow =
    Function("compensated_hardness", "Compensated hardness",
             "The hardness to set a softener to when it also takes out dissolved iron and manganese. It is "
             "an allowance "
             "that makes the bed regenerate early enough to shed iron, not the true load: for sodium and "
             "leakage use "
             "exchange_load.",
             call<compensatedHardness>)
        .takes(compensatedTakes)
        .gives("gpg", "hardness setting of the valve")
        .by("hardness + iron_allowance * iron + manganese_allowance * manganese")
        .from(compensatedSources)
        .shownBy(compensatedExamples)
        .refusing(compensatedRefusals)
        .warning(compensatedCautions);

constinit const puteal_function exchangeLoadRow =
    Function("exchange_load", "True exchange load",
             "Hardness, iron and manganese as the resin really exchanges them, by charge. Use it for sodium "
             "added and "
             "leakage; use compensated_hardness for the setting and the salt.",
             call<exchangeLoad>)
        .takes(loadTakes)
        .gives("gpg", "load on the resin as hardness")
        .by("hardness + 0.104697 * iron + 0.106425 * manganese   (gpg; iron and manganese in mg/L)")
        .from(loadSources)
        .shownBy(loadExamples)
        .refusing(loadRefusals);

constinit const puteal_function sodiumAddedRow =
    Function("sodium_added", "Sodium added by softening",
             "Sodium that a softener on sodium chloride gives to the water for the hardness it takes out.",
             call<sodiumAdded>)
        .takes(removedTakes)
        .gives("mg/L as Na", "sodium added; add what the raw water holds")
        .by("7.86404 * hardness   (mg/L; hardness in gpg)")
        .from(sodiumSources)
        .shownBy(sodiumExamples)
        .refusing(sodiumRefusals)
        .warning(sodiumCautions)
        .safely("People on a low-sodium diet ask their doctor; a tap that is left hard is the usual answer.");

constinit const puteal_function potassiumAddedRow =
    Function(
        "potassium_added", "Potassium added by softening",
        "Potassium that a softener on potassium chloride gives to the water for the hardness it takes out.",
        call<potassiumAdded>)
        .takes(removedTakes)
        .gives("mg/L as K", "potassium added; add what the raw water holds")
        .by("13.37424 * hardness   (mg/L; hardness in gpg)")
        .from(potassiumSources)
        .shownBy(potassiumExamples)
        .refusing(potassiumRefusals)
        .warning(potassiumCautions)
        .safely("People with kidney or heart trouble ask their doctor before potassium chloride is used.");

} // namespace softening
