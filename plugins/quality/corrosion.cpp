/// Free carbon dioxide, scaling and corrosion indices, and what a neutralizer adds. (R3, R4)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr const char *formWords[] = {"short", "thermodynamic", nullptr};
enum Form : int { shortForm, thermodynamic };

double freeCarbonDioxide(double alkalinity, double ph, double temperature, int form, Reply &reply)
{
    if (lessThan(8.3, ph)) // above it no free carbon dioxide is left [Standard Methods 4500-CO2, recalled]
        return 0.0;
    if (lessThan(ph, 5))
        reply.caution("acid", "below pH 5 alkalinity is almost gone: the number means little");
    if (form == shortForm) {
        if (lessThan(temperature, 15))
            reply.caution("cold",
                          "the short form holds at 25 degC: cold water holds about a fifth more, see the "
                          "thermodynamic form");
        return 2.0 * alkalinity * std::pow(10.0, 6.0 - ph); // Standard Methods 4500-CO2 [recalled]
    }
    const double kelvin = temperature + 273.15;                        // exact [NIST SP 811, appendix B]
    const double pk1 = 3404.71 / kelvin + 0.032786 * kelvin - 14.8435; // [recalled, not confirmed]
    return alkalinity / (molarMass("CaCO3") / 2.0) * std::pow(10.0, pk1 - ph) * molarMass("CO2");
}

double saturationPh(double temperature, double solids, double calcium, double alkalinity)
{
    const double a = (std::log10(solids) - 1.0) / 10.0;                     // [public Langelier pages]
    const double b = -13.12 * std::log10(temperature + 273.0) + 34.55;      // [public Langelier pages]
    const double c = std::log10(calcium) - 0.4, d = std::log10(alkalinity); // [public Langelier pages]
    return 9.3 + a + b - c - d;                                             // [public Langelier pages]
}

constexpr const char noCalcium[] =
    "without calcium hardness there is no index: use the water ahead of the softener";
constexpr const char noAlkalinity[] = "without alkalinity there is no index";

bool refusedEmpty(double calcium, double alkalinity, Reply &reply)
{
    if (atMost(calcium, 0))
        reply.refuse(4, noCalcium);
    else if (atMost(alkalinity, 0))
        reply.refuse(5, noAlkalinity);
    else
        return false;
    return true;
}

double langelier(double ph, double temperature, double solids, double calcium, double alkalinity,
                 Reply &reply)
{
    if (refusedEmpty(calcium, alkalinity, reply))
        return std::nan("");
    const double index = ph - saturationPh(temperature, solids, calcium, alkalinity);
    if (lessThan(index, -0.5)) // bands of the public Langelier pages
        reply.caution("corrosive",
                      "below -0.5 water tends to dissolve pipes: first-draw lead and copper may be up");
    else if (lessThan(0.5, index))
        reply.caution("scaling", "above 0.5 water tends to leave scale");
    return index;
}

double ryznar(double ph, double temperature, double solids, double calcium, double alkalinity, Reply &reply)
{
    if (refusedEmpty(calcium, alkalinity, reply))
        return std::nan("");
    return 2.0 * saturationPh(temperature, solids, calcium, alkalinity) -
           ph; // Ryznar [recalled, not confirmed]
}

// CaCO3 + CO2 + H2O = Ca(HCO3)2: mole for mole [IUPAC 2021]
constexpr double calcitePerCarbonDioxide = molarMass("CaCO3") / molarMass("CO2");
// Na2CO3 + CO2 + H2O = 2 NaHCO3: mole for mole [IUPAC 2021]
constexpr double sodaAshPerCarbonDioxide = molarMass("Na2CO3") / molarMass("CO2");

double calciteHardness(double removed)
{
    return removed * calcitePerCarbonDioxide;
}

double calcitePerYear(double removed, double use)
{
    const double mgPerPound = 1000.0 * measure::gramPerPound;
    return removed * calcitePerCarbonDioxide * use * measure::literPerGallon * measure::dayPerYear /
           mgPerPound;
}

double sodaAsh(double removed)
{
    return removed * sodaAshPerCarbonDioxide;
}

constexpr Parameter phParameter = Parameter("ph", "", "pH measured at the site").hard(0, 14).usual(5, 9);
constexpr Parameter alkalinityParameter =
    Parameter("alkalinity", "mg/L as CaCO3", "total alkalinity").hard(0, 5000).usual(10, 600);
constexpr Parameter removedParameter =
    Parameter("carbon_dioxide_removed", "mg/L as CO2", "free carbon dioxide taken away by the neutralizer")
        .hard(0, 2000)
        .usual(0, 200);

