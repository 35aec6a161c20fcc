/// How fast stored bleach and peroxide lose strength, and when a solution is too old. (R6)
#include "dosing.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

double bleachDecayRate(double rate, double knownAt, double temperature, double factor)
{
    return rate * std::pow(factor, (temperature - knownAt) / 10.0); // the factor is for 10 degC
}

double bleachLossRate(double start, double left, double time, Reply &reply)
{
    if (!atMost(left, start))
        return reply.refuse(2, "a solution does not grow stronger: give the strength at the later test");
    return (1.0 / left - 1.0 / start) / time;
}

double bleachAgeLimit(double start, double rate, double lost)
{
    return (1.0 / (1.0 - lost) - 1.0) / (rate * start);
}

double peroxideResidual(double start, double loss, double each, double time, Reply &reply)
{
    const double left = start * std::pow(1.0 - loss, time / each);
    if (lessThan(left, 0.8 * start)) // refresh when a fifth is gone [common practice, no source]
        reply.caution("aged",
                      "a fifth and more of the strength is gone: mix fresh, or set the feeder higher");
    return left;
}

constexpr Parameter rateParameter =
    Parameter("rate", "1/day",
              "second-order loss, a day and a unit of strength, see bleach_decay_rate_from_tests")
        .hard(1e-6, 100)
        .usual(0.005, 0.5);
constexpr Parameter startParameter =
    Parameter("start", "", "strength when fresh, as 12.5 %").hard(0.0001, 0.25).usual(0.03, 0.16);

constexpr puteal_parameter decayTakes[] = {
    rateParameter,
    Parameter("known_at", "degC", "temperature the rate was found at").hard(-10, 50).usual(5, 40),
    Parameter("temperature", "degC", "temperature of the store").hard(-10, 60).usual(0, 40),
    Parameter("factor", "",
              "how many times faster for 10 degC more: 2 to 4 by a trade body, 3.5 by other pages")
        .hard(1, 10)
        .usual(2, 4)
        .otherwise(3, "A"),
};
constexpr const char *decaySources[] = {"bleach_storage", "bleach_warmth", nullptr};
constexpr puteal_example decayExamples[] = {
    example("bleach_decay_rate_at(0.02 1/day, 20 degC, 30 degC, 3.5)", "0.07 1/day", 1e-9, "computed",
            "bleach_warmth"),
    example("bleach_decay_rate_at(0.06 1/day, 20 degC, 10 degC)", "0.02 1/day", 1e-9, "computed",
            "bleach_storage"),
    example("bleach_decay_rate_at(0.02 1/day, 68 degF, 104 degF, 2)", "0.08 1/day", 1e-9, "computed",
            "bleach_storage"),
};
constexpr puteal_example decayRefusals[] = {
    refusal("bleach_decay_rate_at(0.02 1/day, 20 degC, 30 degC, 0.5)",
            "`factor` must be at least 1; it is 0.5"),
};

constexpr puteal_parameter lossTakes[] = {
    startParameter,
    Parameter("left", "", "strength at the later test").hard(0.0001, 0.25).usual(0.01, 0.16),
    Parameter("time", "day", "days between the two tests").hard(0.5, 3650).usual(7, 365),
};
constexpr const char *lossSources[] = {"bleach_storage", "geometry", nullptr};
constexpr puteal_example lossExamples[] = {
    example("bleach_decay_rate_from_tests(12.5 %, 10 %, 30 day)", "0.06666667 1/day", 1e-7, "computed",
            "bleach_storage"),
    example("bleach_decay_rate_from_tests(12.5 %, 7.142857 %, 90 day)", "0.06666667 1/day", 1e-6, "computed",
            "bleach_storage"),
};
constexpr puteal_example lossRefusals[] = {
    refusal("bleach_decay_rate_from_tests(10 %, 12.5 %, 30 day)",
            "a solution does not grow stronger: give the strength at the later test"),
};

