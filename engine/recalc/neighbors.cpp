/// What a cell reads and what reads it; which sheets refer to which.
#include <algorithm>
#include <set>

#include "recalc/program_model.h"

namespace puteal
{

namespace
{

/// Cells in the order they are met, each once, up to a number.
class CellList
{
public:
    CellList(const Model &model, std::size_t most) : m_model(model), m_most(most) {}
    bool full() const { return m_cells.size() >= m_most; }
    void add(NodeId node)
    {
        const CellAt at = m_model.cellOf(node);
        if (!full() && m_seen.insert(at).second)
            m_cells.push_back(at);
    }
    std::vector<CellAt> take() && { return std::move(m_cells); }

private:
    const Model &m_model;
    std::size_t m_most;
    std::set<CellAt> m_seen;
    std::vector<CellAt> m_cells;
};

} // namespace

std::vector<CellAt> ProgramModel::precedents(const CellAt &at, std::size_t most) const
{
    const NodeId cell = m_model.layout.nodeOf(at);
    if (cell == noNode)
        return {};
    CellList list(m_model, most);
    const LimitNodes limit = limitNodes(at);
    for (const NodeId node : {cell, limit.low, limit.high}) {
        if (node == noNode)
            continue;
        m_model.pool.forEach(
            m_model.links[node],
            [&](NodeId other, bool onlyType) {
                if (!onlyType)
                    list.add(other);
            },
            [&](NodeId first, std::uint32_t count) {
                for (std::uint32_t i = 0; i < count && !list.full(); ++i)
                    list.add(first + i);
            });
    }
    return std::move(list).take();
}

std::vector<CellAt> ProgramModel::dependents(const CellAt &at, std::size_t most) const
{
    const NodeId cell = m_model.layout.nodeOf(at);
    if (cell == noNode)
        return {};
    CellList list(m_model, most);
    const LimitNodes limit = limitNodes(at);
    for (const NodeId node : {cell, limit.state}) {
        if (node == noNode)
            continue;
        for (const std::uint32_t rank : m_model.readersOf(node)) {
            const NodeId reader = m_model.order.nodes[rank];
            if (reader != limit.state) // its own limit is not another cell
                list.add(reader);
        }
    }
    const std::uint32_t column = m_model.layout.columnOf(cell);
    m_model.ranges.forEachOver(column, cell - m_model.layout.startOf(column),
                               [&](NodeId reader) { list.add(reader); });
    return std::move(list).take();
}

std::vector<std::pair<std::uint32_t, std::uint32_t>> ProgramModel::sheetEdges() const
{
    std::set<std::pair<std::uint32_t, std::uint32_t>> edges;
    std::uint32_t to = 0, begin = 0, end = 0; // the sheet of the node before, and its cells
    for (NodeId node = 0; node < m_model.nodes(); ++node) {
        if (m_model.links[node] == 0)
            continue;
        if (node < begin || node >= end) {
            to = m_model.cellOf(node).sheet;
            const Sheet &sheet = m_model.book.sheets[to];
            begin = m_model.layout.nodeOf({to, 0, 0});
            end = begin + sheet.columnCount() * sheet.lineCount();
        }
        const auto add = [&](NodeId other) {
            if (other < begin || other >= end)
                if (const std::uint32_t from = m_model.cellOf(other).sheet; from != to)
                    edges.emplace(from, to);
        };
        m_model.pool.forEach(
            m_model.links[node], [&](NodeId other, bool) { add(other); },
            [&](NodeId first, std::uint32_t) { add(first); });
    }
    return {edges.begin(), edges.end()};
}

} // namespace puteal
