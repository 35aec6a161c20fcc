/// Works nodes out in dependency order and stores what they give.
#pragma once

#include <vector>

#include "recalc/hosts.h"
#include "recalc/ranked_set.h"

namespace puteal
{

class Evaluator
{
public:
    Evaluator(const Model &model, Values &values);

    /// Values as large as the model, every node with what is known without working out.
    void fill();
    /// What is known of one node without working it out: typed values, blanks, failures.
    bool put(NodeId node);
    /// Works out a node of the order. True when something its readers see changed.
    bool work(NodeId node);
    /// Works out every node in order.
    void workAll();
    /// Works out what depends on the nodes marked so far, readers after what they read, cut off where nothing
    /// changes.
    void sweep();
    /// A node changed: its readers have to be worked out.
    void wake(NodeId node);
    void mark(NodeId node) { m_dirty.insert(m_model.rank[node]); }
    /// Stores a number into a typed cell. True when it differs.
    bool setNumber(NodeId node, double number);

    Changed take() &&;

private:
    /// What running an entry needs at hand; shapes stay valid until the cache drops some.
    struct Ready {
        Shape *shape = nullptr;
        const CompiledFormula *compiled = nullptr;
        std::uint32_t loaded = 0; ///< slots to fill
        bool simple = false;      ///< a finite value without cautions needs no second look
    };
    const Ready &ready(std::uint32_t entry);
    const Ready &makeReady(std::uint32_t entry);
    bool workFormula(NodeId node);
    bool workWithFrame(NodeId node, const CompiledFormula &compiled, Shape &shape,
                       const std::uint32_t *operands);
    bool workState(NodeId node);
    std::uint32_t inheritedCautions(const CompiledFormula &compiled, const std::uint32_t *operands);
    std::uint32_t cautionsOfRange(NodeId first, std::uint32_t count);
    std::uint32_t staticCautions(std::uint32_t entry);
    void noteError(NodeId node, const Verdict &verdict, double result);

    struct Outcome {
        double number = 0.0;
        ErrorKind status = ErrorKind::none;
        std::uint32_t cautions = 0, own = 0, reason = 0;
    };
    bool store(NodeId node, const Outcome &outcome);

    const Model &m_model;
    Values &m_values;
    EvaluatingHost m_host;
    ShapeCache &m_shapes;
    std::size_t m_compilesBefore;
    EvalFrame m_frame;
    FoldMemo m_folds;
    RankedSet &m_dirty; ///< the thread's: empty between passes
    RangePass m_pass;
    std::vector<std::uint32_t> m_staticSets; ///< by entry; noNode = not interned yet
    std::vector<Ready> m_ready;              ///< by entry
    std::size_t m_evictions = 0;             ///< of the cache when `m_ready` was filled
    bool m_recording = true;                 ///< off while everything is worked out
    struct RangeCautions {
        std::uint32_t done = 0, set = 0;
    };
    std::unordered_map<NodeId, RangeCautions> m_rangeCautions;
    Changed m_changed;
};

/// State of a cell against its limit, from values.
Verdict stateVerdict(const Model &model, const Values &values, NodeId state);

} // namespace puteal
