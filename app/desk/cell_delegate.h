/// Paints one cell: words with the name under them, number and unit apart, limit with its shape, source
/// marks.
#pragma once

#include <optional>

#include <QStyledItemDelegate>

#include "desk/cell_ink.h"
#include "desk/sheet_model.h"

namespace puteal::desk
{

class CellDelegate : public QStyledItemDelegate
{
    Q_OBJECT
public:
    explicit CellDelegate(SheetModel *model, QObject *parent = nullptr);
    /// Height of a plain line in this font.
    static int lineHeight(const QFont &font);
    /// Height a cell asks for so that its words are whole; numbers never need more than a plain line.
    int neededHeight(const QModelIndex &index, int width, const QFont &font) const;
    /// The line that carries the open slip paints its cells only in its upper part, `height` high.
    void setOpenLine(int line, int height = 0)
    {
        m_openLine = line;
        m_openHeight = height;
    }

    void paint(QPainter *painter, const QStyleOptionViewItem &option,
               const QModelIndex &index) const override;
    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &index) const override;

private:
    void paintWords(QPainter &painter, const QRect &box, const QFont &font, const QModelIndex &index) const;
    void paintAmount(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at,
                     const QModelIndex &index) const;
    bool paintNarrow(QPainter &painter, const QRect &inner, const QFont &font, const CellView &view) const;
    void paintLimit(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at) const;
    void paintSources(QPainter &painter, const QRect &box, const QFont &font, const CellAt &at) const;
    void paintError(QPainter &painter, const QRect &inner, const QFont &font, const CellView &view) const;
    void paintOther(QPainter &painter, const QRect &inner, const QFont &font, const CellView &view) const;
    void paintQuantity(QPainter &painter, const QRect &inner, const QFont &font, const CellView &view) const;
    CellInk &ink(const QFont &font) const;

    SheetModel *m_model;
    mutable std::optional<CellInk> m_ink; ///< of the font asked for last
    int m_openLine = -1, m_openHeight = 0;
};

} // namespace puteal::desk
