/// Quoted words, words cells, and the live values in braces inside them.
#include <charconv>
#include <iterator>

#include <fmt/format.h>
#include <utf8.h>

#include "base/limits.h"
#include "base/text.h"
#include "formula/parser.h"

namespace puteal
{

namespace
{

constexpr int mostFigures = 15; // a double carries no more
constexpr int mostPlaces = 15;

} // namespace

NodeIndex Parser::quotedWords()
{
    const std::size_t begin = m_pos++;
    Node result;
    result.kind = NodeKind::words;
    std::vector<LivePart> parts;
    std::string words;
    while (at(m_pos) != '"') {
        if (m_pos >= m_text.size()) {
            failsWith(ErrorKind::syntax, "the closing quotation mark is missing", begin, begin + 1,
                      "close the words", "\"");
            error.fixes.clear();
            addFix("close the words", m_text.size(), m_text.size(), "\"");
            return none;
        }
        if (at(m_pos) == '\\') {
            if (!escape(words))
                return none;
        } else if (at(m_pos) == '{' && at(m_pos + 1) == '{') {
            words += '{';
            m_pos += 2;
        } else if (at(m_pos) == '{') {
            parts.push_back({std::move(words), 0, 0, -1});
            words.clear();
            if (!livePart(parts.back()))
                return none;
        } else {
            words += m_text[m_pos++];
        }
    }
    ++m_pos;
    result.name = std::move(words);
    result.extra = static_cast<std::uint32_t>(tree.wordsParts.size());
    tree.wordsParts.push_back(std::move(parts));
    result.span = span(begin, m_pos);
    return add(std::move(result));
}

bool Parser::wordsCell()
{
    Node result;
    result.kind = NodeKind::words;
    std::vector<LivePart> parts;
    std::string words;
    while (m_pos < m_text.size()) {
        if (at(m_pos) == '{' && at(m_pos + 1) == '{') {
            words += '{';
            m_pos += 2;
        } else if (at(m_pos) == '{') {
            parts.push_back({std::move(words), 0, 0, -1});
            words.clear();
            if (!livePart(parts.back()))
                return false;
        } else {
            words += m_text[m_pos++];
        }
    }
    result.name = std::move(words);
    result.extra = static_cast<std::uint32_t>(tree.wordsParts.size());
    tree.wordsParts.push_back(std::move(parts));
    result.span = span(0, m_text.size());
    tree.root = add(std::move(result));
    return true;
}

/// `{ref}`, `{ref -> unit}`, `{ref, 3 figures}`, `{ref -> unit, 2 places}` at m_pos.
bool Parser::livePart(LivePart &part)
{
    const std::size_t opened = m_pos++;
    skipBlanks();
    const std::size_t begin = m_pos;
    const std::string_view word = wordAt(begin);
    m_pos += word.size();
    const bool isCell = !word.empty() && word != "yes" && word != "no" && word != "pi" && at(m_pos) != '(';
    if (!isCell)
        return failsWith(ErrorKind::syntax,
                         "braces show the value of a cell, for example {raw_iron}: write {{ for a brace that "
                         "is only a brace",
                         opened, opened + 1, "write {{", "{{");
    NodeIndex value = reference(begin, word);
    if (failed())
        return false;
    skipBlanks();
    if (m_text.substr(m_pos).starts_with("->")) {
        m_pos += 2;
        Node converted;
        converted.kind = NodeKind::convert;
        converted.children = {value};
        if (!convertUnit(converted))
            return false;
        converted.span = span(begin, m_pos);
        value = add(std::move(converted));
    }
    part.value = value;
    skipBlanks();
    if (at(m_pos) == ',' && !liveFormat(part))
        return false;
    skipBlanks();
    if (at(m_pos) == '}') {
        ++m_pos;
        return true;
    }
    if (m_pos >= m_text.size() || at(m_pos) == '"')
        return failsWith(ErrorKind::syntax,
                         "this brace is not closed: write {{ for a brace that is only a brace", opened,
                         opened + 1, "write {{", "{{");
    const std::size_t close = m_text.find_first_of("}\"", m_pos);
    fails(ErrorKind::syntax, "braces show one cell, perhaps in a unit: calculate in a cell and show that",
          opened, close == std::string_view::npos ? m_pos + 1 : close + (m_text[close] == '}' ? 1 : 0));
    addFix("write {{ for a brace that is only a brace", opened, opened + 1, "{{");
    return false;
}

/// `, 3 figures` or `, 2 places`.
bool Parser::liveFormat(LivePart &part)
{
    const std::size_t comma = m_pos++;
    skipBlanks();
    const std::size_t begin = m_pos;
    while (at(m_pos) >= '0' && at(m_pos) <= '9')
        ++m_pos;
    int count = -1;
    std::from_chars(m_text.data() + begin, m_text.data() + m_pos, count);
    const std::size_t digitsEnd = m_pos;
    skipBlanks();
    const std::string_view word = wordAt(m_pos);
    m_pos += word.size();
    const bool figures = word == "figures" || word == "figure";
    if (digitsEnd == begin || (!figures && word != "places" && word != "place"))
        return fails(ErrorKind::syntax,
                     "after the comma stand figures or places, for example {raw_iron, 3 figures}", comma,
                     std::max(m_pos, comma + 1));
    if (digitsEnd - begin > 2 || (figures && (count < 1 || count > mostFigures)) || count > mostPlaces)
        return fails(ErrorKind::limit,
                     figures ? fmt::format("between 1 and {} figures can be shown, not {}", mostFigures,
                                           piece(begin, digitsEnd))
                             : fmt::format("at most {} places can be shown, not {}", mostPlaces,
                                           piece(begin, digitsEnd)),
                     begin, digitsEnd);
    (figures ? part.figures : part.places) = count;
    return true;
}

/// One of \" \\ \n \t \u{hex} at m_pos.
bool Parser::escape(std::string &into)
{
    std::size_t end = m_pos + 2;
    if (at(m_pos + 1) == 'u') {
        const std::size_t close = m_text.find('}', m_pos);
        end = close == std::string_view::npos ? end : close + 1;
    }
    end = std::min(end, m_text.size());
    const auto read = unquoted("\"" + piece(m_pos, end) + "\"");
    if (!read || end - m_pos < 2)
        return failsWith(
            ErrorKind::syntax,
            "after a backslash only \", \\, n, t or u{hex} may stand: write \\\\ for a backslash", m_pos,
            m_pos + 1, "write \\\\", "\\\\");
    into += *read;
    m_pos = end;
    return true;
}

} // namespace puteal
