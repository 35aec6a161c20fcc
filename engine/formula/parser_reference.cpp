/// References: names, column keys, sheets, brackets.
#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "formula/parser.h"

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isUpper(char c)
{
    return c >= 'A' && c <= 'Z';
}
constexpr std::size_t mostIndexDigits = 9;

} // namespace

NodeIndex Parser::reference(std::size_t begin, std::string_view word)
{
    ReferenceText result;
    std::size_t wordBegin = begin;
    if (sheetSlip(begin, word) || cellAddress(begin) || monthSlip(begin, word))
        return none;
    if (at(m_pos) == '.' && !wordAt(m_pos + 1).empty()) {
        if (!lowerCase(begin, word, false))
            return none;
        result.sheet = std::string(word);
        result.sheetSpan = span(begin, m_pos);
        wordBegin = m_pos + 1;
        word = wordAt(wordBegin);
        m_pos = wordBegin + word.size();
    }
    if (!lowerCase(wordBegin, word, false))
        return none;
    result.word = std::string(word);
    result.wordSpan = span(wordBegin, m_pos);
    result.bracketSpan = span(m_pos, m_pos);
    if (at(m_pos) == '[' && !bracket(result, begin))
        return none;
    Node node;
    node.kind = NodeKind::reference;
    node.extra = static_cast<std::uint32_t>(tree.references.size());
    node.span = span(begin, m_pos);
    tree.references.push_back(std::move(result));
    return add(std::move(node));
}

/// `[gone]`, `[:]`, `[index]`, `[index:index]` at m_pos.
bool Parser::bracket(ReferenceText &result, std::size_t begin)
{
    const std::size_t opened = m_pos++;
    skipBlanks();
    if (wordAt(m_pos) == "gone" && at(afterBlanks(m_pos + 4)) == ']') {
        result.gone = true;
        m_pos = afterBlanks(m_pos + 4);
    } else if (at(m_pos) == ':' && at(afterBlanks(m_pos + 1)) == ']') {
        result.indexed = result.whole = true;
        m_pos = afterBlanks(m_pos + 1);
    } else {
        result.indexed = true;
        if (at(m_pos) == ':')
            return fails(ErrorKind::syntax,
                         "a range names both its lines, for example [2:9], or [:] for the whole column",
                         opened, m_pos + 1);
        IndexText first, last;
        if (!index(first))
            return !failed() && indexIsExpression(begin, opened);
        result.first = first;
        skipBlanks();
        if (at(m_pos) == ':') {
            const std::size_t colon = m_pos++;
            skipBlanks();
            if (!index(last))
                return !failed() &&
                       fails(ErrorKind::syntax,
                             "a range names both its lines, for example [2:9], or [:] for the whole column",
                             opened, colon + 1);
            result.last = last;
            skipBlanks();
        }
        if (at(m_pos) != ']' && at(m_pos) != ')' && at(m_pos) != ',' && m_pos < m_text.size())
            return indexIsExpression(begin, opened);
    }
    if (at(m_pos) != ']')
        return fails(ErrorKind::syntax, "this bracket is not closed", opened, opened + 1);
    ++m_pos;
    result.bracketSpan = span(opened, m_pos);
    return true;
}

bool Parser::index(IndexText &out)
{
    const std::size_t begin = m_pos;
    std::size_t digits = begin;
    if (at(begin) == '+' || at(begin) == '-') {
        out.isSigned = true;
        ++digits;
    }
    std::size_t end = digits;
    while (isDigit(at(end)))
        ++end;
    if (end == digits)
        return false;
    if (end - digits > mostIndexDigits)
        return fails(ErrorKind::range, fmt::format("no sheet has a line {}", piece(digits, end)), begin, end);
    std::from_chars(m_text.data() + digits, m_text.data() + end, out.value);
    if (at(begin) == '-')
        out.value = -out.value;
    out.span = span(begin, end);
    m_pos = end;
    return true;
}

/// `item[best]`: the line is worked out, which is what pick() is for.
bool Parser::indexIsExpression(std::size_t begin, std::size_t opened)
{
    m_pos = opened + 1;
    const bool outer = m_inArguments;
    m_inArguments = false;
    skipBlanks();
    const std::size_t exprBegin = m_pos;
    const NodeIndex inner = at(m_pos) == ']' || m_pos >= m_text.size() ? none : expression();
    if (failed())
        return false;
    m_inArguments = outer;
    skipBlanks();
    if (m_pos >= m_text.size())
        return fails(ErrorKind::syntax, "this bracket is not closed", opened, opened + 1);
    if (inner == none || at(m_pos) != ']') {
        const std::size_t end = std::min(m_pos + 1, m_text.size());
        return fails(ErrorKind::syntax, "a line number stands in brackets, for example [8], [-1] or [2:9]",
                     opened, end);
    }
    if (node(inner).kind == NodeKind::number)
        return fails(ErrorKind::syntax, "a line number is a whole number", exprBegin, node(inner).span.end);
    const std::string column = piece(begin, opened);
    const std::string text = fmt::format("pick({}[:], {})", column, piece(node(inner).span));
    return failsWith(ErrorKind::range,
                     fmt::format("a line that is worked out is taken with pick: write {}", text), begin,
                     m_pos + 1, fmt::format("write {}", text), text);
}

/// Names, keys and functions are lower case.
bool Parser::lowerCase(std::size_t begin, std::string_view word, bool isCall)
{
    if (std::none_of(word.begin(), word.end(), isUpper) && word.front() != '_')
        return true;
    if (m_units.isUnitWord(word) && !isCall)
        return true; // the binder says that a unit needs a number
    std::string lower;
    for (const char c : word.substr(word.front() == '_' ? 1 : 0))
        lower += isUpper(c) ? static_cast<char>(c - 'A' + 'a') : c;
    if (word == "ND" && !isCall)
        return fails(ErrorKind::name,
                     "a reading of ND stands alone in a cell, as in ND 0.05 mg/L: name that "
                     "cell and write its name here",
                     begin, begin + word.size());
    if (!isCall && capitalSlip(begin, word))
        return false;
    if (isCall && (lower == "if" || lower == "and" || lower == "or"))
        return fails(
            ErrorKind::syntax,
            fmt::format("`{}` is no function: write {}", word,
                        lower == "if" ? "condition ? this : that" : fmt::format("this {} that", lower)),
            begin, begin + word.size());
    const char *what = isCall ? "functions" : "names";
    if (lower.empty())
        return fails(ErrorKind::syntax, "a name starts with a letter", begin, begin + word.size());
    return failsWith(ErrorKind::name, fmt::format("{} are written in lower case: write {}", what, lower),
                     begin, begin + word.size(), fmt::format("write {}", lower), lower);
}

} // namespace puteal
