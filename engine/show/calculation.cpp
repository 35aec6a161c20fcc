/// The calculation of a cell in three steps: formula, numbers put in, result; with conversions, relations,
/// cautions.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "functions/functions_page.h"
#include "show/calculation_cell.h"

namespace puteal
{

namespace
{

/// One term of a sum with its sign, or a whole formula.
struct Term {
    NodeIndex node;
    const char *sign; ///< "", "+ ", "- "
};

void addTerms(const Tree &tree, NodeIndex index, const char *sign, std::vector<Term> &terms)
{
    const Node &node = tree.nodes[index];
    const bool isSum = node.kind == NodeKind::binary && (node.op == Op::add || node.op == Op::subtract);
    // behind a minus a sum in parentheses stays one term
    if (!isSum || sign[0] == '-') {
        terms.push_back({index, sign});
        return;
    }
    addTerms(tree, node.children[0], sign, terms);
    const char *second = node.op == Op::add ? "+ " : "- ";
    const Node &right = tree.nodes[node.children[1]];
    const bool rightIsSum =
        right.kind == NodeKind::binary && (right.op == Op::add || right.op == Op::subtract);
    if (rightIsSum)
        terms.push_back({node.children[1], second});
    else
        addTerms(tree, node.children[1], second, terms);
}

std::string addressWords(const Sheet &sheet, const CellAt &at)
{
    const std::string &name = sheet.cell(at.column, at.line).beside().name;
    return name.empty() ? fmt::format("{}[{}]", sheet.column(at.column).key, at.line + 1) : name;
}

/// A term behind its sign; a negative one in parentheses.
std::string signedTerm(const Term &term, const std::string &text)
{
    const bool minus = term.sign[0] != '\0' && text.starts_with('-');
    return term.sign + (minus ? "(" + text + ")" : text);
}

class Writer
{
public:
    Writer(const CalculationCell &cell, Calculation &out) : m_cell(cell), m_out(out) {}

    void formula();
    void result();
    void notes();

private:
    void sum(NodeIndex node, bool formulaToo);
    void ternary(NodeIndex node);
    void callNotes(NodeIndex node);
    void note(std::string words);

