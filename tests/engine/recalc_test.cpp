/// Recalculation as rules: references, errors and what waits for them, limits, reasons, live words.
#include <QTest>

#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::SheetCell;
using puteal::test::sheetText;
using puteal::test::Worked;

namespace
{

using Cells = std::vector<SheetCell>;

SheetCell named(const std::string &name, const std::string &text)
{
    return {text, {"name " + name}};
}

QString q(const std::string &text)
{
    return QString::fromStdString(text);
}

} // namespace

class RecalcTest : public QObject
{
    Q_OBJECT
private slots:
    void formulas_data();
    void formulas();
    void errors_data();
    void errors();
    void bounded_data();
    void bounded();
    void states_data();
    void states();
    void reasons_data();
    void reasons();
    void liveWords_data();
    void liveWords();
    void expectations_data();
    void expectations();
};

void RecalcTest::formulas_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *formula, const char *shows) {
        QTest::newRow(rule) << QString(formula) << QString(shows);
    };
    row("one cell", "flow", "7 gpm");
    row("units convert by themselves", "flow * 24 hr -> gal", "10080 gal");
    row("a literal binds tighter than an operator", "flow / 2 gpm", "3.5");
    row("before power comes the sign", "-2^2", "-4");
    row("a divisor worked out", "1/(1/4 + 1/4)", "2");
    row("choice between two", "flow > 5 gpm ? 1 : 2", "1");
    row("only the branch taken is worked out", "flow > 5 gpm ? 1 : 1/0", "1");
    row("and does not look at the second after a no", "flow > 9 gpm and 1/0 > 1", "no");
    row("or does not look at the second after a yes", "flow > 5 gpm or 1/0 > 1", "yes");
    row("if_error", "if_error(1/0, 5)", "5");
    row("if_error keeps what works", "if_error(flow, 5 gpm)", "7 gpm");
    row("known of a value", "known(flow)", "yes");
    row("known of a blank", "known(empty)", "no");
    row("known of an error", "known(1/0)", "no");
    row("sum skips blanks", "sum(x[1:4])", "17 gpm");
    row("mean skips blanks", "mean(x[1:4])", "5.66667 gpm");
    row("least of a range", "min(x[1:4])", "3 gpm");
    row("greatest of single values", "max(flow, 9 gpm)", "9 gpm");
    row("count", "count(x[1:4])", "3");
    row("standard deviation", "stdev(x[2:4])", "2.3094 gpm");
    row("percentile", "percentile(x[1:4], 50 %)", "7 gpm");
    row("position of the least", "least_at(x[2:3])", "2");
    row("value at a position", "pick(x[1:4], 3)", "3 gpm");
    row("value beside a key", "lookup(3 gpm, x[2:3], x[2:3])", "3 gpm");
    row("rounded up in its unit", "ceil_to(1 gpg + 5 gpg/(mg/L)*1.8 mg/L, 1 gpg)", "10 gpg");
    row("rounded down across a clock", "floor_to(4500 gal/(50 gal/day), 1 day)", "90 day");
    row("comparison has a slack", "0.1 + 0.2 == 0.3", "yes");
    row("clamp", "clamp(12 gpm, 0 gpm, 10 gpm)", "10 gpm");
    row("within", "within(7.1, 7, 0.2)", "yes");
    row("as calcium carbonate", "as_caco3(80 mg/L as Ca)", "199.782 mg/L as CaCO3");
    row("a date and a time", "2026-05-12 + 3 day", "2026-05-15");
    row("dates differ by days", "2026-05-12 - 2026-05-01", "11 day");
    row("list of values", "list(x[2:3])", "7.00 gpm, 3.00 gpm");
    row("words differ", "\"a\" != \"b\"", "yes");
    row("a percent of a cell", "flow * (1 + 5 %)", "7.35 gpm");
}

