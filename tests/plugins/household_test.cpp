/// Household and hydraulics: use, peaks, wells, pressure tanks and pipe friction against published rows.
#include <algorithm>

#include <QTest>

#include <rapidcheck.h>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &household()
{
    static const Plugin plugin("household");
    return plugin;
}
const Plugin &hydraulics()
{
    static const Plugin plugin("hydraulics");
    return plugin;
}

} // namespace

class HouseholdTest : public QObject
{
    Q_OBJECT

private slots:
    void open() { QVERIFY(household().isOpen() && hydraulics().isOpen()); }

    void use()
    {
        holds(household(),
              {{"USGS Circular 1441: 3,260 Mgal/d for 42.5 million people",
                "daily_use",
                {42.5e6, 76.7},
                3260e6,
                1e-3},
               {"LBNL, quoting Mayer et al. 1999", "indoor_use", {4}, 218.0, 1e-12},
               {"LBNL, quoting Mayer et al. 1999", "indoor_use", {2.6}, 165.92, 1e-12},
               {"four people by the regression, a year", "yearly_use", {218, 365}, 79570, 1e-12},
               {"one person by the regression, a year", "yearly_use", {106.4, 365}, 38836, 1e-12},
               {"26 weekends of two and a half days", "yearly_use", {240, 65}, 15600, 1e-12},
               {"National Driller: two baths, kitchen, dishwasher, two bibs",
                "peak_flow_by_outlets",
                {10},
                10,
                1e-12},
               {"few outlets, one large: common practice, no source", "peak_flow_by_outlets", {3}, 5, 1e-12},
               {"Penn State Extension: 400 gal in two hours", "peak_flow_in_hours", {400, 2}, 3.3333, 1e-4},
               {"70.9 gal every third day on 330 gal/day", "septic_share", {70.9, 3, 330}, 0.072, 0.01}});
        QVERIFY(household().call("septic_share", {113.9, 3, 330}).warns("much"));
    }

    void figuresAsPublished()
    {
        const auto of = [](const char *f, std::vector<Given> given) {
            return household().call(f, given).number;
        };
        // US EPA, Private Water Systems: allowance in gpm, and in the L/min printed beside it, rounded to one
        const double allowance[][2] = {{1.0, 4}, {0.5, 2}, {0.75, 3}, {1.0, 4}, {0.5, 2}, {1.5, 6}, {2.0, 8}};
        for (int use = 0; use < 7; ++use) {
            QCOMPARE(of("demand_allowance", {double(use)}), allowance[use][0]);
            QVERIFY(std::fabs(of("demand_allowance", {double(use)}) * 3.785411784 - allowance[use][1]) < 0.5);
        }
        const char *epa = "US EPA, Private Water Systems, example";
        const Given uses = column({2, 1, 1, 1, 1, 1}), flows = column({0.5, 0.75, 1, 0.5, 2, 2});
        holds(household(),
              {{epa, "peak_flow_by_allowance", {uses, flows}, 7.25, 1e-14},
               {"the same twice over, halved",
                "peak_flow_by_allowance",
                {column({4, 2, 2, 2, 2, 2}), flows, 2},
                7.25,
                1e-14},
               {"USGS Circular 1441: 3,260 Mgal/d, 42.5 million people",
                "use_per_person",
                {0},
                3260 / 42.5,
                2e-4},
               {"USGS Circular 1441: 23,300 Mgal/d, 283 million people",
                "use_per_person",
                {1},
                23300 / 283.0,
                1e-3},
               {"summary of USGS Circular 1441: Connecticut", "use_per_person", {2}, 35, 1e-14},
               {"summary of USGS Circular 1441: Idaho", "use_per_person", {3}, 184, 1e-14},
               {"National Academies 6287, p. 56: 0.28 m^3", "use_per_person", {4}, 280 / 3.785411784, 1e-3},
               {"Vickers, as quoted by Beckley Water", "use_per_person", {6}, 45.2, 1e-14},
               {"Penn State Extension", "use_per_person", {7}, 50, 1e-14},
               {"Penn State Extension", "use_per_person", {8}, 100, 1e-14},
               {"New York Fact Sheet 2", "use_by_bedrooms", {3}, 330, 1e-14},
               {"N.H. Env-Ws 372.10, table 372-1", "use_by_bedrooms", {1, 1}, 150, 1e-14},
               {"New York Fact Sheet 2", "recommended_flow", {0}, 5, 1e-14},
               {"Nebraska, Acreage Owners Guide", "recommended_flow", {1}, 10, 1e-14},
               {"Missouri G1801", "recommended_flow", {2}, 10, 1e-14},
               {"Penn State Extension, Missouri G1801", "wash_water", {0, 0}, 50, 1e-14},
               {"Penn State Extension, Missouri G1801", "wash_water", {0, 1}, 100, 1e-14},
               {"Missouri G1801", "wash_water", {1, 0}, 100, 1e-14},
               {"Missouri G1801", "wash_water", {1, 1}, 200, 1e-14},
               {"National Driller: the seven minutes, numbers recalled",
                "peak_flow_by_bathrooms",
                {1.5},
                10,
                1e-14},
               {"26 weekends of two and a half days", "occupied_days", {26, 2.5}, 65, 1e-14},
               {"every second week, two and a half days", "idle_gap", {26, 2.5}, 365 / 26.0 - 2.5, 1e-14}});
        QVERIFY(household().call("idle_gap", {12, 2}).warns("stale"));
        QVERIFY(!household().call("idle_gap", {26, 2.5}).warns("stale"));
        QVERIFY(household().call("idle_gap", {26, 2.5, 7}).warns("stale"));
        QVERIFY(household().call("peak_flow_by_allowance", {uses, flows, 3}).warns("many"));
        QCOMPARE(of("peak_flow_by_allowance", {column({1}), column({0.5})}), 5.0);
    }

