/// Rows of the hydraulics plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace hydraulics
{

extern const puteal_function boreStorageRow, recoveryRateRow, bucketFlowRow, storageNeededRow, drawdownRow;
extern const puteal_function tankDrawdownRow, airPressureRow, hazenWilliamsRow, pumpingHeadRow;

/// Gallons a foot of a round bore holds, diameter in inches.
inline double gallonPerFoot(double diameter)
{
    const double feet = diameter / puteal::sdk::measure::inchPerFoot;
    return puteal::sdk::measure::pi / 4.0 * feet * feet * puteal::sdk::measure::gallonPerCubicFoot;
}

inline constexpr const char wellSafety[] =
    "Work in a well or on its pump belongs to a licensed driller or pump installer. Power off and locked "
    "first. Pits and "
    "tanks may hold sulfide or methane: vent outdoors, never enter alone.";

} // namespace hydraulics
