/// Hardness from calcium and magnesium, its class, and dissolved solids from conductivity. (R1, R2)
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

double totalHardness(double calcium, double magnesium)
{
    return 2.497 * calcium +
           4.118 * magnesium; // Standard Methods 2340 B [section recalled; IUPAC 2021 within 0.02 %]
}

constexpr const char *classWords[] = {"soft", "slightly hard", "moderately hard",
                                      "hard", "very hard",     nullptr};
enum Class : int { soft, slightlyHard, moderatelyHard, hard, veryHard };
constexpr const char *tableWords[] = {"USGS", "trade scale", "handbook scale", nullptr};
enum Table : int { usgs, tradeScale, handbookScale };

int hardnessClass(double gpg, int table)
{
    if (table == tradeScale) { // upper ends in gpg [trade-association scale beside the USGS classes]
        constexpr double ends[] = {1.0, 3.5, 7.0, 10.5};
        int found = soft;
        // below 1 gpg is soft, 1 is already slightly hard; the other ends still belong to their class
        for (const int i : {0, 1, 2, 3})
            found += i == 0 ? (lessThan(gpg, ends[0]) ? 0 : 1) : (atMost(gpg, ends[i]) ? 0 : 1);
        return found;
    }
    const double mgPerLiter = gpg * measure::mgPerLiterPerGpg;
    if (table == handbookScale)
        return atMost(mgPerLiter, 50)    ? soft           // mg/L as CaCO3 [handbook scale]
               : atMost(mgPerLiter, 150) ? moderatelyHard // [handbook scale]
               : atMost(mgPerLiter, 300) ? hard           // [handbook scale]
                                         : veryHard;
    return atMost(mgPerLiter, 60)    ? soft           // mg/L as CaCO3 [USGS hardness classes]
           : atMost(mgPerLiter, 120) ? moderatelyHard // [USGS hardness classes]
           : atMost(mgPerLiter, 180) ? hard           // [USGS hardness classes]
                                     : veryHard;
}

double dissolvedSolids(double conductivity, double factor)
{
    return conductivity * factor;
}

constexpr puteal_parameter totalTakes[] = {
    Parameter("calcium", "mg/L as Ca", "calcium of the laboratory sheet").hard(0, 10000).usual(0, 300),
    Parameter("magnesium", "mg/L as Mg", "magnesium of the laboratory sheet").hard(0, 10000).usual(0, 100),
};
constexpr const char *totalSources[] = {"ohio_epa", "standard_methods", "iupac2021", nullptr};
constexpr puteal_example totalExamples[] = {
    example("total_hardness(187 mg/L as Ca, 53 mg/L as Mg)", "685 mg/L as CaCO3", 2e-3, "published",
            "ohio_epa"),
    example("total_hardness(116 mg/L as Ca, 35 mg/L as Mg)", "434 mg/L as CaCO3", 2e-3, "published",
            "ohio_epa"),
    example("total_hardness(147 mg/L as Ca, 47 mg/L as Mg)", "561 mg/L as CaCO3", 2e-3, "published",
            "ohio_epa"),
    example("total_hardness(77 mg/L as Ca, 18 mg/L as Mg)", "266 mg/L as CaCO3", 2e-3, "published",
            "ohio_epa"),
    example("total_hardness(93 mg/L as Ca, 34 mg/L as Mg)", "372 mg/L as CaCO3", 2e-3, "published",
            "ohio_epa"),
    example("total_hardness(52.1 mg/L as Ca, 14.8 mg/L as Mg)", "11.16015 gpg", 1e-6, "computed",
            "standard_methods"),
    example("total_hardness(80 mg/L as Ca, 30 mg/L as Mg)", "323.3 mg/L as CaCO3", 1e-9, "computed",
            "standard_methods"),
};
constexpr puteal_example totalRefusals[] = {
    refusal("total_hardness(-80 mg/L as Ca, 30 mg/L as Mg)",
            "`calcium` must be at least 0 mg/L as Ca; it is -80 mg/L as Ca"),
};

