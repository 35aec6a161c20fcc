/// Rows of the filtration plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace filtration
{

extern const puteal_function bedAreaRow, bedVolumeRow, contactRow;
extern const puteal_function backwashFlowRow, backwashGallonsRow, backwashIntervalRow;
extern const puteal_function cartridgeDaysRow, cartridgeDaysByMassRow;
extern const puteal_function solidsLoadRow, impliedUseRow, impliedDaysRow, impliedCapacityRow, changeAtRow;
extern const puteal_function expandedPorosityRow, bedExpansionRow, roseHeadLossRow, waterDensityRow;
extern const puteal_function viscosityRow, fluidizationRow, bedLossRow;
extern const puteal_function cartridgeDaysBySolidsRow, cartridgeAreaRow, cartridgeLoadingRow,
    cartridgeCostRow;
extern const puteal_function insideDiameterRow, freeboardRow, serviceLoadingRow, serviceFlowRow,
    washPerYearRow, septicSurgeRow, runByLossRow, lossAtRow;
extern const puteal_function bedSolidsRow, washIntervalRow;
extern const puteal_function grainSizeRow, grainUniformityRow, grainPorosityRow, grainDensityRow,
    grainSphericityRow;

inline constexpr const char pressureSafety[] = "A filter tank is a pressure vessel: take the pressure off "
                                               "before opening, stay below its rating, never put "
                                               "compressed air into a fiberglass tank. Waste water goes to a "
                                               "drain over an air gap as the local code asks; whether "
                                               "a septic system may take it is for the health office to say.";

} // namespace filtration
