/// What structural changes do to references: the rules one by one.
#include <QTest>

#include "support/structure.h"

using namespace puteal;

namespace
{

const UnitTable &units()
{
    static const UnitTable table;
    return table;
}

StructuralChange insertAt(std::uint32_t line, InsertSide side, std::uint32_t count = 1)
{
    StructuralChange change;
    change.kind = StructuralChange::Kind::insertLines;
    change.at = side == InsertSide::above ? line - 1 : line;
    change.count = count;
    change.side = side;
    return change;
}

/// "above 3", "below 3", "above 3 x2", "delete 3", "delete 3:5", "move 3 before 6", "move 3:4 before 1";
/// lines from 1.
StructuralChange changeOf(const QString &text)
{
    const QStringList words = text.split(' ');
    const auto number = [](const QString &word) { return static_cast<std::uint32_t>(word.toInt()); };
    if (words[0] == "above" || words[0] == "below")
        return insertAt(number(words[1]), words[0] == "above" ? InsertSide::above : InsertSide::below,
                        words.size() > 2 ? number(words[2].mid(1)) : 1);
    StructuralChange change;
    const QStringList lines = words[1].split(':');
    change.kind =
        words[0] == "move" ? StructuralChange::Kind::moveLines : StructuralChange::Kind::deleteLines;
    change.at = number(lines[0]) - 1;
    change.count = number(lines.back()) - change.at;
    if (words[0] == "move")
        change.to = number(words[3]) - 1;
    return change;
}

/// Lines parted by " | ", columns a, b, c by " ; ".
Workbook workbookOf(const QString &text)
{
    const QStringList lines = text.split(" | ");
    Workbook book;
    book.sheets.push_back(test::sheetOf("here", {"a", "b", "c"}, static_cast<std::uint32_t>(lines.size())));
    for (int l = 0; l < lines.size(); ++l) {
        const QStringList cells = lines[l].split(" ; ");
        for (int c = 0; c < cells.size(); ++c)
            test::setText(book.sheets[0], static_cast<std::uint32_t>(c), static_cast<std::uint32_t>(l),
                          cells[c] == "." ? std::string() : cells[c].trimmed().toStdString());
    }
    return book;
}

QString textOf(const Workbook &book)
{
    QStringList lines;
    for (std::uint32_t l = 0; l < book.sheets[0].lineCount(); ++l) {
        QStringList cells;
        for (std::uint32_t c = 0; c < 3; ++c) {
            const Cell &cell = book.sheets[0].cell(c, l);
            cells << (cell.blank() ? QString(".") : QString::fromStdString(cell.typed()));
        }
        while (cells.size() > 1 && cells.back() == ".")
            cells.pop_back();
        lines << cells.join(" ; ");
    }
    return lines.join(" | ");
}

} // namespace

class RewriterTest : public QObject
{
    Q_OBJECT
private slots:
    void rules_data();
    void rules();
    void names();
    void otherSheets();
    void renames_data();
    void renames();
    void deletedColumnsAndSheets();
    void everyTextGoesAlong();
    void whatIsTold_data();
    void whatIsTold();
    void runs();
    void wrongTextsStay();
    void spacingSurvives();
    void valuesAreNoFormulas();
};

