/// The first operand unit that fits, as a reader would choose it.
#include "check/shown_unit.h"

namespace puteal::checking
{

namespace
{

struct Search {
    const Draft &draft;
    const QuantityType &type;
    const Unit *sameType = nullptr;
    const Unit *sameDimension = nullptr;
    bool declared = false; ///< sameDimension is only a function's own unit

    void offer(const Unit &unit, bool isDeclared)
    {
        if (unit.text.empty() || unit.type.scale != type.scale || unit.type.dimension != type.dimension)
            return;
        if (!isDeclared && unit.type == type && !sameType)
            sameType = &unit;
        if (!sameDimension || (declared && !isDeclared)) {
            sameDimension = &unit;
            declared = isDeclared;
        }
    }

    /// A plugin's function that is calculated in a unit of its own gives an operand in that unit, as its
    /// source does. In an SI workbook its arguments say more.
    bool isOperandCall(NodeIndex i) const
    {
        const FunctionInfo *function = draft.at(i).function;
        return function && function->general == General::none && function->result.variables.empty() &&
               draft.context.system == UnitSystem::us;
    }

    void look(NodeIndex i)
    {
        if (sameType)
            return;
        const Node &node = draft.node(i);
        const CheckedNode &checked = draft.at(i);
        if (node.kind == NodeKind::number || node.kind == NodeKind::reference) {
            if (checked.type.kind == ValueKind::quantity)
                offer(checked.shown, false);
            return;
        }
        if (checked.error)
            return;
        if (isOperandCall(i)) {
            offer(checked.function->result.unit, true);
            return;
        }
        // the condition of a ternary says nothing about its result
        for (std::size_t n = node.kind == NodeKind::ternary ? 1 : 0; n < node.children.size(); ++n)
            look(node.children[n]);
        if (node.kind == NodeKind::call && checked.function)
            offer(checked.function->result.unit, true);
    }
};

/// Pure numbers: a percentage stays one when it is scaled or added to, but `1 + 5 %` and `gal/gal` are plain
/// numbers.
Unit shownPure(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    const auto shownAt = [&](std::size_t n) {
        const CheckedNode &operand = draft.at(node.children[n]);
        return operand.type.kind == ValueKind::quantity && operand.type.quantity.isPure() ? operand.shown
                                                                                          : Unit{};
    };
    switch (node.kind) {
    case NodeKind::reference:
        return draft.at(i).shown;
    case NodeKind::negate:
        return shownAt(0);
    case NodeKind::ternary:
        return shownAt(1);
    case NodeKind::binary:
        if (node.op == Op::multiply && draft.node(node.children[0]).kind == NodeKind::number &&
            shownAt(0).text.empty())
            return shownAt(1);
        return node.op == Op::power || !draft.quantity(node.children[0]).isPure() ? Unit{} : shownAt(0);
    case NodeKind::call: {
        const FunctionInfo *function = draft.at(i).function;
        if (!function)
            return {};
        const bool firstDecides = !function->result.variables.empty() ||
                                  function->general == General::because ||
                                  function->general == General::ifError || function->general == General::pick;
        return firstDecides && !node.children.empty() ? shownAt(0) : function->result.unit;
    }
    default:
        return {};
    }
}

} // namespace

Unit respelled(const Draft &draft, const Unit &unit, const QuantityType &type)
{
    if (unit.type == type)
        return unit;
    if (unit.type.dimension == type.dimension && unit.type.scale == type.scale)
        if (auto spelled = retagged(unit, type, draft.units()))
            return *spelled;
    return draft.units().defaultUnit(type, draft.context.system);
}

Unit shownFor(const Draft &draft, NodeIndex i, const QuantityType &type)
{
    if (type.isPure())
        return shownPure(draft, i);
    Search search{draft, type};
    search.look(i);
    if (search.sameType)
        return *search.sameType;
    if (search.sameDimension)
        return respelled(draft, *search.sameDimension, type);
    return draft.units().defaultUnit(type, draft.context.system);
}

} // namespace puteal::checking
