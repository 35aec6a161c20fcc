/// Shock chlorination of a well: by a level in the water, by published rules, dry, and what a bottle gives.
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double shockDose(double water, double target, double strength)
{
    return water * target / strength;
}

constexpr const char *ruleWords[] = {"plain",
                                     "groundwater district",
                                     "groundwater trust",
                                     "county health laboratory",
                                     "agriculture ministry",
                                     "health service",
                                     nullptr};
constexpr double ruleBleach = 52500.0; // mg/L as Cl2 of the 5.25 % bleach the rules are written for
// Chlorine that each rule brings into the water standing in the well, mg/L, from its kitchen measures.
constexpr double ruleLevels[] = {
    100.0,                              // the trade's plain figure [common practice, no source]
    3.0 / 16.0 / 100.0 * ruleBleach,    // 3 cups to 100 gal [Hickory UWCD]
    0.25 / 50.0 * ruleBleach,           // 1 quart to 50 gal [American Ground Water Trust]
    112.0 / 128.0 / 100.0 * ruleBleach, // 112 fluid ounces to 100 gal [Mesa County Health Department]
    2.0 * 200.0,                        // 200 mg/L in twice the casing's water [Alberta Agriculture]
    2.0 * 50.0,                         // 50 mg/L in twice the casing's water [Alberta Health Services]
};

double shockByRule(int rule, double water, double strength, Reply &reply)
{
    const double level = ruleLevels[rule];
    if (lessThan(300, level)) // the trust's text ends at 300 mg/L and says more is not better
        reply.caution("strong", "more than 300 mg/L for the water that stands in the well: more is not "
                                "better, take care where it is flushed");
    return water * level / strength;
}

double shockSolutionVolume(double diameter, double depth, double volumes)
{
    const double cubicInchPerFoot =
        measure::pi / 4.0 * diameter * diameter * measure::inchPerFoot; // of casing
    return cubicInchPerFoot / 231.0 * depth * volumes; // 231 in^3 a gallon, exact [NIST Handbook 44]
}

double shockLevel(double water, double bleach, double strength, Reply &reply)
{
    const double level = strength * bleach / water;
    if (lessThan(level, 50)) // published rules run from 50 to 300 mg/L and beyond
        reply.caution("weak", "published rules ask for 50 mg/L and more");
    else if (lessThan(300, level))
        reply.caution("strong", "more than 300 mg/L: more is not better, dilute it");
    return level;
}

double calciumHypochloriteDose(double water, double target, double available)
{
    return water * measure::literPerGallon * target / 1000.0 / available;
}

constexpr Parameter waterParameter =
    Parameter("water", "gal", "water to be chlorinated: what stands in the well, and the plumbing")
        .hard(0.1, 100000)
        .usual(5, 3000);
constexpr Parameter targetParameter =
    Parameter("target", "mg/L as Cl2", "chlorine wanted in that water").hard(1, 5000).usual(50, 300);
constexpr Parameter strengthParameter =
    Parameter("strength", "mg/L as Cl2",
              "strength of the bleach, as 5.25 trade_pct; today's is often stronger, read the label and see "
              "hypochlorite_strength")
        .hard(1000, 250000)
        .usual(30000, 150000);

constexpr puteal_parameter doseTakes[] = {waterParameter, targetParameter, strengthParameter};
constexpr const char *doseSources[] = {"alberta_agriculture", "alberta_health", "hickory", "geometry",
                                       nullptr};
