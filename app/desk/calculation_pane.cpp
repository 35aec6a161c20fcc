/// The calculation as text with links to the cells it uses.
#include "desk/calculation_pane.h"

#include <algorithm>

#include <QScrollBar>
#include <QTimer>
#include <QUrl>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{

QString escaped(const std::string &text)
{
    return fromUtf8(text).toHtmlEscaped();
}

/// Is the place before character `i` inside a quoted text?
bool isQuoted(const QString &text, int i)
{
    return text.left(i).count(QLatin1Char('"')) % 2 == 1;
}

constexpr std::uint32_t noSheet = 0xFFFFFFFFU; ///< links then name their sheet
constexpr int indent = 4;                      ///< letters a broken piece is set in

/// A long piece broken after commas, opening parentheses and blanks, so that names and numbers stay whole;
/// quoted words only where nothing else can be broken.
QStringList brokenAt(const QString &line, int width)
{
    QStringList out;
    QString rest = line;
    while (rest.size() > width) {
        int cut = -1;
        for (const bool insideToo : {false, true})
            for (int i = std::min<int>(width, static_cast<int>(rest.size()) - 1); i > width / 4 && cut < 0;
                 --i)
                if ((rest[i - 1] == QLatin1Char('(') || rest[i - 1] == QLatin1Char(' ')) &&
                    (insideToo || !isQuoted(rest, i)))
                    cut = i;
        if (cut < 0)
            cut = width; // one word longer than the row
        out += rest.left(cut);
        rest = rest.mid(cut);
    }
    out += rest;
    return out;
}

QString fixedLines(const std::vector<std::string> &lines, const char *first, int width)
{
    QString out;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const QStringList pieces = brokenAt(fromUtf8(lines[i]), width);
        for (int j = 0; j < pieces.size(); ++j)
            out += QStringLiteral("<div><code>%1%2</code></div>")
                       .arg(i == 0 && j == 0
                                ? QLatin1String(first)
                                : QLatin1String(j == 0 ? "&nbsp;&nbsp;" : "&nbsp;&nbsp;&nbsp;&nbsp;"),
                            pieces[j].toHtmlEscaped());
    }
    return out.isEmpty() ? out : QStringLiteral("<div style='margin-top:8px'></div>") + out;
}

QString heading(const QString &text)
{
    return QStringLiteral("<div style='margin-top:14px;color:%1'>%2</div>")
        .arg(color::quiet.name(), text.toHtmlEscaped());
}

QString inked(const QString &html, const QColor &ink)
{
    return QStringLiteral("<div style='color:%1'>%2</div>").arg(ink.name(), html);
}

const char *stateGlyph(LimitState state)
{
    switch (state) {
    case LimitState::within:
        return "✓ ";
    case LimitState::near:
        return "▲ ";
    case LimitState::outside:
        return "✕ ";
    default:
        return "? ";
    }
}

} // namespace

CalculationPane::CalculationPane(QWidget *parent) : QTextBrowser(parent)
{
    setAccessibleName(tr("calculation"));
    setFrameShape(QFrame::NoFrame);
    setOpenLinks(false);
    setStyleSheet(
        QStringLiteral("QTextBrowser{background:%1;border:none;padding:8px}").arg(color::ground.name()));
    connect(this, &QTextBrowser::anchorClicked, this, &CalculationPane::followed);
}

QString CalculationPane::cellLinks(const Session &session, std::uint32_t sheet,
                                   const std::vector<CellAt> &cells) const
{
    QStringList links;
    for (std::size_t i = 0; i < cells.size() && i < 14; ++i) {
        const CellAt &at = cells[i];
        const Sheet &there = session.workbook().sheets[at.sheet];
        const std::string &name = there.cell(at.column, at.line).beside().name;
        // Without a name the item and the column tell which cell it is; it must not look like a reference.
        QString words = fromUtf8(name);
        if (name.empty() && there.itemWords(at.column, at.line).empty())
            words = QStringLiteral("%1[%2]").arg(fromUtf8(there.column(at.column).key)).arg(at.line + 1);
        const bool told = words.isEmpty();
        if (told)
            words = tr("%1, %2").arg(fromUtf8(session.labelOf(at)), fromUtf8(there.column(at.column).title));
        if (at.sheet != sheet)
            words = told ? tr("%1: %2").arg(fromUtf8(there.title()), words)
                         : fromUtf8(there.key()) + QLatin1Char('.') + words;
        links += QStringLiteral("<a style='color:%1' href='cell:%2,%3,%4'>%5</a>")
                     .arg(color::given.name())
                     .arg(at.sheet)
                     .arg(at.column)
                     .arg(at.line)
                     .arg(words.toHtmlEscaped());
    }
    if (cells.size() > 14)
        links += tr("and %1 more").arg(cells.size() - 14);
    return QStringLiteral("<div>%1</div>").arg(links.join(QStringLiteral(", ")));
}

