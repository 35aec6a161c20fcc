/// Reading formulas: what is accepted and how it is meant.
#include <QTest>

#include <cmath>

#include "support/formula_trees.h"
#include "support/parsed_formula.h"

using namespace puteal;
using test::parse, test::units;

namespace
{

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

} // namespace

class ParserTest : public QObject
{
    Q_OBJECT
private slots:
    void bounds();
    void shows_data();
    void shows();
    void groups_data();
    void groups();
    void literals();
    void temperatureIsOneLiteral();
    void liveWords();
    void wordsCells_data();
    void wordsCells();
    void hints_data();
    void hints();
    void spansAreTypedBytes();
    void printsBack();
};

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

QTEST_APPLESS_MAIN(ParserTest)
#include "parser_test.moc"