// "." is a blank cell.
void RewriterTest::rules_data()
{
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("change");
    QTest::addColumn<QString>("after");
    const auto row = [](const char *rule, const char *before, const char *change, const char *after) {
        QTest::newRow(rule) << QString(before) << QString(change) << QString(after);
    };
    // a formula that stands alone keeps its cells
    row("an unsigned index stays on its cell", "1 | 2 | a[1] + a[2]", "above 2", "1 | . | 2 | a[1] + a[3]");
    row("a signed index of a lone formula stays on its cell", "1 | 2 | a[-2]", "above 2",
        "1 | . | 2 | a[-3]");
    row("below the formula nothing changes", "1 | a[-1]", "below 2", "1 | a[-1] | .");
    row("a deleted cell is gone", "1 | 2 | a[1] * 2", "delete 1", "2 | a[gone] * 2");
    row("a signed index to a deleted cell is gone", "1 | 2 | a[-2]", "delete 1", "2 | a[gone]");
    row("a formula that moves keeps its cell", "1 | 2 | a[-1] | 4", "move 3 before 1", "a[+2] | 1 | 2 | 4");
    row("a cell that moves is followed", "1 | 2 | 3 | a[1]", "move 1 before 4", "2 | 3 | 1 | a[3]");
    row("an index that points nowhere is left as typed", "a[-1] | 1", "above 2", "a[-1] | . | 1");
    row("an index below the sheet is left as typed", "a[9] | 1", "above 2", "a[9] | . | 1");
    row("the same line is always the same line", ". ; b | 2", "above 1", ". | . ; b | 2");
    row("+0 is the same line", "a[+0] | 2", "above 1", ". | a[+0] | 2");

    // ranges
    row("a range grows by lines put inside", "1 | 2 | 3 | 4 | sum(a[1:3])", "above 3",
        "1 | 2 | . | 3 | 4 | sum(a[1:4])");
    row("a range grows below its last by line below", "1 | 2 | 3 | 4 | sum(a[1:2])", "below 2",
        "1 | 2 | . | 3 | 4 | sum(a[1:3])");
    row("a range does not grow below its last by line above the next", "1 | 2 | 3 | 4 | sum(a[1:2])",
        "above 3", "1 | 2 | . | 3 | 4 | sum(a[1:2])");
    row("a range grows above its first by line above", "0 | 1 | 2 | 3 | sum(a[2:3])", "above 2",
        "0 | . | 1 | 2 | 3 | sum(a[2:4])");
    row("a range does not grow above its first by line below", "0 | 1 | 2 | 3 | sum(a[2:3])", "below 1",
        "0 | . | 1 | 2 | 3 | sum(a[3:4])");
    row("a range grows between it and the total that touches it", "1 | 2 | sum(a[1:2])", "above 3",
        "1 | 2 | . | sum(a[1:3])");
    row("also when the total stands above", "sum(a[2:3]) | 1 | 2", "below 1", "sum(a[2:4]) | . | 1 | 2");
    row("everything above takes a new line in", "1 | 2 | sum(a[1:-1])", "above 3",
        "1 | 2 | . | sum(a[1:-1])");
    row("everything above closes over a deleted line", "1 | 2 | 3 | sum(a[1:-1])", "delete 3",
        "1 | 2 | sum(a[1:-1])");
    row("deleted lines leave a range", "1 | 2 | 3 | 4 | 5 | sum(a[2:4])", "delete 3:4",
        "1 | 2 | 5 | sum(a[2:2])");
    row("deleted edges leave a range", "1 | 2 | 3 | 4 | 5 | sum(a[2:4])", "delete 1:2",
        "3 | 4 | 5 | sum(a[1:2])");
    row("a range is gone when no line of it is left", "1 | 2 | 3 | 4 | sum(a[2:3])", "delete 2:3",
        "1 | 4 | sum(a[gone])");
    row("a line moved out leaves a range", "1 | 2 | 3 | 4 | 5 | sum(a[1:3])", "move 2 before 6",
        "1 | 3 | 4 | 5 | 2 | sum(a[1:2])");
    row("a line moved out of the edge leaves a range", "1 | 2 | 3 | 4 | 5 | sum(a[1:3])", "move 3 before 6",
        "1 | 2 | 4 | 5 | 3 | sum(a[1:2])");
    row("a line of the range dropped at its edge stays in", "1 | 2 | 3 | 4 | sum(a[1:3])", "move 1 before 4",
        "2 | 3 | 1 | 4 | sum(a[1:3])");
    row("a line dropped inside joins", "1 | 2 | 3 | 4 | sum(a[1:2])", "move 4 before 2",
        "1 | 4 | 2 | 3 | sum(a[1:3])");
    row("a strange line dropped at the edge stays out", "1 | 2 | 3 | 4 | sum(a[1:2])", "move 4 before 3",
        "1 | 2 | 4 | 3 | sum(a[1:2])");
    row("a strange line dropped between range and total joins", "0 | 1 | 2 | sum(a[2:3])", "move 1 before 4",
        "1 | 2 | 0 | sum(a[1:3])");
    row("a range moves along when all its lines move", "1 | 2 | 3 | 4 | 5 | sum(a[1:2])", "move 1:2 before 5",
        "3 | 4 | 1 | 2 | 5 | sum(a[3:4])");
    row("the whole column is the whole column", "1 | 2 ; sum(a[:])", "above 1", ". | 1 | 2 ; sum(a[:])");
    row("a range outside the sheet is left as typed", "1 | sum(a[1:9])", "below 2", "1 | sum(a[1:9]) | .");

    // a filled run keeps the place
    row("a line inside a run joins it", "9 | a[-1]+1 | a[-1]+1 | a[-1]+1", "above 3",
        "9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | a[-1]+1");
    row("two lines inside a run join it", "9 | a[-1]+1 | a[-1]+1", "above 3 x2",
        "9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | a[-1]+1");
    row("a run closes over a deleted line", "9 | a[-1]+1 | a[-1]+1 | a[-1]+1", "delete 3",
        "9 | a[-1]+1 | a[-1]+1");
    row("a run closes over its first line", "9 | a[-1]+1 | a[-1]+1 | a[-1]+1", "delete 2",
        "9 | a[-1]+1 | a[-1]+1");
    row("a run follows a new order", "9 | a[-1]+b ; 1 | a[-1]+b ; 2 | a[-1]+b ; 3", "move 4 before 2",
        "9 | a[-1]+b ; 3 | a[-1]+b ; 1 | a[-1]+b ; 2");
    row("a run follows when its first line moves", "9 | a[-1]+b ; 1 | a[-1]+b ; 2 | a[-1]+b ; 3",
        "move 2 before 5", "9 | a[-1]+b ; 2 | a[-1]+b ; 3 | a[-1]+b ; 1");
    row("line below on the last joins", "9 | a[-1]+1 | a[-1]+1 | 5", "below 3",
        "9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | 5");
    row("line above the next line does not join", "9 | a[-1]+1 | a[-1]+1 | 5", "above 4",
        "9 | a[-1]+1 | a[-1]+1 | . | 5");
    row("line above on the first joins", "9 | b*2 | b*2", "above 2", "9 | b*2 | b*2 | b*2");
    row("line below the line before does not join what looks nowhere", "9 | b*2 | b*2", "below 1",
        "9 | . | b*2 | b*2");
    row("between a run and the cell it leans on a line joins", "9 | a[-1]+1 | a[-1]+1", "below 1",
        "9 | a[-1]+1 | a[-1]+1 | a[-1]+1");
    row("also when the run looks down", "a[+1]+1 | a[+1]+1 | 9", "above 3",
        "a[+1]+1 | a[+1]+1 | a[+1]+1 | 9");
    row("between a run and the total under it a line joins", "b*2 | b*2 | sum(a[1:2])", "above 3",
        "b*2 | b*2 | b*2 | sum(a[1:3])");
    row("also under everything above", "b*2 | b*2 | sum(a[1:-1])", "above 3",
        "b*2 | b*2 | b*2 | sum(a[1:-1])");
    row("under a total of something else it does not", "b*2 | b*2 | sum(b[1:2])", "above 3",
        "b*2 | b*2 | . | sum(b[1:3])");
    row("a fixed cell of a run stays the cell", "7 | 9 | a[-1]+a[1] | a[-1]+a[1]", "above 1",
        ". | 7 | 9 | a[-1]+a[2] | a[-1]+a[2]");
    row("the new line's fixed cell too", "9 ; 7 | a[-1]+b[4] | a[-1]+b[4] | . ; 5", "above 3",
        "9 ; 7 | a[-1]+b[5] | a[-1]+b[5] | a[-1]+b[5] | . ; 5");
    row("what reaches outside stays on its cell when the change is outside",
        "1 | 2 | 3 | b*a[-2] | b*a[-2] | b*a[-2]", "above 3", "1 | 2 | . | 3 | b*a[-3] | b*a[-2] | b*a[-2]");
    row("a run whose seed is deleted has lost it", "9 | a[-1]+1 | a[-1]+1 | a[-1]+1", "delete 1",
        "a[gone]+1 | a[-1]+1 | a[-1]+1");
    row("nothing strange slips under a run", "5 | 9 | a[-1]+1 | a[-1]+1 | a[-1]+1", "delete 2:3",
        "5 | a[gone]+1 | a[-1]+1");
    row("a line that leaves the run keeps its cell", "9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | . | .",
        "move 3 before 7", "9 | a[-1]+1 | a[-1]+1 | . | . | a[-4]+1");
    row("a line moved into a run joins where it is blank", "9 | a[-1]+1 | a[-1]+1 | . ; 4", "move 4 before 3",
        "9 | a[-1]+1 | a[-1]+1 ; 4 | a[-1]+1");
    row("a line moved into a run keeps its own", "9 | a[-1]+1 | a[-1]+1 | 4", "move 4 before 3",
        "9 | a[-1]+1 | 4 | a[-2]+1");
    row("a run that moves with its seed", "9 | a[-1]+1 | a[-1]+1 | 4", "move 1:3 before 5",
        "4 | 9 | a[-1]+1 | a[-1]+1");
    row("a run that moves away from its seed", "9 | a[-1]+1 | a[-1]+1 | 4", "move 2:3 before 5",
        "9 | 4 | a[-2]+1 | a[-1]+1");
    row("a window of a run keeps its width", "1 | 2 | mean(b[-2:+0]) | mean(b[-2:+0]) | mean(b[-2:+0])",
        "above 4", "1 | 2 | mean(b[-2:+0]) | mean(b[-2:+0]) | mean(b[-2:+0]) | mean(b[-2:+0])");
    row("a running total takes a line in", "sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0])", "above 2",
        "sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0])");
    row("a running total takes a line above its first in", "sum(b[1:+0]) | sum(b[1:+0])", "above 1",
        "sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0])");
    row("a running total follows a new order", "sum(b[1:+0]) ; 1 | sum(b[1:+0]) ; 2 | sum(b[1:+0]) ; 3",
        "move 1 before 4", "sum(b[1:+0]) ; 2 | sum(b[1:+0]) ; 3 | sum(b[1:+0]) ; 1");
    row("a running total goes down with the sheet", "sum(b[1:+0]) | sum(b[1:+0])", "below 2 x2",
        "sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0]) | sum(b[1:+0])");
    row("equal neighbors that refer to nothing are no run", "5 | 5 | 5", "above 2", "5 | . | 5 | 5");
    row("every column has its own run", "1 ; 2 ; 9 | a[-1]+1 ; b*2 ; 8 | a[-1]+1 ; b*2 ; 7", "above 3",
        "1 ; 2 ; 9 | a[-1]+1 ; b*2 ; 8 | a[-1]+1 ; b*2 | a[-1]+1 ; b*2 ; 7");
    row("two runs meet: the command's side decides", "9 | a[-1]+1 | a[-1]+1 | b*3 | b*3", "above 4",
        "9 | a[-1]+1 | a[-1]+1 | b*3 | b*3 | b*3");
    row("two runs meet, from the other side", "9 | a[-1]+1 | a[-1]+1 | b*3 | b*3", "below 3",
        "9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | b*3 | b*3");
}