constexpr puteal_example doseExamples[] = {
    // a foot of a 4 in, 6 in and 8 in casing, imperial gallons as printed
    example("shock_chlorination_dose(1.1 gal_imp, 200 mg/L as Cl2, 5.25 trade_pct)", "0.019 L", 5e-3,
            "published", "alberta_agriculture"),
    example("shock_chlorination_dose(2.4 gal_imp, 200 mg/L as Cl2, 5.25 trade_pct)", "0.042 L", 0.012,
            "published", "alberta_agriculture"),
    example("shock_chlorination_dose(4.2 gal_imp, 200 mg/L as Cl2, 5.25 trade_pct)", "0.072 L", 0.012,
            "published", "alberta_agriculture"),
    example("shock_chlorination_dose(2.4 gal_imp, 200 mg/L as Cl2, 12 trade_pct)", "0.018 L", 0.012,
            "published", "alberta_agriculture"),
    example("shock_chlorination_dose(2.4 gal_imp, 50 mg/L as Cl2, 5.25 trade_pct)", "10.5 mL", 0.012,
            "published", "alberta_health"),
    example("shock_chlorination_dose(2.4 gal_imp, 50 mg/L as Cl2, 12 trade_pct)", "4.55 mL", 0.012,
            "published", "alberta_health"),
    // 150 ft of a 6 in casing
    example("shock_chlorination_dose(220.32 gal, 100 mg/L as Cl2, 5.25 trade_pct)", "53.7161 fl_oz", 1e-5,
            "computed", "geometry"),
    example("shock_chlorination_dose(220.32 gal, 100 mg/L as Cl2, 8.25 trade_pct)", "34.18298 fl_oz", 1e-5,
            "computed", "geometry"),
};
constexpr puteal_example doseRefusals[] = {
    refusal("shock_chlorination_dose(220 gal, 100 mg/L as Cl2, 0 trade_pct)",
            "`strength` must be at least 1000 mg/L as Cl2; it is 0 mg/L as Cl2"),
};

constexpr puteal_parameter ruleTakes[] = {
    Parameter("rule", "",
              "whose: plain 100 mg/L; a groundwater district, 3 cups to 100 gal; a groundwater trust, 1 "
              "quart to 50 gal; "
              "a county health laboratory, 112 fl_oz to 100 gal; Alberta's agriculture ministry, 200 mg/L in "
              "twice the water; its health service, 50 mg/L in twice the water")
        .oneOf(ruleWords),
    Parameter("water", "gal", "water that stands in the well").hard(0.1, 100000).usual(5, 3000),
    Parameter(strengthParameter).otherwise(ruleBleach, "H"),
};
constexpr const char *ruleSources[] = {
    "hickory",        "groundwater_trust", "mesa_county", "alberta_agriculture",
    "alberta_health", "practice",          nullptr};
constexpr puteal_example ruleExamples[] = {
    example("shock_chlorination_by_rule(\"groundwater district\", 100 gal)", "3 cup", 1e-9, "published",
            "hickory"),
    example("shock_chlorination_by_rule(\"groundwater trust\", 50 gal)", "1 qt", 1e-9, "published",
            "groundwater_trust"),
    example("shock_chlorination_by_rule(\"groundwater trust\", 200 gal)", "1 gal", 1e-9, "published",
            "groundwater_trust"),
    example("shock_chlorination_by_rule(\"county health laboratory\", 100 gal)", "112 fl_oz", 1e-9,
            "published", "mesa_county"),
    // half the imperial gallons that the ministry has pumped for a foot of a 6 in casing
    example("shock_chlorination_by_rule(\"agriculture ministry\", 1.2 gal_imp)", "0.042 L", 0.012,
            "published", "alberta_agriculture"),
    example("shock_chlorination_by_rule(\"health service\", 1.2 gal_imp)", "10.5 mL", 0.012, "published",
            "alberta_health"),
    example("shock_chlorination_by_rule(\"plain\", 220.32 gal)", "53.7161 fl_oz", 1e-5, "common practice",
            "practice"),
};
constexpr puteal_example ruleRefusals[] = {
    refusal("shock_chlorination_by_rule(\"plain\", 0 gal)", "`water` must be at least 0.1 gal; it is 0 gal"),
};
constexpr puteal_caution ruleCautions[] = {caution("strong", "a rule of more than 300 mg/L")};

