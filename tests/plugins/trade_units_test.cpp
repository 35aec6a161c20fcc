/// Calculations of the trade, through the formula path, against the same ones done by GNU units.
#include <QProcess>
#include <QStandardPaths>
#include <QTest>

#include "session/session.h"

namespace
{

/// A calculation of the trade as this program writes it, and as GNU units does.
struct Trade {
    const char *ours, *theirs, *unit;
    double tolerance = 1e-12;
};
const Trade trades[] = {
    {"8 gpm * 5 mg/L -> lb/day", "8 (gal/min) 5 mg/L", "lb/day"},
    {"0.36 Mgal * 10 mg/L -> lb", "0.36e6 gal 10 mg/L", "lb"},
    {"694.4 gpm * 1 mg/L -> lb/day", "694.4 (gal/min) mg/L", "lb/day"},
    {"250 mg/L as CaCO3 -> gpg", "250 mg/L", "grain/gal"},
    {"10 gpg -> clark", "10 grain/gal", "grain/brgallon"},
    {"7 gpm/ft^2 -> m/hr", "7 (gal/min)/ft^2", "m/hr"},
    {"62.5 gal/(person*day) * 4 person * 1 yr -> m^3", "62.5 (gal/day) 4 365 day", "m^3"},
    {"feed_rate(10 gpm, 5 mg/L as Cl2, 5250 mg/L as Cl2)", "10 (gal/min) 5/5250", "gal/day"},
    {"stock_volume(15 gal, 5000 mg/L as Cl2, 82500 mg/L as Cl2)", "15 gal 5000/82500", "gal"},
    {"solution_days(15 gal, 250 gal/day, 8 mg/L as H2O2, 70000 mg/L as H2O2)",
     "15 gal 70000/(250 (gal/day) 8)", "day"},
    {"contact_volume(5 min, 8 gpm, 0.3)", "5 min 8 (gal/min)/0.3", "gal"},
    {"bed_iron_load(3 mg/L as Fe, 900 gal, bed_area(10 in))", "3 (mg/L) 900 gal/((pi/4) (10 in)^2)",
     "grain/ft^2"},
    {"backwash_flow(bed_area(12 in), 12 gpm/ft^2)", "(pi/4) (12 in)^2 12 (gal/min)/ft^2", "gal/min"},
    {"empty_bed_contact_time(1.5 ft^3, 5 gpm)", "1.5 ft^3/(5 gal/min)", "min"},
    {"cartridge_days_by_iron(150 g/cartridge as Fe, 2 mg/L as Fe, 250 gal/day)",
     "150 g/(2 (mg/L) 250 gal/day)", "day"},
    {"rating_iron_capacity(26000 gal/cartridge, 1 mg/L as Fe)", "26000 gal mg/L", "g"},
    {"permanganate_days(1.5 ft^3, 400 grain/ft^3 as Fe, 3.4 mg/L as Fe, 250 gal/day)",
     "1.5 ft^3 400 (grain/ft^3)/(3.4 (mg/L) 250 gal/day)", "day"},
    {"permanganate_charge(1.5 ft^3, 2 oz/ft^3 as KMnO4)", "1.5 ft^3 2 oz/ft^3", "lb"},
    {"ozone_output(7 gpm, 2.4 mg/L as O3, 0.5)", "7 (gal/min) 2.4 (mg/L)/0.5", "g/hr"},
    {"salt_per_year(12 lb/event as NaCl, 4 day/event)", "12 lb/(4 day)", "kg/(365 day)"},
    {"days_between_regenerations(36000 grain as CaCO3, 300 gal/day, 25 gpg, 7500 grain as CaCO3)",
     "(36000 - 7500) grain/(300 (gal/day) 25 grain/gal)", "day"},
    {"bore_storage(6 in, 150 ft)", "(pi/4) (6 in)^2 150 ft", "gal"},
    {"recovery_rate(20 ft, 12 min, 6 in)", "(pi/4) (6 in)^2 20 ft/(12 min)", "gal/min"},
    {"bucket_flow(5 gal, 37 s)", "5 gal/(37 s)", "gal/min"},
    {"air_pocket_oxygen(6 gal, 10 degC, 14.696 psi_abs)",
     "0.20946 31.998 (g/mol) 14.696 psi 6 gal/(R tempC(10))", "g", 1e-8},
    {"sodium_added(20 gpg)", "20 (grain/gal) 2 22.98976928/100.086", "mg/L", 1e-6},
    {"calcite_per_year(40 mg/L as CO2, 250 gal/day)", "40 (mg/L) 250 (gal/day) 100.086/44.009",
     "lb/(365 day)", 1e-9},
};

QString run(const QString &program, const QStringList &arguments)
{
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished();
    return QString::fromUtf8(process.readAllStandardOutput()).trimmed();
}

} // namespace

class TradeUnitsTest : public QObject
{
    Q_OBJECT

private slots:
    void tradeAgainstGnuUnits_data()
    {
        QTest::addColumn<int>("row");
        for (int i = 0; i < int(std::size(trades)); ++i)
            QTest::newRow(trades[i].ours) << i;
    }
    void tradeAgainstGnuUnits()
    {
        const QString units = QStandardPaths::findExecutable("units");
        if (units.isEmpty())
            QSKIP("GNU units is not installed");
        QFETCH(int, row);
        const Trade &trade = trades[row];
        bool good = false;
        const double theirs =
            run(units, {"-1", "-t", "--digits", "15", trade.theirs, trade.unit}).toDouble(&good);
        QVERIFY2(good, trade.theirs);
        static const auto session =
            puteal::Session::createNew({{}, {std::string(PUTEAL_BUILD_DIR) + "/lib/puteal/plugins"}});
        const puteal::CellAt at{0, 1, 0};
        // shown in the unit that GNU units was asked for
        std::string unit = trade.unit;
        for (const auto &[theirWord, ourWord] :
             {std::pair("grain/gal", "gpg"), std::pair("grain/brgallon", "clark"),
              std::pair("gal/min", "gpm"), std::pair("lb/(365 day)", "lb/yr"),
              std::pair("kg/(365 day)", "kg/yr")})
            if (unit == theirWord)
                unit = ourWord;
        QVERIFY(session->apply(puteal::SetText{at, trade.ours}));
        const puteal::CellView view = session->view(at);
        QVERIFY2(!view.error, view.error ? view.error->words.c_str() : "");
        const auto read = puteal::readUnit(unit, session->program().units());
        QVERIFY2(read, unit.c_str());
        const double ours = read->fromBase(view.number);
        QVERIFY2(std::fabs(ours / theirs - 1) < trade.tolerance,
                 qPrintable(QString("%1, not %2").arg(ours, 0, 'g', 15).arg(theirs, 0, 'g', 15)));
    }
};

QTEST_APPLESS_MAIN(TradeUnitsTest)
#include "trade_units_test.moc"
