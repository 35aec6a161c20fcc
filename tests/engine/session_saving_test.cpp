/// Whatever edits were accepted, the workbook can be saved and reads back equal; what a file cannot hold is
/// refused when it is asked for.
#include <random>

#include <QTest>

#include "file/reader.h"
#include "file/writer.h"
#include "session/session.h"
#include "support/rounds.h"

using namespace puteal;
using puteal::test::rounds;

namespace
{

const char *const start = R"(puteal workbook 1
# a comment at the very top
title "Saving"
uses softening 1
# lists
list verdict "works" "marginal" "will not work"
list answer "yes, often" "never"
source L1 laboratory "invented"
source T1 trade "habit"
# the first sheet
sheet water "Water test"
column item words "Item" 28
# wide
column amount amounts "Amount" 18
column other amounts "Other" 10
# the laboratory sheet
line
# above the item
item: "Hardness {hardness}"
# above the amount
amount: 10 gpg
  name hardness
  source L1
line
item: "Iron"
amount: 1.8 mg/L as Fe
  name iron
  limit <= 0.3 mg/L as Fe near 20 % "stains"
# two
# comments
line
fill other: hardness * 2
skip 3
# in the run
line
stop other
line
amount: compensated_hardness(hardness, iron)
  name setting
# before the expectation
expect setting = 19 gpg within 1 %
# before the end
end water 8
sheet costs "Cost"
column year amounts "Year" 8
column total amounts "Total" 14
line
year: 0 yr
total: $100
line
fill year: year[-1] + 1 yr
# a run below a comment
fill total: total[-1] + $90
skip 2
line
stop year total
end costs 5
# the chart
chart cost steps "Cost" x costs.year[:]
plot costs.total[:] "Total"
end workbook
)";

/// Texts that try a format: quotes, braces, line ends, records, blanks, bytes beyond ASCII, the look of other
/// things.
const char *const texts[] = {"",
                             "5 gpg",
                             "hardness * 2",
                             "total[-1] + $10",
                             "no such thing +",
                             "\"words\"",
                             "a \"quoted\" word",
                             "line",
                             "end water 3",
                             "# no comment",
                             "{hardness}",
                             "{",
                             "\\",
                             "two\nlines",
                             "a tab\there",
                             "\xc2\xb5g/L \xe2\x80\x93 na\xc3\xafve",
                             "bad \xff bytes",
                             " blanks around ",
                             "  name iron",
                             "fill other: 3",
                             "stop other",
                             "works",
                             "<0.02 mg/L as Fe",
                             "2026-10-12",
                             "$5",
                             "1/2",
                             "yes"};
constexpr std::size_t textCount = std::size(texts);

class Robot
{
public:
    explicit Robot(std::uint64_t seed) : m_random(seed) {}

    Edit next(const Session &session)
    {
        const Workbook &book = session.workbook();
        const std::uint32_t s = below(static_cast<std::uint32_t>(book.sheets.size()));
        const Sheet &sheet = book.sheets[s];
        const CellAt at{s, below(sheet.columnCount()), below(sheet.lineCount())};
        switch (below(24)) {
        case 0:
        case 1:
        case 2:
            return SetText{at, text()};
        case 3:
        case 4:
        case 5:
            return SetAttributes{at, attributes(session.workbook().cell(at))};
        case 6:
            return ClearBlock{s, at.column, at.column, at.line,
                              std::min(sheet.lineCount() - 1, at.line + below(3))};
        case 7:
            return InsertLines{s, below(sheet.lineCount() + 1), 1 + below(2)};
        case 8:
            return DeleteLines{s, at.line, 1 + below(2)};
        case 9:
            return MoveLines{s, at.line, 1, below(sheet.lineCount() + 1)};
        case 10:
            return SetTitle{text()};
        case 11:
            return ChangeSheet{s, "sheet_" + std::to_string(below(9)), text()};
        case 12: {
            Column column = sheet.column(at.column);
            column.title = text();
            column.key = below(2) ? column.key : "key_" + std::to_string(below(9));
            return below(3) ? Edit{ChangeColumn{s, at.column, column}}
                            : Edit{AddColumn{s, below(sheet.columnCount() + 1), column}};
        }
        case 13:
            return SetSources{
                {{"L1", "laboratory", text()}, {"T" + std::to_string(below(3)), "trade", text()}}};
        case 14:
            return SetLists{{{"verdict", {"works", text()}}, {"answer", {text(), text()}}}};
        case 15: {
            auto charts = book.charts;
            if (!charts.empty()) {
                charts[0].title = text();
                if (below(2))
                    charts[0].plots.push_back({"costs.total[:]", text(), below(2) ? "" : "water.iron"});
            }
            return SetCharts{charts};
        }
        case 16:
            return SetExpectations{s, {{"setting", "19 gpg within 1 %"}, {"iron", text()}}};
        case 17:
        case 18:
            return SetBlock{at, rows()};
        case 19:
            return RenameCell{at, below(4) ? "name_" + std::to_string(below(9)) : ""};
        case 20:
            return below(4) ? Edit{AddSheet{s, "sheet_" + std::to_string(below(9)), text()}}
                            : Edit{DeleteSheet{s}};
        case 21:
            return below(3) ? Edit{MoveLines{s, at.line, 1 + below(2), below(sheet.lineCount() + 1)}}
                            : Edit{DeleteColumn{s, at.column}};
        default:
            return FillDown{s, at.column, at.column, at.line,
                            std::min(sheet.lineCount() - 1, at.line + 1 + below(3))};
        }
    }

private:
    std::uint32_t below(std::uint32_t n) { return n == 0 ? 0 : static_cast<std::uint32_t>(m_random() % n); }
    std::string text() { return texts[below(textCount)]; }
    std::vector<std::vector<std::string>> rows()
    {
        std::vector<std::vector<std::string>> out(1 + below(4));
        for (auto &row : out)
            for (std::uint32_t n = 1 + below(2); n > 0; --n)
                row.push_back(text());
        return out;
    }

