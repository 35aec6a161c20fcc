/// Recalculation as a workbook changes: circles, readers, types, running totals, shapes, cautions, previews.
#include <QTest>

#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::SheetCell;
using puteal::test::sheetText;
using puteal::test::Worked;

namespace
{

using Cells = std::vector<SheetCell>;

SheetCell named(const std::string &name, const std::string &text)
{
    return {text, {"name " + name}};
}

QString q(const std::string &text)
{
    return QString::fromStdString(text);
}

} // namespace

class RecalcEditsTest : public QObject
{
    Q_OBJECT
private slots:
    void circles();
    void waitsForTheOrigin();
    void editsReachTheirReaders();
    void typesAreFollowed();
    void circlesComeAndGo();
    void runningTotals();
    void sharedShapes();
    void cautionsTravel();
    void whatIf();
    void previews();
    void neighbors();
};

void RecalcEditsTest::circles()
{
    const Worked worked(sheetText({named("daily_use", "flow * 2"),
                                   named("flow", "hours + 1"),
                                   named("hours", "daily_use / 3"),
                                   {"hours + 1"},
                                   {"x[5]"},
                                   {"sum(x[6:7])"},
                                   {"3"}}));
    QCOMPARE(q(worked.error("daily_use")),
             QString("circular: `daily_use` needs `flow`, `flow` needs `hours`, `hours` needs `daily_use`"));
    QCOMPARE(q(worked.error("flow")),
             QString("circular: `flow` needs `hours`, `hours` needs `daily_use`, `daily_use` needs `flow`"));
    QCOMPARE(q(worked.error("4")), QString("waits for `hours`"));

    // A member with a mistyped function says that; put right, it says the circle, and then neither.
    Worked mended(sheetText({named("flow", "twise(hours)"), named("hours", "flow + 1")}));
    QCOMPARE(q(mended.error("flow")), QString("no function is named `twise`"));
    QCOMPARE(q(mended.error("hours")), QString("circular: `hours` needs `flow`, `flow` needs `hours`"));
    mended.type("flow", "2 * hours");
    QCOMPARE(q(mended.error("flow")), QString("circular: `flow` needs `hours`, `hours` needs `flow`"));
    mended.type("flow", "3");
    QCOMPARE(q(mended.shown("hours")), QString("4"));
    QCOMPARE(q(worked.error("5")), QString("circular: `x[5]` needs `x[5]`"));
    QCOMPARE(q(worked.error("6")), QString("circular: `x[6]` needs `x[6]`"));

    Cells ring;
    for (int i = 1; i <= 20; ++i)
        ring.push_back({"x[" + std::to_string(i % 20 + 1) + "] + 1"});
    const Worked long20(sheetText(ring));
    const std::string words = long20.error("1");
    QVERIFY2(words.ends_with(" and 14 more"), words.c_str());
}

void RecalcEditsTest::waitsForTheOrigin()
{
    const Worked worked(sheetText({{"", {"name filter_area", "unit ft^2"}},
                                   named("loading", "5 gpm / filter_area"),
                                   named("share", "loading * 2"),
                                   {"share * 2"},
                                   named("wrong", "2 + 1/0"),
                                   named("next", "wrong + 1"),
                                   {"next + share/(1 gpm/ft^2)"},
                                   named("unread", "3 +"),
                                   {"unread * 2"}}));
    QCOMPARE(q(worked.error("loading")), QString("`filter_area` is blank"));
    QCOMPARE(q(worked.error("share")), QString("waits for `filter_area`"));
    QCOMPARE(q(worked.error("4")), QString("waits for `filter_area`"));
    QCOMPARE(q(worked.error("next")), QString("waits for `wrong`"));
    QCOMPARE(q(worked.error("7")), QString("waits for `wrong`"));
    QCOMPARE(q(worked.error("9")), QString("waits for `unread`"));
    QVERIFY(worked.values.status[worked.node("9")] == ErrorKind::waiting);
}

