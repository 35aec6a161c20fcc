/// pH between its two ends, and bacteria that must not be found at all.
#include "acceptance.h"

using namespace puteal::sdk;

namespace limits
{
namespace
{

double acceptancePh(const Argument &value, int place, double date, double near, Reply &reply)
{
    const Asked what{ph, ""};
    if (refusedTooEarly(what, place, date, 3, reply))
        return std::nan("");
    Acceptance found;
    const Limit *row = inForce(what, place, forAesthetics, date);
    if (!row)
        return found.say(what, place, date, reply);
    found.uses(*row);
    const double x = value.number();
    const std::string words = "pH " + value.shown(), limited = limitWords(*row, what);
    if (value.missing())
        found.add(untested, "pH was not tested");
    else if (lessThan(x, row->low) || lessThan(row->high, x))
        found.add(aestheticOver, words + " is outside the " + limited);
    else if (lessThan(x, row->low + near) || lessThan(row->high - near, x))
        found.add(close, words + " is inside but close to an end of the " + limited);
    else
        found.add(under, words + " is inside the " + limited);
    return found.say(what, place, date, reply);
}

/// Counts of 100 mL are whole: a reading below 1 is none.
enum class Found { none, some, unclear, untested };
Found foundIn(const Argument &count)
{
    if (count.missing())
        return Found::untested;
    if (count.below())
        return atMost(count.number(), 1.0) ? Found::none : Found::unclear;
    return count.above() || count.number() > 0.0 ? Found::some : Found::none;
}

void judgeBacteria(Item item, Found count, const std::string &shown, int place, double date,
                   Acceptance &found)
{
    const Asked what{item, ""};
    const Limit *row = inForce(what, place, forHealth, date);
    if (!row) {
        if (count == Found::some) // of the group: every place of the table limits E. coli
            found.add(unlimited, nameOf(what) + " " + shown + " found, " + placeWords[place] +
                                     " has no limit for it: inspect the wellhead, disinfect, test again");
        return;
    }
    found.uses(*row);
    const std::string limited = limitWords(*row, what);
    switch (count) {
    case Found::none:
        found.add(under, nameOf(what) + ": none found, " + limited);
        break;
    case Found::some:
        found.add(healthOver, nameOf(what) + " " + shown + " is above the " + limited +
                                  (item == eColi ? ": do not drink it, call the health department"
                                                 : ": inspect the wellhead, disinfect, test again"));
        break;
    case Found::unclear:
        found.add(unclear, nameOf(what) + " " + shown + " does not show whether there is none; test 100 mL");
        break;
    case Found::untested:
        found.add(untested, nameOf(what) + " was not tested");
        break;
    }
}

double acceptanceBacteria(const Argument &coliform, const Argument &coli, int place, double date,
                          Reply &reply)
{
    const Found all = foundIn(coliform);
    // E. coli are coliform bacteria: where there are none of the group there are none of the kind.
    const Found kind = coli.missing() && all == Found::none ? Found::none : foundIn(coli);
    if (all == Found::none && kind == Found::some)
        return reply.refuse(
            1, "E. coli are coliform bacteria: none of the group beside some of the kind cannot be, "
               "look at the report again");
    if (refusedTooEarly({eColi, ""}, place, date, 4, reply))
        return std::nan("");
    Acceptance found;
    // Found E. coli decide alone; an untested group then hides nothing.
    if (!(coliform.missing() && kind == Found::some))
        judgeBacteria(totalColiform, all, coliform.shown(), place, date, found);
    judgeBacteria(eColi, kind, coli.shown(), place, date, found);
    return found.say({totalColiform, ""}, place, date, reply);
}

constexpr puteal_parameter phTakes[] = {
    Parameter("value", "", "pH measured at the site; blank is a missing test")
        .hard(0, 14)
        .usual(5, 10)
        .mayBeMissing(),
    placeTaken,
    dateTaken,
    Parameter("near", "", "width of the band inside an end that counts as near")
        .hard(0, 2)
        .usual(0.1, 0.5)
        .otherwise(0.2, "T"),
};
constexpr puteal_parameter bacteriaTakes[] = {
    Parameter("total_coliform", "cfu/100mL",
              "coliform bacteria counted or most probable; blank is a missing test")
        .hard(0, 1000000)
        .usual(0, 2420)
        .mayBeMissing()
        .mayBeBounded(),
    Parameter("e_coli", "cfu/100mL",
              "E. coli counted or most probable; blank is a missing test unless there is no coliform")
        .hard(0, 1000000)
        .usual(0, 2420)
        .mayBeMissing()
        .mayBeBounded(),
    placeTaken,
    dateTaken,
};
constexpr puteal_example phExamples[] = {
    example("acceptance_ph(6.2, \"US\", 2026-10-12)", "aesthetic limit exceeded", 0, "published", "cfr143_3"),
    example("acceptance_ph(6.6, \"US\", 2026-10-12)", "near a limit", 0, "published", "cfr143_3"),
    example("acceptance_ph(7.3, \"US\", 2026-10-12)", "below the public limit", 0, "published", "cfr143_3"),
    example("acceptance_ph(6.8, \"Canada\", 2026-10-12)", "aesthetic limit exceeded", 0, "memory",
            "recalled_canada"),
    example("acceptance_ph(6.8, \"WHO\", 2026-10-12)", "no limit", 0, "memory", "recalled_who"),
};
constexpr puteal_example phRefusals[] = {
    refusal("acceptance_ph(73, \"US\", 2026-10-12)", "`value` must be at most 14; it is 73"),
};
constexpr puteal_example bacteriaExamples[] = {
    example("acceptance_bacteria(3 cfu/100mL, 1 cfu/100mL, \"WHO\", 2026-10-12)", "health limit exceeded", 0,
            "published", "fao_who"),
    // the table for all water to drink names E. coli alone
    example("acceptance_bacteria(3 cfu/100mL, 0 cfu/100mL, \"WHO\", 2026-10-12)", "no limit", 0, "published",
            "fao_who"),
    example("acceptance_bacteria(3 cfu/100mL, 0 cfu/100mL, \"US\", 2026-10-12)", "health limit exceeded", 0,
            "memory", "recalled_us"),
    example("count: <1 cfu/100mL; acceptance_bacteria(count[1], count[1], \"Canada\", 2026-10-12)",
            "below the public limit", 0, "memory", "recalled_canada"),
    example("count: <10 cfu/100mL; acceptance_bacteria(count[1], count[1], \"WHO\", 2026-10-12)",
            "cannot tell", 0, "published", "fao_who"),
};
constexpr puteal_example bacteriaRefusals[] = {
    refusal("acceptance_bacteria(0 cfu/100mL, 1 cfu/100mL, \"US\", 2026-10-12)",
            "E. coli are coliform bacteria: none of the group beside some of the kind cannot be, look at the "
            "report again"),
};

} // namespace

constinit const puteal_function acceptancePhRow =
    Function("acceptance_ph", "pH against the limits in force",
             "Holds a pH against the range a jurisdiction asks for on the day.", call<acceptancePh>)
        .takes(phTakes)
        .givesOneOf(acceptanceWords, "finding, with range and value in why(cell)")
        .by("outside low to high exceeded; within near of an end near; else below the public limit")
        .from(judgedSources)
        .shownBy(phExamples)
        .refusing(phRefusals)
        .warning(tableCautions)
        .safely(tableSafety);

constinit const puteal_function acceptanceBacteriaRow =
    Function("acceptance_bacteria", "Bacteria against the limits in force",
             "Holds counts of coliform bacteria and E. coli against what a jurisdiction allows on the day: "
             "none in 100 mL. "
             "A reading below 1 is none, since counts are whole.",
             call<acceptanceBacteria>)
        .takes(bacteriaTakes)
        .givesOneOf(acceptanceWords, "finding, with limit and count in why(cell)")
        .by("any found where none is allowed: exceeded; coliform found where only E. coli is limited: no "
            "limit; a "
            "bound above 1 cannot tell; blank is a missing test")
        .from(judgedSources)
        .shownBy(bacteriaExamples)
        .refusing(bacteriaRefusals)
        .warning(tableCautions)
        .safely("E. coli in the water: do not drink it, not even for brushing teeth; bottled or boiled water "
                "until the health "
                "department says otherwise. One test without bacteria says nothing about another day.");

} // namespace limits
