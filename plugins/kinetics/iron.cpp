/// Rate, half-life, time to a target and iron left, from one rate. (R1 to R4)
#include "kinetics.h"

namespace kinetics
{

using namespace puteal::sdk;

namespace
{

double judgedRate(double ph, double temperature, double oxygen, int law, Reply &reply)
{
    if (lessThan(ph,
                 6.5)) // [USGS and Stumm and Lee constants: half-lives of many hours below it in cold water]
        reply.caution("air_alone", "below pH 6.5 air alone is not a route: raise the pH or feed an oxidant");
    cautionLaw(temperature, law, reply);
    return rateOf(ph, temperature, oxygen, law);
}

double oxidationRate(double ph, double temperature, double oxygen, int law, Reply &reply)
{
    return judgedRate(ph, temperature, oxygen, law, reply);
}

double halfLife(double ph, double temperature, double oxygen, int law, Reply &reply)
{
    return std::log(2.0) / judgedRate(ph, temperature, oxygen, law, reply);
}

double oxidationTime(double from, double to, double ph, double temperature, double oxygen, int law,
                     Reply &reply)
{
    if (!atMost(to, from))
        return reply.refuse(2, "the target lies above the iron of the water: nothing has to be oxidized");
    cautionFloc(from, reply);
    const double time = std::log(from / to) / judgedRate(ph, temperature, oxygen, law, reply);
    if (lessThan(30, time)) // min [detention behind aeration in state codes]
        reply.caution("detention", "longer than the half hour of detention that state codes ask for behind "
                                   "aeration: raise the pH, use a catalytic bed or feed an oxidant");
    return time;
}

double ironRemaining(double from, double time, double ph, double temperature, double oxygen, int law,
                     Reply &reply)
{
    cautionFloc(from, reply);
    const double left = from * std::exp(-judgedRate(ph, temperature, oxygen, law, reply) * time);
    if (lessThan(0.3, left)) // mg/L [40 CFR 143.3]
        reply.caution("still_stains", "more than 0.3 mg/L stays dissolved: it passes a filter and colors "
                                      "tubs and laundry later; more time, a higher pH or an oxidant");
    return left;
}

constexpr Parameter phParameter = Parameter("ph", "",
                                            "pH measured at the site, and it must hold: see "
                                            "alkalinity_remaining")
                                      .hard(leastPh, mostPh)
                                      .usual(6.5, 8.5);
constexpr const char *sources[] = {"stumm_lee",   "davison_seed", "usgs_example9", "morgan_lahav",
                                   "millero1987", "ion_product",  "apha1985",      nullptr};
constexpr const char *timeSources[] = {"stumm_lee",       "davison_seed", "usgs_example9", "morgan_lahav",
                                       "millero1987",     "ion_product",  "apha1985",      "state_codes",
                                       "iron_speciation", nullptr};
constexpr const char *leftSources[] = {"stumm_lee",       "davison_seed", "usgs_example9", "morgan_lahav",
                                       "millero1987",     "ion_product",  "apha1985",      "cfr143",
                                       "iron_speciation", nullptr};
constexpr puteal_caution cautions[] = {
    caution("air_alone", "pH below 6.5"),
    caution("made_for_25", "a law found at 25 degC used outside 20 to 30 degC"),
};
constexpr puteal_caution timeCautions[] = {
    cautions[0],
    cautions[1],
    caution("detention", "a time above 30 minutes"),
    caution("floc", "iron above 5 mg/L"),
};
constexpr puteal_caution leftCautions[] = {
    cautions[0],
    cautions[1],
    caution("still_stains", "more than 0.3 mg/L left"),
    caution("floc", "iron above 5 mg/L"),
};
constexpr puteal_parameter rateTakes[] = {phParameter, temperatureParameter, oxygenParameter, lawParameter};
constexpr puteal_example rateExamples[] = {
    // k' = 2.843492e-3 1/s from the printed constants
    example("iron_oxidation_rate(7, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "0.1706095 1/min", 3e-3,
            "computed", "usgs_example9"),
    // the share that needs no oxygen shows at pH 5: 2.872590e-7 1/s
    example("iron_oxidation_rate(5, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "1.723554e-5 1/min",
            3e-3, "computed", "usgs_example9"),
    example("iron_oxidation_rate(6, 25 degC, 0.2029 atm_abs, \"Morgan and Lahav\")", "0.00175439 1/min", 3e-3,
            "computed", "morgan_lahav"),
    example("iron_oxidation_rate(7, 25 degC, 0.2029 atm_abs, \"Morgan and Lahav\")", "0.12079 1/min", 3e-3,
            "computed", "morgan_lahav"),
    example("iron_oxidation_rate(8, 25 degC, 0.2029 atm_abs, \"Morgan and Lahav\")", "11.2707 1/min", 3e-3,
            "computed", "morgan_lahav"),
};
constexpr puteal_example rateRefusals[] = {
    refusal("iron_oxidation_rate(4, 10 degC, 0.207 atm_abs)", "`ph` must be at least 5; it is 4"),
};

constexpr puteal_example halfLifeExamples[] = {
    example("iron_half_life(7, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "4.0628 min", 3e-3,
            "computed", "usgs_example9"),
    example("iron_half_life(6, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "406.236 min", 3e-3,
            "computed", "usgs_example9"),
    example("iron_half_life(6.5, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "40.627 min", 3e-3,
            "computed", "usgs_example9"),
    example("iron_half_life(5, 25 degC, 0.213796 atm_abs, \"USGS example 9\")", "670.27 hr", 3e-3, "computed",
            "usgs_example9"),
    example("iron_half_life(6.5, 25 degC, 0.2029 atm_abs, \"Morgan and Lahav\")", "52.04 min", 3e-3,
            "computed", "morgan_lahav"),
    example("iron_half_life(7, 25 degC, 0.2029 atm_abs, \"Morgan and Lahav\")", "5.738 min", 3e-3, "computed",
            "morgan_lahav"),
    example("iron_half_life(7.2, 10 degC, 0.20692 atm_abs)", "19.4254 min", 1e-4, "computed", "ion_product"),
    example("iron_half_life(6.2, 9 degC, 0.207087 atm_abs)", "2321.83 min", 1e-4, "computed", "ion_product"),
    example("iron_half_life(7, 10 degC, 0.20692 atm_abs)", "48.79 min", 2e-4, "computed", "ion_product"),
    example("iron_half_life(7, 10 degC, 0.20692 atm_abs, \"Davison and Seed\")", "195.16 min", 2e-4,
            "computed", "ion_product"),
    example("iron_half_life(7, 10 degC, 0.77704 atm_abs)", "12.994 min", 2e-4, "computed", "ion_product"),
};
constexpr puteal_example halfLifeRefusals[] = {
    refusal("iron_half_life(7, 50 degC, 0.207 atm_abs)",
            "`temperature` must be at most 40 degC; it is 50 degC"),
};

constexpr puteal_parameter timeTakes[] = {
    ironParameter, targetParameter, phParameter, temperatureParameter, oxygenParameter, lawParameter,
};
constexpr puteal_example timeExamples[] = {
    // printed with the example's output: 94.636, 92.759, 90.351, 87.887 umol/kg of dissolved iron at day 1/6,
    // 5/12,
    // 1 and 2, while pH falls 5.3266, 5.1972, 5.0747, 4.9787; here each step at its mean pH
    example("iron_oxidation_time(5.28495 mg/L as Fe, 5.18013 mg/L as Fe, 5.2619, 25 degC, 0.213796 "
            "atm_abs, "
            "\"USGS example 9\")",
            "0.25 day", 0.03, "published", "usgs_example9"),
    example("iron_oxidation_time(5.18013 mg/L as Fe, 5.04565 mg/L as Fe, 5.13595, 25 degC, 0.213796 "
            "atm_abs, "
            "\"USGS example 9\")",
            "0.583333 day", 0.03, "published", "usgs_example9"),
    example("iron_oxidation_time(5.04565 mg/L as Fe, 4.90805 mg/L as Fe, 5.0267, 25 degC, 0.213796 "
            "atm_abs, "
            "\"USGS example 9\")",
            "1 day", 0.03, "published", "usgs_example9"),
    example("iron_oxidation_time(3 mg/L as Fe, 0.3 mg/L as Fe, 7, 10 degC, 0.20692 atm_abs)", "162.09 min",
            2e-4, "computed", "ion_product"),
    example("iron_oxidation_time(2.4 mg/L as Fe, 0.3 mg/L as Fe, 7.2, 10 degC, 0.20692 atm_abs)",
            "58.276 min", 2e-4, "computed", "ion_product"),
    example("iron_oxidation_time(3 mg/L as Fe, 0.3 mg/L as Fe, 7.5, 20 degC, 0.20463 atm_abs)", "3.0097 min",
            2e-4, "computed", "ion_product"),
    example("iron_oxidation_time(6 mg/L as Fe, 0.3 mg/L as Fe, 6.2, 9 degC, 0.207087 atm_abs)", "10034.8 min",
            2e-4, "computed", "ion_product"),
};
constexpr puteal_example timeRefusals[] = {
    refusal("iron_oxidation_time(0.2 mg/L as Fe, 0.3 mg/L as Fe, 7, 10 degC, 0.207 atm_abs)",
            "the target lies above the iron of the water: nothing has to be oxidized"),
};

constexpr puteal_parameter leftTakes[] = {
    ironParameter,
    Parameter("time", "min", "time with air in it, the time that counts of contact_time")
        .hard(0, 1e6)
        .usual(1, 600),
    phParameter,
    temperatureParameter,
    oxygenParameter,
    lawParameter,
};
constexpr puteal_example leftExamples[] = {
    example("iron_remaining(3 mg/L as Fe, 10 min, 7.5, 10 degC, 0.20692 atm_abs)", "0.72475 mg/L as Fe", 3e-4,
            "computed", "ion_product"),
    example("iron_remaining(3 mg/L as Fe, 20 min, 7, 10 degC, 0.20692 atm_abs)", "2.2581 mg/L as Fe", 3e-4,
            "computed", "ion_product"),
    example("iron_remaining(3 mg/L as Fe, 20 min, 7, 20 degC, 0.20463 atm_abs)", "0.6495 mg/L as Fe", 3e-4,
            "computed", "ion_product"),
};
constexpr puteal_example leftRefusals[] = {
    refusal("iron_remaining(3 mg/L as Fe, -5 min, 7, 10 degC, 0.207 atm_abs)",
            "`time` must be at least 0 min; it is -5 min"),
};

} // namespace

constinit const puteal_function oxidationRateRow =
    Function(
        "iron_oxidation_rate", "Rate of iron oxidation by oxygen",
        "Share of the dissolved iron that oxygen oxidizes in a minute. An order of magnitude: hard water, a "
        "catalytic bed and fresh floc are faster, organic matter is slower.",
        call<oxidationRate>)
        .takes(rateTakes)
        .gives("1/min", "share oxidized in a minute, order of magnitude")
        .by("k * [OH]^2 * oxygen_pressure, [OH] = 10^(ph - pKw); k: Stumm and Lee 8.0e13, Davison and Seed "
            "2e13, USGS 7.98e13 L^2/(mol^2 atm min) and 1.746e-7 1/min on top; Millero: 10^(21.56 - 1545/T) "
            "[OH]^2 [O2] 1/min; Morgan and Lahav: 6e-5, 1.7, 4.3e5 1/min for the shares of Fe, FeOH, "
            "Fe(OH)2, "
            "times oxygen_pressure / 0.2029 atm; pKw = 4470.99/T + 0.01706 T - 6.0875 with the first two, of "
            "the "
            "USGS database with the others, T in K")
        .from(sources)
        .shownBy(rateExamples)
        .refusing(rateRefusals)
        .warning(cautions)
        .safely(airSafety);

constinit const puteal_function halfLifeRow =
    Function("iron_half_life", "Half-life of dissolved iron in air",
             "Time in which oxygen oxidizes half of the dissolved iron. One unit of pH makes it a "
             "hundredth, ten degrees colder about five times as long. An order of magnitude.",
             call<halfLife>)
        .takes(rateTakes)
        .gives("min", "half-life, order of magnitude")
        .by("ln(2) / iron_oxidation_rate")
        .from(sources)
        .shownBy(halfLifeExamples)
        .refusing(halfLifeRefusals)
        .warning(cautions)
        .safely(airSafety);

constinit const puteal_function oxidationTimeRow =
    Function("iron_oxidation_time", "Time for iron to oxidize",
             "Time in which oxygen brings dissolved iron down to a target, at a pH that holds. An order of "
             "magnitude.",
             call<oxidationTime>)
        .takes(timeTakes)
        .gives("min", "time to the target, order of magnitude")
        .by("ln(iron / target) / iron_oxidation_rate")
        .from(timeSources)
        .shownBy(timeExamples)
        .refusing(timeRefusals)
        .warning(timeCautions)
        .safely(airSafety);

constinit const puteal_function ironRemainingRow =
    Function(
        "iron_remaining", "Dissolved iron left after a time in air",
        "Dissolved iron that oxygen has not reached after a time, at a pH that holds. An order of magnitude.",
        call<ironRemaining>)
        .takes(leftTakes)
        .gives("mg/L as Fe", "dissolved iron left, order of magnitude")
        .by("iron * exp(-iron_oxidation_rate * time)")
        .from(leftSources)
        .shownBy(leftExamples)
        .refusing(leftRefusals)
        .warning(leftCautions)
        .safely(airSafety);

} // namespace kinetics