void RewriterTest::rules()
{
    QFETCH(QString, before);
    QFETCH(QString, change);
    QFETCH(QString, after);
    Workbook book = workbookOf(before);
    test::carryOut(book, changeOf(change), units());
    QCOMPARE(textOf(book), after);
}

void RewriterTest::names()
{
    Workbook book = workbookOf("1 | 2 | raw_iron * 2 | \"{raw_iron}\"");
    test::setName(book.sheets[0], 0, 0, "raw_iron");
    test::carryOut(book, changeOf("move 1 before 3"), units());
    QCOMPARE(textOf(book), QString("2 | 1 | raw_iron * 2 | \"{raw_iron}\""));
    const auto rewritten = test::carryOut(book, changeOf("delete 2"), units());
    QCOMPARE(textOf(book), QString("2 | raw_iron[gone] * 2 | \"{raw_iron[gone]}\""));
    QCOMPARE(rewritten.notes.size(), std::size_t{2});
    // nothing brings it back but undo or typing
    test::setName(book.sheets[0], 0, 0, "raw_iron");
    test::carryOut(book, changeOf("above 1"), units());
    QCOMPARE(textOf(book), QString(". | 2 | raw_iron[gone] * 2 | \"{raw_iron[gone]}\""));
}

void RewriterTest::otherSheets()
{
    Workbook book = workbookOf("1 | 2 | 3");
    book.sheets.push_back(test::sheetOf("there", {"a", "b"}, 3));
    test::setText(book.sheets[1], 0, 0, "here.a[2] + a[2] + sum(here.a[1:3])");
    test::setText(book.sheets[1], 0, 1, "here.a[-1]"); // refused by the binder, left as typed
    test::carryOut(book, changeOf("above 2"), units());
    QCOMPARE(book.sheets[1].cell(0, 0).typed(), std::string("here.a[3] + a[2] + sum(here.a[1:4])"));
    QCOMPARE(book.sheets[1].cell(0, 1).typed(), std::string("here.a[-1]"));
    StructuralChange change = changeOf("above 1");
    change.sheet = 1;
    test::carryOut(book, change, units());
    QCOMPARE(book.sheets[1].cell(0, 1).typed(), std::string("here.a[3] + a[3] + sum(here.a[1:4])"));
}

