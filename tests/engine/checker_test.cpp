/// What the checker accepts and in which unit it shows it, rule by rule; units row; facts for the compiler.
#include <QTest>

#include <cmath>
#include <set>

#include "support/checked_formula.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

struct Accepted {
    const char *rule, *where, *formula, *shows;
};

constexpr Accepted accepted[] = {
    {"units convert by themselves", "", "8 hr + 3 day", "hr"},
    {"hardness as the trade writes it is as CaCO3", "", "1 gpg -> mg/L", "mg/L as CaCO3"},
    {"days between regenerations", "", "24000 grain as CaCO3 / (hardness * use) -> day", "day"},
    {"persons cancel", "", "26000 gal / (4 person * 62.5 gal/(person*day)) -> day", "day"},
    {"the step takes the substance", "", "ceil_to(1 gpg + 5 gpg/(mg/L)*1.8 mg/L, 1 gpg)", "gpg as CaCO3"},
    {"whole days", "", "floor_to(4500 gal/(50 gal/day), 1 day)", "day"},
    {"a function's own unit", "", "compensated_hardness(hardness, raw_iron)", "gpg as CaCO3"},
    {"literals as arguments", "", "compensated_hardness(10 gpg, 1 mg/L as Fe)", "gpg as CaCO3"},
    {"the first operand's unit", "", "raw_iron + 1 ppm as Fe",
     "mg/L as Fe; caution: ppm is read as mg/L: right in dilute water, not in brine or stock solutions"},
    {"figures joined by a comma in a call", "", "max(1,5)",
     "a pure number; caution: `1,5` is read as two arguments, 1 and 5; for a decimal write 1.5"},
    {"a blank behind the comma tells two arguments", "", "max(1, 5)", "a pure number"},
    {"a list of figures is no decimal", "", "max(1,5,7)", "a pure number"},
    {"a product makes its unit", "", "raw_iron * use -> lb/yr", "lb/yr as Fe"},
    {"oxidant need in steps", "", "0.64 mg{Cl2}/mg{Fe} * raw_iron + 1.3 mg{Cl2}/mg{Mn} * raw_manganese",
     "mg/L as Cl2"},
    {"scaling by a pure number mixes nothing", "", "2 * 5 gpg/(mg/L) * 1.8 mg/L", "mg/L as CaCO3"},
    {"an allowance that says of what", "", "allowance * raw_iron", "mg/L as CaCO3"},
    {"equal dimensions, one side untold: a pure number", "", "raw_iron / untold", "a pure number"},
    {"the same with a literal", "", "raw_iron / (0.3 mg/L)", "a pure number"},
    {"two substances divided keep both", "", "raw_iron / raw_manganese", "mg{Fe}/mg{Mn}"},
    {"energy counts as no mass", "", "3 kWh/lb as NaCl * salt", "kWh"},
    {"a ratio is pure, then any power", "", "(flow / (1 gpm))^1.852", "a pure number"},
    {"a square", "", "pi * (diameter/2)^2", "ft^2"},
    {"a cube root of a volume", "", "tank^(1/3)", "ft"},
    {"a square root", "", "sqrt(9 ft^2)", "ft"},
    {"a literal takes the substance in a comparison", "", "raw_iron > 3 mg/L", "yes/no"},
    {"a cell too, with a caution", "", "raw_iron > untold",
     "yes/no; caution: `untold` does not say of what; it is taken as Fe"},
    {"an expression too", "", "raw_iron > 2 * untold",
     "yes/no; caution: `2 * untold` does not say of what; it is taken as Fe"},
    {"a literal takes the substance in max", "", "max(raw_iron, 3 mg/L)", "mg/L as Fe"},
    {"and in clamp, with 0", "", "clamp(raw_iron, 0, 3 mg/L)", "mg/L as Fe"},
    {"a parameter gives its substance to a literal", "", "compensated_hardness(hardness, 3 mg/L)",
     "gpg as CaCO3"},
    {"and to a cell, with a caution", "", "compensated_hardness(hardness, untold)",
     "gpg as CaCO3; caution: `untold` does not say of what; it is taken as Fe"},
    {"0 fits any unit", "", "use > 0", "yes/no"},
    {"0 in a sum", "", "0 + use", "gal/day"},
    {"0 in a branch", "", "has_softener ? raw_iron : 0", "mg/L as Fe"},
    {"0 in a call", "", "oxidant_demand(\"ozone\", raw_iron, 0)", "mg/L as O3"},
    {"a literal takes counted things in a comparison", "", "life > 90 day", "yes/no"},
    {"and in floor_to", "", "floor_to(life, 1 day)", "day/cartridge"},
    {"and as an argument", "", "cartridge_days(26000 gal, raw_iron, use, 90 day)", "day/cartridge"},
    {"people times use", "", "use_per_person * people", "gal/day"},
    {"an arrow drops cartridges and says so", "", "life -> day", "day; per cartridge, one at a time"},
    {"so does a set unit", "set day", "life * 2", "day; per cartridge, one at a time"},
    {"a thing counted as a number", "set gpm", "outlets * 5 gpm", "gpm; each counted as a plain number"},
    {"a set unit gives a bare 0 its unit", "set gal/day", "0", "gal/day"},
    {"a set unit converts", "set gal/day", "flow", "gal/day"},
    {"a set unit without substance keeps it", "set mg/L", "raw_iron", "mg/L as Fe"},
    {"a set unit with a substance gives it", "set mg/L as Fe", "untold", "mg/L as Fe"},
    {"an arrow wins over the set unit", "set gal/day", "flow -> L/s", "L/s"},
    {"an arrow keeps the substance", "", "nitrate -> mg/L", "mg/L as NO3"},
    {"an arrow gives a substance", "", "untold -> mg/L as Fe", "mg/L as Fe"},
    {"an arrow in a counted unit", "", "use_per_person * 3 -> gal/(person*day)", "gal/(person*day)"},
    {"temperature and difference", "", "temperature + warming", "degF"},
    {"difference and temperature", "", "warming + temperature", "degF"},
    {"temperature less temperature", "", "temperature - 50 degF", "delta_degF"},
    {"temperatures compared", "", "temperature == 50 degF", "yes/no"},
    {"mean of temperatures", "", "mean(temperature, 50 degF)", "degF"},
    {"nearly equal temperatures", "", "within(temperature, 50 degF, 2 delta_degF)", "yes/no"},
    {"a temperature as an argument", "", "oxygen_saturation(temperature)", "mg/L as O2"},
    {"absolute pressures divided", "", "tank * (air / (30 psi_abs))", "gal"},
    {"absolute less absolute", "", "air - 14 psi_abs", "psi"},
    {"absolute and gauge", "", "air + pressure", "psi_abs"},
    {"gauge made absolute", "", "absolute(pressure, air)", "psi_abs"},
    {"absolute made gauge", "", "gauge(air, 14.7 psi_abs)", "psi"},
    {"5 % more", "", "price * (1 + 5 %)", "$"},
    {"a percentage added to a percentage", "", "share + 5 %", "%"},
    {"a percent literal beside a bare number: two readings", "", "0.2 + 5 %",
     "a pure number; caution: 5 % is taken as the number 0.05 here; for 5 % more write 0.2 * (1 + 5 %)"},
    {"a percent cell never cautions", "", "0.2 + share", "a pure number"},
    {"1 less a percentage", "", "1 - 15 %", "a pure number"},
    {"money by time", "", "price / (3 yr)", "$/yr"},
    {"money by energy", "", "energy_price * 3 kWh", "$"},
    {"days a year cancel", "", "days_per_year * use -> gal/yr", "gal/yr"},
    {"yearly use in its own unit", "", "yearly_use(use, days_per_year)", "gal/yr"},
    {"the one that stands for the whole year", "", "1 - days_per_year", "a pure number"},
    {"a condition", "", "has_softener and ph > 7 or not (freezes)", "yes/no"},
    {"a listed word beside a choice", "", "verdict == \"works\"", "yes/no"},
    {"a listed word in a branch", "", "has_softener ? \"works\" : verdict",
     "one of works, marginal, cannot tell yet, will not work"},
    {"worst takes listed words", "", "worst(verdict, \"will not work\")",
     "one of works, marginal, cannot tell yet, will not work"},
    {"worst of a column", "", "worst(costs.verdicts[:])",
     "one of works, marginal, cannot tell yet, will not work"},
    {"the cell's choices reach into branches", "choices works|marginal|cannot tell yet|will not work",
     "ph > 7 ? \"works\" : freezes ? \"marginal\" : \"will not work\"",
     "one of works, marginal, cannot tell yet, will not work"},
    {"and into because", "choices works|marginal|cannot tell yet|will not work",
     "because(ph > 7 ? \"works\" : \"marginal\", \"ph {ph}\")",
     "one of works, marginal, cannot tell yet, will not work"},
    {"and into if_error", "choices works|marginal|cannot tell yet|will not work",
     "if_error(broken, \"marginal\")", "one of works, marginal, cannot tell yet, will not work"},
    {"and into worst", "choices works|marginal|cannot tell yet|will not work",
     "worst(\"works\", \"marginal\")", "one of works, marginal, cannot tell yet, will not work"},
    {"a function's own list", "choices works|marginal|cannot tell yet|will not work",
     "screen_at_most(raw_iron, 3 mg/L)", "one of works, marginal, cannot tell yet, will not work"},
    {"words stay words", "", "has_softener ? \"a\" : \"b\"", "words"},
    {"words compared", "", "tank_words == \"x\"", "yes/no"},
    {"live words", "", "\"iron {raw_iron}, {use -> gpm, 3 figures}\"", "words"},
    {"a live part that fails is no error of the words", "",
     "\"it is {use -> mg/L}, {broken}, {filter_area}\"", "words"},
    {"date less date", "", "installed - sampled", "day"},
    {"date and time", "", "2026-05-12 + 3 day", "date"},
    {"dates compared", "", "sampled < installed", "yes/no"},
    {"a blank with a set unit is typed", "", "lead * 2", "mg/L as Pb"},
    {"a blank choice is typed", "", "coliform == \"absent\"", "yes/no"},
    {"known is never an error", "", "known(filter_area) and known(broken)", "yes/no"},
    {"a blank that is guarded", "", "known(filter_area) ? filter_area * 2 : 5 ft^2", "ft^2"},
    {"a blank right of and", "", "freezes and filter_area > 3 ft^2", "yes/no"},
    {"a blank that may be missing", "", "screen_at_most(filter_area, 1 ft^2)",
     "one of works, marginal, cannot tell yet, will not work"},
    {"a typed blank that may be missing", "", "screen_at_most(lead, 0.01 mg/L)",
     "one of works, marginal, cannot tell yet, will not work"},
    {"a failed cell in if_error", "", "if_error(broken, 5 gal)", "gal"},
    {"a failed line that only leaves out", "", "sum(costs.weak[:], costs.fits[:])", "gal"},
    {"a bound stays a bound", "", "arsenic", "mg/L as As; a bound"},
    {"a bound compared", "", "arsenic <= 0.010 mg/L", "yes/no"},
    {"a bound in arithmetic is a number by the workbook's rule", "", "arsenic * 2", "mg/L as As"},
    {"a bound without its substance", "", "plain(arsenic)", "mg/L; a bound"},
    {"a total", "", "sum(costs.cost[:])", "$"},
    {"a total of lines and values", "", "sum(costs.cost[1:2], $3)", "$"},
    {"counting any kind", "", "count(costs.option[:])", "a pure number"},
    {"mean with only", "", "mean(costs.cost[:], costs.fits[:])", "$"},
    {"percentile of values", "", "percentile(1 gal, 2 gal, 3 gal, 50 %)", "gal"},
    {"the runner-up without only", "", "least_at(costs.cost[:], 2)", "a pure number"},
    {"the runner-up with only", "", "least_at(costs.cost[:], costs.fits[:], 2)", "a pure number"},
    {"pick words", "", "pick(costs.option[:], least_at(costs.cost[:], costs.fits[:]))", "words"},
    {"pick a choice", "", "pick(costs.verdicts[:], 2)",
     "one of works, marginal, cannot tell yet, will not work"},
    {"list as words", "", "list(costs.year[:], costs.fits[:])", "words"},
    {"look up by an amount", "", "lookup(2 yr, costs.year[:], costs.cost[:])", "$"},
    {"look up by words", "", "lookup(\"air\", costs.option[:], costs.cost[:])", "$"},
    {"look up by a listed word", "", "lookup(\"marginal\", costs.verdicts[:], costs.option[:])", "words"},
    {"a table", "", "interpolate(2.5 yr, costs.year[:], costs.cost[:])", "$"},
    {"slope has the unit of y over x", "", "slope(costs.year[:], costs.cost[:])", "$/yr"},
    {"how many hold", "", "count_true(costs.fits[:])", "a pure number"},
    {"any and all", "", "any(has_softener, freezes) and all(costs.fits[:])", "yes/no"},
    {"a running total", "costs 3", "sum(cost[1:+0])", "$"},
    {"the line above", "costs 3", "cost[-2] + $5", "$"},
    {"a bare key is this line's cell", "costs 2", "max(cost, $5)", "$"},
    {"another form by charge", "", "as_caco3(raw_iron)", "mg/L as CaCO3"},
    {"another form by element", "", "as_element(nitrate)", "mg/L as N"},
    {"without its substance", "", "plain(raw_iron) + untold", "mg/L"},
    {"the substance of a choice", "", "oxidant_demand(\"chlorine\", raw_iron)", "mg/L as Cl2"},
    {"a dose and a strength in one unit", "", "feed_rate(flow, 3 mg/L as Cl2, 1000 mg/L)", "gal/day"},
    {"state of a limit", "", "state(raw_iron)", "one of within, near, outside, no limit, missing test"},
    {"a reason", "", "because(verdict, \"iron {raw_iron}\")",
     "one of works, marginal, cannot tell yet, will not work"},
    {"reading a reason", "", "why(verdict)", "words"},
    {"a limit takes the cell's substance", "limit raw_iron", "0.3 mg/L", "mg/L as Fe"},
    {"a cell in a limit too, with a caution", "limit raw_iron", "untold",
     "mg/L as Fe; caution: `untold` does not say of what; it is taken as Fe"},
    {"a limit of 0", "limit raw_iron", "0", "mg/L as Fe"},
    {"a limit per cartridge", "limit life", "90 day", "day/cartridge"},
    {"a limit in percent", "limit share", "20 %", "%"},
    {"a limit of a temperature", "limit temperature", "40 degF", "degF"},
    {"a limit says of what, its cell does not", "limit untold", "3 mg/L as Fe",
     "mg/L as Fe; caution: the cell does not say of what; it is taken as Fe"},
    {"a limit of a date", "limit sampled", "2026-01-01", "date"},
};

