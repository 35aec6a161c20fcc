/// The unit table and the reading, tagging and respelling of units.
#include <QTest>

#include <rapidcheck.h>

#include <cmath>

#include "base/number.h"
#include "units/unit.h"

using namespace puteal;

namespace
{

const UnitTable &table()
{
    static const UnitTable units;
    return units;
}

Unit unitNamed(const QString &text)
{
    return readUnit(text.toStdString(), table()).value();
}

} // namespace

class UnitsTest : public QObject
{
    Q_OBJECT
private slots:
    void conversions_data();
    void conversions();
    void tableIsInOrder();
    void canonicalText_data();
    void canonicalText();
    void refusals_data();
    void refusals();
    void scanEnds_data();
    void scanEnds();
    void namesThatAreTaken();
    void tagging_data();
    void tagging();
    void taggingRefused_data();
    void taggingRefused();
    void respelling_data();
    void respelling();
    void usualUnits_data();
    void usualUnits();
    void spoken_data();
    void spoken();
    void declaredThings();
    void rescaledTableConvertsAlike();
    void shownUnitsReadBack();
};

void UnitsTest::conversions_data()
{
    QTest::addColumn<QString>("from");
    QTest::addColumn<QString>("to");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *from, const char *to, const char *shows) {
        QTest::newRow(rule) << from << to << shows;
    };
    // NIST Handbook 44, appendix C, and NIST SP 811, appendix B.8
    row("a US gallon is 231 cubic inches", "gal", "in^3", "231");
    row("a US gallon is 3.785411784 L exactly", "gal", "L", "3.785411784");
    row("four quarts", "gal", "qt", "4");
    row("eight pints", "gal", "pt", "8");
    row("sixteen cups", "gal", "cup", "16");
    row("128 fluid ounces", "gal", "fl_oz", "128");
    row("two tablespoons are a fluid ounce", "fl_oz", "tbsp", "2");
    row("three teaspoons are a tablespoon", "tbsp", "tsp", "3");
    row("an imperial gallon is 4.54609 L exactly", "gal_imp", "L", "4.54609");
    row("160 imperial fluid ounces", "gal_imp", "fl_oz_imp", "160");
    row("a grain is 64.79891 mg exactly", "grain", "mg", "64.79891");
    row("7000 grains are a pound", "lb", "grain", "7000");
    row("sixteen ounces are a pound", "lb", "oz", "16");
    row("a pound is 453.59237 g exactly", "lb", "g", "453.59237");
    row("2000 pounds are a short ton", "ton", "lb", "2000");
    row("a foot is 0.3048 m exactly", "ft", "m", "0.3048");
    row("a mile", "mi", "ft", "5280");
    row("1000 mils are an inch", "in", "mil", "1000");
    row("an acre", "acre", "ft^2", "43560");
    row("an acre-foot in gallons", "acre_ft", "gal", "325851.4285714");
    row("a cubic foot in gallons", "ft^3", "gal", "7.480519480519");
    row("gpm against gal and min", "gpm", "gal/min", "1");
    row("1440 gpd are one gpm", "gpm", "gpd", "1440");
    row("gpm in cubic meters an hour", "gpm", "m^3/hr", "0.2271247070400");
    row("a loading is a velocity", "gpm/ft^2", "m/hr", "2.444749999999");
    row("60 gph are one gpm", "gpm", "gph", "60");
    row("a psi in pascals", "psi", "Pa", "6894.757293168");
    row("feet of water in one psi", "psi", "ft_head", "2.306658725850");
    row("a bar", "bar", "kPa", "100");
    row("an atmosphere", "atm", "Pa", "101325");
    row("torr", "atm", "torr", "760");
    row("a horsepower", "hp", "W", "745.6998715823");
    row("a kilowatt hour", "kWh", "MJ", "3.600000000000");
    row("siemens against volts and amperes", "A/V", "S", "1");
    // common practice
    row("a year is 365 days", "yr", "day", "365");
    row("twelve months are a year", "yr", "month", "12.00000000000");
    // IUPAC abridged atomic weights: CaCO3 100.086, CaO 56.077
    row("a milliequivalent as CaCO3", "meq/L", "mg/L as CaCO3", "50.043");
    row("a German degree", "dH", "mg/L as CaCO3", "17.84795905630");
    row("grains a gallon", "gpg", "mg/L as CaCO3", "17.11806104527");
    row("Clark degrees", "clark", "mg/L as CaCO3", "14.25376752330");
    row("trade percent of bleach", "trade_pct", "g/L as Cl2", "10.00000000000");
    row("a percent", "%", "", "0.01000000000000");
    row("a becquerel in picocuries", "Bq/L", "pCi/L", "27.02702702703");
    row("counts of bacteria", "cfu/100mL", "cfu/mL", "0.01000000000000");
}

void UnitsTest::conversions()
{
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(QString, shows);
    const Unit a = unitNamed(from), b = unitNamed(to);
    QVERIFY(a.type == b.type);
    const double value = b.fromBase(a.toBase(1));
    QVERIFY2(std::fabs(value / shows.toDouble() - 1) < 1e-12, shortest(value).c_str());
}

