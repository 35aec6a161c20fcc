/// Colors, fonts and the four state shapes of the window. Contrast figures stand beside each color.
#pragma once

#include <QColor>
#include <QFont>
#include <QFontMetrics>
#include <QPainter>
#include <QPalette>
#include <QString>

#include "session/session.h"

namespace puteal::desk
{

/// Day palette, the only one; contrasts to the grounds are held by a test over `pairings`.
namespace color
{
inline const QColor ground{0xF3, 0xF5, 0xF7};
inline const QColor paper{0xFB, 0xFC, 0xFC};
inline const QColor text{0x15, 0x18, 0x1C};
inline const QColor quiet{0x55, 0x5B, 0x66};
inline const QColor given{0x0B, 0x4F, 0x91};  // typed values and links
inline const QColor rule{0xD3, 0xD7, 0xDC};   // hairlines only
inline const QColor edge{0x7D, 0x83, 0x8C};   // frames
inline const QColor chosen{0xCF, 0xE3, 0xF5}; // ground of the current line
inline const QColor lit{0xFF, 0xF1, 0xC9};    // names used by the open formula
inline const QColor within{0x0B, 0x6B, 0x50};
inline const QColor near{0x82, 0x55, 0x00};
inline const QColor outside{0xB3, 0x26, 0x1E};
} // namespace color

/// An ink on a ground it is painted on, and the contrast it must have (WCAG 2.2: 1.4.3 text 4.5, 1.4.11
/// graphics 3).
struct Pairing {
    const char *words;
    QColor ink, ground;
    double least;
};
std::vector<Pairing> pairings();
/// The program's palette: the desktop's own may be dark, and these colors are for a light ground.
QPalette dayPalette();

QColor stateColor(LimitState state);
/// Word for people: "within", "near limit", "outside", "no limit", "missing test".
QString stateWord(LimitState state);
/// Draws the state's shape into the square: disc with tick, triangle with stroke, square with cross, ring
/// with question.
void paintState(QPainter &painter, const QRectF &square, LimitState state);

/// What words tell that is no state against a limit.
enum class Mark { none, error, waits, caution };
QColor markColor(Mark mark);
/// Draws its shape: diamond with stroke, ring with dots, triangle with stroke.
void paintMark(QPainter &painter, const QRectF &square, Mark mark);
/// The same in running text: "◆ ", "○ ", "▲ ".
QString markGlyph(Mark mark);
/// error, or waits where the cell only waits for others.
Mark markOf(const Error &error);

/// The words with places to break them at inside those that are wider than `width`.
QString breakable(const QString &words, const QFontMetrics &metrics, int width);
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
