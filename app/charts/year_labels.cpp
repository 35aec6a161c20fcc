/// Places are tried from the ring outwards; the first that covers no line is taken.
#include "charts/year_labels.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace puteal::charts
{

namespace
{

QPointF inAxes(double x, double y, const QRectF &axes)
{
    return {(x - axes.left()) / axes.width(), (y - axes.top()) / axes.height()};
}

/// Corners of boxes round the ring, the nearest first: two rows above and below, then further out.
std::vector<QPointF> places()
{
    std::vector<QPointF> out;
    for (const double row : {0.8, 1.9, 3.2, 4.6})
        for (const double side : {-0.5, 0.25, -1.25}) {
            out.emplace_back(side, row);
            out.emplace_back(side, -row - 1.0);
        }
    for (const double row : {6.5, 9.0, 12.0})
        for (const double side : {-0.5, 0.6, -1.6}) {
            out.emplace_back(side, -row);
            out.emplace_back(side, row);
        }
    return out;
}

} // namespace

std::vector<QLineF> drawnLines(const ChartView &view, const QRectF &axes)
{
    std::vector<QLineF> out;
    const bool steps = view.chart.kind == ChartKind::steps;
    for (const auto &series : view.series)
        for (std::size_t i = 1; i < series.y.size(); ++i) {
            if (!std::isfinite(series.y[i - 1]) || !std::isfinite(series.y[i]))
                continue;
            const QPointF a = inAxes(series.x[i - 1], series.y[i - 1], axes);
            const QPointF b = inAxes(series.x[i], series.y[i], axes);
            if (!steps) {
                out.emplace_back(a, b);
                continue;
            }
            out.emplace_back(a, QPointF(b.x(), a.y()));
            out.emplace_back(QPointF(b.x(), a.y()), b);
        }
    return out;
}

int linesThrough(const QRectF &box, const std::vector<QLineF> &lines)
{
    const QLineF sides[] = {{box.topLeft(), box.topRight()},
                            {box.topRight(), box.bottomRight()},
                            {box.bottomRight(), box.bottomLeft()},
                            {box.bottomLeft(), box.topLeft()}};
    return static_cast<int>(std::count_if(lines.begin(), lines.end(), [&](const QLineF &line) {
        return box.contains(line.p1()) || box.contains(line.p2()) ||
               std::any_of(std::begin(sides), std::end(sides), [&](const QLineF &side) {
                   return line.intersects(side, nullptr) == QLineF::BoundedIntersection;
               });
    }));
}

std::vector<YearLabel> placeYearLabels(const ChartView &view, const QRectF &axes, const QSizeF &label,
                                       const QSizeF &ringSize, const QRectF &barred)
{
    const std::vector<QLineF> lines = drawnLines(view, axes);
    std::vector<QRectF> taken;
    if (!barred.isEmpty())
        taken.push_back(barred);
    for (const auto &point : view.points) {
        const QPointF ring = inAxes(point.x, point.y, axes);
        taken.emplace_back(ring.x() - ringSize.width() / 2, ring.y() - ringSize.height() / 2,
                           ringSize.width(), ringSize.height());
    }
    std::vector<YearLabel> out;
    for (std::size_t i = 0; i < view.points.size(); ++i) {
        const QPointF ring = inAxes(view.points[i].x, view.points[i].y, axes);
        // Rings of one year that touch are told by one label.
        if (std::any_of(out.begin(), out.end(), [&](const YearLabel &other) {
                return std::fabs(other.ring.x() - ring.x()) < 0.1 * ringSize.width() &&
                       std::fabs(other.ring.y() - ring.y()) < 1.5 * ringSize.height();
            }))
            continue;
        std::optional<YearLabel> best;
        int least = 1000000;
        for (const QPointF &place : places()) {
            const QRectF box(ring.x() + place.x() * label.width(), ring.y() + place.y() * label.height(),
                             label.width(), label.height());
            if (box.left() < 0.0 || box.right() > 1.0 || box.top() < 0.0 || box.bottom() > 1.0 ||
                std::any_of(taken.begin(), taken.end(),
                            [&](const QRectF &other) { return other.intersects(box); }))
                continue;
            const int covered = linesThrough(box, lines);
            if (covered < least) {
                least = covered;
                best = YearLabel{i, ring, box, covered == 0};
            }
            if (covered == 0)
                break;
        }
        if (best) {
            taken.push_back(best->box);
            out.push_back(*best);
        }
    }
    return out;
}

} // namespace puteal::charts
