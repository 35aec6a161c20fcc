/// Edits: the only way to change a workbook, and what a change did.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "formula/rewriter.h"
#include "sheet/workbook.h"

namespace puteal
{

/// Types text into a cell ("" clears the text, attributes stay).
struct SetText {
    CellAt at;
    std::string text;
};
/// Replaces a block of texts; rows beyond the sheet's last line add lines. One undo step.
struct SetBlock {
    CellAt topLeft;
    std::vector<std::vector<std::string>> rows;
};
/// Clears texts of a block (lines first..last, columns left..right).
struct ClearBlock {
    std::uint32_t sheet, left, right, first, last;
};
/// Copies the text of the first line of a block into its other lines, column by column, never rewriting.
struct FillDown {
    std::uint32_t sheet, left, right, first, last;
};
struct SetAttributes {
    CellAt at;
    Attributes attributes;
    std::vector<SourceMark> declared{}; ///< sources that come new with it
};
struct InsertLines {
    std::uint32_t sheet, at, count;
    InsertSide side = InsertSide::above;
};
struct DeleteLines {
    std::uint32_t sheet, at, count;
};
struct MoveLines {
    std::uint32_t sheet, from, count, to;
};
struct RenameCell {
    CellAt at;
    std::string name;
}; ///< references follow; "" takes the name away
struct AddColumn {
    std::uint32_t sheet, at;
    Column column;
};
struct ChangeColumn {
    std::uint32_t sheet, column;
    Column newColumn;
}; ///< a new key is followed by references
struct DeleteColumn {
    std::uint32_t sheet, column;
};
struct AddSheet {
    std::uint32_t at;
    std::string key, title;
};
struct ChangeSheet {
    std::uint32_t sheet;
    std::string key, title;
};
struct DeleteSheet {
    std::uint32_t sheet;
};
struct SetSources {
    std::vector<SourceMark> sources;
}; ///< the workbook's declared source marks
struct SetLists {
    std::vector<ChoiceListText> lists;
};
struct SetTitle {
    std::string title;
};
struct SetCharts {
    std::vector<Chart> charts;
};
struct SetExpectations {
    std::uint32_t sheet;
    std::vector<Expectation> expectations;
};

using Edit = std::variant<SetText, SetBlock, ClearBlock, FillDown, SetAttributes, InsertLines, DeleteLines,
                          MoveLines, RenameCell, AddColumn, ChangeColumn, DeleteColumn, AddSheet, ChangeSheet,
                          DeleteSheet, SetSources, SetLists, SetTitle, SetCharts, SetExpectations>;

/// What one edit (or undo, redo) did.
struct ChangeSet {
    std::string words;           ///< "type into line 9", "insert 2 lines": for the undo menu
    std::vector<CellAt> changed; ///< cells whose shown value or state may differ (or everything, see below)
    bool structure = false;      ///< lines, columns or sheets moved: views reset
    std::vector<std::string> charts; ///< keys of charts to redraw
    std::vector<std::string> notes;  ///< "`total` now adds 8 lines", "reference in `x` is gone"
    std::optional<std::string>
        rewritten;               ///< SetText: the text that was stored instead (bare number took its unit)
    std::optional<CellAt> focus; ///< where to look after undo
};

} // namespace puteal
