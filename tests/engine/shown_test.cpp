/// Values shown as text; everything shown can be typed back. The units page is the table's.
#include <QFile>
#include <QTest>

#include <rapidcheck.h>

#include <cmath>

#include "base/number.h"
#include "show/pages.h"
#include "show/shown.h"

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

Typed typedBack(const std::string &text)
{
    static const ChoiceLists lists;
    TypedContext context;
    context.units = &table();
    context.lists = &lists;
    return readTyped(text, context).value();
}

} // namespace

class ShownTest : public QObject
{
    Q_OBJECT
private slots:
    void quantities_data();
    void quantities();
    void trimmedQuantities_data();
    void trimmedQuantities();
    void otherKinds();
    void shownCanBeTypedBack();
    void errors_data();
    void errors();
    void pointing_data();
    void pointing();
    void unitsPageIsWritten();
};

void ShownTest::quantities_data()
{
    QTest::addColumn<double>("number"); // in the unit
    QTest::addColumn<QString>("unit");
    QTest::addColumn<int>("figures");
    QTest::addColumn<int>("places");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, double number, const char *unit, const char *shows, int figures = 0,
                        int places = -1) {
        QTest::newRow(rule) << number << unit << figures << places << shows;
    };
    row("three figures", 6.8412, "mg/L as Cl2", "6.84 mg/L as Cl2");
    row("zeros are kept", 3, "mg/L", "3.00 mg/L");
    row("half goes away from zero", 1.005, "mg/L", "1.01 mg/L");
    row("a large number keeps its zeros", 26000, "gal", "26000 gal");
    row("two figures", 6.8412, "mg/L", "6.8 mg/L", 2);
    row("one place", 6.8412, "mg/L", "6.8 mg/L", 0, 1);
    row("no places", 103.6, "day", "104 day", 0, 0);
    row("a pure number has no unit", 7.2, "", "7.20");
    row("a reading below zero", -5, "degC", "-5.00 degC");
    row("nothing", 0, "mg/L", "0 mg/L");
    row("whole dollars have no cents", 1640, "$", "$1,640");
    row("dollars and cents", 1640.5, "$", "$1,640.50");
    row("money owed", -20, "$", "-$20");
    row("money a year", 45.25, "$/yr", "$45.25/yr");
    row("small rates keep three figures", 0.00423, "$/gal", "$0.00423/gal");
    row("cents a unit", 0.15, "$/kWh", "$0.15/kWh");
    row("dimes a unit", 0.5, "$/lb as NaCl", "$0.50/lb as NaCl");
    row("places of money as asked", 1640, "$", "$1,640.00", 0, 2);
    row("figures of money as asked", 1643, "$", "$1,640", 3);
    row("less than half a cent owed", -0.001, "$", "$0");
    row("money inside a unit", 3, "gal/USD", "3.00 gal/USD");
}

void ShownTest::quantities()
{
    QFETCH(double, number);
    QFETCH(QString, unit);
    QFETCH(int, figures);
    QFETCH(int, places);
    QFETCH(QString, shows);
    const Unit u = unitNamed(unit);
    const std::string text = showQuantity(u.toBase(number), Bound::exact, u, {figures, places}).text();
    QCOMPARE(QString::fromStdString(text), shows);
    QCOMPARE(typedBack(text).value.unit.text, u.text);
    QCOMPARE(
        QString::fromStdString(showQuantity(u.toBase(number), Bound::below, u, {figures, places}).text()),
        "<" + shows);
}

void ShownTest::trimmedQuantities_data()
{
    QTest::addColumn<double>("number");
    QTest::addColumn<QString>("unit");
    QTest::addColumn<QString>("shows");
    QTest::newRow("up to six figures") << 17.1180610452 << "mg/L as CaCO3"
                                       << "17.1181 mg/L as CaCO3";
    QTest::newRow("trailing zeros go") << 104.0 << "day"
                                       << "104 day";
    QTest::newRow("a large whole number") << 26000.0 << "gal"
                                          << "26000 gal";
    QTest::newRow("money as always") << 1640.0 << "$"
                                     << "$1,640";
}

