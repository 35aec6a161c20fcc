/// Errors as numbers: a quiet NaN whose payload carries the kind of the error and the cell where it arose.
#pragma once

#include <bit>
#include <cmath>
#include <cstdint>

#include "base/result.h"

namespace puteal
{

/// Origin of an error that arose in the formula just being evaluated; the evaluator puts the cell in its
/// place.
inline constexpr std::uint32_t originHere = 0xFFFFFFFFU;

namespace errorbits
{
// sign | exponent | quiet | 1 marker | 12 index | 6 kind | 32 origin: 64 bits in all
inline constexpr std::uint64_t quiet = 0x7FF8000000000000ULL;
inline constexpr std::uint64_t marker = 1ULL << 50U;
inline constexpr unsigned indexShift = 38U;
inline constexpr unsigned kindShift = 32U;
} // namespace errorbits

/// Builds the number of an error. `index` tells apart several errors of one evaluation (0..4095).
inline double errorNumber(ErrorKind kind, std::uint32_t origin, std::uint32_t index = 0)
{
    return std::bit_cast<double>(errorbits::quiet | errorbits::marker |
                                 (static_cast<std::uint64_t>(index & 0xFFFU) << errorbits::indexShift) |
                                 (static_cast<std::uint64_t>(kind) << errorbits::kindShift) | origin);
}

/// Kind of an error number; a NaN that arithmetic made is notFinite.
inline ErrorKind errorKind(double number)
{
    const auto bits = std::bit_cast<std::uint64_t>(number);
    if ((bits & errorbits::marker) == 0)
        return ErrorKind::notFinite;
    return static_cast<ErrorKind>((bits >> errorbits::kindShift) & 0x3FU);
}

/// Where the error arose: a node, or `originHere`.
inline std::uint32_t errorOrigin(double number)
{
    const auto bits = std::bit_cast<std::uint64_t>(number);
    return (bits & errorbits::marker) == 0 ? originHere : static_cast<std::uint32_t>(bits);
}

inline std::uint32_t errorIndex(double number)
{
    const auto bits = std::bit_cast<std::uint64_t>(number);
    return (bits & errorbits::marker) == 0
               ? 0U
               : static_cast<std::uint32_t>(bits >> errorbits::indexShift) & 0xFFFU;
}

/// A cell that holds nothing: blank kind whose origin is the cell itself.
inline bool isBlankNumber(double number)
{
    return std::isnan(number) && errorKind(number) == ErrorKind::blank;
}

/// What arithmetic that is not finite becomes where plain arithmetic would lose it.
inline double notFiniteHere()
{
    return errorNumber(ErrorKind::notFinite, originHere);
}

} // namespace puteal
