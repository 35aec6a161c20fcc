/// Filling a plot from a ChartView; shared by the pane and the file export.
#pragma once

#include <qcustomplot.h>

#include "session/session.h"

namespace puteal::charts
{

/// Clears `plot` and draws the view. `scale` enlarges pens and fonts (projector).
void fillPlot(QCustomPlot &plot, const ChartView &view, double scale = 1.0);

/// All sentences under a chart: break-even years, then what was left out.
QStringList chartSentences(const ChartView &view);

} // namespace puteal::charts
