/// Statistics and straight lines through formulas, against NIST StRD certified values and against the GNU
/// Scientific Library.
#include <random>

#include <gsl/gsl_fit.h>
#include <gsl/gsl_statistics_double.h>

#include <QTest>

#include "session/session.h"

using namespace puteal;

namespace
{

struct Numbers {
    std::string key;
    std::vector<std::string> texts;
};

/// A sheet with the columns side by side and one formula in a further sheet; its result as a double.
double worked(const std::vector<Numbers> &columns, const std::string &formula)
{
    std::string text = "puteal workbook 1\ntitle \"reference\"\nsheet data \"Data\"\n";
    for (const Numbers &column : columns)
        text += "column " + column.key + " amounts \"" + column.key + "\" 12\n";
    const std::size_t lines = columns[0].texts.size();
    for (std::size_t l = 0; l < lines; ++l) {
        text += "line\n";
        for (const Numbers &column : columns)
            text += column.key + ": " + column.texts[l] + "\n";
    }
    text += "end data " + std::to_string(lines) +
            "\nsheet out \"Out\"\ncolumn a amounts \"A\" 12\nline\na: " + formula +
            "\nend out 1\nend workbook\n";
    const auto session = Session::fromText(text);
    if (!session)
        qFatal("%s", session.error().words.c_str());
    const CellView view = (*session)->view({1, 0, 0});
    if (view.error)
        qFatal("%s: %s", formula.c_str(), view.error->words.c_str());
    return view.number;
}

std::vector<std::string> split(const char *words)
{
    std::vector<std::string> out;
    for (const QString &word : QString(words).split(' ', Qt::SkipEmptyParts))
        out.push_back(word.toStdString());
    return out;
}

/// n numbers: the first, then low and high in turn (NIST StRD NumAcc2 to NumAcc4 are built like this).
std::vector<std::string> inTurn(const char *first, const char *low, const char *high, int pairs)
{
    std::vector<std::string> out{first};
    for (int i = 0; i < pairs; ++i) {
        out.push_back(low);
        out.push_back(high);
    }
    return out;
}

const char *const michelso = "299.85 299.74 299.90 300.07 299.93 299.85 299.95 299.98 299.98 299.88 300.00 "
                             "299.98 299.93 299.65 299.76 299.81 300.00 300.00 "
                             "299.96 299.96 299.96 299.94 299.96 299.94 299.88 299.80 299.85 299.88 299.90 "
                             "299.84 299.83 299.79 299.81 299.88 299.88 299.83 "
                             "299.80 299.79 299.76 299.80 299.88 299.88 299.88 299.86 299.72 299.72 299.62 "
                             "299.86 299.97 299.95 299.88 299.91 299.85 299.87 "
                             "299.84 299.84 299.85 299.84 299.84 299.84 299.89 299.81 299.81 299.82 299.80 "
                             "299.77 299.76 299.74 299.75 299.76 299.91 299.92 "
                             "299.89 299.86 299.88 299.72 299.84 299.85 299.85 299.78 299.89 299.84 299.78 "
                             "299.81 299.76 299.81 299.79 299.81 299.82 299.85 "
                             "299.87 299.87 299.81 299.74 299.81 299.94 299.95 299.80 299.81 299.87";
const char *const mavro = "2.00180 2.00170 2.00180 2.00190 2.00180 2.00170 2.00150 2.00140 2.00150 2.00150 "
                          "2.00170 2.00180 2.00180 2.00190 2.00190 2.00210 "
                          "2.00200 2.00160 2.00140 2.00130 2.00130 2.00150 2.00150 2.00160 2.00150 2.00140 "
                          "2.00130 2.00140 2.00150 2.00140 2.00150 2.00160 "
                          "2.00150 2.00160 2.00190 2.00200 2.00200 2.00210 2.00220 2.00230 2.00240 2.00250 "
                          "2.00270 2.00260 2.00260 2.00260 2.00270 2.00260 "
                          "2.00250 2.00240";
const char *const norrisX = "0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 "
                            "666.9 338.0 447.5 11.6 556.0 228.1 995.8 887.6 120.2 "
                            "0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5";
const char *const norrisY = "0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 "
                            "668.8 339.3 448.9 10.8 557.7 228.3 998.0 888.8 119.6 "
                            "0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2";

void near(double got, double wanted, double relative)
{
    QVERIFY2(std::fabs(got - wanted) <= relative * std::fabs(wanted),
             qPrintable(QString("%1, wanted %2").arg(got, 0, 'g', 17).arg(wanted, 0, 'g', 17)));
}

} // namespace

