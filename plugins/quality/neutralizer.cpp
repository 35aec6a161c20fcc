/// What takes carbon dioxide out of acid water: how much, of what, and what it adds. (R4)
#include "neutralizer.h"

#include "carbonate.h"
#include "quality.h"

namespace quality
{

using namespace puteal::sdk;

namespace
{

constexpr Parameter neutralizerParameter =
    Parameter("neutralizer", "", "calcite bed, magnesia (in a blend), or soda ash fed as a solution")
        .oneOf(neutralizerWords, neutralizerSubstances);

// --------------------------------------------------------------------------------- neutralizer_dose

double neutralizerDose(int neutralizer, double removed)
{
    return removed * dosePerCarbonDioxide(Neutralizer{neutralizer});
}

constexpr puteal_parameter doseTakes[] = {neutralizerParameter, removedParameter};
constexpr const char *sources[] = {"iupac2021", "ph_adjustment", nullptr};
constexpr puteal_example doseExamples[] = {
    example("neutralizer_dose(\"calcite\", 40 mg/L as CO2)", "90.969 mg/L as CaCO3", 1e-4, "computed",
            "iupac2021"),
    example("neutralizer_dose(\"magnesia\", 40 mg/L as CO2)", "18.3163 mg/L as MgO", 1e-4, "computed",
            "iupac2021"),
    example("neutralizer_dose(\"soda ash\", 40 mg/L as CO2)", "96.333 mg/L as Na2CO3", 1e-4, "computed",
            "iupac2021"),
};
constexpr puteal_example doseRefusals[] = {
    refusal("neutralizer_dose(\"calcite\", -40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};

// --------------------------------------------------------------------------- neutralizer_alkalinity_added

double neutralizerAlkalinity(int neutralizer, double removed)
{
    return removed * alkalinityPerCarbonDioxide(Neutralizer{neutralizer});
}

constexpr puteal_example alkalinityExamples[] = {
    example("neutralizer_alkalinity_added(\"calcite\", 40 mg/L as CO2)", "90.969 mg/L as CaCO3", 1e-4,
            "computed", "iupac2021"),
    example("neutralizer_alkalinity_added(\"magnesia\", 40 mg/L as CO2)", "45.4844 mg/L as CaCO3", 1e-4,
            "computed", "iupac2021"),
    example("neutralizer_alkalinity_added(\"soda ash\", 40 mg/L as CO2)", "90.969 mg/L as CaCO3", 1e-4,
            "computed", "iupac2021"),
};
constexpr puteal_example alkalinityRefusals[] = {
    refusal("neutralizer_alkalinity_added(\"calcite\", -40 mg/L as CO2)",
            "`carbon_dioxide_removed` must be at least 0 mg/L as CO2; it is -40 mg/L as CO2"),
};

// ------------------------------------------------------------- carbon_dioxide_to_neutralize, neutralized_ph

void cautionCold(double temperature, int form, Reply &reply)
{
    if (form != thermodynamic && lessThan(temperature, coldFrom))
        reply.caution("cold",
                      "the short forms hold at 25 degC: cold water holds more, 28 % at 10 degC: take the "
                      "thermodynamic form");
}

double toNeutralize(double alkalinity, double ph, double target, int neutralizer, double temperature,
                    int form, Reply &reply)
{
    if (atMost(target, ph))
        return reply.refuse(3, "the pH wanted is not above the pH there is: nothing to neutralize");
    if (neutralizer == 0 && lessThan(7.5, target))
        reply.caution("out_of_reach",
                      "a calcite bed stops near pH 7 to 7.5 by itself: for more feed soda ash");
    cautionCold(temperature, form, reply);
    // what is taken away raises the alkalinity too, and the alkalinity holds more carbon dioxide
    const double factor = carbonDioxideFactor(temperature, form);
    const double before = factor * std::pow(10.0, -ph) * alkalinity;
    const double perAlkalinity = factor * std::pow(10.0, -target);
    return (before - perAlkalinity * alkalinity) /
           (1 + perAlkalinity * alkalinityPerCarbonDioxide(Neutralizer{neutralizer}));
}

constexpr puteal_parameter toTakes[] = {
    alkalinityParameter,
    Parameter("ph", "", "pH measured at the site").hard(4, 8.3).usual(5, 7),
    Parameter("target_ph", "", "pH wanted").hard(4, 8.3).usual(6.8, 7.8).otherwise(7.2, "A"),
    Parameter("neutralizer", "", "calcite bed, magnesia (in a blend), or soda ash fed as a solution")
        .oneOf(neutralizerWords)
        .otherwise(0, "A"),
    carbonDioxideTemperature,
    carbonDioxideForm,
};
constexpr const char *toSources[] = {"standard_methods", "usgs_methods", "recalled", "iupac2021", nullptr};
constexpr puteal_example toExamples[] = {
    example("carbon_dioxide_to_neutralize(100 mg/L as CaCO3, 6.5, 7.2)", "39.3371624 mg/L as CO2", 1e-6,
            "computed", "standard_methods"),
    example("carbon_dioxide_to_neutralize(100 mg/L as CaCO3, 6.5, 7.2, \"calcite\", 10 degC, "
            "\"thermodynamic\")",
            "47.40991 mg/L as CO2", 1e-6, "computed", "recalled"),
    example("carbon_dioxide_to_neutralize(40 mg/L as CaCO3, 6, 7, \"soda ash\")", "49.4898651 mg/L as CO2",
            1e-6, "computed", "standard_methods"),
};
constexpr puteal_example toRefusals[] = {
    refusal("carbon_dioxide_to_neutralize(100 mg/L as CaCO3, 7.4, 7.2)",
            "the pH wanted is not above the pH there is: nothing to neutralize"),
};
constexpr puteal_caution toCautions[] = {
    caution("out_of_reach", "calcite and a pH above 7.5 wanted"),
    caution("cold", "a short form below 15 degC"),
};
constexpr puteal_caution phCautions[] = {caution("cold", "a short form below 15 degC")};

double neutralizedPh(double alkalinity, double ph, double removed, int neutralizer, double temperature,
                     int form, Reply &reply)
{
    if (atMost(alkalinity, 0))
        return reply.refuse(1, "without alkalinity the short form gives no pH: have alkalinity tested");
    cautionCold(temperature, form, reply);
    const double factor = carbonDioxideFactor(temperature, form);
    const double left = factor * std::pow(10.0, -ph) * alkalinity - removed;
    if (atMost(left, 0))
        return reply.refuse(3, "there is less free carbon dioxide than is to be removed");
    const double after = alkalinity + removed * alkalinityPerCarbonDioxide(Neutralizer{neutralizer});
    const double found = std::log10(factor * after / left); // the form turned round
    if (lessThan(8.3, found))
        return reply.refuse(3, "that leaves the range of the forms, pH 8.3: remove less");
    return found;
}

constexpr puteal_parameter phTakes[] = {
    alkalinityParameter,
    Parameter("ph", "", "pH measured at the site").hard(4, 8.3).usual(5, 7),
    removedParameter,
    Parameter("neutralizer", "", "calcite bed, magnesia (in a blend), or soda ash fed as a solution")
        .oneOf(neutralizerWords)
        .otherwise(0, "A"),
    carbonDioxideTemperature,
    carbonDioxideForm,
};
constexpr puteal_example phExamples[] = {
    example("neutralized_ph(100 mg/L as CaCO3, 6.5, 39.3371624 mg/L as CO2)", "7.2", 1e-6, "computed",
            "standard_methods"),
    // 81.0 mg/L of carbon dioxide there, not 63.2
    example("neutralized_ph(100 mg/L as CaCO3, 6.5, 53.2456 mg/L as CO2, \"calcite\", 10 degC, "
            "\"thermodynamic\")",
            "7.309778", 1e-6, "computed", "recalled"),
    // from 63.2456 to 10 mg/L of carbon dioxide, alkalinity 221.09 mg/L
    example("neutralized_ph(100 mg/L as CaCO3, 6.5, 53.2456 mg/L as CO2)", "7.64561", 1e-5, "computed",
            "standard_methods"),
};
constexpr puteal_example phRefusals[] = {
    refusal("neutralized_ph(100 mg/L as CaCO3, 6.5, 70 mg/L as CO2)",
            "there is less free carbon dioxide than is to be removed"),
};

// ------------------------------------------------------------------------------------- neutralizer_medium

constexpr const char *mediumWords[] = {"none", "calcite", "magnesia blend", "soda ash", nullptr};
enum Medium : int { none, calciteBed, magnesiaBlend, sodaAshFeed };

constexpr double calciteFromPh = 6.0; // calcium carbonate above, magnesia type below [pH adjustment text]
constexpr double neutralFromPh = 7.0; // copper pipes want no less [common practice, no source]
constexpr double blindingIron = 2.0;  // mg/L, more cements a calcite bed [common practice, no source]

int neutralizerMedium(double ph, double iron, Reply &reply)
{
    const std::string water = "pH " + figures(ph) + ", iron " + figures(iron) + " mg/L";
    if (atMost(neutralFromPh, ph)) {
        reply.reason(water + ": from pH 7 nothing need be neutralized");
        return none;
    }
    if (lessThan(blindingIron, iron)) {
        reply.reason(water + ": above 2 mg/L iron cements a calcite bed, so feed soda ash");
        return sodaAshFeed;
    }
    if (lessThan(1, iron))
        reply.caution("iron", "between 1 and 2 mg/L of iron a calcite bed needs a strong backwash");
    reply.reason(water + (atMost(calciteFromPh, ph) ? ": calcite from pH 6"
                                                    : ": below pH 6 calcite alone is too slow"));
    return atMost(calciteFromPh, ph) ? calciteBed : magnesiaBlend;
}

constexpr puteal_parameter mediumTakes[] = {
    phParameter,
    Parameter("iron", "mg/L as Fe", "iron that reaches the neutralizer").hard(0, 1000).usual(0, 20),
};
constexpr const char *mediumSources[] = {"ph_adjustment", "practice", nullptr};
constexpr puteal_example mediumExamples[] = {
    example("neutralizer_medium(6.5, 0.2 mg/L as Fe)", "calcite", 0, "published", "ph_adjustment"),
    example("neutralizer_medium(5.5, 0.2 mg/L as Fe)", "magnesia blend", 0, "published", "ph_adjustment"),
    example("neutralizer_medium(6.5, 6 mg/L as Fe)", "soda ash", 0, "common practice", "practice"),
    example("neutralizer_medium(7.2, 6 mg/L as Fe)", "none", 0, "common practice", "practice"),
};
constexpr puteal_example mediumRefusals[] = {
    refusal("neutralizer_medium(65, 0 mg/L as Fe)", "`ph` must be at most 14; it is 65"),
};
constexpr puteal_caution mediumCautions[] = {caution("iron", "1 to 2 mg/L of iron on a calcite bed")};

} // namespace

constinit const puteal_function neutralizerDoseRow =
    Function("neutralizer_dose", "Neutralizer used up",
             "Calcite, magnesia or soda ash that takes an amount of free carbon dioxide away. For soda ash "
             "soda_ash_dose is the same relation.",
             call<neutralizerDose>)
        .takes(doseTakes)
        .gives("mg/L as 'neutralizer", "neutralizer used up")
        .by("carbon_dioxide_removed * (calcite 2.27422, magnesia 0.45791, soda ash 2.40832)")
        .from(sources)
        .shownBy(doseExamples)
        .refusing(doseRefusals)
        .safely("Soda ash and magnesia irritate eyes and lungs: goggles and a dust mask.");

constinit const puteal_function neutralizerAlkalinityRow =
    Function("neutralizer_alkalinity_added", "Alkalinity a neutralizer adds",
             "Alkalinity added while carbon dioxide is taken away. Calcite and magnesia add as much hardness "
             "(for calcite calcite_hardness_added is the same relation), soda ash adds sodium instead.",
             call<neutralizerAlkalinity>)
        .takes(doseTakes)
        .gives("mg/L as CaCO3", "alkalinity added")
        .by("carbon_dioxide_removed * (calcite and soda ash 2.27422, magnesia 1.13711)")
        .from(sources)
        .shownBy(alkalinityExamples)
        .refusing(alkalinityRefusals);

constinit const puteal_function toNeutralizeRow =
    Function("carbon_dioxide_to_neutralize", "Carbon dioxide to neutralize",
             "Free carbon dioxide to take away for a pH wanted, with the alkalinity counted that the "
             "neutralizer adds. The forms are those of free_carbon_dioxide: for cold water take the "
             "thermodynamic one.",
             call<toNeutralize>)
        .takes(toTakes)
        .gives("mg/L as CO2", "carbon dioxide to be taken away")
        .by("g * alkalinity * (10^-ph - 10^-target_ph) / (1 + g * 10^-target_ph * f); f = 2.27422 "
            "(calcite, soda ash) or 1.13711 (magnesia); g = 2e6 in the short form")
        .from(toSources)
        .shownBy(toExamples)
        .refusing(toRefusals)
        .warning(toCautions);

constinit const puteal_function neutralizedPhRow =
    Function("neutralized_ph", "pH behind a neutralizer",
             "The pH when an amount of free carbon dioxide has been taken away; a form of "
             "free_carbon_dioxide turned "
             "round.",
             call<neutralizedPh>)
        .takes(phTakes)
        .gives("", "pH behind the neutralizer")
        .by("log10(g * (alkalinity + f * removed) / (g * 10^-ph * alkalinity - removed)); f = 2.27422 "
            "(calcite, soda ash) or 1.13711 (magnesia); g = 2e6 in the short form")
        .from(toSources)
        .shownBy(phExamples)
        .refusing(phRefusals)
        .warning(phCautions);

constinit const puteal_function neutralizerMediumRow =
    Function(
        "neutralizer_medium", "Which neutralizer",
        "Which neutralizer an acid water asks for: calcite from pH 6, a blend with magnesia below, a feed "
        "of soda ash where iron would cement a bed.",
        call<neutralizerMedium>)
        .takes(mediumTakes)
        .givesOneOf(mediumWords, "neutralizer, with the reason")
        .by("pH from 7: none; iron above 2 mg/L: soda ash; pH from 6: calcite; below: magnesia blend")
        .from(mediumSources)
        .shownBy(mediumExamples)
        .refusing(mediumRefusals)
        .warning(mediumCautions)
        .safely("Acid water may carry lead and copper: test the first draw and ask the health department.");

} // namespace quality
