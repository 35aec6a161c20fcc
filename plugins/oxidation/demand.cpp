/// Oxidant needed for iron, manganese and sulfide, the alkalinity that takes, and the solids that come of it.
/// (R1, R2, R3)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

constexpr double ironElectrons = 1, manganeseElectrons = 2, sulfurElectrons = 2,
                 sulfateElectrons = 8; // half reactions

double sulfideElectrons(int oxidant, int end, double share)
{
    if (end == toSulfur)
        return sulfurElectrons;
    if (end == toSulfate)
        return sulfateElectrons;
    return end == usualEnd && isChlorine(oxidant) ? usualElectronsPerSulfide : sulfideElectronsOf(share);
}

void cautionSulfide(int oxidant, double sulfide, int end, Reply &reply)
{
    if (end == toSulfur && lessThan(0, sulfide))
        reply.caution("sulfur_haze", "this is the least demand: sulfide taken to sulfur leaves a milky haze");
    if (end == usualEnd && !isChlorine(oxidant) && lessThan(0, sulfide))
        reply.caution("assumed_end",
                      "a usual allowance for sulfide is known for chlorine only; here `share_to_sulfate` is "
                      "assumed: show the least (to sulfur) and the most (to sulfate) beside it");
}

void cautionPeroxide(int oxidant, double manganese, Reply &reply)
{
    if (oxidant == peroxide && lessThan(0, manganese))
        reply.caution("manganese_left",
                      "peroxide does not take manganese out at the pH of well water; it is left out "
                      "of this number. Never pair peroxide with a manganese-dioxide bed");
}

double oxidantDemand(int oxidant, double iron, double manganese, double sulfide, int end, double share,
                     Reply &reply)
{
    cautionPeroxide(oxidant, manganese, reply);
    cautionSulfide(oxidant, sulfide, end, reply);
    const double taken = oxidant == peroxide ? 0.0 : manganeseElectrons * manganese / molarMass("Mn");
    return equivalentWeight(oxidant) * (ironElectrons * iron / molarMass("Fe") + taken +
                                        sulfideElectrons(oxidant, end, share) * sulfide / molarMass("H2S"));
}

/// Acid made, moles of H+ a mole of iron, manganese, sulfide to sulfur, sulfide to sulfate (balanced
/// equations).
struct Acid {
    double iron, manganese, toSulfur, toSulfate;
};
constexpr Acid mild{2, 2, 0, 2};                                        // bleach, peroxide, ozone, oxygen
constexpr Acid strong{3, 4, 2, 10};                                     // chlorine gas, dioxide to chlorite
constexpr Acid manganate{5.0 / 3.0, 4.0 / 3.0, -2.0 / 3.0, -2.0 / 3.0}; // permanganate to manganese dioxide
constexpr Acid toChloride{2.2, 2.4, 0.4, 3.6};                          // chlorine dioxide to chloride

constexpr Acid acidOf(int oxidant)
{
    switch (oxidant) {
    case permanganate:
    case sodiumPermanganate:
        return manganate;
    case chlorineDioxide:
    case chlorineGas:
        return strong;
    case dioxideToChloride:
        return toChloride;
    default:
        return mild;
    }
}

double alkalinityConsumed(int oxidant, double iron, double manganese, double sulfide, int end, double share,
                          Reply &reply)
{
    cautionPeroxide(oxidant, manganese, reply);
    cautionSulfide(oxidant, sulfide, end, reply);
    const Acid acid = acidOf(oxidant);
    const double toSulfateShare =
        (sulfideElectrons(oxidant, end, share) - sulfurElectrons) / (sulfateElectrons - sulfurElectrons);
    const double perSulfide = acid.toSulfur + toSulfateShare * (acid.toSulfate - acid.toSulfur);
    const double taken = oxidant == peroxide ? 0.0 : acid.manganese * manganese / molarMass("Mn");
    const double mole = acid.iron * iron / molarMass("Fe") + taken + perSulfide * sulfide / molarMass("H2S");
    return mole * molarMass("CaCO3") / 2.0; // one mole of acid takes half a mole of calcium carbonate
}

