/// Reads the few forms of TOML a manifest is written in: headings, `key = value` on one line, plain letters.
/// Whatever else stands there, even in a comment, is left to the TOML library, so that a manifest means the
/// same in either and what is wrong is told in the library's words.
#include "functions/manifest_rows.h"

#include <charconv>
#include <cmath>

namespace puteal
{
namespace
{

using Kind = ManifestValue::Kind;

constexpr std::size_t sureDigits = 15; // a longer whole number may not fit a double
constexpr std::size_t usualValues = 8;

bool isPlain(char c)
{
    return c >= ' ' && c <= '~';
}

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

bool isKeyLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || isDigit(c) || c == '_';
}

/// Goes through the text once; every step says whether the form is a plain one.
class PlainReader
{
public:
    explicit PlainReader(std::string_view text) : m_at(text.data()), m_end(text.data() + text.size()) {}

    bool read()
    {
        while (m_at != m_end) {
            const bool plain = *m_at == '\n' || (*m_at == '#'   ? comment()
                                                 : *m_at == '[' ? heading()
                                                                : pair());
            if (!plain || !lineEnd())
                return false;
        }
        return true;
    }
    std::vector<ManifestRow> rows;

private:
    bool lineEnd() { return m_at == m_end || *m_at++ == '\n'; }
    bool take(char c) { return m_at != m_end && *m_at == c && ++m_at; }
    bool take(std::string_view words)
    {
        if (!std::string_view(m_at, static_cast<std::size_t>(m_end - m_at)).starts_with(words))
            return false;
        m_at += words.size();
        return true;
    }
    bool comment()
    {
        while (m_at != m_end && isPlain(*m_at))
            ++m_at;
        return true;
    }
    std::string_view key()
    {
        const char *first = m_at;
        while (m_at != m_end && isKeyLetter(*m_at))
            ++m_at;
        return {first, static_cast<std::size_t>(m_at - first)};
    }
    bool digits()
    {
        const char *first = m_at;
        while (m_at != m_end && isDigit(*m_at))
            ++m_at;
        return m_at != first;
    }

    bool heading();
    bool pair();
    bool value(ManifestValue &value);
    bool words(std::string &words);
    bool number(ManifestValue &value);
    bool list(ManifestValue &value);

    const char *m_at, *m_end;
};

/// `[[one]]` or `[[one.two]]`; the second only below a heading of the first that has no key of its name.
bool PlainReader::heading()
{
    if (!take("[["))
        return false;
    const std::string_view outer = key();
    const std::string_view inner = take('.') ? key() : std::string_view();
    const char *first = outer.data();
    const std::string_view whole(first, static_cast<std::size_t>(m_at - first));
    if (outer.empty() || whole.back() == '.' || !take("]]"))
        return false;
    if (inner.empty()) {
        if (!rows.empty() && rows.front().table.empty() && rows.front().find(outer))
            return false;
    } else {
        auto parent = rows.rbegin();
        while (parent != rows.rend() && parent->table != outer)
            ++parent;
        if (parent == rows.rend() || parent->find(inner))
            return false;
    }
    rows.push_back({std::string(whole), {}});
    rows.back().values.reserve(usualValues);
    return true;
}

bool PlainReader::pair()
{
    const std::string_view name = key();
    if (name.empty() || !take(" = "))
        return false;
    if (rows.empty())
        rows.push_back({});
    auto &row = rows.back();
    return !row.find(name) && value(row.values.emplace_back(std::string(name), ManifestValue()).second);
}

bool PlainReader::value(ManifestValue &value)
{
    if (m_at == m_end)
        return false;
    if (*m_at == '[')
        return list(value);
    if (*m_at != '"')
        return number(value);
    value.kind = Kind::words;
    return words(value.words);
}

bool PlainReader::words(std::string &words)
{
    ++m_at; // the quotation mark
    while (m_at != m_end) {
        const char *first = m_at;
        while (m_at != m_end && isPlain(*m_at) && *m_at != '"' && *m_at != '\\')
            ++m_at;
        words.append(first, m_at);
        if (take('"'))
            return true;
        if (!take('\\') || m_at == m_end || (*m_at != '"' && *m_at != '\\'))
            return false;
        words += *m_at++;
    }
    return false;
}

/// 3, -0.25, 1e-07, inf: as TOML has them, so no leading zero and no point without digits on both sides.
bool PlainReader::number(ManifestValue &value)
{
    value.kind = Kind::number;
    const char *first = m_at;
    const bool negative = take('-');
    if (take("inf")) {
        value.number = negative ? -HUGE_VAL : HUGE_VAL;
        return true;
    }
    const char *whole = m_at;
    if (!digits() || (*whole == '0' && m_at - whole > 1))
        return false;
    bool fits = static_cast<std::size_t>(m_at - whole) <= sureDigits;
    if (take('.')) {
        fits = true;
        if (!digits())
            return false;
    }
    if (take('e')) {
        fits = true;
        if (!take('-'))
            take('+');
        if (!digits())
            return false;
    }
    const auto read = std::from_chars(first, m_at, value.number);
    return fits && read.ec == std::errc() && read.ptr == m_at;
}

bool PlainReader::list(ManifestValue &list)
{
    list.kind = Kind::list;
    ++m_at; // the bracket
    do {
        if (!value(list.items.emplace_back()))
            return false;
    } while (take(", "));
    return take(']');
}

} // namespace

std::optional<std::vector<ManifestRow>> readPlainRows(std::string_view text)
{
    PlainReader reader(text);
    if (!reader.read())
        return std::nullopt;
    return std::move(reader.rows);
}

} // namespace puteal
