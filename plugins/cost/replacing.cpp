/// Parts of finite life, payback, and the year in which one option overtakes another. (R3, R4)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

/// Calls visit(k * life) for every replacement up to and including `time`, none at or after the study's end.
template<class Visit>
void eachReplacement(double life, double time, double study, Visit visit)
{
    for (int k = 1; lessThan(k * life, study) && atMost(k * life, time); ++k)
        visit(k * life);
}

double timesReplaced(double life, double time, double study)
{
    int times = 0;
    eachReplacement(life, time, study, [&](double) { ++times; });
    return times;
}

double replacementsCost(double price, double life, double time, double study, double growth, double discount)
{
    const double step = std::log1p(growth) - std::log1p(discount);
    double sum = 0.0;
    eachReplacement(life, time, study, [&](double when) { sum += price * std::exp(step * when); });
    return sum;
}

double simplePayback(double extra, double saving, Reply &reply)
{
    if (atMost(saving, 0))
        return reply.refuse(2, "nothing is saved, so it never pays back");
    return extra / saving;
}

double breakEvenYear(const Argument &years, const Argument &first, const Argument &second, Reply &reply)
{
    const std::size_t n = years.count();
    if (first.count() != n || second.count() != n)
        return reply.refuse(0, "the three ranges must have the same lines");
    double found = std::nan(""), lastGap = 0.0, lastYear = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double year = years.begin()[i], gap = first.begin()[i] - second.begin()[i];
        if (!std::isfinite(year) || !std::isfinite(gap))
            return reply.refuse(0, blankLine);
        if (i > 0 && !lessThan(lastYear, year))
            return reply.refuse(1, "the years must rise from line to line");
        // A gap of nothing belongs to the side it came from until it opens on the other one.
        if (gap != 0.0) {
            if (lastGap != 0.0 && (gap > 0) != (lastGap > 0)) {
                const double before = i > 0 ? first.begin()[i - 1] - second.begin()[i - 1] : 0.0;
                const double start = years.begin()[i - 1];
                found = before == 0.0 ? start : start + (year - start) * before / (before - gap);
            }
            lastGap = gap;
        }
        lastYear = year;
    }
    if (std::isnan(found))
        return reply.refuse(0, "the two never cross: the cheaper one stays cheaper");
    return found;
}

constexpr Parameter life = Parameter("life", "yr", "how long the part lasts").hard(0.05, 200).usual(0.5, 30);
constexpr Parameter upTo =
    Parameter("time", "yr", "replacements up to and including this time").hard(0, 200).usual(0, 40);
constexpr Parameter study =
    Parameter("study", "yr", "length of the study; nothing is replaced at its end").hard(0, 200).usual(1, 40);

