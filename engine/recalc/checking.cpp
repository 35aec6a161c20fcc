/// Types in dependency order: checked and compiled once for equal texts over equal types.
#include <algorithm>
#include <tuple>

#include "compile/error_number.h"
#include "recalc/model.h"

namespace puteal
{

namespace
{

constexpr std::uint32_t rangeBegins = 0xFFFFFFFFU;
constexpr std::uint32_t rangeEnds = 0xFFFFFFFEU;

const RangeTypes &rangeTypes(const Model &model, NodeId first, std::uint32_t count, RangeTypesMemo &memo,
                             RangeTypes &own)
{
    RangeTypes *types = &memo[first];
    if (types->done > count)
        types = &own;
    for (; types->done < count; ++types->done) {
        const TypeId type = model.types[first + types->done];
        if (!types->types.empty() && types->types.back() == type)
            continue;
        if (std::find(types->types.begin(), types->types.end(), type) == types->types.end())
            types->types.push_back(type);
    }
    return *types;
}

CellContext formulaContext(const Model &model, NodeId node, CheckContext &context)
{
    if (model.roleOf(node) != NodeRole::cell) {
        expectTypeOf(model, context);
        return {};
    }
    const Sheet &sheet = model.book.sheets[context.self.sheet];
    if (sheet.column(context.self.column).kind == ColumnKind::words)
        return {};
    CellContext cell = contextOf(model, context.self);
    context.setUnit = cell.setUnit;
    context.choiceList = cell.list;
    return cell;
}

/// What makes two checks equal: text, sheet, what is wanted, and the types of everything referred to.
std::vector<std::uint32_t> keyOf(Model &model, NodeId node, const CheckContext &context, RangeTypesMemo &memo)
{
    std::vector<std::uint32_t> key{model.tree[node], context.self.sheet, context.choiceList};
    CellType wanted{context.expected, {}, false, false};
    if (context.setUnit)
        wanted.shown = *context.setUnit;
    key.push_back(model.roleOf(node) == NodeRole::cell ? 0U : 1U);
    key.push_back(
        context.setUnit || context.expected.kind != ValueKind::blank ? model.typeTable.intern(wanted) : 0U);
    std::uint32_t firstLine = 0, lines = 0;
    model.pool.forEach(
        model.links[node], [&](NodeId other, bool) { key.push_back(model.types[other]); },
        [&](NodeId first, std::uint32_t count) {
            RangeTypes own;
            std::vector<TypeId> types = rangeTypes(model, first, count, memo, own).types;
            std::sort(types.begin(), types.end());
            key.push_back(rangeBegins);
            // ranges of a call must be the same lines: true on one line of a run, false on the next
            const std::uint32_t line = model.cellOf(first).line;
            if (lines == 0)
                std::tie(firstLine, lines) = std::pair{line, count};
            key.push_back(line - firstLine);
            key.push_back(count - lines);
            key.insert(key.end(), types.begin(), types.end());
            key.push_back(rangeEnds);
        });
    return key;
}

/// The cell an error that came from elsewhere began at.
NodeId originOf(const Model &model, NodeId node, ErrorKind kind)
{
    NodeId origin = node;
    bool found = false;
    const auto look = [&](NodeId other) {
        if (found)
            return;
        const bool hit = kind == ErrorKind::blank ? model.content[other] == Content::blank
                                                  : model.content[other] == Content::failed;
        if (hit) {
            found = true;
            origin = errorOrigin(model.typed[other]);
        }
    };
    model.pool.forEach(
        model.links[node], [&](NodeId other, bool) { look(other); },
        [&](NodeId first, std::uint32_t count) {
            for (std::uint32_t i = 0; i < count && !found && kind != ErrorKind::blank; ++i)
                look(first + i);
        });
    return origin;
}

std::optional<Error> checkAnew(Model &model, NodeId node, const CheckContext &context, std::uint32_t &entry)
{
    const ParsedText &text = model.texts[model.tree[node]];
    auto binding = bindAt(model, *text.tree, context.self);
    if (!binding)
        return std::move(binding.error());
    auto checked = check(*text.tree, *binding, context);
    if (!checked)
        return std::move(checked.error());
    Entry made;
    made.checked = std::make_shared<const Checked>(std::move(*checked));
    auto compiled = compileFormula(text.tree, made.checked, *model.registry, text.tree->root);
    if (!compiled)
        return std::move(compiled.error());
    made.compiled = std::move(*compiled);
    made.type = model.typeTable.intern(CellType{made.checked->type, made.checked->shown, false, false});
    entry = static_cast<std::uint32_t>(model.entries.size());
    model.entries.push_back(std::move(made));
    return std::nullopt;
}

void setState(Model &model, NodeId node)
{
    CellType type;
    type.type.kind = ValueKind::choice;
    type.type.list = model.lists.intern(limitStateWords());
    model.content[node] = Content::state;
    model.types[node] = model.typeTable.intern(type);
}

} // namespace

std::optional<Error> unknownFunction(const Model &model, const Tree &tree, const Binding &binding,
                                     const CheckContext &context)
{
    for (NodeIndex i = 0; i < tree.nodes.size(); ++i) {
        if (tree.nodes[i].kind != NodeKind::call || model.registry->find(tree.nodes[i].name))
            continue;
        Tree call = tree;
        call.root = i;
        if (auto checked = check(call, binding, context);
            !checked &&
            (checked.error().kind == ErrorKind::name || checked.error().kind == ErrorKind::plugin))
            return std::move(checked.error());
    }
    return std::nullopt;
}

void expectTypeOf(const Model &model, CheckContext &context)
{
    const CellType &cell = model.typeOf(model.layout.nodeOf(context.self));
    context.expected = cell.type;
    if (cell.type.kind == ValueKind::blank && cell.type.list != 0)
        context.expected.kind = ValueKind::choice;
    else if (cell.type.kind == ValueKind::blank && (!cell.shown.text.empty() || !cell.type.quantity.isPure()))
        context.expected.kind = ValueKind::quantity;
    context.choiceList = cell.type.list;
}

CellType ModelTypes::typeOf(const CellAt &at) const
{
    const NodeId node = m_model.layout.nodeOf(at);
    return node == noNode ? CellType{} : m_model.typeOf(node);
}

CheckContext checkContext(const Model &model, const CellAt &at, const TypeSource &types)
{
    CheckContext context;
    context.workbook = &model.book;
    context.units = &model.units;
    context.registry = model.registry.get();
    context.lists = &model.lists;
    context.types = &types;
    context.system = model.book.si ? UnitSystem::si : UnitSystem::us;
    context.self = at;
    return context;
}

std::vector<std::uint32_t> operandItems(const Model &model, const CompiledFormula &compiled,
                                        const Binding &binding)
{
    std::vector<std::uint32_t> items;
    for (const Operand &operand : compiled.operands) {
        const NodeId cell = model.layout.nodeOf(binding.references[operand.reference].cell);
        if (operand.use != OperandUse::state) {
            items.push_back(cell);
            continue;
        }
        const auto limit = model.limits.find(cell);
        items.push_back(limit == model.limits.end() ? model.noLimitNode() : limit->second.state);
    }
    for (const std::uint32_t reference : compiled.ranges) {
        const RangeAt &range = binding.references[reference].range;
        items.push_back(model.layout.nodeOf({range.sheet, range.column, range.first}));
        items.push_back(range.last - range.first + 1);
    }
    return items;
}

void checkNode(Model &model, NodeId node, RangeTypesMemo &memo)
{
    if (model.roleOf(node) == NodeRole::state)
        return setState(model, node);
    if (model.content[node] == Content::failed)
        model.errors.erase(node);
    const ModelTypes types(model);
    CheckContext context = checkContext(model, model.cellOf(node), types);
    const CellContext cell = formulaContext(model, node, context);
    if (cell.error)
        return setFailed(model, node, *cell.error, node);
    std::vector<std::uint32_t> key = keyOf(model, node, context, memo);
    std::uint32_t entry = 0;
    if (const auto known = model.checked.find(key); known != model.checked.end()) {
        entry = known->second;
    } else {
        if (auto error = checkAnew(model, node, context, entry)) {
            const bool fromElsewhere = error->kind == ErrorKind::waiting || error->kind == ErrorKind::blank;
            const NodeId origin = fromElsewhere ? originOf(model, node, error->kind) : node;
            return setFailed(model, node, std::move(*error), origin);
        }
        model.checked.emplace(std::move(key), entry);
    }
    const Entry &made = model.entries[entry];
    const auto binding = bindAt(model, *model.texts[model.tree[node]].tree, context.self);
    const std::vector<std::uint32_t> items = operandItems(model, *made.compiled, *binding);
    model.operandPool.drop(model.operands[node]);
    model.operands[node] = model.operandPool.add(items);
    model.content[node] = Content::formula;
    model.entry[node] = entry;
    model.types[node] = made.type;
    model.bounds[node] = static_cast<std::uint8_t>(made.checked->type.bound);
}

void checkAll(Model &model)
{
    RangeTypesMemo memo;
    for (const NodeId node : model.order.nodes)
        checkNode(model, node, memo);
}

} // namespace puteal
