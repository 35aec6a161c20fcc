/// Calcite beds and soda-ash feeds: hardness or sodium added, media and chemical of a year, blends. (R4)
#include "neutralizer.h"
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

// Na2CO3 + CO2 + H2O = 2 NaHCO3: two sodium for one carbon dioxide [IUPAC 2021]
constexpr double sodiumPerCarbonDioxide = 2.0 * molarMass("Na") / molarMass("CO2");

/// mg/L at gal/day in lb/yr.
constexpr double poundsPerYear =
    measure::literPerGallon * measure::dayPerYear / (1000.0 * measure::gramPerPound);

/// Calcite leaves as much hardness as alkalinity.
double calciteHardness(double removed)
{
    return removed * alkalinityPerCarbonDioxide(Neutralizer::calcite);
}

double calcitePerYear(double removed, double use)
{
    return removed * dosePerCarbonDioxide(Neutralizer::calcite) * use * poundsPerYear;
}

double sodaAshDose(double removed)
{
    return removed * dosePerCarbonDioxide(Neutralizer::sodaAsh);
}

double sodaAshPerYear(double removed, double use)
{
    return removed * dosePerCarbonDioxide(Neutralizer::sodaAsh) * use * poundsPerYear;
}

double sodaAshSodium(double removed, Reply &reply)
{
    const double sodium = removed * sodiumPerCarbonDioxide;
    if (lessThan(20, sodium)) // guidance figure for a diet of 500 mg sodium a day [EPA 822-R-03-006]
        reply.caution("sodium_diet",
                      "more than 20 mg/L of sodium is added, the guidance figure for a 500 mg a day diet: "
                      "say so to anyone on a low-sodium diet");
    return sodium;
}

// ------------------------------------------------------------------------------- calcite_blend_dose,
// _hardness

constexpr double mostMagnesia = 0.1; // share of a blend; above it the pH overshoots [common practice]

void cautionShare(double share, Reply &reply)
{
    if (lessThan(mostMagnesia, share))
        reply.caution("overshoots", "above 10 % of magnesia the pH may rise above 9 when little water runs");
}

double blendDose(double removed, double magnesia, Reply &reply)
{
    cautionShare(magnesia, reply);
    return removed / ((1 - magnesia) / dosePerCarbonDioxide(Neutralizer::calcite) +
                      magnesia / dosePerCarbonDioxide(Neutralizer::magnesia));
}

double blendHardness(double removed, double magnesia, Reply &reply)
{
    const double dose = blendDose(removed, magnesia, reply);
    return dose * ((1 - magnesia) + magnesia * molarMass("CaCO3") / molarMass("MgO"));
}

constexpr Parameter magnesiaShare =
    Parameter("magnesia", "", "share of magnesia by mass in what dissolves; 5 to 10 % in a blend")
        .hard(0, 1)
        .usual(0, mostMagnesia);
