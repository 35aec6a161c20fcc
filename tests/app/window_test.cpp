/// The window driven by real keys: typing, slip, undo, fill, clipboard, structure, saving, what a screen
/// reader hears.
#include <QAccessible>
#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QFileInfo>
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
source L1 laboratory "invented sheet"
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
line
item: "Hardness"
amount: 10 gpg
  name hardness
  source L1
line
item: "Dissolved iron"
amount: 1.8 mg/L as Fe
  name iron
  limit <= 0.3 mg/L as Fe near 20 % "stains above this"
line
item: "Setting of the valve"
amount: compensated_hardness(hardness, iron)
  name setting
line
line
line
end water 6
sheet costs "Cost by year"
column year amounts "Year" 8
column total amounts "Softener" 14
column other amounts "Filter" 14
line
year: 0 yr
total: $100
other: $300
line
fill year: year[-1] + 1 yr
fill total: total[-1] + $90
fill other: other[-1] + $40
skip 8
line
stop year total other
end costs 11
chart cost steps "Cost over the years" x costs.year[:]
plot costs.total[:] "Softener"
plot costs.other[:] "Filter"
end workbook
)";

} // namespace

class WindowTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    SheetView *view() const { return m_window->view(); }
    CellAt at(const char *reference) const { return *m_window->session()->find(reference); }
    QString shown(const char *reference) const
    {
        return QString::fromStdString(m_window->session()->view(at(reference)).shown);
    }
    QString typed(const CellAt &place) const
    {
        return QString::fromStdString(m_window->session()->view(place).typed);
    }
    QWidget *editor() const { return view()->slip()->edit(); }
    void type(const QString &text)
    {
        QWidget *target = view()->slip()->isOpen() ? editor() : view();
        for (const QChar c : text) {
            QTest::keyClick(target, c.toLatin1());
            target = view()->slip()->isOpen() ? editor() : view();
        }
    }
    void enter() { QTest::keyClick(editor(), Qt::Key_Return); }
    void trigger(const QString &text)
    {
        for (QAction *menu : m_window->menuBar()->actions())
            for (QAction *action : menu->menu()->actions())
                if (action->text() == text) {
                    action->trigger();
                    return;
                }
        QFAIL(qPrintable("no action " + text));
    }

