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

Slip::Slip(QWidget *parent) : QFrame(parent)
{
    setObjectName(QStringLiteral("slip"));
    setAccessibleName(tr("formula, units and result"));
    setFrameShape(QFrame::Box);
    setLineWidth(2);
    setAutoFillBackground(true);
    QPalette palette = this->palette();
    palette.setColor(QPalette::Window, Qt::white);
    palette.setColor(QPalette::Base, Qt::white);
    palette.setColor(QPalette::WindowText, color::given);
    setPalette(palette);
    auto *grid = new QGridLayout(this);
    grid->setContentsMargins(10, 6, 10, 6);
    grid->setHorizontalSpacing(12);
    grid->setVerticalSpacing(3);
    m_edit = new FormulaEdit(this);
    m_edit->setFont(fixedFont(font()));
    const auto plain = [this](bool fixed) {
        auto *label = new QLabel(this);
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
        QPalette ink = label->palette();
        ink.setColor(QPalette::WindowText, color::text);
        label->setPalette(ink);
        if (fixed)
            label->setFont(fixedFont(font()));
        return label;
    };
    m_firstName = rowName(tr("formula"), this);
    m_unitsName = rowName(tr("units"), this);
    m_resultName = rowName(tr("result"), this);
    m_units = plain(true);
    m_result = plain(true);
    m_hint = plain(false);
    m_keys = rowName(tr("F1 explains · Tab takes a word · Enter keeps · Esc leaves"), this);
    m_keys->setFont(smallFont(font()));
    grid->addWidget(m_firstName, 0, 0, Qt::AlignTop);
    grid->addWidget(m_edit, 0, 1);
    grid->addWidget(m_unitsName, 1, 0, Qt::AlignTop);
    grid->addWidget(m_units, 1, 1);
    grid->addWidget(m_resultName, 2, 0, Qt::AlignTop);
    grid->addWidget(m_result, 2, 1);
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
    grid->addLayout(fixes, 3, 1);
    grid->addWidget(m_hint, 4, 1);
    grid->addWidget(m_keys, 5, 1);
    grid->setColumnStretch(1, 1);
    connect(m_edit, &QPlainTextEdit::textChanged, this, &Slip::refresh);
    connect(m_edit, &FormulaEdit::taken, this, &Slip::taken);
    connect(m_edit, &FormulaEdit::left, this, &Slip::left);
    connect(m_edit, &FormulaEdit::helpWanted, this, &Slip::helpWanted);
    hide();
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
    const std::string text = m_edit->toPlainText().toStdString();
    const SlipView view = m_session->slip(m_at, text);
    const auto &error = view.preview.error;
    m_edit->markError(error);
    m_units->setText(fromUtf8(view.units));
    m_result->setText(fromUtf8(view.result));
    QPalette ink = m_result->palette();
    ink.setColor(QPalette::WindowText, error ? color::outside : color::text);
    m_result->setPalette(ink);
    m_offered.clear();
    if (error)
        m_offered = error->fixes;
    for (int i = 0; i < m_fixes.size(); ++i) {
        const bool there = static_cast<std::size_t>(i) < m_offered.size();
        m_fixes[i]->setVisible(there);
        if (there) {
            const Fix &fix = m_offered[static_cast<std::size_t>(i)];
            const QString words = fromUtf8(fix.words.empty() ? fix.text : fix.words);
            // A long way out is cut on the button and told whole when the pointer rests on it.
            m_fixes[i]->setText(QFontMetrics(m_fixes[i]->font())
                                    .elidedText(words, Qt::ElideRight, std::max(160, width() / 3 - 50)));
            m_fixes[i]->setToolTip(words.toHtmlEscaped());
        }
    }
    QStringList hints;
    for (const Caution &caution : view.preview.cautions)
        hints += fromUtf8(caution.words);
    if (view.preview.tree)
        for (const Caution &hint : view.preview.tree->hints)
            hints += fromUtf8(hint.words);
    if (!view.preview.reason.empty())
        hints += fromUtf8(view.preview.reason);
    m_hint->setText(hints.join(QLatin1Char('\n')));
    m_hint->setVisible(!hints.isEmpty());
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
    m_edit->setFixedHeight(m_edit->wantedHeight());
    adjustSize();
    emit heightChanged();
}

} // namespace puteal::desk
