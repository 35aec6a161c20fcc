/// Handling the window by keys: what must never be lost, and how every pane is reached.
#include <QApplication>
#include <QFile>
#include <QInputMethodEvent>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QPushButton>
#include <QScrollBar>
#include <QSettings>
#include <QStatusBar>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "charts/chart_view.h"
#include "desk/calculation_pane.h"
#include "desk/items_in_sight.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

const char *const bookText = R"(puteal workbook 1
title "A small job"
source L1 laboratory "invented sheet"
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
line
item: "Dissolved iron"
amount: 1.8 mg/L as Fe
  name iron
  source L1
  limit <= 0.3 mg/L as Fe near 20 % "stains above this"
line
item: "Locked"
amount: 4 gal
  lock
line
line
end water 4
sheet costs "Cost by year"
column year amounts "Year" 8
column a amounts "A" 30
column b amounts "B" 30
column c amounts "C" 30
column d amounts "D" 30
line
year: 0 yr
a: $1
d: $4
line
year: 1 yr
a: $2
d: $5
end costs 2
chart cost steps "Cost over the years" x costs.year[:]
plot costs.a[:] "A"
end workbook
)";

} // namespace

class HandlingTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    SheetView *view() const { return m_window->view(); }
    CellAt at(const char *reference) const { return *m_window->session()->find(reference); }
    QString typed(const CellAt &place) const
    {
        return QString::fromStdString(m_window->session()->view(place).typed);
    }
    QString write(const QString &name, const QByteArray &text) const
    {
        QFile file(m_folder.filePath(name));
        if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size())
            qFatal("cannot write the test's own file");
        return file.fileName();
    }
    /// The next dialog gives its title and is left.
    void leaveNextDialog(QString &title)
    {
        QTimer::singleShot(0, qApp, [&title] {
            QWidget *dialog = QApplication::activeModalWidget();
            if (!dialog)
                return;
            title = dialog->windowTitle();
            QTest::keyClick(dialog, Qt::Key_Escape);
        });
    }
    void chooseColumn(int column)
    {
        view()->setCurrentIndex(view()->model()->index(0, column));
        view()->setFocus();
    }

