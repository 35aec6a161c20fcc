/// Keys, mouse, the slip's place and plain-text clipboard of the grid.
#include "desk/sheet_view.h"

#include <QAbstractButton>
#include <QCoreApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollBar>

#include "desk/items_in_sight.h"
#include "desk/look.h"

namespace puteal::desk
{

SheetView::SheetView(QWidget *parent)
    : QTableView(parent), m_model(new SheetModel(this)), m_delegate(new CellDelegate(m_model, this)),
      m_items(new ItemsInSight(this)), m_slip(new Slip(viewport()))
{
    setAccessibleName(tr("sheet"));
    setModel(m_model);
    setItemDelegate(m_delegate);
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setTabKeyNavigation(false);
    setAttribute(Qt::WA_InputMethodEnabled);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultSectionSize(CellDelegate::lineHeight(font()));
    verticalHeader()->setDefaultAlignment(Qt::AlignRight | Qt::AlignVCenter);
    verticalHeader()->setHighlightSections(false);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(
        Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap));
    horizontalHeader()->setStretchLastSection(true);
    dressHeaders();
    connect(m_model, &QAbstractItemModel::dataChanged, m_items,
            [this](const QModelIndex &from, const QModelIndex &to, const QList<int> &roles) {
                if (roles.isEmpty())
                    fitLines(from.row(), to.row());
                m_items->update();
            });
    connect(m_model, &QAbstractItemModel::modelReset, m_items, [this] { fitColumns(); });
    connect(horizontalHeader(), &QHeaderView::sectionResized, this, &SheetView::refitLinesSoon);
    connect(m_slip, &Slip::taken, this, &SheetView::keep);
    connect(m_slip, &Slip::left, this, &SheetView::leaveSlip);
    connect(m_slip, &Slip::heightChanged, this, &SheetView::placeSlip);
    connect(m_slip, &Slip::usedChanged, this, [this] { m_model->setLit(m_slip->used()); });
    connect(m_slip, &Slip::helpWanted, this, &SheetView::helpWanted);
}

/// Only the headers wear a style sheet: what lies on the grid keeps the colors it sets itself.
void SheetView::dressHeaders()
{
    QPalette palette = this->palette();
    palette.setColor(QPalette::Base, color::paper);
    setPalette(palette);
    const QString sheet =
        QStringLiteral(
            "QHeaderView{background:%1;border:none}QHeaderView::section{background:%1;color:%2;border:none;"
            "padding:3px 6px}QHeaderView::section:horizontal{border-bottom:2px solid %3}")
            .arg(color::paper.name(), color::quiet.name(), color::text.name());
    horizontalHeader()->setStyleSheet(sheet);
    verticalHeader()->setStyleSheet(sheet);
    setCornerButtonEnabled(false);
    for (auto *corner : findChildren<QAbstractButton *>(QString(), Qt::FindDirectChildrenOnly))
        corner->setStyleSheet(QStringLiteral("QTableCornerButton::section{background:%1;border:none;"
                                             "border-bottom:2px solid %2}")
                                  .arg(color::paper.name(), color::text.name()));
}

void SheetView::setSheet(Session *session, std::uint32_t sheet)
{
    leaveSlip();
    m_session = session;
    m_model->setSheet(session, sheet); // columns and lines are fitted when the model tells of it
}

CellAt SheetView::currentCell() const
{
    const QModelIndex index = currentIndex();
    return index.isValid() ? m_model->cellOf(index) : CellAt{m_model->sheet(), 0, 0};
}

void SheetView::setCurrentCell(const CellAt &at)
{
    const QModelIndex index = m_model->index(static_cast<int>(at.line), static_cast<int>(at.column));
    if (!index.isValid())
        return;
    setCurrentIndex(index);
    scrollTo(index);
}

CellAt SheetView::meantCell() const
{
    const QModelIndex index = currentIndex();
    if (!index.isValid() || m_model->roleOf(index.column()) != SheetModel::Role::words)
        return currentCell();
    return m_model->amountOfLine(index.row(), index.column());
}

void SheetView::inputMethodEvent(QInputMethodEvent *event)
{
    // A composed character starts the slip as a plain one does, and belongs into it.
    if (!m_slip->isOpen() && !(event->commitString().isEmpty() && event->preeditString().isEmpty()))
        openSlip({}, true);
    if (m_slip->isOpen())
        QCoreApplication::sendEvent(m_slip->edit(), event);
}

