/// Household and hydraulics: use, peaks, wells, pressure tanks and pipe friction against published rows.
#include <QTest>

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
               {w, "pumping_head", {60, 8, 8.0618, 25}, 133.7293, 1e-6}});
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
