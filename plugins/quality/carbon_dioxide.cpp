/// Free carbon dioxide, the forms of carbonate at a pH, and the parts of an alkalinity. (R5)
#include "carbonate.h"
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

// ---------------------------------------------------------------------------------- free_carbon_dioxide

double freeCarbonDioxide(double alkalinity, double ph, double temperature, int form, Reply &reply)
{
    if (lessThan(8.3, ph)) // above it no free carbon dioxide is left [Standard Methods 4500-CO2, recalled]
        return 0.0;
    if (lessThan(ph, 5))
        reply.caution("acid", "below pH 5 alkalinity is almost gone: the number means little");
    if (form != thermodynamic && lessThan(temperature, coldFrom))
        reply.caution("cold", "the short forms hold at 25 degC: cold water holds about a fifth more, see the "
                              "thermodynamic form");
    return carbonDioxideFactor(temperature, form) * std::pow(10.0, -ph) * alkalinity;
}

constexpr puteal_parameter carbonTakes[] = {
    alkalinityParameter,
    phParameter,
    carbonDioxideTemperature,
    carbonDioxideForm,
};
constexpr const char *carbonSources[] = {"standard_methods", "usgs_methods", "phreeqc_ex3",
                                         "phreeqc_ex16",     "recalled",     nullptr};
constexpr puteal_example carbonExamples[] = {
    example("free_carbon_dioxide(100 mg/L as CaCO3, 6.5)", "63.246 mg/L as CO2", 1e-4, "computed",
            "standard_methods"),
    example("free_carbon_dioxide(40 mg/L as CaCO3, 6)", "80 mg/L as CO2", 1e-9, "computed",
            "standard_methods"),
    // calcite in water under carbon dioxide of 0.01 atm, 25 degC; ions pair and shield each other a tenth
    // away
    example("free_carbon_dioxide(164.69 mg/L as CaCO3, 7.297, 25 degC, \"thermodynamic\")",
            "14.96 mg/L as CO2", 0.12, "published", "phreeqc_ex3"),
    // two acid springs, 4.540e-4 and 3.049e-4 mol/kg
    example("free_carbon_dioxide(16.414 mg/L as CaCO3, 6.2, 25 degC, \"thermodynamic\")", "19.98 mg/L as CO2",
            0.03, "published", "phreeqc_ex16"),
    example("free_carbon_dioxide(44.793 mg/L as CaCO3, 6.8, 25 degC, \"thermodynamic\")", "13.42 mg/L as CO2",
            0.05, "published", "phreeqc_ex16"),
    example("free_carbon_dioxide(16.414 mg/L as CaCO3, 6.2, 25 degC, \"USGS\")", "19.98 mg/L as CO2", 0.02,
            "published", "phreeqc_ex16"),
    example("free_carbon_dioxide(44.793 mg/L as CaCO3, 6.8, 25 degC, \"USGS\")", "13.42 mg/L as CO2", 0.04,
            "published", "phreeqc_ex16"),
    // one mg/L of bicarbonate at pH 6: the printed factor
    example("free_carbon_dioxide(0.820162 mg/L as CaCO3, 6, 25 degC, \"USGS\")", "1.60 mg/L as CO2", 1e-5,
            "published", "usgs_methods"),
    example("free_carbon_dioxide(150 mg/L as CaCO3, 7)", "30 mg/L as CO2", 1e-9, "computed",
            "standard_methods"),
    example("free_carbon_dioxide(100 mg/L as CaCO3, 6.5, 10 degC, \"thermodynamic\")", "80.995 mg/L as CO2",
            1e-4, "computed", "recalled"),
};
constexpr puteal_example carbonRefusals[] = {
    refusal("free_carbon_dioxide(100 mg/L as CaCO3, 65)", "`ph` must be at most 14; it is 65"),
};
constexpr puteal_caution carbonCautions[] = {
    caution("acid", "pH below 5"),
    caution("cold", "a short form below 15 degC"),
};

// ---------------------------------------------------------------------------------------- carbonate_share

constexpr const char *speciesWords[] = {"carbon dioxide", "bicarbonate", "carbonate", nullptr};

double carbonateShare(int species, double ph, double temperature)
{
    const CarbonateConstants k = carbonateConstants(temperature);
    const double parts[] = {std::pow(10.0, k.first - ph), 1.0, std::pow(10.0, ph - k.second)};
    return parts[species] / (parts[0] + parts[1] + parts[2]);
}

constexpr Parameter waterTemperature =
    Parameter("temperature", "degC", "temperature of the water").hard(0, 90).usual(2, 60);