private slots:
    void init()
    {
        qputenv("XDG_CONFIG_HOME", m_folder.path().toUtf8());
        const QString path = m_folder.filePath("book.puteal");
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bookText);
        file.close();
        m_window = std::make_unique<MainWindow>();
        m_window->setQuiet(true);
        m_window->show();
        QVERIFY2(m_window->openFile(path), qPrintable(m_window->lastRefusal()));
        QVERIFY(QTest::qWaitForWindowExposed(m_window.get()));
    }
    void cleanup() { m_window.reset(); }

    void aBareNumberTakesTheUnitThatStandsThere()
    {
        m_window->goTo(at("iron"));
        type("3");
        QVERIFY(view()->slip()->isOpen());
        enter();
        QCOMPARE(typed(at("iron")), QString("3 mg/L as Fe"));
        QCOMPARE(shown("setting"), QString("25.0 gpg"));
    }
    void undoBringsBackBytesAndRedoTheChange()
    {
        const std::string before = m_window->session()->fileText();
        m_window->goTo(at("hardness"));
        type("20 gpg");
        enter();
        const std::string after = m_window->session()->fileText();
        QVERIFY(before != after);
        QVERIFY(m_window->session()->unsaved());
        m_window->session()->undo();
        QCOMPARE(m_window->session()->fileText(), before);
        QVERIFY(!m_window->session()->unsaved());
        m_window->session()->redo();
        QCOMPARE(m_window->session()->fileText(), after);
    }
    void aClashIsUnderlinedAndSaidWithAWayOut()
    {
        m_window->goTo(at("setting"));
        view()->openSlip("hardness + iron", true);
        const SlipView slip = m_window->session()->slip(at("setting"), "hardness + iron");
        QVERIFY(slip.preview.error.has_value());
        QVERIFY(slip.preview.error->place.span.has_value());
        QVERIFY(slip.preview.error->place.other.has_value());
        QCOMPARE(view()->slip()->edit()->extraSelections().size(), 2);
        QPushButton *fix = nullptr;
        for (auto *button : view()->slip()->findChildren<QPushButton *>())
            if (button->isVisibleTo(view()->slip()) && !fix)
                fix = button;
        QVERIFY(fix);
        fix->click();
        const SlipView mended =
            m_window->session()->slip(at("setting"), view()->slip()->text().toStdString());
        QVERIFY2(!mended.preview.error, qPrintable(view()->slip()->text()));
    }
    void aWrongFormulaIsKeptAndDependentsWait()
    {
        m_window->goTo(at("iron"));
        view()->openSlip("1.8 mg/L as Fe +", true);
        enter();
        QCOMPARE(typed(at("iron")), QString("1.8 mg/L as Fe +"));
        const auto error = m_window->session()->view(at("setting")).error;
        QVERIFY(error.has_value());
        QCOMPARE(error->words, std::string("waits for `iron`"));
    }
    void escapeLeavesTheCellAsItWas()
    {
        m_window->goTo(at("hardness"));
        type("99");
        QTest::keyClick(editor(), Qt::Key_Escape);
        QVERIFY(!view()->slip()->isOpen());
        QCOMPARE(typed(at("hardness")), QString("10 gpg"));
        QVERIFY(!m_window->session()->canUndo());
    }
    void clickingACellPutsItsNameIn()
    {
        m_window->goTo({0, 1, 3});
        view()->openSlip("2 * ", true);
        const QRect cell = view()->visualRect(view()->model()->index(0, 1));
        QTest::mouseClick(view()->viewport(), Qt::LeftButton, {}, cell.center());
        QCOMPARE(view()->slip()->text(), QString("2 * hardness"));
        enter();
        QCOMPARE(QString::fromStdString(m_window->session()->view({0, 1, 3}).shown), QString("20.0 gpg"));
    }
    void namesUsedByTheOpenFormulaAreLit()
    {
        m_window->goTo(at("setting"));
        QTest::keyClick(view(), Qt::Key_F2);
        QVERIFY(view()->sheetModel()->isLit(at("hardness")));
        QVERIFY(view()->sheetModel()->isLit(at("iron")));
        QTest::keyClick(editor(), Qt::Key_Escape);
        QVERIFY(!view()->sheetModel()->isLit(at("hardness")));
    }
    void fillDownCopiesTheTextUnchanged()
    {
        m_window->showSheet(1);
        const std::string before = m_window->session()->fileText();
        QVERIFY(m_window->apply(SetText{{1, 1, 5}, "total[-1] + $95"}));
        QVERIFY(m_window->apply(FillDown{1, 1, 1, 5, 10}));
        for (std::uint32_t l = 5; l <= 10; ++l)
            QCOMPARE(typed({1, 1, l}), QString("total[-1] + $95"));
        QCOMPARE(QString::fromStdString(m_window->session()->view({1, 1, 10}).shown), QString("$1,030"));
        m_window->session()->undo();
        m_window->session()->undo();
        QCOMPARE(m_window->session()->fileText(), before);
    }
    void tabSeparatedTextIsCopiedAndPasted()
    {
        m_window->goTo({0, 0, 3});
        QApplication::clipboard()->setText("Salt\t40 lb\nDays\t5 day\n");
        trigger("Paste");
        QCOMPARE(typed({0, 0, 3}), QString("Salt"));
        QCOMPARE(typed({0, 1, 4}), QString("5 day"));
        view()->selectionModel()->select(
            QItemSelection(view()->model()->index(3, 0), view()->model()->index(4, 1)),
            QItemSelectionModel::ClearAndSelect);
        trigger("Copy");
        QCOMPARE(QApplication::clipboard()->text(), QString("Salt\t40 lb\nDays\t5 day"));
    }
    void linesMoveAndReferencesFollow()
    {
        m_window->goTo(at("hardness"));
        trigger("Line above");
        QCOMPARE(at("hardness").line, 1U);
        QCOMPARE(shown("setting"), QString("19.0 gpg"));
        m_window->goTo(at("setting"));
        trigger("Move lines up");
        QCOMPARE(at("setting").line, 2U);
        QCOMPARE(shown("setting"), QString("19.0 gpg"));
    }
    void aRunningBalanceTakesInAnInsertedYear()
    {
        m_window->showSheet(1);
        m_window->goTo({1, 1, 4});
        trigger("Line below");
        QCOMPARE(typed({1, 1, 5}), QString("total[-1] + $90"));
        QCOMPARE(QString::fromStdString(m_window->session()->view({1, 1, 11}).shown), QString("$1,090"));
    }
    void savingKeepsTheBytesOfTheLastSaveBeside()
    {
        const QString path = m_folder.filePath("book.puteal");
        m_window->goTo(at("hardness"));
        type("12 gpg");
        enter();
        QVERIFY(m_window->save());
        QVERIFY(!m_window->session()->unsaved());
        QFile saved(path), beside(path + ".before");
        QVERIFY(saved.open(QIODevice::ReadOnly) && beside.open(QIODevice::ReadOnly));
        QCOMPARE(beside.readAll(), QByteArray(bookText));
        QCOMPARE(QString::fromUtf8(saved.readAll()),
                 QString::fromUtf8(bookText).replace("amount: 10 gpg", "amount: 12 gpg"));
    }
    void aDamagedFileIsRefusedAndTheOpenOneStays()
    {
        const QString path = m_folder.filePath("cut.puteal");
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(QByteArray(bookText).left(300));
        file.close();
        QVERIFY(!m_window->openFile(path));
        QVERIFY2(m_window->lastRefusal().contains("file line"), qPrintable(m_window->lastRefusal()));
        QCOMPARE(shown("setting"), QString("19.0 gpg"));
    }
    void theChartNamesItsBreakEvenYear()
    {
        m_window->showChart("cost");
        QCOMPARE(m_window->chartPane()->sentences(),
                 QString("Filter is cheaper than Softener from year 5 on."));
    }
    void theCalculationShowsThreeSteps()
    {
        m_window->goTo(at("setting"));
        // long formulas are broken over lines for reading
        const QString text = m_window->calculation()->toPlainText().simplified();
        for (const char *piece : {"compensated_hardness(hardness, iron)", "10 gpg", "1.8 mg/L as Fe",
                                  "19.0 gpg", "hardness, iron"})
            QVERIFY2(text.contains(piece), qPrintable(QString(piece) + " not in\n" + text));
    }
    void aScreenReaderHearsItemNumberUnitAndState()
    {
        const auto index = view()->model()->index(1, 1);
        QCOMPARE(view()->model()->data(index, Qt::AccessibleTextRole).toString(),
                 QString("Dissolved iron, 1.8 milligrams per liter as iron, outside"));
    }
    void aHeldViewStaysWhileOthersAreAsked()
    {
        // The painter holds the view of the words while it asks for the amount beside them.
        SheetModel *model = view()->sheetModel();
        model->everythingChanged();
        const CellView &held = model->viewOf(at("iron"));
        for (std::uint32_t c = 0; c < 2; ++c)
            for (std::uint32_t l = 0; l < 6; ++l)
                (void)model->viewOf({0, c, l});
        QCOMPARE(&model->viewOf(at("iron")), &held);
    }
    void everyWidgetThatTakesTheFocusHasAName()
    {
        int looked = 0;
        for (QWidget *widget : m_window->findChildren<QWidget *>()) {
            if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible() || widget->focusProxy())
                continue;
            QAccessibleInterface *face = QAccessible::queryAccessibleInterface(widget);
            QVERIFY(face);
            ++looked;
            QVERIFY2(!face->text(QAccessible::Name).isEmpty(), widget->metaObject()->className());
        }
        QVERIFY(looked >= 3);
    }
    void noTwoActionsShareAKey()
    {
        QSet<QString> keys;
        for (QAction *action : m_window->findChildren<QAction *>())
            for (const QKeySequence &key : action->shortcuts()) {
                QVERIFY2(!keys.contains(key.toString()), qPrintable(key.toString()));
                keys.insert(key.toString());
            }
        QVERIFY(keys.size() > 15);
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    WindowTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "window_test.moc"
