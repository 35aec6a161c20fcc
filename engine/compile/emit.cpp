/// Checked trees to the plain expressions the evaluator sees: base units, slots, guarded forms, lazy
/// branches.
#include "compile/emit.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace puteal
{

namespace
{

std::string_view comparisonName(Op op)
{
    switch (op) {
    case Op::equal:
        return "eq";
    case Op::notEqual:
        return "ne";
    case Op::less:
        return "lt";
    case Op::atMost:
        return "le";
    case Op::greater:
        return "gt";
    default:
        return "ge";
    }
}

bool sameText(const ReferenceText &a, const ReferenceText &b)
{
    const auto sameIndex = [](const std::optional<IndexText> &x, const std::optional<IndexText> &y) {
        return x.has_value() == y.has_value() && (!x || (x->isSigned == y->isSigned && x->value == y->value));
    };
    return a.sheet == b.sheet && a.word == b.word && a.indexed == b.indexed && a.whole == b.whole &&
           a.gone == b.gone && sameIndex(a.first, b.first) && sameIndex(a.last, b.last);
}

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

Emitter::Emitter(CompiledFormula &out) : m_out(out), m_tree(*out.tree), m_checked(*out.checked)
{
    m_out.placeOf.assign(m_tree.nodes.size(), -1);
}

std::string Emitter::run(NodeIndex root)
{
    std::string text = emit(root, bound(root) != Bound::exact);
    m_out.loaded = static_cast<std::uint32_t>(m_out.operands.size());
    for (const std::uint32_t reference : m_liveReferences)
        if (m_out.slotOf(reference, OperandUse::plain) < 0)
            m_out.operands.push_back({reference, OperandUse::plain});
    m_out.hasReason = mayHaveReason(root);
    m_out.usesRule = std::any_of(m_out.operands.begin(), m_out.operands.end(),
                                 [](const Operand &o) { return o.use == OperandUse::byRule; });
    m_out.plain = m_out.sites.empty() && m_out.words.empty() && m_out.failures.empty() && !m_out.usesRule &&
                  !m_out.hasReason;
    return text;
}

std::string Emitter::number(double x)
{
    if (x < 0.0)
        return fmt::format("(0-{})", -x);
    return fmt::format("{}", x == 0.0 ? 0.0 : x);
}

bool Emitter::isAtom(NodeIndex n) const
{
    const NodeKind kind = m_tree.nodes[n].kind;
    return kind == NodeKind::number || kind == NodeKind::reference || kind == NodeKind::pi;
}

std::uint32_t Emitter::referenceIndex(NodeIndex n) const
{
    return m_out.firstAlike(m_tree.nodes[n].extra);
}

int Emitter::slot(std::uint32_t reference, OperandUse use)
{
    int at = m_out.slotOf(reference, use);
    if (at < 0) {
        at = static_cast<int>(m_out.operands.size());
        m_out.operands.push_back({reference, use});
    }
    return at;
}

std::string Emitter::reference(NodeIndex n, bool raw)
{
    const bool byRule = !raw && bound(n) != Bound::exact;
    return fmt::format("r{}", slot(referenceIndex(n), byRule ? OperandUse::byRule : OperandUse::plain));
}

int Emitter::keep(NodeIndex n)
{
    m_out.placeOf[n] = m_kept;
    return m_kept++;
}

std::string Emitter::emit(NodeIndex n, bool raw)
{
    const Node &node = m_tree.nodes[n];
    const CheckedNode &checked = m_checked.nodes[n];
    if (node.kind == NodeKind::reference)
        return reference(n, raw);
    if (checked.error) {
        m_out.failures.push_back(n);
        return fmt::format("er({})", m_out.failures.size() - 1);
    }
    switch (node.kind) {
    case NodeKind::number:
    case NodeKind::yesNo:
    case NodeKind::date:
    case NodeKind::pi:
        return number(checked.constant);
    case NodeKind::words:
        return words(n);
    case NodeKind::negate:
        return fmt::format("(0-{})", emit(node.children[0], false));
    case NodeKind::logicalNot:
        return fmt::format("nt({})", emit(node.children[0], false));
    case NodeKind::convert:
        return emit(node.children[0], raw);
    case NodeKind::ternary: {
        const int place = keep(n);
        const std::string test = emit(node.children[0], false);
        const std::string yes = emit(node.children[1], raw);
        const std::string no = emit(node.children[2], raw);
        return fmt::format("(kn({0},{1})?k{0}:(k{0}?{2}:{3}))", place, test, yes, no);
    }
    case NodeKind::binary:
        return binary(n);
    default:
        return call(n, raw);
    }
}

std::string Emitter::words(NodeIndex n)
{
    if (m_checked.nodes[n].isConstantChoice)
        return number(m_checked.nodes[n].constant);
    m_out.words.push_back(n);
    m_out.placeOf[n] = static_cast<std::int32_t>(m_out.words.size() - 1);
    for (const LivePart &part : m_tree.wordsParts[m_tree.nodes[n].extra])
        noteReferences(part.value);
    return fmt::format("wd({})", m_out.words.size() - 1);
}

void Emitter::noteReferences(NodeIndex n)
{
    if (m_tree.nodes[n].kind == NodeKind::reference)
        m_liveReferences.push_back(referenceIndex(n));
    for (const NodeIndex child : m_tree.nodes[n].children)
        noteReferences(child);
    if (m_tree.nodes[n].kind == NodeKind::words)
        for (const LivePart &part : m_tree.wordsParts[m_tree.nodes[n].extra])
            noteReferences(part.value);
}

std::string Emitter::binary(NodeIndex n)
{
    const Node &node = m_tree.nodes[n];
    const NodeIndex left = node.children[0], right = node.children[1];
    if (node.op == Op::power)
        return power(left, right);
    if (node.op == Op::logicalAnd || node.op == Op::logicalOr) {
        const int place = keep(n);
        const std::string first = emit(left, false), second = emit(right, false);
        return node.op == Op::logicalAnd
                   ? fmt::format("(kn({0},{1})?k{0}:(k{0}?{2}:0))", place, first, second)
                   : fmt::format("(kn({0},{1})?k{0}:(k{0}?1:{2}))", place, first, second);
    }
    if (node.op >= Op::equal)
        return comparison(node.op, left, right);
    const std::string a = emit(left, false), b = emit(right, false);
    switch (node.op) {
    case Op::add:
        return fmt::format("({}+{})", a, b);
    case Op::subtract:
        return fmt::format("({}-{})", a, b);
    case Op::multiply:
        return fmt::format("({}*{})", a, b);
    default: // 1/(1/0) would be 0: a divisor that is worked out must be finite
        return isAtom(right) ? fmt::format("({}/{})", a, b) : fmt::format("({}/fi({}))", a, b);
    }
}

std::string Emitter::power(NodeIndex left, NodeIndex right)
{
    const Node &exponent = m_tree.nodes[right];
    const bool negative = exponent.kind == NodeKind::negate;
    const NodeIndex inner = negative ? exponent.children[0] : right;
    if (m_tree.nodes[inner].kind == NodeKind::number) {
        const double size = m_checked.nodes[inner].constant;
        // A power of a number that is not finite stays so, except to 0 and below.
        if (size > 0.0 && (!negative || isAtom(left)))
            return fmt::format("({}^{})", emit(left, false), number(negative ? -size : size));
    }
    const std::string a = emit(left, false), b = emit(right, false);
    return fmt::format("pw({},{})", a, b);
}

std::string Emitter::comparison(Op op, NodeIndex left, NodeIndex right)
{
    const Bound boundA = bound(left), boundB = bound(right);
    const bool bounded = boundA != Bound::exact || boundB != Bound::exact;
    const std::string a = emit(left, bounded), b = emit(right, bounded);
    if (!bounded)
        return fmt::format("{}({},{})", comparisonName(op), a, b);
    return fmt::format("cb({},{},{},{},{})", static_cast<int>(op), static_cast<int>(boundA),
                       static_cast<int>(boundB), a, b);
}

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

bool Emitter::mayHaveReason(NodeIndex n) const
{
    const Node &node = m_tree.nodes[n];
    if (m_checked.nodes[n].error)
        return false;
    switch (node.kind) {
    case NodeKind::reference:
        return true;
    case NodeKind::convert:
        return mayHaveReason(node.children[0]);
    case NodeKind::ternary:
        return mayHaveReason(node.children[1]) || mayHaveReason(node.children[2]);
    case NodeKind::call: {
        const CheckedNode &checked = m_checked.nodes[n];
        switch (checked.function->general) {
        case General::none:
        case General::because:
        case General::worst:
        case General::pick:
        case General::lookup:
            return true;
        case General::ifError:
            return mayHaveReason(checked.arguments[0].node) || mayHaveReason(checked.arguments[1].node);
        default:
            return false;
        }
    }
    default:
        return false;
    }
}

std::uint32_t CompiledFormula::firstAlike(std::uint32_t reference) const
{
    for (std::uint32_t i = 0; i < reference; ++i)
        if (sameText(tree->references[i], tree->references[reference]))
            return i;
    return reference;
}

int CompiledFormula::slotOf(std::uint32_t reference, OperandUse use) const
{
    const auto at = std::find(operands.begin(), operands.end(), Operand{reference, use});
    return at == operands.end() ? -1 : static_cast<int>(at - operands.begin());
}

Result<std::shared_ptr<const CompiledFormula>> compileFormula(std::shared_ptr<const Tree> tree,
                                                              std::shared_ptr<const Checked> checked,
                                                              const Registry &registry, NodeIndex root)
{
    auto out = std::make_shared<CompiledFormula>();
    out->tree = std::move(tree);
    out->checked = std::move(checked);
    out->registry = &registry;
    out->root = root;
    const std::string text = Emitter(*out).run(root);
    // muParser refuses 20,000 characters; what 2,000 typed ones grow to stays below unless every one is a
    // unit.
    if (text.size() > 19000)
        return fail(
            ErrorKind::limit,
            "the formula is too long once its units are worked out: put a part of it in a cell of its own",
            out->tree->nodes[root].span);
    out->shape = shapeId(text);
    out->entries = std::make_unique<SiteEntry[]>(out->sites.size());
    return std::shared_ptr<const CompiledFormula>(std::move(out));
}

} // namespace puteal
