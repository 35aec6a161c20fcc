/// Pieces of a formula: as typed, with numbers put in, their values.
#include <algorithm>
#include <cstdlib>

#include <fmt/format.h>

#include "base/text.h"
#include "show/calculation_cell.h"

namespace puteal
{

namespace
{

constexpr std::uint32_t mostListed = 6; // cells of a range written out

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// A value of any kind as it stands in a formula.
std::string inFormula(const StaticType &type, std::string shown)
{
    const bool isWords = type.kind == ValueKind::words || type.kind == ValueKind::choice;
    return isWords ? quoted(shown) : shown;
}

/// Replaces references of one piece from the left to the right.
class PutIn
{
public:
    PutIn(const CalculationCell &cell, NodeIndex root) : m_cell(cell), m_tree(*cell.facts.tree), m_root(root)
    {
    }

    std::string text()
    {
        m_done = m_tree.nodes[m_root].span.begin;
        walk(m_root, nullptr, 0);
        m_text += m_tree.text.substr(m_done, m_tree.nodes[m_root].span.end - m_done);
        return m_text;
    }

private:
    void walk(NodeIndex index, const Node *parent, std::size_t place);
    void replace(const Node &node, const std::string &shown);
    std::optional<std::string> shown(const Node &node) const;
    std::string range(const RangeAt &range) const;
    bool namesACell(NodeIndex call) const;

