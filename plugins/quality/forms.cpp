/// One amount in the forms laboratories use: ion and calcium carbonate, nitrogen and nitrate, sulfur and
/// sulfide. (R7)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr const char *ionWords[] = {"calcium",     "magnesium",      "sodium",    "potassium", "iron",
                                    "ferric iron", "manganese",      "strontium", "ammonium",  "bicarbonate",
                                    "carbonate",   "hydroxide",      "chloride",  "sulfate",   "nitrate",
                                    "fluoride",    "carbon dioxide", nullptr};
constexpr const char *ionSubstances[] = {"Ca",   "Mg",  "Na", "K",  "Fe",  "Fe",  "Mn", "Sr",  "NH4",
                                         "HCO3", "CO3", "OH", "Cl", "SO4", "NO3", "F",  "CO2", nullptr};
enum Special : int { ferric = 5, carbonDioxide = 16 };

/// Charges of an ion. Ferric iron has three; carbon dioxide counts as the one charge of the bicarbonate it
/// becomes.
constexpr double chargesOf(int ion)
{
    if (ion == ferric)
        return 3;
    if (ion == carbonDioxide)
        return 1;
    const int charge = substances[substanceIndex(ionSubstances[ion])].charge;
    return charge < 0 ? -charge : charge;
}

/// mg as CaCO3 for a mg of the ion [IUPAC 2021].
constexpr double factorOf(int ion)
{
    return molarMass("CaCO3") / 2.0 * chargesOf(ion) / molarMass(ionSubstances[ion]);
}

double ionAsCaco3(int ion, double amount)
{
    return amount * factorOf(ion);
}
double caco3AsIon(int ion, double amount)
{
    return amount / factorOf(ion);
}

constexpr Parameter ionParameter =
    Parameter("ion", "", "which ion; carbon dioxide counts as the one bicarbonate it becomes")
        .oneOf(ionWords, ionSubstances);
