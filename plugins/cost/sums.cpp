/// Worth of uneven sums: net present value by year or by time, modified internal rate of return. (R1, R6, R7)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double netPresentValue(const Argument &sums, double rate, Reply &reply)
{
    if (sums.count() == 0 || !isFilled(sums))
        return reply.refuse(1, blankLine);
    double worth = 0.0;
    for (std::size_t i = sums.count(); i-- > 0;) // from the last year back to today
        worth = worth / (1.0 + rate) + sums.begin()[i];
    return worth;
}

double netPresentValueAt(const Argument &times, const Argument &sums, double rate, Reply &reply)
{
    if (times.count() != sums.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    if (sums.count() == 0 || !isFilled(sums) || !isFilled(times))
        return reply.refuse(0, blankLine);
    double worth = 0.0;
    for (std::size_t i = 0; i < sums.count(); ++i)
        worth += sums.begin()[i] * std::exp(-times.begin()[i] * std::log1p(rate));
    return worth;
}

double modifiedRate(const Argument &sums, double finance, double reinvestment, Reply &reply)
{
    if (sums.count() == 0 || !isFilled(sums))
        return reply.refuse(1, blankLine);
    const std::size_t years = sums.count() - 1;
    double out = 0.0, in = 0.0;
    for (std::size_t i = 0; i <= years; ++i) {
        const double sum = sums.begin()[i];
        if (sum < 0)
            out -= sum * std::exp(-static_cast<double>(i) * std::log1p(finance));
        else
            in += sum * std::exp(static_cast<double>(years - i) * std::log1p(reinvestment));
    }
    if (out == 0.0 || in == 0.0)
        return reply.refuse(1, "a return needs money that goes out, as -$1000, and money that comes back");
    return std::pow(in / out, 1.0 / static_cast<double>(years)) - 1.0;
}

constexpr puteal_parameter worthTakes[] = {
    Parameter(
        "sums", "$",
        "one line a year, the first today; what goes out is negative, what comes in or is saved positive")
        .range(),
    rateParameter,
};
constexpr const char *worthSources[] = {"financial_library", "nbs_83_2657", "definition", nullptr};
constexpr puteal_example worthExamples[] = {
    example("net: -$15000, $1500, $2500, $3500, $4500, $6000; net_present_value(net[:], 5 %)",
            "$122.894854950942692", 1e-12, "published", "financial_library"),
    example("net: -$1000, $400, $400, $400; net_present_value(net[:], 5 %)", "$89.29921175", 1e-9, "computed",
            "definition"),
    example("net: -$1000, $400, $400, $400; net_present_value(net[:], 8 %)", "$30.83879490", 1e-9, "computed",
            "definition"),
    example("net: -$100, $39, $59, $55, $20; net_present_value(net[:], 8 %)", "$45.05547182", 1e-9,
            "computed", "definition"),
    example("net: -$2000, $450, $450, $450, $450, $450, $450, $450; net_present_value(net[:], 5 %)",
            "$603.86802883", 1e-9, "computed", "definition"),
};
constexpr puteal_example worthRefusals[] = {
    refusal("net: -$1000, $400, , $400; net_present_value(net[:], 5 %)", blankLine),
};

constexpr puteal_parameter atTakes[] = {
    Parameter("times", "yr", "years from the day it is reckoned for, as (date - start)").range().hard(0, 200),
    Parameter("sums", "$", "what goes out is negative, what comes in or is saved positive").range(),
    rateParameter,
};
constexpr const char *atSources[] = {"financial_library", "definition", "recalled", nullptr};
constexpr puteal_example atExamples[] = {
    example("when: 0 yr, 1 yr, 2 yr, 3 yr, 4 yr, 5 yr; net: -$15000, $1500, $2500, $3500, $4500, $6000; "
            "net_present_value_at(when[:], net[:], 5 %)",
            "$122.894854950942692", 1e-11, "published", "financial_library"),
    // the first of January 2008 to the first of April 2009, counted in days of 365 to the year
    example("when: 0 day, 60 day, 303 day, 411 day, 456 day; net: -$10000, $2750, $4250, $3250, $2750; "
            "net_present_value_at(when[:], net[:], 9 %)",
            "$2086.65", 3e-6, "memory", "recalled"),
    example("when: 0.5 yr, 1.5 yr; net: $100, $100; net_present_value_at(when[:], net[:], 21 %)",
            "$166.0405710", 1e-8, "computed", "definition"),
};
constexpr puteal_example atRefusals[] = {
    refusal("when: 0 yr, 1 yr; net: -$1000, ; net_present_value_at(when[:], net[:], 5 %)", blankLine),
};

constexpr puteal_parameter modifiedTakes[] = {
    Parameter("sums", "$", "one line a year, the first today; what goes out is negative").range(),
    Parameter("finance", "", "rate a year at which what goes out is paid for, as 8 %")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15),
    Parameter("reinvestment", "", "rate a year that what comes in earns again, as 5 %")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15),
};
constexpr const char *modifiedSources[] = {"financial_library", "definition", nullptr};
constexpr puteal_example modifiedExamples[] = {
    example("net: -$120000, $39000, $30000, $21000, $37000, $46000; "
            "modified_internal_rate_of_return(net[:], 10 %, 12 %)",
            "12.6094130365905146 %", 1e-12, "published", "financial_library"),
    example("net: -$4500, -$800, $800, $800, $600, $600, $800, $800, $700, $3000; "
            "modified_internal_rate_of_return(net[:], 8 %, 5.5 %)",
            "6.6597175031553549 %", 1e-12, "published", "financial_library"),
    example("net: $100, $200, -$50, $300, -$200; modified_internal_rate_of_return(net[:], 5 %, 6 %)",
            "34.2823387842176664 %", 1e-12, "published", "financial_library"),
    example("net: -$100, $0, $121; modified_internal_rate_of_return(net[:], 5 %, 5 %)", "10 %", 1e-12,
            "computed", "definition"),
};
constexpr puteal_example modifiedRefusals[] = {
    refusal("net: $39000, $30000, $21000; modified_internal_rate_of_return(net[:], 10 %, 12 %)",
            "a return needs money that goes out, as -$1000, and money that comes back"),
};

} // namespace

