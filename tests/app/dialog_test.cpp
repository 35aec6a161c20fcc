/// Every dialog by keys alone: what cannot be kept is said at its field and stays there to be mended.
#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "desk/calculation_pane.h"
#include "desk/form.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"

using namespace puteal;
using namespace puteal::desk;

namespace
{

const char *const bookText = R"(puteal workbook 1
title "A small job"
uses softening 1
list verdict "works" "marginal" "will not work"
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
item: "Hardness"
amount: 10 gpg
  name hardness
line
amount: 2 * hardness
end water 3
end workbook
)";

QString nameOf(const QWidget *widget)
{
    return widget ? widget->accessibleName() : QString();
}

/// Tab by Tab to the field of that name, as a person without a mouse goes.
QWidget *walkTo(const QString &name)
{
    for (int i = 0; i < 20 && nameOf(QApplication::focusWidget()) != name; ++i)
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    return nameOf(QApplication::focusWidget()) == name ? QApplication::focusWidget() : nullptr;
}

QWidget *fieldOf(const Form &form, const QString &name)
{
    for (QWidget *widget : form.findChildren<QWidget *>())
        if (nameOf(widget) == name)
            return widget;
    return nullptr;
}

} // namespace

class DialogTest : public QObject
{
    Q_OBJECT
private:
    QTemporaryDir m_folder;
    std::unique_ptr<MainWindow> m_window;

    CellAt at(const char *reference) const { return *m_window->session()->find(reference); }
    QString fileText() const { return QString::fromStdString(m_window->session()->fileText()); }
    /// Acts in the dialog that the action opens; leaves it if it is still open then.
    void inDialog(const QString &action, const std::function<void(Form &)> &act)
    {
        bool met = false;
        QTimer::singleShot(0, qApp, [&] {
            auto *form = qobject_cast<Form *>(QApplication::activeModalWidget());
            if (!form)
                return;
            form->activateWindow();
            met = QTest::qWaitFor([&] { return form->isAncestorOf(QApplication::focusWidget()); });
            act(*form);
            if (form->isVisible())
                QTest::keyClick(form, Qt::Key_Escape);
        });
        for (QAction *menu : m_window->menuBar()->actions())
            for (QAction *entry : menu->menu()->actions())
                if (entry->text() == action) {
                    entry->trigger();
                    QVERIFY2(met, qPrintable(action));
                    return;
                }
        QFAIL(qPrintable("no action " + action));
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
        m_window->goTo(at("iron"));
    }
    void cleanup() { m_window.reset(); }

    void whatIsRefusedStaysWithItsSentence_data()
    {
        QTest::addColumn<QString>("action");
        QTest::addColumn<QString>("field");
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("blamed");
        QTest::addColumn<QString>("words");
        const auto row = [](const char *name, const char *action, const char *field, const char *typed,
                            const char *blamed, const char *words) {
            QTest::newRow(name) << action << field << typed << blamed << words;
        };
        row("name", "Name...", "Name of Dissolved iron", "mg", "Name of Dissolved iron",
            "`mg` is a unit word: take a longer name, as in mg_used");
        row("name taken", "Name...", "Name of Dissolved iron", "hardness", "Name of Dissolved iron",
            "`hardness` already names line 2 of sheet water: take another name");
        row("unit", "Set unit...", "Unit of Dissolved iron", "mgl", "Unit of Dissolved iron",
            "`mgl` is no unit: write mg/L");
        row("no bound", "Limit...", "bound (between: the lower)", "", "bound (between: the lower)",
            "a limit needs a bound, for example 0.3 mg/L as Fe; or choose no limit");
        row("bound of another unit", "Limit...", "bound (between: the lower)", "3 gal",
            "bound (between: the lower)", "the limit is 3 gal, but the cell is in mg/L as Fe");
        row("bound that is no formula", "Limit...", "bound (between: the lower)", "0.3 mg/L +",
            "bound (between: the lower)", "a value is missing at the end");
        row("band", "Limit...", "near band, %", "many", "near band, %",
            "the near band is a number of percent from 0 to 100, for example 20");
        row("source without a kind", "Source marks of this cell...", "its words", "sheet 9", "New",
            "choose what kind of source these words tell of");
        row("column key", "Column...", "Key (for formulas)", "Two words", "Key (for formulas)",
            "`Two words` is no column key; use small letters, digits and _, first a letter");
        row("column unit", "Column...", "Set unit of the whole column", "mgl", "Set unit of the whole column",
            "`mgl` is no unit: write mg/L");
        row("new column", "New column...", "Key (for formulas)", "amount", "Key (for formulas)",
            "the sheet already has a column `amount`; choose another key");
        row("sheet key", "Title and key...", "Key", "9", "Key",
            "`9` is no sheet key; use two or more small letters, digits and _, first a letter");
        row("new sheet", "New sheet...", "Key", "water", "Key",
            "there is a sheet `water` already; choose another key");
        row("help", "Function help...", "Word", "nonsens", "Word",
            "nothing is known about \"nonsens\"; formulas complete words while they are typed");
    }
    void whatIsRefusedStaysWithItsSentence()
    {
        QFETCH(QString, action);
        QFETCH(QString, field);
        QFETCH(QString, typed);
        QFETCH(QString, blamed);
        QFETCH(QString, words);
        const QString before = fileText();
        QString said, kept, focused;
        bool stayed = false;
        inDialog(action, [&](Form &form) {
            QWidget *place = walkTo(field);
            if (!place)
                return;
            QTest::keyClick(place, Qt::Key_A, Qt::ControlModifier);
            QTest::keyClick(place, Qt::Key_Delete);
            QTest::keyClicks(place, typed);
            QTest::keyClick(place, Qt::Key_Return);
            stayed = form.isVisible();
            said = form.complaintAt(fieldOf(form, blamed));
            kept = qobject_cast<QLineEdit *>(place)->text();
            focused = nameOf(QApplication::focusWidget());
        });
        QVERIFY(stayed);
        QCOMPARE(said, words);
        QCOMPARE(kept, typed);
        QCOMPARE(focused, blamed);
        QCOMPARE(fileText(), before);
        QVERIFY(!m_window->session()->canUndo());
    }