    const CalculationCell &m_cell;
    const Tree &m_tree;
    NodeIndex m_root;
    std::string m_text;
    std::uint32_t m_done = 0;
};

/// state(x), known(x), why(x) speak of the cell, not of its value.
bool PutIn::namesACell(NodeIndex call) const
{
    const FunctionInfo *function =
        m_cell.facts.checked ? m_cell.facts.checked->nodes[call].function : nullptr;
    return function && (function->general == General::state || function->general == General::known ||
                        function->general == General::why);
}

std::string PutIn::range(const RangeAt &range) const
{
    const std::uint32_t count = range.last - range.first + 1;
    const std::uint32_t head = count <= mostListed ? count : mostListed / 2;
    std::string text;
    for (std::uint32_t i = 0; i < head; ++i) {
        const auto value = shownInFormula(m_cell, {range.sheet, range.column, range.first + i});
        text += (i ? ", " : "") + value.value_or("blank");
    }
    if (count > mostListed)
        text += fmt::format(", ... {} ({} cells)",
                            shownInFormula(m_cell, {range.sheet, range.column, range.last}).value_or("blank"),
                            count);
    return text;
}

std::optional<std::string> PutIn::shown(const Node &node) const
{
    if (!m_cell.facts.binding || node.extra >= m_cell.facts.binding->references.size())
        return {};
    const BoundReference &reference = m_cell.facts.binding->references[node.extra];
    return reference.isRange ? range(reference.range) : shownInFormula(m_cell, reference.cell);
}

void PutIn::replace(const Node &node, const std::string &shown)
{
    m_text += m_tree.text.substr(m_done, node.span.begin - m_done) + shown;
    m_done = node.span.end;
}

void PutIn::walk(NodeIndex index, const Node *parent, std::size_t place)
{
    const Node &node = m_tree.nodes[index];
    if (node.kind == NodeKind::call && namesACell(index))
        return;
    if (node.kind != NodeKind::reference) {
        for (std::size_t i = 0; i < node.children.size(); ++i)
            walk(node.children[i], &node, i);
        return;
    }
    auto text = shown(node);
    if (!text)
        return;
    const bool amount = text->find(' ') != std::string::npos;
    const bool base =
        parent && parent->kind == NodeKind::binary && parent->op == Op::power && place == 0 && amount;
    const bool divisor = parent && parent->kind == NodeKind::binary && parent->op == Op::divide &&
                         place == 1 && text->find('/') != std::string::npos;
    const bool minus = text->front() == '-' && parent && (parent->kind == NodeKind::negate || place > 0);
    replace(node, base || divisor || minus ? "(" + *text + ")" : *text);
}

/// Two texts that fit the cell (its set unit, its choices) and can be told apart: yes and no of a condition.
std::optional<std::pair<std::string, std::string>> fittingPair(const CalculationCell &cell)
{
    const StaticType &type = cell.facts.type;
    switch (type.kind) {
    case ValueKind::quantity: {
        const Unit &unit = cell.facts.shown;
        return std::pair{showQuantity(unit.toBase(1), Bound::exact, unit, {}).text(),
                         showQuantity(unit.toBase(2), Bound::exact, unit, {}).text()};
    }
    case ValueKind::choice: {
        const std::vector<std::string> &words = cell.program.lists().words(type.list);
        if (words.size() < 2)
            return {};
        return std::pair{quoted(words[0]), quoted(words[1])};
    }
    case ValueKind::date:
        return std::pair<std::string, std::string>{"2001-01-01", "2002-01-01"};
    case ValueKind::words:
        return std::pair<std::string, std::string>{"\"yes\"", "\"no\""};
    default:
        return std::pair<std::string, std::string>{"yes", "no"};
    }
}

} // namespace

std::optional<bool> conditionHolds(const CalculationCell &cell, NodeIndex node)
{
    const auto pair = fittingPair(cell);
    if (!pair || cell.facts.error)
        return {};
    const auto value = [&](const std::string &text) {
        return cell.program.preview(cell.workbook, cell.at, text, cell.values);
    };
    const auto asked =
        value(fmt::format("({}) ? {} : {}", pieceAsTyped(*cell.facts.tree, node), pair->first, pair->second));
    const auto yes = value(pair->first);
    if (asked.error || yes.error || asked.type.kind != yes.type.kind)
        return {};
    // Words carry the number of a pool of their own in each look, so only their text compares.
    return yes.type.kind == ValueKind::words ? asked.words == yes.words : asked.number == yes.number;
}

std::optional<std::string> shownInFormula(const CalculationCell &cell, const CellAt &at)
{
    const NodeId node = cell.program.nodeOf(at);
    const Cell *other = cell.workbook.cell(at);
    if (node == noNode || !other || other->blank() || cell.values.status[node] != ErrorKind::none)
        return {};
    const NodeFacts &facts = cell.program.facts(node);
    if (facts.type.kind == ValueKind::blank)
        return {};
    if (!facts.isFormula && facts.type.kind == ValueKind::quantity) {
        std::string typed(trimmed(other->typed()));
        const bool bare =
            isDigit(typed.back()) && !facts.shown.text.empty() && typed.find('$') == std::string::npos;
        return bare && typed.find(' ') == std::string::npos ? typed + " " + facts.shown.text : typed;
    }
    const double number = cell.values.number[node];
    const Attributes beside = cell.workbook.sheets[at.sheet].effective(at.column, at.line);
    const std::string words = facts.type.kind == ValueKind::words
                                  ? cell.values.words.words(static_cast<std::uint32_t>(number))
                                  : std::string();
    return inFormula(facts.type,
                     showValue(facts.type, number, words, facts.shown, {beside.figures, beside.places},
                               cell.program.lists(), cell.program.units()));
}

std::string pieceAsTyped(const Tree &tree, NodeIndex node)
{
    const Span span = tree.nodes[node].span;
    return tree.text.substr(span.begin, span.end - span.begin);
}

std::string piecePutIn(const CalculationCell &cell, NodeIndex node)
{
    return PutIn(cell, node).text();
}

std::string pieceValue(const CalculationCell &cell, NodeIndex node, const Unit *unit)
{
    const Node &piece = cell.facts.tree->nodes[node];
    if (piece.kind == NodeKind::number)
        return pieceAsTyped(*cell.facts.tree, node);
    const auto preview =
        cell.program.preview(cell.workbook, cell.at, pieceAsTyped(*cell.facts.tree, node), cell.values);
    if (preview.error || preview.type.kind == ValueKind::blank)
        return {};
    Unit shown = preview.shown;
    if (unit && unit->type.dimension == preview.type.quantity.dimension &&
        unit->type.scale == preview.type.quantity.scale)
        if (const auto fitting = retagged(*unit, preview.type.quantity, cell.program.units()))
            shown = *fitting;
    return showValue(preview.type, preview.number, preview.words, shown, {}, cell.program.lists(),
                     cell.program.units());
}

} // namespace puteal
