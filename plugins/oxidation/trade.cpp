/// Doses by the trade's weights, what is left of a dose, permanganate for sulfide and for a year. (R2, R4)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

// ----------------------------------------------------------------- usual_chlorine_dose,
// usual_permanganate_dose

double usualChlorine(double iron, double manganese, double sulfide, double ironWeight, double manganeseWeight,
                     double sulfideWeight)
{
    return ironWeight * iron + manganeseWeight * manganese + sulfideWeight * sulfide;
}

constexpr puteal_parameter chlorineTakes[] = {
    ironParameter,
    manganeseParameter,
    sulfideParameter,
    Parameter("iron_weight", "mg{Cl2}/mg{Fe}", "chlorine for each mg of iron; 0.635 by chemistry")
        .hard(0, 10)
        .usual(0.63, 2)
        .otherwise(1, "T"),
    Parameter("manganese_weight", "mg{Cl2}/mg{Mn}", "chlorine for each mg of manganese; 1.29 by chemistry")
        .hard(0, 20)
        .usual(1.29, 4)
        .otherwise(2, "T"),
    Parameter(
        "sulfide_weight", "mg{Cl2}/mg{H2S}",
        "chlorine for each mg of hydrogen sulfide; 3 to 6 are quoted, 2.08 to sulfur and 8.32 to sulfate "
        "by chemistry")
        .hard(0, 30)
        .usual(2.08, 8.5)
        .otherwise(usualChlorinePerSulfide, "T"),
};
constexpr const char *tradeSources[] = {"practice", "iupac2021", nullptr};
constexpr puteal_example chlorineExamples[] = {
    example("usual_chlorine_dose(3 mg/L as Fe, 0.2 mg/L as Mn, 1 mg/L as H2S)", "6.4 mg/L as Cl2", 1e-9,
            "common practice", "practice"),
    example("usual_chlorine_dose(1 mg/L as Fe, 1 mg/L as Mn, 1 mg/L as H2S)", "6 mg/L as Cl2", 1e-9,
            "common practice", "practice"),
    example("usual_chlorine_dose(1 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, 1 mg{Cl2}/mg{Fe}, 2 "
            "mg{Cl2}/mg{Mn}, 6 mg{Cl2}/mg{H2S})",
            "7 mg/L as Cl2", 1e-9, "common practice", "practice"),
};
constexpr puteal_example chlorineRefusals[] = {
    refusal("usual_chlorine_dose(-1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};

double usualPermanganate(double iron, double manganese, double ironWeight, double manganeseWeight)
{
    return ironWeight * iron + manganeseWeight * manganese;
}

constexpr puteal_parameter permanganateTakes[] = {
    ironParameter,
    manganeseParameter,
    Parameter("iron_weight", "mg{KMnO4}/mg{Fe}", "permanganate for each mg of iron; 0.943 by chemistry")
        .hard(0, 10)
        .usual(0.94, 2)
        .otherwise(1, "R"),
    Parameter("manganese_weight", "mg{KMnO4}/mg{Mn}",
              "permanganate for each mg of manganese; 1.918 by chemistry")
        .hard(0, 20)
        .usual(1.91, 4)
        .otherwise(2, "R"),
};
constexpr const char *manganeseSources[] = {"mn_answers", "recalled", "iupac2021", nullptr};
constexpr puteal_example permanganateExamples[] = {
    example("usual_permanganate_dose(0 mg/L as Fe, 1 mg/L as Mn)", "2.0 mg/L as KMnO4", 1e-9, "published",
            "mn_answers"),
    example("usual_permanganate_dose(3 mg/L as Fe, 0.5 mg/L as Mn)", "4 mg/L as KMnO4", 1e-9, "memory",
            "recalled"),
};
constexpr puteal_example permanganateRefusals[] = {
    refusal("usual_permanganate_dose(-1 mg/L as Fe, 0 mg/L as Mn)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};

// ---------------------------------------------------------------------------------------- chlorine_residual

double chlorineResidual(double dose, double demand, double ammonia, Reply &reply)
{
    const double left = dose - demand - ammonia;
    if (lessThan(0, ammonia) && lessThan(left, 0))
        reply.caution("combined", "below the breakpoint: what a test shows is chloramine, no free chlorine");
    else if (lessThan(left, 0))
        reply.caution("used_up",
                      "the demand takes the whole dose: nothing is left at the end of the contact");
    else if (lessThan(4, left)) // most allowed in public supplies, as Cl2 [Potwora, wcponline.com 2009]
        reply.caution("strong", "more than 4 mg/L, the most that public supplies may leave: take it out with "
                                "carbon");
    return left;
}

constexpr Parameter chlorinePart(const char *name, const char *meaning)
{
    return Parameter(name, "mg/L as Cl2", meaning).hard(0, 1000).usual(0, 60);
}
constexpr puteal_parameter residualTakes[] = {
    chlorinePart("dose", "chlorine fed"),
    chlorinePart("demand", "what iron, manganese, sulfide and organic matter take"),
    chlorinePart("ammonia_demand", "what ammonia takes to the breakpoint, see ammonia_chlorine_demand")
        .otherwise(0, "A"),
};
constexpr const char *residualSources[] = {"operator_training", "mrdl", nullptr};
constexpr puteal_example residualExamples[] = {
    example("chlorine_residual(4.0 mg/L as Cl2, 3.7 mg/L as Cl2)", "0.3 mg/L as Cl2", 1e-9, "published",
            "operator_training"),
    example("chlorine_residual(7.2 mg/L as Cl2, 5.7 mg/L as Cl2)", "1.5 mg/L as Cl2", 1e-9, "published",
            "operator_training"),
    example("chlorine_residual(5 mg/L as Cl2, 2 mg/L as Cl2, 3.79629 mg/L as Cl2)", "-0.79629 mg/L as Cl2",
            1e-9, "computed", "operator_training"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("chlorine_residual(-1 mg/L as Cl2, 0 mg/L as Cl2)",
            "`dose` must be at least 0 mg/L as Cl2; it is -1 mg/L as Cl2"),
};
constexpr puteal_caution residualCautions[] = {
    caution("combined", "less than the breakpoint with ammonia"),
    caution("used_up", "a demand above the dose"),
    caution("strong", "more than 4 mg/L left"),
};

// ------------------------------------------------------------------------------ permanganate_sulfide_demand

constexpr const char *endWords[] = {"to sulfur", "between", "to sulfate", nullptr};
// mole of permanganate a mole of sulfide: 3 H2S + 2, 4 (with MnO and MnO2 left), 8 KMnO4
constexpr double molePerSulfide[] = {2.0 / 3.0, 4.0 / 3.0, 8.0 / 3.0};

double permanganateSulfide(double sulfide, int end)
{
    return sulfide * molePerSulfide[end] * molarMass("KMnO4") / molarMass("H2S");
}

constexpr puteal_parameter sulfideTakes[] = {
    sulfideParameter,
    Parameter(
        "sulfide_end", "",
        "how far: to sulfur (3.09 mg a mg), to sulfate (12.4), or the equation between that trade texts "
        "print (6.18: sulfate, sulfur and both oxides of manganese)")
        .oneOf(endWords)
        .otherwise(1, "T"),
};
constexpr const char *sulfideSources[] = {"iupac2021", "recalled", nullptr};
constexpr puteal_example sulfideExamples[] = {
    example("permanganate_sulfide_demand(1 mg/L as H2S)", "6.2 mg/L as KMnO4", 0.003, "memory", "recalled"),
    example("permanganate_sulfide_demand(1 mg/L as H2S)", "6.18353 mg/L as KMnO4", 1e-5, "computed",
            "iupac2021"),
    example("permanganate_sulfide_demand(1 mg/L as H2S, \"to sulfur\")", "3.09176 mg/L as KMnO4", 1e-5,
            "computed", "iupac2021"),
    example("permanganate_sulfide_demand(1 mg/L as H2S, \"to sulfate\")", "12.3671 mg/L as KMnO4", 1e-5,
            "computed", "iupac2021"),
};
constexpr puteal_example sulfideRefusals[] = {
    refusal("permanganate_sulfide_demand(-1 mg/L as H2S)",
            "`sulfide` must be at least 0 mg/L as H2S; it is -1 mg/L as H2S"),
};

// ---------------------------------------------------------------------------------- permanganate_per_year

double permanganateYear(double charge, double interval)
{
    return charge * measure::dayPerYear / interval;
}

constexpr puteal_parameter yearTakes[] = {
    Parameter("charge", "lb/event as KMnO4", "permanganate for one regeneration, see permanganate_charge")
        .hard(0, 1000)
        .usual(0.05, 3),
    Parameter("interval", "day/event", "days between regenerations").hard(0.1, 365).usual(1, 14),
};
constexpr const char *yearSources[] = {"iupac2021", "practice", nullptr};
constexpr puteal_example yearExamples[] = {
    example("permanganate_per_year(permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4), 3 day/event)",
            "22.8125 lb/yr as KMnO4", 1e-9, "computed", "practice"),
    example("permanganate_per_year(0.25 lb/event as KMnO4, 5 day/event)", "18.25 lb/yr as KMnO4", 1e-9,
            "computed", "practice"),
};
constexpr puteal_example yearRefusals[] = {
    refusal("permanganate_per_year(0.25 lb/event as KMnO4, 0 day/event)",
            "`interval` must be at least 0.1 day/event; it is 0 day/event"),
};

} // namespace

constinit const puteal_function usualChlorineRow =
    Function(
        "usual_chlorine_dose", "Usual chlorine dose",
        "Chlorine by the trade's weights: 1 for iron, 2 for manganese, 3 for sulfide. For iron and manganese "
        "that is half as much again as chemistry takes; ammonia and a residual come on top.",
        call<usualChlorine>)
        .takes(chlorineTakes)
        .gives("mg/L as Cl2", "chlorine to feed")
        .by("iron_weight * iron + manganese_weight * manganese + sulfide_weight * sulfide")
        .from(tradeSources)
        .shownBy(chlorineExamples)
        .refusing(chlorineRefusals)
        .safely(oxidizerSafety);

constinit const puteal_function usualPermanganateRow =
    Function("usual_permanganate_dose", "Usual permanganate dose",
             "Permanganate by the trade's weights: 1 for iron, 2 for manganese, so a little above chemistry. "
             "Pink water behind the filter means too much.",
             call<usualPermanganate>)
        .takes(permanganateTakes)
        .gives("mg/L as KMnO4", "permanganate to feed")
        .by("iron_weight * iron + manganese_weight * manganese")
        .from(manganeseSources)
        .shownBy(permanganateExamples)
        .refusing(permanganateRefusals)
        .safely(oxidizerSafety);

constinit const puteal_function chlorineResidualRow =
    Function("chlorine_residual", "Chlorine residual",
             "Free chlorine left of a dose. Below zero there is none; with ammonia the test then shows "
             "chloramine.",
             call<chlorineResidual>)
        .takes(residualTakes)
        .gives("mg/L as Cl2", "free chlorine left; below zero, chlorine that is missing")
        .by("dose - demand - ammonia_demand")
        .from(residualSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals)
        .warning(residualCautions)
        .safely(oxidizerSafety);

constinit const puteal_function permanganateSulfideRow =
    Function("permanganate_sulfide_demand", "Permanganate demand of sulfide",
             "Permanganate that sulfide takes, by each of the three equations met in print.",
             call<permanganateSulfide>)
        .takes(sulfideTakes)
        .gives("mg/L as KMnO4", "permanganate used up")
        .by("sulfide * n * 158.0323 / 34.076; n = 2/3 to sulfur, 4/3 between, 8/3 to sulfate")
        .from(sulfideSources)
        .shownBy(sulfideExamples)
        .refusing(sulfideRefusals)
        .safely(oxidizerSafety);

constinit const puteal_function permanganateYearRow =
    Function("permanganate_per_year", "Permanganate used in a year",
             "Permanganate for a year of regenerations of a bed.", call<permanganateYear>)
        .takes(yearTakes)
        .gives("lb/yr as KMnO4", "permanganate used in a year of 365 days")
        .by("charge / interval")
        .from(yearSources)
        .shownBy(yearExamples)
        .refusing(yearRefusals)
        .safely(oxidizerSafety);

} // namespace oxidation
