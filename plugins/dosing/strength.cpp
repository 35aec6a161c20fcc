/// How strong a solution is, what is left of an aged one, and how it is made from a stronger one. (R1, R2)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

constexpr const char *kindWords[] = {"trade percent", "weight percent as NaOCl", "weight percent as Cl2",
                                     nullptr};
enum Kind : int { tradePercent, weightAsHypochlorite, weightAsChlorine };
constexpr double mgPerLiterOfWater = 1e6; // mg in a kilogram, liter at specific gravity 1

double hypochloriteStrength(double strength, int kind, double specificGravity)
{
    if (kind == tradePercent) // grams of available chlorine in 100 mL
        return strength * mgPerLiterOfWater;
    const double asChlorine =
        kind == weightAsHypochlorite ? molarMass("Cl2") / molarMass("NaOCl") : 1.0; // [IUPAC 2021]
    return strength * asChlorine * specificGravity * mgPerLiterOfWater;
}

double peroxideStrength(double strength, double density, Reply &reply)
{
    constexpr double mgPerGram = 1000.0;
    // Steps of the trade: goggles from 3 %, strong caution from 7 %, transport rules from 8 % [common
    // practice]; an oxidizer of class 5.1 above 20 % [Science ASSIST 2019].
    if (lessThan(0.2, strength))
        reply.caution("oxidizer",
                      "peroxide above 20 % is an oxidizer of class 5.1 and corrosive: keep metals, "
                      "dirt and anything that burns away from it");
    if (atMost(0.08, strength))
        reply.caution("transport", "peroxide of 8 % and more falls under transport rules, and burns at once");
    else if (atMost(0.07, strength))
        reply.caution("burns", "peroxide of 7 % burns skin and eyes: goggles, gloves, water at hand");
    return strength * density * mgPerGram;
}

double bleachResidual(double start, double rate, double time, Reply &reply)
{
    const double left = 1.0 / (1.0 / start + rate * time);
    if (lessThan(left, 0.8 * start)) // refresh when a fifth is gone [common practice, no source]
        reply.caution("aged",
                      "a fifth and more of the strength is gone: mix fresh, or set the feeder higher");
    return left;
}

double stockVolume(double tank, double strength, const Argument &stockStrength, Reply &reply)
{
    if (!atMost(strength, stockStrength.number()))
        return reply.refuse(
            2, "the stock is weaker than the solution wanted: a stronger stock or a weaker solution");
    if (stockStrength.shown().ends_with('%')) // 35 % peroxide by weight gives 5.52 volumes of 7 %, not 5
        reply.caution("by_volume", "percents count by volume here: for a percent by weight use "
                                   "diluted_volume, which knows the densities");
    const double stock = tank * strength / stockStrength.number();
    reply.reason(figures(stock) + " gal of stock, " + figures(tank - stock) +
                 " gal of soft or filtered water");
    return stock;
}

constexpr puteal_parameter hypochloriteTakes[] = {
    Parameter("strength", "", "percent on the label, as 12.5 %").hard(0.0001, 0.25).usual(0.03, 0.16),
    Parameter("kind", "", "what the label means by it; trade percent is grams of chlorine in 100 mL")
        .oneOf(kindWords),
    Parameter("specific_gravity", "",
              "for the two weight percents: 1.07 at 5.25 % as NaOCl, 1.08 at 6, 1.11 at 8.25, 1.14 at 10, "
              "1.19 at 12.5")
        .hard(1, 1.5)
        .usual(1.05, 1.2)
        .otherwise(1.1, "R"),
};
constexpr const char *hypochloriteSources[] = {"iupac2021", "chlorination_handbook", "recalled", nullptr};
constexpr puteal_example hypochloriteExamples[] = {
    example("hypochlorite_strength(6 %, \"weight percent as NaOCl\", 1.08)", "61700 mg/L as Cl2", 2e-3,
            "published", "chlorination_handbook"),
    example("hypochlorite_strength(12.5 %, \"trade percent\")", "125000 mg/L as Cl2", 1e-9, "published",
            "chlorination_handbook"),
    example("hypochlorite_strength(10.8 %, \"weight percent as Cl2\", 1.16)", "125000 mg/L as Cl2", 3e-3,
            "published", "chlorination_handbook"),
    example("hypochlorite_strength(8.25 %, \"weight percent as NaOCl\", 1.11) / "
            "hypochlorite_strength(7.86 %, \"weight percent as Cl2\", 1.11)",
            "1", 1e-3, "published", "chlorination_handbook"),
    example("hypochlorite_strength(8.25 %, \"weight percent as NaOCl\", 1.11)", "87222 mg/L as Cl2", 1e-4,
            "computed", "iupac2021"),
    example("hypochlorite_strength(5.25 %, \"weight percent as NaOCl\", 1.07)", "53504 mg/L as Cl2", 1e-4,
            "computed", "iupac2021"),
    example("hypochlorite_strength(10 %, \"weight percent as NaOCl\", 1.14)", "108580 mg/L as Cl2", 1e-4,
            "computed", "iupac2021"),
    example("hypochlorite_strength(12.5 %, \"weight percent as NaOCl\", 1.19)", "141700 mg/L as Cl2", 5e-4,
            "computed", "iupac2021"),
};
constexpr puteal_example hypochloriteRefusals[] = {
    refusal("hypochlorite_strength(12.5, \"trade percent\")",
            "`strength` must be at most 0.25; it is 12.5: for 12.5 percent write 12.5 %"),
};