constexpr puteal_parameter timesTakes[] = {life, upTo, study};
constexpr const char *replacingSources[] = {"handbook135", "definition", nullptr};
constexpr puteal_example timesExamples[] = {
    example("times_replaced(7 yr, 15 yr, 15 yr)", "2", 1e-12, "computed", "definition"),
    example("times_replaced(7 yr, 14 yr, 14 yr)", "1", 1e-12, "computed", "definition"),
    example("times_replaced(5 yr, 5 yr, 15 yr)", "1", 1e-12, "computed", "definition"),
};
constexpr puteal_example timesRefusals[] = {
    refusal("times_replaced(0 yr, 15 yr, 15 yr)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter costTakes[] = {
    Parameter("price", "$", "price of one replacement today"),
    life,
    upTo,
    study,
    growthParameter.otherwise(0, "A"),
    discountParameter.otherwise(0, "A"),
};
constexpr puteal_example costExamples[] = {
    example("replacements_cost($450, 6 yr, 15 yr, 15 yr, 0, 5 %)", "$586.373767", 1e-8, "computed",
            "definition"),
    example("replacements_cost($220, 5 yr, 15 yr, 15 yr)", "$440", 1e-12, "computed", "definition"),
    example("replacements_cost($400, 10 yr, 20 yr, 20 yr, 0, 3 %)", "$297.637566", 1e-8, "computed",
            "definition"),
};
constexpr puteal_example costRefusals[] = {
    refusal("replacements_cost($450, 0 yr, 15 yr, 15 yr)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter paybackTakes[] = {
    Parameter("extra", "$", "what the dearer option costs more to buy").hard(0, HUGE_VAL),
    Parameter("saving", "$/yr", "what it costs less a year"),
};
constexpr const char *paybackSources[] = {"definition", nullptr};
constexpr puteal_example paybackExamples[] = {
    example("simple_payback($2100, $220/yr)", "9.545455 yr", 1e-7, "computed", "definition"),
    example("simple_payback($600, $150/yr)", "4 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example paybackRefusals[] = {
    refusal("simple_payback($2100, $0/yr)", "nothing is saved, so it never pays back"),
};

constexpr puteal_parameter breakEvenTakes[] = {
    Parameter("years", "yr", "years of the table, rising").range().hard(0, 200).usual(0, 40),
    Parameter("first", "$", "what the first option has cost by then").range(),
    Parameter("second", "$", "what the second option has cost by then").range(),
};
constexpr puteal_example breakEvenExamples[] = {
    // the discounted gap of two options, $45.7830 in year 9 and -$317.2382 in year 10
    example("year: 8 yr, 9 yr, 10 yr; first: $230.8181, $45.7830, $0; second: $0, $0, $317.2382; "
            "break_even_year(year[:], first[:], second[:])",
            "9.126116 yr", 1e-6, "computed", "definition"),
    example("year: 0 yr, 1 yr, 2 yr, 3 yr; first: $100, $100, $300, $300; second: $200, $50, $250, $350; "
            "break_even_year(year[:], first[:], second[:])",
            "2.5 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example breakEvenRefusals[] = {
    refusal("year: 0 yr, 1 yr; first: $100, $150; second: $200, $300; break_even_year(year[:], first[:], "
            "second[:])",
            "the two never cross: the cheaper one stays cheaper"),
};

} // namespace

constinit const puteal_function timesReplacedRow =
    Function("times_replaced", "Times a part is replaced",
             "How often a part of finite life is replaced by a time; none at the end of the study.",
             call<timesReplaced>)
        .takes(timesTakes)
        .gives("", "number of replacements")
        .by("count of k = 1, 2, ... with k * life <= time and k * life < study")
        .from(replacingSources)
        .shownBy(timesExamples)
        .refusing(timesRefusals);

constinit const puteal_function replacementsCostRow =
    Function("replacements_cost", "Cost of replacements",
             "Cost of replacing a part of finite life up to a time, with price rise and discount.",
             call<replacementsCost>)
        .takes(costTakes)
        .gives("$", "cost of the replacements; today's worth if a discount is given")
        .by("price * sum over replacements at t of ((1 + growth) / (1 + discount))^t")
        .from(replacingSources)
        .shownBy(costExamples)
        .refusing(costRefusals);

constinit const puteal_function simplePaybackRow =
    Function("simple_payback", "Simple payback", "Years until a dearer option has saved what it cost more.",
             call<simplePayback>)
        .takes(paybackTakes)
        .gives("yr", "simple payback, without interest")
        .by("extra / saving")
        .from(paybackSources)
        .shownBy(paybackExamples)
        .refusing(paybackRefusals);

constinit const puteal_function breakEvenYearRow =
    Function(
        "break_even_year", "Break-even year",
        "Year in which two cumulative costs cross for the last time, linear between the lines of the table.",
        call<breakEvenYear>)
        .takes(breakEvenTakes)
        .gives("yr", "last crossing")
        .by("last change of sign of first - second, linear between lines")
        .from(paybackSources)
        .shownBy(breakEvenExamples)
        .refusing(breakEvenRefusals);

} // namespace cost
