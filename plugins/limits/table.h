/// The dated table of drinking-water limits: data only. docs/limits.md shows it as people read it.
///
/// A row keeps its limit in the basis its source prints (nitrate as N or as NO3) and the days it is in force;
/// a limit printed in two bases has a row in each, so that neither is a rounded conversion of the other. What
/// was read in a source names it; what is known from memory alone says so, value and date apart.
#pragma once

#include <cmath>

#include "sdk/dates.h"

namespace limits
{

using puteal::sdk::dayOf;

/// What is limited. Substances first, in the order of the words a formula chooses from.
enum Item : int {
    iron,
    manganese,
    copper,
    zinc,
    aluminum,
    arsenic,
    lead,
    uranium,
    barium,
    strontium,
    sodium,
    chloride,
    sulfate,
    sulfide,
    fluoride,
    nitrate,
    nitrite,
    chlorine,
    dissolvedSolids,
    ph,
    color,
    odor,
    totalColiform,
    eColi,
    itemCount
};
inline constexpr const char *itemNames[] = {"iron",
                                            "manganese",
                                            "copper",
                                            "zinc",
                                            "aluminum",
                                            "arsenic",
                                            "lead",
                                            "uranium",
                                            "barium",
                                            "strontium",
                                            "sodium",
                                            "chloride",
                                            "sulfate",
                                            "hydrogen sulfide",
                                            "fluoride",
                                            "nitrate",
                                            "nitrite",
                                            "chlorine residual",
                                            "dissolved solids",
                                            "pH",
                                            "color",
                                            "odor",
                                            "total coliform",
                                            "E. coli"};

enum Place : int { us, canada, who, placeCount };
inline constexpr const char *placeWords[] = {"US", "Canada", "WHO", nullptr};

/// What kind of limit it is; the first three are about health.
enum Kind : int { healthLimit, actionLevel, guideline, advisory, aesthetic, treatmentGoal, noKind };
inline constexpr const char *kindWords[] = {"health limit",        "action level",   "guideline", "advisory",
                                            "aesthetic objective", "treatment goal", "none",      nullptr};

/// What a sheet asks for: at most one row of each is in force on a day.
enum Purpose : int { forHealth, forAdvice, forAesthetics, asGoal };
inline constexpr const char *purposeWords[] = {"health", "advisory", "aesthetic", "treatment goal", nullptr};
constexpr Purpose purposeOf(Kind kind)
{
    return kind == advisory        ? forAdvice
           : kind == aesthetic     ? forAesthetics
           : kind == treatmentGoal ? asGoal
                                   : forHealth;
}

/// Where a value or a day is known from.
enum Known : int {
    printed,     ///< in the source the row names
    recalled,    ///< from memory, unconfirmed
    yearOfSource ///< days only: the limit is at least as old as the source that prints it
};

struct Limit {
    Item item;
    Place place;
    Kind kind;
    double low;        ///< least allowed, 0 where there is none
    double high;       ///< most allowed; infinite in a row that says there was none
    const char *basis; ///< substance of the amount, "" where the item says it
    double from;
    Known day;
    double until; ///< last day in force, infinite while nothing follows
    Known value;
    const char *source;
    const char *note;
};

/// The day up to which the table was kept.
inline constexpr double keptUntil = dayOf(2026, 11, 26);
inline constexpr double open = HUGE_VAL, noLimit = HUGE_VAL;

// Days of US rows for taste and color are those of the Federal Register that 40 CFR 143.3 names.
inline constexpr double smcl1979 = dayOf(1979, 7, 19), interim1977 = dayOf(1977, 6, 24);

inline constexpr Limit table[] = {
    // United States
    {iron, us, aesthetic, 0, 0.3, "Fe", smcl1979, printed, open, printed, "cfr143_3", ""},
    {manganese, us, aesthetic, 0, 0.05, "Mn", smcl1979, printed, open, printed, "cfr143_3", ""},
    {manganese, us, advisory, 0, 0.3, "Mn", dayOf(2004, 1, 1), recalled, open, printed, "drinktap_manganese",
     "lifetime; for infants under 6 months also the 1-day and 10-day value"},
    {copper, us, aesthetic, 0, 1.0, "Cu", smcl1979, printed, open, printed, "cfr143_3", ""},
    {copper, us, actionLevel, 0, 1.3, "Cu", dayOf(1992, 12, 7), recalled, open, recalled, "recalled_us",
     "first draw, nine of ten taps"},
    {copper, us, treatmentGoal, 0, 1.3, "Cu", dayOf(1992, 12, 7), recalled, open, recalled, "recalled_us",
     ""},
    {zinc, us, aesthetic, 0, 5, "Zn", smcl1979, printed, open, printed, "cfr143_3", ""},
    {aluminum, us, aesthetic, 0, 0.2, "Al", dayOf(1991, 1, 30), printed, open, printed, "cfr143_3",
     "printed as 0.05 to 0.2"},
    {arsenic, us, healthLimit, 0, 0.05, "As", interim1977, recalled, dayOf(2006, 1, 22), printed, "cfr141_11",
     "until January 23, 2006"},
    {arsenic, us, healthLimit, 0, 0.010, "As", dayOf(2006, 1, 23), printed, open, printed, "epa_arsenic", ""},
    {arsenic, us, treatmentGoal, 0, 0, "As", dayOf(2006, 1, 23), recalled, open, recalled, "recalled_us", ""},
    {lead, us, healthLimit, 0, 0.05, "Pb", interim1977, recalled, dayOf(1992, 12, 6), printed, "cfr265_iii",
     ""},
    {lead, us, actionLevel, 0, 0.015, "Pb", dayOf(1992, 12, 7), recalled, dayOf(2027, 10, 31), printed,
     "fr_lead_2024", "of public systems, no measure for one house"},
    {lead, us, actionLevel, 0, 0.010, "Pb", dayOf(2027, 11, 1), printed, open, printed, "fr_lead_2024",
     "of public systems, no measure for one house; rule of 2024-10-30, effective 2024-12-30, compliance from "
     "this day"},
    {lead, us, treatmentGoal, 0, 0, "Pb", dayOf(1992, 12, 7), recalled, open, recalled, "recalled_us", ""},
    {uranium, us, healthLimit, 0, 0.030, "U", dayOf(2003, 12, 8), printed, open, printed, "fr_radionuclides",
     ""},
    {uranium, us, treatmentGoal, 0, 0, "U", dayOf(2003, 12, 8), recalled, open, recalled, "recalled_us", ""},
    {barium, us, healthLimit, 0, 1.0, "Ba", interim1977, recalled, dayOf(1992, 12, 31), printed, "cfr265_iii",
     ""},
    {barium, us, healthLimit, 0, 2, "Ba", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_us", ""},
    {sodium, us, advisory, 0, 20, "Na", dayOf(2003, 1, 1), yearOfSource, open, printed, "epa_sodium",
     "for a diet of 500 mg a day; taste from 30 to 60"},
    {chloride, us, aesthetic, 0, 250, "Cl", smcl1979, printed, open, printed, "cfr143_3", ""},
    {sulfate, us, aesthetic, 0, 250, "SO4", smcl1979, printed, open, printed, "cfr143_3", ""},
    {fluoride, us, aesthetic, 0, 2.0, "F", dayOf(1986, 4, 2), printed, open, printed, "cfr143_3", ""},
    {fluoride, us, healthLimit, 0, 4.0, "F", dayOf(1987, 10, 2), recalled, open, recalled, "recalled_us",
     "the day is printed in 40 CFR 141.60 (b)(1)"},
    {nitrate, us, healthLimit, 0, 10, "N", interim1977, recalled, open, printed, "cfr265_iii",
     "also in 40 CFR 141.11(d); nitrate and nitrite together at most 10 [recalled]"},
    {nitrite, us, healthLimit, 0, 1, "N", dayOf(1992, 7, 30), recalled, open, recalled, "recalled_us",
     "the day is printed in 40 CFR 141.60 (b)(2)"},
    {chlorine, us, healthLimit, 0, 4, "Cl2", dayOf(2002, 1, 1), recalled, open, printed, "trade_mrdl",
     "most residual disinfectant, running yearly mean"},
    {dissolvedSolids, us, aesthetic, 0, 500, "TDS", smcl1979, printed, open, printed, "cfr143_3", ""},
    {ph, us, aesthetic, 6.5, 8.5, "", smcl1979, printed, open, printed, "cfr143_3", ""},
    {color, us, aesthetic, 0, 15, "", smcl1979, printed, open, printed, "cfr143_3", ""},
    {odor, us, aesthetic, 0, 3, "", smcl1979, printed, open, printed, "cfr143_3", ""},
    {totalColiform, us, healthLimit, 0, 0, "", dayOf(1990, 12, 31), recalled, dayOf(2016, 3, 31), recalled,
     "recalled_us", "none in 100 mL"},
    {totalColiform, us, actionLevel, 0, 0, "", dayOf(2016, 4, 1), recalled, open, recalled, "recalled_us",
     "found, it starts an assessment"},
    {totalColiform, us, treatmentGoal, 0, 0, "", dayOf(1990, 12, 31), recalled, dayOf(2016, 3, 31), printed,
     "cfr141_52", ""},
    {totalColiform, us, treatmentGoal, 0, noLimit, "", dayOf(2016, 4, 1), printed, open, printed, "cfr141_52",
     "the goal is for E. coli now"},
    {eColi, us, treatmentGoal, 0, 0, "", dayOf(2016, 4, 1), printed, open, printed, "cfr141_52", ""},
    {eColi, us, healthLimit, 0, 0, "", dayOf(1990, 12, 31), recalled, open, recalled, "recalled_us",
     "none in 100 mL"},
    // Canada
    {iron, canada, aesthetic, 0, 0.3, "Fe", dayOf(1987, 1, 1), recalled, dayOf(2024, 12, 27), printed,
     "canada_open", ""},
    {iron, canada, aesthetic, 0, 0.1, "Fe", dayOf(2024, 12, 28), printed, open, printed, "canada_iron_2024",
     "total iron; proposed in September 2023"},
    {manganese, canada, aesthetic, 0, 0.05, "Mn", dayOf(1987, 1, 1), recalled, dayOf(2019, 5, 9), recalled,
     "recalled_canada", ""},
    {manganese, canada, aesthetic, 0, 0.02, "Mn", dayOf(2019, 5, 10), recalled, open, printed,
     "journal_manganese", "2019 is printed, the day is recalled"},
    {manganese, canada, healthLimit, 0, 0.12, "Mn", dayOf(2019, 5, 10), recalled, open, printed,
     "journal_manganese", "2019 is printed, the day is recalled"},
    {copper, canada, aesthetic, 0, 1, "Cu", dayOf(1992, 1, 1), recalled, open, recalled, "recalled_canada",
     ""},
    {copper, canada, healthLimit, 0, 2, "Cu", dayOf(2019, 6, 1), recalled, open, recalled, "recalled_canada",
     ""},
    {zinc, canada, aesthetic, 0, 5, "Zn", dayOf(1987, 1, 1), recalled, open, recalled, "recalled_canada", ""},
    {aluminum, canada, treatmentGoal, 0, 0.1, "Al", dayOf(1998, 1, 1), recalled, open, recalled,
     "recalled_canada", "operational guidance where alum is fed"},
    {aluminum, canada, healthLimit, 0, 2.9, "Al", dayOf(2021, 3, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {arsenic, canada, healthLimit, 0, 0.025, "As", dayOf(1989, 1, 1), recalled, dayOf(2006, 4, 30), recalled,
     "recalled_canada", ""},
    {arsenic, canada, healthLimit, 0, 0.010, "As", dayOf(2006, 5, 1), recalled, open, printed,
     "canada_arsenic", "as low as reasonably achievable; May 2006 is printed, the day is recalled"},
    {lead, canada, healthLimit, 0, 0.01, "Pb", dayOf(1992, 1, 1), recalled, dayOf(2019, 3, 7), recalled,
     "recalled_canada", ""},
    {lead, canada, healthLimit, 0, 0.005, "Pb", dayOf(2019, 3, 8), printed, open, printed, "canada_lead_2019",
     "total lead at the tap; as low as reasonably achievable"},
    {uranium, canada, healthLimit, 0, 0.02, "U", dayOf(2001, 1, 1), recalled, open, printed, "canada_uranium",
     "confirmed again by Health Canada"},
    {barium, canada, healthLimit, 0, 1.0, "Ba", dayOf(1990, 1, 1), recalled, dayOf(2019, 12, 31), recalled,
     "recalled_canada", ""},
    {barium, canada, healthLimit, 0, 2.0, "Ba", dayOf(2020, 1, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {strontium, canada, healthLimit, 0, 7.0, "Sr", dayOf(2019, 5, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {sodium, canada, aesthetic, 0, 200, "Na", dayOf(1992, 1, 1), recalled, open, recalled, "recalled_canada",
     ""},
    {chloride, canada, aesthetic, 0, 250, "Cl", dayOf(1987, 1, 1), recalled, open, printed, "canada_open",
     ""},
    {sulfate, canada, aesthetic, 0, 500, "SO4", dayOf(1994, 1, 1), recalled, open, printed, "canada_open",
     "above it the health authority is to be told"},
    {sulfide, canada, aesthetic, 0, 0.05, "H2S", dayOf(1992, 1, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {fluoride, canada, healthLimit, 0, 1.5, "F", dayOf(1996, 1, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {nitrate, canada, healthLimit, 0, 45, "NO3", dayOf(1987, 1, 1), recalled, open, printed, "canada_open",
     "one limit in two bases"},
    {nitrate, canada, healthLimit, 0, 10, "N", dayOf(1987, 1, 1), recalled, open, printed, "canada_open",
     "one limit in two bases"},
    {nitrite, canada, healthLimit, 0, 3, "NO2", dayOf(1987, 1, 1), recalled, open, recalled,
     "recalled_canada", "one limit in two bases"},
    {nitrite, canada, healthLimit, 0, 1, "N", dayOf(1987, 1, 1), recalled, open, recalled, "recalled_canada",
     "one limit in two bases"},
    {dissolvedSolids, canada, aesthetic, 0, 500, "TDS", dayOf(1991, 1, 1), recalled, open, recalled,
     "recalled_canada", ""},
    {ph, canada, aesthetic, 6.5, 8.5, "", dayOf(1987, 1, 1), recalled, dayOf(2014, 12, 31), recalled,
     "recalled_canada", ""},
    {ph, canada, aesthetic, 7.0, 10.5, "", dayOf(2015, 1, 1), recalled, open, recalled, "recalled_canada",
     "operational guidance"},
    {color, canada, aesthetic, 0, 15, "", dayOf(1987, 1, 1), recalled, open, printed, "canada_open", ""},
    {totalColiform, canada, healthLimit, 0, 0, "", dayOf(2006, 1, 1), recalled, open, recalled,
     "recalled_canada", "none in 100 mL"},
    {eColi, canada, healthLimit, 0, 0, "", dayOf(2006, 1, 1), recalled, open, recalled, "recalled_canada",
     "none in 100 mL"},
    // World Health Organization
    {iron, who, aesthetic, 0, 0.3, "Fe", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who",
     "taste and stains; no limit for health"},
    {manganese, who, guideline, 0, 0.5, "Mn", dayOf(1996, 1, 1), yearOfSource, dayOf(2003, 12, 31), printed,
     "fao_who", "provisional"},
    {manganese, who, guideline, 0, 0.4, "Mn", dayOf(2004, 1, 1), recalled, dayOf(2011, 6, 30), printed,
     "frisbie_2012", "dropped in 2011"},
    {manganese, who, guideline, 0, noLimit, "Mn", dayOf(2011, 7, 1), recalled, dayOf(2022, 3, 20), printed,
     "frisbie_2012", "no value between the two"},
    {manganese, who, guideline, 0, 0.08, "Mn", dayOf(2022, 3, 21), recalled, open, printed, "who_2022_review",
     "provisional, for bottle-fed infants"},
    {copper, who, guideline, 0, 2, "Cu", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "provisional at first"},
    {zinc, who, aesthetic, 0, 3, "Zn", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who", ""},
    {aluminum, who, aesthetic, 0, 0.2, "Al", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who", ""},
    {arsenic, who, guideline, 0, 0.01, "As", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "provisional"},
    {lead, who, guideline, 0, 0.01, "Pb", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "provisional since 2011 [recalled]"},
    {uranium, who, guideline, 0, 0.002, "U", dayOf(1998, 1, 1), yearOfSource, dayOf(2003, 12, 31), printed,
     "fao_who", "provisional"},
    {uranium, who, guideline, 0, 0.015, "U", dayOf(2004, 1, 1), recalled, dayOf(2011, 6, 30), recalled,
     "recalled_who", "provisional"},
    {uranium, who, guideline, 0, 0.03, "U", dayOf(2011, 7, 1), recalled, open, recalled, "recalled_who",
     "provisional"},
    {barium, who, guideline, 0, 0.7, "Ba", dayOf(1996, 1, 1), yearOfSource, dayOf(2016, 12, 31), printed,
     "who_1996_extract", ""},
    {barium, who, guideline, 0, 1.3, "Ba", dayOf(2017, 1, 1), recalled, open, printed, "who_2022_review", ""},
    {sodium, who, aesthetic, 0, 200, "Na", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who",
     "taste"},
    {chloride, who, aesthetic, 0, 250, "Cl", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who",
     "taste"},
    {sulfate, who, aesthetic, 0, 250, "SO4", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who",
     "taste"},
    {sulfide, who, aesthetic, 0, 0.05, "H2S", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who",
     "taste and smell from 0.05 to 0.1"},
    {fluoride, who, guideline, 0, 1.5, "F", dayOf(1996, 1, 1), yearOfSource, open, printed,
     "who_1996_extract", ""},
    {nitrate, who, guideline, 0, 50, "NO3", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "short exposure of infants"},
    {nitrite, who, guideline, 0, 3, "NO2", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "short exposure of infants; 1998 also 0.2 for long exposure, provisional, dropped since [recalled]; "
     "parts of the limits of nitrate and nitrite together at most 1 [recalled]"},
    {chlorine, who, guideline, 0, 5, "Cl2", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who", ""},
    {dissolvedSolids, who, aesthetic, 0, 1000, "TDS", dayOf(1993, 1, 1), recalled, open, recalled,
     "recalled_who", "taste"},
    {color, who, aesthetic, 0, 15, "", dayOf(1993, 1, 1), recalled, open, recalled, "recalled_who", ""},
    {eColi, who, guideline, 0, 0, "", dayOf(1996, 1, 1), yearOfSource, open, printed, "fao_who",
     "none in 100 mL"},
};
inline constexpr int rowCount = static_cast<int>(sizeof table / sizeof table[0]);

} // namespace limits
