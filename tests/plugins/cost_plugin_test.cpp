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

    /// A feeder against a cell, prices invented, 15 years at 5 % with 3 % price rise: every figure was worked
    /// out on its own, year by year.
    void twoOptions()
    {
        const auto now = [](const char *f, std::vector<Given> given) { return cost().call(f, given).number; };
        std::vector<double> years, feeder, cell,
            sums; // cumulative present values; what the cell saves in a year
        double feederSoFar = 0, cellSoFar = 0;
        for (int year = 0; year <= 15; ++year) {
            const double risen = now("escalated_price", {1, 0.03, double(year)});
            double first = year == 0 ? 4400 : 335 * risen, second = year == 0 ? 6500 : 115 * risen;
            first += (year == 5 || year == 10 ? 220 : year == 8 ? 450 : 0) * risen;
            second += (year == 7 || year == 14 ? 380 * risen : 0) - (year == 15 ? 300 : 0);
            const double worth = now("present_value_factor", {0.05, double(year)});
            years.push_back(year);
            feeder.push_back(feederSoFar += first * worth);
            cell.push_back(cellSoFar += second * worth);
            sums.push_back(first - second);
        }
        const char *w = "worked out on its own";
        const double saved = now("net_present_value", {column(sums), 0.05});
        const double ratio = now("savings_to_investment_ratio", {saved + 2100, 2100});
        holds(cost(),
              {{w, "yearly_equivalent", {feederSoFar, 0.05, 15}, 914.335814, 1e-9},
               {w, "yearly_equivalent", {cellSoFar, 0.05, 15}, 815.273842, 1e-9},
               {w, "net_present_value", {column(sums), 0.05}, 1028.2294, 1e-7},
               {w, "internal_rate_of_return", {column(sums)}, 0.11138297, 1e-7},
               {w, "savings_to_investment_ratio", {saved + 2100, 2100}, 1.489633, 1e-6},
               {w, "adjusted_internal_rate_of_return", {ratio, 0.05, 15}, 0.07827098, 1e-7},
               {w, "break_even_year", {column(years), column(cell), column(feeder)}, 9.126, 1e-4},
               {w, "residual_value", {380, 7, 15}, 325.714286, 1e-8},
               {w, "life_cycle_cost", {1000, 297.637566, 55.367575, 0, 0, 743.873743}, 1986.143734, 1e-10}});
        QVERIFY(std::fabs(feederSoFar - 9490.493077) < 1e-6 && std::fabs(cellSoFar - 8462.263688) < 1e-6);
    }

    /// What one input at a time does to the cell's yearly cost; worked out on its own.
    void oneAtATime()
    {
        const auto yearly = [](double capital, double discount, double running, double growth, double part) {
            const auto now = [](const char *f, std::vector<Given> given) {
                return cost().call(f, given).number;
            };
            const double upkeep = 115 * running * now("grown_years", {growth, discount, 15});
            const double parts = now("replacements_cost", {380 * part, 7, 15, 15, growth, discount});
            const double left = 300 * now("present_value_factor", {discount, 15});
            return now("yearly_equivalent",
                       {now("life_cycle_cost", {6500 * capital, parts, left, 0, 0, upkeep}), discount, 15});
        };
        const double table[][6] = {{1, 0.05, 1, 0.03, 1, 815.274},   {0.8, 0.05, 1, 0.03, 1, 690.029},
                                   {1.2, 0.05, 1, 0.03, 1, 940.519}, {1, 0.03, 1, 0.03, 1, 736.513},
                                   {1, 0.08, 1, 0.03, 1, 943.902},   {1, 0.05, 0.7, 0.03, 1, 772.379},
                                   {1, 0.05, 1.3, 0.03, 1, 858.169}, {1, 0.05, 1, 0.01, 1, 784.998},
                                   {1, 0.05, 1, 0.05, 1, 851.733},   {1, 0.05, 1, 0.03, 0.5, 785.290},
                                   {1, 0.05, 1, 0.03, 1.5, 845.258}};
        for (const auto &row : table)
            QVERIFY2(std::fabs(yearly(row[0], row[1], row[2], row[3], row[4]) - row[5]) < 6e-4,
                     qPrintable(QString::number(row[5])));
    }

    void supplies()
    {
        const char *w = "worked out from the definition";
        holds(cost(), {{"104 days: 26,000 gal for four at 62.5 gal a day, common practice, no source",
                        "cartridge_cost",
                        {45, 104},
                        45 * 365 / 104.0,
                        1e-14},
                       {w, "chemical_per_year", {87600, 3, 52500}, 5.005714286, 1e-9},
                       {w, "device_energy", {40, 24}, 350.4, 1e-14},
                       {w, "break_even_volume", {0, 0.0018, 90, 0}, 50000, 1e-14}});
    }

    void lasting()
    {
        const auto of = [](const char *f, std::vector<Given> given) { return cost().call(f, given).number; };
        for (int life = 1; life <= 16; ++life)
            for (int study = 1; study <= 30; ++study) {
                int left = life; // years the part in use has still to go, counted year by year
                for (int year = 1; year <= study; ++year)
                    left = left == 1 && year < study ? life : left - 1;
                QCOMPARE(of("residual_value", {700.0 * life, double(life), double(study)}), 700.0 * left);
                int common = 1;
                while (common % life != 0 || common % study != 0)
                    ++common;
                const Answer both = cost().call("common_study", {column({double(life), double(study)})});
                QVERIFY(both.refused ? common > 200 : both.number == common);
            }
        const char *habit = "common practice, no source";
        holds(cost(), {{habit, "life_by_hours", {9000, 24}, 9000 / 8760.0, 1e-14},
                       {habit, "life_by_volume", {26000, 91250}, 104 / 365.0, 1e-14},
                       {habit, "usual_life", {6, 0}, 10, 1e-14},
                       {habit, "usual_life", {7, 1}, 8, 1e-14},
                       {habit, "service_interval", {4, 1}, 12, 1e-14},
                       {"the margin of its markup", "price_by_margin", {700, 3 / 13.0}, 910, 1e-14},
                       {"30 on 100 is 30 of 130", "margin_from_markup", {0.3}, 3 / 13.0, 1e-14}});
        QVERIFY(cost().call("usual_life", {0}).warns("habit"));
        QVERIFY(cost().call("life_by_volume", {100000, 15600, 1}).warns("calendar"));
        QVERIFY(!cost().call("life_by_volume", {100000, 150000, 1}).warns("calendar"));
    }

    void cautionsOfReturns()
    {
        const auto of = [](std::vector<double> sums) {
            return cost().call("internal_rate_of_return", {column(sums)});
        };
        QVERIFY(of({-1000, 400, 400, 400}).cautions.empty());
        QVERIFY(of({1000, -400, -400, -400}).warns("borrowed"));
        QVERIFY(of({-100, 0, 0, 74}).warns("loses"));
        QVERIFY(of({-100, 220, -121}).warns("touches"));
        QCOMPARE(of({-1000, 2300, -1320}).words,
                 std::string("the sums balance at 10 % and 20 %, so none of them is the return: use "
                             "net_present_value at your own rate"));
        QCOMPARE(of({-1, std::nan(""), 2}).words,
                 std::string("a line is blank: fill it or take it out of the range"));
        std::vector<double> turning{-1};
        for (int k = 0; k < 30; ++k)
            turning.push_back(turning.back() > 0 ? -2 : 2);
        QVERIFY(QString(of(turning).words.c_str()).startsWith("the sums change their sign too often"));
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
