/// Solutions made from a stock or from a powder, and a dose by a fixed-ratio injector. (R1, R2)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double dilutedVolume(double stock, double stockStrength, double stockDensity, double strength, double density,
                     Reply &reply)
{
    if (!atMost(strength, stockStrength))
        return reply.refuse(
            4, "the stock is weaker than the solution wanted: a stronger stock or a weaker solution");
    return stock * stockDensity * stockStrength / strength / density; // the chemical's mass stays
}

double dilutionWater(double stock, double stockStrength, double stockDensity, double strength, Reply &reply)
{
    if (!atMost(strength, stockStrength))
        return reply.refuse(
            4, "the stock is weaker than the solution wanted: a stronger stock or a weaker solution");
    constexpr double roomTemperature = 20; // degC
    return stock * stockDensity * (stockStrength / strength - 1.0) / water::density(roomTemperature);
}

double mixedStrength(double stock, double stockStrength, double added)
{
    return stock * stockStrength / (stock + added);
}

double injectorDose(double strength, double ratio)
{
    return strength / ratio;
}

constexpr const char *powderWords[] = {"potassium permanganate", "soda ash", nullptr};
constexpr const char *powderSubstances[] = {"KMnO4", "Na2CO3", nullptr};
// What a solution holds: permanganate 64 g/L at 20 degC [recalled; a guidance manual prints 6.4 g for 100 mL
// with a slip in the unit], soda ash a pound to the gallon [common practice, no source].
constexpr double mostPermanganate = 64.0,                          // g/L [recalled]
    mostSodaAsh = measure::gramPerPound / measure::literPerGallon; // g/L [common practice]

double solutionStrength(int powder, double mass, double volume, Reply &reply)
{
    const double gramPerLiter = mass / (volume * measure::literPerGallon);
    if (lessThan(powder == 0 ? mostPermanganate : mostSodaAsh, gramPerLiter))
        reply.caution("undissolved",
                      powder == 0
                          ? "more than the 64 g/L that dissolve at 20 degC, less in the cold: more water"
                          : "more than a pound to the gallon does not stay dissolved: more water");
    return 1000.0 * gramPerLiter;
}

constexpr Parameter stockParameter =
    Parameter("stock", "gal", "stock to be diluted").hard(0, 10000).usual(0.1, 60);
constexpr Parameter stockStrengthParameter =
    Parameter("stock_strength", "", "percent by weight of the stock, as 35 %")
        .hard(0.0001, 0.7)
        .usual(0.01, 0.5);
constexpr Parameter stockDensityParameter =
    Parameter("stock_density", "g/L", "density of the stock; peroxide of 35 % 1131 g/L")
        .hard(900, 1500)
        .usual(1000, 1250);
constexpr Parameter strengthParameter =
    Parameter("strength", "", "percent by weight of the solution wanted, as 7 %")
        .hard(0.0001, 0.7)
        .usual(0.001, 0.1);
