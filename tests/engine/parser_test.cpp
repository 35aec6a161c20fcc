/// Reading formulas: what is accepted and how it is meant, what is refused, where and with which way out.
#include <QTest>

#include <cstdlib>
#include <random>

#include <rapidcheck.h>

#include "formula/tree.h"
#include "support/formula_trees.h"
#include "units/value.h"

using namespace puteal;

namespace
{

/// Words that stand for names, keys and functions in these tests.
bool isKnown(const void *, std::string_view word)
{
    static constexpr std::string_view words[] = {"iron", "flow", "cost", "item", "costs", "best", "min"};
    return std::find(std::begin(words), std::end(words), word) != std::end(words);
}

const UnitTable &units()
{
    static const UnitTable table;
    return table;
}

Result<Tree> parse(const std::string &text)
{
    return parseFormula(text, units(), isKnown, nullptr);
}

/// A tree with its grouping made visible: every operator gets its own parentheses.
std::string grouped(const Tree &tree, NodeIndex i)
{
    const Node &node = tree.nodes[i];
    const auto child = [&](std::size_t c) { return grouped(tree, node.children[c]); };
    static constexpr const char *ops[] = {
        "+", "-", "*", "/", "^", "==", "!=", "<", "<=", ">", ">=", "and", "or"};
    switch (node.kind) {
    case NodeKind::negate:
        return "(- " + child(0) + ")";
    case NodeKind::logicalNot:
        return "(not " + child(0) + ")";
    case NodeKind::binary:
        return "(" + child(0) + " " + ops[static_cast<std::size_t>(node.op)] + " " + child(1) + ")";
    case NodeKind::ternary:
        return "(" + child(0) + " ? " + child(1) + " : " + child(2) + ")";
    case NodeKind::convert:
        return "(" + child(0) + " -> " + tree.units[node.unit].text + ")";
    default:
        return tree.text.substr(node.span.begin, node.span.end - node.span.begin);
    }
}

/// Takes the marks « » out of a text; they stand around the piece an error must point at.
std::string unmarked(const std::string &marked, Span &span)
{
    const std::string open = "\xC2\xAB", close = "\xC2\xBB";
    const std::size_t begin = marked.find(open), end = marked.find(close);
    if (begin == std::string::npos || end == std::string::npos)
        qFatal("a row without « »");
    span = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end - open.size())};
    return marked.substr(0, begin) + marked.substr(begin + open.size(), end - begin - open.size()) +
           marked.substr(end + close.size());
}

std::string mended(const std::string &text, const Fix &fix)
{
    std::string result = text;
    return result.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
}

/// All formulas the fixes lead to, parted by " | ".
std::string mendedAll(const std::string &text, const Error &error)
{
    std::string all;
    for (const Fix &fix : error.fixes)
        all += (all.empty() ? "" : " | ") + mended(text, fix);
    return all;
}

} // namespace

class ParserTest : public QObject
{
    Q_OBJECT
private slots:
    void initTestCase();
    void shows_data();
    void shows();
    void groups_data();
    void groups();
    void refused_data();
    void refused();
    void bounds();
    void literals();
    void temperatureIsOneLiteral();
    void liveWords();
    void wordsCells_data();
    void wordsCells();
    void wrongWordsCells_data();
    void wrongWordsCells();
    void hints_data();
    void hints();
    void spansAreTypedBytes();
    void printsBack();
    void randomTreesReadBack();
    void mutationsNeverCrash();
};

namespace
{
constexpr unsigned seed = 20261125;
} // namespace

void ParserTest::initTestCase()
{
    qputenv("RC_PARAMS", "seed=20261125 max_success=400");
    qInfo("seed %u", seed);
}

