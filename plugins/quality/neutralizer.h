/// How much of a neutralizer takes carbon dioxide away, and the alkalinity it leaves. (R4)
#pragma once

#include "sdk/substances.h"

namespace quality
{

/// In the order of the words.
enum class Neutralizer : int { calcite, magnesia, sodaAsh };
inline constexpr const char *neutralizerWords[] = {"calcite", "magnesia", "soda ash", nullptr};
inline constexpr const char *neutralizerSubstances[] = {"CaCO3", "MgO", "Na2CO3", nullptr};
// CaCO3 + CO2 + H2O = Ca(HCO3)2, MgO + 2 CO2 + H2O = Mg(HCO3)2, Na2CO3 + CO2 + H2O = 2 NaHCO3 [IUPAC 2021]
inline constexpr double carbonDioxidePerMole[] = {1, 2, 1};
inline constexpr double equivalentsPerMole = 2; // of each of the three

/// Mass of neutralizer a mass of carbon dioxide uses up.
constexpr double dosePerCarbonDioxide(Neutralizer neutralizer)
{
    using puteal::sdk::molarMass;
    const auto i = static_cast<int>(neutralizer);
    return molarMass(neutralizerSubstances[i]) / (carbonDioxidePerMole[i] * molarMass("CO2"));
}

/// Alkalinity as CaCO3 that comes with it.
constexpr double alkalinityPerCarbonDioxide(Neutralizer neutralizer)
{
    using puteal::sdk::molarMass;
    const auto i = static_cast<int>(neutralizer);
    return equivalentsPerMole / carbonDioxidePerMole[i] * (molarMass("CaCO3") / 2) / molarMass("CO2");
}

} // namespace quality
