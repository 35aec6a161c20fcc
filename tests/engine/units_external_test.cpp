/// Every unit word against GNU units and udunits2 where their meanings agree, and a list of the words where
/// they do not.
#include <QLibrary>
#include <QProcess>
#include <QStandardPaths>
#include <QTest>

#include <cmath>
#include <set>

#include "units/unit.h"

using namespace puteal;

namespace
{

constexpr double sameMeaning = 2e-14; // GNU units prints 15 figures
constexpr double sameDefinition = 1e-12;
constexpr double rounded7 = 5e-7; // udunits2 stores some NIST factors rounded to seven figures
constexpr double differentFoot =
    7e-6; // survey foot (three of them in an acre-foot) against international foot

struct Row {
    const char *word, *gnu, *udunits; ///< "" = listed below with the reason
    double udunitsTolerance = sameDefinition;
};

const Row rows[] = {
    {"m", "m", "m"},
    {"km", "km", "km"},
    {"dm", "dm", "dm"},
    {"cm", "cm", "cm"},
    {"mm", "mm", "mm"},
    {"um", "um", "um"},
    {"micron", "micron", "micron"},
    {"nm", "nm", "nm"},
    {"in", "in", "in"},
    {"mil", "mil", "mil"},
    {"ft", "ft", "international_foot"},
    {"yd", "yd", "international_yard"},
    {"mi", "mi", "international_mile"},
    {"acre", "acre", "acre", differentFoot},
    {"ha", "hectare", "hectare"},
    {"L", "L", "L"},
    {"mL", "mL", "mL"},
    {"uL", "uL", "uL"},
    {"dL", "dL", "dL"},
    {"gal", "gal", "US_liquid_gallon", rounded7},
    {"qt", "quart", "US_liquid_quart", rounded7},
    {"pt", "pint", "US_liquid_pint", rounded7},
    {"cup", "cup", "US_liquid_cup", rounded7},
    {"fl_oz", "floz", "US_fluid_ounce", rounded7},
    {"tbsp", "tbsp", "tablespoon", rounded7},
    {"tsp", "tsp", "tablespoon/3", rounded7},
    {"kgal", "1000 gal", "1000 US_liquid_gallon", rounded7},
    {"Mgal", "1e6 gal", "1e6 US_liquid_gallon", rounded7},
    {"gal_imp", "brgallon", "UK_liquid_gallon", rounded7},
    {"qt_imp", "brquart", "UK_liquid_quart", rounded7},
    {"pt_imp", "brpint", "UK_liquid_pint", rounded7},
    {"fl_oz_imp", "brfloz", "UK_fluid_ounce", rounded7},
    {"acre_ft", "acrefoot", "acre_foot", differentFoot},
    {"gpm", "gal/min", "US_liquid_gallon/min", rounded7},
    {"gph", "gal/hr", "US_liquid_gallon/hr", rounded7},
    {"gpd", "gal/day", "US_liquid_gallon/day", rounded7},
    {"mgd", "1e6 gal/day", "1e6 US_liquid_gallon/day", rounded7},
    {"gpm_imp", "brgallon/min", "UK_liquid_gallon/min", rounded7},
    {"cfm", "ft^3/min", "international_foot^3/min"},
    {"cfs", "ft^3/s", "international_foot^3/s"},
    {"Lpm", "L/min", "L/min"},

    {"kg", "kg", "kg"},
    {"g", "g", "g"},
    {"mg", "mg", "mg"},
    {"ug", "ug", "ug"},
    {"ng", "ng", "ng"},
    {"lb", "lb", "lb"},
    {"oz", "oz", "avoirdupois_ounce", rounded7},
    {"grain", "grain", "grain"},
    {"kgr", "1000 grain", "1000 grain"},
    {"ton", "ton", "short_ton"},
    {"ton_metric", "tonne", "tonne"},
    {"s", "s", "s"},
    {"ms", "ms", "ms"},
    {"min", "min", "min"},
    {"hr", "hr", "hr"},
    {"day", "day", "day"},
    {"week", "week", "7 day"},
    {"month", "365 day/12", "common_year/12"},
    {"yr", "365 day", "common_year"},
    {"mol", "mol", "mol"},
    {"mmol", "mmol", "mmol"},
    {"umol", "umol", "umol"},
    {"nmol", "nmol", "nmol"},
    {"$", "US$", ""},
    {"%", "percent", "percent"},
    {"gpg", "grain/gal", "grain/US_liquid_gallon", rounded7},
    {"clark", "grain/brgallon", "grain/UK_liquid_gallon", rounded7},

    {"Pa", "Pa", "Pa"},
    {"kPa", "kPa", "kPa"},
    {"MPa", "MPa", "MPa"},
    {"bar", "bar", "bar"},
    {"mbar", "mbar", "mbar"},
    {"psi", "psi", "psi", rounded7},
    {"atm", "atm", "atm"},
    {"ft_head", "ft water", "foot_water", rounded7},
    {"in_head", "inch water", "inch water", rounded7},
    {"mH2O", "m water", "m water", rounded7},
    {"cmH2O", "cm water", "cm water", rounded7},
    {"inHg", "inch Hg", "inHg", rounded7},
    {"mmHg", "mmHg", "mmHg", rounded7},
    {"torr", "torr", "torr", rounded7},
    {"Pa_abs", "Pa", "Pa"},
    {"kPa_abs", "kPa", "kPa"},
    {"bar_abs", "bar", "bar"},
    {"mbar_abs", "mbar", "mbar"},
    {"psi_abs", "psi", "psi", rounded7},
    {"atm_abs", "atm", "atm"},
    {"inHg_abs", "inch Hg", "inHg", rounded7},
    {"mmHg_abs", "mmHg", "mmHg", rounded7},
    {"delta_K", "K", "K"},
    {"delta_degC", "degC", "K"},
    {"delta_degF", "degF", "5/9 K"},
    {"J", "J", "J"},
    {"kJ", "kJ", "kJ"},
    {"MJ", "MJ", "MJ"},
    {"Wh", "W hr", "watt hour"},
    {"kWh", "kWh", "kilowatt hour"},
    {"BTU", "btu", "IT_Btu", rounded7},
    {"W", "W", "W"},
    {"mW", "mW", "mW"},
    {"kW", "kW", "kW"},
    {"hp", "hp", "horsepower", rounded7},
    {"N", "N", "N"},
    {"kN", "kN", "kN"},
    {"lbf", "lbf", "lbf", rounded7},
    {"cP", "cP", "centipoise"},
    {"mPas", "mPa s", "mPa s"},
    {"cSt", "cSt", "centistokes"},
    {"A", "A", "A"},
    {"mA", "mA", "mA"},
    {"Ah", "A hr", "ampere hour"},
    {"V", "V", "V"},
    {"mV", "mV", "mV"},
    {"S", "S", "S"},
    {"mS", "mS", "mS"},
    {"uS", "uS", "uS"},
};

/// Words the libraries do not have, or have with another meaning.
struct Reason {
    const char *word, *why;
};

const Reason withoutMatch[] = {
    {"100mL", "a denominator of counts of bacteria; mL is compared"},
    {"$", "udunits2 has no money"},
    {"ppm", "GNU units and udunits2: a pure 1e-6; here mg/L, as laboratories of dilute water use it"},
    {"ppb", "the same"},
    {"eq", "not there: equivalents need a charge; compared with atomic weights in the unit rows"},
    {"meq", "the same"},
    {"ueq", "the same"},
    {"dH", "GNU units reads deci-henry; udunits2 does not know it"},
    {"fH", "GNU units reads femto-henry"},
    {"trade_pct", "not there: a bleach seller's word"},
    {"K", "a reading here; as a difference it is compared under delta_K; readings are compared apart"},
    {"degC", "GNU units reads a difference; readings are compared apart"},
    {"degF", "GNU units reads a difference; readings are compared apart"},
    {"person", "GNU units: the number 1; here a counted thing that is never lost"},
    {"cartridge", "not there"},
    {"event", "not there"},
    {"bed_volume", "not there"},
    {"each", "not there"},
    {"NTU", "not there: defined by its method"},
    {"CU", "not there: defined by its method"},
    {"TON", "not there: defined by its method"},
    {"cfu", "not there"},
    {"mpn", "not there"},
    {"pCi", "GNU units: 0.037 per second, so it adds to any frequency; here kept apart; the ratio is "
            "compared apart"},
    {"Bq", "the same"},
};

/// Words that mean something else there: our factor in SI, what the library says, and why.
struct Clash {
    const char *word, *library, *why;
};

const Clash otherMeaning[] = {
    {"yr", "GNU units", "tropical year of 365.2422 days"},
    {"month", "GNU units", "a twelfth of the tropical year"},
    {"mH2O", "GNU units", "milli-water, not a meter of water"},
    {"h", "GNU units", "Planck's constant, not the hour"},
    {"gal", "udunits2", "galileo, an acceleration of 0.01 m/s^2"},
    {"yr", "udunits2", "tropical year"},
    {"pt", "udunits2", "pico-ton"},
};

const UnitTable &table()
{
    static const UnitTable units;
    return units;
}

constexpr const char *siWords[] = {"m", "kg", "s", "K", "mol", "A", "US$"};

/// The SI unit of a dimension as both programs read it, and our base unit in it.
QString siText(const Dimension &dimension, double &base, bool udunits)
{
    static constexpr double inSi[] = {0.1, 1e-6, 1, 1, 1e-3, 1, 1};
    QStringList parts;
    base = 1;
    for (std::size_t i = 0; i < baseCount; ++i) {
        const int power = dimension.sixths[i] / 6;
        if (power == 0)
            continue;
        base *= std::pow(inSi[i], power);
        parts << QString("%1^%2").arg(siWords[i]).arg(power);
    }
    return parts.isEmpty() ? QString("1") : parts.join(udunits ? "." : " ");
}

QString run(const QString &program, const QStringList &arguments)
{
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished();
    return QString::fromUtf8(process.readAllStandardOutput()).trimmed();
}

/// The udunits2 library through its published C interface.
class Udunits
{
public:
    Udunits() : m_library("udunits2", 0)
    {
        if (!m_library.load())
            return;
        using Ignore = int (*)(const char *, va_list);
        using SetHandler = Ignore (*)(Ignore);
        reinterpret_cast<SetHandler>(m_library.resolve("ut_set_error_message_handler"))(
            reinterpret_cast<Ignore>(m_library.resolve("ut_ignore")));
        m_system = reinterpret_cast<void *(*)(const char *)>(m_library.resolve("ut_read_xml"))(nullptr);
    }
    bool isThere() const { return m_system != nullptr; }
    double convert(double x, const QString &from, const QString &to)
    {
        const auto parse =
            reinterpret_cast<void *(*)(void *, const char *, int)>(m_library.resolve("ut_parse"));
        const auto converter =
            reinterpret_cast<void *(*)(void *, void *)>(m_library.resolve("ut_get_converter"));
        const auto apply =
            reinterpret_cast<double (*)(void *, double)>(m_library.resolve("cv_convert_double"));
        void *a = parse(m_system, from.toUtf8(), 0), *b = parse(m_system, to.toUtf8(), 0);
        void *c = a && b ? converter(a, b) : nullptr;
        return c ? apply(c, x) : std::nan("");
    }

private:
    QLibrary m_library;
    void *m_system = nullptr;
};

} // namespace

