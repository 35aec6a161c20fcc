/// Rows of the household plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace household
{

extern const puteal_function dailyUseRow, indoorUseRow, yearlyUseRow, septicShareRow;
extern const puteal_function peakByOutletsRow, peakInHoursRow, peakByBathroomsRow, peakVolumeRow;
extern const puteal_function fixtureUnitsRow, peakByUnitsRow, peakByProbabilityRow, useByPeriodRow;

} // namespace household
