/// Units and substances right after a number.
#include <fmt/format.h>

#include "base/number.h"
#include "formula/parser.h"

namespace puteal
{

/// The unit behind a number, if one stands there. Leaves m_pos behind what belongs to the literal.
bool Parser::unitAfter(Node &node, std::size_t numberEnd)
{
    const std::size_t pos = afterBlanks(numberEnd);
    const char c = at(pos);
    const std::string_view word = wordAt(pos);
    if (word == "and" || word == "or")
        return true;
    if (word == "as")
        return fails(ErrorKind::substance, "`as` follows a unit of mass or amount, for example 3 mg/L as Fe",
                     pos, pos + 2);
    if (c == '$')
        return failsWith(
            ErrorKind::syntax,
            fmt::format("the $ stands before the amount: write ${}", piece(node.span.begin, numberEnd)),
            node.span.begin, pos + 1, "write the $ first", "$" + piece(node.span.begin, numberEnd));
    const bool perSomething =
        c == '1' && at(pos + 1) == '/' && !(at(pos + 2) >= '0' && at(pos + 2) <= '9') && pos > numberEnd;
    if (word.empty() && c != '%' && c != '(' && !perSomething)
        return pos == numberEnd ||
               !(mixedFraction(node, numberEnd, pos) || blankGroups(node.span.begin, numberEnd, pos));
    auto scanned = scanUnit(m_text, pos, m_units);
    if (!scanned) {
        if (c == '(' && !m_units.isUnitWord(wordAt(pos + 1)))
            return true;
        return failsAs(std::move(scanned.error()));
    }
    if (!*scanned)
        return word.empty() || wordAfterNumber(node, numberEnd, pos);
    m_pos = (*scanned)->end;
    for (Caution &note : (*scanned)->notes)
        tree.notes.push_back(std::move(note));
    node.opSpan = span(pos, m_pos);
    node.unit = static_cast<std::uint32_t>(tree.units.size());
    tree.units.push_back(std::move((*scanned)->unit));
    return slashWord(m_pos) && starWord(node, m_pos) && substanceAfter(node);
}

/// `1 1/2 in`: whole cells may hold it, a formula takes the decimal.
bool Parser::mixedFraction(const Node &node, std::size_t numberEnd, std::size_t pos)
{
    const auto digitsEnd = [this](std::size_t i) {
        while (at(i) >= '0' && at(i) <= '9')
            ++i;
        return i;
    };
    const std::size_t slash = digitsEnd(pos), end = digitsEnd(slash + 1);
    if (slash == pos || at(slash) != '/' || end == slash + 1)
        return false;
    const auto whole = readNumber(m_text.substr(node.span.begin, numberEnd - node.span.begin));
    const auto over = readNumber(m_text.substr(pos, slash - pos));
    const auto under = readNumber(m_text.substr(slash + 1, end - slash - 1));
    if (!whole || !over || !under || *under == 0.0)
        return false;
    const std::string text = shortest(*whole + *over / *under);
    failsWith(
        ErrorKind::syntax,
        fmt::format("a formula takes no fractions like `{}`: write {}", piece(node.span.begin, end), text),
        node.span.begin, end, fmt::format("write {}", text), text);
    return true;
}

/// Something stands behind a number that is no unit: a name (an operator is missing), or a mistyped unit.
bool Parser::wordAfterNumber(const Node &node, std::size_t numberEnd, std::size_t pos)
{
    const std::string_view word = wordAt(pos);
    if (wordSlip(pos, word) || groupedByMark(node.span.begin, numberEnd) || monthSlip(pos, word))
        return false;
    if (isKnown(word) || word == "pi" || at(afterBlanks(pos + word.size())) == '(')
        return failsWith(ErrorKind::syntax,
                         fmt::format("an operator is missing before `{}`: write {} * {}", word,
                                     piece(node.span.begin, numberEnd), word),
                         pos, pos + word.size(), "multiply",
                         (pos == numberEnd ? " * " : "* ") + std::string(word));
    return noUnit(pos, pos + word.size());
}

/// A word tight behind `/` after a unit: a unit word would have been taken, so it is a name or a mistyped
/// unit.
bool Parser::slashWord(std::size_t pos)
{
    if (at(pos) != '/')
        return true;
    const std::string_view word = wordAt(pos + 1);
    if (word.empty() || !m_isKnownWord || isKnown(word))
        return true;
    const std::size_t end = pos + 1 + word.size();
    if (at(end) == '.' || at(afterBlanks(end)) == '(' || word == "pi")
        return true;
    return noUnit(pos + 1, end);
}

/// `62.5 gal/person*day`: units are joined by * only inside parentheses.
bool Parser::starWord(const Node &node, std::size_t pos)
{
    const std::string_view word = at(pos) == '*' ? wordAt(pos + 1) : std::string_view{};
    if (word.empty() || !m_units.isUnitWord(word) || isKnown(word) || at(pos + 1 + word.size()) == '(')
        return true;
    const std::string unit = piece(node.opSpan);
    const std::size_t slash = unit.rfind('/');
    const std::string text = slash == std::string::npos ? fmt::format("({}*{})", unit, word)
                                                        : fmt::format("{}({}*{})", unit.substr(0, slash + 1),
                                                                      unit.substr(slash + 1), word);
    return failsWith(ErrorKind::unit,
                     fmt::format("units are joined by * only inside parentheses: write {}", text),
                     node.opSpan.begin, pos + 1 + word.size(), fmt::format("write {}", text), text);
}

/// `as X` behind a unit.
bool Parser::substanceAfter(Node &node)
{
    const std::size_t begin = afterBlanks(m_pos);
    if (begin == m_pos || wordAt(begin) != "as")
        return true;
    const std::size_t wordBegin = afterBlanks(begin + 2);
    const std::string_view word = wordAt(wordBegin);
    if (word.empty())
        return fails(ErrorKind::substance, "a substance is missing after `as`, for example as Fe", begin,
                     begin + 2);
    const std::size_t end = wordBegin + word.size();
    const auto id = UnitTable::substanceId(word);
    if (!id && m_units.isUnitWord(word))
        return failsWith(ErrorKind::substance,
                         fmt::format("`as` says of what; to show it in {0} write -> {0}", word), begin, end,
                         "write -> for as", fmt::format("-> {}", word));
    if (!id)
        return failsAs(noSuchSubstance(word, span(wordBegin, end)));
    auto unit = tagged(tree.units[node.unit], *id, m_units);
    if (!unit) {
        failsAs(std::move(unit.error()));
        error.place.span = span(node.opSpan.begin, end);
        for (Fix &fix : error.fixes)
            fix.span = *error.place.span;
        return false;
    }
    tree.units[node.unit] = std::move(*unit);
    node.asSubstance = *id;
    m_pos = end;
    return true;
}

bool Parser::noUnit(std::size_t begin, std::size_t end)
{
    if (!withSuggestions)
        return fails(ErrorKind::unit, "", begin, end);
    if (spelledPower(begin, end))
        return false;
    return failsAs(noSuchUnit(m_text.substr(begin, end - begin), span(begin, end), m_units));
}

} // namespace puteal