void RewriterTest::renames_data()
{
    QTest::addColumn<QString>("kind");
    QTest::addColumn<QString>("oldWord");
    QTest::addColumn<QString>("newWord");
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("after");
    QTest::newRow("a name")
        << "name"
        << "iron"
        << "raw_iron"
        << "iron * here.iron + irons + f(iron) + \"iron {iron}\" + 3 mg/iron"
        << "raw_iron * here.raw_iron + irons + f(raw_iron) + \"iron {raw_iron}\" + 3 mg/raw_iron";
    QTest::newRow("a name that a function has too") << "name"
                                                    << "min"
                                                    << "low"
                                                    << "min + min(min, 1)"
                                                    << "low + min(low, 1)";
    QTest::newRow("a column") << "column"
                              << "a"
                              << "year"
                              << "a + a[2] + sum(here.a[:]) + there.a[1]"
                              << "year + year[2] + sum(here.year[:]) + there.a[1]";
    QTest::newRow("a sheet") << "sheet"
                             << "here"
                             << "water"
                             << "here.a[2] + a[2] + there.a[2] + \"{here.a[2]}\""
                             << "water.a[2] + a[2] + there.a[2] + \"{water.a[2]}\"";
}

void RewriterTest::renames()
{
    QFETCH(QString, kind);
    QFETCH(QString, oldWord);
    QFETCH(QString, newWord);
    QFETCH(QString, before);
    QFETCH(QString, after);
    Workbook book = workbookOf("1 | 2 | . ; .");
    book.sheets.push_back(test::sheetOf("there", {"a"}, 3));
    test::setText(book.sheets[0], 2, 0, before.toStdString());
    if (kind == "name")
        test::setName(book.sheets[0], 0, 1, oldWord.toStdString());
    StructuralChange change;
    change.kind = kind == "name"     ? StructuralChange::Kind::renameName
                  : kind == "column" ? StructuralChange::Kind::renameColumn
                                     : StructuralChange::Kind::renameSheet;
    change.oldWord = oldWord.toStdString();
    change.newWord = newWord.toStdString();
    test::carryOut(book, change, units());
    QCOMPARE(QString::fromStdString(book.sheets[0].cell(2, 0).typed()), after);
}

