/// Emitted expressions as compiled evaluators: one per distinct text and thread, kept in a bounded cache.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace mu
{
class ParserBase;
}

namespace puteal
{

struct EvalFrame;

/// A distinct emitted text, the same in every thread of the process.
using ShapeId = std::uint32_t;
ShapeId shapeId(const std::string &text);
const std::string &shapeText(ShapeId id);

/// One compiled expression of the calling thread: operands go into `slots`, `eval` gives the value.
/// Slots are `r0 r1 ...`, kept values `k0 k1 ...` in the text.
class Shape
{
public:
    /// Throws nothing; an expression that cannot be compiled is `broken()` and evaluates to a notFinite
    /// error.
    explicit Shape(const std::string &text);
    ~Shape();
    Shape(const Shape &) = delete;
    Shape &operator=(const Shape &) = delete;

    double *operands() { return m_slots.data(); }
    /// Values kept for tests of ternaries, and, or, if_error.
    const double *kept() const { return m_kept.data(); }
    double eval() const;
    /// The same for one that is not broken, without a call in between: see shape_run.h.
    double evalAtOnce() const;
    bool broken() const { return m_broken; }
    const std::string &problem() const { return m_problem; }

private:
    struct Parser;
    std::vector<double> m_slots, m_kept;
    std::unique_ptr<Parser> m_parser;
    const mu::ParserBase *m_running = nullptr; ///< m_parser
    bool m_broken = false;
    std::string m_problem;
};

/// The shapes of one thread. Holds at most limits::shapesPerThread; the one not used for longest makes room.
class ShapeCache
{
public:
    /// The cache of the calling thread.
    static ShapeCache &ofThread();
    Shape &get(ShapeId id)
    {
        if (id < m_byId.size() && m_byId[id].shape) {
            m_byId[id].used = m_clock;
            return *m_byId[id].shape;
        }
        return compile(id);
    }
    /// Compiles since the thread began: exact, for tests and benches.
    std::size_t compiles() const { return m_compiles; }
    std::size_t size() const { return m_live; }
    /// Grows whenever shapes had to go: pointers kept from before are stale then.
    std::size_t evictions() const { return m_evictions; }
    /// Called once per pass over the formulas: what is used from here on is younger.
    void tick() { ++m_clock; }
    /// The frame of the evaluation that runs now in this thread.
    EvalFrame *frame = nullptr;

private:
    struct Held {
        std::unique_ptr<Shape> shape;
        std::uint32_t used = 0;
    };
    Shape &compile(ShapeId id);
    void makeRoom();
    std::vector<Held> m_byId;
    std::size_t m_live = 0;
    std::size_t m_compiles = 0;
    std::size_t m_evictions = 0;
    std::uint32_t m_clock = 0;
};

} // namespace puteal
