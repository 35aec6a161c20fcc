/// Rows of the softening plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace softening
{

extern const puteal_function compensatedHardnessRow, exchangeLoadRow, sodiumAddedRow, potassiumAddedRow,
    sodiumIntakeRow;
extern const puteal_function resinCapacityRow, saltDoseForCapacityRow, saltEfficiencyRow;
extern const puteal_function daysBetweenRow, saltPerYearRow, regenerationWaterRow;
extern const puteal_function dailyLoadRow, capacityNeededRow, resinNeededRow, bypassShareRow;
extern const puteal_function leastSaltRow, potassiumFactorRow, saltPerRegenerationRow, saltByEfficiencyRow,
    efficiencyAchievedRow, saltSupplyRow;
extern const puteal_function brineStrengthRow, saltDissolvedRow, brineFillRow, brineVolumeRow;
extern const puteal_function waterRatioRow, waterBoundRow, waterPerYearRow;
extern const puteal_function resinFlowRateRow, resinServiceFlowRow, rateByLoadingRow, ratingRow;
extern const puteal_function ironVerdictRow, ironLimitRow, highEfficiencyRow;

/// Whose capacity figures; the tables stand in capacity.cpp.
inline constexpr const char *resinTables[] = {"round table", "logarithmic fit",   "standard mesh",
                                              "fine mesh",   "lower round table", "public code",
                                              nullptr};
enum Table : int { roundTable, logarithmicFit, standardMesh, fineMesh, lowerRoundTable, publicCode };

/// Grains of hardness, as CaCO3, that a pound of a salt with one charge restores at most: charge for charge
/// [IUPAC 2021].
constexpr double grainsPerPound(double saltMolarMass)
{
    using namespace puteal::sdk;
    return molarMass("CaCO3") / 2 / saltMolarMass * measure::gramPerPound * 1000 / measure::mgPerGrain;
}

} // namespace softening
