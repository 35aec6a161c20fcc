/// The workbook text: what it holds, what is refused and with which words, what is kept.
#include <QTest>

#include "base/limits.h"
#include "file/reader.h"
#include "file/writer.h"

using namespace puteal;

namespace
{

// Invented site; the numbers mean nothing outside this test.
const char *const sample = R"(puteal workbook 1
title "Alder Flat cabin"
uses softening 1
thing tank
below half
list verdict "works" "marginal" "cannot tell yet" "will not work"
source L1 laboratory "report 12, sampled 2026-04-02"
# everything below was measured before any treatment
source S1 standard "a standard"
sheet water "Water \"test\""
column item words "Item" 30
# what the laboratory said
column amount amounts "Amount" 16
  figures 3
line
item: "Raw iron\nof \u{07}2"
# the laboratory was slow
amount: 2.40 mg/L as Fe
  name raw_iron
  unit mg/L as Fe
  source L1
  limit <= 0.3 mg/L as Fe near 20 % health S1 "stains above this"
  tolerance +- 0.1 mg/L as Fe normal
  note "cold tap"
  weather rainy
line
item: "Hardness"
amount: 14 gpg as CaCO3
  name hardness
  limit 1 gpg .. 3 gpg S1
skip 3
line
at amount
  choices "ditch" "septic" "dry well"
  ask "Where may the backwash water go?"
line
amount: marginal
  choices verdict
line
amount: compensated_hardness(hardness, raw_iron) -> gpg # 1
  name setting
  hide
  lock
sticker green
# about the setting
expect setting = 26 gpg within 2 %
end water 8

sheet costs "Cost by year"
column year amounts "Year" 6
column paid amounts "Paid" 14
  places 0
line
year: 0
paid: $1,400
line
fill year: year[-1] + 1
at year
  name first_year
fill paid: paid[-1] + $85
  note "every year"
line
at paid
  name second
skip 4
line
at paid
  source L1
stop year paid
line
paid: 3
line
paid: 3
end costs 10
chart years steps "Cost over 15 years" x costs.year[:]
plot costs.paid[:] "Paid"
# the same drawn again
plot costs.year[:] only costs.shown
end workbook
)";

QString wordsOf(std::string_view text, bool (*isUnitWord)(std::string_view) = nullptr)
{
    const auto book = readWorkbook(text, isUnitWord);
    return book ? QString("reads") : QString::fromStdString(book.error().words);
}

std::string inSheet(const std::string &lines, const std::string &count = "1")
{
    return "puteal workbook 1\nsource L1 laboratory \"x\"\nsheet s \"S\"\ncolumn item words \"Item\" "
           "9\ncolumn a amounts \"A\" 9\n"
           "column b amounts \"B\" 9\n" +
           lines + "end s " + count + "\nend workbook\n";
}

const Sheet &sheetOf(const Result<Workbook> &book, std::uint32_t s = 0)
{
    return book->sheets[s];
}

} // namespace

class FileTest : public QObject
{
    Q_OBJECT
private slots:
    void sampleIsWhatItSays()
    {
        const auto book = readWorkbook(sample);
        QVERIFY2(book, book ? "" : book.error().words.c_str());
        QCOMPARE(book->title, std::string("Alder Flat cabin"));
        QVERIFY(book->below == BelowRule::half && !book->si);
        QCOMPARE(book->lists[0].words.size(), std::size_t{4});
        const Sheet &water = sheetOf(book);
        QCOMPARE(water.title(), std::string("Water \"test\""));
        QCOMPARE(water.lineCount(), 8U);
        QCOMPARE(water.cell(0, 0).typed(), std::string("Raw iron\nof \a2"));
        const Attributes &iron = water.cell(1, 0).beside();
        QCOMPARE(iron.name, std::string("raw_iron"));
        QCOMPARE(iron.tolerance, std::string("0.1 mg/L as Fe normal"));
        QCOMPARE(iron.unknown, std::vector<std::string>{"weather rainy"});
        const LimitText limit{"<=", "0.3 mg/L as Fe", "", "20", true, "S1", "stains above this"};
        QVERIFY(iron.limit == limit);
        const LimitText span{"..", "1 gpg", "3 gpg", "", false, "S1", ""};
        QVERIFY(water.cell(1, 1).beside().limit == span);
        QVERIFY(water.cell(1, 2).blank() && water.cell(1, 5).blank());
        QCOMPARE(water.cell(1, 5).beside().choices.size(), std::size_t{3});
        QCOMPARE(water.cell(1, 7).typed(),
                 std::string("compensated_hardness(hardness, raw_iron) -> gpg # 1"));
        QCOMPARE(water.expectations[0].tail, std::string("26 gpg within 2 %"));
        const auto setting = water.named("setting", 0);
        QVERIFY(setting && *setting == (CellAt{0, 1, 7}));
    }

