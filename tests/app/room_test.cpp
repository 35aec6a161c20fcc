/// What is long, small, much or empty still fits the window, and what another program did is not passed over.
#include <clocale>

#include <QApplication>
#include <QContextMenuEvent>
#include <QFile>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QScrollArea>
#include <QScrollBar>
#include <QTemporaryDir>
#include <QTest>

#include "charts/chart_view.h"
#include "charts/plot.h"
#include "charts/year_labels.h"
#include "desk/calculation_pane.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

/// A workbook of one chart: cost by year, `slopes` dollars a year from `starts` on.
std::string costBook(const std::vector<std::pair<double, double>> &options, int years)
{
    std::string head =
                    "puteal workbook 1\ntitle \"Costs\"\nsheet costs \"Cost by year\"\ncolumn year amounts "
                    "\"Year\" 8\n",
                lines, plots;
    for (std::size_t i = 0; i < options.size(); ++i) {
        const std::string n = std::to_string(i);
        head += "column o" + n + " amounts \"Option " + n + "\" 16\n";
        plots += "plot costs.o" + n + "[:] \"Option " + n + "\"\n";
    }
    for (int y = 0; y <= years; ++y) {
        lines += "line\nyear: " + std::to_string(y) + " yr\n";
        for (std::size_t i = 0; i < options.size(); ++i)
            lines += "o" + std::to_string(i) + ": $" +
                     std::to_string(std::lround(options[i].first + options[i].second * y)) + "\n";
    }
    return head + lines + "end costs " + std::to_string(years + 1) +
           "\nchart cost steps \"Cost\" x costs.year[:]\n" + plots + "end workbook\n";
}

QString sentencesOf(const std::vector<std::pair<double, double>> &options, int years)
{
    auto session = Session::fromText(costBook(options, years));
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return charts::chartSentences((*session)->chart("cost")).join(QLatin1Char('|'));
}

/// Ten that all cross each other.
std::vector<std::pair<double, double>> tenOptions()
{
    std::vector<std::pair<double, double>> out;
    for (int i = 0; i < 10; ++i)
        out.emplace_back(500 + (9 - i) * 330, 40 + i * 55);
    return out;
}

} // namespace

class RoomTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    SheetView *view() const { return m_window->view(); }
    QString pane() const { return m_window->calculation()->toPlainText(); }
    QString write(const QString &name, const std::string &text) const
    {
        QFile file(m_folder.filePath(name));
        if (!file.open(QIODevice::WriteOnly) || file.write(text.data(), static_cast<qint64>(text.size())) < 0)
            qFatal("cannot write the test's own file");
        return file.fileName();
    }
    void open(const std::string &text) { QVERIFY(m_window->openFile(write("book.puteal", text))); }
    static std::string small(const std::string &title)
    {
        return "puteal workbook 1\ntitle \"" + title +
               "\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\ncolumn amount amounts \"Amount\" 10\nline\n"
               "item: \"Iron\"\namount: 2 gal\nend s 1\nend workbook\n";
    }