constexpr puteal_parameter limitTakes[] = {
    startParameter,
    rateParameter,
    Parameter("lost", "", "share of the strength that may be lost before the solution is renewed")
        .hard(0.01, 0.95)
        .usual(0.1, 0.3)
        .otherwise(0.2, "T"),
};
constexpr const char *limitSources[] = {"bleach_storage", "practice", nullptr};
constexpr puteal_example limitExamples[] = {
    example("bleach_age_limit(12.5 %, 0.06666667 1/day)", "30 day", 1e-6, "computed", "bleach_storage"),
    example("bleach_age_limit(5.25 %, 0.06666667 1/day)", "71.4286 day", 1e-5, "computed", "bleach_storage"),
    example("bleach_age_limit(12.5 %, bleach_decay_rate_at(0.06666667 1/day, 20 degC, 30 degC))", "10 day",
            1e-6, "computed", "bleach_storage"),
};
constexpr puteal_example limitRefusals[] = {
    refusal("bleach_age_limit(12.5 %, 0 1/day)", "`rate` must be at least 1e-6 1/day; it is 0 1/day"),
};

constexpr puteal_parameter peroxideTakes[] = {
    Parameter("start", "", "strength when fresh, as 35 %").hard(0.0001, 0.7).usual(0.01, 0.5),
    Parameter("loss", "",
              "share lost in each period: 0.5 % a year when clean and strong; traces of iron, manganese and "
              "copper in a "
              "diluted tank speed it up, measure it")
        .hard(0, 0.9)
        .usual(0.001, 0.05),
    Parameter("each", "day", "the period, as 1 yr or 1 month").hard(1, 366),
    Parameter("time", "day", "age of the solution").hard(0, 7300).usual(0, 1100),
};
constexpr const char *peroxideSources[] = {"peroxide_storage", "practice", nullptr};
constexpr puteal_example peroxideExamples[] = {
    example("peroxide_strength_left(35 %, 0.5 %, 1 yr, 3 yr)", "34.4776 %", 1e-5, "computed",
            "peroxide_storage"),
    example("peroxide_strength_left(7 %, 1 %, 1 month, 12 month)", "6.20469 %", 1e-5, "computed", "practice"),
};
constexpr puteal_example peroxideRefusals[] = {
    refusal("peroxide_strength_left(0, 1 %, 1 yr, 3 yr)", "`start` must be at least 0.0001; it is 0"),
};
constexpr puteal_caution peroxideCautions[] = {caution("aged", "less than 80 % of the strength is left")};

} // namespace

constinit const puteal_function bleachDecayRateRow =
    Function("bleach_decay_rate_at", "Decay rate of bleach at a temperature",
             "Loss rate of stored bleach at another temperature than the one it was found at. A cool dark "
             "place pays.",
             call<bleachDecayRate>)
        .takes(decayTakes)
        .gives("1/day", "second-order loss, for bleach_strength_left")
        .by("rate * factor^((temperature - known_at) / 10 degC)")
        .from(decaySources)
        .shownBy(decayExamples)
        .refusing(decayRefusals)
        .safely(bleachSafety);

constinit const puteal_function bleachLossRateRow =
    Function("bleach_decay_rate_from_tests", "Decay rate of bleach from two tests",
             "Loss rate of stored bleach from its strength at two times.", call<bleachLossRate>)
        .takes(lossTakes)
        .gives("1/day", "second-order loss, for bleach_strength_left")
        .by("(1 / left - 1 / start) / time")
        .from(lossSources)
        .shownBy(lossExamples)
        .refusing(lossRefusals)
        .safely(bleachSafety);

constinit const puteal_function bleachAgeLimitRow =
    Function("bleach_age_limit", "Age at which bleach is renewed",
             "Days until a bleach has lost a share of its strength. An older solution is renewed, or the "
             "feeder set by "
             "what is left of it.",
             call<bleachAgeLimit>)
        .takes(limitTakes)
        .gives("day", "age at which the share is lost")
        .by("(1 / (1 - lost) - 1) / (rate * start)")
        .from(limitSources)
        .shownBy(limitExamples)
        .refusing(limitRefusals)
        .safely(bleachSafety);

constinit const puteal_function peroxideResidualRow =
    Function("peroxide_strength_left", "Strength left in stored peroxide",
             "Strength of peroxide after it stood, from a yearly or a monthly loss.", call<peroxideResidual>)
        .takes(peroxideTakes)
        .gives("", "strength left")
        .by("start * (1 - loss)^(time / each)")
        .from(peroxideSources)
        .shownBy(peroxideExamples)
        .refusing(peroxideRefusals)
        .warning(peroxideCautions)
        .safely(peroxideSafety);

} // namespace dosing
