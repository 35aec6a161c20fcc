/// Names and indices bound to cells: the only stage that looks words up in the workbook.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/address.h"
#include "base/result.h"
#include "formula/tree.h"
#include "sheet/workbook.h"

namespace puteal
{

/// What one reference of a tree means. Order as in Tree::references.
struct BoundReference {
    bool isRange = false;
    CellAt cell;   ///< when not a range
    RangeAt range; ///< when a range
    friend bool operator==(const BoundReference &, const BoundReference &) = default;
};

struct Binding {
    std::vector<BoundReference> references;
    friend bool operator==(const Binding &, const Binding &) = default;
};

/// What else a bare word could have meant, for messages only.
struct WordLookup {
    KnownWord isListedWord = nullptr; ///< a word of a function's choices
    const void *context = nullptr;
};

/// Binds every reference of `tree` as seen from `self`. Error at the reference: unknown name (with the
/// closest names as fixes), unknown sheet, key or index outside the sheet, reversed range, [gone], a relative
/// index into another sheet, `item[best]`. A bare key means the same line; where a range is wanted the
/// checker refuses it. A bare word of a list of choices is refused with the quotes as the fix: of a list of
/// the workbook, or one that `lookup` knows (lists of functions).
Result<Binding> bind(const Tree &tree, const Workbook &workbook, const CellAt &self,
                     const WordLookup &lookup = {});

/// Would this name or column key change what a bare word in a formula of the sheet means? Used to refuse it.
bool isBareWordIn(const Tree &tree, std::string_view word);

/// Context of isKnownWordIn: the words of one sheet, the sheets' keys, perhaps the functions.
struct KnownWords {
    const Workbook *workbook = nullptr;
    std::uint32_t sheet = 0;
    KnownWord isFunction = nullptr;
    const void *functions = nullptr;
};
/// A KnownWord for parseFormula: `context` is a KnownWords.
bool isKnownWordIn(const void *context, std::string_view word);

} // namespace puteal
