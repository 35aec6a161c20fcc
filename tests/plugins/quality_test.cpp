/// Oxygen and quality: saturation, budget, air pockets, hardness and indices against tables.
#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

enum { usgs, tradeScale };
enum { usual, toSulfur, toSulfate };
enum { shortForm, thermodynamic };

const Plugin &oxygen()
{
    static const Plugin plugin("oxygen");
    return plugin;
}
const Plugin &quality()
{
    static const Plugin plugin("quality");
    return plugin;
}

} // namespace

class QualityTest : public QObject
{
    Q_OBJECT

private slots:
    void open() { QVERIFY(oxygen().isOpen() && quality().isOpen()); }

    void saturation()
    {
        const char *standard = "EN 25814 table";
        const char *meter = "colorimeter manual, table 3";
        holds(oxygen(),
              {{standard, "oxygen_saturation", {0}, 14.6, 5e-3},
               {standard, "oxygen_saturation", {5}, 12.8, 5e-3},
               {standard, "oxygen_saturation", {10}, 11.3, 5e-3},
               {standard, "oxygen_saturation", {15}, 10.1, 5e-3},
               {standard, "oxygen_saturation", {20}, 9.09, 1e-3},
               {standard, "oxygen_saturation", {25}, 8.26, 1e-3},
               {meter, "oxygen_saturation", {10, 14.696 * 700 / 760}, 10.4, 5e-3},
               {"worked out, 2 atm at 20 degC", "oxygen_saturation", {20, 2 * 14.69595}, 18.3864, 1e-5},
               {"worked out, 40 psi over the water", "oxygen_saturation", {10, 54.7}, 42.295, 2e-4}});
        for (double t = 0; t < 39; ++t) // colder holds more, pressed holds more
            QVERIFY(oxygen().call("oxygen_saturation", {t}).number >
                    oxygen().call("oxygen_saturation", {t + 1}).number);
    }

    void budget()
    {
        const char *w = "worked out, IUPAC 2021";
        holds(oxygen(),
              {{"Water Treatment Plant Design, table 10.7", "oxygen_budget", {1, 0, 0}, 0.14, 0.03},
               {"2 O2 for each N, worked out, IUPAC 2021", "oxygen_budget", {0, 0, 0, 1}, 4.57, 1e-3},
               {w, "oxygen_budget", {2.4, 0.12, 0}, 0.37873, 1e-4},
               {w, "oxygen_budget", {0.8, 0.08, 2.5, 0, toSulfur}, 1.31167, 1e-5},
               {w, "oxygen_budget", {0.8, 0.08, 2.5, 0, toSulfate}, 4.83299, 1e-6},
               {w, "oxygen_budget", {6, 0.5, 0}, 1.00508, 1e-4},
               {w, "air_pocket_oxygen", {6}, 6.55170, 1e-4},
               {"Boyle with 14.7 psi outside", "air_pocket_volume", {6, 40, 14.7}, 1.61243, 1e-5},
               {w, "air_pocket_days", {6.5517, 300, 4}, 1.442, 1e-3}});
        QVERIFY(oxygen().call("oxygen_budget", {1, 0, 0, 0.5}).warns("nitrite"));
        QVERIFY(oxygen().call("air_pocket_days", {1, 300, 4}).warns("daily"));
        QCOMPARE(oxygen().call("air_pocket_days", {1, 300, 0}).words,
                 std::string("nothing takes oxygen from the pocket: give a use and an uptake above 0"));
    }

    void hardness()
    {
        // Ohio EPA, Ambient Ground-Water Quality Monitoring Program: the agency's hardness beside its own Ca
        // and Mg
        const char *ohio = "Ohio EPA ambient ground water";
        holds(quality(),
              {{ohio, "total_hardness", {187, 53}, 685, 2e-3},
               {ohio, "total_hardness", {116, 35}, 434, 2e-3},
               {ohio, "total_hardness", {147, 47}, 561, 2e-3},
               {ohio, "total_hardness", {93, 34}, 372, 2e-3},
               {ohio, "total_hardness", {77, 18}, 266, 2e-3},
               {"IUPAC 2021 weights differ by less than 0.02 %",
                "total_hardness",
                {80, 0},
                80 * 100.086 / 40.078,
                2e-4},
               {"IUPAC 2021 weights differ by less than 0.02 %",
                "total_hardness",
                {0, 30},
                30 * 100.086 / 24.305,
                2e-4},
               {"reference pages on conductivity", "dissolved_solids_estimate", {300}, 192, 1e-12},
               {"reference pages on conductivity", "dissolved_solids_estimate", {200, 0.6}, 120, 1e-12}});
    }

