/// Operators by precedence, calls, parentheses, `->`.
#include "formula/parser.h"

#include <cmath>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/number.h"

namespace puteal
{

Parser::Level::Level(Parser &parser, std::size_t at) : m_parser(parser)
{
    if (++m_parser.m_depth > limits::nesting && !m_parser.failed())
        m_parser.tooDeep(at);
}

bool Parser::formula()
{
    skipBlanks();
    if (m_pos == m_text.size())
        return fails(ErrorKind::syntax, "the formula is empty", 0, m_text.size());
    if (at(m_pos) == '=' && at(m_pos + 1) != '=')
        return failsWith(ErrorKind::syntax, "a formula has no leading =: leave it out", m_pos,
                         afterBlanks(m_pos + 1), "leave = out", "");
    if (notMade())
        return false;
    const NodeIndex root = expression();
    if (failed())
        return false;
    tree.root = root;
    skipBlanks();
    if (m_text.substr(m_pos).starts_with("->") && !convert())
        return false;
    skipBlanks();
    return m_pos == m_text.size() || leftover();
}

/// `-> unit [as substance]` behind the whole formula.
bool Parser::convert()
{
    Node result;
    result.kind = NodeKind::convert;
    result.children = {tree.root};
    result.span.begin = node(tree.root).span.begin;
    m_pos += 2;
    if (!convertUnit(result))
        return false;
    result.span.end = static_cast<std::uint32_t>(m_pos);
    tree.root = add(std::move(result));
    return true;
}

/// The unit behind `->`: sets the node's unit, opSpan and substance.
bool Parser::convertUnit(Node &result)
{
    const std::size_t arrow = m_pos;
    skipBlanks();
    const std::size_t begin = m_pos;
    auto scanned = scanUnit(m_text, begin, m_units);
    if (!scanned) {
        return failsAs(std::move(scanned.error()));
    }
    if (!*scanned) {
        const std::string_view word = wordAt(begin);
        if (word.empty() || word == "as")
            return fails(ErrorKind::unit, "a unit is missing after ->", arrow - 2, arrow);
        return noUnit(begin, begin + word.size());
    }
    m_pos = (*scanned)->end;
    for (Caution &note : (*scanned)->notes)
        tree.notes.push_back(std::move(note));
    if (at(m_pos) == '/' && !wordAt(m_pos + 1).empty())
        return noUnit(m_pos + 1, m_pos + 1 + wordAt(m_pos + 1).size());
    result.unit = static_cast<std::uint32_t>(tree.units.size());
    tree.units.push_back(std::move((*scanned)->unit));
    result.opSpan = span(begin, m_pos);
    if (!substanceAfter(result))
        return false;
    result.opSpan.end = static_cast<std::uint32_t>(m_pos);
    return true;
}

NodeIndex Parser::expression()
{
    const NodeIndex condition = orChain();
    if (failed())
        return none;
    skipBlanks();
    return at(m_pos) == '?' ? ternary(condition) : condition;
}

NodeIndex Parser::ternary(NodeIndex condition)
{
    const std::size_t question = m_pos++;
    const Level level(*this, question);
    if (failed())
        return none;
    const NodeIndex yes = expression();
    if (failed())
        return none;
    skipBlanks();
    if (at(m_pos) != ':') {
        if (m_pos < m_text.size() && at(m_pos) != ')' && at(m_pos) != ',' && at(m_pos) != '-')
            leftover();
        else
            fails(ErrorKind::syntax, "`?` needs `:` and what holds otherwise", question, question + 1);
        return none;
    }
    ++m_pos;
    const NodeIndex no = expression();
    if (failed())
        return none;
    Node result;
    result.kind = NodeKind::ternary;
    result.children = {condition, yes, no};
    result.opSpan = span(question, question + 1);
    result.span = span(node(condition).span.begin, node(no).span.end);
    return add(std::move(result));
}

NodeIndex Parser::orChain()
{
    NodeIndex left = andChain();
    while (!failed()) {
        skipBlanks();
        const std::size_t begin = m_pos;
        if (at(begin) == '|') {
            replaceOperator(begin, begin + (at(begin + 1) == '|' ? 2 : 1), "or");
            return none;
        }
        if (!takeWord("or"))
            return left;
        const NodeIndex right = andChain();
        if (!failed())
            left = binary(Op::logicalOr, span(begin, begin + 2), left, right);
    }
    return none;
}

NodeIndex Parser::andChain()
{
    NodeIndex left = comparison();
    while (!failed()) {
        skipBlanks();
        const std::size_t begin = m_pos;
        if (at(begin) == '&') {
            replaceOperator(begin, begin + (at(begin + 1) == '&' ? 2 : 1), "and");
            return none;
        }
        if (!takeWord("and"))
            return left;
        const NodeIndex right = comparison();
        if (!failed())
            left = binary(Op::logicalAnd, span(begin, begin + 3), left, right);
    }
    return none;
}

/// The comparison operator at m_pos; length 0 when there is none. Look-alikes are refused with the right
/// spelling.
Op Parser::comparisonAt(std::size_t &length)
{
    struct Row {
        std::string_view typed;
        Op op;
        std::string_view meant; ///< not empty: a look-alike
    };
    static constexpr Row rows[] = {
        {"===", Op::equal, "=="}, {"!==", Op::notEqual, "!="}, {"==", Op::equal, {}},
        {"!=", Op::notEqual, {}}, {"<=", Op::atMost, {}},      {">=", Op::atLeast, {}},
        {"=<", Op::atMost, "<="}, {"=>", Op::atLeast, ">="},   {"<>", Op::notEqual, "!="},
        {"<", Op::less, {}},      {">", Op::greater, {}},      {"=", Op::equal, "=="}};
    const std::string_view rest = m_text.substr(m_pos);
    for (const Row &row : rows) {
        if (!rest.starts_with(row.typed))
            continue;
        length = row.typed.size();
        if (row.typed == "=")
            failsWith(ErrorKind::syntax, "write == to compare", m_pos, m_pos + 1, "write ==", "==");
        else if (!row.meant.empty())
            failsWith(ErrorKind::syntax, fmt::format("write {} instead of {}", row.meant, row.typed), m_pos,
                      m_pos + length, fmt::format("write {}", row.meant), std::string(row.meant));
        return row.op;
    }
    length = 0;
    return Op::equal;
}

NodeIndex Parser::comparison()
{
    const NodeIndex left = sum();
    if (failed())
        return none;
    skipBlanks();
    std::size_t length = 0;
    const Op op = comparisonAt(length);
    if (failed() || length == 0)
        return failed() ? none : left;
    const Span opSpan = span(m_pos, m_pos + length);
    m_pos += length;
    const NodeIndex right = sum();
    if (failed())
        return none;
    skipBlanks();
    const std::size_t second = m_pos;
    comparisonAt(length);
    if (failed())
        return none;
    if (length > 0) {
        m_pos += length;
        const Span middle = node(right).span;
        const NodeIndex third = sum();
        if (failed())
            return none;
        const std::string text = fmt::format("{} and {} {}", piece(node(left).span.begin, middle.end),
                                             piece(middle), piece(second, node(third).span.end));
        failsWith(ErrorKind::syntax, fmt::format("two things are compared at a time: write {}", text),
                  node(left).span.begin, node(third).span.end, "compare two at a time", text);
        return none;
    }
    return binary(op, opSpan, left, right);
}

NodeIndex Parser::sum()
{
    NodeIndex left = term();
    while (!failed()) {
        skipBlanks();
        const char c = at(m_pos);
        if ((c != '+' && c != '-') || (c == '-' && at(m_pos + 1) == '>'))
            return left;
        if (signSlip(m_pos))
            return none;
        const std::size_t begin = m_pos++;
        const NodeIndex right = term();
        if (!failed())
            left = binary(c == '+' ? Op::add : Op::subtract, span(begin, begin + 1), left, right);
    }
    return none;
}

NodeIndex Parser::term()
{
    NodeIndex left = factor();
    NodeIndex last = left; // the factor just before the operator
    while (!failed()) {
        skipBlanks();
        const char c = at(m_pos);
        if (c != '*' && c != '/')
            return left;
        const std::size_t begin = m_pos++;
        if (c == '*' && at(m_pos) == '*') {
            failsWith(ErrorKind::syntax, "write ^ for a power", begin, begin + 2, "write ^", "^");
            return none;
        }
        const NodeIndex right = factor();
        if (failed() || (c == '/' && fractionBefore(last, right)))
            return none;
        hintConversion(left, right);
        left = binary(c == '*' ? Op::multiply : Op::divide, span(begin, begin + 1), left, right);
        last = right;
    }
    return none;
}

/// `1/2 gal`: a whole number over a whole number with a unit, typed without blanks, is refused with the
/// decimal.
bool Parser::fractionBefore(NodeIndex left, NodeIndex right)
{
    const Node &a = node(left), &b = node(right);
    if (a.kind != NodeKind::number || b.kind != NodeKind::number || a.unit != 0 || b.unit == 0 ||
        a.span.end + 1 != b.span.begin || b.typed == 0.0)
        return false;
    const std::string over = piece(a.span),
                      under = piece(b.span.begin, b.span.begin + numberLength(m_text, b.span.begin));
    if (over.find_first_not_of("0123456789") != std::string::npos ||
        under.find_first_not_of("0123456789") != std::string::npos)
        return false;
    const std::string decimal = shortest(a.typed / b.typed) + piece(b.span.begin + under.size(), b.span.end);
    const Span whole = span(a.span.begin, b.span.end);
    failsWith(ErrorKind::syntax, fmt::format("`{}` can be read two ways: write {}", piece(whole), decimal),
              whole.begin, whole.end, fmt::format("write {}", decimal), decimal);
    return true;
}

/// A bare 365, 24 ... beside something that is no bare number may be a unit conversion done by hand.
void Parser::hintConversion(NodeIndex left, NodeIndex right)
{
    const auto isBare = [this](NodeIndex i) { return node(i).kind == NodeKind::number && node(i).unit == 0; };
    const bool leftBare = isBare(left), rightBare = isBare(right);
    if (leftBare == rightBare)
        return;
    static constexpr double conversions[] = {365, 52, 30, 24, 60, 1440, 8.34};
    const Node &bare = node(leftBare ? left : right);
    for (const double conversion : conversions)
        if (bare.typed == conversion)
            tree.hints.push_back(
                {"hand_conversion", "is this a unit conversion? units convert by themselves", bare.span});
}

NodeIndex Parser::factor()
{
    skipBlanks();
    if (at(m_pos) == '-' && at(m_pos + 1) != '>')
        return negation();
    if (at(m_pos) == '!' && at(m_pos + 1) != '=')
        return exclamation();
    if (at(m_pos) == '+') {
        failsWith(ErrorKind::syntax, "a plus sign stands only between two values: leave it out", m_pos,
                  m_pos + 1, "leave + out", "");
        return none;
    }
    return power();
}

/// `-x`; a negative temperature reading (`-5 degC`) is one literal, since minus a reading means nothing.
NodeIndex Parser::negation()
{
    const std::size_t begin = m_pos++;
    const Level level(*this, begin);
    if (failed())
        return none;
    const NodeIndex operand = factor();
    if (failed())
        return none;
    Node &inner = node(operand);
    if (inner.kind == NodeKind::number && !std::signbit(inner.typed) && m_text[inner.span.begin] != '(' &&
        tree.units[inner.unit].type.scale == Scale::temperatureReading) {
        inner.typed = -inner.typed;
        inner.number = tree.units[inner.unit].toBase(inner.typed);
        inner.span.begin = static_cast<std::uint32_t>(begin);
        return operand;
    }
    Node result;
    result.kind = NodeKind::negate;
    result.opSpan = span(begin, begin + 1);
    result.span = span(begin, inner.span.end);
    result.children = {operand};
    return add(std::move(result));
}

NodeIndex Parser::power()
{
    const NodeIndex base = atom();
    if (failed())
        return none;
    skipBlanks();
    if (at(m_pos) != '^')
        return base;
    const Node &left = node(base); // not used once something was parsed behind it
    if (left.kind == NodeKind::number && left.unit != 0 && m_text[left.span.begin] != '(') {
        const std::size_t length = numberLength(m_text, m_pos + 1);
        const std::string text = piece(left.span);
        const std::size_t end = m_pos + 1 + std::max<std::size_t>(length, 1);
        failsWith(ErrorKind::syntax,
                  fmt::format("write ({}){} for a power of the whole amount", text, piece(m_pos, end)),
                  left.span.begin, left.span.end, "raise the whole amount", fmt::format("({})", text));
        return none;
    }
    const Span opSpan = span(m_pos, m_pos + 1);
    ++m_pos;
    const NodeIndex raised = exponent(node(base).span.begin);
    if (failed())
        return none;
    const std::size_t behind = m_pos;
    skipBlanks();
    if (at(m_pos) == '^')
        return secondPower(base, raised);
    m_pos = behind;
    return binary(Op::power, opSpan, base, raised);
}

} // namespace puteal
