/// Ranges that belong together are the same lines on every line of a filled run, not only on its first.
#include <QTest>

#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::Worked;

class EqualLinesTest : public QObject
{
    Q_OBJECT

    /// Four lines of cost, fits and the formula in column `total`.
    static Worked filled(const std::string &formula)
    {
        std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\ncolumn cost amounts \"C\" 9\n"
                           "column fits amounts \"F\" 9\ncolumn total amounts \"T\" 9\n";
        for (const char *fits : {"yes", "no", "yes", "no"})
            text += std::string("line\ncost: 10\nfits: ") + fits + "\ntotal: " + formula + "\n";
        return Worked(text + "end s 4\nend workbook\n");
    }

private slots:
    void growingTogetherIsFine()
    {
        const Worked worked = filled("sum(cost[1:+0], fits[1:+0])");
        QCOMPARE(QString::fromStdString(worked.shown("1")), QString("10"));
        QCOMPARE(QString::fromStdString(worked.shown("4")), QString("20"));
    }
    void oneGrowsTheOtherDoesNot()
    {
        const Worked worked = filled("sum(cost[1:+0], fits[1:3])");
        QCOMPARE(QString::fromStdString(worked.shown("3")), QString("20"));
        QCOMPARE(QString::fromStdString(worked.shown("4")),
                 QString("error: `cost[1:+0]` and `fits[1:3]` must have as many lines: 4 and 3"));
    }
    void oneMovesTheOtherDoesNot()
    {
        const Worked worked = filled("sum(cost[+0:+0], fits[1:1])");
        QCOMPARE(QString::fromStdString(worked.shown("1")), QString("10"));
        QCOMPARE(QString::fromStdString(worked.shown("2")),
                 QString("error: `fits[1:1]` must be the same lines as `cost[+0:+0]`"));
    }
};

QTEST_APPLESS_MAIN(EqualLinesTest)
#include "equal_lines_test.moc"
