/// What stays in sight: items beside far columns, whole numbers in narrow cells, the state a card and a word
/// tell.
#include <QImage>
#include <QPainter>
#include <QScrollBar>
#include <QTest>

#include "charts/plot.h"
#include "desk/items_in_sight.h"
#include "desk/look.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

std::unique_ptr<Session> opened(const std::string &text)
{
    auto session = Session::fromText(text);
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return std::move(*session);
}

std::unique_ptr<Session> wide()
{
    std::string columns, cells;
    for (char c = 'b'; c < 'v'; ++c) {
        columns += std::string("column col_") + c + " amounts \"Column\" 16\n";
        cells += std::string("col_") + c + ": 12.5 mg/L as Fe\n";
    }
    return opened(
        "puteal workbook 1\ntitle \"Wide\"\nsheet s \"Side by side\"\ncolumn item words \"Method\" 30\n" +
        columns + "line\nitem: \"First method\"\n" + cells + "end s 1\nend workbook\n");
}

const char *const gate = R"(puteal workbook 1
title "Gate"
list verdict "works" "marginal" "cannot tell yet" "will not work"
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
line
item: "Arsenic"
amount: 0.03 mg/L as As
  name arsenic
  limit <= 0.01 mg/L as As health
line
item: "Verdict"
amount: will not work
  name verdict
  choices verdict
end water 2
sheet gate "Health gate"
column item words "Test" 28
column amount amounts "State" 18
line
item: "Arsenic"
amount: state(water.arsenic)
line
item: "Method"
amount: water.verdict
  name shown_verdict
end gate 2
end workbook
)";

/// Bounding box of everything that is no paper.
QRect inked(const QImage &image)
{
    QRect box;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            if (image.pixelColor(x, y) != color::paper)
                box = box.united(QRect(x, y, 1, 1));
    return box;
}

} // namespace

class SightTest : public QObject
{
    Q_OBJECT
private slots:
    /// Which option is cheaper, and that none overtakes another, is said of money alone.
    void onlyMoneyOvertakes_data()
    {
        QTest::addColumn<QString>("unit");
        QTest::addColumn<QStringList>("says");
        const auto row = [](const char *rule, const char *unit, const QStringList &says) {
            QTest::newRow(rule) << unit << says;
        };
        row("money", "$", {"Second is cheaper than First from year 0.500 on."});
        row("gallons", "gal", {});
    }
    void onlyMoneyOvertakes()
    {
        QFETCH(QString, unit);
        QFETCH(QStringList, says);
        const std::string mark = unit == "$" ? "$" : "", behind = unit == "$" ? "" : " gal";
        const auto amount = [&](const char *digits) { return mark + digits + behind; };
        const auto session = opened("puteal workbook 1\ntitle \"Two\"\nsheet s \"S\"\ncolumn year amounts "
                                    "\"Year\" 8\ncolumn a amounts "
                                    "\"A\" 8\ncolumn b amounts \"B\" 8\nline\nyear: 0 yr\na: " +
                                    amount("100") + "\nb: " + amount("150") +
                                    "\nline\nyear: 1 yr\na: " + amount("200") + "\nb: " + amount("150") +
                                    "\nend s 2\nchart c lines \"C\" x s.year[:]\nplot s.a[:] \"First\"\nplot "
                                    "s.b[:] \"Second\"\nend workbook\n");
        const ChartView view = session->chart("c");
        QVERIFY2(!view.error, view.error ? view.error->words.c_str() : "");
        QCOMPARE(view.series.size(), std::size_t(2));
        QCOMPARE(charts::chartSentences(view), says);
    }

    void theItemStaysWhileColumnsAreScrolled()
    {
        const auto session = wide();
        SheetView view;
        view.resize(700, 300);
        view.setSheet(session.get(), 0);
        view.show();
        auto *items = view.findChild<ItemsInSight *>();
        QVERIFY(items && !items->isVisible());
        view.setCurrentCell({0, 18, 0});
        QVERIFY(items->isVisible());
        const int left = view.columnViewportPosition(18);
        QVERIFY2(left >= items->width() && left < view.viewport()->width(), "the chosen cell is not covered");
        view.setCurrentCell({0, 0, 0});
        QVERIFY(!items->isVisible());
        QCOMPARE(view.horizontalScrollBar()->value(), 0);
    }

    void aClickOnAnItemInSightChoosesItsLine()
    {
        const auto session = wide();
        SheetView view;
        view.resize(700, 300);
        view.setSheet(session.get(), 0);
        view.show();
        view.setCurrentCell({0, 18, 0});
        QTest::mouseClick(view.findChild<ItemsInSight *>(), Qt::LeftButton, {}, QPoint(20, 10));
        QCOMPARE(view.currentIndex().column(), 0);
    }

