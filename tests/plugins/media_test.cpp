/// Media against a water: limits row by row, and what must hold over random waters.
#include <QTest>

#include <random>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

enum { works, marginal, cannotTell, willNotWork };
enum { dissolved, oxidized, mixed, bacterial, organic, colloidal, unknown };
enum { noFeed, air, chlorine, permanganate, peroxide };
enum {
    coatedLight,
    greensand,
    coatedSand,
    ore,
    contactor,
    catalyticCarbon,
    carbon,
    sand,
    calcite,
    resin,
    ironCartridge,
    mediumCount
};
/// Places of the arguments.
enum {
    mediumAt,
    formAt,
    phAt,
    ironAt,
    manganeseAt,
    sulfideAt,
    oxygenAt,
    chlorineAt,
    tanninAt,
    feedAt,
    count
};

const Plugin &diagnosis()
{
    static const Plugin plugin("diagnosis");
    return plugin;
}

/// A water that asks nothing of a medium; each row sets what it is about.
std::vector<Given> plain(int medium, int feed)
{
    return {double(medium), double(dissolved), 7.4, 1.0, 0.0, 0.0, 4.0, medium == contactor ? 1.0 : 0.0, 0.0,
            double(feed)};
}

std::vector<Given> with(std::vector<Given> given, std::size_t at, const Given &value)
{
    given[at] = value;
    return given;
}

double verdictOf(const std::vector<Given> &given)
{
    return diagnosis().call("media_check", given).number;
}

/// Random waters from a fixed seed.
class Waters
{
public:
    std::vector<Given> next()
    {
        std::vector<Given> given{double(whole(mediumCount)),
                                 double(whole(7)),
                                 between(5, 10),
                                 between(0, 20),
                                 between(0, 3),
                                 between(0, 12),
                                 between(0, 10),
                                 between(0, 2),
                                 between(0, 2),
                                 double(whole(5))};
        // small values decide most limits
        for (const std::size_t at : {ironAt, manganeseAt, sulfideAt, chlorineAt, tanninAt})
            if (whole(2) == 0)
                given[at] = given[at].number / 20;
        return given;
    }
    int whole(int n) { return std::uniform_int_distribution<int>(0, n - 1)(m_engine); }
    double between(double a, double b) { return std::uniform_real_distribution<double>(a, b)(m_engine); }

private:
    std::mt19937 m_engine{20261126};
};

} // namespace

class MediaTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(diagnosis().isOpen()); }

    void verdicts_data()
    {
        QTest::addColumn<int>("which");
        QTest::addColumn<int>("verdict");
        QTest::addColumn<QString>("why");
        m_given.clear();
        const auto row = [this](const char *rule, std::vector<Given> given, int verdict, const char *why) {
            QTest::newRow(rule) << int(m_given.size()) << verdict << why;
            m_given.push_back(std::move(given));
        };
        // [environmental engineering handbook, table of oxidizing media]
        row("air-driven light medium below pH 6.8",
            with(plain(coatedLight, air), phAt, named(6.5, "pH", "6.5")), willNotWork,
            "pH 6.5 is below the limit 6.8 (handbook)");
        row("air-driven light medium near pH 6.8", with(plain(coatedLight, air), phAt, 6.9), marginal,
            "pH 6.9 is close to the limit 6.8 (handbook)");
        row("oxygen below 15 % of the iron",
            with(with(plain(coatedLight, air), ironAt, 3.0), oxygenAt, named(0.4, "", "0.4 mg/L as O2")),
            willNotWork,
            "too little oxygen 0.4 mg/L as O2 for the 0.45 mg/L that 15 % of the iron asks for (handbook)");
        row("greensand above 10 mg/L of iron and manganese",
            with(with(plain(greensand, permanganate), ironAt, named(10, "", "10 mg/L as Fe")), manganeseAt,
                 named(0.5, "", "0.5 mg/L as Mn")),
            willNotWork,
            "the sum of iron 10 mg/L as Fe and manganese 0.5 mg/L as Mn is above the limit 10 mg/L "
            "(handbook)");
        row("greensand between 6 and 10 mg/L", with(plain(greensand, permanganate), ironAt, 8.0), marginal,
            "the sum of iron 8 mg/L as Fe and manganese 0 mg/L as Mn is above 6 mg/L (handbook), outermost "
            "limit 10 "
            "mg/L (handbook)");
        row("greensand below pH 6.7", with(plain(greensand, permanganate), phAt, 6.6), willNotWork,
            "pH 6.6 is below the limit 6.7 (handbook)");
        // [Univ. of Georgia Extension C858-15]
        row("carbon above 0.3 mg/L of sulfide",
            with(with(plain(carbon, noFeed), ironAt, 0.1), sulfideAt, named(0.4, "", "0.4 mg/L as H2S")),
            willNotWork, "hydrogen sulfide 0.4 mg/L as H2S is above the limit 0.3 mg/L as H2S (handbook)");
        // [extension text on pH adjustment]
        row("calcite below pH 6", with(plain(calcite, noFeed), phAt, 5.8), willNotWork,
            "pH 5.8 is below the limit 6 (handbook)");
        // [AWWA Opflow, December 2021]
        row("a contactor without free chlorine",
            with(with(plain(contactor, chlorine), ironAt, 0.1), chlorineAt,
                 named(0.2, "", "0.2 mg/L as Cl2")),
            willNotWork, "free chlorine 0.2 mg/L as Cl2, at least 0.5 mg/L as Cl2 is needed (handbook)");
        // the rest: common practice, no source
        row("no sulfide over a light coating", with(plain(coatedLight, air), sulfideAt, 0.2), willNotWork,
            "hydrogen sulfide 0.2 mg/L as H2S is above the limit 0.05 mg/L as H2S (common practice)");
        row("manganese stays below pH 8 with air", with(plain(coatedLight, air), manganeseAt, 0.2), marginal,
            "manganese 0.2 mg/L as Mn is above 0.05 mg/L as Mn and stays in the water below pH 8");
        row("manganese goes from pH 8 on", with(with(plain(coatedLight, air), manganeseAt, 0.2), phAt, 8.2),
            works, nullptr);
        row("greensand without an oxidant", plain(greensand, noFeed), willNotWork,
            "nothing is fed ahead; this medium takes permanganate or chlorine");
        row("peroxide on manganese dioxide", plain(ore, peroxide), willNotWork,
            "peroxide is fed ahead; this medium takes air or chlorine: peroxide wastes away on manganese "
            "dioxide");
        row("catalytic carbon behind peroxide", with(plain(catalyticCarbon, peroxide), ironAt, 5.0), marginal,
            "iron 5 mg/L as Fe is above 1 mg/L (common practice), outermost limit 10 mg/L (common practice)");
        row("too much iron for it too", with(plain(catalyticCarbon, peroxide), ironAt, 12.0), willNotWork,
            "iron 12 mg/L as Fe is above the limit 10 mg/L (common practice)");
        row("resin behind air", plain(resin, air), willNotWork,
            "air is fed ahead; this medium takes nothing: an oxidant turns iron to rust on the resin");
        row("iron cartridge at 2 mg/L", with(plain(ironCartridge, noFeed), ironAt, 2.0), works, nullptr);
        row("iron cartridge above 3 mg/L", with(plain(ironCartridge, noFeed), ironAt, 3.2), willNotWork,
            "iron 3.2 mg/L as Fe is above the limit 3 mg/L (common practice)");
        row("iron cartridge near 3 mg/L", with(plain(ironCartridge, noFeed), ironAt, 2.6), marginal,
            "iron 2.6 mg/L as Fe is close to the limit 3 mg/L (common practice)");
        row("iron cartridge and bacteria", with(plain(ironCartridge, noFeed), formAt, double(bacterial)),
            willNotWork,
            "the iron is bacterial (iron 1 mg/L as Fe, limit 0.3 mg/L): disinfect first, then feed an "
            "oxidant without a "
            "break");
        row("sand holds no dissolved iron", plain(sand, noFeed), willNotWork,
            "the iron is dissolved (iron 1 mg/L as Fe, limit 0.3 mg/L): sand holds oxidized iron only");
        row("organic iron asks for a pilot", with(plain(ore, chlorine), formAt, double(organic)), marginal,
            "the iron is organic (iron 1 mg/L as Fe, limit 0.3 mg/L): make a jar test and a pilot first");
        row("form unknown", with(plain(ore, chlorine), formAt, double(unknown)), cannotTell,
            "needs: the form of the iron (it matters above 0.3 mg/L)");
        row("pH not tested", with(plain(ore, chlorine), phAt, missing("pH")), cannotTell,
            "needs: pH, limit 6.5 (common practice)");
        row("iron alone is too much, manganese blank",
            with(with(plain(greensand, permanganate), ironAt, 12.0), manganeseAt, missing()), willNotWork,
            "iron 12 mg/L as Fe alone is above the limit 10 mg/L (handbook)");
        row("a coarse sulfide test",
            with(plain(ironCartridge, noFeed), sulfideAt, below(0.5, "<0.5 mg/L as H2S")), cannotTell,
            "hydrogen sulfide <0.5 mg/L as H2S does not show which side of the limit 0.05 mg/L as H2S "
            "(common practice) it is "
            "on; ask for a finer test");
        row("more than the limit", with(plain(ironCartridge, noFeed), ironAt, above(3, ">3 mg/L as Fe")),
            willNotWork, "iron >3 mg/L as Fe is above the limit 3 mg/L (common practice)");
    }
    void verdicts()
    {
        QFETCH(int, which);
        QFETCH(int, verdict);
        QFETCH(QString, why);
        const Answer answer = diagnosis().call("media_check", m_given[std::size_t(which)]);
        QCOMPARE(int(answer.number), verdict);
        QVERIFY(!answer.reason.empty());
        if (!why.isNull())
            QCOMPARE(QString::fromStdString(answer.reason), why);
    }

    void moreNeverMakesItBetter()
    {
        Waters waters;
        int changed = 0;
        for (int round = 0; round < 6000; ++round) {
            const std::vector<Given> water = waters.next();
            const double before = verdictOf(water);
            for (const std::size_t at : {ironAt, manganeseAt, sulfideAt, tanninAt}) {
                const double more = water[at].number + waters.between(0, 6);
                const double after = verdictOf(with(water, at, more));
                QVERIFY2(after >= before, qPrintable(QString("medium %1, argument %2: %3 to %4")
                                                         .arg(water[0].number)
                                                         .arg(at)
                                                         .arg(water[at].number)
                                                         .arg(more)));
                changed += after > before;
            }
        }
        QVERIFY2(changed > 500, qPrintable(QString::number(changed)));
    }

    void aBlankNeededTestNeverWorks()
    {
        // where any value of a test can spoil a verdict, leaving it blank must not give "works"
        Waters waters;
        int needed = 0;
        for (int round = 0; round < 4000; ++round) {
            const std::vector<Given> water = waters.next();
            if (verdictOf(water) != works)
                continue;
            const std::pair<std::size_t, std::vector<double>> worst[] = {
                {formAt, {bacterial, oxidized, dissolved}},
                {phAt, {4, 11}},
                {ironAt, {100}},
                {manganeseAt, {50}},
                {sulfideAt, {50}},
                {oxygenAt, {0}},
                {chlorineAt, {0, 50}},
                {tanninAt, {20}},
                {feedAt, {noFeed, air, chlorine, permanganate, peroxide}}};
            for (const auto &[at, values] : worst) {
                bool spoils = false;
                for (const double x : values)
                    spoils = spoils || verdictOf(with(water, at, x)) != works;
                const double blank = verdictOf(with(water, at, missing()));
                QVERIFY2((blank == works) != spoils,
                         qPrintable(QString("medium %1, form %2, argument %3 blank gives %4")
                                        .arg(water[mediumAt].number)
                                        .arg(water[formAt].number)
                                        .arg(at)
                                        .arg(blank)));
                if (spoils) {
                    QCOMPARE(blank, double(cannotTell));
                    ++needed;
                }
            }
        }
        QVERIFY2(needed > 300, qPrintable(QString::number(needed)));
    }

    void aBoundedReadingDecidesOnlyIfAllAgrees()
    {
        Waters waters;
        int decided = 0;
        for (int round = 0; round < 6000; ++round) {
            const std::vector<Given> water = waters.next();
            for (const std::size_t at : {ironAt, manganeseAt, sulfideAt, tanninAt, chlorineAt}) {
                const double bound = waters.between(0.01, 8), share = waters.between(0.001, 0.999);
                const bool isBelow = waters.whole(2) == 0;
                const double real = isBelow ? bound * share : bound / share;
                const double known = verdictOf(with(water, at, isBelow ? below(bound) : above(bound)));
                const double truth = verdictOf(with(water, at, real));
                QVERIFY2(known == truth || known == cannotTell,
                         qPrintable(QString("medium %1 argument %2: bound %3 gives %4, %5 gives %6")
                                        .arg(water[0].number)
                                        .arg(at)
                                        .arg(bound)
                                        .arg(known)
                                        .arg(real)
                                        .arg(truth)));
                decided += known != cannotTell;
            }
        }
        QVERIFY(decided > 500);
    }

    void everyReasonNamesAValueOrWhatIsMissing()
    {
        Waters waters;
        for (int round = 0; round < 5000; ++round) {
            const Answer answer = diagnosis().call("media_check", waters.next());
            QVERIFY(!answer.refused);
            const QString why = QString::fromStdString(answer.reason);
            QVERIFY2(why.contains(QRegularExpression("[0-9]")) || why.contains("fed ahead") ||
                         why.contains("needs: "),
                     qPrintable(why));
            QVERIFY2(!why.contains("safe") && !why.contains("pass"), qPrintable(why));
        }
    }

    void shownLimitsAreTheOnesThatDecide()
    {
        // one step over a shown limit of iron never works, one step under its near band does
        for (const int medium : {coatedLight, greensand, coatedSand, ore, resin, ironCartridge}) {
            const int feed = medium == coatedLight ? air
                             : medium == ore       ? chlorine
                             : medium <= ore       ? permanganate
                                                   : noFeed;
            const double inner = diagnosis().call("media_iron_limit", {double(medium), 0.0}).number,
                         outer = diagnosis().call("media_iron_limit", {double(medium), 1.0}).number;
            QCOMPARE(verdictOf(with(plain(medium, feed), ironAt, inner * 0.79)), double(works));
            QCOMPARE(verdictOf(with(plain(medium, feed), ironAt, inner * 0.81)), double(marginal));
            QCOMPARE(verdictOf(with(plain(medium, feed), ironAt, outer)), double(marginal));
            QCOMPARE(verdictOf(with(plain(medium, feed), ironAt, outer * 1.01)), double(willNotWork));
        }
    }

    void washesOfATenInchTank()
    {
        // worked out from the codes' rates: greensand at most 1.64 gpm in service, washed with 4.36 to 5.45;
        // coated sand with 8.18 to 10.91 [Okla. 252:626-9-7; Wis. NR 811]
        const double area = 3.14159265358979 / 4 * 100 / 144;
        const auto rate = [&](const char *f, int medium, int end) {
            return diagnosis().call(f, {double(medium), 1.0, double(end)}).number * area;
        };
        QVERIFY(std::fabs(rate("media_service_loading", greensand, 1) - 1.64) < 0.005);
        QVERIFY(std::fabs(rate("media_backwash_rate", greensand, 0) - 4.36) < 0.005);
        QVERIFY(std::fabs(rate("media_backwash_rate", greensand, 1) - 5.45) < 0.005);
        QVERIFY(std::fabs(rate("media_backwash_rate", coatedSand, 0) - 8.18) < 0.005);
        QVERIFY(std::fabs(rate("media_backwash_rate", coatedSand, 1) - 10.91) < 0.005);
    }

private:
    std::vector<std::vector<Given>> m_given;
};

QTEST_APPLESS_MAIN(MediaTest)
#include "media_test.moc"