constinit const puteal_function netPresentValueRow =
    Function("net_present_value", "Net present value",
             "What a row of yearly sums is worth today. Sums with risen prices take a nominal rate, sums at "
             "today's prices a real one.",
             call<netPresentValue>)
        .takes(worthTakes)
        .gives("$", "worth today; above $0 the plan earns more than the rate")
        .by("sum over k = 0 .. n of sums[k] / (1 + rate)^k")
        .from(worthSources)
        .shownBy(worthExamples)
        .refusing(worthRefusals);

constinit const puteal_function netPresentValueAtRow =
    Function("net_present_value_at", "Net present value of sums at times",
             "What sums at any times are worth today. A column of dates becomes times by date - start.",
             call<netPresentValueAt>)
        .takes(atTakes)
        .gives("$", "worth today")
        .by("sum of sums / (1 + rate)^(times / 1 yr)")
        .from(atSources)
        .shownBy(atExamples)
        .refusing(atRefusals);

constinit const puteal_function modifiedRateRow =
    Function("modified_internal_rate_of_return", "Modified internal rate of return",
             "Yearly return of a row of sums when what comes in is put to work at a stated rate. It has one "
             "answer, however often the sums change their sign.",
             call<modifiedRate>)
        .takes(modifiedTakes)
        .gives("", "rate a year")
        .by("(value at the end of what comes in / present value of what goes out)^(1 / n) - 1")
        .from(modifiedSources)
        .shownBy(modifiedExamples)
        .refusing(modifiedRefusals);

} // namespace cost
