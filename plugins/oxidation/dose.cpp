/// From a demand to a dose: ammonia, organic matter, a margin, a residual; ozone to make. (R4)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

// 2 NH3 + 3 Cl2 = N2 + 6 HCl: chlorine to breakpoint, 7.593 mg a mg of nitrogen [IUPAC 2021]
constexpr double breakpointRatio = 3.0 * molarMass("Cl2") / (2.0 * molarMass("N"));

double ammoniaChlorineDemand(double ammonia, double ratio)
{
    return ammonia * ratio;
}

double organicChlorineDemand(double carbon, double ratio, Reply &reply)
{
    if (lessThan(2, carbon)) // [common practice, no source]
        reply.caution(
            "byproducts",
            "more than 2 mg/L of organic carbon: chlorine makes trihalomethanes of it, test for them");
    return carbon * ratio;
}

double oxidantDose(int oxidant, double demand, double multiplier, double residual, double ammonia,
                   double organic, Reply &reply)
{
    if (!isChlorine(oxidant) && lessThan(0, ammonia))
        return reply.refuse(5, "only chlorine is used up by ammonia: give 0 for another oxidant");
    if (lessThan(3, multiplier))
        reply.caution("generous",
                      "more than three times the demand: find out what takes it, a jar test tells");
    return multiplier * (demand + ammonia + organic) + residual;
}

double ozoneOutput(double flow, double demand, double transfer, Reply &reply)
{
    constexpr double minutePerHour = 60.0, mgPerGram = 1000.0;
    const double grams = flow * measure::literPerGallon * minutePerHour * demand / mgPerGram / transfer;
    if (lessThan(2.0, grams)) // household generators give 0.5 to 2 g/h [recalled, not confirmed]
        reply.caution("beyond_household", "household ozone generators are remembered to give 0.5 to 2 g/hr");
    return grams;
}

constexpr puteal_parameter ammoniaTakes[] = {
    Parameter("ammonia", "mg/L as N", "ammonia of the raw water, as nitrogen").hard(0, 100).usual(0, 5),
    Parameter("ratio", "mg{Cl2}/mg{N}", "chlorine for each mg of ammonia nitrogen; 10 to 15 in practice")
        .hard(1, 30)
        .usual(7, 15)
        .otherwise(breakpointRatio, "W"),
};
constexpr const char *ammoniaSources[] = {"iupac2021", "rules_of_thumb", nullptr};
constexpr puteal_example ammoniaExamples[] = {
    example("ammonia_chlorine_demand(1 mg/L as N)", "7.6 mg/L as Cl2", 0.002, "published", "rules_of_thumb"),
    example("ammonia_chlorine_demand(0.5 mg/L as N)", "3.79629 mg/L as Cl2", 1e-4, "computed", "iupac2021"),
    example("ammonia_chlorine_demand(0.5 mg/L as N, 10 mg{Cl2}/mg{N})", "5 mg/L as Cl2", 1e-9, "computed",
            "rules_of_thumb"),
};
constexpr puteal_example ammoniaRefusals[] = {
    refusal("ammonia_chlorine_demand(-1 mg/L as N)",
            "`ammonia` must be at least 0 mg/L as N; it is -1 mg/L as N"),
};

constexpr puteal_parameter organicTakes[] = {
    Parameter("organic_carbon", "mg/L as C", "total organic carbon of the raw water")
        .hard(0, 100)
        .usual(0, 10),
    Parameter(
        "ratio", "mg{Cl2}/mg{C}",
        "chlorine for each mg of organic carbon; 0.5 to 2, and a chlorine demand test of 20 to 30 minutes is "
        "better")
        .hard(0, 20)
        .usual(0.5, 2)
        .otherwise(1, "T"),
};
constexpr const char *organicSources[] = {"practice", nullptr};
constexpr puteal_example organicExamples[] = {
    example("organic_chlorine_demand(1.5 mg/L as C)", "1.5 mg/L as Cl2", 1e-9, "common practice", "practice"),
    example("organic_chlorine_demand(3 mg/L as C, 2 mg{Cl2}/mg{C})", "6 mg/L as Cl2", 1e-9, "common practice",
            "practice"),
};
constexpr puteal_example organicRefusals[] = {
    refusal("organic_chlorine_demand(-1 mg/L as C)",
            "`organic_carbon` must be at least 0 mg/L as C; it is -1 mg/L as C"),
};
constexpr puteal_caution organicCautions[] = {caution("byproducts", "more than 2 mg/L of organic carbon")};

