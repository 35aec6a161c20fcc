/// The first words column, painted over the grid while it is scrolled sideways, so that a line keeps its
/// item.
#pragma once

#include <QWidget>

namespace puteal::desk
{

class SheetView;

/// Lies over the left edge of the viewport; its head lies over the horizontal header. Hidden while column 0
/// is in sight.
class ItemsInSight : public QWidget
{
    Q_OBJECT
public:
    explicit ItemsInSight(SheetView *view);
    /// Shows, hides and places both parts: after scrolling, resizing or a change of columns.
    void place();

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    SheetView *m_view;
    QWidget *m_head;
    int m_across = 0; ///< the items; beyond them lies blank paper over a column that would be cut
};

} // namespace puteal::desk
