/// The general functions that need the cells they read: dispatch and what all of them share.
#include <fmt/format.h>

#include <cmath>

#include "compile/error_number.h"
#include "compile/guards.h"
#include "compile/site.h"

namespace puteal
{

Lines::Lines(EvalFrame &frame, const Site &site, std::size_t argument, int only)
    : m_frame(frame), m_node(site.arguments[argument].node),
      m_first(frame.rangeFirst(site.arguments[argument].range)),
      m_count(frame.rangeCount(site.arguments[argument].range))
{
    if (only < 0)
        return;
    const SiteArgument &companion = site.arguments[static_cast<std::size_t>(only)];
    if (frame.rangeCount(companion.range) != m_count)
        return; // the checker refuses it
    m_hasOnly = true;
    m_onlyFirst = frame.rangeFirst(companion.range);
}

bool Lines::read(std::uint32_t i, double &failed) const
{
    if (!m_hasOnly)
        return true;
    const double yes = m_frame.number[m_onlyFirst + i];
    if (std::isnan(yes))
        failed = isBlankNumber(yes) && errorOrigin(yes) == m_onlyFirst + i
                     ? refusedAt(m_frame, m_node,
                                 fmt::format("`{}` is blank", m_frame.host->cellWords(m_onlyFirst + i)))
                     : yes;
    return !std::isnan(yes) && yes != 0.0;
}

double Lines::number(std::uint32_t i) const
{
    const std::uint32_t node = m_first + i;
    const double x = m_frame.number[node];
    return m_frame.bounds ? m_frame.ruled(x, static_cast<Bound>(m_frame.bounds[node])) : x;
}

double Lines::blank(std::uint32_t i) const
{
    Error error{ErrorKind::blank, fmt::format("`{}` is blank", m_frame.host->cellWords(m_first + i)), {}, {}};
    error.place.span = m_frame.formula->tree->nodes[m_node].span;
    return m_frame.failed(std::move(error));
}

int rangeOf(const Site &site, std::uint32_t parameter)
{
    for (std::size_t i = 0; i < site.arguments.size(); ++i)
        if (site.arguments[i].parameter == parameter && site.arguments[i].from == ArgumentPlan::From::range)
            return static_cast<int>(i);
    return -1;
}

const SiteArgument *argumentOf(const Site &site, std::uint32_t parameter)
{
    for (const SiteArgument &argument : site.arguments)
        if (argument.parameter == parameter)
            return &argument;
    return nullptr;
}

double numberOf(const SiteArgument &argument, const double *numbers)
{
    return argument.from == ArgumentPlan::From::constant ? argument.constant : numbers[argument.place];
}

double refusedAt(EvalFrame &frame, NodeIndex node, std::string words)
{
    return frame.failed(
        Error{ErrorKind::refused, std::move(words), {}, Place{frame.formula->tree->nodes[node].span, {}, 0}});
}

namespace
{

double whyOf(EvalFrame &frame, const Site &site, const double *numbers)
{
    if (std::isnan(numbers[0]))
        return numbers[0];
    return reasonOfPiece(frame, site.arguments[0].node);
}

/// within(a, b, tolerance) where a or b is known only as a bound: both ends must agree.
double withinBounded(EvalFrame &frame, const Site &site, const double *numbers)
{
    const auto bound = [&](std::size_t i) {
        return static_cast<double>(frame.formula->checked->nodes[site.arguments[i].node].type.bound);
    };
    const double a = numbers[0], b = numbers[1], tolerance = numbers[2];
    const double low = compareBounded(static_cast<double>(Op::atLeast), bound(0), bound(1), a, b - tolerance);
    const double high = compareBounded(static_cast<double>(Op::atMost), bound(0), bound(1), a, b + tolerance);
    if (low == 0.0 || high == 0.0)
        return 0.0;
    return std::isnan(low) ? low : high;
}

} // namespace

double callGeneral(EvalFrame &frame, const Site &site, const double *numbers)
{
    switch (site.function->general) {
    case General::sum:
    case General::mean:
    case General::min:
    case General::max:
    case General::count:
    case General::product:
        return totalOf(frame, site, numbers);
    case General::stdev:
    case General::percentile:
        return spreadOf(frame, site, numbers);
    case General::any:
    case General::all:
    case General::countTrue:
        return conditionsOf(frame, site, numbers);
    case General::leastAt:
    case General::greatestAt:
        return positionOf(frame, site, numbers);
    case General::pick:
    case General::lookup:
        return takenFrom(frame, site, numbers);
    case General::worst:
        return worstOf(frame, site, numbers);
    case General::list:
        return listOf(frame, site, numbers);
    case General::interpolate:
    case General::slope:
    case General::intercept:
        return lineOf(frame, site, numbers);
    case General::why:
        return whyOf(frame, site, numbers);
    case General::within:
        return withinBounded(frame, site, numbers);
    default:
        return frame.failed(Error{
            ErrorKind::plugin, fmt::format("`{}` cannot be worked out here", site.function->name), {}, {}});
    }
}

double evaluateSite(EvalFrame &frame, std::uint32_t index, const double *numbers, int)
{
    if (!frame.formula || index >= frame.formula->sites.size())
        return errorNumber(ErrorKind::waiting, originHere);
    const Site &site = frame.formula->sites[index];
    if (site.function->general == General::none)
        return callPlugin(frame, site, frame.formula->entries[index], numbers);
    return callGeneral(frame, site, numbers);
}

} // namespace puteal