    void fixtureUnitsAsPrinted()
    {
        // National Standard Plumbing Code, table B.5.4: fixture units, gpm with flush tanks, with flush
        // valves
        const double printed[][3] = {{3, 3, -1},      {4, 4, -1},      {5, 4.5, 22},    {6, 5, 23},
                                     {7, 6, 24},      {8, 7, 25},      {9, 7.5, 26},    {10, 8, 27},
                                     {11, 8.5, 28},   {12, 9, 29},     {13, 10, 29.5},  {14, 10.5, 30},
                                     {120, 49, 74},   {140, 53, 78},   {160, 57, 83},   {180, 61, 87},
                                     {200, 65, 91},   {225, 70, 95},   {250, 75, 100},  {300, 85, 110},
                                     {400, 105, 125}, {500, 125, 140}, {750, 170, 175}, {1000, 210, 210}};
        double lastTank = 0, lastValve = 0;
        for (const auto &[units, tank, valve] : printed) {
            const Answer tanks = household().call("peak_flow_by_fixture_units", {units, 0, 0});
            const Answer valves = household().call("peak_flow_by_fixture_units", {units, 0, 1});
            QVERIFY2(tanks.number == tank && tanks.cautions.empty(), qPrintable(QString::number(units)));
            QVERIFY2(valve < 0 ? valves.refused : valves.number == valve, qPrintable(QString::number(units)));
            QVERIFY(tank > lastTank && (valve < 0 || valve > lastValve));
            lastTank = tank;
            lastValve = valve;
        }
        // 2018 International Plumbing Code, table E103.3(2), private use
        holds(household(), {{"IPC 2018, bathroom group, tank", "fixture_units", {0}, 3.6, 1e-14},
                            {"IPC 2018, bathroom group, valve", "fixture_units", {1}, 8, 1e-14},
                            {"IPC 2018, bathtub", "fixture_units", {2}, 1.4, 1e-14},
                            {"IPC 2018, kitchen sink", "fixture_units", {6}, 1.4, 1e-14},
                            {"IPC 2018, lavatory", "fixture_units", {8}, 0.7, 1e-14}});
        QVERIFY(household().call("peak_flow_by_fixture_units", {60, 0, 0}).warns("recalled"));
        QVERIFY(household().call("peak_flow_by_bathrooms", {2}).warns("recalled"));
        for (int fixture = 0; fixture < 13; ++fixture)
            QCOMPARE(household().call("fixture_units", {double(fixture)}).warns("recalled"), fixture > 8);
    }

    /// A number that is none, or beyond the table, ends at its last row instead of reading on behind it.
    void bathroomsBeyondTheTable()
    {
        for (const double baths : {4.0, 1e300, std::nan("")}) {
            QCOMPARE(household().call("peak_flow_by_bathrooms", {baths}).number, 17.0);
            QCOMPARE(household().call("peak_volume_by_bathrooms", {baths}).number, 122.0);
        }
    }