    void runsAreEqualNeighbors()
    {
        const auto book = readWorkbook(sample);
        QVERIFY(book);
        const Sheet &costs = sheetOf(book, 1);
        for (std::uint32_t l = 1; l <= 7; ++l) {
            QCOMPARE(costs.cell(0, l).typed(), std::string("year[-1] + 1"));
            QCOMPARE(costs.cell(1, l).typed(), std::string("paid[-1] + $85"));
            QCOMPARE(costs.cell(1, l).beside().note, std::string("every year"));
        }
        QCOMPARE(costs.cell(0, 1).beside().name, std::string("first_year"));
        QVERIFY(costs.cell(0, 2).beside().empty());
        QCOMPARE(costs.cell(1, 2).beside().name, std::string("second"));
        QCOMPARE(costs.cell(1, 7).beside().sources, std::vector<std::string>{"L1"});
        QVERIFY2(costs.cell(0, 8).blank(), "a run ends at its stop");
    }

    void writtenAgainItIsTheSame()
    {
        const auto book = readWorkbook(sample);
        QVERIFY(book);
        QCOMPARE(QString::fromStdString(writeWorkbook(*book)), QString::fromUtf8(sample));
    }

    void refused_data();
    void refused()
    {
        QFETCH(QString, text);
        QFETCH(int, line);
        QFETCH(QString, shows);
        const std::string bytes = text.toStdString();
        const auto book = readWorkbook(bytes, [](std::string_view word) { return word == "gpm"; });
        QVERIFY2(!book, "it reads");
        QCOMPARE(QString::fromStdString(book.error().words), shows);
        QCOMPARE(static_cast<int>(book.error().place.fileLine), line);
        QVERIFY(book.error().kind == ErrorKind::file);
    }

    void refusedBytes()
    {
        QCOMPARE(wordsOf(""), QString("the file is empty: there is no workbook in it"));
        QCOMPARE(wordsOf(std::string("\xFF\xFEp\0u\0", 6)),
                 QString("file line 1: the file is UTF-16 text: save it as UTF-8"));
        QCOMPARE(
            wordsOf("\x89PNG\r\n\x1a\n"),
            QString("file line 1: the first line is not `puteal workbook 1`: this is some other file, or its "
                    "first line was lost"));
        QCOMPARE(
            wordsOf("\xEF\xBB\xBFputeal workbook 1\nend workbook\n"),
            QString("file line 1: the file starts with a byte order mark: save it as UTF-8 without one"));
        QCOMPARE(wordsOf("puteal workbook 1\n# caf\xe9\nend workbook\n"),
                 QString("file line 2: the bytes of this line are no UTF-8 text: save the file as UTF-8"));
        QCOMPARE(wordsOf(std::string_view("puteal workbook 1\n# a\0b\nend workbook\n", 37)),
                 QString("file line 2: the control character 00 stands in this line: take it out"));
    }

    void openedAllTheSame_data();
    void openedAllTheSame()
    {
        QFETCH(QString, text);
        const auto book = readWorkbook(text.toStdString());
        QVERIFY2(book, book ? "" : book.error().words.c_str());
        const std::string written = writeWorkbook(*book);
        const auto again = readWorkbook(written);
        QVERIFY2(again, again ? "" : again.error().words.c_str());
        QVERIFY(*again == *book);
        QCOMPARE(QString::fromStdString(writeWorkbook(*again)), QString::fromStdString(written));
    }

    void newerVersionIsRead()
    {
        const auto book = readWorkbook(
            "puteal workbook 3\n!require studies\nstudy main\n  spread 5\ntitle \"T\"\nend workbook\n");
        QVERIFY(book);
        QCOMPARE(book->formatMajor, 3U);
        QCOMPARE(book->required, std::vector<std::string>{"studies"});
        const std::vector<Kept> kept{{"title", "study main"}, {"title", "  spread 5"}};
        QVERIFY(book->kept == kept);
    }

