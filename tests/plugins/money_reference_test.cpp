/// Money against the world outside: two printed interest tables, a public finance library, sums taken year by
/// year in long double, and the roots of the GNU Scientific Library.
#include <cmath>
#include <random>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_poly.h>
#include <gsl/gsl_roots.h>

#include <QStringList>
#include <QTest>

#include "plugins/check_rows.h"
#include "plugins/interest_tables.h"

using namespace called;

namespace
{

const Plugin &cost()
{
    static const Plugin plugin("cost");
    return plugin;
}

double worked(const char *function, const std::vector<Given> &given)
{
    return cost().call(function, given).number;
}

// Columns of the printed tables and the functions that give them.
constexpr const char *columns[] = {"compound_amount_factor",
                                   "present_value_factor",
                                   "sinking_fund_factor",
                                   "series_compound_amount_factor",
                                   "capital_recovery_factor",
                                   "annuity_factor",
                                   "gradient_present_worth_factor",
                                   "gradient_series_factor"};

template<std::size_t N>
int agreeWith(const char *const (&table)[N], double rate)
{
    int agreed = 0;
    for (const char *row : table) {
        const QStringList line = QString(row).split(' ', Qt::SkipEmptyParts);
        for (qsizetype c = 1; c < line.size(); ++c) {
            const QString &text = line[c];
            if (text == "-")
                continue;
            const auto places = text.size() - text.indexOf('.') - 1;
            const double halfLast = 0.5 * std::pow(10.0, -static_cast<double>(places)) * (1 + 1e-9);
            const double ours = worked(columns[c - 1], {rate, line[0].toDouble()});
            if (std::fabs(ours - text.toDouble()) <= halfLast)
                ++agreed;
            else
                qWarning("%s(%g, %s) gives %.8f, printed %s", columns[c - 1], rate, qPrintable(line[0]), ours,
                         qPrintable(text));
        }
    }
    return agreed;
}

bool close(double a, long double b, double tolerance)
{
    return std::fabs(a - static_cast<double>(b)) <=
           tolerance * std::fmax(1.0, std::fabs(static_cast<double>(b)));
}

constexpr double rates[] = {-0.4, -0.1, -0.01, -1e-9, 0, 1e-9, 1e-4, 0.0025, 0.03, 0.05, 0.12, 0.5, 1};
constexpr int terms[] = {1, 2, 3, 5, 10, 17, 30, 60, 120};

/// Net present value of yearly sums as the GNU Scientific Library's solver wants it.
double valueOf(double rate, void *sums)
{
    double worth = 0.0, factor = 1.0;
    for (const double sum : *static_cast<std::vector<double> *>(sums)) {
        worth += sum * factor;
        factor /= 1.0 + rate;
    }
    return worth;
}

double rootByLibrary(std::vector<double> &sums, double low, double high)
{
    gsl_function f{&valueOf, &sums};
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    gsl_root_fsolver_set(solver, &f, low, high);
    double root = low;
    for (int k = 0; k < 200; ++k) {
        gsl_root_fsolver_iterate(solver);
        root = gsl_root_fsolver_root(solver);
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 1e-15,
                                   1e-15) == GSL_SUCCESS)
            break;
    }
    gsl_root_fsolver_free(solver);
    return root;
}

/// Rates from -99 % to 1000 % at which the polynomial in 1 / (1 + rate) is zero; empty also where it is not
/// sure.
std::vector<double> ratesByPolynomial(const std::vector<double> &sums, bool &sure)
{
    std::vector<double> roots(2 * (sums.size() - 1)), found;
    gsl_poly_complex_workspace *space = gsl_poly_complex_workspace_alloc(sums.size());
    sure = gsl_poly_complex_solve(sums.data(), sums.size(), space, roots.data()) == GSL_SUCCESS;
    gsl_poly_complex_workspace_free(space);
    for (std::size_t i = 0; i < roots.size(); i += 2) {
        const double x = roots[i], y = std::fabs(roots[i + 1]);
        if (x <= 0 || y > 1e-3 * x)
            continue;
        const double rate = 1.0 / x - 1.0;
        // near a double root or an end of the range neither solver is sure
        sure = sure && y < 1e-9 * x && std::fabs(rate + 0.99) > 1e-3 && std::fabs(rate - 10) > 1e-2;
        if (rate > -0.99 && rate < 10)
            found.push_back(rate);
    }
    std::sort(found.begin(), found.end());
    for (std::size_t i = 1; i < found.size(); ++i)
        sure = sure && found[i] - found[i - 1] > 1e-4;
    return found;
}

} // namespace