private slots:
    void init()
    {
        qputenv("XDG_CONFIG_HOME", m_folder.path().toUtf8());
        m_window = std::make_unique<MainWindow>();
        m_window->setQuiet(true);
        m_window->show();
        QVERIFY(QTest::qWaitForWindowExposed(m_window.get()));
    }
    void cleanup() { m_window.reset(); }

    void manySentencesScrollUnderTheChart()
    {
        m_window->resize(1366, 768);
        std::string book = costBook(tenOptions(), 15);
        for (std::size_t at = 0; (at = book.find("\"Option ", at)) != std::string::npos; at += 20)
            book.insert(at + 1, "A method with a very long title ");
        open(book);
        m_window->showChart("cost");
        QTest::qWait(20);
        QCOMPARE(m_window->height(), 768);
        QVERIFY(m_window->minimumSizeHint().height() <= 384);
        m_window->resize(683, 384);
        QTest::qWait(20);
        QCOMPARE(m_window->size(), QSize(683, 384));
        auto *below = m_window->chartPane()->findChild<QScrollArea *>();
        QScrollBar *bar = below->verticalScrollBar();
        QVERIFY(bar->maximum() > 0);
        m_window->chartPane()->setFocus();
        QTest::keyClick(m_window->chartPane(), Qt::Key_PageDown);
        QVERIFY(bar->value() > 0);
    }
    void sentencesOfCosts_data()
    {
        using Options = std::vector<std::pair<double, double>>;
        QTest::addColumn<Options>("options");
        QTest::addColumn<int>("years");
        QTest::addColumn<QString>("says");
        QTest::newRow("one") << Options{{1000, 100}} << 15
                             << "Only Option 0 is drawn: there is nothing to compare it with.";
        QTest::newRow("equal") << Options{{1000, 100}, {1000, 100}, {1000, 100}} << 15
                               << "Option 0, Option 1 and Option 2 cost the same in every year.";
        QTest::newRow("all zero") << Options{{0, 0}, {0, 0}} << 15
                                  << "Every cost drawn is $0: look whether prices are still to be typed.";
        QTest::newRow("one year") << Options{{1000, 100}, {950, 180}} << 1
                                  << "Option 0 is cheaper than Option 1 from year 1 on.";
        QTest::newRow("several in one year")
            << Options{{400, 10}, {100, 200}, {110, 210}} << 40
            << "Option 0 is cheaper than Option 1 and Option 2 from year 2 on.";
        QTest::newRow("never") << Options{{400, 10}, {500, 20}} << 40
                               << "No option overtakes another within these years.";
    }
    void sentencesOfCosts()
    {
        using Options = std::vector<std::pair<double, double>>;
        QFETCH(Options, options);
        QFETCH(int, years);
        QFETCH(QString, says);
        QCOMPARE(sentencesOf(options, years), says);
    }
    void ringsOfOneYearShareALabel()
    {
        ChartView view;
        view.points = {{7, 3700, 0, 1}, {7, 3710, 0, 2}, {7, 900, 1, 2}, {9, 3705, 0, 1}};
        const auto labels = charts::placeYearLabels(view, QRectF(0, 0, 15, 9000), {0.08, 0.04}, {0.03, 0.03});
        std::vector<std::size_t> told;
        for (const auto &label : labels)
            told.push_back(label.point);
        QCOMPARE(told, (std::vector<std::size_t>{0, 2, 3}));
    }
    void aChartThatIsNotThereHasNoAxes()
    {
        open(small("None"));
        m_window->chartPane()->resize(500, 400);
        ChartView view;
        view.error = Error{ErrorKind::name, "no chart is called `x`", {}, {}};
        m_window->chartPane()->show(view);
        QCOMPARE(m_window->chartPane()->sentences(), QString("no chart is called `x`"));
    }

    void theTitleIsWholeAfterEveryOpening()
    {
        const auto shown = [&] { return qobject_cast<QLabel *>(m_window->menuBar()->cornerWidget()); };
        m_window->resize(1366, 768);
        open(small("A"));
        open(small("A title of middling length"));
        QCOMPARE(shown()->text(), QString("A title of middling length"));
        QVERIFY(shown()->width() >= shown()->fontMetrics().horizontalAdvance(shown()->text()));
        open(small(std::string(300, 'x')));
        QVERIFY(shown()->text().endsWith(QChar(0x2026)));
        const QRect help = m_window->menuBar()->actionGeometry(m_window->menuBar()->actions().back());
        QVERIFY2(help.isValid() && help.right() < shown()->x(), "the title covers the menus");
        QCOMPARE(shown()->toolTip(), QString(300, 'x'));
    }
    void aNarrowWindowKeepsTheSheetAndItsSlip()
    {
        open(small("Narrow"));
        m_window->resize(683, 384);
        QTest::qWait(20);
        QCOMPARE(m_window->size(), QSize(683, 384));
        m_window->goTo({0, 1, 0});
        view()->openSlip({}, false);
        const Slip *slip = view()->slip();
        QVERIFY2(view()->viewport()->width() >= 300,
                 qPrintable(QString::number(view()->viewport()->width())));
        QVERIFY(slip->x() + slip->width() <= view()->viewport()->width());
        for (const QWidget *child : slip->findChildren<QWidget *>(QString(), Qt::FindDirectChildrenOnly))
            if (child->isVisible() && !child->isWindow())
                QVERIFY2(slip->rect().contains(child->geometry()), child->metaObject()->className());
    }
    void aWordLongerThanItsColumnIsBroken()
    {
        const QFontMetrics metrics(QApplication::font());
        const QString word(200, 'm');
        QCOMPARE(breakable("short words", metrics, 200), QString("short words"));
        const QString joined = "Permanganate-regenerated"; // the row ends at the hyphen, not inside a word
        QCOMPARE(breakable(joined, metrics, metrics.horizontalAdvance("Permanganate-") + 20), joined);
        const QString broken = breakable("a " + word, metrics, 200);
        QCOMPARE(QString(broken).remove(QChar(0x200B)), "a " + word);
        for (const QString &piece : broken.split(QChar(0x200B)))
            QVERIFY(metrics.horizontalAdvance(piece.section(' ', -1)) <= 200);
        QVERIFY(metrics.boundingRect(QRect(0, 0, 200, 10000), Qt::TextWordWrap, broken).width() <= 200);
    }
    void aHugeNumberWidensItsColumn()
    {
        open("puteal workbook 1\ntitle \"Huge\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\ncolumn amount "
             "amounts \"Amount\" 8\nline\nitem: \"Huge\"\namount: 123456789012345 gal\nend s 1\nend "
             "workbook\n");
        const QString number = fromUtf8(m_window->session()->view({0, 1, 0}).quantity.number);
        QVERIFY(view()->columnWidth(1) >= view()->fontMetrics().horizontalAdvance(number) + 12);
    }
    void aNewWorkbookTellsHowToBegin()
    {
        m_window->newWorkbook();
        QVERIFY2(pane().startsWith("TO BEGIN\nType an item"), qPrintable(pane()));
    }
    void aFormulaWithoutCellsIsWorkedOutHere()
    {
        open("puteal workbook 1\ntitle \"W\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\ncolumn amount "
             "amounts \"Amount\" 18\nline\namount: 2 gal + 1 gal\n  name sum\nline\namount: sum * 2\nend s "
             "2\nend workbook\n");
        m_window->goTo({0, 1, 0});
        QVERIFY2(pane().contains("worked out here"), qPrintable(pane()));
        m_window->goTo({0, 1, 1});
        QVERIFY2(pane().contains("worked out from the cells below"), qPrintable(pane()));
    }
    void usersWithoutANameAreToldByItemAndColumn()
    {
        open("puteal workbook 1\ntitle \"U\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\ncolumn amount "
             "amounts \"Amount\" 18\ncolumn stop amounts \"Stop\" 8\nline\nitem: \"Iron\"\namount: 2 gal\n  "
             "name iron\nline\nitem: \"Twice\"\namount: iron * 2\nstop: iron > 1 gal\nend s 2\nend "
             "workbook\n");
        m_window->goTo({0, 1, 0});
        QVERIFY2(pane().contains("USED BY\nTwice, Amount, Twice, Stop"), qPrintable(pane()));
    }

    void theMouseAloneReachesTypingAndClearing()
    {
        open(small("Mouse"));
        m_window->goTo({0, 1, 0});
        const QPoint cell = view()->visualRect(view()->currentIndex()).center();
        QContextMenuEvent event(QContextMenuEvent::Mouse, cell, view()->viewport()->mapToGlobal(cell));
        QApplication::sendEvent(view()->viewport(), &event);
        auto *menu = qobject_cast<QMenu *>(QApplication::activePopupWidget());
        QVERIFY(menu);
        const auto click = [&](const QString &text) {
            for (QAction *action : menu->actions())
                if (action->text() == text)
                    QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(action).center());
        };
        click("Type in the cell");
        QVERIFY(view()->slip()->isOpen());
        view()->leaveSlip();
        menu->popup(QPoint(10, 10));
        click("Clear");
        QCOMPARE(m_window->session()->view({0, 1, 0}).typed, std::string());
    }
    void whatAnotherProgramWroteIsNotReplacedUnasked()
    {
        const QString path = write("shared.puteal", small("Shared"));
        QVERIFY(m_window->openFile(path));
        QVERIFY(m_window->apply(SetText{{0, 1, 0}, "3 gal"}));
        const std::string theirs = small("Shared, changed elsewhere");
        write("shared.puteal", theirs);
        QVERIFY(!m_window->save());
        QCOMPARE(m_window->lastRefusal(),
                 QString("not saved: shared.puteal was changed by another program since it was opened here; "
                         "save under another name, or open it again"));
        QFile file(path);
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(file.readAll(), QByteArray::fromStdString(theirs));
        file.close();
        QVERIFY(m_window->session()->unsaved());
        // Elsewhere it is saved, and there again and again.
        QVERIFY(m_window->saveAs(m_folder.filePath("mine.puteal")));
        QVERIFY(m_window->apply(SetText{{0, 1, 0}, "4 gal"}));
        QVERIFY(m_window->save());
    }
    void aDamagedFileIsToldWithOneLineNumber()
    {
        QVERIFY(!m_window->openFile(
            write("cut.puteal", "puteal workbook 1\ntitle \"D\"\nsheet s \"S\"\ncolumn item words \"Item\" "
                                "28\nline\nitem: \"x\"\nend s 4\nend workbook\n")));
        QCOMPARE(m_window->lastRefusal().count("file line"), 1);
        QVERIFY(m_window->lastRefusal().contains("cut.puteal: sheet s (file line 7): s has 1 lines, not 4"));
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    RoomTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "room_test.moc"
