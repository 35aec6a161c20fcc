/// Oxygen in water against published rows and two other published equations; air pockets, venturis, sulfide.
#include <QTest>

#include <gsl/gsl_const_mksa.h>

#include "plugins/check_rows.h"
#include "plugins/gsl_reference.h"

using namespace called;

namespace
{

const Plugin &oxygen()
{
    static const Plugin plugin("oxygen");
    return plugin;
}
double number(const char *function, const std::vector<Given> &given)
{
    const Answer answer = oxygen().call(function, given);
    return answer.refused ? std::nan("") : answer.number;
}

constexpr double psiPerMercury = 14.695949 / 760; // psi of 1 mmHg

/// Weiss 1970, fresh water in balance with moist air at one atmosphere, mL/L at 0 degC turned into mg/L
/// [recalled].
double weiss(double temperature)
{
    const double hundred = (temperature + 273.15) / 100;
    return 1.42903 *
           std::exp(-173.4292 + 249.6339 / hundred + 143.3483 * std::log(hundred) - 21.8492 * hundred);
}

/// Garcia and Gordon 1992, fit to Benson and Krause, fresh water, umol/kg turned into mg/L [recalled].
double garciaGordon(double temperature)
{
    const double x = std::log((298.15 - temperature) / (273.15 + temperature));
    const double micromolePerKg =
        std::exp(5.80871 + x * (3.20291 + x * (4.17887 + x * (5.10006 + x * (-9.86643e-2 + x * 3.80369)))));
    const double t = temperature, from = t - 3.9863; // density of water [recalled]
    const double density = 1 - (t + 288.9414) * from * from / (508929.2 * (t + 68.12963));
    return micromolePerKg * 31.998e-3 * density;
}

/// Saturation pressure of water by Wagner and Pruss (IAPWS-95 auxiliary), atm [recalled].
double vaporByWagner(double temperature)
{
    const double kelvin = temperature + 273.15, critical = 647.096, tau = 1 - kelvin / critical;
    return 22.064e6 / GSL_CONST_MKSA_STD_ATMOSPHERE *
           std::exp(critical / kelvin *
                    (-7.85951783 * tau + 1.84408259 * std::pow(tau, 1.5) - 11.7866497 * std::pow(tau, 3) +
                     22.6807411 * std::pow(tau, 3.5) - 15.9618719 * std::pow(tau, 4) +
                     1.80122502 * std::pow(tau, 7.5)));
}

} // namespace

class OxygenTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(oxygen().isOpen()); }

    void publishedSaturation()
    {
        const char *norm = "EN 25814", *old = "colorimeter manual, table 3, older table";
        const double t[] = {0, 5, 10, 15, 20, 25}, en[] = {14.6, 12.8, 11.3, 10.1, 9.09, 8.26};
        for (int i = 0; i < 6; ++i) {
            const double found = number("oxygen_saturation", {t[i]});
            const double half = i < 4 ? 0.05 : 0.005; // half of the last figure printed
            QVERIFY2(std::fabs(found - en[i]) <= half, qPrintable(QString("%1 %2").arg(norm).arg(t[i])));
        }
        holds(oxygen(), {{old, "oxygen_saturation", {0}, 14.6, 0.013},
                         {old, "oxygen_saturation", {5}, 12.8, 0.013},
                         {old, "oxygen_saturation", {10}, 11.3, 0.013},
                         {old, "oxygen_saturation", {15}, 10.2, 0.013},
                         {old, "oxygen_saturation", {20}, 9.2, 0.013},
                         {old, "oxygen_saturation", {10, 700 * psiPerMercury}, 10.4, 5e-3},
                         {old, "oxygen_saturation", {20, 650 * psiPerMercury}, 7.8, 8e-3},
                         {"APHA pressure form", "oxygen_saturation", {10, 0.8 * 14.695949}, 9.0042, 1e-5},
                         {"APHA pressure form", "oxygen_saturation", {20, 2 * 14.695949}, 18.3864, 1e-5},
                         {"20 psi above 14.7", "oxygen_saturation", {10, 34.7}, 26.81, 5e-4},
                         {"40 psi above 14.7", "oxygen_saturation", {10, 54.7}, 42.29, 5e-4},
                         {"60 psi above 14.7", "oxygen_saturation", {10, 74.7}, 57.74, 5e-4}});
        // dry air and Henry's law alone give 8.47 at 25 degC, 2.5 % too much: vapor counts
        QVERIFY(std::fabs(8.47 / number("oxygen_saturation", {25}) - 1.025) < 1e-3);
        QVERIFY(oxygen().call("oxygen_saturation", {10, 100}).warns("high_pressure"));
    }

    void saturationAgainstOtherEquations()
    {
        for (double t = 0; t <= 40; t += 0.5) {
            const double found = number("oxygen_saturation", {t, 14.695948775});
            QVERIFY2(reference::close(found, weiss(t), 3e-3), qPrintable(QString::number(t)));
            QVERIFY2(reference::close(found, garciaGordon(t), 1e-4), qPrintable(QString::number(t)));
        }
    }

    /// Under pressure oxygen goes nearly with its own share of the pressure (Henry), the rest is a percent.
    void pressure()
    {
        holds(oxygen(), {{"worked out", "oxygen_partial_pressure", {10, 34.7 / 14.695949}, 0.4920, 5e-4},
                         {"worked out", "oxygen_partial_pressure", {10, 54.7 / 14.695949}, 0.7770, 5e-4},
                         {"worked out", "oxygen_partial_pressure", {10, 74.7 / 14.695949}, 1.0621, 5e-4}});
        const double cold[] = {5, 10, 15, 20},
                     slopes[] = {61.50, 54.55, 48.97, 44.43}; // mg/L for 1 atm of oxygen
        for (int i = 0; i < 4; ++i)
            QVERIFY(reference::close(number("oxygen_saturation", {cold[i]}) /
                                         number("oxygen_partial_pressure", {cold[i], 1}),
                                     slopes[i], 2e-4));
        for (double t = 0; t <= 40; t += 4) {
            const double share = number("oxygen_partial_pressure", {t, 1});
            QVERIFY(reference::close(1 - share / 0.20946, vaporByWagner(t), 1.5e-3));
            for (double atm = 0.6; atm <= 6; atm += 0.3) {
                const double henry = number("oxygen_saturation", {t, 14.695948775}) *
                                     number("oxygen_partial_pressure", {t, atm}) / share;
                QVERIFY(reference::close(number("oxygen_saturation", {t, 14.695948775 * atm}), henry, 6e-3));
            }
        }
    }

    void pocket()
    {
        holds(oxygen(),
              {{"gas law", "air_pocket_oxygen", {6}, 6.55170, 1e-4},
               {"drawn off in a day and a half", "air_pocket_days", {6.5517, 300, 4}, 1.442, 1e-3},
               {"a tenth of what 40 psi dissolve", "air_pocket_days", {6.5517, 300, 4.2295}, 1.364, 1e-3},
               {"a quarter", "air_pocket_days", {6.5517, 300, 10.574}, 0.546, 1e-3},
               {"a half", "air_pocket_days", {6.5517, 300, 21.148}, 0.273, 2e-3},
               {"all", "air_pocket_days", {6.5517, 300, 42.295}, 0.136, 4e-3},
               {"iron alone", "air_pocket_days", {6.5517, 240, 5 * 0.143245}, 10.069, 1e-4}});
        for (double gal = 1; gal < 20; gal += 3) // gas law with the library's constants
            for (double t = 0; t < 30; t += 10)
                for (double psi = 12; psi < 80; psi += 20) {
                    const double mole = psi * GSL_CONST_MKSA_PSI * gal * GSL_CONST_MKSA_US_GALLON /
                                        (GSL_CONST_MKSA_MOLAR_GAS * (t + 273.15));
                    QVERIFY(reference::close(number("air_pocket_oxygen", {gal, t, psi}),
                                             0.20946 * 31.998 * mole, 1e-5));
                }
    }

    /// The least of three limits, named in words.
    void renewal()
    {
        const std::vector<Given> carried{6.5517, 300, 0.429735, 4}, calendar{6.5517, 60, 0.429735, 4},
            used{6.5517, 300, 0.429735, 0.2, 30};
        QCOMPARE(oxygen().word("air_pocket_limit", carried).c_str(), "carried off");
        QCOMPARE(oxygen().word("air_pocket_limit", calendar).c_str(), "calendar");
        QCOMPARE(oxygen().word("air_pocket_limit", used).c_str(), "used up");
        QCOMPARE(
            QString::fromStdString(oxygen().call("air_pocket_interval", carried).reason),
            QString("carried off by the water in 1.44 days, used by oxidation in 13.4 days, by the calendar "
                    "in 3 days: carried off decides"));
        QCOMPARE(
            QString::fromStdString(oxygen().call("air_pocket_limit", {6.5517, 0, 0.4, 4}).reason),
            QString("carried off by the water in no end, used by oxidation in no end, by the calendar in 3 "
                    "days: calendar decides"));
        QVERIFY(oxygen().call("air_pocket_interval", used).warns("too_little"));
        QVERIFY(oxygen().call("air_pocket_interval", {2, 600, 0.4, 4}).warns("daily"));
        for (double use = 20; use < 900; use += 70)
            for (double takenUp = 0.5; takenUp < 12; takenUp += 2) {
                const double days = number("air_pocket_interval", {6.5, use, 0.43, takenUp});
                QVERIFY(
                    reference::close(days,
                                     std::fmin(3, std::fmin(number("air_pocket_days", {6.5, use, takenUp}),
                                                            number("air_pocket_days", {6.5, use, 0.43}))),
                                     1e-12));
            }
    }

    void budget()
    {
        holds(oxygen(), {{"Water Treatment Plant Design, table 10.7", "oxygen_budget", {1, 0, 0}, 0.14, 0.03},
                         {"oxidant tables in trade texts", "oxygen_budget", {0, 1, 0}, 0.29, 0.01},
                         {"IUPAC 2021", "oxygen_budget", {0, 0, 0, 1}, 4.57, 1e-3},
                         {"IUPAC 2021", "oxygen_budget", {6, 0.5, 0}, 1.00508, 1e-5},
                         {"common practice", "oxygen_needed", {0.37873}, 2.63619, 1e-6},
                         {"worked out", "oxygen_remaining", {11.288, 0.37873}, 10.90927, 1e-9}});
        // water saturated at 10 degC could oxidize 78.8 mg/L of iron
        QVERIFY(std::fabs(number("oxygen_remaining", {11.288, number("oxygen_budget", {78.8, 0, 0})})) <
                5e-3);
        QVERIFY(oxygen().call("oxygen_remaining", {4, 5}).warns("short"));
        QVERIFY(oxygen().call("oxygen_remaining", {5, 4.5}).warns("little"));
        QVERIFY(oxygen().call("oxygen_remaining", {5, 4}).cautions.empty());
        QCOMPARE(oxygen().word("aeration_limit", {8, 2.6, 4.5, 58.3}).c_str(), "contact time");
        QCOMPARE(oxygen().word("aeration_limit", {2, 2.6, 4.5, 58.3}).c_str(), "oxygen and contact time");
        QCOMPARE(oxygen().word("aeration_limit", {2, 2.6, 60, 58.3}).c_str(), "oxygen");
        QCOMPARE(QString::fromStdString(oxygen().call("aeration_limit", {8, 2.6, 60, 58.3}).reason),
                 QString("oxygen supplied 8 mg/L, needed 2.6; time 60 min, needed 58.3: both suffice"));
    }

    void venturi()
    {
        holds(oxygen(), {{"3 mg/L of iron at 5 gpm", "venturi_air_flow", {5, 0.429735, 0.2}, 0.14596, 1e-4},
                         {"2 mg/L at 8 gpm", "venturi_air_flow", {8, 0.28649, 0.1}, 0.311383, 1e-5}});
        // 278.62 mg of oxygen in a liter of air at 20 degC, and the mass comes back
        for (double flow = 1; flow < 20; flow += 4)
            for (double t = 0; t < 40; t += 10) {
                const double air = number("venturi_air_flow", {flow, 2, 0.25, t});
                const double perLiter = 278.62 * 293.15 / (273.15 + t);
                QVERIFY(reference::close(air * perLiter * 0.25, flow * 3.785411784 * 2, 1e-4));
            }
        QVERIFY(oxygen().call("venturi_air_flow", {5, 2, 0.5}).warns("optimistic"));
        const Answer flat = oxygen().call("venturi_draws", {50, 42});
        QCOMPARE(flat.number, 0.0);
        QCOMPARE(
            QString::fromStdString(flat.reason),
            QString("pressure falls by 16 % from 50 to 42 psi, at least 20 % is asked: a smaller venturi, or "
                    "throttle behind it"));
        QCOMPARE(number("venturi_draws", {50, 40}), 1.0);
    }

    void sulfide()
    {
        const char *model = "pK 7.0, public lagoon-ecology model";
        holds(oxygen(), {{model, "hydrogen_sulfide_share", {6}, 0.91, 2e-3},
                         {model, "hydrogen_sulfide_share", {7}, 0.50, 1e-12},
                         {model, "hydrogen_sulfide_share", {8}, 0.09, 0.012}});
        holds(oxygen(), {{"EN 25814", "oxygen_saturation_share", {11.3, 10}, 1, 2e-3}});
        QVERIFY(oxygen().call("oxygen_saturation_share", {13, 10}).warns("supersaturated"));
    }
};

QTEST_APPLESS_MAIN(OxygenTest)
#include "oxygen_test.moc"
