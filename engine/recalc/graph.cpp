/// The graph of a model: order, readers of cells and ranges, cycles told with their way.
#include <algorithm>

#include <fmt/format.h>

#include "compile/error_number.h"
#include "recalc/model.h"

namespace puteal
{

namespace
{

constexpr std::size_t stepsTold = 6;
constexpr std::size_t ownWays = 200; ///< members of a cycle that get their own shortest way

/// "circular: `a` needs `b`, `b` needs `a`"
std::string cycleWords(const Model &model, const std::vector<NodeId> &way)
{
    const std::uint32_t sheet = model.cellOf(way.front()).sheet;
    std::string words = "circular: ";
    const std::size_t steps = way.size() - 1;
    for (std::size_t i = 0; i < std::min(steps, stepsTold); ++i)
        words += fmt::format("{}`{}` needs `{}`", i ? ", " : "", cellWords(model, way[i], sheet),
                             cellWords(model, way[i + 1], sheet));
    if (steps > stepsTold)
        words += fmt::format(" and {} more", steps - stepsTold);
    return words;
}

/// Span of the reference that leads from a node to the next on its way.
Place placeOfStep(const Model &model, NodeId from, NodeId to)
{
    const auto &tree = model.texts[model.tree[from]].tree;
    if (!tree)
        return {};
    const auto binding = bindAt(model, *tree, model.cellOf(from));
    if (!binding)
        return {};
    for (const Node &node : tree->nodes) {
        if (node.kind != NodeKind::reference)
            continue;
        const BoundReference &reference = binding->references[node.extra];
        const CellAt at = model.cellOf(to);
        const bool hit = reference.isRange
                             ? reference.range.sheet == at.sheet && reference.range.column == at.column &&
                                   reference.range.first <= at.line && at.line <= reference.range.last
                             : reference.cell == at;
        if (hit)
            return Place{node.span, {}, 0};
    }
    return {};
}

std::optional<Error> nearerError(const Model &model, NodeId member)
{
    const auto &tree = model.texts[model.tree[member]].tree;
    if (!tree || model.roleOf(member) != NodeRole::cell)
        return std::nullopt;
    const ModelTypes types(model);
    const CheckContext context = checkContext(model, model.cellOf(member), types);
    const auto binding = bindAt(model, *tree, context.self);
    return binding ? unknownFunction(model, *tree, *binding, context) : std::nullopt;
}

} // namespace

void markCycles(Model &model)
{
    const OrderInput input = model.orderInput();
    for (const std::vector<NodeId> &members : model.order.cycles) {
        std::vector<NodeId> way;
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (i == 0 || members.size() <= ownWays)
                way = shortestCycle(input, members, members[i]);
            Error error{ErrorKind::circular, cycleWords(model, way), {}, {}};
            if (auto nearer = nearerError(model, members[i]))
                error = std::move(*nearer);
            else if (way.front() == members[i])
                error.place = placeOfStep(model, way[0], way[1]);
            setFailed(model, members[i], std::move(error), members[i]);
            model.types[members[i]] = circularType; // whatever is said of it, it stands in the circle
        }
    }
}

void buildGraph(Model &model)
{
    model.order = orderOf(model.orderInput());
    model.rank.assign(model.nodes(), noNode);
    for (std::uint32_t i = 0; i < model.order.nodes.size(); ++i)
        model.rank[model.order.nodes[i]] = i;
    // Readers of single cells: counted, then placed.
    std::vector<std::uint32_t> &start = model.readerStart;
    start.assign(model.nodes() + 1, 0);
    model.ranges.reset(model.layout.columns());
    for (const NodeId node : model.order.nodes)
        model.pool.forEach(
            model.links[node], [&](NodeId other, bool onlyType) { start[other + 1] += onlyType ? 0U : 1U; },
            [&](NodeId first, std::uint32_t count) {
                const std::uint32_t column = model.layout.columnOf(first);
                const std::uint32_t line = first - model.layout.startOf(column);
                model.ranges.add(column, line, line + count - 1, node);
            });
    for (std::size_t i = 1; i < start.size(); ++i)
        start[i] += start[i - 1];
    model.readerRanks.resize(start.back());
    std::vector<std::uint32_t> next(start.begin(), start.end() - 1);
    for (std::uint32_t rank = 0; rank < model.order.nodes.size(); ++rank)
        model.pool.forEach(
            model.links[model.order.nodes[rank]],
            [&](NodeId other, bool onlyType) {
                if (!onlyType)
                    model.readerRanks[next[other]++] = rank;
            },
            [](NodeId, std::uint32_t) {});
    model.ranges.finish();
}

} // namespace puteal
