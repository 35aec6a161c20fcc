/// Drawing series, steps, markers, end labels and break-even rings.
#include "charts/plot.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "charts/chart_view.h"
#include "charts/year_labels.h"

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

/// End labels that would overlap are spread, keeping their order and staying below `most`.
void spread(std::vector<End> &ends, double least, double most)
{
    std::sort(ends.begin(), ends.end(), [](const End &a, const End &b) { return a.y < b.y; });
    for (std::size_t i = 1; i < ends.size(); ++i)
        ends[i].y = std::max(ends[i].y, ends[i - 1].y + least);
    for (std::size_t i = ends.size(); i-- > 0;)
        ends[i].y = std::min(ends[i].y, i + 1 < ends.size() ? ends[i + 1].y - least : most);
}

/// The axes on the screen, as far as they are known before the plot lays itself out.
QSizeF roomOfAxes(const QCustomPlot &plot, const QFont &font, int endLabels)
{
    const QFontMetrics metrics(font);
    const int left = metrics.horizontalAdvance(QStringLiteral("100,000")) + metrics.height() + 24;
    const int below = 2 * metrics.height() + 24;
    return {std::max(60.0, double(plot.viewport().width() - left - endLabels)),
            std::max(60.0, double(plot.viewport().height() - below))};
}

void drawRing(QCustomPlot &plot, const QRectF &axes, const QSizeF &size, const QPointF &at, double scale)
{
    auto *ring = new QCPItemEllipse(&plot);
    ring->topLeft->setType(QCPItemPosition::ptPlotCoords);
    ring->bottomRight->setType(QCPItemPosition::ptPlotCoords);
    const double rx = axes.width() * size.width() / 2, ry = axes.height() * size.height() / 2;
    ring->topLeft->setCoords(at.x() - rx, at.y() + ry);
    ring->bottomRight->setCoords(at.x() + rx, at.y() - ry);
    ring->setClipToAxisRect(false); // whole also in the last year
    ring->setPen(QPen(QColor(0x15, 0x18, 0x1C), 1.2 * scale));
    ring->setBrush(Qt::NoBrush);
}