    /// Whatever the house: more of the time covered or a greater chance never lowers the peak, which never
    /// passes all fixtures together.
    void chancesInOrder()
    {
        QVERIFY(rc::check("peaks by chance stand in order", [] {
            const int kinds = *rc::gen::inRange(1, 5);
            std::vector<double> n, p, q;
            double all = 0, largest = 0;
            for (int i = 0; i < kinds; ++i) {
                n.push_back(*rc::gen::inRange(1, 5));
                p.push_back(*rc::gen::inRange(1, 30) / 100.0);
                q.push_back(*rc::gen::inRange(2, 24) / 4.0);
                all += n.back() * q.back();
                largest = std::max(largest, q.back());
            }
            const auto peak = [&](double share, bool running) {
                return household()
                    .call("peak_flow_by_enumeration",
                          {column(n), column(p), column(q), share, running ? 1.0 : 0.0})
                    .number;
            };
            double last = 0;
            for (const double share : {0.5, 0.8, 0.95, 0.99, 0.9999}) {
                RC_ASSERT(peak(share, false) >= last && peak(share, true) >= peak(share, false));
                last = peak(share, false);
            }
            RC_ASSERT(last <= all + 1e-9 && peak(0.9999, true) > 0);
            const double before = peak(0.99, false);
            p[0] += 0.2;
            RC_ASSERT(peak(0.99, false) >= before);
            const double two =
                household().call("peak_flow_by_probability", {column(n), column(p), column(q)}).number;
            RC_ASSERT(two >= largest);
        }));
    }

    /// Every on-off state of every single fixture, written out: 2^10 states of a house.
    void countedOut()
    {
        const std::vector<double> n{3, 2, 2, 1, 1, 1}, p{0.02, 0.045, 0.01, 0.02, 0.005, 0.05},
            q{1.5, 2.0, 3.0, 1.8, 1.3, 3.5};
        std::vector<std::pair<double, double>> single;
        for (std::size_t i = 0; i < n.size(); ++i)
            single.insert(single.end(), static_cast<std::size_t>(n[i]), {p[i], q[i]});
        std::vector<std::pair<double, double>> states; // flow, chance
        for (unsigned state = 0; state < 1u << single.size(); ++state) {
            double flow = 0, chance = 1;
            for (std::size_t i = 0; i < single.size(); ++i) {
                const bool on = (state >> i & 1u) != 0;
                flow += on ? single[i].second : 0;
                chance *= on ? single[i].first : 1 - single[i].first;
            }
            states.emplace_back(flow, chance);
        }
        std::sort(states.begin(), states.end());
        const double idle = states[0].second;
        const Given counts = column(n), chances = column(p), flows = column(q);
        holds(household(), {{"all off", "idle_probability", {counts, chances}, idle, 1e-14},
                            {"worked out on its own", "idle_probability", {counts, chances}, 0.7793, 1e-4}});
        double mean = 0, square = 0;
        for (const auto &[flow, chance] : states) {
            mean += flow * chance / (1 - idle);
            square += flow * flow * chance / (1 - idle);
        }
        const double z = 2.326348;
        holds(household(), {{"mean and spread of the states in which something runs",
                             "peak_flow_by_truncated_probability",
                             {counts, chances, flows, z},
                             mean + z * std::sqrt(square - mean * mean),
                             1e-12}});
        for (const double share : {0.5, 0.8, 0.9, 0.95, 0.99, 0.995, 0.999})
            for (const bool running : {false, true}) {
                double covered = 0, expected = 0;
                for (const auto &[flow, chance] : states) {
                    if (running && flow == 0)
                        continue;
                    covered += running ? chance / (1 - idle) : chance;
                    expected = flow;
                    if (covered >= share)
                        break;
                }
                const double ours =
                    household()
                        .call("peak_flow_by_enumeration", {counts, chances, flows, share, double(running)})
                        .number;
                QVERIFY2(std::fabs(ours - expected) < 1e-9, qPrintable(QString::number(share)));
            }
        // many houses together: counting and the bell curve come to the same
        const Given many = column({200, 200}), busy = column({0.05, 0.1}), two = column({2, 3});
        const double counted = household().call("peak_flow_by_enumeration", {many, busy, two}).number;
        const double bell = household().call("peak_flow_by_probability", {many, busy, two, z, 0.0}).number;
        QVERIFY2(std::fabs(counted / bell - 1) < 0.03, qPrintable(QString("%1 %2").arg(counted).arg(bell)));
    }

