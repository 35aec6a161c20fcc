/// The softening plugin: what a cation-exchange softener must carry, what it can carry, and what that takes.
///
/// Requirements
///  R1 A setting and the salt follow the compensated hardness; sodium and leakage follow the true exchange
///  load. R2 Every allowance that has no agreed source is an argument with a visible default, never a hidden
///  constant. R3 Capacity never falls when the salt dose rises, whichever table is chosen. R4 The iron
///  verdict gets no better when iron, manganese or sulfide rise, and is never "works" without a test it
///  needs. R5 Every verdict names the limit, its value and the water's value.
#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

constexpr puteal_source sources[] = {
    source("iupac2021", "S", "IUPAC, standard atomic weights of the elements 2021, abridged values"),
    source("hb44", "S", "NIST Handbook 44, appendix C: grain and US gallon"),
    source("va590", "S", "12 Virginia Administrative Code 5-590-900, ion exchange at waterworks"),
    source("il604", "S", "35 Illinois Administrative Code 604.805, cation exchange softening"),
    source("ut309", "S", "Utah Administrative Code R309-535-11, iron and manganese control"),
    source("wi811", "S", "Wisconsin Administrative Code NR 811.52, iron and manganese control"),
    source(
        "nsf44", "S",
        "NSF/ANSI 44 efficiency figures as quoted in the water softener guide of the PNNL Building America "
        "Solution Center"),
    source("keller", "H", "Keller, Basic ion exchange for residential water treatment, part 2, table 3"),
    source("chemistry_line", "H",
           "Follow the chemistry line of logic, watertechonline.com: 5,989 grain per pound"),
    source("smart_softeners", "H",
           "Getting smart with softeners, trade association guide, docslib.org 8496954"),
    source("vce356", "H", "Virginia Cooperative Extension 356-488: sulfide in household water"),
    source("iron_pamphlet", "H",
           "About iron and manganese in drinking water, consumer pamphlet, docslib.org 8991879"),
    source("epa822", "H", "US EPA 822-R-03-006, questions and answers on sodium in drinking water"),
    source("ten_states", "H", "Ten States Standards 4.4.2 as summarized on a course page, rpi.edu"),
    source("slovak", "H", "Slovak, Guidelines for designing water softeners, trade journal"),
    source("andrew", "H",
           "Andrew, wcponline.com 2014-04-17: flow and pressure of the softener certification"),
    source("iron_home", "H", "home guides on iron in well water"),
    source("iron_handbook", "H",
           "environmental engineering handbook, table of iron processes, "
           "eurocode.us/wastewater-treatment/info-koy.html"),
    source("penn_state", "H", "Penn State Extension, Water System Planning: Estimating Water Needs"),
    source("missouri", "H",
           "University of Missouri Extension G1801, How to Size a Farm and Home Water System"),
    source(
        "sodium_quarts", "H",
        "trade-association sodium table reproduced on a support page: 223 mg in three quarts at 10 gpg, 893 "
        "at 40; another gives 7.5 mg a quart a gpg"),
    source("brine_notes", "H",
           "brine figures quoted on a cheese makers' forum, cheeseforum.org topic 1043: 26.4 % and 1.20 at "
           "20 degC, "
           "2.6 lb a gallon, 19.4 lb a cubic foot, 35.9 g in 100 g of water at 25 degC, 5,994 grain a pound"),
    source("saline_water", "H",
           "encyclopedia article Saline water: 357 g in a liter of water at 20 degC, 26.3 % by mass"),
    source("definition", "W", "follows from the definition of the quantities"),
    source("brine_recalled", "R", "density of saturated brine 1.198 kg/L: recalled; 1.20 is printed"),
    source("trade_brine", "T",
           "forum of another trade that regenerates softeners: about 3 lb of salt a gallon"),
    source("trade_settings", "T",
           "worked examples in trade texts on softener settings, publishers not named here"),
    source("trade_sizing", "T", "worked examples in trade sizing notes, publishers not named here"),
    source("trade_sodium", "T", "sodium tables of trade columns and of a trade association, 7.86 mg/L a gpg"),
    source("trade_fit", "T", "logarithmic capacity fit in trade training slides, publisher not named here"),
    source("practice", "T", "common practice of the trade, no single source"),
};

const puteal_function functions[] = {
    compensatedHardnessRow, exchangeLoadRow,     sodiumAddedRow,         potassiumAddedRow,
    sodiumIntakeRow,        resinCapacityRow,    saltDoseForCapacityRow, saltEfficiencyRow,
    efficiencyAchievedRow,  leastSaltRow,        potassiumFactorRow,     dailyLoadRow,
    capacityNeededRow,      resinNeededRow,      bypassShareRow,         daysBetweenRow,
    saltPerRegenerationRow, saltPerYearRow,      saltByEfficiencyRow,    saltSupplyRow,
    brineStrengthRow,       saltDissolvedRow,    brineFillRow,           brineVolumeRow,
    regenerationWaterRow,   waterRatioRow,       waterBoundRow,          waterPerYearRow,
    resinFlowRateRow,       resinServiceFlowRow, rateByLoadingRow,       ratingRow,
    ironVerdictRow,         ironLimitRow,        highEfficiencyRow,
};
constinit const puteal_plugin self =
    plugin("softening", "Cation-exchange softening", 1, 1, sources, functions);

} // namespace
} // namespace softening

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &softening::self;
}
