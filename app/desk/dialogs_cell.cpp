/// Dialogs for what stands beside a cell: name, unit, choices, figures, note.
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSpinBox>

#include "base/text.h"
#include "desk/dialogs.h"
#include "desk/form.h"
#include "desk/form_fields.h"
#include "desk/look.h"

namespace puteal::desk
{

void askName(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Name"),
              QObject::tr(
                  "Formulas call the cell by its name. Small letters, digits and _; every formula that uses "
                  "the old name follows."));
    auto *name = form.add(QObject::tr("Name of %1").arg(labelOf(session, at)),
                          new QLineEdit(fromUtf8(besideOf(session, at).name), &form));
    if (name->text().isEmpty())
        name->setText(fromUtf8(nameFromWords(session.labelOf(at))));
    name->selectAll();
    form.ask([&] { return problemOf(carryOut(RenameCell{at, textOf(name)}), name); });
}

void askUnit(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(
        parent, QObject::tr("Set unit"),
        QObject::tr(
            "The unit this cell is held in: a bare number typed here takes it, and results are shown in "
            "it. Empty: none. For example mg/L as Fe, gal/day, $."));
    Attributes beside = besideOf(session, at);
    auto *unit = form.add(QObject::tr("Unit of %1").arg(labelOf(session, at)),
                          new QLineEdit(fromUtf8(beside.unit), &form));
    form.ask([&] {
        beside.unit = textOf(unit);
        return problemOf(carryOut(SetAttributes{at, beside}), unit);
    });
}

void askChoices(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(
        parent, QObject::tr("Choices"),
        QObject::tr("One word or phrase a line, the best first. Only these may be typed. Or name a list the "
                    "workbook declares."));
    Attributes beside = besideOf(session, at);
    auto *lists = new QComboBox(&form);
    lists->addItem(QObject::tr("these words"), QString());
    for (const auto &list : session.workbook().lists)
        lists->addItem(fromUtf8(list.name), fromUtf8(list.name));
    lists->setCurrentIndex(std::max(0, lists->findData(fromUtf8(beside.list))));
    form.add(QObject::tr("List"), lists);
    QStringList lines;
    for (const auto &word : beside.choices)
        lines += fromUtf8(word);
    auto *words = form.add(QObject::tr("Words"), new QPlainTextEdit(lines.join(QLatin1Char('\n')), &form));
    words->setTabChangesFocus(true);
    // Words under a list of the workbook would be dropped without a sound.
    const auto follow = [lists, words] { words->setEnabled(lists->currentData().toString().isEmpty()); };
    QObject::connect(lists, &QComboBox::currentIndexChanged, words, follow);
    follow();
    form.ask([&] {
        beside.list = lists->currentData().toString().toStdString();
        beside.choices.clear();
        if (beside.list.empty())
            for (const QString &line : words->toPlainText().split(QLatin1Char('\n'), Qt::SkipEmptyParts))
                if (!line.trimmed().isEmpty())
                    beside.choices.push_back(line.trimmed().toStdString());
        QWidget *field = beside.list.empty() ? static_cast<QWidget *>(words) : lists;
        return problemOf(carryOut(SetAttributes{at, beside}), field);
    });
}

void askFigures(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Figures"),
              QObject::tr("How the result is rounded for people; calculations use the full number."));
    Attributes beside = besideOf(session, at);
    auto *figures = form.add(QObject::tr("significant figures (0: as usual)"), new QSpinBox(&form));
    figures->setRange(0, 9);
    figures->setValue(beside.figures);
    auto *places = form.add(QObject::tr("or decimal places (-1: by figures)"), new QSpinBox(&form));
    places->setRange(-1, 9);
    places->setValue(beside.places);
    form.ask([&] {
        beside.places = places->value();
        beside.figures = places->value() >= 0 ? 0 : figures->value();
        return problemOf(carryOut(SetAttributes{at, beside}), figures);
    });
}

void askNote(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Note"), QObject::tr("A note stands in the calculation of the cell."));
    Attributes beside = besideOf(session, at);
    auto *note = form.add(QObject::tr("Note on %1").arg(labelOf(session, at)),
                          new QLineEdit(fromUtf8(beside.note), &form));
    form.ask([&] {
        beside.note = textOf(note);
        return problemOf(carryOut(SetAttributes{at, beside}), note);
    });
}

} // namespace puteal::desk
