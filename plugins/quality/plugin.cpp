/// The quality plugin: hardness, dissolved solids, carbon dioxide, corrosion indices, neutralizers.
///
/// Requirements
///  R1 Calcium and magnesium as the laboratory reports them; published rows stand as examples.
///  R2 Where scales differ, the table is an argument.
///  R3 No index of a softened water: no calcium is refused.
///  R4 What a neutralizer adds follows the atomic weights of the one substance table.
///  R5 Short forms stand beside the form with constants and temperature; the form is an argument.
///  R6 Sums of charges take ions in the form the laboratory gives, and say how far they are apart.
///  R7 A conversion names the form on both sides.
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
    source("handbook_classes", "H", "handbook hardness scale 50, 150, 300 mg/L, climate-policy-watcher.org"),
    source("plummer_busenberg", "H",
           "Plummer and Busenberg, Geochimica et Cosmochimica Acta 46, 1982, p. 1011: carbonate constants as "
           "printed in public geochemical code"),
    source("phreeqc_ex1", "H",
           "USGS PHREEQC version 3, example 1 (seawater of Nordstrom and others 1979), output of the "
           "distributed run: 0.07 percent error"),
    source("phreeqc_ex3", "H",
           "USGS PHREEQC version 3, example 3 A (calcite and carbon dioxide at 25 degC), output of the "
           "distributed run: pH 7.297, alkalinity 3.291e-3 eq/kg, CO2 3.399e-4 mol/kg"),
    source("phreeqc_ex16", "H",
           "USGS PHREEQC version 3, example 16 (two Sierra Nevada springs), output of the distributed run: "
           "percent error 1.90 and -0.73, CO2 4.540e-4 and 3.049e-4 mol/kg, calcite -3.30 and -1.78"),
    source("usgs_methods", "H",
           "Skougstad and others, USGS Techniques of Water-Resources Investigations, book 5, chapter A1, "
           "1979, p. "
           "280, as quoted in an archived discussion list: CO2 = 1.60 * 10^(6 - pH) * HCO3"),
    source("crc", "H",
           "CRC Handbook of Chemistry and Physics, standard KCl solutions for calibrating conductivity cells "
           "(measurements of the National Institute of Standards and Technology)"),
    source("c400", "H",
           "AWWA C400 as printed in the glossary of a trenchless-technology society, nastt.org: AI = pH + "
           "log(A H)"),
    source("ryznar_pages", "H",
           "Ryznar index on pages of corrosion engineers, events.nace.org and corrosion-doctors.org: 2 pHs - "
           "pH, "
           "bands 6, 7 and 8"),
    source("mine_report", "H", "Colorado mine water report: ion balance within 10 % accepted"),
    source("epa822", "H", "US EPA 822-R-03-006, questions and answers on sodium in drinking water"),
    source(
        "nitrate_limits", "S",
        "open.canada.ca, guideline on nitrate: 45 mg/L, equivalent to 10 mg/L as nitrogen; 40 CFR 141.11(d): "
        "10 mg/L"),
    source("treatment_math", "H", "Water Treatment Mathematics, sample lesson: mg/L = ppm in water"),
    source("definition", "W", "follows from the definition of the quantities"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {
    totalHardnessRow,
    calciumHardnessRow,
    magnesiumRow,
    disagreementRow,
    carbonateHardnessRow,
    noncarbonateHardnessRow,
    hardnessClassRow,
    ionAsCaco3Row,
    caco3AsIonRow,
    nitrogenAsRow,
    sulfurAsRow,
    cationChargeRow,
    anionChargeRow,
    ionBalanceRow,
    solidsByIonsRow,
    conductivityRow,
    dissolvedSolidsRow,
    solidsFactorRow,
    ppmByMassRow,
    freeCarbonDioxideRow,
    carbonateShareRow,
    alkalinityPartRow,
    saturationPhRow,
    langelierRow,
    langelierClassRow,
    ryznarRow,
    ryznarClassRow,
    aggressiveIndexRow,
    neutralizerMediumRow,
    toNeutralizeRow,
    neutralizedPhRow,
    neutralizerDoseRow,
    neutralizerAlkalinityRow,
    calciteHardnessRow,
    calcitePerYearRow,
    calciteFlowRow,
    blendDoseRow,
    blendHardnessRow,
    sodaAshRow,
    sodaAshPerYearRow,
    sodaAshSodiumRow,
};
constinit const puteal_plugin self = plugin("quality", "Water quality", 1, 1, sources, functions);

} // namespace
} // namespace quality

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &quality::self;
}
