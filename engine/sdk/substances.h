/// Substances amounts can be amounts of ("as Fe"): one table of molar masses and charges, used by engine and
/// plugins.
#pragma once

#include <cstddef>
#include <cstring>

namespace puteal::sdk
{

/// Standard atomic weights, abridged, g/mol [IUPAC 2021].
namespace weight
{
inline constexpr double H = 1.008, C = 12.011, N = 14.007, O = 15.999, F = 18.998403162, Na = 22.98976928,
                        Mg = 24.305, Si = 28.085, S = 32.06, Cl = 35.45, K = 39.0983, Ca = 40.078,
                        Mn = 54.938043, Fe = 55.845, Cu = 63.546, As = 74.921595, Sr = 87.62, Pb = 207.2,
                        U = 238.02891, Zn = 65.38, Al = 26.9815384, Ba = 137.327;
} // namespace weight

/// One substance: the word after "as", name for people, molar mass g/mol, charge number used for equivalents
/// (0 = none defined).
struct Substance {
    const char *word;
    const char *name;
    double molarMass;
    int charge;
};

/// The closed table. The order is the substance's id; new rows go to the end.
inline constexpr Substance substances[] = {
    {"Fe", "iron", weight::Fe, 2},
    {"Mn", "manganese", weight::Mn, 2},
    {"H2S", "hydrogen sulfide", 2 * weight::H + weight::S, 0},
    {"S", "sulfur", weight::S, 0},
    {"CaCO3", "calcium carbonate", weight::Ca + weight::C + 3 * weight::O, 2},
    {"Ca", "calcium", weight::Ca, 2},
    {"Mg", "magnesium", weight::Mg, 2},
    {"Na", "sodium", weight::Na, 1},
    {"K", "potassium", weight::K, 1},
    {"Cl", "chloride", weight::Cl, -1},
    {"Cl2", "chlorine", 2 * weight::Cl, 0},
    {"NaOCl", "sodium hypochlorite", weight::Na + weight::O + weight::Cl, 0},
    {"KMnO4", "potassium permanganate", weight::K + weight::Mn + 4 * weight::O, 0},
    {"H2O2", "hydrogen peroxide", 2 * weight::H + 2 * weight::O, 0},
    {"O2", "oxygen", 2 * weight::O, 0},
    {"O3", "ozone", 3 * weight::O, 0},
    {"ClO2", "chlorine dioxide", weight::Cl + 2 * weight::O, 0},
    {"N", "nitrogen", weight::N, 0},
    {"NO3", "nitrate", weight::N + 3 * weight::O, -1},
    {"NO2", "nitrite", weight::N + 2 * weight::O, -1},
    {"NH3", "ammonia", weight::N + 3 * weight::H, 0},
    {"NH4", "ammonium", weight::N + 4 * weight::H, 1},
    {"SO4", "sulfate", weight::S + 4 * weight::O, -2},
    {"HCO3", "bicarbonate", weight::H + weight::C + 3 * weight::O, -1},
    {"CO2", "carbon dioxide", weight::C + 2 * weight::O, 0},
    {"FeOH3", "ferric hydroxide", weight::Fe + 3 * weight::O + 3 * weight::H, 0},
    {"MnO2", "manganese dioxide", weight::Mn + 2 * weight::O, 0},
    {"NaCl", "sodium chloride", weight::Na + weight::Cl, 0},
    {"KCl", "potassium chloride", weight::K + weight::Cl, 0},
    {"Na2CO3", "sodium carbonate (soda ash)", 2 * weight::Na + weight::C + 3 * weight::O, 0},
    {"As", "arsenic", weight::As, 0},
    {"Pb", "lead", weight::Pb, 0},
    {"Cu", "copper", weight::Cu, 2},
    {"U", "uranium", weight::U, 0},
    {"F", "fluoride", weight::F, -1},
    {"Si", "silicon", weight::Si, 0},
    {"SiO2", "silica", weight::Si + 2 * weight::O, 0},
    {"Sr", "strontium", weight::Sr, 2},
    {"C", "carbon", weight::C, 0},
    {"tannin", "tannin", 0.0, 0},
    {"TDS", "dissolved solids", 0.0, 0},
    {"solids", "dry solids", 0.0, 0},
    {"NaMnO4", "sodium permanganate", weight::Na + weight::Mn + 4 * weight::O, 0},
    {"CaCl2O2", "calcium hypochlorite", weight::Ca + 2 * weight::Cl + 2 * weight::O, 0},
    {"MgO", "magnesia", weight::Mg + weight::O, 0},
    {"CO3", "carbonate", weight::C + 3 * weight::O, -2},
    {"OH", "hydroxide", weight::O + weight::H, -1},
    {"Zn", "zinc", weight::Zn, 2},
    {"Al", "aluminum", weight::Al, 3},
    {"Ba", "barium", weight::Ba, 2},
};
inline constexpr std::size_t substanceCount = sizeof(substances) / sizeof(substances[0]);

/// Position in the table, or -1.
constexpr int substanceIndex(const char *word)
{
    for (std::size_t i = 0; i < substanceCount; ++i) {
        const char *a = substances[i].word, *b = word;
        while (*a && *a == *b)
            ++a, ++b;
        if (*a == *b)
            return static_cast<int>(i);
    }
    return -1;
}

/// Molar mass in g/mol of a substance of the table; a compile-time error for an unknown word in a constant
/// expression.
constexpr double molarMass(const char *word)
{
    return substances[substanceIndex(word)].molarMass;
}

} // namespace puteal::sdk
