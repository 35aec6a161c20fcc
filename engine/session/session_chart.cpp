/// Charts as series: reads the ranges a chart record names, finds every break-even year, writes the
/// sentences.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "base/text.h"
#include "formula/binder.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

/// A chart reference ("costs.year[:]", "costs.total") as a range of cells.
Result<RangeAt> rangeOf(const std::string &reference, const Workbook &book, const UnitTable &units)
{
    auto tree = parseFormula(reference, units);
    if (!tree)
        return tl::unexpected(tree.error());
    if (tree->nodes[tree->root].kind != NodeKind::reference)
        return fail(ErrorKind::range, fmt::format("`{}` is no reference to a column or cells", reference));
    auto bound = bind(*tree, book, CellAt{});
    if (!bound)
        return tl::unexpected(bound.error());
    const BoundReference &found = bound->references[tree->nodes[tree->root].extra];
    if (found.isRange)
        return found.range;
    return RangeAt{found.cell.sheet, found.cell.column, found.cell.line, found.cell.line};
}

struct Axis {
    Unit unit;
    bool known = false;
};

std::string axisTitle(const std::string &title, const Axis &axis)
{
    // "Year, yr" says it twice
    const bool said = title.find(axis.unit.text) != std::string::npos ||
                      (axis.unit.text == "yr" && title.find("ear") != std::string::npos);
    if (axis.unit.text.empty() || said)
        return title;
    return fmt::format("{}, {}", title, axis.unit.text == "USD" ? "$" : axis.unit.text);
}

/// Which of two series is cheaper in the end, and the years in which they change places.
struct Overtaking {
    std::size_t cheaper, other;
    std::vector<std::string> years;
};

/// Break-even points of two series given at the same x: where the cheaper one changes.
Overtaking crossingsOf(std::size_t a, std::size_t b, ChartView &view)
{
    const auto &series = view.series;
    const bool steps = view.chart.kind == ChartKind::steps;
    const auto &x = series[a].x;
    Overtaking out{a, b, {}};
    int before = 0;
    double lastDifference = 0.0;
    for (std::size_t i = 0; i < x.size() && i < series[b].y.size(); ++i) {
        const double difference = series[b].y[i] - series[a].y[i];
        if (!std::isfinite(difference))
            continue;
        const int now = nearlyEqual(series[a].y[i], series[b].y[i]) ? 0 : (difference > 0 ? 1 : -1);
        if (before != 0 && now != 0 && now != before && i > 0) {
            // In a step chart the year whose end first shows the other one cheaper counts; else the line
            // crossing.
            const double share = lastDifference / (lastDifference - difference);
            const double at = steps ? x[i] : x[i - 1] + share * (x[i] - x[i - 1]);
            view.points.push_back({at, std::max(series[a].y[i], series[b].y[i]), a, b});
            out.years.push_back(steps ? shortest(at) : toFigures(at, 3));
            out.cheaper = now > 0 ? a : b;
            out.other = now > 0 ? b : a;
        }
        if (now != 0) {
            before = now;
            lastDifference = difference;
        }
    }
    return out;
}

/// One sentence for all that one option overtakes in the same year.
void tellOvertakings(const std::vector<Overtaking> &all, ChartView &view)
{
    const auto title = [&](std::size_t i) { return view.series[i].title; };
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Overtaking &one = all[i];
        if (one.years.size() > 1) {
            view.crossings.push_back(
                fmt::format("{} and {} change places in years {}; {} is cheaper from year {} on",
                            title(std::min(one.cheaper, one.other)), title(std::max(one.cheaper, one.other)),
                            joined(one.years), title(one.cheaper), one.years.back()));
            continue;
        }
        const auto same = [&](const Overtaking &other) {
            return other.cheaper == one.cheaper && other.years == one.years;
        };
        if (std::any_of(all.begin(), all.begin() + static_cast<long>(i), same))
            continue;
        std::vector<std::string> others;
        for (std::size_t k = i; k < all.size(); ++k)
            if (same(all[k]))
                others.push_back(title(all[k].other));
        view.crossings.push_back(fmt::format("{} is cheaper than {} from year {} on", title(one.cheaper),
                                             joined(others), one.years.front()));
    }
}