void ParserTest::shows_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const char *formula, const char *shows) {
        QTest::newRow(rule) << QString::fromUtf8(formula) << QString::fromUtf8(shows);
    };
    row("blanks around operators do not matter", "a+b*c", "a + b * c");
    row("parentheses that change nothing go", "(a)+((b*c))", "a + b * c");
    row("parentheses that matter stay", "(a+b)*c", "(a + b) * c");
    row("a power is written tight", "x ^ 2", "x^2");
    row("a negative exponent", "10^-3", "10^-3");
    row("an exponent may be a name", "x^n", "x^n");
    row("an exponent may be worked out", "x^(1/2)", "x^(1 / 2)");
    row("a unit right after the number", "3 mg/L", "3 mg/L");
    row("the blank before a unit may miss", "3mg/L", "3 mg/L");
    row("min behind a number is minutes", "3 min", "3 min");
    row("min( is the function", "min(3 min, 4 min)", "min(3 min, 4 min)");
    row("a unit with a power", "3 ft^2", "3 ft^2");
    row("units joined inside parentheses", "62.5 gal/(person*day)", "62.5 gal/(person*day)");
    row("per something, with a one", "0.5 1/day", "0.5 1/day");
    row("per something, with a power", "0.5 day^-1", "0.5 1/day");
    row("behind a slash a unit word wins", "3 mg/day", "3 mg/day");
    row("behind a slash a name divides", "3 mg/iron", "3 mg / iron");
    row("a quotient in parentheses", "3 mg/(iron + 1)", "3 mg / (iron + 1)");
    row("as says of what", "3.2 mg/L as Fe", "3.2 mg/L as Fe");
    row("braces say of what too", "3.2 mg{Fe}/L", "3.2 mg/L as Fe");
    row("two substances need braces", "0.64 mg{Cl2}/mg{Fe}", "0.64 mg{Cl2}/mg{Fe}");
    row("money stands before its number", "$5", "$5");
    row("money per something", "$0.15/kWh", "$0.15/kWh");
    row("money per amount of something", "$0.30/lb as NaCl", "$0.3/lb as NaCl");
    row("money divided by a name", "$5/iron", "$5 / iron");
    row("negative money", "-$5", "-$5");
    row("percent is a unit", "15%", "15 %");
    row("a date", "2026-05-12", "2026-05-12");
    row("days between dates", "2026-05-12 - 2026-05-01", "2026-05-12 - 2026-05-01");
    row("blanks make whole numbers arithmetic", "2026 - 5 - 12", "2026 - 5 - 12");
    row("plurals are spellings", "4 people * 3 days", "4 person * 3 day");
    row("l is L", "3 mg/l", "3 mg/L");
    row("a name", "raw_iron", "raw_iron");
    row("a name of another sheet", "costs.total", "costs.total");
    row("a line of a column", "cost[8]", "cost[8]");
    row("lines of a column", "cost[2:9]", "cost[2:9]");
    row("the line above", "cost[-1]", "cost[-1]");
    row("running", "sum(cost[1:+0])", "sum(cost[1:+0])");
    row("the whole column", "costs.cost[:]", "costs.cost[:]");
    row("a deleted cell", "raw_iron[gone]", "raw_iron[gone]");
    row("blanks in brackets", "cost[ 2 : 9 ]", "cost[2:9]");
    row("pi", "2*pi*r", "2 * pi * r");
    row("yes and no", "yes == no", "yes == no");
    row("quoted words", "\"works\"", "\"works\"");
    row("escapes in words", "\"a \\\"b\\\" \\\\ c\"", "\"a \\\"b\\\" \\\\ c\"");
    row("live words", "\"use {use -> gal/day, 2 places}\"", "\"use {use -> gal/day, 2 places}\"");
    row("a brace in words", "\"{{x}\"", "\"{{x}\"");
    row("a call without arguments", "f()", "f()");
    row("a comma parts arguments", "max(1,5)", "max(1, 5)");
    row("convert at the end", "a+b->gal/day", "a + b -> gal/day");
    row("convert to per something", "x -> 1/day", "x -> 1/day");
    row("convert and say of what", "x -> mg/L as Fe", "x -> mg/L as Fe");
    row("convert to money", "x -> $/yr", "x -> $/yr");
    row("micro sign, at least", "3 \xC2\xB5S/cm \xE2\x89\xA5 2 uS/cm", "3 uS/cm >= 2 uS/cm");
    row("superscripts and the multiplication sign", "3 m\xC2\xB2 \xC3\x97 h\xC2\xB3", "3 m^2 * h^3");
    row("middle dot, division sign, minus sign",
        "a\xC2\xB7"
        "b\xC3\xB7"
        "c\xE2\x88\x92"
        "d",
        "a * b / c - d");
    row("degree sign",
        "12 \xC2\xB0"
        "C",
        "12 degC");
    row("at most, not equal", "a \xE2\x89\xA4 b or a \xE2\x89\xA0 b", "a <= b or a != b");
    row("curly quotes", "\xE2\x80\x9Cworks\xE2\x80\x9D", "\"works\"");
    row("characters in words stay", "\"3 m\xC2\xB2 \xE2\x80\x9Cso\xE2\x80\x9D\"",
        "\"3 m\xC2\xB2 \xE2\x80\x9Cso\xE2\x80\x9D\"");
    row("no-break and thin blanks", "3\xC2\xA0mg/L\xE2\x80\x89+ a", "3 mg/L + a");
    row("a name may equal a function", "min + min(1, 2)", "min + min(1, 2)");
}

void ParserTest::shows()
{
    QFETCH(QString, formula);
    QFETCH(QString, shows);
    const auto tree = parse(formula.toStdString());
    QVERIFY2(tree.has_value(), tree ? "" : tree.error().words.c_str());
    QCOMPARE(QString::fromStdString(printFormula(*tree)), shows);
    const auto again = parse(shows.toStdString());
    QVERIFY(again.has_value());
    QVERIFY(test::sameTree(*tree, *again));
}

void ParserTest::groups_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("grouping");
    QTest::newRow("minus before a power takes the power") << "-x^2"
                                                          << "(- (x ^ 2))";
    QTest::newRow("a literal binds tighter than any operator") << "6 gal / 3 gal/day"
                                                               << "(6 gal / 3 gal/day)";
    QTest::newRow("a literal in a power of a literal") << "2^3 * 4 ft"
                                                       << "((2 ^ 3) * 4 ft)";
    QTest::newRow("times before plus") << "a + b * c"
                                       << "(a + (b * c))";
    QTest::newRow("minus from the left") << "a - b - c"
                                         << "((a - b) - c)";
    QTest::newRow("division from the left") << "a / b / c"
                                            << "((a / b) / c)";
    QTest::newRow("and before or") << "a or b and c"
                                   << "(a or (b and c))";
    QTest::newRow("comparison before and") << "a < b and c > d"
                                           << "((a < b) and (c > d))";
    QTest::newRow("a choice last") << "a or b ? c : d"
                                   << "((a or b) ? c : d)";
    QTest::newRow("choices to the right") << "a ? b : c ? d : e"
                                          << "(a ? b : (c ? d : e))";
    QTest::newRow("minus of minus") << "a - -b"
                                    << "(a - (- b))";
    QTest::newRow("minus before a product takes its first factor") << "-a * b"
                                                                   << "((- a) * b)";
    QTest::newRow("convert takes the whole formula") << "a ? b : c -> gal"
                                                     << "((a ? b : c) -> gal)";
}

void ParserTest::groups()
{
    QFETCH(QString, formula);
    QFETCH(QString, grouping);
    const auto tree = parse(formula.toStdString());
    QVERIFY2(tree.has_value(), tree ? "" : tree.error().words.c_str());
    QCOMPARE(QString::fromStdString(grouped(*tree, tree->root)), grouping);
}