class MoneyReferenceTest : public QObject
{
    Q_OBJECT

private slots:
    void initTestCase()
    {
        QVERIFY(cost().isOpen());
        gsl_set_error_handler_off();
    }

    /// 198 printed factors at 0.25 % and 123 at 0.5 %, each to half its last printed place.
    void printedTables()
    {
        QCOMPARE(agreeWith(printed::quarterPercent, 0.0025), 198);
        QCOMPARE(agreeWith(printed::halfPercent, 0.005), 123);
    }

    void financeLibrary()
    {
        const char *tests = "numpy-financial, tests/test_financial.py";
        const Given yearly = column({-15000, 1500, 2500, 3500, 4500, 6000});
        holds(cost(), {{tests, "net_present_value", {yearly, 0.05}, 122.894854950942692161628715, 1e-13},
                       {tests,
                        "net_present_value_at",
                        {column({0, 1, 2, 3, 4, 5}), yearly, 0.05},
                        122.894854950942692161628715,
                        1e-12},
                       {tests,
                        "internal_rate_of_return",
                        {column({-150000, 15000, 25000, 35000, 45000, 60000})},
                        0.0524,
                        1e-3},
                       {tests, "internal_rate_of_return", {column({-100, 0, 0, 74})}, -0.0955, 1e-3},
                       {tests, "internal_rate_of_return", {column({-100, 39, 59, 55, 20})}, 0.28095, 1e-5},
                       {tests, "internal_rate_of_return", {column({-100, 100, 0, 7})}, 0.06206, 1e-4},
                       {"numpy-financial, first page of its documentation",
                        "internal_rate_of_return",
                        {column({-250000, 100000, 150000, 200000, 250000, 300000})},
                        0.5672303344358536,
                        1e-14},
                       {tests,
                        "internal_rate_of_return",
                        {column({-3500, 0, 0, 0, 0, 0, 0, 0, 0, 0, 10000})},
                        0.11069085371,
                        1e-10},
                       {tests,
                        "modified_internal_rate_of_return",
                        {column({-4500, -800, 800, 800, 600, 600, 800, 800, 700, 3000}), 0.08, 0.055},
                        0.066597175031553548874239618,
                        1e-13},
                       {tests,
                        "modified_internal_rate_of_return",
                        {column({-120000, 39000, 30000, 21000, 37000, 46000}), 0.10, 0.12},
                        0.126094130365905145828421880,
                        1e-13},
                       {tests,
                        "modified_internal_rate_of_return",
                        {column({100, 200, -50, 300, -200}), 0.05, 0.06},
                        0.342823387842176663647819868,
                        1e-13},
                       {tests, "loan_payment", {15000, 0.08, 5}, 304.1459143262052370338701494, 1e-14},
                       {tests, "loan_payment", {15000, 0, 5}, 250, 1e-14},
                       {"the same as even yearly sum",
                        "equivalent_annual_cost",
                        {2000, 0.3, 12},
                        626.9081401700757748,
                        1e-14},
                       {tests, "equivalent_annual_cost", {20000, 0.8, 3}, 19311.2582781456952, 1e-14},
                       {"2000 in 12 without interest",
                        "equivalent_annual_cost",
                        {2000, 0, 12},
                        166.6666666666666667,
                        1e-14}});
        QVERIFY(close(12000 * worked("annuity_factor", {0.07, 20}), 127128.1709461939327295L, 1e-13));
        QVERIFY(
            close(2000 * worked("series_compound_amount_factor", {0.075, 20}), 86609.36267304300040L, 1e-13));
        QVERIFY(close(100 * worked("series_compound_amount_factor", {0.1, 5}), 610.51L, 1e-14));
        QVERIFY(close(100 * worked("series_compound_amount_factor", {0.2, 5}), 744.16L, 1e-14));
        QVERIFY(close(100 * worked("series_compound_amount_factor", {0, 5}), 500.0L, 1e-15));
        // no solution, and a row for which the library names only one of the rates
        QVERIFY(cost().call("internal_rate_of_return", {column({-1, -2, -3})}).refused);
        QVERIFY(cost().call("modified_internal_rate_of_return", {column({39000, 30000}), 0.1, 0.12}).refused);
        const Answer two = cost().call("internal_rate_of_return", {column({-100, 100, 0, -7})});
        QVERIFY(two.refused && QString(two.words.c_str()).contains("-8.33"));
        const Answer three = cost().call("internal_rate_of_return", {column({-5, 10.5, 1, -8, 1, 0, 0, 0})});
        QVERIFY(three.refused && QString(three.words.c_str()).contains("8.8598 %"));
    }

