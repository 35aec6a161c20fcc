/// The limits plugin: drinking-water limits by day and jurisdiction, a value against them, whom to call.
///
/// Requirements
///  R1 A limit is asked for a day; on any day at most one row of a jurisdiction, substance, basis and purpose
///  is
///     in force, and once known it has no gap.
///  R2 Every row names its source; what is known from memory says so in every answer.
///  R3 A reading counts for all it allows: one whose bound is above the limit cannot tell; a blank is a
///  missing
///     test, never below a limit.
///  R4 More of what is limited never makes an acceptance or a referral milder.
///  R5 Every answer names limit, jurisdiction, day and the water's value; none says that water is safe.
#include "limits.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

constexpr puteal_source sources[] = {
    source("cfr143_3", "S",
           "40 CFR 143.3, secondary maximum contaminant levels, law.cornell.edu: whole table, with 44 FR "
           "42198 of 1979-07-19, "
           "51 FR 11412 of 1986-04-02 and 56 FR 3597 of 1991-01-30"),
    source(
        "cfr141_11", "S",
        "40 CFR 141.11, codes.findlaw.com: arsenic 0.05 mg/L until January 23, 2006; nitrate 10 mg/L in (d)"),
    source("cfr141_52", "S",
           "40 CFR 141.52, lexbuild.dev, eCFR of 2026-04-05: goal for total coliforms zero until March 31, "
           "2016, for E. coli zero from April 1, 2016"),
    source("cfr265_iii", "S",
           "40 CFR 265 appendix III, EPA interim primary drinking water standards: lead 0.05, barium 1.0, "
           "nitrate (as N) 10 "
           "mg/L"),
    source("epa_arsenic", "S", "US EPA 816-R-05-008 and 816-R-03-014, arsenic rule: 0.010 mg/L"),
    source("fr_lead_2024", "S",
           "89 FR 86418, 30 October 2024, lead and copper rule improvements: action level 0.015 before, "
           "0.010 after; "
           "compliance 1 November 2027"),
    source("fr_radionuclides", "S",
           "65 FR 76708, 7 December 2000, radionuclides rule, effective 2003-12-08; COMAR 26.04.01.09 prints "
           "uranium 30 "
           "microgram/L"),
    source("epa_sodium", "S",
           "US EPA 822-R-03-006 and its questions and answers: sodium 20 mg/L, taste 30 to 60 mg/L"),
    source(
        "drinktap_manganese", "H",
        "American Water Works Association, DrinkTap page on manganese, quoting the US EPA health advisory"),
    source("trade_mrdl", "H", "Potwora, wcponline.com 2009-06-13: most residual disinfectant 4 mg/L as Cl2"),
    source("canada_open", "S",
           "open.canada.ca, summaries of guideline technical documents: iron 0.3, chloride 250, sulfate 500 "
           "mg/L, color 15 "
           "TCU, nitrate 45 mg/L equal to 10 as nitrogen"),
    source(
        "canada_iron_2024", "S",
        "Canada Gazette I, 30 September 2023 (proposal) and 28 December 2024 (notice): iron 0.1 mg/L, total"),
    source("canada_lead_2019", "S",
           "canada.ca, guideline technical document on lead, published March 8, 2019: 0.005 mg/L of total "
           "lead at the tap, as low as reasonably achievable; no level without harm is known"),
    source("canada_arsenic", "S",
           "canada.ca, guideline technical document on arsenic, May 2006: 0.010 mg/L, as low as reasonably "
           "achievable"),
    source(
        "canada_uranium", "H",
        "princetonbc.com, guide to uranium in drinking water: Health Canada confirmed 0.020 mg/L again; the "
        "consultation of 2017 proposed 20 ug/L (naylornetwork.com)"),
    source("journal_manganese", "H",
           "esemag.com 2019, Canada's new manganese guideline: 0.12 mg/L for health, 0.02 mg/L aesthetic"),
    source("fao_who", "S",
           "FAO y4263e annex 3, WHO guidelines for drinking-water quality, 2nd edition 1996 and addendum "
           "1998, summary tables"),
    source("who_1996_extract", "H",
           "extract of the same WHO tables at waterquality.de: barium 0.7, fluoride 1.5 mg/L"),
    source("frisbie_2012", "H",
           "Frisbie et al. 2012, Environmental Health Perspectives 120:775: WHO dropped manganese 0.4 mg/L "
           "in 2011"),
    source("who_2022_review", "H",
           "heavymetalindex.com, values of the WHO guidelines, 4th edition with both addenda, 2022: "
           "manganese 0.08 "
           "(provisional), barium 1.3, copper 2, lead and arsenic 0.01 mg/L"),
    source("recalled_us", "R", "United States rules: recalled, not confirmed"),
    source("recalled_canada", "R", "Health Canada guidelines: recalled, not confirmed"),
    source("recalled_who", "R", "World Health Organization guidelines: recalled, not confirmed"),
    source("practice", "T",
           "common practice, no source: which finding stops, which is a caution, whom to call"),
};

const puteal_function functions[] = {
    limitInForceRow,       limitKindRow,      limitSinceRow,      strictestHealthLimitRow,
    phLimitLowRow,         phLimitHighRow,    colorLimitRow,      odorLimitRow,
    acceptanceRow,         acceptancePhRow,   acceptanceColorRow, acceptanceOdorRow,
    acceptanceBacteriaRow, healthReferralRow, healthFindingRow,   healthContactRow};
constinit const puteal_plugin self = plugin("limits", "Drinking-water limits", 1, 0, sources, functions);

} // namespace

constinit const char *const tableSources[] = {"cfr143_3",          "cfr141_11",       "cfr141_52",
                                              "cfr265_iii",        "epa_arsenic",     "fr_lead_2024",
                                              "fr_radionuclides",  "epa_sodium",      "drinktap_manganese",
                                              "trade_mrdl",        "canada_open",     "canada_iron_2024",
                                              "canada_lead_2019",  "canada_arsenic",  "canada_uranium",
                                              "journal_manganese", "fao_who",         "who_1996_extract",
                                              "frisbie_2012",      "who_2022_review", "recalled_us",
                                              "recalled_canada",   "recalled_who",    nullptr};
constinit const char *const judgedSources[] = {
    "practice",        "cfr143_3",          "cfr141_11",        "cfr141_52",        "cfr265_iii",
    "epa_arsenic",     "fr_lead_2024",      "fr_radionuclides", "epa_sodium",       "drinktap_manganese",
    "trade_mrdl",      "canada_open",       "canada_iron_2024", "canada_lead_2019", "canada_arsenic",
    "canada_uranium",  "journal_manganese", "fao_who",          "who_1996_extract", "frisbie_2012",
    "who_2022_review", "recalled_us",       "recalled_canada",  "recalled_who",     nullptr};

} // namespace limits

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &limits::self;
}
