/// The dosing plugin: strength of solutions, feeders, and contact tanks.
///
/// Requirements
///  R1 What a percent means is an argument.
///  R2 Percent by weight is turned into mg/L with the density, never by a factor of 10,000.
///  R3 A feeder's rate goes with the flow while it runs, its tank with the day's use.
///  R4 No function credits disinfection.
#include "dosing.h"

using namespace puteal::sdk;

namespace dosing
{
namespace
{

constexpr puteal_source sources[] = {
    source("iupac2021", "W",
           "worked out from IUPAC, standard atomic weights of the elements 2021, abridged values"),
    source("chlorination_handbook", "H",
           "definitions after Handbook of Chlorination, 1972: trade percent, 6.0 % NaOCl = "
           "5.71 % Cl2 = 6.17 trade percent, 12.5 trade percent = 10.8 % Cl2"),
    source("peroxide_storage", "H", "Science ASSIST (ASTA, Australia), Hydrogen peroxide storage, 2019"),
    source("bleach_storage", "H",
           "Bleach - storage guidelines for end users, trade body text: half the strength decays at "
           "a quarter of the rate; 12.5 % to 10 % in 30 days is an assumed case"),
    source("treatment_math", "H", "Water Treatment Mathematics, sample lesson: gpm * mg/L * 1440 / strength"),
    source("baffling_table", "S",
           "baffling classes of the US EPA Surface Water Treatment Rule as printed in Water "
           "Treatment Plant Design, table 10.3, and EPA 816-R-03-004, 2003"),
    source("geometry", "W", "worked out: amounts and volumes"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {hypochloriteStrengthRow, peroxideStrengthRow, bleachResidualRow,
                                     stockVolumeRow,          feedRateRow,         feedSettingRow,
                                     solutionDaysRow,         contactTimeRow,      contactVolumeRow};
constinit const puteal_plugin self = plugin("dosing", "Dosing", 1, 0, sources, functions);

} // namespace
} // namespace dosing

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &dosing::self;
}
