/// Guarded forms: operations in which plain evaluation would lose an error or read it as a number.
#include "compile/guards.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/limits.h"
#include "base/number.h"
#include "compile/error_number.h"
#include "formula/tree.h"
#include "units/value.h"

namespace puteal
{

namespace
{

/// The error of the first argument that is one; infinity counts as an error that arose here.
inline bool bad(double a, double &error)
{
    if (std::isfinite(a))
        return false;
    error = std::isnan(a) ? a : notFiniteHere();
    return true;
}

template<double (*F)(double)>
double guarded(double x)
{
    double error = 0.0;
    return bad(x, error) ? error : F(x);
}

double sqrtOf(double x)
{
    return std::sqrt(x);
}
double cbrtOf(double x)
{
    return std::cbrt(x);
}
double expOf(double x)
{
    return std::exp(x);
}
double lnOf(double x)
{
    return std::log(x);
}
double log10Of(double x)
{
    return std::log10(x);
}
double pow10Of(double x)
{
    return std::pow(10.0, x);
}
double sinOf(double x)
{
    return std::sin(x);
}
double cosOf(double x)
{
    return std::cos(x);
}
double tanOf(double x)
{
    return std::tan(x);
}
double asinOf(double x)
{
    return std::asin(x);
}
double acosOf(double x)
{
    return std::acos(x);
}
double atanOf(double x)
{
    return std::atan(x);
}
double absOf(double x)
{
    return std::fabs(x);
}
double sameOf(double x)
{
    return x;
}
double notOf(double x)
{
    return x != 0.0 ? 0.0 : 1.0;
}
double isKnown(double x)
{
    return std::isfinite(x) ? 1.0 : 0.0;
}

template<bool (*F)(double, double)>
double compared(double a, double b)
{
    double error = 0.0;
    if (bad(a, error) || bad(b, error))
        return error;
    return F(a, b) ? 1.0 : 0.0;
}
bool isLess(double a, double b)
{
    return lessThan(a, b);
}
bool isAtMost(double a, double b)
{
    return atMost(a, b);
}
bool isGreater(double a, double b)
{
    return lessThan(b, a);
}
bool isAtLeast(double a, double b)
{
    return atMost(b, a);
}
bool isEqual(double a, double b)
{
    return nearlyEqual(a, b);
}
bool isUnequal(double a, double b)
{
    return !nearlyEqual(a, b);
}

double power(double a, double b)
{
    double error = 0.0;
    if (bad(a, error) || bad(b, error))
        return error;
    return std::pow(a, b);
}

template<bool Least>
double extreme(const double *a, int n)
{
    double best = Least ? std::numeric_limits<double>::infinity() : -std::numeric_limits<double>::infinity();
    double error = 0.0;
    for (int i = 0; i < n; ++i) {
        if (bad(a[i], error))
            return error;
        best = Least ? std::min(best, a[i]) : std::max(best, a[i]);
    }
    return best;
}

template<bool Least>
double extremeOfTwo(double a, double b)
{
    double error = 0.0;
    if (bad(a, error) || bad(b, error))
        return error;
    return Least ? std::min(a, b) : std::max(a, b);
}

double clampTo(double x, double low, double high)
{
    double error = 0.0;
    if (bad(x, error) || bad(low, error) || bad(high, error))
        return error;
    if (lessThan(high, low))
        return notFiniteHere();
    return std::min(std::max(x, low), high);
}

/// A date must stay in the calendar: from the first day on, before the day after the last.
double dateFrom(double x, double first, double end)
{
    double error = 0.0;
    if (bad(x, error))
        return error;
    return atMost(first, x) && x < end ? x : notFiniteHere();
}

double withinTolerance(double a, double b, double tolerance)
{
    double error = 0.0;
    if (bad(a, error) || bad(b, error) || bad(tolerance, error))
        return error;
    // The slack belongs to the numbers compared, not to their small difference.
    const double slack = limits::slack * std::max(std::fabs(a), std::fabs(b));
    return std::fabs(a - b) <= tolerance + slack ? 1.0 : 0.0;
}

/// Nearest whole number when x is one within the slack.
bool nearWhole(double x, double &whole)
{
    whole = std::nearbyint(x);
    return std::fabs(x - whole) <= limits::slack * std::max(1.0, std::fabs(x));
}

template<double (*F)(double)>
double stepped(double x, double step)
{
    double error = 0.0;
    if (bad(x, error) || bad(step, error))
        return error;
    if (step <= 0.0)
        return notFiniteHere();
    const double steps = x / step;
    double whole = 0.0;
    return (nearWhole(steps, whole) ? whole : F(steps)) * step;
}
double up(double x)
{
    return std::ceil(x);
}
double down(double x)
{
    return std::floor(x);
}
/// Half away from zero, a half within the slack being a half.
double nearest(double x)
{
    const double size = std::fabs(x);
    const double low = std::floor(size);
    const bool roundsUp = size - low >= 0.5 - limits::slack * std::max(1.0, size);
    return std::copysign(roundsUp ? low + 1.0 : low, x);
}

/// Where a reading may lie: "<0.05" from 0 to just under 0.05, ">2419" from just over it upward.
struct Extent {
    double low, high;
    bool openLow = false, openHigh = false;
};
Extent extentOf(double x, Bound bound)
{
    if (bound == Bound::below)
        return {std::min(0.0, x), x, false, true};
    if (bound == Bound::above)
        return {x, std::numeric_limits<double>::infinity(), true, true};
    return {x, x, false, false};
}
/// All of x lies at or below all of y. (An open upper end has no slack to lend.)
bool endsBy(const Extent &x, const Extent &y)
{
    return std::isfinite(x.high) && atMost(x.high, y.low);
}

} // namespace

double roundTo(double x, double step)
{
    return stepped<nearest>(x, step);
}
double ceilTo(double x, double step)
{
    return stepped<up>(x, step);
}
double floorTo(double x, double step)
{
    return stepped<down>(x, step);
}

double compareBounded(double op, double boundA, double boundB, double a, double b)
{
    double error = 0.0;
    if (bad(a, error) || bad(b, error))
        return error;
    const auto relation = static_cast<Op>(static_cast<int>(op));
    const auto left = static_cast<Bound>(static_cast<int>(boundA));
    const auto right = static_cast<Bound>(static_cast<int>(boundB));
    const Extent x = extentOf(a, left), y = extentOf(b, right);
    const bool surelyAtMost = endsBy(x, y), surelyAtLeast = endsBy(y, x);
    const bool surelyLess = surelyAtMost && (x.openHigh || y.openLow || lessThan(x.high, y.low));
    const bool surelyGreater = surelyAtLeast && (y.openHigh || x.openLow || lessThan(y.high, x.low));
    bool yes = false, no = false;
    switch (relation) {
    case Op::less:
        yes = surelyLess, no = surelyAtLeast;
        break;
    case Op::atMost:
        yes = surelyAtMost, no = surelyGreater;
        break;
    case Op::greater:
        yes = surelyGreater, no = surelyAtMost;
        break;
    case Op::atLeast:
        yes = surelyAtLeast, no = surelyLess;
        break;
    case Op::equal:
        no = surelyLess || surelyGreater, yes = surelyAtMost && surelyAtLeast;
        break;
    default:
        yes = surelyLess || surelyGreater, no = surelyAtMost && surelyAtLeast;
        break;
    }
    if (yes != no)
        return yes ? 1.0 : 0.0;
    return errorNumber(ErrorKind::undecided, originHere);
}

const std::vector<Guard> &guards()
{
    static const std::vector<Guard> all = [] {
        std::vector<Guard> list;
        const auto one = [&](std::string_view name, double (*f)(double)) {
            Guard guard;
            guard.name = name;
            guard.one = f;
            list.push_back(guard);
        };
        const auto two = [&](std::string_view name, double (*f)(double, double)) {
            Guard guard;
            guard.name = name;
            guard.two = f;
            list.push_back(guard);
        };
        one("fi", guarded<sameOf>), one("nt", guarded<notOf>), one("is", isKnown), one("ab", guarded<absOf>);
        one("sq", guarded<sqrtOf>), one("cr", guarded<cbrtOf>), one("ex", guarded<expOf>),
            one("ln", guarded<lnOf>);
        one("lg", guarded<log10Of>), one("pt", guarded<pow10Of>), one("sn", guarded<sinOf>);
        one("cs", guarded<cosOf>), one("tn", guarded<tanOf>), one("as", guarded<asinOf>);
        one("ac", guarded<acosOf>), one("at", guarded<atanOf>);
        two("lt", compared<isLess>), two("le", compared<isAtMost>), two("gt", compared<isGreater>);
        two("ge", compared<isAtLeast>), two("eq", compared<isEqual>), two("ne", compared<isUnequal>);
        two("mi", extremeOfTwo<true>), two("ma", extremeOfTwo<false>);
        two("pw", power), two("rd", roundTo), two("ce", ceilTo), two("fl", floorTo);
        Guard guard;
        guard.name = "cl", guard.three = clampTo;
        list.push_back(guard);
        guard.name = "dt", guard.three = dateFrom;
        list.push_back(guard);
        guard.name = "wi", guard.three = withinTolerance;
        list.push_back(guard);
        guard = Guard{};
        guard.name = "cb", guard.five = compareBounded;
        list.push_back(guard);
        guard = Guard{};
        guard.name = "mn", guard.many = extreme<true>;
        list.push_back(guard);
        guard.name = "mx", guard.many = extreme<false>;
        list.push_back(guard);
        return list;
    }();
    return all;
}

} // namespace puteal
