/// Unit texts: how they are read, written, refused, tagged with substances, respelled and spoken.
#include <QTest>

#include "support/unit_named.h"

using namespace puteal;
using test::table, test::unitNamed;

class UnitTextsTest : public QObject
{
    Q_OBJECT
private slots:
    void canonicalText_data();
    void canonicalText();
    void refusals_data();
    void refusals();
    void scanEnds_data();
    void scanEnds();
    void tagging_data();
    void tagging();
    void taggingRefused_data();
    void taggingRefused();
    void respelling_data();
    void respelling();
    void spoken_data();
    void spoken();
};

void UnitTextsTest::canonicalText_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *typed, const char *shows) {
        QTest::newRow(rule) << QString::fromUtf8(typed) << shows;
    };
    row("plurals are spellings", "gallons/days", "gal/day");
    row("l is L", "mg/l", "mg/L");
    row("braces show as `as`", "mg{Fe}/L", "mg/L as Fe");
    row("braces stay where two are needed", "mg{Cl2}/mg{Fe}", "mg{Cl2}/mg{Fe}");
    row("braces stay beside a word with its own substance", "gpg/(mg{Fe}/L)", "gpg/(mg{Fe}/L)");
    row("its own substance needs no saying", "gpg as CaCO3", "gpg");
    row("ppm is mg/L", "ppm as Fe", "mg/L as Fe");
    row("ppm inside a unit", "gpg/ppm", "gpg/(mg/L)");
    row("ppb is ug/L", "ppb", "ug/L");
    row("a power below zero", "day^-1", "1/day");
    row("one over", "1/day", "1/day");
    row("needless parentheses", "((mg)/(L))", "mg/L");
    row("a product stands in parentheses", "(kg*m)/s^2", "(kg*m)/s^2");
    row("products below the line", "gal/(day*person)", "gal/(day*person)");
    row("people", "gal/(day*people)", "gal/(day*person)");
    row("microgram with the micro sign", "\xC2\xB5g/L", "ug/L");
    row("superscripts", "gpm/ft\xC2\xB2", "gpm/ft^2");
    row("middle dot", "(mg\xC2\xB7L)", "(mg*L)");
    row("degree sign",
        "\xC2\xB0"
        "F",
        "degF");
    row("dollars", "USD/yr", "$/yr");
    row("bacteria", "CFU/100ml", "cfu/100mL");
    row("German degree with its sign",
        "\xC2\xB0"
        "dH",
        "dH");
    row("the pure number", "", "");
    row("a root", "ft^(1/2)", "ft^(1/2)");
}

void UnitTextsTest::canonicalText()
{
    QFETCH(QString, typed);
    QFETCH(QString, shows);
    const auto unit = readUnit(typed.toStdString(), table());
    QVERIFY2(unit, unit ? "" : unit.error().words.c_str());
    QCOMPARE(QString::fromStdString(unit->text), shows);
    QVERIFY(readUnit(unit->text, table()).value() == *unit);
}

void UnitTextsTest::refusals_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("piece"); // the span
    QTest::addColumn<QString>("fixed"); // after the first fix, "" = none
    const auto row = [](const char *rule, const char *typed, const char *words, const char *piece,
                        const char *fixed) { QTest::newRow(rule) << typed << words << piece << fixed; };
    row("a mistyped word", "dya", "`dya` is no unit; day?", "dya", "day");
    row("a mistyped word below the line", "mg/Lx", "`Lx` is no unit; L or lb?", "Lx", "mg/L");
    row("a temperature without its degree", "F", "`F` is no unit: write degF", "F", "degF");
    row("written together", "mgl", "`mgl` is no unit: write mg/L", "mgl", "mg/L");
    row("cubic feet spelled", "cuft/day", "`cuft` is no unit: write ft^3", "cuft", "ft^3/day");
    row("a power without its sign", "m3/day", "`m3` is no unit: write m^3", "m3", "m^3/day");
    row("another case", "gal/Min", "`Min` is no unit: write min", "Min", "gal/min");
    row("per person and day", "gpcd", "`gpcd` is no unit: write gal/(person*day)", "gpcd",
        "gal/(person*day)");
    row("grains cut short", "gr", "`gr` is no unit: write grain", "gr", "grain");
    row("cents", "cents", "`cents` is no unit: money is in dollars, as in $0.05", "cents", "");
    row("a flag of a laboratory", "U",
        "`U` is no unit: what was not detected is written ND 0.05 mg/L, with the limit it was tested to", "U",
        "");
    row("pH as a unit", "pH", "`pH` is no unit: pH is a plain number", "pH", "");
    row("standard units of pH", "SU", "`SU` is no unit: pH is a plain number", "SU", "");
    row("nothing like it", "zzzzzz",
        "`zzzzzz` is no unit: take one of the list of units, or count it as a `thing`", "zzzzzz", "");
    row("two lines", "gal/day/person", "a unit has one /: write gal/(day*person)", "/person",
        "gal/(day*person)");
    row("two lines with a substance", "mg{Fe}/L/day", "a unit has one /: write mg{Fe}/(L*day)", "/day",
        "mg{Fe}/(L*day)");
    row("two lines under one", "1/day/person", "a unit has one /: write 1/(day*person)", "/person",
        "1/(day*person)");
    row("a reading inside a unit", "BTU/(lb*degF)",
        "`degF` is a temperature reading and cannot be part of a larger unit: write delta_degF", "degF",
        "BTU/(lb*delta_degF)");
    row("an absolute pressure inside a unit", "psi_abs/ft",
        "`psi_abs` is an absolute pressure and cannot be part of a larger unit: write psi", "psi_abs",
        "psi/ft");
    row("a broken power", "ft^1.5", "the power of a unit is a whole number, as in ft^2", "^1.5", "");
    row("a name as a power", "ft^x", "the power of a unit is a whole number, as in ft^2", "^x", "");
    row("a power of 0", "ft^0", "powers of a unit go from -21 to 21, without 0", "^0", "");
    row("a power too large", "ft^22", "powers of a unit go from -21 to 21, without 0", "^22", "");
    row("powers that add up too large", "L^8", "the powers of this unit are too large: 21 at most", "L^8",
        "");
    row("unknown substance", "mg{Fx}/L", "`Fx` is no substance known here; Fe?", "Fx", "mg{Fe}/L");
    row("unknown substance behind as", "mg/L as iron", "`iron` is no substance known here; Fe?", "iron",
        "mg/L as Fe");
    row("a volume is of nothing", "gal{Fe}", "`gal` is no mass or amount, so it cannot be of Fe", "{Fe}", "");
    row("gpg is of calcium carbonate", "gpg{Fe}", "`gpg` is an amount of CaCO3 already", "{Fe}", "");
    row("blanks inside", "mg / L",
        "the unit ends before this; units are written without blanks, as in gal/(day*person)", " / L", "");
    row("a brace left open", "mg{Fe", "the closing } is missing", "{Fe", "");
}

