/// Refusals that several rules share, with what to write instead.
#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "formula/parser.h"

namespace puteal
{

/// && and || of other languages.
bool Parser::replaceOperator(std::size_t begin, std::size_t end, std::string_view word)
{
    const bool tightLeft = begin > 0 && m_text[begin - 1] != ' ',
               tightRight = end < m_text.size() && m_text[end] != ' ';
    return failsWith(ErrorKind::syntax, fmt::format("write {} instead of {}", word, piece(begin, end)), begin,
                     end, fmt::format("write {}", word),
                     fmt::format("{}{}{}", tightLeft ? " " : "", word, tightRight ? " " : ""));
}

/// Where a value was wanted.
NodeIndex Parser::missingValue()
{
    const std::size_t pos = m_pos;
    const std::string_view word = wordAt(pos);
    if (pos >= m_text.size()) {
        const std::size_t end =
            trimmed(m_text).empty() ? m_text.size() : m_text.find_last_not_of(" \t\n") + 1;
        fails(ErrorKind::syntax, "a value is missing at the end", end > 0 ? end - 1 : 0, end);
    } else if ((word == "and" || word == "or") && at(pos + word.size()) == '(') {
        fails(ErrorKind::syntax, fmt::format("`{0}` is no function: write this {0} that", word), pos,
              pos + word.size());
    } else if (!word.empty()) {
        fails(ErrorKind::syntax, fmt::format("a value is missing before `{}`", word), pos, pos + word.size());
    } else if (m_text.substr(pos).starts_with("->")) {
        fails(ErrorKind::syntax, "a value is missing before `->`", pos, pos + 2);
    } else if ((at(pos) == '<' || at(pos) == '>') && at(pos + 1) >= '0' && at(pos + 1) <= '9' &&
               m_inArguments) {
        fails(ErrorKind::syntax,
              "a reading of a bound stands alone in a cell: name that cell and write its "
              "name here",
              pos, pos + 1);
    } else if (std::string_view(")+-*/^=<>,?:]").find(at(pos)) != std::string_view::npos) {
        fails(ErrorKind::syntax, fmt::format("a value is missing before `{}`", at(pos)), pos, pos + 1);
    } else {
        unknownCharacter(pos);
    }
    return none;
}

/// Something stands where the formula (or its part) should have ended.
bool Parser::leftover()
{
    const std::size_t pos = m_pos;
    const char c = at(pos);
    const std::string_view word = wordAt(pos);
    if (c == ')')
        return failsWith(ErrorKind::syntax, "this parenthesis closes nothing", pos, pos + 1, "leave it out",
                         "");
    if (c == ']')
        return failsWith(ErrorKind::syntax, "this bracket closes nothing", pos, pos + 1, "leave it out", "");
    if (c == ',')
        return fails(ErrorKind::syntax, "a comma stands only between the arguments of a function", pos,
                     pos + 1);
    if (c == ';')
        return !semicolonSlip(pos);
    if (m_text.substr(pos).starts_with("->"))
        return fails(ErrorKind::syntax, "`->` stands once, at the end of the whole formula", pos, pos + 2);
    if (c == ':')
        return fails(ErrorKind::syntax, "`:` belongs to `? :` or to a range in brackets", pos, pos + 1);
    if (c == '[')
        return fails(ErrorKind::syntax, "brackets stand right behind a column key, for example cost[8]", pos,
                     pos + 1);
    if (c == '!')
        return fails(ErrorKind::syntax, "`!` has no meaning behind a value", pos, pos + 1);
    if (c == '%')
        return fails(ErrorKind::syntax, "`%` stands once, right behind a number", pos, pos + 1);
    if (quoteSlip(pos) || (!word.empty() && wordSlip(pos, word)) || secondNumber(pos))
        return false;
    if (word == "as")
        return fails(ErrorKind::substance, "`as` follows a unit, in a number or behind `->`", pos, pos + 2);
    if (!word.empty())
        return fails(ErrorKind::syntax, fmt::format("an operator is missing before `{}`", word), pos,
                     pos + word.size());
    if (c == '(' || c == '"' || c == '$' || c == '.' || (c >= '0' && c <= '9'))
        return fails(ErrorKind::syntax, fmt::format("an operator is missing before `{}`", c), pos, pos + 1);
    return unknownCharacter(pos);
}

bool Parser::unclosed(std::size_t opened)
{
    if (m_pos < m_text.size() && at(m_pos) != ']')
        return leftover();
    fails(ErrorKind::syntax, "this parenthesis is not closed", opened, opened + 1);
    addFix("close it at the end", m_text.size(), m_text.size(), ")");
    return false;
}

bool Parser::unknownCharacter(std::size_t pos)
{
    std::size_t end = pos + 1;
    while ((static_cast<unsigned char>(at(end)) & 0xC0U) == 0x80U)
        ++end;
    const std::string character = piece(pos, end);
    if (character == "&" || character == "|")
        return replaceOperator(pos, at(end) == at(pos) ? end + 1 : end, character == "&" ? "and" : "or");
    if (characterSlip(pos, end))
        return false;
    if (character == "{" || character == "}")
        return fails(ErrorKind::syntax, "braces stand only in words and in units", pos, end);
    return fails(ErrorKind::syntax, fmt::format("`{}` has no meaning in a formula", character), pos, end);
}

/// 'words' and curly twins of them.
NodeIndex Parser::singleQuotes()
{
    const std::size_t begin = m_pos;
    const std::size_t close = m_text.find('\'', begin + 1);
    if (close == std::string_view::npos) {
        fails(ErrorKind::syntax, "words stand in double quotation marks", begin, begin + 1);
        return none;
    }
    const std::string text = "\"" + piece(begin + 1, close) + "\"";
    failsWith(ErrorKind::syntax, fmt::format("words stand in double quotation marks: write {}", text), begin,
              close + 1, fmt::format("write {}", text), text);
    return none;
}

/// `!x`: the operand shows what to write.
NodeIndex Parser::exclamation()
{
    const std::size_t begin = m_pos;
    if (at(begin + 1) == '\0') {
        fails(ErrorKind::syntax, "write not( ) instead of !", begin, begin + 1);
        return none;
    }
    ++m_pos;
    const Level level(*this, begin);
    const NodeIndex operand = failed() ? none : factor();
    if (failed())
        return none;
    const std::string inner = piece(node(operand).span);
    const std::string text = inner.starts_with('(') ? "not" + inner : fmt::format("not({})", inner);
    failsWith(ErrorKind::syntax, fmt::format("write {} instead of !", text), begin, node(operand).span.end,
              fmt::format("write {}", text), text);
    return none;
}

/// The message says how deep the formula goes, so the parentheses that follow are counted without parsing
/// them.
bool Parser::tooDeep(std::size_t pos)
{
    std::size_t depth = m_depth, deepest = m_depth;
    for (std::size_t i = pos + 1; i < m_text.size(); ++i) {
        if (m_text[i] == '(')
            deepest = std::max(deepest, ++depth);
        else if (m_text[i] == ')' && depth > 0)
            --depth;
    }
    return fails(
        ErrorKind::limit,
        fmt::format("a formula may be nested {} levels deep; this one has {}", limits::nesting, deepest), pos,
        pos + 1);
}

} // namespace puteal
