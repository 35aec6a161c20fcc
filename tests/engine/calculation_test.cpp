/// The three-step calculation of a cell: formula, numbers put in, result, with conversions and what was left
/// out.
#include <QTest>

#include "file/reader.h"
#include "show/shown.h"

using namespace puteal;

namespace
{

/// A workbook of one sheet with one line a cell: words column `item`, amounts column `amount`.
const char *const sample = R"(puteal workbook 1
list verdict "works" "marginal" "will not work"
sheet water "Water test"
column item words "Item" 30
column amount amounts "Amount" 14
line
item: "Raw iron, dissolved"
amount: 6.2 mg/L as Fe
  name raw_iron
line
item: "Raw manganese"
amount: 0.45 mg/L as Mn
  name raw_manganese
line
item: "Oxidant need"
amount: 0.64 mg{Cl2}/mg{Fe} * raw_iron + 1.29 mg{Cl2}/mg{Mn} * raw_manganese
  name need
line
item: "Use"
amount: 300 gal/day
  name use
line
item: "Oxidant a day"
amount: need * use -> g/day
  name oxidant
line
item: "People"
amount: 4 people
  name people
line
item: "Use of one"
amount: use / people
  name use_of_one
line
item: "Test missing"
amount: hardness_left + 1 gpg
  name wrong
line
at amount
  unit gpg
  name hardness
line
item: "Blank in"
amount: hardness + 1 gpg
  name setting
line
item: "Loss"
amount: use - 350 gal/day
  name loss
line
item: "Short by"
amount: 10 gal/day - loss
  name short_by
line
item: "Choice"
amount: raw_iron > 3 mg/L as Fe ? use * 2 : use
  name doubled
line
item: "Price"
amount: $1,640
  name price
line
item: "With tax"
amount: price * 1.07
  name with_tax
line
item: "All"
amount: sum(amount[14:15])
  name all
line
item: "Volume"
amount: 1.5 ft^3 * 10 gal/ft^3
  name volume
line
item: "Squared"
amount: use^2
  name squared
line
item: "Turn"
amount: 6 / (use / people)
  name turn
line
item: "Verdict"
amount: raw_iron > 3 mg/L as Fe ? "marginal" : "works"
  name iron_verdict
  choices "works" "marginal" "will not work"
line
item: "Extra"
amount: people > 5 people ? price : $0
  name extra
  unit $
end water 21
)";

struct Built {
    Workbook workbook;
    UnitTable units;
    std::unique_ptr<Program> program;
    Values values;
};

const Built &built()
{
    static const Built once = [] {
        Built b;
        auto read = readWorkbook(std::string(sample) + "end workbook\n");
        if (!read)
            qFatal("%s (line %u)", read.error().words.c_str(), read.error().place.fileLine);
        b.workbook = std::move(*read);
        b.program = Program::build(b.workbook, b.units, Registry::general(b.units));
        b.values = b.program->evaluate();
        return b;
    }();
    return once;
}

Calculation of(const QString &name)
{
    const Built &b = built();
    return calculationOf(*b.program, b.workbook, b.values,
                         b.workbook.sheets[0].named(name.toStdString(), 0).value());
}

QString lines(const std::vector<std::string> &list)
{
    QStringList out;
    for (const std::string &line : list)
        out << QString::fromStdString(line);
    return out.join(" | ");
}

} // namespace

class CalculationTest : public QObject
{
    Q_OBJECT
private slots:
    void steps_data();
    void steps();
    void titles();
    void typedValues();
    void errorsStayWords();
    void addsConversions_data();
    void addsConversions();
};

