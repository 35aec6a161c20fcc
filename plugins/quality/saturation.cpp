/// Saturation with calcium carbonate: the pH of balance and the indices built on it. (R3, R5)
#include "carbonate.h"
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr const char *formWords[] = {"logarithms", "equilibrium", nullptr};
enum Form : int { logarithms, equilibrium };

double byLogarithms(double temperature, double solids, double calcium, double alkalinity)
{
    const double a = (std::log10(solids) - 1.0) / 10.0;                     // [public Langelier pages]
    const double b = -13.12 * std::log10(temperature + 273.0) + 34.55;      // [public Langelier pages]
    const double c = std::log10(calcium) - 0.4, d = std::log10(alkalinity); // [public Langelier pages]
    return 9.3 + a + b - c - d;                                             // [public Langelier pages]
}

/// pK2 - pKs + p[Ca] + p[HCO3] + 5 pf, alkalinity counted as bicarbonate [Standard Methods 2330, recalled].
double byEquilibrium(double temperature, double solids, double calcium, double alkalinity)
{
    const CarbonateConstants k = carbonateConstants(temperature);
    const double molePerMilligram = 1.0 / (molarMass("CaCO3") * 1000.0);
    return k.second - k.calcite - std::log10(calcium * molePerMilligram) -
           std::log10(2.0 * alkalinity * molePerMilligram) + 5.0 * activityExponent(temperature, solids);
}

double saturation(double temperature, double solids, double calcium, double alkalinity, int form)
{
    return form == equilibrium ? byEquilibrium(temperature, solids, calcium, alkalinity)
                               : byLogarithms(temperature, solids, calcium, alkalinity);
}

double langelier(double ph, double temperature, double solids, double calcium, double alkalinity, int form,
                 Reply &reply)
{
    if (refusedEmpty(4, calcium, alkalinity, reply))
        return std::nan("");
    const double index = ph - saturation(temperature, solids, calcium, alkalinity, form);
    if (lessThan(index, -0.5)) // bands of the public Langelier pages
        reply.caution("corrosive",
                      "below -0.5 water tends to dissolve pipes: first-draw lead and copper may be up");
    else if (lessThan(0.5, index))
        reply.caution("scaling", "above 0.5 water tends to leave scale");
    return index;
}

double ryznar(double ph, double temperature, double solids, double calcium, double alkalinity, int form,
              Reply &reply)
{
    if (refusedEmpty(4, calcium, alkalinity, reply))
        return std::nan("");
    // the form and the bands 6 and 7 [corrosion engineers' pages], as ryznar_class has them
    const double index = 2.0 * saturation(temperature, solids, calcium, alkalinity, form) - ph;
    if (lessThan(7, index))
        reply.caution("corrosive",
                      "above 7 water tends to dissolve pipes: first-draw lead and copper may be up");
    else if (lessThan(index, 6))
        reply.caution("scaling", "below 6 water tends to leave scale");
    return index;
}

constexpr Parameter solidsParameter =
    Parameter("dissolved_solids", "mg/L as TDS", "dissolved solids").hard(1, 10000).usual(20, 3000);
constexpr Parameter temperatureParameter =
    Parameter("temperature", "degC", "temperature of the water").hard(0, 90).usual(2, 60);
constexpr Parameter formParameter =
    Parameter("form", "",
              "logarithms = the short form printed on public pages; equilibrium = constants of Plummer and "
              "Busenberg with activity, as in Standard Methods 2330")
        .oneOf(formWords)
        .otherwise(logarithms, "H");
constexpr puteal_parameter indexTakes[] = {
    phParameter, temperatureParameter, solidsParameter, calciumParameter, alkalinityParameter, formParameter,
};
constexpr const char *indexSources[] = {"langelier_pages", "plummer_busenberg", "phreeqc_ex3", "phreeqc_ex16",
                                        "ryznar_pages",    "recalled",          nullptr};
constexpr puteal_example langelierExamples[] = {
    // published to two places; the tolerance is five thousandths of a unit of pH
    example("langelier_index(7.6, 25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 120 mg/L as CaCO3)", "-0.10",
            0.05, "published", "langelier_pages"),
    example("langelier_index(8.2, 30 degC, 800 mg/L as TDS, 250 mg/L as CaCO3, 180 mg/L as CaCO3)", "0.97",
            5e-3, "published", "langelier_pages"),
    // calcite in water under carbon dioxide of 0.01 atm: in balance by the computation that is quoted
    example("langelier_index(7.297, 25 degC, 267 mg/L as TDS, 164.7 mg/L as CaCO3, 164.7 mg/L as CaCO3, "
            "\"equilibrium\") + 1",
            "1.00", 0.02, "published", "phreeqc_ex3"),
    // two springs in granite: saturation with calcite is printed as -3.30 and -1.78
    example("langelier_index(6.2, 25 degC, 40 mg/L as TDS, 7.807 mg/L as CaCO3, 16.414 mg/L as CaCO3, "
            "\"equilibrium\")",
            "-3.30", 0.01, "published", "phreeqc_ex16"),
    example("langelier_index(6.8, 25 degC, 95 mg/L as TDS, 26.022 mg/L as CaCO3, 44.793 mg/L as CaCO3, "
            "\"equilibrium\")",
            "-1.78", 0.015, "published", "phreeqc_ex16"),
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
    example("ryznar_index(6.8, 10 degC, 250 mg/L as TDS, 90 mg/L as CaCO3, 80 mg/L as CaCO3)", "9.9300", 1e-4,
            "computed", "langelier_pages"),
    example("ryznar_index(8.2, 30 degC, 800 mg/L as TDS, 250 mg/L as CaCO3, 180 mg/L as CaCO3)", "6.2611",
            1e-4, "computed", "langelier_pages"),
};
constexpr puteal_example ryznarRefusals[] = {
    refusal("ryznar_index(7.6, 25 degC, 500 mg/L as TDS, 0 mg/L as CaCO3, 120 mg/L as CaCO3)", noCalcium),
};

