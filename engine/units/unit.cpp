/// Units from text, tagged and respelled.
#include "units/unit.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "units/unit_tree.h"

namespace puteal
{

namespace
{

bool hasWideByte(std::string_view text)
{
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

void moveSpan(Span &span, const std::vector<std::uint32_t> &origin, std::uint32_t shift)
{
    span = {origin[span.begin] + shift, origin[span.end] + shift};
}

void moveSpans(Error &error, const std::vector<std::uint32_t> &origin, std::uint32_t shift)
{
    if (error.place.span)
        moveSpan(*error.place.span, origin, shift);
    for (Fix &fix : error.fixes)
        moveSpan(fix.span, origin, shift);
}

Result<std::optional<ScannedUnit>> scanPlain(std::string_view text, std::size_t pos, const UnitTable &table)
{
    auto tree = readUnitTree(text, pos, table);
    if (!tree)
        return tl::unexpected<Error>(tree.error());
    if (!*tree)
        return std::optional<ScannedUnit>{};
    auto unit = unitOf((*tree)->root);
    if (!unit) {
        Error error = unit.error();
        if (!error.place.span)
            error.place.span =
                Span{static_cast<std::uint32_t>(pos), static_cast<std::uint32_t>((*tree)->end)};
        return tl::unexpected<Error>(error);
    }
    return std::optional<ScannedUnit>{ScannedUnit{std::move(*unit), (*tree)->end, std::move((*tree)->notes)}};
}

/// End of the word at `pos`: where a message about an unknown unit points.
std::size_t wordEnd(std::string_view text, std::size_t pos)
{
    std::size_t end = pos;
    const std::string_view stops = " \t/*()^{}";
    while (end < text.size() && stops.find(text[end]) == std::string_view::npos)
        ++end;
    return std::max(end, std::min(pos + 1, text.size()));
}

Span spanOf(std::size_t begin, std::size_t end)
{
    return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

} // namespace

bool Unit::isMoney() const
{
    Dimension money;
    money.sixths[static_cast<std::size_t>(Base::money)] = 6;
    return type.dimension == money && type.things.empty() && type.substances.empty();
}

Result<std::optional<ScannedUnit>> scanUnit(std::string_view text, std::size_t pos, const UnitTable &table)
{
    if (pos >= text.size())
        return std::optional<ScannedUnit>{};
    if (!hasWideByte(text.substr(pos)))
        return scanPlain(text, pos, table);
    const PlainText plain = plainTwins(text.substr(pos));
    const auto shift = static_cast<std::uint32_t>(pos);
    auto result = scanPlain(plain.text, 0, table);
    if (!result) {
        moveSpans(result.error(), plain.origin, shift);
    } else if (*result) {
        (*result)->end = plain.origin[(*result)->end] + pos;
        for (Caution &note : (*result)->notes)
            if (note.span)
                moveSpan(*note.span, plain.origin, shift);
    }
    return result;
}

Result<Unit> readUnit(std::string_view text, const UnitTable &table)
{
    if (text.empty())
        return Unit{};
    auto scanned = scanUnit(text, 0, table);
    if (!scanned)
        return tl::unexpected<Error>(scanned.error());
    if (!*scanned) {
        std::size_t begin = text.starts_with("1/") ? 2 : 0;
        while (begin < text.size() && (text[begin] == '(' || text[begin] == ' '))
            ++begin;
        const Span span = spanOf(begin, wordEnd(text, begin));
        return tl::unexpected<Error>(noSuchUnit(text.substr(span.begin, span.end - span.begin), span, table));
    }
    const std::size_t end = (*scanned)->end;
    if (end == text.size())
        return (*scanned)->unit;
    std::size_t next = text.find_first_not_of(' ', end);
    if (next != std::string_view::npos && next > end && text.substr(next).starts_with("as ")) {
        next = text.find_first_not_of(' ', next + 3);
        const std::string_view word = next == std::string_view::npos ? std::string_view{} : text.substr(next);
        if (const auto id = UnitTable::substanceId(word))
            return tagged((*scanned)->unit, *id, table);
        const std::size_t from = std::min(next, text.size());
        return tl::unexpected<Error>(noSuchSubstance(word, spanOf(from, text.size())));
    }
    if (text[end] == '/' || text[end] == '*') {
        const Span span = spanOf(end + 1, wordEnd(text, end + 1));
        return tl::unexpected<Error>(noSuchUnit(text.substr(span.begin, span.end - span.begin), span, table));
    }
    return fail(ErrorKind::unit,
                "the unit ends before this; units are written without blanks, as in gal/(day*person)",
                spanOf(end, text.size()));
}

UnitPart treeOf(const Unit &unit, const UnitTable &table)
{
    UnitPart root;
    const std::string_view text = unit.text;
    const std::size_t as = text.find(" as ");
    auto tree = readUnitTree(text.substr(0, as), 0, table);
    if (!tree || !*tree)
        return root;
    root = std::move((*tree)->root);
    if (as != std::string_view::npos)
        if (const auto id = UnitTable::substanceId(text.substr(as + 4)))
            for (const AmountWord &amount : amountWords(root))
                amount.part->substance = *id;
    return root;
}

Result<Unit> tagged(const Unit &unit, std::uint16_t substance, const UnitTable &table)
{
    const std::string of = UnitTable::substanceWord(substance);
    UnitPart root = treeOf(unit, table);
    const std::vector<AmountWord> amounts = amountWords(root);
    if (amounts.empty())
        return fail(ErrorKind::substance,
                    fmt::format("{} has no mass or amount that could be of {}",
                                unit.text.empty() ? "a pure number" : "`" + unit.text + "`", of));
    if (amounts.size() > 1) {
        if (unit.type.substances.items() ==
            std::vector<std::pair<std::uint16_t, std::int8_t>>{{substance, 6}})
            return unit;
        amounts[0].part->substance = amounts[0].part->substance < 0 ? substance : amounts[0].part->substance;
        const auto example = unitOf(root);
        return fail(ErrorKind::substance,
                    fmt::format("`{}` has more than one amount: write the substance in braces, as in {}",
                                unit.text, example ? example->text : unit.text));
    }
    UnitPart &part = *amounts[0].part;
    const Labels &own = part.word->type.substances;
    const int already = own.empty() ? part.substance : own.items()[0].first;
    if (already >= 0 && already != substance)
        return fail(
            ErrorKind::substance,
            fmt::format("`{0}` is an amount of {1} and cannot be called {2}: leave as {2} out, or write "
                        "an amount of {2}, as in 3 mg/L as {2}",
                        unit.text, UnitTable::substanceWord(static_cast<std::uint16_t>(already)), of));
    if (own.empty())
        part.substance = substance;
    return unitOf(root);
}

Error noSuchSubstance(std::string_view word, Span span)
{
    std::vector<std::string> all;
    for (std::uint16_t id = 0; !UnitTable::substanceWord(id).empty(); ++id)
        all.push_back(UnitTable::substanceWord(id));
    Error error{
        ErrorKind::substance, fmt::format("`{}` is no substance known here", word), {}, Place{span, {}, 0}};
    std::vector<std::string> close = closest(word, all, 1);
    for (std::uint16_t id = 0; id < all.size(); ++id)
        if (UnitTable::substanceName(id) == word)
            close = {all[id]};
    if (!close.empty()) {
        error.words += "; " + close[0] + "?";
        error.fixes.push_back({"write " + close[0], span, close[0]});
    } else {
        error.words += fmt::format(": take one of {}", fmt::join(all, ", "));
    }
    return error;
}

} // namespace puteal
