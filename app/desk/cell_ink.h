/// Fonts of cells with what is measured of them, once and not at every cell.
#pragma once

#include <QFont>
#include <QFontMetrics>
#include <QHash>

class QPainter;

namespace puteal::desk
{

/// Widths of texts drawn again and again in one font.
class TextWidths
{
public:
    explicit TextWidths(const QFont &font) : m_metrics(font) {}
    int of(const QString &text);
    const QFontMetrics &metrics() const { return m_metrics; }
    /// The text, or as much of it as fits with dots behind it.
    QString cut(const QString &text, int room);

private:
    QFontMetrics m_metrics;
    QHash<QString, int> m_widths;
};

struct CellInk {
    explicit CellInk(const QFont &base);
    QFont font, small;
    TextWidths widths, smallWidths;
    int line = 0;     ///< height of a plain line
    int unitEdge = 0; ///< numbers end and units begin at the same place down a column
};

/// One row of text that is known to fit, without the layout of paragraphs.
void drawRow(QPainter &painter, const QRect &box, Qt::Alignment where, const QString &text,
             TextWidths &widths);

} // namespace puteal::desk