class ReferenceTest : public QObject
{
    Q_OBJECT
private slots:
    /// NIST Statistical Reference Datasets, univariate summary statistics: certified mean and standard
    /// deviation.
    void univariate_data()
    {
        QTest::addColumn<QStringList>("numbers");
        QTest::addColumn<double>("mean");
        QTest::addColumn<double>("deviation");
        QTest::addColumn<double>("slack");
        const auto list = [](const std::vector<std::string> &texts) {
            QStringList out;
            for (const auto &text : texts)
                out += QString::fromStdString(text);
            return out;
        };
        QTest::newRow("NumAcc1") << list(split("10000001 10000003 10000002")) << 10000002.0 << 1.0 << 1e-14;
        QTest::newRow("NumAcc2") << list(inTurn("1.2", "1.1", "1.3", 500)) << 1.2 << 0.1 << 1e-13;
        QTest::newRow("NumAcc3") << list(inTurn("1000000.2", "1000000.1", "1000000.3", 500)) << 1000000.2
                                 << 0.1 << 1e-8;
        QTest::newRow("NumAcc4") << list(inTurn("10000000.2", "10000000.1", "10000000.3", 500)) << 10000000.2
                                 << 0.1 << 2e-7;
        QTest::newRow("Michelso") << list(split(michelso)) << 299.852400000000 << 0.0790105478190518 << 1e-12;
        QTest::newRow("Mavro") << list(split(mavro)) << 2.00185600000000 << 0.000429123454003053 << 1e-11;
    }
    void univariate()
    {
        QFETCH(QStringList, numbers);
        QFETCH(double, mean);
        QFETCH(double, deviation);
        QFETCH(double, slack);
        Numbers column{"x", {}};
        for (const QString &number : numbers)
            column.texts.push_back(number.toStdString());
        near(worked({column}, "mean(data.x[:])"), mean, 1e-14);
        near(worked({column}, "stdev(data.x[:])"), deviation, slack);
    }
    /// NIST StRD linear regression, Norris: certified intercept and slope.
    void norris()
    {
        const std::vector<Numbers> columns{{"x", split(norrisX)}, {"y", split(norrisY)}};
        near(worked(columns, "slope(data.x[:], data.y[:])"), 1.00211681802045, 1e-13);
        near(worked(columns, "intercept(data.x[:], data.y[:])"), -0.262323073774029, 1e-11);
    }
    /// The GNU Scientific Library over random data: mean, standard deviation, type-7 quantile, straight line.
    void gsl()
    {
        std::mt19937_64 random(20261125);
        for (int round = 0; round < 40; ++round) {
            const int n = std::uniform_int_distribution<int>(3, 60)(random);
            std::normal_distribution<double> spread(5.0, 3.0);
            std::vector<double> x, y;
            Numbers xs{"x", {}}, ys{"y", {}};
            char text[64];
            for (int i = 0; i < n; ++i) {
                x.push_back(std::fabs(spread(random)) + i);
                y.push_back(std::fabs(spread(random)) * 2);
                std::snprintf(text, sizeof text, "%.17g", x.back());
                xs.texts.push_back(text);
                std::snprintf(text, sizeof text, "%.17g", y.back());
                ys.texts.push_back(text);
            }
            const auto size = static_cast<std::size_t>(n);
            near(worked({xs, ys}, "mean(data.x[:])"), gsl_stats_mean(x.data(), 1, size), 1e-14);
            near(worked({xs, ys}, "stdev(data.x[:])"), gsl_stats_sd(x.data(), 1, size), 1e-12);
            double c0 = 0, c1 = 0, v00 = 0, v01 = 0, v11 = 0, rest = 0;
            gsl_fit_linear(x.data(), 1, y.data(), 1, size, &c0, &c1, &v00, &v01, &v11, &rest);
            QVERIFY(std::fabs(worked({xs, ys}, "slope(data.x[:], data.y[:])") - c1) <=
                    1e-10 * (std::fabs(c1) + 1.0));
            QVERIFY(std::fabs(worked({xs, ys}, "intercept(data.x[:], data.y[:])") - c0) <=
                    1e-9 * (std::fabs(c0) + 1.0));
            std::sort(x.begin(), x.end());
            near(worked({xs, ys}, "percentile(data.x[:], 30 %)"),
                 gsl_stats_quantile_from_sorted_data(x.data(), 1, size, 0.3), 1e-12);
        }
    }
};

QTEST_APPLESS_MAIN(ReferenceTest)
#include "reference_test.moc"
