/// The three rows that unfold under the line while a formula is typed: formula, units, result.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>

#include "desk/formula_edit.h"
#include "desk/marked_words.h"

class QHBoxLayout;

namespace puteal::desk
{

class Slip : public QFrame
{
    Q_OBJECT
public:
    explicit Slip(QWidget *parent = nullptr);

    /// Opens over a cell with the text to start from. Amounts columns show three rows, words columns two.
    void open(const Session *session, const CellAt &at, const QString &text, bool words);
    void close();
    bool isOpen() const { return m_open; }
    CellAt at() const { return m_at; }
    QString text() const { return m_edit->toPlainText(); }
    FormulaEdit *edit() const { return m_edit; }
    /// Offers what could stand here: the choices of a cell, or what the first letter begins.
    void offerAtOpening(bool typed);
    /// In a narrow sheet the words about keys give way.
    void setAcross(int width);
    /// Follows the font of the grid (zoom).
    void useFont(const QFont &base);
    /// What is typed was not kept: says why, until it is changed.
    void refuse(const Error &error);
    /// What the frame tells: an error, a wait for other cells, a caution, or that all is well.
    Mark state() const { return m_state; }
    QString units() const { return m_units->text(); }
    QString result() const { return m_result->text(); }
    /// The call that is typed and its argument, in plain words; empty outside a call.
    QString callWords() const { return m_callWords; }
    /// Cells the formula refers to now.
    std::vector<CellAt> used() const { return m_used; }

signals:
    void taken(int lineStep, int columnStep);
    void left();
    void heightChanged();
    void usedChanged();
    void helpWanted(const QString &word);

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    void build();
    void refresh();
    void offerFixes();
    QHBoxLayout *buildEnd();
    void tellCall();
    void tellHints(const SlipView &view);
    void lightUsed(const SlipView &view);
    void takeFix(int index);

    const Session *m_session = nullptr;
    CellAt m_at;
    bool m_open = false, m_words = false;
    FormulaEdit *m_edit;
    Mark m_state = Mark::none;
    QLabel *m_firstName, *m_call, *m_unitsName, *m_units, *m_resultName, *m_keys;
    QString m_callWords;
    MarkedWords *m_result, *m_hint;
    QVector<QPushButton *> m_fixes;
    std::vector<Fix> m_offered;
    std::vector<CellAt> m_used;
};

} // namespace puteal::desk
