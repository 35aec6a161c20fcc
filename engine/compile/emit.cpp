/// Checked trees to the plain expressions the evaluator sees: base units, slots, guarded forms, lazy
/// branches.
#include "compile/emit.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "units/dates.h"

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
    if (x < 0.0) // read as one number: see readEmittedNumber
        return fmt::format("m{}", -x);
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
        if (m_tree.nodes[node.children[0]].kind == NodeKind::number)
            return number(-m_checked.nodes[node.children[0]].constant);
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
    if (const CheckedNode &sum = m_checked.nodes[n]; sum.type.kind == ValueKind::date) {
        const double day = sum.constant; // in base time
        return fmt::format("dt({}{}{},{},{})", a, node.op == Op::add ? '+' : '-', b, number(firstDay * day),
                           number((lastDay + 1) * day));
    }
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
