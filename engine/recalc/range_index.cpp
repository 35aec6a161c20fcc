/// Readers of ranges, by column.
#include <algorithm>

#include "recalc/links.h"

namespace puteal
{

void RangeIndex::reset(std::size_t columns)
{
    m_columns.assign(columns, Column{});
    m_ranges = 0;
}

void RangeIndex::add(std::uint32_t column, std::uint32_t first, std::uint32_t last, NodeId reader)
{
    m_columns[column].intervals.push_back({first, last, reader});
    ++m_ranges;
}

void RangeIndex::finish()
{
    for (Column &column : m_columns) {
        if (column.intervals.empty())
            continue;
        std::stable_sort(column.intervals.begin(), column.intervals.end(),
                         [](const Interval &a, const Interval &b) { return a.first < b.first; });
        column.leaves = 1;
        while (column.leaves < column.intervals.size())
            column.leaves *= 2;
        column.reach.assign(2 * column.leaves, 0);
        for (std::size_t i = 0; i < column.intervals.size(); ++i)
            column.reach[column.leaves + i] = column.intervals[i].last + 1;
        for (std::size_t at = column.leaves; at-- > 1;)
            column.reach[at] = std::max(column.reach[2 * at], column.reach[2 * at + 1]);
    }
}

std::size_t RangePass::startingBy(const RangeIndex::Column &column, std::uint32_t line)
{
    const auto after =
        std::upper_bound(column.intervals.begin(), column.intervals.end(), line,
                         [](std::uint32_t l, const RangeIndex::Interval &i) { return l < i.first; });
    return static_cast<std::size_t>(after - column.intervals.begin());
}

} // namespace puteal
