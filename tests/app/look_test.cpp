/// What can be seen: contrast of every ink on its ground, shapes beside colors, years off the lines, whole
/// words and headings.
#include <cmath>

#include <QHeaderView>
#include <QImage>
#include <QLineF>
#include <QPainter>
#include <QScrollBar>
#include <QTest>

#include "charts/chart_view.h"
#include "charts/year_labels.h"
#include "desk/calculation_pane.h"
#include "desk/look.h"
#include "desk/sheet_view.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

/// Relative luminance and contrast ratio as WCAG 2.2 defines them [source: w3.org/TR/WCAG22, definitions
/// "relative luminance" and "contrast ratio"].
double luminance(const QColor &color)
{
    const auto part = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * part(color.redF()) + 0.7152 * part(color.greenF()) + 0.0722 * part(color.blueF());
}
double contrast(const QColor &a, const QColor &b)
{
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

std::unique_ptr<Session> opened(const std::string &text)
{
    auto session = Session::fromText(text);
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return std::move(*session);
}

const char *const wordy = R"(puteal workbook 1
title "Wordy"
sheet s "S"
column item words "Item" 24
column amount amounts "Amount" 18
column recommended amounts "Recommended" 6
column caution words "Caution" 20
line
item: "Setting, where the softener alone carries all of the iron there is"
amount: 12 gpg
  name setting
caution: "nothing here says that the water is safe to drink: it says which limits are kept, and only of what was tested; ask the health department"
line
item: "Short"
amount: 3 gpg
line
item: "Wrong"
amount: seting * 2
line
item: "Waits"
amount: amount[3] * 2
end s 4
end workbook
)";

/// A cell of the sheet as it is painted, `width` wide and as high as its line.
QImage painted(const Session &session, const CellAt &at, int width)
{
    SheetModel model;
    model.setSheet(&session, at.sheet);
    CellDelegate delegate(&model);
    QImage image(width, CellDelegate::lineHeight(QApplication::font()), QImage::Format_RGB32);
    image.fill(color::paper);
    QPainter painter(&image);
    QStyleOptionViewItem option;
    option.font = QApplication::font();
    option.rect = image.rect();
    delegate.paint(&painter, option, model.index(static_cast<int>(at.line), static_cast<int>(at.column)));
    return image;
}

} // namespace

