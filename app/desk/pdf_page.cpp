/// The page as PDF: the same HTML as the command line's, laid out on paper with page numbers.
#include "desk/pdf_page.h"

#include <QAbstractTextDocumentLayout>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgRenderer>
#include <QTextDocument>

#include "charts/chart_view.h"
#include "desk/look.h"
#include "paper/page.h"

namespace puteal::desk
{

namespace
{

void paintPages(QPdfWriter &pdf, QTextDocument &document, const QString &title)
{
    QPainter painter(&pdf);
    const QSizeF page = document.pageSize();
    const int pages = document.pageCount();
    QFont font = document.defaultFont();
    font.setPointSizeF(8);
    for (int i = 0; i < pages; ++i) {
        if (i > 0)
            pdf.newPage();
        painter.save();
        painter.translate(0, -i * page.height());
        QAbstractTextDocumentLayout::PaintContext context;
        context.clip = QRectF(0, i * page.height(), page.width(), page.height());
        painter.setClipRect(context.clip);
        context.palette.setColor(QPalette::Text, color::text);
        document.documentLayout()->draw(&painter, context);
        painter.restore();
        painter.setFont(font);
        painter.setPen(color::quiet);
        const QRectF foot(0, page.height() + 4, page.width(), 20);
        painter.drawText(foot, Qt::AlignLeft, title);
        painter.drawText(foot, Qt::AlignRight, QObject::tr("page %1 of %2").arg(i + 1).arg(pages));
    }
}

} // namespace

bool writePdfPage(const Session &session, const QString &path, QString &why)
{
    {
        QFile probe(path);
        if (!probe.open(QIODevice::WriteOnly)) {
            why = probe.errorString();
            return false;
        }
    }
    QPdfWriter pdf(path);
    pdf.setPageSize(QPageSize(QPageSize::Letter));
    pdf.setPageMargins(QMarginsF(18, 18, 18, 22), QPageLayout::Millimeter);
    pdf.setResolution(96);
    pdf.setTitle(fromUtf8(session.workbook().title));
    QTextDocument document;
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPointSizeF(8.5);
    document.setDefaultFont(font);
    QString image;
    if (!session.workbook().charts.empty()) {
        const ChartView chart = session.chart(session.workbook().charts.front().key);
        if (!chart.error) {
            QSvgRenderer renderer(charts::chartSvg(chart));
            QImage picture(QSize(2000, 1120), QImage::Format_RGB32);
            picture.fill(Qt::white);
            QPainter painter(&picture);
            renderer.render(&painter);
            painter.end();
            document.addResource(QTextDocument::ImageResource, QUrl(QStringLiteral("chart")), picture);
            image = QStringLiteral("<p><img src='chart' width='%1'></p>").arg(pdf.width());
        }
    }
    document.setHtml(
        fromUtf8(paper::pageHtml(paper::buildPage(session, paper::PageScope::result), image.toStdString())));
    document.setPageSize(QSizeF(pdf.width(), pdf.height() - 24));
    paintPages(pdf, document, fromUtf8(session.workbook().title));
    return true;
}

} // namespace puteal::desk