class UnitsExternalTest : public QObject
{
    Q_OBJECT
private slots:
    void everyWordIsListed();
    void gnuUnitsAgrees_data() { rowsOf(false); }
    void gnuUnitsAgrees();
    void udunitsAgrees_data() { rowsOf(true); }
    void udunitsAgrees();
    void temperatureReadings_data();
    void temperatureReadings();
    void radioactivity();
    void otherMeaningsAreStillOther();

private:
    void rowsOf(bool udunits);
    Udunits m_udunits;
    QString m_units = QStandardPaths::findExecutable("units");
};

void UnitsExternalTest::everyWordIsListed()
{
    std::set<std::string> compared, missing;
    for (const Row &row : rows)
        compared.insert(row.word);
    for (const Reason &reason : withoutMatch)
        missing.insert(reason.word);
    for (const UnitWord &word : table().words())
        QVERIFY2(compared.contains(word.word) || missing.contains(word.word), word.word.c_str());
    for (const auto *list : {&compared, &missing})
        for (const std::string &word : *list)
            QVERIFY2(table().find(word) && table().find(word)->word == word, word.c_str());
}

void UnitsExternalTest::rowsOf(bool udunits)
{
    QTest::addColumn<QString>("word");
    QTest::addColumn<QString>("theirs");
    QTest::addColumn<double>("tolerance");
    for (const Row &row : rows) {
        const char *theirs = udunits ? row.udunits : row.gnu;
        if (*theirs)
            QTest::newRow(row.word) << row.word << theirs << (udunits ? row.udunitsTolerance : sameMeaning);
    }
}

