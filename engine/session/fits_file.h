/// What a file could not hold is refused when it is asked for, so that every workbook can be saved.
#pragma once

#include "session/edit.h"
#include "session/session_state.h"

namespace puteal
{

/// Refuses a step after which the workbook, written and read back, would be another one. Cells whose
/// attributes change are written and read alone; declarations and titles with the whole workbook, where
/// references count.
Result<void> fitsFile(const Edit &edit, const UndoStep &step, const Workbook &workbook);

/// Refuses `more` filled cells beyond the bound of all sheets together. They are counted only where there are
/// places enough for so many.
Result<void> filledFit(const Workbook &workbook, std::int64_t more);

/// Refuses `more` places (lines times columns, and one for each line) beyond the bound of all sheets
/// together.
Result<void> placesFit(const Workbook &workbook, std::uint64_t more);

} // namespace puteal
