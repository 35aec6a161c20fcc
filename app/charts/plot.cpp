/// Drawing series, steps, markers, end labels and break-even rings.
#include "charts/plot.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace puteal::charts
{

namespace
{

struct Look {
    QColor color;
    Qt::PenStyle dash;
    QCPScatterStyle::ScatterShape marker;
};

/// Each at least 5.5:1 on white; neighbors differ in dash and marker too, since two of the hues look alike to
/// some eyes.
const Look looks[] = {
    {QColor(0x0B, 0x5F, 0xA5), Qt::SolidLine, QCPScatterStyle::ssDisc},
    {QColor(0xB3, 0x47, 0x00), Qt::DashLine, QCPScatterStyle::ssSquare},
    {QColor(0x2E, 0x6B, 0x2E), Qt::DotLine, QCPScatterStyle::ssTriangle},
    {QColor(0x7A, 0x3E, 0x9D), Qt::DashDotLine, QCPScatterStyle::ssDiamond},
    {QColor(0x33, 0x33, 0x33), Qt::DashDotDotLine, QCPScatterStyle::ssCross},
    {QColor(0x8A, 0x5A, 0x00), Qt::SolidLine, QCPScatterStyle::ssTriangleInverted},
    {QColor(0x0B, 0x5F, 0xA5), Qt::DashDotLine, QCPScatterStyle::ssPlus},
    {QColor(0x7A, 0x3E, 0x9D), Qt::DashLine, QCPScatterStyle::ssStar},
    {QColor(0x2E, 0x6B, 0x2E), Qt::SolidLine, QCPScatterStyle::ssCrossSquare},
    {QColor(0xB3, 0x47, 0x00), Qt::DotLine, QCPScatterStyle::ssPlusCircle},
    {QColor(0x33, 0x33, 0x33), Qt::DashLine, QCPScatterStyle::ssPeace},
    {QColor(0x8A, 0x5A, 0x00), Qt::DotLine, QCPScatterStyle::ssCrossCircle},
};
constexpr std::size_t lookCount = sizeof(looks) / sizeof(looks[0]);

QString words(const std::string &text)
{
    return QString::fromStdString(text);
}

/// Never more than about 20 ticks, whatever the range.
double niceStep(double range)
{
    if (!(range > 0.0))
        return 1.0;
    const double rough = range / 8.0;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0, 10.0})
        if (rough <= factor * power)
            return factor * power;
    return 10.0 * power;
}

QSharedPointer<QCPAxisTicker> ticker(double low, double high, bool whole)
{
    QSharedPointer<QCPAxisTickerFixed> ticks(new QCPAxisTickerFixed);
    double step = niceStep(high - low);
    if (whole)
        step = std::max(1.0, std::round(step));
    ticks->setTickStep(step);
    return ticks;
}

void addLabel(QCustomPlot &plot, double x, double y, const QString &text, const QColor &color,
              const QFont &font)
{
    auto *label = new QCPItemText(&plot);
    label->setClipToAxisRect(false);
    label->setPositionAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    label->setTextAlignment(Qt::AlignLeft);
    label->position->setType(QCPItemPosition::ptPlotCoords);
    label->position->setCoords(x, y);
    label->setText(text);
    label->setFont(font);
    label->setColor(color);
    label->setPadding(QMargins(6, 0, 0, 0));
}

struct End {
    std::size_t series;
    double x, y;
};

/// End labels that would overlap are spread, keeping their order.
void spread(std::vector<End> &ends, double least)
{
    std::sort(ends.begin(), ends.end(), [](const End &a, const End &b) { return a.y < b.y; });
    for (std::size_t i = 1; i < ends.size(); ++i)
        ends[i].y = std::max(ends[i].y, ends[i - 1].y + least);
}

