/// Colors, fonts and the four state shapes of the window. Contrast figures stand beside each color.
#pragma once

#include <QColor>
#include <QFont>
#include <QPainter>
#include <QString>

#include "session/session.h"

namespace puteal::desk
{

/// Day palette; contrast to the ground it stands on (WCAG 2.2, 1.4.3 asks 4.5 for text, 1.4.11 3 for
/// graphics).
namespace color
{
inline const QColor ground{0xF3, 0xF5, 0xF7};
inline const QColor paper{0xFB, 0xFC, 0xFC};
inline const QColor text{0x15, 0x18, 0x1C};    // 17.3
inline const QColor quiet{0x55, 0x5B, 0x66};   // 6.6
inline const QColor given{0x0B, 0x4F, 0x91};   // 8.0 typed values and links
inline const QColor rule{0xD3, 0xD7, 0xDC};    // hairlines only
inline const QColor edge{0x7D, 0x83, 0x8C};    // 3.7 frames
inline const QColor chosen{0xCF, 0xE3, 0xF5};  // ground of the current line
inline const QColor lit{0xFF, 0xF1, 0xC9};     // names used by the open formula
inline const QColor within{0x0B, 0x6B, 0x50};  // 6.3
inline const QColor near{0x8A, 0x5A, 0x00};    // 5.7
inline const QColor outside{0xB3, 0x26, 0x1E}; // 6.3
} // namespace color

QColor stateColor(LimitState state);
/// Word for people: "within", "near limit", "outside", "no limit", "missing test".
QString stateWord(LimitState state);
/// Draws the state's shape into the square: disc with tick, triangle with stroke, square with cross, ring
/// with question.
void paintState(QPainter &painter, const QRectF &square, LimitState state);

/// Words in as many small rows as the box has, cut with dots.
void drawTwoRows(QPainter &painter, const QRect &box, const QFont &font, const QString &words,
                 Qt::Alignment align = Qt::AlignVCenter);

QFont smallFont(const QFont &base);
QFont fixedFont(const QFont &base);

inline QString fromUtf8(const std::string &text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
inline QString fromUtf8(std::string_view text)
{
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

} // namespace puteal::desk
