/// Beds, washes, cartridges and cold water against tables and worked cases.
#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &filtration()
{
    static const Plugin plugin("filtration");
    return plugin;
}

} // namespace

class FiltrationTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(filtration().isOpen()); }

    void bedsAndWashes()
    {
        const char *geometry = "worked out, NIST Handbook 44";
        const double area10 = filtration().call("bed_area", {10}).number,
                     area12 = filtration().call("bed_area", {12}).number;
        holds(filtration(), {{geometry, "bed_area", {8}, 0.3491, 2e-4},
                             {geometry, "bed_area", {10}, 0.5454, 2e-4},
                             {geometry, "bed_area", {24}, 3.1416, 2e-4},
                             {geometry, "bed_volume", {10, 30}, 1.364, 1e-3},
                             {geometry, "bed_volume", {14, 36}, 3.207, 1e-3},
                             {geometry, "empty_bed_contact_time", {1.5, 5}, 2.2442, 1e-4},
                             {geometry, "backwash_flow", {area10, 15}, 8.18, 1e-3},
                             {geometry, "backwash_gallons", {area10, 10, 10, 5, 6}, 70.904, 1e-5},
                             {geometry, "backwash_gallons", {area12, 12, 10, 5, 5}, 113.883, 1e-5},
                             {"10 gpm for ten minutes is in the 100 to 200 gal of Missouri Extension G1801",
                              "backwash_gallons",
                              {1, 10, 10},
                              100,
                              1e-12},
                             {"capped by the three-day habit: common practice, no source",
                              "backwash_interval",
                              {500, 3, area10, 300},
                              3,
                              1e-12},
                             {"5.19 days are 5", "backwash_interval", {500, 3, area10, 300, 14}, 5, 1e-12},
                             {"3.24 days are 3", "backwash_interval", {500, 6, area10, 240, 14}, 3, 1e-12},
                             {"no iron: the habit", "backwash_interval", {500, 0, area10, 240}, 3, 1e-12}});
        const Answer daily = filtration().call("backwash_interval", {100, 10, 0.5, 500, 3});
        QVERIFY(daily.warns("daily") && daily.number > 0 && daily.number < 1);
        QVERIFY(filtration().call("backwash_gallons", {3, 15, 10}).warns("much_water"));
    }

    void anIntervalOfExactDaysIsNotCutShort()
    {
        // a bed that holds exactly 3 days of iron, whatever the rounding of its factors
        for (double iron = 0.7; iron < 12; iron += 0.3)
            for (double use = 130; use < 900; use += 37) {
                const double holds3 = 3 * iron * use * 3.785411784 / 64.79891;
                QCOMPARE(filtration().call("backwash_interval", {holds3, iron, 1, use, 14}).number, 3.0);
            }
    }

    void cartridges()
    {
        holds(
            filtration(),
            {{"26,000 gal at its iron, 250 gal a day: common practice, no source",
              "cartridge_days",
              {26000, 3, 3, 250},
              104,
              1e-12},
             {"three times the iron, a third of the days",
              "cartridge_days",
              {26000, 1, 3, 250},
              34.667,
              1e-4},
             {"a tenth of the iron does not stretch it", "cartridge_days", {30000, 1, 0.3, 200}, 150, 1e-12},
             {"the calendar ends it", "cartridge_days", {100000, 1, 1, 100}, 365, 1e-12},
             {"a cabin nobody is in", "cartridge_days", {100000, 1, 1, 0}, 365, 1e-12},
             {"worked out", "cartridge_days_by_mass", {50, 0.5, 240}, 110.07, 1e-4},
             {"worked out", "cartridge_days_by_mass", {150, 2, 250}, 79.2516, 1e-5}});
        QVERIFY(filtration().call("cartridge_days", {26000, 1, 5, 250}).warns("often"));
        QVERIFY(filtration().call("cartridge_days", {100000, 1, 1, 100}).warns("calendar"));
        double before = 1e9;
        for (double iron = 0; iron < 10; iron += 0.1) { // more iron never lengthens
            const double now = filtration().call("cartridge_days", {26000, 1, iron, 250}).number;
            QVERIFY(now <= before);
            before = now;
        }
    }

    void coldWater()
    {
        const char *table = "water viscosity table, engineersedge.com";
        const char *model = "Wen and Yu worked out; constants recalled";
        holds(
            filtration(),
            {{table, "water_viscosity", {5}, 1.519, 1e-3},
             {table, "water_viscosity", {10}, 1.307, 1e-3},
             {table, "water_viscosity", {20}, 1.002, 1e-3},
             // the older table of the Encyclopedia of Environmental Science and Engineering runs 0.6 % higher
             {"Encyclopedia of Environmental Science and Engineering, appendix table 2",
              "water_viscosity",
              {25},
              0.8949,
              7e-3},
             {model, "fluidization_velocity", {0.9, 2650, 10}, 8.446, 1e-3},
             {model, "fluidization_velocity", {0.5, 2650, 5}, 2.355, 1e-3},
             {model, "fluidization_velocity", {1.2, 1650, 25}, 8.300, 1e-3},
             {model, "fluidization_velocity", {0.85, 4000, 10}, 13.334, 1e-3}});
        const double area = filtration().call("bed_area", {10}).number;
        holds(filtration(),
              {{"Ergun worked out", "bed_pressure_loss", {5 / area, 30, 0.6, 0.42, 0.85, 10}, 2.4698, 2e-4},
               {"Ergun worked out", "bed_pressure_loss", {3 / area, 30, 0.6, 0.42, 0.85, 10}, 1.4542, 2e-4}});
        const Answer floats = filtration().call("fluidization_velocity", {0.9, 900, 10});
        QVERIFY(floats.refused);
        QCOMPARE(floats.words, std::string("a grain lighter than water floats: give the density of the wet "
                                           "particle, above 1000 kg/m^3"));
    }
};

QTEST_APPLESS_MAIN(FiltrationTest)
#include "filtration_test.moc"