void RewriterTest::deletedColumnsAndSheets()
{
    Workbook book = workbookOf("1 ; a + a[2] + sum(a[1:3]) + iron + a[:] | 2 | 3");
    test::setName(book.sheets[0], 0, 2, "iron");
    book.sheets.push_back(test::sheetOf("there", {"b"}, 3));
    test::setText(book.sheets[1], 0, 0, "here.a[1] + here.iron + b[2] + here.b[1]");
    StructuralChange column;
    column.kind = StructuralChange::Kind::deleteColumn;
    column.at = 0;
    test::carryOut(book, column, units());
    QCOMPARE(book.sheets[0].cell(0, 0).typed(),
             std::string("a[gone] + a[gone] + sum(a[gone]) + iron[gone] + a[gone]"));
    QCOMPARE(book.sheets[1].cell(0, 0).typed(),
             std::string("here.a[gone] + here.iron[gone] + b[2] + here.b[1]"));
    StructuralChange sheet;
    sheet.kind = StructuralChange::Kind::deleteSheet;
    test::carryOut(book, sheet, units());
    QCOMPARE(book.sheets[0].cell(0, 0).typed(),
             std::string("here.a[gone] + here.iron[gone] + b[2] + here.b[gone]"));
}

/// Limits, asks, choices, notes, live words, expectations and charts go through the same rewriter.
void RewriterTest::everyTextGoesAlong()
{
    Workbook book;
    book.sheets.push_back(test::sheetOf("here", {"item", "amount"}, 4));
    Sheet &sheet = book.sheets[0];
    test::setText(sheet, 0, 3, "above {amount[1]}");
    Attributes beside;
    beside.limit = LimitText{"..", "amount[1] * 2", "amount[2]", "", false, "", "more than {amount[2]}"};
    beside.ask = "more than {amount[1]}?";
    beside.choices = {"at {amount[1]}", "plain"};
    beside.note = "see {amount[-1]}";
    Cell cell;
    cell.attributes = std::make_shared<const Attributes>(beside);
    sheet.setCell(1, 3, cell);
    sheet.expectations = {{"amount[4]", "amount[1] * 2 within 1 %"}};
    book.charts = {{"years",
                    ChartKind::lines,
                    "Years",
                    "here.amount[1:3]",
                    {{"here.amount[2:3]", "to {here.amount[3]}", "here.amount[1]"}}}};
    test::carryOut(book, insertAt(1, InsertSide::above), units());
    const Attributes &now = sheet.cell(1, 4).beside();
    QCOMPARE(sheet.cell(0, 4).typed(), std::string("above {amount[2]}"));
    QCOMPARE(now.limit->low, std::string("amount[2] * 2"));
    QCOMPARE(now.limit->high, std::string("amount[3]"));
    QCOMPARE(now.limit->words, std::string("more than {amount[3]}"));
    QCOMPARE(now.ask, std::string("more than {amount[2]}?"));
    QCOMPARE(now.choices[0], std::string("at {amount[2]}"));
    QCOMPARE(now.note, std::string("see {amount[-1]}"));
    QCOMPARE(sheet.expectations[0].reference, std::string("amount[5]"));
    QCOMPARE(sheet.expectations[0].tail, std::string("amount[2] * 2 within 1 %"));
    QCOMPARE(book.charts[0].x, std::string("here.amount[1:4]"));
    QCOMPARE(book.charts[0].plots[0].reference, std::string("here.amount[3:4]"));
    QCOMPARE(book.charts[0].plots[0].only, std::string("here.amount[2]"));
    QCOMPARE(book.charts[0].plots[0].title, std::string("to {here.amount[4]}"));
}