    void aRefusedNameIsMendedAndKept()
    {
        bool closed = false;
        inDialog("Name...", [&](Form &form) {
            QWidget *name = walkTo("Name of Dissolved iron");
            QTest::keyClicks(name, "mg");
            QTest::keyClick(name, Qt::Key_Return);
            QTest::keyClicks(QApplication::focusWidget(), "_raw");
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
            closed = !form.isVisible();
        });
        QVERIFY(closed);
        QCOMPARE(QString::fromStdString(m_window->session()->view({0, 1, 0}).name), QString("mg_raw"));
    }

    void aBoundWithoutAKindIsNotDropped()
    {
        m_window->goTo(at("hardness"));
        QString said;
        inDialog("Limit...", [&](Form &form) {
            QWidget *bound = walkTo("bound (between: the lower)");
            QTest::keyClicks(bound, "7 gpg");
            QTest::keyClick(bound, Qt::Key_Return);
            said = form.complaintAt(fieldOf(form, "Hardness must be"));
            // At the kind now: the arrow chooses "at most", and the limit is kept.
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
            QTest::keyClick(walkTo("words"), Qt::Key_Return);
        });
        QCOMPARE(said,
                 QString("a bound is typed: choose at most, at least or another of these for it, or clear "
                         "the bound"));
        QCOMPARE(QString::fromStdString(m_window->session()->view(at("hardness")).limit),
                 QString("<= 7 gpg"));
    }

    void noLimitTakesTheLimitAway()
    {
        inDialog("Limit...", [&](Form &) {
            QTest::keyClick(walkTo("Dissolved iron must be"), Qt::Key_Home);
            QTest::keyClick(walkTo("words"), Qt::Key_Return);
        });
        QVERIFY(!m_window->session()->workbook().cell(at("iron"))->beside().limit);
        QVERIFY(m_window->session()->canUndo());
    }

    void aNewSourceAndItsMarkAreOneStep()
    {
        const QString before = fileText();
        m_window->goTo(at("hardness"));
        inDialog("Source marks of this cell...", [&](Form &) {
            QTest::keyClicks(walkTo("New"), "F");
            QTest::keyClicks(walkTo("its words"), "drop count at the tap");
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        });
        const auto sources = m_window->session()->view(at("hardness")).sources;
        QCOMPARE(sources.size(), std::size_t(1));
        QCOMPARE(QString::fromStdString(sources.front()), QString("F1"));
        QCOMPARE(QString::fromStdString(m_window->session()->workbook().sourceById("F1")->words),
                 QString("drop count at the tap"));
        QCOMPARE(QString::fromStdString(m_window->session()->undoWords()), QString("source F1 at line 2"));
        m_window->session()->undo();
        QCOMPARE(fileText(), before);
        QVERIFY(!m_window->session()->canUndo());
        m_window->session()->redo();
        QCOMPARE(QString::fromStdString(m_window->session()->view(at("hardness")).sources.front()),
                 QString("F1"));
    }