void UnitsTest::tableIsInOrder()
{
    QVERIFY(table().words().size() >= 130);
    for (const UnitWord &word : table().words()) {
        QVERIFY2(!word.definition.empty() && !word.name.empty() && !word.singular.empty(), word.word.c_str());
        const auto &sources = UnitTable::sources();
        const bool known = std::any_of(sources.begin(), sources.end(),
                                       [&](const UnitSource &s) { return s.key == word.source; });
        QVERIFY2(known, word.word.c_str());
        QVERIFY2(table().find(word.word) == &word, word.word.c_str());
        for (const std::string &spelling : word.spellings())
            QVERIFY2(table().find(spelling) == &word, spelling.c_str());
        QVERIFY2(word.factor > 0 && std::isfinite(word.factor), word.word.c_str());
    }
    QCOMPARE(unitNamed("mg/L").toBase(0.3), 0.3); // trade literals are exact doubles
    QCOMPARE(unitNamed("gal").toBase(1), 3.785411784);
}

void UnitsTest::canonicalText_data()
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

void UnitsTest::canonicalText()
{
    QFETCH(QString, typed);
    QFETCH(QString, shows);
    const auto unit = readUnit(typed.toStdString(), table());
    QVERIFY2(unit, unit ? "" : unit.error().words.c_str());
    QCOMPARE(QString::fromStdString(unit->text), shows);
    QVERIFY(readUnit(unit->text, table()).value() == *unit);
}

void UnitsTest::refusals_data()
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

void UnitsTest::refusals()
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

void UnitsTest::scanEnds_data()
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

void UnitsTest::scanEnds()
{
    QFETCH(QString, text);
    QFETCH(QString, unit);
    const auto scanned = scanUnit(text.toStdString(), 0, table());
    QVERIFY(scanned);
    QCOMPARE(scanned->has_value(), !unit.isEmpty());
    if (*scanned)
        QCOMPARE(static_cast<int>((*scanned)->end), static_cast<int>(unit.size()));
}

void UnitsTest::namesThatAreTaken()
{
    for (const char *word : {"day", "days", "min", "l", "h", "person", "in"})
        QVERIFY2(table().isUnitWord(word), word);
    for (const char *word : {"people", "cartridges", "year", "years", "iron", "ph", "o2", "h2s", "a", "cost"})
        QVERIFY2(!table().isUnitWord(word), word);
}

void UnitsTest::tagging_data()
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

void UnitsTest::tagging()
{
    QFETCH(QString, unit);
    QFETCH(QString, substance);
    QFETCH(QString, shows);
    const auto result = tagged(unitNamed(unit), *UnitTable::substanceId(substance.toStdString()), table());
    QVERIFY(result);
    QCOMPARE(QString::fromStdString(result->text), shows);
    QCOMPARE(untagged(unitNamed("mg/L as Fe"), table()).text, std::string("mg/L"));
}

void UnitsTest::taggingRefused_data()
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

void UnitsTest::taggingRefused()
{
    QFETCH(QString, unit);
    QFETCH(QString, words);
    const auto result = tagged(unitNamed(unit), *UnitTable::substanceId("Fe"), table());
    QVERIFY(!result);
    QCOMPARE(QString::fromStdString(result.error().words), words);
}

void UnitsTest::respelling_data()
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

void UnitsTest::respelling()
{
    QFETCH(QString, unit);
    QFETCH(QString, like);
    QFETCH(QString, shows);
    const auto result = retagged(unitNamed(unit), unitNamed(like).type, table());
    QCOMPARE(result.has_value(), !shows.isEmpty());
    if (result)
        QCOMPARE(QString::fromStdString(result->text), shows);
}

void UnitsTest::usualUnits_data()
{
    QTest::addColumn<QString>("like");
    QTest::addColumn<QString>("us");
    QTest::addColumn<QString>("si");
    QTest::addColumn<QString>("words");
    const auto row = [](const char *like, const char *us, const char *si, const char *words) {
        QTest::newRow(like) << like << us << si << words;
    };
    row("", "", "", "a pure number");
    row("degC", "degF", "degC", "a temperature reading");
    row("kPa_abs", "psi_abs", "kPa_abs", "an absolute pressure");
    row("gpm", "gal/day", "L/day", "gal/day");
    row("L/(s*person)", "gal/(day*person)", "L/(day*person)", "gal/(day*person)");
    row("ug/L as Fe", "mg/L as Fe", "mg/L as Fe", "mg/L as Fe");
    row("g{Cl2}/kg{Fe}", "mg{Cl2}/mg{Fe}", "mg{Cl2}/mg{Fe}", "mg{Cl2}/mg{Fe}");
    row("gpg/(mg{Fe}/L)", "mg{CaCO3}/mg{Fe}", "mg{CaCO3}/mg{Fe}", "mg{CaCO3}/mg{Fe}");
    row("$/month", "$/yr", "$/yr", "$/yr");
    row("$/L", "$/gal", "$/L", "$/gal");
    row("person", "person", "person", "person");
    row("s/event", "day/event", "day/event", "day/event");
    row("cfu/mL", "cfu/100mL", "cfu/100mL", "cfu/100mL");
    row("mS/m", "uS/cm", "uS/cm", "uS/cm");
    row("ft^6/s", "gal^2/day", "L^2/day", "gal^2/day");
    row("m^5/s", "ft^5/day", "m^5/day", "ft^5/day");
    row("m^(1/2)", "ft^(1/2)", "m^(1/2)", "ft^(1/2)");
}

