/// Measuring once, and drawing rows of text where they were measured to be.
#include "desk/cell_ink.h"

#include <QPainter>

#include "desk/cell_delegate.h"
#include "desk/look.h"

namespace puteal::desk
{

namespace
{
constexpr int mostWidths = 4096; ///< some screens full of numbers
}

int TextWidths::of(const QString &text)
{
    const auto known = m_widths.constFind(text);
    if (known != m_widths.constEnd())
        return *known;
    if (m_widths.size() >= mostWidths)
        m_widths.clear();
    return *m_widths.insert(text, m_metrics.horizontalAdvance(text));
}

QString TextWidths::cut(const QString &text, int room)
{
    return of(text) <= room ? text : m_metrics.elidedText(text, Qt::ElideRight, room);
}

CellInk::CellInk(const QFont &base)
    : font(base), small(smallFont(base)), widths(font), smallWidths(small),
      line(CellDelegate::lineHeight(base)), unitEdge(widths.of(QStringLiteral("mg/L as CaCO3 ")))
{
}

void drawRow(QPainter &painter, const QRect &box, Qt::Alignment where, const QString &text,
             TextWidths &widths)
{
    const int height = widths.metrics().height();
    const int left = where & Qt::AlignRight ? box.right() + 1 - widths.of(text) : box.left();
    const int top = where & Qt::AlignTop      ? box.top()
                    : where & Qt::AlignBottom ? box.bottom() + 1 - height
                                              : box.top() + (box.height() - height) / 2;
    painter.drawText(left, top + widths.metrics().ascent(), text);
}

} // namespace puteal::desk
