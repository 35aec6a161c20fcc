/// What the checker refuses: the whole message, the underlined pieces, and the formulas its fixes make.
#include <QTest>

#include "support/checked_formula.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

/// `marks`: ^ under the wrong piece, ~ under the one it clashes with. `fixes`: the formulas after each fix.
struct Refused {
    const char *rule, *where, *formula, *marks, *message, *fixes;
};

constexpr Refused refused[] = {
    {"hardness and iron do not add: both ways out are told", "", "10 gpg + 1 mg/L as Fe",
     "^^^^^^   ~~~~~~~~~~~~",
     "cannot add 10 gpg (as CaCO3) and 1 mg/L as Fe: different substances; for a softener setting use "
     "compensated_hardness(10 gpg, 1 mg/L as Fe); for the same amount as CaCO3 use as_caco3(1 mg/L as Fe)",
     "compensated_hardness(10 gpg, 1 mg/L as Fe) or 10 gpg + as_caco3(1 mg/L as Fe)"},
    {"the same for cells", "", "hardness + raw_iron", "^^^^^^^^   ~~~~~~~~",
     "cannot add `hardness` (gpg as CaCO3) and `raw_iron` (mg/L as Fe): different substances; for a softener "
     "setting use compensated_hardness(hardness, raw_iron); for the same amount as CaCO3 use "
     "as_caco3(raw_iron)",
     "compensated_hardness(hardness, raw_iron) or hardness + as_caco3(raw_iron)"},
    {"a difference has no softener setting", "", "hardness - raw_iron", "^^^^^^^^   ~~~~~~~~",
     "cannot subtract `raw_iron` (mg/L as Fe) from `hardness` (gpg as CaCO3): different substances; for the "
     "same amount as CaCO3 use as_caco3(raw_iron)",
     "hardness - as_caco3(raw_iron)"},
    {"a bare number beside a unit needs one", "", "5 + 2 gal", "^   ~~~~~",
     "cannot add 5 (a pure number) and 2 gal: give the number a unit, for example 5 gal", "5 gal + 2 gal"},
    {"the unit offered is the other side's", "", "use + 5", "~~~   ^",
     "cannot add `use` (gal/day) and 5 (a pure number): give the number a unit, for example 5 gal/day",
     "use + 5 gal/day"},
    {"the same in a comparison", "", "flow > 5", "~~~~   ^",
     "cannot compare `flow` (gpm) and 5 (a pure number): give the number a unit, for example 5 gpm",
     "flow > 5 gpm"},
    {"a pure cell beside a unit", "", "ph + tank", "^^   ~~~~",
     "cannot add `ph` (a pure number) and `tank` (gal): multiply the pure number by a unit, for example ph * "
     "(1 gal)",
     "ph * (1 gal) + tank"},
    {"units that do not fit at all", "", "use + pressure", "^^^   ~~~~~~~~",
     "cannot add `use` (gal/day) and `pressure` (psi): their units do not fit", ""},
    {"per person beside the whole house", "", "use_per_person + use", "^^^^^^^^^^^^^^   ~~~",
     "cannot add `use_per_person` (gal/(person*day)) and `use` (gal/day); `use_per_person` is per person: "
     "multiply by people",
     "use_per_person * people + use"},
    {"per cartridge beside a time", "", "life + 90 day", "^^^^   ~~~~~~",
     "cannot add `life` (day/cartridge) and 90 day; `life` is per cartridge: write life * (1 cartridge)",
     "life * (1 cartridge) + 90 day"},
    {"a count needs its word", "", "people + 5", "~~~~~~   ^",
     "cannot add `people` (person) and 5 (a pure number): give the number a unit, for example 5 person",
     "people + 5 person"},
    {"iron and manganese by weight", "", "raw_iron + raw_manganese", "^^^^^^^^   ~~~~~~~~~~~~~",
     "cannot add `raw_iron` (mg/L as Fe) and `raw_manganese` (mg/L as Mn): different substances; for iron "
     "and manganese by weight use plain(raw_iron) + plain(raw_manganese)",
     "plain(raw_iron) + plain(raw_manganese)"},
    {"nitrate and nitrogen", "", "nitrate + nitrogen", "^^^^^^^   ~~~~~~~~",
     "cannot add `nitrate` (mg/L as NO3) and `nitrogen` (mg/L as N): different substances; for the amount of "
     "the element use as_element(nitrate)",
     "as_element(nitrate) + nitrogen"},
    {"two forms of one element", "", "nitrate + nitrite", "^^^^^^^   ~~~~~~~",
     "cannot add `nitrate` (mg/L as NO3) and `nitrite` (mg/L as NO2): different substances; for the amount "
     "of the element use as_element(nitrate) + as_element(nitrite)",
     "as_element(nitrate) + as_element(nitrite)"},
    {"sulfide and iron for an oxidant", "", "sulfide + raw_iron", "^^^^^^^   ~~~~~~~~",
     "cannot add `sulfide` (mg/L as H2S) and `raw_iron` (mg/L as Fe): different substances; for what an "
     "oxidant must serve use iron_equivalents(raw_iron, 0 mg/L as Mn, sulfide)",
     "iron_equivalents(raw_iron, 0 mg/L as Mn, sulfide)"},
    {"no row in the table of pairs, no fix", "", "raw_iron + nitrate", "^^^^^^^^   ~~~~~~~",
     "cannot add `raw_iron` (mg/L as Fe) and `nitrate` (mg/L as NO3): different substances", ""},
    {"a literal that does not say of what, in a sum", "", "raw_iron + 3 mg/L", "~~~~~~~~   ^^^^^^",
     "cannot add `raw_iron` (mg/L as Fe) and 3 mg/L: 3 mg/L does not say of what; write 3 mg/L as Fe",
     "raw_iron + 3 mg/L as Fe"},
    {"a cell that does not say of what, in a sum", "", "raw_iron + untold", "^^^^^^^^   ~~~~~~",
     "cannot add `raw_iron` (mg/L as Fe) and `untold` (mg/L): `untold` does not say of what; give it the "
     "unit mg/L as Fe; to leave the substance out use plain(raw_iron)",
     "plain(raw_iron) + untold"},
    {"a cell takes no substance in max", "", "max(raw_iron, untold)", "    ^^^^^^^^  ~~~~~~",
     "cannot compare `raw_iron` (mg/L as Fe) and `untold` (mg/L): `untold` does not say of what; give it the "
     "unit mg/L as Fe; to leave the substance out use plain(raw_iron)",
     "max(plain(raw_iron), untold)"},
    {"nor in a total", "", "sum(raw_iron, untold)", "    ^^^^^^^^  ~~~~~~",
     "cannot add `raw_iron` (mg/L as Fe) and `untold` (mg/L): `untold` does not say of what; give it the "
     "unit mg/L as Fe; to leave the substance out use plain(raw_iron)",
     "sum(plain(raw_iron), untold)"},
    {"two substances compared", "", "lead > 0.01 mg/L as Fe", "^^^^   ~~~~~~~~~~~~~~~",
     "cannot compare `lead` (mg/L as Pb) and 0.01 mg/L as Fe: different substances", ""},
    {"two substances in a function", "", "min(raw_iron, hardness)", "    ^^^^^^^^  ~~~~~~~~",
     "cannot compare `raw_iron` (mg/L as Fe) and `hardness` (gpg as CaCO3): different substances; for the "
     "same amount as CaCO3 use as_caco3(raw_iron)",
     "min(as_caco3(raw_iron), hardness)"},
    {"a mass without its substance over a tagged load", "", "24000 grain / (20 gpg * 300 gal/day)",
     "^^^^^^^^^^^", "`24000 grain` does not say of what: write 24000 grain as CaCO3",
     "24000 grain as CaCO3 / (20 gpg * 300 gal/day)"},
    {"a ratio without its substance below", "", "0.64 mg{Cl2}/mg * raw_iron", "^^^^^^^^^^^^^^^",
     "`0.64 mg{Cl2}/mg` does not say of what: write 0.64 mg{Cl2}/mg{Fe}", "0.64 mg{Cl2}/mg{Fe} * raw_iron"},
    {"an allowance without its substance", "", "5 gpg/(mg/L) * raw_iron", "^^^^^^^^^^^^",
     "`5 gpg/(mg/L)` does not say of what: write 5 gpg/(mg{Fe}/L)", "5 gpg/(mg{Fe}/L) * raw_iron"},
    {"a cell without its substance in a product", "", "allowance * untold", "            ^^^^^^",
     "`untold` (mg/L) does not say of what: give it the unit mg/L as Fe", ""},
    {"a price by weight says of what", "", "salt * $0.3/lb", "       ^^^^^^^",
     "`$0.3/lb` does not say of what: write $0.3/lb as NaCl", "salt * $0.3/lb as NaCl"},
    {"a power with a fraction no unit can carry", "", "flow^1.852", "^^^^ ~~~~~",
     "a power like 1.852 needs a pure number on its left: divide by a unit first, as in (flow / (1 "
     "gpm))^1.852",
     "(flow / (1 gpm))^1.852"},
    {"a power from a cell", "", "tank^ph", "^^^^ ~~",
     "a power like ph needs a pure number on its left: divide by a unit first, as in (tank / (1 gal))^ph",
     "(tank / (1 gal))^ph"},
    {"a power is a pure number", "", "2^flow", "  ^^^^", "a power is a pure number, not `flow` (gpm)", ""},
    {"logarithms take pure numbers", "", "log10(flow)", "      ^^^^",
     "log10 takes x as a pure number, not `flow` (gpm): divide by a unit first, as in flow / (1 gpm)",
     "log10(flow / (1 gpm))"},
    {"product takes pure numbers", "", "product(2, tank)", "           ^^^^",
     "product takes x as a pure number, not `tank` (gal): divide by a unit first, as in tank / (1 gal)",
     "product(2, tank / (1 gal))"},
    {"0 is no temperature", "", "temperature > 0", "^^^^^^^^^^^   ~",
     "cannot compare `temperature` (degF) and 0 (a pure number); 0 is no temperature without its unit: write "
     "0 degF",
     "temperature > 0 degF"},
    {"two temperatures do not add", "", "temperature + 50 degF", "~~~~~~~~~~~   ^^^^^^^",
     "cannot add `temperature` (degF) and 50 degF: both are temperatures; for a difference write 50 "
     "delta_degF",
     "temperature + 50 delta_degF"},
    {"a temperature is not scaled", "", "temperature * 2", "^^^^^^^^^^^   ~",
     "cannot multiply `temperature` (degF): a temperature is a reading on a scale; subtract another "
     "temperature first",
     ""},
    {"nor negated", "", "-temperature", "^^^^^^^^^^^^",
     "cannot negate `temperature` (degF): it is a reading on a scale, not a difference", ""},
    {"nor raised", "", "temperature^2", "^^^^^^^^^^^",
     "cannot raise `temperature` (degF): it is a reading on a scale", ""},
    {"a reading is not taken from a difference", "", "warming - temperature", "~~~~~~~   ^^^^^^^^^^^",
     "cannot subtract `temperature` (degF) from `warming` (delta_degF): a reading is no difference", ""},
    {"a difference is no temperature", "", "temperature > 5 delta_degF", "^^^^^^^^^^^   ~~~~~~~~~~~~",
     "cannot compare `temperature` (degF) and 5 delta_degF; a difference of temperatures is no temperature: "
     "for a temperature write 5 degF",
     "temperature > 5 degF"},
    {"a temperature is no difference", "", "warming > 5 degF", "^^^^^^^   ~~~~~~",
     "cannot compare `warming` (delta_degF) and 5 degF; a temperature is no difference of temperatures: for "
     "a difference write 5 delta_degF",
     "warming > 5 delta_degF"},
    {"abs of a temperature", "", "abs(temperature)", "    ^^^^^^^^^^^",
     "abs takes no temperature: subtract another temperature first", ""},
    {"temperatures have no total", "", "sum(temperature, 50 degF)", "    ^^^^^^^^^^^",
     "sum takes no temperature: subtract another temperature first", ""},
    {"gauge and absolute pressure", "", "pressure > air", "^^^^^^^^   ~~~",
     "cannot compare `pressure` (psi) and `air` (psi_abs); `pressure` is measured against the air: use "
     "absolute(pressure, air)",
     ""},
    {"absolute pressures are divided by each other first", "", "tank * air / (30 psi_abs)", "~~~~   ^^^",
     "cannot multiply `air` (psi_abs): divide absolute pressures by each other first, in parentheses", ""},
    {"a gauge pressure where an absolute one is wanted", "", "gauge(pressure, air)", "      ^^^^^^^^",
     "gauge takes p in psi_abs, not `pressure` (psi); `pressure` is measured against the air: use "
     "absolute(pressure, air)",
     ""},
    {"5 % more of a price", "", "price + 5 %", "~~~~~   ^^^",
     "cannot add `price` ($) and 5 %: for 5 % more write price * (1 + 5 %)", "price * (1 + 5 %)"},
    {"5 % less", "", "price - 5 %", "~~~~~   ^^^",
     "cannot subtract 5 % from `price` ($): for 5 % less write price * (1 - 5 %)", "price * (1 - 5 %)"},
    {"5 % first", "", "5 % + price", "^^^   ~~~~~",
     "cannot add 5 % and `price` ($): for 5 % more write price * (1 + 5 %)", "price * (1 + 5 %)"},
    {"a share in a cell", "", "price + share", "~~~~~   ^^^^^",
     "cannot add `price` ($) and `share` (%): for share more write price * (1 + share)",
     "price * (1 + share)"},
    {"yes/no is not a number", "", "has_softener + 1", "^^^^^^^^^^^^",
     "cannot add `has_softener` (yes/no): yes/no is not a number; to count it write (has_softener ? 1 : 0)",
     "(has_softener ? 1 : 0) + 1"},
    {"nor to be negated", "", "-has_softener", " ^^^^^^^^^^^^",
     "cannot negate `has_softener` (yes/no): yes/no is not a number; to count it write (has_softener ? 1 : "
     "0)",
     "-(has_softener ? 1 : 0)"},
    {"a number is no condition", "", "ph ? 1 : 2", "^^", "before ? stands a yes/no, not `ph` (a pure number)",
     ""},
    {"and takes yes/no", "", "ph and freezes", "^^",
     "on both sides of and stands a yes/no, not `ph` (a pure number)", ""},
    {"both results of one unit", "", "has_softener ? 1 gal : 2", "               ~~~~~   ^",
     "cannot choose between 1 gal and 2 (a pure number): give the number a unit, for example 2 gal",
     "has_softener ? 1 gal : 2 gal"},
    {"both results of one substance", "", "has_softener ? raw_iron : 3 mg/L",
     "               ~~~~~~~~   ^^^^^^",
     "cannot choose between `raw_iron` (mg/L as Fe) and 3 mg/L: 3 mg/L does not say of what; write 3 mg/L as "
     "Fe",
     "has_softener ? raw_iron : 3 mg/L as Fe"},
    {"both results of one kind", "", "has_softener ? \"a\" : 3", "               ~~~   ^",
     "both results must be of one kind: \"a\", 3 (a pure number)", ""},
    {"both results of one list", "", "has_softener ? iron_form : verdict",
     "               ~~~~~~~~~   ^^^^^^^",
     "both results must be of one list: `iron_form` (dissolved, oxidized, mixed), `verdict` (works, "
     "marginal, cannot tell yet, will not work)",
     ""},
    {"an unlisted word beside a choice", "", "verdict == \"fine\"", "           ^^^^^^",
     "\"fine\" is not in the list: works, marginal, cannot tell yet, will not work", ""},
    {"a slip in a listed word", "", "verdict == \"worksss\"", "           ^^^^^^^^^",
     "\"worksss\" is not in the list: works, marginal, cannot tell yet, will not work",
     "verdict == \"works\""},
    {"choices have no order", "", "verdict < \"works\"", "        ^",
     "choices have no <: compare with == or use worst(...)", ""},
    {"choices of two lists", "", "verdict == iron_form", "~~~~~~~    ^^^^^^^^^",
     "cannot compare `verdict` (works, marginal, cannot tell yet, will not work) and `iron_form` (dissolved, "
     "oxidized, mixed): they are choices of two lists",
     ""},
    {"yes in quotes is a word", "", "has_softener == \"yes\"", "~~~~~~~~~~~~    ^^^^^",
     "cannot compare `has_softener` (yes/no) and \"yes\"; write yes without quotes", "has_softener == yes"},
    {"yes/no has no order", "", "has_softener > freezes", "             ^",
     "yes/no has no >: compare with == or !=", ""},
    {"words have no order", "", "tank_words < \"b\"", "           ^",
     "words have no <: compare with == or !=", ""},
    {"words have no +", "", "tank_words + \"x\"", "^^^^^^^^^^",
     "cannot add `tank_words` (words): words are no amount; to show a value inside words put the cell in "
     "braces, as in \"{name}\"",
     ""},
    {"worst of two lists", "", "worst(verdict, iron_form)", "               ^^^^^^^^^",
     "worst takes choices of one list: `iron_form` is one of dissolved, oxidized, mixed, not of works, "
     "marginal, cannot tell yet, will not work",
     ""},
    {"worst of a number", "", "worst(verdict, ph)", "               ^^",
     "worst takes choices of one list, not `ph` (a pure number)", ""},
    {"worst of words alone", "", "worst(\"works\", \"marginal\")", "      ^^^^^^^",
     "worst takes choices of one list, not \"works\"", ""},
    {"two dates do not add", "", "installed + sampled", "~~~~~~~~~   ^^^^^^^",
     "cannot add `installed` (a date) and `sampled` (a date): two dates can only be subtracted", ""},
    {"a date takes a time", "", "installed + 30", "~~~~~~~~~   ^^",
     "cannot add `installed` (a date) and 30 (a pure number): a date takes a time, such as 30 day",
     "installed + 30 day"},
    {"a date beside a number", "", "sampled == 3", "~~~~~~~    ^",
     "cannot compare `sampled` (a date) and 3 (a pure number)", ""},
    {"a date from a time", "", "30 day - sampled", "~~~~~~   ^^^^^^^",
     "cannot subtract `sampled` (a date) from 30 day: only a date minus a date or a time", ""},
    {"a blank cell", "", "filter_area * 2", "^^^^^^^^^^^", "`filter_area` is blank", ""},
    {"a blank cell left of and", "", "filter_area > 3 ft^2 and freezes", "^^^^^^^^^^^",
     "`filter_area` is blank", ""},
    {"both branches fail", "", "has_softener ? broken : filter_area", "               ^^^^^^",
     "waits for `broken`", ""},
    {"a cell that failed", "", "broken * 2", "^^^^^^", "waits for `broken`", ""},
    {"a range outside a call", "", "costs.cost[1:3] * 2", "^^^^^^^^^^^^^^^",
     "a range stands only in a call; make a column for it", ""},
    {"a range of two units", "", "sum(costs.mixed[:])", "    ^^^^^^^^^^^^^^",
     "the cells of `costs.mixed[:]` are not of one kind: `costs.mixed[1]` (gal), but `costs.mixed[3]` (psi)",
     ""},
    {"a range of blanks has no unit", "", "sum(costs.empty[:])", "    ^^^^^^^^^^^^^^",
     "`costs.empty[:]` is blank", ""},
    {"a range with a cell that failed", "", "sum(costs.weak[:])", "    ^^^^^^^^^^^^^",
     "waits for `costs.weak[2]`", ""},
    {"columns of unequal length", "", "slope(costs.year[:], costs.cost[1:3])",
     "      ~~~~~~~~~~~~~  ^^^^^^^^^^^^^^^",
     "`costs.year[:]` and `costs.cost[1:3]` must have as many lines: 5 and 3", ""},
    {"only of other lines", "costs 2", "sum(cost[1:3], fits[2:4])", "    ~~~~~~~~~  ^^^^^^^^^",
     "`fits[2:4]` must be the same lines as `cost[1:3]`", ""},
    {"a bare key alone in a total", "costs 3", "sum(cost)", "    ^^^^",
     "`cost` alone is the cell on this line: write cost[:] for the whole column or cost[1:-1] for the lines "
     "above",
     "sum(cost[:]) or sum(cost[1:-1])"},
    {"a bare key where a range is wanted", "costs 3", "pick(option, 2)", "     ^^^^^^",
     "`option` alone is the cell on this line: write option[:] for the whole column or option[1:-1] for the "
     "lines above",
     "pick(option[:], 2) or pick(option[1:-1], 2)"},
    {"on line 1 nothing stands above", "costs 1", "sum(cost)", "    ^^^^",
     "`cost` alone is the cell on this line: write cost[:] for the whole column or cost[1:-1] for the lines "
     "above",
     "sum(cost[:])"},
    {"a blank cell of the same line", "costs 3", "cost + $5", "^^^^", "`cost` is blank", ""},
    {"a range where one value is wanted", "", "compensated_hardness(costs.cost[:], raw_iron)",
     "                     ^^^^^^^^^^^^^",
     "compensated_hardness takes hardness as one value, not the range costs.cost[:]", ""},
    {"one value where a range is wanted", "", "last_year(5 yr)", "          ^^^^",
     "last_year takes years as a range, such as cost[2:9] or cost[:], not 5 yr", ""},
    {"known takes one value", "", "known(costs.cost[:])", "      ^^^^^^^^^^^^^",
     "known takes x as one value, not the range costs.cost[:]", ""},
    {"state takes a cell", "", "state(2 * ph)", "      ^^^^^^", "state takes one cell, not `2 * ph`", ""},
    {"because takes words", "", "because(ph, 3)", "            ^",
     "because takes words as its reason, not 3 (a pure number)", ""},
    {"turbidity is no color", "", "1 NTU + 2 CU", "^^^^^   ~~~~",
     "cannot add 1 NTU and 2 CU; NTU and CU are counted apart: nothing turns one into the other", ""},
    {"the word for a choice between two", "", "if(1 > 2, 3, 4)", "^^",
     "no function is named `if`: write condition ? this : that", ""},
    {"a logarithm without its base", "", "log(10)", "^^^", "no function is named `log`; log10, ln?",
     "log10(10) or ln(10)"},
    {"a pressure shown as a height", "", "40 psi -> ft", "~~~~~~    ^^",
     "cannot show 40 psi in ft: a pressure is no length; as the height of a column of water write ft_head",
     "40 psi -> ft_head"},
    {"hardness shown as iron", "", "10 gpg -> mg/L as Fe", "~~~~~~    ^^^^^^^^^^",
     "cannot show 10 gpg (as CaCO3) in mg/L as Fe; an amount of CaCO3 is none of Fe", ""},
    {"nitrogen shown as nitrate", "", "3 mg/L as N -> mg/L as NO3", "~~~~~~~~~~~    ^^^^^^^^^^^",
     "cannot show 3 mg/L as N in mg/L as NO3; only the other way is told: as_element gives N of NO3", ""},
    {"no such function", "", "su(1, 2)", "^^", "no function is named `su`; sum?", "sum(1, 2)"},
    {"a plugin that is not enabled", "", "iron_hours(3)", "^^^^^^^^^^",
     "`iron_hours` needs the plugin \"iron kinetics\", which is not enabled", ""},
    {"too few arguments", "", "compensated_hardness(hardness)", "^^^^^^^^^^^^^^^^^^^^",
     "compensated_hardness takes at least 2 arguments, not 1: compensated_hardness(hardness, iron, "
     "[manganese])",
     ""},
    {"too many arguments", "", "sqrt(1, 2)", "^^^^", "sqrt takes 1 argument, not 2: sqrt(x)", ""},
    {"a decimal comma makes one argument two", "", "sqrt(2,5)", "     ^^^",
     "a decimal is written with a point: write 2.5", "sqrt(2.5)"},
    {"a decimal comma among others", "", "clamp(6,8, 5, 8)", "      ^^^",
     "a decimal is written with a point: write 6.8", "clamp(6.8, 5, 8)"},
    {"two decimal commas", "", "clamp(6,8, 5,5, 8)", "      ^^^^^^^^",
     "a decimal is written with a point: write 6.8 and 5.5", "clamp(6.8, 5.5, 8)"},
    {"a decimal comma and another slip", "", "compensated_hardness(12,5, 3 gal)", "                     ^^",
     "compensated_hardness takes hardness in gpg as CaCO3, not 12 (a pure number): give the number a unit, "
     "for "
     "example 12 gpg; a decimal is written with a point: write 12.5",
     ""},
    {"a list of three is no decimal", "", "sqrt(1,2,3)", "^^^^", "sqrt takes 1 argument, not 3: sqrt(x)", ""},
    {"rounding to places", "", "round(2.345, 2)", "^^^^^",
     "no function is named `round`: write round_to(x, 0.01), with the step to round to", ""},
    {"the whole part", "", "int(ph)", "^^^",
     "no function is named `int`: write floor_to(x, 1), with the step to round down to", ""},
    {"the name of a spreadsheet for the same function", "", "iferror(ph, 7)", "^^^^^^^",
     "no function is named `iferror`; if_error?", "if_error(ph, 7)"},
    {"a column with parentheses", "costs 2", "cost(1)", "^^^^",
     "`cost` is a column, no function: write cost[1]", "cost[1]"},
    {"a cell with parentheses", "", "ph(2)", "^^", "`ph` is a cell, no function: write ph * (2)", "ph * (2)"},
    {"a wrong unit for a parameter", "", "compensated_hardness(hardness, use)",
     "                               ^^^",
     "compensated_hardness takes iron in mg/L as Fe, not `use` (gal/day)", ""},
    {"a bare number for a parameter", "", "compensated_hardness(hardness, 5)",
     "                               ^",
     "compensated_hardness takes iron in mg/L as Fe, not 5 (a pure number): give the number a unit, for "
     "example 5 mg/L as Fe",
     "compensated_hardness(hardness, 5 mg/L as Fe)"},
    {"another form for a parameter", "", "compensated_hardness(raw_iron, raw_iron)",
     "                     ^^^^^^^^",
     "compensated_hardness takes hardness in gpg as CaCO3, not `raw_iron` (mg/L as Fe); for the same amount "
     "as CaCO3 use as_caco3(raw_iron)",
     "compensated_hardness(as_caco3(raw_iron), raw_iron)"},
    {"another substance for a parameter", "", "compensated_hardness(hardness, nitrate)",
     "                               ^^^^^^^",
     "compensated_hardness takes iron in mg/L as Fe, not `nitrate` (mg/L as NO3); an amount of NO3 is none "
     "of Fe",
     ""},
    {"yes/no for a parameter", "", "compensated_hardness(hardness, has_softener)",
     "                               ^^^^^^^^^^^^",
     "compensated_hardness takes iron as an amount, not `has_softener` (yes/no)", ""},
    {"per person for a parameter", "", "cartridge_days(26000 gal, raw_iron, use_per_person)",
     "                                    ^^^^^^^^^^^^^^",
     "cartridge_days takes use in gal/day, not `use_per_person` (gal/(person*day)); `use_per_person` is per "
     "person: multiply by people",
     "cartridge_days(26000 gal, raw_iron, use_per_person * people)"},
    {"a cell that is not per cartridge", "", "cartridge_days(tank, raw_iron, use)", "               ^^^^",
     "cartridge_days takes rating in gal/cartridge, not `tank` (gal); `tank` is not per cartridge: write "
     "tank / (1 cartridge)",
     "cartridge_days(tank / (1 cartridge), raw_iron, use)"},
    {"a difference for a temperature", "", "oxygen_saturation(warming)", "                  ^^^^^^^",
     "oxygen_saturation takes temperature in degC, not `warming` (delta_degF); a difference of temperatures "
     "is no temperature",
     ""},
    {"0 for a temperature", "", "oxygen_saturation(0)", "                  ^",
     "oxygen_saturation takes temperature in degC, not 0 (a pure number); 0 is no temperature without its "
     "unit: write 0 degC",
     "oxygen_saturation(0 degC)"},
    {"365 what: a unit that cancels", "", "yearly_use(use, 365)", "                ^^^",
     "yearly_use takes days in day/yr, not 365 (a pure number): give the number a unit, for example 365 "
     "day/yr",
     "yearly_use(use, 365 day/yr)"},
    {"a bare number beside a unit that cancels", "", "days_per_year > 100", "~~~~~~~~~~~~~   ^^^",
     "cannot compare `days_per_year` (day/yr) and 100 (a pure number): give the number a unit, for example "
     "100 day/yr",
     "days_per_year > 100 day/yr"},
    {"an amount for a choice", "", "oxidant_demand(raw_iron, raw_iron)", "               ^^^^^^^^",
     "oxidant_demand takes oxidant as one of chlorine, peroxide, ozone, not `raw_iron` (mg/L as Fe)", ""},
    {"a choice of another list", "", "oxidant_demand(iron_form, raw_iron)", "               ^^^^^^^^^",
     "oxidant_demand takes oxidant as one of chlorine, peroxide, ozone, but `iron_form` is one of dissolved, "
     "oxidized, mixed",
     ""},
    {"a choice that decides the substance is a literal", "", "oxidant_demand(oxidant, raw_iron)",
     "               ^^^^^^^",
     "oxidant_demand takes oxidant as a word in quotes, because its result is an amount of it", ""},
    {"a slip in a choice", "", "oxidant_demand(\"chlorin\", raw_iron)", "               ^^^^^^^^^",
     "\"chlorin\" is not in the list: chlorine, peroxide, ozone", "oxidant_demand(\"chlorine\", raw_iron)"},
    {"a sum of two results", "", "oxidant_demand(\"ozone\", raw_iron) + raw_iron",
     "^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^   ~~~~~~~~",
     "cannot add `oxidant_demand(\"ozone\", raw_iron)` (mg/L as O3) and `raw_iron` (mg/L as Fe): different "
     "substances",
     ""},
    {"as_caco3 of no substance", "", "as_caco3(untold)", "         ^^^^^^",
     "as_caco3 takes an amount of one substance, such as 3 mg/L as Fe, not `untold` (mg/L)", ""},
    {"as_caco3 of what has no charge", "", "as_caco3(sulfide)", "         ^^^^^^^",
     "hydrogen sulfide has no charges to count as CaCO3", ""},
    {"as_element of a salt", "", "as_element(salt)", "           ^^^^",
     "as_element knows no element to tell sodium chloride as", ""},
    {"two units in a unit variable", "", "feed_rate(flow, 3 mg/L as Cl2, use)",
     "                ^^^^^^^^^^^^^  ~~~",
     "cannot compare 3 mg/L as Cl2 and `use` (gal/day): their units do not fit", ""},
    {"per person is never dropped", "", "use_per_person -> gal/day", "~~~~~~~~~~~~~~    ^^^^^^^",
     "cannot show `use_per_person` (gal/(person*day)) in gal/day; `use_per_person` is per person: multiply "
     "by people",
     "use_per_person * people -> gal/day"},
    {"nothing is put in by an arrow", "", "use -> gal/cartridge", "~~~    ^^^^^^^^^^^^^",
     "cannot show `use` (gal/day) in gal/cartridge", ""},
    {"an arrow to another unit", "", "use -> mg/L", "~~~    ^^^^", "cannot show `use` (gal/day) in mg/L", ""},
    {"an arrow to another substance", "", "raw_iron -> mg/L as CaCO3", "~~~~~~~~    ^^^^^^^^^^^^^",
     "cannot show `raw_iron` (mg/L as Fe) in mg/L as CaCO3; for the same amount as CaCO3 use "
     "as_caco3(raw_iron)",
     "as_caco3(raw_iron) -> mg/L as CaCO3"},
    {"an arrow to the element", "", "nitrate -> mg/L as N", "~~~~~~~    ^^^^^^^^^",
     "cannot show `nitrate` (mg/L as NO3) in mg/L as N; for the amount of the element use "
     "as_element(nitrate)",
     "as_element(nitrate) -> mg/L as N"},
    {"an arrow from a choice", "", "verdict -> gal", "           ^^^",
     "only an amount can be shown in gal, not `verdict` (a choice)", ""},
    {"a set unit and a pure number", "set gal/day", "2 * 3", "^^^^^",
     "this cell is set to gal/day, but the formula gives a pure number: multiply the pure number by a unit, "
     "for example (2 * 3) * (1 gal/day)",
     "(2 * 3) * (1 gal/day)"},
    {"a set unit and a bare literal", "set gal/day", "7", "^",
     "this cell is set to gal/day, but the formula gives a pure number: give the number a unit, for example "
     "7 gal/day",
     "7 gal/day"},
    {"a set unit that cancels", "set day/yr", "44", "^^",
     "this cell is set to day/yr, but the formula gives a pure number: give the number a unit, for example "
     "44 day/yr",
     "44 day/yr"},
    {"a set unit and per person", "set gal/day", "use_per_person", "^^^^^^^^^^^^^^",
     "this cell is set to gal/day, but the formula gives gal/(person*day); `use_per_person` is per person: "
     "multiply by people",
     "use_per_person * people"},
    {"a set unit and persons counted", "set day", "3 person * life", "^^^^^^^^^^^^^^^",
     "this cell is set to day, but the formula gives (day*person)/cartridge; `3 person * life` counts "
     "person: write (3 person * life) / (1 person)",
     "(3 person * life) / (1 person)"},
    {"a set unit and another substance", "set gpg", "raw_iron", "^^^^^^^^",
     "this cell is set to gpg as CaCO3, but the formula gives mg/L as Fe; for the same amount as CaCO3 use "
     "as_caco3(raw_iron)",
     "as_caco3(raw_iron)"},
    {"a set unit and yes/no", "set gal/day", "yes", "^^^",
     "this cell is set to gal/day, but the formula gives yes/no", ""},
    {"a set unit and a temperature", "set delta_degF", "temperature", "^^^^^^^^^^^",
     "this cell is set to delta_degF, but the formula gives degF; a temperature is no difference of "
     "temperatures",
     ""},
    {"choices and a number", "choices works|marginal|cannot tell yet|will not work", "ph", "^^",
     "this cell holds one of works, marginal, cannot tell yet, will not work, but the formula gives an "
     "amount",
     ""},
    {"choices and another list", "choices works|marginal|cannot tell yet|will not work", "iron_form",
     "^^^^^^^^^",
     "this cell holds one of works, marginal, cannot tell yet, will not work, but the formula gives one of "
     "dissolved, oxidized, mixed",
     ""},
    {"choices and an unlisted word in a branch", "choices works|marginal|cannot tell yet|will not work",
     "ph > 7 ? \"works\" : \"nope\"", "                   ^^^^^^",
     "\"nope\" is not in the list: works, marginal, cannot tell yet, will not work", ""},
    {"a limit of another unit", "limit raw_iron", "5 gal", "^^^^^",
     "the limit is 5 gal, but the cell is in mg/L as Fe", ""},
    {"a limit without a unit", "limit raw_iron", "3", "^",
     "the limit is 3 (a pure number), but the cell is in mg/L as Fe: give the number a unit, for example 3 "
     "mg/L as Fe",
     "3 mg/L as Fe"},
    {"a limit of another form", "limit nitrate", "10 mg/L as N", "^^^^^^^^^^^^",
     "the limit is 10 mg/L as N, but the cell is in mg/L as NO3; only the other way is told: as_element "
     "gives "
     "N of NO3",
     ""},
    {"a limit of another kind", "limit sampled", "3", "^",
     "the limit is 3 (a pure number), but the cell holds a date", ""},
};

} // namespace

