/// Typing, completion and underlining of a formula.
#include "desk/formula_edit.h"

#include <QKeyEvent>
#include <QPainter>
#include <QTextBlock>

#include "desk/look.h"

namespace puteal::desk
{

FormulaEdit::FormulaEdit(QWidget *parent) : QPlainTextEdit(parent), m_offers(new OfferList(this))
{
    setAccessibleName(tr("formula"));
    setFrameShape(QFrame::NoFrame);
    setLineWrapMode(QPlainTextEdit::WidgetWidth);
    setVerticalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabChangesFocus(false);
    setUndoRedoEnabled(true);
    document()->setDocumentMargin(1);
    connect(m_offers, &QListWidget::itemClicked, this, [this] {
        if (takeOffer())
            emit taken(0, 0);
    });
}

void FormulaEdit::setPlace(const Session *session, const CellAt &at, bool words)
{
    m_session = session;
    m_at = at;
    m_words = words;
    m_offers->hide();
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
    if (event->type() == QEvent::ShortcutOverride) {
        // F1 explains the word at the caret here; elsewhere in the window it explains the cell.
        // Ctrl+Backspace rubs a word out here; on the sheet it deletes lines.
        const auto *key = static_cast<QKeyEvent *>(event);
        const bool help = key->key() == Qt::Key_F1 && key->modifiers() == Qt::NoModifier;
        const bool rubs = (key->key() == Qt::Key_Backspace || key->key() == Qt::Key_Delete) &&
                          (key->modifiers() & Qt::ControlModifier);
        if (help || rubs) {
            event->accept();
            return true;
        }
    }
    return QPlainTextEdit::event(event);
}

/// Letters, digits and _ round the caret, with the sheet before a point; a unit without the number it is
/// written to.
QString FormulaEdit::wordAtCaret() const
{
    const QString text = toPlainText();
    const auto inWord = [&](int i) {
        return i >= 0 && i < text.size() &&
               (text[i].isLetterOrNumber() || text[i] == QLatin1Char('_') || text[i] == QLatin1Char('%') ||
                text[i] == QLatin1Char('$'));
    };
    int begin = textCursor().position(), end = begin;
    while (inWord(end))
        ++end;
    while (inWord(begin - 1))
        --begin;
    const bool number = begin < end && text[begin].isDigit();
    if (!number && begin > 1 && text[begin - 1] == QLatin1Char('.') && inWord(begin - 2))
        for (--begin; inWord(begin - 1);)
            --begin;
    while (number && begin < end && text[begin].isDigit())
        ++begin;
    return text.mid(begin, end - begin);
}

/// The offer that is chosen, else the word at the caret, else the function whose argument is typed.
void FormulaEdit::explainWord()
{
    QString word;
    if (const Completion *offer = m_offers->chosen())
        word = fromUtf8(offer->text);
    else
        word = wordAtCaret();
    if (word.isEmpty() && m_session)
        word = fromUtf8(
            m_session->callHint(m_at, toPlainText().toStdString(), static_cast<std::size_t>(caretByte()))
                .function);
    emit helpWanted(word);
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

void FormulaEdit::offer(Offer offer)
{
    if (!m_session) {
        m_offers->hide();
        return;
    }
    const std::string text = toPlainText().toStdString();
    const auto caret = static_cast<std::size_t>(caretByte());
    const Completions completions = m_session->complete(m_at, text, caret, offer);
    const std::size_t end = std::max(caret, completions.start);
    const QRect here = cursorRect();
    m_offers->useFonts(font(), parentWidget()->font());
    m_offers->offer(completions, fromUtf8(text.substr(completions.start, end - completions.start)),
                    {mapToGlobal(here.topLeft()), here.size()});
}

bool FormulaEdit::isChoice(const Completion &offer) const
{
    const bool whole =
        m_offers->start() == 0 && m_offers->end() == static_cast<std::size_t>(toPlainText().toUtf8().size());
    return whole && offer.kind == Completion::Kind::list;
}

/// True when the cell is whole with it: one of its choices.
bool FormulaEdit::takeOffer()
{
    const Completion *offer = m_offers->chosen();
    if (!offer)
        return false;
    const Completion taken = *offer;
    const bool choice = isChoice(taken);
    const int end = positionOf(static_cast<std::uint32_t>(m_offers->end()));
    QTextCursor cursor = textCursor();
    cursor.setPosition(positionOf(static_cast<std::uint32_t>(m_offers->start())));
    cursor.setPosition(end, QTextCursor::KeepAnchor);
    m_offers->hide();
    QString word = fromUtf8(taken.text);
    const QString text = toPlainText();
    const bool called = end < text.size() && text[end] == QLatin1Char('(');
    if (taken.kind == Completion::Kind::function && !called)
        word += QLatin1Char('(');
    cursor.insertText(word);
    if (taken.kind == Completion::Kind::function && called)
        cursor.movePosition(QTextCursor::Right); // behind the parenthesis that is there
    setTextCursor(cursor);
    if (taken.kind == Completion::Kind::sheet) // a sheet alone is nothing yet
        this->offer(Offer::whileTyping);
    return choice;
}

/// Keys that belong to the offers while they are shown.
bool FormulaEdit::keyInOffers(QKeyEvent *event)
{
    const Completion *offer = m_offers->chosen();
    if (!offer)
        return false;
    if (m_offers->walk(event->key()))
        return true;
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (event->key() == Qt::Key_Tab || (enter && m_offers->walked())) {
        // A word that is whole already is no choice: Tab goes on.
        const std::string text = toPlainText().toStdString();
        const bool whole = offer->kind != Completion::Kind::function && !m_offers->walked() &&
                           text.substr(m_offers->start(), m_offers->end() - m_offers->start()) == offer->text;
        if (whole) {
            m_offers->hide();
            return false;
        }
        if (takeOffer())
            enter ? emit taken(1, 0) : emit taken(0, 1);
        return true;
    }
    if (event->key() == Qt::Key_Escape) {
        m_offers->hide();
        return true;
    }
    return false;
}

bool FormulaEdit::keyOfSlip(QKeyEvent *event)
{
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        m_offers->hide();
        emit taken(event->modifiers() & Qt::ShiftModifier ? -1 : 1, 0);
        return true;
    case Qt::Key_Tab:
        emit taken(0, 1);
        return true;
    case Qt::Key_Backtab:
        m_offers->hide();
        emit taken(0, -1);
        return true;
    case Qt::Key_Escape:
        emit left();
        return true;
    case Qt::Key_F1:
        explainWord();
        return true;
    case Qt::Key_Space:
        if (event->modifiers() != Qt::ControlModifier)
            return false;
        offer(Offer::whenAsked);
        return true;
    case Qt::Key_1:
    case Qt::Key_2:
    case Qt::Key_3:
        if (event->modifiers() != Qt::AltModifier)
            return false;
        emit fixWanted(event->key() - Qt::Key_1);
        return true;
    default:
        return false;
    }
}

/// What is typed or rubbed out changes the offers; what is pasted, undone or walked over takes them away.
void FormulaEdit::offerAfter(const QKeyEvent &event, const QString &before)
{
    const bool command = event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier);
    const bool typed = !event.text().isEmpty() && event.text()[0].isPrint() && !command;
    const bool rubbed = event.key() == Qt::Key_Backspace && m_offers->isVisible();
    if (toPlainText() != before && (typed || rubbed))
        offer(Offer::whileTyping);
    else if (toPlainText() != before || event.key() == Qt::Key_Left || event.key() == Qt::Key_Right ||
             event.key() == Qt::Key_Home || event.key() == Qt::Key_End)
        m_offers->hide();
}

void FormulaEdit::keyPressEvent(QKeyEvent *event)
{
    if (keyInOffers(event) || keyOfSlip(event))
        return;
    const QString before = toPlainText();
    QPlainTextEdit::keyPressEvent(event);
    offerAfter(*event, before);
}

void FormulaEdit::focusOutEvent(QFocusEvent *event)
{
    m_offers->hide();
    QPlainTextEdit::focusOutEvent(event);
}

} // namespace puteal::desk