    void aNumberIsNeverCut_data()
    {
        QTest::addColumn<int>("width");
        for (const int width : {300, 160, 110, 80, 60, 40})
            QTest::addRow("%d", width) << width;
    }
    /// Whatever the width, ink keeps off the left edge: a number cut there would be read as another one.
    void aNumberIsNeverCut()
    {
        QFETCH(int, width);
        const auto session =
            opened("puteal workbook 1\ntitle \"N\"\nsheet s \"S\"\ncolumn a amounts \"A\" 16\nline\n"
                   "a: 0.1234567 mg/L as CaCO3\nend s 1\nend workbook\n");
        SheetModel model;
        model.setSheet(session.get(), 0);
        CellDelegate delegate(&model);
        QImage image(width, CellDelegate::lineHeight(QApplication::font()), QImage::Format_RGB32);
        image.fill(color::paper);
        QPainter painter(&image);
        QStyleOptionViewItem option;
        option.font = QApplication::font();
        option.rect = image.rect();
        delegate.paint(&painter, option, model.index(0, 0));
        painter.end();
        const QRect box =
            inked(image.copy(0, 0, image.width(), image.height() - 1)); // without the rule below
        QVERIFY2(!box.isEmpty() && box.left() >= 4, qPrintable(QString::number(box.left())));
    }

    void wordsTellTheirState()
    {
        const auto session = opened(gate);
        QCOMPARE(session->view({1, 1, 0}).told, LimitState::outside);
        QCOMPARE(session->view({1, 1, 1}).told, LimitState::outside);
        QCOMPARE(session->view({0, 1, 0}).told, LimitState::noLimit);
        QVERIFY(session->apply(SetText{{0, 1, 0}, "0.003 mg/L as As"}));
        QVERIFY(session->apply(SetText{{0, 1, 1}, "cannot tell yet"}));
        QCOMPARE(session->view({1, 1, 0}).told, LimitState::within);
        QCOMPARE(session->view({1, 1, 1}).told, LimitState::missingTest);
    }

    void aGateIsAsUrgentAsTheStatesItGathers()
    {
        const auto session = opened(gate);
        const auto steps = session->steps();
        QCOMPARE(steps[1].worst, LimitState::outside);
        QCOMPARE(steps[1].outside, std::size_t(0)); // counted once, where the limit is
        QCOMPARE(QString::fromStdString(steps[1].headline), QString("will not work"));
        QCOMPARE(steps[1].told, LimitState::outside);
    }

    void aCostChartSaysTheHealthStop()
    {
        std::string text = gate;
        text.replace(
            text.find("end workbook"), 12,
            "sheet costs \"Costs\"\ncolumn year amounts \"Year\" 8\ncolumn total amounts \"Total\" 8\nline\n"
            "year: 0 yr\ntotal: $100\nline\nyear: 1 yr\ntotal: $150\nend costs 2\n"
            "chart cost lines \"Cost\" x costs.year[:]\nplot costs.total[:] \"Filter\"\nend workbook");
        const auto session = opened(text);
        QCOMPARE(
            QString::fromStdString(session->chart("cost").stop),
            QString("Health stop: Arsenic outside its limit. Nothing is recommended here; call the health "
                    "department before anything is bought"));
        QVERIFY(session->apply(SetText{{0, 1, 0}, "0.003 mg/L as As"}));
        QVERIFY(session->chart("cost").stop.empty());
    }

    void everyStopOfTheGateIsMarkedAndKeepsTheChartEmpty_data()
    {
        QTest::addColumn<QString>("cell");
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("stop");
        QTest::newRow("bacteria") << "water.coliform"
                                  << "E. coli"
                                  << "E. coli";
        QTest::newRow("fuel") << "water.fuel_smell"
                              << "yes"
                              << "Smell of fuel or solvent";
        QTest::newRow("public") << "house.public_system"
                                << "yes"
                                << "Rental, day-care, or 25 people for 60 days a year";
    }
    void everyStopOfTheGateIsMarkedAndKeepsTheChartEmpty()
    {
        QFETCH(QString, cell);
        QFETCH(QString, typed);
        QFETCH(QString, stop);
        auto session = Session::open(PUTEAL_SOURCE_DIR "/sheets/iron_options.puteal");
        QVERIFY(session);
        Session &book = **session;
        const auto halted = book.find("gate.halted");
        QVERIFY(halted);
        QCOMPARE(book.steps()[halted->sheet].worst, LimitState::within);
        const auto at = book.find(cell.toStdString());
        QVERIFY(at && book.apply(SetText{*at, typed.toStdString()}));
        const StepView gate = book.steps()[halted->sheet];
        QCOMPARE(gate.worst, LimitState::outside);
        QVERIFY(QString::fromStdString(gate.headline).startsWith("stop and refer: " + stop));
        const ChartView chart = book.chart("");
        QVERIFY(chart.series.empty());
        QCOMPARE(chart.leftOut.size(), std::size_t(1));
        QVERIFY2(QString::fromStdString(chart.leftOut.front())
                     .startsWith("every option: health stop: " + stop + "; nothing is recommended, call "),
                 chart.leftOut.front().c_str());
    }

    void titlesOfCardsAreWhole()
    {
        StepsPaper paper;
        StepView card;
        card.title = "Aeration in an open tank with repressurizing";
        card.headline = "works";
        paper.resize(200, 400);
        paper.setSteps({card, card}, {});
        const QFontMetrics metrics(paper.font());
        QVERIFY2(paper.cardRect(0).height() > metrics.height() * 3, "the long title takes more than one row");
        QVERIFY(paper.cardRect(1).top() > paper.cardRect(0).bottom());
        paper.resize(900, 400);
        paper.setSteps({card, card}, {});
        QVERIFY2(paper.cardRect(0).height() < metrics.height() * 4, "one row where there is room");
    }
};

QTEST_MAIN(SightTest)
#include "sight_test.moc"