constexpr puteal_parameter peroxideTakes[] = {
    Parameter("strength", "", "percent by weight on the label, as 7 %").hard(0.0001, 0.7).usual(0.01, 0.35),
    Parameter("density", "g/L", "density of the solution: 1010 g/L at 3 %, 1024 at 7 %, 1131 at 35 %")
        .hard(900, 1500)
        .usual(1000, 1140),
};
constexpr const char *peroxideSources[] = {"peroxide_storage", "recalled", "geometry", nullptr};
constexpr puteal_example peroxideExamples[] = {
    example("peroxide_strength(7 %, 1024 g/L)", "71680 mg/L as H2O2", 1e-9, "computed", "recalled"),
    example("peroxide_strength(3 %, 1009.5 g/L)", "30285 mg/L as H2O2", 1e-9, "computed", "recalled"),
    example("peroxide_strength(35 %, 1131.2 g/L)", "395920 mg/L as H2O2", 1e-9, "computed", "recalled"),
};
constexpr puteal_example peroxideRefusals[] = {
    refusal("peroxide_strength(7, 1024 g/L)",
            "`strength` must be at most 0.7; it is 7: for 7 percent write 7 %"),
};
constexpr puteal_caution peroxideCautions[] = {
    caution("burns", "7 % and more"),
    caution("transport", "8 % and more"),
    caution("oxidizer", "more than 20 %"),
};

constexpr puteal_parameter residualTakes[] = {
    Parameter("start", "", "strength when fresh, as 12.5 %").hard(0.0001, 0.25).usual(0.03, 0.16),
    Parameter("rate", "1/day",
              "second-order loss, a day and a unit of strength; rises two to four times for 10 degC")
        .hard(0, 100)
        .usual(0.005, 0.5),
    Parameter("time", "day", "age of the solution").hard(0, 3650).usual(0, 120),
};
constexpr const char *residualSources[] = {"bleach_storage", "geometry", nullptr};
constexpr puteal_example residualExamples[] = {
    example("bleach_strength_left(12.5 %, 0.06666667 1/day, 30 day)", "10 %", 1e-6, "computed",
            "bleach_storage"),
    example("bleach_strength_left(12.5 %, 0.06666667 1/day, 90 day)", "7.142857 %", 1e-6, "computed",
            "bleach_storage"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("bleach_strength_left(0, 0.0667 1/day, 30 day)", "`start` must be at least 0.0001; it is 0"),
};
constexpr puteal_caution residualCautions[] = {caution("aged", "less than 80 % of the strength is left")};

constexpr puteal_parameter stockTakes[] = {
    Parameter("tank", "gal", "solution to be made").hard(0, 10000).usual(5, 60),
    Parameter("strength", "'u", "strength of the solution").hard(0, HUGE_VAL),
    Parameter("stock_strength", "'u",
              "strength of the stock; mg/L, or percents by volume as trade percent is")
        .hard(1e-9, HUGE_VAL),
};
constexpr const char *stockSources[] = {"geometry", "practice", nullptr};
constexpr puteal_example stockExamples[] = {
    example("stock_volume(15 gal, 5250 mg/L as Cl2, 52500 mg/L as Cl2)", "1.5 gal", 1e-9, "computed",
            "geometry"),
    example("stock_volume(15 gal, 5000 mg/L as Cl2, 82500 mg/L as Cl2)", "0.90909 gal", 1e-4, "computed",
            "geometry"),
    example("stock_volume(15 gal, 1 %, 12 %)", "1.25 gal", 1e-9, "computed", "geometry"),
};
constexpr puteal_caution stockCautions[] = {caution("by_volume", "strengths in percent")};
constexpr puteal_example stockRefusals[] = {
    refusal("stock_volume(15 gal, 52500 mg/L as Cl2, 5250 mg/L as Cl2)",
            "the stock is weaker than the solution wanted: a stronger stock or a weaker solution"),
};

} // namespace

constinit const puteal_function hypochloriteStrengthRow =
    Function("hypochlorite_strength", "Strength of bleach",
             "Available chlorine of a bleach from its label. The three kinds of percent differ by a tenth "
             "and more.",
             call<hypochloriteStrength>)
        .takes(hypochloriteTakes)
        .gives("mg/L as Cl2", "available chlorine")
        .by("trade percent: 10,000 mg/L a percent; as Cl2: * specific_gravity; as NaOCl: * specific_gravity "
            "* 70.9 / 74.439")
        .from(hypochloriteSources)
        .shownBy(hypochloriteExamples)
        .refusing(hypochloriteRefusals)
        .safely(bleachSafety);

constinit const puteal_function peroxideStrengthRow =
    Function("peroxide_strength", "Strength of peroxide",
             "Peroxide in a liter of solution. Percent is by weight, so a strong solution holds more than "
             "its percent.",
             call<peroxideStrength>)
        .takes(peroxideTakes)
        .gives("mg/L as H2O2", "peroxide")
        .by("strength * density")
        .from(peroxideSources)
        .shownBy(peroxideExamples)
        .refusing(peroxideRefusals)
        .warning(peroxideCautions)
        .safely(peroxideSafety);

constinit const puteal_function bleachResidualRow =
    Function("bleach_strength_left", "Strength left in aged bleach",
             "Strength of a bleach after it stood. Strong bleach loses its strength faster than weak.",
             call<bleachResidual>)
        .takes(residualTakes)
        .gives("", "strength left")
        .by("1 / (1 / start + rate * time)")
        .from(residualSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals)
        .warning(residualCautions)
        .safely(bleachSafety);

constinit const puteal_function stockVolumeRow =
    Function("stock_volume", "Stock for a tank of solution",
             "Stock to fill up with water to a tank of solution.", call<stockVolume>)
        .takes(stockTakes)
        .gives("gal", "stock, with the water beside it as its reason")
        .by("tank * strength / stock_strength")
        .from(stockSources)
        .shownBy(stockExamples)
        .refusing(stockRefusals)
        .warning(stockCautions)
        .safely(feederSafety);

} // namespace dosing
