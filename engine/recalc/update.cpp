/// Edits of cells taken into a model: read again, types followed, values followed.
#include <algorithm>
#include <bit>
#include <cmath>
#include <set>

#include "recalc/program_model.h"

namespace puteal
{

namespace
{

bool sameBits(double a, double b)
{
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

/// Names, limits and what belongs to the whole workbook decide what other texts mean.
bool needsRebuild(const Model &model, const Workbook &book, const std::vector<CellAt> &edited)
{
    const Workbook &old = model.book;
    if (old.sheets.size() != book.sheets.size() || old.below != book.below || old.si != book.si ||
        old.lists != book.lists || old.things != book.things)
        return true;
    for (std::size_t s = 0; s < book.sheets.size(); ++s) {
        const Sheet &a = old.sheets[s], &b = book.sheets[s];
        if (a.lineCount() != b.lineCount() || a.columnCount() != b.columnCount() || a.key() != b.key())
            return true;
        for (std::uint32_t c = 0; c < b.columnCount(); ++c)
            if (!(a.column(c) == b.column(c)))
                return true;
    }
    for (const CellAt &at : edited) {
        if (model.layout.nodeOf(at) == noNode)
            return true;
        const Cell &a = old.sheets[at.sheet].cell(at.column, at.line),
                   &b = book.sheets[at.sheet].cell(at.column, at.line);
        if (a.attributes != b.attributes &&
            (a.beside().name != b.beside().name || a.beside().limit != b.beside().limit))
            return true;
    }
    return false;
}

/// The edit goes through everything: old and new results compared cell by cell.
Changed rebuildAndCompare(Model &model, const Workbook &book, Values &values)
{
    const std::uint32_t oldCells = model.layout.cells();
    model.book = book;
    rebuild(model);
    Values fresh;
    fresh.words = std::move(values.words);
    fresh.pool = std::move(values.pool);
    Evaluator evaluator(model, fresh);
    evaluator.fill();
    evaluator.workAll();
    Changed changed;
    changed.counts = std::move(evaluator).take().counts;
    const bool sameCells = oldCells == model.layout.cells();
    for (NodeId node = 0; node < model.nodes(); ++node) {
        const bool known = node < values.number.size() && sameCells && model.isCell(node);
        if (!known || !sameBits(values.number[node], fresh.number[node]) ||
            values.status[node] != fresh.status[node] || values.cautions[node] != fresh.cautions[node] ||
            values.ownCautions[node] != fresh.ownCautions[node] ||
            values.reason[node] != fresh.reason[node] || fresh.status[node] != ErrorKind::none)
            changed.nodes.push_back(node);
    }
    values = std::move(fresh);
    return changed;
}

class Update
{
public:
    Update(Model &model, const Workbook &book) : m_model(model), m_book(book) {}

    Changed run(const std::vector<CellAt> &edited, Values &values)
    {
        for (const CellAt &at : edited)
            readAgain(at);
        if (m_graphChanged)
            orderAgain();
        checkAgain();
        if (m_boundsChanged)
            countBounds();
        return workAgain(values);
    }

private:
    struct Before {
        TypeId type;
        double typed;
        std::uint8_t bound;
    };
    Before remember(NodeId node) const
    {
        return {m_model.types[node], m_model.typed[node], m_model.bounds[node]};
    }
    bool differs(NodeId node, const Before &before)
    {
        if (before.bound != m_model.bounds[node])
            m_boundsChanged = true;
        // Of values only the type counts here; a failure counts with its origin.
        return before.type != m_model.types[node] ||
               (m_model.content[node] == Content::failed && !sameBits(before.typed, m_model.typed[node]));
    }

    void readAgain(const CellAt &at)
    {
        const NodeId node = m_model.layout.nodeOf(at);
        const Before before = remember(node);
        const auto oldItems = m_model.pool.items(m_model.links[node]);
        const std::vector<std::uint32_t> items(oldItems.begin(), oldItems.end());
        const bool worked = m_model.worked[node] != 0;
        m_model.book.sheets[at.sheet].setCell(at.column, at.line,
                                              m_book.sheets[at.sheet].cell(at.column, at.line));
        readCell(m_model, node);
        const auto newItems = m_model.pool.items(m_model.links[node]);
        // Reading forgets that a cell stood in a circle, so that is looked for anew.
        if (worked != (m_model.worked[node] != 0) || before.type == circularType ||
            !std::equal(items.begin(), items.end(), newItems.begin(), newItems.end()))
            m_graphChanged = true;
        m_read.push_back(node);
        if (m_model.worked[node])
            m_check.insert(node); // its type shows when it is checked
        else if (differs(node, before))
            m_typeChanged.push_back(node);
        m_before.emplace(node, before);
    }

    void orderAgain()
    {
        std::set<NodeId> circular;
        for (const auto &members : m_model.order.cycles)
            circular.insert(members.begin(), members.end());
        buildGraph(m_model);
        for (const NodeId node : circular)
            if (m_model.worked[node])
                m_check.insert(node);
        std::set<NodeId> now;
        for (const auto &members : m_model.order.cycles)
            now.insert(members.begin(), members.end());
        for (const NodeId node : now)
            m_before.try_emplace(node, remember(node));
        markCycles(m_model);
        for (const NodeId node : now) {
            m_put.insert(node);
            if (differs(node, m_before.at(node)))
                m_typeChanged.push_back(node);
        }
    }

    template<class Visit>
    void forEachReader(NodeId node, RangePass &pass, Visit visit)
    {
        for (const std::uint32_t rank : m_model.readersOf(node))
            visit(m_model.order.nodes[rank]);
        if (!m_model.isCell(node))
            return;
        const std::uint32_t column = m_model.layout.columnOf(node);
        pass.stab(column, node - m_model.layout.startOf(column), visit);
        if (const auto limit = m_model.limits.find(node); limit != m_model.limits.end())
            for (const NodeId hidden : {limit->second.low, limit->second.high})
                if (hidden != noNode && m_model.rank[hidden] != noNode)
                    visit(hidden);
    }

    void checkAgain()
    {
        if (m_check.empty() && m_typeChanged.empty())
            return;
        RankedSet dirty(m_model.order.nodes.size());
        RangePass pass(m_model.ranges);
        const auto wake = [&](NodeId node) {
            forEachReader(node, pass, [&](NodeId reader) { dirty.insert(m_model.rank[reader]); });
        };
        for (const NodeId node : m_check)
            if (m_model.rank[node] != noNode)
                dirty.insert(m_model.rank[node]);
        for (const NodeId node : m_typeChanged)
            wake(node);
        RangeTypesMemo memo;
        dirty.takeEach([&](std::uint32_t rank) {
            const NodeId node = m_model.order.nodes[rank];
            const auto known = m_before.find(node);
            const Before before = known != m_before.end() ? known->second : remember(node);
            checkNode(m_model, node, memo);
            m_work.push_back(node);
            if (differs(node, before))
                wake(node);
        });
    }

    void countBounds()
    {
        m_model.boundedCells = 0;
        for (const std::uint8_t bound : m_model.bounds)
            m_model.boundedCells += bound != 0 ? 1U : 0U;
    }

    Changed workAgain(Values &values)
    {
        Evaluator evaluator(m_model, values);
        for (const NodeId node : m_work)
            evaluator.mark(node);
        const auto put = [&](NodeId node) {
            if (m_model.rank[node] == noNode && evaluator.put(node))
                evaluator.wake(node);
        };
        for (const NodeId node : m_read)
            put(node);
        for (const NodeId node : m_put)
            put(node);
        evaluator.sweep();
        return std::move(evaluator).take();
    }

    Model &m_model;
    const Workbook &m_book;
    std::vector<NodeId> m_read, m_typeChanged, m_work;
    std::set<NodeId> m_check, m_put;
    std::unordered_map<NodeId, Before> m_before;
    bool m_graphChanged = false, m_boundsChanged = false;
};

} // namespace

Changed updateModel(Model &model, const Workbook &workbook, const std::vector<CellAt> &edited, Values &values)
{
    if (needsRebuild(model, workbook, edited) || values.number.size() != model.nodes())
        return rebuildAndCompare(model, workbook, values);
    return Update(model, workbook).run(edited, values);
}

} // namespace puteal
