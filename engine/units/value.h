/// Kinds of values a cell can hold, and reading typed text into them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/unit.h"

namespace puteal
{

enum class ValueKind : std::uint8_t { blank, quantity, yesNo, choice, date, words };
/// A laboratory reading that is only known to lie below or above its number.
enum class Bound : std::uint8_t { exact, below, above };

/// Interned lists of choices ("works", "marginal", ...), best first. Id 0 is the empty list.
class ChoiceLists
{
public:
    ChoiceLists() : m_lists(1) {}
    std::uint32_t intern(const std::vector<std::string> &words);
    const std::vector<std::string> &words(std::uint32_t id) const { return m_lists[id]; }
    std::optional<std::uint32_t> indexOf(std::uint32_t id, std::string_view word) const;

private:
    std::vector<std::vector<std::string>> m_lists;
};

/// The static type of a cell or sub-expression.
struct StaticType {
    ValueKind kind = ValueKind::blank;
    Bound bound = Bound::exact; ///< quantities typed as bounded readings
    std::uint32_t list = 0;     ///< choices
    QuantityType quantity;      ///< quantities (a blank with a set unit carries it too)
    friend bool operator==(const StaticType &, const StaticType &) = default;
};

/// A typed cell read: one double in base units (choice: index; yes/no: 1 or 0; date: seconds since 1970-01-01
/// at 0 h, in base time units), words apart.
struct TypedValue {
    StaticType type;
    double number = 0.0;
    Unit unit;         ///< as typed; pure for a bare number
    std::string words; ///< words only
    bool hasUnit = false;
    int figures = 0;            ///< significant figures as typed (for showing typed values as typed)
    std::vector<Caution> notes; ///< from reading the unit: ppm is read as mg/L
};

/// What an amounts column's typed text is.
enum class TypedForm : std::uint8_t { blank, value, formula };
struct Typed {
    TypedForm form = TypedForm::blank;
    TypedValue value;                     ///< when form is value
    std::optional<std::string> rewritten; ///< bare number that took the set unit: "6.2" -> "6.2 mg/L as Fe"
};

/// How to read a cell of an amounts column.
struct TypedContext {
    const UnitTable *units = nullptr;
    const ChoiceLists *lists = nullptr;
    std::uint32_t list = 0;        ///< the cell's choices, 0 = none
    const Unit *setUnit = nullptr; ///< the cell's set unit, null = none
};

/// Reads typed text: quoted words, yes/no, listed word, date, bounded reading, quantity (whole-cell fractions
/// and grouping commas), else formula. Errors: a near-quantity or near-date that must not be taken for a
/// formula (1,5 mg/L; 31-12-2026; .5; an unlisted word in a choice cell; a bare number under a set unit that
/// cancels to a pure number).
Result<Typed> readTyped(std::string_view text, const TypedContext &context);

/// Reads "YYYY-MM-DD" to days since 1970-01-01; none when it is no calendar date.
std::optional<std::int64_t> readDate(std::string_view text);
std::string dateText(std::int64_t daysSince1970);

} // namespace puteal
