/// The two reference waters: every output has a figure worked by hand that it meets, both waters go through
/// the same formulas, and the figures are alive.
#include <QRegularExpression>
#include <QTest>

#include "session/session.h"

using namespace puteal;

namespace
{

/// What a treatment needs of a water, from the raw analysis on: one cell of each name in either water's
/// sheet.
const char *const outputs[] = {
    "hardness",
    "hardness_grains",
    "class_of_hardness",
    "setting_low",
    "setting",
    "true_load",
    "softener_alone",
    "interval",
    "days_clock",
    "salt",
    "sodium",
    "chlorine_least",
    "chlorine_most",
    "chlorine_ammonia",
    "permanganate",
    "peroxide",
    "oxygen",
    "alkalinity_used",
    "solids_made_here",
    "solids_year",
    "iron_year",
    "cartridge_floc",
    "half_life",
    "time_in_air",
    "carbon_dioxide",
    "langelier",
    "saturation_ph",
    "ryznar",
    "dose",
    "feed_weak",
    "feed_straight",
    "tank_days",
};
const char *const waters[] = {"hard", "acid"};

std::unique_ptr<Session> opened()
{
    auto session = Session::open(PUTEAL_SOURCE_DIR "/sheets/reference_waters.puteal");
    if (!session)
        qFatal("%s", session.error().words.c_str());
    return std::move(*session);
}

std::size_t missed(const Session &session)
{
    std::size_t count = 0;
    for (const auto &check : session.expectations())
        count += check.met ? 0 : 1;
    return count;
}

} // namespace

class ReferenceWatersTest : public QObject
{
    Q_OBJECT
private slots:
    void opensWithoutAnErrorOrALimitOutside()
    {
        const auto session = opened();
        for (const Finding &finding : session->findings())
            QVERIFY2(finding.grade == Finding::Grade::caution,
                     qPrintable(QString::fromStdString(finding.place + ": " + finding.words)));
    }

    void everyOutputMeetsItsFigureWorkedByHand()
    {
        const auto session = opened();
        const auto checks = session->expectations();
        for (const auto &check : checks)
            QVERIFY2(check.met, qPrintable(QString::fromStdString(check.words)));
        const Workbook &book = session->workbook();
        for (const char *water : waters) {
            const auto key = book.sheetByKey(water);
            QVERIFY(key);
            const Sheet &sheet = book.sheets[*key];
            for (const char *output : outputs) {
                std::size_t found = 0;
                for (const Expectation &expectation : sheet.expectations)
                    found += expectation.reference == output ? 1U : 0U;
                QVERIFY2(found == 1, output);
            }
            QCOMPARE(sheet.expectations.size(), std::size(outputs));
        }
    }

    /// Beside the formula stands the same figure as in the expectation, marked as worked by hand, and the
    /// relation in words.
    void theFigureAndItsRelationStandBesideTheFormula()
    {
        const auto session = opened();
        const Workbook &book = session->workbook();
        for (const char *water : waters) {
            const std::uint32_t s = *book.sheetByKey(water);
            const Sheet &sheet = book.sheets[s];
            for (const Expectation &expectation : sheet.expectations) {
                const auto at = session->find(std::string(water) + "." + expectation.reference);
                QVERIFY2(at, expectation.reference.c_str());
                QVERIFY(session->view(*at).isFormula);
                const CellView hand = session->view({s, *sheet.columnByKey("hand"), at->line});
                QVERIFY2(expectation.tail == hand.typed ||
                             expectation.tail.starts_with(hand.typed + " within "),
                         expectation.reference.c_str());
                QCOMPARE(hand.sources.size(), std::size_t(1));
                QVERIFY(!session->view({s, *sheet.columnByKey("basis"), at->line}).typed.empty());
            }
        }
    }

    void bothWatersGoThroughTheSameFormulas()
    {
        const auto session = opened();
        const Workbook &book = session->workbook();
        const Sheet &a = book.sheets[*book.sheetByKey("hard")], &b = book.sheets[*book.sheetByKey("acid")];
        QCOMPARE(a.lineCount(), b.lineCount());
        QCOMPARE(a.columnCount(), b.columnCount());
        const std::uint32_t amount = *a.columnByKey("amount");
        std::size_t formulas = 0;
        for (std::uint32_t line = 0; line < a.lineCount(); ++line) {
            const CellAt at{*book.sheetByKey("hard"), amount, line};
            if (!session->view(at).isFormula)
                continue;
            ++formulas;
            QCOMPARE(b.cell(amount, line).typed(), a.cell(amount, line).typed());
        }
        QVERIFY(formulas >= std::size(outputs));
    }

    /// An expectation that could not fail would show nothing: more iron misses every figure that rests on it.
    void theFiguresAreAlive()
    {
        auto session = opened();
        QCOMPARE(missed(*session), std::size_t(0));
        QVERIFY(session->apply(SetText{*session->find("hard.iron"), "2.5 mg/L as Fe"}));
        // the other twelve rest on calcium, magnesium, pH and whole days
        QCOMPARE(missed(*session), std::size(outputs) - 12);
        session->undo();
        QCOMPARE(missed(*session), std::size_t(0));
        QVERIFY(session->apply(SetText{*session->find("acid.ph"), "6.3"}));
        // half-life, time in air, carbon dioxide and both indices
        QCOMPARE(missed(*session), std::size_t(5));
    }
};

QTEST_APPLESS_MAIN(ReferenceWatersTest)
#include "reference_waters_test.moc"