/// The year beside its ring, at the first of six places that no other label has taken.
void labelRing(QCustomPlot &plot, const ChartView::Crossing &point, const QRectF &axes, const QFont &font,
               std::vector<QRectF> &taken)
{
    const double across = 0.085, up = 0.045; // about "year 10" in this font
    const QPointF at((point.x - axes.left()) / axes.width(), (point.y - axes.top()) / axes.height());
    for (const QPointF step : {QPointF(-0.5, 0.9), QPointF(-0.5, -1.9), QPointF(-1.2, 0.7),
                               QPointF(0.2, -1.7), QPointF(-0.5, 1.9), QPointF(-0.5, -2.9)}) {
        const QRectF box(at.x() + step.x() * across, at.y() + step.y() * up, across, up);
        if (box.left() < 0.0 || box.right() > 1.0 || box.top() < 0.0 || box.bottom() > 1.0 ||
            std::any_of(taken.begin(), taken.end(),
                        [&](const QRectF &other) { return other.intersects(box); }))
            continue;
        taken.push_back(box);
        auto *label = new QCPItemText(&plot);
        label->position->setType(QCPItemPosition::ptPlotCoords);
        label->position->setCoords(axes.left() + box.center().x() * axes.width(),
                                   axes.top() + box.center().y() * axes.height());
        label->setText(QObject::tr("year %1").arg(QString::number(point.x, 'g', 3)));
        label->setFont(font);
        label->setColor(QColor(0x15, 0x18, 0x1C));
        label->setBrush(QBrush(QColor(255, 255, 255, 200)));
        return;
    }
}

/// A health stop is said in the picture itself: pictures travel without their sentences.
void sayStop(QCustomPlot &plot, const ChartView &view, const QFont &font)
{
    if (view.stop.empty())
        return;
    auto *text = new QCPItemText(&plot);
    text->position->setType(QCPItemPosition::ptAxisRectRatio);
    text->position->setCoords(0.02, 0.03);
    text->setPositionAlignment(Qt::AlignLeft | Qt::AlignTop);
    text->setTextAlignment(Qt::AlignLeft);
    QFont bold = font;
    bold.setBold(true);
    text->setFont(bold);
    text->setColor(QColor(0xB3, 0x26, 0x1E));
    text->setPen(QPen(QColor(0xB3, 0x26, 0x1E), 1.5));
    text->setBrush(QBrush(Qt::white));
    text->setPadding(QMargins(6, 4, 6, 4));
    text->setText(words(view.stop.substr(0, view.stop.find('.'))));
}

/// Without a series there are no axes either: figures along them would mean nothing.
void drawNothing(QCustomPlot &plot, const ChartView &view, const QFont &font)
{
    auto *none = new QCPItemText(&plot);
    none->position->setType(QCPItemPosition::ptAxisRectRatio);
    none->position->setCoords(0.5, 0.5);
    none->setFont(font);
    none->setText(view.stop.empty() && view.leftOut.size() == 1
                      ? QObject::tr("nothing is drawn for\n") +
                            words(view.leftOut.front()).replace(QStringLiteral("; "), QStringLiteral(";\n"))
                      : QObject::tr("nothing is drawn: the sentences below say why"));
    sayStop(plot, view, font);
}

} // namespace

QStringList chartSentences(const ChartView &view)
{
    QStringList out;
    if (!view.stop.empty()) {
        out += words(view.stop) + QLatin1Char('.');
        if (view.series.empty())
            return out; // why each option is not drawn is no question then
    }
    for (const auto &sentence : view.crossings)
        out += words(sentence) + QLatin1Char('.');
    if (view.crossings.empty() && view.series.size() > 1)
        out += QStringLiteral("No option overtakes another within these years.");
    for (const auto &left : view.leftOut)
        out += QStringLiteral("Not drawn: ") + words(left) + QLatin1Char('.');
    return out;
}

