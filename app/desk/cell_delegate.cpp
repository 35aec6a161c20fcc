/// Painting of cells.
#include "desk/cell_delegate.h"

#include <QPainter>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{
constexpr int margin = 6;

} // namespace

CellDelegate::CellDelegate(SheetModel *model, QObject *parent) : QStyledItemDelegate(parent), m_model(model)
{
}

int CellDelegate::lineHeight(const QFont &font)
{
    return static_cast<int>(QFontMetricsF(font).height() * 1.08 + QFontMetricsF(smallFont(font)).height() +
                            5);
}

QSize CellDelegate::sizeHint(const QStyleOptionViewItem &option, const QModelIndex &) const
{
    return {80, lineHeight(option.font)};
}

void CellDelegate::paint(QPainter *painter, const QStyleOptionViewItem &option,
                         const QModelIndex &index) const
{
    painter->save();
    QRect box = option.rect;
    painter->fillRect(box, color::paper);
    const int height = lineHeight(option.font);
    if (index.row() == m_openLine && box.height() > height)
        box.setHeight(height);
    if (option.state & QStyle::State_Selected)
        painter->fillRect(box, color::chosen);
    const CellAt at = m_model->cellOf(index);
    switch (m_model->roleOf(index.column())) {
    case SheetModel::Role::words:
        paintWords(*painter, box, option.font, index);
        break;
    case SheetModel::Role::amounts:
        paintAmount(*painter, box, option.font, at, index);
        break;
    case SheetModel::Role::limit:
        paintLimit(*painter, box, option.font, at);
        break;
    case SheetModel::Role::sources:
        paintSources(*painter, box, option.font, at);
        break;
    }
    painter->setPen(QPen(color::rule, 0));
    painter->drawLine(box.bottomLeft(), box.bottomRight());
    if (option.state & QStyle::State_HasFocus) {
        painter->setPen(QPen(color::given, 2));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(box.adjusted(1, 1, -1, -1));
    }
    painter->restore();
}

void CellDelegate::paintWords(QPainter &painter, const QRect &box, const QFont &font,
                              const QModelIndex &index) const
{
    const CellAt own = m_model->cellOf(index);
    const CellView &words = m_model->viewOf(own);
    const CellAt amount = m_model->amountOfLine(index.row(), index.column());
    const QString name = amount == own ? QString() : fromUtf8(m_model->viewOf(amount).name);
    const bool lead = m_model->viewOf(amount).typed.empty() && name.isEmpty() && !words.typed.empty();
    const QRect inner = box.adjusted(margin, 1, -margin, -1);
    QFont ink = font;
    ink.setBold(lead && index.column() == 0 && words.typed.size() < 60 &&
                words.typed.find('{') == std::string::npos);
    painter.setFont(ink);
    painter.setPen(words.error ? color::outside : color::text);
    const QFontMetrics metrics(ink);
    const QString text = metrics.elidedText(fromUtf8(words.shown), Qt::ElideRight, inner.width());
    if (name.isEmpty()) {
        const QString whole = fromUtf8(words.shown);
        if (metrics.horizontalAdvance(whole) > inner.width()) {
            // Long words take the two rows a line has anyway.
            QFont two = smallFont(font);
            two.setPointSizeF(font.pointSizeF() * 0.9);
            drawTwoRows(painter, inner, two, whole);
        } else {
            painter.drawText(inner, Qt::AlignVCenter | Qt::AlignLeft, text);
        }
        return;
    }
    painter.drawText(inner, Qt::AlignTop | Qt::AlignLeft, text);
    const QFont small = smallFont(font);
    painter.setFont(small);
    const QFontMetrics smallMetrics(small);
    const QRect under(inner.left(), inner.bottom() - smallMetrics.height() - 1, inner.width(),
                      smallMetrics.height());
    if (m_model->isLit(amount)) {
        QRect glow = under;
        glow.setWidth(smallMetrics.horizontalAdvance(name) + 8);
        painter.fillRect(glow.translated(-4, 0), color::lit);
        painter.setPen(color::text);
    } else {
        painter.setPen(color::quiet);
    }
    painter.drawText(under, Qt::AlignVCenter | Qt::AlignLeft,
                     smallMetrics.elidedText(name, Qt::ElideRight, under.width()));
}

int CellDelegate::unitEdge(const QModelIndex &index, const QFont &font) const
{
    // Numbers end and units begin at the same place down a column: 45 % from the right, at least room for
    // "mg/L as Fe".
    Q_UNUSED(index);
    return QFontMetrics(font).horizontalAdvance(QStringLiteral("mg/L as CaCO3 "));
}

/// A number is never cut. Where it and its unit do not fit side by side the unit goes below; where even the
/// number does not fit, dots say so.
bool CellDelegate::paintNarrow(QPainter &painter, const QRect &inner, const QFont &font,
                               const CellView &view) const
{
    const QString number = fromUtf8(view.quantity.number), unit = fromUtf8(view.quantity.unit);
    const QFontMetrics metrics(font);
    const int needed =
        metrics.horizontalAdvance(number) + (unit.isEmpty() ? 0 : metrics.horizontalAdvance(unit) + 10);
    if (needed <= inner.width())
        return false;
    const QFont small = smallFont(font);
    const bool fits = metrics.horizontalAdvance(number) <= inner.width();
    painter.setFont(font);
    painter.drawText(inner, Qt::AlignTop | Qt::AlignRight, fits ? number : QStringLiteral("..."));
    painter.setFont(small);
    painter.setPen(color::quiet);
    painter.drawText(
        inner, Qt::AlignBottom | Qt::AlignRight,
        QFontMetrics(small).elidedText(fits ? unit : tr("too narrow"), Qt::ElideRight, inner.width()));
    return true;
}