    /// Factors of even, rising and growing series, added up year by year.
    void yearByYear()
    {
        for (const double rate : rates)
            for (const int n : terms) {
                long double worth = 0, gradient = 0, grown = 0, risen = 0, saved = 0, factor = 1;
                const long double growth = 0.03L;
                for (int k = 1; k <= n; ++k) {
                    factor /= 1.0L + rate;
                    worth += factor;
                    gradient += (k - 1) * factor;
                    grown += std::pow(1 + growth, k - 1.0L) * factor;
                    risen += std::pow(1 + growth, k) * factor;
                    saved = saved * (1.0L + rate) + 1;
                }
                const std::string at = std::to_string(rate) + ", " + std::to_string(n);
                const auto agrees = [&](const char *function, const std::vector<Given> &given,
                                        long double x) {
                    const double ours = worked(function, given);
                    QVERIFY2(std::fabs(ours - static_cast<double>(x)) <= 1e-12 * static_cast<double>(x),
                             qPrintable(QString("%1(%2)").arg(function, at.c_str())));
                };
                agrees("annuity_factor", {rate, n * 1.0}, worth);
                agrees("capital_recovery_factor", {rate, n * 1.0}, 1 / worth);
                agrees("series_compound_amount_factor", {rate, n * 1.0}, saved);
                agrees("sinking_fund_factor", {rate, n * 1.0}, 1 / saved);
                agrees("gradient_present_worth_factor", {rate, n * 1.0}, gradient);
                agrees("gradient_series_factor", {rate, n * 1.0}, gradient / worth);
                agrees("geometric_gradient_factor", {0.03, rate, n * 1.0}, grown);
                agrees("escalated_annuity_factor", {0.03, rate, n * 1.0}, risen);
                agrees("escalated_present_value_factor", {0.03, rate, n * 1.0},
                       std::pow(1 + growth, static_cast<long double>(n)) * factor);
                agrees("yearly_reserve", {100, n * 1.0, rate}, 100 / saved);
            }
    }

    /// A/P = A/F + i; F/A = P/A * F/P; P/F * F/P = 1; the gradient's closed form where it keeps its figures.
    void identities()
    {
        for (const double rate : rates)
            for (const int n : terms) {
                const std::vector<Given> at{rate, n * 1.0};
                const double ap = worked("capital_recovery_factor", at),
                             af = worked("sinking_fund_factor", at);
                QVERIFY(close(ap - rate, af, 1e-12));
                const double fp = worked("compound_amount_factor", at), pa = worked("annuity_factor", at);
                QVERIFY(std::fabs(worked("series_compound_amount_factor", at) / (pa * fp) - 1) < 1e-12);
                QVERIFY(std::fabs(worked("present_value_factor", at) * fp - 1) < 1e-12);
                const double real = worked("real_rate", {rate, 0.025});
                QVERIFY(close(worked("nominal_rate", {real, 0.025}), rate, 1e-14));
                if (std::fabs(rate) > 0.02 && n < 100) {
                    const double closed = (pa - n / fp) / rate;
                    QVERIFY(std::fabs(worked("gradient_present_worth_factor", at) - closed) <=
                            1e-10 * std::fmax(1, std::fabs(closed)));
                }
            }
    }

