/// The checked tree in the making: what the files of this folder share while they walk one formula.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "check/checker.h"

namespace puteal::checking
{

using Done = Result<void>;

/// One formula with its context and what was found so far.
struct Draft {
    const Tree &tree;
    const Binding &binding;
    const CheckContext &context;
    bool offerFixes = true; ///< off while a fix is tried
    Checked out{};
    std::vector<std::pair<char, QuantityType>> variables{}; ///< unit variables of the call at hand

    CheckedNode &at(NodeIndex i) { return out.nodes[i]; }
    const CheckedNode &at(NodeIndex i) const { return out.nodes[i]; }
    const Node &node(NodeIndex i) const { return tree.nodes[i]; }
    const QuantityType &quantity(NodeIndex i) const { return out.nodes[i].type.quantity; }
    ValueKind kind(NodeIndex i) const { return out.nodes[i].type.kind; }
    const Span &span(NodeIndex i) const { return tree.nodes[i].span; }
    NodeIndex child(NodeIndex i, std::size_t n) const { return tree.nodes[i].children[n]; }
    const UnitTable &units() const { return *context.units; }

    /// Makes node `i` a quantity of that type, shown by the rules of shown_unit.h.
    void setQuantity(NodeIndex i, const QuantityType &type);
    void setKind(NodeIndex i, ValueKind kind, std::uint32_t list = 0);
    void caution(std::string key, std::string words, Span where);
};

/// A sum of tag exponents that matches the mass and amount in the type, or no tag at all. Pressure, energy
/// and power count as no mass.
bool tagsFit(const QuantityType &type);
/// Mass plus amount exponent less the sum of tag exponents, in sixths.
int missingTags(const QuantityType &type);
/// Mass or amount in it, or a tag.
bool hasMatter(const QuantityType &type);

tl::unexpected<Error> failOver(ErrorKind kind, std::string words, const Span &span, const Span &other);

} // namespace puteal::checking