    void hardnessClass()
    {
        const double gpg = 64.79891 / 3.785411784; // mg/L as CaCO3 in one, NIST Handbook 44
        const auto in = [&](double mgPerLiter, double table) {
            return quality().word("hardness_class", {mgPerLiter / gpg, table});
        };
        // USGS classes; trade-association scale printed beside them
        QCOMPARE(in(40, usgs), std::string("soft"));
        QCOMPARE(in(60, usgs), std::string("soft"));
        QCOMPARE(in(61, usgs), std::string("moderately hard"));
        QCOMPARE(in(120, usgs), std::string("moderately hard"));
        QCOMPARE(in(121, usgs), std::string("hard"));
        QCOMPARE(in(180, usgs), std::string("hard"));
        QCOMPARE(in(180.5, usgs), std::string("very hard"));
        QCOMPARE(in(16, tradeScale), std::string("soft"));
        QCOMPARE(in(40, tradeScale), std::string("slightly hard"));
        // the trade scale prints 17.1 to 60, 61 to 120, 121 to 180 mg/L beside 1, 3.5, 7 and 10.5 gpg
        QCOMPARE(quality().word("hardness_class", {17.1 / gpg, tradeScale}), std::string("slightly hard"));
        QCOMPARE(quality().word("hardness_class", {17.0 / gpg, tradeScale}), std::string("soft"));
        QCOMPARE(quality().word("hardness_class", {60 / gpg, tradeScale}), std::string("slightly hard"));
        QCOMPARE(quality().word("hardness_class", {61 / gpg, tradeScale}), std::string("moderately hard"));
        QCOMPARE(quality().word("hardness_class", {120 / gpg, tradeScale}), std::string("moderately hard"));
        QCOMPARE(quality().word("hardness_class", {180 / gpg, tradeScale}), std::string("hard"));
        QCOMPARE(quality().word("hardness_class", {1.0, tradeScale}), std::string("slightly hard"));
        QCOMPARE(quality().word("hardness_class", {3.5, tradeScale}), std::string("slightly hard"));
        QCOMPARE(quality().word("hardness_class", {7.0, tradeScale}), std::string("moderately hard"));
        QCOMPARE(quality().word("hardness_class", {10.5, tradeScale}), std::string("hard"));
        QCOMPARE(in(323.3, tradeScale), std::string("very hard"));
    }

    void acidAndScale()
    {
        const char *w = "worked out";
        holds(quality(), {{"short form, recalled", "free_carbon_dioxide", {100, 6.5}, 63.246, 1e-5},
                          {"short form, recalled", "free_carbon_dioxide", {150, 7}, 30, 1e-12},
                          {"none above pH 8.3", "free_carbon_dioxide", {150, 8.5}, 0, 1e-12},
                          {"with the temperature, recalled",
                           "free_carbon_dioxide",
                           {100, 6.5, 25, thermodynamic},
                           62.416,
                           1e-4},
                          {"with the temperature, recalled",
                           "free_carbon_dioxide",
                           {100, 6.5, 10, thermodynamic},
                           80.995,
                           1e-4},
                          {w, "ryznar_index", {7.6, 25, 500, 150, 120}, 7.8058, 1e-4},
                          {w, "calcite_hardness_added", {40}, 90.969, 1e-5},
                          {w, "calcite_per_year", {40, 250}, 69.274, 1e-5},
                          {w, "soda_ash_dose", {40}, 96.333, 1e-5}});
        // public Langelier pages print 7.70 / -0.10 and 7.23 / 0.97
        const auto index = [](double ph, double t, double solids, double calcium, double alkalinity) {
            return quality().call("langelier_index", {ph, t, solids, calcium, alkalinity}).number;
        };
        QVERIFY(std::fabs(index(7.6, 25, 500, 150, 120) - -0.10) < 0.005);
        QVERIFY(std::fabs(index(8.2, 30, 800, 250, 180) - 0.97) < 0.005);
        QVERIFY(std::fabs(index(7.5, 25, 320, 150, 34) - -0.7) <
                0.05); // often printed; recalled, not confirmed
        QCOMPARE(
            quality().call("langelier_index", {7.6, 25, 500, 0, 120}).words,
            std::string("without calcium hardness there is no index: use the water ahead of the softener"));
        QVERIFY(quality().call("free_carbon_dioxide", {100, 6.5, 10}).warns("cold"));
        QVERIFY(quality().call("langelier_index", {6.8, 10, 250, 90, 80}).warns("corrosive"));
    }
};

QTEST_APPLESS_MAIN(QualityTest)
#include "quality_test.moc"
