/// Internal rate of return: the one rate at which uneven sums balance, or the words why there is none. (R7)
#include "cost.h"
#include "roots.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

/// Beyond this the search would take long, and a rate means nothing any more.
constexpr int mostChanges = 20;

std::string listed(const std::vector<BalancingRate> &rates)
{
    constexpr double perCent = 100;
    std::string words;
    for (std::size_t i = 0; i < rates.size(); ++i) {
        if (i > 0)
            words += i + 1 == rates.size() ? " and " : ", ";
        words += figures(rates[i].rate * perCent, 5) + " %";
    }
    return words;
}

double balancing(std::vector<Flow> flows, std::uint32_t argument, Reply &reply)
{
    flows = ordered(std::move(flows));
    const int changes = signChanges(flows);
    if (changes == 0)
        return reply.refuse(argument,
                            "a return needs money that goes out, as -$1000, and money that comes back");
    if (changes > mostChanges)
        return reply.refuse(argument, "the sums change their sign too often for one rate of return: use "
                                      "net_present_value at your own rate");
    const std::vector<BalancingRate> rates = balancingRates(flows);
    if (rates.empty())
        return reply.refuse(argument, "no rate from -99 % to 1000 % a year balances the sums: use "
                                      "net_present_value at your own rate");
    if (rates.size() > 1)
        return reply.refuse(argument, "the sums balance at " + listed(rates) +
                                          ", so none of them is the return: use net_present_value at your "
                                          "own rate");
    if (!rates[0].crosses)
        reply.caution("touches", "the worth of the sums has the same sign below and above this rate: use "
                                 "net_present_value at your own rate");
    if (flows[0].sum > 0)
        reply.caution("borrowed", "money comes in first: this is the rate a loan costs, and a lower one is "
                                  "better");
    else if (lessThan(rates[0].rate, 0))
        reply.caution("loses", "less comes back than goes out");
    return rates[0].rate;
}

double internalRate(const Argument &sums, Reply &reply)
{
    if (sums.count() == 0 || !isFilled(sums))
        return reply.refuse(1, blankLine);
    std::vector<Flow> flows;
    for (std::size_t i = 0; i < sums.count(); ++i)
        flows.push_back({static_cast<double>(i), sums.begin()[i]});
    return balancing(std::move(flows), 1, reply);
}

double internalRateAt(const Argument &times, const Argument &sums, Reply &reply)
{
    if (times.count() != sums.count())
        return reply.refuse(0, "the two ranges must have the same lines");
    if (sums.count() == 0 || !isFilled(sums) || !isFilled(times))
        return reply.refuse(0, blankLine);
    std::vector<Flow> flows;
    for (std::size_t i = 0; i < sums.count(); ++i)
        flows.push_back({times.begin()[i], sums.begin()[i]});
    return balancing(std::move(flows), 2, reply);
}

constexpr puteal_parameter yearlyTakes[] = {
    Parameter(
        "sums", "$",
        "one line a year, the first today; what goes out is negative, what comes in or is saved positive")
        .range(),
};
constexpr const char *returnSources[] = {"financial_library", "nbs_83_2657", "astm_e1057", "definition",
                                         nullptr};
