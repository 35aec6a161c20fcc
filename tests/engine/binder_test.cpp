/// Names, keys, sheets and indices bound to cells; what cannot be bound says what to write.
#include <QTest>

#include <algorithm>

#include "formula/binder.h"

using namespace puteal;

namespace
{

const UnitTable &units()
{
    static const UnitTable table = [] {
        UnitTable made;
        if (!made.declareThing("tank"))
            qFatal("tank");
        return made;
    }();
    return table;
}

void name(Sheet &sheet, std::uint32_t column, std::uint32_t line, const char *word)
{
    Cell cell = sheet.cell(column, line);
    Attributes beside;
    beside.name = word;
    cell.attributes = std::make_shared<const Attributes>(beside);
    sheet.setCell(column, line, cell);
}

Column column(const char *key)
{
    Column out;
    out.key = key;
    return out;
}

/// water: columns item, amount; 10 lines, raw_iron on line 3, hardness on line 4.
/// costs: columns year, cost; 20 lines, total on line 20.
const Workbook &workbook()
{
    static const Workbook made = [] {
        Workbook book;
        Sheet water("water", "Water"), costs("costs", "Costs");
        water.insertColumn(0, column("item"));
        water.insertColumn(1, column("amount"));
        water.insertLines(0, 10);
        name(water, 1, 2, "raw_iron");
        name(water, 1, 3, "hardness");
        costs.insertColumn(0, column("year"));
        costs.insertColumn(1, column("cost"));
        costs.insertLines(0, 20);
        name(costs, 1, 19, "total");
        book.sheets = {water, costs};
        book.things = {"tank"};
        book.lists = {{"verdict", {"works", "marginal"}}};
        return book;
    }();
    return made;
}

Result<Binding> bound(const std::string &formula, const CellAt &self)
{
    const auto tree = parseFormula(formula, units());
    if (!tree)
        qFatal("%s: %s", formula.c_str(), tree.error().words.c_str());
    return bind(
        *tree, workbook(), self,
        {[](const void *, std::string_view word) { return word == "chlorine" || word == "total"; }, nullptr});
}

/// "water amount 3" or "costs cost 2:9", lines counted from 1.
QString shown(const BoundReference &reference)
{
    const auto &sheets = workbook().sheets;
    if (reference.isRange)
        return QString("%1 %2 %3:%4")
            .arg(sheets[reference.range.sheet].key().c_str(),
                 sheets[reference.range.sheet].column(reference.range.column).key.c_str())
            .arg(reference.range.first + 1)
            .arg(reference.range.last + 1);
    return QString("%1 %2 %3")
        .arg(sheets[reference.cell.sheet].key().c_str(),
             sheets[reference.cell.sheet].column(reference.cell.column).key.c_str())
        .arg(reference.cell.line + 1);
}

} // namespace

class BinderTest : public QObject
{
    Q_OBJECT
private slots:
    void binds_data();
    void binds();
    void refuses_data();
    void refuses();
    void allReferencesInOrder();
    void bareWords();
    void knownWords();
};

void BinderTest::binds_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("cell");
    const auto row = [](const char *rule, const char *formula, const char *cell) {
        QTest::newRow(rule) << QString(formula) << QString(cell);
    };
    // all seen from line 6 of water
    row("a name is a cell", "raw_iron", "water amount 3");
    row("a bare key is the same line", "amount", "water amount 6");
    row("lines are counted from 1", "amount[1]", "water amount 1");
    row("the last line", "amount[10]", "water amount 10");
    row("the line above", "amount[-1]", "water amount 5");
    row("lines below", "amount[+2]", "water amount 8");
    row("a range", "amount[2:9]", "water amount 2:9");
    row("running", "amount[1:+0]", "water amount 1:6");
    row("everything above", "amount[1:-1]", "water amount 1:5");
    row("the whole column", "amount[:]", "water amount 1:10");
    row("a range of one line", "amount[4:4]", "water amount 4:4");
    row("a name of another sheet", "costs.total", "costs cost 20");
    row("a line of another sheet", "costs.cost[8]", "costs cost 8");
    row("a column of another sheet", "costs.cost[:]", "costs cost 1:20");
    row("its own sheet by key", "water.raw_iron", "water amount 3");
    row("its own sheet's line by key", "water.amount[-1]", "water amount 5");
}

void BinderTest::binds()
{
    QFETCH(QString, formula);
    QFETCH(QString, cell);
    const auto binding = bound(formula.toStdString(), {0, 1, 5});
    QVERIFY2(binding.has_value(), binding ? "" : binding.error().words.c_str());
    QCOMPARE(binding->references.size(), std::size_t{1});
    QCOMPARE(shown(binding->references[0]), cell);
}