void UnitTextsTest::refusals()
{
    QFETCH(QString, typed);
    QFETCH(QString, words);
    QFETCH(QString, piece);
    QFETCH(QString, fixed);
    const std::string text = typed.toStdString();
    const auto unit = readUnit(text, table());
    QVERIFY(!unit);
    const Error &error = unit.error();
    QCOMPARE(QString::fromStdString(error.words), words);
    QVERIFY(error.place.span);
    QCOMPARE(QString::fromStdString(
                 text.substr(error.place.span->begin, error.place.span->end - error.place.span->begin)),
             piece);
    QCOMPARE(error.fixes.empty(), fixed.isEmpty());
    if (!error.fixes.empty()) {
        const Fix &fix = error.fixes.front();
        std::string after = text;
        after.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
        QCOMPARE(QString::fromStdString(after), fixed);
        QVERIFY(readUnit(after, table()).has_value());
    }
}

void UnitTextsTest::scanEnds_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("unit"); // as typed; "" = no unit starts here
    const auto row = [](const char *rule, const char *text, const char *unit) {
        QTest::newRow(rule) << text << unit;
    };
    row("after / only a unit word goes on", "mg/iron", "mg");
    row("a function after /", "gal/min(a, b)", "gal");
    row("an indexed column after /", "gal/d[2]", "gal");
    row("another sheet after /", "gal/s.total", "gal");
    row("a calculation in parentheses after /", "gal/(days*2)", "gal");
    row("a counted thing after /", "gal/people + 1", "gal/people");
    row("a product between units needs parentheses", "kWh*price", "kWh");
    row("one over a unit", "1/day", "1/day");
    row("one over a number is none", "1/2", "");
    row("a function is no unit", "min(3)", "");
    row("a name is no unit", "iron", "");
    row("100mL stands below only", "100mL", "");
    row("a brace that closes live words", "mg/L}", "mg/L");
    row("percent", "% of it", "%");
}

void UnitTextsTest::scanEnds()
{
    QFETCH(QString, text);
    QFETCH(QString, unit);
    const auto scanned = scanUnit(text.toStdString(), 0, table());
    QVERIFY(scanned);
    QCOMPARE(scanned->has_value(), !unit.isEmpty());
    if (*scanned)
        QCOMPARE(static_cast<int>((*scanned)->end), static_cast<int>(unit.size()));
}

void UnitTextsTest::tagging_data()
{
    QTest::addColumn<QString>("unit");
    QTest::addColumn<QString>("substance");
    QTest::addColumn<QString>("shows");
    QTest::newRow("a concentration") << "mg/L"
                                     << "Fe"
                                     << "mg/L as Fe";
    QTest::newRow("an amount below the line") << "L/mg"
                                              << "Fe"
                                              << "L/mg as Fe";
    QTest::newRow("the same again") << "mg/L as Fe"
                                    << "Fe"
                                    << "mg/L as Fe";
    QTest::newRow("a word with its own") << "gpg"
                                         << "CaCO3"
                                         << "gpg";
    QTest::newRow("moles") << "mmol/L"
                           << "Ca"
                           << "mmol/L as Ca";
    QTest::newRow("energy counts as no mass") << "lb/kWh"
                                              << "NaCl"
                                              << "lb/kWh as NaCl";
}

