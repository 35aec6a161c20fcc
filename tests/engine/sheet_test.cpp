/// Sheets: names, lines that move, comments that move with them, what a text is.
#include <QTest>

#include "sheet/typed_text.h"
#include "sheet/workbook.h"

using namespace puteal;

namespace
{

Cell typed(const std::string &text, const std::string &name = {})
{
    Cell cell;
    cell.text = std::make_shared<const std::string>(text);
    if (!name.empty()) {
        Attributes beside;
        beside.name = name;
        cell.attributes = std::make_shared<const Attributes>(beside);
    }
    return cell;
}

Column column(const std::string &key, ColumnKind kind = ColumnKind::amounts)
{
    Column out;
    out.key = key;
    out.kind = kind;
    return out;
}

/// item | amount, six lines "a0".."a5", the third named `third`.
Sheet sample()
{
    Sheet sheet("water", "Water test");
    sheet.insertColumn(0, column("item", ColumnKind::words));
    sheet.insertColumn(1, column("amount"));
    sheet.insertLines(0, 6);
    for (std::uint32_t l = 0; l < 6; ++l)
        sheet.setCell(1, l, typed("a" + std::to_string(l), l == 2 ? "third" : ""));
    return sheet;
}

std::string order(const Sheet &sheet)
{
    std::string out;
    for (std::uint32_t l = 0; l < sheet.lineCount(); ++l)
        out += sheet.cell(1, l).blank() ? "-" : sheet.cell(1, l).typed().substr(1);
    return out;
}

QString whereIs(const Sheet &sheet, const std::string &name)
{
    const auto at = sheet.named(name, 0);
    return at ? QString("%1,%2").arg(at->column).arg(at->line) : QString("nowhere");
}

template<class T>
QString wordsOf(const Result<T> &result)
{
    return result ? QString("good") : QString::fromStdString(result.error().words);
}

} // namespace

class SheetTest : public QObject
{
    Q_OBJECT
private slots:
    void linesMove_data()
    {
        QTest::addColumn<QString>("change");
        QTest::addColumn<int>("at");
        QTest::addColumn<int>("count");
        QTest::addColumn<int>("to");
        QTest::addColumn<QString>("lines");
        QTest::addColumn<QString>("name");
        QTest::newRow("two lines put in above the name") << "insert" << 1 << 2 << 0 << "0--12345"
                                                         << "1,4";
        QTest::newRow("a line put in under the name") << "insert" << 3 << 1 << 0 << "012-345"
                                                      << "1,2";
        QTest::newRow("lines put in at the end") << "insert" << 6 << 1 << 0 << "012345-"
                                                 << "1,2";
        QTest::newRow("lines above deleted") << "delete" << 0 << 2 << 0 << "2345"
                                             << "1,0";
        QTest::newRow("the named line deleted") << "delete" << 2 << 1 << 0 << "01345"
                                                << "nowhere";
        QTest::newRow("lines below deleted") << "delete" << 4 << 2 << 0 << "0123"
                                             << "1,2";
        QTest::newRow("more deleted than there are") << "delete" << 5 << 9 << 0 << "01234"
                                                     << "1,2";
        QTest::newRow("named line moved down") << "move" << 2 << 1 << 5 << "013425"
                                               << "1,4";
        QTest::newRow("named line moved up") << "move" << 2 << 2 << 0 << "230145"
                                             << "1,0";
        QTest::newRow("lines moved up past the name") << "move" << 4 << 2 << 1 << "045123"
                                                      << "1,4";
        QTest::newRow("lines moved down past the name") << "move" << 0 << 2 << 6 << "234501"
                                                        << "1,0";
        QTest::newRow("moved onto itself") << "move" << 2 << 2 << 3 << "012345"
                                           << "1,2";
    }
    void linesMove()
    {
        QFETCH(QString, change);
        QFETCH(int, at);
        QFETCH(int, count);
        QFETCH(int, to);
        QFETCH(QString, lines);
        QFETCH(QString, name);
        Sheet sheet = sample();
        const auto first = static_cast<std::uint32_t>(at), n = static_cast<std::uint32_t>(count);
        if (change == "insert")
            sheet.insertLines(first, n);
        else if (change == "delete")
            sheet.deleteLines(first, n);
        else
            sheet.moveLines(first, n, static_cast<std::uint32_t>(to));
        QCOMPARE(QString::fromStdString(order(sheet)), lines);
        QCOMPARE(whereIs(sheet, "third"), name);
        QCOMPARE(sheet.lineCount(), static_cast<std::uint32_t>(lines.size()));
    }

