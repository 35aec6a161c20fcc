/// A water's value against the limits in force on a day. A blank is a missing test, a reading whose bound is
/// above the limit cannot tell.
#include "acceptance.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

/// One limit from above, in words that name limit and value.
void judge(const Asked &what, const Reading &reading, const Limit &row, double nearPart, Acceptance &found)
{
    const double limit = inBasis(row.high, row, what);
    const std::string value = nameOf(what) + " " + reading.shown, limited = limitWords(row, what);
    switch (sideOf(reading, limit, nearPart * limit)) {
    case Side::over:
        found.add(overGrade(purposeOf(row.kind)), value + " is above the " + limited);
        break;
    case Side::unclear:
        found.add(unclear,
                  value + " does not show whether it is at most the " + limited + "; ask for a finer test");
        break;
    case Side::close:
        found.add(close, value + " is close to the " + limited);
        break;
    case Side::under:
        found.add(under, value + " is below the " + limited);
        break;
    }
    found.uses(row);
}

/// Where a function takes the day, for the span of a refusal.
constexpr std::uint32_t dateOfSubstance = 4, dateOfOne = 3;

double against(const Asked &what, const Argument &value, int place, double date, double nearPart,
               std::uint32_t dateAt, Reply &reply)
{
    if (refusedTooEarly(what, place, date, dateAt, reply))
        return std::nan("");
    const Reading reading(value);
    if (what.item == lead && reading.known && lessThan(0, reading.least))
        reply.caution(
            "lead_found",
            "no amount of lead is known to do no harm: flush before drinking, test a first draw, look "
            "at the plumbing");
    Acceptance found;
    for (const Purpose purpose : {forHealth, forAdvice, forAesthetics}) {
        const Limit *row = inForce(what, place, purpose, date);
        if (!row || row->high == noLimit)
            continue;
        if (!reading.known)
            found.add(untested, nameOf(what) + " was not tested");
        else
            judge(what, reading, *row, nearPart, found);
    }
    return found.say(what, place, date, reply);
}

double acceptance(int substance, const Argument &value, int place, double date, double near, Reply &reply)
{
    return against(asked(substance), value, place, date, near / 100.0, dateOfSubstance, reply);
}

template<Item item>
double acceptanceOf(const Argument &value, int place, double date, double near, Reply &reply)
{
    return against({item, ""}, value, place, date, near / 100.0, dateOfOne, reply);
}

constexpr Parameter placeNear = Parameter("near", "%", "part of the limit below it that counts as near")
                                    .hard(0, 100)
                                    .usual(5, 50)
                                    .otherwise(20, "T");
constexpr puteal_parameter takes[] = {
    substanceTaken,
    Parameter("value", "mg/L as 'substance", "the water's value; blank is a missing test")
        .hard(0, 1000000)
        .usual(0, 5000)
        .mayBeMissing()
        .mayBeBounded(),
    placeTaken,
    dateTaken,
    placeNear,
};
constexpr puteal_parameter colorTakes[] = {
    Parameter("value", "CU", "color of the water; blank is a missing test")
        .hard(0, 10000)
        .usual(0, 500)
        .mayBeMissing()
        .mayBeBounded(),
    placeTaken,
    dateTaken,
    placeNear,
};
constexpr puteal_parameter odorTakes[] = {
    Parameter("value", "TON", "threshold odor number; blank is a missing test")
        .hard(0, 10000)
        .usual(0, 200)
        .mayBeMissing()
        .mayBeBounded(),
    placeTaken,
    dateTaken,
    placeNear,
};

constexpr puteal_example examples[] = {
    example("acceptance(\"iron\", 0.25 mg/L as Fe, \"US\", 2026-10-12)", "near a limit", 0, "published",
            "cfr143_3"),
    example("acceptance(\"iron\", 0.20 mg/L as Fe, \"US\", 2026-10-12)", "below the public limit", 0,
            "published", "cfr143_3"),
    example("acceptance(\"iron\", 0.25 mg/L as Fe, \"Canada\", 2025-06-01)", "aesthetic limit exceeded", 0,
            "published", "canada_iron_2024"),
    example("acceptance(\"iron\", 0.20 mg/L as Fe, \"Canada\", 2024-06-01)", "below the public limit", 0,
            "published", "canada_open"),
    example("acceptance(\"manganese\", 0.20 mg/L as Mn, \"US\", 2026-10-12)", "aesthetic limit exceeded", 0,
            "published", "cfr143_3"),
    example("acceptance(\"manganese\", 0.35 mg/L as Mn, \"US\", 2026-10-12)", "advisory exceeded", 0,
            "published", "drinktap_manganese"),
    example("acceptance(\"manganese\", 0.20 mg/L as Mn, \"Canada\", 2026-10-12)", "health limit exceeded", 0,
            "published", "journal_manganese"),
    example("acceptance(\"lead\", 0.012 mg/L as Pb, \"US\", 2027-10-31, 0 %)", "below the public limit", 0,
            "published", "fr_lead_2024"),
    example("acceptance(\"lead\", 0.012 mg/L as Pb, \"US\", 2027-11-01)", "health limit exceeded", 0,
            "published", "fr_lead_2024"),
    example("acceptance(\"nitrate as NO3\", 50 mg/L as NO3, \"US\", 2026-10-12)", "health limit exceeded", 0,
            "published", "cfr265_iii"),
    example("acceptance(\"nitrate as NO3\", 50 mg/L as NO3, \"WHO\", 2026-10-12, 0 %)",
            "below the public limit", 0, "published", "fao_who"),
    example("acceptance(\"strontium\", 1 mg/L as Sr, \"US\", 2026-10-12)", "no limit", 0, "computed",
            "recalled_us"),
    example("reading: <0.02 mg/L as As; acceptance(\"arsenic\", reading[1], \"US\", 2026-10-12)",
            "cannot tell", 0, "published", "epa_arsenic"),
    example("reading: <0.005 mg/L as As; acceptance(\"arsenic\", reading[1], \"US\", 2026-10-12)",
            "below the public limit", 0, "published", "epa_arsenic"),
};
constexpr puteal_caution cautions[] = {tableCautions[0], tableCautions[1],
                                       caution("lead_found", "any lead found")};
