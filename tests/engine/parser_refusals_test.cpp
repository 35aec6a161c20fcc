/// Reading formulas: what is refused, where, and with which way out.
#include <QTest>

#include "support/parsed_formula.h"

using namespace puteal;
using test::parse, test::units;

namespace
{

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

class ParserRefusalsTest : public QObject
{
    Q_OBJECT
private slots:
    void refused_data();
    void refused();
    void wrongWordsCells_data();
    void wrongWordsCells();
};

void ParserRefusalsTest::refused_data()
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
    row("a half behind a figure", "1«½» in", "a part of a number is written as a decimal: write .5",
        "1.5 in");
    row("a whole and its part joined by a dash", "«1-1/2 in» * 2",
        "`1-1/2 in` can be read two ways: write 1.5 in", "1.5 in * 2");
    row("a difference with a fraction", "a - «1/2 in»", "`1/2 in` can be read two ways: write 0.5 in",
        "a - 0.5 in");
    row("millions of dollars", "$1.2«M»",
        "write the number out, as in 24000, or with a power of ten, as in 24e3");
    row("x tight between figures", "10«x»54", "write * to multiply", "10*54");
    row("nitrogen of nitrate", "10 mg/L as «NO3-N»", "`NO3-N` is an amount of nitrogen: write as N",
        "10 mg/L as N");
    row("nitrogen of nitrate without as", "10 mg/L «NO3-N»", "`NO3-N` is an amount of nitrogen: write as N",
        "10 mg/L as N");
    row("an ion", "3 mg/L as «Fe2+» + a", "`Fe2+` is written Fe here", "3 mg/L as Fe + a");
    row("a name of two words", "171 mg/L as «calcium carbonate»", "`calcium carbonate` is written CaCO3 here",
        "171 mg/L as CaCO3");
    row("a substance inside a unit", "3 mg «Fe»/L", "inside a unit the substance stands in braces: {Fe}",
        "3 mg{Fe}/L");
    row("money without its slash", "$0.12 «kWh» * a",
        "money for each of something is written with a /: write $0.12/kWh", "$0.12/kWh * a");
    row("a unit with blanks inside", "5 gpm «/ ft»^2", "a unit has no blanks inside: write /ft",
        "5 gpm/ft^2");
    row("money with blanks inside", "$0.12 «/ kWh»", "a unit has no blanks inside: write /kWh", "$0.12/kWh");
    row("units joined by a blank", "60 gal/(person «day»)", "units are joined by *, as in gal/(person*day)",
        "60 gal/(person*day)");
    row("units joined by a dash", "60 gal/person-«day»",
        "`day` is a unit and needs a number; units are joined by * inside parentheses, as in "
        "gal/(person*day)");
    row("a unit that goes on behind in", "a «in» ug/L", "write -> to show it in ug/L", "a -> ug/L");
    row("is for a comparison", "a «is» 3", "write == to compare", "a == 3");
    row("a choice in words", "«if» a > 3 then 1 else 2", "a choice is written condition ? this : that");
    row("lines joined by a dash", "«cost[1-8]»", "a range of lines is written cost[1:8]", "cost[1:8]");
    row("a word behind a word that is no unit", "c «manganese»", "an operator is missing before `manganese`");
    row("lines by the key and a number", "sum(«cost1:cost8»)", "`cost1:cost8` is written cost[1:8] here",
        "sum(cost[1:8])");
    row("a root sign", "«√»2", "write sqrt( ) for a root");
    row("a live value that calculates", "\"now «{iron + 2}»\"",
        "braces show one cell, perhaps in a unit: calculate in a cell and show that", "\"now {{iron + 2}\"");
    row("a brace left open", "\"now «{»iron\"",
        "this brace is not closed: write {{ for a brace that is only a brace", "\"now {{iron\"");
    row("a control character", "a«\x01» + b", "a control character has no meaning here");
}

void ParserRefusalsTest::refused()
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

void ParserRefusalsTest::wrongWordsCells_data()
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

void ParserRefusalsTest::wrongWordsCells()
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

QTEST_APPLESS_MAIN(ParserRefusalsTest)
#include "parser_refusals_test.moc"