void fillPlot(QCustomPlot &plot, const ChartView &view, double scale)
{
    plot.clearPlottables();
    plot.clearItems();
    plot.setAntialiasedElements(QCP::aeAll);
    plot.setNoAntialiasingOnDrag(true);
    QFont font = plot.font();
    font.setPointSizeF(10.0 * scale);
    for (QCPAxis *axis : {plot.xAxis, plot.yAxis})
        axis->setVisible(!view.series.empty());
    if (view.series.empty()) {
        drawNothing(plot, view, font);
        return;
    }
    double xLow = HUGE_VAL, xHigh = -HUGE_VAL, yLow = 0.0, yHigh = -HUGE_VAL;
    for (const auto &series : view.series)
        for (std::size_t i = 0; i < series.y.size(); ++i)
            if (std::isfinite(series.x[i]) && std::isfinite(series.y[i])) {
                xLow = std::min(xLow, series.x[i]);
                xHigh = std::max(xHigh, series.x[i]);
                yLow = std::min(yLow, series.y[i]);
                yHigh = std::max(yHigh, series.y[i]);
            }
    if (!(xHigh > xLow)) {
        xLow = 0.0;
        xHigh = 1.0;
    }
    if (!(yHigh > yLow))
        yHigh = yLow + 1.0;
    std::vector<End> ends;
    const bool steps = view.chart.kind == ChartKind::steps;
    for (std::size_t s = 0; s < view.series.size(); ++s) {
        const ChartSeries &series = view.series[s];
        const Look &look = looks[s % lookCount];
        QCPGraph *graph = plot.addGraph();
        QVector<double> x(series.x.begin(), series.x.end()), y(series.y.begin(), series.y.end());
        graph->setData(x, y, true);
        graph->setName(words(series.title));
        graph->setLineStyle(steps ? QCPGraph::lsStepLeft : QCPGraph::lsLine);
        graph->setPen(QPen(look.color, 1.0 * scale, look.dash));
        graph->setScatterStyle(QCPScatterStyle(
            look.marker, QPen(look.color, 1.2 * scale),
            look.marker == QCPScatterStyle::ssDisc ? QBrush(look.color) : QBrush(Qt::white), 6.5 * scale));
        for (std::size_t i = series.y.size(); i-- > 0;)
            if (std::isfinite(series.y[i])) {
                ends.push_back({s, series.x[i], series.y[i]});
                break;
            }
    }
    // The end labels stand in the right margin, so the axis ends where the data do.
    int labelWidth = 0;
    for (const auto &series : view.series)
        labelWidth =
            std::max(labelWidth, QFontMetrics(font).horizontalAdvance(
                                     words(series.title) + QStringLiteral("  ") + words(series.end)));
    plot.axisRect()->setAutoMargins(QCP::msLeft | QCP::msTop | QCP::msBottom);
    plot.axisRect()->setMargins(QMargins(0, 0, labelWidth + 24, 0));
    plot.xAxis->setRange(xLow - (xHigh - xLow) * 0.01, xHigh + (xHigh - xLow) * 0.01);
    plot.yAxis->setRange(yLow, yHigh * 1.06);
    spread(ends, (yHigh * 1.06 - yLow) * 0.042 * scale);
    for (const End &end : ends)
        addLabel(plot, end.x, end.y,
                 words(view.series[end.series].title) + QStringLiteral("  ") +
                     words(view.series[end.series].end),
                 looks[end.series % lookCount].color, font);
    std::vector<QRectF> taken; // labels of rings, in parts of the axes
    for (const auto &point : view.points) {
        labelRing(plot, point, QRectF(xLow, yLow, xHigh - xLow, yHigh * 1.06 - yLow), font, taken);
        auto *ring = new QCPItemEllipse(&plot);
        ring->topLeft->setType(QCPItemPosition::ptPlotCoords);
        ring->bottomRight->setType(QCPItemPosition::ptPlotCoords);
        const double rx = (xHigh - xLow) * 0.014, ry = (yHigh - yLow) * 0.02;
        ring->topLeft->setCoords(point.x - rx, point.y + ry);
        ring->bottomRight->setCoords(point.x + rx, point.y - ry);
        ring->setPen(QPen(QColor(0x15, 0x18, 0x1C), 1.2 * scale));
        ring->setBrush(Qt::NoBrush);
    }
    sayStop(plot, view, font);
    for (QCPAxis *axis : {plot.xAxis, plot.yAxis}) {
        axis->setLabelFont(font);
        axis->setTickLabelFont(font);
        axis->setBasePen(QPen(QColor(0x7D, 0x83, 0x8C)));
        axis->setTickPen(QPen(QColor(0x7D, 0x83, 0x8C)));
        axis->setSubTicks(false);
        axis->grid()->setPen(QPen(QColor(0xE3, 0xE5, 0xE8), 1, Qt::SolidLine));
        axis->setNumberPrecision(10);
        axis->setNumberFormat(QStringLiteral("g"));
    }
    plot.xAxis->setTicker(ticker(xLow, xHigh, true));
    plot.yAxis->setTicker(ticker(yLow, yHigh, false));
    plot.setLocale(QLocale(QLocale::English, QLocale::UnitedStates));
    plot.yAxis->setNumberFormat(QStringLiteral("f"));
    plot.yAxis->setNumberPrecision(yHigh - yLow > 20 ? 0 : 2);
    plot.xAxis->setLabel(words(view.xTitle));
    plot.yAxis->setLabel(words(view.yTitle));
}

} // namespace puteal::charts
