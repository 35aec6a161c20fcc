/// The list of words that could come next, beside the caret of a formula.
#pragma once

#include <QListWidget>

#include "session/session.h"

namespace puteal::desk
{

class OfferList : public QListWidget
{
    Q_OBJECT
public:
    explicit OfferList(QWidget *parent);

    /// Fonts of the words and of what is told about them.
    void useFonts(const QFont &words, const QFont &details);
    /// Shows the offers near the caret, given in places of the screen; hides when there are none.
    void offer(const Completions &completions, const QString &typed, const QRect &caret);
    /// Up, Down, a page up or down: another row; false for any other key.
    bool walk(int key);
    /// A row was chosen by key: Enter means it then.
    bool walked() const { return m_walked; }
    const Completion *chosen() const;
    std::size_t start() const { return m_completions.start; }
    std::size_t end() const { return m_completions.end; }

private:
    void place(const QRect &caret);

    Completions m_completions;
    bool m_walked = false;
};

} // namespace puteal::desk
