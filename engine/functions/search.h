/// Finds functions by words of the trade: names, titles, purposes, arguments, and what the trade calls them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "functions/registry.h"

namespace puteal
{

struct FunctionSearch {
    std::vector<const FunctionInfo *> found; ///< best first
    std::vector<std::string> alsoSaid;       ///< what the words were also looked for as: "contact time"
    bool everyWord = true;                   ///< false: no function has all words, these have some
};

/// Words may be several, in any order and case. A word of four letters or more also finds longer words that
/// begin with it.
FunctionSearch searchFunctions(const Registry &registry, std::string_view words);

} // namespace puteal
