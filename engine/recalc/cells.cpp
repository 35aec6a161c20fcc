/// From typed texts to contents: values read, formulas parsed, bound and linked.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "base/text.h"
#include "compile/error_number.h"
#include "recalc/model.h"

namespace puteal
{

namespace
{

bool isFunctionName(const void *registry, std::string_view word)
{
    return static_cast<const Registry *>(registry)->find(word) != nullptr;
}

bool isFunctionChoice(const void *registry, std::string_view word)
{
    for (const auto &words : static_cast<const Registry *>(registry)->choiceLists())
        if (std::find(words.begin(), words.end(), word) != words.end())
            return true;
    return false;
}

/// References inside state(...): read as states of limits.
void noteStates(const Tree &tree, std::vector<std::uint32_t> &out)
{
    for (const Node &node : tree.nodes) {
        if (node.kind != NodeKind::call || node.name != "state")
            continue;
        for (const NodeIndex child : node.children)
            if (tree.nodes[child].kind == NodeKind::reference)
                out.push_back(tree.nodes[child].extra);
    }
}

const Unit *setUnitOf(const Model &model, const std::string &text, CellContext &context)
{
    if (const auto known = model.setUnits.find(text); known != model.setUnits.end())
        return known->second.get();
    if (const auto bad = model.badUnits.find(text); bad != model.badUnits.end()) {
        context.error = bad->second;
        return nullptr;
    }
    auto unit = readUnit(text, model.units);
    if (!unit) {
        Error error = unit.error();
        error.words = fmt::format("the set unit `{}` cannot be read: {}", text, error.words);
        error.place = {};
        error.fixes.clear();
        context.error = model.badUnits[text] = std::make_shared<const Error>(std::move(error));
        return nullptr;
    }
    return (model.setUnits[text] = std::make_shared<const Unit>(std::move(*unit))).get();
}

std::uint32_t namedList(const Model &model, const std::string &name, CellContext &context)
{
    if (const ChoiceListText *list = model.book.listByName(name))
        return model.lists.intern(list->words);
    context.error = std::make_shared<const Error>(
        Error{ErrorKind::name,
              fmt::format("there is no list `{}`: declare it, or give the choices in place", name),
              {},
              {}});
    return 0;
}

void setNumber(Model &model, NodeId node, const TypedValue &value, const CellContext &context)
{
    CellType type{value.type, value.unit, false, false};
    if (context.setUnit && value.type.kind == ValueKind::quantity) {
        const auto shown = retagged(value.unit, value.type.quantity, model.units);
        type.shown = shown ? *shown : *context.setUnit;
    }
    model.content[node] = Content::number;
    model.typed[node] = value.number;
    model.types[node] = model.typeTable.intern(type);
    model.bounds[node] = static_cast<std::uint8_t>(value.type.bound);
    if (!value.notes.empty())
        model.notes[node] = value.notes;
}

void setBlank(Model &model, NodeId node, const CellContext &context)
{
    CellType type;
    type.type.list = context.list;
    if (context.setUnit) {
        type.type.quantity = context.setUnit->type;
        type.shown = *context.setUnit;
    }
    model.content[node] = Content::blank;
    model.typed[node] = errorNumber(ErrorKind::blank, node);
    model.types[node] = context.setUnit || context.list ? model.typeTable.intern(type) : blankType;
}

void setWords(Model &model, NodeId node)
{
    static const CellType type = [] {
        CellType words;
        words.type.kind = ValueKind::words;
        return words;
    }();
    model.content[node] = Content::words;
    model.types[node] = model.typeTable.intern(type);
}

void clearNode(Model &model, NodeId node)
{
    if (model.content[node] == Content::failed)
        model.errors.erase(node);
    model.words.erase(node);
    model.notes.erase(node);
    model.typed[node] = 0.0;
    model.tree[node] = 0;
    model.entry[node] = 0;
    model.pool.drop(model.links[node]);
    model.operandPool.drop(model.operands[node]);
    model.links[node] = model.operands[node] = 0;
    model.worked[node] = 0;
    model.bounds[node] = 0;
}

} // namespace

std::optional<Error> fitSetUnit(const Unit &set, TypedValue &value, const std::string &text)
{
    QuantityType &type = value.type.quantity;
    const Span whole{0, static_cast<std::uint32_t>(text.size())};
    const auto refuse = [&](const std::string &why) {
        return Error{ErrorKind::unit,
                     fmt::format("this cell is set to {}, and {} {}",
                                 set.text.empty() ? "a pure number" : set.text, text, why),
                     {},
                     Place{whole, {}, 0}};
    };
    const bool zero = value.number == 0.0 && !value.hasUnit;
    if (type.dimension != set.type.dimension || type.scale != set.type.scale) {
        if (zero && set.type.scale == Scale::plain)
            type = set.type;
        else
            return refuse("does not fit it");
    }
    if (!type.substances.empty() && type.substances != set.type.substances)
        return refuse("is another substance");
    type.substances = set.type.substances;
    type.things =
        set.type.things; // a literal takes the counted things of the other side, a set unit removes them
    return std::nullopt;
}

void setFailed(Model &model, NodeId node, Error error, std::uint32_t origin)
{
    model.content[node] = Content::failed;
    model.typed[node] =
        errorNumber(error.kind == ErrorKind::waiting ? ErrorKind::waiting : error.kind, origin);
    model.types[node] = error.kind == ErrorKind::circular ? circularType : failedType;
    model.bounds[node] = 0;
    model.errors[node] = std::move(error);
}

CellContext contextOf(const Model &model, const CellAt &at)
{
    const Sheet &sheet = model.book.sheets[at.sheet];
    const Attributes &column = sheet.column(at.column).attributes;
    const Cell &cell = sheet.cell(at.column, at.line);
    const Attributes &own = cell.beside();
    CellContext context;
    const bool ownUnit = !own.unit.empty(), ownList = !own.list.empty() || !own.choices.empty();
    const std::string &unit = ownUnit || ownList ? own.unit : column.unit;
    if (!unit.empty())
        context.setUnit = setUnitOf(model, unit, context);
    const Attributes &lists = ownList || ownUnit ? own : column;
    if (!lists.choices.empty())
        context.list = model.lists.intern(lists.choices);
    else if (!lists.list.empty())
        context.list = namedList(model, lists.list, context);
    return context;
}

Result<Tree> parseText(const Model &model, const std::string &text, bool isWords, std::uint32_t sheet)
{
    if (isWords)
        return parseWordsCell(text, model.units);
    const KnownWords words{&model.book, sheet, isFunctionName, model.registry.get()};
    return parseFormula(text, model.units, isKnownWordIn, &words);
}

Result<std::uint32_t> parsedText(Model &model, const std::string &text, bool isWords, std::uint32_t sheet)
{
    auto &known = isWords ? model.wordsTexts : model.formulaTexts;
    if (const auto at = known.find(text); at != known.end())
        return at->second;
    auto tree = parseText(model, text, isWords, sheet);
    if (!tree)
        return tl::unexpected<Error>(std::move(tree.error()));
    ParsedText parsed;
    noteStates(*tree, parsed.stateReferences);
    parsed.tree = std::make_shared<const Tree>(std::move(*tree));
    const auto id = static_cast<std::uint32_t>(model.texts.size());
    model.texts.push_back(std::move(parsed));
    known.emplace(text, id);
    return id;
}

Result<Binding> bindAt(const Model &model, const Tree &tree, const CellAt &at)
{
    return bind(tree, model.book, at, WordLookup{isFunctionChoice, model.registry.get()});
}

std::vector<std::uint32_t> linkItems(const Model &model, const ParsedText &text, const Binding &binding)
{
    std::vector<std::uint32_t> items;
    const auto add = [&](std::uint32_t item) {
        if (std::find(items.begin(), items.end(), item) == items.end())
            items.push_back(item);
    };
    for (const BoundReference &reference : binding.references) {
        if (!reference.isRange) {
            add(model.layout.nodeOf(reference.cell));
            continue;
        }
        const RangeAt &range = reference.range;
        items.push_back(model.layout.nodeOf({range.sheet, range.column, range.first}) | Links::rangeFlag);
        items.push_back(range.last - range.first + 1);
    }
    for (const std::uint32_t reference : text.stateReferences) {
        const auto limit = model.limits.find(model.layout.nodeOf(binding.references[reference].cell));
        if (limit != model.limits.end())
            add(limit->second.state);
    }
    return items;
}

void takeFormula(Model &model, NodeId node, const std::string &text, bool isWords)
{
    const CellAt at = model.cellOf(node);
    auto parsed = parsedText(model, text, isWords, at.sheet);
    if (!parsed)
        return setFailed(model, node, std::move(parsed.error()), node);
    model.tree[node] = *parsed;
    const ParsedText &tree = model.texts[*parsed];
    auto binding = bindAt(model, *tree.tree, at);
    if (!binding)
        return setFailed(model, node, std::move(binding.error()), node);
    std::vector<std::uint32_t> items = linkItems(model, tree, *binding);
    if (model.roleOf(node) != NodeRole::cell) // a limit takes the units and lists of its cell
        items.insert(items.begin(), model.layout.nodeOf(at) | Links::typeFlag);
    model.links[node] = model.pool.add(items);
    model.content[node] = Content::formula;
    model.worked[node] = 1;
}

void readCell(Model &model, NodeId node)
{
    clearNode(model, node);
    const CellAt at = model.layout.cellOf(node);
    const Sheet &sheet = model.book.sheets[at.sheet];
    const Cell &cell = sheet.cell(at.column, at.line);
    const bool isWords = sheet.column(at.column).kind == ColumnKind::words;
    if (isWords) {
        if (cell.blank())
            return setBlank(model, node, {});
        if (cell.typed().find_first_of("{}") == std::string::npos)
            return setWords(model, node);
        return takeFormula(model, node, cell.typed(), true);
    }
    const CellContext context = contextOf(model, at);
    if (context.error)
        return setFailed(model, node, *context.error, node);
    if (cell.blank())
        return setBlank(model, node, context);
    auto typed =
        readTyped(cell.typed(), TypedContext{&model.units, &model.lists, context.list, context.setUnit});
    if (!typed)
        return setFailed(model, node, std::move(typed.error()), node);
    if (typed->form == TypedForm::blank)
        return setBlank(model, node, context);
    if (typed->form == TypedForm::formula)
        return takeFormula(model, node, cell.typed(), false);
    if (typed->value.type.kind == ValueKind::words) {
        setWords(model, node);
        model.words[node] = std::move(typed->value.words);
        return;
    }
    if (context.setUnit && typed->value.type.kind != ValueKind::quantity)
        return setFailed(
            model, node,
            Error{ErrorKind::kind,
                  fmt::format("this cell is set to {} and takes an amount", context.setUnit->text),
                  {},
                  {}},
            node);
    if (context.setUnit)
        if (auto misfit = fitSetUnit(*context.setUnit, typed->value, cell.typed()))
            return setFailed(model, node, std::move(*misfit), node);
    setNumber(model, node, typed->value, context);
}

void addLimitNodes(Model &model, NodeId cell)
{
    const CellAt at = model.layout.cellOf(cell);
    const Cell &holder = model.book.sheets[at.sheet].cell(at.column, at.line);
    if (!holder.attributes || !holder.attributes->limit)
        return;
    const LimitText &limit = *holder.attributes->limit;
    const auto add = [&](NodeRole role) {
        model.hidden.push_back({role, at});
        return static_cast<NodeId>(model.layout.cells() + model.hidden.size() - 1);
    };
    LimitNodes nodes;
    nodes.low = add(NodeRole::limitLow);
    if (limit.comparison == "..")
        nodes.high = add(NodeRole::limitHigh);
    nodes.state = add(NodeRole::state);
    model.limits[cell] = nodes;
}

} // namespace puteal
