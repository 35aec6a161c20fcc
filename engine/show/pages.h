/// Pages of the documentation that are written from the program's own tables.
#pragma once

#include <string>

#include "units/unit.h"

namespace puteal
{

/// docs/units.md: every unit word with its definition, spellings, source and note; the sources; the
/// substances.
std::string unitsPage(const UnitTable &table);

} // namespace puteal
