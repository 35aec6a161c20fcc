/// The hydraulics plugin: wells, pressure tanks, pipe friction.
///
/// Requirements
///  R1 Inside diameters, never names of pipes.
///  R2 A weak well gives less storage and less flow, never an error.
///  R3 A tank whose precharge is above the cut-in pressure is refused.
///  R4 Gas laws use absolute pressure, so the air's pressure is an argument.
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
    source("hb44", "W", "worked out from NIST Handbook 44, appendix C: inch, foot, US gallon"),
    source("nist811", "S", "NIST SP 811, appendix B: conventional foot of water"),
    source("definition", "W", "worked out from the definition"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {boreStorageRow,   recoveryRateRow,  bucketFlowRow,
                                     storageNeededRow, drawdownRow,      tankDrawdownRow,
                                     airPressureRow,   hazenWilliamsRow, pumpingHeadRow};
constinit const puteal_plugin self = plugin("hydraulics", "Hydraulics", 1, 0, sources, functions);

} // namespace
} // namespace hydraulics

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &hydraulics::self;
}
