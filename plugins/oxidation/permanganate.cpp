/// Permanganate-regenerated beds: the load in iron equivalents, the charge, what it can do, how long it
/// lasts. (R4)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

constexpr double ouncePerPound = 16.0; // exact [NIST Handbook 44, appendix C]

double ironEquivalents(double iron, double manganese, double sulfide, double manganeseWeight,
                       double sulfideWeight)
{
    return iron + manganeseWeight * manganese + sulfideWeight * sulfide;
}

double permanganateDays(double bed, double capacity, double equivalents, double use, Reply &reply)
{
    if (atMost(equivalents, 0))
        return reply.refuse(3,
                            "there is no iron to use up the charge: leave the regeneration to the calendar");
    const double mgHeld = bed * capacity * measure::mgPerGrain;
    const double days = mgHeld / (equivalents * use * measure::literPerGallon);
    if (lessThan(days, 1))
        reply.caution("daily", "the charge is used up within a day: a larger bed or another method");
    return days;
}

double permanganateCharge(double bed, double dose)
{
    return bed * dose / ouncePerPound;
}

constexpr const char *targetWords[] = {"iron", "manganese", "sulfide to sulfur", nullptr};
constexpr const char *targetSubstances[] = {"Fe", "Mn", "H2S", nullptr};
constexpr double targetElectrons[] = {1, 2, 2}; // half reactions
constexpr double permanganateElectrons = 3;     // to manganese dioxide [EPA 815-R-99-014]

double permanganatePower(double dose, int target)
{
    const double mole = dose / ouncePerPound * measure::gramPerPound / molarMass("KMnO4") *
                        permanganateElectrons / targetElectrons[target];
    return mole * molarMass(targetSubstances[target]) * 1000.0 / measure::mgPerGrain;
}

