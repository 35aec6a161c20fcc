/// Interest factors of even and of rising yearly series, by their names in engineering economy. (R1, R2, R6)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

constexpr const char oneYearWanted[] = "a yearly series needs one or more whole years";

double capitalRecovery(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 1)
        return reply.refuse(2, oneYearWanted);
    return 1.0 / annuity(rate, years);
}

double sinkingFund(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 1)
        return reply.refuse(2, oneYearWanted);
    return 1.0 / seriesCompound(rate, years);
}

double seriesCompoundAmount(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 0)
        return reply.refuse(2, wholeYearsWanted);
    return seriesCompound(rate, years);
}

/// Nothing in the first year, one unit in the second, two in the third. Summed: the closed form loses its
/// figures at small rates.
double gradientWorth(double rate, int years)
{
    double sum = 0.0, factor = 1.0 / (1.0 + rate);
    for (int k = 2; k <= years; ++k)
        sum += (k - 1) * (factor /= 1.0 + rate);
    return sum;
}

double gradientPresentWorth(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 0)
        return reply.refuse(2, wholeYearsWanted);
    return gradientWorth(rate, years);
}

double gradientSeries(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 1)
        return reply.refuse(2, oneYearWanted);
    return gradientWorth(rate, years) / annuity(rate, years);
}

double geometricGradient(double growth, double discount, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 0)
        return reply.refuse(3, wholeYearsWanted);
    double sum = 0.0, factor = 1.0 / (1.0 + discount);
    for (int k = 1; k <= years; ++k, factor *= (1.0 + growth) / (1.0 + discount))
        sum += factor;
    return sum;
}

double escalatedFactor(double growth, double discount, double time)
{
    return std::exp(time * (std::log1p(growth) - std::log1p(discount)));
}

constexpr puteal_parameter takes[] = {rateParameter, studyTime};
constexpr const char *sources[] = {"interest_tables", "interest_tables_half", "financial_library",
                                   "definition", nullptr};
constexpr puteal_example recoveryExamples[] = {
    example("capital_recovery_factor(0.25 %, 12 yr)", "0.08469 1/yr", 6e-5, "published", "interest_tables"),
    example("capital_recovery_factor(0.25 %, 24 yr)", "0.04298 1/yr", 1.2e-4, "published", "interest_tables"),
    example("$2000 * capital_recovery_factor(30 %, 12 yr)", "$626.9081401700758/yr", 1e-12, "published",
            "financial_library"),
    example("$20000 * capital_recovery_factor(80 %, 3 yr)", "$19311.25827814570/yr", 1e-12, "published",
            "financial_library"),
    example("capital_recovery_factor(5 %, 15 yr)", "0.0963422876 1/yr", 1e-9, "computed", "definition"),
    example("capital_recovery_factor(0, 60 yr)", "0.016666666667 1/yr", 1e-9, "computed", "definition"),
};
constexpr puteal_example recoveryRefusals[] = {refusal("capital_recovery_factor(5 %, 0 yr)", oneYearWanted)};

