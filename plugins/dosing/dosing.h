/// Rows of the dosing plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace dosing
{

extern const puteal_function hypochloriteStrengthRow, peroxideStrengthRow, bleachResidualRow, stockVolumeRow;
extern const puteal_function feedRateRow, feedSettingRow, solutionDaysRow, contactTimeRow, contactVolumeRow;

inline constexpr const char bleachSafety[] =
    "Bleach burns eyes and skin: goggles and gloves. Never mix it with acid, ammonia, peroxide, permanganate "
    "or resin "
    "cleaner: poisonous gas. Use plain bleach that is certified for drinking water and follow its label and "
    "the local "
    "code. Chlorination against iron does not make water safe to drink.";
inline constexpr const char feederSafety[] = "Oxidizers burn skin and eyes: goggles and gloves, a labeled "
                                             "container out of children's reach, a vented cap. Never "
                                             "bring two chemicals together. The feeder must stop when the "
                                             "water stops. Follow the label and the local code.";

} // namespace dosing