constexpr puteal_parameter solutionTakes[] = {
    Parameter("diameter", "in", "inside diameter of the casing").hard(1, 120).usual(2, 12),
    Parameter("depth", "ft", "depth of the water that stands in the casing").hard(0, 3000).usual(5, 500),
    Parameter("volumes", "", "times the casing's water that is chlorinated")
        .hard(0.5, 10)
        .usual(1, 3)
        .otherwise(2, "H"),
};
constexpr const char *solutionSources[] = {"alberta_agriculture", "alberta_health", "geometry", nullptr};
constexpr puteal_example solutionExamples[] = {
    // the printed gallons are imperial and rounded
    example("shock_solution_volume(6 in, 100 ft)", "240 gal_imp", 0.02, "published", "alberta_agriculture"),
    example("shock_solution_volume(4 in, 1 ft)", "1.1 gal_imp", 0.013, "published", "alberta_agriculture"),
    example("shock_solution_volume(4 in, 1 ft)", "5 L", 0.013, "published", "alberta_health"),
    example("shock_solution_volume(8 in, 1 ft)", "4.2 gal_imp", 0.036, "published", "alberta_agriculture"),
    // the bleach for it, printed as 0.042 L for a foot
    example("shock_chlorination_dose(shock_solution_volume(6 in, 100 ft), 200 mg/L as Cl2, 5.25 trade_pct)",
            "4.2 L", 0.01, "published", "alberta_agriculture"),
    example("shock_solution_volume(6 in, 150 ft, 1)", "220.32 gal", 2e-4, "computed", "geometry"),
};
constexpr puteal_example solutionRefusals[] = {
    refusal("shock_solution_volume(0 in, 100 ft)", "`diameter` must be at least 1 in; it is 0 in"),
};

constexpr puteal_parameter levelTakes[] = {
    waterParameter,
    Parameter("bleach", "gal", "bleach poured in").hard(0, 1000).usual(0.05, 10),
    strengthParameter,
};
constexpr const char *levelSources[] = {"hickory", "groundwater_trust", "mesa_county", "geometry", nullptr};
constexpr puteal_example levelExamples[] = {
    example("shock_chlorination_level(100 gal, 3 cup, 5.25 trade_pct)", "98.44 mg/L as Cl2", 1e-4, "computed",
            "hickory"),
    example("shock_chlorination_level(50 gal, 1 qt, 5.25 trade_pct)", "262.5 mg/L as Cl2", 1e-9, "computed",
            "groundwater_trust"),
    example("shock_chlorination_level(100 gal, 112 fl_oz, 5.25 trade_pct)", "459 mg/L as Cl2", 1e-3,
            "computed", "mesa_county"),
};
constexpr puteal_example levelRefusals[] = {
    refusal("shock_chlorination_level(0 gal, 3 cup, 5.25 trade_pct)",
            "`water` must be at least 0.1 gal; it is 0 gal"),
};
constexpr puteal_caution levelCautions[] = {caution("weak", "less than 50 mg/L"),
                                            caution("strong", "more than 300 mg/L")};

constexpr puteal_parameter dryTakes[] = {
    waterParameter,
    targetParameter,
    Parameter("available", "", "available chlorine of the granules by weight: 65 to 70 %")
        .hard(0.2, 1)
        .usual(0.6, 0.75)
        .otherwise(0.7, "H"),
};
constexpr puteal_example dryExamples[] = {
    example("calcium_hypochlorite_dose(1.1 gal_imp, 200 mg/L as Cl2)", "1.44 g", 0.01, "published",
            "alberta_agriculture"),
    example("calcium_hypochlorite_dose(2.4 gal_imp, 200 mg/L as Cl2)", "3.12 g", 2e-3, "published",
            "alberta_agriculture"),
    example("calcium_hypochlorite_dose(4.2 gal_imp, 200 mg/L as Cl2)", "5.46 g", 2e-3, "published",
            "alberta_agriculture"),
    example("calcium_hypochlorite_dose(100 gal, 419 mg/L as Cl2)", "8 oz", 2e-3, "computed", "mesa_county"),
};
constexpr const char *drySources[] = {"alberta_agriculture", "mesa_county", "practice", nullptr};
constexpr puteal_example dryRefusals[] = {
    refusal("calcium_hypochlorite_dose(100 gal, 200 mg/L as Cl2, 0)",
            "`available` must be at least 0.2; it is 0"),
};

