/// Carbon behind an oxidant: how large a bed, what is left behind it, carbon used up, gas that peroxide
/// makes.
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

constexpr const char *chlorineWords[] = {"free chlorine", "chloramine", nullptr};
enum ChlorineKind : int { freeChlorine, chloramine };

double dechlorinationBed(double flow, double time, int kind, double factor, Reply &reply)
{
    // Two schools: 2 to 3 gpm to the cubic foot, that is 3.74 to 2.49 min; and 5 to 10 min [common practice].
    if (lessThan(time, 2.49))
        reply.caution("short", "less than 2.5 min is less than any school asks: a larger bed");
    else if (lessThan(time, 5))
        reply.caution("disputed",
                      "one school takes 2.5 to 3.7 min, another 5 to 10: test the chlorine behind the bed");
    const double minutes = kind == chloramine ? time * factor : time;
    return flow * minutes / measure::gallonPerCubicFoot;
}

double dechlorinatedResidual(double feed, double depth, double half)
{
    return feed * std::exp2(-depth / half);
}

// C + 2 Cl2 + 2 H2O = CO2 + 4 HCl: 11.806 mg of chlorine a mg of carbon [IUPAC 2021]
constexpr double mostChlorinePerCarbon = 2.0 * molarMass("Cl2") / molarMass("C");

double dechlorinationCarbon(double residual, double use, double capacity)
{
    constexpr double mgPerGram = 1000.0;
    const double chlorine =
        residual * use * measure::literPerGallon / mgPerGram * measure::dayPerYear; // g/yr
    return chlorine / capacity / measure::gramPerPound;
}

// 2 H2O2 = 2 H2O + O2: 0.47037 mg of oxygen a mg of peroxide [IUPAC 2021]
constexpr double oxygenPerPeroxide = molarMass("O2") / (2.0 * molarMass("H2O2"));

double peroxideOxygen(double peroxide, Reply &reply)
{
    if (lessThan(15, peroxide)) // 15 to 20 mg/L [common practice, no source]
        reply.caution("gas", "above 15 to 20 mg/L the gas binds a carbon bed: feed less or vent the tank");
    return oxygenPerPeroxide * peroxide;
}

constexpr puteal_parameter bedTakes[] = {
    Parameter("peak_flow", "gpm", "peak flow through the bed").hard(0, 1000).usual(1, 30),
    Parameter("time", "min",
              "empty-bed contact time for free chlorine: 2.5 to 3.7 by one school, 5 to 10 by another")
        .hard(0.1, 120)
        .usual(2, 10)
        .otherwise(measure::gallonPerCubicFoot / 2.0, "T"),
    Parameter("chlorine", "", "what the carbon is to take out").oneOf(chlorineWords).otherwise(0, "A"),
    Parameter("chloramine_factor", "", "times longer for chloramine: 3 to 5")
        .hard(1, 20)
        .usual(3, 5)
        .otherwise(4, "T"),
};
constexpr const char *bedSources[] = {"practice", "geometry", nullptr};
constexpr puteal_example bedExamples[] = {
    example("dechlorination_bed(5 gpm)", "2.5 ft^3", 1e-9, "common practice", "practice"),
    example("dechlorination_bed(5 gpm, 2.2442 min)", "1.5 ft^3", 1e-4, "computed", "geometry"),
    example("dechlorination_bed(8 gpm, 5 min)", "5.34722 ft^3", 1e-5, "computed", "geometry"),
    example("dechlorination_bed(5 gpm, 3.74026 min, \"chloramine\", 3)", "7.5 ft^3", 1e-5, "computed",
            "geometry"),
};
constexpr puteal_example bedRefusals[] = {
    refusal("dechlorination_bed(5 gpm, 0 min)", "`time` must be at least 0.1 min; it is 0 min"),
};
constexpr puteal_caution bedCautions[] = {caution("short", "less than 2.5 min"),
                                          caution("disputed", "2.5 to 5 min")};
constexpr const char carbonSafety[] =
    "Carbon takes the chlorine away, so bacteria grow on it: change it in time, disinfect the plumbing "
    "behind it, and "
    "do not put it on water whose bacteria are not dealt with.";