void SheetView::scrollTo(const QModelIndex &index, ScrollHint hint)
{
    const int covered = m_items->isVisible() && index.column() != 0 ? m_items->width() : 0;
    const int left = columnViewportPosition(index.column());
    const bool seen =
        left >= covered && left + std::min(columnWidth(index.column()), 80) <= viewport()->width();
    const int sideways = horizontalScrollBar()->value();
    QTableView::scrollTo(index, hint);
    if (seen || index.column() == 0)
        horizontalScrollBar()->setValue(index.column() == 0 && !seen ? 0 : sideways);
    // The items that stay in sight must not cover what was asked for.
    const int now = columnViewportPosition(index.column());
    if (index.column() != 0 && m_items->isVisible() && now < m_items->width())
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() - (m_items->width() - now));
}

std::optional<SheetView::Block> SheetView::block() const
{
    if (!m_session)
        return {};
    const auto indexes = selectionModel()->selection();
    if (indexes.isEmpty())
        return {};
    const auto range = indexes.first();
    const int lastCell = static_cast<int>(m_session->workbook().sheets[m_model->sheet()].columnCount()) - 1;
    if (range.left() > lastCell)
        return {};
    return Block{static_cast<std::uint32_t>(range.left()),
                 static_cast<std::uint32_t>(std::min(range.right(), lastCell)),
                 static_cast<std::uint32_t>(range.top()), static_cast<std::uint32_t>(range.bottom())};
}

void SheetView::openSlip(const QString &start, bool replace)
{
    if (!m_session || !currentIndex().isValid())
        return;
    // Beside an amount stand its limit and its sources: what is typed there is no new amount.
    if (const auto role = m_model->roleOf(currentIndex().column());
        role == SheetModel::Role::limit || role == SheetModel::Role::sources) {
        role == SheetModel::Role::limit ? emit limitWanted() : emit sourcesWanted();
        return;
    }
    const CellAt at = currentCell();
    const Sheet &sheet = m_session->workbook().sheets[at.sheet];
    if (sheet.columnCount() == 0)
        return;
    if (sheet.cell(at.column, at.line).beside().lock) {
        emit said(tr("this cell is locked; its formula cannot be typed over"));
        return;
    }
    const bool words = sheet.column(at.column).kind == ColumnKind::words;
    m_openLine = static_cast<int>(at.line);
    m_delegate->setOpenLine(m_openLine, lineHeightOf(m_openLine));
    m_slip->open(m_session, at, replace ? start : fromUtf8(sheet.cell(at.column, at.line).typed()), words);
    placeSlip();
    m_slip->offerAtOpening(replace);
}

void SheetView::placeSlip()
{
    if (!m_slip->isOpen() || m_openLine < 0)
        return;
    const int line = lineHeightOf(m_openLine);
    const int left = std::max(0, columnViewportPosition(0)) + 8;
    const int width = std::max(240, std::min(viewport()->width() - left - 8, 1000));
    m_slip->setAcross(width);
    m_slip->adjustSize();
    const int height = m_slip->heightForWidth(width);
    verticalHeader()->resizeSection(m_openLine, line + height + 8);
    int top = rowViewportPosition(m_openLine) + line + 3;
    if (top + height > viewport()->height()) {
        // the slip must be seen whole: scroll the line up
        verticalScrollBar()->setValue(verticalScrollBar()->value() + top + height + 4 - viewport()->height());
        top = rowViewportPosition(m_openLine) + line + 3;
    }
    m_slip->setGeometry(left, top, width, height);
    m_items->update();
    m_slip->raise();
}

void SheetView::leaveSlip()
{
    if (!m_slip->isOpen())
        return;
    if (m_openLine >= 0 && m_openLine < m_model->rowCount())
        verticalHeader()->resizeSection(m_openLine, lineHeightOf(m_openLine));
    m_openLine = -1;
    m_delegate->setOpenLine(-1);
    m_slip->close();
    m_items->update();
    setFocus();
    viewport()->update();
}

bool SheetView::finishTyping()
{
    if (!m_slip->isOpen())
        return true;
    return keep(0, 0);
}

bool SheetView::keep(int lineStep, int columnStep)
{
    const CellAt at = m_slip->at();
    const std::string text = m_slip->text().toStdString();
    const bool same = m_session->workbook().cell(at)->typed() == text;
    if (!same && m_carryOut)
        if (const auto error = m_carryOut(SetText{at, text})) {
            m_slip->refuse(*error);
            m_slip->edit()->setFocus();
            return false;
        }
    leaveSlip();
    const int line = std::clamp(static_cast<int>(at.line) + lineStep, 0, m_model->rowCount() - 1);
    const int column = std::clamp(static_cast<int>(at.column) + columnStep, 0, m_model->columnCount() - 1);
    if (lineStep != 0 || columnStep != 0)
        setCurrentIndex(m_model->index(line, column));
    return true;
}