void RecalcTest::formulas()
{
    QFETCH(QString, formula);
    QFETCH(QString, shows);
    const Worked worked(sheetText(
        {named("empty", ""), named("flow", "7 gpm"), {"3 gpm"}, {"7 gpm"}, {formula.toStdString()}}));
    QCOMPARE(q(worked.shown("5")), shows);
}

void RecalcTest::errors_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("piece");
    const auto row = [](const char *rule, const char *formula, const char *words, const char *piece) {
        QTest::newRow(rule) << QString(formula) << QString(words) << QString(piece);
    };
    row("divides by a literal zero", "2 + 1/0", "divides by zero", "0");
    row("divides by a cell that is zero", "5 gal/still", "divides by zero: `still` is 0 gpm", "still");
    row("divides by what comes to zero", "1/(2 - 2)", "divides by zero: `(2 - 2)` is 0", "(2 - 2)");
    row("an infinite step inside is not lost", "1/(1/0)", "divides by zero", "0");
    row("root of a negative number", "sqrt(-1)", "root of a negative number", "-1");
    row("logarithm of zero", "ln(0)", "logarithm of zero; a logarithm needs a number above 0", "0");
    row("a division by zero is compared", "1/0 > 3", "divides by zero", "0");
    row("too large", "10^200 * 10^200", "the result is too large to be worked out", "10^200 * 10^200");
    row("a step of zero", "ceil_to(7, 0)", "a step must be above 0", "0");
    row("a comparison of nothing", "3 < 1/0", "divides by zero", "0");
    row("min does not swallow an error", "min(3, 1/0)", "divides by zero", "0");
    row("a typed blank", "empty * 2", "`empty` is blank", "empty");
    row("an untyped blank", "nothing * 2", "`nothing` is blank", "nothing");
    row("nothing to choose from", "max(x[1:2])", "nothing to choose from", "max(x[1:2])");
    row("a position too far", "pick(x[3:4], 7)", "a position here is a whole number from 1 to 2; it is 7",
        "7");
    row("the place of a blank", "least_at(x[1:4])", "`empty` is blank", "x[1:4]");
}

void RecalcTest::errors()
{
    QFETCH(QString, formula);
    QFETCH(QString, words);
    QFETCH(QString, piece);
    const Worked worked(sheetText({{"", {"name empty", "unit gpm"}},
                                   {"", {"name nothing"}},
                                   named("still", "0 gpm"),
                                   {"7 gpm"},
                                   {formula.toStdString()}}));
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    QCOMPARE(q(worked.error("5")), words);
    const auto error = worked.program->errorOf(worked.node("5"), worked.values);
    QVERIFY(error->place.span);
    QCOMPARE(
        formula.mid(int(error->place.span->begin), int(error->place.span->end - error->place.span->begin)),
        piece);
}

void RecalcTest::bounded_data()
{
    QTest::addColumn<QString>("rule");
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("shows");
    QTest::addColumn<QString>("caution");
    const auto row = [](const char *name, const char *rule, const char *formula, const char *shows,
                        const char *caution) {
        QTest::newRow(name) << QString(rule) << QString(formula) << QString(shows) << QString(caution);
    };
    row("decided: all of it is below", "", "arsenic <= 0.1 mg/L", "yes", "");
    row("decided: all of it is at most its bound", "", "arsenic <= 0.02 mg/L", "yes", "");
    row("decided: it is less than its bound", "", "arsenic < 0.02 mg/L", "yes", "");
    row("decided: none of it is above", "", "arsenic > 0.02 mg/L", "no", "");
    row("not decided", "", "arsenic <= 0.010 mg/L",
        "error: `<0.0200 mg/L` does not show whether it is `<= 0.010 mg/L`; ask for a finer test", "");
    row("not decided the other way round", "", "0.010 mg/L >= arsenic",
        "error: `<0.0200 mg/L` does not show whether it is `<= 0.010 mg/L`; ask for a finer test", "");
    row("in a sum its bound counts", "", "arsenic + 0.02 mg/L", "0.04 mg/L",
        "`arsenic` is known only as a bound and counts at the bound; that moves the result by more than 1 %: "
        "ask for a finer "
        "test");
    row("in a sum half of it counts", "below half\n", "arsenic + 0.02 mg/L", "0.03 mg/L",
        "`arsenic` is known only as a bound and counts at half the bound; that moves the result by more than "
        "1 %: ask for a "
        "finer test");
    row("in a sum nothing counts", "below zero\n", "arsenic + 0.02 mg/L", "0.02 mg/L",
        "`arsenic` is known only as a bound and counts as zero; that moves the result by more than 1 %: ask "
        "for a finer test");
    row("no caution where it hardly matters", "", "arsenic + 10 mg/L", "10.02 mg/L", "");
    row("in a range too", "", "sum(x[1:2])", "0.04 mg/L",
        "readings known only as a bound count at the bound; that moves the result by more than 1 %: ask for "
        "a finer test");
    row("a plain reference keeps it", "", "arsenic", "<0.02 mg/L", "");
}

