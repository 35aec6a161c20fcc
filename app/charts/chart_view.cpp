/// The pane that shows a chart with its sentences.
#include "charts/chart_view.h"

#include <QLabel>
#include <QVBoxLayout>

#include "charts/plot.h"

namespace puteal::charts
{

struct ChartPane::Parts {
    QLabel *title;
    QCustomPlot *plot;
    QLabel *sentences;
};

ChartPane::ChartPane(QWidget *parent) : QWidget(parent), m_parts(new Parts)
{
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 10, 12, 10);
    m_parts->title = new QLabel(this);
    QFont font = m_parts->title->font();
    font.setBold(true);
    m_parts->title->setFont(font);
    m_parts->title->setTextFormat(Qt::PlainText);
    m_parts->plot = new QCustomPlot(this);
    m_parts->plot->setMinimumHeight(220);
    m_parts->plot->setAccessibleName(tr("chart"));
    m_parts->sentences = new QLabel(this);
    m_parts->sentences->setWordWrap(true);
    m_parts->sentences->setTextFormat(Qt::PlainText);
    m_parts->sentences->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    layout->addWidget(m_parts->title);
    layout->addWidget(m_parts->plot, 1);
    layout->addWidget(m_parts->sentences);
}

ChartPane::~ChartPane()
{
    delete m_parts;
}

void ChartPane::show(const ChartView &view)
{
    m_parts->title->setText(QString::fromStdString(view.chart.title));
    if (view.error) {
        m_parts->plot->clearPlottables();
        m_parts->plot->clearItems();
        m_parts->plot->replot();
        m_parts->sentences->setText(QString::fromStdString(view.error->words));
        return;
    }
    fillPlot(*m_parts->plot, view);
    m_parts->plot->replot();
    m_parts->sentences->setText(chartSentences(view).join(QLatin1Char('\n')));
    setAccessibleName(tr("chart %1").arg(m_parts->title->text()));
    setAccessibleDescription(m_parts->sentences->text());
}

QString ChartPane::sentences() const
{
    return m_parts->sentences->text();
}

} // namespace puteal::charts