void RewriterTest::whatIsTold_data()
{
    QTest::addColumn<QString>("before");
    QTest::addColumn<QString>("change");
    QTest::addColumn<QString>("notes");
    QTest::newRow("a sum that grew") << "1 | 2 | sum(a[1:2])"
                                     << "above 3 x6"
                                     << "`total` now adds 8 lines";
    QTest::newRow("a range that lost a line") << "1 | 2 | mean(a[1:2])"
                                              << "delete 1"
                                              << "`total` now reads 1 line";
    QTest::newRow("a reference that is gone") << "1 | 2 | a[1] + a[2]"
                                              << "delete 1"
                                              << "a reference in `total` is gone";
    QTest::newRow("a formula taken over") << "a[+0] | 1 | b*2 | b*2"
                                          << "above 4"
                                          << "1 line takes over the formula of `a` in here";
    QTest::newRow("formulas taken over") << "1 | 2 | 3 | b*2 | b*2"
                                         << "above 5 x2"
                                         << "2 lines take over the formula of `a` in here";
    QTest::newRow("nothing worth telling") << "1 | 2 | a[1] + a[2]"
                                           << "above 1"
                                           << "";
}

void RewriterTest::whatIsTold()
{
    QFETCH(QString, before);
    QFETCH(QString, change);
    QFETCH(QString, notes);
    Workbook book = workbookOf(before);
    test::setName(book.sheets[0], 0, 2, "total");
    QStringList told;
    for (const std::string &note : test::carryOut(book, changeOf(change), units()).notes)
        told << QString::fromStdString(note);
    QCOMPARE(told.join(" | "), notes);
}

