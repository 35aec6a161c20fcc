/// Typing, completion and underlining of a formula.
#include "desk/formula_edit.h"

#include <QKeyEvent>
#include <QPainter>
#include <QTextBlock>

#include "desk/look.h"

namespace puteal::desk
{

FormulaEdit::FormulaEdit(QWidget *parent) : QPlainTextEdit(parent), m_popup(new QListWidget(this))
{
    setAccessibleName(tr("formula"));
    setFrameShape(QFrame::NoFrame);
    setLineWrapMode(QPlainTextEdit::WidgetWidth);
    setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabChangesFocus(false);
    setUndoRedoEnabled(true);
    document()->setDocumentMargin(1);
    m_popup->setWindowFlags(Qt::ToolTip);
    m_popup->setFocusPolicy(Qt::NoFocus);
    m_popup->setAccessibleName(tr("what could come next"));
    m_popup->hide();
    connect(m_popup, &QListWidget::itemClicked, this, [this] { takeOffer(); });
}

void FormulaEdit::setPlace(const Session *session, const CellAt &at, bool words)
{
    m_session = session;
    m_at = at;
    m_words = words;
    m_popup->hide();
}

int FormulaEdit::byteOf(int position) const
{
    return static_cast<int>(toPlainText().left(position).toUtf8().size());
}

int FormulaEdit::positionOf(std::uint32_t byte) const
{
    const QByteArray bytes = toPlainText().toUtf8();
    return static_cast<int>(QString::fromUtf8(bytes.left(static_cast<qsizetype>(byte))).size());
}

void FormulaEdit::markError(const std::optional<Error> &error)
{
    QList<QTextEdit::ExtraSelection> marks;
    const auto mark = [&](const Span &span, QTextCharFormat::UnderlineStyle style) {
        QTextEdit::ExtraSelection selection;
        selection.cursor = textCursor();
        const auto [begin, end] = lettersOf(span);
        if (begin == end)
            return;
        selection.cursor.setPosition(begin);
        selection.cursor.setPosition(end, QTextCursor::KeepAnchor);
        selection.format.setUnderlineStyle(style);
        selection.format.setUnderlineColor(color::outside);
        marks += selection;
    };
    if (error && error->place.span)
        mark(*error->place.span, QTextCharFormat::WaveUnderline);
    if (error && error->place.other)
        mark(*error->place.other, QTextCharFormat::DotLine);
    setExtraSelections(marks);
}

/// What is missing at the end of a formula is marked at its last letter.
std::pair<int, int> FormulaEdit::lettersOf(const Span &span) const
{
    const QString text = toPlainText();
    const int size = static_cast<int>(text.size());
    int begin = std::min(positionOf(span.begin), size), end = std::clamp(positionOf(span.end), begin, size);
    if (begin == end && end < size && !text[end].isSpace()) {
        ++end;
    } else if (begin == end) {
        while (end > 0 && text[end - 1].isSpace())
            --end;
        begin = std::max(0, end - 1);
    }
    return {begin, end};
}

/// The text engine's own underline is a hairline; this one is seen across a room.
void FormulaEdit::drawUnder(QPainter &painter, const QTextCursor &piece, Qt::PenStyle stroke) const
{
    painter.setPen(QPen(color::outside, std::max(2.0, font().pointSizeF() / 5.0), stroke));
    QTextCursor from(document()), to(document());
    for (int at = piece.selectionStart(); at < piece.selectionEnd(); ++at) {
        from.setPosition(at);
        to.setPosition(at + 1);
        const QRect a = cursorRect(from), b = cursorRect(to);
        const int right = b.top() == a.top() ? b.left() : a.left() + fontMetrics().averageCharWidth();
        painter.drawLine(a.left(), a.bottom() - 1, right, a.bottom() - 1);
    }
}

void FormulaEdit::paintEvent(QPaintEvent *event)
{
    QPlainTextEdit::paintEvent(event);
    QPainter painter(viewport());
    const auto marks = extraSelections();
    for (const QTextEdit::ExtraSelection &mark : marks)
        drawUnder(painter, mark.cursor,
                  mark.format.underlineStyle() == QTextCharFormat::DotLine ? Qt::DotLine : Qt::SolidLine);
}

bool FormulaEdit::event(QEvent *event)
{
    // F1 explains the word at the caret here; elsewhere in the window it explains the cell.
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent *>(event)->key() == Qt::Key_F1 &&
        static_cast<QKeyEvent *>(event)->modifiers() == Qt::NoModifier) {
        event->accept();
        return true;
    }
    return QPlainTextEdit::event(event);
}

