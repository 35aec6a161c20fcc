/// What a number is an amount of: dimension, counted things, substances, and whether it is a reading on a
/// scale.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace puteal
{

/// Base quantities and the base units numbers are stored in: dm, mg, s, K, mmol, A, USD.
enum class Base : std::uint8_t { length, mass, time, temperature, amount, current, money };
inline constexpr std::size_t baseCount = 7;

/// Exponents in sixths.
struct Dimension {
    std::array<std::int8_t, baseCount> sixths{};
    bool isPure() const { return *this == Dimension{}; }
    friend bool operator==(const Dimension &, const Dimension &) = default;
};

/// Sorted sparse exponents (in sixths) of counted things or substances, by id; never holds a zero exponent.
class Labels
{
public:
    bool empty() const { return m_items.empty(); }
    const std::vector<std::pair<std::uint16_t, std::int8_t>> &items() const { return m_items; }
    std::int8_t sixths(std::uint16_t id) const;
    void add(std::uint16_t id, int sixths);
    int sum() const;
    friend bool operator==(const Labels &, const Labels &) = default;

private:
    std::vector<std::pair<std::uint16_t, std::int8_t>> m_items;
};

/// Plain amounts and differences, or readings on a scale that must not be added or scaled.
enum class Scale : std::uint8_t { plain, temperatureReading, absolutePressure };

/// The full static type of a quantity. Equal types may be added.
struct QuantityType {
    Dimension dimension;
    Labels things;     ///< counted things: person, cartridge, event ...
    Labels substances; ///< amounts of what: Fe, CaCO3 ...
    Scale scale = Scale::plain;

    /// A pure number without labels.
    bool isPure() const
    {
        return dimension.isPure() && things.empty() && substances.empty() && scale == Scale::plain;
    }
    friend bool operator==(const QuantityType &, const QuantityType &) = default;
};

/// Exponents add / subtract / scale by n/d; scale is plain afterwards. raise() fails (returns false) when a
/// result is no whole number of sixths or leaves the range of the exponent.
QuantityType product(const QuantityType &a, const QuantityType &b);
QuantityType quotient(const QuantityType &a, const QuantityType &b);
bool raise(const QuantityType &a, int numerator, int denominator, QuantityType &out);

} // namespace puteal