void ParserTest::refused_data()
{
    QTest::addColumn<QString>("marked");
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("fixes");
    const auto row = [](const char *rule, const char *marked, const char *words, const char *fixes = "") {
        QTest::newRow(rule) << QString::fromUtf8(marked) << QString::fromUtf8(words)
                            << QString::fromUtf8(fixes);
    };
    row("a decimal comma", "«1,5» mg/L", "a comma stands only between arguments: write 1.5", "1.5 mg/L");
    row("a decimal comma with its unit in a call", "max(«1,5» gal, 2 gal)",
        "a decimal is written with a point: write 1.5", "max(1.5 gal, 2 gal) | max(1, 5 gal, 2 gal)");
    row("a decimal comma in parentheses of a call", "max((«1,5»), 2)",
        "a comma stands only between arguments: write 1.5", "max((1.5), 2)");
    row("a grouped number", "«1,250» + a", "numbers in a formula have no grouping commas: write 1250",
        "1250 + a");
    row("a grouped number with decimals", "«1,250.50»",
        "numbers in a formula have no grouping commas: write 1250.50", "1250.50");
    row("a grouped number in a call is not two arguments", "max(«1,250»)",
        "numbers in a formula have no grouping commas: write 1250", "max(1250) | max(1, 250)");
    row("grouped money", "$«1,250»", "numbers in a formula have no grouping commas: write 1250", "$1250");
    row("a comma outside a call", "a«,» b", "a comma stands only between the arguments of a function");
    row("a point first", "«.5» + a", "a number starts with a digit: write 0.5", "0.5 + a");
    row("a point last", "«5.»", "a number does not end with a point: write 5", "5");
    row("two points", "«1.2.3»", "`1.2.3` is no number: it has two points");
    row("a power of a power", "«2^3^2»", "`2^3^2` can be read two ways: write (2^3)^2 or 2^(3^2)",
        "(2^3)^2 | 2^(3^2)");
    row("an exponent with a unit", "2^«3 ft»", "an exponent is a plain number, not `3 ft`: write 2^3 * 1 ft",
        "2^3 * 1 ft");
    row("an exponent in percent", "2^«50 %»", "an exponent is a plain number, not `50 %`: write 2^(50 %)",
        "2^(50 %)");
    row("minus a name as an exponent", "x^«-n»",
        "an exponent is a number, a name or stands in parentheses: write x^(-n)", "x^(-n)");
    row("a call as an exponent", "x^«sqrt(2)»",
        "an exponent is a number, a name or stands in parentheses: write x^(sqrt(2))", "x^(sqrt(2))");
    row("a power behind a unit with a blank", "«3 ft» ^2", "write (3 ft)^2 for a power of the whole amount",
        "(3 ft) ^2");
    row("two slashes in a unit", "3 mg/L«/day»", "a unit has one /: write mg/(L*day)", "3 mg/(L*day)");
    row("two slashes, people", "12 gal/day«/person»", "a unit has one /: write gal/(day*person)",
        "12 gal/(day*person)");
    row("two slashes in money", "$0.15/kWh«/day»", "a unit has one /: write $/(kWh*day)", "$0.15/(kWh*day)");
    row("units joined by a bare *", "62.5 «gal/person*day»",
        "units are joined by * only inside parentheses: write gal/(person*day)", "62.5 gal/(person*day)");
    row("a fraction with a unit", "«1/2 gal»", "`1/2 gal` can be read two ways: write 0.5 gal", "0.5 gal");
    row("a fraction behind a factor", "a * «1/2 gal»", "`1/2 gal` can be read two ways: write 0.5 gal",
        "a * 0.5 gal");
    row("a mixed fraction", "«1 1/2» in", "a formula takes no fractions like `1 1/2`: write 1.5", "1.5 in");
    row("= alone", "a «=» b", "write == to compare", "a == b");
    row("a leading =", "«=»a + b", "a formula has no leading =: leave it out", "a + b");
    row("=< is turned", "a «=<» b", "write <= instead of =<", "a <= b");
    row("<> of other languages", "a «<>» b", "write != instead of <>", "a != b");
    row("three compared", "«a < b < c»", "two things are compared at a time: write a < b and b < c",
        "a < b and b < c");
    row("a line that is worked out", "«item[best]» + 1",
        "a line that is worked out is taken with pick: write pick(item[:], best)", "pick(item[:], best) + 1");
    row("a line that is worked out on another sheet", "«costs.item[best - 1]»",
        "a line that is worked out is taken with pick: write pick(costs.item[:], best - 1)",
        "pick(costs.item[:], best - 1)");
    row("half a line", "cost[«1.5»]", "a line number is a whole number");
    row("a range without its end", "cost«[2:»]",
        "a range names both its lines, for example [2:9], or [:] for the whole column");
    row("a bracket not closed", "cost«[»2", "this bracket is not closed");
    row("an empty bracket", "cost«[]»", "a line number stands in brackets, for example [8], [-1] or [2:9]");
    row("a bracket behind nothing that has lines", "(a)«[»2]",
        "brackets stand right behind a column key, for example cost[8]");
    row("a mistyped unit", "3 mg/«dya»", "`dya` is no unit; day?", "3 mg/day");
    row("a mistyped unit behind a number", "3 «dya»", "`dya` is no unit; day?", "3 day");
    row("a mistyped unit behind ->", "iron -> gal/«dya»", "`dya` is no unit; day?", "iron -> gal/day");
    row("a name behind a number", "3 «iron»", "an operator is missing before `iron`: write 3 * iron",
        "3 * iron");
    row("a function behind a number", "3 «min»(a, b)", "an operator is missing before `min`: write 3 * min",
        "3 * min(a, b)");
    row("no unit behind ->", "iron «->»", "a unit is missing after ->");
    row("-> inside parentheses", "(iron «->» gal)", "`->` stands once, at the end of the whole formula");
    row("-> twice", "iron -> gal «->» L", "`->` stands once, at the end of the whole formula");
    row("an unknown substance", "3 mg/L as «Fx»", "`Fx` is no substance known here; Fe?", "3 mg/L as Fe");
    row("as without a unit", "3 «as» Fe", "`as` follows a unit of mass or amount, for example 3 mg/L as Fe");
    row("as behind a name", "iron «as» Fe", "`as` follows a unit, in a number or behind `->`");
    row("as without a substance", "3 mg/L «as»", "a substance is missing after `as`, for example as Fe");
    row("no amount to be of something", "3 «ft as Fe»", "`ft` has no mass or amount that could be of Fe");
    row("$ behind the number", "«5 $»", "the $ stands before the amount: write $5", "$5");
    row("$ with a blank", "«$ »5", "the amount follows the $ without a blank", "$5");
    row("$ alone", "«$» + a", "an amount is missing after $, for example $5");
    row("a character that means nothing", "a «#» b", "`#` has no meaning in a formula");
    row("a letter of another alphabet", "«\xC3\xB6»l + a", "`\xC3\xB6` has no meaning in a formula");
    row("the Greek letter pi", "2 * «\xCF\x80»", "write pi", "2 * pi");
    row("&&", "a«&&»b", "write and instead of &&", "a and b");
    row("|", "a «|» b", "write or instead of |", "a or b");
    row("!", "«!a»", "write not(a) instead of !", "not(a)");
    row("! before parentheses", "«!(a > b)» or c", "write not(a > b) instead of !", "not(a > b) or c");
    row("not without parentheses", "«not a»", "not takes parentheses: write not(a)", "not(a)");
    row("single quotes", "«'works'»", "words stand in double quotation marks: write \"works\"", "\"works\"");
    row("a quotation mark left open", "«\"»works", "the closing quotation mark is missing", "\"works\"");
    row("a wrong escape", "\"a «\\»q\"",
        "after a backslash only \", \\, n, t or u{hex} may stand: write \\\\ for a backslash", "\"a \\\\q\"");
    row("nothing", "«»", "the formula is empty");
    row("only blanks", "«  »", "the formula is empty");
    row("a parenthesis left open", "«(»a + b", "this parenthesis is not closed", "(a + b)");
    row("a call left open", "min«(»a, b", "this parenthesis is not closed", "min(a, b)");
    row("a parenthesis too much", "a + b«)»", "this parenthesis closes nothing", "a + b");
    row("empty parentheses", "a * «()»", "nothing stands between the parentheses");
    row("an argument missing", "f(a,«,» b)", "an argument is missing before `,`");
    row("an argument missing at the end", "f(a,«)»", "an argument is missing before `)`");
    row("a semicolon", "f(a«;» b)", "arguments are parted by commas", "f(a, b)");
    row("words after the end", "a + b «c»", "an operator is missing before `c`");
    row("a number after the end", "a «5»", "an operator is missing before `5`");
    row("parentheses are no product", "2«(»3)", "an operator is missing before `(`");
    row("a value missing at the end", "a «+»", "a value is missing at the end");
    row("a value missing in the middle", "a + «*» b", "a value is missing before `*`");
    row("a value missing before a word", "a + «and» b", "a value is missing before `and`");
    row("a plus in front", "«+»a", "a plus sign stands only between two values: leave it out", "a");
    row("** for a power", "a«**»2", "write ^ for a power", "a^2");
    row("a question without otherwise", "a «?» b", "`?` needs `:` and what holds otherwise");
    row("a colon alone", "a «:» b", "`:` belongs to `? :` or to a range in brackets");
    row("capitals in a name", "«Iron» + 1", "names are written in lower case: write iron", "iron + 1");
    row("capitals in a function", "«MIN»(a)", "functions are written in lower case: write min", "min(a)");
    row("three whole numbers joined by dashes", "«5-3-1»",
        "`5-3-1` could be a date: write a date as 2026-05-12, or 5 - 3 - 1 to calculate", "5 - 3 - 1");
    row("no calendar date", "«2026-02-30»",
        "`2026-02-30` could be a date: write a date as 2026-05-12, or 2026 - 02 - 30 to calculate",
        "2026 - 02 - 30");
    row("a date with slashes", "«2026/05/12»",
        "`2026/05/12` could be a date: write a date as 2026-05-12, or 2026 / 05 / 12 to calculate",
        "2026-05-12 | 2026 / 05 / 12");
    row("a date the other way round", "«31-12-2026» - a",
        "`31-12-2026` could be a date: write a date as 2026-05-12, or 31 - 12 - 2026 to calculate",
        "2026-12-31 - a | 31 - 12 - 2026 - a");
    row("a number too large", "«1e400»", "`1e400` is outside the range of numbers");
    row("a number too small", "«1e-400»", "`1e-400` is outside the range of numbers");
    row("blanks that group figures", "«1 200» gal + a",
        "numbers in a formula have no grouping blanks: write 1200", "1200 gal + a");
    row("blanks that group figures, with decimals", "«1 000 000.5»",
        "numbers in a formula have no grouping blanks: write 1000000.5", "1000000.5");
    row("a mark that groups figures", "1«'»000", "numbers in a formula have no grouping marks: leave ' out",
        "1000");
    row("a low line that groups figures", "«1_000» * a",
        "numbers in a formula have no grouping marks: write 1000", "1000 * a");
    row("a number and its thousands", "$5«k»",
        "write the number out, as in 24000, or with a power of ten, as in 24e3");
    row("thousands of grains", "24«k» grain",
        "write the number out, as in 24000, or with a power of ten, as in 24e3");
    row("x as a sign", "10 gpg «x» 3", "write * to multiply", "10 gpg * 3");
    row("x as a sign behind a bare number", "2 «x» 4 ft", "write * to multiply", "2 * 4 ft");
    row("a share of something", "5 % «of» 200 gal", "write * to take a share of something", "5 % * 200 gal");
    row("per in words", "5 gal «per min»", "write /min for per min", "5 gal/min");
    row("per in words, no unit behind it", "5 gal «per» c", "an operator is missing before `per`");
    row("of what it is without as", "3 mg/L «Fe» + a", "write as Fe to say of what it is",
        "3 mg/L as Fe + a");
    row("of what it is in words", "3 mg/L «arsenic»", "write as As to say of what it is", "3 mg/L as As");
    row("into another unit in words", "1 gal «in» L", "write -> to show it in L", "1 gal -> L");
    row("into another unit by to", "a «to» degF", "write -> to show it in degF", "a -> degF");
    row("into another unit by as", "1 gal «as L»", "`as` says of what; to show it in L write -> L",
        "1 gal -> L");
    row("more or less", "5 mg/L «+-» 1 mg/L",
        "`+-` is no operator: how far a reading may be off is the tolerance of its cell; to subtract write -",
        "5 mg/L - 1 mg/L");
    row("more or less with a slash", "5 «+/-» 1",
        "`+/-` is no operator: how far a reading may be off is the tolerance of its cell; to subtract write "
        "-",
        "5 - 1");
    row("more or less in one sign", "5 «±» 1",
        "`±` is no operator: how far a reading may be off is the tolerance of its cell; to subtract write -");
    row("a dash before a unit", "2«-»inch * a", "a unit follows its number without a dash: write 2 inch",
        "2 inch * a");
    row("feet by a mark", "5«'»", "feet are written ft and inches in, as in 5 ft + 3 in", "5 ft");
    row("inches by a mark", "5 * 2«\"»", "feet are written ft and inches in, as in 5 ft + 3 in", "5 * 2 in");
    row("feet and inches without a sign", "5 ft «3» in",
        "an operator is missing before `3`: to add it write +", "5 ft + 3 in");
    row("semicolons between arguments", "max(1.5«;» 2)", "arguments are parted by commas", "max(1.5, 2)");
    row("semicolons and decimal commas", "max(1,5«;» 2,5)",
        "arguments are parted by commas, and a decimal is written with a point", "max(1.5, 2.5)");
    row("a semicolon outside a call", "a«;» b", "`;` has no meaning here: a formula gives one value");
    row("two points in a row are no end of a number", "5«..»10",
        "`..` stands only in a limit: a formula takes one value here");
    row("pi behind a number", "2 «pi» * c", "an operator is missing before `pi`: write 2 * pi", "2 * pi * c");
    row("an address of a spreadsheet", "«A1» + c",
        "`A1` is no cell here: write its name, or its column and line, as in cost[8]");
    row("an address with signs", "2 * «$A$1»",
        "`$A$1` is no cell here: write its name, or its column and line, as in cost[8]");
    row("a row and a column", "«R1C1»",
        "`R1C1` is no cell here: write its name, or its column and line, as in cost[8]");
    row("a range of a spreadsheet", "sum(«A1:A5»)",
        "`A1:A5` is no cell here: write its name, or its column and line, as in cost[2:8]");
    row("a sheet with an exclamation mark", "«Water!raw_iron» * 2",
        "a cell of another sheet is written with a point: write water.raw_iron", "water.raw_iron * 2");
    row("a sheet and an address", "«water!A1»",
        "a cell of another sheet is written with a point, as in water.raw_iron or water.amount[8]");
    row("a condition of other languages", "«TRUE» and a", "a condition is yes or no: write yes", "yes and a");
    row("IF as a function", "«IF»(a > 1, 2, 3)", "`IF` is no function: write condition ? this : that");
    row("AND as a function", "«AND»(a > 1, c > 2)", "`AND` is no function: write this and that");
    row("or as a function", "«or»(a > 1, c > 2)", "`or` is no function: write this or that");
    row("three signs of equality", "a «===» c", "write == instead of ===", "a == c");
    row("a factorial", "10«!»", "`!` has no meaning behind a value");
    row("percent twice", "50 %«%»", "`%` stands once, right behind a number");
    row("a laboratory's word for not detected", "«BDL»",
        "what was not detected is written ND 0.05 mg/L, with the limit it was tested to");
    row("a laboratory's word for too many", "«TNTC»",
        "too many to count is written > with the most that was counted, as in >200 cfu/100mL");
    row("a test that was not made", "«N/A»", "a test that was not made leaves its cell blank");
    row("a month in words", "«12 May 2026» + 3 day", "a date is year-month-day: write 2026-05-12",
        "2026-05-12 + 3 day");
    row("the month first", "«May 12, 2026»", "a date is year-month-day: write 2026-05-12", "2026-05-12");
    row("dashes and a month", "«12-May-2026»", "a date is year-month-day: write 2026-05-12", "2026-05-12");
    row("a month without that day", "«31 Feb 2026»", "`2026-02-31` is not in the calendar");
    row("a date with points", "«12.5.2026»", "a date is year-month-day: write 2026-05-12", "2026-05-12");
    row("a power without its sign", "5 gpm/«ft2»", "`ft2` is no unit: write ft^2", "5 gpm/ft^2");
    row("a power in words", "5 gpm/«sq ft» * a", "`sq ft` is no unit: write ft^2", "5 gpm/ft^2 * a");
    row("a power in long words", "1 «cubic foot»", "`cubic foot` is no unit: write ft^3", "1 ft^3");
    row("a unit in capitals", "5 «GPM»", "`GPM` is no unit: write gpm", "5 gpm");
    row("an angle", "sin(30 «deg»)",
        "`deg` is no unit: a temperature is degF or degC, an angle a plain number, as in 30 * pi / 180");
    row("an en dash", "5 «–» a", "write - for minus", "5 - a");
    row("a half as one character", "«½» * a", "write 0.5 for a half", "0.5 * a");
    row("a degree sign alone", "50 «°»", "write degF or degC");
    row("another currency", "«€»5", "money is in dollars, as in $5");
    row("a blank of no width", "a«\xE2\x80\x8B» + 1", "an invisible character stands here: delete it",
        "a + 1");
    row("single curly marks", "a == «‘works’»", "words stand in double quotation marks: write \"works\"",
        "a == \"works\"");
    row("brackets for parentheses", "«[»1 + 2]",
        "brackets stand right behind a column key, for example cost[8]");
    row("about", "«~»5", "a formula takes the value itself: leave ~ out", "5");
    row("a root sign", "«√»2", "write sqrt( ) for a root");
    row("a live value that calculates", "\"now «{iron + 2}»\"",
        "braces show one cell, perhaps in a unit: calculate in a cell and show that", "\"now {{iron + 2}\"");
    row("a brace left open", "\"now «{»iron\"",
        "this brace is not closed: write {{ for a brace that is only a brace", "\"now {{iron\"");
    row("a control character", "a«\x01» + b", "a control character has no meaning here");
}

