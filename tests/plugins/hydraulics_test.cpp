/// Hydraulics over grids against the GNU Scientific Library and plain summation; backwash tests with reasons.
#include <array>

#include <QTest>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_interp.h>
#include <gsl/gsl_roots.h>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &hydraulics()
{
    static const Plugin plugin("hydraulics");
    return plugin;
}
double number(const char *function, const std::vector<Given> &given)
{
    const Answer answer = hydraulics().call(function, given);
    return answer.refused ? std::nan("") : answer.number;
}

/// A root of `f` in a bracket by Brent's method of the library.
template<class F>
double root(F f, double low, double high)
{
    gsl_function g{[](double x, void *p) { return (*static_cast<F *>(p))(x); }, &f};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    gsl_root_fsolver_set(solver, &g, low, high);
    for (int i = 0; i < 200; ++i) {
        gsl_root_fsolver_iterate(solver);
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 0,
                                   1e-14) == GSL_SUCCESS)
            break;
    }
    const double found = gsl_root_fsolver_root(solver);
    gsl_root_fsolver_free(solver);
    return found;
}

const std::vector<double> flows{0, 2, 4, 6, 8, 10, 12, 14}, heads{330, 322, 308, 288, 262, 228, 186, 136};

} // namespace

class HydraulicsTest : public QObject
{
    Q_OBJECT

private slots:
    /// A refusal points at the argument that has to change, whichever function asks.
    void tankRefusalsPoint()
    {
        const Answer drawdown = hydraulics().call("tank_drawdown", {85.0, 35.0, 30.0, 50.0});
        QCOMPARE(
            drawdown.words,
            std::string(
                "the precharge is above the cut-in pressure: the tank runs empty before the pump starts"));
        QCOMPARE(drawdown.refusedArgument, 2U);
        const Answer least = hydraulics().call("least_tank_volume", {10.0, 1.0, 45.0, 40.0, 60.0});
        QCOMPARE(least.words, drawdown.words);
        QCOMPARE(least.refusedArgument, 3U);
        const Answer narrow = hydraulics().call("least_tank_volume", {10.0, 1.0, 38.0, 40.0, 40.0});
        QCOMPARE(narrow.words, std::string("the pump must cut out at a higher pressure than it cuts in"));
        QCOMPARE(narrow.refusedArgument, 5U);
    }

    void frictionAgainstRoots()
    {
        for (const double reynolds : {4e3, 7e3, 1e4, 5e4, 1e5, 1e6, 1e7, 1e8})
            for (const double roughness : {0.0, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 5e-2}) {
                const double f = number("friction_factor", {reynolds, roughness});
                const double x =
                    root([&](double y) { return y + 2 * std::log10(roughness / 3.7 + 2.51 * y / reynolds); },
                         1.0, 40.0);
                QVERIFY2(std::fabs(f * x * x - 1) < 1e-12,
                         qPrintable(QString("%1 %2").arg(reynolds).arg(roughness)));
                // the short form stays within 3 % of it where it is made for
                if (reynolds >= 5e3 && roughness >= 1e-6 && roughness <= 1e-2)
                    QVERIFY(std::fabs(number("friction_factor", {reynolds, roughness, 1}) / f - 1) < 0.035);
            }
        QVERIFY(hydraulics().call("friction_factor", {3000, 0}).warns("transition"));
        QVERIFY(hydraulics().call("friction_factor", {4500, 0, 1}).warns("outside"));
        // continuous where the regimes meet
        QVERIFY(std::fabs(number("friction_factor", {1999.999999, 1e-4}) -
                          number("friction_factor", {2000.000001, 1e-4})) < 1e-9);
        QVERIFY(std::fabs(number("friction_factor", {3999.999999, 1e-4}) -
                          number("friction_factor", {4000.000001, 1e-4})) < 1e-9);
    }

