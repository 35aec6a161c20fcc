/// Does a laboratory sheet add up: charges of cations and anions, their balance, dissolved solids by ions.
/// (R6)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

/// meq in a mg of an ion.
constexpr double perMilligram(const char *ion)
{
    const int charge = substances[substanceIndex(ion)].charge;
    return (charge < 0 ? -charge : charge) / molarMass(ion);
}
// The unit meq counts calcium carbonate: 50.043 mg of it are one [IUPAC 2021].

double cationCharge(double calcium, double magnesium, double sodium, double potassium, double iron,
                    double manganese, double ammonium)
{
    return perMilligram("Ca") * calcium + perMilligram("Mg") * magnesium + perMilligram("Na") * sodium +
           perMilligram("K") * potassium + perMilligram("Fe") * iron + perMilligram("Mn") * manganese +
           perMilligram("NH4") * ammonium;
}

double anionCharge(double bicarbonate, double chloride, double sulfate, double nitrate, double fluoride,
                   double carbonate)
{
    return perMilligram("HCO3") * bicarbonate + perMilligram("Cl") * chloride +
           perMilligram("SO4") * sulfate + perMilligram("NO3") * nitrate + perMilligram("F") * fluoride +
           perMilligram("CO3") * carbonate;
}

double ionBalance(double cations, double anions, Reply &reply)
{
    if (atMost(cations + anions, 0))
        return reply.refuse(0, "there are no ions to balance: give what the laboratory found");
    const double difference = (cations - anions) / (cations + anions), size = std::fabs(difference);
    if (lessThan(0.1, size)) // more than 10 % is not used [state mine report: 10 %]
        reply.caution("unusable", "more than 10 % off: a test is wrong, missing or told in another form");
    else if (lessThan(0.05, size)) // up to 5 % is good [common practice]
        reply.caution("fair", "5 to 10 % off: usable, but look for a missing ion");
    return difference;
}

/// Bicarbonate loses carbon dioxide and water when the sample is dried: 2 HCO3 leave one CO3.
constexpr double leftOfBicarbonate = molarMass("CO3") / (2.0 * molarMass("HCO3"));

double solidsByIons(double cations, double bicarbonate, double chloride, double sulfate, double silica,
                    double nitrate)
{
    return cations + leftOfBicarbonate * bicarbonate + chloride + sulfate + silica + nitrate;
}

