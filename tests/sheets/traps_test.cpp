/// What beginners get wrong, each tried as a formula: it is refused with what to write, or a caution says it,
/// or the right figure and the wrong one stand apart as far as they should.
#include <QTest>

#include "session/session.h"

using namespace puteal;

namespace
{

enum class Says { refuses, cautions, shows };
struct Trap {
    const char *trap, *formula;
    Says how;
    const char *words; ///< whole for a refusal and a value; a part that must stand there for a caution
};

const Trap rows[] = {
    // substances and bases
    {"as iron, not as hydroxide", "3 mg/L as Fe + 5 mg/L as FeOH3", Says::refuses,
     "cannot add 3 mg/L as Fe and 5 mg/L as FeOH3: different substances; for the amount of the element use "
     "as_element(5 mg/L as FeOH3)"},
    {"as iron, not as calcium carbonate", "10 gpg + 3 mg/L as Fe", Says::refuses,
     "cannot add 10 gpg (as CaCO3) and 3 mg/L as Fe: different substances; for a softener setting use "
     "compensated_hardness(10 gpg, 3 mg/L as Fe); for the same amount as CaCO3 use as_caco3(3 mg/L as Fe)"},
    {"nitrate as nitrogen and as nitrate", "10 mg/L as N + 44 mg/L as NO3", Says::refuses,
     "cannot add 10 mg/L as N and 44 mg/L as NO3: different substances; for the amount of the element use "
     "as_element(44 mg/L as NO3)"},
    {"44 as nitrate is 10 as nitrogen", "as_element(44.2664 mg/L as NO3) -> mg/L as N", Says::shows,
     "10.0 mg/L as N"},
    {"sulfide as sulfur and as hydrogen sulfide", "1 mg/L as S + 1 mg/L as H2S", Says::refuses,
     "cannot add 1 mg/L as S and 1 mg/L as H2S: different substances; for the amount of the element use "
     "as_element(1 mg/L as H2S)"},
    {"alkalinity as bicarbonate", "250 mg/L as HCO3 + 200 mg/L as CaCO3", Says::refuses,
     "cannot add 250 mg/L as HCO3 and 200 mg/L as CaCO3: different substances; for the same amount as CaCO3 "
     "use as_caco3(250 mg/L as HCO3)"},
    {"permanganate and its manganese", "2 mg/L as KMnO4 + 1 mg/L as Mn", Says::refuses,
     "cannot add 2 mg/L as KMnO4 and 1 mg/L as Mn: different substances; for the amount of the element use "
     "as_element(2 mg/L as KMnO4)"},
    {"a limit in another basis", "44 mg/L as NO3 <= 10 mg/L as N", Says::refuses,
     "cannot compare 44 mg/L as NO3 and 10 mg/L as N: different substances; for the amount of the element "
     "use "
     "as_element(44 mg/L as NO3)"},
    // strengths
    {"a label of 12.5 as trade percent", "hypochlorite_strength(12.5 %, \"trade percent\")", Says::shows,
     "125000 mg/L as Cl2"},
    {"the same label as weight percent", "hypochlorite_strength(12.5 %, \"weight percent as NaOCl\", 1.19)",
     Says::shows, "142000 mg/L as Cl2"},
    {"35 % peroxide is not 350,000 mg/L", "peroxide_strength(35 %, 1131.2 g/L)", Says::shows,
     "396000 mg/L as H2O2"},
    {"percent without its sign", "hypochlorite_strength(12.5, \"trade percent\")", Says::refuses,
     "`strength` must be at most 0.25; it is 12.5: for 12.5 percent write 12.5 %"},
    {"a share without its sign", "contact_volume(5 min, 8 gpm, 30)", Says::refuses,
     "`baffling` must be at most 1; it is 30: for 30 percent write 30 %"},
    {"percent of a label where an amount is asked for",
     "shock_chlorination_dose(220 gal, 100 mg/L as Cl2, 5.25 %)", Says::refuses,
     "shock_chlorination_dose takes strength in mg/L as Cl2, not 5.25 %: 5.25 % is a share, work out the "
     "amount it stands for; for bleach by volume write 5.25 trade_pct"},
    {"percent of oxygen where its pressure is asked for", "iron_half_life(7, 10 degC, 21 %)", Says::refuses,
     "iron_half_life takes oxygen_pressure in atm_abs, not 21 %: 21 % is a share, work out the amount it "
     "stands for"},
    {"sulfide told as sulfur", "oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as S)",
     Says::refuses,
     "oxidant_demand takes sulfide in mg/L as H2S, not 1 mg/L as S; for the whole compound use "
     "sulfur_as(\"hydrogen sulfide\", 1 mg/L as S)"},
    {"nitrogen told as a limit in nitrate", "10 mg/L as N -> mg/L as NO3", Says::refuses,
     "cannot show 10 mg/L as N in mg/L as NO3; for the whole compound use nitrogen_as(\"nitrate\", 10 mg/L "
     "as N)"},
    {"a third of permanganate is manganese", "as_element(3 mg/L as KMnO4)", Says::shows, "1.04 mg/L as Mn"},
    // gallons, grains, minutes
    {"the gallon of another country", "100 gal_imp -> gal", Says::shows, "120 gal"},
    {"the grain of another gallon", "10 gpg -> clark", Says::shows, "12.0 clark"},
    {"a feeder sized by the use of a day", "feed_rate(240 gal/day, 5 mg/L as Cl2, 5250 mg/L as Cl2)",
     Says::cautions, "`flow` is usually at least 1 gpm"},
    {"a solution tank by the pump's flow", "solution_days(15 gal, 8 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)",
     Says::cautions, "`use` is usually at most 1000 gal/day"},
    {"gallons at 1 mg/L are a mass", "26000 gal * 1 mg/L -> gal", Says::refuses,
     "cannot show `26000 gal * 1 mg/L` (lb) in gal"},
    {"less iron does not stretch a label",
     "cartridge_days(30000 gal/cartridge, 1 mg/L as Fe, 0.3 mg/L as Fe, 200 gal/day)", Says::shows,
     "150 day/cartridge"},
    // softener
    {"salt of a foot and of a tank", "8 lb/ft^3 as NaCl + 12 lb as NaCl", Says::refuses,
     "cannot add 8 lb/ft^3 as NaCl and 12 lb as NaCl: their units do not fit"},
    {"capacity of a foot and of a tank",
     "days_between_regenerations(24000 grain/ft^3 as CaCO3, 300 gal/day, 15 gpg)", Says::refuses,
     "days_between_regenerations takes capacity in grain as CaCO3, not 24000 grain/ft^3 as CaCO3"},
    {"30,000 grain a foot at 8 lb", "salt_efficiency(30000 grain/ft^3 as CaCO3, 4 lb/ft^3 as NaCl)",
     Says::refuses,
     "no resin takes out more than 5,994 grain of hardness for a pound of salt; check the capacity and the "
     "salt dose"},
    {"the true load counts a twentieth of the setting",
     "(compensated_hardness(0 gpg, 1 mg/L as Fe) / exchange_load(0 gpg, 1 mg/L as Fe))", Says::shows, "47.8"},
    {"no days of a bed without a reserve left",
     "days_between_regenerations(30000 grain as CaCO3, 300 gal/day, 15 gpg, 30000 grain as CaCO3)",
     Says::refuses, "the reserve takes up the whole capacity: lower the reserve or raise the capacity"},
    // flow, pressure, temperature
    {"velocity and flow for a volume", "3 gpm/ft^2 + 3 gpm/ft^3", Says::refuses,
     "cannot add 3 gpm/ft^2 and 3 gpm/ft^3: their units do not fit"},
    {"a flow where a loading is asked for", "backwash_flow(bed_area(10 in), 10 gpm)", Says::refuses,
     "backwash_flow takes rate in gpm/ft^2, not 10 gpm"},
    {"gauge pressure in a gas law", "iron_half_life(7, 10 degC, 40 psi)", Says::refuses,
     "iron_half_life takes oxygen_pressure in atm_abs, not 40 psi; 40 psi is measured against the air: use "
     "absolute(40 psi, air)"},
    {"absolute pressure where the gauge is asked for", "air_pocket_volume(6 gal, 54.7 psi_abs)",
     Says::refuses,
     "air_pocket_volume takes pressure in psi, not 54.7 psi_abs; 54.7 psi_abs is an absolute pressure: use "
     "gauge(54.7 psi_abs, air)"},
    {"a temperature as a difference", "10 degF + 5 degF", Says::refuses,
     "cannot add 10 degF and 5 degF: both are temperatures; for a difference write 5 delta_degF"},
    {"a temperature multiplied", "68 degF * 1.8", Says::refuses,
     "cannot multiply 68 degF: a temperature is a reading on a scale; subtract another temperature first"},
    {"a book's half-life for a cold well",
     "iron_half_life(7, 10 degC, 0.2069 atm_abs) / iron_half_life(7, 25 degC, 0.2029 atm_abs)", Says::shows,
     "11.7"},
    {"a constant of 25 degC in a cold well", "iron_half_life(7, 10 degC, 0.2069 atm_abs, \"USGS example 9\")",
     Says::cautions, "used at 25 degC in its source"},
    // oxidants
    {"sulfide to sulfur leaves a haze",
     "oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfur\")", Says::cautions,
     "milky haze"},
    {"sulfide to sulfate takes four times as much",
     "oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfate\") / "
     "oxidant_demand(\"chlorine\", 0 mg/L as Fe, 0 mg/L as Mn, 1 mg/L as H2S, \"to sulfur\")",
     Says::shows, "4.00"},
    {"gas is no bleach",
     "alkalinity_consumed(\"chlorine gas\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S) / "
     "alkalinity_consumed(\"chlorine\", 1 mg/L as Fe, 0 mg/L as Mn, 0 mg/L as H2S)",
     Says::shows, "1.50"},
    {"a dose below the demand", "oxidant_dose(\"chlorine\", 2 mg/L as Cl2, 0.8)", Says::refuses,
     "`multiplier` must be at least 1; it is 0.8"},
    {"ammonia unseen", "ammonia_chlorine_demand(1 mg/L as N)", Says::shows, "7.59 mg/L as Cl2"},
    {"peroxide against manganese",
     "oxidant_demand(\"peroxide\", 1 mg/L as Fe, 0.5 mg/L as Mn, 0 mg/L as H2S)", Says::cautions,
     "peroxide does not take manganese out"},
    {"iron alone brings manganese out of a bed", "manganese_released_by_iron(1 mg/L as Fe)", Says::shows,
     "0.492 mg/L as Mn"},
    // contact, indices, readings
    {"nominal time for time that counts", "contact_time(120 gal, 10 gpm)", Says::shows, "3.60 min"},
    {"the index of a softened water",
     "langelier_index(7.6, 25 degC, 500 mg/L as TDS, 0 mg/L as CaCO3, 120 mg/L as CaCO3)", Says::refuses,
     "without calcium hardness there is no index: use the water ahead of the softener"},
    {"the factor of a pen", "dissolved_solids_estimate(500 uS/cm, 0.5 (mg/L)/(uS/cm))", Says::cautions,
     "`factor` is usually at least 0.55"},
    {"a sample that met air", "air_entry_suspected(4 mg/L as O2, 3 mg/L as Fe)", Says::shows, "yes"},
    {"a decimal comma among arguments", "feed_rate(10 gpm, 2,5 mg/L, 5250 mg/L)", Says::refuses,
     "a decimal is written with a point: write 2.5"},
    {"not detected inside a formula", "oxidant_demand(\"chlorine\", ND, 0, 0)", Says::refuses,
     "a reading of ND stands alone in a cell, as in ND 0.05 mg/L: name that cell and write its name here"},
    {"less than inside a formula", "oxidant_demand(\"chlorine\", <0.05 mg/L, 0, 0)", Says::refuses,
     "a reading of a bound stands alone in a cell: name that cell and write its name here"},
    {"sulfide told as sulfur takes more chlorine",
     "oxidant_demand(\"chlorine\", 0 mg/L, 0 mg/L, sulfur_as(\"hydrogen sulfide\", 1 mg/L as S), \"to "
     "sulfate\")",
     Says::shows, "8.85 mg/L as Cl2"},
    {"a tank sized by the day's use", "contact_tank_size(480 gal/day, yes)", Says::cautions,
     "`peak_flow` is usually at least 1 gpm"},
    {"a strength typed for another unit", "feed_rate(10 gpm, 5 mg/L as Cl2, 52.5 mg/L as Cl2)",
     Says::cautions, "more than 2 % of the flow would be solution"},
    {"percents by weight mixed by volume", "stock_volume(5 gal, 7 %, 35 %)", Says::cautions,
     "for a percent by weight use diluted_volume"},
    {"a decimal comma", "1,5 mg/L + 1 mg/L", Says::refuses, "a decimal is written with a point: write 1.5"},
    {"iron where the hardness goes", "compensated_hardness(3 mg/L as Fe, 10 gpg)", Says::refuses,
     "compensated_hardness takes hardness in gpg as CaCO3, not 3 mg/L as Fe"},
};

} // namespace

