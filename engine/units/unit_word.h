/// A unit and the rows of the unit table.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "units/quantity_type.h"

namespace puteal
{

/// A unit as typed or shown: base number = number * factor + offset.
struct Unit {
    std::string text; ///< canonical spelling, e.g. "mg/L as Fe", "gal/(day*person)", "" for a pure number
    double factor = 1.0;
    double offset = 0.0; ///< only temperature readings and absolute pressures on a gauge-free scale
    QuantityType type;

    double toBase(double x) const { return x * factor + offset; }
    double fromBase(double x) const { return (x - offset) / factor; }
    bool isMoney() const; ///< exactly money^1, nothing else
    friend bool operator==(const Unit &, const Unit &) = default;
};

/// One row of the unit table. Views are into the shipped rows or into texts the table keeps.
struct UnitWord {
    std::string word;                ///< "gpm"
    std::string_view otherSpellings; ///< "gallons": separated by blanks
    std::string_view name;           ///< "US gallons per minute", for speech and help
    std::string_view singular;       ///< "US gallon per minute"
    std::string_view definition;     ///< "231 in^3 per minute", exact where exact
    std::string_view source;         ///< source key: nist811, nist44, si, trade ...
    std::string_view note;           ///< "365 day: trade accounting, not the calendar"
    double factor = 1.0;
    double offset = 0.0;
    QuantityType type;
    bool countedThing = false; ///< the word of a counted thing (or label) itself
    bool isAmount = false;     ///< a mass or amount word: may carry a substance
    std::string_view shownAs;  ///< "mg/L" for ppm: never shown itself

    /// "gal/min" is not one; "gallons" is.
    std::vector<std::string> spellings() const;
};

/// A source of unit factors: key and words.
struct UnitSource {
    std::string key, words;
};

/// A reference quantity of a dimension when a formula gives no unit: US or SI.
enum class UnitSystem : std::uint8_t { us, si };

} // namespace puteal
