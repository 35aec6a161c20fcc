/// Conductivity at 25 degC, the factor of dissolved solids, and parts per million by mass. (R2)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr double referenceTemperature = 25; // degC of every printed factor [conductivity pages]

double conductivityAt25(double conductivity, double temperature, double rise)
{
    return conductivity / (1 + rise * (temperature - referenceTemperature));
}

constexpr puteal_parameter conductivityTakes[] = {
    Parameter("conductivity", "uS/cm", "conductivity as read, not corrected by the meter")
        .hard(0, 100000)
        .usual(20, 5000),
    Parameter("temperature", "degC", "temperature at the reading").hard(0, 50).usual(2, 30),
    Parameter("rise", "1/delta_degC", "rise for a degree: about 2 %; most meters assume 1.9 to 2.1 %")
        .hard(0.01, 0.03)
        .usual(0.018, 0.022)
        .otherwise(0.02, "H"),
};
constexpr const char *conductivitySources[] = {"conductivity_pages", "crc", nullptr};
constexpr puteal_example conductivityExamples[] = {
    example("conductivity_at_25(300 uS/cm, 25 degC)", "300 uS/cm", 1e-9, "computed", "conductivity_pages"),
    example("conductivity_at_25(350 uS/cm, 10 degC)", "500 uS/cm", 1e-9, "computed", "conductivity_pages"),
    // potassium chloride of 0.01 mol/kg: 1,141.45 at 15, 1,273.03 at 20, 1,408.23 at 25, 1,546.63 at 30 degC
    example("conductivity_at_25(1273.03 uS/cm, 20 degC)", "1408.23 uS/cm", 0.006, "published", "crc"),
    example("conductivity_at_25(1546.63 uS/cm, 30 degC)", "1408.23 uS/cm", 0.003, "published", "crc"),
    example("conductivity_at_25(1141.45 uS/cm, 15 degC, 0.019 1/delta_degC)", "1408.23 uS/cm", 0.002,
            "published", "crc"),
    example("conductivity_at_25(1273.03 uS/cm, 20 degC, 0.019 1/delta_degC)", "1408.23 uS/cm", 0.002,
            "published", "crc"),
    example("conductivity_at_25(1013.95 uS/cm, 10 degC, 0.019 1/delta_degC)", "1408.23 uS/cm", 0.01,
            "published", "crc"),
};
constexpr puteal_example conductivityRefusals[] = {
    refusal("conductivity_at_25(-300 uS/cm, 20 degC)",
            "`conductivity` must be at least 0 uS/cm; it is -300 uS/cm"),
};

double solidsFactor(double solids, double conductivity, Reply &reply)
{
    const double factor = solids / conductivity;
    if (lessThan(factor, 0.5) ||
        lessThan(0.9, factor)) // outside, one of the tests is doubted [common practice]
        reply.caution("doubtful", "the factor is usually 0.5 to 0.9: one of the two tests is wrong, or the "
                                  "conductivity was not corrected to 25 degC");
    return factor;
}

constexpr puteal_parameter factorTakes[] = {
    Parameter("dissolved_solids", "mg/L as TDS", "dissolved solids by drying, from the laboratory")
        .hard(0, 100000)
        .usual(20, 3000),
    Parameter("conductivity", "uS/cm", "conductivity at 25 degC of the same sample")
        .hard(1, 100000)
        .usual(20, 5000),
};
constexpr const char *factorSources[] = {"conductivity_pages", "practice", nullptr};
constexpr puteal_example factorExamples[] = {
    example("dissolved_solids_factor(192 mg/L as TDS, 300 uS/cm)", "0.64 (mg/L)/(uS/cm)", 1e-9, "published",
            "conductivity_pages"),
    example("dissolved_solids_factor(120 mg/L as TDS, 200 uS/cm)", "0.6 (mg/L)/(uS/cm)", 1e-9, "published",
            "conductivity_pages"),
};
constexpr puteal_example factorRefusals[] = {
    refusal("dissolved_solids_factor(192 mg/L as TDS, 0 uS/cm)",
            "`conductivity` must be at least 1 uS/cm; it is 0 uS/cm"),
};
constexpr puteal_caution factorCautions[] = {caution("doubtful", "a factor outside 0.5 to 0.9")};

double ppmByMass(double concentration, double density)
{
    return concentration / density;
}

constexpr puteal_parameter ppmTakes[] = {
    Parameter("concentration", "'u", "mass in a volume: mg/L, lb/gal").hard(0, HUGE_VAL),
    Parameter("density", "kg/L", "density of the solution; 1 in dilute water").hard(0.5, 3).usual(0.95, 1.5),
};
constexpr const char *ppmSources[] = {"definition", "treatment_math", "recalled", nullptr};
constexpr puteal_example ppmExamples[] = {
    example("ppm_by_mass(3 mg/L as Fe, 1 kg/L)", "3 mg{Fe}/kg", 1e-9, "published", "treatment_math"),
    example("ppm_by_mass(3 mg/L as Fe, 0.99973 kg/L)", "3.0008 mg{Fe}/kg", 1e-5, "computed", "definition"),
    example("ppm_by_mass(316272 mg/L as NaCl, 1.198 kg/L)", "264000 mg{NaCl}/kg", 1e-6, "computed",
            "recalled"),
    example("ppm_by_mass(395920 mg/L as H2O2, 1.1312 kg/L)", "350000 mg{H2O2}/kg", 1e-6, "computed",
            "recalled"),
};
constexpr puteal_example ppmRefusals[] = {
    refusal("ppm_by_mass(3 mg/L, 0 kg/L)", "`density` must be at least 0.5 kg/L; it is 0 kg/L"),
};

} // namespace

constinit const puteal_function conductivityRow =
    Function("conductivity_at_25", "Conductivity at 25 degC",
             "A conductivity read at another temperature, brought to 25 degC, where factors and limits hold. "
             "Leave it out when the meter corrects by itself.",
             call<conductivityAt25>)
        .takes(conductivityTakes)
        .gives("uS/cm", "conductivity at 25 degC")
        .by("conductivity / (1 + rise * (temperature - 25))")
        .from(conductivitySources)
        .shownBy(conductivityExamples)
        .refusing(conductivityRefusals);

constinit const puteal_function solidsFactorRow =
    Function(
        "dissolved_solids_factor", "Factor of dissolved solids",
        "The factor of one's own water when the laboratory gives both solids and conductivity; afterwards "
        "a meter alone does.",
        call<solidsFactor>)
        .takes(factorTakes)
        .gives("(mg/L)/(uS/cm)", "mg/L for each uS/cm")
        .by("dissolved_solids / conductivity")
        .from(factorSources)
        .shownBy(factorExamples)
        .refusing(factorRefusals)
        .warning(factorCautions);

constinit const puteal_function ppmByMassRow =
    Function(
        "ppm_by_mass", "Parts per million by mass",
        "Mass in a mass. In well water it is the same number as mg/L; in brine, bleach and peroxide it is "
        "not.",
        call<ppmByMass>)
        .takes(ppmTakes)
        .gives("'u*L/kg", "mass in a mass; mg/kg is a part per million")
        .by("concentration / density")
        .from(ppmSources)
        .shownBy(ppmExamples)
        .refusing(ppmRefusals);

} // namespace quality
