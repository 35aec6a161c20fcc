/// The workbook as typed: sheets of titled columns and lines, lists, sources, charts. The only truth.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/address.h"
#include "base/result.h"
#include "sheet/sheet.h"

namespace puteal
{

enum class BelowRule : std::uint8_t { bound, half, zero };

struct Workbook {
    std::uint32_t formatMajor = 1;
    std::vector<std::string> required; ///< words after !require
    std::string title;
    std::vector<PluginUse> uses;
    std::vector<std::string> things;
    BelowRule below = BelowRule::bound;
    bool belowSaid = false; ///< the record stood in the file
    bool si = false;        ///< units SI
    bool unitsSaid = false;
    std::vector<ChoiceListText> lists;
    std::vector<SourceMark> sources;
    std::vector<Sheet> sheets;
    std::vector<Chart> charts;
    std::vector<Kept> kept; ///< before a workbook record (before = its first two words), or "end workbook"

    std::optional<std::uint32_t> sheetByKey(std::string_view key) const;
    const Cell *cell(const CellAt &at) const; ///< null outside
    const ChoiceListText *listByName(std::string_view name) const;
    const SourceMark *sourceById(std::string_view id) const;
    /// Kept records are compared as those of sheets.
    friend bool operator==(const Workbook &, const Workbook &);
};

/// Mark words by letter: L laboratory, F field_kit, M measured, D driller, S standard, H handbook, E
/// equipment, P price, T trade, R recalled, C customer, A assumed, W worked. Empty for an unknown letter.
std::string_view markWord(char letter);
/// The same for people: "field kit", "equipment data sheet".
std::string_view markTitle(char letter);
/// A letter with a mark word and at most three digits: "L", "L1".
bool isMarkId(std::string_view id);

/// Is this word a good cell name here? Error says why not: no name, unit word is checked by the caller
/// through `isUnitWord`, a column key of the sheet, a reserved word, taken in the sheet.
Result<void> checkName(const Sheet &sheet, std::string_view name, bool isUnitWord,
                       std::optional<CellAt> self = {});

/// Is this a good column key: a letter or a word, not reserved, no other column's key, no name in the sheet?
Result<void> checkColumnKey(const Sheet &sheet, std::string_view key, std::optional<std::uint32_t> self = {});

/// Default keys of new columns: letters that are no unit words, in order.
std::string freeColumnKey(const Sheet &sheet);

} // namespace puteal
