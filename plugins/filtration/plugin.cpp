/// The filtration plugin: media beds, their backwash, cartridges, and cold water in a bed.
///
/// Requirements
///  R1 Loadings and rates of media are arguments, never constants.
///  R2 An interval for a clock is whole days, rounded down.
///  R3 A cartridge's rating shrinks with more iron and never stretches with less.
///  R7 A capacity in grams says what it counts: iron, floc, or all solids.
///  R4 Viscosity and fluidization are taken at the temperature of the water.
#include "filtration.h"

using namespace puteal::sdk;

namespace filtration
{
namespace
{

constexpr puteal_source sources[] = {
    source("hb44", "W", "worked out from NIST Handbook 44, appendix C: inch, foot, US gallon, grain"),
    source("geometry", "W", "worked out: area of a round tank times the rate"),
    source("missouri_g1801", "H",
           "Univ. of Missouri Extension G1801, How to Size a Farm and Home Water System, "
           "extension.missouri.edu/p/G1801: a backwashing filter draws 10 gpm, 100 to 200 gal a backwash"),
    source("viscosity_table", "H",
           "water density and viscosity table, engineersedge.com; Encyclopedia of Environmental "
           "Science and Engineering, appendix table 2"),
    source("exam_guide", "H",
           "Exam study guide: backwash rate, tpomag.com, March 2014: 30 ft by 25 ft, 6 in of rise in 30 s, "
           "5,610 gpm"),
    source("density_table", "H",
           "Encyclopedia of Environmental Science and Engineering, appendix table 2: density of water"),
    source("davis_11", "H",
           "M. L. Davis, Water and Wastewater Engineering, McGraw-Hill, chapter 11: table 11-1, examples "
           "11-2 and "
           "11-3, pp. 11-7 to 11-18"),
    source("fluids_docs", "H",
           "documentation of the public fluid-dynamics library fluids, fluids.packed_bed, "
           "github.com/CalebBell/fluids"),
    source("definition", "W", "worked out from the definition"),
    source("wen_yu", "H",
           "Wen and Yu 1966, constants 33.7 and 0.0408 as printed in D. W. Hendricks, Fundamentals of Water "
           "Treatment "
           "Unit Processes, equations 12.56 to 12.58 and table 12.9, p. 368"),
    source("iupac2021", "S", "IUPAC standard atomic weights, abridged, 2021"),
    source("massdep_title5", "S",
           "Massachusetts DEP, Water softeners and Title 5: no softener waste to a septic system"),
    source("ergun", "H", "Ergun equation as printed on a chemical-engineering reference page"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {bedAreaRow,         bedVolumeRow,        contactRow,
                                     backwashFlowRow,    backwashGallonsRow,  backwashIntervalRow,
                                     solidsLoadRow,      cartridgeDaysRow,    cartridgeDaysByMassRow,
                                     changeAtRow,        impliedUseRow,       impliedDaysRow,
                                     impliedCapacityRow, viscosityRow,        waterDensityRow,
                                     fluidizationRow,    expandedPorosityRow, bedExpansionRow,
                                     bedLossRow,         roseHeadLossRow,     cartridgeDaysBySolidsRow,
                                     cartridgeAreaRow,   cartridgeLoadingRow, cartridgeCostRow,
                                     lossAtRow,          insideDiameterRow,   freeboardRow,
                                     serviceLoadingRow,  serviceFlowRow,      washPerYearRow,
                                     septicSurgeRow,     runByLossRow,        bedSolidsRow,
                                     washIntervalRow,    grainSizeRow,        grainUniformityRow,
                                     grainPorosityRow,   grainDensityRow,     grainSphericityRow};
constinit const puteal_plugin self = plugin("filtration", "Filtration", 1, 2, sources, functions);

} // namespace
} // namespace filtration

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &filtration::self;
}
