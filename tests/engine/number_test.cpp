/// Bare numbers to and from text.
#include <QTest>

#include <rapidcheck.h>

#include <cmath>

#include "base/number.h"

using namespace puteal;

class NumberTest : public QObject
{
    Q_OBJECT
private slots:
    void findsNumbers_data();
    void findsNumbers();
    void reads_data();
    void reads();
    void shows_data();
    void shows();
    void groupsAndTrims();
    void comparesWithSlack();
    void shortestReadsBack();
    void roundingIsWithinHalfAStep();
};

void NumberTest::findsNumbers_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<int>("length");
    QTest::newRow("an integer") << "12 gal" << 2;
    QTest::newRow("a decimal") << "3.25mg" << 4;
    QTest::newRow("an exponent") << "1e3x" << 3;
    QTest::newRow("a signed exponent") << "1.5E-3" << 6;
    QTest::newRow("an e that begins a word is no exponent") << "3eq" << 1;
    QTest::newRow("an e with a bare sign is no exponent") << "3e+" << 1;
    QTest::newRow("a trailing point does not belong to it") << "5." << 1;
    QTest::newRow("a leading point is no number") << ".5" << 0;
    QTest::newRow("a sign is not part of it") << "-5" << 0;
    QTest::newRow("inf is no number") << "inf" << 0;
    QTest::newRow("nothing") << "" << 0;
}

void NumberTest::findsNumbers()
{
    QFETCH(QString, text);
    QFETCH(int, length);
    QCOMPARE(static_cast<int>(numberLength(text.toStdString(), 0)), length);
}

void NumberTest::reads_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<bool>("good");
    QTest::addColumn<double>("value");
    QTest::newRow("an integer") << "12" << true << 12.0;
    QTest::newRow("a leading minus is read") << "-0.5" << true << -0.5;
    QTest::newRow("seventeen figures come back") << "0.10000000000000001" << true << 0.1;
    QTest::newRow("too small is 0") << "1e-400" << true << 0.0;
    QTest::newRow("too large is refused") << "1e400" << false << 0.0;
    QTest::newRow("nan is refused") << "nan" << false << 0.0;
    QTest::newRow("a point at the end is refused") << "5." << false << 0.0;
    QTest::newRow("a comma is refused") << "1,5" << false << 0.0;
    QTest::newRow("a blank is refused") << "1 5" << false << 0.0;
    QTest::newRow("hexadecimal is refused") << "0x1F" << false << 0.0;
}

void NumberTest::reads()
{
    QFETCH(QString, text);
    QFETCH(bool, good);
    QFETCH(double, value);
    const auto read = readNumber(text.toStdString());
    QCOMPARE(read.has_value(), good);
    if (good)
        QCOMPARE(*read, value);
}

void NumberTest::shows_data()
{
    QTest::addColumn<double>("value");
    QTest::addColumn<QString>("how"); // s shortest, f3 figures, p2 places
    QTest::addColumn<QString>("shows");
    QTest::newRow("shortest text") << 0.1 << "s"
                                   << "0.1";
    QTest::newRow("a whole number has no point") << 1640.0 << "s"
                                                 << "1640";
    QTest::newRow("minus nothing is 0") << -0.0 << "s"
                                        << "0";
    QTest::newRow("small numbers stay plain down to 1e-5") << 1e-5 << "s"
                                                           << "0.00001";
    QTest::newRow("smaller ones take an exponent") << 1.5e-6 << "s"
                                                   << "1.5e-6";
    QTest::newRow("large numbers stay plain below 1e15") << 999999999999999.0 << "s"
                                                         << "999999999999999";
    QTest::newRow("larger ones take an exponent") << 1e15 << "s"
                                                  << "1e15";
    QTest::newRow("three figures keep zeros") << 3.0 << "f3"
                                              << "3.00";
    QTest::newRow("three figures of a large number") << 1234.0 << "f3"
                                                     << "1230";
    QTest::newRow("half goes away from zero on the shortest text") << 2.675 << "p2"
                                                                   << "2.68";
    QTest::newRow("the same for figures") << 1.005 << "f3"
                                          << "1.01";
    QTest::newRow("half of a negative number too") << -2.675 << "p2"
                                                   << "-2.68";
    QTest::newRow("nines roll over") << 9.996 << "f3"
                                     << "10.0";
    QTest::newRow("nines roll over to places") << 0.999 << "p2"
                                               << "1.00";
    QTest::newRow("zero has one figure") << 0.0 << "f3"
                                         << "0";
    QTest::newRow("zero to places") << 0.0 << "p2"
                                    << "0.00";
    QTest::newRow("a negative that rounds to nothing has no sign") << -0.001 << "p2"
                                                                   << "0.00";
    QTest::newRow("half of the last place rounds up to it") << 0.005 << "p2"
                                                            << "0.01";
    QTest::newRow("less than half of it is nothing") << 0.0049 << "p2"
                                                     << "0.00";
    QTest::newRow("whole places") << 2.5 << "p0"
                                  << "3";
    QTest::newRow("half of one to whole places") << 0.5 << "p0"
                                                 << "1";
    QTest::newRow("tiny with figures") << 1.23456e-7 << "f3"
                                       << "1.23e-7";
    QTest::newRow("a rounding that reaches plain range") << 9.9996e-6 << "f3"
                                                         << "0.0000100";
    QTest::newRow("huge with figures") << 1.23456e20 << "f3"
                                       << "1.23e20";
}

