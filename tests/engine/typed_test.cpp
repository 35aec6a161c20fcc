/// What a typed cell is: value with its kind, or a formula, or a refusal at its place.
#include <QTest>

#include <rapidcheck.h>

#include "base/number.h"
#include "units/value.h"

using namespace puteal;

namespace
{

const UnitTable &table()
{
    static const UnitTable units;
    return units;
}

/// A compact account: "value | unit", "below value | unit", "choice 1", "date 20585", "words x", "yes",
/// "formula", "blank".
QString account(const Typed &typed)
{
    if (typed.form != TypedForm::value)
        return typed.form == TypedForm::blank ? "blank" : "formula";
    const TypedValue &v = typed.value;
    switch (v.type.kind) {
    case ValueKind::yesNo:
        return v.number == 1 ? "yes" : "no";
    case ValueKind::choice:
        return "choice " + QString::number(v.number);
    case ValueKind::date:
        return "date " + QString::fromStdString(dateText(static_cast<std::int64_t>(v.number / 86400)));
    case ValueKind::words:
        return "words " + QString::fromStdString(v.words);
    default:
        break;
    }
    const QString bound = v.type.bound == Bound::exact   ? ""
                          : v.type.bound == Bound::below ? "below "
                                                         : "above ";
    QString plain = QString::fromStdString(trimZeros(toFigures(v.unit.fromBase(v.number), 12)));
    return bound + plain + " | " + QString::fromStdString(v.unit.text);
}

} // namespace

class TypedTest : public QObject
{
    Q_OBJECT
private slots:
    void reads_data();
    void reads();
    void setUnits_data();
    void setUnits();
    void choices_data();
    void choices();
    void refusals_data();
    void refusals();
    void figures_data();
    void figures();
    void exactValues();
    void notesOfUnits();
    void datesAreTheCalendar();
    void lists();

private:
    Result<Typed> read(const QString &text, const QString &setUnit = {}, std::uint32_t list = 0);
    ChoiceLists m_lists;
    Unit m_set;
};

Result<Typed> TypedTest::read(const QString &text, const QString &setUnit, std::uint32_t list)
{
    TypedContext context;
    context.units = &table();
    context.lists = &m_lists;
    context.list = list;
    if (!setUnit.isEmpty()) {
        m_set = readUnit(setUnit.toStdString(), table()).value();
        context.setUnit = &m_set;
    }
    return readTyped(text.toStdString(), context);
}

void TypedTest::reads_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *typed, const char *shows) {
        QTest::newRow(rule) << QString::fromUtf8(typed) << shows;
    };
    row("a quantity with its substance", "3.20 mg/L as Fe", "3.2 | mg/L as Fe");
    row("braces", "3.20 mg{Fe}/L", "3.2 | mg/L as Fe");
    row("no blank before the unit", "15%", "15 | %");
    row("percent", "15 %", "15 | %");
    row("a pure number", "7.2", "7.2 | ");
    row("money with a grouping comma", "$1,250", "1250 | $");
    row("money owed", "-$20", "-20 | $");
    row("money per energy", "$0.15/kWh", "0.15 | $/kWh");
    row("people", "4 people", "4 | person");
    row("a fraction of an inch", "3/4 in", "0.75 | in");
    row("a mixed number", "1 1/2 in", "1.5 | in");
    row("a negative mixed number", "-1 1/2 in", "-1.5 | in");
    row("a fraction alone", "3/4", "0.75 | ");
    row("a rate, not a fraction", "0.5 1/day", "0.5 | 1/day");
    row("one over a unit behind a whole number", "5 1/day", "5 | 1/day");
    row("a grouped number", "1,250,000.5 gal", "1250000.5 | gal");
    row("a temperature below zero is one literal", "-5 degC", "-5 | degC");
    row("below the detection limit", "<0.05 mg/L", "below 0.05 | mg/L");
    row("not detected", "ND 0.05 mg/L", "below 0.05 | mg/L");
    row("above the counting range", ">2419 cfu/100mL", "above 2419 | cfu/100mL");
    row("a blank behind the sign", "< 0.05 mg/L", "below 0.05 | mg/L");
    row("yes", "yes", "yes");
    row("no", " no ", "no");
    row("words", "\"to the septic\"", "words to the septic");
    row("words with a date in them", "\"2026-05-12\"", "words 2026-05-12");
    row("a date", "2026-05-12", "date 2026-05-12");
    row("nothing", "  ", "blank");
    row("microgram and minus",
        "\xE2\x88\x92"
        "5 \xC2\xB5g/L",
        "-5 | ug/L");
    row("degree sign and no-break blank",
        "55\xC2\xA0\xC2\xB0"
        "F",
        "55 | degF");
    row("superscript", "5 ft\xC2\xB2", "5 | ft^2");
    row("words keep their typography", "\"5 \xC2\xB5m\"", "words 5 \xC2\xB5m");
    row("a formula of names", "raw_iron * 2", "formula");
    row("a formula that starts with a quantity", "10 gpg + 1 mg/L as Fe", "formula");
    row("arithmetic with two numbers", "3-2", "formula");
    row("a conversion", "1 gpg -> mg/L", "formula");
    row("words with live parts are a formula", "\"use {use}\"", "formula");
    row("a comparison of words", "\"a\" == x", "formula");
    row("a mistyped unit is the parser's business", "5 dya", "formula");
    row("a call", "min(1, 2)", "formula");
}

