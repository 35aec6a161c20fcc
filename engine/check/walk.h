/// The walk over the tree: one function a form of node. Each fills its node of the draft, or fails.
#pragma once

#include <string>

#include "check/draft.h"

namespace puteal::checking
{

/// Checks node `i` and what is below it. `list` is the choice list quoted words would become, 0 = none.
Done checkNode(Draft &draft, NodeIndex i, std::uint32_t list = 0);

/// The same where a failure does not matter yet: a blank or waiting piece (with `anyError`: any) is noted at
/// the node.
Done checkTolerant(Draft &draft, NodeIndex i, std::uint32_t list, bool anyError);

/// A reference to one cell.
Done checkReference(Draft &draft, NodeIndex i);
/// A range inside a call: all its cells have one type. Cells that failed are left out with `skipFailed`.
Done checkRange(Draft &draft, NodeIndex i, bool skipFailed);
bool isRange(const Draft &draft, NodeIndex i);
/// A column key without an index: the cell of the same line.
bool isBareKey(const Draft &draft, NodeIndex i);
/// "write cost[:] for the whole column or cost[1:-1] for everything above", with the fixes.
tl::unexpected<Error> bareKeyWhereRange(const Draft &draft, NodeIndex i);

Done checkBinary(Draft &draft, NodeIndex i);
Done checkPower(Draft &draft, NodeIndex i);
Done checkMultiply(Draft &draft, NodeIndex i);
Done checkSum(Draft &draft, NodeIndex i);
Done checkComparison(Draft &draft, NodeIndex i);
/// Error unless node `i` is an amount; `deed` completes "cannot ...".
Done needAmount(const Draft &draft, NodeIndex i, const std::string &deed);
Done needYesNo(const Draft &draft, NodeIndex i, const std::string &where);
/// Two results of which one is taken (ternary, if_error): same kind, type and list. The type goes to `whole`.
Done checkBranches(Draft &draft, NodeIndex whole, NodeIndex a, NodeIndex b);

Done checkCall(Draft &draft, NodeIndex i, std::uint32_t list);

/// child -> unit
Done checkConvert(Draft &draft, NodeIndex i);
/// The root against the cell's choices, its set unit, and for a limit the type of its cell.
Done checkRoot(Draft &draft, NodeIndex root);

} // namespace puteal::checking