void RecalcTest::bounded()
{
    QFETCH(QString, rule);
    QFETCH(QString, formula);
    QFETCH(QString, shows);
    QFETCH(QString, caution);
    const Worked worked(sheetText({named("arsenic", "<0.02 mg/L"), {"0.02 mg/L"}, {formula.toStdString()}},
                                  rule.toStdString()));
    QCOMPARE(q(worked.shown("3")), shows);
    const auto cautions = worked.cautions("3");
    QCOMPARE(q(cautions.empty() ? "" : cautions.front()), caution);
}

void RecalcTest::states_data()
{
    QTest::addColumn<QString>("value");
    QTest::addColumn<QString>("limit");
    QTest::addColumn<QString>("state");
    const auto row = [](const char *rule, const char *value, const char *limit, const char *state) {
        QTest::newRow(rule) << QString(value) << QString(limit) << QString(state);
    };
    row("well below", "0.1 mg/L", "<= 0.3 mg/L", "within");
    row("within 20 % of it", "0.25 mg/L", "<= 0.3 mg/L", "near");
    row("on it", "0.3 mg/L", "<= 0.3 mg/L", "near");
    row("on it, but it must be less", "0.3 mg/L", "< 0.3 mg/L", "outside");
    row("above it", "0.31 mg/L", "<= 0.3 mg/L", "outside");
    row("a band of its own", "0.25 mg/L", "<= 0.3 mg/L near 10 %", "within");
    row("at least", "7.0", ">= 7.0", "near");
    row("below at least", "6.9", ">= 7.0", "outside");
    row("between two ends", "7.5", "6.5 .. 8.5", "within");
    row("close to an end", "6.8", "6.5 .. 8.5", "near");
    row("past an end", "8.6", "6.5 .. 8.5", "outside");
    row("a bound that is surely within", "<0.05 mg/L", "<= 0.3 mg/L", "within");
    row("a bound that does not tell", "<0.5 mg/L", "<= 0.3 mg/L", "missing test");
    row("more than can be counted", ">2419 cfu/mL", "<= 1 cfu/mL", "outside");
    row("no test made", "", "<= 0.3", "missing test");
}

void RecalcTest::states()
{
    QFETCH(QString, value);
    QFETCH(QString, limit);
    QFETCH(QString, state);
    const Worked worked(sheetText({{value.toStdString(), {"name tested", "limit " + limit.toStdString()}},
                                   {"state(tested)"},
                                   {"state(x[2])"}}));
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    QCOMPARE(q(worked.shown("2")), state);
    QCOMPARE(q(limitStateWords()[static_cast<std::size_t>(
                 worked.program->state(worked.at("tested"), worked.values))]),
             state);
    QCOMPARE(q(worked.shown("3")), QString("no limit"));
}

