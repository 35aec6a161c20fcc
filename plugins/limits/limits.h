/// What the files of the limits plugin share: what a formula can ask for, the row in force on a day, and its
/// words.
#pragma once

#include <string>
#include <vector>

#include "sdk/plugin.h"
#include "table.h"

namespace limits
{

/// The words a formula chooses a substance from, and the substance an amount of it is an amount of.
inline constexpr const char *substanceWords[] = {"iron",
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
                                                 "nitrate as N",
                                                 "nitrate as NO3",
                                                 "nitrite as N",
                                                 "nitrite as NO2",
                                                 "chlorine residual",
                                                 "dissolved solids",
                                                 nullptr};
inline constexpr const char *substances[] = {"Fe", "Mn", "Cu",  "Zn", "Al",  "As",  "Pb",
                                             "U",  "Ba", "Sr",  "Na", "Cl",  "SO4", "H2S",
                                             "F",  "N",  "NO3", "N",  "NO2", "Cl2", "TDS"};
inline constexpr Item items[] = {iron,    manganese, copper,         zinc,      aluminum, arsenic,
                                 lead,    uranium,   barium,         strontium, sodium,   chloride,
                                 sulfate, sulfide,   fluoride,       nitrate,   nitrate,  nitrite,
                                 nitrite, chlorine,  dissolvedSolids};

/// What is asked: an item, and the substance its amounts are told in ("" where there is none).
struct Asked {
    Item item;
    const char *substance;
};
inline Asked asked(int choice)
{
    return {items[choice], substances[choice]};
}
inline std::string nameOf(const Asked &what)
{
    return itemNames[what.item];
}

/// The row in force on a day; a row printed in the asked basis comes before one that is converted. Null where
/// the table has none.
const Limit *inForce(const Asked &what, int place, Purpose purpose, double day);
/// The strictest of all places; rows that say "none" do not count.
const Limit *strictest(const Asked &what, Purpose purpose, double day);
/// A limit in the basis that is asked for.
double inBasis(double value, const Limit &row, const Asked &what);

/// "0.12 mg/L as Mn", "15 CU", "6.5 to 8.5", "none in 100 mL".
std::string valueWords(const Limit &row, const Asked &what);
/// "health limit 0.12 mg/L as Mn (Canada, in force from 2019-05-10, day recalled; source journal_manganese)".
std::string limitWords(const Limit &row, const Asked &what);
/// Where a function takes what is asked and the day, for the span of a refusal.
struct Places {
    std::uint32_t what, date;
};
/// Refuses because nothing is in force: too early, withdrawn, or not in the table at all.
double refuseNone(const Asked &what, int place, Purpose purpose, double day, const Places &at,
                  puteal::sdk::Reply &reply);
/// Refuses a day before any limit of the table for what is asked: as a rule a slip of the year.
bool refusedTooEarly(const Asked &what, int place, double day, std::uint32_t at, puteal::sdk::Reply &reply);
/// Cautions that belong to a row read on a day: newer than the table, known from memory.
void cautionsOf(const Limit &row, double day, puteal::sdk::Reply &reply);
void laterCaution(double day, puteal::sdk::Reply &reply);
void recalledCaution(const Limit &row, puteal::sdk::Reply &reply);

inline constexpr puteal_caution tableCautions[] = {
    puteal::sdk::caution("later_than_table", "a day after the table was last kept (2026-11-26)"),
    puteal::sdk::caution("recalled", "a limit that is known from memory and not confirmed in a source"),
};

/// Parameters all functions over the table share; names and order stay for good.
inline constexpr puteal::sdk::Parameter substanceTaken =
    puteal::sdk::Parameter("substance", "", "what the limit is of, with its basis")
        .oneOf(substanceWords, substances);
inline constexpr puteal::sdk::Parameter placeTaken =
    puteal::sdk::Parameter("jurisdiction", "", "whose limit").oneOf(placeWords);
inline constexpr puteal::sdk::Parameter dateTaken =
    puteal::sdk::Parameter(
        "date", "",
        "day for which the limit is asked: today for a decision, an earlier day for what held then")
        .date();
inline constexpr puteal::sdk::Parameter purposeTaken =
    puteal::sdk::Parameter("purpose", "",
                           "health: limits, action levels and guidelines; advisory; aesthetic: taste, "
                           "stains, smell; treatment goal")
        .oneOf(purposeWords)
        .otherwise(forHealth, "T");

inline constexpr const char tableSafety[] =
    "Limits bind public supplies; for a private well they are targets. Being below the public limit says "
    "nothing "
    "about what was not tested. The health department and local rules decide over this table.";

/// Every source of the table, for functions that answer from all of it; and with common practice beside them.
extern const char *const tableSources[], *const judgedSources[];

extern const puteal_function limitInForceRow, limitKindRow, limitSinceRow, strictestHealthLimitRow;
extern const puteal_function phLimitLowRow, phLimitHighRow, colorLimitRow, odorLimitRow;
extern const puteal_function acceptanceRow, acceptancePhRow, acceptanceColorRow, acceptanceOdorRow,
    acceptanceBacteriaRow;
extern const puteal_function healthReferralRow, healthFindingRow, healthContactRow;

} // namespace limits
