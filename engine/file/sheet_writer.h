/// Writes the records of one sheet.
#pragma once

#include <string>

#include "sheet/typed_text.h"
#include "sheet/workbook.h"

namespace puteal
{

void writeSheet(const Sheet &sheet, const TextJudge &judge, std::string &out);

} // namespace puteal
