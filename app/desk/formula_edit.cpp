/// Typing, completion and underlining of a formula.
#include "desk/formula_edit.h"

#include <QKeyEvent>
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
        const int begin = positionOf(span.begin), end = positionOf(span.end);
        selection.cursor.setPosition(std::min(begin, document()->characterCount() - 1));
        selection.cursor.setPosition(std::min(std::max(end, begin + 1), document()->characterCount() - 1),
                                     QTextCursor::KeepAnchor);
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
    case Qt::Key_F1: {
        if (m_popup->isVisible() && m_popup->currentItem()) {
            emit helpWanted(m_popup->currentItem()->data(Qt::UserRole).toString());
            return;
        }
        QTextCursor cursor = textCursor();
        cursor.select(QTextCursor::WordUnderCursor);
        emit helpWanted(cursor.selectedText());
        return;
    }
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
