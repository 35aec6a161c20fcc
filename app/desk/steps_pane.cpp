/// Cards and arrows of the steps pane.
#include "desk/steps_pane.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{

constexpr int edge = 10, gap = 18;

int stateSize(const QFont &font)
{
    return QFontMetrics(font).height() * 3 / 4;
}

constexpr int margin = 9;

int rowsHeight(const QFont &font, const QString &text, int width)
{
    const QFontMetrics metrics(font);
    return metrics.boundingRect(QRect(0, 0, width, 1000), Qt::TextWordWrap, breakable(text, metrics, width))
        .height();
}

} // namespace

StepsPaper::StepsPaper(QWidget *parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("steps"));
}

void StepsPaper::setSteps(std::vector<StepView> steps,
                          std::vector<std::pair<std::string, std::string>> charts)
{
    m_steps = std::move(steps);
    m_charts = std::move(charts);
    placeCards();
}

QFont StepsPaper::titleFont(int card) const
{
    QFont title = font();
    title.setBold(card == m_current);
    return title;
}

int StepsPaper::titleHeight(int card, int width) const
{
    const QFont title = titleFont(card);
    return std::min(rowsHeight(title, titleOf(card), width - stateSize(font()) - 6),
                    3 * QFontMetrics(title).height());
}

/// A title takes one to three rows; below it stand one or two small ones, as its words need.
void StepsPaper::placeCards()
{
    m_cards.clear();
    const int left = edge + 8, across = width() - 2 * edge - 8;
    const QFont small = smallFont(font());
    const int row = QFontMetrics(small).height();
    int top = edge;
    for (int card = 0; card < cardCount(); ++card) {
        const int inner = across - 2 * margin;
        const QString words = wordsOf(card);
        // Room for the shape of a verdict is kept on every card.
        const int below = words.isEmpty() ? 0 : std::min(rowsHeight(small, words, inner - row), 2 * row);
        const int height = titleHeight(card, inner) + below + 14;
        m_cards.push_back({left, top, across, height});
        top += height + gap;
    }
    setMinimumHeight(top - gap + edge);
    updateGeometry();
    update();
}

QString StepsPaper::wordsOf(int card) const
{
    const auto i = static_cast<std::size_t>(card);
    if (i >= m_steps.size())
        return tr("chart");
    const StepView &step = m_steps[i];
    QString words;
    if (step.errors > 0)
        words = tr("%1 without a result").arg(step.errors);
    else if (step.outside > 0)
        words = tr("%1 outside limit").arg(step.outside);
    else if (step.missing > 0)
        words = (step.missing == 1 ? tr("1 missing test") : tr("%1 missing tests").arg(step.missing));
    else if (step.near > 0)
        words = tr("%1 near limit").arg(step.near);
    if (!words.isEmpty() && !step.headline.empty())
        words += QStringLiteral(" · ");
    return words + fromUtf8(step.headline);
}

QString StepsPaper::titleOf(int card) const
{
    const auto i = static_cast<std::size_t>(card);
    return fromUtf8(i < m_steps.size() ? m_steps[i].title : m_charts[i - m_steps.size()].second);
}

void StepsPaper::resizeEvent(QResizeEvent *event)
{
    QWidget::resizeEvent(event);
    placeCards();
}

void StepsPaper::setCurrent(int card)
{
    m_current = card;
    placeCards(); // the chosen title is bold and may take another row
    if (card >= 0 && card < static_cast<int>(m_steps.size())) {
        const auto &step = m_steps[static_cast<std::size_t>(card)];
        setAccessibleDescription(fromUtf8(step.title) + QStringLiteral(", ") + stateWord(step.worst) +
                                 QStringLiteral(", ") + fromUtf8(step.headline));
    }
    update();
}

QSize StepsPaper::sizeHint() const
{
    return {200, minimumHeight()};
}

QRect StepsPaper::cardRect(int card) const
{
    const auto i = static_cast<std::size_t>(card);
    return card >= 0 && i < m_cards.size() ? m_cards[i] : QRect();
}

void StepsPaper::choose(int card)
{
    if (card < 0 || card >= cardCount())
        return;
    setCurrent(card);
    const auto i = static_cast<std::size_t>(card);
    if (i < m_steps.size())
        emit sheetChosen(m_steps[i].sheet);
    else
        emit chartChosen(fromUtf8(m_charts[i - m_steps.size()].first));
}

void StepsPaper::paintCard(QPainter &painter, int card) const
{
    const QRect box = cardRect(card);
    const bool chosen = card == m_current;
    painter.setPen(QPen(chosen ? color::given : color::edge, chosen ? 2.5 : 1));
    painter.setBrush(color::paper);
    painter.drawRoundedRect(QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5), 5, 5);
    const auto i = static_cast<std::size_t>(card);
    const bool chart = i >= m_steps.size();
    painter.setFont(titleFont(card));
    painter.setPen(color::text);
    const int s = stateSize(font());
    const QRect inner = box.adjusted(margin, 5, -margin, -5);
    const QRect top(inner.left(), inner.top(), inner.width() - s - 6, titleHeight(card, inner.width()));
    drawTwoRows(painter, top, titleFont(card), titleOf(card), Qt::AlignTop);
    const QFont small = smallFont(font());
    painter.setFont(small);
    painter.setPen(color::quiet);
    QRect below(inner.left(), top.bottom() + 2, inner.width(), inner.bottom() - top.bottom() - 2);
    if (chart) {
        painter.drawText(below, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, wordsOf(card));
        return;
    }
    const StepView &step = m_steps[i];
    const QRectF shape(inner.right() - s, top.top() + (QFontMetrics(font()).height() - s) / 2.0, s, s);
    if (step.errors > 0)
        paintMark(painter, shape, Mark::error);
    else
        paintState(painter, shape,
                   step.told != LimitState::noLimit && step.worst == LimitState::within ? LimitState::noLimit
                                                                                        : step.worst);
    // Two small rows, cut with dots; a verdict has its shape before it.
    const QFontMetrics metrics(small);
    if (step.told != LimitState::noLimit && step.errors == 0) {
        const int size = metrics.height() * 3 / 4;
        paintState(painter, QRectF(below.left(), below.top() + (metrics.height() - size) / 2.0, size, size),
                   step.told);
        below.setLeft(below.left() + size + 4);
    }
    drawTwoRows(painter, below, small, wordsOf(card), Qt::AlignTop);
}

