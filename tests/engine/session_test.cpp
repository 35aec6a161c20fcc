/// The door: random edits undone give the starting file byte for byte; refusals change nothing; saving and
/// opening agree.
#include <random>

#include <QTemporaryDir>
#include <QTest>

#include "file/safe_save.h"
#include "session/session.h"
#include "support/rounds.h"

using namespace puteal;
using puteal::test::rounds;

namespace
{

const char *const start = R"(puteal workbook 1
title "Undo"
uses softening 1
list verdict "works" "marginal" "will not work"
source L1 laboratory "invented"
sheet water "Water test"
column item words "Item" 28
column amount amounts "Amount" 18
# the laboratory sheet
line
item: "Hardness {hardness}"
amount: 10 gpg
  name hardness
  source L1
line
item: "Iron"
amount: 1.8 mg/L as Fe
  name iron
  limit <= 0.3 mg/L as Fe near 20 % "stains"
line
amount: compensated_hardness(hardness, iron)
  name setting
line
amount: sum(amount[1:1]) + hardness
line
expect setting = 19 gpg within 1 %
end water 5
sheet costs "Cost by year"
column year amounts "Year" 8
column total amounts "Total" 14
line
year: 0 yr
total: $100
line
fill year: year[-1] + 1 yr
fill total: total[-1] + $90
skip 5
line
stop year total
line
total: sum(total[1:8])
  name all_total
end costs 9
chart cost steps "Cost" x costs.year[:]
plot costs.total[:] "Total"
end workbook
)";

std::unique_ptr<Session> opened(const char *text = start)
{
    auto session = Session::fromText(text);
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return std::move(*session);
}

/// A random edit; many are refused, which must change nothing.
Edit anyEdit(const Session &session, std::mt19937_64 &random)
{
    const auto number = [&](std::uint32_t below) {
        return below == 0 ? 0U : static_cast<std::uint32_t>(random() % below);
    };
    const auto &book = session.workbook();
    const std::uint32_t s = number(static_cast<std::uint32_t>(book.sheets.size()));
    const Sheet &sheet = book.sheets[s];
    const std::uint32_t lines = sheet.lineCount();
    const CellAt at{s, number(sheet.columnCount()), number(lines)};
    static const char *const texts[] = {"5 gpg", "hardness * 2",    "total[-1] + $10",
                                        "",      "no such thing +", "3 mg/L as Fe",
                                        "yes",   "\"words\"",       "water.iron"};
    switch (number(14)) {
    case 0:
    case 1:
    case 2:
        return SetText{at, texts[number(9)]};
    case 3:
        return InsertLines{s, number(lines + 1), 1 + number(3),
                           number(2) ? InsertSide::above : InsertSide::below};
    case 4:
        return DeleteLines{s, number(lines), 1 + number(2)};
    case 5:
        return MoveLines{s, number(lines), 1 + number(2), number(lines + 1)};
    case 6:
        return RenameCell{at, number(3) ? "name_" + std::to_string(number(50)) : std::string()};
    case 7:
        return FillDown{s, at.column, at.column, at.line, std::min(lines - 1, at.line + 1 + number(3))};
    case 8:
        return ClearBlock{s, at.column, at.column, at.line, std::min(lines - 1, at.line + number(2))};
    case 9:
        return SetBlock{at, {{"7", "8 gpg"}, {"9 gpg"}}};
    case 10: {
        Column column;
        column.key = "col_" + std::to_string(number(30));
        column.title = "New";
        return AddColumn{s, number(sheet.columnCount() + 1), column};
    }
    case 11: {
        Column column = sheet.column(at.column);
        column.key = "key_" + std::to_string(number(30));
        return ChangeColumn{s, at.column, column};
    }
    case 12:
        return ChangeSheet{s, "sheet_" + std::to_string(number(40)), "Other title"};
    default:
        return number(2) ? Edit{AddSheet{number(static_cast<std::uint32_t>(book.sheets.size()) + 1),
                                         "added_" + std::to_string(number(99)), "Added"}}
                         : Edit{DeleteColumn{s, at.column}};
    }
}

} // namespace

