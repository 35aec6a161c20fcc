/// Reads units out of a text: ufactor [ "/" ufactor ], "1/" ufactor, groups in parentheses, substances in
/// braces.
#include <cstdlib>
#include <utility>

#include <fmt/format.h>

#include "base/text.h"
#include "units/unit_tree.h"

namespace puteal
{

namespace
{

constexpr int mostPower = 21; // 126 sixths
constexpr int nestedGroups = 16;

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isLetter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

/// A read piece, nothing there, or an error.
using Piece = Result<std::optional<UnitPart>>;

class Scanner
{
public:
    Scanner(std::string_view text, std::size_t pos, const UnitTable &table)
        : m_text(text), m_pos(pos), m_table(table)
    {
    }

    Result<std::optional<UnitRead>> read();

private:
    char at(std::size_t i) const { return i < m_text.size() ? m_text[i] : '\0'; }
    Span spanFrom(std::size_t begin) const
    {
        return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(m_pos)};
    }

    const UnitWord *word(bool below);
    Piece factor(bool below);
    Piece wordFactor(bool below);
    Piece groupFactor();
    Result<void> power(UnitPart &part);
    Result<void> braces(UnitPart &part);
    /// Adds "/ factor" to the group; a second "/" is an error whose fix puts both below into parentheses.
    Result<void> below(UnitPart &group, std::size_t begin);
    UnitPart shownAs(const UnitPart &part);