void UnitsExternalTest::gnuUnitsAgrees()
{
    if (m_units.isEmpty())
        QSKIP("GNU units is not installed");
    QFETCH(QString, word);
    QFETCH(QString, theirs);
    QFETCH(double, tolerance);
    const UnitWord &ours = *table().find(word.toStdString());
    double base = 1;
    const QString si = siText(ours.type.dimension, base, false);
    bool good = false;
    const double there = run(m_units, {"-1", "-t", "--digits", "15", theirs, si}).toDouble(&good);
    QVERIFY(good);
    QVERIFY2(std::fabs(ours.factor * base / there - 1) < tolerance,
             qPrintable(QString::number(ours.factor * base / there - 1)));
}

void UnitsExternalTest::udunitsAgrees()
{
    if (!m_udunits.isThere())
        QSKIP("udunits2 is not installed");
    QFETCH(QString, word);
    QFETCH(QString, theirs);
    QFETCH(double, tolerance);
    const UnitWord &ours = *table().find(word.toStdString());
    double base = 1;
    const QString si = siText(ours.type.dimension, base, true);
    const double there = m_udunits.convert(1, theirs, si);
    QVERIFY(std::isfinite(there));
    QVERIFY2(std::fabs(ours.factor * base / there - 1) < tolerance,
             qPrintable(QString::number(ours.factor * base / there - 1)));
}

