/// Rates with and without inflation, rates within the year, prices that rise, payments of a loan. (R1, R2,
/// R6)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double realRate(double nominal, double inflation)
{
    return (nominal - inflation) / (1.0 + inflation);
}

double nominalRate(double real, double inflation)
{
    return real + inflation + real * inflation;
}

double effectiveRate(double rate, double periods, Reply &reply)
{
    const int whole = wholeYears(periods);
    if (whole < 1)
        return reply.refuse(2, "interest is added a whole number of times a year, as 12");
    return std::expm1(whole * std::log1p(rate / whole));
}

double escalatedPrice(double price, double growth, double time)
{
    return price * std::exp(time * std::log1p(growth));
}

double loanPayment(double amount, double rate, double time, Reply &reply)
{
    constexpr double monthPerYear = 12;
    const int months = wholeYears(time * monthPerYear);
    if (months < 1)
        return reply.refuse(3, "a loan is paid back in one or more whole months");
    return amount / annuity(rate / monthPerYear, months);
}

constexpr Parameter inflationParameter = Parameter("inflation", "", "general rise of prices a year, as 2.5 %")
                                             .hard(lowestRate, highestRate)
                                             .usual(-0.01, 0.1);

constexpr puteal_parameter realTakes[] = {
    Parameter("nominal", "", "rate a year with inflation in it, as quoted by a bank")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15),
    inflationParameter,
};
constexpr const char *rateSources[] = {"handbook135", "definition", nullptr};
constexpr puteal_example realExamples[] = {
    example("real_rate(6 %, 2.5 %)", "3.4146341463 %", 1e-10, "computed", "definition"),
    example("real_rate(4 %, 4 %)", "0", 1e-12, "computed", "definition"),
    example("real_rate(0, 25 %)", "-20 %", 1e-12, "computed", "definition"),
};
constexpr puteal_example realRefusals[] = {
    refusal("real_rate(6, 2.5 %)", "`nominal` must be at most 1; it is 6: for 6 percent write 6 %"),
};

constexpr puteal_parameter nominalTakes[] = {
    Parameter("real", "", "rate a year above inflation").hard(lowestRate, highestRate).usual(0, 0.15),
    inflationParameter,
};
constexpr puteal_example nominalExamples[] = {
    example("nominal_rate(3 %, 2 %)", "5.06 %", 1e-12, "computed", "definition"),
    example("nominal_rate(3.4146341463 %, 2.5 %)", "6 %", 1e-9, "computed", "definition"),
    example("nominal_rate(-20 %, 50 %)", "20 %", 1e-12, "computed", "definition"),
};
constexpr puteal_example nominalRefusals[] = {
    refusal("nominal_rate(3 %, 2.5)",
            "`inflation` must be at most 1; it is 2.5: for 2.5 percent write 2.5 %"),
};

constexpr puteal_parameter effectiveTakes[] = {
    Parameter("rate", "", "rate a year as quoted, as 6 %").hard(lowestRate, highestRate).usual(0, 0.3),
    Parameter("periods", "", "how often a year interest is added, as 12").hard(1, 366).usual(1, 365),
};
constexpr const char *effectiveSources[] = {"interest_tables", "interest_tables_half", "definition", nullptr};
constexpr puteal_example effectiveExamples[] = {
    example("1 + effective_rate(3 %, 12)", "1.0304", 5e-5, "published", "interest_tables"),
    example("1 + effective_rate(6 %, 12)", "1.0617", 5e-5, "published", "interest_tables_half"),
    example("effective_rate(10 %, 2)", "10.25 %", 1e-12, "computed", "definition"),
    example("effective_rate(7 %, 1)", "7 %", 1e-12, "computed", "definition"),
};
constexpr puteal_example effectiveRefusals[] = {
    refusal("effective_rate(6 %, 2.5)", "interest is added a whole number of times a year, as 12"),
};