class SessionTest : public QObject
{
    Q_OBJECT
private slots:
    void aFileReadAndWrittenIsTheSameBytes()
    {
        QCOMPARE(QString::fromStdString(opened()->fileText()), QString(start));
    }

    void anyEditSequenceUndoneGivesTheStartingFile()
    {
        std::mt19937_64 random(7);
        int refused = 0, made = 0;
        for (int sequence = 0; sequence < rounds(120); ++sequence) {
            const auto session = opened();
            std::vector<std::string> states{session->fileText()};
            for (int i = 0; i < 25; ++i) {
                const std::string before = session->fileText();
                const auto change = session->apply(anyEdit(*session, random));
                if (!change) {
                    ++refused;
                    QVERIFY(!change.error().words.empty());
                    QCOMPARE(session->fileText(), before);
                    continue;
                }
                if (session->fileText() == states.back())
                    continue;
                ++made;
                states.push_back(session->fileText());
            }
            for (std::size_t i = states.size(); i-- > 0;) {
                while (session->fileText() != states[i] && session->canUndo())
                    session->undo();
                QCOMPARE(QString::fromStdString(session->fileText()), QString::fromStdString(states[i]));
            }
            while (session->canUndo())
                session->undo();
            QCOMPARE(QString::fromStdString(session->fileText()), QString(start));
            while (session->canRedo())
                session->redo();
            QCOMPARE(QString::fromStdString(session->fileText()), QString::fromStdString(states.back()));
        }
        QVERIFY2(made > rounds(1000) && refused > rounds(50),
                 qPrintable(QString("%1 made, %2 refused").arg(made).arg(refused)));
    }

    /// After any edits the values shown are those of the same text opened afresh.
    void editedEqualsOpenedAfresh()
    {
        std::mt19937_64 random(11);
        for (int sequence = 0; sequence < rounds(60); ++sequence) {
            const auto session = opened();
            for (int i = 0; i < 15; ++i)
                (void)session->apply(anyEdit(*session, random));
            const auto fresh = Session::fromText(session->fileText());
            QVERIFY2(fresh, fresh ? "" : fresh.error().words.c_str());
            const Workbook &book = session->workbook();
            for (std::uint32_t s = 0; s < book.sheets.size(); ++s)
                for (std::uint32_t c = 0; c < book.sheets[s].columnCount(); ++c)
                    for (std::uint32_t l = 0; l < book.sheets[s].lineCount(); ++l)
                        QCOMPARE(QString::fromStdString(session->view({s, c, l}).shown),
                                 QString::fromStdString((*fresh)->view({s, c, l}).shown));
        }
    }

    void refusals_data()
    {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<int>("which");
        QTest::addColumn<QString>("message");
        QTest::newRow("unit word") << "a name may not be a unit word" << 0
                                   << "`gal` is a unit word: take a longer name, as in gal_used";
        QTest::newRow("taken") << "a name is unique in its sheet" << 1
                               << "`iron` already names line 2 of sheet water: take another name";
        QTest::newRow("no source") << "a mark must be declared" << 2
                                   << "the source L9 is not declared; declare it first";
        QTest::newRow("last column") << "a sheet keeps a column" << 3
                                     << "the sheet already has a column `year`; choose another key";
        QTest::newRow("control")
            << "text is clean" << 4
            << "the text holds control characters or is no UTF-8; paste it as plain text";
        QTest::newRow("bad unit") << "a set unit is a unit" << 5 << "`galls` is no unit; gal?";
    }
    void refusals()
    {
        QFETCH(int, which);
        QFETCH(QString, message);
        const auto session = opened();
        Attributes unknownSource, badUnit;
        unknownSource.sources = {"L9"};
        badUnit.unit = "galls";
        Column column;
        column.key = "year";
        const Edit edits[] = {RenameCell{{0, 1, 4}, "gal"},
                              RenameCell{{0, 1, 4}, "iron"},
                              SetAttributes{{0, 1, 4}, unknownSource},
                              AddColumn{1, 0, column},
                              SetText{{0, 1, 4},
                                      std::string("a\x01"
                                                  "b")},
                              SetAttributes{{0, 1, 4}, badUnit}};
        const auto change = session->apply(edits[which]);
        QVERIFY(!change);
        QCOMPARE(QString::fromStdString(change.error().words), message);
        QCOMPARE(QString::fromStdString(session->fileText()), QString(start));
    }

