/// The unit table: conversions, names, usual units, declared things, other base units.
#include <QTest>

#include <rapidcheck.h>

#include <cmath>

#include "base/number.h"
#include "support/unit_named.h"

using namespace puteal;
using test::table, test::unitNamed;

class UnitsTest : public QObject
{
    Q_OBJECT
private slots:
    void conversions_data();
    void conversions();
    void tableIsInOrder();
    void namesThatAreTaken();
    void usualUnits_data();
    void usualUnits();
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

void UnitsTest::namesThatAreTaken()
{
    for (const char *word : {"day", "days", "min", "l", "h", "person", "in"})
        QVERIFY2(table().isUnitWord(word), word);
    for (const char *word : {"people", "cartridges", "year", "years", "iron", "ph", "o2", "h2s", "a", "cost"})
        QVERIFY2(!table().isUnitWord(word), word);
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
