/// Totals and statistics over ranges: sum, mean, min, max, count, product, stdev, percentile, any, all,
/// count_true.
#include <algorithm>
#include <cmath>
#include <limits>

#include "base/limits.h"
#include "base/number.h"
#include "compile/error_number.h"
#include "compile/site.h"

namespace puteal
{

namespace
{

template<General F>
void take(Fold &fold, double x)
{
    ++fold.taken;
    if constexpr (F == General::sum || F == General::mean) {
        // Neumaier's compensated sum [A. Neumaier, ZAMM 54, 1974]
        const double next = fold.sum + x;
        fold.rest += std::fabs(fold.sum) >= std::fabs(x) ? (fold.sum - next) + x : (x - next) + fold.sum;
        fold.sum = next;
    } else if constexpr (F == General::min) {
        fold.least = fold.taken == 1 ? x : std::min(fold.least, x);
    } else if constexpr (F == General::max) {
        fold.most = fold.taken == 1 ? x : std::max(fold.most, x);
    } else if constexpr (F == General::product) {
        fold.product *= x;
    }
}

/// Takes the lines of a range in from where the fold stands.
template<General F>
void extend(EvalFrame &frame, Fold &kept, std::uint32_t first, std::uint32_t count)
{
    const double *number = frame.number + first;
    const std::uint8_t *bounds = frame.bounds ? frame.bounds + first : nullptr;
    Fold fold = kept; // a copy, so that the figures stay in registers
    for (; fold.done < count && !fold.failed; ++fold.done) {
        double x = number[fold.done];
        if (std::isnan(x)) {
            if (isBlankNumber(x))
                continue;
            fold.failed = true;
            fold.error = x;
            break;
        }
        if (bounds && bounds[fold.done] != 0) {
            x = frame.ruled(x, static_cast<Bound>(bounds[fold.done]));
            fold.usedRule = true;
        }
        take<F>(fold, x);
    }
    kept = fold;
}

double resultOf(EvalFrame &frame, const Site &site, const Fold &fold)
{
    if (fold.failed)
        return fold.error;
    const bool none = fold.taken == 0;
    switch (site.function->general) {
    case General::sum:
        return fold.total();
    case General::count:
        return fold.taken;
    case General::product:
        return fold.product;
    case General::mean:
        return none ? refusedAt(frame, site.node, "no value to take the mean of") : fold.total() / fold.taken;
    case General::min:
        return none ? refusedAt(frame, site.node, "nothing to choose from") : fold.least;
    default:
        return none ? refusedAt(frame, site.node, "nothing to choose from") : fold.most;
    }
}

template<General F>
double total(EvalFrame &frame, const Site &site, const double *numbers)
{
    // One range from its top: goes on from the fold of a shorter range with the same top (a running total).
    if (site.arguments[0].from == ArgumentPlan::From::range && rangeOf(site, 1) < 0 &&
        (site.arguments.size() == 1 || site.arguments[1].parameter != 0)) {
        const std::uint32_t first = frame.rangeFirst(site.arguments[0].range);
        const std::uint32_t count = frame.rangeCount(site.arguments[0].range);
        Fold own;
        Fold *fold =
            frame.folds ? &(*frame.folds)[first * std::uint64_t{64} + static_cast<std::uint64_t>(F)] : &own;
        if (fold->done > count)
            *(fold = &own) = Fold{};
        extend<F>(frame, *fold, first, count);
        frame.usedRule = frame.usedRule || fold->usedRule;
        return resultOf(frame, site, *fold);
    }
    Fold fold;
    const double stopped = forEachItem(frame, site, numbers, [&](const Item &item) {
        const double x = item.number;
        if (std::isnan(x))
            return item.cell != noCell && isBlankNumber(x) ? 0.0 : x;
        if (std::isinf(x))
            return notFiniteHere();
        take<F>(fold, x);
        return 0.0;
    });
    return std::isnan(stopped) ? stopped : resultOf(frame, site, fold);
}

/// All values that are there; an error number stops.
double collect(EvalFrame &frame, const Site &site, const double *numbers, std::vector<double> &values)
{
    return forEachItem(frame, site, numbers, [&](const Item &item) {
        if (std::isnan(item.number))
            return item.cell != noCell && isBlankNumber(item.number) ? 0.0 : item.number;
        if (std::isinf(item.number))
            return notFiniteHere();
        values.push_back(item.number);
        return 0.0;
    });
}

double deviation(const std::vector<double> &values)
{
    // Two passes: the second around the mean, with the mean's own rounding taken out.
    Fold sum;
    for (const double x : values)
        take<General::sum>(sum, x);
    const auto n = static_cast<double>(values.size());
    const double mean = sum.total() / n;
    Fold squares, rest;
    for (const double x : values) {
        take<General::sum>(squares, (x - mean) * (x - mean));
        take<General::sum>(rest, x - mean);
    }
    return std::sqrt(std::max(0.0, squares.total() - rest.total() * rest.total() / n) / (n - 1.0));
}

/// Linear between ranks, rank p * (n - 1) counted from 0 [Hyndman and Fan 1996, type 7].
double percentileOf(std::vector<double> &values, double p)
{
    std::sort(values.begin(), values.end());
    const auto last = static_cast<double>(values.size() - 1);
    const double rank = p * last;
    const double whole = std::floor(rank + limits::slack * last);
    if (whole >= last)
        return values.back();
    const auto k = static_cast<std::size_t>(whole);
    return values[k] + std::max(0.0, rank - whole) * (values[k + 1] - values[k]);
}

} // namespace

double totalOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    switch (site.function->general) {
    case General::sum:
        return total<General::sum>(frame, site, numbers);
    case General::mean:
        return total<General::mean>(frame, site, numbers);
    case General::min:
        return total<General::min>(frame, site, numbers);
    case General::max:
        return total<General::max>(frame, site, numbers);
    case General::count:
        return total<General::count>(frame, site, numbers);
    default:
        return total<General::product>(frame, site, numbers);
    }
}

double spreadOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    std::vector<double> values;
    if (const double stopped = collect(frame, site, numbers, values); std::isnan(stopped))
        return stopped;
    if (site.function->general == General::stdev)
        return values.size() < 2 ? refusedAt(frame, site.node, "a standard deviation needs two values")
                                 : deviation(values);
    const SiteArgument *share = argumentOf(site, 1);
    const double p = numberOf(*share, numbers);
    if (!std::isfinite(p))
        return std::isnan(p) ? p : notFiniteHere();
    if (!atMost(0.0, p) || !atMost(p, 1.0))
        return refusedAt(frame, share->node, "a percentile needs a share from 0 to 1, or 0 % to 100 %");
    if (values.empty())
        return refusedAt(frame, site.node, "no value to take a percentile of");
    return percentileOf(values, p);
}

double conditionsOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    double yes = 0.0, no = 0.0;
    const double stopped = forEachItem(frame, site, numbers, [&](const Item &item) {
        if (std::isnan(item.number))
            return item.cell != noCell && isBlankNumber(item.number) ? 0.0 : item.number;
        (item.number != 0.0 ? yes : no) += 1.0;
        return 0.0;
    });
    if (std::isnan(stopped))
        return stopped;
    switch (site.function->general) {
    case General::any:
        return yes > 0.0 ? 1.0 : 0.0;
    case General::all:
        return no > 0.0 ? 0.0 : 1.0;
    default:
        return yes;
    }
}

} // namespace puteal
