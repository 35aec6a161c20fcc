/// Rows of the table of pairs; which forms of one element the trade reports.
#include "check/pairs.h"

#include <array>
#include <string>

#include "sdk/substances.h"

namespace puteal::checking
{

namespace
{

using Replaces = PairFix::Replaces;

// Hardness is told as CaCO3; iron and manganese shorten a softener's run but are no hardness.
constexpr std::array rows{
    PairFix{"CaCO3", "Fe", "for a softener setting use {}", "compensated_hardness({a}, {b})", Replaces::whole,
            true},
    PairFix{"CaCO3", "Mn", "for a softener setting use {}", "compensated_hardness({a}, 0 mg/L as Fe, {b})",
            Replaces::whole, true},
    PairFix{"Fe", "Mn", "for iron and manganese by weight use {}", "plain({l}) {op} plain({r})",
            Replaces::whole, false},
    PairFix{"H2S", "Fe", "for what an oxidant must serve use {}", "iron_equivalents({b}, 0 mg/L as Mn, {a})",
            Replaces::whole, true},
};

struct Form {
    std::string_view compound, element;
    int atoms;
};
// Pairs that are told either way; one formula unit of the compound holds that many atoms of the
// element.
constexpr std::array forms{
    Form{"NO3", "N", 1},   Form{"NO2", "N", 1}, Form{"NH3", "N", 1},   Form{"NH4", "N", 1},
    Form{"SO4", "S", 1},   Form{"H2S", "S", 1}, Form{"SiO2", "Si", 1}, Form{"FeOH3", "Fe", 1},
    Form{"MnO2", "Mn", 1}, Form{"CO2", "C", 1}, Form{"HCO3", "C", 1},  Form{"KMnO4", "Mn", 1},
};

bool hasEquivalents(std::string_view word)
{
    const int index = sdk::substanceIndex(std::string(word).c_str());
    return index >= 0 && sdk::substances[index].charge != 0;
}

} // namespace

std::string_view elementOf(std::string_view compound)
{
    for (const Form &form : forms)
        if (form.compound == compound)
            return form.element;
    return {};
}

int elementAtoms(std::string_view compound)
{
    for (const Form &form : forms)
        if (form.compound == compound)
            return form.atoms;
    return 0;
}

std::vector<PairFix> pairFixes(std::string_view first, std::string_view second)
{
    std::vector<PairFix> out;
    for (const PairFix &row : rows)
        if ((row.first == first && row.second == second) || (row.first == second && row.second == first))
            out.push_back(row);
    if (first == "CaCO3" && hasEquivalents(second))
        out.push_back(
            {first, second, "for the same amount as CaCO3 use {}", "as_caco3({b})", Replaces::second});
    if (second == "CaCO3" && hasEquivalents(first))
        out.push_back(
            {second, first, "for the same amount as CaCO3 use {}", "as_caco3({b})", Replaces::second});
    const std::string_view firstElement = elementOf(first), secondElement = elementOf(second);
    if (!firstElement.empty() && firstElement == second)
        out.push_back(
            {first, second, "for the amount of the element use {}", "as_element({a})", Replaces::first});
    else if (!secondElement.empty() && secondElement == first)
        out.push_back(
            {second, first, "for the amount of the element use {}", "as_element({a})", Replaces::first});
    else if (!firstElement.empty() && firstElement == secondElement)
        out.push_back({first, second, "for the amount of the element use {}",
                       "as_element({l}) {op} as_element({r})", Replaces::whole});
    return out;
}

} // namespace puteal::checking
