/// What to write for a word that is no unit: other spellings, another case, words that stand for something
/// else.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "units/unit.h"

namespace puteal
{

namespace
{

struct Row {
    std::string_view written, meant;
};

/// What people write for a unit that is composed here or spelled with other letters.
constexpr Row spellings[] = {
    {"F", "degF"},       {"C", "degC"},     {"mgl", "mg/L"},
    {"mgL", "mg/L"},     {"ugl", "ug/L"},   {"ugL", "ug/L"},
    {"cuft", "ft^3"},    {"cf", "ft^3"},    {"sqft", "ft^2"},
    {"sf", "ft^2"},      {"cuin", "in^3"},  {"sqin", "in^2"},
    {"cuyd", "yd^3"},    {"gph", "gal/hr"}, {"lpm", "L/min"},
    {"cum", "m^3"},      {"sqm", "m^2"},    {"gpcd", "gal/(person*day)"},
    {"gr", "grain"},     {"mo", "month"},   {"mos", "month"},
    {"mph", "mi/hr"},    {"rpm", "1/min"},  {"psig", "psi"},
    {"psia", "psi_abs"}, {"mmho", "mS"},    {"PtCo", "CU"},
    {"ACU", "CU"},
};

/// Words that are no unit but stand for something that is written otherwise.
constexpr Row meanings[] = {
    {"deg", "a temperature is degF or degC, an angle a plain number, as in 30 * pi / 180"},
    {"degree", "a temperature is degF or degC, an angle a plain number, as in 30 * pi / 180"},
    {"degrees", "a temperature is degF or degC, an angle a plain number, as in 30 * pi / 180"},
    {"k", "write the number out, as in 24000, or with a power of ten, as in 24e3"},
    {"thousand", "write the number out, as in 24000, or with a power of ten, as in 24e3"},
    {"million", "write the number with a power of ten, as in 1.5e6"},
    {"billion", "write the number with a power of ten, as in 1.5e9"},
    {"cent", "money is in dollars, as in $0.05"},
    {"cents", "money is in dollars, as in $0.05"},
    {"SU", "pH is a plain number"},
    {"TDS", "dissolved solids are an amount, as in 350 mg/L"},
    {"ccf", "it is 100 ft^3"},
    {"U", "what was not detected is written ND 0.05 mg/L, with the limit it was tested to"},
    {"to", "-> at the end shows a result in another unit"},
    {"of", "write * to multiply"},
    {"grains_per_gallon", "write gpg"},
};

std::string_view found(std::string_view word, const Row *begin, const Row *end)
{
    const Row *row = std::find_if(begin, end, [&](const Row &r) { return r.written == word; });
    return row == end ? std::string_view{} : row->meant;
}

/// The unit word of a composed spelling must be in the table: "ft" of "ft^3".
bool isSpelled(std::string_view unit, const UnitTable &table)
{
    return unit.starts_with("1/") || table.isUnitWord(unit.substr(0, unit.find_first_of("/^")));
}

std::string lower(std::string_view text)
{
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return out;
}

/// `GPM`, `Mg`: the one unit word that differs in case alone; empty when there is none or more than one.
std::string inOtherCase(std::string_view word, const UnitTable &table)
{
    const std::string wanted = lower(word);
    std::string only;
    for (const UnitWord &unit : table.words()) {
        const auto spellings = unit.spellings();
        const bool alike =
            lower(unit.word) == wanted || std::any_of(spellings.begin(), spellings.end(),
                                                      [&](const auto &s) { return lower(s) == wanted; });
        if (!alike)
            continue;
        if (!only.empty())
            return {};
        only = unit.word;
    }
    return only;
}

/// `ft2`, `m3`: a power without its sign.
std::string withPower(std::string_view word, const UnitTable &table)
{
    if (word.size() < 2 || (word.back() != '2' && word.back() != '3'))
        return {};
    const std::string_view stem = word.substr(0, word.size() - 1);
    return table.isUnitWord(stem) ? fmt::format("{}^{}", stem, word.back()) : std::string();
}

std::string usualSpelling(std::string_view word, const UnitTable &table)
{
    if (const auto usual = found(word, std::begin(spellings), std::end(spellings)); isSpelled(usual, table))
        return std::string(usual);
    if (std::string power = withPower(word, table); !power.empty())
        return power;
    return inOtherCase(word, table);
}

} // namespace

Error noSuchUnit(std::string_view word, Span span, const UnitTable &table)
{
    Error error{ErrorKind::unit, fmt::format("`{}` is no unit", word), {}, Place{span, {}, 0}};
    if (const auto told = found(word, std::begin(meanings), std::end(meanings)); !told.empty()) {
        error.words += fmt::format(": {}", told);
        return error;
    }
    if (const std::string usual = usualSpelling(word, table); !usual.empty()) {
        error.words += fmt::format(": write {}", usual);
        error.fixes.push_back({fmt::format("write {}", usual), span, usual});
        return error;
    }
    const std::vector<std::string> close = table.closestWords(word);
    std::string offer;
    for (std::size_t i = 0; i < close.size(); ++i) {
        offer += (i == 0 ? "" : i + 1 == close.size() ? " or " : ", ") + close[i];
        error.fixes.push_back({"write " + close[i], span, close[i]});
    }
    error.words +=
        offer.empty() ? ": take one of the list of units, or count it as a `thing`" : "; " + offer + "?";
    return error;
}

} // namespace puteal