    void aNewNameThatWouldChangeAFormulaIsRefused()
    {
        const auto session = opened();
        QVERIFY(session->apply(SetText{{1, 1, 8}, "sum(total[1:8])"}));
        const auto change = session->apply(RenameCell{{1, 1, 2}, "total"});
        QVERIFY(!change);
        QCOMPARE(QString::fromStdString(change.error().words),
                 QString("`total` is the key of a column of sheet costs: take another name"));
    }

    void savingAndOpeningAgree()
    {
        QTemporaryDir folder;
        const std::string path = folder.filePath("x.puteal").toStdString();
        const auto session = opened();
        QVERIFY(session->apply(SetText{{0, 1, 0}, "12"}));
        QCOMPARE(session->view({0, 1, 0}).typed, std::string("12 gpg"));
        QVERIFY(session->unsaved());
        QVERIFY(session->save(path));
        QVERIFY(!session->unsaved());
        const auto again = Session::open(path);
        QVERIFY(again);
        QCOMPARE((*again)->fileText(), session->fileText());
        session->undo();
        QVERIFY(session->unsaved());
    }
    void theUnitsRowShowsAClashToo()
    {
        const auto session = opened();
        const auto units = [&](const char *text) {
            return QString::fromStdString(session->slip({0, 1, 4}, text).units);
        };
        QCOMPARE(units("hardness + 2 gpg"), QString("gpg + gpg"));
        QCOMPARE(units("hardness * 2 + iron"), QString("gpg.number + mg/L as Fe"));
        QCOMPARE(units("10 gpg + 1 mg/L as Fe"), QString("gpg + mg/L as Fe"));
        QCOMPARE(units("compensated_hardness(hardness, 3 gal)"),
                 QString("compensated_hardness(hardness, gal)"));
    }
    void theUnitsRowShowsWhatIsKnownSoFar()
    {
        const auto session = opened();
        const auto units = [&](const char *text) {
            return QString::fromStdString(session->slip({0, 1, 4}, text).units);
        };
        QCOMPARE(units("hardness +"), QString("gpg +"));
        QCOMPARE(units("hardness * (iron + "), QString("gpg.(mg/L as Fe + "));
        QCOMPARE(units("max(hardness, "), QString("max(gpg, "));
        QCOMPARE(units("hardness + hard"), QString("gpg + ?"));
        QCOMPARE(units("compensted_hardness(hardness, iron)"),
                 QString("compensted_hardness(gpg, mg/L as Fe)"));
        QCOMPARE(units("2 * harness"), QString("number.?"));
        QCOMPARE(units("3 gal/min + unknown"), QString("gal/min + ?"));
        QCOMPARE(units(")"), QString());
    }
    void whatAFileCannotHoldIsRefused()
    {
        const auto session = opened();
        const auto words = [&](const Edit &edit) {
            const auto set = session->apply(edit);
            return set ? QString("done") : QString::fromStdString(set.error().words);
        };
        Attributes asked;
        asked.ask = "how hard?";
        QCOMPARE(words(SetAttributes{{0, 1, 4}, asked}), QString("done"));
        QCOMPARE(words(SetText{{0, 1, 4}, "hardness * 2"}),
                 QString("`ask` belongs to a cell that is typed, not to a formula: take it away"));
        QCOMPARE(words(SetText{{0, 1, 4}, "12 gpg"}), QString("done"));
        asked.lock = true;
        QCOMPARE(
            words(SetAttributes{{0, 1, 4}, asked}),
            QString("`ask` and `lock` exclude each other: what is asked must be seen and typed, keep one"));
        QCOMPARE(words(SetSources{{}}),
                 QString("the source L1 is still used; take it away at its cells first"));
        QCOMPARE(words(SetSources{{{"L1", "laboratory", "x"}, {"S1", "standard", "y"}}}), QString("done"));
    }
    void aCommentedCellIsClearedAndSaved()
    {
        std::string text = start;
        text.insert(text.find("amount: 1.8"), "# asked twice\n");
        const auto session = opened(text.c_str());
        Attributes none;
        QVERIFY(session->apply(SetText{{0, 1, 1}, ""}));
        QVERIFY(session->apply(SetAttributes{{0, 1, 1}, none}));
        QTemporaryDir folder;
        const auto path = std::filesystem::path(folder.path().toStdString()) / "a.puteal";
        const auto saved = session->save(path, false);
        QVERIFY2(saved, saved ? "" : saved.error().words.c_str());
        QVERIFY(QString::fromStdString(*readFile(path)).contains("# asked twice"));
    }