constexpr puteal_parameter priceTakes[] = {
    Parameter("price", "$", "price of today"),
    growthParameter,
    Parameter("time", "yr", "years until it is paid").hard(0, 200).usual(0, 40),
};
constexpr const char *priceSources[] = {"interest_tables", "definition", nullptr};
constexpr puteal_example priceExamples[] = {
    example("escalated_price($1, 0.25 %, 25 yr)", "$1.0644", 5e-5, "published", "interest_tables"),
    example("escalated_price($380, 3 %, 7 yr)", "$467.3521", 1e-7, "computed", "definition"),
    example("escalated_price($100, 10 %, 2 yr)", "$121", 1e-12, "computed", "definition"),
};
constexpr puteal_example priceRefusals[] = {
    refusal("escalated_price($380, 3, 7 yr)", "`growth` must be at most 1; it is 3: for 3 percent write 3 %"),
};

constexpr puteal_parameter loanTakes[] = {
    Parameter("amount", "$", "sum that is borrowed").hard(0, HUGE_VAL),
    Parameter("rate", "", "rate a year as quoted; a twelfth of it counts each month")
        .hard(0, highestRate)
        .usual(0, 0.3),
    Parameter("time", "yr", "how long it is paid back, in whole months").hard(0, 200).usual(0.25, 30),
};
constexpr const char *loanSources[] = {"financial_library", "definition", nullptr};
constexpr puteal_example loanExamples[] = {
    example("loan_payment($15000, 8 %, 5 yr)", "$304.1459143262052/month", 1e-12, "published",
            "financial_library"),
    example("loan_payment($15000, 0, 5 yr)", "$250/month", 1e-12, "published", "financial_library"),
    example("loan_payment($1000, 6 %, 2 yr)", "$44.32/month", 1e-4, "computed", "definition"),
};
constexpr puteal_example loanRefusals[] = {
    refusal("loan_payment($15000, 8 %, 0.26 yr)", "a loan is paid back in one or more whole months"),
};

} // namespace

constinit const puteal_function realRateRow =
    Function("real_rate", "Real rate from nominal",
             "Rate of interest above inflation. Reckon either with today's prices and a real rate, or with "
             "risen prices and a nominal rate; never mix them.",
             call<realRate>)
        .takes(realTakes)
        .gives("", "rate a year above inflation")
        .by("(1 + nominal) / (1 + inflation) - 1")
        .from(rateSources)
        .shownBy(realExamples)
        .refusing(realRefusals);

constinit const puteal_function nominalRateRow =
    Function("nominal_rate", "Nominal rate from real",
             "Rate of interest with inflation in it, for sums whose prices rise.", call<nominalRate>)
        .takes(nominalTakes)
        .gives("", "rate a year with inflation in it")
        .by("(1 + real) * (1 + inflation) - 1")
        .from(rateSources)
        .shownBy(nominalExamples)
        .refusing(nominalRefusals);

constinit const puteal_function effectiveRateRow =
    Function("effective_rate", "Effective rate a year",
             "Rate of a whole year when interest is added several times within it.", call<effectiveRate>)
        .takes(effectiveTakes)
        .gives("", "effective rate a year")
        .by("(1 + rate / periods)^periods - 1")
        .from(effectiveSources)
        .shownBy(effectiveExamples)
        .refusing(effectiveRefusals);

constinit const puteal_function escalatedPriceRow =
    Function("escalated_price", "Price after years of rise",
             "What something of today's price costs later, in the money of that time.", call<escalatedPrice>)
        .takes(priceTakes)
        .gives("$", "price when it is paid")
        .by("price * (1 + growth)^(time / 1 yr)")
        .from(priceSources)
        .shownBy(priceExamples)
        .refusing(priceRefusals);

constinit const puteal_function loanPaymentRow =
    Function("loan_payment", "Payment of a loan",
             "Even monthly payment that pays back a loan with interest, without fees.", call<loanPayment>)
        .takes(loanTakes)
        .gives("$/month", "payment at the end of each month")
        .by("amount / annuity of the months at rate / 12")
        .from(loanSources)
        .shownBy(loanExamples)
        .refusing(loanRefusals)
        .safely("An estimate, no offer of credit: the lender states rate, fees and payments in writing, and "
                "lending to households is regulated.");

} // namespace cost
