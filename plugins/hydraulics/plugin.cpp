/// The hydraulics plugin: wells, pressure tanks, pipe friction.
///
/// Requirements
///  R1 Inside diameters, never names of pipes.
///  R2 A weak well gives less storage and less flow, never an error.
///  R3 A tank whose precharge is above the cut-in pressure is refused.
///  R4 Gas laws use absolute pressure, so the air's pressure is an argument.
///  R5 A pump's curve is read between its lines, never beyond them; at another speed by the affinity laws.
///  R6 An operating point is a bracketed root; none is refused with both heads.
///  R7 Each backwash test stands alone, says limit and value, and is never "works" on a blank.
#include "hydraulics.h"

using namespace puteal::sdk;

namespace hydraulics
{
namespace
{

constexpr puteal_source sources[] = {
    source("mesa_county", "H",
           "Mesa County (CO) Health Department, Shock chlorination of wells: gallons a foot of bore"),
    source("agwt", "H", "American Ground Water Trust, agwt.org/node/152: 261 gal in 100 ft of 8 in"),
    source("pressure_tank", "H",
           "R. Pelikan, How to calculate and control pressure tank drawdown, and What Boyle's law "
           "means to you, National Driller, 2006 and 2008"),
    source("national_driller", "H",
           "Booster systems for low-yield wells, part 1, National Driller, "
           "thedriller.com/articles/86502: the seven-minute peak"),
    source("illinois_906", "S",
           "77 Illinois Administrative Code 906, appendix A, exhibit I: friction, plastic pipe, C 150"),
    source(
        "fire_hydraulics", "H",
        "fire-hydraulics reference page: pressure form of Hazen and Williams with 4.52, velocity 0.4085 Q / "
        "d^2, table of C"),
    source("pipe_glossary", "H", "pipe glossary page: SI form of Hazen and Williams with 10.67"),
    source("pumping_costs", "H",
           "water pumping costs, engineeringtoolbox.com d_1527: 0.746 * Q * h * c / (3960 * efficiencies)"),
    source("kwader_2021", "H",
           "T. Kwader, Specific capacity, a measure of the health and efficiency of a well, WorldWide "
           "Drilling Resource, "
           "May 2021, p. 13"),
    source("clamond_2009", "H",
           "D. Clamond, Efficient resolution of the Colebrook equation, Ind. Eng. Chem. Res. 48 (2009) 3665: "
           "the equation"),
    source("fluids_docs", "H",
           "documentation of the public fluid-dynamics library fluids, fluids.friction, "
           "github.com/CalebBell/fluids"),
    source("colebrook_module", "H",
           "documentation of the public module colebrook, pypi.org/project/colebrook"),
    source(
        "fritsch_carlson", "R",
        "monotone cubic of Fritsch and Carlson 1980 with weighted harmonic slopes: recalled, not confirmed"),
    source("hb44", "W", "worked out from NIST Handbook 44, appendix C: inch, foot, US gallon"),
    source("nist811", "S", "NIST SP 811, appendix B: conventional foot of water"),
    source("definition", "W", "worked out from the definition"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {
    boreStorageRow,      recoveryRateRow,   bucketFlowRow,       storageNeededRow, drawdownRow,
    specificCapacityRow, timeToLevelRow,    residualDrawdownRow, timeToEmptyRow,   tankDrawdownRow,
    leastTankVolumeRow,  motorStartsRow,    mostMotorStartsRow,  airPressureRow,   hazenWilliamsRow,
    reynoldsRow,         frictionFactorRow, darcyWeisbachRow,    minorLossRow,     valveLossRow,
    dynamicHeadRow,      pumpHeadRow,       operatingFlowRow,    washPumpRow,      washLevelRow,
    washRepeatRow,       washRateRow,       washMeasuredRow,     pipeVelocityRow,  waterHorsepowerRow};
constinit const puteal_plugin self = plugin("hydraulics", "Hydraulics", 1, 1, sources, functions);

} // namespace
} // namespace hydraulics

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &hydraulics::self;
}