class LookTest : public QObject
{
    Q_OBJECT
private slots:
    void theFormulaOfContrastIsTheStandards()
    {
        // black on white is 21 by definition; #767676 on white is the usual example just above 4.5
        QVERIFY(std::abs(contrast(Qt::black, Qt::white) - 21.0) < 1e-9);
        QVERIFY(std::abs(contrast(QColor(0x76, 0x76, 0x76), Qt::white) - 4.54) < 0.01);
    }
    void everyInkIsReadOnItsGround()
    {
        QStringList poor;
        const auto all = pairings();
        for (const Pairing &pair : all)
            if (const double met = contrast(pair.ink, pair.ground); met < pair.least)
                poor += QString("%1 %2 on %3: %4")
                            .arg(pair.words, pair.ink.name(), pair.ground.name())
                            .arg(met, 0, 'f', 2);
        QVERIFY(all.size() > 30);
        QCOMPARE(poor.join("; "), QString());
    }
    void everyLineOfAChartIsReadAsTextToo()
    {
        const auto lines = charts::lineColors();
        QVERIFY(lines.size() >= 12);
        for (const QColor &line : lines)
            QVERIFY2(contrast(line, Qt::white) >= 4.5, qPrintable(line.name()));
    }
    void anErrorHasAShapeBeforeItsWords()
    {
        const auto session = opened(wordy);
        QVERIFY(session->view({0, 1, 2}).error.has_value());
        const QImage wrong = painted(*session, {0, 1, 2}, 260), waits = painted(*session, {0, 1, 3}, 260);
        const int s = QFontMetrics(QApplication::font()).height() * 3 / 4;
        const auto inkIn = [](const QImage &image, const QRect &box, const QColor &ink) {
            int count = 0;
            for (int y = box.top(); y <= box.bottom(); ++y)
                for (int x = box.left(); x <= box.right(); ++x)
                    count += image.pixelColor(x, y) == ink ? 1 : 0;
            return count;
        };
        // A filled diamond covers about half of its square; a ring much less of it, and not in that color.
        const QRect square(6, wrong.height() / 2 - s / 2, s, s);
        QVERIFY(inkIn(wrong, square, color::outside) > s * s / 6);
        QCOMPARE(inkIn(waits, square, color::outside), 0);
        QVERIFY(inkIn(waits, square, color::paper) < s * s * 9 / 10);
    }
    void longWordsMakeTheirLineHigher()
    {
        const auto session = opened(wordy);
        SheetView view;
        view.resize(760, 500);
        view.setSheet(session.get(), 0);
        view.show();
        const int plain = CellDelegate::lineHeight(view.font());
        QVERIFY2(view.rowHeight(0) > plain * 3 / 2, qPrintable(QString::number(view.rowHeight(0))));
        QCOMPARE(view.rowHeight(1), plain);
        // An edit makes the line what its words need now.
        QVERIFY(session->apply(SetText{{0, 3, 0}, "short"}));
        QVERIFY(session->apply(SetText{{0, 0, 0}, "Setting"}));
        view.sheetModel()->cellsChanged({{0, 0, 0}, {0, 3, 0}});
        QCOMPARE(view.rowHeight(0), plain);
    }
    void aLongHeadingIsWhole()
    {
        const auto session =
            opened("puteal workbook 1\ntitle \"H\"\nsheet s \"S\"\ncolumn item words \"Item\" 14\ncolumn a "
                   "amounts \"A\" 16\nline\nitem: \"Near bands of the screening (defaults, may be "
                   "changed)\"\nend s 1\nend workbook\n");
        SheetModel model;
        model.setSheet(session.get(), 0);
        const CellDelegate delegate(&model);
        QFont bold = QApplication::font();
        bold.setBold(true);
        bold.setPointSizeF(bold.pointSizeF() * 0.9);
        const QRect needed =
            QFontMetrics(bold).boundingRect(QRect(0, 0, 150 - 12, 1000), Qt::TextWordWrap,
                                            "Near bands of the screening (defaults, may be changed)");
        QVERIFY(delegate.neededHeight(model.index(0, 0), 150, QApplication::font()) >= needed.height());
    }
    void aCutTextIsWholeInTheTooltip()
    {
        const auto session = opened(wordy);
        SheetModel model;
        model.setSheet(session.get(), 0);
        const QString tip = model.data(model.index(0, 3), Qt::ToolTipRole).toString();
        QVERIFY2(tip.endsWith("ask the health department"), qPrintable(tip));
    }
    void aHeadingIsNeverCut()
    {
        const auto session = opened(wordy);
        SheetView view;
        view.resize(500, 300);
        view.setSheet(session.get(), 0);
        view.show();
        QVERIFY(view.columnWidth(2) >= view.fontMetrics().horizontalAdvance("Recommended") + 12);
    }
    void theSlipKeepsItsLineWhenTheLineIsHigh()
    {
        const auto session = opened(wordy);
        SheetView view;
        view.resize(760, 500);
        view.setSheet(session.get(), 0);
        view.show();
        view.setCurrentCell({0, 1, 0});
        QTest::qWait(20);
        const int before = view.rowHeight(0);
        view.openSlip({}, false);
        QVERIFY(view.slip()->y() >= view.rowViewportPosition(0) + before);
        view.leaveSlip();
        QCOMPARE(view.rowHeight(0), before);
    }
    void theCalculationFitsThePane()
    {
        auto session = Session::open(PUTEAL_SOURCE_DIR "/sheets/iron_options.puteal");
        QVERIFY(session);
        const auto at = (*session)->find("recommended");
        QVERIFY(at);
        CalculationPane pane;
        int wide = 0;
        // 300 high: the scroll bar comes while the text is set, and narrows it
        for (const int width : {700, 300}) {
            pane.resize(width, 300);
            pane.show(**session, *at);
            static_cast<QWidget &>(pane).show();
            QTest::qWait(20);
            QCOMPARE(pane.horizontalScrollBar()->maximum(), 0);
            QCOMPARE(pane.toPlainText().count("CALCULATION: line"), 1);
            const int blocks = pane.document()->blockCount();
            QVERIFY(width == 700 || blocks > wide);
            wide = blocks;
        }
        // Made wider, the same calculation takes fewer rows without being asked for anew.
        pane.resize(900, 300);
        QTest::qWait(20);
        QVERIFY(pane.document()->blockCount() < wide);
    }
    void yearsStandOffTheLines()
    {
        auto session = Session::open(PUTEAL_SOURCE_DIR "/sheets/iron_options.puteal");
        QVERIFY(session);
        const ChartView view = (*session)->chart("");
        QVERIFY(view.points.size() >= 3);
        double high = 0.0;
        for (const auto &series : view.series)
            for (const double y : series.y)
                high = std::max(high, y);
        const QRectF axes(0.0, 0.0, view.series.front().x.back(), high * 1.06);
        // wide and narrow panes: a label is a larger part of a narrow one
        for (const QSizeF size : {QSizeF(0.08, 0.045), QSizeF(0.2, 0.05)}) {
            const auto labels = charts::placeYearLabels(view, axes, size, {0.03, 0.03});
            QCOMPARE(labels.size(), view.points.size());
            const auto lines = charts::drawnLines(view, axes);
            QVERIFY(lines.size() > 40);
            for (const auto &label : labels) {
                QCOMPARE(charts::linesThrough(label.box, lines), 0);
                for (const auto &other : labels)
                    QVERIFY(&other == &label || !other.box.intersects(label.box));
            }
        }
    }
    void aLineThroughABoxIsCounted()
    {
        const QRectF box(0.4, 0.4, 0.2, 0.2);
        QCOMPARE(charts::linesThrough(box, {{0.0, 0.5, 1.0, 0.5}}), 1);
        QCOMPARE(charts::linesThrough(box, {{0.45, 0.45, 0.55, 0.55}}), 1);
        QCOMPARE(charts::linesThrough(box, {{0.0, 0.7, 1.0, 0.7}, {0.1, 0.0, 0.1, 1.0}}), 0);
    }
};

QTEST_MAIN(LookTest)
#include "look_test.moc"