void UnitTextsTest::tagging()
{
    QFETCH(QString, unit);
    QFETCH(QString, substance);
    QFETCH(QString, shows);
    const auto result = tagged(unitNamed(unit), *UnitTable::substanceId(substance.toStdString()), table());
    QVERIFY(result);
    QCOMPARE(QString::fromStdString(result->text), shows);
    QCOMPARE(untagged(unitNamed("mg/L as Fe"), table()).text, std::string("mg/L"));
}

void UnitTextsTest::taggingRefused_data()
{
    QTest::addColumn<QString>("unit");
    QTest::addColumn<QString>("words");
    QTest::newRow("no mass or amount") << "gal"
                                       << "`gal` has no mass or amount that could be of Fe";
    QTest::newRow("a pure number") << ""
                                   << "a pure number has no mass or amount that could be of Fe";
    QTest::newRow("two of them")
        << "mg/kg"
        << "`mg/kg` has more than one amount: write the substance in braces, as in mg{Fe}/kg";
    QTest::newRow("another substance") << "mg/L as Mn"
                                       << "`mg/L as Mn` is an amount of Mn and cannot be called Fe: leave as "
                                          "Fe out, or write an amount of Fe, as in 3 mg/L as Fe";
    QTest::newRow("a word with its own substance")
        << "gpg"
        << "`gpg` is an amount of CaCO3 and cannot be called Fe: leave as Fe out, or write an amount of Fe, "
           "as in 3 mg/L as Fe";
}

void UnitTextsTest::taggingRefused()
{
    QFETCH(QString, unit);
    QFETCH(QString, words);
    const auto result = tagged(unitNamed(unit), *UnitTable::substanceId("Fe"), table());
    QVERIFY(!result);
    QCOMPARE(QString::fromStdString(result.error().words), words);
}

void UnitTextsTest::respelling_data()
{
    QTest::addColumn<QString>("unit");
    QTest::addColumn<QString>("like");  // a unit of the wanted type
    QTest::addColumn<QString>("shows"); // "" = impossible
    QTest::newRow("takes a substance") << "ug/L"
                                       << "mg/L as Fe"
                                       << "ug/L as Fe";
    QTest::newRow("loses a substance") << "ug/L as Fe"
                                       << "mg/L"
                                       << "ug/L";
    QTest::newRow("takes two substances") << "g/kg"
                                          << "mg{Cl2}/mg{Fe}"
                                          << "g{Cl2}/kg{Fe}";
    QTest::newRow("takes counted things") << "gal/day"
                                          << "L/(day*person)"
                                          << "gal/(day*person)";
    QTest::newRow("loses counted things") << "gal/(day*person)"
                                          << "L/day"
                                          << "gal/day";
    QTest::newRow("loses them above the line") << "day/event"
                                               << "s"
                                               << "day";
    QTest::newRow("its own substance stays") << "gpg"
                                             << "mg/L as CaCO3"
                                             << "gpg";
    QTest::newRow("its own substance is not another") << "gpg"
                                                      << "mg/L as Fe"
                                                      << "";
    QTest::newRow("another dimension") << "gal"
                                       << "ft"
                                       << "";
    QTest::newRow("a reading is no difference") << "degF"
                                                << "delta_degF"
                                                << "";
    QTest::newRow("nowhere to put it") << "gal"
                                       << "gal"
                                       << "gal";
}

void UnitTextsTest::respelling()
{
    QFETCH(QString, unit);
    QFETCH(QString, like);
    QFETCH(QString, shows);
    const auto result = retagged(unitNamed(unit), unitNamed(like).type, table());
    QCOMPARE(result.has_value(), !shows.isEmpty());
    if (result)
        QCOMPARE(QString::fromStdString(result->text), shows);
}

void UnitTextsTest::spoken_data()
{
    QTest::addColumn<QString>("unit");
    QTest::addColumn<QString>("says");
    QTest::newRow("a concentration") << "mg/L as Fe"
                                     << "milligrams per liter as iron";
    QTest::newRow("a use") << "gal/(day*person)"
                           << "US gallons per day per person";
    QTest::newRow("a loading") << "gpm/ft^2"
                               << "US gallons per minute per square foot";
    QTest::newRow("two substances") << "mg{Cl2}/mg{Fe}"
                                    << "milligrams of chlorine per milligram of iron";
    QTest::newRow("a word with its own") << "gpg"
                                         << "grains per US gallon as calcium carbonate";
    QTest::newRow("money") << "$/yr"
                           << "dollars per year";
    QTest::newRow("a rate") << "1/day"
                            << "per day";
}

void UnitTextsTest::spoken()
{
    QFETCH(QString, unit);
    QFETCH(QString, says);
    QCOMPARE(QString::fromStdString(spokenUnit(unitNamed(unit), table())), says);
}

QTEST_APPLESS_MAIN(UnitTextsTest)
#include "unit_texts_test.moc"
