/// Structural changes and formula texts: pure functions (text, change) -> text, by the rules of
/// docs/formula.md.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/address.h"
#include "formula/tree.h"
#include "sheet/workbook.h"
#include "units/unit.h"

namespace puteal
{

/// The command behind an insertion: "line below" on the line before the gap, or "line above" on the one
/// after.
enum class InsertSide : std::uint8_t { below, above };

/// A structural change of one sheet (or of names), described once and handed to every text of the workbook.
struct StructuralChange {
    enum class Kind : std::uint8_t {
        insertLines,
        deleteLines,
        moveLines,
        renameName,
        renameColumn,
        renameSheet,
        deleteColumn,
        deleteSheet,
        deleteName
    };
    Kind kind = Kind::insertLines;
    std::uint32_t sheet = 0;
    /// insert: before this line; delete: first line; move: first line moved; deleteColumn: the column.
    std::uint32_t at = 0;
    std::uint32_t count = 1;
    std::uint32_t to = 0;                ///< move: they will stand before the line that is at `to` now
    std::string oldWord, newWord;        ///< renames; deleteName: oldWord
    InsertSide side = InsertSide::above; ///< insert
};

/// A formula's place before and after the change, and the lines of the filled run it belongs to (before).
struct FormulaPlace {
    CellAt before;
    CellAt after;
    bool inRun = false;
    std::uint32_t runFirst = 0, runLast = 0; ///< lines, before
};

struct Rewritten {
    std::string text;
    bool changed = false;
    bool lostTarget = false;  ///< something became [gone]
    bool rangeGained = false; ///< a range takes in new lines
    bool rangeLost = false;
    std::uint32_t rangeLines = 0; ///< lines of the last range that gained or lost some
    bool rangeIsSummed = false;   ///< that range is an argument of sum()
};

/// The new text of a formula (or limit, live words, expectation, chart reference: `isWordsCell` for words
/// columns). Only the spans of references change; spacing survives. A text that does not parse is returned as
/// it is.
Rewritten rewrite(std::string_view text, bool isWordsCell, const Workbook &before, const FormulaPlace &place,
                  const StructuralChange &change, const UnitTable &units);
/// The same for a text that is parsed already.
Rewritten rewrite(const Tree &tree, const Workbook &before, const FormulaPlace &place,
                  const StructuralChange &change, const UnitTable &units);

/// The filled run (lines first..last) a cell belongs to: neighbors in its column with the same formula text
/// that refers to a cell. A single cell gives first == last.
std::pair<std::uint32_t, std::uint32_t> filledRun(const Workbook &workbook, const CellAt &at,
                                                  const UnitTable &units);

/// Which column's formula a new line takes over (docs/formula.md "a new line joins a run"): one entry a
/// column that has one.
struct Takeover {
    std::uint32_t column = 0;
    std::uint32_t fromLine = 0; ///< a line of the run, before the change
};
std::vector<Takeover> takeovers(const Workbook &workbook, std::uint32_t sheet, std::uint32_t at,
                                InsertSide side, const UnitTable &units);
/// The same for an insertion or a move (lines moved in take over where their own cell is blank).
std::vector<Takeover> takeovers(const Workbook &workbook, const StructuralChange &change,
                                const UnitTable &units);
/// The text a line that joins the run of `place` gets: signed indices as written, all else as in the run.
std::string takenText(const Tree &tree, const Workbook &before, const FormulaPlace &place,
                      const StructuralChange &change, const UnitTable &units);

} // namespace puteal
