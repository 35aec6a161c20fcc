/// The window: panes, opening and saving, carrying edits out.
#include "desk/main_window.h"

#include <QCloseEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>

#include "charts/chart_view.h"
#include "desk/calculation_pane.h"
#include "desk/look.h"
#include "desk/sheet_view.h"
#include "desk/steps_pane.h"

namespace puteal::desk
{

MainWindow::MainWindow(QWidget *parent)
    : QMainWindow(parent), m_view(new SheetView), m_steps(new StepsPane), m_calculation(new CalculationPane),
      m_chart(new charts::ChartPane), m_center(new QStackedWidget), m_splitter(new QSplitter(Qt::Horizontal)),
      m_title(new QLabel), m_states(new QLabel), m_message(new QLabel), m_saved(new QLabel)
{
    setWindowTitle(QStringLiteral("Puteal"));
    m_center->addWidget(m_view);
    m_center->addWidget(m_chart);
    m_splitter->addWidget(m_steps);
    m_splitter->addWidget(m_center);
    m_splitter->addWidget(m_calculation);
    m_splitter->setStretchFactor(1, 1);
    m_splitter->setChildrenCollapsible(false);
    m_splitter->setHandleWidth(5);
    const int letter = fontMetrics().averageCharWidth();
    m_steps->setMinimumWidth(letter * 20);
    m_calculation->setMinimumWidth(letter * 24);
    connect(m_splitter, &QSplitter::splitterMoved, this, [this] { m_shared = true; });
    setCentralWidget(m_splitter);
    for (QLabel *label : {m_title, m_states, m_message, m_saved})
        label->setTextFormat(Qt::PlainText);
    m_states->setTextFormat(Qt::RichText);
    m_title->setContentsMargins(12, 0, 16, 0);
    menuBar()->setCornerWidget(m_title, Qt::TopRightCorner);
    statusBar()->addWidget(m_states);
    // A long message is cut with dots, never widens the window, and is whole when the pointer rests on it.
    m_message->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_message->installEventFilter(this);
    statusBar()->addWidget(m_message, 1);
    statusBar()->addPermanentWidget(m_saved);
    statusBar()->setSizeGripEnabled(false);
    buildMenus();
    m_view->setCarryOut([this](const Edit &edit) { return carryOut(edit); });
    connect(m_view, &SheetView::edited, this, [this](const Edit &edit) { apply(edit); });
    connect(m_view, &SheetView::cellChosen, this, [this](const CellAt &at) {
        if (m_session && m_session->workbook().cell(at))
            m_calculation->show(*m_session, at);
    });
    connect(m_view, &SheetView::helpWanted, this, &MainWindow::showHelpFor);
    connect(m_view, &SheetView::said, this, &MainWindow::say);
    connect(m_view, &SheetView::limitWanted, this, &MainWindow::editLimit);
    connect(m_view, &SheetView::sourcesWanted, this, &MainWindow::editSources);
    connect(m_calculation, &CalculationPane::cellWanted, this, &MainWindow::goTo);
    connect(m_calculation, &CalculationPane::wordWanted, this, &MainWindow::showHelpFor);
    connect(m_steps->paper(), &StepsPaper::sheetChosen, this,
            [this](std::uint32_t sheet) { showSheet(sheet); });
    connect(m_steps->paper(), &StepsPaper::chartChosen, this, &MainWindow::showChart);
    resize(1366, 768);
}

MainWindow::~MainWindow()
{
    // The views outlive the session by a moment: they must not ask it any more.
    m_view->setSheet(nullptr, 0);
}

void MainWindow::take(std::unique_ptr<Session> session)
{
    // The views must never ask a session that is gone, also when the new one has no sheet to show.
    m_view->setSheet(nullptr, 0);
    m_session = std::move(session);
    m_saved->clear();
    say({});
    m_lines.assign(m_session->workbook().sheets.size(), 0);
    m_chartKey.clear();
    m_steps->show(*m_session);
    if (!m_session->workbook().sheets.empty())
        showSheet(0);
    refreshAround();
    refreshTitle();
    showOpeningNotes();
}

bool MainWindow::showOpeningNotes()
{
    QStringList notes;
    for (const auto &note : m_session->openingNotes())
        notes += fromUtf8(note);
    if (notes.isEmpty())
        return false;
    say(notes.size() == 1
            ? notes.front()
            : tr("%1 (and %2 more, beside the sheet)").arg(notes.front()).arg(notes.size() - 1));
    m_calculation->showHelp(tr("ON OPENING"), notes.join(QStringLiteral("\n\n")));
    return true;
}

void MainWindow::newWorkbook()
{
    take(Session::createNew());
    m_calculation->showHelp(tr("TO BEGIN"),
                            tr("Type an item and beside it its amount: 1.8 mg/L as Fe, 7 gpm, $240, yes.\n\n"
                               "What is no amount is a formula: 2 * hardness. Ctrl+M names a cell, so that "
                               "formulas can call it.\n\n"
                               "Ctrl+Space while typing offers what can stand there; a word of the trade, as "
                               "rust or bleach, finds "
                               "functions.\n\nCtrl+O opens a workbook. Help, Keys tells the other keys."));
}

void MainWindow::shareWidth()
{
    if (m_shared)
        return;
    const int letter = fontMetrics().averageCharWidth(), all = m_splitter->width();
    int steps = letter * 34, calculation = letter * 48;
    // The sheet keeps the width of a slip that can be read.
    int lacking = letter * 64 - (all - steps - calculation);
    for (auto [pane, least] : {std::pair(&calculation, letter * 24), std::pair(&steps, letter * 20)}) {
        const int less = std::clamp(lacking, 0, *pane - least);
        *pane -= less;
        lacking -= less;
    }
    m_splitter->setSizes({steps, all - steps - calculation, calculation});
}

void MainWindow::resizeEvent(QResizeEvent *event)
{
    QMainWindow::resizeEvent(event);
    shareWidth();
    fitTitle();
}

void MainWindow::closeEvent(QCloseEvent *event)
{
    if (mayLeave())
        event->accept();
    else
        event->ignore();
}

bool MainWindow::mayMoveOn()
{
    if (m_view->finishTyping())
        return true;
    say(m_view->slip()->result());
    m_steps->setCurrentSheet(m_view->sheetModel()->sheet());
    return false;
}

void MainWindow::showSheet(std::uint32_t sheet)
{
    if (!m_session || sheet >= m_session->workbook().sheets.size() || !mayMoveOn())
        return;
    if (m_view->sheetModel()->session() == m_session.get() && m_view->sheetModel()->sheet() < m_lines.size())
        m_lines[m_view->sheetModel()->sheet()] = m_view->currentCell().line;
    m_view->setSheet(m_session.get(), sheet);
    m_center->setCurrentWidget(m_view);
    m_steps->setCurrentSheet(sheet);
    const Sheet &book = m_session->workbook().sheets[sheet];
    std::uint32_t column = 0;
    while (column + 1 < book.columnCount() && book.column(column).kind == ColumnKind::words)
        ++column;
    m_view->setCurrentCell(
        {sheet, column, std::min(m_lines[sheet], book.lineCount() > 0 ? book.lineCount() - 1 : 0)});
}

void MainWindow::showChart(const QString &key)
{
    if (!m_session || !mayMoveOn())
        return;
    m_chartKey = key;
    const ChartView view = m_session->chart(key.toStdString());
    m_chart->show(view);
    m_calculation->showChart(*m_session, view);
    m_center->setCurrentWidget(m_chart);
    m_steps->setCurrentChart(key);
}

void MainWindow::goTo(const CellAt &at)
{
    if (!m_session->workbook().cell(at))
        return;
    if (m_view->sheetModel()->sheet() != at.sheet || m_center->currentWidget() != m_view)
        showSheet(at.sheet);
    if (m_view->sheetModel()->sheet() != at.sheet)
        return; // what is being typed there cannot be kept
    m_view->setCurrentCell(at);
    m_view->setFocus();
}

std::optional<Error> MainWindow::carryOut(const Edit &edit)
{
    const auto change = m_session->apply(edit);
    if (!change)
        return change.error();
    m_refusal.clear();
    reflect(*change);
    return {};
}

bool MainWindow::apply(const Edit &edit)
{
    const auto error = carryOut(edit);
    if (error)
        refuse(fromUtf8(error->words));
    return !error;
}

void MainWindow::reflect(const ChangeSet &change)
{
    if (change.structure && m_session->workbook().sheets.empty()) {
        m_view->setSheet(nullptr, 0);
    } else if (change.structure) {
        const CellAt here = m_view->currentCell();
        const auto sheets = static_cast<std::uint32_t>(m_session->workbook().sheets.size());
        m_lines.resize(sheets, 0);
        const std::uint32_t sheet = std::min(change.focus ? change.focus->sheet : here.sheet, sheets - 1);
        m_view->setSheet(m_session.get(), sheet);
        m_steps->show(*m_session);
        m_steps->setCurrentSheet(sheet);
        m_view->setCurrentCell(change.focus.value_or(CellAt{sheet, here.column, here.line}));
    } else {
        m_view->sheetModel()->cellsChanged(change.changed);
    }
    QStringList notes;
    if (change.rewritten)
        notes += tr("kept as %1").arg(fromUtf8(*change.rewritten));
    for (const auto &note : change.notes)
        notes += fromUtf8(note);
    say(notes.join(QStringLiteral(" · ")));
    refreshAround();
}

void MainWindow::refreshAround()
{
    if (!m_session)
        return;
    m_steps->show(*m_session);
    if (!m_chartKey.isEmpty() && m_center->currentWidget() == m_chart) {
        const ChartView view = m_session->chart(m_chartKey.toStdString());
        m_chart->show(view);
        m_calculation->showChart(*m_session, view);
    } else if (const CellAt at = m_view->currentCell(); m_session->workbook().cell(at)) {
        m_calculation->show(*m_session, at);
    }
    refreshStatus();
    refreshTitle();
}

void MainWindow::refreshStatus()
{
    const SheetCounts counts = m_session->counts();
    const auto part = [](const char *glyph, const QColor &ink, std::size_t count, const QString &word) {
        return QStringLiteral("<span style='color:%1'>%2</span> %3 %4")
            .arg(ink.name(), QString::fromUtf8(glyph))
            .arg(count)
            .arg(word);
    };
    QStringList parts{part("●", color::within, counts.within, tr("within")),
                      part("▲", color::near, counts.near, tr("near")),
                      part("■", color::outside, counts.outside, tr("outside"))};
    if (counts.missing > 0)
        parts += part("○", color::quiet, counts.missing, tr("missing test"));
    if (counts.errors > 0)
        parts += part("◆", color::outside, counts.errors, tr("without a result"));
    parts += m_session->workbook().si ? tr("Units SI") : tr("Units US");
    parts += tr("3 figures");
    parts += tr("%n assumption(s)", nullptr, static_cast<int>(counts.assumptions))
                 .replace(QStringLiteral("(s)"), counts.assumptions == 1 ? QString() : QStringLiteral("s"));
    m_states->setText(parts.join(QStringLiteral("&nbsp;&nbsp; ")));
    m_undo->setEnabled(m_session->canUndo());
    m_undo->setText(m_session->canUndo() ? tr("Undo: %1").arg(fromUtf8(m_session->undoWords())) : tr("Undo"));
    m_redo->setEnabled(m_session->canRedo());
    m_redo->setText(m_session->canRedo() ? tr("Redo: %1").arg(fromUtf8(m_session->redoWords())) : tr("Redo"));
}

} // namespace puteal::desk