void TypedTest::reads()
{
    QFETCH(QString, typed);
    QFETCH(QString, shows);
    const auto result = read(typed);
    QVERIFY2(result, result ? "" : result.error().words.c_str());
    QCOMPARE(account(*result).toUtf8(), shows.toUtf8());
    QVERIFY(!result->rewritten);
}

void TypedTest::setUnits_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("setUnit");
    QTest::addColumn<QString>("shows");
    QTest::addColumn<QString>("rewritten");
    const auto row = [](const char *rule, const char *typed, const char *unit, const char *shows,
                        const char *rewritten) {
        QTest::newRow(rule) << typed << unit << shows << rewritten;
    };
    row("a bare number takes the set unit and says so", "6.2", "mg/L as Fe", "6.2 | mg/L as Fe",
        "6.2 mg/L as Fe");
    row("a unit of its own stays", "6200 ug/L as Fe", "mg/L as Fe", "6200 | ug/L as Fe", "");
    row("a bounded reading too", "<0.05", "mg/L as Fe", "below 0.05 | mg/L as Fe", "<0.05 mg/L as Fe");
    row("not detected too", "ND 0.05", "mg/L", "below 0.05 | mg/L", "ND 0.05 mg/L");
    row("money", "1,250", "$", "1250 | $", "$1,250");
    row("money a year", "-45", "$/yr", "-45 | $/yr", "-$45/yr");
    row("a fraction", "3/4", "in", "0.75 | in", "3/4 in");
    row("a temperature", "55", "degF", "55 | degF", "55 degF");
    row("people", "4", "person", "4 | person", "4 person");
    row("a formula is none", "iron * 2", "mg/L", "formula", "");
    row("yes is yes", "yes", "mg/L", "yes", "");
}

void TypedTest::setUnits()
{
    QFETCH(QString, typed);
    QFETCH(QString, setUnit);
    QFETCH(QString, shows);
    QFETCH(QString, rewritten);
    const auto result = read(typed, setUnit);
    QVERIFY(result);
    QCOMPARE(account(*result), shows);
    QCOMPARE(QString::fromStdString(result->rewritten.value_or("")), rewritten);
    if (result->rewritten) {
        const auto again = read(rewritten);
        QVERIFY(again);
        QCOMPARE(account(*again), shows);
    }
}

void TypedTest::choices_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("shows");
    QTest::newRow("a bare word of the list") << "dry well"
                                             << "choice 0";
    QTest::newRow("a quoted one") << "\"surface\""
                                  << "choice 2";
    QTest::newRow("one word") << "septic"
                              << "choice 1";
    QTest::newRow("a name may be a formula") << "drain"
                                             << "formula";
    QTest::newRow("a condition") << "a > 2 ? \"septic\" : \"surface\""
                                 << "formula";
}

