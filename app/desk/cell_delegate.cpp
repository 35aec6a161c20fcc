/// Painting of cells.
#include "desk/cell_delegate.h"

#include <QAbstractItemView>
#include <QPainter>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{
constexpr int margin = 6;
constexpr int mostRows = 9; ///< small rows a cell may take; the rest is told by the tooltip and the pane

int heightOf(const QString &words, const QFont &font, int width)
{
    const QFontMetrics metrics(font);
    const int across = std::max(width, 20);
    return metrics
        .boundingRect(QRect(0, 0, across, 100000), Qt::TextWordWrap, breakable(words, metrics, across))
        .height();
}

int shapeSize(const QFont &font)
{
    return QFontMetrics(font).height() * 3 / 4;
}

/// Words that do not fit in one row are a little smaller.
QFont packedFont(const QFont &base)
{
    QFont font = base;
    font.setPointSizeF(base.pointSizeF() * 0.9);
    return font;
}

bool isHeading(const CellView &words, const CellView &amount, int column)
{
    return amount.typed.empty() && amount.name.empty() && !words.typed.empty() && column == 0 &&
           words.typed.size() < 60 && words.typed.find('{') == std::string::npos;
}

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
    if (index.row() == m_openLine && box.height() > m_openHeight)
        box.setHeight(m_openHeight);
    if (option.state & QStyle::State_Selected)
        painter->fillRect(box, color::chosen);
    const CellAt at = m_model->cellOf(index);
    // A number at the edge of the view is moved in or shown as dots: half of one would be read as another.
    if (const auto *view = qobject_cast<const QAbstractItemView *>(option.widget);
        view && m_model->roleOf(index.column()) == SheetModel::Role::amounts)
        box.setRight(std::min(box.right(), view->viewport()->width() - 1));
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

int CellDelegate::neededHeight(const QModelIndex &index, int width, const QFont &font) const
{
    const int plain = ink(font).line;
    const auto role = m_model->roleOf(index.column());
    if (role != SheetModel::Role::words && role != SheetModel::Role::amounts)
        return plain;
    const CellAt at = m_model->cellOf(index);
    if (m_model->isBareAmount(at))
        return plain;
    const CellView &view = m_model->viewOf(at);
    const QString words = fromUtf8(view.shown);
    const int inner = width - 2 * margin, most = QFontMetrics(font).height() * mostRows;
    int needed = 0;
    if (view.error || role == SheetModel::Role::amounts) {
        const bool shaped = view.error || view.told != LimitState::noLimit;
        needed = heightOf(words, smallFont(font), inner - (shaped ? shapeSize(font) + 5 : 0)) + 4;
    } else if (const CellAt amount = m_model->amountOfLine(index.row(), index.column());
               amount != at && !m_model->viewOf(amount).name.empty()) {
        needed = heightOf(words, font, inner) + QFontMetrics(smallFont(font)).height() + 4;
    } else {
        QFont ink = font;
        ink.setBold(isHeading(view, m_model->viewOf(amount), index.column()));
        if (QFontMetrics(ink).horizontalAdvance(words) > inner)
            needed = heightOf(words, packedFont(ink), inner) + 4;
    }
    return std::clamp(needed, plain, std::max(plain, most));
}