    void boresAsPublished()
    {
        // Mesa County Health Department, Shock chlorination of wells: gallons a foot
        const double published[][2] = {{2, 0.16},  {4, 0.65},  {5, 1.02},   {6, 1.47},  {8, 2.61},
                                       {10, 4.08}, {12, 5.88}, {24, 23.50}, {36, 52.87}};
        for (const auto &[inches, gallons] : published) {
            const double ours = hydraulics().call("bore_storage", {inches, 1}).number;
            QVERIFY2(std::fabs(ours - gallons) <= 0.0072,
                     qPrintable(QString::number(inches))); // two places, one truncated
        }
    }

    void wells()
    {
        const char *w = "worked out from the definition";
        holds(hydraulics(),
              {{"American Ground Water Trust, 100 ft of 8 in", "bore_storage", {8, 100}, 261, 2e-3},
               {w, "recovery_rate", {20, 12, 6}, 2.44799, 1e-5},
               {w, "bucket_flow", {5, 37}, 8.10811, 1e-5},
               {w, "storage_needed", {10, 1, 7}, 63, 1e-12},
               {"a well that gives more than the peak", "storage_needed", {5, 7, 60}, 0, 1e-12},
               {w, "drawdown", {10, 0.1, 6, 10}, 49.3803, 1e-5},
               {w, "drawdown", {10, 0.1, 6, 15}, 63.9853, 1e-5},
               {"in the end flow / specific capacity", "drawdown", {12, 0.5, 6, 1e5}, 24, 1e-12},
               {w, "total_dynamic_head", {60, 8, 8.0618, 25}, 133.7293, 1e-6}});
        QVERIFY(hydraulics().call("recovery_rate", {1, 12, 6}).warns("small_rise"));
        QVERIFY(hydraulics().call("bucket_flow", {1, 37}).warns("coarse"));
    }

    void pressure()
    {
        const char *driller = "Pelikan, National Driller, 2006 and 2008";
        const char *friction = "77 Ill. Adm. Code 906, appendix A, exhibit I";
        holds(hydraulics(),
              {{driller, "tank_drawdown", {85, 28, 30, 50}, 25.1, 1e-3},
               {driller, "tank_drawdown", {85, 28, 30, 50, 11.8}, 26.1, 5e-3},
               {"trade tables 0.37, 0.31, 0.27", "tank_drawdown", {1, 20, 20, 40}, 0.36563, 1e-5},
               {"trade tables 0.37, 0.31, 0.27", "tank_drawdown", {1, 40, 40, 60}, 0.26774, 2e-5},
               {driller, "air_pressure", {6000}, 11.8, 3e-3},
               {"recalled, not confirmed", "air_pressure", {5000}, 12.2278, 1e-5},
               {friction, "hazen_williams_loss", {5, 1.049, 100}, 1.52, 0.015},
               {friction, "hazen_williams_loss", {10, 1.049, 100}, 5.50, 0.015},
               {friction, "hazen_williams_loss", {15, 1.38, 100}, 3.06, 0.015},
               {friction, "hazen_williams_loss", {20, 1.61, 100}, 2.46, 0.015},
               {friction, "hazen_williams_loss", {50, 2.067, 100}, 3.98, 0.015},
               {"no flow, no loss", "hazen_williams_loss", {0, 1.049, 100}, 0, 1e-12}});
        QVERIFY(hydraulics().call("tank_drawdown", {85, 20, 30, 50}).warns("low_precharge"));
        QVERIFY(hydraulics().call("hazen_williams_loss", {30, 1.049, 100}).warns("fast"));
        const Answer empty = hydraulics().call("tank_drawdown", {85, 35, 30, 50});
        QCOMPARE(empty.refusedArgument, 2u);
        QCOMPARE(
            empty.words,
            std::string("the precharge is above the cut-in pressure: the tank runs empty before the pump "
                        "starts"));
        QCOMPARE(hydraulics().call("tank_drawdown", {85, 28, 50, 50}).words,
                 std::string("the pump must cut out at a higher pressure than it cuts in"));
    }
};

QTEST_APPLESS_MAIN(HouseholdTest)
#include "household_test.moc"