void ShownTest::trimmedQuantities()
{
    QFETCH(double, number);
    QFETCH(QString, unit);
    QFETCH(QString, shows);
    const Unit u = unitNamed(unit);
    StaticType type;
    type.kind = ValueKind::quantity;
    QCOMPARE(QString::fromStdString(showPlain(type, u.toBase(number), {}, u, 6, ChoiceLists(), table())),
             shows);
}

void ShownTest::otherKinds()
{
    ChoiceLists lists;
    StaticType type;
    const auto shown = [&](double number, const std::string &words = {}) {
        return showValue(type, number, words, Unit{}, {}, lists, table());
    };
    type.kind = ValueKind::yesNo;
    QCOMPARE(shown(1), std::string("yes"));
    QCOMPARE(shown(0), std::string("no"));
    type.kind = ValueKind::choice;
    type.list = lists.intern({"works", "marginal"});
    QCOMPARE(shown(1), std::string("marginal"));
    type.kind = ValueKind::date;
    QCOMPARE(shown(typedBack("2026-05-12").value.number), std::string("2026-05-12"));
    QCOMPARE(shown(typedBack("2026-05-12").value.number - 1e-6), std::string("2026-05-12"));
    QCOMPARE(shown(typedBack("2026-05-12").value.number + 80000), std::string("2026-05-12"));
    type.kind = ValueKind::words;
    QCOMPARE(shown(0, "to the septic"), std::string("to the septic"));
    type.kind = ValueKind::blank;
    QCOMPARE(shown(0), std::string());
}

void ShownTest::shownCanBeTypedBack()
{
    std::vector<std::string> units{
        "",          "mg/L as Fe", "mg{Cl2}/mg{Fe}", "gpg/(mg{Fe}/L)", "gal/(day*person)",
        "1/day",     "$",          "$/yr",           "$/lb as NaCl",   "$/(mg{Fe}*mg)",
        "cfu/100mL", "%",          "(USD*m)/s^2",    "ft^(1/2)",       "gpm/ft^2",
        "mg/L",      "1/mg as Fe", "day/event"};
    for (const UnitWord &word : table().words())
        if (word.shownAs.empty() && word.word != "100mL")
            units.push_back(word.word);
    QVERIFY(rc::check("what is shown can be typed back", [&] {
        const Unit unit = readUnit(*rc::gen::elementOf(units), table()).value();
        const double x =
            *rc::gen::inRange(-99999999, 99999999) / 1e4 * std::pow(10.0, *rc::gen::inRange(-9, 10));
        const Bound bound = *rc::gen::element(Bound::exact, Bound::exact, Bound::below, Bound::above);
        Rounding rounding;
        if (*rc::gen::arbitrary<bool>())
            rounding.figures = *rc::gen::inRange(1, 12);
        else if (*rc::gen::arbitrary<bool>())
            rounding.places = *rc::gen::inRange(0, 9);
        const std::string text = showQuantity(unit.toBase(x), bound, unit, rounding).text();
        RC_LOG() << text << '\n';
        const Typed typed = typedBack(text);
        RC_ASSERT(typed.form == TypedForm::value);
        RC_ASSERT(typed.value.type.quantity == unit.type);
        RC_ASSERT(typed.value.type.bound == bound);
        RC_ASSERT(typed.value.unit == unit);
        // within the rounding: half a step of the last figure or place
        const bool money = !unit.text.empty() && unit.text[0] == '$';
        const double size = x == 0 ? 1 : std::pow(10.0, std::floor(std::log10(std::fabs(x))));
        double step = 0;
        if (rounding.places >= 0)
            step = std::pow(10.0, -rounding.places);
        else if (rounding.figures > 0 || !money)
            step = size * 10 * std::pow(10.0, -(rounding.figures > 0 ? rounding.figures : 3));
        else
            step = 0.01;
        const double back = unit.fromBase(typed.value.number);
        RC_ASSERT(std::fabs(back - x) <= 0.5 * step * (1 + 1e-9) + 1e-9 * std::fabs(x) + 1e-9);
        // shown again it looks the same
        RC_ASSERT(showQuantity(typed.value.number, bound, unit, rounding).text() == text);
    }));
}