constexpr puteal_parameter carbonTakes[] = {
    alkalinityParameter,
    phParameter,
    Parameter("temperature", "degC", "temperature of the water").hard(0, 50).usual(2, 30).otherwise(25, "A"),
    Parameter("form", "", "short handbook form, or the one with the temperature")
        .oneOf(formWords)
        .otherwise(shortForm, "R"),
};
constexpr const char *carbonSources[] = {"standard_methods", "recalled", nullptr};
constexpr puteal_example carbonExamples[] = {
    example("free_carbon_dioxide(100 mg/L as CaCO3, 6.5)", "63.246 mg/L as CO2", 1e-4, "computed",
            "standard_methods"),
    example("free_carbon_dioxide(40 mg/L as CaCO3, 6)", "80 mg/L as CO2", 1e-9, "computed",
            "standard_methods"),
    example("free_carbon_dioxide(100 mg/L as CaCO3, 6.5, 10 degC, \"thermodynamic\")", "80.995 mg/L as CO2",
            1e-4, "computed", "recalled"),
};
constexpr puteal_example carbonRefusals[] = {
    refusal("free_carbon_dioxide(100 mg/L as CaCO3, 65)", "`ph` must be at most 14; it is 65"),
};
constexpr puteal_caution carbonCautions[] = {
    caution("acid", "pH below 5"),
    caution("cold", "short form below 15 degC"),
};

constexpr puteal_parameter indexTakes[] = {
    phParameter,
    Parameter("temperature", "degC", "temperature of the water").hard(0, 90).usual(2, 60),
    Parameter("dissolved_solids", "mg/L as TDS", "dissolved solids").hard(1, 10000).usual(20, 3000),
    Parameter("calcium_hardness", "mg/L as CaCO3", "calcium share of the hardness")
        .hard(0, 10000)
        .usual(10, 600),
    alkalinityParameter,
};
constexpr const char *indexSources[] = {"langelier_pages", "recalled", nullptr};
constexpr puteal_example langelierExamples[] = {
    // published to two places; the tolerance is five thousandths of a unit of pH
    example("langelier_index(7.6, 25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 120 mg/L as CaCO3)", "-0.10",
            0.05, "published", "langelier_pages"),
    example("langelier_index(8.2, 30 degC, 800 mg/L as TDS, 250 mg/L as CaCO3, 180 mg/L as CaCO3)", "0.97",
            5e-3, "published", "langelier_pages"),
    example("langelier_index(6.8, 10 degC, 250 mg/L as TDS, 90 mg/L as CaCO3, 80 mg/L as CaCO3)", "-1.5650",
            1e-3, "computed", "langelier_pages"),
};
constexpr puteal_example langelierRefusals[] = {
    refusal("langelier_index(7.6, 25 degC, 500 mg/L as TDS, 0 mg/L as CaCO3, 120 mg/L as CaCO3)", noCalcium),
    refusal("langelier_index(7.6, 25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 0 mg/L as CaCO3)",
            noAlkalinity),
};
constexpr puteal_caution langelierCautions[] = {
    caution("corrosive", "index below -0.5"),
    caution("scaling", "index above 0.5"),
};
constexpr puteal_example ryznarExamples[] = {
    example("ryznar_index(7.6, 25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 120 mg/L as CaCO3)", "7.8058",
            1e-4, "computed", "langelier_pages"),
    example("ryznar_index(8.2, 30 degC, 800 mg/L as TDS, 250 mg/L as CaCO3, 180 mg/L as CaCO3)", "6.2611",
            1e-4, "computed", "langelier_pages"),
};
constexpr puteal_example ryznarRefusals[] = {
    refusal("ryznar_index(7.6, 25 degC, 500 mg/L as TDS, 0 mg/L as CaCO3, 120 mg/L as CaCO3)", noCalcium),
};

