/// Where the years of break-even points are written: beside their rings, off the lines.
#pragma once

#include <vector>

#include <QLineF>
#include <QRectF>

#include "session/session.h"

namespace puteal::charts
{

/// All in parts of the axes: 0 to 1 from left to right and from bottom to top.
struct YearLabel {
    std::size_t point = 0; ///< index of the crossing
    QPointF ring;
    QRectF box;
    bool free = true; ///< no line runs through the box
};

/// One label a crossing, or for rings of one year that touch; a crossing for which every place is taken by
/// another label goes without. `axes` is what the axes span, `label` and `ring` the sizes of a label and a
/// ring, `barred` is kept free.
std::vector<YearLabel> placeYearLabels(const ChartView &view, const QRectF &axes, const QSizeF &label,
                                       const QSizeF &ring, const QRectF &barred = {});

/// The lines as drawn, in parts of the axes: what a label should not cover.
std::vector<QLineF> drawnLines(const ChartView &view, const QRectF &axes);
/// How many of the lines run through the box.
int linesThrough(const QRectF &box, const std::vector<QLineF> &lines);

} // namespace puteal::charts
