/// The calculation as text with links to the cells it uses.
#include "desk/calculation_pane.h"

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
            break;
        out += rest.left(cut);
        rest = rest.mid(cut);
    }
    out += rest;
    return out;
}

QString fixedLines(const std::vector<std::string> &lines, const char *first)
{
    QString out;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const QStringList pieces = brokenAt(fromUtf8(lines[i]), 31);
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
        const std::string name = session.workbook().cell(at)->beside().name;
        QString words = name.empty() ? fromUtf8(session.labelOf(at)) : fromUtf8(name);
        if (at.sheet != sheet)
            words = fromUtf8(session.workbook().sheets[at.sheet].key()) + QLatin1Char('.') + words;
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

void CalculationPane::show(const Session &session, const CellAt &at)
{
    const Calculation steps = session.calculation(at);
    const CellView view = session.view(at);
    QString html = QStringLiteral("<div style='color:%1'>%2</div>")
                       .arg(color::quiet.name(),
                            tr("CALCULATION: line %1, %2").arg(at.line + 1).arg(escaped(steps.title)));
    if (!steps.formula.empty()) {
        html += QStringLiteral("<div style='margin-top:10px'><code>%1</code></div>").arg(escaped(steps.name));
        html += fixedLines(steps.formula, "= ");
        html += fixedLines(steps.putIn, "= ");
        if (steps.terms.size() > 1)
            html += fixedLines(steps.terms, "= ");
    } else if (!view.typed.empty()) {
        html += QStringLiteral("<div style='margin-top:10px'>%1</div>").arg(tr("typed in"));
    }
    if (!steps.error.empty())
        html += QStringLiteral("<div style='margin-top:10px;color:%1'>%2</div>")
                    .arg(color::outside.name(), escaped(steps.error));
    else if (!steps.result.empty())
        html += QStringLiteral("<div style='margin-top:10px;padding-bottom:3px;border-bottom:3px double "
                               "%1'><b><code>%2</code></b></div>")
                    .arg(color::text.name(), escaped(steps.result));
    for (const auto &note : steps.notes)
        html += QStringLiteral("<div style='color:%1'>%2</div>").arg(color::quiet.name(), escaped(note));
    if (!steps.reason.empty())
        html += heading(tr("WHY")) + QStringLiteral("<div>%1</div>").arg(escaped(steps.reason));
    if (view.state != LimitState::noLimit)
        html += heading(tr("LIMIT")) + QStringLiteral("<div style='color:%1'>%2%3</div>")
                                           .arg(stateColor(view.state).name(),
                                                QString::fromUtf8(stateGlyph(view.state)),
                                                escaped(view.stateWords));
    const Cell *cell = session.workbook().cell(at);
    if (cell && cell->beside().limit && !cell->beside().limit->words.empty())
        html += QStringLiteral("<div>%1</div>").arg(escaped(cell->beside().limit->words));
    if (!steps.cautions.empty()) {
        html += heading(tr("CAUTIONS"));
        const std::size_t shown = std::min<std::size_t>(steps.cautions.size(), 6);
        for (std::size_t i = 0; i < shown; ++i)
            html += QStringLiteral("<div style='color:%1'>▲ %2</div>")
                        .arg(color::near.name(), escaped(steps.cautions[i]));
        if (steps.cautions.size() > shown)
            html += tr("and %1 more where they arise").arg(steps.cautions.size() - shown);
    }
    if (!view.sources.empty()) {
        html += heading(tr("SOURCES"));
        for (const auto &mark : view.sources) {
            const SourceMark *source = session.workbook().sourceById(mark);
            html += QStringLiteral("<div>%1&nbsp; %2</div>")
                        .arg(escaped(mark), source ? escaped(source->kind + ": " + source->words)
                                                   : tr("worked out from the cells below"));
        }
    }
    const auto uses = session.program().precedents(at, 60), used = session.program().dependents(at, 60);
    if (!uses.empty())
        html += heading(tr("USES")) + cellLinks(session, at.sheet, uses);
    if (!used.empty())
        html += heading(tr("USED BY")) + cellLinks(session, at.sheet, used);
    if (cell && !cell->beside().note.empty())
        html += heading(tr("NOTE")) + QStringLiteral("<div>%1</div>").arg(escaped(cell->beside().note));
    setHtml(html);
}

void CalculationPane::showHelp(const QString &title, const QString &text)
{
    setHtml(QStringLiteral(
                "<div style='color:%1'>%2</div><pre style='white-space:pre-wrap;margin-top:10px'>%3</pre>")
                .arg(color::quiet.name(), title.toHtmlEscaped(), text.toHtmlEscaped()));
}

void CalculationPane::followed(const QUrl &link)
{
    if (link.scheme() != QLatin1String("cell"))
        return;
    const auto parts = link.path().split(QLatin1Char(','));
    if (parts.size() == 3)
        emit cellWanted({parts[0].toUInt(), parts[1].toUInt(), parts[2].toUInt()});
}

} // namespace puteal::desk
