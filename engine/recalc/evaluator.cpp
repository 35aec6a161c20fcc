/// Works nodes out in dependency order and stores what they give.
#include "recalc/evaluator.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "compile/error_number.h"
#include "compile/shape_run.h"

namespace puteal
{

namespace
{

RankedSet &dirtyOfThread(std::size_t size)
{
    static thread_local RankedSet set;
    set.reserve(size);
    return set;
}

} // namespace

Evaluator::Evaluator(const Model &model, Values &values)
    : m_model(model), m_values(values), m_host(model, values), m_shapes(ShapeCache::ofThread()),
      m_compilesBefore(m_shapes.compiles()), m_dirty(dirtyOfThread(model.order.nodes.size())),
      m_pass(model.ranges), m_staticSets(model.entries.size(), noNode), m_ready(model.entries.size()),
      m_evictions(m_shapes.evictions())
{
    m_shapes.tick();
    m_frame.host = &m_host;
    m_frame.folds = &m_folds;
    m_frame.below = model.book.below;
    m_frame.bounds = model.boundedCells > 0 ? model.bounds.data() : nullptr;
}

void Evaluator::fill()
{
    const std::size_t count = m_model.nodes();
    m_values.number.assign(m_model.typed.begin(), m_model.typed.end());
    m_values.status.assign(count, ErrorKind::none);
    m_values.cautions.assign(count, 0);
    m_values.ownCautions.assign(count, 0);
    m_values.reason.assign(count, 0);
    m_values.marked.assign(count, 0);
    m_values.errors.clear();
    for (NodeId node = 0; node < count; ++node)
        if (m_model.content[node] == Content::words || m_model.content[node] == Content::failed)
            put(node);
    m_changed.nodes.clear();
}

bool Evaluator::put(NodeId node)
{
    Outcome out;
    out.number = m_model.typed[node];
    if (m_model.content[node] == Content::failed) {
        out.status = m_model.errors.at(node).kind;
    } else if (m_model.content[node] == Content::words) {
        const auto typed = m_model.words.find(node);
        if (typed != m_model.words.end()) {
            out.number = m_values.words.intern(typed->second);
        } else {
            const CellAt at = m_model.layout.cellOf(node);
            out.number =
                m_values.words.intern(m_model.book.sheets[at.sheet].cell(at.column, at.line).typed());
        }
    }
    if (!m_values.errors.empty())
        m_values.errors.erase(node);
    return store(node, out);
}

bool Evaluator::setNumber(NodeId node, double number)
{
    Outcome out;
    out.number = number;
    return store(node, out);
}

bool Evaluator::store(NodeId node, const Outcome &out)
{
    Values &v = m_values;
    const bool wakes =
        std::bit_cast<std::uint64_t>(v.number[node]) != std::bit_cast<std::uint64_t>(out.number) ||
        v.status[node] != out.status || v.cautions[node] != out.cautions || v.reason[node] != out.reason;
    // The words of an error may name a value that changed, so an error worked out anew is told as changed.
    if (!wakes && v.ownCautions[node] == out.own && out.status == ErrorKind::none)
        return false;
    v.number[node] = out.number;
    v.status[node] = out.status;
    v.cautions[node] = out.cautions;
    v.ownCautions[node] = out.own;
    v.reason[node] = out.reason;
    v.marked[node] = out.status != ErrorKind::none || (out.cautions | out.own | out.reason) != 0 ? 1 : 0;
    if (m_recording)
        m_changed.nodes.push_back(node);
    return wakes;
}

const Evaluator::Ready &Evaluator::makeReady(std::uint32_t index)
{
    if (m_evictions != m_shapes.evictions()) {
        m_ready.assign(m_ready.size(), Ready{});
        m_evictions = m_shapes.evictions();
    }
    Ready &known = m_ready[index];
    const Entry &entry = m_model.entries[index];
    Shape &shape = m_shapes.get(entry.compiled->shape); // may drop others
    if (m_evictions != m_shapes.evictions()) {
        m_ready.assign(m_ready.size(), Ready{});
        m_evictions = m_shapes.evictions();
    }
    known = {&shape, entry.compiled.get(), entry.compiled->loaded,
             entry.compiled->plain && entry.checked->cautions.empty() && !shape.broken()};
    return known;
}

[[gnu::always_inline]] inline const Evaluator::Ready &Evaluator::ready(std::uint32_t index)
{
    const Ready &known = m_ready[index];
    return known.shape && m_evictions == m_shapes.evictions() ? known : makeReady(index);
}

[[gnu::always_inline]] inline bool Evaluator::workFormula(NodeId node)
{
    const Ready &run = ready(m_model.entry[node]);
    const std::uint32_t *operands = m_model.operandPool.items(m_model.operands[node]).data();
    if (!run.simple)
        return workWithFrame(node, *run.compiled, *run.shape, operands);
    Values &v = m_values;
    double *slot = run.shape->operands();
    const double *number = v.number.data();
    const std::uint8_t *marked = v.marked.data();
    std::uint32_t beside = marked[node];
    for (const std::uint32_t *operand = operands, *end = operands + run.loaded; operand != end; ++operand) {
        *slot++ = number[*operand];
        beside |= marked[*operand];
    }
    const double value = run.shape->evalAtOnce();
    if (!std::isfinite(value) || beside != 0)
        return workWithFrame(node, *run.compiled, *run.shape, operands);
    double &stored = v.number[node];
    if (std::bit_cast<std::uint64_t>(stored) == std::bit_cast<std::uint64_t>(value))
        return false;
    stored = value;
    if (m_recording)
        m_changed.nodes.push_back(node);
    return true;
}

[[gnu::always_inline]] inline bool Evaluator::work(NodeId node)
{
    const Content content = m_model.content[node];
    if (content == Content::formula) [[likely]] {
        ++m_changed.counts.evaluated;
        return workFormula(node);
    }
    return content == Content::state ? workState(node) : put(node);
}

void Evaluator::workAll()
{
    m_recording = false;
    for (const NodeId node : m_model.order.nodes)
        work(node);
    m_recording = true;
}

bool Evaluator::workWithFrame(NodeId node, const CompiledFormula &compiled, Shape &shape,
                              const std::uint32_t *operands)
{
    m_host.seenFrom(m_model.cellOf(node).sheet);
    m_frame.number = m_values.number.data();
    m_frame.begin(compiled, operands);
    const double value = runFrame(m_frame, shape);
    Outcome out;
    out.number = value;
    if (!std::isfinite(value)) {
        const Verdict verdict = verdictOf(m_frame, value, node);
        out.number = verdict.number;
        out.status = verdict.status;
        noteError(node, verdict, value);
    } else {
        if (!m_values.errors.empty())
            m_values.errors.erase(node);
        if (compiled.hasReason)
            out.reason = reasonOfPiece(m_frame, compiled.root);
        if (m_frame.usedRule)
            noteRule(m_frame, shape, value);
    }
    std::uint32_t own = staticCautions(m_model.entry[node]);
    if (!m_frame.cautions.empty()) {
        std::vector<std::uint32_t> ids = m_values.pool.members(own);
        for (const Caution &caution : m_frame.cautions)
            ids.push_back(m_values.pool.intern(caution));
        own = m_values.pool.set(std::move(ids));
    }
    out.own = own;
    out.cautions = m_values.pool.united(own, inheritedCautions(compiled, operands));
    return store(node, out);
}

void Evaluator::noteError(NodeId node, const Verdict &verdict, double result)
{
    const std::uint32_t index = std::isnan(result) ? errorIndex(result) : 0;
    if (verdict.status != ErrorKind::waiting && index > 0 && index <= m_frame.errors.size())
        m_values.errors[node] = m_frame.errors[index - 1];
    else if (!m_values.errors.empty())
        m_values.errors.erase(node);
}

std::uint32_t Evaluator::staticCautions(std::uint32_t entry)
{
    std::uint32_t &set = m_staticSets[entry];
    if (set == noNode) {
        std::vector<std::uint32_t> ids;
        for (const Caution &caution : m_model.entries[entry].checked->cautions)
            ids.push_back(m_values.pool.intern(caution));
        set = m_values.pool.set(std::move(ids));
    }
    return set;
}

std::uint32_t Evaluator::inheritedCautions(const CompiledFormula &compiled, const std::uint32_t *operands)
{
    std::uint32_t set = 0;
    for (std::size_t k = 0; k < compiled.operands.size(); ++k)
        set = m_values.pool.united(set, m_values.cautions[operands[k]]);
    const std::uint32_t *range = operands + compiled.operands.size();
    for (std::size_t r = 0; r < compiled.ranges.size(); ++r)
        set = m_values.pool.united(set, cautionsOfRange(range[2 * r], range[2 * r + 1]));
    return set;
}

std::uint32_t Evaluator::cautionsOfRange(NodeId first, std::uint32_t count)
{
    RangeCautions &known = m_rangeCautions[first];
    RangeCautions own;
    RangeCautions &range = known.done <= count ? known : own;
    for (; range.done < count; ++range.done)
        if (const std::uint32_t more = m_values.cautions[first + range.done]; more != 0)
            range.set = m_values.pool.united(range.set, more);
    return range.set;
}

bool Evaluator::workState(NodeId node)
{
    const Verdict verdict = stateVerdict(m_model, m_values, node);
    Outcome out;
    out.number = verdict.number;
    out.status = verdict.status;
    for (const NodeId other : m_model.pool.items(m_model.links[node]))
        out.cautions = m_values.pool.united(out.cautions, m_values.cautions[other & Links::nodeMask]);
    return store(node, out);
}

void Evaluator::wake(NodeId node)
{
    const auto readers = m_model.readersOf(node);
    m_dirty.insertAscending(readers.data(), readers.data() + readers.size());
    if (m_model.ranges.ranges() == 0 || !m_model.isCell(node))
        return;
    const std::uint32_t column = m_model.layout.columnOf(node);
    m_pass.stab(column, node - m_model.layout.startOf(column),
                [this](NodeId reader) { m_dirty.insert(m_model.rank[reader]); });
}

void Evaluator::sweep()
{
    m_dirty.takeEach([this](std::uint32_t rank) {
        const NodeId node = m_model.order.nodes[rank];
        if (work(node))
            wake(node);
    });
}

Changed Evaluator::take() &&
{
    std::vector<NodeId> &nodes = m_changed.nodes;
    const auto descends = [](NodeId a, NodeId b) { return a >= b; };
    if (std::adjacent_find(nodes.begin(), nodes.end(), descends) != nodes.end()) {
        std::sort(nodes.begin(), nodes.end());
        nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
    }
    m_changed.counts.compiledShapes = m_shapes.compiles() - m_compilesBefore;
    return std::move(m_changed);
}

} // namespace puteal
