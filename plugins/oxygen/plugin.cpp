/// The oxygen plugin: saturation, what oxidation uses, the air pocket over a bed, venturis, sulfide gas.
///
/// Requirements
///  R1 Saturation agrees with the EN 25814 row within its figures.
///  R2 Ammonia is part of the budget; more of anything never lowers it.
///  R3 Gas laws use absolute pressure.
///  R4 The uptake of oxygen by the water is an argument: it, not iron, usually empties a pocket.
///  R5 Where several limits could decide, a function names the one that does and shows the others.
#include "oxygen.h"

using namespace puteal::sdk;

namespace oxygen
{
namespace
{

constexpr puteal_source sources[] = {
    source("apha1985", "H",
           "oxygen saturation of APHA 1985 as quoted in a public watershed-model theory manual"),
    source("en25814", "S", "EN 25814, oxygen saturation table, reproduced in an instrument manual, p. 52"),
    source("colorimeter", "E", "colorimeter manual, table 3: oxygen at other air pressures"),
    source("oxygen_code", "H", "pressure terms of APHA as coded in a public oxygen-saturation routine"),
    source("iupac2021", "W",
           "worked out from IUPAC, standard atomic weights of the elements 2021, abridged values"),
    source("wtp_design", "H",
           "Water Treatment Plant Design (AWWA/ASCE, McGraw-Hill), chapter 10, p. 10.12, table 10.7"),
    source("si2019", "W", "worked out from the gas constant of the SI, 2019"),
    source("boyle", "W", "worked out from Boyle's law with 14.7 psi of outside air"),
    source("definition", "W", "worked out from the definition"),
    source("lagoon_model", "H", "public lagoon-ecology model: first pK of hydrogen sulfide 7.0"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {
    oxygenSaturationRow, oxygenBudgetRow,    oxygenPartialPressureRow, airEntryRow,
    airPocketOxygenRow,  airPocketDaysRow,   airPocketVolumeRow,       airPocketIntervalRow,
    airPocketLimitRow,   saturationShareRow, oxygenNeededRow,          oxygenRemainingRow,
    aerationLimitRow,    venturiAirFlowRow,  venturiDrawsRow,          hydrogenSulfideShareRow};
constinit const puteal_plugin self = plugin("oxygen", "Oxygen and air", 1, 0, sources, functions);

} // namespace
} // namespace oxygen

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &oxygen::self;
}
