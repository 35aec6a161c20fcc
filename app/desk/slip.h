/// The three rows that unfold under the line while a formula is typed: formula, units, result.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>

#include "desk/formula_edit.h"

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
    /// Cells the formula refers to now.
    std::vector<CellAt> used() const { return m_used; }

signals:
    void taken(int lineStep, int columnStep);
    void left();
    void heightChanged();
    void usedChanged();
    void helpWanted(const QString &word);

private:
    void refresh();
    void takeFix(int index);

    const Session *m_session = nullptr;
    CellAt m_at;
    bool m_open = false, m_words = false;
    FormulaEdit *m_edit;
    QLabel *m_firstName, *m_unitsName, *m_units, *m_resultName, *m_result, *m_hint, *m_keys;
    QVector<QPushButton *> m_fixes;
    std::vector<Fix> m_offered;
    std::vector<CellAt> m_used;
};

} // namespace puteal::desk
