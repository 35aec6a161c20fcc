/// The menus of the window and what their actions do.
#include <algorithm>
#include <array>
#include <functional>

#include <QApplication>
#include <QFileDialog>
#include <QMenu>
#include <QMenuBar>
#include <QStackedWidget>

#include "charts/chart_view.h"
#include "desk/calculation_pane.h"
#include "desk/dialogs.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/pdf_page.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

namespace puteal::desk
{

QAction *MainWindow::add(QMenu *menu, const QString &text, const QKeySequence &keys,
                         std::function<void()> act)
{
    auto *action = menu->addAction(text);
    if (!keys.isEmpty())
        action->setShortcut(keys);
    connect(action, &QAction::triggered, this, [this, act = std::move(act)] {
        if (mayMoveOn())
            act();
    });
    return action;
}

void MainWindow::buildMenus()
{
    buildWorkbookMenu();
    buildSheetMenu();
    buildCellMenu();
    buildOtherMenus();
}

void MainWindow::buildWorkbookMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Workbook"));
    add(menu, tr("New"), QKeySequence(Qt::CTRL | Qt::Key_N), [this] {
        if (mayLeave())
            newWorkbook();
    });
    add(menu, tr("Open..."), QKeySequence(Qt::CTRL | Qt::Key_O), [this] {
        if (!mayLeave())
            return;
        const QString path =
            QFileDialog::getOpenFileName(this, tr("Open workbook"), QString(), tr("Workbooks (*.puteal)"));
        if (!path.isEmpty())
            openFile(path);
    });
    m_recent = menu->addMenu(tr("Recent"));
    fillRecent();
    menu->addSeparator();
    add(menu, tr("Save"), QKeySequence(Qt::CTRL | Qt::Key_S), [this] { save(); });
    add(menu, tr("Save under another name..."), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
        [this] { saveElsewhere(); });
    add(menu, tr("Write page as PDF..."), QKeySequence(), [this] { exportPage(); });
    menu->addSeparator();
    add(menu, tr("Title..."), QKeySequence(),
        [this] { askTitle(this, *m_session, [this](const Edit &edit) { return carryOut(edit); }); });
    menu->addSeparator();
    add(menu, tr("Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), [this] { close(); });
}

void MainWindow::buildSheetMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Sheet"));
    const auto sheet = [this] { return m_view->sheetModel()->sheet(); };
    add(menu, tr("Line below"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Down),
        [this] { insertLines(InsertSide::below); });
    add(menu, tr("Line above"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Up),
        [this] { insertLines(InsertSide::above); });
    add(menu, tr("Delete lines"), QKeySequence(Qt::CTRL | Qt::Key_Backspace), [this] { deleteLines(); });
    add(menu, tr("Move lines up"), QKeySequence(Qt::ALT | Qt::Key_Up), [this] { moveLines(-1); });
    add(menu, tr("Move lines down"), QKeySequence(Qt::ALT | Qt::Key_Down), [this] { moveLines(1); });
    menu->addSeparator();
    const auto keep = [this](const Edit &edit) { return carryOut(edit); };
    add(menu, tr("New column..."), QKeySequence(), [this, keep, sheet] {
        if (sheet() < m_session->workbook().sheets.size())
            askNewColumn(this, *m_session, sheet(), m_session->workbook().sheets[sheet()].columnCount(),
                         keep);
    });
    add(menu, tr("Column..."), QKeySequence(), [this, keep] {
        if (const CellAt at = m_view->currentCell(); m_session->workbook().cell(at))
            askColumn(this, *m_session, at.sheet, at.column, keep);
    });
    add(menu, tr("Delete column"), QKeySequence(), [this, sheet] {
        apply(DeleteColumn{sheet(), m_view->currentCell().column});
    });
    menu->addSeparator();
    add(menu, tr("New sheet..."), QKeySequence(), [this, keep, sheet] {
        const auto sheets = static_cast<std::uint32_t>(m_session->workbook().sheets.size());
        askNewSheet(this, std::min(sheet() + 1, sheets), keep);
    });
    add(menu, tr("Title and key..."), QKeySequence(), [this, keep, sheet] {
        if (sheet() < m_session->workbook().sheets.size())
            askSheet(this, *m_session, sheet(), keep);
    });
    add(menu, tr("Delete sheet"), QKeySequence(), [this, sheet] { apply(DeleteSheet{sheet()}); });
    menu->addSeparator();
    add(menu, tr("Next sheet"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
        [this, sheet] { showSheet(sheet() + 1); });
    add(menu, tr("Sheet before"), QKeySequence(Qt::CTRL | Qt::Key_PageUp), [this, sheet] {
        if (sheet() > 0)
            showSheet(sheet() - 1);
    });
}

void MainWindow::buildCellMenu()
{
    QMenu *menu = menuBar()->addMenu(tr("&Cell"));
    m_undo = add(menu, tr("Undo"), QKeySequence(Qt::CTRL | Qt::Key_Z), [this] { undoOrRedo(true); });
    m_redo = add(menu, tr("Redo"), QKeySequence(Qt::CTRL | Qt::Key_Y), [this] { undoOrRedo(false); });
    menu->addSeparator();
    add(menu, tr("Type in the cell"), QKeySequence(), [this] { m_view->openSlip({}, false); });
    add(menu, tr("Copy"), QKeySequence(Qt::CTRL | Qt::Key_C), [this] { copy(); });
    add(menu, tr("Paste"), QKeySequence(Qt::CTRL | Qt::Key_V), [this] { paste(); });
    add(menu, tr("Clear"), QKeySequence(), [this] {
        if (const auto b = m_view->block())
            apply(ClearBlock{m_view->sheetModel()->sheet(), b->left, b->right, b->first, b->last});
    });
    add(menu, tr("Fill down"), QKeySequence(Qt::CTRL | Qt::Key_D), [this] { fillDown(); });
    menu->addSeparator();
    using Ask = void (*)(QWidget *, const Session &, const CellAt &, const CarryOut &);
    const auto beside = [&](const QString &text, const QKeySequence &keys, Ask ask) {
        add(menu, text, keys, [this, ask] {
            const CellAt at = m_view->meantCell();
            if (m_session->workbook().cell(at))
                ask(this, *m_session, at, [this](const Edit &edit) { return carryOut(edit); });
        });
    };
    beside(tr("Name..."), QKeySequence(Qt::CTRL | Qt::Key_M), askName);
    beside(tr("Set unit..."), QKeySequence(Qt::CTRL | Qt::Key_U), askUnit);
    beside(tr("Choices..."), QKeySequence(), askChoices);
    add(menu, tr("Limit..."), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { editLimit(); });
    beside(tr("Figures..."), QKeySequence(), askFigures);
    beside(tr("Note..."), QKeySequence(), askNote);
    // The same at the pointer.
    m_view->setContextMenuPolicy(Qt::CustomContextMenu);
    connect(m_view, &QWidget::customContextMenuRequested, menu,
            [this, menu](const QPoint &at) { menu->popup(m_view->viewport()->mapToGlobal(at)); });
}

void MainWindow::buildOtherMenus()
{
    QMenu *calculation = menuBar()->addMenu(tr("C&alculation"));
    add(calculation, tr("Next outside or missing"), QKeySequence(Qt::Key_F8),
        [this] { stepState(LimitState::outside); });
    add(calculation, tr("Next near a limit"), QKeySequence(Qt::SHIFT | Qt::Key_F8),
        [this] { stepState(LimitState::near); });
    add(calculation, tr("Function help..."), QKeySequence(Qt::SHIFT | Qt::Key_F1),
        [this] { askHelp(this, [this](const QString &word) { return explain(word); }); });
    QMenu *chart = menuBar()->addMenu(tr("C&hart"));
    add(chart, tr("Show the chart"), QKeySequence(Qt::CTRL | Qt::Key_G), [this] {
        if (!m_session->workbook().charts.empty())
            showChart(fromUtf8(m_session->workbook().charts.front().key));
        else
            say(tr("this workbook has no chart"));
    });
    add(chart, tr("Back to the sheet"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_G),
        [this] { showSheet(m_view->sheetModel()->sheet()); });
    add(chart, tr("Write chart as SVG, PNG or PDF..."), QKeySequence(), [this] { exportChartFile(); });
    QMenu *sources = menuBar()->addMenu(tr("S&ources"));
    add(sources, tr("Source marks of this cell..."), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_M),
        [this] { editSources(); });
    QMenu *viewMenu = menuBar()->addMenu(tr("&View"));
    // Larger and smaller leave what is being typed open.
    const auto onlyZoom = [this](QMenu *menu, const QString &text, const QKeySequence &keys, qreal factor) {
        auto *action = menu->addAction(text);
        action->setShortcut(keys);
        connect(action, &QAction::triggered, this, [this, factor] { zoom(factor); });
    };
    onlyZoom(viewMenu, tr("Larger"), QKeySequence(Qt::CTRL | Qt::Key_Plus), 1.1);
    onlyZoom(viewMenu, tr("Smaller"), QKeySequence(Qt::CTRL | Qt::Key_Minus), 1 / 1.1);
    add(viewMenu, tr("Next pane"), QKeySequence(Qt::Key_F6), [this] { nextPane(1); });
    add(viewMenu, tr("Pane before"), QKeySequence(Qt::SHIFT | Qt::Key_F6), [this] { nextPane(-1); });
    m_paneShown = add(viewMenu, tr("Calculation beside the sheet"), QKeySequence(Qt::Key_F9),
                      [this] { showPane(!m_calculation->isVisible()); });
    m_paneShown->setCheckable(true);
    m_paneShown->setChecked(true);
    buildHelpMenu();
}

void MainWindow::buildHelpMenu()
{
    QMenu *help = menuBar()->addMenu(tr("H&elp"));
    add(help, tr("Explain this cell"), QKeySequence(Qt::Key_F1), [this] { explainHere(); });
    add(help, tr("Keys"), QKeySequence(), [this] {
        m_calculation->showHelp(
            tr("KEYS"),
            tr("type or F2: formula of the cell\nEnter: keep, line below\nTab, or Enter after an arrow: take "
               "the "
               "offered word\nEsc: leave as it was\n"
               "click a cell while typing: its name goes in\nAlt+1, 2, 3 while typing: take an offered way "
               "out\n"
               "Ctrl+Space while typing: words that could stand here\n"
               "F1 while typing: the word at the caret\nF1 on a cell: its functions, one after the other\n"
               "Shift+F1: help for a word\nCtrl+D: fill down\n"
               "Ctrl+M: name    Ctrl+U: unit    Ctrl+L: limit    Ctrl+Shift+M: sources\nCtrl+G: chart    F8: "
               "next outside or missing\n"
               "Ctrl+PageDown: next sheet    F6: next pane"));
    });
    add(help, tr("Notes on opening"), QKeySequence(), [this] {
        if (!showOpeningNotes())
            say(tr("nothing was odd when this workbook was opened"));
    });
    add(help, tr("About"), QKeySequence(), [this] {
        m_calculation->showHelp(tr("ABOUT"), tr("Puteal %1\nA workbook for people who make private well "
                                                "water fit to use.\n\nNothing here says that water is "
                                                "safe to drink. Local codes, the health department and "
                                                "licensed trades decide.\n\nGNU General Public "
                                                "License, version 3 or later.")
                                                 .arg(QStringLiteral(PUTEAL_VERSION)));
    });
}

void MainWindow::zoom(qreal factor)
{
    QFont font = QApplication::font();
    font.setPointSizeF(std::clamp(font.pointSizeF() * factor, 6.0, 30.0));
    QApplication::setFont(font); // dialogs to come; what is open learns of it too late to be laid out
    setFont(font);
    m_view->setFont(font);
    m_calculation->setFont(font);
    refreshAround();
}

/// Tab walks over cells and links, so the panes have a key of their own.
void MainWindow::nextPane(int step)
{
    const std::array<QWidget *, 3> panes{m_steps->paper(), m_center->currentWidget(), m_calculation};
    int here = 1;
    for (int i = 0; i < 3; ++i)
        if (panes[static_cast<std::size_t>(i)]->hasFocus() ||
            panes[static_cast<std::size_t>(i)]->isAncestorOf(QApplication::focusWidget()))
            here = i;
    do
        here = (here + step + 3) % 3;
    while (!panes[static_cast<std::size_t>(here)]->isVisible());
    panes[static_cast<std::size_t>(here)]->setFocus(Qt::ShortcutFocusReason);
}

void MainWindow::stepState(LimitState wanted)
{
    std::vector<CellAt> places;
    for (const Finding &finding : m_session->findings()) {
        using Grade = Finding::Grade;
        const bool near = finding.grade == Grade::near;
        if (finding.grade == Grade::caution || finding.grade == Grade::expectation ||
            near != (wanted == LimitState::near))
            continue;
        places.push_back(finding.at);
    }
    if (places.empty()) {
        say(wanted == LimitState::near ? tr("nothing is near a limit")
                                       : tr("nothing is outside a limit or missing"));
        return;
    }
    const CellAt here = m_view->currentCell();
    const auto order = [](const CellAt &a) { return std::tuple(a.sheet, a.line, a.column); };
    for (const CellAt &at : places)
        if (order(at) > order(here)) {
            goTo(at);
            return;
        }
    goTo(places.front());
}

void MainWindow::exportChartFile()
{
    if (m_session->workbook().charts.empty()) {
        say(tr("this workbook has no chart"));
        return;
    }
    const QString path = QFileDialog::getSaveFileName(this, tr("Write chart"), QStringLiteral("chart.svg"),
                                                      tr("Pictures (*.svg *.png *.pdf)"));
    if (path.isEmpty())
        return;
    QString why;
    const std::string key =
        m_chartKey.isEmpty() ? m_session->workbook().charts.front().key : m_chartKey.toStdString();
    if (charts::exportChart(m_session->chart(key), path, why))
        say(tr("written: %1").arg(path));
    else
        refuse(tr("not written: %1").arg(why));
}

void MainWindow::exportPage()
{
    const QString path =
        QFileDialog::getSaveFileName(this, tr("Write page"), QStringLiteral("page.pdf"), tr("PDF (*.pdf)"));
    if (path.isEmpty())
        return;
    QString why;
    if (writePdfPage(*m_session, path, why))
        say(tr("written: %1").arg(path));
    else
        refuse(tr("not written: %1").arg(why));
}

} // namespace puteal::desk
