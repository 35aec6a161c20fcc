/// Fields, their complaints, Keep and Cancel.
#include "desk/form.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QPushButton>

#include "desk/marked_words.h"

namespace puteal::desk
{

Form::Form(QWidget *parent, const QString &title, const QString &words)
    : QDialog(parent), m_form(new QFormLayout(this))
{
    setWindowTitle(title);
    m_form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    auto *label = new QLabel(words, this);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    m_form->addRow(label);
    setMinimumWidth(fontMetrics().averageCharWidth() * 64);
}

void Form::addField(const QString &name, QWidget *field)
{
    field->setAccessibleName(name);
    m_form->addRow(name, field);
    auto *complaint = new MarkedWords(this);
    complaint->hide();
    m_form->addRow(complaint);
    m_complaints.insert(field, complaint);
}

bool Form::ask(const Keep &keep)
{
    auto *buttons = new QDialogButtonBox(this);
    buttons->addButton(tr("Keep"), QDialogButtonBox::AcceptRole)->setDefault(true);
    buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
    connect(buttons, &QDialogButtonBox::accepted, this, [this, keep] {
        if (const auto problem = keep())
            complain(*problem);
        else
            accept();
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    m_form->addRow(buttons);
    return exec() == QDialog::Accepted;
}

void Form::complain(const Problem &problem)
{
    for (auto it = m_complaints.begin(); it != m_complaints.end(); ++it) {
        const bool here = it.key() == problem.field;
        it.value()->say(here ? Mark::error : Mark::none, here ? problem.words : QString());
        it.value()->setVisible(here);
        it.key()->setAccessibleDescription(here ? problem.words : QString());
    }
    problem.field->setFocus();
    // Words wrap at the width there is; the dialog grows downwards for them.
    m_form->activate();
    resize(width(), std::max(height(), m_form->totalHeightForWidth(width())));
}

QString Form::complaintAt(QWidget *field) const
{
    const MarkedWords *words = m_complaints.value(field);
    return words ? words->text() : QString();
}

} // namespace puteal::desk