void ParserTest::refused()
{
    QFETCH(QString, marked);
    QFETCH(QString, words);
    QFETCH(QString, fixes);
    Span span;
    const std::string text = unmarked(marked.toStdString(), span);
    const auto tree = parse(text);
    QVERIFY2(!tree.has_value(), "this formula must be refused");
    const Error &error = tree.error();
    QCOMPARE(QString::fromStdString(error.words), words);
    QVERIFY(error.place.span.has_value());
    QCOMPARE(QString("%1..%2").arg(error.place.span->begin).arg(error.place.span->end),
             QString("%1..%2").arg(span.begin).arg(span.end));
    QCOMPARE(QString::fromStdString(mendedAll(text, error)), fixes);
    for (const Fix &fix : error.fixes)
        QVERIFY2(parse(mended(text, fix)).has_value(), mended(text, fix).c_str());
}

void ParserTest::bounds()
{
    const auto nested = [](std::size_t n) { return std::string(n, '(') + "1" + std::string(n, ')'); };
    QVERIFY(parse(nested(64)).has_value());
    auto deep = parse(nested(65));
    QVERIFY(!deep.has_value());
    QCOMPARE(deep.error().words, std::string("a formula may be nested 64 levels deep; this one has 65"));
    QCOMPARE(deep.error().kind, ErrorKind::limit);
    QCOMPARE(deep.error().place.span->begin, 64U);
    QCOMPARE(parse(nested(70)).error().words,
             std::string("a formula may be nested 64 levels deep; this one has 70"));
    QVERIFY(!parse(std::string(65, '-') + "a").has_value());

    const auto call = [](int n) {
        std::string text = "max(1";
        for (int i = 1; i < n; ++i)
            text += ", 1";
        return text + ")";
    };
    QVERIFY(parse(call(64)).has_value());
    const auto many = parse(call(65));
    QVERIFY(!many.has_value());
    QCOMPARE(many.error().words, std::string("a call may have 64 arguments; this one has 65"));

    // the bound counts characters, not bytes
    const auto longText = [](int n) {
        return "\"" + std::string(static_cast<std::size_t>(n) - 3, 'x') + "\xC2\xB5\"";
    };
    QVERIFY(parse(longText(2000)).has_value());
    const auto tooLong = parse(longText(2001));
    QVERIFY(!tooLong.has_value());
    QCOMPARE(tooLong.error().words, std::string("a formula may have 2,000 characters; this one has 2,001"));
    QCOMPARE(tooLong.error().place.span->end, 2002U);
    QVERIFY(!parse("\"\xFF\"").has_value());
}