    Attributes attributes(const Cell *cell)
    {
        Attributes a = cell && cell->attributes ? *cell->attributes : Attributes{};
        switch (below(9)) {
        case 0:
            a.note = text();
            break;
        case 1:
            a.ask = text();
            break;
        case 2:
            a.lock = !a.lock;
            break;
        case 3:
            a.hide = !a.hide;
            break;
        case 4:
            a.limit =
                LimitText{below(2) ? "<=" : "..", text(), text(), below(2) ? "20" : text(), below(2) == 1,
                          below(2) ? "T1" : "",   text()};
            break;
        case 5:
            a.choices = {text(), text()};
            break;
        case 6:
            a.list = below(2) ? "answer" : text();
            break;
        case 7:
            a.unit = below(2) ? "gpg" : text();
            a.tolerance = below(2) ? "" : text();
            break;
        default:
            a.sources = {"L1"};
            a.figures = static_cast<int>(below(20)) - 2;
            break;
        }
        return a;
    }

    std::mt19937_64 m_random;
};

/// Where two workbooks differ first, for the message.
QString differences(const Workbook &a, const Workbook &b)
{
    if (a.sheets.size() != b.sheets.size())
        return "number of sheets";
    for (std::uint32_t s = 0; s < a.sheets.size(); ++s) {
        const Sheet &x = a.sheets[s], &y = b.sheets[s];
        if (x.columnCount() != y.columnCount() || x.lineCount() != y.lineCount())
            return "size of a sheet";
        for (std::uint32_t c = 0; c < x.columnCount(); ++c)
            for (std::uint32_t l = 0; l < x.lineCount(); ++l)
                if (!(x.cell(c, l) == y.cell(c, l)))
                    return QString("%1 line %2: \"%3\" and \"%4\"")
                        .arg(QString::fromStdString(x.column(c).key))
                        .arg(l + 1)
                        .arg(QString::fromStdString(x.cell(c, l).typed()),
                             QString::fromStdString(y.cell(c, l).typed()));
        if (x.keptTexts() != y.keptTexts())
            return "comments of a sheet";
    }
    return a == b ? "" : "something beside the cells";
}

} // namespace

