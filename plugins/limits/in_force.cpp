/// The limit in force on a day: its value, its kind, since when, and the strictest of all jurisdictions.
#include "limits.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

constexpr Places asFirstAndThird{1, 3}, asFirstAndSecond{1, 2};

const Limit *numberInForce(const Asked &what, int place, int purpose, double day)
{
    const Limit *row = inForce(what, place, static_cast<Purpose>(purpose), day);
    return row && row->high < noLimit ? row : nullptr;
}

double limitInForce(int substance, int place, double date, int purpose, Reply &reply)
{
    const Asked what = asked(substance);
    const Limit *row = numberInForce(what, place, purpose, date);
    if (!row)
        return refuseNone(what, place, static_cast<Purpose>(purpose), date, asFirstAndThird, reply);
    cautionsOf(*row, date, reply);
    reply.reason(nameOf(what) + ": " + limitWords(*row, what));
    return inBasis(row->high, *row, what);
}

int limitKind(int substance, int place, double date, int purpose, Reply &reply)
{
    const Asked what = asked(substance);
    const Limit *row = inForce(what, place, static_cast<Purpose>(purpose), date);
    if (!row) {
        reply.reason("the table has none for " + nameOf(what) + " of " + placeWords[place] + " on " +
                     dateWords(date));
        return noKind;
    }
    cautionsOf(*row, date, reply);
    reply.reason(nameOf(what) + ": " + limitWords(*row, what));
    return row->high < noLimit ? row->kind : noKind;
}

double limitSince(int substance, int place, double date, int purpose, Reply &reply)
{
    const Asked what = asked(substance);
    const Limit *row = numberInForce(what, place, purpose, date);
    if (!row)
        return refuseNone(what, place, static_cast<Purpose>(purpose), date, asFirstAndThird, reply);
    cautionsOf(*row, date, reply);
    if (row->day != printed)
        reply.caution("day_recalled",
                      row->day == recalled
                          ? "this day is known from memory: look it up before it decides"
                          : "this is the year of the source that prints the limit; it may be older");
    reply.reason(nameOf(what) + ": " + limitWords(*row, what));
    return row->from;
}

double strictestHealthLimit(int substance, double date, Reply &reply)
{
    const Asked what = asked(substance);
    const Limit *row = strictest(what, forHealth, date);
    if (!row) {
        bool known = false;
        for (const Limit &any : table)
            known = known || (any.item == what.item && purposeOf(any.kind) == forHealth);
        return known ? reply.refuse(asFirstAndSecond.date,
                                    "no jurisdiction of the table had a health limit for " + nameOf(what) +
                                        " on " + dateWords(date) + ": check the date")
                     : reply.refuse(asFirstAndSecond.what,
                                    "the table has no health limit for " + nameOf(what) +
                                        ": ask limit_in_force for the aesthetic objective");
    }
    cautionsOf(*row, date, reply);
    reply.reason("strictest for " + nameOf(what) + ": " + limitWords(*row, what));
    return inBasis(row->high, *row, what);
}

constexpr puteal_parameter takes[] = {substanceTaken, placeTaken, dateTaken, purposeTaken};
constexpr puteal_parameter strictestTakes[] = {substanceTaken, dateTaken};
constexpr puteal_caution sinceCautions[] = {
    tableCautions[0],
    tableCautions[1],
    caution("day_recalled", "a day that the source of the limit does not print"),
};