    void keptRecordsMoveWithTheirLine()
    {
        auto book = readWorkbook(inSheet("# one\nline\n# two\na: 1\nline\na: 2\n", "2"));
        QVERIFY(book);
        book->sheets[0].moveLines(0, 1, 2);
        QVERIFY(QString::fromStdString(writeWorkbook(*book))
                    .contains("line\na: 2\n# one\nline\n# two\na: 1\nend s 2\n"));
        book->sheets[0].deleteLines(1, 1);
        QVERIFY(QString::fromStdString(writeWorkbook(*book)).contains("line\na: 2\n# one\n# two\nend s 1\n"));
    }

    void commentsOfClearedCellsStay()
    {
        auto book = readWorkbook(inSheet("line\n# two\na: 1\nb: 2\nline\n# end\na: 3\nexpect x = 1\n", "2"));
        QVERIFY(book);
        book->sheets[0].setCell(1, 0, {});
        book->sheets[0].setCell(1, 1, {});
        const std::string written = writeWorkbook(*book);
        QVERIFY(QString::fromStdString(written).contains(
            "line\n# two\nb: 2\nline\n# end\nexpect x = 1\nend s 2\n"));
        const auto again = readWorkbook(written);
        QVERIFY2(again && *again == *book, "it can be saved: read again it is equal");
    }

    void lineInASkipSplitsIt()
    {
        auto book =
            readWorkbook(inSheet("line\na: 1\nline\nfill a: a[-1] + 1\nskip 18\nline\nstop a\n", "21"));
        QVERIFY(book);
        Sheet &sheet = book->sheets[0];
        sheet.insertLines(9, 1);
        sheet.setCell(1, 9, sheet.cell(1, 8));
        QVERIFY(QString::fromStdString(writeWorkbook(*book))
                    .contains("fill a: a[-1] + 1\nskip 7\nline\nskip 11\nline\nstop a\nend s 22"));
        sheet.deleteLines(9, 1);
        QVERIFY(QString::fromStdString(writeWorkbook(*book))
                    .contains("fill a: a[-1] + 1\nskip 18\nline\nstop a\nend s 21"));
    }

    void markUsedButNeverDeclaredIsWritten()
    {
        auto book = readWorkbook(inSheet("line\na: 1\n  source L1\n"));
        QVERIFY(book);
        book->sources.clear();
        const std::string written = writeWorkbook(*book);
        QVERIFY(QString::fromStdString(written).contains("source L1 laboratory \"not described yet\"\n"));
        QVERIFY(readWorkbook(written));
    }

    void textsTheFileCannotHoldAreCleaned()
    {
        auto book = readWorkbook(inSheet("line\na: 1\n"));
        QVERIFY(book);
        Cell cell;
        cell.text = std::make_shared<const std::string>(" 3\tmg/L\n");
        book->sheets[0].setCell(1, 0, cell);
        cell.text = std::make_shared<const std::string>("\n ");
        book->sheets[0].setCell(2, 0, cell);
        const auto again = readWorkbook(writeWorkbook(*book));
        QVERIFY(again);
        QCOMPARE(sheetOf(again).cell(1, 0).typed(), std::string("3 mg/L"));
        QVERIFY(sheetOf(again).cell(2, 0).blank());
    }

    void recountSetsOnlyCounts()
    {
        std::string merged(sample);
        merged.replace(merged.find("end water 8"), 11, "end water 27");
        merged.replace(merged.find("end costs 10"), 12, "end costs 9");
        QCOMPARE(
            wordsOf(merged),
            QString("sheet water (file line 47): water has 8 lines, not 27: look at the merge, then `puteal "
                    "recount FILE`"));
        const auto right = recounted(merged);
        QVERIFY(right);
        QCOMPARE(QString::fromStdString(*right), QString::fromUtf8(sample));
        const auto broken = recounted("puteal workbook 1\n");
        QVERIFY(!broken);
        QCOMPARE(QString::fromStdString(broken.error().words),
                 QString("file line 2: the file ends without `end workbook`, so it was cut: take the copy "
                         "kept beside it"));
    }

