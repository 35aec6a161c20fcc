/// What a typed text is as far as the sheet and the file must know: a formula, and does it refer to a cell?
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/cell.h"
#include "units/unit.h"
#include "units/value.h"

namespace puteal
{

/// Judges texts of amounts columns without parsing them: words and operators only, so it never refuses a
/// text.
class TextJudge
{
public:
    /// `things` are the workbook's declared counted things.
    explicit TextJudge(const std::vector<std::string> &things = {});

    /// A formula with a name, a key or live words in it: equal neighbors of that kind are a filled run.
    bool refersToCell(std::string_view text) const;
    /// Surely a formula: operands and operators take turns. A lone word or broken text is not sure.
    bool isFormula(std::string_view text) const;
    /// The text read as a value or a formula.
    Result<Typed> read(std::string_view text) const;
    bool isUnitWord(std::string_view word) const { return m_units.isUnitWord(word); }

private:
    UnitTable m_units;
};

/// Attributes that exclude each other (figures and places, choices and unit ...): words that say so, or none.
std::optional<std::string> clashWithin(const Attributes &beside);

/// Attributes that do not fit the text beside them (ask on a formula, tolerance on a date ...), or none.
std::optional<std::string> clashWithText(const Attributes &beside, std::string_view text, ColumnKind kind,
                                         const TextJudge &judge);

/// The text as a file can hold it: control characters become blanks, blanks at both ends go.
std::string cleanTyped(std::string_view text);
/// True when cleanTyped would change nothing.
bool isCleanTyped(std::string_view text);

} // namespace puteal