private slots:
    void init()
    {
        qputenv("XDG_CONFIG_HOME", m_folder.path().toUtf8());
        m_window = std::make_unique<MainWindow>();
        m_window->setQuiet(true);
        m_window->show();
        QVERIFY(m_window->openFile(write("book.puteal", bookText)));
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
    }
    void cleanup() { m_window.reset(); }

    /// What is typed beside an amount is no new amount: its limit or its sources are asked for.
    void typingBesideAnAmountAsksForWhatStandsThere()
    {
        const std::string before = m_window->session()->fileText();
        QString title;
        chooseColumn(2);
        leaveNextDialog(title);
        QTest::keyClick(view(), Qt::Key_5);
        QCOMPARE(title, QString("Limit"));
        chooseColumn(3);
        leaveNextDialog(title);
        QTest::keyClick(view(), Qt::Key_F2);
        QCOMPARE(title, QString("Source marks"));
        QVERIFY(!view()->slip()->isOpen());
        QCOMPARE(m_window->session()->fileText(), before);
    }
    void aLockedCellSaysSo()
    {
        m_window->goTo({0, 1, 1});
        QTest::keyClick(view(), Qt::Key_7);
        QVERIFY(!view()->slip()->isOpen());
        QCOMPARE(m_window->said(), QString("this cell is locked; its formula cannot be typed over"));
    }
    void aComposedCharacterOpensTheSlipAndStays()
    {
        m_window->goTo({0, 0, 2});
        QInputMethodEvent event;
        event.setCommitString(QString::fromUtf8("é"));
        QApplication::sendEvent(view(), &event);
        QVERIFY(view()->slip()->isOpen());
        QCOMPARE(view()->slip()->text(), QString::fromUtf8("é"));
    }
    void theFirstColumnStaysEvenWhereItHoldsAmounts()
    {
        m_window->resize(1024, 768);
        m_window->goTo({1, 4, 1});
        QVERIFY(view()->horizontalScrollBar()->value() > 0);
        QVERIFY(view()->findChild<ItemsInSight *>()->isVisible());
    }
    void everyPaneIsReachedByOneKeyAndBack()
    {
        view()->setFocus();
        QSet<QWidget *> met;
        for (int i = 0; i < 3; ++i) {
            met.insert(QApplication::focusWidget());
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6);
        }
        QCOMPARE(met.size(), 3);
        QCOMPARE(QApplication::focusWidget(), static_cast<QWidget *>(view()));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_F6, Qt::ShiftModifier);
        QVERIFY(QApplication::focusWidget() != view());
    }
    void aChartShownByKeyIsTheChosenCard()
    {
        m_window->showChart("cost");
        QCOMPARE(m_window->steps()->paper()->current(), 2);
        m_window->showSheet(0);
        QCOMPARE(m_window->steps()->paper()->current(), 0);
    }
    void aWorkbookWithoutASheetOpensEmptyAndCanBeFilled()
    {
        QVERIFY(
            m_window->openFile(write("bare.puteal", "puteal workbook 1\ntitle \"Bare\"\nend workbook\n")));
        QCOMPARE(view()->sheetModel()->rowCount(), 0);
        for (const int key : {Qt::Key_F2, Qt::Key_Delete, Qt::Key_5, Qt::Key_F8})
            QTest::keyClick(view(), static_cast<Qt::Key>(key));
        for (QAction *menu : m_window->menuBar()->actions())
            for (QAction *action : menu->menu()->actions())
                for (const char *name :
                     {"Line below", "Delete lines", "Column...", "Delete column", "Title and key...",
                      "Name...", "Limit...", "Fill down", "Paste", "Larger", "Source marks of this cell..."})
                    if (action->text() == QLatin1String(name))
                        action->trigger();
        QVERIFY(m_window->apply(AddSheet{0, "first", "First"}));
        QVERIFY(view()->sheetModel()->session() == m_window->session());
    }
    void aRecentFileThatIsGoneLeavesTheList()
    {
        const QString gone = write("gone.puteal", bookText);
        QVERIFY(m_window->openFile(gone));
        QVERIFY(QSettings().value("recent").toStringList().contains(gone));
        QVERIFY(QFile::remove(gone));
        QVERIFY(!m_window->openFile(gone));
        QVERIFY(!QSettings().value("recent").toStringList().contains(gone));
        QVERIFY2(m_window->lastRefusal().contains("gone.puteal"), qPrintable(m_window->lastRefusal()));
    }
    void aLongMessageDoesNotWidenTheWindow()
    {
        const int least = m_window->minimumSizeHint().width();
        QVERIFY(least <= 1024);
        QVERIFY(!m_window->openFile(m_folder.filePath(QString(300, 'x') + ".puteal")));
        QCOMPARE(m_window->minimumSizeHint().width(), least);
        QVERIFY(m_window->said().size() > 300);
    }
    void aNewWorkbookIsNotSaidToBeSaved()
    {
        QVERIFY(m_window->save());
        const auto savedIsSaid = [&] {
            for (const QLabel *label : m_window->statusBar()->findChildren<QLabel *>())
                if (label->text().startsWith("Saved"))
                    return true;
            return false;
        };
        QVERIFY(savedIsSaid());
        m_window->newWorkbook();
        QVERIFY(!savedIsSaid());
    }
    void whatIsOddAtOpeningIsReadableInThePane()
    {
        QVERIFY(m_window->openFile(
            write("odd.puteal", "puteal workbook 1\ntitle \"Odd\"\nuses marsh_gas 3\nsheet s \"S\"\n"
                                "column item words \"Item\" 28\ncolumn amount amounts \"Amount\" 18\nline\n"
                                "item: \"Gas\"\namount: gas_of(3 gal)\nline\namount: 2 gal\nend s 2\n"
                                "end workbook\n")));
        const QString pane = m_window->calculation()->toPlainText();
        QVERIFY2(pane.startsWith("ON OPENING") && pane.contains("marsh_gas"), qPrintable(pane));
        QCOMPARE(QString::fromStdString(m_window->session()->view({0, 1, 1}).shown), QString("2 gal"));
    }
    void namesFromAFileAreNoMarkup()
    {
        QVERIFY(m_window->apply(SetTitle{"<b>x</b>"}));
        QString text;
        Qt::TextFormat format = Qt::AutoText;
        QTimer::singleShot(0, qApp, [&] {
            auto *box = qobject_cast<QMessageBox *>(QApplication::activeModalWidget());
            QVERIFY(box);
            text = box->text();
            format = box->textFormat();
            QTest::keyClick(box, Qt::Key_Escape);
        });
        QVERIFY(!m_window->mayLeave());
        QCOMPARE(text, QString("<b>x</b> has changes that are not saved."));
        QCOMPARE(format, Qt::PlainText);
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    HandlingTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "handling_test.moc"
