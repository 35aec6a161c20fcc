/// Rows of the softening plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace softening
{

extern const puteal_function compensatedHardnessRow, exchangeLoadRow, sodiumAddedRow, potassiumAddedRow;
extern const puteal_function resinCapacityRow, saltEfficiencyRow;
extern const puteal_function daysBetweenRow, saltPerYearRow, regenerationWaterRow;
extern const puteal_function ironVerdictRow;

} // namespace softening
