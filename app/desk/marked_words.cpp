/// The shape in the left margin of a label.
#include "desk/marked_words.h"

#include <QAccessible>
#include <QEvent>

namespace puteal::desk
{

MarkedWords::MarkedWords(QWidget *parent) : QLabel(parent)
{
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    say(Mark::none, {});
}

void MarkedWords::say(Mark mark, const QString &words)
{
    m_mark = mark;
    QPalette ink = palette();
    ink.setColor(QPalette::WindowText, markColor(mark));
    setPalette(ink);
    makeRoom();
    if (words == text())
        return;
    setText(words);
    // A screen reader hears an error when it arises; it is no widget one comes by.
    if (mark == Mark::error) {
        QAccessibleEvent event(this, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
}

void MarkedWords::makeRoom()
{
    setContentsMargins(m_mark == Mark::none ? 0 : fontMetrics().height(), 0, 0, 0);
    update();
}

void MarkedWords::paintEvent(QPaintEvent *event)
{
    QLabel::paintEvent(event);
    QPainter painter(this);
    const qreal row = fontMetrics().height(), size = row * 0.75;
    const qreal top = contentsRect().top() + (row - size) / 2.0;
    paintMark(painter, QRectF(0.0, top, size, size), m_mark);
}

void MarkedWords::changeEvent(QEvent *event)
{
    QLabel::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        makeRoom();
}

} // namespace puteal::desk