void RecalcEditsTest::editsReachTheirReaders()
{
    Worked worked(sheetText({named("aa", "2"),
                             named("bb", "aa * 3"),
                             named("cc", "bb + 1"),
                             named("dd", "7"),
                             {"dd * 2"},
                             {"aa > 1 ? 5 : 6"},
                             {"x[6] + 1"}}));
    const Changed changed = worked.type("aa", "4");
    QCOMPARE(q(worked.shown("cc")), QString("13"));
    QCOMPARE(changed.counts.evaluated, std::size_t(3)); // bb, cc and the condition; x[7] is cut off
    QCOMPARE(changed.nodes, (std::vector<NodeId>{worked.node("aa"), worked.node("bb"), worked.node("cc")}));
    QCOMPARE(worked.type("aa", "4").nodes.size(), std::size_t(0));
    worked.type("bb", "aa * 5");
    QCOMPARE(q(worked.shown("cc")), QString("21"));
    worked.type("bb", "");
    QCOMPARE(q(worked.error("cc")), QString("`bb` is blank"));
    worked.type("bb", "9");
    QCOMPARE(q(worked.shown("cc")), QString("10"));
}

void RecalcEditsTest::typesAreFollowed()
{
    Worked worked(sheetText({named("use", "50 gal/day"), named("twice", "use * 2"), {"twice + 5 gal/day"}}));
    QCOMPARE(q(worked.shown("3")), QString("105 gal/day"));
    worked.type("use", "50 ft");
    QCOMPARE(q(worked.shown("twice")), QString("100 ft"));
    QVERIFY(worked.error("3").starts_with("cannot add `twice`"));
    worked.type("use", "20 gal/day");
    QCOMPARE(q(worked.shown("3")), QString("45 gal/day"));
    worked.type("use", "<20 gal/day");
    QCOMPARE(q(worked.shown("twice")), QString("40 gal/day"));
    QCOMPARE(worked.cautions("twice").size(), std::size_t(1));
    QCOMPARE(worked.cautions("3", false).size(), std::size_t(1));
    QCOMPARE(worked.cautions("3").size(), std::size_t(0));
}

void RecalcEditsTest::circlesComeAndGo()
{
    Worked worked(sheetText({named("aa", "1"), named("bb", "aa + 1"), named("cc", "bb + 1"), {"cc * 10"}}));
    QCOMPARE(q(worked.shown("4")), QString("30"));
    worked.type("aa", "cc");
    QVERIFY(worked.error("bb").starts_with("circular:"));
    QVERIFY(worked.error("4").starts_with("waits for `"));
    worked.type("aa", "2");
    QCOMPARE(q(worked.shown("4")), QString("40"));
    QCOMPARE(q(worked.error("bb")), QString());
}

void RecalcEditsTest::runningTotals()
{
    std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\ncolumn cost amounts \"C\" 9\ncolumn "
                       "total amounts \"T\" 9\n";
    const int lines = 50;
    for (int i = 1; i <= lines; ++i)
        text += "line\ncost: " + std::to_string(i) + "\ntotal: sum(cost[1:+0])\n";
    Worked worked(text + "end s " + std::to_string(lines) + "\nend workbook\n");
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    QCOMPARE(q(worked.shown("50")), QString("1275"));
    QCOMPARE(q(worked.shown("2")), QString("3"));
    const CellAt first{0, 0, 9};
    Cell cell = worked.book.sheets[0].cell(0, 9);
    cell.text = std::make_shared<const std::string>("110");
    worked.book.sheets[0].setCell(0, 9, cell);
    const Changed changed = worked.program->update(worked.book, {first}, worked.values);
    QCOMPARE(changed.counts.evaluated, std::size_t(41)); // exactly the totals from that line on
    QCOMPARE(q(worked.shown("50")), QString("1375"));
    QCOMPARE(q(worked.shown("9")), QString("45"));
}

void RecalcEditsTest::sharedShapes()
{
    std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\ncolumn cost amounts \"C\" 9\ncolumn "
                       "total amounts \"T\" 9\n";
    for (int i = 1; i <= 200; ++i)
        text += "line\ncost: " + std::to_string(i) + "\ntotal: cost * 17.25 + " + (i % 2 ? "1\n" : "2\n");
    const Worked worked(text + "end s 200\nend workbook\n");
    Values again;
    const auto before = worked.program->evaluateNumbers({}, const_cast<Values &>(worked.values));
    QCOMPARE(before.counts.compiledShapes, std::size_t(0));
    Values values = worked.program->evaluate();
    const auto change = worked.program->evaluateNumbers({{CellAt{0, 0, 4}, 1000.0}}, values);
    QCOMPARE(change.counts.evaluated, std::size_t(1));
    QCOMPARE(values.number[worked.program->nodeOf({0, 1, 4})], 17251.0);
}

