/// The right pane: how the chosen cell came about, its limit, its sources, and who uses it.
#pragma once

#include <QTextBrowser>

#include "session/session.h"
#include "show/shown.h"

namespace puteal::desk
{

class CalculationPane : public QTextBrowser
{
    Q_OBJECT
public:
    explicit CalculationPane(QWidget *parent = nullptr);
    void show(const Session &session, const CellAt &at);
    /// What a chart is drawn from, in place of the calculation.
    void showChart(const Session &session, const ChartView &view);
    /// Help of a function, unit or name in place of the calculation.
    void showHelp(const QString &title, const QString &text);
    /// Words that can be asked for by a click, each with what it is.
    struct Word {
        QString word, meaning;
    };
    void showWords(const QString &title, const QString &before, const QList<Word> &words);

protected:
    void resizeEvent(QResizeEvent *event) override;

signals:
    void cellWanted(const puteal::CellAt &at);
    void wordWanted(const QString &word);

private:
    void followed(const QUrl &link);
    QString cellLinks(const Session &session, std::uint32_t sheet, const std::vector<CellAt> &cells) const;
    /// Letters of the fixed font that fit in one row.
    int lettersAcross() const;
    void write();

    /// What is shown: text before and after the steps, and the steps, which are broken to the pane's width.
    QString m_before, m_after;
    Calculation m_steps;
    int m_across = 0; ///< letters a row had when the steps were broken
    bool m_writing = false;
};

} // namespace puteal::desk
