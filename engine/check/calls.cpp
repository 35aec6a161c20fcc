/// Calls: finding the function, dealing arguments to parameters, and the plan handed to the compiler.
#include "check/calls.h"

#include <fmt/format.h>

#include "base/text.h"
#include "check/fixes.h"
#include "check/walk.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

std::string counted(std::size_t n, const char *what)
{
    return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

tl::unexpected<Error> wrongCount(const Draft &draft, const Call &call, std::size_t given)
{
    if (auto comma = decimalComma(draft, call))
        return tl::unexpected<Error>(std::move(*comma));
    const std::size_t least = call.function->leastArguments(), most = call.function->mostArguments();
    const std::string wanted = given < least ? (least == most ? "" : "at least ") + counted(least, "argument")
                                             : (least == most ? "" : "at most ") + counted(most, "argument");
    return fail(
        ErrorKind::arguments,
        fmt::format("{} takes {}, not {}: {}", call.function->name, wanted, given, call.function->call()),
        draft.node(call.node).opSpan);
}

bool isOnly(const ParameterInfo &parameter)
{
    return parameter.range && parameter.kind == ValueKind::yesNo && parameter.hasDefault;
}

/// A range whose first filled cell is yes/no: meant as `only`.
bool isYesNoRange(const Draft &draft, NodeIndex i)
{
    if (!isRange(draft, i))
        return false;
    const RangeAt &range = draft.binding.references[draft.node(i).extra].range;
    bool blank = true;
    for (std::uint32_t line = range.first; line <= range.last; ++line) {
        const CellType cell = draft.context.types->typeOf(CellAt{range.sheet, range.column, line});
        if (cell.failed)
            continue;
        if (cell.type.kind == ValueKind::yesNo)
            return true;
        blank = blank && cell.type.kind == ValueKind::blank;
        if (!blank)
            return false;
    }
    return false;
}

} // namespace

std::optional<NodeIndex> Call::argument(std::uint32_t wanted) const
{
    for (const Slot &slot : slots)
        if (slot.parameter == wanted)
            return slot.node;
    return std::nullopt;
}

Done assignArguments(const Draft &draft, Call &call)
{
    const auto &given = draft.node(call.node).children;
    const auto &parameters = call.function->parameters;
    if (given.size() < call.function->leastArguments() || given.size() > call.function->mostArguments())
        return wrongCount(draft, call, given.size());
    std::size_t next = 0;
    for (std::uint32_t p = 0; p < parameters.size() && next < given.size(); ++p) {
        const ParameterInfo &parameter = parameters[p];
        // a yes/no range left out does not shift what follows: least_at(cost[:], 2) is the runner-up
        if (isOnly(parameter) && p + 1 < parameters.size() && !isRange(draft, given[next]))
            continue;
        if (!parameter.repeats) {
            call.slots.push_back({p, given[next++]});
            continue;
        }
        std::size_t after = 0;
        for (std::uint32_t q = p + 1; q < parameters.size(); ++q)
            if (!isOnly(parameters[q]) || (given.size() - next > 1 && isYesNoRange(draft, given.back())))
                ++after;
        while (next + after < given.size())
            call.slots.push_back({p, given[next++]});
    }
    return next < given.size() ? Done(wrongCount(draft, call, given.size())) : Done{};
}

/// A name with ( behind it that is a cell or a column.
std::optional<Error> noFunctionButCell(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    const Workbook *workbook = draft.context.workbook;
    if (!workbook || draft.context.self.sheet >= workbook->sheets.size())
        return std::nullopt;
    const Sheet &sheet = workbook->sheets[draft.context.self.sheet];
    const bool column = sheet.columnByKey(node.name).has_value();
    if (!column && !sheet.named(node.name, draft.context.self.sheet))
        return std::nullopt;
    Error error{ErrorKind::name, {}, {}, Place{node.opSpan, {}, 0}};
    const std::string inside = node.children.size() == 1 ? source(draft, node.children[0]) : "";
    const bool line =
        column && !inside.empty() && inside.find_first_not_of("0123456789") == std::string::npos;
    const std::string text = line             ? fmt::format("{}[{}]", node.name, inside)
                             : inside.empty() ? node.name
                                              : fmt::format("{} * ({})", node.name, inside);
    error.words =
        fmt::format("`{}` is a {}, no function: write {}", node.name, column ? "column" : "cell", text);
    offer(draft, error, "write " + text, node.span, text);
    return error;
}

