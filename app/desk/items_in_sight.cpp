/// Painting and clicks of the items kept in sight.
#include "desk/items_in_sight.h"

#include <QApplication>
#include <QHeaderView>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>

#include "desk/look.h"
#include "desk/sheet_view.h"

namespace puteal::desk
{

ItemsInSight::ItemsInSight(SheetView *view)
    : QWidget(view->viewport()), m_view(view), m_head(new QWidget(view->horizontalHeader()))
{
    // What it shows is read from the grid itself.
    setAttribute(Qt::WA_OpaquePaintEvent);
    m_head->setAttribute(Qt::WA_OpaquePaintEvent);
    m_head->installEventFilter(this);
    hide();
    m_head->hide();
}

void ItemsInSight::place()
{
    const bool wanted = m_view->sheetModel()->columnCount() > 1 && m_view->horizontalScrollBar()->value() > 0;
    setVisible(wanted);
    m_head->setVisible(wanted);
    if (!wanted)
        return;
    // At most half of the view: the rest is for what was scrolled to.
    const int room = m_view->viewport()->width();
    m_across = std::min(m_view->columnWidth(0), room / 2);
    // The rest of a number that is half covered would be read as another one.
    int width = m_across;
    const int cut = m_view->columnAt(m_across);
    if (cut > 0 && cut != m_view->currentIndex().column() && m_view->columnViewportPosition(cut) < m_across)
        width = std::min(m_view->columnViewportPosition(cut) + m_view->columnWidth(cut), room);
    setGeometry(0, 0, width, m_view->viewport()->height());
    m_head->setGeometry(0, 0, width, m_view->horizontalHeader()->height());
    update();
    m_head->update();
}

void ItemsInSight::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.fillRect(rect(), color::paper);
    const int first = std::max(0, m_view->rowAt(0));
    for (int row = first; row < m_view->sheetModel()->rowCount(); ++row) {
        const int top = m_view->rowViewportPosition(row);
        if (top > height())
            break;
        const QModelIndex index = m_view->sheetModel()->index(row, 0);
        QStyleOptionViewItem option;
        option.initFrom(m_view);
        option.state &= ~(QStyle::State_Selected | QStyle::State_HasFocus);
        option.font = m_view->font();
        option.rect = QRect(0, top, m_across, m_view->rowHeight(row));
        if (m_view->selectionModel()->isSelected(index))
            option.state |= QStyle::State_Selected;
        if (m_view->currentIndex() == index)
            option.state |= QStyle::State_HasFocus;
        m_view->itemDelegate()->paint(&painter, option, index);
    }
    painter.setPen(QPen(color::edge, 1));
    painter.drawLine(m_across - 1, 0, m_across - 1, height());
}

bool ItemsInSight::eventFilter(QObject *watched, QEvent *event)
{
    if (watched != m_head || event->type() != QEvent::Paint)
        return QWidget::eventFilter(watched, event);
    QPainter painter(m_head);
    painter.fillRect(m_head->rect(), color::paper);
    painter.setPen(color::quiet);
    painter.drawText(QRect(0, 0, m_across, m_head->height()).adjusted(6, 3, -6, -3),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap,
                     m_view->sheetModel()->headerData(0, Qt::Horizontal, Qt::DisplayRole).toString());
    painter.setPen(QPen(color::text, 2));
    painter.drawLine(0, m_head->height() - 1, m_head->width(), m_head->height() - 1);
    painter.setPen(QPen(color::edge, 1));
    painter.drawLine(m_across - 1, 0, m_across - 1, m_head->height());
    return true;
}

void ItemsInSight::mousePressEvent(QMouseEvent *event)
{
    const int row = m_view->rowAt(static_cast<int>(event->position().y()));
    const QModelIndex index = m_view->sheetModel()->index(row, 0);
    if (row >= 0 && !m_view->putsIn(index))
        m_view->setCurrentIndex(index);
}

void ItemsInSight::mouseDoubleClickEvent(QMouseEvent *event)
{
    mousePressEvent(event);
    m_view->openSlip({}, false);
}

} // namespace puteal::desk