constexpr puteal_parameter shareTakes[] = {
    Parameter("species", "", "which form of dissolved carbonate").oneOf(speciesWords),
    phParameter,
    waterTemperature.otherwise(25, "A"),
};
constexpr const char *shareSources[] = {"plummer_busenberg", "phreeqc_ex3", "phreeqc_ex16", nullptr};
constexpr puteal_example shareExamples[] = {
    // 3.399e-4 and 3.224e-3 of 3.622e-3 mol/kg; the rest is paired with calcium
    example("carbonate_share(\"carbon dioxide\", 7.297)", "0.0938", 0.10, "published", "phreeqc_ex3"),
    example("carbonate_share(\"bicarbonate\", 7.297)", "0.890", 0.02, "published", "phreeqc_ex3"),
    // acid springs: 4.540e-4 and 3.281e-4 of 7.825e-4; 3.049e-4 and 8.907e-4 of 1.199e-3 mol/kg
    example("carbonate_share(\"carbon dioxide\", 6.2)", "0.5802", 0.02, "published", "phreeqc_ex16"),
    example("carbonate_share(\"bicarbonate\", 6.2)", "0.4193", 0.02, "published", "phreeqc_ex16"),
    example("carbonate_share(\"carbon dioxide\", 6.8)", "0.2543", 0.04, "published", "phreeqc_ex16"),
    example("carbonate_share(\"bicarbonate\", 6.8)", "0.7429", 0.02, "published", "phreeqc_ex16"),
    example("carbonate_share(\"carbon dioxide\", 6.351864, 25 degC)", "0.5", 1e-4, "computed",
            "plummer_busenberg"),
    example("carbonate_share(\"carbonate\", 10.328854, 25 degC)", "0.5", 1e-4, "computed",
            "plummer_busenberg"),
};
constexpr puteal_example shareRefusals[] = {
    refusal("carbonate_share(\"bicarbonate\", 15)", "`ph` must be at most 14; it is 15"),
};

// ----------------------------------------------------------------------------------------- alkalinity_part

constexpr const char *partWords[] = {"bicarbonate", "carbonate", "hydroxide", nullptr};
enum Part : int { bicarbonate, carbonate, hydroxide };

double alkalinityPart(int part, double alkalinity, double ph, Reply &reply)
{
    const double high = std::pow(10.0, ph - 10);
    const double hydroxideAlkalinity = 5.0 * high; // Standard Methods 4500-CO2 [recalled]
    if (lessThan(alkalinity, hydroxideAlkalinity))
        return reply.refuse(2, "that pH needs more alkalinity than there is: check both tests");
    if (part == hydroxide)
        return hydroxideAlkalinity;
    const double ratio = 0.94 * high; // Standard Methods 4500-CO2 [recalled]
    const double asBicarbonate = (alkalinity - hydroxideAlkalinity) / (1 + ratio);
    return part == carbonate ? ratio * asBicarbonate : asBicarbonate;
}

constexpr puteal_parameter partTakes[] = {
    Parameter("part", "", "which part of the alkalinity").oneOf(partWords),
    alkalinityParameter,
    phParameter,
};
constexpr const char *partSources[] = {"standard_methods", nullptr};
constexpr puteal_example partExamples[] = {
    example("alkalinity_part(\"bicarbonate\", 200 mg/L as CaCO3, 7.5)", "199.39149 mg/L as CaCO3", 1e-6,
            "computed", "standard_methods"),
    example("alkalinity_part(\"carbonate\", 200 mg/L as CaCO3, 9)", "17.141682 mg/L as CaCO3", 1e-5,
            "computed", "standard_methods"),
    example("alkalinity_part(\"hydroxide\", 200 mg/L as CaCO3, 10)", "5 mg/L as CaCO3", 1e-9, "computed",
            "standard_methods"),
};
constexpr puteal_example partRefusals[] = {
    refusal("alkalinity_part(\"bicarbonate\", 20 mg/L as CaCO3, 11)",
            "that pH needs more alkalinity than there is: check both tests"),
};

} // namespace

constinit const puteal_function freeCarbonDioxideRow =
    Function("free_carbon_dioxide", "Free carbon dioxide", "Free carbon dioxide from alkalinity and pH.",
             call<freeCarbonDioxide>)
        .takes(carbonTakes)
        .gives("mg/L as CO2", "free carbon dioxide")
        .by("short: 2 * alkalinity * 10^(6 - ph); USGS: 1.60 * 1.21927 * alkalinity * 10^(6 - ph); "
            "thermodynamic: alkalinity / 50.043 * 10^(pK1 - ph) * "
            "44.009; 0 above pH 8.3")
        .from(carbonSources)
        .shownBy(carbonExamples)
        .refusing(carbonRefusals)
        .warning(carbonCautions);

constinit const puteal_function carbonateShareRow =
    Function("carbonate_share", "Share of a form of carbonate",
             "Share of the dissolved carbonate that is carbon dioxide, bicarbonate or carbonate at a pH: why "
             "air drives off gas below pH 7 and scale comes above pH 8.",
             call<carbonateShare>)
        .takes(shareTakes)
        .gives("", "share of the dissolved carbonate")
        .by("parts 10^(pK1 - ph) : 1 : 10^(ph - pK2), constants of Plummer and Busenberg; no ion pairs")
        .from(shareSources)
        .shownBy(shareExamples)
        .refusing(shareRefusals);

constinit const puteal_function alkalinityPartRow =
    Function(
        "alkalinity_part", "Part of the alkalinity",
        "Bicarbonate, carbonate or hydroxide in a total alkalinity, from pH. Multiply bicarbonate as CaCO3 "
        "by 1.2193 for mg/L as HCO3: well water is almost all bicarbonate.",
        call<alkalinityPart>)
        .takes(partTakes)
        .gives("mg/L as CaCO3", "that part of the alkalinity")
        .by("hydroxide 5 * 10^(ph - 10); bicarbonate (alkalinity - hydroxide) / (1 + 0.94 * 10^(ph - 10)); "
            "carbonate 0.94 * 10^(ph - 10) * bicarbonate")
        .from(partSources)
        .shownBy(partExamples)
        .refusing(partRefusals);

} // namespace quality
