/// The pane that shows a chart with its sentences.
#include "charts/chart_view.h"

#include <algorithm>

#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

#include "charts/plot.h"

namespace puteal::charts
{

namespace
{

/// Asks for the height its sentences need, but gives way down to two rows.
class Below : public QScrollArea
{
public:
    using QScrollArea::QScrollArea;
    int wanted = 0;
    QSize sizeHint() const override { return {100, wanted}; }
    QSize minimumSizeHint() const override { return {60, std::min(wanted, 2 * fontMetrics().height())}; }
};

} // namespace

struct ChartPane::Parts {
    QLabel *title;
    QCustomPlot *plot;
    QLabel *sentences;
    Below *below; ///< holds the sentences: there may be many
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
    m_parts->plot->setMinimumHeight(120);
    m_parts->plot->setAccessibleName(tr("chart"));
    m_parts->plot->installEventFilter(this);
    m_parts->sentences = new QLabel(this);
    m_parts->sentences->setWordWrap(true);
    m_parts->sentences->setTextFormat(Qt::PlainText);
    m_parts->sentences->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    layout->addWidget(m_parts->title);
    layout->addWidget(m_parts->plot, 1);
    m_parts->sentences->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_parts->below = new Below(this);
    m_parts->below->setFrameShape(QFrame::NoFrame);
    m_parts->below->setWidgetResizable(true);
    m_parts->below->setFocusPolicy(Qt::NoFocus);
    m_parts->below->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_parts->below->setWidget(m_parts->sentences);
    layout->addWidget(m_parts->below);
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
        m_parts->plot->xAxis->setVisible(false);
        m_parts->plot->yAxis->setVisible(false);
        m_parts->plot->replot();
        m_parts->sentences->setText(QString::fromStdString(view.error->words));
        shareHeight();
        return;
    }
    m_parts->sentences->setText(chartSentences(view).join(QLatin1Char('\n')));
    setAccessibleName(tr("chart %1").arg(m_parts->title->text()));
    setAccessibleDescription(m_parts->sentences->text());
    shareHeight();
    draw();
}

/// The sentences have the room they need, but never more than two fifths of the pane: then they scroll.
void ChartPane::shareHeight()
{
    const int most = std::max(3 * fontMetrics().height(), height() * 2 / 5);
    const int bar = m_parts->below->verticalScrollBar()->sizeHint().width();
    const int across = std::max(40, width() - 24);
    int wanted = m_parts->sentences->heightForWidth(across);
    if (wanted > most)
        wanted = m_parts->sentences->heightForWidth(across - bar);
    m_parts->below->wanted = std::min(most, std::max(wanted, fontMetrics().height()) + 2);
    m_parts->below->setMaximumHeight(m_parts->below->wanted);
    m_parts->below->updateGeometry();
    m_parts->below->verticalScrollBar()->setValue(0);
}

void ChartPane::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    shareHeight();
}

void ChartPane::keyPressEvent(QKeyEvent *event)
{
    QScrollBar *bar = m_parts->below->verticalScrollBar();
    switch (event->key()) {
    case Qt::Key_Down:
    case Qt::Key_Up:
        bar->setValue(bar->value() + (event->key() == Qt::Key_Down ? 1 : -1) * fontMetrics().height());
        return;
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        bar->setValue(bar->value() + (event->key() == Qt::Key_PageDown ? 1 : -1) * bar->pageStep());
        return;
    default:
        QWidget::keyPressEvent(event);
    }
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