    void bounds()
    {
        const std::string lines = std::to_string(limits::linesPerSheet);
        QCOMPARE(wordsOf(inSheet("skip " + lines + "\n", lines)), QString("reads"));
        QCOMPARE(wordsOf(inSheet("line\nskip " + lines + "\n", "1000001")),
                 QString("sheet s line 1 (file line 8): the sheet has more than 1000000 lines: split it"));
        const auto cellOf = [](std::size_t n) { return inSheet("line\na: " + std::string(n, 'x') + "\n"); };
        QCOMPARE(wordsOf(cellOf(limits::cellCharacters)), QString("reads"));
        QCOMPARE(wordsOf(cellOf(limits::cellCharacters + 1)),
                 QString("sheet s line 1 (file line 8): the cell has 10001 characters, 10000 are the most: "
                         "shorten it"));
        const auto wordsCell = [](std::size_t n) { // each character of it takes two bytes in the file
            std::string marks;
            for (std::size_t i = 0; i < n; ++i)
                marks += "\\\"";
            return inSheet("line\nitem: \"" + marks + "\"\n");
        };
        QCOMPARE(wordsOf(wordsCell(limits::cellCharacters)), QString("reads"));
        QCOMPARE(wordsOf(wordsCell(limits::cellCharacters + 1)),
                 QString("sheet s line 1 (file line 8): the cell has 10001 characters, 10000 are the most: "
                         "shorten it"));
        std::string columns = "puteal workbook 1\nsheet s \"S\"\n";
        for (std::uint32_t c = 0; c < limits::columnsPerSheet; ++c)
            columns += "column c" + std::to_string(c) + " amounts \"C\" 5\n";
        QCOMPARE(wordsOf(columns + "end s 0\nend workbook\n"), QString("reads"));
        QCOMPARE(wordsOf(columns + "skip 123076\nend s 123076\nend workbook\n"),
                 QString("reads")); // 65 places a line
        QCOMPARE(wordsOf(columns + "skip 123077\nend s 123077\nend workbook\n"),
                 QString("sheet s (file line 67): the sheets have more than 8000000 places (lines times "
                         "columns) together: split "
                         "the workbook"));
        QCOMPARE(wordsOf(columns + "column z amounts \"C\" 5\nend s 0\nend workbook\n"),
                 QString("sheet s (file line 67): the sheet has more than 64 columns: split it"));
        std::string run = "puteal workbook 1\nsheet s \"S\"\n";
        for (const char *key : {"a", "b", "c"})
            run += std::string("column ") + key + " amounts \"A\" 5\n";
        run += "line\nfill a: a[-1]\nfill b: b[-1]\nfill c: c[-1]\n";
        QCOMPARE(wordsOf(run + "skip 666664\nline\nstop a b c\nend s 666666\nend workbook\n"),
                 QString("reads"));
        QCOMPARE(wordsOf(run + "skip 666665\nline\nstop a b c\nend s 666667\nend workbook\n"),
                 QString("sheet s line 666666 (file line 11): there are more than 2000000 filled cells: "
                         "split the workbook"));
        const auto sheets = [](std::uint32_t n) {
            std::string text = "puteal workbook 1\n";
            for (std::uint32_t s = 0; s < n; ++s)
                text += "sheet s" + std::to_string(s) + " \"S\"\nend s" + std::to_string(s) + " 0\n";
            return text + "end workbook\n";
        };
        QCOMPARE(wordsOf(sheets(limits::sheets)), QString("reads"));
        QCOMPARE(wordsOf(sheets(limits::sheets + 1)),
                 QString("file line 402: there are more than 200 sheets: split the workbook"));
        const auto comments = [](std::size_t n) {
            std::string text = "puteal workbook 1\n";
            text.append(n, '\n');
            return text + "end workbook\n";
        };
        QCOMPARE(wordsOf(comments(limits::otherRecords)), QString("reads"));
        QCOMPARE(wordsOf(comments(limits::otherRecords + 1)),
                 QString("file line 250002: there are more than 250000 comments, sources, lists and "
                         "attributes: split the workbook"));
    }
    void largestFile()
    {
        std::string text = "puteal workbook 1\n#";
        text.append(limits::fileBytes - text.size() - 14, 'x');
        text += "\nend workbook\n";
        QCOMPARE(text.size(), limits::fileBytes);
        QCOMPARE(wordsOf(text), QString("reads"));
        text.insert(20, "x");
        QCOMPARE(wordsOf(text),
                 QString("the file has 67108865 bytes, 67108864 are the most: split the workbook"));
    }
};

#include "file_refusals.h"

QTEST_APPLESS_MAIN(FileTest)
#include "file_test.moc"
