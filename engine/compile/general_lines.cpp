/// Lines through tables: interpolation, slope and intercept of the least-squares line.
#include <fmt/format.h>

#include <cmath>

#include "base/number.h"
#include "compile/error_number.h"
#include "compile/shown_text.h"
#include "compile/site.h"

namespace puteal
{

namespace
{

struct Points {
    std::vector<double> x, y;
};

/// Both columns, of which no line may be blank.
double pointsOf(EvalFrame &frame, const Site &site, std::uint32_t xs, Points &out)
{
    const Lines x(frame, site, static_cast<std::size_t>(rangeOf(site, xs)), -1);
    const Lines y(frame, site, static_cast<std::size_t>(rangeOf(site, xs + 1)), -1);
    if (x.count() != y.count())
        return refusedAt(frame, site.node,
                         fmt::format("the two columns differ: {} lines and {} lines", x.count(), y.count()));
    for (std::uint32_t i = 0; i < x.count(); ++i) {
        for (const Lines *lines : {&x, &y}) {
            const double v = lines->number(i);
            if (std::isnan(v))
                return isBlankNumber(v) && errorOrigin(v) == lines->cell(i) ? lines->blank(i) : v;
        }
        out.x.push_back(x.number(i));
        out.y.push_back(y.number(i));
    }
    return 0.0;
}

double interpolated(EvalFrame &frame, const Site &site, const double *numbers)
{
    const SiteArgument &where = *argumentOf(site, 0);
    const double at = numberOf(where, numbers);
    if (!std::isfinite(at))
        return std::isnan(at) ? at : notFiniteHere();
    Points p;
    if (const double stopped = pointsOf(frame, site, 1, p); std::isnan(stopped))
        return stopped;
    const NodeIndex table = argumentOf(site, 1)->node;
    for (std::size_t i = 1; i < p.x.size(); ++i)
        if (!lessThan(p.x[i - 1], p.x[i]))
            return refusedAt(frame, table,
                             fmt::format("`{}` must ascend from line to line to look between its lines",
                                         pieceText(frame, table)));
    if (p.x.empty() || lessThan(at, p.x.front()) || lessThan(p.x.back(), at))
        return refusedAt(frame, where.node,
                         fmt::format("{} lies outside the table `{}`, and nothing is guessed there",
                                     shownPiece(frame, where.node, at), pieceText(frame, table)));
    std::size_t i = 1;
    while (i + 1 < p.x.size() && p.x[i] < at)
        ++i;
    if (p.x.size() == 1)
        return p.y.front();
    const double share = std::fmin(1.0, std::fmax(0.0, (at - p.x[i - 1]) / (p.x[i] - p.x[i - 1])));
    return share == 1.0 ? p.y[i] : p.y[i - 1] + (p.y[i] - p.y[i - 1]) * share;
}

double mean(const std::vector<double> &values)
{
    double sum = 0.0, rest = 0.0;
    for (const double x : values) {
        const double next = sum + x;
        rest += std::fabs(sum) >= std::fabs(x) ? (sum - next) + x : (x - next) + sum;
        sum = next;
    }
    return (sum + rest) / static_cast<double>(values.size());
}

/// Least squares around the means, so that large offsets cost no figures.
double fitted(EvalFrame &frame, const Site &site)
{
    Points p;
    if (const double stopped = pointsOf(frame, site, 0, p); std::isnan(stopped))
        return stopped;
    if (p.x.size() < 2)
        return refusedAt(frame, site.node, "a line needs two points");
    const double meanX = mean(p.x), meanY = mean(p.y);
    double xy = 0.0, xx = 0.0;
    for (std::size_t i = 0; i < p.x.size(); ++i) {
        xy += (p.x[i] - meanX) * (p.y[i] - meanY);
        xx += (p.x[i] - meanX) * (p.x[i] - meanX);
    }
    if (xx == 0.0)
        return refusedAt(frame, site.node, "a line needs two different x");
    const double slope = xy / xx;
    return site.function->general == General::slope ? slope : meanY - slope * meanX;
}

} // namespace

double lineOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    return site.function->general == General::interpolate ? interpolated(frame, site, numbers)
                                                          : fitted(frame, site);
}

} // namespace puteal