void TypedTest::choices()
{
    QFETCH(QString, typed);
    QFETCH(QString, shows);
    const auto result = read(typed, {}, m_lists.intern({"dry well", "septic", "surface"}));
    QVERIFY(result);
    QCOMPARE(account(*result), shows);
}

void TypedTest::refusals_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("piece");
    QTest::addColumn<QString>("fixed");
    QTest::addColumn<QString>("setUnit");
    QTest::addColumn<bool>("choice");
    const auto row = [](const char *rule, const char *typed, const char *words, const char *piece,
                        const char *fixed, const char *unit = "", bool choice = false) {
        QTest::newRow(rule) << QString::fromUtf8(typed) << QString::fromUtf8(words)
                            << QString::fromUtf8(piece) << fixed << unit << choice;
    };
    row("a decimal comma", "1,5 mg/L", "a decimal is written with a point: write 1.5", "1,5", "1.5 mg/L");
    row("a decimal comma after 0", "0,125 mg/L", "a decimal is written with a point: write 0.125", "0,125",
        "0.125 mg/L");
    row("wrong groups", "1,25,000 gal", "commas stand before groups of three figures, as in 1,250.5",
        "1,25,000", "");
    row("points as grouping", "1.250,5 gal", "commas stand before groups of three figures, as in 1,250.5",
        "1.250,5", "");
    row("a point in front", ".5 gal", "a number starts with a figure: write 0.5", ".5", "0.5 gal");
    row("a point behind", "5. gal", "a number does not end with a point: write 5", "5.", "5 gal");
    row("nothing below the line at the end", "3/0", "a fraction has no 0 below the line", "0", "");
    row("nothing below the line", "3/0 in", "a fraction has no 0 below the line", "0", "");
    row("too large", "1e400 gal", "this number is too large: the largest is about 1.7e308", "1e400", "");
    row("day first", "31-12-2026", "a date is year-month-day: write 2026-12-31", "31-12-2026", "2026-12-31");
    row("month first", "12/31/2026", "a date is year-month-day: write 2026-12-31", "12/31/2026",
        "2026-12-31");
    row("slashes", "2026/5/2", "a date is year-month-day: write 2026-05-02", "2026/5/2", "2026-05-02");
    row("a date that may be two", "5/6/2026",
        "a date is year-month-day, as in 2026-05-12; for a calculation put blanks round the signs",
        "5/6/2026", "");
    row("a number that would vanish", "1e-400 mg/L", "this number is too small to be told from 0: write 0",
        "1e-400", "");
    row("a day that is not", "2026-02-30", "`2026-02-30` is not in the calendar", "2026-02-30", "");
    row("not detected without its limit", "ND",
        "not detected needs the limit it was tested to, as in ND 0.05 mg/L", "ND", "");
    row("at most is no reading", "<=0.05 mg/L", "a reading beyond its bound is written with < alone",
        "<=", "");
    row("two lines in a unit", "12 gal/day/person", "a unit has one /: write gal/(day*person)", "/person",
        "12 gal/(day*person)");
    row("two lines behind money", "$5/day/person", "a unit has one /: write $/(day*person)", "/person",
        "$5/(day*person)");
    row("a substance of a volume", "3 gal as Fe", "`gal` has no mass or amount that could be of Fe",
        "gal as Fe", "");
    row("places count bytes of the typed text",
        "\xE2\x88\x92"
        "1,5 mg/L",
        "a decimal is written with a point: write 1.5", "1,5",
        "\xE2\x88\x92"
        "1.5 mg/L");
    row("a bare number under a unit that cancels", "6",
        "6 alone may mean 6 day/yr or the plain number 6: write the unit too", "6", "", "day/yr");
    row("an unlisted word", "French drain",
        "`French drain` is not a choice here: \"dry well\", \"septic\" and \"surface\"", "French drain", "",
        "", true);
    row("an unlisted quoted word", "\"drain\"",
        "`drain` is not a choice here: \"dry well\", \"septic\" and \"surface\"", "\"drain\"", "", "", true);
}

