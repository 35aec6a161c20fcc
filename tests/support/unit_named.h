/// The shipped unit table and its units, for tests.
#pragma once

#include <QString>

#include "units/unit.h"

namespace puteal::test
{

inline const UnitTable &table()
{
    static const UnitTable units;
    return units;
}

inline Unit unitNamed(const QString &text)
{
    return readUnit(text.toStdString(), table()).value();
}

} // namespace puteal::test
