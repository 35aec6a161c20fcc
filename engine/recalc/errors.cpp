/// The error a cell shows: its own, or the cell it waits for.
#include <cmath>

#include <fmt/format.h>

#include "compile/error_number.h"
#include "recalc/program_model.h"

namespace puteal
{

Error waitingFor(const Model &model, double number, std::uint32_t fromSheet)
{
    const std::uint32_t origin = errorOrigin(number);
    if (origin >= model.nodes())
        return Error{ErrorKind::waiting, "waits for a cell with an error", {}, {}};
    return Error{
        ErrorKind::waiting, fmt::format("waits for `{}`", cellWords(model, origin, fromSheet)), {}, {}};
}

std::optional<Error> ProgramModel::errorOf(NodeId node, const Values &values) const
{
    if (node >= m_model.nodes() || values.status[node] == ErrorKind::none)
        return std::nullopt;
    const CellAt at = m_model.cellOf(node);
    const auto known = m_model.errors.find(node);
    if (values.status[node] == ErrorKind::waiting) {
        Error error = waitingFor(m_model, values.number[node], at.sheet);
        if (known != m_model.errors.end())
            error.place = known->second.place;
        return error;
    }
    if (known != m_model.errors.end())
        return known->second;
    if (const auto noted = values.errors.find(node); noted != values.errors.end())
        return noted->second;
    if (m_model.content[node] != Content::formula)
        return Error{values.status[node], "cannot be worked out", {}, {}};
    // Worked out anew with the values as they stand, to find the piece that failed.
    LookingHost host(m_model, values);
    host.seenFrom(at.sheet);
    const CompiledFormula &compiled = *m_model.entries[m_model.entry[node]].compiled;
    EvalFrame frame;
    frame.host = &host;
    frame.below = m_model.book.below;
    frame.bounds = m_model.boundedCells > 0 ? m_model.bounds.data() : nullptr;
    frame.number = values.number.data();
    frame.begin(compiled, m_model.operandPool.items(m_model.operands[node]).data());
    const double value = runFrame(frame, ShapeCache::ofThread().get(compiled.shape));
    return describeFailure(frame, value);
}

} // namespace puteal
