/// Atoms: parentheses, calls, `not( )`, exponents, and the small reading helpers of the parser.
#include <fmt/format.h>

#include "base/limits.h"
#include "base/number.h"
#include "formula/parser.h"

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

} // namespace

NodeIndex Parser::add(Node node)
{
    tree.nodes.push_back(std::move(node));
    return static_cast<NodeIndex>(tree.nodes.size() - 1);
}

NodeIndex Parser::binary(Op op, Span opSpan, NodeIndex left, NodeIndex right)
{
    Node result;
    result.kind = NodeKind::binary;
    result.op = op;
    result.opSpan = opSpan;
    result.span = {node(left).span.begin, node(right).span.end};
    result.children = {left, right};
    return add(std::move(result));
}

NodeIndex Parser::atom()
{
    skipBlanks();
    const std::size_t begin = m_pos;
    const char c = at(begin);
    if (isDigit(c) || (c == '.' && isDigit(at(begin + 1))))
        return number();
    if (c == '$')
        return money();
    if (c == '(')
        return group();
    if (c == '"')
        return quotedWords();
    if (c == '\'')
        return singleQuotes();
    const std::string_view word = wordAt(begin);
    if (word.empty() || word == "and" || word == "or" || word == "as")
        return missingValue();
    if (word == "not")
        return notCall(begin);
    m_pos += word.size();
    if (at(afterBlanks(m_pos)) == '(')
        return call(begin, word);
    Node result;
    result.span = span(begin, m_pos);
    if (word == "yes" || word == "no") {
        result.kind = NodeKind::yesNo;
        result.number = word == "yes" ? 1.0 : 0.0;
        return add(std::move(result));
    }
    if (word == "pi") {
        result.kind = NodeKind::pi;
        return add(std::move(result));
    }
    return reference(begin, word);
}

/// `( expr )`; the node's span takes the parentheses in.
NodeIndex Parser::group()
{
    const std::size_t begin = m_pos++;
    const Level level(*this, begin);
    if (failed())
        return none;
    const bool outer = m_inArguments;
    m_inArguments = false;
    skipBlanks();
    if (at(m_pos) == ')') {
        fails(ErrorKind::syntax, "nothing stands between the parentheses", begin, m_pos + 1);
        return none;
    }
    const NodeIndex inner = expression();
    if (failed())
        return none;
    m_inArguments = outer;
    skipBlanks();
    if (at(m_pos) != ')') {
        unclosed(begin);
        return none;
    }
    ++m_pos;
    node(inner).span = span(begin, m_pos);
    return inner;
}

NodeIndex Parser::notCall(std::size_t begin)
{
    m_pos += 3;
    skipBlanks();
    const bool closed = at(m_pos) == '(';
    const Level level(*this, begin);
    if (failed())
        return none;
    const std::size_t operandBegin = m_pos;
    const NodeIndex operand = closed ? group() : comparison();
    if (failed())
        return none;
    if (!closed) {
        const std::string text = fmt::format("not({})", piece(operandBegin, node(operand).span.end));
        failsWith(ErrorKind::syntax, fmt::format("not takes parentheses: write {}", text), begin,
                  node(operand).span.end, fmt::format("write {}", text), text);
        return none;
    }
    Node result;
    result.kind = NodeKind::logicalNot;
    result.opSpan = span(begin, begin + 3);
    result.span = span(begin, m_pos);
    result.children = {operand};
    return add(std::move(result));
}

NodeIndex Parser::call(std::size_t begin, std::string_view name)
{
    if (!lowerCase(begin, name, true))
        return none;
    Node result;
    result.kind = NodeKind::call;
    result.name = std::string(name);
    result.opSpan = span(begin, begin + name.size());
    skipBlanks();
    const std::size_t opened = m_pos++;
    const Level level(*this, opened);
    if (failed())
        return none;
    const bool outer = m_inArguments;
    m_inArguments = true;
    skipBlanks();
    while (at(m_pos) != ')' || !result.children.empty()) {
        skipBlanks();
        if (at(m_pos) == ',' || (at(m_pos) == ')' && !result.children.empty())) {
            fails(ErrorKind::syntax, fmt::format("an argument is missing before `{}`", at(m_pos)), m_pos,
                  m_pos + 1);
            return none;
        }
        result.children.push_back(expression());
        if (failed())
            return none;
        skipBlanks();
        if (at(m_pos) != ',')
            break;
        ++m_pos;
    }
    m_inArguments = outer;
    skipBlanks();
    if (at(m_pos) != ')') {
        m_inArguments = true;
        unclosed(opened);
        return none;
    }
    ++m_pos;
    if (result.children.size() > limits::arguments) {
        fails(ErrorKind::limit,
              fmt::format("a call may have {} arguments; this one has {}", limits::arguments,
                          result.children.size()),
              node(result.children[limits::arguments]).span.begin, node(result.children.back()).span.end);
        return none;
    }
    result.span = span(begin, m_pos);
    return add(std::move(result));
}