constexpr puteal_parameter volumeTakes[] = {
    stockParameter,
    stockStrengthParameter,
    stockDensityParameter,
    strengthParameter,
    Parameter("density", "g/L", "density of the solution; peroxide of 7 % 1024 g/L")
        .hard(900, 1500)
        .usual(995, 1100),
};
constexpr const char *massSources[] = {"geometry", "recalled", nullptr};
constexpr puteal_example volumeExamples[] = {
    example("diluted_volume(1 gal, 35 %, 1131.2 g/L, 7 %, 1024 g/L)", "5.52 gal", 1e-3, "computed",
            "recalled"),
    example("diluted_volume(1 gal, 7 %, 1024 g/L, 7 %, 1024 g/L)", "1 gal", 1e-9, "computed", "geometry"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("diluted_volume(1 gal, 7 %, 1024 g/L, 35 %, 1131.2 g/L)",
            "the stock is weaker than the solution wanted: a stronger stock or a weaker solution"),
};

constexpr puteal_parameter waterTakes[] = {stockParameter, stockStrengthParameter, stockDensityParameter,
                                           strengthParameter};
constexpr puteal_example waterExamples[] = {
    example("dilution_water(1 gal, 35 %, 1131.2 g/L, 7 %)", "4.53 gal", 2e-3, "computed", "recalled"),
    example("dilution_water(1 gal, 12 %, 1170 g/L, 12 %)", "0 gal", 1e-9, "computed", "geometry"),
};
constexpr puteal_example waterRefusals[] = {
    refusal("dilution_water(1 gal, 7 %, 1024 g/L, 35 %)",
            "the stock is weaker than the solution wanted: a stronger stock or a weaker solution"),
};

constexpr puteal_parameter mixedTakes[] = {
    Parameter("stock", "gal", "stock poured in").hard(0.0001, 10000).usual(0.05, 60),
    Parameter("stock_strength", "'u", "strength of the stock").hard(0, HUGE_VAL),
    Parameter("added", "gal", "water it is stirred into").hard(0, 10000).usual(0, 60),
};
constexpr const char *mixedSources[] = {"geometry", "practice", nullptr};
constexpr puteal_example mixedExamples[] = {
    example("mixed_strength(7 cup, 52500 mg/L as Cl2, 10 gal)", "2200.6 mg/L as Cl2", 1e-5, "computed",
            "geometry"),
    example("mixed_strength(1.5 gal, 52500 mg/L as Cl2, 13.5 gal)", "5250 mg/L as Cl2", 1e-9, "computed",
            "geometry"),
};
constexpr puteal_example mixedRefusals[] = {
    refusal("mixed_strength(0 gal, 52500 mg/L as Cl2, 10 gal)",
            "`stock` must be at least 0.0001 gal; it is 0 gal"),
};

constexpr puteal_parameter injectorTakes[] = {
    Parameter("strength", "'u", "strength of the solution").hard(0, HUGE_VAL),
    Parameter("ratio", "", "parts of water for one part of solution, as 150").hard(10, 5000).usual(100, 1000),
};
constexpr const char *injectorSources[] = {"practice", "geometry", nullptr};
constexpr puteal_example injectorExamples[] = {
    example("injector_dose(mixed_strength(7 cup, 52500 mg/L as Cl2, 10 gal), 150)", "14.7 mg/L as Cl2", 5e-3,
            "common practice", "practice"),
    example("injector_dose(mixed_strength(6 cup, 52500 mg/L as Cl2, 10 gal), 250)", "7.6 mg/L as Cl2", 5e-3,
            "common practice", "practice"),
    example("injector_dose(mixed_strength(4 cup, 52500 mg/L as Cl2, 10 gal), 500)", "2.56 mg/L as Cl2", 2e-3,
            "computed", "geometry"),
    example("injector_dose(52500 mg/L as Cl2, 500)", "105 mg/L as Cl2", 1e-9, "computed", "geometry"),
};
constexpr puteal_example injectorRefusals[] = {
    refusal("injector_dose(52500 mg/L as Cl2, 1)", "`ratio` must be at least 10; it is 1"),
};

constexpr puteal_parameter solutionTakes[] = {
    Parameter("powder", "", "what is dissolved").oneOf(powderWords, powderSubstances),
    Parameter("mass", "g", "mass of the powder").hard(0, 1e6).usual(10, 10000),
    Parameter("volume", "gal", "solution in the tank").hard(0.01, 10000).usual(1, 60),
};
constexpr const char *solutionSources[] = {"geometry", "epa815014", "practice", "recalled", nullptr};
constexpr puteal_example solutionExamples[] = {
    example("solution_strength(\"potassium permanganate\", 1 oz, 1 gal)", "7489 mg/L as KMnO4", 1e-4,
            "computed", "geometry"),
    example("solution_strength(\"soda ash\", 5 lb, 10 gal)", "59913 mg/L as Na2CO3", 1e-4, "computed",
            "geometry"),
};
constexpr puteal_example solutionRefusals[] = {
    refusal("solution_strength(\"soda ash\", 5 lb, 0 gal)",
            "`volume` must be at least 0.01 gal; it is 0 gal"),
};
constexpr puteal_caution solutionCautions[] = {caution("undissolved", "more than dissolves")};

} // namespace

constinit const puteal_function dilutedVolumeRow =
    Function("diluted_volume", "Solution from a stock, by mass",
             "Solution that a stock makes when its percent is by weight. Peroxide of 35 % makes more than "
             "five times its "
             "volume at 7 %.",
             call<dilutedVolume>)
        .takes(volumeTakes)
        .gives("gal", "solution")
        .by("stock * stock_density * stock_strength / (strength * density)")
        .from(massSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals)
        .safely(peroxideSafety);

constinit const puteal_function dilutionWaterRow =
    Function("dilution_water", "Water to dilute a stock, by mass",
             "Water that brings a stock down to a percent by weight. Pour the stock into the water; soft or "
             "filtered "
             "water, since hardness and iron spoil the solution.",
             call<dilutionWater>)
        .takes(waterTakes)
        .gives("gal", "water at 20 degC")
        .by("stock * stock_density * (stock_strength / strength - 1) / density of water at 20 degC")
        .from(massSources)
        .shownBy(waterExamples)
        .refusing(waterRefusals)
        .safely(peroxideSafety);

constinit const puteal_function mixedStrengthRow =
    Function("mixed_strength", "Strength of a mixture",
             "Strength of a stock after it was stirred into water.", call<mixedStrength>)
        .takes(mixedTakes)
        .gives("'u", "strength of the mixture")
        .by("stock * stock_strength / (stock + added)")
        .from(mixedSources)
        .shownBy(mixedExamples)
        .refusing(mixedRefusals)
        .safely(feederSafety);

constinit const puteal_function injectorDoseRow =
    Function("injector_dose", "Dose of a fixed-ratio injector",
             "What the water gets from an injector that takes one part of solution to so many of water. It "
             "follows the "
             "flow by itself.",
             call<injectorDose>)
        .takes(injectorTakes)
        .gives("'u", "dose")
        .by("strength / ratio")
        .from(injectorSources)
        .shownBy(injectorExamples)
        .refusing(injectorRefusals)
        .safely(feederSafety);

constinit const puteal_function solutionStrengthRow =
    Function("solution_strength", "Strength of a solution from a powder",
             "Strength of a solution made of a powder, and a word when more is put in than dissolves. "
             "Permanganate and "
             "soda ash never share a tank.",
             call<solutionStrength>)
        .takes(solutionTakes)
        .gives("mg/L as 'powder", "powder in a liter of solution")
        .by("mass / volume")
        .from(solutionSources)
        .shownBy(solutionExamples)
        .refusing(solutionRefusals)
        .warning(solutionCautions)
        .safely(
            "Permanganate is a strong oxidizer and stains: goggles and gloves, away from acids, peroxide, "
            "glycol and anything that burns. Soda ash dust burns the eyes. Never bring two chemicals "
            "together; keep both from children and follow the label and the local code.");

} // namespace dosing
