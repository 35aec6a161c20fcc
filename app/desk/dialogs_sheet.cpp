/// Dialogs for columns, sheets, the workbook's title, and the word to explain.
#include <QComboBox>
#include <QLineEdit>
#include <QSpinBox>

#include "base/text.h"
#include "desk/dialogs.h"
#include "desk/form.h"
#include "desk/form_fields.h"
#include "desk/look.h"

namespace puteal::desk
{

namespace
{

/// The field an edit of a column or sheet was refused for.
QWidget *blamed(const Error &error, QWidget *title, QWidget *key, QWidget *unit)
{
    switch (error.kind) {
    case ErrorKind::name:
        return key;
    case ErrorKind::unit:
    case ErrorKind::substance:
    case ErrorKind::syntax:
        return unit ? unit : title;
    default:
        return title;
    }
}

struct ColumnFields {
    QLineEdit *title, *key;
    QComboBox *kind;
    QLineEdit *unit;
    QSpinBox *width;
};

ColumnFields addColumnFields(Form &form, const Column &column, bool isNew)
{
    ColumnFields fields{};
    fields.title = form.add(QObject::tr("Title"), new QLineEdit(fromUtf8(column.title), &form));
    fields.key = form.add(QObject::tr("Key (for formulas)"), new QLineEdit(fromUtf8(column.key), &form));
    fields.kind = new QComboBox(&form);
    fields.kind->addItem(QObject::tr("amounts: quantities and formulas"));
    fields.kind->addItem(QObject::tr("words: text"));
    fields.kind->setCurrentIndex(column.kind == ColumnKind::words ? 1 : 0);
    fields.kind->setEnabled(isNew);
    form.add(QObject::tr("Holds"), fields.kind);
    fields.unit = form.add(QObject::tr("Set unit of the whole column"),
                           new QLineEdit(fromUtf8(column.attributes.unit), &form));
    fields.width = form.add(QObject::tr("Width in letters"), new QSpinBox(&form));
    fields.width->setRange(4, 80);
    fields.width->setValue(static_cast<int>(column.width));
    return fields;
}

Column columnOf(const ColumnFields &fields, Column column)
{
    column.title = textOf(fields.title);
    column.key = textOf(fields.key);
    column.kind = fields.kind->currentIndex() == 1 ? ColumnKind::words : ColumnKind::amounts;
    column.attributes.unit = textOf(fields.unit);
    column.width = static_cast<std::uint32_t>(fields.width->value());
    return column;
}

std::optional<Form::Problem> columnProblem(const std::optional<Error> &error, const ColumnFields &fields)
{
    return error ? problemOf(error, blamed(*error, fields.title, fields.key, fields.unit)) : std::nullopt;
}

} // namespace

void askNewColumn(QWidget *parent, const Session &session, std::uint32_t sheet, std::uint32_t at,
                  const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("New column"),
              QObject::tr("A column has a title for people and a key for formulas."));
    Column column;
    column.key = freeColumnKey(session.workbook().sheets[sheet]);
    const ColumnFields fields = addColumnFields(form, column, true);
    form.ask([&] { return columnProblem(carryOut(AddColumn{sheet, at, columnOf(fields, column)}), fields); });
}

void askColumn(QWidget *parent, const Session &session, std::uint32_t sheet, std::uint32_t at,
               const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Column"), QObject::tr("Formulas follow a new key."));
    const Column column = session.workbook().sheets[sheet].column(at);
    const ColumnFields fields = addColumnFields(form, column, false);
    form.ask([&] {
        return columnProblem(carryOut(ChangeColumn{sheet, at, columnOf(fields, column)}), fields);
    });
}

void askNewSheet(QWidget *parent, std::uint32_t at, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("New sheet"),
              QObject::tr(
                  "A sheet is one step of the work. Its key stands before a name in other sheets: key.name"));
    auto *title = form.add(QObject::tr("Title"), new QLineEdit(&form));
    auto *key = form.add(QObject::tr("Key"), new QLineEdit(&form));
    QObject::connect(title, &QLineEdit::textEdited, key, [key](const QString &text) {
        key->setText(fromUtf8(nameFromWords(text.toStdString())));
    });
    form.ask([&] {
        const auto error = carryOut(AddSheet{at, textOf(key), textOf(title)});
        return error ? problemOf(error, blamed(*error, title, key, nullptr)) : std::nullopt;
    });
}

void askSheet(QWidget *parent, const Session &session, std::uint32_t sheet, const CarryOut &carryOut)
{
    const Sheet &old = session.workbook().sheets[sheet];
    Form form(parent, QObject::tr("Sheet"), QObject::tr("Formulas follow a new key."));
    auto *title = form.add(QObject::tr("Title"), new QLineEdit(fromUtf8(old.title()), &form));
    auto *key = form.add(QObject::tr("Key"), new QLineEdit(fromUtf8(old.key()), &form));
    form.ask([&] {
        const auto error = carryOut(ChangeSheet{sheet, textOf(key), textOf(title)});
        return error ? problemOf(error, blamed(*error, title, key, nullptr)) : std::nullopt;
    });
}

void askTitle(QWidget *parent, const Session &session, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Title"), QObject::tr("The title stands over the window and every page."));
    auto *title = form.add(QObject::tr("Title of the workbook"),
                           new QLineEdit(fromUtf8(session.workbook().title), &form));
    title->selectAll();
    form.ask([&] { return problemOf(carryOut(SetTitle{textOf(title)}), title); });
}

void askHelp(QWidget *parent, const std::function<bool(const QString &)> &explain)
{
    Form form(parent, QObject::tr("Function help"),
              QObject::tr("The help of a function, a unit or a name stands in the calculation pane."));
    auto *word = form.add(QObject::tr("Word"), new QLineEdit(&form));
    word->setPlaceholderText(QStringLiteral("compensated_hardness"));
    form.ask([&]() -> std::optional<Form::Problem> {
        if (explain(word->text()))
            return {};
        return Form::Problem{
            word, QObject::tr("nothing is known about \"%1\"; formulas complete words while they are typed")
                      .arg(word->text())};
    });
}

} // namespace puteal::desk