    /// Plans with one turn of sign: the library's bracketed root.
    void internalRateAgainstLibrary()
    {
        std::mt19937 random(20261126);
        std::uniform_real_distribution<double> saving(10, 500), extra(100, 2000);
        for (int round = 0; round < 400; ++round) {
            std::vector<double> sums{-extra(random)}, times{0};
            const int n = 2 + round % 24;
            for (int k = 1; k <= n; ++k)
                sums.push_back(saving(random));
            for (int k = 1; k <= n; ++k)
                times.push_back(k);
            const double root = rootByLibrary(sums, -0.98, 9.9);
            if (root > 9.8 || root < -0.97)
                continue; // beyond the bracket
            const Answer ours = cost().call("internal_rate_of_return", {column(sums)});
            QVERIFY2(!ours.refused, ours.words.c_str());
            QVERIFY2(std::fabs(ours.number - root) < 1e-11 * (1 + std::fabs(root)),
                     qPrintable(QString::number(root, 'g', 15)));
            QVERIFY(std::fabs(worked("internal_rate_of_return_at", {column(times), column(sums)}) - root) <
                    1e-11 * (1 + std::fabs(root)));
            // worth nothing at that rate, something below and above
            QVERIFY(std::fabs(worked("net_present_value", {column(sums), ours.number})) < 1e-6);
        }
    }

    /// Sums of any sign: all rates the library finds among the roots of the polynomial, none left out.
    void severalRatesAgainstLibrary()
    {
        std::mt19937 random(7);
        std::uniform_real_distribution<double> any(-1000, 1000);
        int none = 0, one = 0, several = 0;
        for (int round = 0; round < 3000; ++round) {
            std::vector<double> sums;
            const int n = 3 + round % 8;
            for (int k = 0; k < n; ++k)
                sums.push_back(std::round(any(random)));
            if (sums.front() == 0 || sums.back() == 0)
                continue;
            bool sure = false;
            const std::vector<double> expected = ratesByPolynomial(sums, sure);
            if (!sure)
                continue;
            const Answer ours = cost().call("internal_rate_of_return", {column(sums)});
            const QString words = ours.words.c_str();
            if (expected.size() == 1) {
                ++one;
                QVERIFY2(!ours.refused, ours.words.c_str());
                QVERIFY(std::fabs(ours.number - expected[0]) < 1e-8 * (1 + std::fabs(expected[0])));
            } else {
                QVERIFY(ours.refused);
                QCOMPARE(words.count(" %") - (words.contains("from -99 %") ? 2 : 0),
                         qsizetype(expected.size()));
                for (const double rate : expected)
                    QVERIFY2(words.contains(QString::asprintf("%.5g %%", rate * 100)), ours.words.c_str());
                ++(expected.empty() ? none : several);
            }
        }
        QVERIFY2(none > 100 && one > 500 && several > 100,
                 qPrintable(QString("%1 %2 %3").arg(none).arg(one).arg(several)));
    }

    /// A loan paid down month by month, and a reserve that grows to the price.
    void paidDown()
    {
        for (const double rate : {0.0, 0.03, 0.079, 0.25})
            for (const int months : {1, 12, 36, 60, 120}) {
                const double payment = worked("loan_payment", {9000, rate, months / 12.0});
                long double owed = 9000;
                for (int k = 0; k < months; ++k)
                    owed = owed * (1 + static_cast<long double>(rate) / 12) - payment;
                QVERIFY2(std::fabs(static_cast<double>(owed)) < 1e-7, qPrintable(QString::number(rate)));
            }
        for (const double growth : {0.0, 0.03})
            for (const double rate : {0.0, 0.02, 0.05, 0.08})
                for (int n = 1; n <= 25; ++n) { // pays back exactly what was saved by then
                    long double worth = 0;
                    for (int k = 1; k <= n; ++k)
                        worth += 220 * std::pow((1.0L + growth) / (1.0L + rate), static_cast<long double>(k));
                    QVERIFY(
                        close(worked("discounted_payback", {static_cast<double>(worth), 220, rate, growth}),
                              n, 1e-10));
                }
        // 10 CFR 436.22 as read: the nth root of the savings' value at the end over the investment
        for (const double rate : {0.0, 0.03, 0.07})
            for (const int n : {5, 15, 25}) {
                long double atEnd = 0, today = 0;
                for (int k = 1; k <= n; ++k) {
                    atEnd += 310 * std::pow(1.0L + rate, static_cast<long double>(n - k));
                    today += 310 / std::pow(1.0L + rate, static_cast<long double>(k));
                }
                const double ratio =
                    worked("savings_to_investment_ratio", {static_cast<double>(today), 2100});
                QVERIFY(close(worked("adjusted_internal_rate_of_return", {ratio, rate, n * 1.0}),
                              std::pow(atEnd / 2100, 1.0L / n) - 1, 1e-13));
            }
    }
};

QTEST_APPLESS_MAIN(MoneyReferenceTest)
#include "money_reference_test.moc"