void RewriterTest::runs()
{
    const Workbook book = workbookOf("9 | a[-1]+1 | a[-1]+1 | a[-1]+1 | 5 | 5");
    const auto run = [&](std::uint32_t line) { return filledRun(book, {0, 0, line}, units()); };
    QCOMPARE(run(2), (std::pair<std::uint32_t, std::uint32_t>(1, 3)));
    QCOMPARE(run(0), (std::pair<std::uint32_t, std::uint32_t>(0, 0)));
    QCOMPARE(run(4), (std::pair<std::uint32_t, std::uint32_t>(4, 4))); // equal values are no run
    const auto taken = takeovers(book, 0, 2, InsertSide::above, units());
    QCOMPARE(taken.size(), std::size_t{1});
    QCOMPARE(taken[0].column, 0U);
    QVERIFY(takeovers(book, 0, 5, InsertSide::above, units()).empty());
}

void RewriterTest::wrongTextsStay()
{
    Workbook book = workbookOf("1 | a[1] + | \"{a[1]\" | a[1] b");
    test::carryOut(book, changeOf("above 1"), units());
    QCOMPARE(textOf(book), QString(". | 1 | a[1] + | \"{a[1]\" | a[1] b"));
}

void RewriterTest::spacingSurvives()
{
    Workbook book = workbookOf("1 | 2 |  a[ 1 ]*  sum( a[1 : 2] )-3 m\xC2\xB2");
    test::setText(book.sheets[0], 0, 2,
                  "a[ 1 ]*  sum( a[1 : 2] )\xE2\x88\x92"
                  "3 m\xC2\xB2");
    test::carryOut(book, changeOf("above 1"), units());
    QCOMPARE(book.sheets[0].cell(0, 3).typed(), std::string("a[ 2 ]*  sum( a[1 : 3] )\xE2\x88\x92"
                                                            "3 m\xC2\xB2"));
}

/// A listed word in a cell with choices is a value, also when a cell has that name.
void RewriterTest::valuesAreNoFormulas()
{
    Workbook book = workbookOf("septic | septic | 5");
    test::setName(book.sheets[0], 0, 2, "septic");
    Attributes beside;
    beside.choices = {"dry well", "septic"};
    Cell cell = book.sheets[0].cell(0, 0);
    cell.attributes = std::make_shared<const Attributes>(beside);
    book.sheets[0].setCell(0, 0, cell);
    StructuralChange change;
    change.kind = StructuralChange::Kind::renameName;
    change.oldWord = "septic";
    change.newWord = "tank_flow";
    test::carryOut(book, change, units());
    QCOMPARE(textOf(book), QString("septic | tank_flow | 5"));
}

QTEST_APPLESS_MAIN(RewriterTest)
#include "rewriter_test.moc"