constexpr puteal_example yearlyExamples[] = {
    example("net: -$150000, $15000, $25000, $35000, $45000, $60000; internal_rate_of_return(net[:])",
            "5.24 %", 1e-3, "published", "financial_library"),
    example("net: -$250000, $100000, $150000, $200000, $250000, $300000; internal_rate_of_return(net[:])",
            "56.72303344358536 %", 1e-12, "published", "financial_library"),
    example("net: -$100, $39, $59, $55, $20; internal_rate_of_return(net[:])", "28.095 %", 1e-5, "published",
            "financial_library"),
    example("net: -$100, $0, $0, $74; internal_rate_of_return(net[:])", "-9.55 %", 1e-3, "published",
            "financial_library"),
    example("net: -$100, $100, $0, $7; internal_rate_of_return(net[:])", "6.206 %", 1e-3, "published",
            "financial_library"),
    example("net: -$1000, $400, $400, $400; internal_rate_of_return(net[:])", "9.70102574 %", 1e-9,
            "computed", "definition"),
    example("net: -$2000, $450, $450, $450, $450, $450, $450, $450; internal_rate_of_return(net[:])",
            "12.84200597 %", 1e-9, "computed", "definition"),
    example("net: $1000, -$400, -$400, -$400; internal_rate_of_return(net[:])", "9.70102574 %", 1e-9,
            "computed", "definition"),
    example("net: -$100, $220, -$121; internal_rate_of_return(net[:])", "10 %", 1e-6, "computed",
            "definition"),
};
constexpr puteal_example yearlyRefusals[] = {
    refusal("net: -$1000, $2300, -$1320; internal_rate_of_return(net[:])",
            "the sums balance at 10 % and 20 %, so none of them is the return: use net_present_value at "
            "your own rate"),
    refusal("net: -$5, $10.50, $1, -$8, $1; internal_rate_of_return(net[:])",
            "the sums balance at -87.02 %, 8.8598 % and 70.956 %, so none of them is the return: use "
            "net_present_value at your own rate"),
    refusal("net: -$1, -$2, -$3; internal_rate_of_return(net[:])",
            "a return needs money that goes out, as -$1000, and money that comes back"),
    refusal("net: -$100, $150, -$100; internal_rate_of_return(net[:])",
            "no rate from -99 % to 1000 % a year balances the sums: use net_present_value at your own rate"),
};
constexpr puteal_caution returnCautions[] = {
    caution("borrowed", "money comes in first"),
    caution("loses", "the rate is negative"),
    caution("touches", "the present value only touches nothing"),
};

constexpr puteal_parameter timedTakes[] = {
    Parameter("times", "yr", "years from the first sum, as (date - start)").range().hard(0, 200),
    Parameter("sums", "$", "what goes out is negative, what comes in or is saved positive").range(),
};
constexpr const char *timedSources[] = {"financial_library", "definition", "recalled", nullptr};
constexpr puteal_example timedExamples[] = {
    example("when: 0 yr, 10 yr; net: -$3500, $10000; internal_rate_of_return_at(when[:], net[:])",
            "11.06908537 %", 1e-9, "published", "financial_library"),
    example("when: 0 yr, 3 yr; net: -$100, $74; internal_rate_of_return_at(when[:], net[:])", "-9.55 %", 1e-3,
            "published", "financial_library"),
    // the first of January 2008 to the first of April 2009, counted in days of 365 to the year
    example("when: 0 day, 60 day, 303 day, 411 day, 456 day; net: -$10000, $2750, $4250, $3250, $2750; "
            "internal_rate_of_return_at(when[:], net[:])",
            "37.3362535 %", 2e-8, "memory", "recalled"),
    example("when: 0 yr, 0.5 yr; net: $100, -$105; internal_rate_of_return_at(when[:], net[:])", "10.25 %",
            1e-12, "computed", "definition"),
    example("when: 0 yr, 2 yr, 4 yr; net: -$100, $242, -$146.41; internal_rate_of_return_at(when[:], net[:])",
            "10 %", 1e-6, "computed", "definition"),
};
constexpr puteal_example timedRefusals[] = {
    refusal("when: 0 yr, 2 yr; net: -$100, -$20; internal_rate_of_return_at(when[:], net[:])",
            "a return needs money that goes out, as -$1000, and money that comes back"),
};

} // namespace

constinit const puteal_function internalRateRow =
    Function("internal_rate_of_return", "Internal rate of return",
             "Rate at which a row of yearly sums is worth nothing today. It is refused when the sums balance "
             "at no rate or at several: then compare net present values.",
             call<internalRate>)
        .takes(yearlyTakes)
        .gives("", "rate a year")
        .by("the rate with sum over k = 0 .. n of sums[k] / (1 + rate)^k = 0")
        .from(returnSources)
        .shownBy(yearlyExamples)
        .refusing(yearlyRefusals)
        .warning(returnCautions);

constinit const puteal_function internalRateAtRow =
    Function("internal_rate_of_return_at", "Internal rate of return of sums at times",
             "Rate at which sums at any times are worth nothing today. A column of dates becomes times by "
             "date - start.",
             call<internalRateAt>)
        .takes(timedTakes)
        .gives("", "rate a year")
        .by("the rate with sum of sums / (1 + rate)^(times / 1 yr) = 0")
        .from(timedSources)
        .shownBy(timedExamples)
        .refusing(timedRefusals)
        .warning(returnCautions);

} // namespace cost