constexpr const char shockSafety[] =
    "Goggles and gloves, good air, power to the pump locked off while the well is open. Never bring chlorine "
    "and acid "
    "together: poisonous gas. Plain unscented bleach, fresh. Bypass softener, carbon and oxidizing media. Do "
    "not drink "
    "the water while the residual is strong; flush it outdoors, little of it to the septic tank. Test for "
    "coliform "
    "after about five days of use; if bacteria come back find the cause. The local health authority's "
    "procedure "
    "goes first; "
    "wide dug wells are a specialist's job.";
constexpr const char drySafety[] =
    "Granules feed a fire and give off poisonous gas: keep them dry and away from acid, oil, liquid bleach "
    "and "
    "any other chlorine product, and add them to water, never water to them. Goggles and gloves, good air, "
    "power "
    "to the pump locked off while the well is open. Bypass softener, carbon and oxidizing media. Do not "
    "drink "
    "the water while the residual is strong; flush it outdoors, little of it to the septic tank. Test for "
    "coliform after about five days of use; if bacteria come back find the cause. The local health "
    "authority's procedure goes first; wide dug wells are a specialist's job.";

} // namespace

constinit const puteal_function shockDoseRow =
    Function(
        "shock_chlorination_dose", "Bleach for shock chlorination",
        "Bleach that brings a level of chlorine into the water of a well. Mix it into water first, run it "
        "round for 15 minutes and more, let it stand 6 to 24 hours.",
        call<shockDose>)
        .takes(doseTakes)
        .gives("gal", "bleach")
        .by("water * target / strength")
        .from(doseSources)
        .shownBy(doseExamples)
        .refusing(doseRefusals)
        .safely(shockSafety);

constinit const puteal_function shockByRuleRow =
    Function("shock_chlorination_by_rule", "Bleach for shock chlorination by a published rule",
             "Bleach for the water that stands in a well, by one of the published rules. They differ from "
             "about 100 to 460 "
             "mg/L, so the rule of the local health authority goes first.",
             call<shockByRule>)
        .takes(ruleTakes)
        .gives("gal", "bleach")
        .by("water * level / strength; level 100, 98.44, 262.5, 459.4, 2 * 200, 2 * 50 mg/L in the order of "
            "the rules")
        .from(ruleSources)
        .shownBy(ruleExamples)
        .refusing(ruleRefusals)
        .warning(ruleCautions)
        .safely(shockSafety);

constinit const puteal_function shockSolutionVolumeRow =
    Function("shock_solution_volume", "Chlorinated water for a casing",
             "Water to chlorinate in a clean tank and pour into a drilled well: twice what stands in the "
             "casing, so that it also reaches the rock around.",
             call<shockSolutionVolume>)
        .takes(solutionTakes)
        .gives("gal", "chlorinated water")
        .by("pi / 4 * diameter^2 * depth * volumes")
        .from(solutionSources)
        .shownBy(solutionExamples)
        .refusing(solutionRefusals)
        .safely(shockSafety);

constinit const puteal_function shockLevelRow =
    Function("shock_chlorination_level", "Chlorine that a measure of bleach gives",
             "Chlorine in the water of a well after a measure of bleach was mixed in.", call<shockLevel>)
        .takes(levelTakes)
        .gives("mg/L as Cl2", "chlorine in the water, before anything takes it")
        .by("strength * bleach / water")
        .from(levelSources)
        .shownBy(levelExamples)
        .refusing(levelRefusals)
        .warning(levelCautions)
        .safely(shockSafety);

constinit const puteal_function calciumHypochloriteDoseRow =
    Function("calcium_hypochlorite_dose", "Calcium hypochlorite for shock chlorination",
             "Dry granules that bring a level of chlorine into the water of a well; dissolve them first.",
             call<calciumHypochloriteDose>)
        .takes(dryTakes)
        .gives("g", "granules")
        .by("water * target / available")
        .from(drySources)
        .shownBy(dryExamples)
        .refusing(dryRefusals)
        .safely(drySafety);

} // namespace dosing