void CellDelegate::paintAmount(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at,
                               const QModelIndex &index) const
{
    const CellView &view = m_model->viewOf(at);
    if (view.typed.empty())
        return;
    const QRect inner = box.adjusted(margin, 1, -margin, -1);
    painter.setFont(font);
    if (m_model->isLit(at))
        painter.fillRect(box.adjusted(0, 1, 0, -1), color::lit);
    if (view.error) {
        const bool waits = view.error->kind == ErrorKind::waiting || view.error->kind == ErrorKind::blank;
        QFont small = smallFont(font);
        painter.setFont(small);
        painter.setPen(waits ? color::quiet : color::outside);
        drawTwoRows(painter, inner, small, fromUtf8(view.shown));
        return;
    }
    QFont ink = font;
    painter.setPen(view.isFormula ? color::text : color::given);
    if (view.type.kind != ValueKind::quantity) {
        const QFontMetrics metrics(ink);
        const QString whole = fromUtf8(view.shown);
        QRect words = inner;
        if (view.told != LimitState::noLimit) {
            const int s = metrics.height() * 3 / 4;
            paintState(painter, QRectF(inner.left(), inner.center().y() - s / 2.0, s, s), view.told);
            words.setLeft(inner.left() + s + 5);
        }
        if (metrics.horizontalAdvance(whole) > words.width()) {
            drawTwoRows(painter, words, smallFont(font), whole);
        } else {
            painter.setFont(ink);
            painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, whole);
        }
    } else if (!paintNarrow(painter, inner, font, view)) {
        const bool narrow = inner.width() < 2 * unitEdge(index, font);
        const QString number = fromUtf8(view.quantity.number), unit = fromUtf8(view.quantity.unit);
        painter.setFont(ink);
        const int unitWidth = QFontMetrics(font).horizontalAdvance(unit) + 10;
        const int wanted =
            narrow ? (unit.isEmpty() ? 0 : unitWidth) : std::max(unitEdge(index, font), unitWidth);
        const int edge = std::min(wanted, inner.width() - QFontMetrics(font).horizontalAdvance(number));
        QRect left = inner;
        left.setRight(inner.right() - edge);
        painter.drawText(left, Qt::AlignVCenter | Qt::AlignRight, number);
        painter.setPen(color::quiet);
        QRect right = inner;
        right.setLeft(inner.right() - edge + 6);
        painter.drawText(right, Qt::AlignVCenter | Qt::AlignLeft, unit);
    }
    if (!view.cautions.empty()) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(color::near);
        painter.drawPolygon(QPolygon{box.topRight() + QPoint(-9, 1), box.topRight() + QPoint(0, 1),
                                     box.topRight() + QPoint(0, 10)});
    }
}

void CellDelegate::paintLimit(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at) const
{
    const CellView &view = m_model->viewOf(at);
    if (view.state == LimitState::noLimit && view.limit.empty())
        return;
    const QRect inner = box.adjusted(margin, 1, -margin, -1);
    const int s = QFontMetrics(font).height() * 3 / 4;
    paintState(painter, QRectF(inner.left(), inner.center().y() - s / 2.0, s, s), view.state);
    const QRect words = inner.adjusted(s + 6, 0, 0, 0);
    painter.setFont(smallFont(font));
    painter.setPen(stateColor(view.state));
    const int half = words.height() / 2;
    painter.drawText(QRect(words.left(), words.top(), words.width(), half), Qt::AlignBottom | Qt::AlignLeft,
                     stateWord(view.state));
    painter.setPen(color::quiet);
    painter.drawText(
        QRect(words.left(), words.top() + half, words.width(), half), Qt::AlignTop | Qt::AlignLeft,
        QFontMetrics(smallFont(font)).elidedText(fromUtf8(view.limit), Qt::ElideRight, words.width()));
}

void CellDelegate::paintSources(QPainter &painter, const QRect &box, const QFont &font,
                                const CellAt &at) const
{
    const CellView &view = m_model->viewOf(at);
    if (view.typed.empty())
        return;
    const QFont small = smallFont(font);
    const QFontMetrics metrics(small);
    int x = box.left() + margin;
    painter.setFont(small);
    for (const auto &mark : view.sources) {
        const QString text = fromUtf8(mark);
        const int width = metrics.horizontalAdvance(text) + 10;
        const QRect pill(x, box.center().y() - metrics.height() / 2 - 1, width, metrics.height() + 2);
        const bool weak = !mark.empty() && (mark[0] == 'A' || mark[0] == 'R');
        painter.setPen(QPen(weak ? color::near : color::given, 1, weak ? Qt::DashLine : Qt::SolidLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(pill, 4, 4);
        painter.drawText(pill, Qt::AlignCenter, text);
        x += width + 4;
    }
}

} // namespace puteal::desk
