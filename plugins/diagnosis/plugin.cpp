/// The diagnosis plugin: what a complaint points to, which form the iron is in, what each limit of a method
/// or medium says about a water, and what to look at when a treatment misses.
///
/// Requirements
///  R1 A blank observation is no zero and no error; a blank needed test is never "works".
///  R2 A bounded reading decides only if everything it allows agrees.
///  R3 More of what a limit bounds never makes a verdict better; less flow never makes a wash work.
///  R4 Every verdict names the limit, its value and the water's value.
///  R5 Iron bacteria are named before any other form, since they decide the treatment.
///  R6 A limit of a medium is shown by a function of its own, with where it comes from.
///  R7 A verdict that rests on common practice alone says so.
#include "diagnosis.h"

using namespace puteal::sdk;

namespace diagnosis
{
namespace
{

constexpr puteal_source sources[] = {
    source("practice", "T", "common practice, no source"),
    source("standing_glass", "H",
           "standing-glass and overnight-glass test as described on general how-to pages: iron settles, "
           "tannin stays even"),
    source("iron_pamphlet", "H",
           "About iron and manganese in drinking water, consumer pamphlet, docslib.org 8991879: clear water "
           "that turns "
           "rusty on standing; slime of iron bacteria"),
    source("wsc_hotline", "H", "Water Systems Council, hotline note on iron bacteria, 15 Aug 2024"),
    source("vce356", "H",
           "Virginia Cooperative Extension 356-488, nasdonline.org/document/1433: black water with sulfide, "
           "smells"),
    source(
        "va590", "S",
        "12 Virginia Administrative Code 5-590-900: iron, service flow, wash and depth of softening resin"),
    source("oxidizing_media", "H",
           "environmental engineering handbook, table of oxidizing media (pH, iron, manganese, oxygen), "
           "eurocode.us/wastewater-treatment/info-koy.html"),
    source("ph_adjustment", "H",
           "Drinking water treatment: pH adjustment, extension-style text: calcite above pH 6, at most 3 "
           "gpm/ft^2, 32 to "
           "36 in"),
    source(
        "uga858", "H",
        "Univ. of Georgia Extension C858-15, extension.uga.edu: carbon for hydrogen sulfide below 0.3 mg/L"),
    source("wi811", "S", "Wisconsin Administrative Code NR 811.52: wash of greensand and of coated sand"),
    source("ok252626", "S",
           "Oklahoma Administrative Code 252:626-9-7: at most 3 gpm/ft^2 on greensand, wash 8 to 10, depth"),
    source("nc18c0708", "S",
           "15A North Carolina Administrative Code 18C .0708: 2 gpm/ft^2 on sand, 4 on two media, at least "
           "24 in"),
    source("opflow2021", "H",
           "AWWA Opflow, December 2021, p. 19: coated contactors, 12 to 18 gpm/ft^2, free chlorine 0.5 to "
           "1.0 mg/L"),
    source("epa_secondary", "S",
           "US EPA, Secondary Drinking Water Standards: Guidance for Nuisance Chemicals, and 40 CFR 143.3: "
           "iron stains "
           "reddish or orange, manganese black, copper blue-green; manganese 0.05 mg/L"),
    source("bedford_pink", "H",
           "Bedford Regional Water Authority, brwa.com: pink residue is bacteria from the air, iron would "
           "stain every "
           "fixture"),
    source("colorado_purge", "H",
           "Colorado mine record, dnrweblink.state.co.us doc 641310 p. 17: three casing volumes, readings "
           "within 0.1 pH "
           "and 1 degC"),
    source("massdep_title5", "S",
           "Massachusetts DEP, Water softeners and Title 5: no softener waste to a septic system, drywell "
           "with approval"),
    source("hb44", "W", "worked out from NIST Handbook 44, appendix C: US gallon, minute"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {ironFormRow,         ironFormConfidenceRow, ironFormNextTestRow,
                                     screenAtMostRow,     screenAtLeastRow,      screenNoneRow,
                                     screenNoRow,         screenYesRow,          screenFormRow,
                                     screenFlowRow,       screenBackwashRow,     screenFeederRow,
                                     screenDischargeRow,  screenGradeRow,        mediaCheckRow,
                                     mediaPhRow,          mediaIronRow,          mediaSulfideRow,
                                     mediaLoadingRow,     mediaWashRow,          mediaDepthRow,
                                     leastOxidationPhRow, trainOrderRow,         complaintCauseRow,
                                     complaintScoreRow,   bleachCupRow,          sheenRow,
                                     fieldKitRow,         sampleStateRow,        testPlaceRow,
                                     cupTimeRow,          casingPurgeRow,        purgeSteadyRow,
                                     followUpRow};
constinit const puteal_plugin self = plugin("diagnosis", "Diagnosis and screening", 1, 1, sources, functions);

} // namespace
} // namespace diagnosis

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &diagnosis::self;
}
