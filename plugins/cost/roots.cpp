/// Finds all rates that balance sums at times, by the rule of signs for sums of exponentials.
///
/// With s = ln(1 + rate) the present value is f(s) = sum of c exp(-t s). Multiplied by exp(a s), with a
/// between the two times where the sign first turns, its derivative has one turn of sign less. The roots of
/// that derivative cut the line into pieces on which f has one root at most, so none is missed and none is
/// guessed.
#include "roots.h"
#include "sdk/roots.h"

#include <algorithm>
#include <cmath>

namespace cost
{

using puteal::sdk::crossing;

namespace
{

/// A sum as its sign and the logarithm of its size, so that no power is ever too large.
struct Term {
    double time, size;
    bool positive;
};

std::vector<Term> termsOf(const std::vector<Flow> &flows)
{
    std::vector<Term> terms;
    terms.reserve(flows.size());
    for (const Flow &flow : flows)
        terms.push_back({flow.time, std::log(std::fabs(flow.sum)), flow.sum > 0});
    return terms;
}

/// exp(a s) f(s) for the a that makes the greatest term 1: same sign and roots.
double balance(const std::vector<Term> &terms, double s)
{
    double greatest = -HUGE_VAL, sum = 0.0;
    for (const Term &term : terms)
        greatest = std::fmax(greatest, term.size - term.time * s);
    for (const Term &term : terms) {
        const double share = std::exp(term.size - term.time * s - greatest);
        sum += term.positive ? share : -share;
    }
    return sum;
}

/// +1, -1, or 0 where the terms cancel down to rounding.
int signAt(const std::vector<Term> &terms, double s)
{
    constexpr double rounding = 1e-13;
    const double x = balance(terms, s);
    if (std::fabs(x) <= rounding * static_cast<double>(terms.size()))
        return 0;
    return x > 0 ? 1 : -1;
}

/// The greatest sum becomes 1, so that what is multiplied with it stays in range.
void scale(std::vector<Flow> &flows)
{
    double greatest = 0.0;
    for (const Flow &flow : flows)
        greatest = std::fmax(greatest, std::fabs(flow.sum));
    for (Flow &flow : flows)
        flow.sum /= greatest;
}

std::vector<Flow> turnedOnceLess(const std::vector<Flow> &flows)
{
    std::size_t turn = 1;
    while ((flows[turn].sum > 0) == (flows[turn - 1].sum > 0))
        ++turn;
    const double between = 0.5 * (flows[turn - 1].time + flows[turn].time);
    std::vector<Flow> less;
    less.reserve(flows.size());
    for (const Flow &flow : flows)
        less.push_back({flow.time, flow.sum * (between - flow.time)});
    scale(less);
    return less;
}

struct Root {
    double s;
    bool crosses;
};

std::vector<Root> rootsBetween(const std::vector<Flow> &flows, double low, double high)
{
    if (signChanges(flows) == 0)
        return {};
    std::vector<double> cuts{low};
    for (const Root &root : rootsBetween(turnedOnceLess(flows), low, high))
        cuts.push_back(root.s);
    cuts.push_back(high);
    const std::vector<Term> terms = termsOf(flows);
    std::vector<Root> found;
    int before = 0;    // sign on the way to the cut
    double from = low; // where it was seen
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const int here = signAt(terms, cuts[i]);
        if (here == 0) {
            from = i + 1 < cuts.size() ? 0.5 * (cuts[i] + cuts[i + 1]) : high;
            const int after = i + 1 < cuts.size() ? signAt(terms, from) : -before;
            found.push_back({cuts[i], before != after});
            before = after;
            continue;
        }
        if (before != 0 && before != here)
            found.push_back({crossing(from, cuts[i], [&](double s) { return balance(terms, s); }), true});
        before = here;
        from = cuts[i];
    }
    return found;
}

} // namespace

std::vector<Flow> ordered(std::vector<Flow> flows)
{
    std::stable_sort(flows.begin(), flows.end(),
                     [](const Flow &a, const Flow &b) { return a.time < b.time; });
    std::vector<Flow> merged;
    for (const Flow &flow : flows) {
        if (!merged.empty() && merged.back().time == flow.time)
            merged.back().sum += flow.sum;
        else
            merged.push_back(flow);
    }
    scale(merged);
    std::erase_if(merged, [](const Flow &flow) { return !(std::fabs(flow.sum) > 0); });
    return merged;
}

int signChanges(const std::vector<Flow> &flows)
{
    int changes = 0;
    for (std::size_t i = 1; i < flows.size(); ++i)
        changes += (flows[i].sum > 0) != (flows[i - 1].sum > 0) ? 1 : 0;
    return changes;
}

std::vector<BalancingRate> balancingRates(const std::vector<Flow> &flows)
{
    std::vector<BalancingRate> rates;
    for (const Root &root : rootsBetween(flows, std::log1p(lowestBalance), std::log1p(highestBalance)))
        rates.push_back({std::expm1(root.s), root.crosses});
    return rates;
}

} // namespace cost
