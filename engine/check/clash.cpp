/// Two amounts that do not go together: which, in what, and what to write instead.
#include "check/clash.h"

#include <fmt/format.h>

#include "check/advice.h"
#include "check/fixes.h"
#include "check/pairs.h"
#include "check/shown_unit.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

std::string head(const Draft &draft, Verb verb, NodeIndex a, NodeIndex b)
{
    const std::string left = named(draft, a), right = named(draft, b);
    switch (verb) {
    case Verb::add:
        return fmt::format("cannot add {} and {}", left, right);
    case Verb::subtract:
        return fmt::format("cannot subtract {} from {}", right, left);
    case Verb::compare:
        return fmt::format("cannot compare {} and {}", left, right);
    case Verb::choose:
        return fmt::format("cannot choose between {} and {}", left, right);
    }
    return {};
}

void replaceAll(std::string &text, std::string_view what, const std::string &with)
{
    for (std::size_t p = text.find(what); p != std::string::npos; p = text.find(what, p + with.size()))
        text.replace(p, what.size(), with);
}

/// `x + 5 %` beside a unit most likely means 5 % more of x.
bool explainPercent(const Draft &draft, Error &error, Verb verb, NodeIndex whole, NodeIndex share,
                    NodeIndex of)
{
    const bool sum = verb == Verb::add || verb == Verb::subtract;
    if (!sum || draft.node(whole).kind != NodeKind::binary || draft.at(share).shown.text != "%" ||
        (verb == Verb::subtract && share != draft.child(whole, 1)))
        return false;
    const bool more = verb == Verb::add;
    const std::string text =
        fmt::format("{} * (1 {} {})", wrapped(draft, of), more ? '+' : '-', source(draft, share));
    error.words += fmt::format(": for {} {} write {}", brief(draft, share), more ? "more" : "less", text);
    offer(draft, error, "write " + text, draft.span(whole), text);
    return true;
}

void explainDimension(const Draft &draft, Error &error, Verb verb, NodeIndex whole, NodeIndex a, NodeIndex b)
{
    const bool bothPure = draft.quantity(a).isPure() && draft.quantity(b).isPure();
    const bool leftPure = bothPure ? draft.at(a).shown.text.empty() : draft.quantity(a).isPure();
    if (!leftPure && !draft.quantity(b).isPure()) {
        error.words += ": their units do not fit";
        return;
    }
    const NodeIndex pure = leftPure ? a : b, other = leftPure ? b : a;
    error.place = Place{draft.span(pure), draft.span(other), 0};
    if (!explainPercent(draft, error, verb, whole, pure, other))
        adviseUnit(draft, error, pure, draft.at(other).shown, verb == Verb::add || verb == Verb::subtract);
}

void explainThings(const Draft &draft, Error &error, NodeIndex a, NodeIndex b)
{
    if (draft.quantity(a).isPure() || draft.quantity(b).isPure()) {
        const NodeIndex pure = draft.quantity(a).isPure() ? a : b;
        error.place = Place{draft.span(pure), draft.span(pure == a ? b : a), 0};
        adviseUnit(draft, error, pure, draft.at(pure == a ? b : a).shown, false);
        return;
    }
    // the side that carries more of them is the one to change
    const bool right = draft.quantity(b).things.items().size() > draft.quantity(a).things.items().size();
    adviseThings(draft, error, right ? b : a, draft.quantity(right ? a : b));
}

void explainUntold(const Draft &draft, Error &error, NodeIndex untold, NodeIndex told)
{
    const Unit unit = respelled(draft, draft.at(untold).shown, draft.quantity(told));
    if (isLiteral(draft, untold)) {
        const std::string text = numberIn(draft, untold, unit);
        error.place = Place{draft.span(untold), draft.span(told), 0};
        error.words += fmt::format(": {} does not say of what; write {}", brief(draft, untold), text);
        offer(draft, error, "write " + text, draft.span(untold), text);
        return;
    }
    error.words += fmt::format(": {} does not say of what; give it the unit {}", quotedPiece(draft, untold),
                               unitWords(draft, unit, unit.type));
    const std::string text = "plain(" + source(draft, told) + ")";
    offerAloud(draft, error, "to leave the substance out use " + text, draft.span(told), text);
}

} // namespace

void explainSubstance(const Draft &draft, Error &error, Verb verb, NodeIndex whole, NodeIndex a, NodeIndex b)
{
    const bool toldLeft = !draft.quantity(a).substances.empty(),
               toldRight = !draft.quantity(b).substances.empty();
    if (toldLeft != toldRight) {
        explainUntold(draft, error, toldLeft ? b : a, toldLeft ? a : b);
        return;
    }
    error.words += ": different substances";
    const std::string left = soleSubstance(draft.quantity(a)), right = soleSubstance(draft.quantity(b));
    if (left.empty() || right.empty())
        return;
    const Node &operation = draft.node(whole);
    const bool isWhole = operation.kind == NodeKind::binary;
    for (const PairFix &row : pairFixes(left, right)) {
        const bool replacesWhole = row.replaces == PairFix::Replaces::whole;
        if ((replacesWhole && !isWhole) || (row.onlyAdd && verb != Verb::add))
            continue;
        const NodeIndex first = row.first == left ? a : b, second = first == a ? b : a;
        std::string text(row.text);
        replaceAll(text, "{a}", source(draft, first));
        replaceAll(text, "{b}", source(draft, second));
        replaceAll(text, "{l}", source(draft, a));
        replaceAll(text, "{r}", source(draft, b));
        if (replacesWhole)
            replaceAll(text, "{op}",
                       draft.tree.text.substr(operation.opSpan.begin,
                                              operation.opSpan.end - operation.opSpan.begin));
        const NodeIndex replaced = replacesWhole                              ? whole
                                   : row.replaces == PairFix::Replaces::first ? first
                                                                              : second;
        offerAloud(draft, error, fmt::format(fmt::runtime(row.words), text), draft.span(replaced), text);
    }
}

