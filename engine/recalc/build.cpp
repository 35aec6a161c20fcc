/// Building a model: cells read, hidden nodes added, order found, types checked.
#include "compile/error_number.h"
#include "recalc/model.h"

namespace puteal
{

namespace
{

void resizeNodes(Model &model, std::size_t count)
{
    model.content.assign(count, Content::blank);
    model.typed.assign(count, 0.0);
    model.tree.assign(count, 0);
    model.entry.assign(count, 0);
    model.links.assign(count, 0);
    model.operands.assign(count, 0);
    model.types.assign(count, blankType);
    model.bounds.assign(count, 0);
    model.worked.assign(count, 0);
}

/// Lists of functions are added when a formula that calls one is checked: asking for all of them would read
/// every manifest at each start.
void internLists(Model &model)
{
    model.lists.intern(limitStateWords());
    for (const ChoiceListText &list : model.book.lists)
        model.lists.intern(list.words);
}

void readHidden(Model &model)
{
    const NodeId none = model.noLimitNode();
    model.content[none] = Content::number;
    model.typed[none] = static_cast<double>(LimitState::noLimit);
    CellType type;
    type.type.kind = ValueKind::choice;
    type.type.list = model.lists.intern(limitStateWords());
    model.types[none] = model.typeTable.intern(type);
    for (std::size_t i = 1; i < model.hidden.size(); ++i) {
        const auto node = static_cast<NodeId>(model.layout.cells() + i);
        const HiddenNode hidden = model.hidden[i];
        const NodeId cell = model.layout.nodeOf(hidden.at);
        const LimitNodes &limit = model.limits.at(cell);
        if (hidden.role == NodeRole::state) {
            std::vector<std::uint32_t> items{cell, limit.low};
            if (limit.high != noNode)
                items.push_back(limit.high);
            model.links[node] = model.pool.add(items);
            model.content[node] = Content::state;
            model.worked[node] = 1;
            continue;
        }
        const LimitText &text =
            *model.book.sheets[hidden.at.sheet].cell(hidden.at.column, hidden.at.line).beside().limit;
        takeFormula(model, node, hidden.role == NodeRole::limitHigh ? text.high : text.low, false);
    }
}

} // namespace

void rebuild(Model &model)
{
    model.layout.reset(model.book);
    model.errors.clear();
    model.words.clear();
    model.notes.clear();
    model.limits.clear();
    model.pool.clear();
    model.operandPool.clear();
    model.checked.clear();
    model.entries.assign(1, Entry{});
    model.hidden.assign(1, HiddenNode{NodeRole::state, {}});
    internLists(model);
    for (std::uint32_t s = 0; s < model.book.sheets.size(); ++s) {
        const Sheet &sheet = model.book.sheets[s];
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            for (std::uint32_t l = 0; l < sheet.lineCount(); ++l)
                if (sheet.cell(c, l).attributes)
                    addLimitNodes(model, model.layout.nodeOf({s, c, l}));
    }
    resizeNodes(model, model.layout.cells() + model.hidden.size());
    for (NodeId node = 0; node < model.layout.cells(); ++node)
        readCell(model, node);
    readHidden(model);
    buildGraph(model);
    markCycles(model);
    checkAll(model);
    model.boundedCells = 0;
    for (const std::uint8_t bound : model.bounds)
        model.boundedCells += bound != 0 ? 1U : 0U;
}

Model buildModel(const Workbook &workbook, const UnitTable &units, std::shared_ptr<const Registry> registry)
{
    Model model(workbook, units);
    for (const std::string &thing : workbook.things)
        if (!model.units.find(thing))
            (void)model.units.declareThing(thing);
    model.registry = std::move(registry);
    if (const UnitWord *day = model.units.find("day"))
        model.day = day->factor;
    rebuild(model);
    return model;
}

} // namespace puteal
