/// What the typed text of an amounts cell is: a value, or else a formula.
#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"
#include "base/text.h"
#include "units/typed_number.h"
#include "units/typed_unit.h"
#include "units/value.h"

namespace puteal
{

namespace
{

char at(std::string_view text, std::size_t i)
{
    return i < text.size() ? text[i] : '\0';
}
Span spanOf(std::size_t begin, std::size_t end)
{
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}
std::size_t skipBlanks(std::string_view text, std::size_t pos)
{
    while (at(text, pos) == ' ')
        ++pos;
    return pos;
}

TypedValue valueOf(const TypedNumber &number, Bound bound)
{
    TypedValue value;
    value.type.kind = ValueKind::quantity;
    value.type.bound = bound;
    value.figures = number.figures;
    return value;
}

/// 40/60 psi is a switch with two settings to those who type it, and 0.667 psi when it is read as a fraction.
void noteFraction(TypedValue &value, std::string_view typed, std::size_t pos)
{
    static constexpr std::string_view usual[] = {"2",  "3",  "4",  "5",  "6",  "8",
                                                 "10", "12", "16", "32", "64", "100"};
    const std::string_view below = typed.substr(typed.find('/') + 1);
    if (std::find(std::begin(usual), std::end(usual), below) != std::end(usual))
        return;
    value.notes.push_back({"read_as_fraction",
                           fmt::format("`{}` is read as the fraction {}; two readings stand in two cells",
                                       typed, toFigures(value.number, 3)),
                           spanOf(pos, pos + typed.size())});
}

/// Reads one typed text (plain, trimmed). Every step gives a value, an error, or nothing (try the next one).
class Reader
{
public:
    Reader(std::string_view text, const TypedContext &context) : m_text(text), m_context(context) {}
    Result<Typed> read();

private:
    using Step = Result<std::optional<Typed>>;
    Step words();
    Step choice();
    Step date();
    Step quantity();
    Step money(std::size_t pos, Bound bound);
    Step amount(std::size_t pos, Bound bound);
    Step bare(TypedValue value, std::size_t pos);
    Step withUnit(TypedValue value, double number, TypedUnit unit) const;
    Result<std::size_t> bound(Bound &bound) const;

    Typed finished(TypedValue value) const { return {TypedForm::value, std::move(value), {}}; }
    Error unlisted(std::string_view word) const;