    /// Friction factors settled to 1e-15 by hand, and heads of water of 10 degC with them.
    void frictionRows()
    {
        const double table[][4] = {
            {4e3, 0, 0.039907014, 0.040551491},    {1e4, 0, 0.030882950, 0.030972097},
            {1e5, 0, 0.017989773, 0.017862578},    {1e5, 1e-4, 0.018513866, 0.018452445},
            {1e5, 1e-3, 0.022174536, 0.022342412}, {1e5, 1e-2, 0.038503544, 0.038750932},
            {1e6, 1e-3, 0.019943466, 0.020029241}, {1e7, 1e-5, 0.008995712, 0.009058546}};
        for (const auto &[reynolds, roughness, colebrook, shortForm] : table) {
            QVERIFY(std::fabs(number("friction_factor", {reynolds, roughness}) - colebrook) < 6e-10);
            QVERIFY(std::fabs(number("friction_factor", {reynolds, roughness, 1}) - shortForm) < 6e-10);
        }
        const char *w = "worked out from the definition";
        holds(hydraulics(), {{w, "darcy_weisbach_loss", {10, 1.049, 100}, 6.15771, 2e-5},
                             {w, "darcy_weisbach_loss", {5, 0.824, 100}, 5.75339, 2e-5},
                             {w, "darcy_weisbach_loss", {10, 1.38, 100}, 1.66806, 2e-5},
                             {w, "darcy_weisbach_loss", {10, 1.049, 100, 10, 0.046}, 7.01533, 2e-5},
                             {w, "pipe_velocity", {10, 1.049}, 1.131497 / 0.3048, 1e-6},
                             {"one velocity head of 1 ft", "minor_loss", {21.6070, 1.049, 1}, 1, 2e-4},
                             {w, "valve_pressure_loss", {10, 8}, 1.5625, 1e-14}});
        QVERIFY(hydraulics().call("pipe_velocity", {20, 1.049, 5}).warns("fast"));
        QVERIFY(!hydraulics().call("pipe_velocity", {20, 1.049}).warns("fast"));
    }

    void hazenWilliamsRows()
    {
        // 77 Illinois Administrative Code 906, appendix A, exhibit I: in, gpm, ft a 100 ft as printed, and
        // the same worked out; the printed 0.39 has two figures
        const double table[][4] = {
            {1.049, 5, 1.52, 1.5345}, {1.049, 10, 5.50, 5.5397}, {1.38, 5, 0.39, 0.4041},
            {1.38, 10, 1.46, 1.4588}, {1.38, 15, 3.06, 3.0911},  {1.38, 20, 5.23, 5.2662},
            {1.61, 20, 2.46, 2.4875}, {2.067, 20, 0.74, 0.7375}, {2.067, 50, 3.98, 4.0251},
            {0.824, 5, 0, 4.9673},    {0.824, 10, 0, 17.9318},   {0.824, 15, 0, 37.9967}};
        for (const auto &[inches, flow, printed, worked] : table) {
            const double ours = number("hazen_williams_loss", {flow, inches, 100});
            QVERIFY(std::fabs(ours - worked) < 6e-5);
            if (printed > 0)
                QVERIFY2(std::fabs(ours / printed - 1) < (printed < 0.5 ? 0.037 : 0.012),
                         qPrintable(QString::number(printed)));
        }
        const char *w = "worked out from the form named";
        holds(hydraulics(), {{w, "hazen_williams_loss", {8, 1.049, 100, 140}, 4.16389, 2e-6},
                             {w, "hazen_williams_loss", {5, 0.824, 100, 140}, 5.6443, 1e-5},
                             {w, "hazen_williams_loss", {10, 0.824, 100, 140}, 20.3759, 1e-5},
                             {w, "hazen_williams_loss", {10, 1.049, 100, 150, 1}, 2.3889 * 2.3067, 3e-5},
                             {w, "hazen_williams_loss", {10, 1.049, 100, 150, 2}, 5.48891, 1e-6}});
        QVERIFY(hydraulics().call("hazen_williams_loss", {1, 1.049, 100}).warns("slow"));
        QVERIFY(!hydraulics().call("hazen_williams_loss", {3, 1.049, 100}).warns("slow"));
        QVERIFY(number("reynolds_number", {1, 1.049}) < 4000 && number("reynolds_number", {3, 1.049}) > 4000);
    }

    /// Half the speed: half the flow, a fourth of the head, whatever the shape of the curve.
    void pumpAtAnotherSpeed()
    {
        for (const double shape : {0.0, 1.0})
            for (const double speed : {0.5, 0.9, 1.1})
                for (double q = 0; q <= 14; q += 0.7)
                    QVERIFY(std::fabs(
                                number("pump_head", {column(flows), column(heads), speed * q, shape, speed}) -
                                speed * speed *
                                    number("pump_head", {column(flows), column(heads), q, shape})) < 1e-10);
        QCOMPARE(hydraulics().call("pump_head", {column(flows), column(heads), 13, 0, 0.9}).words,
                 std::string("the curve goes from 0 to 12.6 gpm; beyond it the pump runs out"));
        QVERIFY(std::fabs(number("water_horsepower", {10, 150}) - 0.378788) < 1e-6);
    }