void ParserTest::literals()
{
    const auto number = [](const char *text) {
        const auto tree = parse(text);
        return tree ? tree->nodes[tree->root].number : std::nan("");
    };
    QCOMPARE(number("0.3 mg/L"), 0.3);
    QCOMPARE(number("15 %"), 15 * 0.01);
    QCOMPARE(number("1e3"), 1000.0);
    QCOMPARE(number("$5"), 5.0);
    QCOMPARE(number("1970-01-11"), 10.0); // days since 1970-01-01
    const auto tree = parse("3.2 mg/L as Fe");
    QCOMPARE(tree->nodes[tree->root].asSubstance, static_cast<std::int32_t>(*UnitTable::substanceId("Fe")));
    QCOMPARE(tree->nodes[tree->root].typed, 3.2);
    QCOMPARE(tree->units[tree->nodes[tree->root].unit].text, std::string("mg/L as Fe"));
}

void ParserTest::temperatureIsOneLiteral()
{
    const auto one = parse("-5 degC");
    QCOMPARE(one->nodes[one->root].kind, NodeKind::number);
    QCOMPARE(one->nodes[one->root].typed, -5.0);
    QVERIFY(std::abs(one->nodes[one->root].number - 268.15) < 1e-9);
    QCOMPARE(one->nodes[one->root].span.begin, 0U);
    QCOMPARE(parse("-5 ft")->nodes[parse("-5 ft")->root].kind, NodeKind::negate);
    QCOMPARE(parse("-(5 degC)")->nodes[parse("-(5 degC)")->root].kind, NodeKind::negate);
}