void CellDelegate::paintWords(QPainter &painter, const QRect &box, const QFont &font,
                              const QModelIndex &index) const
{
    const CellAt own = m_model->cellOf(index);
    const CellView &words = m_model->viewOf(own);
    const CellAt amount = m_model->amountOfLine(index.row(), index.column());
    const QString name = amount == own ? QString() : fromUtf8(m_model->viewOf(amount).name);
    const QRect inner = box.adjusted(margin, 1, -margin, -1);
    if (words.error)
        return paintError(painter, inner, font, words);
    QFont ink = font;
    ink.setBold(isHeading(words, m_model->viewOf(amount), index.column()));
    painter.setPen(color::text);
    const QString whole = fromUtf8(words.shown);
    const bool fits = QFontMetrics(ink).horizontalAdvance(whole) <= inner.width();
    if (name.isEmpty()) {
        drawTwoRows(painter, inner, fits ? ink : packedFont(ink), whole);
        return;
    }
    const QFont small = smallFont(font);
    const QFontMetrics smallMetrics(small);
    // The name stands right under its words, both in the middle of a line that others make higher.
    const int room = inner.height() - smallMetrics.height();
    const int rows = std::min(heightOf(whole, ink, inner.width()), room + 2);
    const QRect over(inner.left(), inner.top() + std::max(0, (room - rows) / 2), inner.width(), rows);
    drawTwoRows(painter, over, ink, whole, Qt::AlignTop);
    painter.setFont(small);
    const QRect under(inner.left(), over.bottom(), inner.width(), smallMetrics.height());
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

void CellDelegate::paintError(QPainter &painter, const QRect &inner, const QFont &font,
                              const CellView &view) const
{
    const Mark mark = markOf(*view.error);
    const int s = shapeSize(font);
    paintMark(painter, QRectF(inner.left(), inner.center().y() - s / 2.0, s, s), mark);
    painter.setPen(markColor(mark));
    drawTwoRows(painter, inner.adjusted(s + 5, 0, 0, 0), smallFont(font), fromUtf8(view.shown));
}

CellInk &CellDelegate::ink(const QFont &font) const
{
    if (!m_ink || m_ink->font != font)
        m_ink.emplace(font);
    return *m_ink;
}

/// A number is never cut. Where it and its unit do not fit side by side the unit goes below; where even the
/// number does not fit, dots say so.
bool CellDelegate::paintNarrow(QPainter &painter, const QRect &inner, const QFont &font,
                               const CellView &view) const
{
    const QString number = fromUtf8(view.quantity.number), unit = fromUtf8(view.quantity.unit);
    CellInk &known = ink(font);
    const int width = known.widths.of(number);
    if (width + (unit.isEmpty() ? 0 : known.widths.of(unit) + 10) <= inner.width())
        return false;
    const bool fits = width <= inner.width();
    // Both in the middle of a line that others make higher.
    const int high =
        std::min(inner.height(), known.widths.metrics().height() + known.smallWidths.metrics().height());
    const QRect two(inner.left(), inner.top() + (inner.height() - high) / 2, inner.width(), high);
    painter.setFont(known.font);
    drawRow(painter, two, Qt::AlignTop | Qt::AlignRight, fits ? number : QStringLiteral("..."), known.widths);
    painter.setFont(known.small);
    painter.setPen(color::quiet);
    drawRow(painter, two, Qt::AlignBottom | Qt::AlignRight,
            known.smallWidths.cut(fits ? unit : tr("too narrow"), inner.width()), known.smallWidths);
    return true;
}

void CellDelegate::paintQuantity(QPainter &painter, const QRect &inner, const QFont &font,
                                 const CellView &view) const
{
    CellInk &known = ink(font);
    const bool narrow = inner.width() < 2 * known.unitEdge;
    const QString number = fromUtf8(view.quantity.number), unit = fromUtf8(view.quantity.unit);
    painter.setFont(known.font);
    const int unitWidth = known.widths.of(unit) + 10;
    const int wanted = narrow ? (unit.isEmpty() ? 0 : unitWidth) : std::max(known.unitEdge, unitWidth);
    const int edge = std::min(wanted, inner.width() - known.widths.of(number));
    QRect left = inner;
    left.setRight(inner.right() - edge);
    drawRow(painter, left, Qt::AlignVCenter | Qt::AlignRight, number, known.widths);
    painter.setPen(color::quiet);
    QRect right = inner;
    right.setLeft(inner.right() - edge + 6);
    drawRow(painter, right, Qt::AlignVCenter | Qt::AlignLeft, unit, known.widths);
}

/// Words, choices, dates, yes and no, with the shape of the state they tell.
void CellDelegate::paintOther(QPainter &painter, const QRect &inner, const QFont &font,
                              const CellView &view) const
{
    const QString whole = fromUtf8(view.shown);
    QRect words = inner;
    if (view.told != LimitState::noLimit) {
        const int s = shapeSize(font);
        paintState(painter, QRectF(inner.left(), inner.center().y() - s / 2.0, s, s), view.told);
        words.setLeft(inner.left() + s + 5);
    }
    const bool fits = QFontMetrics(font).horizontalAdvance(whole) <= words.width();
    drawTwoRows(painter, words, fits ? font : smallFont(font), whole);
}

void CellDelegate::paintAmount(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at,
                               const QModelIndex &) const
{
    const CellView &view = m_model->viewOf(at);
    if (view.typed.empty())
        return;
    const QRect inner = box.adjusted(margin, 1, -margin, -1);
    if (m_model->isLit(at))
        painter.fillRect(box.adjusted(0, 1, 0, -1), color::lit);
    if (view.error)
        return paintError(painter, inner, font, view);
    painter.setPen(view.isFormula ? color::text : color::given);
    if (view.type.kind != ValueKind::quantity)
        paintOther(painter, inner, font, view);
    else if (!paintNarrow(painter, inner, font, view))
        paintQuantity(painter, inner, font, view);
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
    const int s = shapeSize(font);
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
