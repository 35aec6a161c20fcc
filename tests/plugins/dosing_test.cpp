/// Strength of solutions, feeders and contact tanks.
#include <QTest>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

enum { tradePercent, weightAsHypochlorite, weightAsChlorine };

const Plugin &dosing()
{
    static const Plugin plugin("dosing");
    return plugin;
}

} // namespace

class DosingTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(dosing().isOpen()); }

    void strength()
    {
        const char *book = "definitions after Handbook of Chlorination, 1972";
        holds(dosing(),
              {{book, "hypochlorite_strength", {0.06, weightAsHypochlorite, 1.08}, 61700, 1e-3},
               {book, "hypochlorite_strength", {0.0571, weightAsChlorine, 1.08}, 61700, 1e-3},
               {book, "hypochlorite_strength", {0.125, tradePercent}, 125000, 1e-12},
               {book, "hypochlorite_strength", {0.108, weightAsChlorine, 1.16}, 125000, 3e-3},
               {"worked out, IUPAC 2021",
                "hypochlorite_strength",
                {0.0825, weightAsHypochlorite, 1.11},
                87222,
                1e-5},
               {"density recalled", "peroxide_strength", {0.07, 1024}, 71680, 1e-12},
               {"density recalled", "peroxide_strength", {0.35, 1131.2}, 395920, 1e-12},
               {"12.5 to 10 % in 30 days", "bleach_residual_strength", {0.125, 2.0 / 30, 30}, 0.10, 1e-12},
               {"and at 90 days", "bleach_residual_strength", {0.125, 2.0 / 30, 90}, 0.07142857, 1e-6},
               {"1.5 gal of bleach to 15 gal", "stock_volume", {15, 5250, 52500}, 1.5, 1e-12}});
        // half the strength decays at a quarter of the rate (Bleach - storage guidelines for end users)
        const auto lost = [](double start) {
            return start - dosing().call("bleach_residual_strength", {start, 0.0667, 1e-4}).number;
        };
        QVERIFY(std::fabs(lost(0.125) / lost(0.0625) - 4.0) < 1e-4);
        QVERIFY(dosing().call("peroxide_strength", {0.07, 1024}).warns("burns"));
        QVERIFY(dosing().call("peroxide_strength", {0.08, 1028}).warns("transport"));
        QVERIFY(dosing().call("peroxide_strength", {0.03, 1009.5}).cautions.empty());
    }

    void feeding()
    {
        const char *lesson = "Water Treatment Mathematics, sample lesson";
        holds(dosing(), {{lesson, "feed_rate", {10, 5, 5250}, 13.7143, 1e-5},
                         {lesson, "feed_rate", {7, 3, 5250}, 5.76, 1e-12},
                         {lesson, "feed_rate", {12, 8, 70000}, 1.97486, 1e-5},
                         {"worked out", "feed_setting", {5.76, 10}, 0.576, 1e-12},
                         {"worked out", "solution_days", {15, 300, 5, 5250}, 52.5, 1e-12},
                         {"worked out", "solution_days", {15, 250, 8, 70000}, 525, 1e-12}});
        QVERIFY(dosing().call("feed_setting", {0.5, 10}).warns("low"));
        QVERIFY(dosing().call("feed_setting", {9.5, 10}).warns("high"));
        QVERIFY(dosing().call("feed_setting", {1, 10}).cautions.empty());
        QVERIFY(dosing().call("solution_days", {15, 300, 5, 5250}).warns("old"));
    }

    void contact()
    {
        const char *classes = "baffling classes, Surface Water Treatment Rule";
        holds(dosing(), {{classes, "contact_time", {120, 10}, 3.6, 1e-12},
                         {classes, "contact_time", {120, 10, 0.1}, 1.2, 1e-12},
                         {classes, "contact_time", {40, 5, 0.7}, 5.6, 1e-12},
                         {classes, "contact_volume", {20, 5, 0.1}, 1000, 1e-12},
                         {classes, "contact_volume", {5, 8}, 133.333, 1e-5}});
        QVERIFY(dosing().call("contact_time", {80, 7, 0.5}).warns("optimistic"));
        for (double gal = 10; gal < 300; gal += 13) { // volume and time undo each other
            const double minutes = dosing().call("contact_time", {gal, 7, 0.3}).number;
            QVERIFY(std::fabs(dosing().call("contact_volume", {minutes, 7, 0.3}).number - gal) < 1e-9);
        }
    }

    void refuses_data()
    {
        QTest::addColumn<QString>("function");
        QTest::addColumn<QList<double>>("given");
        QTest::addColumn<int>("argument");
        QTest::addColumn<QString>("words");
        QTest::newRow("a stock weaker than the solution")
            << "stock_volume" << QList<double>{15, 52500, 5250} << 2
            << "the stock is weaker than the solution wanted: a stronger stock or a weaker solution";
        QTest::newRow("more than the pump gives")
            << "feed_setting" << QList<double>{13.7, 10} << 1
            << "the pump cannot give that much: a stronger solution or a larger pump";
        QTest::newRow("nothing fed")
            << "solution_days" << QList<double>{15, 300, 0, 5250} << 0
            << "nothing is fed, so the tank never empties: give a use and a dose above 0";
    }
    void refuses()
    {
        QFETCH(QString, function);
        QFETCH(QList<double>, given);
        QFETCH(int, argument);
        QFETCH(QString, words);
        const Answer answer = dosing().call(function.toStdString(), {given.begin(), given.end()});
        QVERIFY(answer.refused);
        QCOMPARE(int(answer.refusedArgument), argument);
        QCOMPARE(QString::fromStdString(answer.words), words);
    }
};

QTEST_APPLESS_MAIN(DosingTest)
#include "dosing_test.moc"