    void curveAgainstInterpolation()
    {
        gsl_interp *line = gsl_interp_alloc(gsl_interp_linear, flows.size());
        gsl_interp_init(line, flows.data(), heads.data(), flows.size());
        double before = 1e9;
        for (int i = 0; i <= 1400; ++i) {
            const double q = i / 100.0;
            const double theirs = gsl_interp_eval(line, flows.data(), heads.data(), q, nullptr);
            QVERIFY(std::fabs(number("pump_head", {column(flows), column(heads), q, 0}) - theirs) < 1e-10);
            const double smooth = number("pump_head", {column(flows), column(heads), q, 1});
            QVERIFY2(smooth <= before + 1e-12, "a falling curve stays falling");
            QVERIFY(std::fabs(smooth - theirs) < 4);
            before = smooth;
        }
        gsl_interp_free(line);
        // worked out, straight and smooth
        for (const auto &[q, straight, smooth] :
             {std::array{7.0, 275.0, 275.857246}, {9.0, 245.0, 246.014035}, {11.0, 207.0, 208.009153}}) {
            QVERIFY(std::fabs(number("pump_head", {column(flows), column(heads), q}) - straight) < 1e-9);
            QVERIFY(std::fabs(number("pump_head", {column(flows), column(heads), q, 1}) - smooth) < 1e-6);
        }
        // squares at 0 .. 3 turned upside down: slopes 0, 1.5, 3.75, 6, so 2.21875 at 1.5 exactly
        QCOMPARE(number("pump_head", {column({0, 1, 2, 3}), column({0, -1, -4, -9}), 1.5, 1}), -2.21875);
    }

    void operatingPointAgainstRoots()
    {
        int met = 0;
        for (const double level : {10.0, 60.0, 120.0})
            for (const double capacity : {0.3, 1.0, 5.0})
                for (const double pressure : {20.0, 40.0, 60.0})
                    for (const double diameter : {0.824, 1.049, 1.38}) {
                        const auto surplus = [&](double q) {
                            const double pipe = 0.2083 * std::pow(100.0 / 150, 1.852) * std::pow(q, 1.852) /
                                                std::pow(diameter, 4.8655) * 2; // 200 ft
                            return number("pump_head", {column(flows), column(heads), q}) - level -
                                   q / capacity - 1.1 * pipe - 2.3067 * pressure;
                        };
                        const Answer ours =
                            hydraulics().call("operating_flow", {column(flows), column(heads), level,
                                                                 capacity, pressure, diameter, 200});
                        if (surplus(0) < 0 || surplus(14) > 0) {
                            QVERIFY(ours.refused);
                            continue;
                        }
                        ++met;
                        QVERIFY(std::fabs(ours.number - root(surplus, 0, 14)) < 1e-10);
                    }
        QVERIFY(met > 50);
        // worked out: straight and smooth, by pressure
        const double table[][3] = {{20, 13.77711, 13.76330}, {25, 13.39457, 13.36458},
                                   {30, 13.00105, 12.96485}, {40, 12.17426, 12.16228},
                                   {50, 11.28705, 11.25029}, {60, 10.32943, 10.30514}};
        for (const auto &[psi, smooth, straight] : table)
            for (const double shape : {0.0, 1.0}) {
                const double q = number("operating_flow", {column(flows), column(heads), 60, 1, psi, 1.049,
                                                           200, 150, 0.1, shape});
                QVERIFY(std::fabs(q - (shape == 1.0 ? smooth : straight)) < 1e-5);
            }
    }