void ParserTest::liveWords()
{
    const auto tree = parse("\"a {iron} b {{c} {flow -> gal/day, 3 figures} d\"");
    QVERIFY(tree.has_value());
    const Node &root = tree->nodes[tree->root];
    const auto &parts = tree->wordsParts[root.extra];
    QCOMPARE(parts.size(), std::size_t{2});
    QCOMPARE(parts[0].before, std::string("a "));
    QCOMPARE(parts[1].before, std::string(" b {c} "));
    QCOMPARE(parts[1].figures, 3);
    QCOMPARE(parts[1].places, -1);
    QCOMPARE(tree->nodes[parts[1].value].kind, NodeKind::convert);
    QCOMPARE(root.name, std::string(" d"));
    QCOMPARE(tree->references.size(), std::size_t{2});
}

void ParserTest::wordsCells_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<int>("live");
    QTest::newRow("plain words") << "Raw iron, 50% \"dissolved\" = x" << 0;
    QTest::newRow("a backslash is a character here") << "C:\\new" << 0;
    QTest::newRow("a live value") << "use {use -> gal/day} a day" << 1;
    QTest::newRow("two live values") << "{a}{costs.b[3], 2 places}" << 2;
    QTest::newRow("a doubled brace") << "{{a}" << 0;
    QTest::newRow("nothing") << "" << 0;
}

void ParserTest::wordsCells()
{
    QFETCH(QString, text);
    QFETCH(int, live);
    const auto tree = parseWordsCell(text.toStdString(), units());
    QVERIFY2(tree.has_value(), tree ? "" : tree.error().words.c_str());
    QCOMPARE(int(tree->wordsParts[tree->nodes[tree->root].extra].size()), live);
    QCOMPARE(QString::fromStdString(printWordsCell(*tree)), text);
}

void ParserTest::wrongWordsCells_data()
{
    QTest::addColumn<QString>("marked");
    QTest::addColumn<QString>("words");
    QTest::newRow("a brace left open")
        << "set «{»a"
        << "this brace is not closed: write {{ for a brace that is only a brace";
    QTest::newRow("no cell in braces") << "set «{»2}"
                                       << "braces show the value of a cell, for example {raw_iron}: write {{ "
                                          "for a brace that is only a brace";
    QTest::newRow("an unknown unit") << "use {use -> gal/«dya»}"
                                     << "`dya` is no unit; day?";
    QTest::newRow("neither figures nor places")
        << "use {use«, 3 digits»}"
        << "after the comma stand figures or places, for example {raw_iron, 3 figures}";
    QTest::newRow("too many figures") << "use {use, «16» figures}"
                                      << "between 1 and 15 figures can be shown, not 16";
    QTest::newRow("too many places") << "use {use, «16» places}"
                                     << "at most 15 places can be shown, not 16";
}

