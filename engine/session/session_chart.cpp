/// Charts as series: reads the ranges a chart record names, finds every break-even year, writes the
/// sentences.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
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

/// Break-even points of two series given at the same x: where the cheaper one changes.
void crossingsOf(const std::vector<ChartSeries> &series, std::size_t a, std::size_t b, ChartKind kind,
                 ChartView &view)
{
    const auto &x = series[a].x;
    std::vector<std::string> years;
    int before = 0;
    double lastDifference = 0.0;
    std::size_t cheaper = a;
    for (std::size_t i = 0; i < x.size() && i < series[b].y.size(); ++i) {
        const double difference = series[b].y[i] - series[a].y[i];
        if (!std::isfinite(difference))
            continue;
        const int now = nearlyEqual(series[a].y[i], series[b].y[i]) ? 0 : (difference > 0 ? 1 : -1);
        if (before != 0 && now != 0 && now != before && i > 0) {
            // In a step chart the year whose end first shows the other one cheaper counts; else the line
            // crossing.
            const double share = lastDifference / (lastDifference - difference);
            const double at = kind == ChartKind::steps ? x[i] : x[i - 1] + share * (x[i] - x[i - 1]);
            view.points.push_back({at, std::max(series[a].y[i], series[b].y[i]), a, b});
            years.push_back(kind == ChartKind::steps ? shortest(at) : toFigures(at, 3));
            cheaper = now > 0 ? a : b;
        }
        if (now != 0) {
            before = now;
            lastDifference = difference;
        }
    }
    if (years.empty())
        return;
    const std::size_t other = cheaper == a ? b : a;
    std::string sentence;
    if (years.size() == 1)
        sentence = fmt::format("{} is cheaper than {} from year {} on", series[cheaper].title,
                               series[other].title, years[0]);
    else {
        std::string all = years[0];
        for (std::size_t i = 1; i < years.size(); ++i)
            all += (i + 1 == years.size() ? " and " : ", ") + years[i];
        sentence = fmt::format("{} and {} change places in years {}; {} is cheaper from year {} on",
                               series[a].title, series[b].title, all, series[cheaper].title, years.back());
    }
    view.crossings.push_back(std::move(sentence));
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
    for (std::size_t a = 0; view.money && a < view.series.size(); ++a)
        for (std::size_t b = a + 1; b < view.series.size(); ++b)
            crossingsOf(view.series, a, b, found->kind, view);
    return view;
}

} // namespace puteal