struct Row {
    const char *rule, *formula, *units;
};

constexpr Row rows[] = {
    {"operands as units, * as a dot", "0.64 mg{Cl2}/mg{Fe} * raw_iron + 1.3 mg{Cl2}/mg{Mn} * raw_manganese",
     "mg{Cl2}/mg{Fe}.mg/L as Fe + mg{Cl2}/mg{Mn}.mg/L as Mn"},
    {"parentheses where they are needed", "tank / (people * use_per_person)",
     "gal / (person.gal/(person*day))"},
    {"and nowhere else", "(use + use) + (2 * use)", "gal/day + gal/day + number.gal/day"},
    {"a power keeps its exponent", "pi * (diameter/2)^2", "number.(in / number)^2"},
    {"calls keep their names", "max(raw_iron, 3 mg/L)", "max(mg/L as Fe, mg/L as Fe)"},
    {"conditions", "has_softener and ph > 7 ? tank : 0", "yes/no and number > number ? gal : gal"},
    {"an arrow", "use -> L/s", "gal/day -> L/s"},
    {"a blank and a failed cell", "known(filter_area) ? if_error(broken, use) : use",
     "known(blank) ? if_error(waiting, gal/day) : gal/day"},
    {"a choice, words, a date", "verdict == \"works\" or tank_words == \"x\" or sampled < installed",
     "choice == choice or words == words or date < date"},
};

} // namespace