constexpr puteal_example limitExamples[] = {
    example("limit_in_force(\"iron\", \"US\", 2026-10-12, \"aesthetic\")", "0.3 mg/L as Fe", 1e-12,
            "published", "cfr143_3"),
    example("limit_in_force(\"iron\", \"Canada\", 2024-12-27, \"aesthetic\")", "0.3 mg/L as Fe", 1e-12,
            "published", "canada_open"),
    example("limit_in_force(\"iron\", \"Canada\", 2024-12-28, \"aesthetic\")", "0.1 mg/L as Fe", 1e-12,
            "published", "canada_iron_2024"),
    example("limit_in_force(\"arsenic\", \"US\", 2006-01-22)", "0.05 mg/L as As", 1e-12, "published",
            "cfr141_11"),
    example("limit_in_force(\"arsenic\", \"US\", 2006-01-23)", "0.01 mg/L as As", 1e-12, "published",
            "epa_arsenic"),
    example("limit_in_force(\"lead\", \"US\", 2027-10-31)", "0.015 mg/L as Pb", 1e-12, "published",
            "fr_lead_2024"),
    example("limit_in_force(\"lead\", \"US\", 2027-11-01)", "0.010 mg/L as Pb", 1e-12, "published",
            "fr_lead_2024"),
    example("limit_in_force(\"manganese\", \"US\", 2026-10-12, \"advisory\")", "0.3 mg/L as Mn", 1e-12,
            "published", "drinktap_manganese"),
    example("limit_in_force(\"manganese\", \"Canada\", 2026-10-12)", "0.12 mg/L as Mn", 1e-12, "published",
            "journal_manganese"),
    example("limit_in_force(\"nitrate as NO3\", \"WHO\", 2026-10-12)", "50 mg/L as NO3", 1e-12, "published",
            "fao_who"),
    example("limit_in_force(\"nitrate as N\", \"WHO\", 2026-10-12)", "11.2952 mg/L as N", 1e-5, "computed",
            "fao_who"),
};
constexpr puteal_example limitRefusals[] = {
    refusal("limit_in_force(\"iron\", \"US\", 2026-10-12)",
            "the table has no health limit for iron of US: ask another purpose or jurisdiction"),
    refusal("limit_in_force(\"lead\", \"US\", 1960-01-01)",
            "the table knows no health limit for lead of US before 1977-06-24: check the date 1960-01-01"),
    refusal("limit_in_force(\"manganese\", \"WHO\", 2015-05-01)",
            "there was no health limit for manganese of WHO on 2015-05-01: ask another jurisdiction"),
    refusal("limit_in_force(\"lead\", \"US\", 2026)",
            "limit_in_force takes date as a date, not 2026 (a pure number)"),
};
constexpr puteal_example kindExamples[] = {
    example("limit_kind(\"iron\", \"US\", 2026-10-12, \"aesthetic\")", "aesthetic objective", 0, "published",
            "cfr143_3"),
    example("limit_kind(\"lead\", \"US\", 2026-10-12)", "action level", 0, "published", "fr_lead_2024"),
    example("limit_kind(\"iron\", \"US\", 2026-10-12)", "none", 0, "computed", "cfr143_3"),
    example("limit_kind(\"manganese\", \"WHO\", 2015-05-01)", "none", 0, "published", "frisbie_2012"),
    example("limit_kind(\"lead\", \"US\", 2028-01-01)", "action level", 0, "published", "fr_lead_2024"),
};
constexpr puteal_example kindRefusals[] = {
    refusal("limit_kind(\"iron\", \"US\", 20 day)", "limit_kind takes date as a date, not 20 day"),
};
constexpr puteal_example sinceExamples[] = {
    example("limit_since(\"iron\", \"Canada\", 2026-10-12, \"aesthetic\")", "2024-12-28", 0, "published",
            "canada_iron_2024"),
    example("limit_since(\"arsenic\", \"US\", 2026-10-12)", "2006-01-23", 0, "published", "epa_arsenic"),
    example("limit_since(\"uranium\", \"US\", 2026-10-12)", "2003-12-08", 0, "published", "fr_radionuclides"),
    example("limit_since(\"lead\", \"US\", 2027-11-01)", "2027-11-01", 0, "published", "fr_lead_2024"),
};
constexpr puteal_example sinceRefusals[] = {
    refusal("limit_since(\"sulfate\", \"US\", 2026-10-12)",
            "the table has no health limit for sulfate of US: ask another purpose or jurisdiction"),
};
constexpr puteal_example strictestExamples[] = {
    example("strictest_health_limit(\"nitrate as N\", 2026-10-12)", "10 mg/L as N", 1e-12, "published",
            "cfr265_iii"),
    example("strictest_health_limit(\"nitrite as NO2\", 2026-10-12)", "3 mg/L as NO2", 1e-12, "published",
            "fao_who"),
    example("strictest_health_limit(\"nitrite as N\", 2026-10-12)", "0.913401 mg/L as N", 1e-5, "computed",
            "fao_who"),
    example("strictest_health_limit(\"manganese\", 2026-10-12)", "0.08 mg/L as Mn", 1e-12, "published",
            "who_2022_review"),
    example("strictest_health_limit(\"lead\", 2026-10-12)", "0.005 mg/L as Pb", 1e-12, "published",
            "canada_lead_2019"),
    example("strictest_health_limit(\"uranium\", 2026-10-12)", "0.02 mg/L as U", 1e-12, "published",
            "canada_uranium"),
};
constexpr puteal_example strictestRefusals[] = {
    refusal("strictest_health_limit(\"iron\", 2026-10-12)",
            "the table has no health limit for iron: ask limit_in_force for the aesthetic objective"),
    refusal("strictest_health_limit(\"lead\", 1970-01-01)",
            "no jurisdiction of the table had a health limit for lead on 1970-01-01: check the date"),
};

} // namespace

constinit const puteal_function limitInForceRow =
    Function("limit_in_force", "Drinking-water limit in force on a day",
             "The highest value allowed by a jurisdiction on the day asked for, from a dated table. "
             "why(cell) names kind, "
             "jurisdiction, day and source.",
             call<limitInForce>)
        .takes(takes)
        .gives("mg/L as 'substance", "the limit in force")
        .by("row of docs/limits.md whose days hold the date")
        .from(tableSources)
        .shownBy(limitExamples)
        .refusing(limitRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function limitKindRow =
    Function("limit_kind", "Kind of the limit in force",
             "What kind of limit a jurisdiction has on the day asked for, or none; why(cell) names value, "
             "day and source.",
             call<limitKind>)
        .takes(takes)
        .givesOneOf(kindWords, "kind of the limit")
        .by("row of docs/limits.md whose days hold the date")
        .from(tableSources)
        .shownBy(kindExamples)
        .refusing(kindRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function limitSinceRow =
    Function("limit_since", "Day from which the limit is in force",
             "Since when the limit that holds on the day asked for is in force.", call<limitSince>)
        .takes(takes)
        .givesDate("first day of the limit")
        .by("row of docs/limits.md whose days hold the date")
        .from(tableSources)
        .shownBy(sinceExamples)
        .refusing(sinceRefusals)
        .warning(sinceCautions)
        .safely(tableSafety);

constinit const puteal_function strictestHealthLimitRow =
    Function("strictest_health_limit", "Strictest health limit of all jurisdictions",
             "The lowest health limit, action level or guideline that any jurisdiction of the table has in "
             "force on the "
             "day asked for; advisories and treatment goals do not count.",
             call<strictestHealthLimit>)
        .takes(strictestTakes)
        .gives("mg/L as 'substance", "the lowest of the limits in force")
        .by("least of the rows of docs/limits.md for health whose days hold the date")
        .from(tableSources)
        .shownBy(strictestExamples)
        .refusing(strictestRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

} // namespace limits
