/// Softening: published settings, capacities, intervals and sodium; the iron ladder with its missing tests.
#include <QTest>

#include <random>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &softening()
{
    static const Plugin plugin("softening");
    return plugin;
}

/// form (0 dissolved .. 6 unknown), iron, manganese, sulfide, air ahead, bacteria, hardness
std::string verdict(const std::vector<Given> &water)
{
    return softening().word("softener_iron_verdict", water);
}
std::string reason(const std::vector<Given> &water)
{
    return softening().call("softener_iron_verdict", water).reason;
}

} // namespace

class SofteningTest : public QObject
{
    Q_OBJECT

private slots:
    void open() { QVERIFY(softening().isOpen()); }

    void settings()
    {
        const char *trade = "trade texts on settings, printed example";
        holds(softening(),
              {{trade, "compensated_hardness", {18, 1.5, 0, 2}, 21, 1e-12},
               {trade, "compensated_hardness", {20, 3}, 35, 1e-12},
               {trade, "compensated_hardness", {10, 0.5, 1, 2, 2}, 13, 1e-12},
               {"common practice, no source", "compensated_hardness", {10, 1}, 15, 1e-12},
               {"worked out, IUPAC 2021", "exchange_load", {3.00443, 6, 0.5}, 3.68582, 1e-5},
               {"iron weighs a fiftieth of its allowance", "exchange_load", {0, 1}, 0.104697, 1e-5}});
        QVERIFY(softening().call("compensated_hardness", {10, 6}).warns("iron_high"));
        QVERIFY(!softening().call("compensated_hardness", {10, 5}).warns("iron_high"));
    }

    void capacities()
    {
        const char *keller = "Keller, Basic ion exchange, part 2, table 3";
        const char *round = "trade sizing notes, round figures";
        holds(softening(),
              {{"12 Va. Admin. Code 5-590-900: 0.3 lb a kilograin", "resin_capacity", {6, 0}, 20000, 1e-12},
               {round, "resin_capacity", {8, 0}, 24000, 1e-12},
               {round, "resin_capacity", {15, 0}, 30000, 1e-12},
               {"between two rows", "resin_capacity", {12, 0}, 28200, 1e-12},
               {"trade fit, worked out", "resin_capacity", {15, 1}, 29181.3, 1e-5},
               {keller, "resin_capacity", {5, 2}, 22200, 1e-12},
               {keller, "resin_capacity", {15, 2}, 31300, 1e-12},
               {keller, "resin_capacity", {10, 3}, 31500, 1e-12},
               {"flat above the table", "resin_capacity", {20, 0}, 30000, 1e-12},
               {"watertechonline: 5,989 grain a pound", "salt_efficiency", {43683, 7.294}, 5989, 1e-3}});
        QVERIFY(softening().call("resin_capacity", {20, 0}).warns("extrapolated"));
        QVERIFY(softening().call("salt_efficiency", {20000, 6}).warns("below_rating")); // 3,333 against 3,350
        QVERIFY(softening().call("salt_efficiency", {30000, 4}).refused); // above the chemical ceiling
    }

    /// R3: more salt never gives less.
    void capacityNeverFalls()
    {
        for (int table = 0; table < 4; ++table) {
            double last = 0;
            for (double salt = 1; salt <= 25; salt += 0.125) {
                const double grains = softening().call("resin_capacity", {salt, double(table)}).number;
                QVERIFY2(grains >= last, qPrintable(QString("table %1 at %2 lb").arg(table).arg(salt)));
                last = grains;
            }
        }
    }

    void intervals()
    {
        const char *trade = "trade texts, printed example";
        holds(softening(),
              {{trade, "days_between_regenerations", {20000, 400, 15}, 3.333, 1e-3},
               {trade, "days_between_regenerations", {30000, 400, 15}, 5, 1e-12},
               {trade, "days_between_regenerations", {22000, 240, 21}, 4.36, 2e-3},
               {trade, "days_between_regenerations", {25000, 240, 21}, 4.96, 1e-3},
               {trade, "days_between_regenerations", {30000, 240, 21}, 5.95, 1e-3},
               {trade, "days_between_regenerations", {36000, 240, 21}, 7.143, 1e-4},
               {"one day's load kept back", "days_between_regenerations", {36000, 300, 25, 7500}, 3.8, 1e-12},
               {"12 lb every third day", "salt_per_year", {12, 3}, 1460, 1e-12},
               {"common practice, no source", "regeneration_water", {1.5}, 75, 1e-12}});
        QVERIFY(softening().call("days_between_regenerations", {10000, 400, 15}).warns("too_often"));
        QVERIFY(softening().call("days_between_regenerations", {60000, 100, 15}).warns("too_long"));
        QCOMPARE(softening().call("days_between_regenerations", {30000, 400, 15, 30000}).refusedArgument, 4U);
    }

    void sodium()
    {
        const double quarts3 = 3 * 0.946352946; // liters, NIST Handbook 44
        holds(softening(), {{"trade column, 20 gpg", "sodium_added", {20}, 157, 5e-3},
                            {"general answer page, 1 gpg", "sodium_added", {1}, 7.86, 1e-3},
                            {"trade association, 223 mg in three quarts at 10 gpg",
                             "sodium_added",
                             {10},
                             223 / quarts3,
                             2e-3},
                            {"trade association, 893 mg in three quarts at 40 gpg",
                             "sodium_added",
                             {40},
                             893 / quarts3,
                             1e-3},
                            {"worked out, IUPAC 2021", "potassium_added", {1}, 13.37424, 1e-6}});
        QVERIFY(!softening().call("sodium_added", {2.5}).warns("sodium_diet")); // 19.7 mg/L
        QVERIFY(softening().call("sodium_added", {2.6}).warns("sodium_diet"));  // 20.4 mg/L
    }

