/// What the actions on cells and lines do: clipboard, filling, lines, undo, limit and sources.
#include <QApplication>
#include <QClipboard>

#include "desk/dialogs.h"
#include "desk/look.h"
#include "desk/main_window.h"
#include "desk/sheet_view.h"

namespace puteal::desk
{

void MainWindow::editLimit()
{
    const CellAt at = m_view->meantCell();
    if (!m_session->workbook().cell(at))
        return;
    askLimit(this, *m_session, at, [this](const Edit &edit) { return carryOut(edit); });
}

void MainWindow::editSources()
{
    const CellAt at = m_view->meantCell();
    if (!m_session->workbook().cell(at))
        return;
    askSources(this, *m_session, at, [this](const Edit &edit) { return carryOut(edit); });
}

void MainWindow::copy()
{
    const SheetView::Copied copied = m_view->copied();
    QApplication::clipboard()->setText(copied.text);
    if (copied.formulas == 1)
        say(tr("copied; the cell without a result was copied as its formula"));
    else if (copied.formulas > 1)
        say(tr("copied; %1 cells without a result were copied as their formulas").arg(copied.formulas));
    else
        say(tr("copied"));
}

void MainWindow::paste()
{
    QString text = QApplication::clipboard()->text();
    if (text.isEmpty())
        return;
    text.replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
    if (text.endsWith(QLatin1Char('\n')))
        text.chop(1);
    std::vector<std::vector<std::string>> rows;
    for (const QString &line : text.split(QLatin1Char('\n'))) {
        rows.emplace_back();
        for (const QString &cell : line.split(QLatin1Char('\t')))
            rows.back().push_back(cell.toStdString());
    }
    const auto block = m_view->block();
    if (!block)
        return;
    apply(SetBlock{{m_view->sheetModel()->sheet(), block->left, block->first}, std::move(rows)});
}

void MainWindow::fillDown()
{
    const auto b = m_view->block();
    if (!b)
        return;
    if (b->first == b->last) {
        say(tr("mark the line to copy and the lines below it, then fill down"));
        return;
    }
    apply(FillDown{m_view->sheetModel()->sheet(), b->left, b->right, b->first, b->last});
}

void MainWindow::insertLines(InsertSide side)
{
    const auto b = m_view->block();
    if (!b)
        return;
    const std::uint32_t at = side == InsertSide::above ? b->first : b->last + 1;
    apply(InsertLines{m_view->sheetModel()->sheet(), at, b->last - b->first + 1, side});
}

void MainWindow::deleteLines()
{
    if (const auto b = m_view->block())
        apply(DeleteLines{m_view->sheetModel()->sheet(), b->first, b->last - b->first + 1});
}

void MainWindow::moveLines(int step)
{
    const auto b = m_view->block();
    if (!b)
        return;
    const std::uint32_t sheet = m_view->sheetModel()->sheet(), count = b->last - b->first + 1;
    if ((step < 0 && b->first == 0) ||
        (step > 0 && b->last + 1 >= m_session->workbook().sheets[sheet].lineCount()))
        return;
    apply(MoveLines{sheet, b->first, count, step < 0 ? b->first - 1 : b->last + 2});
}

void MainWindow::undoOrRedo(bool undo)
{
    if (undo ? !m_session->canUndo() : !m_session->canRedo())
        return;
    const ChangeSet change = undo ? m_session->undo() : m_session->redo();
    reflect(change);
    if (change.focus && !change.structure)
        goTo(*change.focus);
    say(undo ? tr("undone: %1").arg(fromUtf8(change.words))
             : tr("done again: %1").arg(fromUtf8(change.words)));
}

} // namespace puteal::desk
