/// Hardness taken apart: calcium and magnesium, carbonate and noncarbonate, tested against calculated. (R1)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr double perCalcium = 2.497, perMagnesium = 4.118; // Standard Methods 2340 B [section recalled]

double calciumHardness(double calcium)
{
    return perCalcium * calcium;
}

double magnesiumFromHardness(double hardness, double calcium, Reply &reply)
{
    const double left = hardness - perCalcium * calcium;
    if (lessThan(left, 0))
        return reply.refuse(2, "calcium alone makes more than that hardness: check both tests");
    return left / perMagnesium;
}

double disagreement(double tested, double calculated, Reply &reply)
{
    const double share = (tested - calculated) / tested;
    if (lessThan(0.1, std::fabs(share))) // [common practice, no source]
        reply.caution("disagrees",
                      "tested and calculated hardness differ by more than 10 %: iron or turbidity "
                      "disturbs the test, or a value is told in another form");
    return share;
}

double carbonateHardness(double hardness, double alkalinity)
{
    return std::fmin(hardness, alkalinity);
}
double noncarbonateHardness(double hardness, double alkalinity)
{
    return std::fmax(0.0, hardness - alkalinity);
}

constexpr Parameter calciumIon =
    Parameter("calcium", "mg/L as Ca", "calcium of the laboratory sheet").hard(0, 10000).usual(0, 300);
constexpr Parameter hardnessTotal =
    Parameter("hardness", "mg/L as CaCO3", "total hardness").hard(0, 20000).usual(0, 1000);

constexpr puteal_parameter calciumTakes[] = {calciumIon};
constexpr const char *partSources[] = {"standard_methods", "iupac2021", "ohio_epa", nullptr};
constexpr puteal_example calciumExamples[] = {
    example("calcium_hardness(80 mg/L as Ca)", "199.76 mg/L as CaCO3", 1e-9, "computed", "standard_methods"),
    example("calcium_hardness(52.1 mg/L as Ca)", "130.0937 mg/L as CaCO3", 1e-9, "computed",
            "standard_methods"),
};
constexpr puteal_example calciumRefusals[] = {
    refusal("calcium_hardness(-80 mg/L as Ca)",
            "`calcium` must be at least 0 mg/L as Ca; it is -80 mg/L as Ca"),
};

constexpr puteal_parameter magnesiumTakes[] = {hardnessTotal, calciumIon};
constexpr puteal_example magnesiumExamples[] = {
    example("magnesium_from_hardness(685 mg/L as CaCO3, 187 mg/L as Ca)", "53 mg/L as Mg", 0.01, "published",
            "ohio_epa"),
    example("magnesium_from_hardness(434 mg/L as CaCO3, 116 mg/L as Ca)", "35 mg/L as Mg", 0.01, "published",
            "ohio_epa"),
    example("magnesium_from_hardness(561 mg/L as CaCO3, 147 mg/L as Ca)", "47 mg/L as Mg", 0.01, "published",
            "ohio_epa"),
    example("magnesium_from_hardness(372 mg/L as CaCO3, 93 mg/L as Ca)", "34 mg/L as Mg", 0.01, "published",
            "ohio_epa"),
    example("magnesium_from_hardness(266 mg/L as CaCO3, 77 mg/L as Ca)", "18 mg/L as Mg", 0.01, "published",
            "ohio_epa"),
    example("magnesium_from_hardness(323.3 mg/L as CaCO3, 80 mg/L as Ca)", "30 mg/L as Mg", 1e-9, "computed",
            "standard_methods"),
};
constexpr puteal_example magnesiumRefusals[] = {
    refusal("magnesium_from_hardness(100 mg/L as CaCO3, 80 mg/L as Ca)",
            "calcium alone makes more than that hardness: check both tests"),
};

constexpr puteal_parameter disagreementTakes[] = {
    Parameter("tested", "mg/L as CaCO3", "hardness by titration or strip").hard(1, 20000).usual(5, 1000),
    Parameter("calculated", "mg/L as CaCO3", "hardness by calcium and magnesium, see total_hardness")
        .hard(0, 20000)
        .usual(0, 1000),
};
constexpr const char *disagreementSources[] = {"ohio_epa", "practice", nullptr};
constexpr puteal_example disagreementExamples[] = {
    example("hardness_disagreement(200 mg/L as CaCO3, 170 mg/L as CaCO3)", "15 %", 1e-9, "computed",
            "practice"),
    example("hardness_disagreement(685 mg/L as CaCO3, total_hardness(187 mg/L as Ca, 53 mg/L as Mg))",
            "-0.0281752 %", 1e-4, "computed", "ohio_epa"),
};
constexpr puteal_example disagreementRefusals[] = {
    refusal("hardness_disagreement(0 mg/L as CaCO3, 170 mg/L as CaCO3)",
            "`tested` must be at least 1 mg/L as CaCO3; it is 0 mg/L as CaCO3"),
};
constexpr puteal_caution disagreementCautions[] = {caution("disagrees", "more than 10 % apart")};

