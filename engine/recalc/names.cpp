/// How messages call cells.
#include <fmt/format.h>

#include "recalc/model.h"

namespace puteal
{

std::string cellWords(const Model &model, NodeId node, std::uint32_t fromSheet)
{
    if (!model.isCell(node)) {
        const HiddenNode &hidden = model.hidden[node - model.layout.cells()];
        const std::string cell = cellWords(model, model.layout.nodeOf(hidden.at), fromSheet);
        return (hidden.role == NodeRole::state ? "the state of " : "the limit of ") + cell;
    }
    const CellAt at = model.layout.cellOf(node);
    const Sheet &sheet = model.book.sheets[at.sheet];
    const std::string &name = sheet.cell(at.column, at.line).beside().name;
    const std::string prefix = at.sheet == fromSheet ? "" : sheet.key() + ".";
    if (!name.empty())
        return prefix + name;
    return fmt::format("{}{}[{}]", prefix, sheet.column(at.column).key, at.line + 1);
}

} // namespace puteal