    void specificCapacityAgainstFit()
    {
        for (int seed = 1; seed <= 50; ++seed) {
            std::vector<double> q, s;
            for (int i = 0; i < 3 + seed % 6; ++i) {
                q.push_back(2 + 1.7 * i + 0.1 * (seed % 3));
                s.push_back(q.back() / (0.1 * seed) + 0.05 * ((seed * 7 + i * 5) % 11));
            }
            double c0, c1, v00, v01, v11, rest;
            gsl_fit_linear(q.data(), 1, s.data(), 1, q.size(), &c0, &c1, &v00, &v01, &v11, &rest);
            if (c1 > 0)
                QVERIFY(std::fabs(number("specific_capacity", {column(q), column(s)}) * c1 - 1) < 1e-11);
        }
        QVERIFY(hydraulics()
                    .call("specific_capacity", {column({2, 4, 6, 8}), column({8, 6, 16, 14})})
                    .warns("scatter"));
        QCOMPARE(hydraulics().call("specific_capacity", {column({2, 4}), column({8})}).words,
                 std::string("the two ranges must have the same lines"));
        QCOMPARE(hydraulics().call("specific_capacity", {column({2, 4}), column({8, std::nan("")})}).words,
                 std::string("a line is blank: fill it or take it out of the range"));
    }

    void drawdownAgainstSmallSteps()
    {
        // the balance A ds/dt = Q - SC s, stepped through by the classical fourth-order rule
        for (const double flow : {0.0, 4.0, 10.0})
            for (const double capacity : {0.05, 0.1, 0.5})
                for (const double earlier : {0.0, 12.0}) {
                    const double area = 0.25 * 3.14159265358979323846 * 0.25 * 1728 / 231, h = 0.01; // 6 in
                    const auto slope = [&](double s) { return (flow - capacity * s) / area; };
                    double s = earlier;
                    for (int i = 0; i < 1500; ++i) {
                        const double a = slope(s), b = slope(s + h / 2 * a), c = slope(s + h / 2 * b),
                                     d = slope(s + h * c);
                        s += h / 6 * (a + 2 * b + 2 * c + d);
                    }
                    QVERIFY(std::fabs(number("drawdown", {flow, capacity, 6, 15, earlier}) - s) < 1e-9);
                    if (flow > 0 && earlier == 0.0)
                        QVERIFY(std::fabs(number("time_to_level", {flow, capacity, 6, s}) - 15) < 1e-6);
                    if (flow == 0.0 && earlier > 0)
                        QVERIFY(std::fabs(number("residual_drawdown", {earlier, capacity, 6, 15}) - s) <
                                1e-9);
                }
        QCOMPARE(hydraulics().call("time_to_level", {12, 0.5, 6, 24}).words,
                 std::string("the level never falls that far: it settles at 24 ft"));
    }

    void startsAndTanks()
    {
        double most = 0;
        for (double draw = 0.05; draw < 10; draw += 0.05) // counted over an hour of filling and emptying
            most = std::fmax(most, number("motor_starts", {21.9256, 10, draw}));
        QVERIFY(std::fabs(most - number("most_motor_starts", {21.9256, 10})) < 1e-9);
        QVERIFY(hydraulics().call("motor_starts", {2, 10, 5}).warns("often"));
        QCOMPARE(hydraulics().call("motor_starts", {20, 10, 12}).reason,
                 std::string("the draw takes all the pump gives, so it never stops"));
        // worked out: precharge, cut-in, cut-out, share of the volume; trade tables print 0.37, 0.31, 0.27
        const double table[][4] = {{28, 30, 50, 0.295288},
                                   {20, 20, 40, 0.36563},
                                   {30, 30, 50, 0.30912},
                                   {40, 40, 60, 0.26774},
                                   {38, 40, 60, 21.92561 / 85}};
        for (const auto &[precharge, in, out, share] : table)
            QVERIFY(std::fabs(number("tank_drawdown", {1, precharge, in, out}) - share) < 6e-6);
        for (const double cutIn :
             {20.0, 30.0, 40.0}) { // a tank of the least volume gives one run of the pump
            const double volume = number("least_tank_volume", {9, 1.5, cutIn - 2, cutIn, cutIn + 20});
            QVERIFY(std::fabs(number("tank_drawdown", {volume, cutIn - 2, cutIn, cutIn + 20}) - 13.5) < 1e-9);
        }
    }

