/// Order of evaluation: every formula after what it needs; what needs itself is told apart.
#pragma once

#include <vector>

#include "recalc/links.h"

namespace puteal
{

/// The graph as the ordering sees it.
struct OrderInput {
    const Links *links = nullptr;
    const std::vector<Links::Slice> *slices = nullptr; ///< by node
    const std::vector<std::uint8_t> *worked = nullptr; ///< by node: 1 = has to be worked out (formula, state)
    std::uint32_t cells = 0;                           ///< nodes below this are cells and stand in columns
};

struct Order {
    std::vector<NodeId> nodes; ///< worked nodes that are in no cycle, precedents first
    std::vector<std::vector<NodeId>>
        cycles; ///< sets of nodes that need each other (or one that needs itself)
};

Order orderOf(const OrderInput &input);

/// The shortest way from `start` back to itself among `members` (sorted): start, what it needs, ... , start.
std::vector<NodeId> shortestCycle(const OrderInput &input, const std::vector<NodeId> &members, NodeId start);

} // namespace puteal
