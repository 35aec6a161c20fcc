/// What is seen and reached by keys while a formula is typed, and what F1 explains.
#include <QAction>
#include <QApplication>
#include <QClipboard>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "charts/chart_view.h"
#include "desk/calculation_pane.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

const char *const bookText = R"(puteal workbook 1
title "A small job"
uses softening 1
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
line
item: "Hardness"
amount: 10 gpg
  name hardness
line
item: "Dissolved iron"
amount: 1.8 mg/L as Fe
  name iron
line
item: "Setting of the valve"
amount: ceil_to(compensated_hardness(hardness, iron), 1 gpg)
  name setting
line
item: "Wrong"
amount: hardness + iron
line
end water 5
sheet costs "Cost by year"
column year amounts "Year" 8
column total amounts "Softener" 14
line
year: 0 yr
total: $100
line
year: 1 yr
total: $190
end costs 2
chart cost steps "Cost over the years" x costs.year[:]
plot costs.total[:] "Softener"
end workbook
)";

} // namespace

class TypingTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    SheetView *view() const { return m_window->view(); }
    Slip *slip() const { return view()->slip(); }
    QWidget *editor() const { return slip()->edit(); }
    CellAt at(const char *reference) const { return *m_window->session()->find(reference); }
    QString pane() const { return m_window->calculation()->toPlainText(); }
    void open(const CellAt &cell, const QString &text)
    {
        m_window->goTo(cell);
        view()->openSlip(text, true);
    }
    QStringList underlined() const
    {
        QStringList out;
        for (const auto &mark : slip()->edit()->extraSelections())
            out += mark.cursor.selectedText();
        return out;
    }
    QAction *action(const QString &text) const
    {
        for (QAction *menu : m_window->menuBar()->actions())
            for (QAction *entry : menu->menu()->actions())
                if (entry->text() == text)
                    return entry;
        qFatal("no such action");
        return nullptr;
    }

