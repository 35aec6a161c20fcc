/// Oxygen that water takes up, and oxygen that iron, manganese, sulfide and ammonia use. (R1, R2)
#include "oxygen.h"

namespace oxygen
{

using namespace puteal::sdk;

double saturationOf(double temperature, double pressure)
{
    const double kelvin = temperature + kelvinAtZero;
    // mg/L at one atmosphere of moist air [APHA 1985, Benson and Krause]
    const double atOne = std::exp(-139.34411 + 1.575701e5 / kelvin - 6.642308e7 / std::pow(kelvin, 2) +
                                  1.243800e10 / std::pow(kelvin, 3) - 8.621949e11 / std::pow(kelvin, 4));
    const double atmospheres = pressure / psiPerAtmosphere, vapor = vaporPressure(kelvin);
    const double theta =
        0.000975 - 1.426e-5 * temperature + 6.436e-8 * temperature * temperature; // [APHA pressure form]
    return atOne * atmospheres * (1.0 - vapor / atmospheres) * (1.0 - theta * atmospheres) /
           ((1.0 - vapor) * (1.0 - theta));
}

namespace
{

double oxygenSaturation(double temperature, double pressure, Reply &reply)
{
    if (lessThan(6, pressure / psiPerAtmosphere))
        reply.caution("high_pressure", "the pressure form is made for pressures to 6 atm");
    return saturationOf(temperature, pressure);
}

// Mass of oxygen a mass, by the electrons each gives up; O2 takes 4 [half reactions; IUPAC 2021].
constexpr double perElectron = molarMass("O2") / 4.0;
constexpr double ironElectrons = 1, manganeseElectrons = 2, sulfurElectrons = 2,
                 sulfateElectrons = 8; // half reactions
constexpr double ammoniaElectrons = 8; // NH4+ to nitrate [half reaction]

double oxygenBudget(double iron, double manganese, double sulfide, double ammonia, int end, double share,
                    Reply &reply)
{
    if (end == usualEnd && lessThan(0, sulfide))
        reply.caution("assumed_end",
                      "a usual allowance for sulfide is known for chlorine only; here `share_to_sulfate` is "
                      "assumed: show the least (to sulfur) and the most (to sulfate) beside it");
    if (lessThan(0, ammonia))
        reply.caution("nitrite",
                      "ammonia that turns only half way leaves nitrite: test it after an aerated filter");
    const double n = end == toSulfur    ? sulfurElectrons
                     : end == toSulfate ? sulfateElectrons
                                        : sulfideElectronsOf(share);
    return perElectron *
           (ironElectrons * iron / molarMass("Fe") + manganeseElectrons * manganese / molarMass("Mn") +
            n * sulfide / molarMass("H2S") + ammoniaElectrons * ammonia / molarMass("N"));
}

constexpr puteal_parameter saturationTakes[] = {
    Parameter("temperature", "degC", "temperature of the water").hard(0, 40).usual(2, 30),
    Parameter("pressure", "psi_abs", "absolute pressure of the air over the water")
        .hard(3, 150)
        .usual(10, 90)
        .otherwise(seaLevelAir, "S"),
};
constexpr const char *saturationSources[] = {"apha1985", "en25814", "colorimeter", "oxygen_code", nullptr};
constexpr puteal_example saturationExamples[] = {
    example("oxygen_saturation(0 degC)", "14.6 mg/L as O2", 5e-3, "published", "en25814"),
    example("oxygen_saturation(5 degC)", "12.8 mg/L as O2", 5e-3, "published", "en25814"),
    example("oxygen_saturation(15 degC)", "10.1 mg/L as O2", 5e-3, "published", "en25814"),
    // 700 mm of mercury
    example("oxygen_saturation(10 degC, 13.5357 psi_abs)", "10.4 mg/L as O2", 5e-3, "published",
            "colorimeter"),
    // 650 mm of mercury, an older table
    example("oxygen_saturation(20 degC, 12.5690 psi_abs)", "7.8 mg/L as O2", 8e-3, "published",
            "colorimeter"),
    example("oxygen_saturation(15 degC)", "10.2 mg/L as O2", 0.013, "published", "colorimeter"),
    example("oxygen_saturation(20 degC)", "9.2 mg/L as O2", 0.013, "published", "colorimeter"),
    example("oxygen_saturation(10 degC)", "11.3 mg/L as O2", 5e-3, "published", "en25814"),
    example("oxygen_saturation(20 degC)", "9.09 mg/L as O2", 5e-4, "published", "en25814"),
    example("oxygen_saturation(25 degC)", "8.26 mg/L as O2", 1e-3, "published", "en25814"),
    example("oxygen_saturation(10 degC, 54.7 psi_abs)", "42.295 mg/L as O2", 2e-4, "computed", "oxygen_code"),
    // 2 atm, and 0.8 atm at a height
    example("oxygen_saturation(20 degC, 29.3919 psi_abs)", "18.3864 mg/L as O2", 1e-5, "computed",
            "oxygen_code"),
    example("oxygen_saturation(10 degC, 11.75676 psi_abs)", "9.0042 mg/L as O2", 1e-5, "computed",
            "oxygen_code"),
};
constexpr puteal_example saturationRefusals[] = {
    refusal("oxygen_saturation(50 degC)", "`temperature` must be at most 40 degC; it is 50 degC"),
};
constexpr puteal_caution saturationCautions[] = {caution("high_pressure", "more than 6 atm")};

constexpr puteal_parameter budgetTakes[] = {
    Parameter("iron", "mg/L as Fe", "dissolved iron").hard(0, 1000).usual(0, 30),
    Parameter("manganese", "mg/L as Mn", "dissolved manganese; it stays below pH 8").hard(0, 100).usual(0, 5),
    Parameter("sulfide", "mg/L as H2S", "hydrogen sulfide, tested at the site").hard(0, 100).usual(0, 10),
    Parameter("ammonia", "mg/L as N", "ammonia as nitrogen").hard(0, 100).usual(0, 5).otherwise(0, "A"),
    Parameter("sulfide_end", "", "how far sulfide is taken").oneOf(sulfideEndWords).otherwise(toSulfur, "A"),
    Parameter("share_to_sulfate", "",
              "share of the sulfide that ends as sulfate, for \"share to sulfate\" and \"usual\"")
        .hard(0, 1)
        .otherwise(usualShareToSulfate, "A"),
};
constexpr const char *budgetSources[] = {"iupac2021", "wtp_design", "practice", nullptr};
constexpr puteal_example budgetExamples[] = {
    example("oxygen_budget(1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)", "0.14 mg/L as O2", 0.03, "published",
            "wtp_design"),
    example("oxygen_budget(0 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S, 1 mg/L as N)", "4.57 mg/L as O2", 1e-3,
            "computed", "iupac2021"),
    example("oxygen_budget(2.4 mg/L as Fe, 0.12 mg/L as Mn, 0 mg/L as H2S)", "0.37873 mg/L as O2", 1e-4,
            "computed", "iupac2021"),
    example("oxygen_budget(0.8 mg/L as Fe, 0.08 mg/L as Mn, 2.5 mg/L as H2S)", "1.31167 mg/L as O2", 1e-5,
            "computed", "iupac2021"),
    example("oxygen_budget(0.8 mg/L as Fe, 0.08 mg/L as Mn, 2.5 mg/L as H2S, 0 mg/L as N, \"to sulfate\")",
            "4.83299 mg/L as O2", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example budgetRefusals[] = {
    refusal("oxygen_budget(-1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "`iron` must be at least 0 mg/L as Fe; it is -1 mg/L as Fe"),
};
constexpr puteal_caution budgetCautions[] = {
    caution("nitrite", "ammonia above 0"),
    caution("assumed_end", "sulfide above 0 and the usual end"),
};

} // namespace

constinit const puteal_function oxygenSaturationRow =
    Function("oxygen_saturation", "Oxygen saturation", "Oxygen in water in balance with moist air.",
             call<oxygenSaturation>)
        .takes(saturationTakes)
        .gives("mg/L as O2", "oxygen at saturation")
        .by("exp(-139.34411 + 157570.1/T - 6.642308e7/T^2 + 1.2438e10/T^3 - 8.621949e11/T^4) * P (1 - Pw/P) "
            "(1 - theta P) "
            "/ ((1 - Pw) (1 - theta)), T in K, P in atm")
        .from(saturationSources)
        .shownBy(saturationExamples)
        .refusing(saturationRefusals)
        .warning(saturationCautions);

constinit const puteal_function oxygenBudgetRow =
    Function("oxygen_budget", "Oxygen budget",
             "Oxygen that oxidation uses by chemistry alone. Design for two to four times as much, with 1 to "
             "2 mg/L left.",
             call<oxygenBudget>)
        .takes(budgetTakes)
        .gives("mg/L as O2", "oxygen used up")
        .by("0.143245 * iron + 0.291219 * manganese + n * 0.234755 * sulfide + 4.5689 * ammonia; n = 2 to "
            "sulfur, 8 to sulfate, 2 + 6 * share_to_sulfate otherwise")
        .from(budgetSources)
        .shownBy(budgetExamples)
        .refusing(budgetRefusals)
        .warning(budgetCautions)
        .safely(aerationSafety);

} // namespace oxygen
