/// The quality plugin: hardness, dissolved solids, carbon dioxide, corrosion indices, neutralizers.
///
/// Requirements
///  R1 Calcium and magnesium as the laboratory reports them; published rows stand as examples.
///  R2 Where scales differ, the table is an argument.
///  R3 No index of a softened water: no calcium is refused.
///  R4 What a neutralizer adds follows the atomic weights of the one substance table.
#include "quality.h"

using namespace puteal::sdk;

namespace quality
{
namespace
{

constexpr puteal_source sources[] = {
    source("ohio_epa", "H",
           "Ohio EPA, Ambient Ground-Water Quality Monitoring Program, raw water: the agency's hardness "
           "beside its calcium and magnesium"),
    source("standard_methods", "R", "Standard Methods 2340 B and 4500-CO2: recalled, not confirmed"),
    source("iupac2021", "W",
           "worked out from IUPAC, standard atomic weights of the elements 2021, abridged values"),
    source("usgs_classes", "S", "USGS hardness classes as quoted on a page that reproduces them"),
    source("trade_classes", "T", "trade-association hardness scale printed beside the USGS classes"),
    source("conductivity_pages", "H",
           "general reference pages on conductivity and dissolved solids: 0.55 to 0.8, 300 uS/cm "
           "* 0.64 = 192 mg/L, 200 * 0.6 = 120"),
    source("langelier_pages", "H",
           "three public pages that print the same Langelier form, one with worked rows 7.70 / "
           "-0.10 and 7.23 / 0.97"),
    source("ph_adjustment", "H", "Drinking water treatment - pH adjustment, extension-style text"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {totalHardnessRow,     hardnessClassRow,  dissolvedSolidsRow,
                                     freeCarbonDioxideRow, langelierRow,      ryznarRow,
                                     calciteHardnessRow,   calcitePerYearRow, sodaAshRow};
constinit const puteal_plugin self = plugin("quality", "Water quality", 1, 0, sources, functions);

} // namespace
} // namespace quality

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &quality::self;
}