constexpr Parameter part(const char *name, const char *meaning)
{
    return Parameter(name, "mg/L as 'oxidant", meaning).hard(0, 1000).usual(0, 60);
}
constexpr puteal_parameter doseTakes[] = {
    Parameter("oxidant", "", "what is fed").oneOf(oxidantWords, oxidantSubstances),
    part("demand",
         "what iron, manganese and sulfide take, see oxidant_demand; take sulfide to sulfur there, since the "
         "usual allowance holds a margin already"),
    Parameter(
        "multiplier", "",
        "margin over the demand; trade texts feed 1 mg chlorine a mg iron, 2 manganese, 3 sulfide, which is "
        "1.4 to 1.6 times")
        .hard(1, 20)
        .otherwise(1.5, "T"),
    part("residual", "what is to be left at the end of the contact").otherwise(0, "A"),
    part("ammonia_demand", "what ammonia takes of chlorine, see ammonia_chlorine_demand").otherwise(0, "A"),
    part("organic_demand",
         "what organic matter and nitrite take, see organic_chlorine_demand and nitrite_chlorine_demand")
        .otherwise(0, "A"),
};
constexpr const char *doseSources[] = {"practice", "operator_training", "opflow", nullptr};
constexpr puteal_example doseExamples[] = {
    example("oxidant_dose(\"chlorine\", 5.7 mg/L as Cl2, 1, 1.5 mg/L as Cl2)", "7.2 mg/L as Cl2", 1e-9,
            "published", "operator_training"),
    example("oxidant_dose(\"chlorine\", 3.7 mg/L as Cl2, 1, 0.3 mg/L as Cl2)", "4.0 mg/L as Cl2", 1e-9,
            "published", "operator_training"),
    // sulfide to sulfur with the margin comes to the trade's usual 3 mg a mg
    example(
        "oxidant_dose(\"chlorine\", oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, "
        "\"to sulfur\"))",
        "3 mg/L as Cl2", 0.05, "common practice", "practice"),
    example("oxidant_dose(\"chlorine\", 1.67837 mg/L as Cl2, 1.5, 1 mg/L as Cl2)", "3.51755 mg/L as Cl2",
            1e-5, "computed", "iupac2021"),
    example("oxidant_dose(\"chlorine\", 4.45403 mg/L as Cl2, 1.5, 1 mg/L as Cl2)", "7.68104 mg/L as Cl2",
            1e-5, "computed", "iupac2021"),
};
constexpr puteal_example doseRefusals[] = {
    refusal("oxidant_dose(\"chlorine\", 2 mg/L as Cl2, 0.8)", "`multiplier` must be at least 1; it is 0.8"),
    refusal("oxidant_dose(\"ozone\", 2 mg/L as O3, 1.5, 0 mg/L as O3, 1 mg/L as O3)",
            "only chlorine is used up by ammonia: give 0 for another oxidant"),
};
constexpr puteal_caution doseCautions[] = {caution("generous", "a multiplier above 3")};

constexpr puteal_parameter ozoneTakes[] = {
    Parameter("flow", "gpm", "flow while water runs").hard(0, 1000).usual(1, 30),
    Parameter("demand", "mg/L as O3", "ozone used up, see oxidant_demand").hard(0, 1000).usual(0, 10),
    Parameter("transfer", "", "share of the ozone made that ends in the water")
        .hard(0.01, 1)
        .usual(0.2, 0.95),
};
constexpr const char *ozoneSources[] = {"hb44", "recalled", nullptr};
constexpr puteal_example ozoneExamples[] = {
    example("ozone_output(1 gpm, 1 mg/L as O3, 1)", "0.2271 g/hr as O3", 1e-3, "computed", "hb44"),
    example("ozone_output(7 gpm, 2.4 mg/L as O3, 0.5)", "7.6314 g/hr as O3", 1e-4, "computed", "hb44"),
};
constexpr puteal_example ozoneRefusals[] = {
    refusal("ozone_output(7 gpm, 2.4 mg/L as O3, 0)", "`transfer` must be at least 0.01; it is 0"),
};
constexpr puteal_caution ozoneCautions[] = {caution("beyond_household", "more than 2 g/hr")};

} // namespace

constinit const puteal_function ammoniaChlorineDemandRow =
    Function("ammonia_chlorine_demand", "Chlorine demand of ammonia",
             "Chlorine that ammonia takes before any free residual can stand. Test ammonia before offering "
             "chlorine.",
             call<ammoniaChlorineDemand>)
        .takes(ammoniaTakes)
        .gives("mg/L as Cl2", "chlorine to breakpoint")
        .by("ratio * ammonia")
        .from(ammoniaSources)
        .shownBy(ammoniaExamples)
        .refusing(ammoniaRefusals)
        .safely(oxidizerSafety);

constinit const puteal_function organicChlorineDemandRow =
    Function("organic_chlorine_demand", "Chlorine demand of organic matter",
             "Chlorine that organic matter takes, a placeholder until a chlorine demand test is made.",
             call<organicChlorineDemand>)
        .takes(organicTakes)
        .gives("mg/L as Cl2", "chlorine used up by organic matter")
        .by("ratio * organic_carbon")
        .from(organicSources)
        .shownBy(organicExamples)
        .refusing(organicRefusals)
        .warning(organicCautions)
        .safely(oxidizerSafety);

constinit const puteal_function oxidantDoseRow =
    Function("oxidant_dose", "Oxidant dose",
             "What to feed: the demand with a margin, and a residual. Half to 1 mg/L of free chlorine keeps "
             "a coated "
             "medium active; carbon takes 3 to 5 mg/L away.",
             call<oxidantDose>)
        .takes(doseTakes)
        .gives("mg/L as 'oxidant", "oxidant to feed")
        .by("multiplier * (demand + ammonia_demand + organic_demand) + residual")
        .from(doseSources)
        .shownBy(doseExamples)
        .refusing(doseRefusals)
        .warning(doseCautions)
        .safely(oxidizerSafety);

constinit const puteal_function ozoneOutputRow =
    Function("ozone_output", "Ozone generator output", "Ozone that must be made for a flow and a demand.",
             call<ozoneOutput>)
        .takes(ozoneTakes)
        .gives("g/hr as O3", "output of the generator")
        .by("flow * demand / transfer")
        .from(ozoneSources)
        .shownBy(ozoneExamples)
        .refusing(ozoneRefusals)
        .warning(ozoneCautions)
        .safely("Ozone hurts the lungs: destroy or vent the off-gas outdoors. An overdose turns manganese "
                "pink. High "
                "voltage and wiring belong to a licensed electrician.");

} // namespace oxidation