void UnitsTest::usualUnits()
{
    QFETCH(QString, like);
    QFETCH(QString, us);
    QFETCH(QString, si);
    QFETCH(QString, words);
    const QuantityType type = unitNamed(like).type;
    QCOMPARE(QString::fromStdString(table().defaultUnit(type, UnitSystem::us).text), us);
    QCOMPARE(QString::fromStdString(table().defaultUnit(type, UnitSystem::si).text), si);
    QCOMPARE(QString::fromStdString(typeWords(type, table())), words);
}

void UnitsTest::spoken_data()
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

void UnitsTest::spoken()
{
    QFETCH(QString, unit);
    QFETCH(QString, says);
    QCOMPARE(QString::fromStdString(spokenUnit(unitNamed(unit), table())), says);
}

void UnitsTest::declaredThings()
{
    UnitTable own;
    QVERIFY(own.declareThing("tank"));
    QCOMPARE(readUnit("gal/tanks", own).value().text, std::string("gal/tank"));
    QVERIFY(own.isUnitWord("tank"));
    QVERIFY(!own.isUnitWord("tanks"));
    const auto id = own.find("tank")->type.things.items()[0].first;
    QCOMPARE(own.thingWord(id), std::string("tank"));
    QVERIFY(!own.thingStays(id));
    QVERIFY(own.thingStays(own.find("person")->type.things.items()[0].first));
    QCOMPARE(own.declareThing("day").error().words, std::string("`day` is a unit word already"));
    QCOMPARE(own.declareThing("Tank").error().words,
             std::string("`Tank` cannot be a counted thing: write it in small letters, digits and _"));
    QCOMPARE(own.declareThing("gone").error().words,
             std::string("`gone` is a word of the formula language: choose another"));
    QVERIFY(!readUnit("gal/tank", table()));
}

void UnitsTest::rescaledTableConvertsAlike()
{
    const UnitTable other({3.0, 0.7, 11.0, 1.3, 5.0, 0.9, 2.0});
    for (const UnitWord &word : table().words()) {
        if (word.word == "100mL" || !word.shownAs.empty())
            continue;
        const Unit a = unitNamed(QString::fromStdString(word.word));
        const Unit usual = table().defaultUnit(a.type, UnitSystem::si);
        const Unit b = readUnit(a.text, other).value(), otherUsual = readUnit(usual.text, other).value();
        const double here = usual.fromBase(a.toBase(12.5)), there = otherUsual.fromBase(b.toBase(12.5));
        QVERIFY2(std::fabs(here - there) <= 1e-12 * std::fabs(here), word.word.c_str());
    }
}

void UnitsTest::shownUnitsReadBack()
{
    std::vector<std::string> words;
    for (const UnitWord &word : table().words())
        if (word.shownAs.empty() && word.type.scale == Scale::plain && word.word != "100mL")
            words.push_back(word.word);
    const auto factor = [&words](bool brace) {
        std::string text = *rc::gen::elementOf(words);
        const UnitWord *word = table().find(text);
        const int power = *rc::gen::weightedElement<int>({{6, 1}, {1, 2}, {1, -1}});
        if (power != 1)
            text += "^" + std::to_string(power);
        if (brace && word->isAmount && word->type.substances.empty() && *rc::gen::arbitrary<bool>())
            text += "{" + UnitTable::substanceWord(*rc::gen::inRange<std::uint16_t>(0, 20)) + "}";
        return text;
    };
    QVERIFY(rc::check("a unit's text reads back to the same unit", [&] {
        std::string text = factor(true);
        if (*rc::gen::arbitrary<bool>())
            text = "(" + text + "*" + factor(true) + ")";
        if (*rc::gen::arbitrary<bool>())
            text += "/" + factor(true);
        else if (*rc::gen::arbitrary<bool>())
            text += "/(" + factor(true) + "*" + factor(true) + "/" + factor(true) + ")";
        const auto unit = readUnit(text, table());
        RC_ASSERT(unit.has_value());
        const auto again = readUnit(unit->text, table());
        RC_ASSERT(again.has_value());
        RC_ASSERT(again->text == unit->text);
        RC_ASSERT(again->type == unit->type);
        RC_ASSERT(nearlyEqual(again->factor, unit->factor));
        const Unit usual = table().defaultUnit(unit->type, UnitSystem::us);
        RC_ASSERT(usual.type == unit->type);
        RC_ASSERT(readUnit(usual.text, table()).value() == usual);
    }));
}

QTEST_APPLESS_MAIN(UnitsTest)
#include "units_test.moc"