void ParserTest::wrongWordsCells()
{
    QFETCH(QString, marked);
    QFETCH(QString, words);
    Span span;
    const std::string text = unmarked(marked.toStdString(), span);
    const auto tree = parseWordsCell(text, units());
    QVERIFY(!tree.has_value());
    QCOMPARE(QString::fromStdString(tree.error().words), words);
    QCOMPARE(tree.error().place.span->begin, span.begin);
    QCOMPARE(tree.error().place.span->end, span.end);
}

void ParserTest::hints_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("piece");
    QTest::newRow("days of a year") << "flow * 365"
                                    << "365";
    QTest::newRow("minutes of an hour") << "60 * flow"
                                        << "60";
    QTest::newRow("minutes of a day, divided") << "flow / 1440"
                                               << "1440";
    QTest::newRow("pounds of a gallon") << "flow * 8.34"
                                        << "8.34";
    QTest::newRow("with a unit it is no conversion") << "flow * 365 day"
                                                     << "";
    QTest::newRow("bare numbers among themselves") << "24 * 60"
                                                   << "";
    QTest::newRow("any other number") << "flow * 7"
                                      << "";
}

void ParserTest::hints()
{
    QFETCH(QString, formula);
    QFETCH(QString, piece);
    const auto tree = parse(formula.toStdString());
    QVERIFY(tree.has_value());
    QCOMPARE(tree->hints.size(), piece.isEmpty() ? std::size_t{0} : std::size_t{1});
    if (piece.isEmpty())
        return;
    QCOMPARE(tree->hints[0].words, std::string("is this a unit conversion? units convert by themselves"));
    const Span span = *tree->hints[0].span;
    QCOMPARE(formula.mid(int(span.begin), int(span.end - span.begin)), piece);
}

/// Characters of more than one byte shift nothing: spans are offsets into what was typed.
void ParserTest::spansAreTypedBytes()
{
    const std::string text = "3 m\xC2\xB2 \xE2\x89\xA5 raw_area";
    const auto tree = parse(text);
    QVERIFY(tree.has_value());
    const Node &root = tree->nodes[tree->root];
    const auto piece = [&](Span s) { return text.substr(s.begin, s.end - s.begin); };
    QCOMPARE(piece(root.span), text);
    QCOMPARE(piece(root.opSpan), std::string("\xE2\x89\xA5"));
    QCOMPARE(piece(tree->nodes[root.children[0]].span), std::string("3 m\xC2\xB2"));
    QCOMPARE(piece(tree->references[0].wordSpan), std::string("raw_area"));
    const auto wrong = parse("3 m\xC2\xB2 + #");
    QCOMPARE(wrong.error().place.span->begin, 8U);
}

void ParserTest::printsBack()
{
    const auto tree = parse("-(5 degC) + (2 ft)^2 * (a ? 1 : 2)");
    QVERIFY(tree.has_value());
    QCOMPARE(printFormula(*tree), std::string("-(5 degC) + (2 ft)^2 * (a ? 1 : 2)"));
}

namespace
{

/// Draws random trees; every draw shrinks.
class TreeMaker
{
public:
    Tree make()
    {
        Tree tree;
        for (const char *text : unitTexts)
            if (*text)
                tree.units.push_back(*readUnit(text, units()));
        m_tree = &tree;
        tree.root = node(4);
        if (draw(4) == 0) {
            Node convert;
            convert.kind = NodeKind::convert;
            convert.unit = static_cast<std::uint32_t>(1 + draw(unitCount - 1));
            convert.children = {tree.root};
            tree.root = add(convert);
        }
        return tree;
    }

private:
    static constexpr const char *unitTexts[] = {
        "",  "mg/L", "mg/L as Fe",       "gal/day", "$",     "$/kWh",
        "%", "degC", "gal/(day*person)", "ft^2",    "1/day", "mg{Cl2}/mg{Fe}"};
    static constexpr int unitCount = 12;

