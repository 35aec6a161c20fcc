/// Edits at the bounds of base/limits.h: what the file can hold is made, one more is refused and changes
/// nothing.
#include <QTest>

#include <string>

#include "base/limits.h"
#include "file/reader.h"
#include "session/fits_file.h"
#include "session/session.h"

using namespace puteal;

namespace
{

constexpr std::uint32_t most = 0xFFFFFFFFU;

std::unique_ptr<Session> opened(const std::string &text)
{
    auto session = Session::fromText(text);
    return session ? std::move(*session) : nullptr;
}

/// A sheet `s` with so many columns of amounts and blank lines.
std::unique_ptr<Session> blankSheet(std::uint32_t columns, std::uint32_t lines)
{
    std::string text = "puteal workbook 1\nsheet s \"S\"\n";
    for (std::uint32_t c = 0; c < columns; ++c)
        text += "column c" + std::to_string(c) + " amounts \"C\" 5\n";
    if (lines > 0)
        text += "skip " + std::to_string(lines) + "\n";
    return opened(text + "end s " + std::to_string(lines) + "\nend workbook\n");
}

QString wordsOf(const Result<ChangeSet> &result)
{
    return result ? QString("made") : QString::fromStdString(result.error().words);
}

Column column(const std::string &key)
{
    return {key, ColumnKind::amounts, "C", 5, {}};
}

} // namespace

class EditBoundsTest : public QObject
{
    Q_OBJECT

private slots:
    void countsBeyondTheSheet()
    {
        const auto session = blankSheet(1, 4);
        QVERIFY(session);
        const std::string before = session->fileText();
        const QString lines = "the sheet has 4 lines";
        QCOMPARE(wordsOf(session->apply(InsertLines{0, 5, 1})), lines);
        QCOMPARE(wordsOf(session->apply(InsertLines{0, 2, 0})), lines);
        QCOMPARE(wordsOf(session->apply(InsertLines{0, 2, most})),
                 QString("a sheet holds at most 1000000 lines, this would make 4294967299"));
        QCOMPARE(wordsOf(session->apply(DeleteLines{0, 2, 3})), lines);
        QCOMPARE(wordsOf(session->apply(DeleteLines{0, 2, most})), lines);
        QCOMPARE(wordsOf(session->apply(DeleteLines{0, most, 2})), lines);
        QCOMPARE(wordsOf(session->apply(MoveLines{0, 2, 3, 0})), lines);
        QCOMPARE(wordsOf(session->apply(MoveLines{0, 2, most, 0})), lines);
        QCOMPARE(wordsOf(session->apply(MoveLines{0, most, 2, 0})), lines);
        QCOMPARE(wordsOf(session->apply(SetBlock{{0, 0, most}, {{"1"}, {"2"}}})),
                 QString("a sheet holds at most 1000000 lines, this needs 4294967297"));
        QCOMPARE(wordsOf(session->apply(SetBlock{{0, 3, 0}, {{"1"}}})),
                 QString("the text has 1 columns, the sheet has 0 from here on; add columns first"));
        QCOMPARE(QString::fromStdString(session->fileText()), QString::fromStdString(before));
    }

    void lines()
    {
        const auto session = blankSheet(1, 1);
        QVERIFY(session);
        QCOMPARE(wordsOf(session->apply(InsertLines{0, 1, limits::linesPerSheet - 1})), QString("made"));
        QCOMPARE(wordsOf(session->apply(InsertLines{0, 0, 1})),
                 QString("a sheet holds at most 1000000 lines, this would make 1000001"));
        QCOMPARE(wordsOf(session->apply(SetBlock{{0, 0, limits::linesPerSheet - 1}, {{"1"}, {"2"}}})),
                 QString("a sheet holds at most 1000000 lines, this needs 1000001"));
        QVERIFY(readWorkbook(session->fileText()));
    }

    void placesOfAllSheets()
    {
        const auto small = blankSheet(2, 10); // 30 places: a line counts one for itself
        QVERIFY(small);
        QVERIFY(placesFit(small->workbook(), limits::places - 30));
        QVERIFY(!placesFit(small->workbook(), limits::places - 29));

        const auto refusal = [](const char *places) {
            return QString("the sheets would have %1 places (lines times columns) together, 8000000 are the "
                           "most; use a second workbook")
                .arg(places);
        };
        const auto wide = blankSheet(15, 10);
        QVERIFY(wide);
        QCOMPARE(wordsOf(wide->apply(InsertLines{0, 0, 499991})), refusal("8000016"));
        QCOMPARE(wordsOf(wide->apply(SetBlock{{0, 0, 499999}, {{"1"}, {"2"}}})), refusal("8000016"));
    }

    void columns()
    {
        const auto session = blankSheet(limits::columnsPerSheet - 1, 1);
        QVERIFY(session);
        QCOMPARE(wordsOf(session->apply(AddColumn{0, 0, column("last")})), QString("made"));
        QCOMPARE(wordsOf(session->apply(AddColumn{0, 0, column("more")})),
                 QString("a sheet holds at most 64 columns; use a second sheet"));
        QVERIFY(readWorkbook(session->fileText()));
    }

    void sheets()
    {
        const auto session = blankSheet(1, 1);
        QVERIFY(session);
        for (std::uint32_t s = 1; s < limits::sheets; ++s)
            QCOMPARE(wordsOf(session->apply(AddSheet{s, "sheet_" + std::to_string(s), "S"})),
                     QString("made"));
        QCOMPARE(wordsOf(session->apply(AddSheet{0, "more", "S"})),
                 QString("a workbook holds at most 200 sheets"));
        QVERIFY(readWorkbook(session->fileText()));
    }

    void filledCells()
    {
        Workbook book;
        Sheet sheet("s", "S");
        const Cell one{std::make_shared<const std::string>("1"), nullptr};
        for (const char *key : {"a", "b", "c"})
            sheet.insertColumn(0, column(key));
        sheet.load(std::vector<std::vector<Cell>>(3, std::vector<Cell>(limits::linesPerSheet)),
                   std::vector<Line>(limits::linesPerSheet));
        for (std::uint32_t l = 0; l < limits::linesPerSheet; ++l)
            for (std::uint32_t c = 0; c < 2; ++c)
                if (c != 1 || l != 0)
                    sheet.setCell(c, l, one);
        book.sheets.push_back(std::move(sheet));
        QVERIFY(filledFit(book, 0));
        QVERIFY(filledFit(book, 1));
        const auto refused = filledFit(book, 2);
        QVERIFY(!refused);
        QCOMPARE(QString::fromStdString(refused.error().words),
                 QString("the workbook would have 2000001 filled cells, 2000000 are the most; use a second "
                         "workbook"));
    }

    void charactersOfACell()
    {
        const auto session = blankSheet(1, 1);
        QVERIFY(session);
        const auto typed = [&](std::size_t n) {
            return wordsOf(session->apply(SetText{{0, 0, 0}, std::string(n, 'x')}));
        };
        QCOMPARE(typed(limits::cellCharacters + 1),
                 QString("a cell holds at most 10000 characters, this text has 10001; split it over several "
                         "lines"));
        QCOMPARE(typed(limits::cellCharacters), QString("made"));
        QVERIFY(readWorkbook(session->fileText()));
    }
};

QTEST_APPLESS_MAIN(EditBoundsTest)
#include "edit_bounds_test.moc"
