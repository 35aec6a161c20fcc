/// Prints a tree with units in place of operands.
#include "check/units_row.h"

#include "units/shown_value.h"

namespace puteal
{

namespace
{

struct Printer {
    const Tree &tree;
    const Checked &checked;
    const UnitTable &units;

    std::string operand(NodeIndex i) const
    {
        const CheckedNode &node = checked.nodes[i];
        if (node.type.kind != ValueKind::quantity)
            return kindWord(node.type.kind);
        if (!node.shown.text.empty())
            return node.shown.text;
        return node.type.quantity.isPure() ? "number" : typeWords(node.type.quantity, units);
    }

    static int strength(const Node &node)
    {
        if (node.kind == NodeKind::ternary)
            return 0;
        if (node.kind != NodeKind::binary)
            return node.kind == NodeKind::negate ? 5 : 9;
        switch (node.op) {
        case Op::logicalOr:
            return 1;
        case Op::logicalAnd:
            return 2;
        case Op::add:
        case Op::subtract:
            return 4;
        case Op::multiply:
        case Op::divide:
            return 6;
        case Op::power:
            return 8;
        default:
            return 3;
        }
    }

    /// In parentheses where the piece binds weaker than `least`.
    std::string inside(NodeIndex i, int least) const
    {
        std::string text = print(i);
        return strength(tree.nodes[i]) < least ? "(" + text + ")" : text;
    }

    static const char *opText(Op op)
    {
        switch (op) {
        case Op::add:
            return " + ";
        case Op::subtract:
            return " - ";
        case Op::multiply:
            return ".";
        case Op::divide:
            return " / ";
        case Op::power:
            return "^";
        case Op::equal:
            return " == ";
        case Op::notEqual:
            return " != ";
        case Op::less:
            return " < ";
        case Op::atMost:
            return " <= ";
        case Op::greater:
            return " > ";
        case Op::atLeast:
            return " >= ";
        case Op::logicalAnd:
            return " and ";
        case Op::logicalOr:
            return " or ";
        }
        return " ";
    }

    std::string binary(const Node &node) const
    {
        const int own = strength(node);
        if (node.op == Op::power) {
            const Span &span = tree.nodes[node.children[1]].span;
            return inside(node.children[0], own + 1) + "^" +
                   tree.text.substr(span.begin, span.end - span.begin);
        }
        return inside(node.children[0], own) + opText(node.op) + inside(node.children[1], own + 1);
    }

    std::string call(const Node &node) const
    {
        std::string text = node.name + "(";
        for (std::size_t n = 0; n < node.children.size(); ++n)
            text += (n == 0 ? "" : ", ") + print(node.children[n]);
        return text + ")";
    }

    std::string print(NodeIndex i) const
    {
        const Node &node = tree.nodes[i];
        if (const auto &error = checked.nodes[i].error)
            return error->kind == ErrorKind::blank ? "blank" : "waiting";
        switch (node.kind) {
        case NodeKind::call:
            return call(node);
        case NodeKind::negate:
            return "-" + inside(node.children[0], 6);
        case NodeKind::logicalNot:
            return "not (" + print(node.children[0]) + ")";
        case NodeKind::binary:
            return binary(node);
        case NodeKind::ternary:
            return inside(node.children[0], 1) + " ? " + print(node.children[1]) + " : " +
                   print(node.children[2]);
        case NodeKind::convert:
            return print(node.children[0]) + " -> " + operand(i);
        default:
            return operand(i);
        }
    }
};

} // namespace

std::string unitsRow(const Tree &tree, const Checked &checked, const UnitTable &units)
{
    return checked.nodes.empty() ? std::string() : Printer{tree, checked, units}.print(tree.root);
}

} // namespace puteal
