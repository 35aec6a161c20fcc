/// A unit as a tree of words while it is read, tagged, respelled and printed; internal to this folder.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "units/unit.h"

namespace puteal
{

/// A word to a power with perhaps a substance, or a group top/bottom to a power.
struct UnitPart {
    const UnitWord *word = nullptr;     ///< null = group
    int numerator = 1, denominator = 1; ///< power
    int substance = -1;
    std::vector<UnitPart> top, bottom;
    Span span; ///< of the word in the text read
};

/// The whole unit is a group of power one.
struct UnitRead {
    UnitPart root;
    std::size_t end = 0;
    std::vector<Caution> notes;
};

/// Reads plain text (typographic twins already replaced) at `pos`; none when no unit starts there.
Result<std::optional<UnitRead>> readUnitTree(std::string_view text, std::size_t pos, const UnitTable &table);

/// Brings a tree into the one form that is printed: no needless groups, `1/day` for `day^-1`.
void simplify(UnitPart &root);

/// The words in their structure; substances in braces or left out.
std::string unitText(const UnitPart &root, bool braces);

/// Text, factor and type. Error: a reading inside a compound, powers too large.
Result<Unit> unitOf(const UnitPart &root);

/// The words that are a mass, an amount or a concentration, with their power in the whole unit (in sixths).
struct AmountWord {
    UnitPart *part;
    int sixths;
};
std::vector<AmountWord> amountWords(UnitPart &root);

/// The tree of a unit made by this folder (always readable).
UnitPart treeOf(const Unit &unit, const UnitTable &table);

} // namespace puteal