/// What may stand behind `^`: a bare number, perhaps negative, a reference, or anything in parentheses.
NodeIndex Parser::exponent(std::size_t baseBegin)
{
    const std::string base = piece(baseBegin, m_pos);
    skipBlanks();
    const std::size_t begin = m_pos;
    if (at(m_pos) == '-')
        ++m_pos;
    const std::size_t digits = m_pos;
    if (!isDigit(at(digits))) {
        const bool isGroup = digits == begin && at(begin) == '(';
        const NodeIndex operand = atom();
        if (failed() || isGroup || (digits == begin && node(operand).kind == NodeKind::reference))
            return failed() ? none : operand;
        const std::string text = fmt::format("({})", piece(begin, node(operand).span.end));
        failsWith(
            ErrorKind::syntax,
            fmt::format("an exponent is a number, a name or stands in parentheses: write {}{}", base, text),
            begin, node(operand).span.end, fmt::format("write {}{}", base, text), text);
        return none;
    }
    const std::size_t end = digits + numberLength(m_text, digits);
    Node result;
    result.kind = NodeKind::number;
    if (!numberForm(digits, end) || !value(begin, digits, end, result.typed))
        return none;
    const std::size_t pos = afterBlanks(end);
    const std::string_view word = wordAt(pos);
    if (at(pos) == '%' || (!word.empty() && word != "and" && word != "or" && word != "as"))
        return unitInExponent(baseBegin, begin, end);
    m_pos = end;
    result.typed = begin == digits ? result.typed : -result.typed;
    result.number = result.typed;
    result.span = span(begin, end);
    return add(std::move(result));
}

/// `2^3 ft` and `2^50 %`: a literal would bind tighter than the power, which nobody means.
NodeIndex Parser::unitInExponent(std::size_t baseBegin, std::size_t begin, std::size_t end)
{
    const std::size_t pos = afterBlanks(end);
    const auto scanned = scanUnit(m_text, pos, m_units);
    if (scanned && !*scanned) { // no unit: a name or a mistyped unit
        Node number;
        number.span = span(begin, end);
        wordAfterNumber(number, end, pos);
        return none;
    }
    const std::size_t unitEnd =
        scanned ? (*scanned)->end : pos + std::max<std::size_t>(wordAt(pos).size(), 1);
    const std::string text = at(pos) == '%'
                                 ? fmt::format("({})", piece(begin, unitEnd))
                                 : fmt::format("{} * 1 {}", piece(begin, end), piece(pos, unitEnd));
    const std::string whole = piece(baseBegin, begin) + text;
    failsWith(ErrorKind::syntax,
              fmt::format("an exponent is a plain number, not `{}`: write {}", piece(begin, unitEnd), whole),
              begin, unitEnd, fmt::format("write {}", whole), text);
    return none;
}

/// `2^3^2` is refused with both readings.
NodeIndex Parser::secondPower(NodeIndex base, NodeIndex raised)
{
    ++m_pos;
    const NodeIndex third = exponent(node(raised).span.begin);
    if (failed())
        return none;
    const Span a = node(base).span, b = node(raised).span, c = node(third).span;
    const std::string left = fmt::format("({}^{})^{}", piece(a), piece(b), piece(c));
    const std::string right = fmt::format("{}^({}^{})", piece(a), piece(b), piece(c));
    failsWith(ErrorKind::syntax,
              fmt::format("`{}` can be read two ways: write {} or {}", piece(a.begin, c.end), left, right),
              a.begin, c.end, fmt::format("write {}", left), left);
    addFix(fmt::format("write {}", right), a.begin, c.end, right);
    return none;
}

} // namespace puteal