void CalculationTest::steps_data()
{
    QTest::addColumn<QString>("cell");
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("putIn");
    QTest::addColumn<QString>("terms");
    QTest::addColumn<QString>("result");
    const auto row = [](const char *rule, const char *cell, const char *formula, const char *putIn,
                        const char *terms, const char *result) {
        QTest::newRow(rule) << cell << formula << putIn << terms << result;
    };
    row("a sum breaks at its plus", "need",
        "0.64 mg{Cl2}/mg{Fe} * raw_iron | + 1.29 mg{Cl2}/mg{Mn} * raw_manganese",
        "0.64 mg{Cl2}/mg{Fe} * 6.2 mg/L as Fe | + 1.29 mg{Cl2}/mg{Mn} * 0.45 mg/L as Mn",
        "3.97 mg/L as Cl2 | + 0.581 mg/L as Cl2", "4.55 mg/L as Cl2");
    row("what it is turned into stays with the formula", "oxidant", "need * use -> g/day",
        "4.55 mg/L as Cl2 * 300 gal/day -> g/day", "", "5.17 g/day as Cl2");
    row("counted things", "use_of_one", "use / people", "300 gal/day / 4 people", "",
        "75.0 gal/(day*person)");
    row("a negative number behind a minus stands in parentheses", "short_by", "10 gal/day | - loss",
        "10 gal/day | - (-50.0 gal/day)", "10 gal/day | - (-50.0 gal/day)", "60.0 gal/day");
    row("the branch taken", "doubled", "raw_iron > 3 mg/L as Fe | ? use * 2 | : use",
        "6.2 mg/L as Fe > 3 mg/L as Fe is yes, so | 300 gal/day * 2", "", "600 gal/day");
    row("the branch of a choice", "iron_verdict", "raw_iron > 3 mg/L as Fe | ? \"marginal\" | : \"works\"",
        "6.2 mg/L as Fe > 3 mg/L as Fe is yes, so | \"marginal\"", "", "marginal");
    row("the branch of money", "extra", "people > 5 people | ? price | : $0",
        "4 people > 5 people is no, so | $0", "", "$0");
    row("money as it is shown", "with_tax", "price * 1.07", "$1,640 * 1.07", "", "$1,754.80");
    row("a range is written out", "all", "sum(amount[14:15])", "sum($1,640, $1,754.80)", "", "$3,394.80");
    row("an amount under a power stands in parentheses", "squared", "use^2", "(300 gal/day)^2", "",
        "90000 gal^2/day^2");
    row("a quotient of a quotient", "turn", "6 / (use / people)", "6 / (300 gal/day / 4 people)", "",
        "0.0800 (day*person)/gal");
}

void CalculationTest::steps()
{
    QFETCH(QString, cell);
    QFETCH(QString, formula);
    QFETCH(QString, putIn);
    QFETCH(QString, terms);
    QFETCH(QString, result);
    const Calculation steps = of(cell);
    QCOMPARE(QString::fromStdString(steps.error), QString());
    QCOMPARE(lines(steps.formula), formula);
    QCOMPARE(lines(steps.putIn), putIn);
    QCOMPARE(lines(steps.terms), terms);
    QCOMPARE(QString::fromStdString(steps.result), result);
}

void CalculationTest::titles()
{
    QCOMPARE(of("need").title, std::string("Oxidant need"));
    QCOMPARE(of("need").name, std::string("need"));
    const Built &b = built();
    QCOMPARE(calculationOf(*b.program, b.workbook, b.values, {0, 0, 0}).name, std::string("item[1]"));
}

void CalculationTest::typedValues()
{
    const Calculation steps = of("raw_iron");
    QVERIFY(steps.formula.empty());
    QCOMPARE(steps.result, std::string("6.2 mg/L as Fe"));
}

void CalculationTest::errorsStayWords()
{
    const Calculation wrong = of("wrong");
    QVERIFY(!wrong.error.empty());
    QCOMPARE(lines(wrong.formula), "hardness_left | + 1 gpg");
    QVERIFY(wrong.result.empty());
    const Calculation blank = of("setting");
    QCOMPARE(blank.error, std::string("`hardness` is blank"));
    QCOMPARE(lines(blank.putIn), "hardness | + 1 gpg");
}

void CalculationTest::addsConversions_data()
{
    QTest::addColumn<QString>("cell");
    QTest::addColumn<QString>("note");
    QTest::newRow("liters against gallons") << "oxidant"
                                            << "3.785 L per gal";
    QTest::newRow("milligrams against grams") << "oxidant"
                                              << "1000 mg per g";
    QTest::newRow("none where units agree") << "need"
                                            << "";
    QTest::newRow("cubic feet against gallons") << "volume"
                                                << "7.481 gal per ft^3";
}

void CalculationTest::addsConversions()
{
    QFETCH(QString, cell);
    QFETCH(QString, note);
    const Calculation steps = of(cell);
    if (note.isEmpty())
        QCOMPARE(lines(steps.notes), QString());
    else
        QVERIFY2(lines(steps.notes).contains(note), qPrintable(lines(steps.notes)));
}

QTEST_APPLESS_MAIN(CalculationTest)
#include "calculation_test.moc"