class CheckerTest : public QObject
{
    Q_OBJECT

    SmallBook m_book;

    Checked checkedAt(const char *formula, std::shared_ptr<const Tree> &tree, const char *where = "")
    {
        const CheckedFormula out = checkIn(m_book, where, formula);
        tree = out.tree;
        return out.checked ? *out.checked : Checked{};
    }

private slots:
    void initTestCase() { fillBook(m_book); }

    void accepts_data()
    {
        QTest::addColumn<QString>("where");
        QTest::addColumn<QString>("formula");
        QTest::addColumn<QString>("shows");
        for (const Accepted &row : accepted)
            QTest::newRow(row.rule) << row.where << row.formula << row.shows;
    }
    void accepts()
    {
        QFETCH(QString, where);
        QFETCH(QString, formula);
        QFETCH(QString, shows);
        const CheckedFormula out = checkIn(m_book, where.toStdString(), formula.toStdString());
        QVERIFY2(out.checked.has_value(), out.checked ? "" : out.checked.error().words.c_str());
        QCOMPARE(QString::fromStdString(told(m_book, *out.checked)), shows);
    }

    void rulesAreToldOnce()
    {
        std::set<std::string> seen;
        for (const Accepted &row : accepted)
            QVERIFY2(seen.insert(row.rule).second, row.rule);
    }