int CalculationPane::lettersAcross() const
{
    const int letter = QFontMetrics(fixedFont(font())).horizontalAdvance(QLatin1Char('m'));
    const int room = viewport()->width() - 2 * static_cast<int>(document()->documentMargin());
    return std::max(16, room / std::max(1, letter) - indent);
}

/// Name, formula, numbers put in, terms: each broken to the width there is.
void CalculationPane::write()
{
    QString html = m_before;
    if (!m_steps.formula.empty()) {
        const int width = m_across = lettersAcross();
        html +=
            QStringLiteral("<div style='margin-top:10px'><code>%1</code></div>").arg(escaped(m_steps.name));
        html += fixedLines(m_steps.formula, "= ", width);
        html += fixedLines(m_steps.putIn, "= ", width);
        if (m_steps.terms.size() > 1)
            html += fixedLines(m_steps.terms, "= ", width);
    }
    const int scrolled = verticalScrollBar()->value();
    m_writing = true; // a scroll bar that comes or goes changes the width in the middle of this
    setHtml(html + m_after);
    m_writing = false;
    verticalScrollBar()->setValue(scrolled);
}

void CalculationPane::resizeEvent(QResizeEvent *event)
{
    QTextBrowser::resizeEvent(event);
    if (m_writing)
        QTimer::singleShot(0, this, [this] {
            if (lettersAcross() != m_across)
                write();
        });
    else if (!m_steps.formula.empty() && lettersAcross() != m_across)
        write();
}

namespace
{

QString resultHtml(const Calculation &steps, const CellView &view)
{
    if (!steps.error.empty()) {
        const Mark mark = view.error ? markOf(*view.error) : Mark::error;
        return QStringLiteral("<div style='margin-top:10px'></div>") +
               inked(markGlyph(mark) + escaped(steps.error), markColor(mark));
    }
    if (steps.result.empty())
        return {};
    return QStringLiteral("<div style='margin-top:10px;padding-bottom:3px;border-bottom:3px double "
                          "%1'><b><code>%2</code></b></div>")
        .arg(color::text.name(), escaped(steps.result));
}

QString limitHtml(const CellView &view, const Cell *cell)
{
    QString html;
    if (view.state != LimitState::noLimit)
        html += heading(QObject::tr("LIMIT")) +
                inked(QString::fromUtf8(stateGlyph(view.state)) + escaped(view.stateWords),
                      stateColor(view.state));
    if (cell && cell->beside().limit && !cell->beside().limit->words.empty())
        html += QStringLiteral("<div>%1</div>").arg(escaped(cell->beside().limit->words));
    return html;
}

QString cautionsHtml(const Calculation &steps)
{
    if (steps.cautions.empty())
        return {};
    QString html = heading(QObject::tr("CAUTIONS"));
    const std::size_t shown = std::min<std::size_t>(steps.cautions.size(), 6);
    for (std::size_t i = 0; i < shown; ++i)
        html += inked(markGlyph(Mark::caution) + escaped(steps.cautions[i]), color::near);
    if (steps.cautions.size() > shown)
        html += QObject::tr("and %1 more where they arise").arg(steps.cautions.size() - shown);
    return html;
}

QString sourcesHtml(const CellView &view, const Workbook &workbook, bool uses)
{
    if (view.sources.empty())
        return {};
    QString html = heading(QObject::tr("SOURCES"));
    for (const auto &mark : view.sources) {
        const SourceMark *source = workbook.sourceById(mark);
        html +=
            QStringLiteral("<div>%1&nbsp; %2</div>")
                .arg(escaped(mark), source ? escaped(std::string(markTitle(mark[0])) + ": " + source->words)
                                    : uses ? QObject::tr("worked out from the cells below")
                                           : QObject::tr("worked out here"));
    }
    return html;
}

} // namespace

