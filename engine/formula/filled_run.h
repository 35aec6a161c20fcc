/// Filled runs: which lines form one, which way they look, and which new lines join them.
#pragma once

#include <string_view>
#include <vector>

#include "formula/line_map.h"
#include "formula/rewriter.h"

namespace puteal
{

/// Which way the signed indices of a formula look.
struct Looks {
    bool up = false, down = false;
};
Looks looksOf(const Tree &tree);

/// A run as it stood before a change.
struct RunAt {
    std::uint32_t sheet = 0, column = 0;
    std::uint32_t first = 0, last = 0;
};

/// Do the lines that are put in (inserted or moved in from outside the run) join the run? For a move this
/// says that lines whose own cell is free do.
bool gapJoins(const Workbook &workbook, const RunAt &run, const Looks &looks, const StructuralChange &change,
              const UnitTable &units);

/// Can the cell of a line moved in take a run's formula over? Not when it holds a text or waits for a typed
/// one.
bool isFree(const Cell &cell);

} // namespace puteal