/// Lines that lie on each other look like one: it is said.
void tellEqualCosts(ChartView &view)
{
    const auto same = [&](std::size_t a, std::size_t b) {
        const auto &first = view.series[a].y, &second = view.series[b].y;
        return std::equal(first.begin(), first.end(), second.begin(), second.end(), [](double p, double q) {
            return (std::isnan(p) && std::isnan(q)) || nearlyEqual(p, q);
        });
    };
    std::vector<bool> told(view.series.size());
    for (std::size_t a = 0; a < view.series.size(); ++a) {
        std::vector<std::string> equal{view.series[a].title};
        for (std::size_t b = a + 1; b < view.series.size() && !told[a]; ++b)
            if (!told[b] && same(a, b)) {
                told[b] = true;
                equal.push_back(view.series[b].title);
            }
        if (equal.size() > 1)
            view.crossings.push_back(fmt::format("{} cost the same in every year", joined(equal)));
    }
}

bool nothingCosts(const ChartView &view)
{
    return std::all_of(view.series.begin(), view.series.end(), [](const ChartSeries &series) {
        return std::all_of(series.y.begin(), series.y.end(), [](double y) { return !(std::fabs(y) > 0.0); });
    });
}

} // namespace

std::vector<std::string> SessionState::chartKeys() const
{
    std::vector<std::string> keys;
    for (const Chart &chart : m_workbook.charts)
        keys.push_back(chart.key);
    return keys;
}

/// Costs are no reason to buy while a health result stands outside its limit.
std::string SessionState::healthStop() const
{
    std::vector<std::string> outside;
    for (std::uint32_t s = 0; s < m_workbook.sheets.size(); ++s)
        for (std::uint32_t c = 0; c < m_workbook.sheets[s].columnCount(); ++c)
            for (std::uint32_t l = 0; l < m_workbook.sheets[s].lineCount(); ++l) {
                const CellAt at{s, c, l};
                const auto &limit = m_workbook.cell(at)->beside().limit;
                if (limit && limit->health && m_program->state(at, m_values) == LimitState::outside)
                    outside.push_back(labelOf(at));
            }
    if (outside.empty())
        return {};
    return fmt::format("Health stop: {} outside its limit. Nothing is recommended here; call the health "
                       "department before anything is bought",
                       fmt::join(outside, ", "));
}

