/// Types in words for messages, units in words for speech.
#include <cstdlib>

#include <fmt/format.h>

#include "units/unit_tree.h"

namespace puteal
{

namespace
{

std::string named(const UnitPart &part, bool plural, bool withSubstance);

std::string powerWords(const UnitPart &part, const std::string &name)
{
    if (part.denominator != 1)
        return fmt::format("{} to the power {}/{}", name, part.numerator, part.denominator);
    if (part.numerator == 1)
        return name;
    Dimension length;
    length.sixths[static_cast<std::size_t>(Base::length)] = 6;
    const bool isLength = part.word && part.word->type.dimension == length;
    if (part.numerator == 2)
        return isLength ? "square " + name : name + " squared";
    if (part.numerator == 3)
        return isLength ? "cubic " + name : name + " cubed";
    return fmt::format("{} to the power {}", name, part.numerator);
}

std::string groupWords(const UnitPart &group, bool plural, bool withSubstance)
{
    std::string words;
    for (std::size_t i = 0; i < group.top.size(); ++i)
        words += (i ? " " : "") + named(group.top[i], plural && i + 1 == group.top.size(), withSubstance);
    for (const UnitPart &part : group.bottom)
        words += (words.empty() ? "per " : " per ") + named(part, false, withSubstance);
    return words;
}

std::string named(const UnitPart &part, bool plural, bool withSubstance)
{
    if (!part.word)
        return powerWords(part, groupWords(part, plural, withSubstance));
    std::string words = powerWords(part, std::string(plural ? part.word->name : part.word->singular));
    if (withSubstance && part.substance >= 0)
        words += " of " + UnitTable::substanceName(static_cast<std::uint16_t>(part.substance));
    return words;
}

} // namespace

std::string typeWords(const QuantityType &type, const UnitTable &table, UnitSystem system)
{
    if (type.isPure())
        return "a pure number";
    if (type.scale == Scale::temperatureReading)
        return "a temperature reading";
    if (type.scale == Scale::absolutePressure)
        return "an absolute pressure";
    return table.defaultUnit(type, system).text;
}

std::string spokenUnit(const Unit &unit, const UnitTable &table)
{
    UnitPart root = treeOf(unit, table);
    const std::vector<AmountWord> amounts = amountWords(root);
    const bool one = amounts.size() == 1;
    std::string words = groupWords(root, true, !one);
    if (!one)
        return words;
    const Labels &own = amounts[0].part->word->type.substances;
    const int substance = own.empty() ? amounts[0].part->substance : own.items()[0].first;
    if (substance >= 0)
        words += " as " + UnitTable::substanceName(static_cast<std::uint16_t>(substance));
    return words;
}

} // namespace puteal