    void aFolderThatIsNotThereIsSaid()
    {
        const auto session = opened();
        const auto saved = session->save("/nowhere/at/all/x.puteal");
        QVERIFY(!saved);
        QCOMPARE(saved.error().kind, ErrorKind::write);
        QVERIFY(QString::fromStdString(saved.error().words).contains("not saved"));
    }
    void findingACell()
    {
        const auto session = opened();
        QCOMPARE(session->find("costs.total[3]").value(), (CellAt{1, 1, 2}));
        QCOMPARE(session->find("water.iron").value(), (CellAt{0, 1, 1}));
        QCOMPARE(session->find("irn").error().words,
                 std::string("no cell is called `irn`; did you mean iron?"));
    }
    void chartSentences()
    {
        const auto session = opened();
        const ChartView view = session->chart("cost");
        QVERIFY(!view.error);
        QCOMPARE(view.series.size(), std::size_t(1));
        QCOMPARE(view.series[0].y.size(), std::size_t(9));
        QVERIFY(view.money);
    }
    void aNewerFileOpensReadable()
    {
        std::string text = start;
        text.replace(text.find("workbook 1"), 10, "workbook 2");
        text.insert(text.find("sheet water"), "sparkle \"something new\"\n");
        const auto session = opened(text.c_str());
        QCOMPARE(
            session->openingNotes(),
            (std::vector<std::string>{
                "this workbook was written by a newer version (format 2); what this version does not know is "
                "kept as it is",
                "sheet water: \"sparkle \"something new\"\" is not understood and has no effect; it is kept "
                "as it is"}));
        QCOMPARE(session->fileText(), text);
        QCOMPARE(session->view({0, 1, 2}).shown, std::string("19.0 gpg"));
    }
    void aMissingPluginKeepsTheText()
    {
        std::string text = start;
        text.replace(text.find("uses softening 1"), 16, "uses geysers 1");
        text.replace(text.find("compensated_hardness(hardness, iron)"), 36,
                     "geyser_height(hardness, iron)       ");
        text.replace(text.find("iron)       "), 12, "iron)");
        const auto session = opened(text.c_str());
        QCOMPARE(session->openingNotes(),
                 std::vector<std::string>{
                     "needs the plugin \"geysers\", which is not here; its cells keep their text: open the "
                     "workbook with a Puteal that has it (`puteal plugins` lists those that are here)"});
        const CellView view = session->view({0, 1, 2});
        QVERIFY(view.error);
        QCOMPARE(view.typed, std::string("geyser_height(hardness, iron)"));
        QCOMPARE(session->fileText(), text);
    }
};

QTEST_APPLESS_MAIN(SessionTest)
#include "session_test.moc"
