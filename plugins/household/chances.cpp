/// Peak flow from chances of use by bell curves: of the whole hour, and of the time in which something runs.
/// (R3, R6)
#include "chances.h"
#include "household.h"

namespace household
{

using namespace puteal::sdk;

namespace
{

double peakByProbability(const Argument &counts, const Argument &chances, const Argument &flows, double z,
                         bool atLeastTwo, Reply &reply)
{
    const std::size_t n = counts.count();
    if (n == 0 || chances.count() != n || flows.count() != n)
        return reply.refuse(0, sameLines);
    double average = 0.0, variance = 0.0, idle = 1.0, first = 0.0, second = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double count = counts.begin()[i], p = chances.begin()[i], q = flows.begin()[i];
        if (!std::isfinite(count + p + q))
            return reply.refuse(0, blankLine);
        average += count * p * q;
        variance += count * p * (1 - p) * q * q;
        idle *= std::pow(1 - p, count);
        for (int k = 0; k < 2 && k < count; ++k) { // the two largest single flows
            second = std::fmax(second, std::fmin(first, q));
            first = std::fmax(first, q);
        }
    }
    const double peak = average + z * std::sqrt(variance);
    if (lessThan(0.5, idle)) // half of the time: a habit of reading, no source
        reply.caution("idle", "most of the time nothing runs, and a bell curve is a poor picture of that: "
                              "take the two largest outlets together as the least");
    return atLeastTwo ? std::fmax(peak, first + second) : peak;
}

/// Chance that none of the fixtures runs.
double idleChance(const Argument &counts, const Argument &chances)
{
    double idle = 1.0;
    for (std::size_t i = 0; i < counts.count(); ++i)
        idle *= std::pow(1 - chances.begin()[i], counts.begin()[i]);
    return idle;
}

double idleProbability(const Argument &counts, const Argument &chances, Reply &reply)
{
    if (counts.count() == 0 || chances.count() != counts.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    const double idle = idleChance(counts, chances);
    return std::isfinite(idle) ? idle : reply.refuse(0, blankLine);
}

double peakByTruncated(const Argument &counts, const Argument &chances, const Argument &flows, double z,
                       Reply &reply)
{
    const std::size_t n = counts.count();
    if (n == 0 || chances.count() != n || flows.count() != n)
        return reply.refuse(0, sameLines);
    double average = 0.0, variance = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double count = counts.begin()[i], p = chances.begin()[i], q = flows.begin()[i];
        average += count * p * q;
        variance += count * p * (1 - p) * q * q;
    }
    const double running = 1 - idleChance(counts, chances);
    if (!std::isfinite(average + running))
        return reply.refuse(0, blankLine);
    if (running <= 0)
        return reply.refuse(2, "nothing ever runs: give a chance above 0");
    const double spread = running * variance - (1 - running) * average * average;
    return (average + z * std::sqrt(std::fmax(0.0, spread))) / running;
}

constexpr Parameter deviateParameter =
    Parameter("z", "", "normal deviate of the share of the time covered: 2.326348 for 99 %")
        .hard(0, 5)
        .usual(1.2, 3.1)
        .otherwise(2.326348, "W");
constexpr const char *chanceSources[] = {"peak_demand_study", "definition", nullptr};

constexpr puteal_parameter chanceTakes[] = {
    countParameter,
    probabilityParameter,
    flowParameter,
    deviateParameter,
    Parameter("two_largest", "", "never less than the two largest outlets together")
        .yesNo()
        .otherwise(1, "A"),
};
constexpr puteal_example chanceExamples[] = {
    example(HOUSE "peak_flow_by_probability(n[:], p[:], q[:], 2.326348, no)", "3.20818 gpm", 1e-5, "computed",
            "peak_demand_study"),
    example(HOUSE "peak_flow_by_probability(n[:], p[:], q[:])", "6.5 gpm", 1e-12, "computed", "definition"),
    example("n: 1 each; p: 0.05; q: 3.5 gpm; peak_flow_by_probability(n[:], p[:], q[:], 2.326348, no)",
            "1.94956 gpm", 1e-5, "computed", "peak_demand_study"),
};
constexpr puteal_example chanceRefusals[] = {
    refusal("n: 1 each, 2 each; p: 0.05, 0.1; q: 3.5 gpm, ; peak_flow_by_probability(n[:], p[:], q[:])",
            blankLine),
};
constexpr puteal_caution chanceCautions[] = {caution("idle", "nothing runs more than half of the time")};

constexpr puteal_parameter idleTakes[] = {countParameter, probabilityParameter};
constexpr puteal_example idleExamples[] = {
    example(HOUSE "idle_probability(n[:], p[:])", "0.7793", 1e-4, "computed", "definition"),
    example("n: 1 each; p: 0.05; idle_probability(n[:], p[:])", "0.95", 1e-12, "computed", "definition"),
};
constexpr puteal_example idleRefusals[] = {
    refusal("n: 1 each, 2 each; p: 0.05, ; idle_probability(n[:], p[:])", blankLine),
};

constexpr puteal_parameter truncatedTakes[] = {countParameter, probabilityParameter, flowParameter,
                                               deviateParameter};
constexpr puteal_example truncatedExamples[] = {
    example(HOUSE "peak_flow_by_truncated_probability(n[:], p[:], q[:])", "4.954325 gpm", 1e-6, "computed",
            "definition"),
    // one fixture that runs gives its own flow
    example("n: 1 each; p: 0.05; q: 3.5 gpm; peak_flow_by_truncated_probability(n[:], p[:], q[:])", "3.5 gpm",
            1e-6, "computed", "definition"),
};
constexpr puteal_example truncatedRefusals[] = {
    refusal("n: 1 each; p: 0; q: 3.5 gpm; peak_flow_by_truncated_probability(n[:], p[:], q[:])",
            "nothing ever runs: give a chance above 0"),
};

} // namespace

constinit const puteal_function peakByProbabilityRow =
    Function("peak_flow_by_probability", "Peak flow by chances of use",
             "Flow that is not exceeded in a share of the peak hour, by the normal approximation. For one "
             "house the two largest outlets together usually "
             "decide.",
             call<peakByProbability>)
        .takes(chanceTakes)
        .gives("gpm", "peak flow")
        .by("sum(n p q) + z sqrt(sum(n p (1 - p) q^2)), at least the two largest flows together")
        .from(chanceSources)
        .shownBy(chanceExamples)
        .refusing(chanceRefusals)
        .warning(chanceCautions);

constinit const puteal_function idleProbabilityRow =
    Function("idle_probability", "Chance that nothing runs",
             "Share of the peak hour in which no fixture of the house runs. Above one half a bell curve says "
             "little.",
             call<idleProbability>)
        .takes(idleTakes)
        .gives("", "share of the peak hour")
        .by("product of (1 - p)^n")
        .from(chanceSources)
        .shownBy(idleExamples)
        .refusing(idleRefusals);

constinit const puteal_function peakByTruncatedRow =
    Function("peak_flow_by_truncated_probability", "Peak flow while something runs",
             "Flow that is not exceeded in a share of the time in which something runs, by the normal "
             "approximation with the idle time left out.",
             call<peakByTruncated>)
        .takes(truncatedTakes)
        .gives("gpm", "peak flow")
        .by("(m + z sqrt((1 - p0) v - p0 m^2)) / (1 - p0), m = sum(n p q), v = sum(n p (1 - p) q^2), p0 = "
            "idle_probability")
        .from(chanceSources)
        .shownBy(truncatedExamples)
        .refusing(truncatedRefusals);

} // namespace household
