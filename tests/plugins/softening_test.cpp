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
               {keller, "resin_capacity", {10, 2}, 29000, 1e-12},
               {keller, "resin_capacity", {5, 3}, 23900, 1e-12},
               {keller, "resin_capacity", {10, 3}, 31500, 1e-12},
               {keller, "resin_capacity", {15, 3}, 34000, 1e-12},
               {round, "resin_capacity", {10, 0}, 27000, 1e-12},
               {"other trade sizing notes", "resin_capacity", {7.5, 4}, 22000, 1e-12},
               {"other trade sizing notes", "resin_capacity", {10, 4}, 25000, 1e-12},
               {"other trade sizing notes", "resin_capacity", {15, 4}, 30000, 1e-12},
               {"35 Ill. Adm. Code 604.805: 0.3 lb a kilograin", "resin_capacity", {6, 5}, 20000, 1e-12},
               {"no more by the codes", "resin_capacity", {15, 5}, 20000, 1e-12},
               {"half the dose, half the capacity", "resin_capacity", {3, 5}, 10000, 1e-12},
               {"flat above the table", "resin_capacity", {20, 0}, 30000, 1e-12},
               {"watertechonline: 5,989 grain a pound", "salt_efficiency", {43683, 7.294}, 5989, 1e-3}});
        QVERIFY(softening().call("resin_capacity", {20, 0}).warns("extrapolated"));
        QVERIFY(softening().call("resin_capacity", {7, 4}).warns("extrapolated")); // begins at 7.5 lb
        QVERIFY(softening().call("resin_capacity", {8, 5}).warns("code_ceiling"));
        QVERIFY(!softening().call("resin_capacity", {6, 5}).warns("code_ceiling"));
        QVERIFY(softening().call("salt_efficiency", {20000, 6}).warns("below_rating")); // 3,333 against 3,350
        QVERIFY(softening().call("salt_efficiency", {30000, 4}).refused); // above the chemical ceiling
    }

    /// R3: more salt never gives less.
    void capacityNeverFalls()
    {
        for (int table = 0; table < 6; ++table) {
            double last = 0;
            for (double salt = 1; salt <= 25; salt += 0.125) {
                const double grains = softening().call("resin_capacity", {salt, double(table)}).number;
                QVERIFY2(grains >= last, qPrintable(QString("table %1 at %2 lb").arg(table).arg(salt)));
                last = grains;
            }
        }
    }

    /// The dose read back from a table gives that table's capacity, and a thousandth less does not.
    void doseForCapacity()
    {
        for (int table = 0; table < 6; ++table) {
            for (double grains = 12000; grains <= 20000; grains += 500) {
                const auto dose = softening().call("salt_dose_for_capacity", {grains, double(table)});
                QVERIFY2(!dose.refused, qPrintable(QString("table %1 at %2").arg(table).arg(grains)));
                const auto at = [&](double salt) {
                    return softening().call("resin_capacity", {salt, double(table)}).number;
                };
                QVERIFY(std::fabs(at(dose.number) - grains) < 1e-6 * grains);
                QVERIFY(at(dose.number * 0.999) < grains);
            }
        }
        QVERIFY(softening().call("salt_dose_for_capacity", {20001, 5}).refused); // above the codes' ceiling
        QVERIFY(softening().call("salt_dose_for_capacity", {12000}).warns("leakage"));
    }

    /// Charge for charge, from atomic weights typed here: IUPAC 2021, abridged.
    void saltByCharge()
    {
        const double caco3 = 40.078 + 12.011 + 3 * 15.999, nacl = 22.98976928 + 35.45, kcl = 39.0983 + 35.45;
        const double grain = 0.06479891, pound = 453.59237; // g, NIST Handbook 44
        const char *line = "watertechonline, chemistry line: 5,989 and 4,695 grain a pound";
        holds(softening(),
              {{line, "least_salt", {5989, 0}, 1, 1e-3},
               {line, "least_salt", {4695, 1}, 1, 1e-3},
               {"watertechonline: 7.294 lb for 43,683 grain", "least_salt", {43683, 0}, 7.294, 1e-3},
               {"IUPAC 2021", "least_salt", {1e4, 0}, 1e4 * grain / (caco3 / 2) * nacl / pound, 1e-12},
               {"IUPAC 2021", "least_salt", {1e4, 1}, 1e4 * grain / (caco3 / 2) * kcl / pound, 1e-12},
               {line, "potassium_chloride_factor", {0}, 5989.0 / 4695.0, 1e-3},
               {"IUPAC 2021", "potassium_chloride_factor", {0.1}, 1.1 * kcl / nacl, 1e-12}});
        // equivalents of resin in grain a cubic foot: 1.9 and 2.0 eq/L are printed as 41,499 and 43,683
        const double cubicFoot = 28.316846592; // L, NIST SP 811
        const auto salt = [&](double perLiter) {
            return softening().call("least_salt", {perLiter * caco3 / 2 / grain * cubicFoot}).number;
        };
        QVERIFY(std::fabs(salt(2.0) / (43683.0 / 5989.0) - 1) < 2e-3);
        QVERIFY(std::fabs(salt(1.9) / (41499.0 / 5989.0) - 1) < 2e-3);
    }

    void sizing()
    {
        const char *trade = "trade texts, printed example";
        holds(softening(),
              {{trade, "daily_hardness_load", {5 * 80, 15}, 6000, 1e-12},
               {trade, "daily_hardness_load", {4 * 60, 21}, 5040, 1e-12},
               {trade, "softener_capacity_needed", {400, 15, 5}, 30000, 1e-12},
               {trade, "softener_capacity_needed", {400, 15, 3.333}, 20000, 2e-4},
               {trade, "softener_capacity_needed", {240, 21, 4.96}, 25000, 1e-3},
               {trade, "resin_needed", {36000, 24000}, 1.5, 1e-12},
               {trade, "salt_per_regeneration", {1.5, 8}, 12, 1e-12},
               {"worked out", "salt_per_year_by_efficiency", {300, 20, 4000}, 547.5, 1e-12},
               {"worked out", "salt_per_year_by_efficiency", {250, 15, 3000}, 456.25, 1e-12},
               {"what a clock wastes", "salt_efficiency_achieved", {3, 300, 25, 12}, 1875, 1e-12},
               {"half and half", "bypass_share", {20, 0, 10}, 0.5, 1e-12}});
        QVERIFY(softening().call("softener_capacity_needed", {400, 15, 2}).warns("too_often"));
        QVERIFY(softening().call("salt_efficiency_achieved", {3, 300, 25, 12}).warns("below_rating"));
        QVERIFY(softening().call("salt_efficiency_achieved", {14, 400, 15, 12}).refused);
        QVERIFY(softening().call("bypass_share", {20, 0, 25}).refused);
        // needed and lasting are the same relation read both ways
        for (double reserve = 0; reserve <= 6000; reserve += 1500) {
            const double capacity =
                softening().call("softener_capacity_needed", {280, 17, 6, reserve}).number;
            const double days =
                softening().call("days_between_regenerations", {capacity, 280, 17, reserve}).number;
            QVERIFY(std::fabs(days - 6) < 1e-9);
        }
    }

    void brineAndDrain()
    {
        holds(softening(),
              {{"forum note: 3 lb of salt a gallon of water", "salt_dissolved", {0.264, 20}, 3, 0.01},
               {"a liter at 1.198 kg, recalled", "brine_strength", {0.264, 1.198}, 2.639, 1e-3},
               {"3 lb a gallon", "brine_fill", {12}, 4, 1e-12},
               {"2.4 lb a gallon", "brine_volume", {6, 2.4}, 2.5, 1e-12},
               {"NSF/ANSI 44 as quoted: 5 gal for 1,000 grain",
                "regeneration_water_bound",
                {24000},
                120,
                1e-12},
               {"NSF/ANSI 44 as quoted", "regeneration_water_ratio", {120, 24000}, 5, 1e-12},
               {"worked out", "regeneration_water_per_year", {75, 4}, 6843.75, 1e-12}});
        QVERIFY(softening().call("regeneration_water_ratio", {121, 24000}).warns("above_rating"));
        QVERIFY(!softening().call("regeneration_water_ratio", {120, 24000}).warns("above_rating"));
        // what a gallon of water dissolves, with the brine's volume against the sum of its parts: mass stays
        for (double share = 0.05; share <= 0.26; share += 0.03) {
            const double perWater = softening().call("salt_dissolved", {share, 20}).number; // lb/gal
            const double waterMass = 0.99821 * 3.785411784 / 0.45359237; // lb/gal at 20 degC, IAPWS-95
            QVERIFY(std::fabs(perWater / (perWater + waterMass) - share) < 1e-4);
        }
    }

    void flows()
    {
        const char *slovak = "Slovak, Guidelines for designing water softeners";
        holds(softening(), {{slovak, "resin_service_flow", {1}, 5, 1e-12},
                            {slovak, "resin_service_flow", {1, 1}, 1, 1e-12},
                            {"7 gpm/ft^2 on 3 ft", "resin_flow_rate_by_loading", {7, 3}, 7.0 / 3, 1e-12},
                            {"7.5 gpm on 1.5 ft^3", "resin_flow_rate", {7.5, 1.5}, 5, 1e-12}});
        QVERIFY(!softening().call("resin_flow_rate", {7.5, 1.5}).warns("fast"));
        QVERIFY(softening().call("resin_flow_rate", {7.6, 1.5}).warns("fast"));
        QVERIFY(softening().call("resin_flow_rate", {1.4, 1.5}).warns("channeling"));
        QVERIFY(softening().call("resin_flow_rate_by_loading", {7.1, 3}).warns("public_limit"));
        QVERIFY(softening().call("resin_flow_rate_by_loading", {5, 1.9}).warns("shallow"));
        // Andrew, wcponline.com 2014: at least 4 gpm, at most 15 psi
        QCOMPARE(softening().call("softener_rating_met", {4, 15}).number, 1.0);
        QCOMPARE(softening().call("softener_rating_met", {3.9, 15}).number, 0.0);
        QCOMPARE(softening().call("softener_rating_met", {4, 15.1}).number, 0.0);
        QCOMPARE(softening().call("softener_rating_met", {4, 15.5}).reason,
                 std::string("pressure loss 15.5 psi is above the most of 15 psi"));
    }

    void publishedIronLimits()
    {
        holds(softening(), {{"12 Va. Admin. Code 5-590-900", "softener_iron_limit", {0}, 0.3, 1e-12},
                            {"35 Ill. Adm. Code 604.805", "softener_iron_limit", {1}, 1, 1e-12},
                            {"consumer pamphlet on iron", "softener_iron_limit", {2}, 1, 1e-12},
                            {"Getting smart with softeners", "softener_iron_limit", {3}, 2, 1e-12},
                            {"home guides", "softener_iron_limit", {4}, 5, 1e-12},
                            {"engineering handbook table", "softener_iron_limit", {5}, 10, 1e-12}});
        QVERIFY(softening().call("softener_iron_limit", {5}).warns("not_followed"));
        QCOMPARE(softening().call("high_salt_efficiency_possible", {1.9, 740}).number, 1.0);
        QCOMPARE(softening().call("high_salt_efficiency_possible", {2, 740}).number, 0.0);
        QCOMPARE(softening().call("high_salt_efficiency_possible", {1.9, 750}).number, 0.0);
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
        const auto drunk = [](double gpg) { // mg a day in three quarts
            return softening()
                .call("sodium_intake", {softening().call("sodium_added", {gpg}).number, 3})
                .number;
        };
        QVERIFY(std::fabs(drunk(10) - 223) < 0.5); // trade-association table
        QVERIFY(std::fabs(drunk(40) - 893) < 0.5);
        QVERIFY(softening().call("sodium_intake", {400, 2}).warns("sodium_diet"));
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

    void rustsInTheBed()
    {
        const std::vector<Given> acid{0, 1, 0, 0, 0, 0, 15, 8}, alkaline{0, 1, 0, 0, 0, 0, 15, 8.1};
        QVERIFY(!softening().call("softener_iron_verdict", acid).warns("precipitates"));
        QVERIFY(softening().call("softener_iron_verdict", alkaline).warns("precipitates"));
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
        // a reading above its bound has no other end to name
        QCOMPARE(reason({0, above(5.5), 0, 0, 0, 0, 15}),
                 std::string("iron and manganese together above 5.5 mg/L are above the limit 5 mg/L"));
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
