/// Units given other substances and counted things, and units made for a type.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <string>

#include "units/unit_tree.h"

namespace puteal
{

namespace
{

constexpr int sixthsOfOne = 6;

/// A part for `sixths` of a word's power; its sign is dropped.
UnitPart partOf(const UnitWord *word, int sixths, int substance = -1)
{
    UnitPart part;
    part.word = word;
    part.numerator = std::abs(sixths);
    part.denominator = sixthsOfOne;
    for (const int divisor : {3, 2})
        while (part.numerator % divisor == 0 && part.denominator % divisor == 0) {
            part.numerator /= divisor;
            part.denominator /= divisor;
        }
    part.substance = substance;
    return part;
}

void addPart(UnitPart &root, const UnitWord *word, int sixths, int substance = -1)
{
    if (sixths != 0)
        (sixths > 0 ? root.top : root.bottom).push_back(partOf(word, sixths, substance));
}

bool isThing(const UnitPart &part)
{
    return part.word && !part.word->type.things.empty();
}

void removeThings(UnitPart &group)
{
    for (auto *list : {&group.top, &group.bottom}) {
        std::erase_if(*list, isThing);
        for (UnitPart &part : *list)
            removeThings(part);
        std::erase_if(*list, [](const UnitPart &part) {
            return !part.word && part.top.empty() && part.bottom.empty();
        });
    }
}

void addThings(UnitPart &root, const Labels &things, const UnitTable &table)
{
    for (const auto &[id, sixths] : things.items())
        addPart(root, table.find(table.thingWord(id)), sixths);
}

void removeSubstances(UnitPart &root)
{
    for (const AmountWord &amount : amountWords(root))
        amount.part->substance = -1;
}

/// Gives the amount words substances so that they add up to `wanted`; tries the words in order.
bool assign(const std::vector<AmountWord> &amounts, std::size_t next, Labels wanted)
{
    if (next == amounts.size())
        return wanted.empty();
    const AmountWord &amount = amounts[next];
    const Labels own = amount.part->word->type.substances;
    if (!own.empty()) {
        wanted.add(own.items()[0].first, -amount.sixths);
        return assign(amounts, next + 1, wanted);
    }
    for (const auto &item : wanted.items()) {
        if ((item.second > 0) != (amount.sixths > 0))
            continue;
        Labels rest = wanted;
        rest.add(item.first, -amount.sixths);
        amount.part->substance = item.first;
        if (assign(amounts, next + 1, rest))
            return true;
    }
    amount.part->substance = -1;
    return assign(amounts, next + 1, wanted);
}

using Exponents = std::array<signed char, baseCount>;
struct UsualUnit {
    Exponents exponents; ///< dm, mg, s, K, mmol, A, USD
    const char *us, *si;
};

/// What a type is shown in when neither formula nor cell names a unit.
constexpr UsualUnit usual[] = {
    {{1}, "ft", "m"},
    {{2}, "ft^2", "m^2"},
    {{3}, "gal", "L"},
    {{1, 0, -1}, "ft/min", "m/hr"},
    {{3, 0, -1}, "gal/day", "L/day"},
    {{0, 1}, "lb", "kg"},
    {{0, 1, -1}, "lb/day", "g/day"},
    {{-3, 1}, "mg/L", "mg/L"},
    {{-2, 1}, "lb/ft^2", "g/m^2"},
    {{3, -1}, "L/mg", "L/mg"},
    {{0, 0, 1}, "day", "day"},
    {{-1, 1, -2}, "psi", "kPa"},
    {{0, 0, 0, 1}, "delta_degF", "delta_degC"},
    {{2, 1, -2}, "kWh", "kWh"},
    {{2, 1, -3}, "W", "W"},
    {{1, 1, -2}, "lbf", "N"},
    {{-1, 1, -1}, "cP", "cP"},
    {{2, 0, -1}, "cSt", "cSt"},
    {{0, 0, 0, 0, 1}, "mmol", "mmol"},
    {{-3, 0, 0, 0, 1}, "mmol/L", "mmol/L"},
    {{0, 0, 0, 0, 0, 1}, "A", "A"},
    {{2, 1, -3, 0, 0, -1}, "V", "V"},
    {{-2, -1, 3, 0, 0, 2}, "uS", "uS"},
    {{-3, -1, 3, 0, 0, 2}, "uS/cm", "uS/cm"},
    {{0, 0, 0, 0, 0, 0, 1}, "$", "$"},
    {{0, 0, -1, 0, 0, 0, 1}, "$/yr", "$/yr"},
    {{-3, 0, 0, 0, 0, 0, 1}, "$/gal", "$/L"},
    {{0, -1, 0, 0, 0, 0, 1}, "$/lb", "$/kg"},
    {{-2, -1, 2, 0, 0, 0, 1}, "$/kWh", "$/kWh"},
    {{0, 0, -1}, "1/day", "1/day"},
};

Dimension dimensionOf(const Exponents &exponents)
{
    Dimension dimension;
    for (std::size_t i = 0; i < baseCount; ++i)
        dimension.sixths[i] = static_cast<std::int8_t>(exponents[i] * sixthsOfOne);
    return dimension;
}

/// Puts a unit together from one word for each base quantity, a mass word for each substance.
UnitPart composed(const QuantityType &type, UnitSystem system, const UnitTable &table)
{
    static constexpr std::array<const char *, baseCount> us{"ft",   "lb", "day", "delta_degF",
                                                            "mmol", "A",  "$"};
    static constexpr std::array<const char *, baseCount> si{"m", "kg", "day", "delta_degC", "mmol", "A", "$"};
    constexpr auto mass = static_cast<std::size_t>(Base::mass),
                   amount = static_cast<std::size_t>(Base::amount);
    UnitPart root;
    std::array<int, baseCount> rest{};
    for (std::size_t i = 0; i < baseCount; ++i)
        rest[i] = type.dimension.sixths[i];
    const bool moles = rest[amount] != 0 && rest[mass] == 0;
    for (const auto &[id, sixths] : type.substances.items()) {
        addPart(root, table.find(moles ? "mmol" : "mg"), sixths, id);
        rest[moles ? amount : mass] -= sixths;
    }
    constexpr int volume = 3 * sixthsOfOne;
    for (const std::size_t i : {6U, 1U, 4U, 0U, 3U, 5U, 2U}) {
        const char *word = (system == UnitSystem::us ? us : si)[i];
        if (i == mass && !type.substances.empty())
            word = "mg";
        const bool isVolume = i == 0 && rest[0] % volume == 0;
        if (isVolume)
            addPart(root, table.find(system == UnitSystem::us ? "gal" : "L"), rest[0] / 3);
        else
            addPart(root, table.find(word), rest[i]);
    }
    addThings(root, type.things, table);
    return root;
}

/// `cfu/100mL`: the one denominator the laboratory uses for counts of bacteria.
bool isBacteriaCount(const QuantityType &type, const UnitTable &table)
{
    if (type.things.items().size() != 1 || type.dimension != dimensionOf({-3}) || !type.substances.empty())
        return false;
    const std::string word = table.thingWord(type.things.items()[0].first);
    return type.things.items()[0].second == sixthsOfOne && (word == "cfu" || word == "mpn");
}

} // namespace

Unit untagged(const Unit &unit, const UnitTable &table)
{
    UnitPart root = treeOf(unit, table);
    removeSubstances(root);
    auto plain = unitOf(root);
    if (!plain)
        return unit;
    return *plain;
}

std::optional<Unit> retagged(const Unit &unit, const QuantityType &type, const UnitTable &table)
{
    if (unit.type.dimension != type.dimension || unit.type.scale != type.scale)
        return {};
    if (unit.type == type)
        return unit;
    UnitPart root = treeOf(unit, table);
    if (unit.type.things != type.things) {
        removeThings(root);
        addThings(root, type.things, table);
        simplify(root);
    }
    removeSubstances(root);
    if (!assign(amountWords(root), 0, type.substances))
        return {};
    auto result = unitOf(root);
    if (!result || result->type != type)
        return {};
    return *result;
}

Unit UnitTable::defaultUnit(const QuantityType &type, UnitSystem system) const
{
    const bool us = system == UnitSystem::us;
    const char *text = nullptr;
    if (type.scale == Scale::temperatureReading)
        text = us ? "degF" : "degC";
    else if (type.scale == Scale::absolutePressure)
        text = us ? "psi_abs" : "kPa_abs";
    else if (isBacteriaCount(type, *this))
        text = type.things.items()[0].first == find("cfu")->type.things.items()[0].first ? "cfu/100mL"
                                                                                         : "mpn/100mL";
    else
        for (const UsualUnit &unit : usual)
            if (type.dimension == dimensionOf(unit.exponents))
                text = us ? unit.us : unit.si;
    if (text)
        if (const auto unit = readUnit(text, *this))
            if (const auto fitting = retagged(*unit, type, *this))
                return *fitting;
    UnitPart root = composed(type, system, *this);
    simplify(root);
    if (auto unit = unitOf(root))
        return *unit;
    Unit base; // powers no unit text can carry: shown in base units
    base.type = type;
    return base;
}

} // namespace puteal