    void columnsMoveNames()
    {
        Sheet sheet = sample();
        sheet.insertColumn(0, column("year"));
        QCOMPARE(whereIs(sheet, "third"), QString("2,2"));
        sheet.deleteColumn(1);
        QCOMPARE(whereIs(sheet, "third"), QString("1,2"));
        sheet.deleteColumn(1);
        QCOMPARE(whereIs(sheet, "third"), QString("nowhere"));
    }

    void namesFollowCells()
    {
        Sheet sheet = sample();
        sheet.setCell(1, 2, typed("5"));
        QCOMPARE(whereIs(sheet, "third"), QString("nowhere"));
        sheet.setCell(1, 4, typed("6", "fifth"));
        QCOMPARE(whereIs(sheet, "fifth"), QString("1,4"));
        sheet.setCell(1, 0, typed("7", "fifth")); // a name may change its cell in either order
        sheet.setCell(1, 4, typed("6"));
        QCOMPARE(whereIs(sheet, "fifth"), QString("1,0"));
    }

    void commentsOfDeletedLinesStay()
    {
        Sheet sheet = sample();
        sheet.line(1).kept = {{"", "# first"}, {"amount", "# second"}};
        sheet.line(5).kept = {{"", "# last"}};
        Sheet atEnd = sheet;
        sheet.deleteLines(1, 2);
        const std::vector<Kept> moved{{"", "# first"}, {"", "# second"}};
        QVERIFY(sheet.line(1).kept == moved);
        atEnd.deleteLines(4, 2);
        const std::vector<Kept> end{{"=", "# last"}};
        QVERIFY(atEnd.keptAtEnd == end);
    }

    void columnGivesWhatTheCellLacks()
    {
        Sheet sheet = sample();
        sheet.column(1).attributes.unit = "mg/L";
        sheet.column(1).attributes.figures = 2;
        sheet.column(1).attributes.sources = {"L1"};
        QCOMPARE(sheet.effective(1, 0).unit, std::string("mg/L"));
        QCOMPARE(sheet.effective(1, 0).figures, 2);
        Attributes own;
        own.places = 1;
        own.choices = {"ditch", "septic"};
        Cell cell = typed("septic");
        cell.attributes = std::make_shared<const Attributes>(own);
        sheet.setCell(1, 0, cell);
        QVERIFY2(sheet.effective(1, 0).unit.empty(), "a choice takes no unit from its column");
        QVERIFY2(sheet.effective(1, 0).figures == 0, "places of the cell beat figures of the column");
        QCOMPARE(sheet.effective(1, 0).sources, std::vector<std::string>{"L1"});
        sheet.column(1).attributes = {};
        sheet.column(1).attributes.list = "verdict";
        QCOMPARE(sheet.effective(1, 1).list, std::string("verdict"));
        QVERIFY2(sheet.effective(1, 0).list.empty(), "choices of the cell beat the column's list");
    }