constexpr puteal_parameter asTakes[] = {
    ionParameter,
    Parameter("amount", "mg/L as 'ion", "as the laboratory gives it").hard(0, 400000).usual(0, 5000),
};
constexpr const char *sources[] = {"iupac2021", nullptr};
constexpr puteal_example asExamples[] = {
    example("ion_as_caco3(\"calcium\", 80 mg/L as Ca)", "199.782 mg/L as CaCO3", 1e-5, "computed",
            "iupac2021"),
    example("ion_as_caco3(\"bicarbonate\", 250 mg/L as HCO3)", "205.040 mg/L as CaCO3", 1e-5, "computed",
            "iupac2021"),
    example("ion_as_caco3(\"iron\", 3 mg/L as Fe)", "0.314091 gpg", 1e-5, "computed", "iupac2021"),
    example("ion_as_caco3(\"ferric iron\", 1 mg/L as Fe)", "2.68832 mg/L as CaCO3", 1e-5, "computed",
            "iupac2021"),
    example("ion_as_caco3(\"carbon dioxide\", 1 mg/L as CO2)", "1.13711 mg/L as CaCO3", 1e-5, "computed",
            "iupac2021"),
};
constexpr puteal_example asRefusals[] = {
    refusal("ion_as_caco3(\"calcium\", -80 mg/L as Ca)", "`amount` must be at least 0 mg/L; it is -80 mg/L"),
};
constexpr puteal_parameter fromTakes[] = {
    ionParameter,
    Parameter("amount", "mg/L as CaCO3", "counted as calcium carbonate; gpg and meq/L may be given")
        .hard(0, 2000000)
        .usual(0, 5000),
};
constexpr puteal_example fromExamples[] = {
    example("caco3_as_ion(\"bicarbonate\", 205.04 mg/L as CaCO3)", "250 mg/L as HCO3", 1e-5, "computed",
            "iupac2021"),
    example("caco3_as_ion(\"calcium\", 3.99222 meq/L)", "80 mg/L as Ca", 1e-5, "computed", "iupac2021"),
    example("caco3_as_ion(\"sodium\", 1 gpg)", "7.86404 mg/L as Na", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example fromRefusals[] = {
    refusal("caco3_as_ion(\"calcium\", -80 mg/L as CaCO3)",
            "`amount` must be at least 0 mg/L as CaCO3; it is -80 mg/L as CaCO3"),
};

// ------------------------------------------------------------------------------------ nitrogen_as, sulfur_as

constexpr const char *nitrogenWords[] = {"nitrate", "nitrite", "ammonia", "ammonium", nullptr};
constexpr const char *nitrogenSubstances[] = {"NO3", "NO2", "NH3", "NH4", nullptr};

double nitrogenAs(int form, double amount)
{
    return amount * molarMass(nitrogenSubstances[form]) / molarMass("N");
}

constexpr puteal_parameter nitrogenTakes[] = {
    Parameter("form", "", "what the nitrogen is in").oneOf(nitrogenWords, nitrogenSubstances),
    Parameter("amount", "mg/L as N", "as nitrogen").hard(0, 100000).usual(0, 50),
};
constexpr const char *nitrogenSources[] = {"iupac2021", "nitrate_limits", nullptr};
constexpr puteal_example nitrogenExamples[] = {
    // the limit of 10 as nitrogen is printed as 45 mg/L of nitrate elsewhere
    example("nitrogen_as(\"nitrate\", 10 mg/L as N)", "45 mg/L as NO3", 0.02, "published", "nitrate_limits"),
    example("nitrogen_as(\"nitrate\", 10 mg/L as N)", "44.2664 mg/L as NO3", 1e-5, "computed", "iupac2021"),
    example("nitrogen_as(\"nitrite\", 1 mg/L as N)", "3.28443 mg/L as NO2", 1e-5, "computed", "iupac2021"),
    example("nitrogen_as(\"ammonium\", 1 mg/L as N)", "1.28786 mg/L as NH4", 1e-5, "computed", "iupac2021"),
    example("nitrogen_as(\"ammonia\", 1 mg/L as N)", "1.21589 mg/L as NH3", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example nitrogenRefusals[] = {
    refusal("nitrogen_as(\"nitrate\", -1 mg/L as N)",
            "`amount` must be at least 0 mg/L as N; it is -1 mg/L as N"),
};

constexpr const char *sulfurWords[] = {"hydrogen sulfide", "sulfate", nullptr};
constexpr const char *sulfurSubstances[] = {"H2S", "SO4", nullptr};

double sulfurAs(int form, double amount)
{
    return amount * molarMass(sulfurSubstances[form]) / molarMass("S");
}

constexpr puteal_parameter sulfurTakes[] = {
    Parameter("form", "", "what the sulfur is in").oneOf(sulfurWords, sulfurSubstances),
    Parameter("amount", "mg/L as S", "as sulfur").hard(0, 100000).usual(0, 500),
};
constexpr puteal_example sulfurExamples[] = {
    example("sulfur_as(\"hydrogen sulfide\", 1 mg/L as S)", "1.06288 mg/L as H2S", 1e-5, "computed",
            "iupac2021"),
    example("sulfur_as(\"sulfate\", 1 mg/L as S)", "2.99613 mg/L as SO4", 1e-5, "computed", "iupac2021"),
};
constexpr puteal_example sulfurRefusals[] = {
    refusal("sulfur_as(\"sulfate\", -1 mg/L as S)",
            "`amount` must be at least 0 mg/L as S; it is -1 mg/L as S"),
};

} // namespace

constinit const puteal_function ionAsCaco3Row =
    Function("ion_as_caco3", "Ion as calcium carbonate",
             "An ion counted as calcium carbonate by its charges, with ferric iron and carbon dioxide that "
             "as_caco3 cannot tell apart. Show the result in meq/L for milliequivalents.",
             call<ionAsCaco3>)
        .takes(asTakes)
        .gives("mg/L as CaCO3", "the same charges as calcium carbonate")
        .by("amount * 50.043 * charges / molar mass of the ion")
        .from(sources)
        .shownBy(asExamples)
        .refusing(asRefusals);

constinit const puteal_function caco3AsIonRow =
    Function(
        "caco3_as_ion", "Calcium carbonate as an ion",
        "The way back: alkalinity as bicarbonate, hardness as calcium, milliequivalents as mg/L of an ion.",
        call<caco3AsIon>)
        .takes(fromTakes)
        .gives("mg/L as 'ion", "the ion with the same charges")
        .by("amount * molar mass of the ion / charges / 50.043")
        .from(sources)
        .shownBy(fromExamples)
        .refusing(fromRefusals);

constinit const puteal_function nitrogenAsRow =
    Function(
        "nitrogen_as", "Nitrogen as nitrate, nitrite, ammonia",
        "From nitrogen to its compound; as_element goes the other way. A limit and a result must be told "
        "in one form: 10 as N are 44 as NO3.",
        call<nitrogenAs>)
        .takes(nitrogenTakes)
        .gives("mg/L as 'form", "the compound")
        .by("amount * molar mass of the compound / 14.007")
        .from(nitrogenSources)
        .shownBy(nitrogenExamples)
        .refusing(nitrogenRefusals);

constinit const puteal_function sulfurAsRow =
    Function("sulfur_as", "Sulfur as sulfide or sulfate",
             "From sulfur to its compound; as_element goes the other way.", call<sulfurAs>)
        .takes(sulfurTakes)
        .gives("mg/L as 'form", "the compound")
        .by("amount * molar mass of the compound / 32.06")
        .from(sources)
        .shownBy(sulfurExamples)
        .refusing(sulfurRefusals);

} // namespace quality