void FormulaEdit::explainWord()
{
    if (m_popup->isVisible() && m_popup->currentItem()) {
        emit helpWanted(m_popup->currentItem()->data(Qt::UserRole).toString());
        return;
    }
    QTextCursor cursor = textCursor();
    cursor.select(QTextCursor::WordUnderCursor);
    emit helpWanted(cursor.selectedText());
}

void FormulaEdit::putIn(const QString &word)
{
    QTextCursor cursor = textCursor();
    const QString text = toPlainText();
    const int start = cursor.selectionStart();
    const bool touches =
        start > 0 && (text[start - 1].isLetterOrNumber() || text[start - 1] == QLatin1Char('_'));
    cursor.insertText(touches ? QLatin1Char(' ') + word : word);
    setTextCursor(cursor);
}

int FormulaEdit::wantedHeight() const
{
    int lines = 0;
    for (QTextBlock block = document()->begin(); block.isValid(); block = block.next())
        lines += std::max(1, block.layout() ? block.layout()->lineCount() : 1);
    return QFontMetrics(font()).lineSpacing() * std::clamp(lines, 1, 5) + 6;
}

void FormulaEdit::offer()
{
    if (!m_session || m_words) {
        m_popup->hide();
        return;
    }
    const std::string text = toPlainText().toStdString();
    const auto offers = m_session->complete(
        m_at, text, static_cast<std::size_t>(byteOf(textCursor().position())), m_wordStart);
    m_popup->clear();
    for (const Completion &offer : offers) {
        auto *item = new QListWidgetItem(
            fromUtf8(offer.text) + QStringLiteral("    ") + fromUtf8(offer.detail).left(90), m_popup);
        item->setData(Qt::UserRole, fromUtf8(offer.text));
        item->setData(Qt::UserRole + 1, offer.kind == Completion::Kind::function);
        if (m_popup->count() >= 60)
            break;
    }
    if (m_popup->count() == 0) {
        m_popup->hide();
        return;
    }
    m_popup->setCurrentRow(0);
    m_popup->setFont(font());
    const int rows = std::min(8, m_popup->count());
    m_popup->resize(std::min(640, std::max(320, m_popup->sizeHintForColumn(0) + 30)),
                    m_popup->sizeHintForRow(0) * rows + 6);
    m_popup->move(mapToGlobal(cursorRect().bottomLeft() + QPoint(0, 4)));
    m_popup->show();
}

void FormulaEdit::takeOffer()
{
    const auto *item = m_popup->currentItem();
    m_popup->hide();
    if (!item)
        return;
    QTextCursor cursor = textCursor();
    const int end = cursor.position();
    cursor.setPosition(positionOf(static_cast<std::uint32_t>(m_wordStart)));
    cursor.setPosition(end, QTextCursor::KeepAnchor);
    QString word = item->data(Qt::UserRole).toString();
    if (item->data(Qt::UserRole + 1).toBool())
        word += QLatin1Char('(');
    cursor.insertText(word);
    setTextCursor(cursor);
}

void FormulaEdit::keyPressEvent(QKeyEvent *event)
{
    if (m_popup->isVisible()) {
        switch (event->key()) {
        case Qt::Key_Down:
            m_popup->setCurrentRow((m_popup->currentRow() + 1) % m_popup->count());
            return;
        case Qt::Key_Up:
            m_popup->setCurrentRow((m_popup->currentRow() + m_popup->count() - 1) % m_popup->count());
            return;
        case Qt::Key_Tab:
            takeOffer();
            return;
        case Qt::Key_Escape:
            m_popup->hide();
            return;
        default:
            break;
        }
    }
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        m_popup->hide();
        emit taken(event->modifiers() & Qt::ShiftModifier ? -1 : 1, 0);
        return;
    case Qt::Key_Tab:
        emit taken(0, 1);
        return;
    case Qt::Key_Backtab:
        emit taken(0, -1);
        return;
    case Qt::Key_Escape:
        emit left();
        return;
    case Qt::Key_F1:
        explainWord();
        return;
    case Qt::Key_Space:
        if (event->modifiers() == Qt::ControlModifier) {
            offer();
            return;
        }
        break;
    case Qt::Key_1:
    case Qt::Key_2:
    case Qt::Key_3:
        if (event->modifiers() == Qt::AltModifier) {
            emit fixWanted(event->key() - Qt::Key_1);
            return;
        }
        break;
    default:
        break;
    }
    const QString before = toPlainText();
    QPlainTextEdit::keyPressEvent(event);
    if (toPlainText() != before && !event->text().isEmpty())
        offer();
    else if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right)
        m_popup->hide();
}

void FormulaEdit::focusOutEvent(QFocusEvent *event)
{
    m_popup->hide();
    QPlainTextEdit::focusOutEvent(event);
}

} // namespace puteal::desk
