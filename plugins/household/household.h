/// Rows of the household plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace household
{

/// Said where a row of a table is from memory. (R4)
inline constexpr const char recalledRows[] =
    "the rows are recalled: check them against the study or the code in force";

// use.cpp
extern const puteal_function dailyUseRow, indoorUseRow, yearlyUseRow, useByPeriodRow;
// septic.cpp
extern const puteal_function septicShareRow;
// figures.cpp
extern const puteal_function usePerPersonRow, useByBedroomsRow, recommendedFlowRow, washWaterRow;
// stays.cpp
extern const puteal_function occupiedDaysRow, idleGapRow;
// peak.cpp
extern const puteal_function peakByOutletsRow, peakInHoursRow;
// allowance.cpp
extern const puteal_function demandAllowanceRow, peakByAllowanceRow;
// fixtures.cpp
extern const puteal_function peakByBathroomsRow, peakVolumeRow, fixtureUnitsRow, peakByUnitsRow;
// chances.cpp
extern const puteal_function peakByProbabilityRow, peakByTruncatedRow, idleProbabilityRow;
// counting.cpp
extern const puteal_function peakByEnumerationRow, fixtureProbabilityRow, fixtureFlowRow;

} // namespace household
