/// Writes the workbook text: read and written again it is the same bytes.
#pragma once

#include <string>

#include "sheet/workbook.h"

namespace puteal
{

/// `isFormula(text)` says whether equal neighbors make a filled run (a formula that refers to a cell); null =
/// built-in judgement (not a number, words, date, yes/no and has a reference).
std::string writeWorkbook(const Workbook &workbook);

} // namespace puteal
