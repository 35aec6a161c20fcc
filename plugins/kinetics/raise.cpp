/// The pH that air needs: the time to a target turned around. (R1, R2, R4)
#include "kinetics.h"

namespace kinetics
{

using namespace puteal::sdk;

namespace
{

double oxidationPh(double from, double to, double time, double temperature, double oxygen, int law,
                   Reply &reply)
{
    if (!atMost(to, from))
        return reply.refuse(2, "the target lies above the iron of the water: nothing has to be oxidized");
    const double wanted = std::log(from / to) / time; // 1/min
    if (lessThan(rateOf(mostPh, temperature, oxygen, law), wanted))
        return reply.refuse(3, "not even pH 9.5 does it in this time: give it more time or feed an oxidant");
    cautionLaw(temperature, law, reply);
    cautionFloc(from, reply);
    if (atMost(wanted, rateOf(leastPh, temperature, oxygen, law)))
        return leastPh;
    double low = leastPh, high = mostPh; // every law rises with pH (R3)
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (rateOf(middle, temperature, oxygen, law) < wanted ? low : high) = middle;
    }
    if (lessThan(8.5, high)) // [40 CFR 143.3: pH 6.5 to 8.5]
        reply.caution("scale", "above pH 8.5 hard water leaves scale: feed an oxidant instead");
    return high;
}

constexpr puteal_parameter takes[] = {
    ironParameter,
    targetParameter,
    Parameter("time", "min", "time with air in it, the time that counts of contact_time")
        .hard(1e-3, 1e6)
        .usual(5, 120),
    temperatureParameter,
    oxygenParameter,
    lawParameter,
};
constexpr const char *sources[] = {"inverse",      "stumm_lee",       "davison_seed", "usgs_example9",
                                   "morgan_lahav", "millero1987",     "ion_product",  "apha1985",
                                   "cfr143",       "iron_speciation", nullptr};
constexpr puteal_example examples[] = {
    // the two reference waters: 7.2 in 58.276 min; 6.2 + log10(10034.8 / 60) / 2
    example("iron_oxidation_ph(2.4 mg/L as Fe, 0.3 mg/L as Fe, 58.276 min, 10 degC, 0.20692 atm_abs)", "7.2",
            1e-4, "computed", "inverse"),
    example("iron_oxidation_ph(6 mg/L as Fe, 0.3 mg/L as Fe, 60 min, 9 degC, 0.207087 atm_abs)", "7.3117",
            1e-4, "computed", "inverse"),
    example("iron_oxidation_ph(6 mg/L as Fe, 0.3 mg/L as Fe, 60 min, 9 degC, 0.207087 atm_abs, \"Davison and "
            "Seed\")",
            "7.6127", 1e-4, "computed", "inverse"),
};
constexpr puteal_example refusals[] = {
    refusal("iron_oxidation_ph(0.2 mg/L as Fe, 0.3 mg/L as Fe, 60 min, 10 degC, 0.207 atm_abs)",
            "the target lies above the iron of the water: nothing has to be oxidized"),
    refusal("iron_oxidation_ph(30 mg/L as Fe, 0.3 mg/L as Fe, 0.001 min, 2 degC, 0.207 atm_abs)",
            "not even pH 9.5 does it in this time: give it more time or feed an oxidant"),
};
constexpr puteal_caution cautions[] = {
    caution("made_for_25", "a law found at 25 degC used outside 20 to 30 degC"),
    caution("floc", "iron above 5 mg/L"),
    caution("scale", "a pH above 8.5"),
};

} // namespace

constinit const puteal_function oxidationPhRow =
    Function("iron_oxidation_ph", "pH at which air oxidizes iron in a given time",
             "pH to which a water must be raised so that oxygen brings its iron down to a target in the time "
             "there is. Works back from the same laws; show the slow one as well. An order of magnitude.",
             call<oxidationPh>)
        .takes(takes)
        .gives("", "pH needed, at least 5; from an order of magnitude in time, about half a unit either way")
        .by("the ph at which iron_oxidation_time(iron, target, ph, temperature, oxygen_pressure, law) = time")
        .from(sources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely(airSafety);

} // namespace kinetics
