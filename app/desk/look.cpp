/// Colors, fonts and state shapes.
#include "desk/look.h"

#include <QFontDatabase>
#include <QObject>
#include <QPainterPath>

namespace puteal::desk
{

QColor stateColor(LimitState state)
{
    switch (state) {
    case LimitState::within:
        return color::within;
    case LimitState::near:
        return color::near;
    case LimitState::outside:
        return color::outside;
    case LimitState::noLimit:
    case LimitState::missingTest:
        break;
    }
    return color::quiet;
}

QString stateWord(LimitState state)
{
    switch (state) {
    case LimitState::within:
        return QObject::tr("within");
    case LimitState::near:
        return QObject::tr("near limit");
    case LimitState::outside:
        return QObject::tr("outside");
    case LimitState::missingTest:
        return QObject::tr("missing test");
    case LimitState::noLimit:
        break;
    }
    return QObject::tr("no limit");
}

void paintState(QPainter &painter, const QRectF &square, LimitState state)
{
    if (state == LimitState::noLimit)
        return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = stateColor(state);
    const qreal s = square.width();
    const QPointF o = square.topLeft();
    const auto at = [&](qreal x, qreal y) { return o + QPointF(x * s, y * s); };
    QPen mark(Qt::white, s * 0.12, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin);
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink);
    switch (state) {
    case LimitState::within:
        painter.drawEllipse(square);
        painter.setPen(mark);
        painter.setBrush(Qt::NoBrush);
        painter.drawPolyline(QPolygonF{at(0.27, 0.52), at(0.44, 0.68), at(0.74, 0.34)});
        break;
    case LimitState::near:
        painter.drawPolygon(QPolygonF{at(0.5, 0.02), at(1.0, 0.94), at(0.0, 0.94)});
        painter.setPen(mark);
        painter.drawLine(at(0.5, 0.36), at(0.5, 0.6));
        painter.drawPoint(at(0.5, 0.78));
        break;
    case LimitState::outside:
        painter.drawRect(square);
        painter.setPen(mark);
        painter.drawLine(at(0.27, 0.27), at(0.73, 0.73));
        painter.drawLine(at(0.73, 0.27), at(0.27, 0.73));
        break;
    default: {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ink, s * 0.1));
        painter.drawEllipse(square.adjusted(s * 0.06, s * 0.06, -s * 0.06, -s * 0.06));
        QFont font = painter.font();
        font.setPixelSize(static_cast<int>(s * 0.72));
        font.setBold(true);
        painter.setFont(font);
        painter.drawText(square, Qt::AlignCenter, QStringLiteral("?"));
        break;
    }
    }
    painter.restore();
}

void drawTwoRows(QPainter &painter, const QRect &box, const QFont &font, const QString &words,
                 Qt::Alignment align)
{
    painter.setFont(font);
    const QFontMetrics metrics(font);
    QString text = words;
    while (metrics.boundingRect(QRect(0, 0, box.width(), 10000), Qt::TextWordWrap, text).height() >
               box.height() + 2 &&
           text.size() > 8)
        text = text.left(text.size() - 5).trimmed() + QStringLiteral("...");
    painter.drawText(box, Qt::TextWordWrap | int(align | Qt::AlignLeft), text);
}

QFont smallFont(const QFont &base)
{
    QFont font = base;
    font.setPointSizeF(base.pointSizeF() * 0.88);
    return font;
}

QFont fixedFont(const QFont &base)
{
    QFont font = QFontDatabase::systemFont(QFontDatabase::FixedFont);
    font.setPointSizeF(base.pointSizeF());
    return font;
}

} // namespace puteal::desk