ChartView SessionState::chart(const std::string &key) const
{
    ChartView view;
    const auto found = std::find_if(m_workbook.charts.begin(), m_workbook.charts.end(),
                                    [&](const Chart &chart) { return key.empty() || chart.key == key; });
    if (found == m_workbook.charts.end()) {
        view.error =
            Error{ErrorKind::name,
                  key.empty() ? "this workbook has no chart" : fmt::format("no chart is called `{}`", key),
                  {},
                  {}};
        return view;
    }
    view.chart = *found;
    const auto xRange = rangeOf(found->x, m_workbook, m_units);
    if (!xRange) {
        view.error = xRange.error();
        return view;
    }
    Axis xAxis, yAxis;
    const auto readRange = [&](const RangeAt &range, Axis &axis, std::vector<double> &out,
                               std::string &problem) {
        for (std::uint32_t l = range.first; l <= range.last; ++l) {
            const CellAt at{range.sheet, range.column, l};
            const NodeId node = m_program->nodeOf(at);
            const NodeFacts &facts = m_program->facts(node);
            const bool good =
                m_values.status[node] == ErrorKind::none && facts.type.kind == ValueKind::quantity;
            if (good && !axis.known)
                axis = {facts.shown, true};
            if (good && facts.type.quantity.dimension == axis.unit.type.dimension) {
                out.push_back(axis.unit.fromBase(m_values.number[node]));
                continue;
            }
            out.push_back(std::nan(""));
            if (problem.empty())
                problem = facts.type.kind == ValueKind::words || facts.type.kind == ValueKind::choice
                              ? this->view(at).shown
                          : this->view(at).error ? this->view(at).error->words
                                                 : std::string("no value");
        }
    };
    std::vector<double> x;
    std::string xProblem;
    readRange(*xRange, xAxis, x, xProblem);
    view.xTitle = axisTitle(m_workbook.sheets[xRange->sheet].column(xRange->column).title, xAxis);

    std::vector<std::string> reasons;
    for (const Plot &plot : found->plots) {
        ChartSeries series;
        series.title = plot.title;
        const auto range = rangeOf(plot.reference, m_workbook, m_units);
        if (!range) {
            view.leftOut.push_back(
                fmt::format("{}: {}", plot.title.empty() ? plot.reference : plot.title, range.error().words));
            continue;
        }
        if (series.title.empty())
            series.title = m_workbook.sheets[range->sheet].column(range->column).title;
        if (!plot.only.empty()) {
            const auto only = rangeOf(plot.only, m_workbook, m_units);
            const NodeId node = only ? m_program->nodeOf({only->sheet, only->column, only->first}) : noNode;
            const bool yes = node != noNode && m_values.status[node] == ErrorKind::none &&
                             m_program->facts(node).type.kind == ValueKind::yesNo &&
                             m_values.number[node] != 0.0;
            if (!yes) {
                const std::string why =
                    node == noNode ? only.error().words : m_values.words.words(m_values.reason[node]);
                view.leftOut.push_back(why.empty() ? series.title : fmt::format("{}: {}", series.title, why));
                reasons.push_back(why);
                continue;
            }
        }
        std::string problem;
        readRange(*range, yAxis, series.y, problem);
        if (std::none_of(series.y.begin(), series.y.end(), [](double y) { return std::isfinite(y); })) {
            view.leftOut.push_back(fmt::format("{}: {}", series.title, problem));
            continue;
        }
        series.x = x;
        series.x.resize(series.y.size(), std::nan(""));
        for (std::size_t i = series.y.size(); i-- > 0;)
            if (std::isfinite(series.y[i])) {
                series.end = showQuantity(yAxis.unit.toBase(series.y[i]), Bound::exact, yAxis.unit,
                                          {0, std::fabs(series.y[i]) >= 100.0 ? 0 : -1})
                                 .text();
                break;
            }
        view.series.push_back(std::move(series));
    }
    // One reason that keeps all of them out (a health stop) is said once.
    if (reasons.size() > 1 && reasons.size() == found->plots.size() && !reasons.front().empty() &&
        std::count(reasons.begin(), reasons.end(), reasons.front()) ==
            static_cast<std::ptrdiff_t>(reasons.size()))
        view.leftOut = {"every option: " + reasons.front()};
    view.money = yAxis.unit.isMoney();
    if (view.money || view.series.empty())
        view.stop = healthStop();
    view.yTitle = view.money ? "money, $" : axisTitle(found->title, yAxis);
    // which is cheaper is a question of money
    if (!view.money)
        return view;
    if (!view.series.empty() && nothingCosts(view)) {
        view.crossings.push_back("Every cost drawn is $0: look whether prices are still to be typed");
        return view;
    }
    std::vector<Overtaking> overtakings;
    for (std::size_t a = 0; a < view.series.size(); ++a)
        for (std::size_t b = a + 1; b < view.series.size(); ++b)
            if (Overtaking one = crossingsOf(a, b, view); !one.years.empty())
                overtakings.push_back(std::move(one));
    tellOvertakings(overtakings, view);
    tellEqualCosts(view);
    return view;
}

} // namespace puteal