constexpr puteal_parameter blendTakes[] = {removedParameter, magnesiaShare};
constexpr const char *blendSources[] = {"iupac2021", "practice", nullptr};
constexpr puteal_example blendDoseExamples[] = {
    example("calcite_blend_dose(40 mg/L as CO2, 0 %)", "90.969 mg/L", 1e-4, "computed", "iupac2021"),
    example("calcite_blend_dose(40 mg/L as CO2, 10 %)", "65.13322 mg/L", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example blendHardnessExamples[] = {
    example("calcite_blend_hardness(40 mg/L as CO2, 0 %)", "90.969 mg/L as CaCO3", 1e-4, "computed",
            "iupac2021"),
    example("calcite_blend_hardness(40 mg/L as CO2, 10 %)", "74.79428 mg/L as CaCO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example blendDoseRefusals[] = {
    refusal("calcite_blend_dose(40 mg/L as CO2, 110 %)", "`magnesia` must be at most 1; it is 1.1"),
};
constexpr puteal_example blendHardnessRefusals[] = {
    refusal("calcite_blend_hardness(40 mg/L as CO2, 110 %)", "`magnesia` must be at most 1; it is 1.1"),
};
constexpr puteal_caution blendCautions[] = {caution("overshoots", "more than 10 % of magnesia")};

// ------------------------------------------------------------------------------------ calcite_service_flow

double calciteFlow(double area, double loading)
{
    return area * loading;
}

constexpr puteal_parameter flowTakes[] = {
    Parameter("area", "ft^2", "cross-section of the tank, see bed_area").hard(0.01, 100).usual(0.3, 6),
    Parameter("loading", "gpm/ft^2", "most flow for a square foot; faster water leaves acid")
        .hard(0.1, 20)
        .usual(1, 3)
        .otherwise(3, "H"),
};
constexpr const char *flowSources[] = {"ph_adjustment", nullptr};
constexpr puteal_example flowExamples[] = {
    example("calcite_service_flow(1 ft^2)", "3 gpm", 1e-9, "published", "ph_adjustment"),
    example("calcite_service_flow(0.5454 ft^2)", "1.6362 gpm", 1e-9, "computed", "ph_adjustment"),
};
constexpr puteal_example flowRefusals[] = {
    refusal("calcite_service_flow(0 ft^2)", "`area` must be at least 0.01 ft^2; it is 0 ft^2"),
};

constexpr puteal_parameter removedTakes[] = {removedParameter};
constexpr const char *neutralizerSources[] = {"iupac2021", "ph_adjustment", nullptr};
constexpr puteal_example calciteExamples[] = {
    example("calcite_hardness_added(40 mg/L as CO2)", "90.969 mg/L as CaCO3", 1e-4, "computed", "iupac2021"),
    example("calcite_hardness_added(53.2456 mg/L as CO2)", "121.092 mg/L as CaCO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example calciteRefusals[] = {
    refusal("calcite_hardness_added(-40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};
constexpr puteal_parameter yearTakes[] = {
    removedParameter,
    Parameter("use", "gal/day", "water through the neutralizer").hard(0, 100000).usual(50, 1000),
};
constexpr puteal_example yearExamples[] = {
    example("calcite_per_year(40 mg/L as CO2, 250 gal/day)", "69.274 lb/yr as CaCO3", 1e-4, "computed",
            "iupac2021"),
    example("calcite_per_year(53.2456 mg/L as CO2, 300 gal/day)", "110.657 lb/yr as CaCO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example yearRefusals[] = {
    refusal("calcite_per_year(40 mg/L as CO2, -250 gal/day)",
            "`use` must be at least 0 gal/day; it is -250 gal/day"),
};
constexpr puteal_example sodaYearExamples[] = {
    example("soda_ash_per_year(40 mg/L as CO2, 200 gal/day)", "58.687 lb/yr as Na2CO3", 1e-4, "computed",
            "iupac2021"),
    example("soda_ash_per_year(20 mg/L as CO2, 400 gal/day)", "58.687 lb/yr as Na2CO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example sodaYearRefusals[] = {
    refusal("soda_ash_per_year(40 mg/L as CO2, -200 gal/day)",
            "`use` must be at least 0 gal/day; it is -200 gal/day"),
};
constexpr const char *sodiumSources[] = {"iupac2021", "epa822", nullptr};
constexpr puteal_example sodiumExamples[] = {
    example("soda_ash_sodium_added(40 mg/L as CO2)", "41.791 mg/L as Na", 1e-4, "computed", "iupac2021"),
    example("soda_ash_sodium_added(1 mg/L as CO2)", "1.04478 mg/L as Na", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example sodiumRefusals[] = {
    refusal("soda_ash_sodium_added(-40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};
constexpr puteal_caution sodiumCautions[] = {caution("sodium_diet", "more than 20 mg/L as Na added")};
constexpr puteal_example sodaExamples[] = {
    example("soda_ash_dose(40 mg/L as CO2)", "96.333 mg/L as Na2CO3", 1e-4, "computed", "iupac2021"),
    example("soda_ash_dose(53.2456 mg/L as CO2)", "128.23 mg/L as Na2CO3", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example sodaRefusals[] = {
    refusal("soda_ash_dose(-40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};

constexpr const char sodaSafety[] =
    "Soda ash irritates eyes and lungs: goggles and a dust mask. Never in one tank with permanganate.";

} // namespace

constinit const puteal_function calciteHardnessRow =
    Function("calcite_hardness_added", "Hardness a calcite bed adds",
             "Hardness, and as much alkalinity, that calcite adds while it takes carbon dioxide away. Soften "
             "after it. The same relation as neutralizer_alkalinity_added with calcite.",
             call<calciteHardness>)
        .takes(removedTakes)
        .gives("mg/L as CaCO3", "hardness added")
        .by("100.086 / 44.009 * carbon_dioxide_removed")
        .from(neutralizerSources)
        .shownBy(calciteExamples)
        .refusing(calciteRefusals);

constinit const puteal_function calcitePerYearRow =
    Function("calcite_per_year", "Calcite used in a year", "Calcite dissolved in a year, to be topped up.",
             call<calcitePerYear>)
        .takes(yearTakes)
        .gives("lb/yr as CaCO3", "calcite dissolved")
        .by("100.086 / 44.009 * carbon_dioxide_removed * use")
        .from(neutralizerSources)
        .shownBy(yearExamples)
        .refusing(yearRefusals)
        .safely("Take the pressure off the tank before filling it; a dust mask while pouring.");

constinit const puteal_function sodaAshRow =
    Function("soda_ash_dose", "Soda ash dose",
             "Soda ash that takes carbon dioxide away; it adds sodium, no hardness. The same relation as "
             "neutralizer_dose with soda ash.",
             call<sodaAshDose>)
        .takes(removedTakes)
        .gives("mg/L as Na2CO3", "soda ash")
        .by("105.9875 / 44.009 * carbon_dioxide_removed")
        .from(neutralizerSources)
        .shownBy(sodaExamples)
        .refusing(sodaRefusals)
        .safely(sodaSafety);

constinit const puteal_function sodaAshPerYearRow =
    Function("soda_ash_per_year", "Soda ash used in a year", "Soda ash to buy for a year of feeding it.",
             call<sodaAshPerYear>)
        .takes(yearTakes)
        .gives("lb/yr as Na2CO3", "soda ash used")
        .by("105.9875 / 44.009 * carbon_dioxide_removed * use")
        .from(neutralizerSources)
        .shownBy(sodaYearExamples)
        .refusing(sodaYearRefusals)
        .safely(sodaSafety);

constinit const puteal_function sodaAshSodiumRow =
    Function("soda_ash_sodium_added", "Sodium that soda ash adds",
             "Sodium added while soda ash takes carbon dioxide away; it adds to what a softener gives.",
             call<sodaAshSodium>)
        .takes(removedTakes)
        .gives("mg/L as Na", "sodium added")
        .by("2 * 22.98977 / 44.009 * carbon_dioxide_removed")
        .from(sodiumSources)
        .shownBy(sodiumExamples)
        .refusing(sodiumRefusals)
        .warning(sodiumCautions)
        .safely(sodaSafety);

constinit const puteal_function blendDoseRow =
    Function("calcite_blend_dose", "Blend of calcite and magnesia used up",
             "Mass of a blend that dissolves while it takes carbon dioxide away.", call<blendDose>)
        .takes(blendTakes)
        .gives("mg/L", "blend dissolved")
        .by("carbon_dioxide_removed / ((1 - magnesia) / 2.27422 + magnesia / 0.45791)")
        .from(blendSources)
        .shownBy(blendDoseExamples)
        .refusing(blendDoseRefusals)
        .warning(blendCautions);

constinit const puteal_function blendHardnessRow =
    Function("calcite_blend_hardness", "Hardness a blend adds",
             "Hardness that a blend of calcite and magnesia adds: magnesia adds half as much for the same "
             "carbon dioxide.",
             call<blendHardness>)
        .takes(blendTakes)
        .gives("mg/L as CaCO3", "hardness added")
        .by("calcite_blend_dose * (1 - magnesia + magnesia * 100.086 / 40.304)")
        .from(blendSources)
        .shownBy(blendHardnessExamples)
        .refusing(blendHardnessRefusals)
        .warning(blendCautions);

constinit const puteal_function calciteFlowRow =
    Function("calcite_service_flow", "Service flow of a calcite bed",
             "Flow a calcite bed neutralizes, on a bed 32 to 36 in deep.", call<calciteFlow>)
        .takes(flowTakes)
        .gives("gpm", "most service flow")
        .by("area * loading")
        .from(flowSources)
        .shownBy(flowExamples)
        .refusing(flowRefusals);

} // namespace quality
