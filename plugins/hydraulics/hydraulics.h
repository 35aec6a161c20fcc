/// Rows of the hydraulics plugin's functions, and the relations that several of them rest on.
#pragma once

#include "sdk/plugin.h"

namespace hydraulics
{

extern const puteal_function boreStorageRow, recoveryRateRow, bucketFlowRow, storageNeededRow, drawdownRow;
extern const puteal_function specificCapacityRow, timeToLevelRow, residualDrawdownRow, timeToEmptyRow;
extern const puteal_function tankDrawdownRow, leastTankVolumeRow, motorStartsRow, mostMotorStartsRow;
extern const puteal_function airPressureRow, hazenWilliamsRow, dynamicHeadRow;
extern const puteal_function reynoldsRow, frictionFactorRow, darcyWeisbachRow, minorLossRow, valveLossRow;
extern const puteal_function pipeVelocityRow, pumpHeadRow, operatingFlowRow, waterHorsepowerRow;
extern const puteal_function washPumpRow, washLevelRow, washRepeatRow, washRateRow, washMeasuredRow;

inline constexpr double headPerPsi = 2.3067; // ft_head, conventional water [NIST SP 811, appendix B]

/// Gallons a foot of a round bore holds, diameter in inches.
inline double gallonPerFoot(double diameter)
{
    const double feet = diameter / puteal::sdk::measure::inchPerFoot;
    return puteal::sdk::measure::pi / 4.0 * feet * feet * puteal::sdk::measure::gallonPerCubicFoot;
}

/// Share of a difference that is left after `time` while the aquifer gives in proportion to the drawdown.
inline double leftAfter(double time, double specificCapacity, double diameter)
{
    return std::exp(-time * specificCapacity / gallonPerFoot(diameter));
}

/// Friction in ft of water: gpm, in, ft; US head form, ft a 100 ft [recalled from plumbing handbooks;
/// within 1.5 % of the Illinois friction table].
inline double hazenWilliams(double flow, double diameter, double length, double coefficient)
{
    return 0.2083 * std::pow(100.0 / coefficient, 1.852) * std::pow(flow, 1.852) /
           std::pow(diameter, 4.8655) * length / 100.0;
}

inline constexpr const char wellSafety[] =
    "Work in a well or on its pump belongs to a licensed driller or pump installer. Power off and locked "
    "first. Pits and "
    "tanks may hold sulfide or methane: vent outdoors, never enter alone.";
inline constexpr const char pressureSafety[] = "Pipes, valves and tanks stand under pressure: take it off "
                                               "before opening, stay below every rating, and never plug a "
                                               "relief valve. Pipe work follows the local plumbing code.";

} // namespace hydraulics
