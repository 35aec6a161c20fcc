/// What follows from a demand at the house: ammonia, permanganate beds and their charge, ozone output. (R4)
#include "oxidation.h"

namespace oxidation
{

using namespace puteal::sdk;

namespace
{

// 2 NH3 + 3 Cl2 = N2 + 6 HCl: chlorine to breakpoint, 7.593 mg a mg of nitrogen [IUPAC 2021]
constexpr double breakpointRatio = 3.0 * molarMass("Cl2") / (2.0 * molarMass("N"));
constexpr double manganeseWeight = 2.0, sulfideWeight = 5.0; // in iron equivalents [recalled, not confirmed]
constexpr double ouncePerPound = 16.0;                       // exact [NIST Handbook 44, appendix C]

double ammoniaChlorineDemand(double ammonia, double ratio)
{
    return ammonia * ratio;
}

double ironEquivalents(double iron, double manganese, double sulfide)
{
    return iron + manganeseWeight * manganese + sulfideWeight * sulfide;
}

double permanganateDays(double bed, double capacity, double equivalents, double use, Reply &reply)
{
    if (atMost(equivalents, 0))
        return reply.refuse(3,
                            "there is no iron to use up the charge: leave the regeneration to the calendar");
    const double mgHeld = bed * capacity * measure::mgPerGrain;
    const double days = mgHeld / (equivalents * use * measure::literPerGallon);
    if (lessThan(days, 1))
        reply.caution("daily", "the charge is used up within a day: a larger bed or another method");
    return days;
}

double permanganateCharge(double bed, double dose)
{
    return bed * dose / ouncePerPound;
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

constexpr puteal_parameter equivalentTakes[] = {ironParameter, manganeseParameter, sulfideParameter};
constexpr const char *equivalentSources[] = {"recalled", nullptr};
constexpr puteal_example equivalentExamples[] = {
    example("iron_equivalents(3 mg/L as Fe, 0.2 mg/L as Mn, 0 mg/L as H2S)", "3.4 mg/L as Fe", 1e-9, "memory",
            "recalled"),
    example("iron_equivalents(1.5 mg/L as Fe, 0.5 mg/L as Mn, 0.5 mg/L as H2S)", "5 mg/L as Fe", 1e-9,
            "memory", "recalled"),
};
constexpr puteal_example equivalentRefusals[] = {
    refusal("iron_equivalents(-3 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
            "`iron` must be at least 0 mg/L as Fe; it is -3 mg/L as Fe"),
};

constexpr puteal_parameter daysTakes[] = {
    Parameter("bed", "ft^3", "volume of the bed").hard(0.05, 1000).usual(0.5, 10),
    Parameter("capacity", "grain/ft^3 as Fe", "iron equivalents a cubic foot takes up for its charge")
        .hard(1, 5000)
        .usual(300, 600),
    Parameter("equivalents", "mg/L as Fe", "iron equivalents of the water, see iron_equivalents")
        .hard(0, 1000)
        .usual(0, 30),
    Parameter("use", "gal/day", "water through the bed").hard(0.1, 100000).usual(50, 1000),
};
constexpr const char *daysSources[] = {"hb44", "recalled", nullptr};
constexpr puteal_example daysExamples[] = {
    example("permanganate_days(1.5 ft^3, 400 grain/ft^3 as Fe, 3.4 mg/L as Fe, 250 gal/day)",
            "12.083 day/event", 1e-4, "computed", "hb44"),
    example("permanganate_days(2 ft^3, 300 grain/ft^3 as Fe, 5 mg/L as Fe, 300 gal/day)", "6.847 day/event",
            1e-4, "computed", "hb44"),
};
constexpr puteal_example daysRefusals[] = {
    refusal("permanganate_days(1.5 ft^3, 400 grain/ft^3 as Fe, 0 mg/L as Fe, 250 gal/day)",
            "there is no iron to use up the charge: leave the regeneration to the calendar"),
};
constexpr puteal_caution daysCautions[] = {caution("daily", "less than one day between regenerations")};

constexpr puteal_parameter chargeTakes[] = {
    Parameter("bed", "ft^3", "volume of the bed").hard(0, 1000).usual(0.5, 10),
    Parameter("dose", "oz/ft^3 as KMnO4", "permanganate for one regeneration of a cubic foot")
        .hard(0, 20)
        .usual(1.5, 4),
};
constexpr const char *chargeSources[] = {"hb44", "practice", nullptr};
constexpr puteal_example chargeExamples[] = {
    example("permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4)", "0.1875 lb/event as KMnO4", 1e-9, "computed",
            "hb44"),
    example("permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4) * 365 day/yr / (3 day/event)",
            "22.8125 lb/yr as KMnO4", 1e-4, "common practice", "practice"),
};
constexpr puteal_example chargeRefusals[] = {
    refusal("permanganate_charge(-1 ft^3, 2 oz/ft^3 as KMnO4)",
            "`bed` must be at least 0 ft^3; it is -1 ft^3"),
};

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

constexpr const char permanganateSafety[] = "Permanganate is a strong oxidizer that stains: goggles and "
                                            "gloves, away from acids, peroxide, glycol and anything "
                                            "that burns, locked away from children. Pink or purple water is "
                                            "not to be used: rinse longer. Follow the label and "
                                            "the local code.";

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

constinit const puteal_function ironEquivalentsRow =
    Function("iron_equivalents", "Iron equivalents",
             "Iron, manganese and sulfide weighed together as the load on a permanganate-regenerated bed. "
             "The weights are "
             "recalled, not confirmed.",
             call<ironEquivalents>)
        .takes(equivalentTakes)
        .gives("mg/L as Fe", "iron equivalents")
        .by("iron + 2 * manganese + 5 * sulfide")
        .from(equivalentSources)
        .shownBy(equivalentExamples)
        .refusing(equivalentRefusals);

constinit const puteal_function permanganateDaysRow =
    Function("permanganate_days", "Days a permanganate charge lasts",
             "Days until the coating of a permanganate-regenerated bed is used up. Pressure loss or a "
             "three-day wash "
             "usually ends the run sooner.",
             call<permanganateDays>)
        .takes(daysTakes)
        .gives("day/event", "days between regenerations")
        .by("bed * capacity / (equivalents * use)")
        .from(daysSources)
        .shownBy(daysExamples)
        .refusing(daysRefusals)
        .warning(daysCautions)
        .safely(permanganateSafety);

constinit const puteal_function permanganateChargeRow =
    Function("permanganate_charge", "Permanganate for one regeneration",
             "Permanganate that one regeneration takes.", call<permanganateCharge>)
        .takes(chargeTakes)
        .gives("lb/event as KMnO4", "permanganate for one regeneration")
        .by("bed * dose")
        .from(chargeSources)
        .shownBy(chargeExamples)
        .refusing(chargeRefusals)
        .safely(permanganateSafety);

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
