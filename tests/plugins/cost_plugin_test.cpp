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
        holds(cost(), {{tables, "compound_amount_factor", {0.0025, 12}, 1.0304, 5e-5},
                       {tables, "present_value_factor", {0.0025, 12}, 0.9705, 5e-5},
                       {tables, "present_value_factor", {0.0025, 24}, 0.9418, 5e-5},
                       {tables, "annuity_factor", {0.0025, 12}, 11.8073, 1e-5},
                       {tables, "annuity_factor", {0.0025, 24}, 23.2660, 1e-5},
                       {tables, "equivalent_annual_cost", {1000, 0.0025, 24}, 42.98, 5e-5},
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
              {{w, "compound_amount_factor", {0.08, 10}, 2.15892500, 1e-8},
               {w, "annuity_factor", {0.06, 20}, 11.46992122, 1e-9},
               {"a rate of 0", "annuity_factor", {0, 15}, 15, 1e-15},
               {"a rate of almost 0", "annuity_factor", {1e-13, 15}, 15, 1e-11},
               {w, "escalated_annuity_factor", {0.03, 0.05, 10}, 9.01002404, 1e-9},
               {w, "escalated_annuity_factor", {0.02, 0.03, 20}, 18.08122939, 1e-9},
               {w, "escalated_annuity_factor", {0.04, 0.08, 15}, 11.23895497, 1e-9},
               {"growth eats the discount", "escalated_annuity_factor", {0.05, 0.05, 10}, 10, 1e-14},
               {w, "equivalent_annual_cost", {9490.493077, 0.05, 15}, 914.335814, 1e-9},
               {"7 and 14 of 15 years", "times_replaced", {7, 15, 15}, 2, 1e-15},
               {"none at the end of the study", "times_replaced", {7, 14, 14}, 1, 1e-15},
               {"the one due now counts", "times_replaced", {5, 5, 15}, 1, 1e-15},
               {"media every 6 of 15 years at 5 %",
                "replacements_cost",
                {450, 6, 15, 15, 0, 0.05},
                586.373767,
                1e-8},
               {"at year 10 at 3 %", "replacements_cost", {400, 10, 20, 20, 0, 0.03}, 297.637566, 1e-8},
               {"2100 against 220 a year", "simple_payback", {2100, 220}, 9.545455, 1e-7},
               {"1000 gal, 150 ft, 40 %", "pumping_energy", {150, 1000}, 1.178630, 1e-4},
               {"100 ft, no loss", "pumping_energy", {100, 1000, 1}, 0.314301, 1e-4}});
        // engineeringtoolbox.com d_1527: 10 gpm against 10 ft at 0.9 * 0.9 and 0.10 $/kWh is 0.002 $/h, to
        // one figure
        QVERIFY(std::fabs(cost().call("pumping_energy", {10, 600, 0.81}).number * 0.10 - 0.002) < 0.0005);
    }

    /// Worked out on its own to eight places and more: rate, years, F/P, P/F, P/A, A/P, F/A, P/G.
    void factorRows()
    {
        const double table[][8] = {
            {0.0025, 12, 1.03041596, 0.97048187, 11.80725384, 0.0846936988, 12.16638277, 64.588583},
            {0.0025, 24, 1.06175704, 0.94183505, 23.26597957, 0.0429812120, 24.70281770, 264.775340},
            {0.03, 10, 1.34391638, 0.74409391, 8.53020284, 0.1172305066, 11.46387931, 36.308790},
            {0.03, 20, 1.80611123, 0.55367575, 14.87747486, 0.0672157076, 26.87037449, 126.798659},
            {0.05, 10, 1.62889463, 0.61391325, 7.72173493, 0.1295045750, 12.57789254, 31.652048},
            {0.05, 15, 2.07892818, 0.48101710, 10.37965804, 0.0963422876, 21.57856359, 63.288031},
            {0.06, 20, 3.20713547, 0.31180473, 11.46992122, 0.0871845570, 36.78559120, 87.230445},
            {0.08, 10, 2.15892500, 0.46319349, 6.71008140, 0.1490294887, 14.48656247, 25.976831},
            {0.10, 10, 2.59374246, 0.38554329, 6.14456711, 0.1627453949, 15.93742460, 22.891342},
            {0.10, 15, 4.17724817, 0.23939205, 7.60607951, 0.1314737769, 31.77248169, 40.151988},
            {0.12, 10, 3.10584821, 0.32197324, 5.65022303, 0.1769841642, 17.54873507, 20.254089}};
        const char *names[] = {
            "compound_amount_factor",  "present_value_factor",          "annuity_factor",
            "capital_recovery_factor", "series_compound_amount_factor", "gradient_present_worth_factor"};
        for (const auto &row : table)
            for (int c = 0; c < 6; ++c) {
                const double ours = cost().call(names[c], {row[0], row[1]}).number;
                QVERIFY2(std::fabs(ours - row[c + 2]) < (c == 5 ? 6e-7 : 6e-9), names[c]);
            }
        const char *w = "worked out on its own";
        const double parts = cost().call("replacements_cost", {450, 6, 15, 15, 0, 0.05}).number;
        holds(cost(), {{w, "equivalent_annual_cost", {parts, 0.05, 15}, 56.492590, 1e-8},
                       {w, "yearly_reserve", {450, 6, 0.05}, 66.157861, 1e-8},
                       {w, "geometric_gradient_factor", {0.03, 0.05, 10}, 8.74759615, 1e-9},
                       {w, "discounted_payback", {2100, 220, 0.05}, 13.295619, 1e-7},
                       {w, "real_rate", {0.06, 0.025}, 0.034146341463, 3e-11},
                       {w, "pumping_energy", {200, 1000, 0.5}, 1.257205, 1e-6},
                       {w, "pumping_energy", {150, 13000, 0.4}, 15.3222, 1e-5}});
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
        double feederSoFar = 0, cellSoFar = 0, feederSpent = 0, cellSpent = 0;
        const std::vector<std::pair<int, double>> gaps{{0, 2100},     {1, 1884.1905},  {5, 861.4527},
                                                       {6, 665.4282}, {7, 805.2760},   {8, 230.8181},
                                                       {9, 45.7830},  {10, -317.2382}, {15, -1028.2294}};
        std::size_t seen = 0;
        int spentEven = 0; // the first year in which the cell has cost less, without interest
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
            feederSpent += first;
            cellSpent += second;
            if (spentEven == 0 && cellSpent < feederSpent)
                spentEven = year;
            if (seen < gaps.size() && gaps[seen].first == year)
                QVERIFY2(std::fabs(cellSoFar - feederSoFar - gaps[seen++].second) < 6e-5,
                         qPrintable(QString::number(year)));
        }
        QCOMPARE(seen, gaps.size());
        QCOMPARE(spentEven, 8);
        QVERIFY(std::fabs(feederSpent - 11938.3037) < 6e-5 && std::fabs(cellSpent - 9445.1775) < 6e-5);
        const char *w = "worked out on its own";
        const double saved = now("net_present_value", {column(sums), 0.05});
        const double ratio = now("savings_to_investment_ratio", {saved + 2100, 2100});
        holds(cost(),
              {{w, "equivalent_annual_cost", {feederSoFar, 0.05, 15}, 914.335814, 1e-9},
               {w, "equivalent_annual_cost", {cellSoFar, 0.05, 15}, 815.273842, 1e-9},
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
            const double upkeep = 115 * running * now("escalated_annuity_factor", {growth, discount, 15});
            const double parts = now("replacements_cost", {380 * part, 7, 15, 15, growth, discount});
            const double left = 300 * now("present_value_factor", {discount, 15});
            return now("equivalent_annual_cost",
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
        QCOMPARE(cost().call("escalated_annuity_factor", {0.03, 0.05, 2.5}).words, std::string(whole));
        QCOMPARE(cost().call("equivalent_annual_cost", {1000, 0.05, 0}).words,
                 std::string("an even yearly cost needs one or more whole years"));
        QCOMPARE(cost().call("simple_payback", {2100, 0}).words,
                 std::string("nothing is saved, so it never pays back"));
    }
};

QTEST_APPLESS_MAIN(CostPluginTest)
#include "cost_plugin_test.moc"
