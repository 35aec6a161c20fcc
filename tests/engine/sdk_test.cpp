/// The contract as its users meet it: headers compiled alone by a C compiler and by both C++ compilers, and
/// the sugar.
#include <QDate>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>

#include <cmath>

#include "sdk/plugin.h"
#include "sdk/roots.h"

using namespace puteal::sdk;

namespace
{

double half(double x)
{
    return x / 2;
}
double counted(const Argument &range, Reply &reply)
{
    if (range.count() == 0)
        return reply.refuse(1, "nothing to count");
    reply.caution("few", "few values");
    reply.reason("counted " + figures(static_cast<double>(range.count())));
    return static_cast<double>(range.count());
}
int pickWord(int choice, bool second)
{
    return second ? 1 : choice;
}
double throws(double)
{
    throw 1;
}

struct Heard {
    QStringList words;
};
void onRefuse(puteal_reply *reply, uint32_t argument, const char *words)
{
    reply->refused = 1;
    static_cast<Heard *>(reply->host)->words << QString("refused %1: %2").arg(argument).arg(words);
}
void onCaution(puteal_reply *reply, const char *key, const char *words)
{
    static_cast<Heard *>(reply->host)->words << QString("caution %1: %2").arg(key, words);
}
void onReason(puteal_reply *reply, const char *words)
{
    static_cast<Heard *>(reply->host)->words << QString("reason: %1").arg(words);
}

double run(puteal_call f, const std::vector<puteal_argument> &arguments, Heard &heard)
{
    puteal_reply reply{sizeof(puteal_reply), 0, 0, &heard, onRefuse, onCaution, onReason};
    f(arguments.data(), arguments.size(), &reply);
    return reply.number;
}
puteal_argument number(double x)
{
    return {sizeof(puteal_argument), 0, x, nullptr, 0, "", ""};
}

} // namespace

class SdkTest : public QObject
{
    Q_OBJECT

private slots:
    void headersCompileAlone_data()
    {
        QTest::addColumn<QString>("compiler");
        QTest::addColumn<QStringList>("language");
        QTest::addColumn<QString>("header");
        const QStringList c{"-std=c99", "-xc"}, cpp{"-std=c++20", "-xc++"};
        QTest::newRow("contract in C") << "cc" << c << "contract.h";
        for (const char *header :
             {"contract.h", "call.h", "choices.h", "dates.h", "measures.h", "parameter.h", "plugin.h",
              "roots.h", "substances.h", "tables.h", "water.h"})
            QTest::addRow("%s by g++", header) << "g++" << cpp << header;
        for (const char *header : {"contract.h", "plugin.h", "roots.h"}) // plugin.h includes the others
            QTest::addRow("%s by clang", header) << "clang++-14" << cpp << header;
    }
    void headersCompileAlone()
    {
        QFETCH(QString, compiler);
        QFETCH(QStringList, language);
        QFETCH(QString, header);
        if (QStandardPaths::findExecutable(compiler).isEmpty())
            QSKIP("this compiler is not installed here");
        QProcess process;
        process.start(compiler,
                      language + QStringList{"-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Werror",
                                             "-fsyntax-only", "-I" PUTEAL_SOURCE_DIR "/engine", "-include",
                                             "sdk/" + header, "/dev/null"});
        QVERIFY(process.waitForFinished(120000));
        QVERIFY2(process.exitCode() == 0, process.readAllStandardError().constData());
    }

    void plainFunctionsBecomeCalls()
    {
        Heard heard;
        QCOMPARE(run(call<half>, {number(3)}, heard), 1.5);
        QCOMPARE(run(call<pickWord>, {number(4), number(0)}, heard), 4.0);
        QCOMPARE(run(call<pickWord>, {number(4), number(1)}, heard), 1.0);
        QVERIFY(heard.words.isEmpty());
    }
    void repliesCarryWords()
    {
        Heard heard;
        const double items[] = {1, 2, 3};
        auto range = number(0);
        QVERIFY(std::isnan(run(call<counted>, {range}, heard)));
        QCOMPARE(heard.words, QStringList{"refused 1: nothing to count"});
        heard.words.clear();
        range.items = items;
        range.count = 3;
        QCOMPARE(run(call<counted>, {range}, heard), 3.0);
        QCOMPARE(heard.words, (QStringList{"caution few: few values", "reason: counted 3"}));
    }
    void noExceptionCrossesTheBorder()
    {
        Heard heard;
        QVERIFY(std::isnan(run(call<throws>, {number(1)}, heard)));
        QCOMPARE(heard.words, QStringList{"refused 0: failed inside the plugin; tell its author"});
    }
    void boundedReadingsHaveTwoEnds()
    {
        auto raw = number(0.05);
        raw.flags = PUTEAL_BELOW;
        QCOMPARE(Argument(raw).least(), 0.0);
        QCOMPARE(Argument(raw).most(), 0.05);
        raw.flags = PUTEAL_ABOVE;
        QCOMPARE(Argument(raw).least(), 0.05);
        QVERIFY(std::isinf(Argument(raw).most()));
    }

