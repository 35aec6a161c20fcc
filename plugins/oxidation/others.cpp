/// Arsenic and nitrite that take oxidant too, sulfide as gas, manganese that a coated bed lets go. (R1, R2,
/// R4)
#include <cmath>

#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

// ------------------------------------------------------------------------------ arsenic_oxidant_demand

constexpr double arsenicElectrons = 2; // arsenite to arsenate, half reaction

double arsenicDemand(int oxidant, double arsenic, Reply &reply)
{
    if (oxidant == oxygen || oxidant == peroxide)
        reply.caution("slow", "oxygen and peroxide turn arsenite over too slowly to be counted on: chlorine, "
                              "permanganate or ozone");
    return arsenic / molarMass("As") * arsenicElectrons * equivalentWeight(oxidant);
}

constexpr puteal_parameter arsenicTakes[] = {
    Parameter("oxidant", "", "what is fed; chlorine stands for bleach as well")
        .oneOf(oxidantWords, oxidantSubstances),
    Parameter("arsenic", "mg/L as As", "arsenite (trivalent arsenic); total arsenic when the form is unknown")
        .hard(0, 10)
        .usual(0, 0.2),
};
constexpr const char *arsenicSources[] = {"iupac2021", nullptr};
constexpr puteal_example arsenicExamples[] = {
    example("arsenic_oxidant_demand(\"chlorine\", 1 mg/L as As)", "0.9463 mg/L as Cl2", 1e-4, "computed",
            "iupac2021"),
    example("arsenic_oxidant_demand(\"permanganate\", 1 mg/L as As)", "1.4062 mg/L as KMnO4", 1e-4,
            "computed", "iupac2021"),
    example("arsenic_oxidant_demand(\"ozone\", 1 mg/L as As)", "0.6406 mg/L as O3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example arsenicRefusals[] = {
    refusal("arsenic_oxidant_demand(\"chlorine\", -1 mg/L as As)",
            "`arsenic` must be at least 0 mg/L as As; it is -1 mg/L as As"),
};
constexpr puteal_caution arsenicCautions[] = {caution("slow", "oxygen or peroxide")};

// ------------------------------------------------------------------------------ nitrite_chlorine_demand

double nitriteDemand(double nitrite)
{
    return nitrite * molarMass("Cl2") / molarMass("N"); // NO2 + Cl2 + H2O = NO3 + 2 HCl: mole for mole
}

constexpr puteal_parameter nitriteTakes[] = {
    Parameter("nitrite", "mg/L as N", "nitrite of the raw water, as nitrogen").hard(0, 100).usual(0, 1),
};
constexpr puteal_example nitriteExamples[] = {
    example("nitrite_chlorine_demand(1 mg/L as N)", "5.0618 mg/L as Cl2", 1e-5, "computed", "iupac2021"),
    example("nitrite_chlorine_demand(0.5 mg/L as N)", "2.53088 mg/L as Cl2", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example nitriteRefusals[] = {
    refusal("nitrite_chlorine_demand(-1 mg/L as N)",
            "`nitrite` must be at least 0 mg/L as N; it is -1 mg/L as N"),
};

// ------------------------------------------------------------------------------- manganese_released_by_iron

// 2 Fe + MnO2 + 4 H2O = 2 Fe(OH)3 + Mn + 2 H: half a mole a mole [IUPAC 2021]
constexpr double manganesePerIron = molarMass("Mn") / (2 * molarMass("Fe"));

double manganeseReleased(double iron)
{
    return iron * manganesePerIron;
}

constexpr puteal_parameter releaseTakes[] = {
    Parameter("iron", "mg/L as Fe", "dissolved iron that reaches a manganese-dioxide bed without an oxidant")
        .hard(0, 1000)
        .usual(0, 20),
};
constexpr puteal_example releaseExamples[] = {
    example("manganese_released_by_iron(1 mg/L as Fe)", "0.4919 mg/L as Mn", 1e-4, "computed", "iupac2021"),
    example("manganese_released_by_iron(0.3 mg/L as Fe)", "0.147564 mg/L as Mn", 1e-5, "computed",
            "iupac2021"),
};
constexpr puteal_example releaseRefusals[] = {
    refusal("manganese_released_by_iron(-1 mg/L as Fe)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};

// ---------------------------------------------------------------------------------------
// coated_bed_manganese

double coatedBedManganese(double ph, Reply &reply)
{
    if (lessThan(7.5, ph))
        reply.caution("extrapolated", "the measurements end at pH 7.5: above it less is left");
    return lessThan(ph, 6) ? 126 : lessThan(ph, 6.5) ? 63 : lessThan(ph, 7) ? 39 : 25; // ug/L [IWA table]
}

constexpr puteal_parameter coatedTakes[] = {
    Parameter("ph", "", "pH in the bed").hard(5, 9).usual(5.5, 8),
};
constexpr const char *coatedSources[] = {"iwa_manganese", nullptr};
constexpr puteal_example coatedExamples[] = {
    example("coated_bed_manganese(5.8)", "126 ug/L as Mn", 1e-9, "published", "iwa_manganese"),
    example("coated_bed_manganese(6.2)", "63 ug/L as Mn", 1e-9, "published", "iwa_manganese"),
    example("coated_bed_manganese(6.8)", "39 ug/L as Mn", 1e-9, "published", "iwa_manganese"),
    example("coated_bed_manganese(7.2)", "25 ug/L as Mn", 1e-9, "published", "iwa_manganese"),
};
constexpr puteal_example coatedRefusals[] = {
    refusal("coated_bed_manganese(4)", "`ph` must be at least 5; it is 4"),
};
constexpr puteal_caution coatedCautions[] = {caution("extrapolated", "pH above 7.5")};

} // namespace

constinit const puteal_function arsenicDemandRow =
    Function(
        "arsenic_oxidant_demand", "Oxidant demand of arsenic",
        "Oxidant that turns arsenite into arsenate, the form that iron floc and media hold. It is little: "
        "what counts is that an oxidant is there at all.",
        call<arsenicDemand>)
        .takes(arsenicTakes)
        .gives("mg/L as 'oxidant", "oxidant used up, as pure oxidant")
        .by("oxidant mass a mole of electrons * 2 * arsenic / 74.9216")
        .from(arsenicSources)
        .shownBy(arsenicExamples)
        .refusing(arsenicRefusals)
        .warning(arsenicCautions)
        .safely("Arsenic harms health: stop and refer to the health department and a licensed professional. "
                "Oxidation alone takes none of it out.");

constinit const puteal_function nitriteDemandRow =
    Function("nitrite_chlorine_demand", "Chlorine demand of nitrite",
             "Chlorine that nitrite takes before a free residual can stand; nitrite comes behind aerated "
             "filters that meet ammonia.",
             call<nitriteDemand>)
        .takes(nitriteTakes)
        .gives("mg/L as Cl2", "chlorine used up")
        .by("70.900 / 14.007 * nitrite")
        .from(arsenicSources)
        .shownBy(nitriteExamples)
        .refusing(nitriteRefusals)
        .safely("Nitrite harms infants: stop and refer to the health department before any treatment is "
                "offered.");

constinit const puteal_function manganeseReleasedRow =
    Function(
        "manganese_released_by_iron", "Manganese that iron releases",
        "Manganese that dissolved iron brings out of a manganese-dioxide bed that has no oxidant: why the "
        "outlet can hold more manganese than the raw water.",
        call<manganeseReleased>)
        .takes(releaseTakes)
        .gives("mg/L as Mn", "most manganese released")
        .by("54.938 / (2 * 55.845) * iron")
        .from(arsenicSources)
        .shownBy(releaseExamples)
        .refusing(releaseRefusals);

constinit const puteal_function coatedBedRow =
    Function(
        "coated_bed_manganese", "Manganese behind a coated bed in cold water",
        "Dissolved manganese measured behind 25 cm of a manganese-dioxide coated bed at 4 to 7 degC, for "
        "each step of pH: a check whether a promise for cold acid water is plausible.",
        call<coatedBedManganese>)
        .takes(coatedTakes)
        .gives("ug/L as Mn", "manganese measured at that pH")
        .by("pH below 6: 126; to 6.5: 63; to 7: 39; to 7.5: 25 ug/L")
        .from(coatedSources)
        .shownBy(coatedExamples)
        .refusing(coatedRefusals)
        .warning(coatedCautions);

} // namespace oxidation