    void aKindWithoutWordsIsAskedFor()
    {
        QString said;
        inDialog("Source marks of this cell...", [&](Form &form) {
            QTest::keyClicks(walkTo("New"), "F");
            QTest::keyClick(walkTo("its words"), Qt::Key_Return);
            said = form.complaintAt(fieldOf(form, "its words"));
        });
        QCOMPARE(said, QString("say what the source is: which sheet, page or person, and when"));
    }

    void aMarkIsTickedByTheSpaceBar()
    {
        m_window->goTo(at("hardness"));
        inDialog("Source marks of this cell...", [&](Form &) {
            QTest::keyClick(walkTo("Sources of Hardness"), Qt::Key_Space);
            QTest::keyClick(walkTo("its words"), Qt::Key_Return);
        });
        QCOMPARE(QString::fromStdString(m_window->session()->view(at("hardness")).sources.front()),
                 QString("L1"));
    }

    void choicesThatDoNotFitStayTyped()
    {
        QString said, kept;
        inDialog("Choices...", [&](Form &form) {
            auto *words = qobject_cast<QPlainTextEdit *>(walkTo("Words"));
            if (!words)
                return;
            QTest::keyClicks(words, "yes");
            QTest::keyClick(words, Qt::Key_Return);
            QTest::keyClicks(words, "yes");
            // Tab leaves the words for the button that keeps.
            QTest::keyClick(words, Qt::Key_Tab);
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
            said = form.complaintAt(words);
            kept = words->toPlainText();
        });
        QCOMPARE(kept, QString("yes\nyes"));
        QCOMPARE(said, QString("`choices` and `limit` exclude each other: a choice is no amount, keep one"));
    }

    void aDialogIsOpenedFromTheMenuByKeys()
    {
        QString title;
        QTimer::singleShot(0, qApp, [&] {
            auto *menu = qobject_cast<QMenu *>(QApplication::activePopupWidget());
            if (!menu)
                return;
            QTimer::singleShot(0, qApp, [&] {
                if (QWidget *dialog = QApplication::activeModalWidget()) {
                    title = dialog->windowTitle();
                    QTest::keyClick(dialog, Qt::Key_Escape);
                }
            });
            for (int i = 0; i < 20 && !(menu->activeAction() && menu->activeAction()->text() == "Choices...");
                 ++i)
                QTest::keyClick(menu, Qt::Key_Down);
            QTest::keyClick(menu, Qt::Key_Return);
        });
        QTest::keyClick(m_window.get(), Qt::Key_C, Qt::AltModifier);
        QTRY_COMPARE(title, QString("Choices"));
    }
    void everyFieldIsReachedByTab_data()
    {
        QTest::addColumn<QString>("action");
        for (const char *action : {"Name...", "Set unit...", "Choices...", "Limit...", "Figures...",
                                   "Note...", "Source marks of this cell...", "New column...", "Column...",
                                   "New sheet...", "Title and key...", "Title...", "Function help..."})
            QTest::newRow(action) << action;
    }
    void everyFieldIsReachedByTab()
    {
        QFETCH(QString, action);
        QStringList fields;
        QSet<QWidget *> met;
        int wanted = 0;
        inDialog(action, [&](Form &form) {
            for (int i = 0; i < 20; ++i) {
                met.insert(QApplication::focusWidget());
                QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
            }
            for (QWidget *widget : form.findChildren<QWidget *>())
                if (widget->isEnabled() && widget->isVisible() &&
                    (widget->focusPolicy() & Qt::TabFocus) != 0 && !widget->focusProxy()) {
                    ++wanted;
                    if (!met.contains(widget))
                        fields += nameOf(widget) + QLatin1String(widget->metaObject()->className());
                }
        });
        QVERIFY(wanted >= 3);
        QCOMPARE(fields.join(", "), QString());
    }
};

int main(int argc, char **argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    std::setlocale(LC_NUMERIC, "C");
    QCoreApplication::setOrganizationName("puteal-test");
    DialogTest test;
    return QTest::qExec(&test, argc, argv);
}
#include "dialog_test.moc"
