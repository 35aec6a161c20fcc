/// Peak flow with every combination of running fixtures counted, and the chances and flows to count with.
/// (R6)
#include "chances.h"
#include "household.h"

#include <algorithm>
#include <map>

namespace household
{

using namespace puteal::sdk;

namespace
{

constexpr double perGpm = 1e6;                ///< flows are told apart to a millionth of a gpm
using Outcomes = std::map<long long, double>; ///< flow in those steps, its chance

/// Chance that k of n run.
double chanceOf(int k, int n, double p)
{
    if (p <= 0 || p >= 1)
        return k == (p <= 0 ? 0 : n) ? 1.0 : 0.0;
    double logarithm = k * std::log(p) + (n - k) * std::log1p(-p);
    for (int i = 1; i <= k; ++i) // n over k, without a function that writes a global sign
        logarithm += std::log((n - k + i) / static_cast<double>(i));
    return std::exp(logarithm);
}

Outcomes withFixtures(const Outcomes &before, int n, double p, double q)
{
    Outcomes after;
    for (int k = 0; k <= n; ++k) {
        const double chance = chanceOf(k, n, p);
        for (const auto &[flow, share] : before)
            if (chance * share > 0)
                after[flow + std::llround(k * q * perGpm)] += chance * share;
    }
    return after;
}

double peakByEnumeration(const Argument &counts, const Argument &chances, const Argument &flows, double share,
                         bool whileRunning, Reply &reply)
{
    const std::size_t n = counts.count();
    if (n == 0 || chances.count() != n || flows.count() != n)
        return reply.refuse(0, sameLines);
    constexpr std::size_t mostOutcomes = 20000; // keeps one call well under a tenth of a second
    Outcomes outcomes{{0, 1.0}};
    for (std::size_t i = 0; i < n; ++i) {
        constexpr double mostFlow = 1e6; // gpm, far beyond the range of the argument
        const double count = counts.begin()[i], p = chances.begin()[i],
                     q = std::clamp(flows.begin()[i], 0.0, mostFlow);
        if (!std::isfinite(count + p + q))
            return reply.refuse(0, blankLine);
        if (count != std::round(count) || count < 0 || count > 200)
            return reply.refuse(1, "fixtures are counted whole, 200 of a kind at most");
        outcomes = withFixtures(outcomes, static_cast<int>(count), p, q);
        if (outcomes.size() > mostOutcomes)
            return reply.refuse(0, "too many combinations to count out: use peak_flow_by_probability");
    }
    const double idle = whileRunning && outcomes.begin()->first == 0 ? outcomes.begin()->second : 0.0;
    if (idle >= 1)
        return reply.refuse(2, "nothing ever runs: give a chance above 0");
    double covered = -idle;
    for (const auto &[flow, chance] : outcomes) {
        covered += chance;
        if (atMost(share * (1 - idle), covered) && !(whileRunning && flow == 0))
            return static_cast<double>(flow) / perGpm;
    }
    return static_cast<double>(outcomes.rbegin()->first) / perGpm;
}

constexpr const char *fixtureWords[] = {
    "bar sink",       "bathtub",        "bathtub with shower", "bidet",       "clothes washer", "dishwasher",
    "kitchen faucet", "laundry faucet", "lavatory faucet",     "shower head", "toilet",         nullptr};
// Chance of running in the peak hour and flow in gpm, new fixtures [Peak Water Demand Study, recalled].
constexpr double fixtureChances[] = {0.02, 0.01, 0.055, 0.01, 0.055, 0.005, 0.02, 0.02, 0.02, 0.045, 0.01};
constexpr double fixtureFlows[] = {1.5, 5.5, 5.5, 2.0, 3.5, 1.3, 2.2, 2.0, 1.5, 2.0, 3.0};

double fixtureProbability(int fixture, Reply &reply)
{
    reply.caution("recalled", recalledRows);
    return fixtureChances[fixture];
}

double fixtureFlow(int fixture, Reply &reply)
{
    reply.caution("recalled", recalledRows);
    return fixtureFlows[fixture];
}

constexpr const char *countingSources[] = {"peak_demand_study", "definition", nullptr};
constexpr puteal_parameter enumerationTakes[] = {
    countParameter,
    probabilityParameter,
    flowParameter,
    Parameter("share", "", "share of the time that is covered, as 99 %")
        .hard(0.5, 0.9999)
        .usual(0.9, 0.999)
        .otherwise(0.99, "H"),
    Parameter("while_running", "", "only the time counts in which something runs").yesNo().otherwise(0, "A"),
};
constexpr puteal_example enumerationExamples[] = {
    example(HOUSE "peak_flow_by_enumeration(n[:], p[:], q[:])", "5 gpm", 1e-9, "computed", "definition"),
    example(HOUSE "peak_flow_by_enumeration(n[:], p[:], q[:], 99 %, yes)", "5.5 gpm", 1e-9, "computed",
            "definition"),
    example("n: 1 each; p: 0.05; q: 3.5 gpm; peak_flow_by_enumeration(n[:], p[:], q[:])", "3.5 gpm", 1e-9,
            "computed", "definition"),
    example("n: 1 each; p: 0.05; q: 3.5 gpm; peak_flow_by_enumeration(n[:], p[:], q[:], 90 %)", "0 gpm", 1e-9,
            "computed", "definition"),
};
constexpr puteal_example enumerationRefusals[] = {
    refusal("n: 1.5 each; p: 0.05; q: 3.5 gpm; peak_flow_by_enumeration(n[:], p[:], q[:])",
            "fixtures are counted whole, 200 of a kind at most"),
};

constexpr puteal_parameter fixtureTakes[] = {
    Parameter("fixture", "", "fixture of a single house").oneOf(fixtureWords)};
constexpr const char *fixtureSources[] = {"peak_demand_study", "recalled", nullptr};
constexpr puteal_example probabilityExamples[] = {
    example("fixture_probability(\"shower head\")", "0.045", 1e-12, "memory", "recalled"),
    example("fixture_probability(\"clothes washer\")", "0.055", 1e-12, "memory", "recalled"),
};
constexpr puteal_example fixtureFlowExamples[] = {
    example("fixture_flow(\"clothes washer\")", "3.5 gpm", 1e-12, "memory", "recalled"),
    example("fixture_flow(\"toilet\")", "3 gpm", 1e-12, "memory", "recalled"),
};
#define FIXTURE_LIST                                                                                         \
    "\"fountain\" is not in the list: bar sink, bathtub, bathtub with shower, bidet, clothes washer, "       \
    "dishwasher, kitchen faucet, laundry faucet, lavatory faucet, shower head, toilet"
constexpr puteal_example probabilityRefusals[] = {refusal("fixture_probability(\"fountain\")", FIXTURE_LIST)};
constexpr puteal_example fixtureFlowRefusals[] = {refusal("fixture_flow(\"fountain\")", FIXTURE_LIST)};
constexpr puteal_caution fixtureCautions[] = {caution("recalled", "always: the rows are recalled")};

} // namespace

constinit const puteal_function peakByEnumerationRow =
    Function("peak_flow_by_enumeration", "Peak flow by counting out",
             "Flow that is not exceeded in a share of the peak hour, with every combination of running "
             "fixtures counted: no bell curve, so right for a single house.",
             call<peakByEnumeration>)
        .takes(enumerationTakes)
        .gives("gpm", "peak flow")
        .by("least flow whose combinations and all smaller ones cover the share of the time")
        .from(countingSources)
        .shownBy(enumerationExamples)
        .refusing(enumerationRefusals);

constinit const puteal_function fixtureProbabilityRow =
    Function("fixture_probability", "Chance that a fixture runs",
             "Chance that one fixture of a single house runs in the peak hour.", call<fixtureProbability>)
        .takes(fixtureTakes)
        .gives("", "chance that it runs")
        .by("table of the Peak Water Demand Study, recalled")
        .from(fixtureSources)
        .shownBy(probabilityExamples)
        .refusing(probabilityRefusals)
        .warning(fixtureCautions);

constinit const puteal_function fixtureFlowRow =
    Function("fixture_flow", "Flow of a fixture", "Flow of one water-saving fixture while it runs.",
             call<fixtureFlow>)
        .takes(fixtureTakes)
        .gives("gpm", "flow while it runs")
        .by("table of the Peak Water Demand Study, recalled")
        .from(fixtureSources)
        .shownBy(fixtureFlowExamples)
        .refusing(fixtureFlowRefusals)
        .warning(fixtureCautions);

} // namespace household
