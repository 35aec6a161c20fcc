/// The program's own bounds. Each has a message that says the bound and the figure met, and a test on both
/// sides.
#pragma once

#include <cstddef>
#include <cstdint>

namespace puteal::limits
{

inline constexpr std::size_t formulaCharacters = 2000;
inline constexpr std::size_t nesting = 64;
inline constexpr std::size_t arguments = 64;
inline constexpr std::size_t nameCharacters = 64;
inline constexpr std::size_t cellCharacters = 10000;
inline constexpr std::uint32_t linesPerSheet = 1000000;
inline constexpr std::uint32_t columnsPerSheet = 64;
inline constexpr std::uint32_t sheets = 200;
inline constexpr std::size_t filledCells = 2000000;
/// Lines times columns (and one for the line itself), all sheets together: blank places cost memory too.
inline constexpr std::size_t places = 8000000;
/// Sources, lists, comments, charts, sets of attributes: everything of a file that is no cell.
inline constexpr std::size_t otherRecords = 250000;
inline constexpr std::size_t fileBytes = 64U * 1024U * 1024U;
inline constexpr std::size_t shapesPerThread = 8192;
/// Relative slack of every comparison, limit, rounding and threshold (values sit in base units).
inline constexpr double slack = 1e-12;

} // namespace puteal::limits