    std::string_view m_text;
    std::size_t m_pos;
    const UnitTable &m_table;
    std::vector<Caution> m_notes;
    int m_depth = 0;
};

/// Steps over a unit word; null and no step when there is none here, or when it is a call or a reference.
const UnitWord *Scanner::word(bool below)
{
    std::size_t end = m_pos;
    if (at(end) == '%' || at(end) == '$')
        ++end;
    else if (below && m_text.substr(end).starts_with("100m"))
        for (end += 3; isLetter(at(end)) || isDigit(at(end)); ++end)
            ;
    else if (isLetter(at(end)))
        for (; isLetter(at(end)) || isDigit(at(end)); ++end)
            ;
    if (end == m_pos)
        return nullptr;
    const char next = at(end);
    if (next == '(' || next == '[' || (next == '.' && isLetter(at(end + 1))))
        return nullptr;
    const UnitWord *found = m_table.find(m_text.substr(m_pos, end - m_pos));
    if (!found || (found->word == "100mL" && !below))
        return nullptr;
    m_pos = end;
    return found;
}

Result<void> Scanner::power(UnitPart &part)
{
    if (at(m_pos) != '^')
        return {};
    const std::size_t begin = m_pos++;
    const bool parenthesis = at(m_pos) == '(';
    if (parenthesis)
        ++m_pos;
    const bool negative = at(m_pos) == '-';
    if (negative)
        ++m_pos;
    const auto integer = [this] {
        int value = 0;
        for (; isDigit(at(m_pos)); ++m_pos)
            value = value < 1000 ? 10 * value + (at(m_pos) - '0') : value;
        return value;
    };
    bool good = isDigit(at(m_pos));
    part.numerator = integer();
    if (parenthesis) {
        if (at(m_pos) == '/') {
            ++m_pos;
            part.denominator = integer();
        }
        good = good && at(m_pos) == ')';
        m_pos += good ? 1 : 0;
    }
    good = good && !(at(m_pos) == '.' && isDigit(at(m_pos + 1)));
    const bool whole = part.denominator != 0 && 6 % part.denominator == 0;
    if (good && (!whole || part.numerator == 0 || part.numerator > mostPower * part.denominator))
        return fail(ErrorKind::unit,
                    fmt::format("powers of a unit go from -{} to {}, without 0", mostPower, mostPower),
                    spanFrom(begin));
    if (!good) {
        while (isLetter(at(m_pos)) || isDigit(at(m_pos)) || at(m_pos) == '.')
            ++m_pos;
        return fail(ErrorKind::unit, "the power of a unit is a whole number, as in ft^2", spanFrom(begin));
    }
    if (negative)
        part.numerator = -part.numerator;
    return {};
}

Result<void> Scanner::braces(UnitPart &part)
{
    if (at(m_pos) != '{')
        return {};
    const std::size_t begin = ++m_pos;
    while (isLetter(at(m_pos)) || isDigit(at(m_pos)))
        ++m_pos;
    const std::string_view name = m_text.substr(begin, m_pos - begin);
    const Span span = spanFrom(begin);
    if (at(m_pos) != '}')
        return fail(ErrorKind::syntax, "the closing } is missing", spanFrom(begin - 1));
    ++m_pos;
    const auto id = UnitTable::substanceId(name);
    if (!id)
        return tl::unexpected<Error>(noSuchSubstance(name, span));
    if (!part.word->isAmount)
        return fail(ErrorKind::substance,
                    fmt::format("`{}` is no mass or amount, so it cannot be of {}", part.word->word, name),
                    spanFrom(begin - 1));
    if (!part.word->type.substances.empty()) {
        if (part.word->type.substances.sixths(*id) == 0)
            return fail(ErrorKind::substance,
                        fmt::format("`{}` is an amount of {} already", part.word->word,
                                    UnitTable::substanceWord(part.word->type.substances.items()[0].first)),
                        spanFrom(begin - 1));
        return {};
    }
    part.substance = *id;
    return {};
}

/// The tree of what `ppm` is shown as, with the power and substance it carried.
UnitPart Scanner::shownAs(const UnitPart &part)
{
    m_notes.push_back({"read_as", std::string(part.word->note), part.span});
    Scanner other(part.word->shownAs, 0, m_table);
    UnitPart group = (*other.read())->root;
    group.numerator = part.numerator;
    group.denominator = part.denominator;
    amountWords(group)[0].part->substance = part.substance;
    return group;
}

Piece Scanner::wordFactor(bool below)
{
    const std::size_t begin = m_pos;
    UnitPart part;
    part.word = word(below);
    if (!part.word)
        return std::optional<UnitPart>{};
    part.span = spanFrom(begin);
    if (auto done = power(part); !done)
        return tl::unexpected<Error>(done.error());
    if (auto done = braces(part); !done)
        return tl::unexpected<Error>(done.error());
    return std::optional<UnitPart>{part.word->shownAs.empty() ? part : shownAs(part)};
}

Piece Scanner::groupFactor()
{
    const std::size_t begin = m_pos;
    const auto none = [&] {
        m_pos = begin;
        --m_depth;
        return std::optional<UnitPart>{};
    };
    ++m_depth;
    if (m_depth > nestedGroups)
        return none();
    ++m_pos;
    UnitPart group;
    do {
        auto piece = factor(false);
        if (!piece)
            return piece;
        if (!*piece)
            return none();
        group.top.push_back(std::move(**piece));
    } while (at(m_pos) == '*' && ++m_pos);
    if (auto done = below(group, begin + 1); !done)
        return tl::unexpected<Error>(done.error());
    if (at(m_pos) != ')')
        return none();
    ++m_pos;
    --m_depth;
    if (auto done = power(group); !done)
        return tl::unexpected<Error>(done.error());
    return std::optional<UnitPart>{std::move(group)};
}

Piece Scanner::factor(bool below)
{
    return at(m_pos) == '(' ? groupFactor() : wordFactor(below);
}

Result<void> Scanner::below(UnitPart &group, std::size_t begin)
{
    std::size_t second = 0;
    while (at(m_pos) == '/') {
        const std::size_t slash = m_pos++;
        auto piece = factor(true);
        if (!piece)
            return tl::unexpected<Error>(piece.error());
        if (!*piece) {
            m_pos = slash;
            break;
        }
        if (!group.bottom.empty() && second == 0)
            second = slash;
        group.bottom.push_back(std::move(**piece));
    }
    if (second == 0)
        return {};
    UnitPart copy = group;
    simplify(copy);
    const std::string text = unitText(copy, true);
    auto error = fail(ErrorKind::unit, "a unit has one /: write " + text, spanFrom(second));
    error.value().fixes.push_back({"write " + text, spanFrom(begin), text});
    return error;
}

Result<std::optional<UnitRead>> Scanner::read()
{
    const std::size_t begin = m_pos;
    UnitPart root;
    if (at(m_pos) == '1' && at(m_pos + 1) == '/') {
        ++m_pos;
        if (auto done = below(root, begin); !done)
            return tl::unexpected<Error>(done.error());
        if (root.bottom.empty())
            return std::optional<UnitRead>{};
    } else {
        auto first = factor(false);
        if (!first)
            return tl::unexpected<Error>(first.error());
        if (!*first)
            return std::optional<UnitRead>{};
        root.top.push_back(std::move(**first));
        if (auto done = below(root, begin); !done)
            return tl::unexpected<Error>(done.error());
    }
    simplify(root);
    return std::optional<UnitRead>{UnitRead{std::move(root), m_pos, std::move(m_notes)}};
}

} // namespace

Result<std::optional<UnitRead>> readUnitTree(std::string_view text, std::size_t pos, const UnitTable &table)
{
    return Scanner(text, pos, table).read();
}

} // namespace puteal