constexpr puteal_example fundExamples[] = {
    example("sinking_fund_factor(0.25 %, 24 yr)", "0.04048 1/yr", 1.3e-4, "published", "interest_tables"),
    example("sinking_fund_factor(0.25 %, 10 yr)", "0.09888 1/yr", 6e-5, "published", "interest_tables"),
    example("sinking_fund_factor(0.5 %, 10 yr)", "0.09777 1/yr", 6e-5, "published", "interest_tables_half"),
    example("$450 * sinking_fund_factor(5 %, 6 yr)", "$66.157861/yr", 1e-8, "computed", "definition"),
    example("$450 * sinking_fund_factor(0, 6 yr)", "$75/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example fundRefusals[] = {refusal("sinking_fund_factor(5 %, 6.5 yr)", oneYearWanted)};

constexpr puteal_example compoundExamples[] = {
    example("series_compound_amount_factor(0.25 %, 24 yr)", "24.70282 yr", 4e-7, "published",
            "interest_tables"),
    example("series_compound_amount_factor(0.5 %, 20 yr)", "20.979 yr", 3e-5, "published",
            "interest_tables_half"),
    example("$2000/yr * series_compound_amount_factor(7.5 %, 20 yr)", "$86609.36267304300", 1e-12,
            "published", "financial_library"),
    example("$100/yr * series_compound_amount_factor(10 %, 5 yr)", "$610.51", 1e-12, "published",
            "financial_library"),
    example("$100/yr * series_compound_amount_factor(20 %, 5 yr)", "$744.16", 1e-12, "published",
            "financial_library"),
    example("series_compound_amount_factor(3 %, 10 yr)", "11.46387931 yr", 1e-9, "computed", "definition"),
};
constexpr puteal_example compoundRefusals[] = {
    refusal("series_compound_amount_factor(5 %, 10.5 yr)", wholeYearsWanted)};

constexpr puteal_example worthExamples[] = {
    example("gradient_present_worth_factor(0.25 %, 24 yr)", "264.7753 yr^2", 2e-7, "published",
            "interest_tables"),
    example("gradient_present_worth_factor(0.25 %, 12 yr)", "64.5886 yr^2", 8e-7, "published",
            "interest_tables"),
    example("gradient_present_worth_factor(5 %, 10 yr)", "31.652048 yr^2", 2e-8, "computed", "definition"),
    example("gradient_present_worth_factor(10 %, 15 yr)", "40.151988 yr^2", 2e-8, "computed", "definition"),
    example("gradient_present_worth_factor(0, 10 yr)", "45 yr^2", 1e-12, "computed", "definition"),
};
constexpr puteal_example worthRefusals[] = {
    refusal("gradient_present_worth_factor(5 %, 2.5 yr)", wholeYearsWanted)};

constexpr puteal_example seriesExamples[] = {
    example("gradient_series_factor(0.25 %, 12 yr)", "5.4702 yr", 1e-5, "published", "interest_tables"),
    example("gradient_series_factor(0.25 %, 25 yr)", "11.8702 yr", 5e-6, "published", "interest_tables"),
    example("gradient_series_factor(5 %, 10 yr)", "4.09908501 yr", 1e-8, "computed", "definition"),
    example("gradient_series_factor(0, 11 yr)", "5 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example seriesRefusals[] = {refusal("gradient_series_factor(5 %, 0 yr)", oneYearWanted)};

constexpr puteal_parameter grownTakes[] = {growthParameter, discountParameter, studyTime};
constexpr const char *grownSources[] = {"finance_code", "handbook135", "definition", nullptr};
constexpr puteal_example geometricExamples[] = {
    example("$100/yr * geometric_gradient_factor(5 %, 5 %, 10 yr)", "$952.3809523809", 1e-9, "published",
            "finance_code"),
    example("geometric_gradient_factor(0, 5 %, 10 yr)", "7.721734929184818 yr", 1e-12, "published",
            "finance_code"),
    example("geometric_gradient_factor(3 %, 5 %, 10 yr)", "8.74759615 yr", 1e-9, "computed", "definition"),
};
constexpr puteal_example geometricRefusals[] = {
    refusal("geometric_gradient_factor(3 %, 5 %, 2.5 yr)", wholeYearsWanted)};

constexpr puteal_example escalatedExamples[] = {
    example("escalated_present_value_factor(0, 5 %, 10 yr)", "0.6139132535407591", 1e-12, "published",
            "finance_code"),
    example("escalated_present_value_factor(5 %, 5 %, 10 yr)", "1", 1e-12, "computed", "definition"),
    example("escalated_present_value_factor(3 %, 5 %, 1 yr)", "0.980952381", 1e-9, "computed", "definition"),
};
constexpr puteal_example escalatedRefusals[] = {
    refusal("escalated_present_value_factor(3, 5 %, 10 yr)",
            "`growth` must be at most 1; it is 3: for 3 percent write 3 %"),
};

} // namespace

constinit const puteal_function capitalRecoveryRow =
    Function("capital_recovery_factor", "Capital recovery factor",
             "Even yearly sum that pays back one unit of money of today, with interest: A/P.",
             call<capitalRecovery>)
        .takes(takes)
        .gives("1/yr", "times a sum of today gives the even yearly sum")
        .by("rate / (1 - (1 + rate)^-n); 1 / n at rate 0")
        .from(sources)
        .shownBy(recoveryExamples)
        .refusing(recoveryRefusals);

constinit const puteal_function sinkingFundRow =
    Function("sinking_fund_factor", "Sinking fund factor",
             "Even yearly sum that has grown to one unit of money when the last is put aside: A/F.",
             call<sinkingFund>)
        .takes(takes)
        .gives("1/yr", "times a later sum gives what to put aside a year")
        .by("rate / ((1 + rate)^n - 1); 1 / n at rate 0")
        .from(sources)
        .shownBy(fundExamples)
        .refusing(fundRefusals);

constinit const puteal_function seriesCompoundRow =
    Function("series_compound_amount_factor", "Series compound amount factor",
             "What one unit of money a year has become when the last is paid: F/A.",
             call<seriesCompoundAmount>)
        .takes(takes)
        .gives("yr", "times a yearly sum gives what it has become")
        .by("((1 + rate)^n - 1) / rate; n at rate 0")
        .from(sources)
        .shownBy(compoundExamples)
        .refusing(compoundRefusals);

constinit const puteal_function gradientWorthRow =
    Function("gradient_present_worth_factor", "Gradient present worth factor",
             "Present value of a yearly cost that is nothing in the first year and rises by the same sum "
             "each year after: P/G. The even part is counted by annuity_factor.",
             call<gradientPresentWorth>)
        .takes(takes)
        .gives("yr^2", "times the yearly rise, as $10/yr^2, gives the present value")
        .by("sum over k = 1 .. n of (k - 1) * (1 + rate)^-k")
        .from(sources)
        .shownBy(worthExamples)
        .refusing(worthRefusals);

constinit const puteal_function gradientSeriesRow =
    Function("gradient_series_factor", "Gradient series factor",
             "Even yearly cost worth as much as one that is nothing in the first year and rises by the same "
             "sum each year after: A/G.",
             call<gradientSeries>)
        .takes(takes)
        .gives("yr", "times the yearly rise, as $10/yr^2, gives the even yearly sum")
        .by("gradient_present_worth_factor / annuity_factor")
        .from(sources)
        .shownBy(seriesExamples)
        .refusing(seriesRefusals);

constinit const puteal_function geometricGradientRow =
    Function("geometric_gradient_factor", "Geometric gradient factor",
             "Present value of a yearly cost that rises by a share each year after the first. The first "
             "payment has not risen yet; where prices are of today and the first has risen once, use "
             "escalated_annuity_factor.",
             call<geometricGradient>)
        .takes(grownTakes)
        .gives("yr", "times the first year's cost gives the present value")
        .by("sum over k = 1 .. n of (1 + growth)^(k - 1) / (1 + discount)^k")
        .from(grownSources)
        .shownBy(geometricExamples)
        .refusing(geometricRefusals);

constinit const puteal_function escalatedFactorRow =
    Function("escalated_present_value_factor", "Escalated present value factor",
             "What a later cost at today's price is worth today, when its price rises until then: SPV*.",
             call<escalatedFactor>)
        .takes(grownTakes)
        .gives("", "factor on today's price")
        .by("((1 + growth) / (1 + discount))^(time / 1 yr)")
        .from(grownSources)
        .shownBy(escalatedExamples)
        .refusing(escalatedRefusals);

} // namespace cost
