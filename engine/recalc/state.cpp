/// State of a cell against its limit: within, near, outside, no limit, missing test.
#include <charconv>
#include <cmath>
#include <limits>

#include "base/number.h"
#include "compile/error_number.h"
#include "compile/guards.h"
#include "formula/tree.h"
#include "recalc/evaluator.h"

namespace puteal
{

namespace
{

constexpr double usualBand = 0.2; ///< near: 20 % of the limit where the limit says nothing else

double bandOf(const LimitText &limit)
{
    if (const auto typed = readNumber(limit.near))
        return *typed / 100.0;
    return usualBand;
}

/// One end of a limit: is the reading on its good side, and by how little?
struct End {
    double at = 0.0;
    bool upper = false;  ///< value must not exceed it
    bool strict = false; ///< `<`, `>`
    double band = 0.0;   ///< distance to the limit that counts as near
};

/// within, near, outside or missingTest for one end.
LimitState against(const End &end, double value, Bound bound)
{
    const Op op = end.upper ? (end.strict ? Op::less : Op::atMost) : (end.strict ? Op::greater : Op::atLeast);
    const double met = compareBounded(static_cast<double>(op), static_cast<double>(bound),
                                      static_cast<double>(Bound::exact), value, end.at);
    if (std::isnan(met))
        return LimitState::missingTest;
    if (met == 0.0)
        return LimitState::outside;
    // A reading known only as a bound that surely keeps the limit is not called near: it may be far from it.
    if (bound != Bound::exact)
        return LimitState::within;
    const bool near = end.upper ? lessThan(end.at - end.band, value) : lessThan(value, end.at + end.band);
    return near ? LimitState::near : LimitState::within;
}

LimitState worseOf(LimitState a, LimitState b)
{
    for (const LimitState state : {LimitState::outside, LimitState::missingTest, LimitState::near})
        if (a == state || b == state)
            return state;
    return LimitState::within;
}

/// Of these nobody reads less than nothing: a mass or an amount in a volume, and what is counted. What is
/// worked out may be a difference, so only what was typed is meant.
bool neverNegative(const QuantityType &type)
{
    constexpr int one = 6; // sixths
    const auto exponent = [&](Base base) { return type.dimension.sixths[static_cast<std::size_t>(base)]; };
    Dimension perVolume;
    perVolume.sixths[static_cast<std::size_t>(Base::length)] = -3 * one;
    for (const Base base : {Base::mass, Base::amount}) {
        Dimension content = perVolume;
        content.sixths[static_cast<std::size_t>(base)] = one;
        if (type.dimension == content)
            return true;
    }
    return !type.things.empty() && (type.dimension.isPure() || exponent(Base::length) == -3 * one);
}

} // namespace

Verdict stateVerdict(const Model &model, const Values &values, NodeId state)
{
    const CellAt at = model.cellOf(state);
    const NodeId cell = model.layout.nodeOf(at);
    const LimitNodes &nodes = model.limits.at(cell);
    const LimitText &limit = *model.book.sheets[at.sheet].cell(at.column, at.line).beside().limit;
    const auto told = [](LimitState s) { return Verdict{ErrorKind::none, static_cast<double>(s)}; };
    const double value = values.number[cell];
    if (std::isnan(value)) {
        if (isBlankNumber(value)) // a test that was not made, here or in what the cell is worked out from
            return told(LimitState::missingTest);
        return {ErrorKind::waiting, errorNumber(errorKind(value), errorOrigin(value))};
    }
    for (const NodeId end : {nodes.low, nodes.high})
        if (end != noNode && std::isnan(values.number[end])) {
            const double number = values.number[end];
            return {ErrorKind::waiting, errorNumber(errorKind(number), errorOrigin(number))};
        }
    const auto bound = static_cast<Bound>(model.bounds[cell]);
    const double low = values.number[nodes.low];
    if (nodes.high == noNode) {
        const bool upper = limit.comparison[0] == '<';
        if (upper && value < 0.0 && low >= 0.0 && model.content[cell] == Content::number &&
            neverNegative(model.typeOf(cell).type.quantity))
            return told(LimitState::missingTest);
        return told(against({low, upper, limit.comparison.size() == 1, bandOf(limit) * std::fabs(low)}, value,
                            bound));
    }
    // Between two ends the band is that share of the distance between them.
    const double high = values.number[nodes.high];
    const double band = bandOf(limit) * std::fabs(high - low);
    return told(worseOf(against({low, false, false, band}, value, bound),
                        against({high, true, false, band}, value, bound)));
}

} // namespace puteal
