/// Oxidant demand, alkalinity and solids against published handbook values and against balanced equations.
#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

enum { chlorine, peroxide, permanganate, ozone, oxygen, chlorineDioxide };
enum { usual, toSulfur, toSulfate };

const Plugin &oxidation()
{
    static const Plugin plugin("oxidation");
    return plugin;
}

double demand(double oxidant, double iron, double manganese, double sulfide, double end = usual)
{
    return oxidation().call("oxidant_demand", {oxidant, iron, manganese, sulfide, end}).number;
}

// IUPAC 2021 abridged atomic weights, typed here anew so that the table of the product is checked too.
constexpr double Fe = 55.845, Mn = 54.938043, H2S = 2 * 1.008 + 32.06, Cl2 = 2 * 35.45, O2 = 2 * 15.999,
                 O3 = 3 * 15.999, H2O2 = 2 * 1.008 + 2 * 15.999, KMnO4 = 39.0983 + 54.938043 + 4 * 15.999,
                 ClO2 = 35.45 + 2 * 15.999, CaCO3 = 40.078 + 12.011 + 3 * 15.999;

} // namespace

class OxidationTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(oxidation().isOpen()); }

    // Coefficients of balanced equations: oxidant for reductant, in moles.
    void stoichiometry_data()
    {
        QTest::addColumn<int>("oxidant");
        QTest::addColumn<double>("mass");
        QTest::addColumn<double>("perIron");
        QTest::addColumn<double>("perManganese");
        QTest::addColumn<double>("toS");
        QTest::addColumn<double>("toSO4");
        QTest::newRow("4 Fe + O2, 2 Mn + O2, 2 H2S + O2, H2S + 2 O2")
            << int(oxygen) << O2 << 0.25 << 0.5 << 0.5 << 2.0;
        QTest::newRow("2 Fe + Cl2, Mn + Cl2, H2S + Cl2, H2S + 4 Cl2")
            << int(chlorine) << Cl2 << 0.5 << 1.0 << 1.0 << 4.0;
        QTest::newRow("2 Fe + H2O2, H2S + H2O2, H2S + 4 H2O2")
            << int(peroxide) << H2O2 << 0.5 << 0.0 << 1.0 << 4.0;
        QTest::newRow("3 Fe + MnO4, 3 Mn + 2 MnO4, 3 H2S + 2 MnO4, 3 H2S + 8 MnO4")
            << int(permanganate) << KMnO4 << 1.0 / 3 << 2.0 / 3 << 2.0 / 3 << 8.0 / 3;
        QTest::newRow("2 Fe + O3, Mn + O3, H2S + O3, H2S + 4 O3")
            << int(ozone) << O3 << 0.5 << 1.0 << 1.0 << 4.0;
        QTest::newRow("Fe + ClO2, Mn + 2 ClO2, H2S + 2 ClO2, H2S + 8 ClO2")
            << int(chlorineDioxide) << ClO2 << 1.0 << 2.0 << 2.0 << 8.0;
    }
    void stoichiometry()
    {
        QFETCH(int, oxidant);
        QFETCH(double, mass);
        QFETCH(double, perIron);
        QFETCH(double, perManganese);
        QFETCH(double, toS);
        QFETCH(double, toSO4);
        QVERIFY(std::fabs(demand(oxidant, 1, 0, 0) - perIron * mass / Fe) < 1e-12);
        QVERIFY(std::fabs(demand(oxidant, 0, 1, 0) - perManganese * mass / Mn) < 1e-12);
        QVERIFY(std::fabs(demand(oxidant, 0, 0, 1, toSulfur) - toS * mass / H2S) < 1e-12);
        QVERIFY(std::fabs(demand(oxidant, 0, 0, 1, toSulfate) - toSO4 * mass / H2S) < 1e-12);
        const double least = demand(oxidant, 0, 0, 1, toSulfur), between = demand(oxidant, 0, 0, 1),
                     most = demand(oxidant, 0, 0, 1, toSulfate);
        QVERIFY(least < between && between < most);
        QVERIFY(std::fabs(between / (toS * mass / H2S) - 3.0 * H2S / Cl2) <
                1e-12); // the same electrons as 3 mg of Cl2
    }

    void published()
    {
        const char *design = "Water Treatment Plant Design, table 10.7";
        const char *trade = "oxidant tables in trade texts";
        holds(oxidation(),
              {{design, "oxidant_demand", {oxygen, 1, 0, 0}, 0.14, 0.03},
               {design, "oxidant_demand", {chlorine, 1, 0, 0}, 0.64, 0.01},
               {design, "oxidant_demand", {permanganate, 1, 0, 0}, 0.94, 0.01},
               {design, "oxidant_demand", {chlorineDioxide, 1, 0, 0}, 1.21, 0.01},
               {trade, "oxidant_demand", {chlorine, 0, 1, 0}, 1.29, 0.01},
               {trade, "oxidant_demand", {oxygen, 0, 1, 0}, 0.29, 0.01},
               {trade, "oxidant_demand", {chlorine, 0, 0, 1, toSulfate}, 8.33, 0.01},
               {"recalled, not confirmed", "oxidant_demand", {ozone, 1, 0, 0}, 0.43, 0.01},
               {"recalled, not confirmed", "oxidant_demand", {permanganate, 0, 1, 0}, 1.92, 0.01},
               {design, "alkalinity_consumed", {oxygen, 1, 0, 0}, 1.80, 0.01},
               {design, "alkalinity_consumed", {permanganate, 1, 0, 0}, 1.50, 0.01},
               {design, "alkalinity_consumed", {chlorineDioxide, 1, 0, 0}, 2.70, 0.01},
               {design, "solids_made", {1, 0, 0}, 1.9, 0.01},
               {"the same table, with the dioxide of its permanganate",
                "solids_made",
                {1, 0, 0, 0.9433},
                2.43,
                0.01},
               {"rules-of-thumb chapter, oreilly.com 9781439853320 ch. 40",
                "ammonia_chlorine_demand",
                {1},
                7.6,
                0.002}});
    }

    void wholeWaters()
    {
        const char *w = "worked out from atomic weights";
        holds(oxidation(),
              {{w, "oxidant_demand", {chlorine, 2.4, 0.12, 0}, 1.67837, 1e-5},
               {w, "oxidant_demand", {chlorine, 0.8, 0.08, 2.5, toSulfur}, 5.81269, 1e-5},
               {w, "oxidant_demand", {chlorine, 0.8, 0.08, 2.5, toSulfate}, 21.4175, 1e-5},
               {w, "oxidant_demand", {permanganate, 6, 0.5, 0}, 6.61853, 1e-6},
               {"peroxide leaves manganese",
                "oxidant_demand",
                {peroxide, 0.8, 0.08, 2.5, toSulfur},
                2.7391,
                1e-4},
               {"3 mg of chlorine a mg of sulfide: common practice, no source",
                "oxidant_demand",
                {chlorine, 0, 0, 2},
                6,
                1e-12},
               {w, "alkalinity_consumed", {chlorine, 6, 0.5, 0}, 11.6642, 1e-5},
               {"permanganate gives alkalinity back for sulfide",
                "alkalinity_consumed",
                {permanganate, 0, 0, 1},
                -CaCO3 / 2 * (2.0 / 3) / H2S,
                1e-12},
               {w, "solids_made", {2.4, 0.12, 0}, 4.78258, 1e-5},
               {"weights recalled, not confirmed", "iron_equivalents", {1.5, 0.5, 0.5}, 5, 1e-12},
               {w, "permanganate_days", {1.5, 400, 3.4, 250}, 12.083, 1e-4},
               {w, "permanganate_days", {2, 300, 5, 300}, 6.847, 1e-4},
               {w, "permanganate_charge", {1.5, 2}, 0.1875, 1e-12},
               {w, "ozone_output", {1, 1, 1}, 0.2271247, 1e-6}});
        QVERIFY(oxidation().call("oxidant_demand", {peroxide, 1, 0.1, 0}).warns("manganese_left"));
        QVERIFY(!oxidation().call("oxidant_demand", {peroxide, 1, 0, 0}).warns("manganese_left"));
        QVERIFY(oxidation().call("ozone_output", {7, 2.4, 0.5}).warns("beyond_household"));
    }

    void tradeWeights()
    {
        const char *habit = "common practice, no source: 1, 2 and 3 mg of chlorine a mg";
        const char *training = "operator training pages";
        holds(oxidation(),
              {{habit, "usual_chlorine_dose", {3, 0.2, 1}, 6.4, 1e-12},
               {"recalled: 1 and 2 mg of permanganate a mg", "usual_permanganate_dose", {3, 0.5}, 4, 1e-12},
               {training, "chlorine_residual", {4, 3.7}, 0.3, 1e-9},
               {training, "chlorine_residual", {7.2, 5.7}, 1.5, 1e-9}});
        // a margin on sulfide to sulfur is the usual 3 mg a mg; on the usual it would be counted twice
        const double toSulfurDose =
            oxidation().call("oxidant_dose", {chlorine, demand(chlorine, 0, 0, 1, toSulfur)}).number;
        QVERIFY(std::fabs(toSulfurDose / 3.0 - 1) < 0.05);
        // usual is never below what chemistry takes to sulfur, and less than twice it for the metals
        for (double iron = 0; iron <= 9; iron += 1.5)
            for (double manganese = 0; manganese <= 2; manganese += 0.5) {
                const double usualDose = oxidation().call("usual_chlorine_dose", {iron, manganese, 0}).number;
                const double least = demand(chlorine, iron, manganese, 0);
                QVERIFY(least <= usualDose && usualDose <= 2 * least);
                QVERIFY(oxidation().call("usual_permanganate_dose", {iron, manganese}).number >=
                        demand(permanganate, iron, manganese, 0));
            }
        QVERIFY(oxidation().call("chlorine_residual", {5, 2, 3.8}).warns("combined"));
        QVERIFY(oxidation().call("chlorine_residual", {2, 3}).warns("used_up"));
        QVERIFY(!oxidation().call("chlorine_residual", {7, 3}).warns("strong"));
        QVERIFY(oxidation().call("chlorine_residual", {7.1, 3}).warns("strong"));
    }

    /// The dose turned round is the residual.
    void doseAndResidual()
    {
        for (double need = 0; need <= 8; need += 0.5)
            for (double wanted = 0; wanted <= 3; wanted += 0.5) {
                const double dose = oxidation().call("oxidant_dose", {chlorine, need, 1, wanted}).number;
                QVERIFY(std::fabs(oxidation().call("chlorine_residual", {dose, need}).number - wanted) <
                        1e-12);
            }
    }

    void otherTakers()
    {
        const double As = 74.921595, N = 14.007; // IUPAC 2021
        const char *w = "balanced equation, IUPAC 2021";
        holds(oxidation(),
              {{w, "arsenic_oxidant_demand", {chlorine, 1}, Cl2 / As, 1e-12},
               {w, "arsenic_oxidant_demand", {permanganate, 1}, 2.0 / 3 * KMnO4 / As, 1e-12},
               {w, "arsenic_oxidant_demand", {ozone, 1}, O3 / As, 1e-12},
               {w, "nitrite_chlorine_demand", {1}, Cl2 / N, 1e-12},
               {"3 H2S + 2 KMnO4", "permanganate_sulfide_demand", {1, 0}, 2.0 / 3 * KMnO4 / H2S, 1e-12},
               {"3 H2S + 4 KMnO4", "permanganate_sulfide_demand", {1, 1}, 4.0 / 3 * KMnO4 / H2S, 1e-12},
               {"6.2 mg a mg, recalled", "permanganate_sulfide_demand", {1, 1}, 6.2, 3e-3},
               {"3 H2S + 8 KMnO4", "permanganate_sulfide_demand", {1, 2}, 8.0 / 3 * KMnO4 / H2S, 1e-12},
               {"2 Fe + MnO2", "manganese_released_by_iron", {1}, Mn / (2 * Fe), 1e-12},
               {"22.81 lb a year, worked out", "permanganate_per_year", {0.1875, 3}, 22.8125, 1e-12}});
        // the two end points agree with the general demand
        for (double sulfide = 0.5; sulfide <= 5; sulfide += 0.5) {
            QVERIFY(std::fabs(oxidation().call("permanganate_sulfide_demand", {sulfide, 0}).number -
                              demand(permanganate, 0, 0, sulfide, toSulfur)) < 1e-12);
            QVERIFY(std::fabs(oxidation().call("permanganate_sulfide_demand", {sulfide, 2}).number -
                              demand(permanganate, 0, 0, sulfide, toSulfate)) < 1e-12);
        }
        QVERIFY(oxidation().call("arsenic_oxidant_demand", {oxygen, 0.1}).warns("slow"));
        QVERIFY(!oxidation().call("arsenic_oxidant_demand", {chlorine, 0.1}).warns("slow"));
    }

    void tables()
    {
        const char *iwa = "IWA Publishing table, 4 to 7 degC";
        holds(oxidation(), {{iwa, "coated_bed_manganese", {5.9}, 126, 1e-12},
                            {iwa, "coated_bed_manganese", {6.0}, 63, 1e-12},
                            {iwa, "coated_bed_manganese", {6.5}, 39, 1e-12},
                            {iwa, "coated_bed_manganese", {7.0}, 25, 1e-12},
                            {"Wis. Admin. Code NR 811.52", "usual_oxidation_time", {0}, 30, 1e-12},
                            {"2 to 5 min that count: common practice", "usual_oxidation_time", {1}, 5, 1e-12},
                            {"study of permanganate: 15 min best", "usual_oxidation_time", {6}, 15, 1e-12}});
        QVERIFY(oxidation().call("coated_bed_manganese", {7.6}).warns("extrapolated"));
        QVERIFY(oxidation().call("usual_oxidation_time", {7}).warns("hours"));
        QVERIFY(!oxidation().call("usual_oxidation_time", {0}).warns("hours"));
        QVERIFY(!oxidation().call("usual_oxidation_time", {5}).reason.empty());
    }

    void moreNeverLowersADemand()
    {
        for (int oxidant = chlorine; oxidant <= chlorineDioxide; ++oxidant)
            for (int end = usual; end <= toSulfate; ++end)
                for (double x = 0; x <= 10; x += 0.5) {
                    QVERIFY(demand(oxidant, x + 0.5, 1, 1, end) > demand(oxidant, x, 1, 1, end));
                    QVERIFY(demand(oxidant, 1, x + 0.5, 1, end) >= demand(oxidant, 1, x, 1, end));
                    QVERIFY(demand(oxidant, 1, 1, x + 0.5, end) > demand(oxidant, 1, 1, x, end));
                }
    }

    void refuses()
    {
        const Answer answer = oxidation().call("permanganate_days", {1.5, 400, 0, 250});
        QVERIFY(answer.refused);
        QCOMPARE(answer.refusedArgument, 3u);
        QCOMPARE(
            answer.words,
            std::string("there is no iron to use up the charge: leave the regeneration to the calendar"));
    }
};

QTEST_APPLESS_MAIN(OxidationTest)
#include "oxidation_test.moc"