constexpr puteal_parameter residualTakes[] = {
    Parameter("feed", "mg/L as Cl2", "free chlorine ahead of the bed").hard(0, 50).usual(0.2, 10),
    Parameter("depth", "cm", "depth of the bed").hard(0, 1000).usual(10, 120),
    Parameter("half_length", "cm",
              "depth that halves free chlorine, measured at a velocity, pH and temperature; long at a high "
              "pH and in "
              "the cold")
        .hard(0.1, 200)
        .usual(1, 15),
};
constexpr const char *residualSources[] = {"half_length", "geometry", nullptr};
constexpr puteal_example residualExamples[] = {
    example("dechlorinated_residual(5 mg/L as Cl2, 12 cm, 3 cm)", "0.3125 mg/L as Cl2", 1e-9, "computed",
            "half_length"),
    // the definition of the half-value length
    example("dechlorinated_residual(5 mg/L as Cl2, 3 cm, 3 cm)", "2.5 mg/L as Cl2", 1e-9, "computed",
            "half_length"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("dechlorinated_residual(5 mg/L as Cl2, 12 cm, 0 cm)",
            "`half_length` must be at least 0.1 cm; it is 0 cm"),
};

constexpr puteal_parameter useTakes[] = {
    Parameter("residual", "mg/L as Cl2", "free chlorine the carbon takes out").hard(0, 50).usual(0.2, 10),
    Parameter("use", "gal/day", "water through the bed").hard(0, 100000).usual(50, 3000),
    Parameter("capacity", "mg{Cl2}/mg{C}",
              "chlorine for each mg of carbon: 1 to 6 is met, chemistry ends at 11.8")
        .hard(0.1, mostChlorinePerCarbon)
        .usual(1, 6)
        .otherwise(1, "T"),
};
constexpr const char *useSources[] = {"iupac2021", "carbon_use", "practice", nullptr};
constexpr puteal_example useExamples[] = {
    // a million gallons in a year
    example("dechlorination_carbon_use(1 mg/L as Cl2, 2739.726 gal/day, 6 mg{Cl2}/mg{C})", "1.4 lb/yr", 0.01,
            "published", "carbon_use"),
    example("dechlorination_carbon_use(3 mg/L as Cl2, 300 gal/day)", "2.7415 lb/yr", 1e-4, "computed",
            "geometry"),
    example("dechlorination_carbon_use(3 mg/L as Cl2, 300 gal/day, 6 mg{Cl2}/mg{C})", "0.457 lb/yr", 1e-3,
            "computed", "geometry"),
    example("dechlorination_carbon_use(3 mg/L as Cl2, 300 gal/day, 11.8058 mg{Cl2}/mg{C})", "105.3 g/yr",
            1e-3, "computed", "iupac2021"),
};
constexpr puteal_example useRefusals[] = {
    refusal("dechlorination_carbon_use(3 mg/L as Cl2, 300 gal/day, 0 mg{Cl2}/mg{C})",
            "`capacity` must be at least 0.1 mg{Cl2}/mg{C}; it is 0 mg{Cl2}/mg{C}"),
};

constexpr puteal_parameter oxygenTakes[] = {
    Parameter("peroxide", "mg/L as H2O2", "peroxide that reaches the carbon").hard(0, 200).usual(0, 20),
};
constexpr const char *oxygenSources[] = {"iupac2021", "practice", nullptr};
constexpr puteal_example oxygenExamples[] = {
    example("peroxide_oxygen(1 mg/L as H2O2)", "0.47037 mg/L as O2", 2e-5, "computed", "iupac2021"),
    example("peroxide_oxygen(8 mg/L as H2O2)", "3.76292 mg/L as O2", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example oxygenRefusals[] = {
    refusal("peroxide_oxygen(-1 mg/L as H2O2)",
            "`peroxide` must be at least 0 mg/L as H2O2; it is -1 mg/L as H2O2"),
};
constexpr puteal_caution oxygenCautions[] = {caution("gas", "more than 15 mg/L")};

} // namespace

constinit const puteal_function dechlorinationBedRow =
    Function("dechlorination_bed", "Carbon bed to take chlorine out",
             "Carbon that holds the water long enough at peak flow. The schools of the trade differ by a "
             "factor of three.",
             call<dechlorinationBed>)
        .takes(bedTakes)
        .gives("ft^3", "carbon")
        .by("peak_flow * time; chloramine: * chloramine_factor")
        .from(bedSources)
        .shownBy(bedExamples)
        .refusing(bedRefusals)
        .warning(bedCautions)
        .safely(carbonSafety);

constinit const puteal_function dechlorinatedResidualRow =
    Function("dechlorinated_residual", "Chlorine behind a carbon bed",
             "Free chlorine left behind a depth of carbon, halved by every half-value length.",
             call<dechlorinatedResidual>)
        .takes(residualTakes)
        .gives("mg/L as Cl2", "free chlorine behind the bed")
        .by("feed * 2^(-depth / half_length)")
        .from(residualSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals)
        .safely(carbonSafety);

constinit const puteal_function dechlorinationCarbonRow =
    Function("dechlorination_carbon_use", "Carbon used up by chlorine",
             "Carbon that chlorine consumes in a year. It is seldom the limit: organic matter, fines and "
             "bacteria spend a "
             "bed first.",
             call<dechlorinationCarbon>)
        .takes(useTakes)
        .gives("lb/yr", "carbon")
        .by("residual * use / capacity")
        .from(useSources)
        .shownBy(useExamples)
        .refusing(useRefusals)
        .safely(carbonSafety);

constinit const puteal_function peroxideOxygenRow =
    Function("peroxide_oxygen", "Oxygen that peroxide gives off",
             "Oxygen set free where peroxide falls apart on carbon.", call<peroxideOxygen>)
        .takes(oxygenTakes)
        .gives("mg/L as O2", "oxygen set free")
        .by("0.47037 * peroxide")
        .from(oxygenSources)
        .shownBy(oxygenExamples)
        .refusing(oxygenRefusals)
        .warning(oxygenCautions)
        .safely(peroxideSafety);

} // namespace dosing
