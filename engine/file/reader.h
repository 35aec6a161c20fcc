/// Reads the workbook text (docs/file_format.md). A well-formed file always opens; refusals name line and
/// next step.
#pragma once

#include <string_view>

#include "sheet/workbook.h"

namespace puteal
{

/// Needs no unit table: what a cell's text means is judged later. `isUnitWord` serves the refusal of names
/// that equal unit words (may be null).
Result<Workbook> readWorkbook(std::string_view text, bool (*isUnitWord)(std::string_view) = nullptr);

/// `puteal recount`: the same text with the counts of `end` records set right (after a merge). Errors as for
/// reading, counts apart.
Result<std::string> recounted(std::string_view text);

} // namespace puteal