void BinderTest::refuses_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<int>("line");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("piece");
    QTest::addColumn<QString>("fixes");
    const auto row = [](const char *rule, const char *formula, int line, const char *words, const char *piece,
                        const char *fixes = "") {
        QTest::newRow(rule) << QString(formula) << line << QString(words) << QString(piece) << QString(fixes);
    };
    row("a mistyped name", "raw_irn + 1", 6, "no cell or column is called `raw_irn`; raw_iron?", "raw_irn",
        "raw_iron + 1");
    row("a name of another sheet without it, although it is a listed word too", "total", 6,
        "no cell or column is called `total`; costs.total?", "total", "costs.total");
    row("nothing like it", "zzzzzz", 6, "no cell or column is called `zzzzzz`", "zzzzzz");
    row("a mistyped name of a sheet", "costs.totl", 6,
        "no cell or column is called `costs.totl`; costs.total?", "costs.totl", "costs.total");
    row("a mistyped sheet", "cost.total", 6, "there is no sheet `cost`; costs?", "cost", "costs.total");
    row("a unit without a number", "2 * days", 6, "`days` is a unit and needs a number", "days",
        "2 * 1 days");
    row("a thing of the workbook without a number", "2 * tank", 6, "`tank` is a unit and needs a number",
        "tank", "2 * 1 tank");
    row("a listed word without quotation marks", "raw_iron == works", 6,
        "`works` is a listed word: put it in quotation marks", "works", "raw_iron == \"works\"");
    row("a function's listed word", "f(chlorine)", 6,
        "`chlorine` is a listed word: put it in quotation marks", "chlorine", "f(\"chlorine\")");
    row("a listed word is no part of a sum", "works + 1", 6, "no cell or column is called `works`", "works");
    row("an address of a spreadsheet", "amount2 + 1", 6,
        "no cell or column is called `amount2`: a line of a column is written amount[2]", "amount2",
        "amount[2] + 1");
    row("a condition of other languages", "raw_iron > 1 and true", 6, "a condition is yes or no: write yes",
        "true", "raw_iron > 1 and yes");
    row("above the first line", "amount[-1]", 1, "`amount[-1]` points above the first line, seen from line 1",
        "-1");
    row("below the last line", "amount[+1]", 10, "`amount[+1]` points below the last line, seen from line 10",
        "+1");
    row("no such line", "amount[11]", 6, "sheet `water` has 10 lines, so there is no line 11", "11");
    row("no line 0", "amount[0]", 6, "lines are counted from 1", "0");
    row("a range outside the sheet", "amount[2:99]", 6, "sheet `water` has 10 lines, so there is no line 99",
        "99");
    row("a range upward", "1 + amount[9:2]", 6,
        "`amount[9:2]` runs upward here, from line 9 to line 2: write amount[2:9]", "amount[9:2]",
        "1 + amount[2:9]");
    row("everything above, on line 1", "amount[1:-1]", 1,
        "`amount[1:-1]` points above the first line, seen from line 1", "-1");
    row("a relative line of another sheet", "costs.cost[-1]", 6,
        "`costs.cost[-1]` counts from a line of another sheet: say which line, or name the cell",
        "costs.cost[-1]");
    row("a bare column of another sheet", "costs.cost", 6,
        "`costs.cost` is a column of another sheet: say which line, as in costs.cost[8], or write "
        "costs.cost[:] for all of it",
        "costs.cost", "costs.cost[:]");
    row("a line of a name", "raw_iron[2]", 6, "`raw_iron` is one cell and takes no line: write raw_iron",
        "raw_iron[2]", "raw_iron");
    row("a deleted cell", "2 * raw_iron[gone]", 6,
        "the cell that `raw_iron` named was deleted: choose another", "raw_iron[gone]");
    row("deleted lines", "amount[gone]", 6, "the cell that `amount` named was deleted: choose another",
        "amount[gone]");
}

void BinderTest::refuses()
{
    QFETCH(QString, formula);
    QFETCH(int, line);
    QFETCH(QString, words);
    QFETCH(QString, piece);
    QFETCH(QString, fixes);
    const std::string text = formula.toStdString();
    const auto binding = bound(text, {0, 1, static_cast<std::uint32_t>(line - 1)});
    QVERIFY2(!binding.has_value(), "this must not bind");
    const Error &error = binding.error();
    QCOMPARE(QString::fromStdString(error.words), words);
    const Span span = *error.place.span;
    QCOMPARE(QString::fromStdString(text.substr(span.begin, span.end - span.begin)), piece);
    QStringList mended;
    for (const Fix &fix : error.fixes) {
        std::string other = text;
        other.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
        QVERIFY2(bound(other, {0, 1, 5}).has_value(), other.c_str()); // every fix was tested
        mended << QString::fromStdString(other);
    }
    QCOMPARE(mended.join(" | "), fixes);
}

void BinderTest::allReferencesInOrder()
{
    const auto binding =
        bound("sum(amount[1:-1]) + raw_iron * \"{hardness} {costs.total -> $}\" ", {0, 1, 5});
    QVERIFY(binding.has_value());
    QStringList cells;
    for (const BoundReference &reference : binding->references)
        cells << shown(reference);
    QCOMPARE(cells.join(", "), QString("water amount 1:5, water amount 3, water amount 4, costs cost 20"));
}

void BinderTest::bareWords()
{
    const auto tree = parseFormula("use + costs.total + sum(cost[2:9]) + \"{rate}\" + old[gone]", units());
    QVERIFY(tree.has_value());
    QVERIFY(isBareWordIn(*tree, "use"));
    QVERIFY(isBareWordIn(*tree, "cost"));
    QVERIFY(isBareWordIn(*tree, "rate"));
    QVERIFY(!isBareWordIn(*tree, "total"));
    QVERIFY(!isBareWordIn(*tree, "costs"));
    QVERIFY(!isBareWordIn(*tree, "old"));
    QVERIFY(!isBareWordIn(*tree, "sum"));
}

void BinderTest::knownWords()
{
    const KnownWords known{&workbook(), 0, [](const void *, std::string_view word) { return word == "max"; },
                           nullptr};
    for (const char *word : {"raw_iron", "amount", "costs", "max"})
        QVERIFY2(isKnownWordIn(&known, word), word);
    for (const char *word : {"total", "dya", "min"})
        QVERIFY2(!isKnownWordIn(&known, word), word);
    const auto tree = parseFormula("3 mg/dya", units(), isKnownWordIn, &known);
    QVERIFY(!tree.has_value());
    QCOMPARE(tree.error().words, std::string("`dya` is no unit; day?"));
    QVERIFY(parseFormula("3 mg/raw_iron", units(), isKnownWordIn, &known).has_value());
}

QTEST_APPLESS_MAIN(BinderTest)
#include "binder_test.moc"
