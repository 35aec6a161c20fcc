/// Depth-first order with Tarjan's components [R. Tarjan, SIAM J. Comput. 1(2), 1972], without recursion.
#include "recalc/ordering.h"

#include <algorithm>
#include <unordered_map>

namespace puteal
{

namespace
{

constexpr std::uint32_t unseen = 0;
constexpr std::uint32_t finished = 0xFFFFFFFFU;

class Ordering
{
public:
    explicit Ordering(const OrderInput &input)
        : m_input(input), m_index(input.worked->size(), unseen), m_low(input.worked->size(), 0),
          m_next(input.cells + 1)
    {
        for (std::uint32_t i = 0; i < input.cells; ++i)
            m_next[i] = (*input.worked)[i] ? i : i + 1;
        m_next[input.cells] = input.cells;
    }

    Order run()
    {
        for (NodeId node = 0; node < m_index.size(); ++node)
            if ((*m_input.worked)[node] && m_index[node] == unseen)
                visit(node);
        return std::move(m_out);
    }

private:
    struct Frame {
        NodeId node = 0;
        std::uint32_t item = 0;   ///< next item of the slice
        std::uint32_t within = 0; ///< next cell of the range at `item`, 0 = not begun
    };

    /// First cell from `i` on that is not finished: ranges over finished cells cost nothing.
    std::uint32_t nextOpen(std::uint32_t i)
    {
        std::uint32_t root = i;
        while (m_next[root] != root)
            root = m_next[root];
        while (m_next[i] != root) {
            const std::uint32_t up = m_next[i];
            m_next[i] = root;
            i = up;
        }
        return root;
    }

    void open(NodeId node)
    {
        m_index[node] = m_low[node] = ++m_count;
        m_stack.push_back(node);
        m_frames.push_back({node, 0, 0});
    }

    /// Goes down to a precedent, or takes its number into account. True when it went down.
    bool meet(Frame &frame, NodeId other)
    {
        if (!(*m_input.worked)[other] || m_index[other] == finished)
            return false;
        if (m_index[other] == unseen) {
            open(other);
            return true;
        }
        m_low[frame.node] = std::min(m_low[frame.node], m_index[other]);
        if (other == frame.node)
            m_selfNeeding.push_back(other);
        return false;
    }

    /// Works on the top frame until it goes down or is done.
    bool step()
    {
        const std::size_t top = m_frames.size() - 1;
        const auto items = m_input.links->items((*m_input.slices)[m_frames[top].node]);
        while (m_frames[top].item < items.size()) {
            Frame &frame = m_frames[top];
            const std::uint32_t item = items[frame.item];
            if ((item & Links::rangeFlag) == 0) {
                ++frame.item;
                if (meet(frame, item & Links::nodeMask))
                    return true;
                continue;
            }
            const std::uint32_t first = item & Links::nodeMask, end = first + items[frame.item + 1];
            const std::uint32_t at = nextOpen(std::max(first, frame.within));
            if (at >= end) {
                frame.item += 2;
                frame.within = 0;
                continue;
            }
            frame.within = at + 1;
            if (meet(frame, at))
                return true;
        }
        return false;
    }

    void visit(NodeId root)
    {
        open(root);
        while (!m_frames.empty()) {
            if (step())
                continue;
            const NodeId node = m_frames.back().node;
            m_frames.pop_back();
            if (!m_frames.empty())
                m_low[m_frames.back().node] = std::min(m_low[m_frames.back().node], m_low[node]);
            if (m_low[node] == m_index[node])
                close(node);
        }
    }

    /// Takes the component that `node` is the root of off the stack.
    void close(NodeId node)
    {
        const bool alone = m_stack.back() == node;
        if (alone && std::find(m_selfNeeding.begin(), m_selfNeeding.end(), node) == m_selfNeeding.end()) {
            m_out.nodes.push_back(node);
        } else {
            const auto begin = std::find(m_stack.rbegin(), m_stack.rend(), node).base() - 1;
            std::vector<NodeId> members(begin, m_stack.end());
            std::sort(members.begin(), members.end());
            m_out.cycles.push_back(std::move(members));
            m_selfNeeding.erase(std::remove(m_selfNeeding.begin(), m_selfNeeding.end(), node),
                                m_selfNeeding.end());
        }
        NodeId taken = 0;
        do {
            taken = m_stack.back();
            m_stack.pop_back();
            m_index[taken] = finished;
            if (taken < m_input.cells)
                m_next[taken] = taken + 1;
        } while (taken != node);
    }

    const OrderInput &m_input;
    std::vector<std::uint32_t> m_index, m_low;
    std::vector<std::uint32_t> m_next;
    std::vector<NodeId> m_stack, m_selfNeeding;
    std::vector<Frame> m_frames;
    std::uint32_t m_count = 0;
    Order m_out;
};

} // namespace

Order orderOf(const OrderInput &input)
{
    return Ordering(input).run();
}

std::vector<NodeId> shortestCycle(const OrderInput &input, const std::vector<NodeId> &members, NodeId start)
{
    const auto isMember = [&](NodeId n) { return std::binary_search(members.begin(), members.end(), n); };
    std::unordered_map<NodeId, NodeId> from;
    std::vector<NodeId> queue{start};
    for (std::size_t head = 0; head < queue.size(); ++head) {
        const NodeId node = queue[head];
        bool closed = false;
        const auto meet = [&](NodeId other) {
            if (closed || !isMember(other))
                return;
            if (other == start) {
                closed = true;
            } else if (from.try_emplace(other, node).second) {
                queue.push_back(other);
            }
        };
        input.links->forEach((*input.slices)[node], [&](NodeId other, bool) { meet(other); },
                             [&](NodeId first, std::uint32_t count) {
                                 auto at = std::lower_bound(members.begin(), members.end(), first);
                                 for (; at != members.end() && *at < first + count; ++at)
                                     meet(*at);
                             });
        if (!closed)
            continue;
        std::vector<NodeId> path{start};
        for (NodeId step = node; step != start; step = from.at(step))
            path.insert(path.begin() + 1, step);
        path.push_back(start);
        return path;
    }
    return {start, start};
}

} // namespace puteal
