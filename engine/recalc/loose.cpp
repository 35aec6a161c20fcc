/// Formulas that stand in no cell: previews, expectations. Checked and worked out with given values.
#include <cmath>

#include <fmt/format.h>

#include "compile/error_number.h"
#include "recalc/program_model.h"

namespace puteal
{

namespace
{

/// The way from a cell back to itself if it held a formula with these links; empty when there is none.
std::vector<NodeId> wayBack(const Model &model, const std::vector<std::uint32_t> &items, NodeId self)
{
    std::unordered_map<NodeId, NodeId> from;
    std::vector<NodeId> queue;
    const auto meet = [&](NodeId node, NodeId reader) {
        if (node != self && !model.worked[node])
            return false;
        if (from.try_emplace(node, reader).second)
            queue.push_back(node);
        return node == self;
    };
    bool closed = false;
    const auto meetRange = [&](NodeId first, std::uint32_t count, NodeId reader) {
        for (std::uint32_t i = 0; i < count && !closed; ++i)
            closed = meet(first + i, reader);
    };
    for (std::size_t i = 0; i < items.size() && !closed; ++i) {
        if ((items[i] & Links::rangeFlag) != 0) {
            meetRange(items[i] & Links::nodeMask, items[i + 1], noNode);
            ++i;
        } else {
            closed = meet(items[i] & Links::nodeMask, noNode);
        }
    }
    for (std::size_t head = 0; head < queue.size() && !closed; ++head) {
        const NodeId node = queue[head];
        if (node == self)
            continue;
        model.pool.forEach(
            model.links[node], [&](NodeId other, bool) { closed = closed || meet(other, node); },
            [&](NodeId first, std::uint32_t count) { meetRange(first, count, node); });
    }
    if (!closed)
        return {};
    std::vector<NodeId> way{self};
    for (NodeId step = from.at(self); step != noNode; step = from.at(step))
        way.insert(way.begin(), step);
    way.insert(way.begin(), self);
    return way;
}

Error circularError(const Model &model, const std::vector<NodeId> &way, std::uint32_t sheet)
{
    std::string words = "circular: ";
    constexpr std::size_t told = 6;
    for (std::size_t i = 0; i + 1 < way.size() && i < told; ++i)
        words += fmt::format("{}`{}` needs `{}`", i ? ", " : "", cellWords(model, way[i], sheet),
                             cellWords(model, way[i + 1], sheet));
    if (way.size() - 1 > told)
        words += fmt::format(" and {} more", way.size() - 1 - told);
    return Error{ErrorKind::circular, std::move(words), {}, {}};
}

void run(const Model &model, const Values &values, const CompiledFormula &compiled,
         const std::vector<std::uint32_t> &operands, const CheckContext &context, NodeId node,
         LooseResult &out)
{
    LookingHost host(model, values);
    host.seenFrom(context.self.sheet);
    EvalFrame frame;
    frame.host = &host;
    frame.below = model.book.below;
    frame.bounds = model.boundedCells > 0 ? model.bounds.data() : nullptr;
    frame.number = values.number.data();
    frame.begin(compiled, operands.data());
    Shape &shape = ShapeCache::ofThread().get(compiled.shape);
    const double value = runFrame(frame, shape);
    out.number = value;
    out.cautions = out.checked->cautions;
    if (!std::isfinite(value)) {
        const Verdict verdict = verdictOf(frame, value, node);
        out.number = verdict.number;
        out.error = verdict.status == ErrorKind::waiting
                        ? waitingFor(model, verdict.number, context.self.sheet)
                        : describeFailure(frame, value);
        return;
    }
    if (compiled.hasReason)
        out.reason = host.words(reasonOfPiece(frame, compiled.root));
    if (out.checked->type.kind == ValueKind::words)
        out.words = host.words(static_cast<std::uint32_t>(value));
    if (frame.usedRule)
        noteRule(frame, shape, value);
    out.cautions.insert(out.cautions.end(), frame.cautions.begin(), frame.cautions.end());
}

} // namespace

LooseResult workLoose(const Model &model, const Values &values, Tree tree, const CheckContext &context,
                      NodeId node)
{
    LooseResult out;
    out.number = errorNumber(ErrorKind::waiting, node);
    ParsedText parsed;
    out.tree = parsed.tree = std::make_shared<const Tree>(std::move(tree));
    auto binding = bindAt(model, *out.tree, context.self);
    if (!binding) {
        out.error = std::move(binding.error());
        return out;
    }
    out.binding = std::make_shared<const Binding>(std::move(*binding));
    if (node != noNode)
        if (const auto way = wayBack(model, linkItems(model, parsed, *out.binding), node); !way.empty()) {
            out.error = unknownFunction(model, *out.tree, *out.binding, context);
            if (!out.error)
                out.error = circularError(model, way, context.self.sheet);
            return out;
        }
    auto checked = check(*out.tree, *out.binding, context);
    if (!checked) {
        out.error = std::move(checked.error());
        return out;
    }
    out.checked = std::make_shared<const Checked>(std::move(*checked));
    const auto compiled = compileFormula(out.tree, out.checked, *model.registry, out.tree->root);
    if (!compiled) {
        out.error = compiled.error();
        return out;
    }
    run(model, values, **compiled, operandItems(model, **compiled, *out.binding), context, node, out);
    return out;
}

Program::Preview ProgramModel::preview(const Workbook &workbook, const CellAt &at, std::string_view text,
                                       const Values &values, Whole whole) const
{
    Preview out;
    const NodeId node = m_model.layout.nodeOf(at);
    if (node == noNode || values.number.size() != m_model.nodes()) {
        out.error = Error{ErrorKind::range, "there is no such cell", {}, {}};
        return out;
    }
    const bool isWords = workbook.sheets[at.sheet].column(at.column).kind == ColumnKind::words;
    const ModelTypes types(m_model);
    CheckContext context = checkContext(m_model, at, types);
    if (whole == Whole::limit) {
        expectTypeOf(m_model, context);
    } else if (!isWords) {
        const CellContext cell = whole == Whole::formula ? contextOf(m_model, at) : CellContext{};
        context.setUnit = cell.setUnit;
        context.choiceList = cell.list;
        const auto typed =
            readTyped(text, TypedContext{&m_model.units, &m_model.lists, cell.list, cell.setUnit});
        if (!typed || typed->form != TypedForm::formula) {
            out.number = errorNumber(ErrorKind::blank, node);
            if (!typed) {
                out.error = typed.error();
            } else if (typed->form == TypedForm::value) {
                TypedValue value = typed->value;
                if (cell.setUnit && value.type.kind == ValueKind::quantity)
                    out.error = fitSetUnit(*cell.setUnit, value, std::string(text));
                out.type = value.type;
                out.shown = value.unit;
                out.number = value.number;
                out.words = value.words;
                out.cautions = value.notes;
            }
            return out;
        }
    }
    auto tree = parseText(m_model, std::string(text), isWords && whole != Whole::limit, at.sheet);
    if (!tree) {
        out.error = std::move(tree.error());
        return out;
    }
    LooseResult loose =
        workLoose(m_model, values, std::move(*tree), context, whole == Whole::limit ? noNode : node);
    out.error = std::move(loose.error);
    out.tree = std::move(loose.tree);
    out.binding = std::move(loose.binding);
    out.checked = std::move(loose.checked);
    out.number = loose.number;
    out.words = std::move(loose.words);
    out.cautions = std::move(loose.cautions);
    out.reason = std::move(loose.reason);
    if (out.checked) {
        out.type = out.checked->type;
        out.shown = out.checked->shown;
    }
    return out;
}

} // namespace puteal