    const CalculationCell &m_cell;
    Calculation &m_out;
};

/// Terms of a sum, a line each; where there are two or more, their values too.
void Writer::sum(NodeIndex node, bool formulaToo)
{
    const Tree &tree = *m_cell.facts.tree;
    std::vector<Term> terms;
    addTerms(tree, node, "", terms);
    std::vector<std::string> values;
    for (const Term &term : terms) {
        if (formulaToo)
            m_out.formula.push_back(term.sign + pieceAsTyped(tree, term.node));
        m_out.putIn.push_back(signedTerm(term, piecePutIn(m_cell, term.node)));
        if (terms.size() < 2 || m_cell.facts.error)
            continue;
        const std::string value = pieceValue(m_cell, term.node, &m_cell.facts.shown);
        if (!value.empty())
            values.push_back(signedTerm(term, value));
    }
    if (values.size() == terms.size() && values.size() > 1)
        m_out.terms = std::move(values);
}

/// Both branches as typed; numbers are put into the condition and the branch taken.
void Writer::ternary(NodeIndex index)
{
    const Tree &tree = *m_cell.facts.tree;
    const Node &node = tree.nodes[index];
    m_out.formula.push_back(pieceAsTyped(tree, node.children[0]));
    m_out.formula.push_back("? " + pieceAsTyped(tree, node.children[1]));
    m_out.formula.push_back(": " + pieceAsTyped(tree, node.children[2]));
    NodeIndex branch = index;
    while (tree.nodes[branch].kind == NodeKind::ternary) {
        const Node &choice = tree.nodes[branch];
        const auto holds = conditionHolds(m_cell, choice.children[0]);
        const std::string condition = piecePutIn(m_cell, choice.children[0]);
        if (!holds) {
            m_out.putIn.push_back(condition);
            return;
        }
        m_out.putIn.push_back(fmt::format("{} is {}, so", condition, *holds ? "yes" : "no"));
        branch = choice.children[*holds ? 1 : 2];
    }
    sum(branch, false);
}

void Writer::formula()
{
    const Tree &tree = *m_cell.facts.tree;
    NodeIndex root = tree.root;
    if (tree.nodes[root].kind == NodeKind::words) {
        m_out.formula.push_back(tree.text);
        return;
    }
    std::string target;
    if (tree.nodes[root].kind == NodeKind::convert) {
        const NodeIndex child = tree.nodes[root].children[0];
        target = " " + std::string(trimmed(std::string_view(tree.text).substr(tree.nodes[child].span.end)));
        root = child;
    }
    if (tree.nodes[root].kind == NodeKind::ternary)
        ternary(root);
    else
        sum(root, true);
    m_out.formula.back() += target;
    if (!m_out.putIn.empty())
        m_out.putIn.back() += target;
}

void Writer::result()
{
    const NodeId node = m_cell.program.nodeOf(m_cell.at);
    if (const auto error = m_cell.program.errorOf(node, m_cell.values)) {
        m_out.error = errorLine(*error);
        return;
    }
    const NodeFacts &facts = m_cell.facts;
    if (facts.type.kind == ValueKind::blank)
        return;
    const Cell &cell = *m_cell.workbook.cell(m_cell.at);
    if (!facts.isFormula && facts.type.kind == ValueKind::quantity) {
        m_out.result = shownInFormula(m_cell, m_cell.at).value_or(cell.typed());
        return;
    }
    const double number = m_cell.values.number[node];
    const Attributes beside =
        m_cell.workbook.sheets[m_cell.at.sheet].effective(m_cell.at.column, m_cell.at.line);
    const std::string words = facts.type.kind == ValueKind::words
                                  ? m_cell.values.words.words(static_cast<std::uint32_t>(number))
                                  : std::string();
    m_out.result = showValue(facts.type, number, words, facts.shown, {beside.figures, beside.places},
                             m_cell.program.lists(), m_cell.program.units());
}

void Writer::note(std::string words)
{
    if (std::find(m_out.notes.begin(), m_out.notes.end(), words) == m_out.notes.end())
        m_out.notes.push_back(std::move(words));
}

/// The relation of a plugin's function and the defaults it took.
void Writer::callNotes(NodeIndex node)
{
    const CheckedNode &checked = m_cell.facts.checked->nodes[node];
    const FunctionInfo *function = checked.function;
    if (!function || function->general != General::none)
        return;
    if (!function->relation.empty())
        note(fmt::format("{}: {}", function->name, function->relation));
    for (const ArgumentPlan &argument : checked.arguments) {
        if (argument.from != ArgumentPlan::From::constant ||
            argument.parameter >= function->parameters.size())
            continue;
        const ParameterInfo &parameter = function->parameters[argument.parameter];
        if (!parameter.hasDefault)
            continue;
        const std::string mark =
            parameter.fallbackMark.empty() ? "" : " (" + markWords(parameter.fallbackMark) + ")";
        note(fmt::format("{} not given: {}{}", parameter.name, defaultWords(parameter), mark));
    }
}

void Writer::notes()
{
    const NodeFacts &facts = m_cell.facts;
    if (facts.checked) {
        for (std::string &conversion : conversionNotes(m_cell))
            note(std::move(conversion));
        for (const std::string &dropped : facts.checked->thingsDropped)
            note(dropped);
        for (NodeIndex node = 0; node < facts.tree->nodes.size(); ++node)
            if (facts.tree->nodes[node].kind == NodeKind::call)
                callNotes(node);
    }
    const NodeId node = m_cell.program.nodeOf(m_cell.at);
    for (const std::uint32_t id : m_cell.values.pool.members(m_cell.values.cautions[node]))
        m_out.cautions.push_back(m_cell.values.pool.caution(id).words);
    m_out.reason = m_cell.values.words.words(m_cell.values.reason[node]);
}

} // namespace

Calculation calculationOf(const Program &program, const Workbook &workbook, const Values &values,
                          const CellAt &at)
{
    Calculation out;
    const NodeId node = program.nodeOf(at);
    const Cell *stored = workbook.cell(at);
    if (node == noNode || !stored)
        return out;
    const Sheet &sheet = workbook.sheets[at.sheet];
    const std::string &item = sheet.itemWords(at.column, at.line);
    out.title = item.empty() ? sheet.column(at.column).title : item;
    out.name = addressWords(sheet, at);
    const CalculationCell cell{program, workbook, values, at, program.facts(node)};
    Writer writer(cell, out);
    if (cell.facts.tree && cell.facts.isFormula)
        writer.formula();
    else if (cell.facts.error && !stored->blank())
        out.formula.push_back(stored->typed());
    writer.result();
    writer.notes();
    return out;
}

} // namespace puteal
