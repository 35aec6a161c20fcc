/// What formulas refer to, as nodes: slices of one pool, cells of a range told by first and count.
#pragma once

#include <algorithm>
#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

#include "recalc/values.h"

namespace puteal
{

/// A slice holds its length, then items: a node, a node that only its type is needed of, or a range of nodes.
class Links
{
public:
    static constexpr std::uint32_t rangeFlag = 0x80000000U;
    static constexpr std::uint32_t typeFlag = 0x40000000U;
    static constexpr std::uint32_t nodeMask = 0x3FFFFFFFU;
    using Slice = std::uint32_t; ///< 0 = the empty slice

    Links() : m_pool(1, 0) {}
    void clear()
    {
        m_pool.assign(1, 0);
        m_free.clear();
    }
    std::size_t size() const { return m_pool.size(); }

    Slice add(const std::vector<std::uint32_t> &items)
    {
        if (items.empty())
            return 0;
        const auto length = static_cast<std::uint32_t>(items.size());
        if (const auto free = m_free.find(length); free != m_free.end() && free->second != 0) {
            const Slice taken = free->second;
            free->second = m_pool[taken + 1];
            std::copy(items.begin(), items.end(), m_pool.begin() + taken + 1);
            return taken;
        }
        const auto slice = static_cast<Slice>(m_pool.size());
        m_pool.push_back(length);
        m_pool.insert(m_pool.end(), items.begin(), items.end());
        return slice;
    }
    /// Gives a slice back: the next one as long takes its place, so that edits do not make the pool grow.
    void drop(Slice slice)
    {
        if (slice == 0)
            return;
        Slice &first = m_free[m_pool[slice]];
        m_pool[slice + 1] = first;
        first = slice;
    }
    std::span<const std::uint32_t> items(Slice slice) const
    {
        return {m_pool.data() + slice + 1, m_pool[slice]};
    }

    /// single(node, onlyType) and range(first, count) for each item in order.
    template<class Single, class Range>
    void forEach(Slice slice, Single single, Range range) const
    {
        const auto all = items(slice);
        for (std::size_t i = 0; i < all.size(); ++i) {
            if ((all[i] & rangeFlag) != 0) {
                range(all[i] & nodeMask, all[i + 1]);
                ++i;
            } else {
                single(all[i] & nodeMask, (all[i] & typeFlag) != 0);
            }
        }
    }

private:
    std::vector<std::uint32_t> m_pool;
    std::unordered_map<std::uint32_t, Slice>
        m_free; ///< by length: the first free slice; its first item is the next
};

/// Readers of ranges, by column: which formulas have a range over a given line. Constant once finished.
class RangeIndex
{
public:
    /// Lines first..last of the column are read by `reader`.
    void add(std::uint32_t column, std::uint32_t first, std::uint32_t last, NodeId reader);
    void reset(std::size_t columns);
    void finish();
    std::size_t ranges() const { return m_ranges; }
    /// Calls visit(reader) for every range over the line.
    template<class Visit>
    void forEachOver(std::uint32_t column, std::uint32_t line, Visit visit) const
    {
        if (column >= m_columns.size())
            return;
        for (const Interval &interval : m_columns[column].intervals) {
            if (interval.first > line)
                return;
            if (interval.last >= line)
                visit(interval.reader);
        }
    }

private:
    friend class RangePass;
    struct Interval {
        std::uint32_t first = 0, last = 0;
        NodeId reader = noNode;
    };
    /// Intervals by first line; a segment tree over their last lines (plus one).
    struct Column {
        std::vector<Interval> intervals;
        std::vector<std::uint32_t> reach;
        std::size_t leaves = 0;
    };
    std::vector<Column> m_columns;
    std::size_t m_ranges = 0;
};

/// One pass over changes: every range is reported once, however many of its lines change.
class RangePass
{
public:
    explicit RangePass(const RangeIndex &index) : m_index(index) {}
    /// Calls visit(reader) for every range over the line that was not reported yet.
    template<class Visit>
    void stab(std::uint32_t column, std::uint32_t line, Visit visit)
    {
        if (column >= m_index.m_columns.size() || m_index.m_columns[column].intervals.empty())
            return;
        const RangeIndex::Column &all = m_index.m_columns[column];
        std::vector<std::uint32_t> &reach = m_reach[column];
        if (reach.empty())
            reach = all.reach;
        descend(all, reach, {1, 0, all.leaves}, startingBy(all, line), line, visit);
    }

private:
    struct Part {
        std::size_t at, begin, end;
    };
    /// How many intervals begin at or above the line: only these can hold it.
    static std::size_t startingBy(const RangeIndex::Column &column, std::uint32_t line);

    template<class Visit>
    void descend(const RangeIndex::Column &column, std::vector<std::uint32_t> &reach, Part part,
                 std::size_t most, std::uint32_t line, Visit &visit)
    {
        if (part.begin >= most || reach[part.at] <= line)
            return;
        if (part.end - part.begin == 1) {
            reach[part.at] = 0;
            visit(column.intervals[part.begin].reader);
            return;
        }
        const std::size_t middle = (part.begin + part.end) / 2, low = 2 * part.at;
        descend(column, reach, {low, part.begin, middle}, most, line, visit);
        descend(column, reach, {low + 1, middle, part.end}, most, line, visit);
        reach[part.at] = reach[low] > reach[low + 1] ? reach[low] : reach[low + 1];
    }

    const RangeIndex &m_index;
    std::unordered_map<std::uint32_t, std::vector<std::uint32_t>> m_reach;
};

} // namespace puteal
