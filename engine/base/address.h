/// Addresses of cells and ranges: positions in the workbook as it stands now.
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace puteal
{

/// A cell by position: sheet, column and line count from 0 (screens and files show line + 1).
struct CellAt {
    std::uint32_t sheet = 0;
    std::uint32_t column = 0;
    std::uint32_t line = 0;
    friend auto operator<=>(const CellAt &, const CellAt &) = default;
};

/// Lines first..last (both inside) of one column.
struct RangeAt {
    std::uint32_t sheet = 0;
    std::uint32_t column = 0;
    std::uint32_t first = 0;
    std::uint32_t last = 0;
    friend auto operator<=>(const RangeAt &, const RangeAt &) = default;
};

} // namespace puteal

template<>
struct std::hash<puteal::CellAt> {
    std::size_t operator()(const puteal::CellAt &a) const noexcept
    {
        std::uint64_t h = (std::uint64_t{a.sheet} << 48) ^ (std::uint64_t{a.column} << 32) ^ a.line;
        h ^= h >> 31;
        h *= 0x9E3779B97F4A7C15ULL;
        return static_cast<std::size_t>(h ^ (h >> 29));
    }
};
