/// Colors, fonts and state shapes.
#include "desk/look.h"

#include <utility>

#include <QFontDatabase>
#include <QObject>
#include <QPainterPath>

namespace puteal::desk
{

std::vector<Pairing> pairings()
{
    constexpr double asText = 4.5, asShape = 3.0;
    std::vector<Pairing> out;
    const std::pair<const char *, QColor> grounds[] = {{"window", color::ground},
                                                       {"paper", color::paper},
                                                       {"chosen line", color::chosen},
                                                       {"lit name", color::lit}};
    const std::pair<const char *, QColor> inks[] = {
        {"text", color::text},     {"quiet text", color::quiet}, {"typed value", color::given},
        {"within", color::within}, {"near", color::near},        {"outside", color::outside}};
    for (const auto &ground : grounds)
        for (const auto &ink : inks)
            out.push_back({ink.first, ink.second, ground.second, asText});
    for (const QColor &ink : {color::within, color::near, color::outside})
        out.push_back({"stroke in a shape", Qt::white, ink, asShape});
    for (const QColor &ground : {color::ground, color::paper})
        out.push_back({"frame", color::edge, ground, asShape});
    const QPalette day = dayPalette();
    for (const auto group : {QPalette::Active, QPalette::Inactive}) {
        out.push_back({"window text", day.color(group, QPalette::WindowText),
                       day.color(group, QPalette::Window), asText});
        out.push_back({"field", day.color(group, QPalette::Text), day.color(group, QPalette::Base), asText});
        out.push_back(
            {"button", day.color(group, QPalette::ButtonText), day.color(group, QPalette::Button), asText});
        out.push_back({"selection", day.color(group, QPalette::HighlightedText),
                       day.color(group, QPalette::Highlight), asText});
        out.push_back({"placeholder", day.color(group, QPalette::PlaceholderText),
                       day.color(group, QPalette::Base), asText});
        out.push_back({"tooltip", day.color(group, QPalette::ToolTipText),
                       day.color(group, QPalette::ToolTipBase), asText});
    }
    return out;
}

QPalette dayPalette()
{
    QPalette day(color::ground);
    day.setColor(QPalette::WindowText, color::text);
    day.setColor(QPalette::Text, color::text);
    day.setColor(QPalette::ButtonText, color::text);
    day.setColor(QPalette::Base, color::paper);
    day.setColor(QPalette::PlaceholderText, color::quiet);
    day.setColor(QPalette::Highlight, color::given);
    day.setColor(QPalette::HighlightedText, Qt::white);
    day.setColor(QPalette::Link, color::given);
    day.setColor(QPalette::ToolTipBase, color::paper);
    day.setColor(QPalette::ToolTipText, color::text);
    // What cannot be used is paler; the standard asks no contrast of it, but it should be read.
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        day.setColor(QPalette::Disabled, role, color::edge);
    return day;
}

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

QColor markColor(Mark mark)
{
    switch (mark) {
    case Mark::error:
        return color::outside;
    case Mark::waits:
        return color::quiet;
    case Mark::caution:
        return color::near;
    case Mark::none:
        break;
    }
    return color::text;
}

QString markGlyph(Mark mark)
{
    switch (mark) {
    case Mark::error:
        return QStringLiteral("\u25C6 ");
    case Mark::waits:
        return QStringLiteral("\u25CB ");
    case Mark::caution:
        return QStringLiteral("\u25B2 ");
    case Mark::none:
        break;
    }
    return {};
}

Mark markOf(const Error &error)
{
    return error.kind == ErrorKind::waiting || error.kind == ErrorKind::blank ? Mark::waits : Mark::error;
}

void paintMark(QPainter &painter, const QRectF &square, Mark mark)
{
    if (mark == Mark::none)
        return;
    if (mark == Mark::caution)
        return paintState(painter, square, LimitState::near);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const qreal s = square.width();
    const auto at = [&](qreal x, qreal y) { return square.topLeft() + QPointF(x * s, y * s); };
    if (mark == Mark::error) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(markColor(mark));
        painter.drawPolygon(QPolygonF{at(0.5, -0.06), at(1.06, 0.5), at(0.5, 1.06), at(-0.06, 0.5)});
        painter.setPen(QPen(Qt::white, s * 0.13, Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(at(0.5, 0.26), at(0.5, 0.54));
        painter.drawPoint(at(0.5, 0.75));
    } else {
        painter.setPen(QPen(markColor(mark), s * 0.1));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(square.adjusted(s * 0.06, s * 0.06, -s * 0.06, -s * 0.06));
        painter.setPen(QPen(markColor(mark), s * 0.14, Qt::SolidLine, Qt::RoundCap));
        for (const qreal x : {0.28, 0.5, 0.72})
            painter.drawPoint(at(x, 0.5));
    }
    painter.restore();
}

namespace
{
/// Without the blanks, dots and commas at its end, which would stand oddly before the dots of a cut.
QString withoutTail(QString text)
{
    while (!text.isEmpty() && !text.back().isLetterOrNumber() && text.back() != QLatin1Char(')'))
        text.chop(1);
    return text;
}
} // namespace

QString breakable(const QString &words, const QFontMetrics &metrics, int width)
{
    constexpr QChar mayBreak(0x200B);
    QString out;
    bool first = true;
    for (const QString &word : words.split(QLatin1Char(' '))) {
        out += std::exchange(first, false) ? QString() : QStringLiteral(" ");
        if (metrics.horizontalAdvance(word) <= width) {
            out += word;
            continue;
        }
        int row = 0;
        for (const QChar letter : word) {
            row += metrics.horizontalAdvance(letter);
            if (row > width - 2) {
                out += mayBreak;
                row = metrics.horizontalAdvance(letter);
            }
            out += letter;
            if (letter == QLatin1Char('-'))
                row = 0; // a row may end here by itself
        }
    }
    return out;
}

void drawTwoRows(QPainter &painter, const QRect &box, const QFont &font, const QString &words,
                 Qt::Alignment align)
{
    painter.setFont(font);
    const QFontMetrics metrics(font);
    QString text = breakable(words, metrics, box.width());
    while (metrics.boundingRect(QRect(0, 0, box.width(), 10000), Qt::TextWordWrap, text).height() >
               box.height() + 2 &&
           text.size() > 8)
        text = withoutTail(text.left(text.size() - 4)) + QChar(0x2026);
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