class CheckerRefusalsTest : public QObject
{
    Q_OBJECT

    SmallBook m_book;

    static void addRows()
    {
        QTest::addColumn<QString>("where");
        QTest::addColumn<QString>("formula");
        QTest::addColumn<QString>("marks");
        QTest::addColumn<QString>("message");
        QTest::addColumn<QString>("fixes");
        for (const Refused &row : refused)
            QTest::newRow(row.rule) << row.where << row.formula << row.marks << row.message << row.fixes;
    }

private slots:
    void initTestCase() { fillBook(m_book); }

    void refuses_data() { addRows(); }
    void refuses()
    {
        QFETCH(QString, where);
        QFETCH(QString, formula);
        QFETCH(QString, marks);
        QFETCH(QString, message);
        QFETCH(QString, fixes);
        const std::string text = formula.toStdString();
        const CheckedFormula out = checkIn(m_book, where.toStdString(), text);
        QVERIFY2(!out.checked.has_value(), "accepted");
        const Error &error = out.checked.error();
        QCOMPARE(QString::fromStdString(error.words), message);
        QCOMPARE(QString::fromStdString(underlined(text, error.place)), marks);
        QCOMPARE(QString::fromStdString(fixed(text, error.fixes)), fixes);
    }

    /// Every fix that is offered makes a formula that checks in the same place.
    void everyFixWorks_data() { addRows(); }
    void everyFixWorks()
    {
        QFETCH(QString, where);
        QFETCH(QString, formula);
        const std::string text = formula.toStdString();
        const CheckedFormula out = checkIn(m_book, where.toStdString(), text);
        QVERIFY(!out.checked.has_value());
        for (const Fix &fix : out.checked.error().fixes) {
            std::string after = text;
            after.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
            QVERIFY2(checkIn(m_book, where.toStdString(), after).checked.has_value(), after.c_str());
        }
    }

    /// A sentence: lower case (a name or number may begin it), no full stop, no code.
    void messagesReadAsSentences()
    {
        for (const Refused &row : refused) {
            const std::string words = row.message;
            QVERIFY2(!words.empty() && !(words.front() >= 'A' && words.front() <= 'Z'), row.message);
            QVERIFY2(words.back() != '.', row.message);
        }
    }
};

QTEST_APPLESS_MAIN(CheckerRefusalsTest)
#include "checker_refusals_test.moc"
