/// The pane that shows a chart with its sentences.
#include "charts/chart_view.h"

#include <algorithm>

#include <QEvent>
#include <QLabel>
#include <QTimer>
#include <QVBoxLayout>

#include "charts/plot.h"

namespace puteal::charts
{

struct ChartPane::Parts {
    QLabel *title;
    QCustomPlot *plot;
    QLabel *sentences;
    ChartView view;
    qreal usualSize = 9.0; ///< of the program's font before any zoom
};

ChartPane::ChartPane(QWidget *parent) : QWidget(parent), m_parts(new Parts)
{
    setFocusPolicy(Qt::StrongFocus);
    m_parts->usualSize = std::max(1.0, font().pointSizeF());
    auto *layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 10, 12, 10);
    m_parts->title = new QLabel(this);
    m_parts->title->setTextFormat(Qt::PlainText);
    m_parts->plot = new QCustomPlot(this);
    m_parts->plot->setMinimumHeight(220);
    m_parts->plot->setAccessibleName(tr("chart"));
    m_parts->plot->installEventFilter(this);
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
    QFont heading = font();
    heading.setBold(true);
    m_parts->title->setFont(heading);
    m_parts->view = view;
    if (view.error) {
        m_parts->plot->clearPlottables();
        m_parts->plot->clearItems();
        m_parts->plot->replot();
        m_parts->sentences->setText(QString::fromStdString(view.error->words));
        return;
    }
    m_parts->sentences->setText(chartSentences(view).join(QLatin1Char('\n')));
    setAccessibleName(tr("chart %1").arg(m_parts->title->text()));
    setAccessibleDescription(m_parts->sentences->text());
    draw();
}

void ChartPane::draw()
{
    m_parts->plot->setFont(font());
    fillPlot(*m_parts->plot, m_parts->view, std::clamp(font().pointSizeF() / m_parts->usualSize, 0.7, 3.0));
    m_parts->plot->replot();
}

bool ChartPane::eventFilter(QObject *watched, QEvent *event)
{
    const bool drawn = QWidget::eventFilter(watched, event);
    // The places of labels depend on the size; the plot itself has taken it when this comes round.
    if (watched == m_parts->plot && event->type() == QEvent::Resize && !m_parts->view.series.empty())
        QTimer::singleShot(0, this, &ChartPane::draw);
    return drawn;
}

QString ChartPane::sentences() const
{
    return m_parts->sentences->text();
}

} // namespace puteal::charts
