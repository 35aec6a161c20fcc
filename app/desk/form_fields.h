/// What the dialogs share: reading fields, and a refusal as a problem at a field. Internal to this folder.
#pragma once

#include <optional>

#include <QLineEdit>

#include "desk/form.h"
#include "desk/look.h"
#include "show/shown.h"

namespace puteal::desk
{

inline QString labelOf(const Session &session, const CellAt &at)
{
    return fromUtf8(session.labelOf(at));
}

inline Attributes besideOf(const Session &session, const CellAt &at)
{
    return session.workbook().cell(at)->beside();
}

inline std::string textOf(const QLineEdit *field)
{
    return field->text().trimmed().toStdString();
}

inline std::optional<Form::Problem> problemOf(const std::optional<Error> &error, QWidget *field)
{
    if (!error)
        return {};
    return Form::Problem{field, fromUtf8(errorLine(*error))};
}

} // namespace puteal::desk
