/// Money factors against published tables, replacements against counting, break-even against a worked pair.
#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &cost()
{
    static const Plugin plugin("cost");
    return plugin;
}

} // namespace

class CostPluginTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(cost().isOpen()); }

    void published()
    {
        const char *tables = "Discrete cash flow: compound interest factors, 0.25 %";
        const char *code = "annuity checks of public finance code";
        holds(cost(), {{tables, "compound", {0.0025, 12}, 1.0304, 5e-5},
                       {tables, "present_value_factor", {0.0025, 12}, 0.9705, 5e-5},
                       {tables, "present_value_factor", {0.0025, 24}, 0.9418, 5e-5},
                       {tables, "annuity_factor", {0.0025, 12}, 11.8073, 1e-5},
                       {tables, "annuity_factor", {0.0025, 24}, 23.2660, 1e-5},
                       {tables, "yearly_equivalent", {1000, 0.0025, 24}, 42.98, 5e-5},
                       {code, "present_value_factor", {0.05, 10}, 0.6139132535407591, 1e-14},
                       {code, "annuity_factor", {0.05, 10}, 7.721734929184818, 1e-14},
                       {code, "annuity_factor", {0.05, 5}, 4.32948, 2e-6},
                       {code, "annuity_factor", {0.10, 5}, 3.79079, 2e-6},
                       {code, "annuity_factor", {0.10, 10}, 6.14457, 2e-6},
                       {code, "annuity_factor", {0.15, 5}, 3.35216, 2e-6},
                       {code, "annuity_factor", {0.15, 10}, 5.01877, 2e-6}});
    }

    void workedOut()
    {
        const char *w = "worked out from the definition";
        holds(cost(),
              {{w, "compound", {0.08, 10}, 2.15892500, 1e-8},
               {w, "annuity_factor", {0.06, 20}, 11.46992122, 1e-9},
               {"a rate of 0", "annuity_factor", {0, 15}, 15, 1e-15},
               {"a rate of almost 0", "annuity_factor", {1e-13, 15}, 15, 1e-11},
               {w, "grown_years", {0.03, 0.05, 10}, 9.01002404, 1e-9},
               {w, "grown_years", {0.02, 0.03, 20}, 18.08122939, 1e-9},
               {w, "grown_years", {0.04, 0.08, 15}, 11.23895497, 1e-9},
               {"growth eats the discount", "grown_years", {0.05, 0.05, 10}, 10, 1e-14},
               {w, "yearly_equivalent", {9490.493077, 0.05, 15}, 914.335814, 1e-9},
               {"7 and 14 of 15 years", "times_replaced", {7, 15, 15}, 2, 1e-15},
               {"none at the end of the study", "times_replaced", {7, 14, 14}, 1, 1e-15},
               {"the one due now counts", "times_replaced", {5, 5, 15}, 1, 1e-15},
               {"media every 6 of 15 years at 5 %",
                "replacements_cost",
                {450, 6, 15, 15, 0, 0.05},
                586.373767,
                1e-8},
               {"at year 10 at 3 %", "replacements_cost", {400, 10, 20, 20, 0, 0.03}, 297.637566, 1e-8},
               {"2100 against 220 a year", "payback_time", {2100, 220}, 9.545455, 1e-7},
               {"1000 gal, 150 ft, 40 %", "pumping_energy", {150, 1000}, 1.178630, 1e-4},
               {"100 ft, no loss", "pumping_energy", {100, 1000, 1}, 0.314301, 1e-4}});
        // engineeringtoolbox.com d_1527: 10 gpm against 10 ft at 0.9 * 0.9 and 0.10 $/kWh is 0.002 $/h, to
        // one figure
        QVERIFY(std::fabs(cost().call("pumping_energy", {10, 600, 0.81}).number * 0.10 - 0.002) < 0.0005);
    }

    void replacementsAgreeWithCounting()
    {
        for (int life = 1; life <= 16; ++life)
            for (int time = 0; time <= 15; ++time) {
                int times = 0;
                for (int year = 1; year <= time; ++year)
                    times += year % life == 0 && year < 15 ? 1 : 0;
                QCOMPARE(cost().call("times_replaced", {double(life), double(time), 15.0}).number,
                         double(times));
                QCOMPARE(cost().call("replacements_cost", {100.0, double(life), double(time), 15.0}).number,
                         100.0 * times);
            }
        // half years, and a time that is a year only up to rounding
        QCOMPARE(cost().call("times_replaced", {0.5, 3, 15}).number, 6.0);
        QCOMPARE(cost().call("times_replaced", {0.1, 0.3, 15}).number, 3.0);
    }

    void breakEven()
    {
        const auto year = [](std::vector<double> years, std::vector<double> a, std::vector<double> b) {
            return cost().call("break_even_year", {column(years), column(a), column(b)});
        };
        // two options of 15 years; discounted gap by year, worked out: last crossing between year 9 and 10
        const std::vector<double> years{0, 1, 5, 6, 7, 8, 9, 10, 15},
            gap{2100.0, 1884.1905, 861.4527, 665.4282, 805.2760, 230.8181, 45.7830, -317.2382, -1028.2294},
            none(9, 0.0);
        QVERIFY(std::fabs(year(years, gap, none).number - 9.126) < 5e-4);
        QCOMPARE(year({0, 1, 2, 3}, {100, 100, 300, 300}, {200, 50, 250, 350}).number,
                 2.5);                                                // the last of three
        QCOMPARE(year({0, 1, 2}, {1, 0, -1}, {0, 0, 0}).number, 1.0); // exactly on a line
        QVERIFY(year({0, 1, 2}, {1, 0, 1}, {0, 0, 0}).refused);       // touches, does not cross
        QCOMPARE(year({0, 1}, {1, 2}, {2, 3}).words,
                 std::string("the two never cross: the cheaper one stays cheaper"));
        QCOMPARE(year({0, 1}, {1, 2}, {2, std::nan("")}).words,
                 std::string("a line is blank: fill it or take it out of the range"));
        QCOMPARE(year({0, 1}, {1, 2}, {2}).words, std::string("the three ranges must have the same lines"));
        QCOMPARE(year({1, 0}, {1, 2}, {2, 1}).words, std::string("the years must rise from line to line"));
    }

    void refuses()
    {
        const char *whole = "yearly sums need whole years: round the time to a year";
        QCOMPARE(cost().call("annuity_factor", {0.05, 10.5}).words, std::string(whole));
        QCOMPARE(cost().call("grown_years", {0.03, 0.05, 2.5}).words, std::string(whole));
        QCOMPARE(cost().call("yearly_equivalent", {1000, 0.05, 0}).words,
                 std::string("a yearly equivalent needs one or more whole years"));
        QCOMPARE(cost().call("payback_time", {2100, 0}).words,
                 std::string("nothing is saved, so it never pays back"));
    }
};

QTEST_APPLESS_MAIN(CostPluginTest)
#include "cost_plugin_test.moc"