/// The plugins the workbook says it uses and that are not here.
std::vector<std::string> missingPlugins(const Draft &draft)
{
    std::vector<std::string> missing;
    if (draft.context.workbook)
        for (const PluginUse &use : draft.context.workbook->uses)
            if (!draft.context.registry->plugin(use.id))
                missing.push_back(use.id);
    return missing;
}

tl::unexpected<Error> unknownFunction(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    if (auto cell = noFunctionButCell(draft, i))
        return tl::unexpected<Error>(std::move(*cell));
    Error error = draft.context.registry->whyNot(node.name);
    if (const auto missing = missingPlugins(draft); error.kind == ErrorKind::name && !missing.empty())
        error = Error{ErrorKind::plugin,
                      fmt::format("`{}` is not here: the workbook needs the plugin{} {}, not installed",
                                  node.name, missing.size() == 1 ? "" : "s", joined(missing)),
                      {},
                      {}};
    error.place = Place{node.opSpan, {}, 0};
    if (error.kind == ErrorKind::name)
        for (const std::string &name : draft.context.registry->closestNames(node.name))
            offer(draft, error, "write " + name, node.opSpan, name);
    return tl::unexpected<Error>(std::move(error));
}

void planArguments(Draft &draft, const Call &call)
{
    CheckedNode &checked = draft.at(call.node);
    const auto &parameters = call.function->parameters;
    for (std::uint32_t p = 0; p < parameters.size(); ++p) {
        bool given = false;
        for (const Slot &slot : call.slots) {
            if (slot.parameter != p)
                continue;
            given = true;
            const auto from =
                isRange(draft, slot.node) ? ArgumentPlan::From::range : ArgumentPlan::From::node;
            checked.arguments.push_back(ArgumentPlan{from, slot.node, 0.0, p});
        }
        const ParameterInfo &parameter = parameters[p];
        if (given || !parameter.hasDefault || parameter.range)
            continue;
        const bool amount = parameter.kind == ValueKind::quantity && parameter.pattern.variables.empty();
        const double constant =
            amount ? parameter.pattern.unit.toBase(parameter.fallback) : parameter.fallback;
        checked.arguments.push_back(ArgumentPlan{ArgumentPlan::From::constant, 0, constant, p});
    }
}

namespace
{

Done checkArguments(Draft &draft, Call &call)
{
    if (Done done = assignArguments(draft, call); !done)
        return done;
    const Result<bool> special = checkSpecial(draft, call);
    if (!special)
        return tl::unexpected<Error>(special.error());
    if (!*special) {
        // arguments share their context's unit variables, and a call may stand inside a call
        for (const Slot &slot : call.slots)
            if (Done done = checkArgument(draft, call, slot); !done)
                return done;
        draft.variables.clear();
        if (Done done = unifyUnits(draft, call); !done)
            return done;
        if (Done done = setResult(draft, call); !done)
            return done;
    }
    return checkLines(draft, call);
}

} // namespace

Done checkCall(Draft &draft, NodeIndex i, std::uint32_t list)
{
    Call call{i, draft.context.registry->find(draft.node(i).name), {}, list};
    if (!call.function)
        return unknownFunction(draft, i);
    draft.at(i).function = call.function;
    if (Done done = checkArguments(draft, call); !done) {
        // arguments shifted by a decimal comma fail somewhere behind it
        auto comma = draft.offerFixes ? decimalComma(draft, call) : std::nullopt;
        if (!comma || done.error().words.starts_with(comma->words))
            return done;
        if (!comma->fixes.empty())
            return tl::unexpected<Error>(std::move(*comma));
        done.error().words += "; " + comma->words;
        return done;
    }
    planArguments(draft, call);
    return {};
}

} // namespace puteal::checking
