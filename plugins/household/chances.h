/// What the functions of chances share: their ranges of fixtures, words and the example house.
#pragma once

#include "sdk/plugin.h"

namespace household
{

inline constexpr const char sameLines[] = "the three ranges must have the same lines";
inline constexpr const char blankLine[] = "a line is blank: fill it or take it out of the range";

inline constexpr puteal::sdk::Parameter countParameter =
    puteal::sdk::Parameter("count", "each", "how many of each fixture").range().hard(0, 1000).usual(1, 20);
inline constexpr puteal::sdk::Parameter probabilityParameter =
    puteal::sdk::Parameter("probability", "", "chance that one of them runs in the peak hour")
        .range()
        .hard(0, 1)
        .usual(0, 0.2);
inline constexpr puteal::sdk::Parameter flowParameter =
    puteal::sdk::Parameter("flow", "gpm", "flow of one of them").range().hard(0, 100).usual(0.5, 10);

#define HOUSE                                                                                                \
    "n: 3 each, 2 each, 2 each, 1 each, 1 each, 1 each; p: 0.02, 0.045, 0.01, 0.02, 0.005, 0.05; q: 1.5 "    \
    "gpm, 2 gpm, 3 gpm, 1.8 gpm, 1.3 gpm, 3.5 gpm; "

} // namespace household