void ShownTest::errors_data()
{
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("fix");
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("line");
    QTest::newRow("no fix") << "`filter_area` is blank"
                            << ""
                            << ""
                            << "`filter_area` is blank";
    QTest::newRow("the fix in words") << "cannot add `use` and 5"
                                      << "give the number a unit"
                                      << "5 gal/day"
                                      << "cannot add `use` and 5; give the number a unit";
    QTest::newRow("said already") << "a decimal is written with a point: write 1.5"
                                  << "write 1.5"
                                  << "1.5"
                                  << "a decimal is written with a point: write 1.5";
    QTest::newRow("no full stop") << "this is wrong."
                                  << ""
                                  << ""
                                  << "this is wrong";
}

void ShownTest::errors()
{
    QFETCH(QString, words);
    QFETCH(QString, fix);
    QFETCH(QString, text);
    QFETCH(QString, line);
    Error error{ErrorKind::unit, words.toStdString(), {}, {}};
    if (!fix.isEmpty())
        error.fixes.push_back({fix.toStdString(), Span{}, text.toStdString()});
    QCOMPARE(QString::fromStdString(errorLine(error)), line);
}

void ShownTest::pointing_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<QList<int>>("spans");
    QTest::addColumn<QString>("shows");
    QTest::newRow("one piece") << "10 gpg + x" << QList<int>{9, 10} << "10 gpg + x\n         ^";
    QTest::newRow("both pieces of a clash")
        << "iron + mn" << QList<int>{7, 9, 0, 4} << "iron + mn\n^^^^   ^^";
    QTest::newRow("an empty place") << "3 +" << QList<int>{3, 3} << "3 +\n   ^";
    QTest::newRow("counted in characters")
        << QStringLiteral("5 \u00B5g + x") << QList<int>{8, 9} << QStringLiteral("5 \u00B5g + x\n       ^");
    QTest::newRow("no place") << "3 + 4" << QList<int>{} << "3 + 4";
    const QString ones = QStringLiteral("1+").repeated(100);
    QTest::newRow("a long one is cut before and behind")
        << ones + "x+" + ones << QList<int>{200, 201}
        << "... " + ones.left(40) + "x+" + ones.left(39) + " ...\n" + QString(44, ' ') + "^";
    QTest::newRow("a long one is cut behind only")
        << "x+" + ones << QList<int>{0, 1} << "x+" + ones.left(39) + " ...\n^";
    QTest::newRow("a long one is cut before only, in characters")
        << QStringLiteral("\u00B5").repeated(200) + "x" << QList<int>{400, 401}
        << "... " + QStringLiteral("\u00B5").repeated(40) + "x\n" + QString(44, ' ') + "^";
    QTest::newRow("pieces far apart: the first one is shown")
        << "x+" + ones + "y" << QList<int>{0, 1, 202, 203} << "x+" + ones.left(158) + " ...\n^";
}

void ShownTest::pointing()
{
    QFETCH(QString, text);
    QFETCH(QList<int>, spans);
    QFETCH(QString, shows);
    Error error;
    const auto span = [&](int i) {
        return Span{static_cast<std::uint32_t>(spans[i]), static_cast<std::uint32_t>(spans[i + 1])};
    };
    if (spans.size() >= 2)
        error.place.span = span(0);
    if (spans.size() >= 4)
        error.place.other = span(2);
    QCOMPARE(QString::fromStdString(pointed(text.toStdString(), error)), shows);
}

/// After a change of the table: set PUTEAL_UPDATE_PAGES=1 for this test and look at the difference.
void ShownTest::unitsPageIsWritten()
{
    const QByteArray page = QByteArray::fromStdString(unitsPage(table()));
    QFile file(PUTEAL_SOURCE_DIR "/docs/units.md");
    if (qEnvironmentVariableIsSet("PUTEAL_UPDATE_PAGES")) {
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(page);
        return;
    }
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll(), page);
}

QTEST_APPLESS_MAIN(ShownTest)
#include "shown_test.moc"
