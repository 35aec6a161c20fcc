/// Peak flow of a house or two by the demand allowances of a public teaching text. (R3)
#include "household.h"

#include <algorithm>

namespace household
{

using namespace puteal::sdk;

namespace
{

constexpr const char *useWords[] = {"shower",     "lavatory",     "toilet with tank", "kitchen sink",
                                    "dishwasher", "laundry sink", "clothes washer",   "bathtub with shower",
                                    nullptr};
// gpm [EPA, Private Water Systems; the bathtub with shower is what its example's total of 7.25 leaves]
constexpr double allowances[] = {1.0, 0.5, 0.75, 1.0, 0.5, 1.5, 2.0, 2.0};

double demandAllowance(int use)
{
    return allowances[use];
}

double peakByAllowance(const Argument &counts, const Argument &flows, double houses, double largest,
                       Reply &reply)
{
    if (counts.count() == 0 || counts.count() != flows.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    if (houses != std::round(houses))
        return reply.refuse(3, "houses come whole: list the fixtures of all of them together");
    double sum = 0.0;
    for (std::size_t i = 0; i < counts.count(); ++i)
        sum += counts.begin()[i] * flows.begin()[i];
    if (!std::isfinite(sum))
        return reply.refuse(0, "a line is blank: fill it or take it out of the range");
    if (lessThan(2, houses)) // the text halves for more than one house and says no more
        reply.caution("many", "the rule is made for a house or two: count fixture units instead");
    const double peak = lessThan(1, houses) ? sum / 2 : sum;
    if (lessThan(peak, largest))
        reply.caution("largest", "the largest single outlet draws more than the allowances together");
    return std::fmax(peak, largest);
}

constexpr puteal_parameter allowanceTakes[] = {
    Parameter("use", "", "use of water in the house").oneOf(useWords),
};
constexpr const char *allowanceSources[] = {"epa_private", "definition", nullptr};
constexpr puteal_example allowanceExamples[] = {
    example("demand_allowance(\"shower\")", "1 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"lavatory\")", "0.5 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"toilet with tank\")", "0.75 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"kitchen sink\")", "1 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"dishwasher\")", "0.5 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"laundry sink\")", "1.5 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"clothes washer\")", "2 gpm", 1e-12, "published", "epa_private"),
    example("demand_allowance(\"bathtub with shower\")", "2 gpm", 1e-12, "computed", "epa_private"),
};
constexpr puteal_example allowanceRefusals[] = {
    refusal("demand_allowance(\"pool\")",
            "\"pool\" is not in the list: shower, lavatory, toilet with tank, kitchen sink, dishwasher, "
            "laundry sink, clothes washer, bathtub with shower"),
};

constexpr puteal_parameter peakTakes[] = {
    Parameter("count", "each", "how many of each use").range().hard(0, 1000).usual(0, 20),
    Parameter("allowance", "gpm", "allowance of each, see demand_allowance")
        .range()
        .hard(0, 100)
        .usual(0.5, 10),
    Parameter("houses", "", "houses the pump serves; with more than one the sum is halved")
        .hard(1, 10)
        .usual(1, 2)
        .otherwise(1, "A"),
    Parameter("largest", "gpm", "flow of the largest single outlet: a shower, tub or 1/2 in hose takes 5 gpm")
        .hard(0, 100)
        .usual(2, 10)
        .otherwise(5, "H"),
};
#define EXAMPLE_HOUSE                                                                                        \
    "n: 2 each, 1 each, 1 each, 1 each, 1 each, 1 each; a: 0.5 gpm, 0.75 gpm, 1 gpm, 0.5 gpm, 2 gpm, 2 "     \
    "gpm; "
constexpr puteal_example peakExamples[] = {
    example(EXAMPLE_HOUSE "peak_flow_by_allowance(n[:], a[:])", "7.25 gpm", 1e-12, "published",
            "epa_private"),
    example("n: 4 each, 2 each, 2 each, 2 each, 2 each, 2 each; a: 0.5 gpm, 0.75 gpm, 1 gpm, 0.5 gpm, 2 gpm, "
            "2 gpm; peak_flow_by_allowance(n[:], a[:], 2)",
            "7.25 gpm", 1e-12, "computed", "epa_private"),
    example("n: 1 each, 1 each; a: 0.5 gpm, 1 gpm; peak_flow_by_allowance(n[:], a[:])", "5 gpm", 1e-12,
            "computed", "penn_state"),
};
constexpr puteal_example peakRefusals[] = {
    refusal("n: 2 each, ; a: 0.5 gpm, 1 gpm; peak_flow_by_allowance(n[:], a[:])",
            "a line is blank: fill it or take it out of the range"),
    refusal(EXAMPLE_HOUSE "peak_flow_by_allowance(n[:], a[:], 1.5)",
            "houses come whole: list the fixtures of all of them together"),
};
constexpr puteal_caution peakCautions[] = {
    caution("many", "more than two houses"),
    caution("largest", "the largest single outlet decides"),
};
constexpr const char *peakSources[] = {"epa_private", "penn_state", nullptr};

} // namespace

constinit const puteal_function demandAllowanceRow =
    Function(
        "demand_allowance", "Peak demand allowance",
        "Flow one use of water adds to the peak of a house; less than it draws, since not all run at once.",
        call<demandAllowance>)
        .takes(allowanceTakes)
        .gives("gpm", "peak demand allowance")
        .by("the figure as published; bathtub with shower from the total of the example")
        .from(allowanceSources)
        .shownBy(allowanceExamples)
        .refusing(allowanceRefusals);

constinit const puteal_function peakByAllowanceRow =
    Function("peak_flow_by_allowance", "Peak flow by demand allowances",
             "Peak flow of a house as the sum of its demand allowances; with more than one house on the pump "
             "half the sum of all.",
             call<peakByAllowance>)
        .takes(peakTakes)
        .gives("gpm", "peak flow")
        .by("greater of sum(count * allowance), halved with more than one house, and largest")
        .from(peakSources)
        .shownBy(peakExamples)
        .refusing(peakRefusals)
        .warning(peakCautions);

} // namespace household
