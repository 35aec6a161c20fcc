/// The slip: live formula, units and result, words for an error, and up to three tested ways out.
#include "desk/slip.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>

#include "desk/look.h"

namespace puteal::desk
{

namespace
{

QLabel *rowName(const QString &text, QWidget *parent)
{
    auto *label = new QLabel(text, parent);
    QPalette palette = label->palette();
    palette.setColor(QPalette::WindowText, color::quiet);
    label->setPalette(palette);
    return label;
}

} // namespace

Slip::Slip(QWidget *parent)
    : QFrame(parent), m_edit(new FormulaEdit(this)), m_firstName(rowName(tr("formula"), this)),
      m_call(new QLabel(this)), m_unitsName(rowName(tr("units"), this)), m_units(new QLabel(this)),
      m_resultName(rowName(tr("result"), this)),
      m_keys(rowName(tr("Ctrl+Space offers words, Tab takes one · F1 explains · Alt+1 takes the first way "
                        "out · Enter keeps · Esc leaves"),
                     this)),
      m_result(new MarkedWords(this)), m_hint(new MarkedWords(this))
{
    setObjectName(QStringLiteral("slip"));
    setAccessibleName(tr("formula, units and result"));
    setAutoFillBackground(true);
    QPalette palette = this->palette();
    palette.setColor(QPalette::Window, color::paper);
    palette.setColor(QPalette::Base, color::paper);
    palette.setColor(QPalette::Text, color::text);
    setPalette(palette);
    m_units->setTextFormat(Qt::PlainText);
    m_units->setWordWrap(true);
    m_units->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_result->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    QPalette ink = m_units->palette();
    ink.setColor(QPalette::WindowText, color::quiet);
    m_units->setPalette(ink);
    m_result->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_call->setTextFormat(Qt::RichText);
    m_call->setWordWrap(true);
    m_call->setPalette(ink);
    build();
    useFont(font());
    connect(m_edit, &QPlainTextEdit::textChanged, this, &Slip::refresh);
    connect(m_edit, &QPlainTextEdit::cursorPositionChanged, this, [this] {
        const bool told = !m_callWords.isEmpty();
        tellCall();
        if (told != !m_callWords.isEmpty()) {
            adjustSize();
            emit heightChanged();
        }
    });
    connect(m_edit, &FormulaEdit::taken, this, &Slip::taken);
    connect(m_edit, &FormulaEdit::left, this, &Slip::left);
    connect(m_edit, &FormulaEdit::helpWanted, this, &Slip::helpWanted);
    connect(m_edit, &FormulaEdit::fixWanted, this, &Slip::takeFix);
    hide();
}

void Slip::build()
{
    auto *grid = new QGridLayout(this);
    grid->setContentsMargins(10, 8, 10, 8);
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(3);
    grid->addWidget(m_firstName, 0, 0, Qt::AlignTop);
    grid->addWidget(m_edit, 0, 1);
    grid->addWidget(m_call, 1, 1);
    grid->addWidget(m_unitsName, 2, 0, Qt::AlignTop);
    grid->addWidget(m_units, 2, 1);
    grid->addWidget(m_resultName, 3, 0, Qt::AlignTop);
    grid->addWidget(m_result, 3, 1);
    auto *fixes = new QHBoxLayout;
    fixes->setSpacing(8);
    for (int i = 0; i < 3; ++i) {
        auto *button = new QPushButton(this);
        button->setFocusPolicy(Qt::NoFocus);
        button->hide();
        connect(button, &QPushButton::clicked, this, [this, i] { takeFix(i); });
        fixes->addWidget(button);
        m_fixes += button;
    }
    fixes->addStretch(1);
    grid->addLayout(fixes, 4, 1);
    grid->addWidget(m_hint, 5, 1);
    grid->addLayout(buildEnd(), 6, 1);
    grid->setColumnStretch(1, 1);
}

/// The keys in words, and what the mouse needs to get out.
QHBoxLayout *Slip::buildEnd()
{
    auto *end = new QHBoxLayout;
    end->setSpacing(8);
    m_keys->setWordWrap(true);
    end->addWidget(m_keys, 1);
    auto *keep = new QPushButton(tr("Keep"), this), *leave = new QPushButton(tr("Leave"), this);
    for (QPushButton *button : {keep, leave}) {
        button->setFocusPolicy(Qt::NoFocus);
        end->addWidget(button, 0, Qt::AlignBottom);
    }
    keep->setToolTip(tr("keeps what is typed"));
    leave->setToolTip(tr("leaves the cell as it was"));
    connect(keep, &QPushButton::clicked, this, [this] { emit taken(0, 0); });
    connect(leave, &QPushButton::clicked, this, &Slip::left);
    return end;
}

void Slip::setAcross(int width)
{
    setFixedWidth(width);
    m_keys->setVisible(width > fontMetrics().averageCharWidth() * 76);
}

void Slip::useFont(const QFont &base)
{
    setFont(base);
    m_edit->setFont(fixedFont(base));
    m_units->setFont(fixedFont(base));
    m_result->setFont(fixedFont(base));
    m_hint->setFont(base);
    m_call->setFont(smallFont(base));
    m_keys->setFont(smallFont(base));
    refresh();
}

/// The frame tells the state by its stroke as well as by its color.
void Slip::paintEvent(QPaintEvent *event)
{
    QFrame::paintEvent(event);
    Qt::PenStyle stroke = Qt::SolidLine;
    if (m_state != Mark::none)
        stroke = m_state == Mark::error   ? Qt::DashLine
                 : m_state == Mark::waits ? Qt::DotLine
                                          : Qt::DashDotLine;
    QPainter painter(this);
    painter.setPen(QPen(m_state == Mark::none ? color::given : markColor(m_state), 2, stroke));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
}

void Slip::open(const Session *session, const CellAt &at, const QString &text, bool words)
{
    m_session = session;
    m_at = at;
    m_words = words;
    m_open = true;
    m_firstName->setText(words ? tr("words") : tr("formula"));
    m_unitsName->setVisible(!words);
    m_units->setVisible(!words);
    m_edit->setPlace(session, at, words);
    m_edit->setPlainText(text);
    QTextCursor end = m_edit->textCursor();
    end.movePosition(QTextCursor::End);
    m_edit->setTextCursor(end);
    show();
    raise();
    m_edit->setFocus();
    refresh();
}

void Slip::close()
{
    m_open = false;
    m_used.clear();
    hide();
    emit usedChanged();
}

void Slip::takeFix(int index)
{
    const auto i = static_cast<std::size_t>(index);
    if (i >= m_offered.size())
        return;
    std::string text = m_edit->toPlainText().toStdString();
    const Fix fix = m_offered[i];
    if (fix.span.end > text.size() || fix.span.begin > fix.span.end)
        return;
    text.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
    QTextCursor cursor = m_edit->textCursor();
    cursor.select(QTextCursor::Document);
    cursor.insertText(fromUtf8(text));
    m_edit->setFocus();
}

void Slip::refresh()
{
    if (!m_open || !m_session)
        return;
    const SlipView view = m_session->slip(m_at, m_edit->toPlainText().toStdString());
    const auto &error = view.preview.error;
    m_edit->markError(error);
    m_units->setText(fromUtf8(view.units));
    m_state = error ? markOf(*error) : view.preview.cautions.empty() ? Mark::none : Mark::caution;
    m_result->say(error ? m_state : Mark::none, fromUtf8(view.result));
    m_offered.clear();
    if (error)
        m_offered = error->fixes;
    offerFixes();
    tellCall();
    tellHints(view);
    lightUsed(view);
    m_edit->setFixedHeight(m_edit->wantedHeight());
    adjustSize();
    update();
    emit heightChanged();
}

void Slip::refuse(const Error &error)
{
    m_state = Mark::error;
    m_result->say(Mark::error, fromUtf8(errorLine(error)));
    m_edit->markError(error);
    m_offered = error.fixes;
    offerFixes();
    adjustSize();
    update();
    emit heightChanged();
}

void Slip::offerFixes()
{
    for (int i = 0; i < m_fixes.size(); ++i) {
        const bool there = static_cast<std::size_t>(i) < m_offered.size();
        m_fixes[i]->setVisible(there);
        if (!there)
            continue;
        const Fix &fix = m_offered[static_cast<std::size_t>(i)];
        const QString words = fromUtf8(fix.words.empty() ? fix.text : fix.words);
        // A long way out is cut on the button and told whole when the pointer rests on it.
        const QString cut = QFontMetrics(m_fixes[i]->font())
                                .elidedText(words, Qt::ElideRight, std::max(160, width() / 3 - 90));
        m_fixes[i]->setText(
            tr("Alt+%1  %2").arg(i + 1).arg(QString(cut).replace(QLatin1Char('&'), QStringLiteral("&&"))));
        m_fixes[i]->setToolTip(words.toHtmlEscaped());
    }
}

/// The call round the caret; the argument that is typed is bold and underlined.
void Slip::tellCall()
{
    m_callWords.clear();
    CallHint hint;
    if (m_open && m_session)
        hint = m_session->callHint(m_at, m_edit->toPlainText().toStdString(),
                                   static_cast<std::size_t>(m_edit->caretByte()));
    m_call->setVisible(!hint.function.empty());
    if (hint.function.empty())
        return;
    QStringList plain, rich;
    for (std::size_t i = 0; i < hint.arguments.size(); ++i) {
        const QString words = fromUtf8(hint.arguments[i]);
        plain += words;
        rich += i == hint.current ? QStringLiteral("<b><u>%1</u></b>").arg(words.toHtmlEscaped())
                                  : words.toHtmlEscaped();
    }
    const QString name = fromUtf8(hint.function);
    const QString end = hint.meaning.empty() ? QString() : tr(" · now: %1").arg(fromUtf8(hint.meaning));
    m_callWords = QStringLiteral("%1(%2)%3").arg(name, plain.join(QStringLiteral(", ")), end);
    m_call->setText(QStringLiteral("%1(%2)%3")
                        .arg(name.toHtmlEscaped(), rich.join(QStringLiteral(", ")), end.toHtmlEscaped()));
    m_call->setAccessibleName(m_callWords);
}

void Slip::offerAtOpening(bool typed)
{
    const Attributes beside = m_session->workbook().sheets[m_at.sheet].effective(m_at.column, m_at.line);
    if (typed)
        m_edit->offer(Offer::whileTyping);
    else if (!m_words && (!beside.choices.empty() || !beside.list.empty()) &&
             !m_session->view(m_at).isFormula)
        m_edit->offer(Offer::whenAsked);
}

void Slip::tellHints(const SlipView &view)
{
    QStringList hints;
    for (const Caution &caution : view.preview.cautions)
        hints += fromUtf8(caution.words);
    if (view.preview.tree)
        for (const Caution &hint : view.preview.tree->hints)
            hints += fromUtf8(hint.words);
    if (!view.preview.reason.empty())
        hints += fromUtf8(view.preview.reason);
    m_hint->say(view.preview.cautions.empty() ? Mark::none : Mark::caution, hints.join(QLatin1Char('\n')));
    m_hint->setVisible(!hints.isEmpty());
}

void Slip::lightUsed(const SlipView &view)
{
    m_used.clear();
    if (view.preview.binding)
        for (const BoundReference &reference : view.preview.binding->references) {
            if (!reference.isRange) {
                m_used.push_back(reference.cell);
                continue;
            }
            for (std::uint32_t l = reference.range.first; l <= reference.range.last && m_used.size() < 500;
                 ++l)
                m_used.push_back({reference.range.sheet, reference.range.column, l});
        }
    emit usedChanged();
}

} // namespace puteal::desk
