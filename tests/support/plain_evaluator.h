/// A plain evaluator over formula trees, in base units, written apart from the engine's: what a formula must
/// give.
#pragma once

#include <cmath>
#include <map>
#include <numbers>
#include <optional>
#include <string>

#include "formula/tree.h"

namespace puteal::test
{

/// Evaluates the operations that random formulas are drawn from. No value = an error.
class PlainEvaluator
{
public:
    PlainEvaluator(const Tree &tree, const std::map<std::string, double> &cells)
        : m_tree(tree), m_cells(cells)
    {
    }
    std::optional<double> value() const { return at(m_tree.root); }

private:
    using Value = std::optional<double>;

    static Value finite(double x) { return std::isfinite(x) ? Value(x) : Value(); }
    static bool atMost(double a, double b) { return a <= b + 1e-12 * std::fmax(std::fabs(a), std::fabs(b)); }

    Value at(NodeIndex n) const
    {
        const Node &node = m_tree.nodes[n];
        switch (node.kind) {
        case NodeKind::number:
        case NodeKind::yesNo:
            return node.number;
        case NodeKind::pi:
            return std::numbers::pi;
        case NodeKind::reference:
            return m_cells.at(m_tree.references[node.extra].word);
        case NodeKind::convert:
            return at(node.children[0]);
        case NodeKind::negate: {
            const Value x = at(node.children[0]);
            return x ? Value(0.0 - *x) : x;
        }
        case NodeKind::logicalNot: {
            const Value x = at(node.children[0]);
            return x ? Value(*x != 0.0 ? 0.0 : 1.0) : x;
        }
        case NodeKind::ternary: {
            const Value test = at(node.children[0]);
            return test ? at(node.children[*test != 0.0 ? 1 : 2]) : test;
        }
        case NodeKind::binary:
            return binary(node);
        case NodeKind::call:
            return call(node);
        default:
            return {};
        }
    }

    Value binary(const Node &node) const
    {
        const Value a = at(node.children[0]);
        if (!a)
            return a;
        if (node.op == Op::logicalAnd && *a == 0.0)
            return 0.0;
        if (node.op == Op::logicalOr && *a != 0.0)
            return 1.0;
        const Value b = at(node.children[1]);
        if (!b)
            return b;
        switch (node.op) {
        case Op::add:
            return finite(*a + *b);
        case Op::subtract:
            return finite(*a - *b);
        case Op::multiply:
            return finite(*a * *b);
        case Op::divide:
            return finite(*a / *b);
        case Op::power:
            return finite(std::pow(*a, *b));
        case Op::less:
            return atMost(*b, *a) ? 0.0 : 1.0;
        case Op::atMost:
            return atMost(*a, *b) ? 1.0 : 0.0;
        case Op::greater:
            return atMost(*a, *b) ? 0.0 : 1.0;
        case Op::atLeast:
            return atMost(*b, *a) ? 1.0 : 0.0;
        case Op::equal:
            return atMost(*a, *b) && atMost(*b, *a) ? 1.0 : 0.0;
        case Op::notEqual:
            return atMost(*a, *b) && atMost(*b, *a) ? 0.0 : 1.0;
        default:
            return b;
        }
    }

    static Value stepped(const std::string &name, double x, double step)
    {
        if (step <= 0.0)
            return {};
        const double steps = x / step, whole = std::round(steps),
                     slack = 1e-12 * std::fmax(1.0, std::fabs(steps));
        if (std::fabs(steps - whole) <= slack)
            return whole * step;
        if (name == "ceil_to")
            return std::ceil(steps) * step;
        if (name == "floor_to")
            return std::floor(steps) * step;
        const double low = std::floor(std::fabs(steps));
        return std::copysign(std::fabs(steps) - low >= 0.5 - slack ? low + 1.0 : low, steps) * step;
    }

    Value call(const Node &node) const
    {
        const std::string &name = node.name;
        const Value a = at(node.children[0]);
        if (name == "if_error")
            return a ? a : at(node.children[1]);
        if (!a)
            return a;
        const double x = *a;
        if (name == "sqrt")
            return finite(std::sqrt(x));
        if (name == "abs")
            return std::fabs(x);
        if (name == "exp")
            return finite(std::exp(x));
        if (name == "ln")
            return finite(std::log(x));
        if (name == "log10")
            return finite(std::log10(x));
        if (name == "sin")
            return std::sin(x);
        if (name == "atan")
            return std::atan(x);
        if (name == "cbrt")
            return std::cbrt(x);
        double best = x;
        std::vector<double> all{x};
        for (std::size_t i = 1; i < node.children.size(); ++i) {
            const Value next = at(node.children[i]);
            if (!next)
                return next;
            best = name == "min" ? std::fmin(best, *next) : std::fmax(best, *next);
            all.push_back(*next);
        }
        if (name == "min" || name == "max")
            return best;
        if (name == "clamp")
            return atMost(all[1], all[2]) ? Value(std::fmin(std::fmax(x, all[1]), all[2])) : Value();
        return stepped(name, x, all[1]);
    }

    const Tree &m_tree;
    const std::map<std::string, double> &m_cells;
};

} // namespace puteal::test
