/// Solids of a water on the basis a capacity or a load is stated on.
#pragma once

#include "sdk/plugin.h"

namespace filtration
{

using puteal::sdk::molarMass;

inline constexpr const char *basisWords[] = {"iron", "iron floc", "all solids", nullptr};
inline constexpr const char *basisSubstances[] = {"Fe", "FeOH3", "solids", nullptr};
enum Basis : int { asIron, asFloc, asSolids };

/// Solids of a liter of water on the basis a cartridge's capacity is stated on, mg/L.
constexpr double solidsOf(int basis, double iron, double manganese, double sulfide, double sediment)
{
    constexpr double floc = molarMass("FeOH3") / molarMass("Fe"), oxide = molarMass("MnO2") / molarMass("Mn"),
                     sulfur = molarMass("S") / molarMass("H2S");
    if (basis == asIron)
        return iron;
    return basis == asFloc ? floc * iron : floc * iron + oxide * manganese + sulfur * sulfide + sediment;
}

} // namespace filtration
