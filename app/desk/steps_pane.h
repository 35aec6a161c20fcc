/// The sheets as a treatment train: a card each with state and headline, arrows from real dependencies,
/// charts below.
#pragma once

#include <QScrollArea>

#include "session/session.h"

namespace puteal::desk
{

/// Draws the cards; lives inside the scroll area.
class StepsPaper : public QWidget
{
    Q_OBJECT
public:
    explicit StepsPaper(QWidget *parent = nullptr);
    void setSteps(std::vector<StepView> steps, std::vector<std::pair<std::string, std::string>> charts);
    void setCurrent(int card);
    int current() const { return m_current; }
    /// Card of a chart, -1 when there is none.
    int cardOfChart(const QString &key) const;
    int cardCount() const { return static_cast<int>(m_steps.size() + m_charts.size()); }
    QRect cardRect(int card) const;

signals:
    void sheetChosen(std::uint32_t sheet);
    void chartChosen(const QString &key);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    bool event(QEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    QSize sizeHint() const override;

private:
    void choose(int card);
    void placeCards();
    QString titleOf(int card) const;
    QString wordsOf(int card) const;
    QFont titleFont(int card) const;
    int titleHeight(int card, int width) const;
    void paintCard(QPainter &painter, int card) const;
    void paintArrows(QPainter &painter) const;

    std::vector<StepView> m_steps;
    std::vector<std::pair<std::string, std::string>> m_charts; ///< key, title
    std::vector<QRect> m_cards;
    int m_current = 0;
};

class StepsPane : public QScrollArea
{
    Q_OBJECT
public:
    explicit StepsPane(QWidget *parent = nullptr);
    StepsPaper *paper() const { return m_paper; }
    void show(const Session &session);
    void setCurrentSheet(std::uint32_t sheet);
    void setCurrentChart(const QString &key);

private:
    StepsPaper *m_paper;
};

} // namespace puteal::desk