tl::unexpected<Error> clash(const Draft &draft, Verb verb, NodeIndex whole, NodeIndex a, NodeIndex b,
                            Misfit why)
{
    Error error{why == Misfit::substance ? ErrorKind::substance : ErrorKind::unit,
                head(draft, verb, a, b),
                {},
                Place{draft.span(a), draft.span(b), 0}};
    switch (why) {
    case Misfit::none:
        break;
    case Misfit::dimension:
        explainDimension(draft, error, verb, whole, a, b);
        break;
    case Misfit::scale: {
        const auto weight = [&](NodeIndex i) {
            return (isBareZero(draft, i) ? 4 : 0) + (isLiteral(draft, i) ? 2 : 0) +
                   (draft.quantity(i).scale == Scale::plain ? 1 : 0);
        };
        const bool left = weight(a) > weight(b);
        advise(draft, error, left ? a : b, draft.at(left ? b : a).shown, Misfit::scale);
        break;
    }
    case Misfit::things:
        explainThings(draft, error, a, b);
        break;
    case Misfit::substance:
        explainSubstance(draft, error, verb, whole, a, b);
        break;
    }
    return tl::unexpected<Error>(std::move(error));
}

tl::unexpected<Error> wrongUnit(const Draft &draft, const FunctionInfo &function,
                                const ParameterInfo &parameter, NodeIndex node, const Unit &wanted,
                                Misfit why)
{
    const std::string unit = unitWords(draft, wanted, wanted.type);
    Error error{why == Misfit::substance ? ErrorKind::substance : ErrorKind::unit,
                fmt::format("{} takes {} {} {}, not {}", function.name, parameter.name,
                            wanted.type.isPure() && wanted.text.empty() ? "as" : "in", unit,
                            named(draft, node)),
                {},
                Place{draft.span(node), {}, 0}};
    advise(draft, error, node, wanted, why);
    return tl::unexpected<Error>(std::move(error));
}

namespace
{

/// Pumps and pipes are told in feet of water, which are a pressure and no length.
void adviseHead(const Draft &draft, Error &error, NodeIndex child, const Unit &wanted, const Span &where)
{
    const UnitWord *feet = draft.units().find("ft_head"), *meters = draft.units().find("mH2O");
    const UnitWord *foot = draft.units().find("ft");
    if (!feet || !meters || !foot || draft.quantity(child).dimension != feet->type.dimension ||
        wanted.type.dimension != foot->type.dimension)
        return;
    const std::string &unit = wanted.text.ends_with('m') ? meters->word : feet->word;
    error.words +=
        fmt::format(": a pressure is no length; as the height of a column of water write {}", unit);
    offer(draft, error, "write " + unit, where, unit);
}

/// The other way round, for a number: the same figure as the height of a column of water.
void adviseHeight(const Draft &draft, Error &error, NodeIndex child, const Unit &wanted)
{
    const UnitWord *head = draft.units().find("ft_head"), *foot = draft.units().find("ft");
    const std::string &own = draft.at(child).shown.text;
    if (!head || !foot || !isLiteral(draft, child) || (own != "ft" && own != "m") ||
        wanted.type.dimension != head->type.dimension)
        return;
    Unit height;
    height.text = own == "ft" ? "ft_head" : "mH2O";
    const std::string text = numberIn(draft, child, height);
    error.words += ": a length is no pressure; as the height of a column of water write " + text;
    offer(draft, error, "write " + text, draft.span(child), text);
}

} // namespace

tl::unexpected<Error> wrongResult(const Draft &draft, NodeIndex child, const Unit &wanted, bool set,
                                  Misfit why, const Span &where)
{
    const std::string unit = unitWords(draft, wanted, wanted.type);
    Error error{
        why == Misfit::substance ? ErrorKind::substance : ErrorKind::unit,
        set ? fmt::format("this cell is set to {}, but the formula gives {}", unit, unitOf(draft, child))
            : fmt::format("cannot show {} in {}", named(draft, child), unit),
        {},
        Place{where, {}, 0}};
    if (!set)
        error.place.other = draft.span(child);
    advise(draft, error, child, wanted, why);
    if (!set && why == Misfit::dimension) {
        adviseHead(draft, error, child, wanted, where);
        adviseHeight(draft, error, child, wanted);
    }
    return tl::unexpected<Error>(std::move(error));
}

} // namespace puteal::checking