class SessionSavingTest : public QObject
{
    Q_OBJECT

private slots:
    void everyStateCanBeSaved()
    {
        int made = 0, refused = 0;
        for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(rounds(150)); ++seed) {
            auto session = Session::fromText(start);
            QVERIFY2(session, session ? "" : session.error().words.c_str());
            Robot robot(seed);
            for (int i = 0; i < 20; ++i) {
                const std::string before = (*session)->fileText();
                const auto change = (*session)->apply(robot.next(**session));
                change ? ++made : ++refused;
                const std::string after = (*session)->fileText();
                if (!change) {
                    QVERIFY(!change.error().words.empty());
                    QCOMPARE(QString::fromStdString(after), QString::fromStdString(before));
                    continue;
                }
                const auto back = readWorkbook(after);
                QVERIFY2(back, qPrintable(QString("seed %1, %2: %3\n%4")
                                              .arg(seed)
                                              .arg(QString::fromStdString(change->words))
                                              .arg(back ? "" : QString::fromStdString(back.error().words))
                                              .arg(QString::fromStdString(after))));
                QVERIFY2(differences(*back, (*session)->workbook()).isEmpty(),
                         qPrintable(differences(*back, (*session)->workbook())));
                QVERIFY2(*back == (*session)->workbook(),
                         qPrintable(QString("seed %1, %2: read back it differs\n%3")
                                        .arg(seed)
                                        .arg(QString::fromStdString(change->words))
                                        .arg(QString::fromStdString(after))));
                QCOMPARE(QString::fromStdString(writeWorkbook(*back)), QString::fromStdString(after));
            }
        }
        QVERIFY2(made > rounds(1500) && refused > rounds(300),
                 qPrintable(QString("%1 made, %2 refused").arg(made).arg(refused)));
    }

    /// A line moved into a filled run takes its formula over only where a formula may stand.
    void whatWaitsForTypingTakesNoFormula_data()
    {
        QTest::addColumn<QString>("beside");
        QTest::addColumn<QString>("typed"); ///< what the moved cell holds afterwards
        QTest::newRow("nothing beside it") << "unit gal"
                                           << "amount[-1] + 1 gal";
        QTest::newRow("a question") << "ask \"How much?\""
                                    << "";
        QTest::newRow("a tolerance") << "tolerance +- 0.2 gal"
                                     << "";
    }
    void whatWaitsForTypingTakesNoFormula()
    {
        QFETCH(QString, beside);
        QFETCH(QString, typed);
        auto session = Session::fromText("puteal workbook 1\nsheet water \"Water\"\n"
                                         "column amount amounts \"Amount\" 10\n"
                                         "line\namount: 5 gal\n"
                                         "line\nfill amount: amount[-1] + 1 gal\nline\nline\nstop amount\n"
                                         "line\nat amount\n  " +
                                         beside.toStdString() + "\nend water 5\nend workbook\n");
        QVERIFY2(session, session ? "" : session.error().words.c_str());
        QVERIFY((*session)->apply(MoveLines{0, 4, 1, 2}));
        const Workbook &book = (*session)->workbook();
        QCOMPARE(QString::fromStdString(book.cell({0, 0, 2})->typed()), typed);
        QCOMPARE(QString::fromStdString(book.cell({0, 0, 4})->typed()), QString("amount[-1] + 1 gal"));
        const auto back = readWorkbook((*session)->fileText());
        QVERIFY2(back, back ? "" : back.error().words.c_str());
        QVERIFY(*back == book);
    }

    /// A block that reaches beyond the last line is typed like one that does not.
    void pastedBlockThatAddsLines()
    {
        auto session = Session::fromText(start);
        QVERIFY(session);
        const std::string before = (*session)->fileText();
        const CellAt first{0, 1, 0};
        QVERIFY((*session)->apply(
            SetBlock{first, {{"12"}, {"2"}, {"", " a\tb "}, {}, {}, {}, {}, {}, {"5 gal"}}}));
        const Workbook &book = (*session)->workbook();
        QCOMPARE(book.sheets[0].lineCount(), 9U);
        QCOMPARE(QString::fromStdString(book.cell(first)->typed()), QString("12 gpg"));
        QCOMPARE(QString::fromStdString(book.cell({0, 1, 1})->typed()), QString("2 mg/L as Fe"));
        QCOMPARE(QString::fromStdString(book.cell({0, 2, 2})->typed()), QString("a b"));
        QCOMPARE(QString::fromStdString(book.cell({0, 1, 8})->typed()), QString("5 gal"));
        (*session)->undo();
        QCOMPARE(QString::fromStdString((*session)->fileText()), QString::fromStdString(before));

        Attributes asked;
        asked.ask = "How hard?";
        QVERIFY((*session)->apply(SetAttributes{{0, 2, 0}, asked}));
        const std::string withQuestion = (*session)->fileText();
        const auto refused = (*session)->apply(SetBlock{
            {0, 2, 0}, std::vector<std::vector<std::string>>(9, std::vector<std::string>{"hardness * 2"})});
        QVERIFY(!refused);
        QCOMPARE(QString::fromStdString(refused.error().words),
                 QString("`ask` belongs to a cell that is typed, not to a formula: take it away"));
        QCOMPARE(QString::fromStdString((*session)->fileText()), QString::fromStdString(withQuestion));
    }

    /// A longer name never makes a text that the file could not hold.
    void renamingOutgrowsNoCell()
    {
        std::string words = "\"";
        for (int i = 0; i < 1000; ++i)
            words += "{iron}";
        auto session =
            Session::fromText("puteal workbook 1\nsheet water \"Water\"\n"
                              "column item words \"Item\" 10\ncolumn amount amounts \"Amount\" 10\n"
                              "line\nitem: " +
                              words + "\"\namount: 5 gal\n  name iron\nend water 1\nend workbook\n");
        QVERIFY2(session, session ? "" : session.error().words.c_str());
        QVERIFY((*session)->apply(RenameCell{{0, 1, 0}, "iron_now"})); // 10 characters a time
        const auto refused = (*session)->apply(RenameCell{{0, 1, 0}, "iron_here"});
        QVERIFY(!refused);
        QCOMPARE(
            QString::fromStdString(refused.error().words),
            QString("sheet water line 1 would have 11000 characters, 10000 are the most; shorten it first"));
        QVERIFY(readWorkbook((*session)->fileText()));
    }
};

QTEST_APPLESS_MAIN(SessionSavingTest)
#include "session_saving_test.moc"
