/// Names, quoted words, plain twins, close words.
#include <QTest>

#include <rapidcheck.h>

#include "base/text.h"

using namespace puteal;

class TextTest : public QObject
{
    Q_OBJECT
private slots:
    void names_data();
    void names();
    void offeredNames_data();
    void offeredNames();
    void quotesReadBack();
    void wrongQuotes_data();
    void wrongQuotes();
    void cleanText();
    void twins_data();
    void twins();
    void closeWords();
    void joinsAndCounts();
};

void TextTest::names_data()
{
    QTest::addColumn<QString>("word");
    QTest::addColumn<bool>("isAName");
    QTest::newRow("small letters and underscores") << "raw_iron" << true;
    QTest::newRow("a figure inside") << "o2" << true;
    QTest::newRow("two characters at least") << "a" << false;
    QTest::newRow("a capital letter") << "Raw" << false;
    QTest::newRow("a figure first") << "2nd" << false;
    QTest::newRow("a blank") << "raw iron" << false;
    QTest::newRow("two underscores") << "raw__iron" << false;
    QTest::newRow("an underscore at the end") << "raw_" << false;
    QTest::newRow("64 characters") << QString(64, 'a') << true;
    QTest::newRow("65 characters") << QString(65, 'a') << false;
}

void TextTest::names()
{
    QFETCH(QString, word);
    QFETCH(bool, isAName);
    QCOMPARE(isName(word.toStdString()), isAName);
}

void TextTest::offeredNames_data()
{
    QTest::addColumn<QString>("words");
    QTest::addColumn<QString>("name");
    QTest::newRow("an item with a comma") << "Raw iron, ferrous"
                                          << "raw_iron_ferrous";
    QTest::newRow("figures in front are left out") << "3 inch pipe"
                                                   << "inch_pipe";
    QTest::newRow("one letter is no name") << "A"
                                           << "";
    QTest::newRow("a word of the language") << "Gone"
                                            << "gone_value";
    QTest::newRow("nothing to make a name of") << "..."
                                               << "";
}

void TextTest::offeredNames()
{
    QFETCH(QString, words);
    QFETCH(QString, name);
    QCOMPARE(QString::fromStdString(nameFromWords(words.toStdString())), name);
}

void TextTest::quotesReadBack()
{
    QCOMPARE(quoted("say \"so\"\\\n\t\x01"), std::string("\"say \\\"so\\\"\\\\\\n\\t\\u{01}\""));
    QVERIFY(rc::check("quoted words read back", [] {
        const auto words = *rc::gen::container<std::string>(rc::gen::inRange<char>(1, 127));
        RC_ASSERT(unquoted(quoted(words)).value() == words);
    }));
    QCOMPARE(unquoted("\"\\u{b0}C\"").value(), std::string("\xC2\xB0"
                                                           "C"));
}

void TextTest::wrongQuotes_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("words");
    QTest::addColumn<int>("begin");
    QTest::addColumn<int>("end");
    QTest::newRow("no closing mark") << "\"ab"
                                     << "the closing quotation mark is missing" << 0 << 3;
    QTest::newRow("text behind") << "\"ab\" c"
                                 << "nothing may follow the closing quotation mark" << 4 << 6;
    QTest::newRow("unknown escape")
        << "\"a\\x\""
        << "after a backslash only \", \\, n, t or u{hex} may stand; write \\\\ for a backslash" << 2 << 4;
    QTest::newRow("half of a surrogate pair")
        << "\"\\u{d800}\""
        << "after a backslash only \", \\, n, t or u{hex} may stand; write \\\\ for a backslash" << 1 << 3;
}

void TextTest::wrongQuotes()
{
    QFETCH(QString, text);
    QFETCH(QString, words);
    QFETCH(int, begin);
    QFETCH(int, end);
    const auto result = unquoted(text.toStdString());
    QVERIFY(!result);
    QCOMPARE(QString::fromStdString(result.error().words), words);
    QCOMPARE(static_cast<int>(result.error().place.span->begin), begin);
    QCOMPARE(static_cast<int>(result.error().place.span->end), end);
}

void TextTest::cleanText()
{
    QVERIFY(isCleanText("iron\tclear\n"));
    QVERIFY(!isCleanText(std::string_view("a\0b", 3)));
    QVERIFY(!isCleanText("a\rb"));
    QVERIFY(!isCleanText("a\x7F"));
    QVERIFY(!isCleanText("\xC3"));
    QVERIFY(isCleanText("\xC3\xA9"));
}

void TextTest::twins_data()
{
    QTest::addColumn<QString>("typed");
    QTest::addColumn<QString>("plain");
    QTest::newRow("micro sign") << QStringLiteral("\u00B5g/L") << "ug/L";
    QTest::newRow("Greek mu") << QStringLiteral("\u03BCS/cm") << "uS/cm";
    QTest::newRow("superscripts") << QStringLiteral("ft\u00B2 m\u00B3") << "ft^2 m^3";
    QTest::newRow("degree sign") << QStringLiteral("5 \u00B0C") << "5 degC";
    QTest::newRow("minus and signs of order")
        << QStringLiteral("\u22125 \u2264 \u2265 \u2260") << "-5 <= >= !=";
    QTest::newRow("dot, cross and division") << QStringLiteral("a\u00B7b\u00D7c\u00F7d") << "a*b*c/d";
    QTest::newRow("curly quotes") << QStringLiteral("\u201Cwords\u201D") << "\"words\"";
    QTest::newRow("no-break and thin blanks") << QStringLiteral("3\u00A0gal\u2009+") << "3 gal +";
    QTest::newRow("others stay") << QStringLiteral("caf\u00E9") << QStringLiteral("caf\u00E9");
}

void TextTest::twins()
{
    QFETCH(QString, typed);
    QFETCH(QString, plain);
    const PlainText result = plainTwins(typed.toStdString());
    QCOMPARE(QString::fromStdString(result.text), plain);
    QCOMPARE(result.origin.size(), result.text.size() + 1);
    QCOMPARE(static_cast<std::size_t>(result.origin.back()), typed.toStdString().size());
    const PlainText twice = plainTwins(result.text);
    QCOMPARE(twice.text, result.text);
}

void TextTest::closeWords()
{
    const std::vector<std::string> words{"day", "gal", "gpm", "gpd", "month", "raw_iron"};
    QCOMPARE(closest("dya", words), (std::vector<std::string>{"day"}));
    QCOMPARE(closest("gpn", words), (std::vector<std::string>{"gpm", "gpd"}));
    QCOMPARE(closest("raw_iorn", words), (std::vector<std::string>{"raw_iron"}));
    QCOMPARE(closest("raw", words), (std::vector<std::string>{"raw_iron"}));
    QCOMPARE(closest("zzzzzz", words), std::vector<std::string>{});
}

void TextTest::joinsAndCounts()
{
    QCOMPARE(joined({}), std::string());
    QCOMPARE(joined({"a"}), std::string("a"));
    QCOMPARE(joined({"a", "b"}), std::string("a and b"));
    QCOMPARE(joined({"a", "b", "c"}), std::string("a, b and c"));
    QCOMPARE(codePoints("caf\xC3\xA9"), std::size_t{4});
    QCOMPARE(trimmed(" \t a b\n"), std::string_view("a b"));
}

QTEST_APPLESS_MAIN(TextTest)
#include "text_test.moc"
