/// Units: one word table with exact factors and sources, composite units, substances and counted things by
/// word.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/unit_word.h"

namespace puteal
{

/// The closed table of unit words, plus the counted things a workbook declares. Copies share their content
/// until one of them declares a thing.
class UnitTable
{
public:
    /// The shipped table. `rescale` multiplies the base units (tests prove that results do not depend on
    /// them).
    explicit UnitTable(const std::array<double, baseCount> &rescale = {1, 1, 1, 1, 1, 1, 1});
    // Moving is copying: a table never stands without content.
    UnitTable(const UnitTable &) = default;
    UnitTable &operator=(const UnitTable &) = default;
    ~UnitTable() = default;

    const std::vector<UnitWord> &words() const;
    static const std::vector<UnitSource> &sources();
    /// Finds a word or one of its spellings (plurals included); null if none. Case counts, but `l` is L.
    const UnitWord *find(std::string_view word) const;
    /// May no name or key equal it? Other spellings of counted things and `year` may be names; after a number
    /// or / the unit wins.
    bool isUnitWord(std::string_view word) const;
    /// Close words for messages.
    std::vector<std::string> closestWords(std::string_view word) const;

    /// Declares a counted thing (`thing tank`). Error: not a name, or taken.
    Result<void> declareThing(std::string_view word);
    /// The word of a counted thing / substance by id, for messages.
    std::string thingWord(std::uint16_t id) const;
    /// Person, NTU, cfu ...: `->` and a set unit never remove it from a value.
    bool thingStays(std::uint16_t id) const;
    static std::string substanceWord(std::uint16_t id);
    static std::string substanceName(std::uint16_t id);
    static std::optional<std::uint16_t> substanceId(std::string_view word);
    static double substanceMolarMass(std::uint16_t id); ///< g/mol, 0 = none defined
    static int substanceCharge(std::uint16_t id);       ///< for equivalents, 0 = none defined

    /// Differs between tables with different words; copies share it.
    std::uint64_t serial() const;

    /// Default unit to show a type in: by system, substances and things composed ("mg/L as Fe",
    /// "gal/(day*person)").
    Unit defaultUnit(const QuantityType &type, UnitSystem system) const;

private:
    struct Content;

    std::shared_ptr<Content> m_content; ///< changed only while nobody shares it
};

/// A unit found inside a text, with the end of what was read.
struct ScannedUnit {
    Unit unit;
    std::size_t end = 0;
    std::vector<Caution> notes; ///< e.g. ppm is read as mg/L
};

/// Reads the longest unit at text[pos] by the grammar of docs/formula.md ( ufactor [ "/" ufactor ], "1/"
/// ufactor, braces, no blank inside; after "/" only a unit word continues the unit). Does not read "as". None
/// when no unit word starts there. Errors: unknown substance in braces, exponent out of range, two "/" ("12
/// gal/day/person": the fix).
Result<std::optional<ScannedUnit>> scanUnit(std::string_view text, std::size_t pos, const UnitTable &table);

/// A whole text as a unit, with optional " as X"; "" is the pure number. The text a unit shows reads back to
/// itself.
Result<Unit> readUnit(std::string_view text, const UnitTable &table);

/// `unit as X`: tags the only mass or amount word of the unit. Errors: no such word, two of them, already
/// tagged otherwise.
Result<Unit> tagged(const Unit &unit, std::uint16_t substance, const UnitTable &table);

/// The unit without its substances, respelled.
Unit untagged(const Unit &unit, const UnitTable &table);

/// Same unit respelled so that it carries `type`'s substances (and things), given equal dimensions; none if
/// impossible.
std::optional<Unit> retagged(const Unit &unit, const QuantityType &type, const UnitTable &table);

/// "`dya` is no unit; day?" with the replacement of the word at `span` as fixes.
Error noSuchUnit(std::string_view word, Span span, const UnitTable &table);
/// "`Fx` is no substance known here; Fe?" likewise.
Error noSuchSubstance(std::string_view word, Span span);

/// Words for a type in messages: "gal/day", "mg/L as Fe", "a pure number", "a temperature reading".
std::string typeWords(const QuantityType &type, const UnitTable &table, UnitSystem system = UnitSystem::us);

/// Spoken unit: "milligrams per liter as iron".
std::string spokenUnit(const Unit &unit, const UnitTable &table);

} // namespace puteal