void TypedTest::refusals()
{
    QFETCH(QString, typed);
    QFETCH(QString, words);
    QFETCH(QString, piece);
    QFETCH(QString, fixed);
    QFETCH(QString, setUnit);
    QFETCH(bool, choice);
    const auto result = read(typed, setUnit, choice ? m_lists.intern({"dry well", "septic", "surface"}) : 0);
    QVERIFY(!result);
    const Error &error = result.error();
    QCOMPARE(QString::fromStdString(error.words), words);
    QVERIFY(error.place.span);
    const std::string text = typed.toStdString();
    const Span span = *error.place.span;
    QCOMPARE(QString::fromStdString(text.substr(span.begin, span.end - span.begin)), piece);
    QCOMPARE(error.fixes.empty(), fixed.isEmpty());
    if (!fixed.isEmpty()) {
        std::string after = text;
        const Fix &fix = error.fixes.front();
        after.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
        QCOMPARE(QString::fromStdString(after).toUtf8(), fixed.toUtf8());
        const auto again = read(QString::fromStdString(after));
        QVERIFY(again);
        QCOMPARE(again->form, TypedForm::value);
    }
}

void TypedTest::figures_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<int>("figures");
    QTest::newRow("zeros behind count") << "3.20 mg/L" << 3;
    QTest::newRow("zeros in front do not") << "0.05 mg/L" << 1;
    QTest::newRow("grouped") << "1,250 gal" << 4;
    QTest::newRow("an exponent does not") << "1.5e3 gal" << 2;
    QTest::newRow("money") << "$1,250.00" << 6;
    QTest::newRow("nothing has one") << "0.00 mg/L" << 1;
}

void TypedTest::figures()
{
    QFETCH(QString, typed);
    QFETCH(int, figures);
    QCOMPARE(read(typed)->value.figures, figures);
}

void TypedTest::exactValues()
{
    QCOMPARE(read("0.3 mg/L")->value.number, 0.3);
    QCOMPARE(read("15 %")->value.number, 0.15);
    QCOMPARE(read("$1,640")->value.number, 1640.0);
    QCOMPARE(read("1 gal")->value.number, 3.785411784);
    QCOMPARE(read("1970-01-02")->value.number, 86400.0);
}

void TypedTest::notesOfUnits()
{
    const auto typed = read("3 ppm as Fe");
    QCOMPARE(account(*typed), "3 | mg/L as Fe");
    QCOMPARE(typed->value.notes.size(), std::size_t{1});
    QCOMPARE(typed->value.notes[0].words,
             std::string("ppm is read as mg/L: right in dilute water, not in brine or stock solutions"));
    QVERIFY(read("3 mg/L as Fe")->value.notes.empty());
}

void TypedTest::datesAreTheCalendar()
{
    QCOMPARE(*readDate("1970-01-01"), std::int64_t{0});
    QCOMPARE(*readDate("2000-03-01"), std::int64_t{11017});
    QVERIFY(readDate("2000-02-29"));
    QVERIFY(!readDate("1900-02-29"));
    QVERIFY(!readDate("2026-13-01"));
    QVERIFY(!readDate("2026-1-1"));
    QVERIFY(rc::check("dates read back and follow one another", [] {
        const auto days = *rc::gen::inRange<std::int64_t>(-700000, 2900000);
        RC_ASSERT(readDate(dateText(days)) == std::optional<std::int64_t>(days));
        const QDate there = QDate(1970, 1, 1).addDays(days);
        RC_ASSERT(there.toString("yyyy-MM-dd").toStdString() == dateText(days));
    }));
}

void TypedTest::lists()
{
    ChoiceLists lists;
    QCOMPARE(lists.intern({}), 0U);
    const auto id = lists.intern({"works", "marginal"});
    QCOMPARE(lists.intern({"works", "marginal"}), id);
    QVERIFY(lists.intern({"marginal", "works"}) != id);
    QCOMPARE(*lists.indexOf(id, "marginal"), 1U);
    QVERIFY(!lists.indexOf(id, "Works"));
}

QTEST_APPLESS_MAIN(TypedTest)
#include "typed_test.moc"