void UnitsExternalTest::temperatureReadings_data()
{
    QTest::addColumn<double>("degF");
    for (const double x : {-40.0, 0.0, 32.0, 52.0, 98.6, 212.0})
        QTest::newRow(qPrintable(QString::number(x))) << x;
}

void UnitsExternalTest::temperatureReadings()
{
    QFETCH(double, degF);
    const double kelvin = readUnit("degF", table())->toBase(degF);
    const double celsius = readUnit("degC", table())->fromBase(kelvin);
    if (!m_units.isEmpty()) {
        const double there =
            run(m_units, {"-1", "-t", "--digits", "15", QString("tempF(%1)").arg(degF), "tempC"}).toDouble();
        QVERIFY(std::fabs(celsius - there) < 1e-10);
    }
    if (m_udunits.isThere()) {
        QVERIFY(std::fabs(celsius - m_udunits.convert(degF, "degF", "degC")) < 1e-10);
        QVERIFY(std::fabs(kelvin - m_udunits.convert(degF, "degF", "K")) < 1e-10);
    }
    if (m_units.isEmpty() && !m_udunits.isThere())
        QSKIP("neither GNU units nor udunits2 is installed");
}

void UnitsExternalTest::radioactivity()
{
    if (m_units.isEmpty())
        QSKIP("GNU units is not installed");
    const double there = run(m_units, {"-1", "-t", "--digits", "15", "Bq", "picocurie"}).toDouble();
    const double ours = readUnit("pCi", table())->fromBase(readUnit("Bq", table())->toBase(1));
    QVERIFY(std::fabs(ours / there - 1) < sameMeaning);
}

/// When a library changes its mind, the list above should too.
void UnitsExternalTest::otherMeaningsAreStillOther()
{
    for (const Clash &clash : otherMeaning) {
        const UnitWord &ours = *table().find(clash.word);
        double base = 1;
        const bool gnu = QString(clash.library) == "GNU units";
        if (gnu ? m_units.isEmpty() : !m_udunits.isThere())
            continue;
        const QString si = siText(ours.type.dimension, base, !gnu);
        const double there = gnu ? run(m_units, {"-1", "-t", "--digits", "15", clash.word, si}).toDouble()
                                 : m_udunits.convert(1, clash.word, si);
        QVERIFY2(!std::isfinite(there) || std::fabs(ours.factor * base / there - 1) > 1e-9, clash.word);
    }
}

QTEST_APPLESS_MAIN(UnitsExternalTest)
#include "units_external_test.moc"