constexpr puteal_example refusals[] = {
    refusal("acceptance(\"lead\", 0.012 mg/L as Pb, \"US\", 1926-10-12)",
            "the table knows no limit for lead of US before 1977-06-24: check the date 1926-10-12"),
    refusal("acceptance(\"iron\", -1 mg/L as Fe, \"US\", 2026-10-12)",
            "`value` must be at least 0 mg/L; it is -1 mg/L"),
};
constexpr puteal_example colorExamples[] = {
    example("acceptance_color(20 CU, \"US\", 2026-10-12)", "aesthetic limit exceeded", 0, "published",
            "cfr143_3"),
    example("acceptance_color(13 CU, \"Canada\", 2026-10-12)", "near a limit", 0, "published", "canada_open"),
    example("acceptance_color(5 CU, \"WHO\", 2026-10-12)", "below the public limit", 0, "memory",
            "recalled_who"),
};
constexpr puteal_example colorRefusals[] = {
    refusal("acceptance_color(-1 CU, \"US\", 2026-10-12)", "`value` must be at least 0 CU; it is -1 CU"),
};
constexpr puteal_example odorExamples[] = {
    example("acceptance_odor(4 TON, \"US\", 2026-10-12)", "aesthetic limit exceeded", 0, "published",
            "cfr143_3"),
    example("acceptance_odor(2 TON, \"US\", 2026-10-12)", "below the public limit", 0, "published",
            "cfr143_3"),
    example("acceptance_odor(4 TON, \"Canada\", 2026-10-12)", "no limit", 0, "computed", "recalled_canada"),
};
constexpr puteal_example odorRefusals[] = {
    refusal("acceptance_odor(-1 TON, \"US\", 2026-10-12)", "`value` must be at least 0 TON; it is -1 TON"),
};
constexpr puteal_caution odorCautions[] = {tableCautions[0]};
constexpr const char relation[] = "worst over the health, advisory and aesthetic limit in force: above it "
                                  "exceeded; above limit * (1 - near) near; a "
                                  "reading decides only if all it allows agrees; a day before the "
                                  "first limit of the table is refused";

} // namespace

constinit const puteal_function acceptanceRow =
    Function("acceptance", "Value against the limits in force",
             "Holds a test against every limit a jurisdiction has in force on the day asked for. A blank is "
             "a missing test; "
             "a reading whose bound is above the limit cannot tell.",
             call<acceptance>)
        .takes(takes)
        .givesOneOf(acceptanceWords, "finding, with limit, jurisdiction, day, source and value in why(cell)")
        .by(relation)
        .from(judgedSources)
        .shownBy(examples)
        .refusing(refusals)
        .warning(cautions)
        .safely(tableSafety);

constinit const puteal_function acceptanceColorRow =
    Function("acceptance_color", "Color against the limit in force",
             "Holds the color of a water against the limit in force on the day asked for.",
             call<acceptanceOf<color>>)
        .takes(colorTakes)
        .givesOneOf(acceptanceWords, "finding, with limit and value in why(cell)")
        .by(relation)
        .from(judgedSources)
        .shownBy(colorExamples)
        .refusing(colorRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function acceptanceOdorRow =
    Function("acceptance_odor", "Odor against the limit in force",
             "Holds the threshold odor number of a water against the limit in force on the day asked for.",
             call<acceptanceOf<odor>>)
        .takes(odorTakes)
        .givesOneOf(acceptanceWords, "finding, with limit and value in why(cell)")
        .by(relation)
        .from(judgedSources)
        .shownBy(odorExamples)
        .refusing(odorRefusals)
        .warning(odorCautions)
        .safely(tableSafety);

} // namespace limits
