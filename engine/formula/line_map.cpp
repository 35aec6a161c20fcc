/// Arithmetic of lines put in, deleted and moved.
#include "formula/line_map.h"

#include <algorithm>
#include <array>

namespace puteal
{

LineMap::LineMap(const StructuralChange &change)
{
    if (change.count == 0)
        return;
    if (change.kind == StructuralChange::Kind::insertLines)
        m_kind = Kind::insertion;
    else if (change.kind == StructuralChange::Kind::deleteLines)
        m_kind = Kind::deletion;
    else if (change.kind == StructuralChange::Kind::moveLines &&
             (change.to < change.at || change.to > change.at + change.count))
        m_kind = Kind::move; // dropped onto itself it stays where it is
    m_at = change.at;
    m_count = change.count;
    m_gap = m_kind == Kind::move ? change.to : change.at;
}

std::uint32_t LineMap::landing() const
{
    return m_kind == Kind::move && m_gap > m_at ? m_gap - m_count : m_gap;
}

std::optional<std::uint32_t> LineMap::after(std::uint32_t line) const
{
    switch (m_kind) {
    case Kind::insertion:
        return line < m_gap ? line : line + m_count;
    case Kind::deletion:
        if (inBlock(line))
            return std::nullopt;
        return line < m_at ? line : line - m_count;
    case Kind::move:
        if (inBlock(line))
            return landing() + (line - m_at);
        if (line >= m_gap && line < m_at)
            return line + m_count;
        if (line >= m_at + m_count && line < m_gap)
            return line - m_count;
        return line;
    case Kind::other:
        break;
    }
    return line;
}

std::optional<std::uint32_t> LineMap::before(std::uint32_t line) const
{
    switch (m_kind) {
    case Kind::insertion:
        if (line >= m_gap && line < m_gap + m_count)
            return std::nullopt;
        return line < m_gap ? line : line - m_count;
    case Kind::deletion:
        return line < m_at ? line : line + m_count;
    case Kind::move: {
        const std::uint32_t land = landing();
        if (line >= land && line < land + m_count)
            return m_at + (line - land);
        const std::uint32_t without =
            line < land ? line : line - m_count; // its place among the lines that stay
        return without < m_at ? without : without + m_count;
    }
    case Kind::other:
        break;
    }
    return line;
}

std::uint32_t LineMap::lineCountAfter(std::uint32_t lines) const
{
    if (m_kind == Kind::insertion)
        return lines + m_count;
    return m_kind == Kind::deletion ? lines - std::min(lines, m_count) : lines;
}

std::uint32_t LineMap::kept(std::uint32_t first, std::uint32_t last, std::uint32_t afterFirst,
                            std::uint32_t afterLast) const
{
    // between these lines every line moves by the same step
    std::array<std::uint32_t, 5> starts{first, m_at, blockEnd(), m_gap, last + 1};
    for (std::uint32_t &start : starts)
        start = std::clamp(start, first, last + 1);
    std::sort(starts.begin(), starts.end());
    std::uint32_t count = 0;
    for (std::size_t i = 0; i + 1 < starts.size(); ++i) {
        const auto step = starts[i] < starts[i + 1] ? after(starts[i]) : std::nullopt;
        if (!step)
            continue;
        const std::uint32_t pieceFirst = std::max(*step, afterFirst);
        const std::uint32_t pieceLast = std::min(*step + (starts[i + 1] - 1 - starts[i]), afterLast);
        count += pieceFirst <= pieceLast ? pieceLast - pieceFirst + 1 : 0;
    }
    return count;
}

namespace
{

std::optional<LineRange> afterDeletion(const LineRange &range, const LineMap &map)
{
    const std::uint32_t first = map.inBlock(range.first) ? map.blockEnd() : range.first;
    if (map.inBlock(range.last) && map.blockFirst() <= range.first)
        return std::nullopt;
    const std::uint32_t last = map.inBlock(range.last) ? map.blockFirst() - 1 : range.last;
    return LineRange{*map.after(first), *map.after(last)};
}

LineRange afterMove(const LineRange &range, const LineMap &map, const RangeEdges &edges)
{
    const std::uint32_t land = map.landing(), landEnd = land + map.count();
    if (map.inBlock(range.first) && map.inBlock(range.last))
        return {*map.after(range.first), *map.after(range.last)};
    // the lines that stay keep together; what is dropped between them is inside
    const std::uint32_t stayFirst = map.inBlock(range.first) ? map.blockEnd() : range.first;
    const std::uint32_t stayLast = map.inBlock(range.last) ? map.blockFirst() - 1 : range.last;
    LineRange result{*map.after(stayFirst), *map.after(stayLast)};
    const auto isIn = [&](std::uint32_t line) { return line >= range.first && line <= range.last; };
    // own lines dropped at an edge stay in the range; other lines only at a held edge
    if (landEnd == result.first) {
        if (edges.takesAbove)
            result.first = land;
        else if (isIn(map.blockEnd() - 1))
            result.first = *map.after(std::max(range.first, map.blockFirst()));
    } else if (land == result.last + 1) {
        if (edges.takesBelow)
            result.last = landEnd - 1;
        else if (isIn(map.blockFirst()))
            result.last = *map.after(std::min(range.last, map.blockEnd() - 1));
    }
    return result;
}

} // namespace

std::optional<LineRange> rangeAfter(const LineRange &range, const LineMap &map, const RangeEdges &edges)
{
    if (map.isDeletion())
        return afterDeletion(range, map);
    if (map.isMove())
        return afterMove(range, map, edges);
    if (!map.isInsertion())
        return range;
    LineRange result{*map.after(range.first), *map.after(range.last)};
    if (map.gap() == range.first && edges.takesAbove)
        result.first = map.gap();
    if (map.gap() == range.last + 1 && edges.takesBelow)
        result.last = map.gap() + map.count() - 1;
    return result;
}

} // namespace puteal
