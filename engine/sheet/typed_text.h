/// What a typed text is as far as the sheet and the file must know: a formula, and does it refer to a cell?
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheet/records.h"
#include "units/unit.h"
#include "units/value.h"

namespace puteal
{

/// Judges texts of amounts columns without parsing them: words and operators only, so it never refuses a
/// text.
class TextJudge
{
public:
    /// `things` are the workbook's declared counted things, `lists` its lists of words.
    explicit TextJudge(std::vector<std::string> things = {}, std::vector<ChoiceListText> lists = {})
        : m_things(std::move(things)), m_lists(std::move(lists))
    {
    }

    /// A formula with a name, a key or live words in it: equal neighbors of that kind are a filled run.
    bool refersToCell(std::string_view text) const;
    /// Surely a formula: operands and operators take turns. A lone word or broken text is not sure.
    bool isFormula(std::string_view text) const;
    /// One of the choices of the cell it stands in, quoted or not: never a formula, whatever it looks like.
    bool isChoice(std::string_view text, const Attributes &beside) const;
    /// The text read as a value or a formula.
    Result<Typed> read(std::string_view text) const;

private:
    const UnitTable &unitsFor(std::string_view text) const;

    std::vector<std::string> m_things;
    std::vector<ChoiceListText> m_lists;
    mutable std::unique_ptr<UnitTable> m_own; ///< made when a text first holds a thing
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