constexpr Parameter ion(const char *name, const char *unit, const char *meaning, double usualHigh)
{
    return Parameter(name, unit, meaning).hard(0, 50000).usual(0, usualHigh);
}
constexpr puteal_parameter cationTakes[] = {
    ion("calcium", "mg/L as Ca", "calcium", 300),
    ion("magnesium", "mg/L as Mg", "magnesium", 100),
    ion("sodium", "mg/L as Na", "sodium", 500),
    ion("potassium", "mg/L as K", "potassium", 50).otherwise(0, "A"),
    ion("iron", "mg/L as Fe", "dissolved iron", 20).otherwise(0, "A"),
    ion("manganese", "mg/L as Mn", "dissolved manganese", 5).otherwise(0, "A"),
    ion("ammonium", "mg/L as NH4", "ammonium", 5).otherwise(0, "A"),
};
constexpr const char *chargeSources[] = {"iupac2021", "phreeqc_ex1", nullptr};
constexpr puteal_example cationExamples[] = {
    example("cation_charge(80 mg/L as Ca, 0 mg/L as Mg, 0 mg/L as Na)", "3.99222 meq/L", 1e-5, "computed",
            "iupac2021"),
    example("cation_charge(80 mg/L as Ca, 30 mg/L as Mg, 10 mg/L as Na, 2 mg/L as K, 3 mg/L as Fe)",
            "7.05441 meq/L", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example cationRefusals[] = {
    refusal("cation_charge(-80 mg/L as Ca, 0 mg/L as Mg, 0 mg/L as Na)",
            "`calcium` must be at least 0 mg/L as Ca; it is -80 mg/L as Ca"),
};
constexpr puteal_parameter anionTakes[] = {
    ion("bicarbonate", "mg/L as HCO3", "bicarbonate; from alkalinity see alkalinity_part", 600),
    ion("chloride", "mg/L as Cl", "chloride", 500),
    ion("sulfate", "mg/L as SO4", "sulfate", 500),
    ion("nitrate", "mg/L as NO3", "nitrate", 50).otherwise(0, "A"),
    ion("fluoride", "mg/L as F", "fluoride", 4).otherwise(0, "A"),
    ion("carbonate", "mg/L as CO3", "carbonate, from pH 8.3", 50).otherwise(0, "A"),
};
constexpr puteal_example anionExamples[] = {
    example("anion_charge(250 mg/L as HCO3, 0 mg/L as Cl, 0 mg/L as SO4)", "205.040 mg/L as CaCO3", 1e-5,
            "computed", "iupac2021"),
    example("anion_charge(250 mg/L as HCO3, 35.45 mg/L as Cl, 48.03 mg/L as SO4)", "6.0973 meq/L", 1e-4,
            "computed", "iupac2021"),
};
constexpr puteal_example anionRefusals[] = {
    refusal("anion_charge(-250 mg/L as HCO3, 0 mg/L as Cl, 0 mg/L as SO4)",
            "`bicarbonate` must be at least 0 mg/L as HCO3; it is -250 mg/L as HCO3"),
};

constexpr puteal_parameter balanceTakes[] = {
    Parameter("cations", "meq/L", "see cation_charge").hard(0, 10000).usual(0.2, 100),
    Parameter("anions", "meq/L", "see anion_charge").hard(0, 10000).usual(0.2, 100),
};
constexpr const char *balanceSources[] = {"phreeqc_ex1", "phreeqc_ex16", "mine_report", "practice", nullptr};
constexpr puteal_example balanceExamples[] = {
    // seawater of Nordstrom and others 1979, mg/kg; printed 0.07 % with two figures
    example("ion_balance(cation_charge(412.3 mg/L as Ca, 1291.8 mg/L as Mg, 10768 mg/L as Na, 399.1 mg/L as "
            "K), anion_charge(141.682 mg/L as HCO3, 19353 mg/L as Cl, 2712 mg/L as SO4))",
            "0.07 %", 0.15, "published", "phreeqc_ex1"),
    // two springs in granite, printed 1.90 % and -0.73 %
    example(
        "ion_balance(cation_charge(3.12608 mg/L as Ca, 0.704845 mg/L as Mg, 3.080629 mg/L as Na, 1.094752 "
        "mg/L as K), anion_charge(20.01325 mg/L as HCO3, 0.4963 mg/L as Cl, 0.96056 mg/L as SO4))",
        "1.90 %", 0.005, "published", "phreeqc_ex16"),
    example(
        "ion_balance(cation_charge(10.42028 mg/L as Ca, 1.725655 mg/L as Mg, 5.954350 mg/L as Na, 1.563932 "
        "mg/L as K), anion_charge(54.60932 mg/L as HCO3, 1.0635 mg/L as Cl, 2.4014 mg/L as SO4))",
        "-0.73 %", 0.015, "published", "phreeqc_ex16"),
    example("ion_balance(5.5 meq/L, 4.5 meq/L)", "10 %", 1e-9, "computed", "mine_report"),
    example("ion_balance(4.9 meq/L, 5.1 meq/L)", "-2 %", 1e-9, "computed", "mine_report"),
};
constexpr puteal_example balanceRefusals[] = {
    refusal("ion_balance(0 meq/L, 0 meq/L)", "there are no ions to balance: give what the laboratory found"),
};
constexpr puteal_caution balanceCautions[] = {
    caution("fair", "5 to 10 % off"),
    caution("unusable", "more than 10 % off"),
};

constexpr puteal_parameter solidsTakes[] = {
    Parameter("metals", "mg/L", "calcium, magnesium, sodium and potassium added up: plain(...) of each")
        .hard(0, 50000)
        .usual(5, 1000),
    ion("bicarbonate", "mg/L as HCO3", "bicarbonate", 600),
    ion("chloride", "mg/L as Cl", "chloride", 500),
    ion("sulfate", "mg/L as SO4", "sulfate", 500),
    ion("silica", "mg/L as SiO2", "silica", 60).otherwise(0, "A"),
    ion("nitrate", "mg/L as NO3", "nitrate", 50).otherwise(0, "A"),
};
constexpr const char *solidsSources[] = {"iupac2021", "recalled", nullptr};
constexpr puteal_example solidsExamples[] = {
    example("dissolved_solids_by_ions(100 mg/L, 250 mg/L as HCO3, 20 mg/L as Cl, 30 mg/L as SO4)",
            "272.935 mg/L as TDS", 1e-5, "computed", "iupac2021"),
    example("dissolved_solids_by_ions(0 mg/L, 100 mg/L as HCO3, 0 mg/L as Cl, 0 mg/L as SO4)",
            "49.1740 mg/L as TDS", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example solidsRefusals[] = {
    refusal("dissolved_solids_by_ions(-1 mg/L, 0 mg/L as HCO3, 0 mg/L as Cl, 0 mg/L as SO4)",
            "`metals` must be at least 0 mg/L; it is -1 mg/L"),
};

} // namespace

constinit const puteal_function cationChargeRow =
    Function(
        "cation_charge", "Charge of the cations",
        "Charge of the positive ions of a laboratory sheet in milliequivalents. What is left out counts as "
        "none: an untested ion shows in ion_balance.",
        call<cationCharge>)
        .takes(cationTakes)
        .gives("meq/L", "charge of the cations")
        .by("sum of each ion / (molar mass / charge)")
        .from(chargeSources)
        .shownBy(cationExamples)
        .refusing(cationRefusals);

constinit const puteal_function anionChargeRow =
    Function(
        "anion_charge", "Charge of the anions",
        "Charge of the negative ions of a laboratory sheet in milliequivalents. Give nitrate as NO3: as N "
        "it is another number.",
        call<anionCharge>)
        .takes(anionTakes)
        .gives("meq/L", "charge of the anions")
        .by("sum of each ion / (molar mass / charge)")
        .from(chargeSources)
        .shownBy(anionExamples)
        .refusing(anionRefusals);

constinit const puteal_function ionBalanceRow =
    Function("ion_balance", "Ion balance",
             "How far cations and anions of a sheet are apart, as a share of their sum: water carries no "
             "charge. Within 5 % is good, within 10 % usable.",
             call<ionBalance>)
        .takes(balanceTakes)
        .gives("", "(cations - anions) / (cations + anions)")
        .by("(cations - anions) / (cations + anions)")
        .from(balanceSources)
        .shownBy(balanceExamples)
        .refusing(balanceRefusals)
        .warning(balanceCautions);

constinit const puteal_function solidsByIonsRow =
    Function(
        "dissolved_solids_by_ions", "Dissolved solids by ions",
        "What the ions of a sheet leave when dried, to set beside the dissolved solids tested. Bicarbonate "
        "leaves half its mass.",
        call<solidsByIons>)
        .takes(solidsTakes)
        .gives("mg/L as TDS", "dissolved solids")
        .by("metals + 0.49174 * bicarbonate + chloride + sulfate + silica + nitrate")
        .from(solidsSources)
        .shownBy(solidsExamples)
        .refusing(solidsRefusals);

} // namespace quality
