/// General functions about what a value means: conditions, known and missing, reasons, substances, pressures.
#include "functions/general_rows.h"

namespace puteal::general
{
namespace
{

Take conditions()
{
    return Take("x", "", "yes/no ranges and single conditions; blank cells are skipped")
        .rangeOrValue()
        .of(ValueKind::yesNo);
}

void addConditions(std::vector<Row> &rows)
{
    rows.push_back({General::ifError,
                    "if_error",
                    "Otherwise",
                    "x, or the other value where x is an error. Only the value used is worked out.",
                    {Take("x", "'u", "what may fail, of any kind").same(),
                     Take("otherwise", "'u", "the value then, of the same kind").same()},
                    ValueKind::quantity,
                    "'u",
                    "x or the other value",
                    "x, or otherwise where x is an error",
                    {{"if_error(1/0, 5)", "5"}, {"if_error(6 gal/2, 0 gal)", "3 gal"}}});
    rows.push_back({General::within,
                    "within",
                    "Nearly equal",
                    "Yes when a and b differ by no more than the tolerance.",
                    {Take("a", "'u", "one value").readings(), Take("b", "'u", "the other").readings(),
                     Take("tolerance", "'u", "the largest difference, in the same unit")},
                    ValueKind::yesNo,
                    "",
                    "yes or no",
                    "|a - b| <= tolerance",
                    {{"within(7.1, 7, 0.2)", "yes"}, {"within(10 gpg, 12 gpg, 1 gpg)", "no"}}});
    rows.push_back({General::any,
                    "any",
                    "At least one",
                    "Yes when at least one of the conditions holds; none at all gives no.",
                    {conditions()},
                    ValueKind::yesNo,
                    "",
                    "yes or no",
                    "x1 or x2 or ...",
                    {{"any(no, yes)", "yes"}, {"any(no, 2 > 3)", "no"}}});
    rows.push_back({General::all,
                    "all",
                    "Every one",
                    "Yes when every condition holds; none at all gives yes.",
                    {conditions()},
                    ValueKind::yesNo,
                    "",
                    "yes or no",
                    "x1 and x2 and ...",
                    {{"all(yes, 3 > 2)", "yes"}, {"all(yes, no)", "no"}}});
    rows.push_back({General::countTrue,
                    "count_true",
                    "How many hold",
                    "How many of the conditions hold.",
                    {conditions()},
                    ValueKind::quantity,
                    "",
                    "a pure number",
                    "number of x that are yes",
                    {{"count_true(yes, no, yes)", "2"}, {"count_true(1 > 2)", "0"}}});
}

void addKnowledge(std::vector<Row> &rows)
{
    rows.push_back({General::known,
                    "known",
                    "Is there a value",
                    "Yes when the cell holds a value: not blank and not an error. Never an error itself.",
                    {Take("x", "'u", "a cell or expression of any kind").any().missing().bounded()},
                    ValueKind::yesNo,
                    "",
                    "yes or no",
                    "x has a value",
                    {{"known(3 gal)", "yes"}, {"known(1/0)", "no"}}});
    rows.push_back({General::state,
                    "state",
                    "State against the limit",
                    "How a cell stands against its own limit, so that a limit is typed once: within, near, "
                    "outside, no limit, missing test.",
                    {Take("cell", "'u", "a cell, not an expression").any().missing().bounded()},
                    ValueKind::choice,
                    "",
                    "one of the five words",
                    "state of the cell's limit",
                    {},
                    false,
                    generalChoices()});
    rows.push_back(
        {General::because,
         "because",
         "Give a reason",
         "x with these words as its reason; why(cell) reads them.",
         {Take("x", "'u", "the value, of any kind").any(),
          Take("words", "", "the reason, in quotes").of(ValueKind::words)},
         ValueKind::quantity,
         "'u",
         "x",
         "x",
         {{"because(3 gpm, \"measured at the drain\")", "3 gpm"}, {"because(yes, \"seen\")", "yes"}}});
    rows.push_back({General::why,
                    "why",
                    "Read the reason",
                    "The reason of a result: of a choice between two the branch taken, of worst the argument "
                    "that decided.",
                    {Take("x", "'u", "a cell or expression of any kind").any()},
                    ValueKind::words,
                    "",
                    "words, empty where there is no reason",
                    "reason of x",
                    {{"why(because(3, \"three wells\"))", "\"three wells\""}, {"why(3)", "\"\""}}});
    rows.push_back(
        {General::worst,
         "worst",
         "Worst of the choices",
         "The choice that stands last in its list; its reason comes along. Lists stand best first.",
         {Take("x", "", "ranges and single choices of one list; blank cells are refused")
              .rangeOrValue()
              .of(ValueKind::choice)
              .same()},
         ValueKind::choice,
         "",
         "a word of the same list",
         "last of x in the order of the list",
         {}});
}

void addSubstances(std::vector<Row> &rows)
{
    rows.push_back({General::asCaco3,
                    "as_caco3",
                    "As calcium carbonate",
                    "The same number of charges, as an amount of calcium carbonate.",
                    {Take("x", "'u", "an amount of an ion with a charge").bounded()},
                    ValueKind::quantity,
                    "'u",
                    "the amount as CaCO3",
                    "x * (100.086 / 2) / (molar mass / charge)",
                    {{"as_caco3(80 mg/L as Ca)", "199.7824 mg/L as CaCO3"},
                     {"as_caco3(3 mg/L as Fe)", "5.376632 mg/L as CaCO3"}},
                    false,
                    {},
                    1e-6});
    rows.push_back({General::asElement,
                    "as_element",
                    "As the element",
                    "The mass of the named element in a compound: nitrate as nitrogen, sulfide as sulfur.",
                    {Take("x", "'u", "an amount of a compound").bounded()},
                    ValueKind::quantity,
                    "'u",
                    "the amount as its element",
                    "x * molar mass of the element / molar mass of the compound",
                    {{"as_element(44.2664 mg/L as NO3)", "10 mg/L as N"},
                     {"as_element(1.06288 mg/L as H2S)", "1 mg/L as S"}},
                    false,
                    {},
                    1e-5});
    rows.push_back({General::plain,
                    "plain",
                    "Without its substance",
                    "The same number without what it is an amount of.",
                    {Take("x", "'u", "an amount of a substance").bounded()},
                    ValueKind::quantity,
                    "'u",
                    "x without substance",
                    "x",
                    {{"plain(3 mg/L as Fe)", "3 mg/L"}, {"plain(2 lb as NaCl)", "2 lb"}}});
}

void addPressures(std::vector<Row> &rows)
{
    rows.push_back({General::absolute,
                    "absolute",
                    "Absolute pressure",
                    "A gauge pressure as an absolute one, with the pressure of the air around.",
                    {Take("p", "psi", "gauge pressure"),
                     Take("air", "psi_abs", "pressure of the air, 14.696 psi_abs at sea level")},
                    ValueKind::quantity,
                    "psi_abs",
                    "absolute pressure",
                    "p + air",
                    {{"absolute(40 psi, 14.7 psi_abs)", "54.7 psi_abs"},
                     {"absolute(0 psi, 14.7 psi_abs)", "14.7 psi_abs"}}});
    rows.push_back(
        {General::gauge,
         "gauge",
         "Gauge pressure",
         "An absolute pressure as the gauge shows it, against the air around.",
         {Take("p", "psi_abs", "absolute pressure"), Take("air", "psi_abs", "pressure of the air")},
         ValueKind::quantity,
         "psi",
         "gauge pressure",
         "p - air",
         {{"gauge(54.7 psi_abs, 14.7 psi_abs)", "40 psi"}, {"gauge(14.7 psi_abs, 14.7 psi_abs)", "0 psi"}}});
}

} // namespace

std::vector<Row> meaningRows()
{
    std::vector<Row> rows;
    addConditions(rows);
    addKnowledge(rows);
    addSubstances(rows);
    addPressures(rows);
    return rows;
}

} // namespace puteal::general