constexpr puteal_parameter carbonateTakes[] = {hardnessTotal, alkalinityParameter};
constexpr const char *carbonateSources[] = {"definition", nullptr};
constexpr puteal_example carbonateExamples[] = {
    example("carbonate_hardness(250 mg/L as CaCO3, 180 mg/L as CaCO3)", "180 mg/L as CaCO3", 1e-9, "computed",
            "definition"),
    example("carbonate_hardness(120 mg/L as CaCO3, 180 mg/L as CaCO3)", "120 mg/L as CaCO3", 1e-9, "computed",
            "definition"),
};
constexpr puteal_example carbonateRefusals[] = {
    refusal("carbonate_hardness(-1 mg/L as CaCO3, 180 mg/L as CaCO3)",
            "`hardness` must be at least 0 mg/L as CaCO3; it is -1 mg/L as CaCO3"),
};
constexpr puteal_example noncarbonateExamples[] = {
    example("noncarbonate_hardness(250 mg/L as CaCO3, 180 mg/L as CaCO3)", "70 mg/L as CaCO3", 1e-9,
            "computed", "definition"),
    example("noncarbonate_hardness(120 mg/L as CaCO3, 180 mg/L as CaCO3)", "0 mg/L as CaCO3", 1e-9,
            "computed", "definition"),
};
constexpr puteal_example noncarbonateRefusals[] = {
    refusal("noncarbonate_hardness(-1 mg/L as CaCO3, 180 mg/L as CaCO3)",
            "`hardness` must be at least 0 mg/L as CaCO3; it is -1 mg/L as CaCO3"),
};

} // namespace

constinit const puteal_function calciumHardnessRow =
    Function("calcium_hardness", "Calcium hardness",
             "The share of the hardness that calcium makes: what saturation_ph and the indices take.",
             call<calciumHardness>)
        .takes(calciumTakes)
        .gives("mg/L as CaCO3", "calcium hardness")
        .by("2.497 * calcium")
        .from(partSources)
        .shownBy(calciumExamples)
        .refusing(calciumRefusals);

constinit const puteal_function magnesiumRow =
    Function("magnesium_from_hardness", "Magnesium from hardness",
             "Magnesium when a sheet gives total hardness and calcium only.", call<magnesiumFromHardness>)
        .takes(magnesiumTakes)
        .gives("mg/L as Mg", "magnesium")
        .by("(hardness - 2.497 * calcium) / 4.118")
        .from(partSources)
        .shownBy(magnesiumExamples)
        .refusing(magnesiumRefusals);

constinit const puteal_function disagreementRow =
    Function("hardness_disagreement", "Tested against calculated hardness",
             "How far a tested hardness is from the one that calcium and magnesium make, as a share of it.",
             call<disagreement>)
        .takes(disagreementTakes)
        .gives("", "share of the tested hardness; below zero when the tested one is smaller")
        .by("(tested - calculated) / tested")
        .from(disagreementSources)
        .shownBy(disagreementExamples)
        .refusing(disagreementRefusals)
        .warning(disagreementCautions);

constinit const puteal_function carbonateHardnessRow =
    Function("carbonate_hardness", "Carbonate hardness",
             "Hardness that bicarbonate balances: it falls out as scale when water is heated.",
             call<carbonateHardness>)
        .takes(carbonateTakes)
        .gives("mg/L as CaCO3", "carbonate (temporary) hardness")
        .by("the lesser of hardness and alkalinity")
        .from(carbonateSources)
        .shownBy(carbonateExamples)
        .refusing(carbonateRefusals);

constinit const puteal_function noncarbonateHardnessRow =
    Function("noncarbonate_hardness", "Noncarbonate hardness",
             "Hardness beyond the alkalinity, balanced by sulfate, chloride or nitrate.",
             call<noncarbonateHardness>)
        .takes(carbonateTakes)
        .gives("mg/L as CaCO3", "noncarbonate (permanent) hardness")
        .by("hardness - alkalinity, not below 0")
        .from(carbonateSources)
        .shownBy(noncarbonateExamples)
        .refusing(noncarbonateRefusals);

} // namespace quality
