/// Money over time: compound and present-value factors, annuities, growing yearly costs. (R1, R2)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double compoundAmount(double rate, double time)
{
    return std::exp(time * std::log1p(rate));
}

double presentValueFactor(double rate, double time)
{
    return std::exp(-time * std::log1p(rate));
}

double annuityFactor(double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 0)
        return reply.refuse(2, wholeYearsWanted);
    return annuity(rate, years);
}

double escalatedAnnuity(double growth, double discount, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 0)
        return reply.refuse(3, wholeYearsWanted);
    const double step = (1.0 + growth) / (1.0 + discount);
    double sum = 0.0, factor = 1.0;
    for (int k = 1; k <= years; ++k)
        sum += factor *= step;
    return sum;
}

double equivalentCost(double amount, double rate, double time, Reply &reply)
{
    const int years = wholeYears(time);
    if (years < 1)
        return reply.refuse(3, "an even yearly cost needs one or more whole years");
    return amount / annuity(rate, years);
}

constexpr puteal_parameter compoundTakes[] = {rateParameter, studyTime};
constexpr const char *factorSources[] = {"interest_tables", "finance_code", "definition", nullptr};
constexpr puteal_example compoundExamples[] = {
    example("compound_amount_factor(0.25 %, 12 yr)", "1.0304", 5e-5, "published", "interest_tables"),
    example("compound_amount_factor(5 %, 10 yr)", "1.62889463", 1e-8, "computed", "definition"),
    example("compound_amount_factor(3 %, 20 yr)", "1.80611123", 1e-8, "computed", "definition"),
};
constexpr puteal_example compoundRefusals[] = {
    refusal("compound_amount_factor(5, 10 yr)", "`rate` must be at most 1; it is 5: for 5 percent write 5 %"),
};
constexpr puteal_example presentExamples[] = {
    example("present_value_factor(0.25 %, 24 yr)", "0.9418", 5e-5, "published", "interest_tables"),
    example("present_value_factor(5 %, 10 yr)", "0.6139132535407591", 1e-12, "published", "finance_code"),
    example("present_value_factor(12 %, 10 yr)", "0.32197324", 1e-7, "computed", "definition"),
};
constexpr puteal_example presentRefusals[] = {
    refusal("present_value_factor(5 %, -10 yr)", "`time` must be at least 0 yr; it is -10 yr"),
};
constexpr puteal_example annuityExamples[] = {
    example("annuity_factor(0.25 %, 12 yr)", "11.8073 yr", 1e-5, "published", "interest_tables"),
    example("annuity_factor(5 %, 10 yr)", "7.721734929184818 yr", 1e-12, "published", "finance_code"),
    example("annuity_factor(10 %, 10 yr)", "6.14457 yr", 1e-5, "published", "finance_code"),
    example("annuity_factor(0, 15 yr)", "15 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example annuityRefusals[] = {refusal("annuity_factor(5 %, 10.5 yr)", wholeYearsWanted)};

constexpr puteal_parameter grownTakes[] = {
    growthParameter,
    discountParameter,
    studyTime,
};
constexpr const char *grownSources[] = {"handbook135", "finance_code", "definition", nullptr};
constexpr puteal_example grownExamples[] = {
    // a first payment of 100 that has not grown yet is worth 1000 / 1.05 here, as the growing annuity of the
    // source
    example("$100 * escalated_annuity_factor(5 %, 5 %, 10 yr) / (1 yr * 1.05)", "$952.3809523809", 1e-9,
            "published", "finance_code"),
    example("escalated_annuity_factor(3 %, 5 %, 10 yr)", "9.01002404 yr", 1e-8, "computed", "definition"),
    example("escalated_annuity_factor(2 %, 3 %, 20 yr)", "18.08122939 yr", 1e-8, "computed", "definition"),
    example("escalated_annuity_factor(4 %, 8 %, 15 yr)", "11.23895497 yr", 1e-8, "computed", "definition"),
};
constexpr puteal_example grownRefusals[] = {
    refusal("escalated_annuity_factor(3 %, 5 %, 2.5 yr)", wholeYearsWanted)};

constexpr puteal_parameter equivalentTakes[] = {
    Parameter("cost", "$", "sum worth today"),
    rateParameter,
    Parameter("time", "yr", "years over which it is spread").hard(0, 200).usual(1, 40),
};
constexpr puteal_example equivalentExamples[] = {
    example("equivalent_annual_cost($9490.493077, 5 %, 15 yr)", "$914.335814/yr", 1e-7, "computed",
            "definition"),
    example("equivalent_annual_cost($1000, 0.25 %, 12 yr)", "$84.69/yr", 5e-5, "published",
            "interest_tables"),
};
constexpr puteal_example equivalentRefusals[] = {
    refusal("equivalent_annual_cost($1000, 5 %, 0 yr)", "an even yearly cost needs one or more whole years"),
};

} // namespace

constinit const puteal_function compoundAmountRow =
    Function("compound_amount_factor", "Compound amount factor",
             "What one unit of money becomes at a yearly rate: F/P.", call<compoundAmount>)
        .takes(compoundTakes)
        .gives("", "factor on the first sum")
        .by("(1 + rate)^(time / 1 yr)")
        .from(factorSources)
        .shownBy(compoundExamples)
        .refusing(compoundRefusals);

constinit const puteal_function presentValueFactorRow =
    Function("present_value_factor", "Present value factor",
             "What a later unit of money is worth today: P/F.", call<presentValueFactor>)
        .takes(compoundTakes)
        .gives("", "factor on the later sum")
        .by("(1 + rate)^(-time / 1 yr)")
        .from(factorSources)
        .shownBy(presentExamples)
        .refusing(presentRefusals);

constinit const puteal_function annuityFactorRow =
    Function("annuity_factor", "Annuity factor",
             "Present value of one unit of money a year, paid at the end of each year: P/A.",
             call<annuityFactor>)
        .takes(compoundTakes)
        .gives("yr", "times a yearly cost gives its present value")
        .by("(1 - (1 + rate)^-n) / rate; n at rate 0")
        .from(factorSources)
        .shownBy(annuityExamples)
        .refusing(annuityRefusals);

constinit const puteal_function escalatedAnnuityRow =
    Function(
        "escalated_annuity_factor", "Escalated annuity factor",
        "Present value of a yearly cost whose price of today rises each year: UPV*. The first payment has "
        "risen once; where it has not, use geometric_gradient_factor.",
        call<escalatedAnnuity>)
        .takes(grownTakes)
        .gives("yr", "times a yearly cost at today's price gives its present value")
        .by("sum over k = 1 .. n of ((1 + growth) / (1 + discount))^k")
        .from(grownSources)
        .shownBy(grownExamples)
        .refusing(grownRefusals);

constinit const puteal_function equivalentCostRow =
    Function("equivalent_annual_cost", "Equivalent annual cost",
             "Even yearly sum that is worth as much as a sum of today. Compare only options of equal "
             "function over equal "
             "years.",
             call<equivalentCost>)
        .takes(equivalentTakes)
        .gives("$/yr", "even sum a year")
        .by("cost / annuity_factor(rate, time)")
        .from(factorSources)
        .shownBy(equivalentExamples)
        .refusing(equivalentRefusals);

} // namespace cost