    void ladder_data()
    {
        QTest::addColumn<std::vector<double>>("water");
        QTest::addColumn<QString>("verdict");
        const auto row = [](const char *rule, std::vector<double> water, const char *word) {
            QTest::newRow(rule) << water << QString(word);
        };
        row("nothing to carry", {0, 0.2, 0.05, 0, 0, 0, 15}, "works");
        row("nothing to carry, form unknown", {6, 0.2, 0.05, 0, 0, 0, 15}, "works");
        row("dissolved, some", {0, 1.6, 0.1, 0, 0, 0, 15}, "works");
        row("just at 2 mg/L", {0, 1.9, 0.1, 0, 0, 0, 15}, "works");
        row("above 2 mg/L", {0, 2.0, 0.1, 0, 0, 0, 15}, "marginal");
        row("just at 5 mg/L", {0, 4.5, 0.5, 0, 0, 0, 15}, "marginal");
        row("above 5 mg/L", {0, 6, 0.5, 0, 0, 0, 15}, "will not work");
        row("oxidized", {1, 1, 0, 0, 0, 0, 15}, "will not work");
        row("mixed", {2, 1, 0, 0, 0, 0, 15}, "will not work");
        row("unknown form", {6, 1, 0, 0, 0, 0, 15}, "cannot tell yet");
        row("air or oxidant ahead", {0, 1, 0, 0, 1, 0, 15}, "will not work");
        row("bacteria", {0, 1, 0, 0, 0, 1, 15}, "will not work");
        row("sulfide", {0, 1, 0, 0.1, 0, 0, 15}, "will not work");
        row("naturally soft", {0, 1, 0, 0, 0, 0, 2}, "marginal");
    }
    void ladder()
    {
        QFETCH(std::vector<double>, water);
        QFETCH(QString, verdict);
        std::vector<Given> given(water.begin(), water.end());
        QCOMPARE(QString::fromStdString(::verdict(given)), verdict);
        QVERIFY(!reason(given).empty());
    }

    void missingAndBoundedTests()
    {
        const Given fe = named(1, "raw iron", "1 mg/L as Fe");
        QCOMPARE(verdict({missing(), fe, 0.1, 0, 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, missing(), 0.1, 0, 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, fe, missing(), 0, 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, fe, 0.1, missing(), 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, fe, 0.1, 0, 0, missing(), 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, fe, 0.1, 0, 0, 0, missing()}), std::string("cannot tell yet"));
        QCOMPARE(reason({0, fe, missing(), 0, 0, 0, 15}), std::string("needs the manganese test"));
        // what is known to be too much decides without the rest
        QCOMPARE(verdict({missing(), named(6.2, "raw iron", "6.2 mg/L as Fe"), missing(), missing(), 0,
                          missing(), missing()}),
                 std::string("will not work"));
        QCOMPARE(reason({missing(), named(6.2, "raw iron", "6.2 mg/L as Fe"), missing(), missing(), 0,
                         missing(), missing()}),
                 std::string("iron 6.2 mg/L as Fe is above the limit 5 mg/L of iron and manganese together"));
        QCOMPARE(verdict({0, fe, 0.1, below(0.05), 0, 0, 15}), std::string("works"));
        QCOMPARE(verdict({0, fe, 0.1, below(0.5), 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({0, fe, below(0.02), 0, 0, 0, 15}), std::string("works"));
        QCOMPARE(verdict({0, above(5.5), 0, 0, 0, 0, 15}), std::string("will not work"));
        QCOMPARE(verdict({0, above(3), 0, 0, 0, 0, 15}), std::string("cannot tell yet"));
        QCOMPARE(verdict({missing(), below(0.3), below(0.02), below(0.05), 0, 0, 15}), std::string("works"));
    }

    /// R4 over random waters: more iron, manganese or sulfide never makes the verdict better.
    void neverBetterWithMore()
    {
        std::mt19937 random(20261125);
        std::uniform_real_distribution<double> share(0, 1);
        for (int i = 0; i < 3000; ++i) {
            std::vector<double> water{std::floor(share(random) * 7),
                                      share(random) * 7,
                                      share(random) * 1.5,
                                      share(random) * 0.1,
                                      share(random) < 0.1 ? 1.0 : 0.0,
                                      share(random) < 0.1 ? 1.0 : 0.0,
                                      share(random) * 30};
            const auto grade = [](const std::vector<double> &w) {
                return softening()
                    .call("softener_iron_verdict", std::vector<Given>(w.begin(), w.end()))
                    .number;
            };
            const double before = grade(water);
            water[1 + static_cast<std::size_t>(share(random) * 2.999)] += share(random) * 2;
            QVERIFY2(grade(water) >= before, qPrintable(QString::number(i)));
        }
    }
};

QTEST_APPLESS_MAIN(SofteningTest)
#include "softening_test.moc"