void CalculationPane::show(const Session &session, const CellAt &at)
{
    m_steps = session.calculation(at);
    const CellView view = session.view(at);
    const Cell *cell = session.workbook().cell(at);
    m_before =
        inked(tr("CALCULATION: line %1, %2").arg(at.line + 1).arg(escaped(m_steps.title)), color::quiet);
    if (m_steps.formula.empty() && !view.typed.empty())
        m_before += QStringLiteral("<div style='margin-top:10px'>%1</div>").arg(tr("typed in"));
    m_after = resultHtml(m_steps, view);
    for (const auto &note : m_steps.notes)
        m_after += inked(escaped(note), color::quiet);
    if (!m_steps.reason.empty())
        m_after += heading(tr("WHY")) + QStringLiteral("<div>%1</div>").arg(escaped(m_steps.reason));
    const auto uses = session.program().precedents(at, 60), used = session.program().dependents(at, 60);
    m_after +=
        limitHtml(view, cell) + cautionsHtml(m_steps) + sourcesHtml(view, session.workbook(), !uses.empty());
    if (!uses.empty())
        m_after += heading(tr("USES")) + cellLinks(session, at.sheet, uses);
    if (!used.empty())
        m_after += heading(tr("USED BY")) + cellLinks(session, at.sheet, used);
    if (cell && !cell->beside().note.empty())
        m_after += heading(tr("NOTE")) + QStringLiteral("<div>%1</div>").arg(escaped(cell->beside().note));
    write();
    verticalScrollBar()->setValue(0);
}

void CalculationPane::showChart(const Session &session, const ChartView &view)
{
    m_steps = {};
    m_before = inked(tr("CHART: %1").arg(escaped(view.chart.title)), color::quiet);
    m_after.clear();
    if (view.error)
        m_after += inked(markGlyph(Mark::error) + escaped(view.error->words), color::outside);
    if (!view.stop.empty())
        m_after +=
            inked(QString::fromUtf8(stateGlyph(LimitState::outside)) + escaped(view.stop), color::outside);
    const auto row = [](const QString &words) { return QStringLiteral("<div>%1</div>").arg(words); };
    if (!view.series.empty()) {
        m_after += heading(tr("DRAWN, WITH THE LAST VALUE"));
        for (const ChartSeries &series : view.series)
            m_after += row(escaped(series.title + "  " + series.end));
        m_after +=
            heading(tr("ACROSS")) + row(escaped(view.xTitle)) + heading(tr("UP")) + row(escaped(view.yTitle));
    }
    std::vector<CellAt> columns;
    std::vector<std::string> references{view.chart.x};
    for (const Plot &plot : view.chart.plots)
        references.push_back(plot.reference);
    for (const std::string &reference : references) {
        // The first cell of each column that is drawn: from there the numbers can be followed.
        const std::string column = reference.substr(0, reference.find('['));
        if (const auto at = session.find(column + "[1]");
            at && std::find(columns.begin(), columns.end(), *at) == columns.end())
            columns.push_back(*at);
    }
    if (!columns.empty())
        m_after += heading(tr("READ FROM")) + cellLinks(session, noSheet, columns);
    write();
    verticalScrollBar()->setValue(0);
}

void CalculationPane::showHelp(const QString &title, const QString &text)
{
    m_steps = {};
    m_before = inked(title.toHtmlEscaped(), color::quiet);
    m_after = QStringLiteral("<pre style='white-space:pre-wrap;margin-top:10px'>%1</pre>")
                  .arg(text.toHtmlEscaped());
    write();
    verticalScrollBar()->setValue(0);
}

void CalculationPane::showWords(const QString &title, const QString &before, const QList<Word> &words)
{
    m_steps = {};
    m_before = inked(title.toHtmlEscaped(), color::quiet) +
               QStringLiteral("<div style='margin-top:10px'>%1</div>").arg(before.toHtmlEscaped());
    m_after.clear();
    for (const Word &row : words)
        m_after += QStringLiteral("<div style='margin-top:6px'><a style='color:%1' "
                                  "href='word:%2'>%2</a><br>%3</div>")
                       .arg(color::given.name(), row.word.toHtmlEscaped(), row.meaning.toHtmlEscaped());
    write();
    verticalScrollBar()->setValue(0);
}

void CalculationPane::followed(const QUrl &link)
{
    if (link.scheme() == QLatin1String("word"))
        emit wordWanted(link.path());
    if (link.scheme() != QLatin1String("cell"))
        return;
    const auto parts = link.path().split(QLatin1Char(','));
    if (parts.size() == 3)
        emit cellWanted({parts[0].toUInt(), parts[1].toUInt(), parts[2].toUInt()});
}

} // namespace puteal::desk
