/// One structural change for every text of a workbook: formulas, limits, asks, choices, live words,
/// expectations, charts.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "formula/rewriter.h"
#include "sheet/workbook.h"

namespace puteal
{

/// Where a text with references stands.
enum class TextPart : std::uint8_t {
    cell,
    limitLow,
    limitHigh,
    limitWords,
    ask,
    choice, ///< index: which one
    note,
    expectReference, ///< sheet; index: which expectation
    expectTail,
    chartX, ///< index: which chart
    plotReference,
    plotTitle, ///< index: which chart, plot: which plot
    plotOnly
};

/// A text that the change rewrites.
struct TextChange {
    TextPart part = TextPart::cell;
    CellAt before, after;    ///< cell parts: where the cell stands; expectations: the sheet
    std::uint32_t index = 0; ///< choices, expectations, charts
    std::uint32_t plot = 0;
    std::string oldText, newText;
};

/// A new or moved-in line's cell that takes over the formula of the run it joins.
struct TakenCell {
    CellAt after;
    std::string text;
};

struct RewrittenWorkbook {
    std::vector<TextChange> changes;
    std::vector<TakenCell> taken;
    std::vector<std::string> notes; ///< "`total` now adds 8 lines", "a reference in `x` is gone"
};

/// What a structural change does to the texts of the workbook as it stands before the change. Texts of lines,
/// columns and sheets that the change deletes are left out.
RewrittenWorkbook rewriteAll(const Workbook &before, const StructuralChange &change, const UnitTable &units);

/// Writes the new texts and the formulas taken over into the workbook after its lines, columns, sheets and
/// names were changed.
void applyTexts(Workbook &after, const RewrittenWorkbook &rewritten);

} // namespace puteal