constexpr puteal_parameter classTakes[] = {
    Parameter("hardness", "gpg", "total hardness").hard(0, 1000).usual(0, 60),
    Parameter("table", "",
              "whose classes: USGS (60, 120, 180 mg/L), the trade scale printed beside it (1, 3.5, 7, "
              "10.5 gpg), or a handbook scale (50, 150, 300 mg/L)")
        .oneOf(tableWords)
        .otherwise(usgs, "S"),
};
constexpr const char *classSources[] = {"usgs_classes", "trade_classes", "handbook_classes", nullptr};
constexpr puteal_example classExamples[] = {
    example("hardness_class(40 mg/L as CaCO3)", "soft", 0, "published", "usgs_classes"),
    example("hardness_class(180.5 mg/L as CaCO3)", "very hard", 0, "published", "usgs_classes"),
    example("hardness_class(100 mg/L as CaCO3)", "moderately hard", 0, "published", "usgs_classes"),
    example("hardness_class(40 mg/L as CaCO3, \"trade scale\")", "slightly hard", 0, "published",
            "trade_classes"),
    example("hardness_class(150 mg/L as CaCO3)", "hard", 0, "published", "usgs_classes"),
    example("hardness_class(50 mg/L as CaCO3, \"handbook scale\")", "soft", 0, "published",
            "handbook_classes"),
    example("hardness_class(150 mg/L as CaCO3, \"handbook scale\")", "moderately hard", 0, "published",
            "handbook_classes"),
    example("hardness_class(300 mg/L as CaCO3, \"handbook scale\")", "hard", 0, "published",
            "handbook_classes"),
};
constexpr puteal_example classRefusals[] = {
    refusal("hardness_class(-1 gpg)", "`hardness` must be at least 0 gpg; it is -1 gpg"),
};

constexpr puteal_parameter solidsTakes[] = {
    Parameter("conductivity", "uS/cm", "conductivity at 25 degC").hard(0, 100000).usual(20, 5000),
    Parameter("factor", "(mg/L)/(uS/cm)", "mg/L for each uS/cm; field pens assume 0.5 or 0.7")
        .hard(0.4, 1)
        .usual(0.55, 0.8)
        .otherwise(0.64, "H"),
};
constexpr const char *solidsSources[] = {"conductivity_pages", nullptr};
constexpr puteal_example solidsExamples[] = {
    example("dissolved_solids_estimate(300 uS/cm)", "192 mg/L as TDS", 1e-9, "published",
            "conductivity_pages"),
    example("dissolved_solids_estimate(200 uS/cm, 0.6 (mg/L)/(uS/cm))", "120 mg/L as TDS", 1e-9, "published",
            "conductivity_pages"),
};
constexpr puteal_example solidsRefusals[] = {
    refusal("dissolved_solids_estimate(-300 uS/cm)",
            "`conductivity` must be at least 0 uS/cm; it is -300 uS/cm"),
};

} // namespace

constinit const puteal_function totalHardnessRow =
    Function("total_hardness", "Total hardness", "Hardness from calcium and magnesium.", call<totalHardness>)
        .takes(totalTakes)
        .gives("mg/L as CaCO3", "total hardness")
        .by("2.497 * calcium + 4.118 * magnesium")
        .from(totalSources)
        .shownBy(totalExamples)
        .refusing(totalRefusals);

constinit const puteal_function hardnessClassRow =
    Function("hardness_class", "Hardness class", "Word for a hardness. Scales differ, so the table is named.",
             call<hardnessClass>)
        .takes(classTakes)
        .givesOneOf(classWords, "class of the hardness")
        .by("USGS, mg/L as CaCO3: soft to 60, moderately hard to 120, hard to 180; trade scale, gpg: soft "
            "below 1, slightly "
            "hard to 3.5, moderately hard to 7, hard to 10.5; handbook scale, mg/L: soft to 50, moderately "
            "hard to "
            "150, hard to 300; very hard above")
        .from(classSources)
        .shownBy(classExamples)
        .refusing(classRefusals);

constinit const puteal_function dissolvedSolidsRow =
    Function("dissolved_solids_estimate", "Dissolved solids from conductivity",
             "Estimate of dissolved solids. A laboratory value is better; with both, compare the factor.",
             call<dissolvedSolids>)
        .takes(solidsTakes)
        .gives("mg/L as TDS", "dissolved solids")
        .by("factor * conductivity")
        .from(solidsSources)
        .shownBy(solidsExamples)
        .refusing(solidsRefusals);

} // namespace quality
