/// Words offered while a formula is typed, chosen by keys and by the mouse; the call that is told; F1 on
/// words.
#include <clocale>

#include <QApplication>
#include <QClipboard>
#include <QPushButton>
#include <QScreen>
#include <QTemporaryDir>
#include <QTest>

#include "desk/calculation_pane.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/offer_list.h"
#include "desk/sheet_view.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

const char *const bookText = R"(puteal workbook 1
title "A small job"
uses softening 1
list clarity "clear" "cloudy"
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
item: "Look of the water"
amount: "clear"
  name look
  choices clarity
line
item: "Free"
line
end water 5
sheet costs "Cost by year"
column year amounts "Year" 8
column total amounts "Softener" 14
line
year: 0 yr
total: $100
  name first_cost
line
year: 1 yr
total: $7
  name hardness
end costs 2
end workbook
)";

} // namespace

class CompletingTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    SheetView *view() const { return m_window->view(); }
    Slip *slip() const { return view()->slip(); }
    FormulaEdit *editor() const { return slip()->edit(); }
    OfferList *offers() const { return editor()->findChild<OfferList *>(); }
    QString pane() const { return m_window->calculation()->toPlainText(); }
    QString typed(const CellAt &at) const { return fromUtf8(m_window->session()->view(at).typed); }
    QString chosen() const { return offers()->chosen() ? fromUtf8(offers()->chosen()->text) : QString(); }
    void type(const QString &text)
    {
        for (const QChar c : text)
            QTest::keyClick(slip()->isOpen() ? static_cast<QWidget *>(editor()) : view(), c.toLatin1());
    }
    void key(Qt::Key key, Qt::KeyboardModifiers with = Qt::NoModifier)
    {
        QTest::keyClick(slip()->isOpen() ? static_cast<QWidget *>(editor()) : view(), key, with);
    }
    QPushButton *button(const QString &words) const
    {
        for (QPushButton *one : slip()->findChildren<QPushButton *>())
            if (one->text() == words)
                return one;
        qFatal("no such button");
        return nullptr;
    }