constexpr const char *ironSolidWords[] = {"hydroxide", "oxyhydroxide", nullptr};
constexpr double oxyhydroxideMass =
    molarMass("Fe") + 2 * weight::O + weight::H; // FeOOH, what aged floc turns into [IUPAC 2021]

double solidsMade(double iron, double manganese, double sulfide, double permanganateFed, int ironAs)
{
    const double ironSolid = ironAs == 0 ? molarMass("FeOH3") : oxyhydroxideMass;
    return iron * ironSolid / molarMass("Fe") + manganese * molarMass("MnO2") / molarMass("Mn") +
           sulfide * molarMass("S") / molarMass("H2S") +
           permanganateFed * molarMass("MnO2") / molarMass("KMnO4");
}

constexpr puteal_parameter demandTakes[] = {
    Parameter("oxidant", "", "what is fed; chlorine stands for bleach as well")
        .oneOf(oxidantWords, oxidantSubstances),
    ironParameter,
    manganeseParameter,
    sulfideParameter,
    sulfideEndParameter,
    shareParameter,
};
constexpr const char *demandSources[] = {"iupac2021", "wtp_design", "oxidant_tables", "sulfide_handbook",
                                         "epa815014", "practice",   "recalled",       nullptr};
constexpr puteal_example demandExamples[] = {
    example("oxidant_demand(\"oxygen\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)", "0.14 mg/L as O2", 0.03,
            "published", "wtp_design"),
    example("oxidant_demand(\"chlorine\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)", "0.64 mg/L as Cl2",
            0.01, "published", "wtp_design"),
    example("oxidant_demand(\"permanganate\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "0.94 mg/L as KMnO4", 0.01, "published", "wtp_design"),
    example("oxidant_demand(\"chlorine dioxide\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "1.21 mg/L as ClO2", 0.01, "published", "wtp_design"),
    example("oxidant_demand(\"chlorine\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)", "1.29 mg/L as Cl2",
            0.01, "published", "oxidant_tables"),
    example("oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfate\")",
            "8.33 mg/L as Cl2", 0.01, "published", "oxidant_tables"),
    example("oxidant_demand(\"oxygen\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)", "0.29 mg/L as O2", 0.01,
            "published", "oxidant_tables"),
    example("oxidant_demand(\"sodium hypochlorite\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "0.67 mg/L as NaOCl", 0.01, "published", "oxidant_tables"),
    example("oxidant_demand(\"sodium hypochlorite\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)",
            "1.36 mg/L as NaOCl", 0.005, "published", "oxidant_tables"),
    example("oxidant_demand(\"calcium hypochlorite\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "0.64 mg/L as CaCl2O2", 0.005, "published", "oxidant_tables"),
    example("oxidant_demand(\"calcium hypochlorite\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)",
            "1.30 mg/L as CaCl2O2", 0.005, "published", "oxidant_tables"),
    example("oxidant_demand(\"permanganate\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)",
            "1.91 mg/L as KMnO4", 0.005, "published", "oxidant_tables"),
    example("oxidant_demand(\"chlorine dioxide\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)",
            "2.45 mg/L as ClO2", 0.005, "published", "oxidant_tables"),
    example("oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfate\")",
            "8 mg/L as Cl2", 0.05, "published", "sulfide_handbook"),
    // printed as 2 mg of 50 % peroxide
    example("oxidant_demand(\"peroxide\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfur\")",
            "1 mg/L as H2O2", 0.005, "published", "sulfide_handbook"),
    example("oxidant_demand(\"ozone\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)", "0.43 mg/L as O3", 0.005,
            "memory", "recalled"),
    example("oxidant_demand(\"ozone\", 0 mg/L as Fe, 1 mg/L as Mn, 0 mg/L as H2S)", "0.88 mg/L as O3", 0.01,
            "memory", "recalled"),
    example("oxidant_demand(\"chlorine dioxide to chloride\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "0.24 mg/L as ClO2", 0.01, "memory", "recalled"),
    example("oxidant_demand(\"permanganate\", 6 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L as H2S)",
            "6.6185 mg/L as KMnO4", 1e-5, "computed", "iupac2021"),
    example("oxidant_demand(\"chlorine\", 2.4 mg/L as Fe, 0.12 mg/L as Mn, 0 mg/L as H2S)",
            "1.67837 mg/L as Cl2", 1e-4, "computed", "iupac2021"),
    example("oxidant_demand(\"chlorine\", 0.8 mg/L as Fe, 0.08 mg/L as Mn, 2.5 mg/L as H2S, \"to sulfur\")",
            "5.81269 mg/L as Cl2", 1e-4, "computed", "iupac2021"),
    example("oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 2 mg/L as H2S)", "6 mg/L as Cl2", 1e-9,
            "common practice", "practice"),
    example(
        "oxidant_demand(\"ozone\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"share to sulfate\", 50 %)",
        "3.52132 mg/L as O3", 1e-5, "computed", "iupac2021"),
    example("oxidant_demand(\"peroxide\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S)",
            "1.439238 mg/L as H2O2", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example demandRefusals[] = {
    refusal("oxidant_demand(\"chlorine\", -1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};
constexpr puteal_caution demandCautions[] = {
    caution("manganese_left", "peroxide and manganese above 0"),
    caution("sulfur_haze", "sulfide above 0 and taken to sulfur only"),
    caution("assumed_end", "sulfide above 0, the usual end, and an oxidant that is not chlorine"),
};

constexpr puteal_parameter alkalinityTakes[] = {
    Parameter("oxidant", "",
              "what is fed; chlorine means bleach: chlorine gas takes about half as much again for iron")
        .oneOf(oxidantWords),
    ironParameter,
    manganeseParameter,
    sulfideParameter,
    sulfideEndParameter,
    shareParameter,
};
constexpr const char *alkalinitySources[] = {"iupac2021", "wtp_design", "practice", nullptr};
constexpr puteal_example alkalinityExamples[] = {
    example("alkalinity_consumed(\"oxygen\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "1.80 mg/L as CaCO3", 0.01, "published", "wtp_design"),
    example("alkalinity_consumed(\"permanganate\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "1.50 mg/L as CaCO3", 0.01, "published", "wtp_design"),
    example("alkalinity_consumed(\"chlorine dioxide\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "2.70 mg/L as CaCO3", 0.01, "published", "wtp_design"),
    example("alkalinity_consumed(\"chlorine gas\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "2.70 mg/L as CaCO3", 0.01, "published", "wtp_design"),
    example("alkalinity_consumed(\"chlorine gas\", 2.4 mg/L as Fe, 0.12 mg/L as Mn, 0 mg/L as H2S)",
            "6.8892 mg/L as CaCO3", 1e-4, "computed", "iupac2021"),
    example("alkalinity_consumed(\"chlorine\", 6 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L as H2S)",
            "11.6642 mg/L as CaCO3", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example alkalinityRefusals[] = {
    refusal("alkalinity_consumed(\"chlorine\", 6 mg/L as Fe, -0.5 mg/L as Mn, 0 mg/L as H2S)",
            "`manganese` must be at least 0 mg/L as Mn; it is -0.5 mg/L as Mn"),
};

constexpr puteal_parameter solidsTakes[] = {
    ironParameter,
    manganeseParameter,
    sulfideParameter,
    Parameter("permanganate", "mg/L as KMnO4", "permanganate fed, which leaves manganese dioxide")
        .hard(0, 1000)
        .usual(0, 30)
        .otherwise(0, "A"),
    Parameter("iron_as", "", "what the iron floc counts as: fresh hydroxide, or oxyhydroxide as it ages")
        .oneOf(ironSolidWords)
        .otherwise(0, "H"),
};
constexpr const char *solidsSources[] = {"iupac2021", "wtp_design", nullptr};
constexpr puteal_example solidsExamples[] = {
    example("solids_made(1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)", "1.9 mg/L as solids", 0.01, "published",
            "wtp_design"),
    example("solids_made(1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, 0.9433 mg/L as KMnO4)",
            "2.43 mg/L as solids", 0.01, "published", "wtp_design"),
    example("solids_made(1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, 0 mg/L as KMnO4, \"oxyhydroxide\")",
            "1.5910 mg/L as solids", 1e-4, "computed", "iupac2021"),
    example("solids_made(2.4 mg/L as Fe, 0.12 mg/L as Mn, 0 mg/L as H2S)", "4.78258 mg/L as solids", 1e-4,
            "computed", "iupac2021"),
};
constexpr puteal_example solidsRefusals[] = {
    refusal("solids_made(1 mg/L as Fe, 0 mg/L as Mn, -1 mg/L as H2S)",
            "`sulfide` must be at least 0 mg/L as H2S; it is -1 mg/L as H2S"),
};

} // namespace

constinit const puteal_function oxidantDemandRow =
    Function("oxidant_demand", "Oxidant demand",
             "Oxidant that iron, manganese and sulfide use up by chemistry alone: no ammonia, no organic "
             "matter, no "
             "residual. For sulfide show the least (to sulfur), the usual and the most (to sulfate).",
             call<oxidantDemand>)
        .takes(demandTakes)
        .gives("mg/L as 'oxidant", "oxidant used up, as pure oxidant")
        .by("oxidant mass a mole of electrons * (iron / 55.845 + 2 * manganese / 54.938 + n * sulfide / "
            "34.076); n = 2 to "
            "sulfur, 8 to sulfate, 2 + 6 * share_to_sulfate between; usual of chlorine = 3 mg a mg of "
            "sulfide, "
            "usual of any other oxidant = the share")
        .from(demandSources)
        .shownBy(demandExamples)
        .refusing(demandRefusals)
        .warning(demandCautions)
        .safely(oxidizerSafety);

constinit const puteal_function alkalinityConsumedRow =
    Function("alkalinity_consumed", "Alkalinity consumed",
             "Alkalinity that the acid made by oxidation takes. Keep 30 mg/L or more behind it.",
             call<alkalinityConsumed>)
        .takes(alkalinityTakes)
        .gives("mg/L as CaCO3", "alkalinity used up; below zero where the reaction gives some back")
        .by("50.043 * acid made, mole a mole: iron 2, manganese 2, sulfide to sulfate 2 with bleach, "
            "peroxide, ozone and oxygen; 3, 4, 10 (2 to sulfur) with chlorine gas and chlorine dioxide; 5/3, "
            "4/3, -2/3 (also to sulfur) with permanganate; 2.2, 2.4, 3.6 (0.4 to sulfur) with chlorine "
            "dioxide to chloride")
        .from(alkalinitySources)
        .shownBy(alkalinityExamples)
        .refusing(alkalinityRefusals)
        .warning(demandCautions)
        .safely(oxidizerSafety);

constinit const puteal_function solidsMadeRow =
    Function("solids_made", "Solids made by oxidation",
             "Dry solids a filter must hold: ferric hydroxide, manganese dioxide and sulfur. Wet floc is far "
             "more.",
             call<solidsMade>)
        .takes(solidsTakes)
        .gives("mg/L as solids", "dry solids")
        .by("1.91362 (oxyhydroxide: 1.59103) * iron + 1.58244 * manganese + 0.94084 * sulfide + 0.55012 * "
            "permanganate")
        .from(solidsSources)
        .shownBy(solidsExamples)
        .refusing(solidsRefusals);

} // namespace oxidation