void NumberTest::shows()
{
    QFETCH(double, value);
    QFETCH(QString, how);
    QFETCH(QString, shows);
    const int n = how.mid(1).toInt();
    const std::string text = how[0] == 's'   ? shortest(value)
                             : how[0] == 'f' ? toFigures(value, n)
                                             : toPlaces(value, n);
    QCOMPARE(QString::fromStdString(text), shows);
}

void NumberTest::groupsAndTrims()
{
    QCOMPARE(grouped("1250.5"), std::string("1,250.5"));
    QCOMPARE(grouped("-1234567"), std::string("-1,234,567"));
    QCOMPARE(grouped("999"), std::string("999"));
    QCOMPARE(grouped("1.2345e20"), std::string("1.2345e20"));
    QCOMPARE(trimZeros("1.50"), std::string("1.5"));
    QCOMPARE(trimZeros("2.00"), std::string("2"));
    QCOMPARE(trimZeros("100"), std::string("100"));
    QCOMPARE(trimZeros("1.50e20"), std::string("1.5e20"));
}

void NumberTest::comparesWithSlack()
{
    QVERIFY(nearlyEqual(0.1 + 0.2, 0.3));
    QVERIFY(!nearlyEqual(1.0, 1.0 + 1e-11));
    QVERIFY(!nearlyEqual(0.0, 1e-300));
    QVERIFY(atMost(0.1 + 0.2, 0.3));
    QVERIFY(!lessThan(0.3, 0.1 + 0.2));
    QVERIFY(lessThan(1.0, 1.0 + 1e-11));
}

void NumberTest::shortestReadsBack()
{
    QVERIFY(rc::check("shortest reads back to the same double", [](double x) {
        RC_PRE(std::isfinite(x));
        RC_ASSERT(readNumber(shortest(x)) == std::optional<double>(x));
    }));
}

void NumberTest::roundingIsWithinHalfAStep()
{
    QVERIFY(rc::check("rounding moves a number by at most half a step and reads back", [] {
        const int figures = *rc::gen::inRange(1, 10);
        const double mantissa = *rc::gen::inRange(-9999999, 9999999) / 1e6;
        const double x = mantissa * std::pow(10.0, *rc::gen::inRange(-12, 18));
        const auto back = readNumber(toFigures(x, figures));
        RC_ASSERT(back.has_value());
        RC_ASSERT(std::fabs(*back - x) <= 0.5000001 * std::pow(10.0, 1 - figures) * std::fabs(x) * 10);
        if (x != 0) {
            const double step = std::pow(10.0, std::floor(std::log10(std::fabs(x))) - figures + 1);
            RC_ASSERT(std::fabs(*back - x) <= 0.5000001 * step);
        }
    }));
}

QTEST_APPLESS_MAIN(NumberTest)
#include "number_test.moc"
