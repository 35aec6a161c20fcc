/// The window, Engineer view: steps, sheet or chart, calculation, status line.
#pragma once

#include <QMainWindow>

#include "session/session.h"

class QLabel;
class QStackedWidget;
class QMenu;
class QSplitter;

namespace puteal::charts
{
class ChartPane;
}

namespace puteal::desk
{

class SheetView;
class StepsPane;
class CalculationPane;

class MainWindow : public QMainWindow
{
    Q_OBJECT
public:
    explicit MainWindow(QWidget *parent = nullptr);
    ~MainWindow() override;

    /// Opens a file; on failure says why and keeps what is open.
    bool openFile(const QString &path);
    void newWorkbook();
    /// Asks about unsaved work first; false when the person wants to stay.
    bool mayLeave();

    Session *session() const { return m_session.get(); }
    SheetView *view() const { return m_view; }
    StepsPane *steps() const { return m_steps; }
    CalculationPane *calculation() const { return m_calculation; }
    charts::ChartPane *chartPane() const { return m_chart; }
    void showSheet(std::uint32_t sheet);
    void showChart(const QString &key);
    void goTo(const CellAt &at);
    /// Carries an edit out and shows what it did; a refusal is said in the status line and a dialog.
    bool apply(const Edit &edit);
    /// The same, the error handed back: for dialogs that say it at the field.
    std::optional<Error> carryOut(const Edit &edit);
    bool save();
    bool saveAs(const QString &path);
    QString lastRefusal() const { return m_refusal; }
    /// The whole of what the status line says last.
    QString said() const { return m_words; }
    /// Tests answer for the person.
    void setQuiet(bool quiet) { m_quiet = quiet; }

protected:
    void closeEvent(QCloseEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void buildMenus();
    void buildWorkbookMenu();
    void buildSheetMenu();
    void buildCellMenu();
    void buildOtherMenus();
    void buildHelpMenu();
    void take(std::unique_ptr<Session> session);
    void reflect(const ChangeSet &change);
    void refreshAround();
    /// Nothing is being typed, or it was kept; else it stays open and says why it cannot be kept.
    bool mayMoveOn();
    void refreshStatus();
    void refreshTitle();
    void fitTitle();
    /// Shares the width: in a narrow window the panes beside the sheet give way.
    void shareWidth();
    bool mayReplace(const QString &path);
    void fillRecent();
    void remember(const QString &path);
    void forget(const QString &path);
    bool saveElsewhere();
    void say(const QString &words);
    void elideMessage();
    void editLimit();
    void editSources();
    void nextPane(int step);
    void refuse(const QString &words);
    void copy();
    void paste();
    void fillDown();
    void insertLines(InsertSide side);
    void deleteLines();
    void moveLines(int step);
    void undoOrRedo(bool undo);
    void stepState(LimitState wanted);
    /// Help of a function, a unit, a cell, a substance, or what a word of the trade leads to, in the
    /// calculation pane; false when nothing is known.
    bool explain(const QString &asked);
    bool explainPlace(const std::string &word);
    bool explainFound(const std::string &words);
    void showHelpFor(const QString &word);
    /// Help of the functions the current cell calls, one after the other; else its calculation.
    void explainHere();
    void zoom(qreal factor);
    void showPane(bool shown);
    /// What was odd when the file was opened; false when nothing was.
    bool showOpeningNotes();
    void exportChartFile();
    void exportPage();
    QAction *add(QMenu *menu, const QString &text, const QKeySequence &keys, std::function<void()> act);

    std::unique_ptr<Session> m_session;
    SheetView *m_view;
    StepsPane *m_steps;
    CalculationPane *m_calculation;
    charts::ChartPane *m_chart;
    QStackedWidget *m_center;
    QSplitter *m_splitter;
    QLabel *m_title, *m_states, *m_message, *m_saved;
    QMenu *m_recent = nullptr;
    QAction *m_undo = nullptr, *m_redo = nullptr, *m_paneShown = nullptr;
    QString m_chartKey, m_refusal, m_words;
    std::vector<std::uint32_t> m_lines; ///< current line of each sheet
    std::optional<CellAt> m_explained;  ///< where F1 was asked last, and which of its functions comes next
    std::size_t m_nextExplained = 0;
    bool m_quiet = false;
    bool m_shared = false; ///< the person has set the widths of the panes
};

} // namespace puteal::desk