constexpr puteal_parameter removedTakes[] = {removedParameter};
constexpr const char *neutralizerSources[] = {"iupac2021", "ph_adjustment", nullptr};
constexpr puteal_example calciteExamples[] = {
    example("calcite_hardness_added(40 mg/L as CO2)", "90.969 mg/L as CaCO3", 1e-4, "computed", "iupac2021"),
    example("calcite_hardness_added(53.2456 mg/L as CO2)", "121.092 mg/L as CaCO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example calciteRefusals[] = {
    refusal("calcite_hardness_added(-40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};
constexpr puteal_parameter yearTakes[] = {
    removedParameter,
    Parameter("use", "gal/day", "water through the neutralizer").hard(0, 100000).usual(50, 1000),
};
constexpr puteal_example yearExamples[] = {
    example("calcite_per_year(40 mg/L as CO2, 250 gal/day)", "69.274 lb/yr as CaCO3", 1e-4, "computed",
            "iupac2021"),
    example("calcite_per_year(53.2456 mg/L as CO2, 300 gal/day)", "110.657 lb/yr as CaCO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example yearRefusals[] = {
    refusal("calcite_per_year(40 mg/L as CO2, -250 gal/day)",
            "`use` must be at least 0 gal/day; it is -250 gal/day"),
};
constexpr puteal_example sodaExamples[] = {
    example("soda_ash_dose(40 mg/L as CO2)", "96.333 mg/L as Na2CO3", 1e-4, "computed", "iupac2021"),
    example("soda_ash_dose(53.2456 mg/L as CO2)", "128.23 mg/L as Na2CO3", 1e-4, "computed", "iupac2021"),
};
constexpr puteal_example sodaRefusals[] = {
    refusal("soda_ash_dose(-40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};

} // namespace

constinit const puteal_function freeCarbonDioxideRow =
    Function("free_carbon_dioxide", "Free carbon dioxide", "Free carbon dioxide from alkalinity and pH.",
             call<freeCarbonDioxide>)
        .takes(carbonTakes)
        .gives("mg/L as CO2", "free carbon dioxide")
        .by("short: 2 * alkalinity * 10^(6 - ph); thermodynamic: alkalinity / 50.043 * 10^(pK1 - ph) * "
            "44.009; 0 above pH 8.3")
        .from(carbonSources)
        .shownBy(carbonExamples)
        .refusing(carbonRefusals)
        .warning(carbonCautions);

constinit const puteal_function langelierRow =
    Function("langelier_index", "Langelier index",
             "Tendency of a water to leave scale (above 0) or to dissolve it (below 0). For a softened water "
             "use the water "
             "ahead of the softener.",
             call<langelier>)
        .takes(indexTakes)
        .gives("", "Langelier index")
        .by("ph - (9.3 + (log10(solids) - 1) / 10 - 13.12 * log10(t + 273) + 34.55 - log10(calcium) + 0.4 - "
            "log10(alkalinity))")
        .from(indexSources)
        .shownBy(langelierExamples)
        .refusing(langelierRefusals)
        .warning(langelierCautions)
        .safely(
            "Corrosive water may carry lead and copper: test the first draw and ask the health department.");

constinit const puteal_function ryznarRow =
    Function("ryznar_index", "Ryznar index",
             "The same balance on a scale from scaling (below 6) to corrosive (above 7.5); the bands are "
             "recalled.",
             call<ryznar>)
        .takes(indexTakes)
        .gives("", "Ryznar index")
        .by("2 * saturation pH - ph")
        .from(indexSources)
        .shownBy(ryznarExamples)
        .refusing(ryznarRefusals)
        .safely(
            "Corrosive water may carry lead and copper: test the first draw and ask the health department.");

constinit const puteal_function calciteHardnessRow =
    Function("calcite_hardness_added", "Hardness a calcite bed adds",
             "Hardness, and as much alkalinity, that calcite adds while it takes carbon dioxide away. Soften "
             "after it.",
             call<calciteHardness>)
        .takes(removedTakes)
        .gives("mg/L as CaCO3", "hardness added")
        .by("100.086 / 44.009 * carbon_dioxide_removed")
        .from(neutralizerSources)
        .shownBy(calciteExamples)
        .refusing(calciteRefusals);

constinit const puteal_function calcitePerYearRow =
    Function("calcite_per_year", "Calcite used in a year", "Calcite dissolved in a year, to be topped up.",
             call<calcitePerYear>)
        .takes(yearTakes)
        .gives("lb/yr as CaCO3", "calcite dissolved")
        .by("100.086 / 44.009 * carbon_dioxide_removed * use")
        .from(neutralizerSources)
        .shownBy(yearExamples)
        .refusing(yearRefusals)
        .safely("Take the pressure off the tank before filling it; a dust mask while pouring.");

constinit const puteal_function sodaAshRow =
    Function("soda_ash_dose", "Soda ash dose",
             "Soda ash that takes carbon dioxide away; it adds sodium, no hardness.", call<sodaAsh>)
        .takes(removedTakes)
        .gives("mg/L as Na2CO3", "soda ash")
        .by("105.9875 / 44.009 * carbon_dioxide_removed")
        .from(neutralizerSources)
        .shownBy(sodaExamples)
        .refusing(sodaRefusals)
        .safely("Soda ash irritates eyes and lungs: goggles and a dust mask. Never in one tank with "
                "permanganate.");

} // namespace quality
