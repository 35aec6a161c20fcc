/// The unit behind the number of a typed cell.
#include "units/typed_unit.h"

#include <algorithm>
#include <array>
#include <functional>
#include <string>

namespace puteal
{

namespace
{

/// Units repeat down a column: the last ones read are kept, one a slot.
struct RememberedUnit {
    std::uint64_t serial = 0;
    std::string text;
    Unit unit;
};

RememberedUnit &rememberedUnit(std::string_view text)
{
    constexpr std::size_t slots = 64;
    thread_local std::array<RememberedUnit, slots> kept;
    return kept[std::hash<std::string_view>{}(text) % slots];
}

std::size_t skipBlanks(std::string_view text, std::size_t pos)
{
    return std::min(text.find_first_not_of(' ', pos), text.size());
}

void moveError(Error &error, std::size_t shift)
{
    const auto by = static_cast<std::uint32_t>(shift);
    if (error.place.span)
        error.place.span = Span{error.place.span->begin + by, error.place.span->end + by};
    for (Fix &fix : error.fixes)
        fix.span = {fix.span.begin + by, fix.span.end + by};
}

/// The unit at the start of `text` and `as X` behind it.
Result<std::optional<TypedUnit>> unitAtStart(std::string_view text, const UnitTable &table)
{
    auto scanned = scanUnit(text, 0, table);
    if (!scanned)
        return tl::unexpected<Error>(scanned.error());
    if (!*scanned)
        return std::optional<TypedUnit>{};
    TypedUnit found{std::move((*scanned)->unit), std::move((*scanned)->notes), (*scanned)->end};
    const std::size_t as = skipBlanks(text, found.end);
    if (as == found.end || !text.substr(as).starts_with("as "))
        return std::optional<TypedUnit>{std::move(found)};
    const auto id = UnitTable::substanceId(text.substr(skipBlanks(text, as + 3)));
    if (!id)
        return std::optional<TypedUnit>{};
    auto with = tagged(found.unit, *id, table);
    if (!with) {
        with.error().place.span = Span{0, static_cast<std::uint32_t>(text.size())};
        return tl::unexpected<Error>(with.error());
    }
    found.unit = std::move(*with);
    found.end = text.size();
    return std::optional<TypedUnit>{std::move(found)};
}

} // namespace

Result<std::optional<TypedUnit>> readTypedUnit(std::string_view text, std::size_t pos, const UnitTable &table)
{
    const std::string_view tail = text.substr(pos);
    RememberedUnit &remembered = rememberedUnit(tail);
    if (remembered.serial == table.serial() && remembered.text == tail)
        return std::optional<TypedUnit>{TypedUnit{remembered.unit, {}, text.size()}};
    auto found = unitAtStart(tail, table);
    if (!found) {
        moveError(found.error(), pos);
        return found;
    }
    if (!*found)
        return found;
    if ((*found)->end == tail.size() && (*found)->notes.empty())
        remembered = {table.serial(), std::string(tail), (*found)->unit};
    (*found)->end += pos;
    return found;
}

Result<std::optional<TypedUnit>> readMoneyUnit(std::string_view text, std::size_t begin, std::size_t end,
                                               const UnitTable &table)
{
    // spelled $/kWh: read with the figures cut out
    auto found = unitAtStart("$" + std::string(text.substr(end)), table);
    if (!found) {
        Error error = found.error();
        moveError(error, end - 1);
        for (Fix &fix : error.fixes)
            if (fix.text.starts_with('$')) {
                fix.span.begin = static_cast<std::uint32_t>(begin - 1);
                fix.text.insert(1, text.substr(begin, end - begin));
            }
        return tl::unexpected<Error>(error);
    }
    if (*found)
        (*found)->end += end - 1;
    return found;
}

} // namespace puteal
