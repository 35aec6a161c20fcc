/// What the trade says for what functions are named here.
#pragma once

#include <string_view>
#include <vector>

namespace puteal
{

struct TradeWord {
    std::string_view said;              ///< in lower case, words apart by a blank
    std::vector<std::string_view> here; ///< words of names or titles of functions, most likely first
};

/// In the order of the alphabet.
const std::vector<TradeWord> &tradeWords();

} // namespace puteal
