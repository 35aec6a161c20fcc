/// The chart as a file: SVG and PDF keep lines as lines, PNG is drawn at twice the size.
#include <QBuffer>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include "charts/chart_view.h"
#include "charts/plot.h"

namespace puteal::charts
{

namespace
{

constexpr int titleHeight = 34, edge = 14;

/// Title, plot and sentences painted into a rectangle of `size`.
void paintChart(QCPPainter &painter, const ChartView &view, const QSize &size)
{
    QCustomPlot plot;
    plot.setAttribute(Qt::WA_DontShowOnScreen);
    const QStringList sentences = chartSentences(view);
    QFont font = painter.font();
    font.setPixelSize(17);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(QColor(0x15, 0x18, 0x1C));
    painter.drawText(QRect(edge, 6, size.width() - 2 * edge, titleHeight), Qt::AlignVCenter | Qt::AlignLeft,
                     QString::fromStdString(view.chart.title));
    font.setPixelSize(12);
    font.setBold(false);
    QString all = sentences.join(QLatin1Char('\n'));
    painter.setFont(font);
    const QRect below =
        painter.boundingRect(QRect(0, 0, size.width() - 2 * edge, 10000), Qt::TextWordWrap, all);
    const int text = std::min(below.height() + edge, size.height() / 2);
    const int height = size.height() - titleHeight - text - edge;
    painter.save();
    painter.translate(0, titleHeight);
    plot.setViewport(QRect(0, 0, size.width(), height)); // labels are placed for this size
    fillPlot(plot, view);
    plot.toPainter(&painter, size.width(), height);
    painter.restore();
    painter.setFont(font);
    painter.setPen(QColor(0x15, 0x18, 0x1C));
    painter.drawText(QRect(edge, titleHeight + height + 6, size.width() - 2 * edge, text), Qt::TextWordWrap,
                     all);
}

bool paintSvg(QIODevice &device, const ChartView &view, const QSize &size)
{
    QSvgGenerator svg;
    svg.setOutputDevice(&device);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(), size));
    svg.setTitle(QString::fromStdString(view.chart.title));
    QCPPainter painter;
    if (!painter.begin(&svg))
        return false;
    painter.setMode(QCPPainter::pmVectorized);
    painter.fillRect(QRect(QPoint(), size), Qt::white);
    paintChart(painter, view, size);
    return painter.end();
}

} // namespace

QByteArray chartSvg(const ChartView &view, const QSize &size)
{
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    paintSvg(buffer, view, size);
    QByteArray text = buffer.data();
    // Inside a page only the element itself may stand.
    const auto start = text.indexOf("<svg");
    return start > 0 ? text.mid(start) : text;
}

bool exportChart(const ChartView &view, const QString &path, QString &why, const QSize &size)
{
    if (view.error) {
        why = QString::fromStdString(view.error->words);
        return false;
    }
    const QString ending = QFileInfo(path).suffix().toLower();
    if (ending == QLatin1String("svg")) {
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly)) {
            why = file.errorString();
            return false;
        }
        const bool painted = paintSvg(file, view, size) && file.flush();
        why = painted ? QString() : file.errorString();
        return painted;
    }
    if (ending == QLatin1String("png")) {
        QImage image(size * 2, QImage::Format_RGB32);
        image.fill(Qt::white);
        QCPPainter painter(&image);
        painter.scale(2, 2);
        paintChart(painter, view, size);
        painter.end();
        QFile file(path);
        if (!file.open(QIODevice::WriteOnly) || !image.save(&file, "PNG", 80) || !file.flush()) {
            why = file.errorString();
            return false;
        }
        return true;
    }
    if (ending == QLatin1String("pdf")) {
        QPdfWriter pdf(path);
        pdf.setPageSize(QPageSize(QPageSize::Letter));
        pdf.setPageOrientation(QPageLayout::Landscape);
        pdf.setResolution(96);
        QCPPainter painter;
        if (!painter.begin(&pdf)) {
            why = QStringLiteral("the file cannot be written");
            return false;
        }
        painter.setMode(QCPPainter::pmVectorized);
        const double fit = std::min(pdf.width() / double(size.width()), pdf.height() / double(size.height()));
        painter.scale(fit, fit);
        paintChart(painter, view, size);
        return painter.end();
    }
    why = QStringLiteral("the ending says what to write: .svg, .png or .pdf");
    return false;
}

} // namespace puteal::charts
