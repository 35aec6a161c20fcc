/// The oxidation plugin: what iron, manganese, sulfide and ammonia take of an oxidant, and what comes of it.
///
/// Requirements
///  R1 Demands follow the atomic weights of the one substance table; published table values stand as
///  examples. R2 More iron, manganese, sulfide or ammonia never lowers a demand. R3 Peroxide is never
///  credited with manganese. R4 Weights and capacities without a neutral source are arguments or marked as
///  recalled. R5 A usual allowance that is known for one oxidant is not passed off as another's. R6 A time
///  for oxidation is never told as one for disinfection.
#include "oxidation.h"

using namespace puteal::sdk;

namespace oxidation
{
namespace
{

constexpr puteal_source sources[] = {
    source("iupac2021", "W",
           "worked out from IUPAC, standard atomic weights of the elements 2021, abridged values"),
    source("wtp_design", "H",
           "Water Treatment Plant Design (AWWA/ASCE, McGraw-Hill), chapter 10, p. 10.12, table 10.7"),
    source("oxidant_tables", "T",
           "oxidant tables in trade texts (0.62 to 0.64, 1.29 to 1.30, 8.33 mg chlorine a mg), "
           "publishers not named here"),
    source("sulfide_handbook", "H",
           "environmental engineering handbook, sulfide removal: for 1 mg of hydrogen sulfide 8 mg chlorine, "
           "2 mg "
           "of 50 % peroxide, 1 mg ozone"),
    source("operator_training", "H",
           "operator training pages: demand 5.7 + residual 1.5 = dose 7.2 mg/L; dose 4.0 - demand 3.7 = "
           "residual "
           "0.3 mg/L"),
    source("epa815014", "S",
           "US EPA, Alternative Disinfectants and Oxidants Guidance Manual, 815-R-99-014, 1999, "
           "chapter 5"),
    source("rules_of_thumb", "H",
           "rules-of-thumb chapter, oreilly.com 9781439853320 chapter 40: 7.6 to 1 by theory, 10 "
           "to 15 to 1 in practice"),
    source("opflow", "H",
           "AWWA Opflow, December 2021, p. 19: 0.5 to 1.0 mg/L of free chlorine on coated media"),
    source("hb44", "S", "NIST Handbook 44, appendix C: grain, ounce, pound and US gallon"),
    source("wi811", "S", "Wisconsin Administrative Code NR 811.52, iron and manganese control: 30 minutes"),
    source("okla626", "S", "Oklahoma Administrative Code 252:626-9-7, iron and manganese control"),
    source("va590920", "S", "12 Virginia Administrative Code 5-590-920 (2017), iron and manganese control"),
    source("millero", "H", "Millero and others, Environmental Science and Technology 23, 1989, p. 209"),
    source("mrdl", "H", "Potwora, wcponline.com 2009-06-13: most residual in public supplies 4 mg/L as Cl2"),
    source("mn_answers", "T",
           "question-and-answer page and study abstract on permanganate for manganese: about 2 to 1 by mass"),
    source("iwa_manganese", "H",
           "IWA Publishing table, iwaponline.com/view-large/1108749: manganese behind a coated bed at 4 to 7 "
           "degC, 126, 63, 39, 25 ug/L by steps of pH"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {
    oxidantDemandRow,     ammoniaChlorineDemandRow, organicChlorineDemandRow, nitriteDemandRow,
    arsenicDemandRow,     permanganateSulfideRow,   oxidantDoseRow,           usualChlorineRow,
    usualPermanganateRow, chlorineResidualRow,      alkalinityConsumedRow,    alkalinityRemainingRow,
    solidsMadeRow,        ironEquivalentsRow,       permanganateDaysRow,      permanganateChargeRow,
    permanganateYearRow,  permanganatePowerRow,     ozoneOutputRow,           manganeseReleasedRow,
    coatedBedRow,         timeAllowedRow,
};
constinit const puteal_plugin self = plugin("oxidation", "Oxidation", 1, 1, sources, functions);

} // namespace
} // namespace oxidation

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &oxidation::self;
}
