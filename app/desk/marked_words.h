/// Words with the shape of what they tell before them: an error, a wait, a caution.
#pragma once

#include <QLabel>

#include "desk/look.h"

namespace puteal::desk
{

class MarkedWords : public QLabel
{
    Q_OBJECT
public:
    explicit MarkedWords(QWidget *parent = nullptr);
    /// Plain words without a shape where `mark` is none.
    void say(Mark mark, const QString &words);
    Mark mark() const { return m_mark; }

protected:
    void paintEvent(QPaintEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void makeRoom();

    Mark m_mark = Mark::none;
};

} // namespace puteal::desk