    void backwashTests()
    {
        const auto pump = [](double flow, double capacity) {
            return std::vector<Given>{
                column(flows), column(heads), flow, 10, 60, capacity, 6, 25, 1.049, 200};
        };
        const Answer good = hydraulics().call("backwash_pump_test", pump(8, 1));
        QCOMPARE(good.number, 0.0);
        QCOMPARE(
            good.reason,
            std::string(
                "at the end of the wash the pump works against 133.7 ft and makes 262 ft at 8 gpm: enough"));
        QCOMPARE(
            hydraulics().call("backwash_pump_test", pump(10, 0.1)).reason,
            std::string("at the end of the wash the pump works against 179.2 ft and makes 228 ft at 10 gpm: "
                        "enough"));
        const std::vector<double> fromTwo(flows.begin() + 1, flows.end()),
            headsFromTwo(heads.begin() + 1, heads.end());
        const Answer below = hydraulics().call(
            "backwash_pump_test", {column(fromTwo), column(headsFromTwo), 1.5, 10, 60, 1, 6, 25, 1.049, 200});
        QCOMPARE(below.number, 2.0);
        QCOMPARE(below.reason, std::string("needs lines of the pump's curve down to the flow of the wash"));
        QCOMPARE(hydraulics().call("backwash_pump_test", pump(15, 1)).reason,
                 std::string("the wash takes 15 gpm; the pump's curve ends at 14 gpm: beyond pump run-out, "
                             "whatever the well gives"));
        const Answer deep = hydraulics().call("backwash_level_test", {10, 15, 60, 0.1, 6, 140});
        QCOMPARE(deep.number, 3.0);
        QCOMPARE(deep.reason, std::string("the level falls 63.99 ft by the end of the wash, and 60 ft stand "
                                          "above the cover of the pump: too little; an "
                                          "under-washed bed looks fine for months, then fouls"));
        const Answer brief = hydraulics().call("backwash_measured_test", {5.5, 16, 7, 3, 25});
        QCOMPARE(brief.number, 2.0);
        QCOMPARE(brief.reason, std::string("measured 7 gpm held for 3 min at 25 psi, less than one wash of "
                                           "16 min: run it 15 minutes at the drain"));
        // against far more pressure than a wash needs too little proves nothing
        const Answer pressed = hydraulics().call("backwash_measured_test", {8, 16, 7, 16, 60});
        QCOMPARE(pressed.number, 2.0);
        QVERIFY(pressed.reason.ends_with("open the drain until near 20 psi are left and measure again"));
        QCOMPARE(hydraulics().call("backwash_measured_test", {8, 16, 7, 16, 30}).number, 3.0);
        QCOMPARE(hydraulics().call("backwash_measured_test", {8, 16, 9, 16, 60}).number, 0.0);
        QCOMPARE(hydraulics().call("backwash_rate_test", {9, 0.7854, 12, 8}).reason,
                 std::string("the bed takes 9.425 gpm and the drain passes 8 gpm: too little; an "
                             "under-washed bed looks fine for months, then fouls"));
    }

    void aBlankNeverWorksAndLessFlowNeverHelps()
    {
        const char *tests[] = {"backwash_level_test", "backwash_repeat_test", "backwash_rate_test",
                               "backwash_measured_test"};
        const std::vector<std::vector<Given>> good{
            {8, 10, 60, 1, 6, 140}, {8, 10, 60, 1, 6, 140, 60}, {20, 0.5, 10, 20}, {5, 10, 9, 20, 25}};
        for (std::size_t t = 0; t < 4; ++t) {
            QCOMPARE(number(tests[t], good[t]), 0.0);
            for (std::size_t i = 0; i < good[t].size(); ++i) {
                auto blank = good[t];
                blank[i] = missing();
                const Answer answer = hydraulics().call(tests[t], blank);
                QCOMPARE(answer.number, 2.0);
                QVERIFY(answer.reason.starts_with("needs "));
            }
        }
        double worst = 3;
        for (double flow = 3; flow < 16;
             flow += 0.25) { // more flow of the well never makes the rate test worse
            const double verdict = number("backwash_rate_test", {flow, 1, 10, 12});
            QVERIFY(verdict <= worst);
            worst = verdict;
        }
        double before = 0;
        for (double time = 1; time < 40; time += 0.5) { // a longer wash never makes the level better
            const double verdict = number("backwash_level_test", {10, time, 60, 0.1, 6, 140});
            QVERIFY(verdict >= before);
            before = verdict;
        }
    }
};

QTEST_APPLESS_MAIN(HydraulicsTest)
#include "hydraulics_test.moc"
