/// Rows of the quality plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace quality
{

extern const puteal_function totalHardnessRow, hardnessClassRow, dissolvedSolidsRow;
extern const puteal_function freeCarbonDioxideRow, langelierRow, ryznarRow;
extern const puteal_function calciteHardnessRow, calcitePerYearRow, sodaAshRow;

} // namespace quality