    std::string_view m_text;
    const TypedContext &m_context;
};

Error Reader::unlisted(std::string_view word) const
{
    std::vector<std::string> list;
    for (const std::string &item : m_context.lists->words(m_context.list))
        list.push_back(quoted(item));
    return {ErrorKind::kind,
            fmt::format("`{}` is not a choice here: {}", word, joined(list)),
            {},
            Place{spanOf(0, m_text.size()), {}, 0}};
}

Reader::Step Reader::words()
{
    if (m_text == "yes" || m_text == "no") {
        if (m_context.list && m_context.lists->indexOf(m_context.list, m_text))
            return std::optional<Typed>{};
        TypedValue value;
        value.type.kind = ValueKind::yesNo;
        value.number = m_text == "yes" ? 1 : 0;
        return std::optional<Typed>{finished(value)};
    }
    if (m_text.front() != '"' || m_context.list)
        return std::optional<Typed>{};
    // braces are live words: the formula parser's business
    if (m_text.find_first_of("{}") != std::string_view::npos)
        return std::optional<Typed>{};
    auto text = unquoted(m_text);
    if (!text)
        return std::optional<Typed>{};
    TypedValue value;
    value.type.kind = ValueKind::words;
    value.words = std::move(*text);
    return std::optional<Typed>{finished(value)};
}

/// A listed word, bare or quoted. A text that can be no formula and is not listed is refused with the list.
Reader::Step Reader::choice()
{
    if (!m_context.list)
        return std::optional<Typed>{};
    std::string word(m_text);
    const bool isQuoted = m_text.front() == '"';
    if (isQuoted) {
        auto text = unquoted(m_text);
        if (!text)
            return std::optional<Typed>{};
        word = std::move(*text);
    }
    if (const auto index = m_context.lists->indexOf(m_context.list, word)) {
        TypedValue value;
        value.type.kind = ValueKind::choice;
        value.type.list = m_context.list;
        value.number = *index;
        return std::optional<Typed>{finished(value)};
    }
    const bool plainWords = std::all_of(word.begin(), word.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ';
    });
    if (isQuoted || (plainWords && !isName(word, true)))
        return tl::unexpected<Error>(unlisted(word));
    return std::optional<Typed>{};
}

Reader::Step Reader::date()
{
    if (!looksLikeDate(m_text))
        return std::optional<Typed>{};
    const auto days = readDate(m_text);
    if (!days)
        return tl::unexpected<Error>(dateRefusal(m_text));
    TypedValue value;
    value.type.kind = ValueKind::date;
    value.number = static_cast<double>(*days) * m_context.units->find("day")->factor;
    return std::optional<Typed>{finished(value)};
}

/// `<`, `>`, `ND`: where the number behind it begins (0 = no bound).
Result<std::size_t> Reader::bound(Bound &bound) const
{
    const char c = m_text.front();
    if (c == '<' || c == '>') {
        bound = c == '<' ? Bound::below : Bound::above;
        if (at(m_text, 1) == '=')
            return fail(ErrorKind::syntax,
                        fmt::format("a reading beyond its bound is written with {} alone", c), spanOf(0, 2));
        return skipBlanks(m_text, 1);
    }
    const bool nd = (c == 'N' || c == 'n') && (at(m_text, 1) == 'D' || at(m_text, 1) == 'd');
    if (nd && m_text.size() == 2)
        return fail(ErrorKind::syntax, "not detected needs the limit it was tested to, as in ND 0.05 mg/L",
                    spanOf(0, 2));
    if (nd && m_text[2] == ' ') {
        bound = Bound::below;
        return skipBlanks(m_text, 3);
    }
    return std::size_t{0};
}

Reader::Step Reader::quantity()
{
    Bound kind = Bound::exact;
    const auto begin = bound(kind);
    if (!begin)
        return tl::unexpected<Error>(begin.error());
    const std::size_t pos = *begin;
    const std::size_t sign = at(m_text, pos) == '-' ? 1 : 0;
    return at(m_text, pos + sign) == '$' ? money(pos, kind) : amount(pos, kind);
}

Reader::Step Reader::money(std::size_t pos, Bound bound)
{
    const std::size_t sign = at(m_text, pos) == '-' ? 1 : 0;
    const std::size_t begin = pos + sign + 1;
    const auto number = readTypedNumber(m_text, begin);
    if (!number)
        return tl::unexpected<Error>(number.error());
    if (!*number || (*number)->isFraction || at(m_text, begin) == '-')
        return std::optional<Typed>{};
    const std::size_t end = (*number)->end;
    if (end != m_text.size() && m_text[end] != '/')
        return std::optional<Typed>{};
    auto unit = readMoneyUnit(m_text, begin, end, *m_context.units);
    if (!unit)
        return tl::unexpected<Error>(unit.error());
    if (!*unit || (*unit)->end != m_text.size())
        return std::optional<Typed>{};
    TypedValue value = valueOf(**number, bound);
    return withUnit(std::move(value), sign ? -(*number)->value : (*number)->value, std::move(**unit));
}

Reader::Step Reader::amount(std::size_t pos, Bound bound)
{
    const auto number = readTypedNumber(m_text, pos);
    if (!number)
        return tl::unexpected<Error>(number.error());
    if (!*number)
        return std::optional<Typed>{};
    TypedValue value = valueOf(**number, bound);
    value.number = (*number)->value;
    if ((*number)->isFraction)
        noteFraction(value, m_text.substr(pos, (*number)->end - pos), pos);
    const std::size_t end = skipBlanks(m_text, (*number)->end);
    if (end == m_text.size())
        return bare(std::move(value), pos);
    auto unit = readTypedUnit(m_text, end, *m_context.units);
    if (!unit)
        return tl::unexpected<Error>(unit.error());
    if (!*unit || (*unit)->end != m_text.size())
        return std::optional<Typed>{};
    return withUnit(std::move(value), (*number)->value, std::move(**unit));
}

Reader::Step Reader::withUnit(TypedValue value, double number, TypedUnit unit) const
{
    value.unit = std::move(unit.unit);
    value.notes.insert(value.notes.end(), unit.notes.begin(), unit.notes.end());
    value.hasUnit = true;
    value.type.quantity = value.unit.type;
    value.number = value.unit.toBase(number);
    return std::optional<Typed>{finished(std::move(value))};
}

/// A number without a unit takes the set unit, visibly.
Reader::Step Reader::bare(TypedValue value, std::size_t pos)
{
    const Unit *set = m_context.setUnit;
    if (!set || set->text.empty())
        return std::optional<Typed>{finished(std::move(value))};
    const std::string number(m_text.substr(pos));
    if (set->type.isPure())
        return fail(ErrorKind::unit,
                    fmt::format("{} alone may mean {} {} or the plain number {}: write the unit too", number,
                                number, set->text, number),
                    spanOf(pos, m_text.size()));
    value.unit = *set;
    value.hasUnit = true;
    value.type.quantity = set->type;
    value.number = set->toBase(value.number);
    Typed typed = finished(std::move(value));
    const bool minus = number.front() == '-';
    if (set->text.front() == '$')
        typed.rewritten = fmt::format("{}{}${}{}", m_text.substr(0, pos), minus ? "-" : "",
                                      number.substr(minus ? 1 : 0), set->text.substr(1));
    else
        typed.rewritten = fmt::format("{} {}", m_text, set->text);
    return std::optional<Typed>{std::move(typed)};
}

Result<Typed> Reader::read()
{
    const char c = m_text.front();
    const bool numeric = (c >= '0' && c <= '9') || c == '-' || c == '$' || c == '.' || c == '<' || c == '>' ||
                         ((c == 'N' || c == 'n') && (at(m_text, 1) == 'D' || at(m_text, 1) == 'd'));
    for (const auto step : {&Reader::words, &Reader::choice, &Reader::date, &Reader::quantity}) {
        if (step == &Reader::quantity && !numeric)
            continue;
        auto result = (this->*step)();
        if (!result)
            return tl::unexpected<Error>(result.error());
        if (*result)
            return std::move(**result);
    }
    return Typed{TypedForm::formula, {}, {}};
}

void moveSpan(Span &span, const std::vector<std::uint32_t> &origin, std::uint32_t shift)
{
    span = {origin[span.begin + shift], origin[span.end + shift]};
}

} // namespace

Result<Typed> readTyped(std::string_view text, const TypedContext &context)
{
    const bool wide =
        std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
    PlainText plain;
    // quoted words keep their typography; only their marks are replaced
    const bool words = text.find('"') != std::string_view::npos;
    if (wide && !words)
        plain = plainTwins(text);
    const std::string_view whole = wide && !words ? std::string_view(plain.text) : text;
    const std::string_view inside = trimmed(whole);
    if (inside.empty())
        return Typed{};
    auto result = Reader(inside, context).read();
    if (!result) {
        const auto shift = static_cast<std::uint32_t>(inside.data() - whole.data());
        if (plain.origin.empty())
            for (std::uint32_t i = 0; i <= text.size(); ++i)
                plain.origin.push_back(i);
        if (result.error().place.span)
            moveSpan(*result.error().place.span, plain.origin, shift);
        for (Fix &fix : result.error().fixes)
            moveSpan(fix.span, plain.origin, shift);
    }
    return result;
}

} // namespace puteal
