/// Setting types of nodes, and the rule that says when tags account for all mass in a type.
#include "check/draft.h"

#include <array>

#include "check/shown_unit.h"

namespace puteal::checking
{

namespace
{

int sixthsOf(const QuantityType &type, Base base)
{
    return type.dimension.sixths[static_cast<std::size_t>(base)];
}

constexpr int one = 6;

} // namespace

void Draft::setQuantity(NodeIndex i, const QuantityType &type)
{
    at(i).type = StaticType{ValueKind::quantity, Bound::exact, 0, type};
    at(i).shown = shownFor(*this, i, type);
}

void Draft::setKind(NodeIndex i, ValueKind kind, std::uint32_t list)
{
    at(i).type = StaticType{kind, Bound::exact, list, {}};
    at(i).shown = Unit{};
}

void Draft::caution(std::string key, std::string words, Span where)
{
    for (const Caution &old : out.cautions)
        if (old.key == key && old.words == words)
            return;
    out.cautions.push_back(Caution{std::move(key), std::move(words), where});
}

int missingTags(const QuantityType &type)
{
    const int matter = sixthsOf(type, Base::mass) + sixthsOf(type, Base::amount);
    return matter - type.substances.sum();
}

bool tagsFit(const QuantityType &type)
{
    if (type.substances.empty())
        return true;
    const int missing = missingTags(type);
    if (missing == 0)
        return true;
    // The mass of a pressure, energy or power comes with time to the minus second or third: that much of it
    // is no amount of anything. So is the mass under a conductance, which comes with time to the third.
    const int time = sixthsOf(type, Base::time);
    for (const int factors : {one, 2 * one})
        if ((missing == factors && time <= -2 * factors) || (missing == -factors && time >= 2 * factors))
            return true;
    return false;
}

bool hasMatter(const QuantityType &type)
{
    return sixthsOf(type, Base::mass) != 0 || sixthsOf(type, Base::amount) != 0 || !type.substances.empty();
}

tl::unexpected<Error> failOver(ErrorKind kind, std::string words, const Span &span, const Span &other)
{
    Error error{kind, std::move(words), {}, Place{span, other, 0}};
    return tl::unexpected<Error>(std::move(error));
}

} // namespace puteal::checking