private slots:
    void init()
    {
        qputenv("XDG_CONFIG_HOME", m_folder.path().toUtf8());
        m_window = std::make_unique<MainWindow>();
        m_window->setQuiet(true);
        m_window->show();
        QFile file(m_folder.filePath("book.puteal"));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(bookText);
        file.close();
        QVERIFY2(m_window->openFile(file.fileName()), qPrintable(m_window->lastRefusal()));
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
        view()->setFocus();
        m_window->goTo({0, 1, 3});
    }
    void cleanup() { m_window.reset(); }

    void everythingIsOfferedBeforeTheFirstLetter()
    {
        key(Qt::Key_F2);
        QVERIFY(!editor()->completing());
        key(Qt::Key_Space, Qt::ControlModifier);
        QVERIFY(editor()->completing());
        QCOMPARE(chosen(), QString("hardness"));
        QVERIFY(offers()->count() > 100);
        key(Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("hardness"));
    }
    void theFirstLetterOffersAlready()
    {
        type("i");
        QVERIFY(editor()->completing());
        QCOMPARE(chosen(), QString("iron"));
    }
    void aWordOfTheTradeFindsFunctions()
    {
        type("2 * bleach");
        QVERIFY(editor()->completing());
        const Completion *first = offers()->chosen();
        QVERIFY(first && !first->found); // bleach_...: begins so
        while (offers()->chosen()->text != "hypochlorite_strength")
            key(Qt::Key_Down);
        QCOMPARE(fromUtf8(offers()->chosen()->detail), QString("for \"bleach\": Strength of bleach"));
        key(Qt::Key_Return); // after an arrow Enter takes the word
        QVERIFY(slip()->isOpen());
        QCOMPARE(slip()->text(), QString("2 * hypochlorite_strength("));
    }
    void enterKeepsWhatIsTypedWhileNothingWasChosen()
    {
        type("hardness");
        QVERIFY(editor()->completing());
        key(Qt::Key_Return);
        QCOMPARE(typed({0, 1, 3}), QString("hardness"));
    }
    void tabGoesOnWhereTheWordIsWhole()
    {
        type("hardness");
        key(Qt::Key_Tab);
        QVERIFY(!slip()->isOpen());
        QCOMPARE(typed({0, 1, 3}), QString("hardness"));
    }
    void aSheetIsTakenWithItsPointAndItsCells()
    {
        type("cost");
        while (chosen() != "costs.")
            key(Qt::Key_Down);
        key(Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("costs."));
        QVERIFY(editor()->completing());
        QCOMPARE(chosen(), QString("first_cost"));
        key(Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("costs.first_cost"));
    }
    void aWordIsReplacedToItsEnd()
    {
        type("hardness + 1 gpg");
        key(Qt::Key_Escape);
        key(Qt::Key_Home);
        for (int i = 0; i < 4; ++i)
            key(Qt::Key_Right);
        key(Qt::Key_Space, Qt::ControlModifier);
        key(Qt::Key_Tab, Qt::NoModifier);
        QVERIFY2(slip()->text().endsWith(" + 1 gpg") && !slip()->text().contains("ness ness"),
                 qPrintable(slip()->text()));
        QCOMPARE(slip()->text(), QString("hardness + 1 gpg"));
    }
    void aFunctionBeforeItsParenthesisGetsNoSecondOne()
    {
        view()->openSlip("compensated_hard(hardness, iron)", true);
        QTextCursor cursor = editor()->textCursor();
        cursor.setPosition(16);
        editor()->setTextCursor(cursor);
        key(Qt::Key_Space, Qt::ControlModifier);
        QCOMPARE(chosen(), QString("compensated_hardness"));
        key(Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("compensated_hardness(hardness, iron)"));
    }
    void afterANumberUnitsAreOffered()
    {
        type("3 ");
        QVERIFY(editor()->completing());
        type("gp");
        while (chosen() != "gpg")
            key(Qt::Key_Down);
        key(Qt::Key_Tab);
        QCOMPARE(slip()->text(), QString("3 gpg"));
        // Digits alone bring nothing up.
        key(Qt::Key_Escape);
        m_window->goTo({0, 1, 3});
        type("35");
        QVERIFY(!editor()->completing());
    }
    void whatIsPastedBringsNothingUp()
    {
        type("(");
        QApplication::clipboard()->setText("hard");
        key(Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(slip()->text(), QString("(hard"));
        QVERIFY(!editor()->completing());
    }
    void escapeLeavesTheListThenTheFormula()
    {
        type("hard");
        key(Qt::Key_Escape);
        QVERIFY(!editor()->completing());
        QVERIFY(slip()->isOpen());
        key(Qt::Key_Escape);
        QVERIFY(!slip()->isOpen());
        QCOMPARE(typed({0, 1, 3}), QString());
    }
    void aCellWithChoicesOpensWithThem()
    {
        m_window->goTo({0, 1, 2});
        key(Qt::Key_F2);
        QVERIFY(editor()->completing());
        QCOMPARE(chosen(), QString("\"clear\"")); // what stands there
        key(Qt::Key_Down);
        key(Qt::Key_Return); // the choice is the whole cell
        QVERIFY(!slip()->isOpen());
        QCOMPARE(typed({0, 1, 2}), QString("\"cloudy\""));
    }
    void theMouseAloneChoosesAndKeeps()
    {
        m_window->goTo({0, 1, 2});
        view()->openSlip({}, false);
        QVERIFY(editor()->completing());
        const QRect row = offers()->visualItemRect(offers()->item(1));
        QTest::mouseClick(offers()->viewport(), Qt::LeftButton, {}, row.center());
        QVERIFY(!slip()->isOpen());
        QCOMPARE(typed({0, 1, 2}), QString("\"cloudy\""));
        view()->openSlip("5 gpg", true);
        QTest::mouseClick(button("Leave"), Qt::LeftButton);
        QVERIFY(!slip()->isOpen());
        m_window->goTo({0, 1, 3});
        view()->openSlip("5 gpg", true);
        QTest::mouseClick(button("Keep"), Qt::LeftButton);
        QVERIFY(!slip()->isOpen());
        QCOMPARE(typed({0, 1, 3}), QString("5 gpg"));
    }
    void theListStaysOnTheScreen()
    {
        view()->openSlip("", true);
        offers()->offer(m_window->session()->complete({0, 1, 3}, "", 0, Offer::whenAsked), "",
                        QRect(screenBox().right() - 20, screenBox().bottom() - 30, 2, 16));
        QVERIFY(offers()->isVisible());
        QVERIFY2(screenBox().contains(offers()->geometry()), "the list leaves the screen");
        QVERIFY(offers()->geometry().bottom() < screenBox().bottom() - 30);
        QCOMPARE(offers()->horizontalScrollBarPolicy(), Qt::ScrollBarAlwaysOff);
    }
    static QRect screenBox() { return QGuiApplication::primaryScreen()->availableGeometry(); }

    void theCallIsToldWithItsArgument()
    {
        type("compensated_hardness(");
        QVERIFY2(slip()->callWords().startsWith(
                     "compensated_hardness(hardness gpg, iron mg/L as Fe, [manganese mg/L as Mn], "),
                 qPrintable(slip()->callWords()));
        QVERIFY(slip()->callWords().endsWith("now: total hardness of the raw water"));
        type("hardness, ");
        QVERIFY(slip()->callWords().endsWith("now: dissolved (ferrous) iron of the raw water"));
        key(Qt::Key_Home);
        QCOMPARE(slip()->callWords(), QString());
    }

    void helpOnWords_data()
    {
        QTest::addColumn<QString>("formula");
        QTest::addColumn<int>("caret");
        QTest::addColumn<QString>("begins");
        QTest::newRow("unit") << "3 gpg" << 4 << "UNIT\ngpg: grains per US gallon";
        QTest::newRow("unit without a blank") << "3gpg" << 4 << "UNIT\ngpg: grains per US gallon";
        QTest::newRow("below the line") << "3 mg/L" << 6 << "UNIT\nL: liters";
        QTest::newRow("substance") << "3 mg/L as Fe" << 12 << "SUBSTANCE\nFe: iron";
        QTest::newRow("name also elsewhere") << "hardness" << 3 << "CALCULATION: line 1, Hardness";
        QTest::newRow("name of another sheet") << "costs.first_cost" << 9 << "CALCULATION: line 1, ";
        QTest::newRow("column") << "amount" << 3 << "COLUMN\namount: Amount";
        QTest::newRow("sheet") << "costs." << 3 << "SHEET\ncosts: Cost by year";
        QTest::newRow("joining word") << "a and b" << 3 << "IN FORMULAS\nand: both conditions hold";
        QTest::newRow("argument") << "max(" << 4 << "FUNCTION\nmax";
        QTest::newRow("word of the trade") << "rust" << 4 << "FOUND\nfunctions for \"rust\", read as ";
    }
    void helpOnWords()
    {
        QFETCH(QString, formula);
        QFETCH(int, caret);
        QFETCH(QString, begins);
        view()->openSlip(formula, true);
        key(Qt::Key_Escape); // the offers, if there are some
        if (!slip()->isOpen())
            view()->openSlip(formula, false);
        editor()->setPlainText(formula);
        QTextCursor cursor = editor()->textCursor();
        cursor.setPosition(caret);
        editor()->setTextCursor(cursor);
        key(Qt::Key_F1);
        QVERIFY2(pane().startsWith(begins), qPrintable(pane().left(120)));
    }
    void helpWithoutAWordSaysWhatToDo()
    {
        view()->openSlip("", true);
        key(Qt::Key_F1);
        QCOMPARE(m_window->said(),
                 QString("put the caret in a word to have it explained; Shift+F1 asks for one"));
    }
    void helpComesBackWhereThePaneWasHidden()
    {
        key(Qt::Key_F9);
        QVERIFY(!m_window->calculation()->isVisible());
        view()->openSlip("max(", true);
        key(Qt::Key_F1);
        QVERIFY(m_window->calculation()->isVisible());
    }
    void rubbingAWordOutDeletesNoLine()
    {
        const auto lines = m_window->session()->workbook().sheets[0].lineCount();
        type("hardness iron");
        key(Qt::Key_Backspace, Qt::ControlModifier);
        QVERIFY(slip()->isOpen());
        QCOMPARE(slip()->text(), QString("hardness "));
        QCOMPARE(m_window->session()->workbook().sheets[0].lineCount(), lines);
    }
    void aFoundFunctionIsExplainedByAClick()
    {
        view()->openSlip("rust", true);
        key(Qt::Key_F1);
        key(Qt::Key_Escape);
        emit m_window->calculation()->anchorClicked(QUrl("word:iron_form"));
        QVERIFY2(pane().startsWith("FUNCTION\niron_form"), qPrintable(pane().left(80)));
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    CompletingTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "completing_test.moc"
