/// printFormula: a tree back to text in canonical spacing, with only the parentheses that are needed.
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "base/text.h"
#include "formula/tree.h"
#include "units/value.h"

namespace puteal
{

namespace
{

/// How tightly a node holds its parts together; what holds looser than its place asks for gets parentheses.
enum class Hold : std::uint8_t { ternary, logicalOr, logicalAnd, comparison, sum, term, factor, power, atom };

Hold holdOf(Op op)
{
    switch (op) {
    case Op::add:
    case Op::subtract:
        return Hold::sum;
    case Op::multiply:
    case Op::divide:
        return Hold::term;
    case Op::power:
        return Hold::power;
    case Op::logicalAnd:
        return Hold::logicalAnd;
    case Op::logicalOr:
        return Hold::logicalOr;
    default:
        return Hold::comparison;
    }
}

std::string_view spelling(Op op)
{
    static constexpr std::string_view words[] = {
        "+", "-", "*", "/", "^", "==", "!=", "<", "<=", ">", ">=", "and", "or"};
    return words[static_cast<std::size_t>(op)];
}

Hold next(Hold hold)
{
    return static_cast<Hold>(static_cast<std::uint8_t>(hold) + 1);
}

class Printer
{
public:
    explicit Printer(const Tree &tree) : m_tree(tree) {}
    std::string print(NodeIndex i, Hold wanted) const;
    std::string words(const Node &node, bool isQuoted) const;

private:
    std::string plain(const Node &node, Hold &hold) const;
    std::string number(const Node &node, Hold &hold) const;
    std::string power(const Node &node) const;
    std::string reference(const ReferenceText &text) const;

    const Tree &m_tree;
};

std::string Printer::print(NodeIndex i, Hold wanted) const
{
    Hold hold = Hold::atom;
    std::string text = plain(m_tree.nodes[i], hold);
    return hold < wanted ? "(" + text + ")" : text;
}

std::string Printer::plain(const Node &node, Hold &hold) const
{
    switch (node.kind) {
    case NodeKind::number:
        return number(node, hold);
    case NodeKind::words:
        return words(node, true);
    case NodeKind::yesNo:
        return node.number != 0.0 ? "yes" : "no";
    case NodeKind::date:
        return dateText(static_cast<std::int64_t>(node.number));
    case NodeKind::pi:
        return "pi";
    case NodeKind::reference:
        return reference(m_tree.references[node.extra]);
    case NodeKind::logicalNot:
        return "not(" + print(node.children[0], Hold::ternary) + ")";
    case NodeKind::call: {
        std::string text = node.name + "(";
        for (std::size_t i = 0; i < node.children.size(); ++i)
            text += (i > 0 ? ", " : "") + print(node.children[i], Hold::ternary);
        return text + ")";
    }
    case NodeKind::negate: {
        hold = Hold::factor;
        const Node &inner = m_tree.nodes[node.children[0]];
        // "-5 degC" is one literal, so minus a positive reading keeps its parentheses
        const bool reading = inner.kind == NodeKind::number &&
                             m_tree.units[inner.unit].type.scale == Scale::temperatureReading;
        return reading && !std::signbit(inner.typed) ? "-(" + print(node.children[0], Hold::ternary) + ")"
                                                     : "-" + print(node.children[0], Hold::factor);
    }
    case NodeKind::ternary:
        hold = Hold::ternary;
        return fmt::format("{} ? {} : {}", print(node.children[0], Hold::logicalOr),
                           print(node.children[1], Hold::ternary), print(node.children[2], Hold::ternary));
    case NodeKind::convert:
        hold = Hold::ternary;
        return fmt::format("{} -> {}", print(node.children[0], Hold::ternary), m_tree.units[node.unit].text);
    case NodeKind::binary:
        break;
    }
    hold = holdOf(node.op);
    if (node.op == Op::power)
        return power(node);
    const Hold left = hold == Hold::comparison ? next(hold) : hold;
    return fmt::format("{} {} {}", print(node.children[0], left), spelling(node.op),
                       print(node.children[1], next(hold)));
}

std::string Printer::number(const Node &node, Hold &hold) const
{
    const std::string digits = shortest(node.typed);
    const std::string &unit = m_tree.units[node.unit].text;
    if (digits.front() == '-')
        hold = Hold::factor;
    if (unit.empty())
        return digits;
    return unit.front() == '$' ? "$" + digits + unit.substr(1) : digits + " " + unit;
}

std::string Printer::power(const Node &node) const
{
    const Node &base = m_tree.nodes[node.children[0]];
    const Node &raised = m_tree.nodes[node.children[1]];
    const bool amount = base.kind == NodeKind::number && base.unit != 0;
    const bool bare =
        (raised.kind == NodeKind::number && raised.unit == 0) || raised.kind == NodeKind::reference;
    const std::string left =
        amount ? "(" + print(node.children[0], Hold::ternary) + ")" : print(node.children[0], Hold::atom);
    return left + "^" +
           (bare ? print(node.children[1], Hold::ternary)
                 : "(" + print(node.children[1], Hold::ternary) + ")");
}

std::string Printer::reference(const ReferenceText &text) const
{
    const auto index = [](const IndexText &i) {
        return i.isSigned ? fmt::format("{:+}", i.value) : fmt::format("{}", i.value);
    };
    std::string result = text.sheet.empty() ? text.word : text.sheet + "." + text.word;
    if (text.gone)
        return result + "[gone]";
    if (text.whole)
        return result + "[:]";
    if (text.first && text.last)
        return fmt::format("{}[{}:{}]", result, index(*text.first), index(*text.last));
    return text.first ? fmt::format("{}[{}]", result, index(*text.first)) : result;
}

std::string Printer::words(const Node &node, bool isQuoted) const
{
    const auto escaped = [&](const std::string &words) {
        std::string text;
        for (const char c : words) {
            if (c == '{')
                text += "{{";
            else if (isQuoted) // escapes of one character at a time, so that the brace of \u{..} is not
                               // doubled
                text += quoted(std::string(1, c)).substr(1, quoted(std::string(1, c)).size() - 2);
            else
                text += c;
        }
        return text;
    };
    std::string result;
    for (const LivePart &part : m_tree.wordsParts[node.extra]) {
        result += escaped(part.before) + "{" + print(part.value, Hold::ternary);
        if (part.figures > 0)
            result += fmt::format(", {} figures", part.figures);
        else if (part.places >= 0)
            result += fmt::format(", {} places", part.places);
        result += "}";
    }
    result += escaped(node.name);
    return isQuoted ? "\"" + result + "\"" : result;
}

} // namespace

std::string printFormula(const Tree &tree)
{
    return Printer(tree).print(tree.root, Hold::ternary);
}

std::string printWordsCell(const Tree &tree)
{
    return Printer(tree).words(tree.nodes[tree.root], false);
}

} // namespace puteal