class TrapsTest : public QObject
{
    Q_OBJECT
private slots:
    void traps_data()
    {
        QTest::addColumn<int>("row");
        for (int i = 0; i < int(std::size(rows)); ++i)
            QTest::newRow(rows[i].trap) << i;
    }
    void traps()
    {
        QFETCH(int, row);
        const Trap &trap = rows[row];
        static const auto session = Session::createNew();
        const CellAt at{0, 1, 0};
        QVERIFY(session->apply(SetText{at, trap.formula}));
        const CellView view = session->view(at);
        if (trap.how == Says::refuses) {
            QVERIFY2(view.error, view.shown.c_str());
            QCOMPARE(QString::fromStdString(view.error->words), QString(trap.words));
            return;
        }
        QVERIFY2(!view.error, view.error ? view.error->words.c_str() : "");
        if (trap.how == Says::shows) {
            QCOMPARE(QString::fromStdString(view.shown), QString(trap.words));
            return;
        }
        QString cautions;
        for (const std::string &caution : view.cautions)
            cautions += QString::fromStdString(caution) + '\n';
        QVERIFY2(cautions.contains(trap.words), qPrintable(cautions));
    }

    /// A blank and a reading below its bound are no zero.
    void blankAndBelowAreNoZero()
    {
        auto opened = Session::fromText("puteal workbook 1\nsheet water \"Water\"\n"
                                        "column item words \"Item\" 20\ncolumn amount amounts \"Amount\" 20\n"
                                        "line\nat amount\n  name iron\n  unit mg/L as Fe\n"
                                        "line\namount: <0.05 mg/L as Mn\n  name manganese\n"
                                        "line\nend water 3\nend workbook\n");
        QVERIFY(opened);
        const auto &session = *opened;
        const CellAt formula{0, 1, 2};
        QVERIFY(session->apply(SetText{formula, "iron + 1 mg/L as Fe"}));
        QVERIFY(session->view(formula).error);
        QVERIFY(session->apply(SetText{formula, "known(iron)"}));
        QCOMPARE(QString::fromStdString(session->view(formula).shown), QString("no"));
        // below the bound, so below any higher limit; a lower one waits for a finer test
        QVERIFY(session->apply(SetText{formula, "manganese <= 0.1 mg/L as Mn"}));
        QCOMPARE(QString::fromStdString(session->view(formula).shown), QString("yes"));
        QVERIFY(session->apply(SetText{formula, "manganese <= 0.02 mg/L as Mn"}));
        QVERIFY(session->view(formula).error);
    }
};

QTEST_APPLESS_MAIN(TrapsTest)
#include "traps_test.moc"
