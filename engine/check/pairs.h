/// What to write instead when amounts of two substances meet: one table keyed by the pair.
#pragma once

#include <string_view>
#include <vector>

namespace puteal::checking
{

/// A way out for one pair of substances. `{a}` and `{b}` stand for the pieces that are amounts of `first` and
/// `second`,
/// `{l}` and `{r}` for the left and the right one, `{op}` for the operator between them.
struct PairFix {
    std::string_view first, second;
    std::string_view words; ///< "for a softener setting use {}"; {} is the text that goes in
    std::string_view text;  ///< "compensated_hardness({a}, {b})"
    enum class Replaces { whole, first, second } replaces;
    bool onlyAdd = false; ///< makes no sense for a difference or a comparison
};

/// The rows for this pair, in the order they are offered.
std::vector<PairFix> pairFixes(std::string_view first, std::string_view second);

/// The element word a compound's amount may be told as ("NO3" -> "N"); empty for none.
std::string_view elementOf(std::string_view compound);
/// Atoms of that element in one formula unit of the compound; 0 for none.
int elementAtoms(std::string_view compound);

} // namespace puteal::checking