void StepsPaper::paintArrows(QPainter &painter) const
{
    const auto arrowHead = [&](QPointF tip, QColor ink) {
        painter.setBrush(ink);
        painter.setPen(Qt::NoPen);
        painter.drawPolygon(QPolygonF{tip, tip + QPointF(-4, -6), tip + QPointF(4, -6)});
    };
    for (std::size_t from = 0; from < m_steps.size(); ++from)
        for (const auto to : m_steps[from].feeds) {
            const bool mine = static_cast<int>(from) == m_current || static_cast<int>(to) == m_current;
            const QColor ink = mine ? color::given : color::edge;
            if (to == from + 1) {
                const QRect a = cardRect(static_cast<int>(from)), b = cardRect(static_cast<int>(to));
                const qreal x = a.center().x();
                painter.setPen(QPen(ink, mine ? 2 : 1.2));
                painter.drawLine(QPointF(x, a.bottom() + 1), QPointF(x, b.top() - 3));
                arrowHead(QPointF(x, b.top() - 1), ink);
            } else if (mine) {
                // Distant sheets are tied by a line along the edge, only for the chosen card.
                const QRect a = cardRect(static_cast<int>(from)), b = cardRect(static_cast<int>(to));
                painter.setPen(QPen(color::given, 1.2));
                painter.setBrush(Qt::NoBrush);
                const qreal x = edge / 2.0 + 2;
                painter.drawPolyline(QPolygonF{QPointF(a.left(), a.center().y()), QPointF(x, a.center().y()),
                                               QPointF(x, b.center().y()),
                                               QPointF(b.left() - 4, b.center().y())});
                painter.setBrush(color::given);
                painter.setPen(Qt::NoPen);
                const QPointF tip(b.left(), b.center().y());
                painter.drawPolygon(QPolygonF{tip, tip + QPointF(-6, -4), tip + QPointF(-6, 4)});
            }
        }
}

void StepsPaper::paintEvent(QPaintEvent *)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintArrows(painter);
    for (int card = 0; card < cardCount(); ++card)
        paintCard(painter, card);
    if (hasFocus() && m_current >= 0 && m_current < cardCount()) {
        painter.setPen(QPen(color::given, 1, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(cardRect(m_current)).adjusted(-3, -3, 3, 3), 7, 7);
    }
}

void StepsPaper::mousePressEvent(QMouseEvent *event)
{
    for (int card = 0; card < cardCount(); ++card)
        if (cardRect(card).contains(event->pos()))
            choose(card);
}

void StepsPaper::keyPressEvent(QKeyEvent *event)
{
    if (event->key() == Qt::Key_Down)
        choose(m_current + 1);
    else if (event->key() == Qt::Key_Up)
        choose(m_current - 1);
    else
        QWidget::keyPressEvent(event);
}

bool StepsPaper::event(QEvent *event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto *help = static_cast<QHelpEvent *>(event);
        for (std::size_t i = 0; i < m_steps.size(); ++i)
            if (cardRect(static_cast<int>(i)).contains(help->pos())) {
                QToolTip::showText(help->globalPos(),
                                   QStringLiteral("<b>%1</b><br>%2")
                                       .arg(fromUtf8(m_steps[i].title).toHtmlEscaped(),
                                            fromUtf8(m_steps[i].headline).toHtmlEscaped()),
                                   this);
                return true;
            }
        QToolTip::hideText();
        return true;
    }
    return QWidget::event(event);
}

StepsPane::StepsPane(QWidget *parent) : QScrollArea(parent), m_paper(new StepsPaper(this))
{
    setWidget(m_paper);
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusProxy(m_paper);
}

void StepsPane::show(const Session &session)
{
    std::vector<std::pair<std::string, std::string>> charts;
    for (const Chart &chart : session.workbook().charts)
        charts.emplace_back(chart.key, chart.title);
    m_paper->setSteps(session.steps(), std::move(charts));
}

int StepsPaper::cardOfChart(const QString &key) const
{
    for (std::size_t i = 0; i < m_charts.size(); ++i)
        if (fromUtf8(m_charts[i].first) == key)
            return static_cast<int>(m_steps.size() + i);
    return -1;
}

void StepsPane::setCurrentChart(const QString &key)
{
    const int card = m_paper->cardOfChart(key);
    if (card < 0)
        return;
    m_paper->setCurrent(card);
    const QRect box = m_paper->cardRect(card);
    ensureVisible(box.center().x(), box.center().y(), 20, box.height());
}

void StepsPane::setCurrentSheet(std::uint32_t sheet)
{
    m_paper->setCurrent(static_cast<int>(sheet));
    const QRect card = m_paper->cardRect(static_cast<int>(sheet));
    ensureVisible(card.center().x(), card.center().y(), 20, card.height());
}

} // namespace puteal::desk