    void measures_data()
    {
        QTest::addColumn<double>("ours");
        QTest::addColumn<double>("published");
        // NIST Handbook 44, appendix C, printed tables
        QTest::newRow("liters in a US gallon") << measure::literPerGallon << 3.785411784;
        QTest::newRow("milligrams in a grain") << measure::mgPerGrain << 64.79891;
        QTest::newRow("grams in a pound") << measure::gramPerPound << 453.59237;
        QTest::newRow("gallons in a cubic foot") << measure::gallonPerCubicFoot << 7.480519480519481;
        QTest::newRow("grains in a pound are 7000")
            << measure::gramPerPound * 1000 / measure::mgPerGrain << 7000.0;
    }
    void measures()
    {
        QFETCH(double, ours);
        QFETCH(double, published);
        QVERIFY(std::fabs(ours / published - 1) < 1e-12);
    }

    /// Against the toolkit's own calendar, every day of two centuries and the ends of what is a date here.
    void dates()
    {
        const QDate epoch(1970, 1, 1);
        for (QDate day(1899, 12, 31); day < QDate(2101, 1, 1); day = day.addDays(1)) {
            const auto days = static_cast<double>(epoch.daysTo(day));
            QCOMPARE(dayOf(day.year(), day.month(), day.day()), days);
            QCOMPARE(QString::fromStdString(dateWords(days)), day.toString(Qt::ISODate));
        }
        for (const QDate day : {QDate(1, 1, 1), QDate(4, 2, 29), QDate(1582, 10, 4), QDate(9999, 12, 31)}) {
            const double days = dayOf(day.year(), day.month(), day.day());
            QCOMPARE(days, static_cast<double>(epoch.daysTo(
                               QDate::fromString(QString::fromStdString(dateWords(days)), Qt::ISODate))));
        }
        QCOMPARE(dateWords(dayOf(9999, 12, 31) + 1), std::string("no date"));
        QCOMPARE(dateWords(std::nan("")), std::string("no date"));
        QCOMPARE(dateWords(0.75), std::string("1970-01-01"));
        static_assert(dayOf(1970, 1, 1) == 0 && dayOf(2000, 3, 1) == 11017);
    }

    void molarMasses_data()
    {
        QTest::addColumn<QByteArray>("substance");
        QTest::addColumn<double>("mass");
        // sums of the abridged standard atomic weights, IUPAC 2021, worked by hand
        QTest::newRow("calcium carbonate") << QByteArray("CaCO3") << 100.086;
        QTest::newRow("permanganate") << QByteArray("KMnO4") << 158.0323;
        QTest::newRow("ferric hydroxide") << QByteArray("FeOH3") << 106.866;
        QTest::newRow("hydrogen sulfide") << QByteArray("H2S") << 34.076;
        QTest::newRow("sodium chloride") << QByteArray("NaCl") << 58.4398;
        QTest::newRow("soda ash") << QByteArray("Na2CO3") << 105.9875;
    }
    void molarMasses()
    {
        QFETCH(QByteArray, substance);
        QFETCH(double, mass);
        QVERIFY(substanceIndex(substance.constData()) >= 0);
        QVERIFY(std::fabs(molarMass(substance.constData()) - mass) < 6e-5);
    }

    /// Roots as printed in textbooks of numerical methods (Wallis' cubic, Dottie's number, the omega
    /// constant) and roots known exactly; rising, falling, at an end, at zero, and none.
    void crossings()
    {
        const auto near = [](double ours, double root) {
            return std::fabs(ours - root) <= 4e-16 * std::fabs(root);
        };
        QVERIFY(near(crossing(2, 3, [](double x) { return x * x * x - 2 * x - 5; }), 2.0945514815423265));
        QVERIFY(near(crossing(0, 1, [](double x) { return std::cos(x) - x; }), 0.7390851332151607));
        QVERIFY(near(crossing(0, 1, [](double x) { return x * std::exp(x) - 1; }), 0.567143290409784));
        // (x + 3) (x - 1)^2 rises through -3 and only touches 1
        QVERIFY(near(crossing(-4, 4.0 / 3, [](double x) { return (x + 3) * (x - 1) * (x - 1); }), -3));
        QCOMPARE(crossing(0, 4, [](double x) { return x - 4; }), 4.0);
        QCOMPARE(crossing(0, 4, [](double x) { return -x; }), 0.0);
        QCOMPARE(crossing(-1, 3, [](double x) { return x; }), 0.0);
        QVERIFY(near(crossing(0, 1e300, [](double x) { return std::log(x / 1e-200); }), 1e-200));
        QVERIFY(std::isnan(crossing(0, 2, [](double x) { return (x - 1) * (x - 1); })));
        QVERIFY(std::isnan(crossing(0, 2, [](double) { return std::nan(""); })));
        int asked = 0; // halving ends of itself
        crossing(1, 2, [&](double x) { return ++asked, x * x - 2; });
        QVERIFY(asked < 60);
    }

    void comparisonsHaveOneSlack()
    {
        QVERIFY(atMost(1.0 + 1e-13, 1.0) && !lessThan(1.0, 1.0 + 1e-13));
        QVERIFY(!atMost(1.0 + 1e-11, 1.0) && lessThan(1.0, 1.0 + 1e-11));
        QVERIFY(nearlyEqual(89.99999999999999, 90.0));
        QVERIFY(lessThan(3.0, HUGE_VAL) && !atMost(HUGE_VAL, 3.0));
    }
};

QTEST_APPLESS_MAIN(SdkTest)
#include "sdk_test.moc"
