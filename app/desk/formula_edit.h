/// The line a formula is typed in: wraps, underlines the clashing pieces, completes names, functions and
/// units.
#pragma once

#include <QPlainTextEdit>

#include "desk/offer_list.h"
#include "session/session.h"

namespace puteal::desk
{

class FormulaEdit : public QPlainTextEdit
{
    Q_OBJECT
public:
    explicit FormulaEdit(QWidget *parent = nullptr);

    /// Where completions come from.
    void setPlace(const Session *session, const CellAt &at, bool words);
    /// Underlines the error's spans: waves under the first, dots under the second.
    void markError(const std::optional<Error> &error);
    /// Puts a word in at the caret, replacing the selection; a blank is added where two words would touch.
    void putIn(const QString &word);
    /// Height that shows the whole text, at most five lines.
    int wantedHeight() const;
    bool completing() const { return m_offers->isVisible(); }
    /// Offers what could stand at the caret.
    void offer(Offer offer);
    int caretByte() const { return byteOf(textCursor().position()); }

signals:
    void taken(int lineStep, int columnStep); ///< Enter, Shift+Enter, Tab
    void left();                              ///< Escape
    void helpWanted(const QString &word);     ///< F1
    void fixWanted(int index);                ///< Alt+1 to Alt+3

protected:
    bool event(QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    void offerAfter(const QKeyEvent &event, const QString &before);
    bool keyInOffers(QKeyEvent *event);
    bool keyOfSlip(QKeyEvent *event);
    void explainWord();
    QString wordAtCaret() const;
    /// Where a span stands in the text: never empty, on a letter where the text has one.
    std::pair<int, int> lettersOf(const Span &span) const;
    void drawUnder(QPainter &painter, const QTextCursor &piece, Qt::PenStyle stroke) const;
    bool takeOffer();
    /// The whole text is replaced by it: one of the choices of the cell.
    bool isChoice(const Completion &offer) const;
    int byteOf(int position) const;
    int positionOf(std::uint32_t byte) const;

    const Session *m_session = nullptr;
    CellAt m_at;
    bool m_words = false;
    OfferList *m_offers;
};

} // namespace puteal::desk
