/// Water chemistry: ions, carbonate and neutralizers against published rows, atomic weights typed here, and
/// an equilibrium solved here.
#include <array>

#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

enum { calcite, magnesia, sodaAsh };
enum { carbonDioxide, carbonate = 2 };
enum { logarithms, equilibrium };

const Plugin &quality()
{
    static const Plugin plugin("quality");
    return plugin;
}
double number(const char *function, const std::vector<Given> &given)
{
    return quality().call(function, given).number;
}

// IUPAC 2021 abridged atomic weights, typed here anew so that the table of the product is checked too.
constexpr double H = 1.008, C = 12.011, N = 14.007, O = 15.999, F = 18.998403162, Na = 22.98976928,
                 Mg = 24.305, S = 32.06, Cl = 35.45, K = 39.0983, Ca = 40.078, Mn = 54.938043, Fe = 55.845,
                 CaCO3 = Ca + C + 3 * O, CO2 = C + 2 * O;

/// Ideal carbonate system at 25 degC; log K of the USGS geochemical data base as its example 3 prints them
/// (calcite -8.48) and as handbooks give them (6.352, 10.329, 13.998).
struct Solved {
    static constexpr double k1 = 6.352, k2 = 10.329, kw = 13.998;
    static double hydrogen(double ph) { return std::pow(10.0, -ph); }
    /// Bicarbonate, mol/L, of an alkalinity in eq/L.
    static double bicarbonateOf(double alkalinity, double ph)
    {
        const double h = hydrogen(ph);
        return (alkalinity - std::pow(10.0, -kw) / h + h) / (1 + 2 * std::pow(10.0, -k2) / h);
    }
    static double carbonOf(double alkalinity, double ph)
    {
        const double h = hydrogen(ph);
        return bicarbonateOf(alkalinity, ph) * (1 + h / std::pow(10.0, -k1) + std::pow(10.0, -k2) / h);
    }
    /// The pH at which an alkalinity holds that much carbon: halving the interval, carbon falls with pH.
    static double phOf(double alkalinity, double carbon)
    {
        double low = 4, high = 11;
        for (int i = 0; i < 80; ++i) {
            const double middle = (low + high) / 2;
            (carbonOf(alkalinity, middle) > carbon ? low : high) = middle;
        }
        return low;
    }
};

} // namespace

class WaterChemistryTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(quality().isOpen()); }

    /// Each ion alone: charges over its mass, as calcium carbonate at 50.043 mg a milliequivalent.
    void charges()
    {
        const double unit = CaCO3 / 2; // the functions give meq, which is counted as calcium carbonate
        const double cations[] = {2 / Ca, 2 / Mg, 1 / Na, 1 / K, 2 / Fe, 2 / Mn, 1 / (N + 4 * H)};
        for (std::size_t i = 0; i < std::size(cations); ++i) {
            std::vector<Given> sheet(std::size(cations), Given(0.0));
            sheet[i] = 100.0;
            QVERIFY(std::fabs(number("cation_charge", sheet) / (100 * cations[i]) - 1) < 1e-12);
        }
        const double anions[] = {1 / (H + C + 3 * O), 1 / Cl, 2 / (S + 4 * O),
                                 1 / (N + 3 * O),     1 / F,  2 / (C + 3 * O)};
        for (std::size_t i = 0; i < std::size(anions); ++i) {
            std::vector<Given> sheet(std::size(anions), Given(0.0));
            sheet[i] = 100.0;
            QVERIFY(std::fabs(number("anion_charge", sheet) / (100 * anions[i]) - 1) < 1e-12);
        }
        QVERIFY(std::fabs(number("anion_charge", {250, 0, 0}) * unit - 205.040) < 1e-3);
    }

    /// Equivalent weights as the table of a water chemist gives them, worked out from the weights above.
    void forms()
    {
        const double ions[] = {Ca / 2,
                               Mg / 2,
                               Na,
                               K,
                               Fe / 2,
                               Fe / 3,
                               Mn / 2,
                               87.62 / 2,
                               N + 4 * H,
                               H + C + 3 * O,
                               (C + 3 * O) / 2,
                               O + H,
                               Cl,
                               (S + 4 * O) / 2,
                               N + 3 * O,
                               F,
                               CO2};
        for (std::size_t i = 0; i < std::size(ions); ++i) {
            const double ion = static_cast<double>(i);
            QVERIFY(std::fabs(number("ion_as_caco3", {ion, 7}) / (7 * CaCO3 / 2 / ions[i]) - 1) < 1e-12);
            QVERIFY(std::fabs(number("caco3_as_ion", {ion, number("ion_as_caco3", {ion, 7})}) - 7) < 1e-12);
        }
        const char *w = "IUPAC 2021";
        holds(quality(), {{w, "nitrogen_as", {0, 1}, (N + 3 * O) / N, 1e-12},
                          {w, "nitrogen_as", {1, 1}, (N + 2 * O) / N, 1e-12},
                          {w, "nitrogen_as", {2, 1}, (N + 3 * H) / N, 1e-12},
                          {w, "nitrogen_as", {3, 1}, (N + 4 * H) / N, 1e-12},
                          {"10 as nitrogen, 45 as nitrate in print", "nitrogen_as", {0, 10}, 45, 0.02},
                          {w, "sulfur_as", {0, 1}, (2 * H + S) / S, 1e-12},
                          {w, "sulfur_as", {1, 1}, (4 * O + S) / S, 1e-12}});
    }

    void balance()
    {
        // USGS PHREEQC, example 1: seawater in mg/kg, printed percent error 0.07
        const double cations = number("cation_charge", {412.3, 1291.8, 10768, 399.1});
        const double anions = number("anion_charge", {141.682, 19353, 2712});
        QVERIFY(std::fabs(100 * number("ion_balance", {cations, anions}) - 0.07) < 0.01);
        QVERIFY(!quality().call("ion_balance", {5.2, 4.8}).warns("fair"));
        QVERIFY(quality().call("ion_balance", {5.3, 4.7}).warns("fair"));
        QVERIFY(quality().call("ion_balance", {4.4, 5.6}).warns("unusable"));
        QVERIFY(quality().call("ion_balance", {0, 0}).refused);
        // two bicarbonates leave one carbonate and lose carbon dioxide and water
        QVERIFY(std::fabs(number("dissolved_solids_by_ions", {0, 100, 0, 0}) -
                          100 * (C + 3 * O) / (2 * (H + C + 3 * O))) < 1e-12);
    }

    void hardnessParts()
    {
        // Ohio EPA ambient ground water: the agency's hardness and calcium give back its magnesium
        const char *ohio = "Ohio EPA ambient ground water";
        holds(quality(), {{ohio, "magnesium_from_hardness", {685, 187}, 53, 0.01},
                          {ohio, "magnesium_from_hardness", {434, 116}, 35, 0.01},
                          {ohio, "magnesium_from_hardness", {561, 147}, 47, 0.01},
                          {ohio, "magnesium_from_hardness", {372, 93}, 34, 0.01},
                          {ohio, "magnesium_from_hardness", {266, 77}, 18, 0.01},
                          {"worked out", "calcium_hardness", {80}, 199.76, 1e-12}});
        for (const auto &[calcium, magnesium, hardness] :
             {std::array{187.0, 53.0, 685.0}, {116, 35, 434}, {147, 47, 561}, {93, 34, 372}, {77, 18, 266}}) {
            const double calculated = number("total_hardness", {calcium, magnesium});
            QVERIFY(std::fabs(number("hardness_disagreement", {hardness, calculated})) < 2e-3);
            QVERIFY(!quality().call("hardness_disagreement", {hardness, calculated}).warns("disagrees"));
        }
        QVERIFY(quality().call("hardness_disagreement", {200, 179}).warns("disagrees"));
        QVERIFY(quality().call("magnesium_from_hardness", {100, 80}).refused);
        for (double hardness = 0; hardness <= 400; hardness += 25)
            for (double alkalinity = 0; alkalinity <= 400; alkalinity += 25)
                QVERIFY(std::fabs(number("carbonate_hardness", {hardness, alkalinity}) +
                                  number("noncarbonate_hardness", {hardness, alkalinity}) - hardness) < 1e-9);
    }

    void handbookClasses()
    {
        const double gpg = 64.79891 / 3.785411784; // NIST Handbook 44
        const auto in = [&](double mgPerLiter) {
            return quality().word("hardness_class", {mgPerLiter / gpg, 2});
        };
        // handbook scale 50, 150, 300 mg/L
        QCOMPARE(in(49), std::string("soft"));
        QCOMPARE(in(51), std::string("moderately hard"));
        QCOMPARE(in(149), std::string("moderately hard"));
        QCOMPARE(in(151), std::string("hard"));
        QCOMPARE(in(299), std::string("hard"));
        QCOMPARE(in(301), std::string("very hard"));
    }

    void conductivity()
    {
        holds(quality(),
              {{"reference pages on conductivity", "dissolved_solids_factor", {192, 300}, 0.64, 1e-12},
               {"reference pages on conductivity", "dissolved_solids_factor", {120, 200}, 0.6, 1e-12},
               {"30 % less at 10 degC", "conductivity_at_25", {350, 10}, 500, 1e-12},
               {"saturated brine", "ppm_by_mass", {316272, 1.198}, 264000, 1e-6}});
        // CRC Handbook, potassium chloride of 0.01 mol/kg: a straight rise holds within 2 % from 10 to 40
        // degC
        struct {
            double t, read;
        } const standard[] = {{10, 1013.95}, {15, 1141.45}, {18, 1219.93}, {20, 1273.03},
                              {25, 1408.23}, {30, 1546.63}, {35, 1687.79}, {40, 1831.27}};
        for (const auto &row : standard)
            QVERIFY2(std::fabs(number("conductivity_at_25", {row.read, row.t, 0.0195}) / 1408.23 - 1) < 0.02,
                     qPrintable(QString::number(row.t)));
        QVERIFY(quality().call("dissolved_solids_factor", {192, 400}).warns("doubtful"));
        QVERIFY(!quality().call("dissolved_solids_factor", {192, 300}).warns("doubtful"));
    }

    void constants()
    {
        // pK1, pK2 at 5 to 25 degC as Standard Methods 2330 prints them to two places, recalled
        struct {
            double t, first, second;
        } const rows[] = {
            {5, 6.52, 10.55}, {10, 6.46, 10.49}, {15, 6.42, 10.43}, {20, 6.38, 10.38}, {25, 6.35, 10.33}};
        for (const auto &row : rows) {
            const auto share = [&](int species, double ph) {
                return number("carbonate_share", {double(species), ph, row.t});
            };
            QVERIFY(std::fabs(share(carbonDioxide, row.first) - 0.5) < 0.006); // 0.01 of pH is 0.0058
            QVERIFY(std::fabs(share(carbonate, row.second) - 0.5) < 0.006);
            for (double ph = 4; ph <= 11; ph += 0.5)
                QVERIFY(std::fabs(share(0, ph) + share(1, ph) + share(2, ph) - 1) < 1e-12);
        }
    }

    /// The short forms beside an equilibrium solved here, over waters of pH 6 to 9.5 at 25 degC.
    void shortForms()
    {
        for (double alkalinity = 50; alkalinity <= 400; alkalinity += 50) {
            const double equivalents = alkalinity / (CaCO3 / 2) / 1000;
            for (double ph = 6; ph <= 9.5; ph += 0.25) {
                const double held = Solved::bicarbonateOf(equivalents, ph);
                const double part = number("alkalinity_part", {0, alkalinity, ph});
                QVERIFY2(std::fabs(part / (held * 1000 * CaCO3 / 2) - 1) < 0.01,
                         qPrintable(QString("%1 at pH %2").arg(alkalinity).arg(ph)));
                QVERIFY(std::fabs(number("alkalinity_part", {0, alkalinity, ph}) +
                                  number("alkalinity_part", {1, alkalinity, ph}) +
                                  number("alkalinity_part", {2, alkalinity, ph}) - alkalinity) < 1e-9);
                if (ph > 8.25)
                    continue;
                const double gas = held * Solved::hydrogen(ph) * std::pow(10.0, Solved::k1) * CO2 * 1000;
                QVERIFY(std::fabs(number("free_carbon_dioxide", {alkalinity, ph, 25, 0}) / gas - 1) < 0.03);
                QVERIFY(std::fabs(number("free_carbon_dioxide", {alkalinity, ph, 25, 1}) / gas - 1) < 0.02);
            }
        }
        QVERIFY(quality().call("alkalinity_part", {0, 20, 11}).refused);
    }

    /// Calcite dissolved into acid water: alkalinity and carbon as they rise, pH solved here.
    void neutralized()
    {
        for (double alkalinity = 30; alkalinity <= 150; alkalinity += 30)
            for (double ph = 5.75; ph <= 6.6; ph += 0.25)
                for (double target = 6.8; target <= 7.7; target += 0.3) {
                    const double removed =
                        number("carbon_dioxide_to_neutralize", {alkalinity, ph, target, calcite});
                    const double back = number("neutralized_ph", {alkalinity, ph, removed, calcite});
                    QVERIFY(std::fabs(back - target) < 1e-9);
                    const double dissolved = removed / CO2 / 1000; // mol/L of calcite
                    const double before = alkalinity / (CaCO3 / 2) / 1000;
                    const double carbon = Solved::carbonOf(before, ph) + dissolved;
                    const double solved = Solved::phOf(before + 2 * dissolved, carbon);
                    QVERIFY2(std::fabs(solved - target) < 0.06,
                             qPrintable(QString("alkalinity %1, pH %2 to %3: solved %4")
                                            .arg(alkalinity)
                                            .arg(ph)
                                            .arg(target)
                                            .arg(solved)));
                }
        // every form goes there and back; cold water holds more to be taken away
        for (const int form : {0, 1, 2})
            for (double t = 5; t <= 25; t += 5) {
                const double removed =
                    number("carbon_dioxide_to_neutralize", {80, 6.3, 7.1, magnesia, t, double(form)});
                QVERIFY(std::fabs(number("neutralized_ph", {80, 6.3, removed, magnesia, t, double(form)}) -
                                  7.1) < 1e-9);
            }
        QVERIFY(number("carbon_dioxide_to_neutralize", {80, 6.3, 7.1, calcite, 8, 1}) >
                1.15 * number("carbon_dioxide_to_neutralize", {80, 6.3, 7.1, calcite, 25, 1}));
        QVERIFY(quality().call("carbon_dioxide_to_neutralize", {80, 6.3, 7.1, calcite, 8, 0}).warns("cold"));
        QVERIFY(!quality().call("carbon_dioxide_to_neutralize", {80, 6.3, 7.1, calcite, 8, 1}).warns("cold"));
        QVERIFY(quality().call("carbon_dioxide_to_neutralize", {100, 7.4, 7.2}).refused);
        QVERIFY(quality().call("neutralized_ph", {100, 6.5, 70}).refused);
    }

    /// Balanced equations, mole by mole.
    void neutralizers()
    {
        const double MgO = Mg + O, Na2CO3 = 2 * Na + C + 3 * O;
        const char *w = "balanced equation, IUPAC 2021";
        holds(quality(),
              {{w, "neutralizer_dose", {calcite, 1}, CaCO3 / CO2, 1e-12},
               {w, "neutralizer_dose", {magnesia, 1}, MgO / (2 * CO2), 1e-12},
               {w, "neutralizer_dose", {sodaAsh, 1}, Na2CO3 / CO2, 1e-12},
               {w, "neutralizer_alkalinity_added", {calcite, 1}, CaCO3 / CO2, 1e-12},
               {w, "neutralizer_alkalinity_added", {magnesia, 1}, CaCO3 / (2 * CO2), 1e-12},
               {w, "neutralizer_alkalinity_added", {sodaAsh, 1}, CaCO3 / CO2, 1e-12},
               {w, "soda_ash_sodium_added", {1}, 2 * Na / CO2, 1e-12},
               {w, "soda_ash_per_year", {40, 200}, 58.687, 1e-4},
               {w, "calcite_blend_dose", {40, 1}, 40 * MgO / (2 * CO2), 1e-12},
               {w, "calcite_blend_hardness", {40, 1}, 40 * CaCO3 / (2 * CO2), 1e-12},
               {w, "calcite_blend_hardness", {40, 0}, number("calcite_hardness_added", {40}), 1e-12},
               {"pH adjustment text: 3 gpm/ft^2", "calcite_service_flow", {1}, 3, 1e-12}});
        // pH adjustment text: calcite above pH 6, magnesia type below; common practice for iron and pH 7
        QCOMPARE(quality().word("neutralizer_medium", {6.0, 0.5}), std::string("calcite"));
        QCOMPARE(quality().word("neutralizer_medium", {5.9, 0.5}), std::string("magnesia blend"));
        QCOMPARE(quality().word("neutralizer_medium", {6.5, 2.1}), std::string("soda ash"));
        QCOMPARE(quality().word("neutralizer_medium", {7.0, 2.1}), std::string("none"));
        QVERIFY(quality().call("neutralizer_medium", {6.5, 1.5}).warns("iron"));
        QVERIFY(quality().call("calcite_blend_dose", {40, 0.11}).warns("overshoots"));
        QVERIFY(quality().call("soda_ash_sodium_added", {20}).warns("sodium_diet"));
        QVERIFY(!quality().call("soda_ash_sodium_added", {19}).warns("sodium_diet"));
    }

    void saturation()
    {
        const char *pages = "public Langelier pages";
        holds(quality(),
              {{pages, "saturation_ph", {25, 500, 150, 120}, 7.70, 7e-4},
               {pages, "saturation_ph", {30, 800, 250, 180}, 7.23, 7e-4},
               {"worked out from the printed form", "saturation_ph", {10, 250, 90, 80}, 8.3650, 1e-5},
               {"recalled form", "aggressive_index", {6.8, 90, 80}, 10.657, 1e-4}});
        // USGS PHREEQC, example 3 A: calcite at log pCO2 -2 and 25 degC, pH 7.297, calcium 1.646e-3 mol/kg,
        // alkalinity 3.291e-3 eq/kg; 267 mg/L of solids from its calcium and bicarbonate
        const std::vector<Given> balanced{25, 267, 1.646 * CaCO3, 3.291 * CaCO3 / 2, equilibrium};
        QVERIFY(std::fabs(number("saturation_ph", balanced) - 7.297) < 0.02);
        QVERIFY(std::fabs(number("langelier_index",
                                 {7.297, 25, 267, 1.646 * CaCO3, 3.291 * CaCO3 / 2, equilibrium})) < 0.02);
        QVERIFY(std::fabs(number("free_carbon_dioxide", {3.291 * CaCO3 / 2, 7.297, 25, 1}) / (0.3399 * CO2) -
                          1) < 0.12); // no activity in the form
        // other fits than the plugin's: pK2 as Neal, House and Down 1998 print it, calcite of Jacobson and
        // Langmuir 1974 (recalled)
        for (double t = 5; t <= 40; t += 5) {
            const double kelvin = t + 273.15;
            const double second = 2902.39 / kelvin + 0.02379 * kelvin - 6.4980;
            const double solid = -(13.870 - 3059 / kelvin - 0.04035 * kelvin);
            const double ideal =
                second - solid - std::log10(150 / CaCO3 / 1000) - std::log10(120 / CaCO3 / 500);
            // almost no solids: activities are 1
            QVERIFY(std::fabs(number("saturation_ph", {t, 1, 150, 120, equilibrium}) - ideal) < 0.08);
            const double apart = number("saturation_ph", {t, 300, 150, 120, logarithms}) -
                                 number("saturation_ph", {t, 300, 150, 120, equilibrium});
            QVERIFY(apart > 0.0 && apart < 0.35); // what the help says of the two forms
        }
        for (const int form : {logarithms, equilibrium})
            QCOMPARE(number("langelier_index", {7.2, 12, 300, 150, 120, double(form)}) +
                         number("ryznar_index", {7.2, 12, 300, 150, 120, double(form)}),
                     number("saturation_ph", {12, 300, 150, 120, double(form)}));
        QVERIFY(quality().call("ryznar_index", {6.5, 10, 250, 90, 80}).warns("corrosive"));
        QVERIFY(quality().call("ryznar_index", {8.2, 60, 800, 250, 180}).warns("scaling"));
        QVERIFY(quality().call("aggressive_index", {6.8, 90, 80}).warns("moderate"));
        QCOMPARE(quality().call("saturation_ph", {25, 500, 0, 120}).refusedArgument, 3u);
        QCOMPARE(quality().call("aggressive_index", {7, 100, 0}).refusedArgument, 3u);
    }

    /// USGS PHREEQC, example 16: two springs in granite as the distributed run prints them.
    void springs()
    {
        struct {
            double ph, calcium, magnesium, sodium, potassium, alkalinity, sulfate, chloride; // mmol/L, meq/L
            double error, gas, carbon, calcite, solids;
        } const rows[] = {
            {6.2, 0.078, 0.029, 0.134, 0.028, 0.328, 0.010, 0.014, 1.90, 0.4540, 0.7825, -3.30, 40},
            {6.8, 0.260, 0.071, 0.259, 0.040, 0.895, 0.025, 0.030, -0.73, 0.3049, 1.199, -1.78, 95}};
        for (const auto &row : rows) {
            const double cations = number(
                "cation_charge", {row.calcium * Ca, row.magnesium * Mg, row.sodium * Na, row.potassium * K});
            const double anions = number("anion_charge", {row.alkalinity * (H + C + 3 * O), row.chloride * Cl,
                                                          row.sulfate * (S + 4 * O)});
            QVERIFY(std::fabs(100 * number("ion_balance", {cations, anions}) - row.error) < 0.01);
            const double alkalinity = row.alkalinity * CaCO3 / 2;
            for (const int form : {0, 1, 2}) // short, thermodynamic, USGS: none knows activity
                QVERIFY(std::fabs(number("free_carbon_dioxide", {alkalinity, row.ph, 25, double(form)}) /
                                      (row.gas * CO2) -
                                  1) < 0.07);
            QVERIFY(std::fabs(number("carbonate_share", {carbonDioxide, row.ph, 25}) - row.gas / row.carbon) <
                    0.01);
            QVERIFY(std::fabs(number("langelier_index",
                                     {row.ph, 25, row.solids, row.calcium * CaCO3, alkalinity, equilibrium}) -
                              row.calcite) < 0.03);
        }
    }

    void words()
    {
        // bands of corrosion engineers' pages: 6, 7 and 8
        QCOMPARE(quality().word("ryznar_class", {5.99}), std::string("scaling"));
        QCOMPARE(quality().word("ryznar_class", {6.5}), std::string("little of either"));
        QCOMPARE(quality().word("ryznar_class", {7.01}), std::string("corrosive"));
        QCOMPARE(quality().word("ryznar_class", {8.01}), std::string("strongly corrosive"));
        const auto says = [](double index) { return quality().word("langelier_class", {index}); };
        // bands of the public Langelier pages
        QCOMPARE(says(0.51), std::string("scaling"));
        QCOMPARE(says(0.5), std::string("near balance"));
        QCOMPARE(says(-0.5), std::string("near balance"));
        QCOMPARE(says(-0.51), std::string("mildly corrosive"));
        QCOMPARE(says(-1.0), std::string("moderately corrosive"));
        QCOMPARE(says(-1.99), std::string("moderately corrosive"));
        QCOMPARE(says(-2.0), std::string("strongly corrosive"));
    }
};

QTEST_APPLESS_MAIN(WaterChemistryTest)
#include "water_chemistry_test.moc"
