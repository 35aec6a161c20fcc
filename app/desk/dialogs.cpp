/// The plain dialogs.
#include "desk/dialogs.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialog>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QSpinBox>

#include "base/text.h"
#include "desk/look.h"

namespace puteal::desk
{

namespace
{

/// A form with an explanation on top and Keep / Cancel below.
class Form : public QDialog
{
public:
    Form(QWidget *parent, const QString &title, const QString &words)
        : QDialog(parent), m_form(new QFormLayout(this))
    {
        setWindowTitle(title);
        auto *label = new QLabel(words, this);
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        m_form->addRow(label);
        setMinimumWidth(420);
    }
    template<class Field>
    Field *add(const QString &name, Field *field)
    {
        field->setAccessibleName(name);
        m_form->addRow(name, field);
        return field;
    }
    bool ask()
    {
        auto *buttons = new QDialogButtonBox(this);
        buttons->addButton(tr("Keep"), QDialogButtonBox::AcceptRole);
        buttons->addButton(tr("Cancel"), QDialogButtonBox::RejectRole);
        connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
        connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
        m_form->addRow(buttons);
        return exec() == QDialog::Accepted;
    }

private:
    QFormLayout *m_form;
};

QString label(const Session &session, const CellAt &at)
{
    return fromUtf8(session.labelOf(at));
}

Attributes attributesOf(const Session &session, const CellAt &at)
{
    return session.workbook().cell(at)->beside();
}

std::string textOf(const QLineEdit *field)
{
    return field->text().trimmed().toStdString();
}

} // namespace

std::optional<Edit> askName(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(parent, QObject::tr("Name"),
              QObject::tr(
                  "Formulas call the cell by its name. Small letters, digits and _; every formula that uses "
                  "the old name follows."));
    auto *name = form.add(QObject::tr("Name of %1").arg(label(session, at)),
                          new QLineEdit(fromUtf8(attributesOf(session, at).name), &form));
    if (name->text().isEmpty())
        name->setText(fromUtf8(nameFromWords(session.labelOf(at))));
    name->selectAll();
    if (!form.ask())
        return {};
    return RenameCell{at, textOf(name)};
}

std::optional<Edit> askUnit(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(
        parent, QObject::tr("Set unit"),
        QObject::tr(
            "The unit this cell is held in: a bare number typed here takes it, and results are shown in "
            "it. Empty: none. For example mg/L as Fe, gal/day, $."));
    Attributes attributes = attributesOf(session, at);
    auto *unit = form.add(QObject::tr("Unit of %1").arg(label(session, at)),
                          new QLineEdit(fromUtf8(attributes.unit), &form));
    if (!form.ask())
        return {};
    attributes.unit = textOf(unit);
    return SetAttributes{at, attributes};
}

std::optional<Edit> askChoices(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(
        parent, QObject::tr("Choices"),
        QObject::tr("One word or phrase a line, the best first. Only these may be typed. Or name a list the "
                    "workbook declares."));
    Attributes attributes = attributesOf(session, at);
    auto *lists = new QComboBox(&form);
    lists->addItem(QObject::tr("these words"), QString());
    for (const auto &list : session.workbook().lists)
        lists->addItem(fromUtf8(list.name), fromUtf8(list.name));
    lists->setCurrentIndex(std::max(0, lists->findData(fromUtf8(attributes.list))));
    form.add(QObject::tr("List"), lists);
    QStringList lines;
    for (const auto &word : attributes.choices)
        lines += fromUtf8(word);
    auto *words = form.add(QObject::tr("Words"), new QPlainTextEdit(lines.join(QLatin1Char('\n')), &form));
    words->setTabChangesFocus(true);
    if (!form.ask())
        return {};
    attributes.list = lists->currentData().toString().toStdString();
    attributes.choices.clear();
    if (attributes.list.empty())
        for (const QString &line : words->toPlainText().split(QLatin1Char('\n'), Qt::SkipEmptyParts))
            if (!line.trimmed().isEmpty())
                attributes.choices.push_back(line.trimmed().toStdString());
    return SetAttributes{at, attributes};
}

std::optional<Edit> askLimit(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(
        parent, QObject::tr("Limit"),
        QObject::tr(
            "The state within, near, outside or missing test comes from here. The bounds are formulas."));
    Attributes attributes = attributesOf(session, at);
    const LimitText old = attributes.limit.value_or(LimitText{});
    auto *kind = new QComboBox(&form);
    const char *const kinds[][2] = {{"", "no limit"}, {"<=", "at most"}, {">=", "at least"},
                                    {"<", "below"},   {">", "above"},    {"..", "between"}};
    for (const auto &row : kinds)
        kind->addItem(QObject::tr(row[1]), QLatin1String(row[0]));
    kind->setCurrentIndex(std::max(0, kind->findData(fromUtf8(old.comparison))));
    form.add(QObject::tr("%1 must be").arg(label(session, at)), kind);
    auto *low = form.add(QObject::tr("bound (between: the lower)"), new QLineEdit(fromUtf8(old.low), &form));
    auto *high =
        form.add(QObject::tr("upper bound (between only)"), new QLineEdit(fromUtf8(old.high), &form));
    auto *near = form.add(QObject::tr("near band, %"), new QLineEdit(fromUtf8(old.near), &form));
    near->setPlaceholderText(QStringLiteral("20"));
    auto *health =
        form.add(QObject::tr("health"),
                 new QCheckBox(QObject::tr("a health result: outside stops the recommendation"), &form));
    health->setChecked(old.health);
    auto *words = form.add(QObject::tr("words"), new QLineEdit(fromUtf8(old.words), &form));
    if (!form.ask())
        return {};
    LimitText limit = old;
    limit.comparison = kind->currentData().toString().toStdString();
    limit.low = textOf(low);
    limit.high = limit.comparison == ".." ? textOf(high) : std::string();
    limit.near = textOf(near);
    limit.health = health->isChecked();
    limit.words = textOf(words);
    attributes.limit = limit.comparison.empty() || limit.low.empty() ? std::nullopt : std::optional(limit);
    return SetAttributes{at, attributes};
}

std::vector<Edit> askSources(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(parent, QObject::tr("Source marks"),
              QObject::tr("Where the number comes from. Tick the marks that hold, or declare a new one."));
    Attributes attributes = attributesOf(session, at);
    auto *list = form.add(QObject::tr("Sources of %1").arg(label(session, at)), new QListWidget(&form));
    for (const auto &source : session.workbook().sources) {
        auto *item =
            new QListWidgetItem(fromUtf8(source.id + "  " + source.kind + ": " + source.words), list);
        item->setData(Qt::UserRole, fromUtf8(source.id));
        const bool on = std::find(attributes.sources.begin(), attributes.sources.end(), source.id) !=
                        attributes.sources.end();
        item->setCheckState(on ? Qt::Checked : Qt::Unchecked);
    }
    auto *kind = new QComboBox(&form);
    kind->addItem(QObject::tr("no new source"), QString());
    for (const char letter : std::string("LFMDSHEPTRCAW"))
        kind->addItem(QStringLiteral("%1  %2").arg(QLatin1Char(letter)).arg(fromUtf8(markWord(letter))),
                      QString(QLatin1Char(letter)));
    form.add(QObject::tr("New"), kind);
    auto *words = form.add(QObject::tr("its words"), new QLineEdit(&form));
    words->setPlaceholderText(QObject::tr("sheet 7, sampled 2026-05-12 at the raw tap"));
    if (!form.ask())
        return {};
    attributes.sources.clear();
    for (int i = 0; i < list->count(); ++i)
        if (list->item(i)->checkState() == Qt::Checked)
            attributes.sources.push_back(list->item(i)->data(Qt::UserRole).toString().toStdString());
    std::vector<Edit> edits;
    if (const std::string letter = kind->currentData().toString().toStdString();
        !letter.empty() && !textOf(words).empty()) {
        auto sources = session.workbook().sources;
        int number = 1;
        while (session.workbook().sourceById(letter + std::to_string(number)))
            ++number;
        const std::string id = letter + std::to_string(number);
        sources.push_back({id, std::string(markWord(letter[0])), textOf(words)});
        attributes.sources.push_back(id);
        edits.push_back(SetSources{std::move(sources)});
    }
    edits.push_back(SetAttributes{at, attributes});
    return edits;
}

std::optional<Edit> askFigures(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(parent, QObject::tr("Figures"),
              QObject::tr("How the result is rounded for people; calculations use the full number."));
    Attributes attributes = attributesOf(session, at);
    auto *figures = form.add(QObject::tr("significant figures (0: as usual)"), new QSpinBox(&form));
    figures->setRange(0, 9);
    figures->setValue(attributes.figures);
    auto *places = form.add(QObject::tr("or decimal places (-1: by figures)"), new QSpinBox(&form));
    places->setRange(-1, 9);
    places->setValue(attributes.places);
    if (!form.ask())
        return {};
    attributes.places = places->value();
    attributes.figures = places->value() >= 0 ? 0 : figures->value();
    return SetAttributes{at, attributes};
}

std::optional<Edit> askNote(QWidget *parent, const Session &session, const CellAt &at)
{
    Form form(parent, QObject::tr("Note"), QObject::tr("A note stands in the calculation of the cell."));
    Attributes attributes = attributesOf(session, at);
    auto *note = form.add(QObject::tr("Note on %1").arg(label(session, at)),
                          new QLineEdit(fromUtf8(attributes.note), &form));
    if (!form.ask())
        return {};
    attributes.note = textOf(note);
    return SetAttributes{at, attributes};
}

namespace
{

bool fillColumn(Form &form, Column &column, bool isNew)
{
    auto *title = form.add(QObject::tr("Title"), new QLineEdit(fromUtf8(column.title), &form));
    auto *key = form.add(QObject::tr("Key (for formulas)"), new QLineEdit(fromUtf8(column.key), &form));
    auto *kind = new QComboBox(&form);
    kind->addItem(QObject::tr("amounts: quantities and formulas"));
    kind->addItem(QObject::tr("words: text"));
    kind->setCurrentIndex(column.kind == ColumnKind::words ? 1 : 0);
    kind->setEnabled(isNew);
    form.add(QObject::tr("Holds"), kind);
    auto *unit = form.add(QObject::tr("Set unit of the whole column"),
                          new QLineEdit(fromUtf8(column.attributes.unit), &form));
    auto *width = form.add(QObject::tr("Width in letters"), new QSpinBox(&form));
    width->setRange(4, 80);
    width->setValue(static_cast<int>(column.width));
    if (!form.ask())
        return false;
    column.title = textOf(title);
    column.key = textOf(key);
    column.kind = kind->currentIndex() == 1 ? ColumnKind::words : ColumnKind::amounts;
    column.attributes.unit = textOf(unit);
    column.width = static_cast<std::uint32_t>(width->value());
    return true;
}

} // namespace

std::optional<Edit> askNewColumn(QWidget *parent, const Session &session, std::uint32_t sheet,
                                 std::uint32_t at)
{
    Form form(parent, QObject::tr("New column"),
              QObject::tr("A column has a title for people and a key for formulas."));
    Column column;
    column.key = freeColumnKey(session.workbook().sheets[sheet]);
    if (!fillColumn(form, column, true))
        return {};
    return AddColumn{sheet, at, column};
}

std::optional<Edit> askColumn(QWidget *parent, const Session &session, std::uint32_t sheet, std::uint32_t at)
{
    Form form(parent, QObject::tr("Column"), QObject::tr("Formulas follow a new key."));
    Column column = session.workbook().sheets[sheet].column(at);
    if (!fillColumn(form, column, false))
        return {};
    return ChangeColumn{sheet, at, column};
}

std::optional<Edit> askNewSheet(QWidget *parent, const Session &, std::uint32_t at)
{
    Form form(parent, QObject::tr("New sheet"),
              QObject::tr(
                  "A sheet is one step of the work. Its key stands before a name in other sheets: key.name"));
    auto *title = form.add(QObject::tr("Title"), new QLineEdit(&form));
    auto *key = form.add(QObject::tr("Key"), new QLineEdit(&form));
    QObject::connect(title, &QLineEdit::textEdited, key, [key](const QString &text) {
        key->setText(fromUtf8(nameFromWords(text.toStdString())));
    });
    if (!form.ask())
        return {};
    return AddSheet{at, textOf(key), textOf(title)};
}

std::optional<Edit> askSheet(QWidget *parent, const Session &session, std::uint32_t sheet)
{
    const Sheet &old = session.workbook().sheets[sheet];
    Form form(parent, QObject::tr("Sheet"), QObject::tr("Formulas follow a new key."));
    auto *title = form.add(QObject::tr("Title"), new QLineEdit(fromUtf8(old.title()), &form));
    auto *key = form.add(QObject::tr("Key"), new QLineEdit(fromUtf8(old.key()), &form));
    if (!form.ask())
        return {};
    return ChangeSheet{sheet, textOf(key), textOf(title)};
}

} // namespace puteal::desk