QString SheetView::referenceTo(const CellAt &at) const
{
    const Sheet &sheet = m_session->workbook().sheets[at.sheet];
    const auto &name = sheet.cell(at.column, at.line).beside().name;
    QString reference =
        name.empty() ? QStringLiteral("%1[%2]").arg(fromUtf8(sheet.column(at.column).key)).arg(at.line + 1)
                     : fromUtf8(name);
    if (at.sheet != m_slip->at().sheet)
        reference = fromUtf8(sheet.key()) + QLatin1Char('.') + reference;
    return reference;
}

bool SheetView::putsIn(const QModelIndex &index)
{
    if (!m_slip->isOpen() || !index.isValid())
        return false;
    const CellAt at = m_model->roleOf(index.column()) == SheetModel::Role::words
                          ? m_model->amountOfLine(index.row(), index.column())
                          : m_model->cellOf(index);
    if (at == m_slip->at())
        return false;
    m_slip->edit()->putIn(referenceTo(at));
    m_slip->edit()->setFocus();
    return true;
}

void SheetView::mousePressEvent(QMouseEvent *event)
{
    if (event->button() == Qt::LeftButton && putsIn(indexAt(event->position().toPoint())))
        return;
    QTableView::mousePressEvent(event);
}

void SheetView::mouseDoubleClickEvent(QMouseEvent *event)
{
    if (!m_slip->isOpen() && indexAt(event->position().toPoint()).isValid())
        openSlip({}, false);
    else
        QTableView::mouseDoubleClickEvent(event);
}

void SheetView::keyPressEvent(QKeyEvent *event)
{
    const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    switch (event->key()) {
    case Qt::Key_F2:
        openSlip({}, false);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        openSlip({}, false);
        return;
    case Qt::Key_Tab:
    case Qt::Key_Backtab: {
        const int step = event->key() == Qt::Key_Tab ? 1 : -1;
        const int column = std::clamp(currentIndex().column() + step, 0, m_model->columnCount() - 1);
        setCurrentIndex(m_model->index(currentIndex().row(), column));
        return;
    }
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (plain) {
            if (const auto b = block())
                emit edited(ClearBlock{m_model->sheet(), b->left, b->right, b->first, b->last});
            return;
        }
        break;
    default:
        break;
    }
    const QString text = event->text();
    if (plain && !text.isEmpty() && text.at(0).isPrint()) {
        openSlip(text, true);
        return;
    }
    QTableView::keyPressEvent(event);
}

void SheetView::resizeEvent(QResizeEvent *event)
{
    QTableView::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        fitColumns();
    placeSlip();
}

void SheetView::scrollContentsBy(int dx, int dy)
{
    QTableView::scrollContentsBy(dx, dy);
    m_items->place();
    if (dx != 0)
        viewport()->update(); // cells at the edges are painted by how much of them is seen
    if (m_slip->isOpen())
        m_slip->move(std::max(0, columnViewportPosition(0)) + 8,
                     rowViewportPosition(m_openLine) + lineHeightOf(m_openLine) + 3);
}

void SheetView::currentChanged(const QModelIndex &current, const QModelIndex &previous)
{
    QTableView::currentChanged(current, previous);
    m_items->update();
    if (current.isValid() && m_session)
        emit cellChosen(m_model->roleOf(current.column()) == SheetModel::Role::words
                            ? m_model->amountOfLine(current.row(), current.column())
                            : m_model->cellOf(current));
}

SheetView::Copied SheetView::copied() const
{
    const auto b = block();
    if (!b)
        return {};
    Copied out;
    QStringList lines;
    for (auto l = b->first; l <= b->last; ++l) {
        QStringList cells;
        for (auto c = b->left; c <= b->right; ++c) {
            const CellView &view = m_model->viewOf({m_model->sheet(), c, l});
            out.formulas += view.error ? 1 : 0;
            // The words of an error are no value: pasted, they would be taken for one.
            QString text = fromUtf8(view.error ? view.typed : view.shown);
            text.replace(QLatin1Char('\t'), QLatin1Char(' ')).replace(QLatin1Char('\n'), QLatin1Char(' '));
            cells += text;
        }
        lines += cells.join(QLatin1Char('\t'));
    }
    out.text = lines.join(QLatin1Char('\n'));
    return out;
}

} // namespace puteal::desk