/// The year beside its ring, tied to it by a hairline where it stands apart.
void drawYear(QCustomPlot &plot, const QRectF &axes, double ring, const YearLabel &label, double year,
              const QFont &font)
{
    const auto place = [&](const QPointF &part) {
        return QPointF(axes.left() + part.x() * axes.width(), axes.top() + part.y() * axes.height());
    };
    const bool above = label.box.center().y() > label.ring.y();
    const double apart = above ? label.box.top() - label.ring.y() : label.ring.y() - label.box.bottom();
    if (apart > 1.5 * label.box.height()) {
        auto *tie = new QCPItemLine(&plot);
        const QPointF from = place(label.ring + QPointF(0.0, above ? ring / 2 : -ring / 2));
        const QPointF to = place({label.box.center().x(), above ? label.box.top() : label.box.bottom()});
        tie->start->setType(QCPItemPosition::ptPlotCoords);
        tie->end->setType(QCPItemPosition::ptPlotCoords);
        tie->start->setCoords(from.x(), from.y());
        tie->end->setCoords(to.x(), to.y());
        tie->setPen(QPen(QColor(0x7D, 0x83, 0x8C), 1));
    }
    auto *text = new QCPItemText(&plot);
    text->position->setType(QCPItemPosition::ptPlotCoords);
    const QPointF at = place(label.box.center());
    text->position->setCoords(at.x(), at.y());
    text->setText(QObject::tr("year %1").arg(QString::number(year, 'g', 3)));
    text->setFont(font);
    text->setColor(QColor(0x15, 0x18, 0x1C));
    if (!label.free)
        text->setBrush(QBrush(QColor(255, 255, 255, 200)));
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

/// What the values span; the vertical axis starts at 0 or below.
QRectF spanOf(const ChartView &view)
{
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
    return {xLow, yLow, xHigh - xLow, yHigh * 1.06 - yLow};
}

/// Draws the lines and returns where they end.
std::vector<End> drawSeries(QCustomPlot &plot, const ChartView &view, double scale)
{
    std::vector<End> ends;
    const bool steps = view.chart.kind == ChartKind::steps;
    for (std::size_t s = 0; s < view.series.size(); ++s) {
        const ChartSeries &series = view.series[s];
        const Look &look = looks[s % lookCount];
        QCPGraph *graph = plot.addGraph();
        graph->setData(QVector<double>(series.x.begin(), series.x.end()),
                       QVector<double>(series.y.begin(), series.y.end()), true);
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
    return ends;
}

QString endText(const ChartSeries &series)
{
    return words(series.title) + QStringLiteral("  ") + words(series.end);
}

/// Room the end labels take: they stand in the right margin, so the axis ends where the data do.
int endWidth(const ChartView &view, const QFont &font)
{
    int width = 0;
    for (const ChartSeries &series : view.series)
        width = std::max(width, QFontMetrics(font).horizontalAdvance(endText(series)));
    return width + 24;
}

void labelEnds(QCustomPlot &plot, const ChartView &view, std::vector<End> ends, const QRectF &axes,
               double least, const QFont &font)
{
    plot.axisRect()->setAutoMargins(QCP::msLeft | QCP::msTop | QCP::msBottom);
    plot.axisRect()->setMargins(QMargins(0, 0, endWidth(view, font), 0));
    spread(ends, least, axes.bottom());
    for (const End &end : ends)
        addLabel(plot, end.x, end.y, endText(view.series[end.series]), looks[end.series % lookCount].color,
                 font);
}

/// `beside` is room for the first and last marker, in parts of the axis.
void dressAxes(QCustomPlot &plot, const ChartView &view, const QRectF &axes, const QFont &font, double beside)
{
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
    plot.xAxis->setRange(axes.left() - axes.width() * beside, axes.right() + axes.width() * beside);
    plot.yAxis->setRange(axes.top(), axes.bottom());
    plot.xAxis->setTicker(ticker(axes.left(), axes.right(), true));
    plot.yAxis->setTicker(ticker(axes.top(), axes.bottom(), false));
    plot.setLocale(QLocale(QLocale::English, QLocale::UnitedStates));
    plot.yAxis->setNumberFormat(QStringLiteral("f"));
    plot.yAxis->setNumberPrecision(axes.height() > 20 ? 0 : 2);
    plot.xAxis->setLabel(words(view.xTitle));
    plot.yAxis->setLabel(words(view.yTitle));
}

} // namespace

std::vector<QColor> lineColors()
{
    std::vector<QColor> out;
    for (const Look &look : looks)
        out.push_back(look.color);
    return out;
}

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
    if (view.money && view.series.size() == 1)
        out += QStringLiteral("Only %1 is drawn: there is nothing to compare it with.")
                   .arg(words(view.series.front().title));
    if (view.money && view.crossings.empty() && view.series.size() > 1)
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
    const QRectF axes = spanOf(view);
    const QSizeF room = roomOfAxes(plot, font, endWidth(view, font));
    const QFontMetrics metrics(font);
    const double row = metrics.height() / room.height();
    labelEnds(plot, view, drawSeries(plot, view, scale), axes, axes.height() * row, font);
    // A label keeps the size of a marker off the lines; a ring is round.
    const double marker = 6.5 * scale;
    const QSizeF label((metrics.horizontalAdvance(QObject::tr("year %1").arg(10)) + marker) / room.width(),
                       row + marker / room.height());
    const QSizeF ring(2.6 * marker / room.width(), 2.6 * marker / room.height());
    // A health stop stands at the upper left: no year is written there.
    const QRectF stop = view.stop.empty() ? QRectF() : QRectF(0.0, 0.86, 0.7, 0.14);
    for (const YearLabel &year : placeYearLabels(view, axes, label, ring, stop))
        drawYear(plot, axes, ring.height(), year, view.points[year.point].x, font);
    std::vector<QPointF> ringed;
    for (const auto &point : view.points) {
        // Where many cross at one place one ring says so; more would be a blot.
        const QPointF at(point.x, point.y);
        if (std::any_of(ringed.begin(), ringed.end(), [&](const QPointF &other) {
                return std::fabs(other.x() - at.x()) < 0.1 * ring.width() * axes.width() &&
                       std::fabs(other.y() - at.y()) < 0.6 * ring.height() * axes.height();
            }))
            continue;
        ringed.push_back(at);
        drawRing(plot, axes, ring, at, scale);
    }
    sayStop(plot, view, font);
    dressAxes(plot, view, axes, font, marker / room.width());
}

} // namespace puteal::charts
