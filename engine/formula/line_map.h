/// Where the lines of a sheet go in a structural change, and what becomes of a range of them.
#pragma once

#include <cstdint>
#include <optional>

#include "formula/rewriter.h"

namespace puteal
{

/// Lines before <-> lines after. Changes that move no lines keep every line where it is.
class LineMap
{
public:
    explicit LineMap(const StructuralChange &change);

    /// Where a line stands afterwards; none when it is deleted.
    std::optional<std::uint32_t> after(std::uint32_t before) const;
    /// Which line stands there afterwards; none for a new line.
    std::optional<std::uint32_t> before(std::uint32_t after) const;
    bool movesLines() const { return m_kind != Kind::other; }
    bool isMove() const { return m_kind == Kind::move; }
    bool isInsertion() const { return m_kind == Kind::insertion; }
    bool isDeletion() const { return m_kind == Kind::deletion; }
    /// The lines put in, moved or deleted: first and one past the last, before (deletion, move).
    std::uint32_t blockFirst() const { return m_at; }
    std::uint32_t blockEnd() const { return m_at + m_count; }
    bool inBlock(std::uint32_t line) const { return line >= m_at && line < m_at + m_count; }
    /// Where lines are put in: before this line (insertion, move).
    std::uint32_t gap() const { return m_gap; }
    /// The first line of what was put in, afterwards.
    std::uint32_t landing() const;
    std::uint32_t count() const { return m_count; }
    std::uint32_t lineCountAfter(std::uint32_t before) const;
    /// How many of the lines first..last stand in afterFirst..afterLast afterwards.
    std::uint32_t kept(std::uint32_t first, std::uint32_t last, std::uint32_t afterFirst,
                       std::uint32_t afterLast) const;

private:
    enum class Kind : std::uint8_t { other, insertion, deletion, move };
    Kind m_kind = Kind::other;
    std::uint32_t m_at = 0, m_count = 0, m_gap = 0;
};

/// Lines first..last, both inside.
struct LineRange {
    std::uint32_t first = 0, last = 0;
    friend bool operator==(const LineRange &, const LineRange &) = default;
};

/// Which edges of a range a formula or command holds on to, so that lines put in there join the range.
struct RangeEdges {
    bool takesAbove = false; ///< lines put in just above the first belong to it
    bool takesBelow = false; ///< lines put in just below the last
};

/// The range afterwards: it grows by lines put inside it and at held edges, deleted lines and lines moved out
/// leave it, it moves along when all its lines move. None when no line of it is left.
std::optional<LineRange> rangeAfter(const LineRange &range, const LineMap &map, const RangeEdges &edges);

} // namespace puteal