void RecalcEditsTest::cautionsTravel()
{
    const Worked worked(sheetText(
        {{"2 gpm"}, {"2 gpm"}, {"3 gpm"}, named("best", "least_at(x[1:3])"), named("next", "best + 1")}));
    QCOMPARE(worked.cautions("best"),
             std::vector<std::string>{"`x[1]` and `x[2]` are equal: the upper line is taken"});
    QCOMPARE(worked.cautions("next"), std::vector<std::string>{});
    QCOMPARE(worked.cautions("next", false), worked.cautions("best"));
}

void RecalcEditsTest::whatIf()
{
    const Worked worked(sheetText({{"3 mg/L as Fe", {"name iron", "unit mg/L as Fe"}},
                                   named("twice", "iron * 2"),
                                   named("plan", "twice + 1 mg/L as Fe")}));
    auto values = worked.program->evaluate({{worked.at("iron"), "5"}});
    QVERIFY(values.has_value());
    QCOMPARE(values->number[worked.node("twice")], 10.0);
    QCOMPARE(worked.number("twice"), 6.0);
    values = worked.program->evaluate({{worked.at("twice"), "20 mg/L as Fe"}}); // in place of a formula
    QVERIFY(values.has_value());
    QCOMPARE(values->number[worked.node("plan")], 21.0);
    QCOMPARE(q(worked.program->evaluate({{worked.at("iron"), "twice"}}).error().words),
             QString("`iron` takes a value here, and `twice` is none: write an amount with its unit"));
    QCOMPARE(q(worked.program->evaluate({{worked.at("iron"), "5 ft"}}).error().words),
             QString("this cell is set to mg/L as Fe, and 5 ft does not fit it"));
    QCOMPARE(q(worked.program->evaluate({{CellAt{0, 9, 0}, "5"}}).error().words),
             QString("there is no such cell"));
}

void RecalcEditsTest::previews()
{
    const Worked worked(sheetText({named("flow", "7 gpm"), named("twice", "flow * 2"), {""}}));
    auto preview = worked.program->preview(worked.book, worked.at("3"), "twice + 1 gpm", worked.values);
    QVERIFY(!preview.error);
    QCOMPARE(q(showTrimmed(preview.number, Bound::exact, preview.shown, 6).text()), QString("15 gpm"));
    preview = worked.program->preview(worked.book, worked.at("flow"), "twice", worked.values);
    QCOMPARE(q(preview.error->words), QString("circular: `flow` needs `twice`, `twice` needs `flow`"));
    // The nearer error first: a function that does not exist before the circle its argument would close.
    preview = worked.program->preview(worked.book, worked.at("flow"), "twise(twice)", worked.values);
    QCOMPARE(q(preview.error->words), QString("no function is named `twise`"));
    preview = worked.program->preview(worked.book, worked.at("3"), "2 + 1/0", worked.values);
    QCOMPARE(q(preview.error->words), QString("divides by zero"));
    preview = worked.program->preview(worked.book, worked.at("3"), "3 gpm", worked.values);
    QCOMPARE(q(preview.shown.text), QString("gpm"));
    // Words that no cell holds are equal to themselves too.
    for (const auto &[formula, met] : {std::pair{"\"a\" == \"a\"", 1.0},
                                       {"\"a\" == \"b\"", 0.0},
                                       {"\"{flow}\" != \"{flow}\"", 0.0},
                                       {"\"a\" != \"b\"", 1.0}}) {
        preview = worked.program->preview(worked.book, worked.at("3"), formula, worked.values);
        QVERIFY2(!preview.error, formula);
        QCOMPARE(preview.number, met);
    }
    QCOMPARE(worked.number("twice"), worked.number("flow") * 2);
}

void RecalcEditsTest::neighbors()
{
    const Worked worked(sheetText({named("flow", "7 gpm"), named("twice", "flow * 2"), {"sum(x[1:2])"}}));
    QCOMPARE(worked.program->precedents(worked.at("3"), 10),
             (std::vector<CellAt>{worked.at("flow"), worked.at("twice")}));
    QCOMPARE(worked.program->dependents(worked.at("flow"), 10),
             (std::vector<CellAt>{worked.at("twice"), worked.at("3")}));
}

QTEST_APPLESS_MAIN(RecalcEditsTest)
#include "recalc_edits_test.moc"