private slots:
    void init()
    {
        qputenv("XDG_CONFIG_HOME", m_folder.path().toUtf8());
        m_window = std::make_unique<MainWindow>();
        m_window->setQuiet(true);
        m_window->show();
        const QString path = m_folder.filePath("book.puteal");
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bookText);
        file.close();
        QVERIFY(m_window->openFile(path));
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
        view()->setFocus();
    }
    void cleanup() { m_window.reset(); }

    void unitsUnderlineAndSentenceOfWhatIsNotDone_data()
    {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("units");
        QTest::addColumn<QString>("under");
        QTest::addColumn<QString>("words");
        QTest::newRow("unfinished") << "hardness +"
                                    << "gpg +"
                                    << "+"
                                    << "a value is missing at the end";
        QTest::newRow("unknown name") << "hardnes * 2"
                                      << "?.number"
                                      << "hardnes"
                                      << "no cell or column is called `hardnes`; hardness?";
        QTest::newRow("open call") << "max(hardness, "
                                   << "max(gpg, "
                                   << ","
                                   << "a value is missing at the end";
        QTest::newRow("unknown function")
            << "compensated_hardnes(hardness, iron)"
            << "compensated_hardnes(gpg, mg/L as Fe)"
            << "compensated_hardnes"
            << "no function is named `compensated_hardnes`; compensated_hardness?";
        QTest::newRow("clash") << "hardness + iron"
                               << "gpg + mg/L as Fe"
                               << "hardness|iron"
                               << "cannot add `hardness` (gpg as CaCO3) and `iron` (mg/L as Fe): different "
                                  "substances; for a softener setting use compensated_hardness(hardness, "
                                  "iron); for the same amount as CaCO3 use as_caco3(iron)";
    }
    void unitsUnderlineAndSentenceOfWhatIsNotDone()
    {
        QFETCH(QString, typed);
        QFETCH(QString, units);
        QFETCH(QString, under);
        QFETCH(QString, words);
        open({0, 1, 4}, typed);
        QCOMPARE(slip()->units(), units);
        QCOMPARE(underlined().join('|'), under);
        QCOMPARE(slip()->result(), words);
        QCOMPARE(slip()->state(), Mark::error);
    }
    void theFrameTellsTheState()
    {
        open({0, 1, 4}, "hardness * 2");
        QCOMPARE(slip()->state(), Mark::none);
        slip()->edit()->setPlainText("amount[4] * 2");
        QCOMPARE(slip()->state(), Mark::waits);
        slip()->edit()->setPlainText("amount[4] *");
        QCOMPARE(slip()->state(), Mark::error);
    }
    void aWayOutIsTakenByKey()
    {
        open({0, 1, 4}, "hardnes * 2");
        QTest::keyClick(editor(), Qt::Key_1, Qt::AltModifier);
        QCOMPARE(slip()->text(), QString("hardness * 2"));
        QCOMPARE(slip()->state(), Mark::none);
        QVERIFY2(slip()->result().startsWith("20"), qPrintable(slip()->result()));
    }
    void aWordIsCompletedByKeys()
    {
        m_window->goTo({0, 1, 4});
        for (const char c : std::string("compensated_h"))
            QTest::keyClick(slip()->isOpen() ? editor() : view(), c);
        QVERIFY(slip()->edit()->completing());
        QTest::keyClick(editor(), Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("compensated_hardness("));
        QVERIFY(!slip()->edit()->completing());
        for (const char c : std::string("h"))
            QTest::keyClick(editor(), c);
        QTest::keyClick(editor(), Qt::Key_Escape); // leaves the list, not the formula
        QVERIFY(slip()->isOpen());
        QVERIFY(!slip()->edit()->completing());
        QTest::keyClick(editor(), Qt::Key_Space, Qt::ControlModifier); // and brings it back
        QVERIFY(slip()->edit()->completing());
        QTest::keyClick(editor(), Qt::Key_Escape);
        QCOMPARE(slip()->text(), QString("compensated_hardness(h"));
    }
    void largerLettersReachTheOpenFormula()
    {
        const QFont font = QApplication::font();
        open({0, 1, 4}, "hardness");
        const qreal before = slip()->edit()->font().pointSizeF();
        const int line = view()->rowHeight(0);
        action("Larger")->trigger();
        action("Larger")->trigger();
        const qreal after = slip()->edit()->font().pointSizeF();
        const qreal pane = m_window->calculation()->font().pointSizeF();
        const qreal cards = m_window->steps()->paper()->font().pointSizeF();
        const int higher = view()->rowHeight(0);
        QApplication::setFont(font);
        QVERIFY(slip()->isOpen());
        QCOMPARE(slip()->text(), QString("hardness"));
        QVERIFY(std::abs(after - before * 1.21) < 0.05);
        QVERIFY(higher > line);
        QVERIFY(std::abs(pane - font.pointSizeF() * 1.21) < 0.05);
        QVERIFY(std::abs(cards - font.pointSizeF() * 1.21) < 0.05);
    }

    void whatCannotBeKeptStaysTyped()
    {
        Attributes asked;
        asked.ask = "how hard is it?";
        QVERIFY(m_window->apply(SetAttributes{{0, 1, 4}, asked}));
        const QString sentence = "`ask` belongs to a cell that is typed, not to a formula: take it away";
        const std::string before = m_window->session()->fileText();
        open({0, 1, 4}, "hardness * 2");
        QTest::keyClick(editor(), Qt::Key_Return);
        QVERIFY(slip()->isOpen());
        QCOMPARE(slip()->text(), QString("hardness * 2"));
        QCOMPARE(slip()->result(), sentence);
        QCOMPARE(slip()->state(), Mark::error);
        // Neither another sheet nor saving passes over it.
        m_window->showSheet(1);
        QCOMPARE(view()->sheetModel()->sheet(), 0U);
        QCOMPARE(m_window->steps()->paper()->current(), 0);
        QVERIFY(!m_window->save());
        QCOMPARE(m_window->said(), sentence);
        QVERIFY(!m_window->mayLeave());
        QCOMPARE(m_window->session()->fileText(), before);
        // Put right, it is kept.
        slip()->edit()->setPlainText("3 gpg");
        QCOMPARE(slip()->state(), Mark::none);
        QTest::keyClick(editor(), Qt::Key_Return);
        QVERIFY(!slip()->isOpen());
        QCOMPARE(QString::fromStdString(m_window->session()->view({0, 1, 4}).typed), QString("3 gpg"));
    }

    void helpExplainsTheFunctionsOfTheCell()
    {
        m_window->goTo(at("setting"));
        QTest::keyClick(view(), Qt::Key_F1);
        QVERIFY2(pane().startsWith("FUNCTION 1 of 2 in this cell\nceil_to"), qPrintable(pane().left(80)));
        QCOMPARE(m_window->said(), QString("ceil_to explained; F1 again for the next function of this cell"));
        QTest::keyClick(view(), Qt::Key_F1);
        QVERIFY2(pane().startsWith("FUNCTION 2 of 2 in this cell\ncompensated_hardness"),
                 qPrintable(pane().left(80)));
        // From the item too: it names the amount.
        m_window->goTo({0, 0, 2});
        QTest::keyClick(view(), Qt::Key_F1);
        QVERIFY2(pane().startsWith("FUNCTION 1 of 2 in this cell\nceil_to"), qPrintable(pane().left(80)));
    }
    void helpOnATypedCellShowsItsCalculation()
    {
        m_window->goTo(at("hardness"));
        QTest::keyClick(view(), Qt::Key_F1);
        QVERIFY2(pane().startsWith("CALCULATION: line 1, Hardness"), qPrintable(pane()));
        QCOMPARE(m_window->said(), QString("no function is called here; Shift+F1 asks for a word"));
    }
    void helpWhileTypingExplainsTheWord()
    {
        open({0, 1, 4}, "hardness + 3 gpg");
        QTest::keyClick(editor(), Qt::Key_F1);
        QVERIFY2(pane().startsWith("UNIT\ngpg"), qPrintable(pane()));
        QVERIFY(slip()->isOpen());
        QCOMPARE(slip()->text(), QString("hardness + 3 gpg"));
    }

    void aCellWithoutAResultIsCopiedAsItsFormula()
    {
        m_window->goTo({0, 1, 3});
        QVERIFY(m_window->session()->view({0, 1, 3}).error.has_value());
        QTest::keyClick(view(), Qt::Key_C, Qt::ControlModifier);
        QCOMPARE(QApplication::clipboard()->text(), QString("hardness + iron"));
        QCOMPARE(m_window->said(), QString("copied; the cell without a result was copied as its formula"));
        m_window->goTo(at("setting"));
        QTest::keyClick(view(), Qt::Key_C, Qt::ControlModifier);
        QCOMPARE(QApplication::clipboard()->text(), QString("19.0 gpg"));
        QCOMPARE(m_window->said(), QString("copied"));
    }
    void besideAChartStandsWhatItIsDrawnFrom()
    {
        m_window->showChart("cost");
        QVERIFY2(pane().startsWith("CHART: Cost over the years\n"), qPrintable(pane()));
        QVERIFY2(pane().contains("Softener $190") && pane().contains("costs.total[1]"), qPrintable(pane()));
        // An edit elsewhere does not bring a cell in.
        QVERIFY(m_window->apply(SetText{{1, 1, 1}, "$250"}));
        QVERIFY2(pane().startsWith("CHART: Cost over the years\n"), qPrintable(pane()));
        QVERIFY2(pane().contains("Softener $250"), qPrintable(pane()));
        m_window->showSheet(1);
        QVERIFY2(pane().startsWith("CALCULATION: line "), qPrintable(pane()));
    }
    void theChartIsReachedByKey()
    {
        QTest::keyClick(view(), Qt::Key_G, Qt::ControlModifier);
        QVERIFY(m_window->chartPane()->isVisible());
        QSet<QWidget *> met;
        m_window->steps()->paper()->setFocus();
        for (int i = 0; i < 3; ++i) {
            met.insert(QApplication::focusWidget());
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6);
        }
        QVERIFY(met.contains(m_window->chartPane()));
        QCOMPARE(met.size(), 3);
    }
    void aNewerWorkbookIsReadWithWords()
    {
        const QString path = m_folder.filePath("newer.puteal");
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("puteal workbook 2\n!require holograms\ntitle \"Newer\"\nsheet s \"S\"\n"
                   "column item words \"Item\" 28\ncolumn amount amounts \"Amount\" 18\nline\n"
                   "item: \"Iron\"\namount: 2 gal\n  sparkle 3\nend s 1\nend workbook\n");
        file.close();
        QVERIFY2(m_window->openFile(path), qPrintable(m_window->lastRefusal()));
        QCOMPARE(
            pane(),
            QString("ON OPENING\nthis workbook was written by a newer version (format 2); what this version "
                    "does not know is kept as it is\n\nthis workbook needs \"holograms\", which this "
                    "version does not have; read its results with care\n\nsheet s line 1: \"sparkle 3\" is "
                    "not understood and has no effect; it is kept as it is"));
        QCOMPARE(QString::fromStdString(m_window->session()->view({0, 1, 0}).shown), QString("2 gal"));
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    TypingTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "typing_test.moc"
