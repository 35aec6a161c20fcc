/// Units of a formula that cannot be worked out yet: what is known stands in its place, the rest is a
/// question mark.
#include <algorithm>

#include "session/session_state.h"
#include "units/shown_value.h"

namespace puteal
{

namespace
{

constexpr std::size_t mostTries = 80; ///< beginnings of the text that are tried as a formula

bool isWordByte(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '%' || c == '$' || c == '.';
}

/// The text with the parentheses and brackets closed that it leaves open; empty inside quotes.
std::string closed(std::string_view text)
{
    std::string open;
    bool quoted = false;
    for (const char c : text) {
        if (c == '"')
            quoted = !quoted;
        else if (!quoted && (c == '(' || c == '['))
            open += c == '(' ? ')' : ']';
        else if (!quoted && (c == ')' || c == ']') && !open.empty())
            open.pop_back();
    }
    if (quoted)
        return {};
    return std::string(text) + std::string(open.rbegin(), open.rend());
}

/// The longest beginning of the text that reads as a formula; `length` is how much of the text it takes.
std::optional<Tree> longestBeginning(std::string_view text, const UnitTable &units, std::size_t &length)
{
    std::size_t tries = 0;
    for (length = text.size(); length > 0 && tries < mostTries; --length) {
        const bool within = length < text.size() && isWordByte(text[length - 1]) && isWordByte(text[length]);
        if (within || text[length - 1] == ' ')
            continue;
        ++tries;
        if (const std::string whole = closed(text.substr(0, length)); !whole.empty())
            if (auto tree = parseFormula(whole, units))
                return std::move(*tree);
    }
    return {};
}

/// The piece without the parentheses round it.
Span bareSpan(const Tree &tree, NodeIndex i)
{
    Span span = tree.nodes[i].span;
    while (span.begin + 1 < span.end && tree.text[span.begin] == '(') {
        ++span.begin;
        --span.end;
        while (span.begin < span.end && tree.text[span.begin] == ' ')
            ++span.begin;
        while (span.begin < span.end && tree.text[span.end - 1] == ' ')
            --span.end;
    }
    return span;
}

/// Numbers and references in the order of the text; what stands inside quotes is left out.
std::vector<NodeIndex> operandsOf(const Tree &tree, std::size_t length)
{
    std::vector<NodeIndex> out;
    for (NodeIndex i = 0; i < tree.nodes.size(); ++i) {
        const NodeKind kind = tree.nodes[i].kind;
        if ((kind == NodeKind::number || kind == NodeKind::reference) && bareSpan(tree, i).end <= length)
            out.push_back(i);
    }
    std::sort(out.begin(), out.end(),
              [&](NodeIndex a, NodeIndex b) { return tree.nodes[a].span.begin < tree.nodes[b].span.begin; });
    for (const Node &words : tree.nodes)
        if (words.kind == NodeKind::words)
            std::erase_if(out, [&](NodeIndex i) {
                return words.span.begin <= tree.nodes[i].span.begin &&
                       tree.nodes[i].span.end <= words.span.end;
            });
    return out;
}

/// What stands between operands, with * as the dot of a units row.
std::string between(std::string_view text)
{
    std::string out;
    bool quoted = false;
    for (const char c : text) {
        quoted = c == '"' ? !quoted : quoted;
        if (c == '*' && !quoted) {
            while (!out.empty() && out.back() == ' ')
                out.pop_back();
            out += '.';
        } else if (c != ' ' || quoted || out.empty() || out.back() != '.') {
            out += c;
        }
    }
    return out;
}

std::string unitWords(const Program::Preview &piece)
{
    if (piece.type.kind != ValueKind::quantity)
        return kindWord(piece.type.kind);
    return piece.shown.text.empty() ? "number" : piece.shown.text;
}

} // namespace

std::string SessionState::unitsSoFar(const CellAt &at, std::string_view text,
                                     std::shared_ptr<const Tree> tree) const
{
    std::size_t length = text.size();
    if (m_workbook.sheets[at.sheet].column(at.column).kind == ColumnKind::words)
        return {};
    if (!tree) {
        auto beginning = longestBeginning(text, m_units, length);
        if (!beginning)
            return {};
        tree = std::make_shared<const Tree>(std::move(*beginning));
    }
    const auto unitOf = [&](const Node &node, std::string_view piece) -> std::string {
        if (node.kind == NodeKind::number) {
            const std::string &unit = tree->units[node.unit].text;
            return unit.empty() ? "number" : unit;
        }
        // A range alone is no value; the greatest of it has its unit.
        for (const auto &form : {std::string(piece), "max(" + std::string(piece) + ")"}) {
            const auto alone = m_program->preview(m_workbook, at, form, m_values, Program::Whole::piece);
            if (alone.checked || !alone.error)
                return unitWords(alone);
        }
        return "?";
    };
    std::string row;
    std::size_t done = 0;
    for (const NodeIndex i : operandsOf(*tree, length)) {
        const Span span = bareSpan(*tree, i);
        if (span.begin < done)
            continue;
        row += between(text.substr(done, span.begin - done));
        row += unitOf(tree->nodes[i], text.substr(span.begin, span.end - span.begin));
        done = span.end;
    }
    return done == 0 ? std::string() : row + between(text.substr(done));
}

} // namespace puteal