constexpr puteal_parameter equivalentTakes[] = {
    ironParameter,
    manganeseParameter,
    sulfideParameter,
    Parameter("manganese_weight", "mg{Fe}/mg{Mn}",
              "iron that counts as much as 1 mg of manganese; 2.03 by chemistry")
        .hard(0, 20)
        .usual(1, 3)
        .otherwise(2, "R"),
    Parameter("sulfide_weight", "mg{Fe}/mg{H2S}",
              "iron that counts as much as 1 mg of hydrogen sulfide; 3.28 by chemistry to sulfur")
        .hard(0, 30)
        .usual(2, 7)
        .otherwise(5, "R"),
};
constexpr const char *equivalentSources[] = {"recalled", "iupac2021", nullptr};
constexpr puteal_example equivalentExamples[] = {
    example("iron_equivalents(3 mg/L as Fe, 0.2 mg/L as Mn, 0 mg/L as H2S)", "3.4 mg/L as Fe", 1e-9, "memory",
            "recalled"),
    example("iron_equivalents(1.5 mg/L as Fe, 0.5 mg/L as Mn, 0.5 mg/L as H2S)", "5 mg/L as Fe", 1e-9,
            "memory", "recalled"),
    example("iron_equivalents(1 mg/L as Fe, 1 mg/L as Mn, 1 mg/L as H2S, 2.033 mg{Fe}/mg{Mn}, 3.2777 "
            "mg{Fe}/mg{H2S})",
            "6.3107 mg/L as Fe", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example equivalentRefusals[] = {
    refusal("iron_equivalents(-3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "`iron` must be at least 0 mg/L as Fe; it is -3 mg/L as Fe"),
};

constexpr puteal_parameter daysTakes[] = {
    Parameter("bed", "ft^3", "volume of the bed").hard(0.05, 1000).usual(0.5, 10),
    Parameter("capacity", "grain/ft^3 as Fe", "iron equivalents a cubic foot takes up for its charge")
        .hard(1, 5000)
        .usual(300, 600),
    Parameter("equivalents", "mg/L as Fe", "iron equivalents of the water, see iron_equivalents")
        .hard(0, 1000)
        .usual(0, 30),
    Parameter("use", "gal/day", "water through the bed").hard(0.1, 100000).usual(50, 1000),
};
constexpr const char *daysSources[] = {"hb44", "recalled", nullptr};
constexpr puteal_example daysExamples[] = {
    example("permanganate_days(1.5 ft^3, 400 grain/ft^3 as Fe, 3.4 mg/L as Fe, 250 gal/day)",
            "12.083 day/event", 1e-4, "computed", "hb44"),
    example("permanganate_days(2 ft^3, 300 grain/ft^3 as Fe, 5 mg/L as Fe, 300 gal/day)", "6.847 day/event",
            1e-4, "computed", "hb44"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("permanganate_days(1.5 ft^3, 400 grain/ft^3 as Fe, 0 mg/L as Fe, 250 gal/day)",
            "there is no iron to use up the charge: leave the regeneration to the calendar"),
};
constexpr puteal_caution daysCautions[] = {caution("daily", "less than one day between regenerations")};

constexpr puteal_parameter chargeTakes[] = {
    Parameter("bed", "ft^3", "volume of the bed").hard(0, 1000).usual(0.5, 10),
    Parameter("dose", "oz/ft^3 as KMnO4", "permanganate for one regeneration of a cubic foot")
        .hard(0, 20)
        .usual(1.5, 4),
};
constexpr const char *chargeSources[] = {"hb44", "practice", nullptr};
constexpr puteal_example chargeExamples[] = {
    example("permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4)", "0.1875 lb/event as KMnO4", 1e-9, "computed",
            "hb44"),
    example("permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4) * 365 day/yr / (3 day/event)",
            "22.8125 lb/yr as KMnO4", 1e-4, "common practice", "practice"),
};
constexpr puteal_example chargeRefusals[] = {
    refusal("permanganate_charge(-1 ft^3, 2 oz/ft^3 as KMnO4)",
            "`bed` must be at least 0 ft^3; it is -1 ft^3"),
};

constexpr puteal_parameter powerTakes[] = {
    Parameter("dose", "oz/ft^3 as KMnO4", "permanganate for one regeneration of a cubic foot")
        .hard(0, 20)
        .usual(1.5, 4),
    Parameter("target", "", "what it oxidizes").oneOf(targetWords, targetSubstances).otherwise(0, "A"),
};
constexpr const char *powerSources[] = {"iupac2021", "hb44", "epa815014", nullptr};
constexpr puteal_example powerExamples[] = {
    example("permanganate_oxidizing_power(2 oz/ft^3 as KMnO4)", "927.6 grain/ft^3 as Fe", 1e-4, "computed",
            "iupac2021"),
    example("permanganate_oxidizing_power(2 oz/ft^3 as KMnO4, \"manganese\")", "456.3 grain/ft^3 as Mn", 2e-4,
            "computed", "iupac2021"),
    example("permanganate_oxidizing_power(2 oz/ft^3 as KMnO4, \"sulfide to sulfur\")",
            "283.0 grain/ft^3 as H2S", 2e-4, "computed", "iupac2021"),
    example("permanganate_oxidizing_power(1.5 oz/ft^3 as KMnO4)", "695.7 grain/ft^3 as Fe", 1e-4, "computed",
            "iupac2021"),
    example("permanganate_oxidizing_power(4 oz/ft^3 as KMnO4)", "1855.2 grain/ft^3 as Fe", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example powerRefusals[] = {
    refusal("permanganate_oxidizing_power(30 oz/ft^3 as KMnO4)",
            "`dose` must be at most 20 oz/ft^3 as KMnO4; it is 30 oz/ft^3 as KMnO4"),
};

constexpr const char permanganateSafety[] = "Permanganate is a strong oxidizer that stains: goggles and "
                                            "gloves, away from acids, peroxide, glycol and anything "
                                            "that burns, locked away from children. Pink or purple water is "
                                            "not to be used: rinse longer. Follow the label and "
                                            "the local code.";

} // namespace

constinit const puteal_function ironEquivalentsRow =
    Function("iron_equivalents", "Iron equivalents",
             "Iron, manganese and sulfide weighed together as the load on a permanganate-regenerated bed. "
             "The weights are "
             "recalled, not confirmed.",
             call<ironEquivalents>)
        .takes(equivalentTakes)
        .gives("mg/L as Fe", "iron equivalents")
        .by("iron + manganese_weight * manganese + sulfide_weight * sulfide")
        .from(equivalentSources)
        .shownBy(equivalentExamples)
        .refusing(equivalentRefusals);

constinit const puteal_function permanganateDaysRow =
    Function(
        "permanganate_days", "Days a permanganate charge lasts",
        "Days until the coating of a permanganate-regenerated bed is used up. Pressure loss or a "
        "three-day wash "
        "usually ends the run sooner. Regenerate before that: a coating that is used up is lost for good.",
        call<permanganateDays>)
        .takes(daysTakes)
        .gives("day/event", "days between regenerations")
        .by("bed * capacity / (equivalents * use)")
        .from(daysSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions)
        .safely(permanganateSafety);

constinit const puteal_function permanganateChargeRow =
    Function("permanganate_charge", "Permanganate for one regeneration",
             "Permanganate that one regeneration takes.", call<permanganateCharge>)
        .takes(chargeTakes)
        .gives("lb/event as KMnO4", "permanganate for one regeneration")
        .by("bed * dose")
        .from(chargeSources)
        .shownBy(chargeExamples)
        .refusing(chargeRefusals)
        .safely(permanganateSafety);

constinit const puteal_function permanganatePowerRow =
    Function("permanganate_oxidizing_power", "What a permanganate charge can oxidize",
             "Iron, manganese or sulfide that the permanganate of one regeneration can oxidize by chemistry, "
             "for a "
             "cubic foot. Practice counts on a third to two thirds of it: 300 to 600 grain of iron a cubic "
             "foot at "
             "1.5 to 2 oz is remembered, no neutral source was found.",
             call<permanganatePower>)
        .takes(powerTakes)
        .gives("grain/ft^3 as 'target", "most that the charge oxidizes")
        .by("dose * (3 / electrons of the target) * molar mass of the target / 158.0323")
        .from(powerSources)
        .shownBy(powerExamples)
        .refusing(powerRefusals)
        .safely(permanganateSafety);

} // namespace oxidation