constexpr puteal_caution ryznarCautions[] = {
    caution("corrosive", "index above 7"),
    caution("scaling", "index below 6"),
};

// --------------------------------------------------------------------------------------------- saturation_ph

double saturationPh(double temperature, double solids, double calcium, double alkalinity, int form,
                    Reply &reply)
{
    if (refusedEmpty(3, calcium, alkalinity, reply))
        return std::nan("");
    return saturation(temperature, solids, calcium, alkalinity, form);
}

constexpr puteal_parameter saturationTakes[] = {temperatureParameter, solidsParameter, calciumParameter,
                                                alkalinityParameter, formParameter};
constexpr puteal_example saturationExamples[] = {
    example("saturation_ph(25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 120 mg/L as CaCO3)", "7.70", 7e-4,
            "published", "langelier_pages"),
    example("saturation_ph(30 degC, 800 mg/L as TDS, 250 mg/L as CaCO3, 180 mg/L as CaCO3)", "7.23", 7e-4,
            "published", "langelier_pages"),
    // the pH at which the computation quoted finds this water in balance with calcite
    example("saturation_ph(25 degC, 267 mg/L as TDS, 164.7 mg/L as CaCO3, 164.7 mg/L as CaCO3, "
            "\"equilibrium\")",
            "7.297", 0.002, "published", "phreeqc_ex3"),
    example("saturation_ph(10 degC, 250 mg/L as TDS, 90 mg/L as CaCO3, 80 mg/L as CaCO3)", "8.3650", 1e-4,
            "computed", "langelier_pages"),
    example("saturation_ph(12 degC, 420 mg/L as TDS, 240 mg/L as CaCO3, 220 mg/L as CaCO3)", "7.4821", 1e-4,
            "computed", "langelier_pages"),
};
constexpr puteal_example saturationRefusals[] = {
    refusal("saturation_ph(25 degC, 500 mg/L as TDS, 0 mg/L as CaCO3, 120 mg/L as CaCO3)", noCalcium),
    refusal("saturation_ph(25 degC, 500 mg/L as TDS, 150 mg/L as CaCO3, 0 mg/L as CaCO3)", noAlkalinity),
};

} // namespace

constinit const puteal_function saturationPhRow =
    Function("saturation_ph", "Saturation pH",
             "The pH at which a water neither dissolves nor leaves calcium carbonate. Below it pipes are "
             "dissolved, above it scale is left. The two forms differ by 0.1 to 0.3.",
             call<saturationPh>)
        .takes(saturationTakes)
        .gives("", "pH of balance with calcium carbonate")
        .by("logarithms: 9.3 + (log10(solids) - 1) / 10 - 13.12 * log10(t + 273) + 34.55 - log10(calcium) + "
            "0.4 "
            "- log10(alkalinity); equilibrium: pK2 - pKs - log10 of calcium and of alkalinity in mol/L + 5 * "
            "activity exponent")
        .from(indexSources)
        .shownBy(saturationExamples)
        .refusing(saturationRefusals);

constinit const puteal_function langelierRow =
    Function("langelier_index", "Langelier index",
             "Tendency of a water to leave scale (above 0) or to dissolve it (below 0). For a softened water "
             "use the water "
             "ahead of the softener.",
             call<langelier>)
        .takes(indexTakes)
        .gives("", "Langelier index")
        .by("ph - saturation_ph(temperature, dissolved_solids, calcium_hardness, alkalinity, form)")
        .from(indexSources)
        .shownBy(langelierExamples)
        .refusing(langelierRefusals)
        .warning(langelierCautions)
        .safely(corrosiveSafety);

constinit const puteal_function ryznarRow =
    Function("ryznar_index", "Ryznar index",
             "The same balance on a scale from scaling (below 6) to corrosive (above 7, strongly above 8).",
             call<ryznar>)
        .takes(indexTakes)
        .gives("", "Ryznar index")
        .by("2 * saturation_ph(temperature, dissolved_solids, calcium_hardness, alkalinity, form) - ph")
        .from(indexSources)
        .shownBy(ryznarExamples)
        .refusing(ryznarRefusals)
        .warning(ryznarCautions)
        .safely(corrosiveSafety);

} // namespace quality