    void unitsRow_data()
    {
        QTest::addColumn<QString>("formula");
        QTest::addColumn<QString>("units");
        for (const Row &row : rows)
            QTest::newRow(row.rule) << row.formula << row.units;
    }
    void unitsRow()
    {
        QFETCH(QString, formula);
        QFETCH(QString, units);
        const CheckedFormula out = checkIn(m_book, "", formula.toStdString());
        QVERIFY2(out.checked.has_value(), out.checked ? "" : out.checked.error().words.c_str());
        QCOMPARE(QString::fromStdString(puteal::unitsRow(*out.tree, *out.checked, m_book.units)), units);
    }

    /// Atomic weights as in the table of substances (IUPAC 2021): CaCO3 100.086, Fe 55.845, NO3 62.004,
    /// N 14.007 g/mol.
    void formFactors()
    {
        std::shared_ptr<const Tree> tree;
        const Checked iron = checkedAt("as_caco3(raw_iron)", tree);
        QVERIFY(std::abs(iron.nodes[tree->root].constant - (100.086 / 2) / (55.845 / 2)) < 1e-9);
        const Checked nitrate = checkedAt("as_element(nitrate)", tree);
        QVERIFY(std::abs(nitrate.nodes[tree->root].constant - 14.007 / 62.004) < 1e-9);
        const Checked counted = checkedAt("as_caco3(2 mmol/L as Ca)", tree);
        QCOMPARE(counted.nodes[tree->root].constant, 1.0);
        const Checked plain = checkedAt("plain(raw_iron)", tree);
        QCOMPARE(plain.nodes[tree->root].constant, 1.0);
    }