    void wordsOfALine()
    {
        Sheet sheet = sample();
        sheet.insertColumn(2, column("why", ColumnKind::words));
        sheet.insertColumn(3, column("cost"));
        QCOMPARE(sheet.itemWords(1, 0), std::string());
        sheet.setCell(0, 0, typed("Raw iron"));
        QCOMPARE(sheet.itemWords(1, 0), std::string("Raw iron"));
        QCOMPARE(sheet.itemWords(3, 0), std::string("Raw iron"));
        sheet.setCell(2, 0, typed("filter"));
        QCOMPARE(sheet.itemWords(3, 0), std::string("filter"));
        sheet.setCell(2, 1, typed("only right"));
        QCOMPARE(sheet.itemWords(1, 1), std::string("only right"));
    }

    void nameFits_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<bool>("unit");
        QTest::addColumn<QString>("shows");
        QTest::newRow("free") << "raw_iron" << false << "good";
        QTest::newRow("formulas of gases") << "o2" << false << "good";
        QTest::newRow("one letter")
            << "q" << false
            << "`q` cannot be a name: use lower-case letters, digits and _, starting with a letter, two "
               "characters or more, as in raw_iron";
        QTest::newRow("upper case")
            << "Iron" << false
            << "`Iron` cannot be a name: use lower-case letters, digits and _, starting with a letter, two "
               "characters or more, as in raw_iron";
        QTest::newRow("64 characters") << QString(64, 'x') << false << "good";
        QTest::newRow("65 characters")
            << QString(65, 'x') << false << "this name has 65 characters, 64 are the most: shorten it";
        QTest::newRow("unit word") << "gpm" << true
                                   << "`gpm` is a unit word: take a longer name, as in gpm_used";
        QTest::newRow("reserved") << "and" << false
                                  << "`and` is a word of the formula language: take another name";
        QTest::newRow("column key") << "amount" << false
                                    << "`amount` is the key of a column of sheet water: take another name";
        QTest::newRow("taken") << "third" << false
                               << "`third` already names line 3 of sheet water: take another name";
    }
    void nameFits()
    {
        QFETCH(QString, name);
        QFETCH(bool, unit);
        QFETCH(QString, shows);
        QCOMPARE(wordsOf(checkName(sample(), name.toStdString(), unit)), shows);
    }
    void ownNameIsNotTaken()
    {
        QCOMPARE(wordsOf(checkName(sample(), "third", false, CellAt{0, 1, 2})), QString("good"));
        QCOMPARE(wordsOf(checkName(sample(), "third", false, CellAt{0, 1, 3})),
                 QString("`third` already names line 3 of sheet water: take another name"));
    }
    void columnKeyFits()
    {
        const Sheet sheet = sample();
        QCOMPARE(wordsOf(checkColumnKey(sheet, "a")), QString("good"));
        QCOMPARE(wordsOf(checkColumnKey(sheet, "amount", 1)), QString("good"));
        QCOMPARE(wordsOf(checkColumnKey(sheet, "amount")),
                 QString("sheet water already has a column `amount`: take another key"));
        QCOMPARE(wordsOf(checkColumnKey(sheet, "third")),
                 QString("`third` names line 3 of sheet water: take another key"));
        QCOMPARE(wordsOf(checkColumnKey(sheet, "no")),
                 QString("`no` is a word of the formula language: take another key"));
        QCOMPARE(
            wordsOf(checkColumnKey(sheet, "A")),
            QString(
                "`A` cannot be a column key: use lower-case letters, digits and _, starting with a letter"));
    }

    void keysOfNewColumns()
    {
        Sheet sheet("s", "S");
        std::string keys;
        for (std::uint32_t c = 0; c < 21; ++c) {
            sheet.insertColumn(c, column(freeColumnKey(sheet)));
            keys += sheet.column(c).key;
        }
        QCOMPARE(keys, std::string("abcefijknopqrtuvwxyza2"));
        sheet.deleteColumn(3);
        QCOMPARE(freeColumnKey(sheet), std::string("e"));
    }

    void marks()
    {
        QCOMPARE(markWord('L'), std::string_view("laboratory"));
        QCOMPARE(markWord('F'), std::string_view("field_kit"));
        QCOMPARE(markTitle('F'), std::string_view("field kit"));
        QCOMPARE(markWord('X'), std::string_view());
        QVERIFY(isMarkId("W") && isMarkId("S123"));
        QVERIFY(!isMarkId("") && !isMarkId("X1") && !isMarkId("S1234") && !isMarkId("Sa") && !isMarkId("l1"));
    }

    void whatATextIs_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<bool>("refers");
        QTest::addColumn<bool>("formula");
        QTest::newRow("a name") << "raw_iron" << true << false; // could be a listed word
        QTest::newRow("a sum of names") << "iron + manganese" << true << true;
        QTest::newRow("the line above") << "year[-1] + 1" << true << true;
        QTest::newRow("another sheet") << "costs.total" << true << true;
        QTest::newRow("inside a call") << "sqrt(area)" << true << true;
        QTest::newRow("call of numbers") << "sqrt(4)" << false << true;
        QTest::newRow("numbers") << "3 + 4" << false << true;
        QTest::newRow("a quantity") << "3.2 mg/L as Fe" << false << false;
        QTest::newRow("rate of money") << "$0.15/kWh" << false << false;
        QTest::newRow("unit with parentheses") << "62.5 gal/(day*person)" << false << false;
        QTest::newRow("divided by a name") << "3 mg/iron" << true << true;
        QTest::newRow("units in a sum") << "5 gal/day + 3 gpm" << false << true;
        QTest::newRow("converted") << "3 gpm -> gal/day" << false << true;
        QTest::newRow("name converted") << "flow -> gal/day" << true << true;
        QTest::newRow("a date") << "2026-05-12" << false << false;
        QTest::newRow("yes") << "yes" << false << false;
        QTest::newRow("below a bound") << "<0.05 mg/L" << false << false;
        QTest::newRow("words") << "\"iron filter\"" << false << false;
        QTest::newRow("live words") << "\"{iron} is high\"" << true << false;
        QTest::newRow("a brace in words") << "\"{{iron\"" << false << false;
        QTest::newRow("constant") << "2 * pi" << false << true;
        QTest::newRow("condition") << "not(has_softener) ? 1 : 2" << true << true;
        QTest::newRow("words side by side") << "will not work" << true << false;
        QTest::newRow("counted thing of the workbook") << "3 tank + 1 tank" << false << true;
    }
    void whatATextIs()
    {
        QFETCH(QString, text);
        QFETCH(bool, refers);
        QFETCH(bool, formula);
        const TextJudge judge({"tank"});
        QCOMPARE(judge.refersToCell(text.toStdString()), refers);
        QCOMPARE(judge.isFormula(text.toStdString()), formula);
    }

    void textsAFileCanHold()
    {
        QCOMPARE(cleanTyped("  a\tb \n"), std::string("a b"));
        QCOMPARE(cleanTyped(" \n "), std::string());
        QCOMPARE(cleanTyped("3 µg/L"), std::string("3 µg/L"));
        QVERIFY(isCleanTyped("3 µg/L") && isCleanTyped(""));
        QVERIFY(!isCleanTyped(" 3") && !isCleanTyped("3 ") && !isCleanTyped("3\t4"));
    }

    void sheetsCompare()
    {
        Sheet a = sample(), b = sample();
        QVERIFY(a == b);
        b.setCell(1, 5, typed("other"));
        QVERIFY(!(a == b));
        b.setCell(1, 5, typed("a5"));
        QVERIFY(a == b);
        b.line(3).kept.push_back({"", "# x"});
        QVERIFY2(!(a == b), "a comment lost is a difference");
        a.line(4).kept.push_back({"amount", "# x"});
        QVERIFY2(a == b, "before what a comment stands is none");
    }
};

QTEST_APPLESS_MAIN(SheetTest)
#include "sheet_test.moc"
