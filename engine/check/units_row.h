/// The units row of a formula: every operand replaced by its unit.
#pragma once

#include <string>

#include "check/checker.h"

namespace puteal
{

/// "mg/mg.mg/L + mg/mg.mg/L": operands as their units, * as a dot, functions and words as they are.
std::string unitsRow(const Tree &tree, const Checked &checked, const UnitTable &units);

} // namespace puteal