void RecalcTest::reasons_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("reason");
    const auto row = [](const char *rule, const char *formula, const char *reason) {
        QTest::newRow(rule) << QString(formula) << QString(reason);
    };
    row("a reason is given", "because(3 gpm, \"measured\")", "measured");
    row("why reads it", "why(good)", "");
    row("of a choice between two the branch taken", "2 > 1 ? because(1, \"first\") : because(2, \"second\")",
        "first");
    row("and the other", "2 < 1 ? because(1, \"first\") : because(2, \"second\")", "second");
    row("of worst the argument that decided", "worst(good, poor)", "too much iron");
    row("it does not travel into arithmetic", "amount * 2", "");
    row("if_error passes on what it takes", "if_error(because(1, \"kept\"), 2)", "kept");
}

void RecalcTest::reasons()
{
    QFETCH(QString, formula);
    QFETCH(QString, reason);
    const Worked worked(sheetText(
        {{"because(\"works\", \"little iron\")", {"name good", "choices \"works\" \"will not work\""}},
         {"because(\"will not work\", \"too much iron\")",
          {"name poor", "choices \"works\" \"will not work\""}},
         named("amount", "because(5, \"five wells\")"),
         {formula.toStdString()},
         {"why(good)"},
         {"why(worst(good, poor))"}}));
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    QCOMPARE(q(worked.error("4")), QString());
    QCOMPARE(q(worked.reason("4")), reason);
    QCOMPARE(q(worked.shown("5")), QString("little iron"));
    QCOMPARE(q(worked.shown("6")), QString("too much iron"));
}

void RecalcTest::liveWords_data()
{
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *words, const char *shows) {
        QTest::newRow(rule) << QString(words) << QString(shows);
    };
    row("a value as its cell shows it", "\"flow {flow}\"", "flow 7.00 gpm");
    row("in another unit", "\"{flow -> gal/day}\"", "10100 gal/day");
    row("with figures", "\"{flow, 5 figures}\"", "7.0000 gpm");
    row("with places", "\"{flow, 1 places}\"", "7.0 gpm");
    row("a brace", "\"{{flow}}\"", "{flow}}");
    row("one that fails shows its text and the reason", "\"{empty}\"", "{empty} (`empty` is blank)");
    row("one that waits", "\"{broken}\"", "{broken} (`broken` has an error)");
}

void RecalcTest::liveWords()
{
    QFETCH(QString, words);
    QFETCH(QString, shows);
    const Worked worked(sheetText({named("flow", "7 gpm"),
                                   {"", {"name empty", "unit gpm"}},
                                   named("broken", "2 + 1/0"),
                                   {words.toStdString()}}));
    QCOMPARE(q(worked.shown("4")), shows);
}

void RecalcTest::expectations_data()
{
    QTest::addColumn<QString>("tail");
    QTest::addColumn<QString>("words");
    QTest::addColumn<bool>("met");
    const auto row = [](const char *rule, const char *tail, const char *words, bool met) {
        QTest::newRow(rule) << QString(tail) << QString(words) << met;
    };
    row("met", "14 gpm", "twice is 14 gpm as expected", true);
    row("met within a share", "14.1 gpm within 1 %", "twice is 14 gpm as expected", true);
    row("met within an amount", "15 gpm within 1 gpm", "twice is 14 gpm as expected", true);
    row("not met", "15 gpm within 1 %", "twice is 14 gpm, expected 15 gpm within 1 %", false);
    row("in another unit", "20160 gal/day", "twice is 14 gpm as expected", true);
}

void RecalcTest::expectations()
{
    QFETCH(QString, tail);
    QFETCH(QString, words);
    QFETCH(bool, met);
    const Worked worked(sheetText({named("flow", "7 gpm"), named("twice", "flow * 2")}, "",
                                  "expect twice = " + tail.toStdString() + "\n"));
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    const auto results = worked.program->expectations(worked.book, worked.values);
    QCOMPARE(results.size(), std::size_t(1));
    QCOMPARE(q(results[0].words), words);
    QCOMPARE(results[0].met, met);
}

QTEST_APPLESS_MAIN(RecalcTest)
#include "recalc_test.moc"
