/// Dialogs for the limit of a cell and for its source marks.
#include <algorithm>

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QListWidget>

#include "base/number.h"
#include "desk/dialogs.h"
#include "desk/form.h"
#include "desk/form_fields.h"
#include "desk/look.h"

namespace puteal::desk
{

namespace
{

struct LimitFields {
    QComboBox *kind;
    QLineEdit *low, *high, *near;
    QCheckBox *health;
    QLineEdit *words;
};

LimitFields addLimitFields(Form &form, const QString &label, const LimitText &old)
{
    LimitFields fields{};
    fields.kind = new QComboBox(&form);
    const char *const kinds[][2] = {{"", "no limit"}, {"<=", "at most"}, {">=", "at least"},
                                    {"<", "below"},   {">", "above"},    {"..", "between"}};
    for (const auto &row : kinds)
        fields.kind->addItem(QObject::tr(row[1]), QLatin1String(row[0]));
    fields.kind->setCurrentIndex(std::max(0, fields.kind->findData(fromUtf8(old.comparison))));
    form.add(QObject::tr("%1 must be").arg(label), fields.kind);
    fields.low = form.add(QObject::tr("bound (between: the lower)"), new QLineEdit(fromUtf8(old.low), &form));
    fields.high =
        form.add(QObject::tr("upper bound (between only)"), new QLineEdit(fromUtf8(old.high), &form));
    fields.near = form.add(QObject::tr("near band, %"), new QLineEdit(fromUtf8(old.near), &form));
    fields.near->setPlaceholderText(QStringLiteral("20"));
    fields.health =
        form.add(QObject::tr("health"),
                 new QCheckBox(QObject::tr("a health result: outside stops the recommendation"), &form));
    fields.health->setChecked(old.health);
    fields.words = form.add(QObject::tr("words"), new QLineEdit(fromUtf8(old.words), &form));
    const auto follow = [kind = fields.kind, high = fields.high] {
        high->setEnabled(kind->currentData().toString() == QLatin1String(".."));
    };
    QObject::connect(fields.kind, &QComboBox::currentIndexChanged, fields.high, follow);
    follow();
    return fields;
}

/// A bound must be a formula that fits the cell; that it waits for another cell is no fault of it.
std::optional<Form::Problem> wrongBound(const Session &session, const CellAt &at, QLineEdit *field)
{
    const auto preview = session.program().preview(session.workbook(), at, textOf(field), session.values(),
                                                   Program::Whole::limit);
    if (!preview.error || markOf(*preview.error) == Mark::waits)
        return {};
    return problemOf(preview.error, field);
}

std::optional<Form::Problem> wrongBand(QLineEdit *field)
{
    if (textOf(field).empty())
        return {};
    const auto percent = readNumber(textOf(field));
    if (percent && *percent >= 0.0 && *percent <= 100.0)
        return {};
    return Form::Problem{field,
                         QObject::tr("the near band is a number of percent from 0 to 100, for example 20")};
}

/// What keeps the fields from being a limit; nothing where "no limit" is meant.
std::optional<Form::Problem> wrongLimit(const Session &session, const CellAt &at, const LimitText &old,
                                        const LimitFields &fields)
{
    const QString comparison = fields.kind->currentData().toString();
    if (comparison.isEmpty()) {
        if (textOf(fields.low).empty() || textOf(fields.low) == old.low)
            return {};
        return Form::Problem{fields.kind,
                             QObject::tr("a bound is typed: choose at most, at least or another of these for "
                                         "it, or clear the bound")};
    }
    if (textOf(fields.low).empty())
        return Form::Problem{fields.low,
                             QObject::tr("a limit needs a bound, for example %1; or choose no limit")
                                 .arg(QStringLiteral("0.3 mg/L as Fe"))};
    if (auto wrong = wrongBound(session, at, fields.low))
        return wrong;
    if (comparison == QLatin1String("..")) {
        if (textOf(fields.high).empty())
            return Form::Problem{fields.high, QObject::tr("between needs an upper bound too")};
        if (auto wrong = wrongBound(session, at, fields.high))
            return wrong;
    }
    return wrongBand(fields.near);
}

} // namespace

void askLimit(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(
        parent, QObject::tr("Limit"),
        QObject::tr(
            "The state within, near, outside or missing test comes from here. The bounds are formulas."));
    Attributes beside = besideOf(session, at);
    const LimitText old = beside.limit.value_or(LimitText{});
    const LimitFields fields = addLimitFields(form, labelOf(session, at), old);
    form.ask([&]() -> std::optional<Form::Problem> {
        if (auto wrong = wrongLimit(session, at, old, fields))
            return wrong;
        LimitText limit = old;
        limit.comparison = fields.kind->currentData().toString().toStdString();
        limit.low = textOf(fields.low);
        limit.high = limit.comparison == ".." ? textOf(fields.high) : std::string();
        limit.near = textOf(fields.near);
        limit.health = fields.health->isChecked();
        limit.words = textOf(fields.words);
        beside.limit = limit.comparison.empty() ? std::nullopt : std::optional(limit);
        return problemOf(carryOut(SetAttributes{at, beside}), fields.words);
    });
}

namespace
{

QString firstFreeMark(const Workbook &workbook, QChar letter)
{
    int number = 1;
    while (workbook.sourceById((QString(letter) + QString::number(number)).toStdString()))
        ++number;
    return QString(letter) + QString::number(number);
}

QListWidget *addDeclared(Form &form, const Session &session, const CellAt &at)
{
    const Attributes beside = besideOf(session, at);
    auto *list = new QListWidget(&form);
    for (const auto &source : session.workbook().sources) {
        auto *item = new QListWidgetItem(
            QStringLiteral("%1  %2: %3")
                .arg(fromUtf8(source.id), fromUtf8(markTitle(source.id[0])), fromUtf8(source.words)),
            list);
        item->setData(Qt::UserRole, fromUtf8(source.id));
        item->setToolTip(item->text().toHtmlEscaped());
        const bool on =
            std::find(beside.sources.begin(), beside.sources.end(), source.id) != beside.sources.end();
        item->setCheckState(on ? Qt::Checked : Qt::Unchecked);
    }
    list->setWordWrap(true);
    list->setCurrentRow(0);
    return form.add(QObject::tr("Sources of %1").arg(labelOf(session, at)), list);
}

} // namespace

void askSources(QWidget *parent, const Session &session, const CellAt &at, const CarryOut &carryOut)
{
    Form form(parent, QObject::tr("Source marks"),
              QObject::tr("Where the number comes from. Tick the marks that hold, or declare a new one."));
    Attributes beside = besideOf(session, at);
    QListWidget *list = addDeclared(form, session, at);
    auto *kind = new QComboBox(&form);
    kind->addItem(QObject::tr("no new source"), QString());
    for (const char letter : std::string("LFMDSHEPTRCAW"))
        kind->addItem(QStringLiteral("%1  %2").arg(QLatin1Char(letter)).arg(fromUtf8(markTitle(letter))),
                      QString(QLatin1Char(letter)));
    form.add(QObject::tr("New"), kind);
    auto *words = form.add(QObject::tr("its words"), new QLineEdit(&form));
    words->setPlaceholderText(QObject::tr("sheet 7, sampled 2026-05-12 at the raw tap"));
    form.ask([&]() -> std::optional<Form::Problem> {
        const QString letter = kind->currentData().toString();
        if (letter.isEmpty() && !textOf(words).empty())
            return Form::Problem{kind, QObject::tr("choose what kind of source these words tell of")};
        if (!letter.isEmpty() && textOf(words).empty())
            return Form::Problem{words,
                                 QObject::tr("say what the source is: which sheet, page or person, and "
                                             "when")};
        beside.sources.clear();
        for (int i = 0; i < list->count(); ++i)
            if (list->item(i)->checkState() == Qt::Checked)
                beside.sources.push_back(list->item(i)->data(Qt::UserRole).toString().toStdString());
        SetAttributes edit{at, beside, {}};
        if (!letter.isEmpty()) {
            const std::string id = firstFreeMark(session.workbook(), letter[0]).toStdString();
            edit.declared.push_back({id, std::string(markWord(letter[0].toLatin1())), textOf(words)});
            edit.attributes.sources.push_back(id);
        }
        return problemOf(carryOut(edit), letter.isEmpty() ? static_cast<QWidget *>(list) : words);
    });
}

} // namespace puteal::desk
