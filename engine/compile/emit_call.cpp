/// Calls in emitted expressions: guarded forms written out, everything else served by a call site.
#include <algorithm>

#include <fmt/format.h>

#include "compile/emit.h"

namespace puteal
{

namespace
{

/// General functions that are one guarded form of their arguments.
std::string_view formOf(General function)
{
    switch (function) {
    case General::abs:
        return "ab";
    case General::sqrt:
        return "sq";
    case General::cbrt:
        return "cr";
    case General::exp:
        return "ex";
    case General::ln:
        return "ln";
    case General::log10:
        return "lg";
    case General::pow10:
        return "pt";
    case General::sin:
        return "sn";
    case General::cos:
        return "cs";
    case General::tan:
        return "tn";
    case General::asin:
        return "as";
    case General::acos:
        return "ac";
    case General::atan:
        return "at";
    case General::roundTo:
        return "rd";
    case General::ceilTo:
        return "ce";
    case General::floorTo:
        return "fl";
    case General::clamp:
        return "cl";
    case General::known:
        return "is";
    default:
        return {};
    }
}

} // namespace

std::string Emitter::call(NodeIndex n, bool raw)
{
    const CheckedNode &checked = m_checked.nodes[n];
    const auto argument = [&](std::size_t i) { return checked.arguments[i].node; };
    const General general = checked.function->general;
    if (const std::string_view form = formOf(general); !form.empty())
        return plainCall(n, form, general == General::known);
    switch (general) {
    case General::ifError: {
        const int place = keep(n);
        const std::string first = emit(argument(0), raw), second = emit(argument(1), raw);
        return fmt::format("(ke({0},{1})?{2}:k{0})", place, first, second);
    }
    case General::state:
        return fmt::format("r{}", slot(referenceIndex(argument(0)), OperandUse::state));
    case General::because:
        noteReferences(argument(1));
        return emit(argument(0), raw);
    case General::plain:
        return emit(argument(0), raw);
    case General::asCaco3:
    case General::asElement:
        return fmt::format("({}*{})", emit(argument(0), raw), number(checked.constant));
    case General::absolute:
    case General::gauge: {
        const std::string pressure = emit(argument(0), false), air = emit(argument(1), false);
        return fmt::format("({}{}{})", pressure, general == General::absolute ? '+' : '-', air);
    }
    case General::min:
    case General::max:
        if (std::any_of(checked.arguments.begin(), checked.arguments.end(),
                        [](const ArgumentPlan &p) { return p.from == ArgumentPlan::From::range; }))
            return site(n);
        if (m_tree.nodes[n].children.size() == 2)
            return plainCall(n, general == General::min ? "mi" : "ma", false);
        return plainCall(n, general == General::min ? "mn" : "mx", false);
    case General::within:
        if (bound(argument(0)) == Bound::exact && bound(argument(1)) == Bound::exact)
            return plainCall(n, "wi", false);
        return site(n);
    default:
        return site(n);
    }
}

std::string Emitter::plainCall(NodeIndex n, std::string_view name, bool raw)
{
    std::string text = fmt::format("{}(", name);
    for (const ArgumentPlan &plan : m_checked.nodes[n].arguments)
        if (plan.from == ArgumentPlan::From::node)
            text += (text.back() == '(' ? "" : ",") + emit(plan.node, raw);
    return text + ")";
}

std::string Emitter::site(NodeIndex n)
{
    const CheckedNode &checked = m_checked.nodes[n];
    const std::size_t index = m_out.sites.size();
    m_out.sites.emplace_back();
    m_out.placeOf[n] = static_cast<std::int32_t>(index);
    Site made;
    made.node = n;
    made.function = checked.function;
    std::string text = fmt::format("fn({}", index);
    int place = 0;
    for (const ArgumentPlan &plan : checked.arguments) {
        SiteArgument argument;
        argument.from = plan.from;
        argument.parameter = plan.parameter;
        argument.node = plan.node;
        argument.constant = plan.constant;
        if (plan.from == ArgumentPlan::From::range) {
            argument.range = range(plan.node);
        } else if (plan.from == ArgumentPlan::From::node) {
            const ParameterInfo &parameter = checked.function->parameters[plan.parameter];
            const bool within = checked.function->general == General::within;
            argument.bounded = (parameter.mayBeBounded || within) && bound(plan.node) != Bound::exact;
            argument.place = place++;
            text += "," + emit(plan.node, argument.bounded || checked.function->general == General::why);
            if (m_tree.nodes[plan.node].kind == NodeKind::reference) {
                const bool byRule = !argument.bounded && bound(plan.node) != Bound::exact;
                argument.slot =
                    m_out.slotOf(referenceIndex(plan.node), byRule ? OperandUse::byRule : OperandUse::plain);
            }
        }
        made.arguments.push_back(argument);
    }
    m_out.sites[index] = std::move(made);
    return text + ")";
}

int Emitter::range(NodeIndex n)
{
    const std::uint32_t reference = referenceIndex(n);
    const auto at = std::find(m_out.ranges.begin(), m_out.ranges.end(), reference);
    if (at != m_out.ranges.end())
        return static_cast<int>(at - m_out.ranges.begin());
    m_out.ranges.push_back(reference);
    return static_cast<int>(m_out.ranges.size() - 1);
}

} // namespace puteal
