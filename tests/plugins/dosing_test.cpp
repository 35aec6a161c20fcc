/// Strength of solutions, feeders, contact tanks, shock chlorination and carbon, with grids against the GNU
/// Scientific Library. The public CT tables have a test of their own.
#include <QTest>

#include <gsl/gsl_cdf.h>

#include "plugins/check_rows.h"
#include "plugins/gsl_reference.h"

using namespace called;

namespace
{

enum { tradePercent, weightAsHypochlorite, weightAsChlorine };

const Plugin &dosing()
{
    static const Plugin plugin("dosing");
    return plugin;
}

double number(const char *function, const std::vector<Given> &given)
{
    const Answer answer = dosing().call(function, given);
    return answer.refused ? std::nan("") : answer.number;
}

} // namespace

class DosingTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(dosing().isOpen()); }

    void strength()
    {
        const char *book = "definitions after Handbook of Chlorination, 1972";
        holds(dosing(),
              {{book, "hypochlorite_strength", {0.06, weightAsHypochlorite, 1.08}, 61700, 1e-3},
               {book, "hypochlorite_strength", {0.0571, weightAsChlorine, 1.08}, 61700, 1e-3},
               {book, "hypochlorite_strength", {0.125, tradePercent}, 125000, 1e-12},
               {book, "hypochlorite_strength", {0.108, weightAsChlorine, 1.16}, 125000, 3e-3},
               {"worked out, IUPAC 2021",
                "hypochlorite_strength",
                {0.0825, weightAsHypochlorite, 1.11},
                87222,
                1e-5},
               {"density recalled", "peroxide_strength", {0.07, 1024}, 71680, 1e-12},
               {"density recalled", "peroxide_strength", {0.35, 1131.2}, 395920, 1e-12},
               {"12.5 to 10 % in 30 days", "bleach_strength_left", {0.125, 2.0 / 30, 30}, 0.10, 1e-12},
               {"and at 90 days", "bleach_strength_left", {0.125, 2.0 / 30, 90}, 0.07142857, 1e-6},
               {"1.5 gal of bleach to 15 gal", "stock_volume", {15, 5250, 52500}, 1.5, 1e-12}});
        // half the strength decays at a quarter of the rate (Bleach - storage guidelines for end users)
        const auto lost = [](double start) {
            return start - dosing().call("bleach_strength_left", {start, 0.0667, 1e-4}).number;
        };
        QVERIFY(std::fabs(lost(0.125) / lost(0.0625) - 4.0) < 1e-4);
        QVERIFY(dosing().call("peroxide_strength", {0.07, 1024}).warns("burns"));
        QVERIFY(dosing().call("peroxide_strength", {0.08, 1028}).warns("transport"));
        QVERIFY(dosing().call("peroxide_strength", {0.03, 1009.5}).cautions.empty());
        // class 5.1 above 20 % (Science ASSIST 2019)
        QVERIFY(dosing().call("peroxide_strength", {0.35, 1131.2}).warns("oxidizer"));
        QVERIFY(!dosing().call("peroxide_strength", {0.2, 1072}).warns("oxidizer"));
        QCOMPARE(QString::fromStdString(dosing().call("stock_volume", {15, 5250, 52500}).reason),
                 QString("1.5 gal of stock, 13.5 gal of soft or filtered water"));
        // label 12.5 by weight; label 10 and 5.25 (specific gravities recalled)
        holds(dosing(),
              {{"IUPAC 2021", "hypochlorite_strength", {0.125, weightAsHypochlorite, 1.19}, 141678, 1e-5},
               {"IUPAC 2021", "hypochlorite_strength", {0.10, weightAsHypochlorite, 1.14}, 108580, 1e-5},
               {"IUPAC 2021", "hypochlorite_strength", {0.0525, weightAsHypochlorite, 1.07}, 53504, 1e-5},
               {"120 g/L, 1.16: 10.3448 % as Cl2",
                "hypochlorite_strength",
                {0.103448, weightAsChlorine, 1.16},
                120000,
                1e-5}});
    }

    void feeding()
    {
        const char *lesson = "Water Treatment Mathematics, sample lesson";
        holds(dosing(), {{lesson, "feed_rate", {10, 5, 5250}, 13.7143, 1e-5},
                         {lesson, "feed_rate", {7, 3, 5250}, 5.76, 1e-12},
                         {lesson, "feed_rate", {12, 8, 70000}, 1.97486, 1e-5},
                         {"peroxide, trade strength", "feed_rate", {10, 4, 70000}, 0.822857, 1e-6},
                         {"peroxide, true strength", "feed_rate", {10, 4, 71680}, 0.803571, 1e-6},
                         {"an iron water", "feed_rate", {8, 3.51755, 5250}, 7.71851, 1e-5},
                         {"an acid iron water", "feed_rate", {6, 7.68104, 5250}, 12.64080, 1e-5},
                         {"an iron water", "solution_days", {15, 240, 3.51755, 5250}, 93.282, 1e-5},
                         {"an acid iron water", "solution_days", {15, 180, 7.68104, 5250}, 56.958, 1e-5},
                         {"worked out", "feed_setting", {5.76, 10}, 0.576, 1e-12},
                         {"worked out", "solution_days", {15, 300, 5, 5250}, 52.5, 1e-12},
                         {"worked out", "solution_days", {15, 250, 8, 70000}, 525, 1e-12}});
        holds(dosing(), {{"21 gal in 2 min, straight bleach", "feed_rate", {10.5, 5, 52500}, 1.44, 1e-12},
                         {"straight bleach", "feed_rate", {8, 3.51755, 52500}, 0.77185, 1e-5},
                         {"straight bleach", "feed_rate", {6, 7.68104, 52500}, 1.26408, 1e-5}});
        // a strength of 52.5 where 52,500 was meant; a dose of 2 % and less goes without a word
        QVERIFY(dosing().call("feed_rate", {10, 5, 52.5}).warns("weak_solution"));
        QVERIFY(dosing().call("feed_rate", {10, 5, 250}).cautions.empty());
        QVERIFY(dosing().call("solution_days", {15, 300, 5, 52.5}).warns("weak_solution"));
        QVERIFY(dosing().call("feed_setting", {0.5, 10}).warns("low"));
        QVERIFY(dosing().call("feed_setting", {9.5, 10}).warns("high"));
        QVERIFY(dosing().call("feed_setting", {1, 10}).cautions.empty());
        QVERIFY(dosing().call("solution_days", {15, 300, 5, 5250}).warns("old"));
    }

    void contact()
    {
        const char *classes = "baffling classes, Surface Water Treatment Rule";
        holds(dosing(), {{classes, "contact_time", {120, 10}, 3.6, 1e-12},
                         {classes, "contact_time", {120, 10, 0.1}, 1.2, 1e-12},
                         {classes, "contact_time", {40, 5, 0.7}, 5.6, 1e-12},
                         {classes, "contact_volume", {20, 5, 0.1}, 1000, 1e-12},
                         {classes, "contact_volume", {5, 8}, 133.333, 1e-5}});
        QVERIFY(dosing().call("contact_time", {80, 7, 0.5}).warns("optimistic"));
        for (double gal = 10; gal < 300; gal += 13) { // volume and time undo each other
            const double minutes = dosing().call("contact_time", {gal, 7, 0.3}).number;
            QVERIFY(std::fabs(dosing().call("contact_volume", {minutes, 7, 0.3}).number - gal) < 1e-9);
        }
    }

    void aging()
    {
        const char *worked = "worked out from 12.5 to 10 % in 30 days";
        holds(dosing(), {{worked, "bleach_decay_rate_from_tests", {0.125, 0.10, 30}, 2.0 / 30, 1e-12},
                         {worked, "bleach_age_limit", {0.125, 2.0 / 30}, 30, 1e-12},
                         {worked, "bleach_age_limit", {0.0525, 2.0 / 30}, 71.4286, 1e-6},
                         {"3.5 times for 10 degC, general pages on hypochlorite",
                          "bleach_decay_rate_at",
                          {0.02, 20, 30, 3.5},
                          0.07,
                          1e-12},
                         {"0.5 % a year, Science ASSIST 2019, three years",
                          "peroxide_strength_left",
                          {0.35, 0.005, 365, 1095},
                          0.344776,
                          1e-6},
                         {"1 % a month, common practice",
                          "peroxide_strength_left",
                          {0.07, 0.01, 365.0 / 12, 365},
                          0.0620469,
                          1e-6}});
        QVERIFY(dosing().call("peroxide_strength_left", {0.07, 0.02, 30, 365}).warns("aged"));
        QVERIFY(!dosing().call("peroxide_strength_left", {0.07, 0.01, 30, 365}).warns("aged"));
    }

    /// Second-order loss, also through a warm summer, against steps of the rate law.
    void agingAgainstIntegration()
    {
        for (const double start : {0.03, 0.0525, 0.0825, 0.125, 0.16})
            for (const double rate : {0.005, 0.02, 2.0 / 30, 0.5})
                for (const double days : {1.0, 30.0, 90.0, 400.0}) {
                    const double law = reference::integrated(
                        [rate](double, const double *c, double *slope) { slope[0] = -rate * c[0] * c[0]; },
                        {start}, days)[0];
                    QVERIFY(reference::close(number("bleach_strength_left", {start, rate, days}), law, 1e-9));
                    // 30 days in the cellar, then the shed
                    const auto warm = [](double k, double t) { return k * std::pow(3.0, (t - 20.0) / 10.0); };
                    const double cellar = number("bleach_strength_left",
                                                 {start, number("bleach_decay_rate_at", {rate, 20, 12}), 30});
                    const double shed =
                        number("bleach_strength_left",
                               {cellar, number("bleach_decay_rate_at", {rate, 20, 33}), days});
                    const auto stored = [&](double k) {
                        return [k](double, const double *c, double *slope) { slope[0] = -k * c[0] * c[0]; };
                    };
                    const double first = reference::integrated(stored(warm(rate, 12)), {start}, 30)[0];
                    QVERIFY(reference::close(
                        shed, reference::integrated(stored(warm(rate, 33)), {first}, days)[0], 1e-9));
                    const double age = number("bleach_age_limit", {start, rate, 0.3});
                    const double found = reference::root(
                        [&](double t) {
                            return number("bleach_strength_left", {start, rate, t}) - 0.7 * start;
                        },
                        0, 1e5);
                    QVERIFY(reference::close(age, found, 1e-9));
                }
        for (const double loss : {0.001, 0.01, 0.05, 0.2})
            for (const double days : {10.0, 200.0, 1000.0}) {
                const double rate = -std::log(1.0 - loss) / 30.0;
                const double law = reference::integrated(
                    [rate](double, const double *c, double *slope) { slope[0] = -rate * c[0]; }, {0.35},
                    days)[0];
                QVERIFY(
                    reference::close(number("peroxide_strength_left", {0.35, loss, 30, days}), law, 1e-9));
            }
    }

    void mixing()
    {
        holds(dosing(),
              {{"1 gal of 35 % to 7 %, densities recalled",
                "diluted_volume",
                {1, 0.35, 1131.2, 0.07, 1024},
                5.52,
                1e-3},
               {"and the water it takes", "dilution_water", {1, 0.35, 1131.2, 0.07}, 4.53, 2e-3},
               {"trade dilution chart, 7 cups", "mixed_strength", {7.0 / 16, 52500, 10}, 2200.6, 1e-5},
               {"trade dilution chart", "injector_dose", {2200.6, 150}, 14.7, 5e-3},
               {"trade dilution chart", "injector_dose", {2200.6, 250}, 8.8, 5e-3},
               {"trade dilution chart", "injector_dose", {2200.6, 500}, 4.4, 5e-3},
               {"trade dilution chart, 6 cups", "injector_dose", {1898.8, 150}, 12.7, 5e-3},
               {"trade dilution chart, 4 cups", "injector_dose", {1280.5, 150}, 8.5, 5e-3},
               {"1 oz to the gallon", "solution_strength", {0, 28.349523125, 1}, 7489, 1e-4},
               {"ten times the dose at a tenth of the flow", "dose_at_flow", {5, 10, 1}, 50, 1e-12},
               {"a proportional feeder follows", "dose_at_flow", {5, 10, 1, 0}, 5, 1e-12}});
        // mass stays: stock and water weigh what the solution weighs
        for (double percent = 0.005; percent < 0.35; percent += 0.017) {
            const double density = 998.2 + 380 * percent; // near enough for the sum of masses
            const double water = number("dilution_water", {1, 0.35, 1131.2, percent});
            const double made = number("diluted_volume", {1, 0.35, 1131.2, percent, density});
            QVERIFY(reference::close(1131.2 + water * 998.2, made * density, 5e-5));
        }
        QVERIFY(dosing().call("solution_strength", {0, 3785, 1}).warns("undissolved"));
        QVERIFY(dosing().call("solution_strength", {0, 240, 1}).cautions.empty());
        QVERIFY(dosing().call("dose_at_flow", {5, 10, 8}).warns("too_much"));
        QVERIFY(dosing().call("dose_at_flow", {5, 10, 13}).warns("too_little"));
        QVERIFY(dosing().call("dose_at_flow", {5, 10, 9}).cautions.empty());
        QVERIFY(dosing().call("feed_rate", {10, 5, 5250, 1}).warns("constant_pressure"));
        QVERIFY(dosing().call("feed_rate", {10, 5, 5250}).cautions.empty());
    }

    void baffling()
    {
        const char *classes = "EPA 816-R-03-004; Pennsylvania DEP, Tracer studies and contact time";
        const double factors[] = {1, 0.9, 0.7, 0.5, 0.3, 0.2, 0.1, 0};
        for (int i = 0; i < 8; ++i)
            holds(dosing(), {{classes, "baffling_factor", {double(i)}, factors[i], 1e-12}});
        // the outlet of N stirred tanks: the gamma distribution of the library, and the tanks themselves
        for (int n = 1; n <= 100; ++n) {
            const double share = number("tanks_in_series_baffling", {double(n)});
            QVERIFY(reference::close(share, gsl_cdf_gamma_Pinv(0.1, n, 1.0 / n), 1e-9));
            if (n > 12)
                continue;
            const auto tanks = [n](double, const double *c, double *slope) {
                for (int i = 0; i < n; ++i)
                    slope[i] = n * ((i ? c[i - 1] : 1.0) - c[i]);
            };
            const auto outlet = reference::integrated(tanks, std::vector<double>(n, 0.0), share);
            QVERIFY(std::fabs(outlet.back() - 0.1) < 1e-9);
        }
    }

    /// Which of the two clocks decides, and in words.
    void contactClocks()
    {
        const Answer slow = dosing().call("contact_tank_size", {8, 1});
        QCOMPARE(slow.number, 160.0); // the trade's 20 minutes [common practice]
        QCOMPARE(
            QString::fromStdString(slow.reason),
            QString("iron bacteria or manganese ask 20 min of detention: 160 gal decides; iron asks 5 min "
                    "that count: 133.3 gal at a baffling of 0.3"));
        const Answer quick = dosing().call("contact_tank_size", {8, 1, 0.1});
        QCOMPARE(quick.number, 400.0);
        QVERIFY(quick.reason.starts_with("iron asks 5 min that count: 400 gal at a baffling of 0.1 decides"));
        holds(dosing(), {{"worked out", "detention_time", {23.310, 10}, 2.331, 1e-12},
                         {"worked out", "detention_time", {120, 10}, 12, 1e-12}});
    }

    void shock()
    {
        const char *agdex = "Alberta Agriculture, Agdex 716 (A10), table of 200 ppm";
        const char *service = "Alberta Health Services, table of 50 ppm";
        const double gallon = 4.54609 / 3.785411784, bleach = 52500, strong = 120000; // imperial to US
        const double feet[] = {1.1, 2.4, 4.2}; // imperial gal for a foot
        const double liters[] = {0.019, 0.042, 0.072}, strongLiters[] = {0.008, 0.018, 0.032},
                     grams[] = {1.44, 3.12, 5.46}, mild[] = {4.75, 10.5, 18}, mildStrong[] = {2.1, 4.55, 8};
        for (int i = 0; i < 3; ++i) {
            const double water = feet[i] * gallon, liter = 3.785411784;
            holds(dosing(),
                  {{agdex, "shock_chlorination_dose", {water, 200, bleach}, liters[i] / liter, 0.012},
                   {agdex, "shock_chlorination_dose", {water, 200, strong}, strongLiters[i] / liter, 0.042},
                   {agdex, "calcium_hypochlorite_dose", {water, 200}, grams[i], 0.01},
                   {service, "shock_chlorination_dose", {water, 50, bleach}, mild[i] / 1000 / liter, 0.012},
                   {service,
                    "shock_chlorination_dose",
                    {water, 50, strong},
                    mildStrong[i] / 1000 / liter,
                    0.012}});
        }
        // bored wells: one casing volume and 200 gal beside it
        const double wide[] = {24, 36}, wideLiters[] = {0.340, 0.760}, wideGrams[] = {25.40, 57.20};
        for (int i = 0; i < 2; ++i) {
            const double water = M_PI * wide[i] * wide[i] / 4 * 12 / 231; // US gal in a foot
            holds(
                dosing(),
                {{agdex, "shock_chlorination_dose", {water, 200, bleach}, wideLiters[i] / 3.785411784, 0.01},
                 {agdex, "calcium_hypochlorite_dose", {water, 200}, wideGrams[i], 0.01}});
        }
        const double casings[] = {4, 6, 8}; // in; the printed gallons are rounded
        for (int i = 0; i < 3; ++i)
            holds(dosing(), {{agdex, "shock_solution_volume", {casings[i], 1}, feet[i] * gallon, 0.036},
                             {"a bore holds 0.0408 D^2 gal in a foot",
                              "shock_solution_volume",
                              {casings[i], 10, 1},
                              0.408 * casings[i] * casings[i],
                              3e-4}});
        enum { plain, district, trust, county, ministry, health };
        holds(dosing(),
              {{"Hickory UWCD: 3 cups to 100 gal",
                "shock_chlorination_by_rule",
                {district, 100},
                3.0 / 16,
                1e-12},
               {"American Ground Water Trust: 1 gal to 200 gal",
                "shock_chlorination_by_rule",
                {trust, 200},
                1,
                1e-12},
               {"Mesa County: 112 oz to 100 gal", "shock_chlorination_by_rule", {county, 100}, 0.875, 1e-12},
               {"twice the casing's water",
                "shock_chlorination_by_rule",
                {ministry, 1.2 * gallon},
                0.042 / 3.785411784,
                0.012},
               {"twice the casing's water",
                "shock_chlorination_by_rule",
                {health, 1.2 * gallon},
                0.0105 / 3.785411784,
                0.012},
               {"100 mg/L, common practice",
                "shock_chlorination_by_rule",
                {plain, 220.32},
                53.7161 / 128,
                1e-5},
               {"stronger bleach, less of it",
                "shock_chlorination_by_rule",
                {plain, 220.32, 82500},
                34.18298 / 128,
                1e-5},
               {"Hickory UWCD", "shock_chlorination_level", {100, 3.0 / 16, bleach}, 98.44, 1e-4},
               {"American Ground Water Trust", "shock_chlorination_level", {50, 0.25, bleach}, 262.5, 1e-12},
               {"Mesa County", "shock_chlorination_level", {100, 0.875, bleach}, 459, 1e-3},
               {"Mesa County: 8 oz of granules",
                "calcium_hypochlorite_dose",
                {100, 419},
                8 * 28.349523,
                1e-3}});
        QVERIFY(dosing().call("shock_chlorination_by_rule", {county, 100}).warns("strong"));
        QVERIFY(dosing().call("shock_chlorination_by_rule", {trust, 100}).cautions.empty());
        QVERIFY(dosing().call("shock_chlorination_level", {100, 0.05, bleach}).warns("weak"));
    }

    void carbon()
    {
        const double theory = 2 * 70.9 / 12.011; // mg chlorine a mg carbon
        holds(dosing(), {{"2 gpm to the cubic foot, common practice", "dechlorination_bed", {5}, 2.5, 1e-12},
                         {"1.5 ft^3 at 5 gpm", "dechlorination_bed", {5, 2.2442}, 1.5, 1e-4},
                         {"2 ft^3 at 8 gpm", "dechlorination_bed", {8, 1.8701}, 2, 1e-4},
                         {"chloramine", "dechlorination_bed", {5, 3.740259740, 1, 5}, 12.5, 1e-9},
                         {"half-value length of 3 cm", "dechlorinated_residual", {5, 12, 3}, 0.3125, 1e-12},
                         {"1.4 lb for a million gallons, trade page",
                          "dechlorination_carbon_use",
                          {1, 1e6 / 365, 6},
                          1.4,
                          0.01},
                         {"1 g/g", "dechlorination_carbon_use", {3, 300}, 2.7415, 1e-4},
                         {"6 g/g", "dechlorination_carbon_use", {3, 300, 6}, 0.457, 1e-3},
                         {"theory", "dechlorination_carbon_use", {3, 300, theory}, 105.3 / 453.59237, 1e-3},
                         {"IUPAC 2021", "peroxide_oxygen", {1}, 0.47037, 2e-5}});
        for (const double half : {1.0, 3.0, 9.0})
            for (const double depth : {0.0, 5.0, 30.0, 90.0}) {
                const double law = reference::integrated(
                    [half](double, const double *c, double *slope) { slope[0] = -M_LN2 / half * c[0]; },
                    {2.5}, depth)[0];
                QVERIFY(std::fabs(number("dechlorinated_residual", {2.5, depth, half}) - law) < 1e-9);
            }
        QVERIFY(dosing().call("dechlorination_bed", {5, 2}).warns("short"));
        QVERIFY(dosing().call("dechlorination_bed", {5}).warns("disputed"));
        QVERIFY(dosing().call("dechlorination_bed", {5, 6}).cautions.empty());
        QVERIFY(dosing().call("peroxide_oxygen", {20}).warns("gas"));
    }

    void refuses_data()
    {
        QTest::addColumn<QString>("function");
        QTest::addColumn<QList<double>>("given");
        QTest::addColumn<int>("argument");
        QTest::addColumn<QString>("words");
        QTest::newRow("a stock weaker than the solution")
            << "stock_volume" << QList<double>{15, 52500, 5250} << 2
            << "the stock is weaker than the solution wanted: a stronger stock or a weaker solution";
        QTest::newRow("more than the pump gives")
            << "feed_setting" << QList<double>{13.7, 10} << 1
            << "the pump cannot give that much: a stronger solution or a larger pump";
        QTest::newRow("nothing fed")
            << "solution_days" << QList<double>{15, 300, 0, 5250} << 0
            << "nothing is fed, so the tank never empties: give a use and a dose above 0";
        QTest::newRow("a dose stronger than the solution")
            << "feed_rate" << QList<double>{10, 5, 1} << 3
            << "the solution is weaker than the dose: check the units of the two";
        QTest::newRow("a solution weaker than the dose")
            << "solution_days" << QList<double>{15, 300, 5, 1} << 4
            << "the solution is weaker than the dose: check the units of the two";
        QTest::newRow("stronger with time")
            << "bleach_decay_rate_from_tests" << QList<double>{0.10, 0.125, 30} << 2
            << "a solution does not grow stronger: give the strength at the later test";
        QTest::newRow("a weak stock by mass")
            << "diluted_volume" << QList<double>{1, 0.07, 1024, 0.35, 1131} << 4
            << "the stock is weaker than the solution wanted: a stronger stock or a weaker solution";
        QTest::newRow("half a tank") << "tanks_in_series_baffling" << QList<double>{2.5} << 1
                                     << "tanks are counted: give a whole number";
    }
    void refuses()
    {
        QFETCH(QString, function);
        QFETCH(QList<double>, given);
        QFETCH(int, argument);
        QFETCH(QString, words);
        const Answer answer = dosing().call(function.toStdString(), {given.begin(), given.end()});
        QVERIFY(answer.refused);
        QCOMPARE(int(answer.refusedArgument), argument);
        QCOMPARE(QString::fromStdString(answer.words), words);
    }
};

QTEST_APPLESS_MAIN(DosingTest)
#include "dosing_test.moc"