    static int draw(int below) { return *rc::gen::inRange(0, below); }
    NodeIndex add(const Node &node)
    {
        m_tree->nodes.push_back(node);
        return static_cast<NodeIndex>(m_tree->nodes.size() - 1);
    }
    NodeIndex node(int depth)
    {
        switch (depth == 0 ? draw(5) : draw(10)) {
        case 0:
            return number();
        case 1:
        case 2:
            return reference();
        case 3:
            return words();
        case 4: {
            Node simple;
            const int which = draw(3);
            simple.kind = which == 0 ? NodeKind::pi : which == 1 ? NodeKind::yesNo : NodeKind::date;
            simple.number = which == 0 ? 0 : which == 1 ? draw(2) : 10000 + draw(20000);
            return add(simple);
        }
        case 5: {
            Node call;
            call.kind = NodeKind::call;
            call.name = draw(2) ? "max" : "if_error";
            for (int i = draw(4); i > 0; --i)
                call.children.push_back(node(depth - 1));
            return add(call);
        }
        case 6: {
            Node unary;
            unary.kind = draw(2) ? NodeKind::negate : NodeKind::logicalNot;
            unary.children = {node(depth - 1)};
            return add(unary);
        }
        case 7: {
            Node choice;
            choice.kind = NodeKind::ternary;
            choice.children = {node(depth - 1), node(depth - 1), node(depth - 1)};
            return add(choice);
        }
        default:
            return binary(depth);
        }
    }
    NodeIndex binary(int depth)
    {
        Node result;
        result.kind = NodeKind::binary;
        result.op = static_cast<Op>(draw(13));
        const NodeIndex left = node(depth - 1);
        NodeIndex right = 0;
        if (result.op == Op::power && draw(2)) {
            Node exponent; // bare exponents may be negative
            exponent.typed = exponent.number = draw(9) - 4;
            right = add(exponent);
        } else {
            right = node(depth - 1);
        }
        result.children = {left, right};
        return add(result);
    }
    NodeIndex number()
    {
        Node result;
        const int unit = draw(unitCount);
        const int digits = draw(100000);
        result.typed = digits / (draw(2) ? 100.0 : 1.0) * (draw(5) == 0 ? 1e20 : 1.0);
        if (unit == 7 && draw(2))
            result.typed = -result.typed;
        result.unit = static_cast<std::uint32_t>(unit);
        result.number = m_tree->units[result.unit].toBase(result.typed);
        return add(result);
    }
    NodeIndex reference()
    {
        ReferenceText text;
        text.word = draw(2) ? "cost" : "o2";
        text.sheet = draw(3) == 0 ? "costs" : "";
        const auto index = [] {
            IndexText i;
            i.isSigned = draw(2) == 1;
            i.value = i.isSigned ? draw(21) - 10 : 1 + draw(30);
            return i;
        };
        const int form = draw(5);
        text.gone = form == 1;
        text.whole = form == 2;
        text.indexed = form >= 2;
        if (form >= 3)
            text.first = index();
        if (form == 4)
            text.last = index();
        Node result;
        result.kind = NodeKind::reference;
        result.extra = static_cast<std::uint32_t>(m_tree->references.size());
        m_tree->references.push_back(text);
        return add(result);
    }
    std::string someWords()
    {
        static constexpr const char *pieces[] = {
            "iron", " ", "{", "}", "\"", "\\", "\n", "\xC2\xB5", "\xE2\x80\x9D", "u{41}", "->"};
        std::string text;
        for (int i = draw(5); i > 0; --i)
            text += pieces[draw(11)];
        return text;
    }
    NodeIndex words()
    {
        std::vector<LivePart> parts;
        for (int i = draw(3); i > 0; --i) {
            LivePart part;
            part.before = someWords();
            part.value = reference();
            if (draw(2)) {
                Node convert;
                convert.kind = NodeKind::convert;
                convert.unit = static_cast<std::uint32_t>(1 + draw(unitCount - 1));
                convert.children = {part.value};
                part.value = add(convert);
            }
            const int format = draw(3);
            part.figures = format == 1 ? 1 + draw(15) : 0;
            part.places = format == 2 ? draw(16) : -1;
            parts.push_back(part);
        }
        Node result;
        result.kind = NodeKind::words;
        result.name = someWords();
        result.extra = static_cast<std::uint32_t>(m_tree->wordsParts.size());
        m_tree->wordsParts.push_back(parts);
        return add(result);
    }

    Tree *m_tree = nullptr;
};

} // namespace

void ParserTest::randomTreesReadBack()
{
    QVERIFY(rc::check("a printed tree reads back to itself", [] {
        const Tree made = TreeMaker().make();
        const std::string text = printFormula(made);
        RC_PRE(text.size() <= 1800U);
        const auto read = parse(text);
        if (!read)
            RC_FAIL(text + ": " + read.error().words);
        if (!test::sameTree(made, *read))
            RC_FAIL(text + " reads as " + printFormula(*read));
        RC_ASSERT(printFormula(*read) == text);
    }));
}

void ParserTest::mutationsNeverCrash()
{
    const std::vector<std::string> corpus = {
        "compensated_hardness(hardness, raw_iron) -> gpg",
        "26000 gal / (4 person * 62.5 gal/(person*day)) -> day",
        "balance[-1] * (1 + rate) - payment",
        "\"use {use -> gal/day, 2 places} a \\\"day\\\"\" == words",
        "a ? b[2:9] : costs.total[gone]",
        "3 m\xC2\xB2 \xE2\x89\xA5 \xE2\x80\x9Cso\xE2\x80\x9D and not(x^-2 > $1.5/kWh)",
        "max(1,250, .5, 5., 2^3^2) + 2026-05-12",
        "-5 degC + 3 mg/L as Fe * 12 gal/day/person"};
    const std::vector<std::string> pieces = {"(",        ")",
                                             "[",        "]",
                                             "{",        "}",
                                             "\"",       "'",
                                             ",",        ".",
                                             ":",        "?",
                                             "->",       "^",
                                             "*",        "/",
                                             "+",        "-",
                                             "=",        "<",
                                             "!",        "&",
                                             "|",        "$",
                                             "%",        " ",
                                             "1",        "250",
                                             "1/2",      "as",
                                             "Fe",       "gal",
                                             "gone",     "not",
                                             "\\",       "\\u{",
                                             "\xC2\xB5", "\xE2\x80\x9C",
                                             "\xC2\xB0", "\xF0\x9F\x98\x80",
                                             "\xFF"};
    std::mt19937 random(seed);
    const auto draw = [&](std::size_t below) { return random() % below; };
    int refusedCount = 0;
    for (int round = 0; round < 20000; ++round) {
        std::string text = corpus[draw(corpus.size())];
        for (std::size_t i = 1 + draw(4); i > 0; --i) {
            const std::size_t at = draw(text.size() + 1);
            const std::size_t count = std::min(draw(6), text.size() - at);
            const std::string slice = text.substr(at, count);
            switch (draw(3)) {
            case 0:
                text.erase(at, count);
                break;
            case 1:
                text.insert(at, pieces[draw(pieces.size())]);
                break;
            default:
                text.insert(draw(text.size() + 1), slice);
                break;
            }
        }
        for (const bool isWords : {false, true}) {
            if (isWords && round % 4 != 0)
                continue;
            const auto tree = isWords ? parseWordsCell(text, units()) : parse(text);
            if (tree) {
                const std::string shown = isWords ? printWordsCell(*tree) : printFormula(*tree);
                const auto again = isWords ? parseWordsCell(shown, units()) : parse(shown);
                QVERIFY2(again && test::sameTree(*tree, *again), (text + " shows as " + shown).c_str());
                continue;
            }
            refusedCount += isWords ? 0 : 1;
            const Error &error = tree.error();
            QVERIFY2(error.place.span && error.place.span->begin <= error.place.span->end &&
                         error.place.span->end <= text.size(),
                     text.c_str());
            QVERIFY2(!error.words.empty() && error.words.back() != '.', text.c_str());
            for (const Fix &fix : error.fixes)
                QVERIFY2(fix.span.begin <= fix.span.end && fix.span.end <= text.size(), text.c_str());
        }
    }
    QVERIFY(refusedCount > 10000);
}

QTEST_APPLESS_MAIN(ParserTest)
#include "parser_test.moc"
