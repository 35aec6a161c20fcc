/// The dosing plugin: solutions, feeders, contact tanks, CT of the public tables, shock chlorination, carbon.
///
/// Requirements
///  R1 What a percent means is an argument.
///  R2 Percent by weight is turned into mg/L with the density, never by a factor of 10,000.
///  R3 A feeder's rate goes with the flow while it runs, its tank with the day's use.
///  R4 No function credits disinfection: those that do the arithmetic of the public CT tables say each time
///  that it is no health claim, that the tables bind public supplies, and that the health authority is to be
///  asked. R5 A public table is read towards the colder, more alkaline and stronger row; beyond its ends it
///  is refused, or the row that stands is named. Rows that are recalled say so. R6 Where published figures
///  differ or none was found the figure is an argument, or a caution says so.
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
           "5.71 % Cl2 = 6.17 trade percent, 8.25 % NaOCl = 7.86 % Cl2, 12.5 trade percent = 10.8 % Cl2"),
    source("peroxide_storage", "H", "Science ASSIST (ASTA, Australia), Hydrogen peroxide storage, 2019"),
    source("bleach_storage", "H",
           "Bleach - storage guidelines for end users, trade body text: half the strength decays at "
           "a quarter of the rate; 12.5 % to 10 % in 30 days is an assumed case"),
    source("treatment_math", "H", "Water Treatment Mathematics, sample lesson: gpm * mg/L * 1440 / strength"),
    source("baffling_table", "S",
           "baffling classes of the US EPA Surface Water Treatment Rule as printed in Water "
           "Treatment Plant Design, table 10.3, and EPA 816-R-03-004, 2003"),
    source("baffling_pennsylvania", "S", "Pennsylvania DEP, Tracer studies and contact time: 0, 0.2 and 0.9"),
    source("bleach_warmth", "T",
           "general pages on hypochlorite: 3.5 times faster for 10 degC, 10 to 20 % a year"),
    source("epa815014", "S",
           "US EPA, Alternative Disinfectants and Oxidants Guidance Manual, 815-R-99-014, 1999, chapter 5"),
    source("morris", "R", "Morris 1966, pKa of hypochlorous acid: recalled, not confirmed"),
    source(
        "epa_ct_virus", "S",
        "US EPA, Disinfection Profiling and Benchmarking, 815-R-99-013, 1999, and 815-R-20-003, 2020, table "
        "B-2: 4-log viruses by free chlorine, read as data in public code"),
    source("epa_ct_giardia", "S",
           "US EPA, Disinfection Profiling and Benchmarking, 815-R-20-003, 2020, table B-1: 3-log Giardia by "
           "free chlorine, read as data in public code"),
    source(
        "epa_ct_instructions", "S",
        "instructions for the CT tables of the US EPA's Disinfection Profiling and Benchmarking: 15 degC, pH "
        "7.5, 1.2 mg/L ask 92; 0.4 degC, pH 7.6, 0.82 mg/L, 1.5 log ask 152"),
    source("state_interpolation", "S",
           "a state's note that accepts interpolation: 10.67 at 2 degC and pH 7.5"),
    source(
        "ct_regression", "H",
        "chlorine-disinfection page of a water-research archive: 0.2828 pH^2.69 C^0.15 0.933^(T-5) L, with a "
        "table at 0.5 degC"),
    source("hickory", "H",
           "Hickory Underground Water Conservation District, disinfecting a well: 3 cups of 5.25 % "
           "bleach to 100 gal"),
    source("groundwater_trust", "H",
           "American Ground Water Trust, node 152: 1 quart to 50 gal, 1 gal to 200 gal, 200 to 300 mg/L; "
           "more is "
           "not better"),
    source("mesa_county", "H",
           "Mesa County Health Department, Colorado, Shock chlorination of wells: 112 oz of 5.25 % bleach or "
           "8 oz "
           "of granules to 100 gal"),
    source(
        "alberta_agriculture", "H",
        "Alberta Agriculture, Water wells that last, module 6, Agdex 716 (A10): 200 ppm, imperial gallons, "
        "liters and grams for a foot of 4, 6 and 8 in casing"),
    source("alberta_health", "H",
           "Alberta Health Services, Shock chlorination procedure for contaminated wells: 50 ppm, "
           "milliliters for "
           "a foot of 4, 6 and 8 in casing"),
    source("new_york", "H",
           "recommendation of the State of New York as printed on ecologycenter.us, chlorine dosage: free "
           "chlorine of 0.2 mg/L after 10 minutes at pH 7, 0.4 mg/L at pH 8"),
    source("half_length", "H",
           "project note on the half-value length of DIN 19603, and Abdul-Ahad 2008, IJCPE 9(4), p. 41"),
    source("carbon_use", "T",
           "dechlorination page of the trade: 1.4 lb of carbon for a million gallons at 1 mg/L"),
    source("geometry", "W", "worked out: amounts and volumes"),
    source("practice", "T", "common practice, no source"),
    source("recalled", "R", "recalled, not confirmed"),
};

const puteal_function functions[] = {hypochloriteStrengthRow,
                                     peroxideStrengthRow,
                                     bleachResidualRow,
                                     stockVolumeRow,
                                     bleachDecayRateRow,
                                     bleachLossRateRow,
                                     bleachAgeLimitRow,
                                     peroxideResidualRow,
                                     dilutedVolumeRow,
                                     dilutionWaterRow,
                                     mixedStrengthRow,
                                     injectorDoseRow,
                                     solutionStrengthRow,
                                     feedRateRow,
                                     feedSettingRow,
                                     solutionDaysRow,
                                     doseAtFlowRow,
                                     contactTimeRow,
                                     contactVolumeRow,
                                     detentionTimeRow,
                                     bafflingFactorRow,
                                     tanksInSeriesRow,
                                     contactTankSizeRow,
                                     hypochlorousPkaRow,
                                     hypochlorousShareRow,
                                     chlorinationKTimeRow,
                                     virusCtRow,
                                     giardiaCtRow,
                                     ctValueRow,
                                     ctContactVolumeRow,
                                     logInactivationRow,
                                     shockDoseRow,
                                     shockByRuleRow,
                                     shockLevelRow,
                                     shockSolutionVolumeRow,
                                     calciumHypochloriteDoseRow,
                                     dechlorinationBedRow,
                                     dechlorinatedResidualRow,
                                     dechlorinationCarbonRow,
                                     peroxideOxygenRow};
constinit const puteal_plugin self = plugin("dosing", "Dosing", 1, 0, sources, functions);

} // namespace
} // namespace dosing

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &dosing::self;
}