    void defaultsArePlanned()
    {
        std::shared_ptr<const Tree> tree;
        const Checked checked = checkedAt("cartridge_days(26000 gal, raw_iron, use)", tree);
        const auto &plan = checked.nodes[tree->root].arguments;
        QCOMPARE(plan.size(), std::size_t{4});
        QVERIFY(plan[3].from == ArgumentPlan::From::constant);
        QCOMPARE(plan[3].constant, 365.0 * 86400.0); // seconds, the base unit of time
        QCOMPARE(plan[3].parameter, std::uint32_t{3});
    }

    void onlyGoesToItsParameter()
    {
        std::shared_ptr<const Tree> tree;
        const Checked both = checkedAt("mean(costs.cost[:], costs.fits[:])", tree);
        const auto &plan = both.nodes[tree->root].arguments;
        QCOMPARE(plan.size(), std::size_t{2});
        QVERIFY(plan[1].from == ArgumentPlan::From::range);
        QCOMPARE(plan[1].parameter, std::uint32_t{1});
        const Checked second = checkedAt("least_at(costs.cost[:], 2)", tree);
        QCOMPARE(second.nodes[tree->root].arguments[1].parameter, std::uint32_t{2});
    }

    void failuresAreNotedWhereTheyMayNotMatter()
    {
        std::shared_ptr<const Tree> tree;
        const Checked checked = checkedAt("if_error(broken, 5 gal)", tree);
        const NodeIndex broken = tree->nodes[tree->root].children[0];
        QVERIFY(checked.nodes[broken].error);
        QCOMPARE(QString::fromStdString(checked.nodes[broken].error->words), QString("waits for `broken`"));
        QVERIFY(checked.nodes[broken].error->kind == ErrorKind::waiting);
    }

    void typedBlanksAreMarked()
    {
        std::shared_ptr<const Tree> tree;
        const Checked checked = checkedAt("lead * 2", tree);
        QVERIFY(checked.nodes[tree->nodes[tree->root].children[0]].isBlank);
        QVERIFY(checked.nodes[tree->nodes[tree->root].children[0]].type.kind == ValueKind::quantity);
    }

    void listedWordsAreIndices()
    {
        std::shared_ptr<const Tree> tree;
        const Checked checked = checkedAt("verdict == \"cannot tell yet\"", tree);
        const CheckedNode &word = checked.nodes[tree->nodes[tree->root].children[1]];
        QVERIFY(word.isConstantChoice);
        QCOMPARE(word.constant, 2.0);
    }

    void aFormulaAsLongAsAllowedIsChecked()
    {
        std::string sum = "1";
        while (sum.size() + 2 <= 2000)
            sum += "+1";
        QVERIFY(checkIn(m_book, "", sum).checked.has_value());
    }
};

QTEST_APPLESS_MAIN(CheckerTest)
#include "checker_test.moc"
