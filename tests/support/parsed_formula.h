/// Formulas read for tests, with a few words that stand for names, keys and functions.
#pragma once

#include <algorithm>
#include <string>

#include "formula/tree.h"
#include "units/value.h"

namespace puteal::test
{

/// Words that stand for names, keys and functions in these tests.
inline bool isKnown(const void *, std::string_view word)
{
    static constexpr std::string_view words[] = {"iron", "flow", "cost", "item", "costs", "best", "min"};
    return std::find(std::begin(words), std::end(words), word) != std::end(words);
}

inline const UnitTable &units()
{
    static const UnitTable table;
    return table;
}

inline Result<Tree> parse(const std::string &text)
{
    return parseFormula(text, units(), isKnown, nullptr);
}

} // namespace puteal::test
