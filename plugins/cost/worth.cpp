/// Measures that compare two options: savings to investment, adjusted return, discounted payback, life-cycle
/// cost, break-even use. (R1, R2, R6)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double savingsRatio(double savings, double investment)
{
    return savings / investment;
}

double adjustedRate(double ratio, double rate, double time)
{
    return (1.0 + rate) * std::pow(ratio, 1.0 / time) - 1.0;
}

double discountedPayback(double extra, double saving, double rate, double growth, Reply &reply)
{
    if (atMost(saving, 0))
        return reply.refuse(2, "nothing is saved, so it never pays back");
    const double step = std::log1p(growth) - std::log1p(rate);
    const double simple = extra / saving;
    if (step == 0.0)
        return simple;
    const double left = 1.0 - simple * std::expm1(-step); // of what an endless row of savings is worth
    if (atMost(left, 0))
        return reply.refuse(2,
                            "the savings never make up for the interest: at this rate it does not pay back");
    return std::log1p(-simple * std::expm1(-step)) / step;
}

double lifeCycleCost(double investment, double replacements, double residual, double energy, double water,
                     double upkeep)
{
    return investment + replacements - residual + energy + water + upkeep;
}

double breakEvenVolume(double firstYearly, double firstPrice, double secondYearly, double secondPrice,
                       Reply &reply)
{
    const double fixed = secondYearly - firstYearly, running = firstPrice - secondPrice;
    if (running == 0.0 || fixed / running < 0)
        return reply.refuse(0, "one of the two is cheaper at any use: there is no break-even");
    return fixed / running;
}

constexpr puteal_parameter ratioTakes[] = {
    Parameter("savings", "$", "present value of what is saved in running and upkeep").hard(0, HUGE_VAL),
    Parameter("investment", "$", "present value of the extra investment and replacements less what is left")
        .hard(0.01, HUGE_VAL),
};
constexpr const char *ratioSources[] = {"cfr_436", "astm_e964", "definition", nullptr};
constexpr puteal_example ratioExamples[] = {
    example("savings_to_investment_ratio($3000, $1500)", "2", 1e-12, "computed", "definition"),
    example("savings_to_investment_ratio($220/yr * annuity_factor(5 %, 15 yr), $2100)", "1.087392747", 1e-9,
            "computed", "definition"),
};
constexpr puteal_example ratioRefusals[] = {
    refusal("savings_to_investment_ratio($3000, $0)", "`investment` must be at least $0.01; it is $0"),
};

constexpr puteal_parameter adjustedTakes[] = {
    Parameter("ratio", "", "savings to investment, see savings_to_investment_ratio")
        .hard(0, 1e6)
        .usual(0.2, 20),
    Parameter("rate", "", "discount rate a year, at which savings are put to work again")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15),
    Parameter("time", "yr", "years of the study").hard(1, 200).usual(1, 40),
};
constexpr const char *adjustedSources[] = {"cfr_436", "astm_e1057", "definition", nullptr};
constexpr puteal_example adjustedExamples[] = {
    example("adjusted_internal_rate_of_return(1.489633, 5 %, 15 yr)", "7.827098 %", 1e-6, "computed",
            "definition"),
    example("adjusted_internal_rate_of_return(1, 3 %, 20 yr)", "3 %", 1e-12, "computed", "definition"),
    example("adjusted_internal_rate_of_return(4, 0, 2 yr)", "100 %", 1e-12, "computed", "definition"),
};
constexpr puteal_example adjustedRefusals[] = {
    refusal("adjusted_internal_rate_of_return(1.5, 5, 15 yr)",
            "`rate` must be at most 1; it is 5: for 5 percent write 5 %"),
};

constexpr puteal_parameter paybackTakes[] = {
    Parameter("extra", "$", "what the dearer option costs more to buy").hard(0, HUGE_VAL),
    Parameter("saving", "$/yr", "what it costs less a year, at today's prices"),
    rateParameter,
    growthParameter.otherwise(0, "A"),
};
constexpr const char *paybackSources[] = {"definition", nullptr};
constexpr puteal_example paybackExamples[] = {
    example("discounted_payback($2100, $220/yr, 5 %)", "13.295619 yr", 1e-7, "computed", "definition"),
    example("discounted_payback($2100, $220/yr, 0)", "9.545454545 yr", 1e-9, "computed", "definition"),
    example("discounted_payback($2100, $220/yr, 5 %, 5 %)", "9.545454545 yr", 1e-9, "computed", "definition"),
    example("discounted_payback($100, $105/yr, 5 %)", "1 yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example paybackRefusals[] = {
    refusal("discounted_payback($2100, $100/yr, 5 %)",
            "the savings never make up for the interest: at this rate it does not pay back"),
    refusal("discounted_payback($2100, $0/yr, 5 %)", "nothing is saved, so it never pays back"),
};

constexpr Parameter presentWorth(const char *name, const char *meaning)
{
    return Parameter(name, "$", meaning).otherwise(0, "A");
}
constexpr puteal_parameter lifeTakes[] = {
    Parameter("investment", "$", "bought and installed today"),
    presentWorth("replacements", "present value, see replacements_cost"),
    presentWorth("residual", "present value of what is left at the end, see residual_value; it is taken off"),
    presentWorth("energy", "present value of the yearly cost of energy"),
    presentWorth("water", "present value of the yearly cost of water and waste water"),
    presentWorth("upkeep", "present value of supplies, service, repair and tests"),
};
constexpr const char *lifeSources[] = {"handbook135", "definition", nullptr};
constexpr puteal_example lifeExamples[] = {
    example("life_cycle_cost($1000, $297.637566, $55.367575, $0, $0, $743.873743)", "$1986.143734", 1e-10,
            "computed", "definition"),
    example("life_cycle_cost($1000, replacements_cost($400, 10 yr, 20 yr, 20 yr, 0, 3 %), $100 * "
            "present_value_factor(3 %, 20 yr), $0, $0, $50/yr * annuity_factor(3 %, 20 yr))",
            "$1986.143734", 1e-9, "computed", "definition"),
    example("life_cycle_cost($1200)", "$1200", 1e-12, "computed", "definition"),
};
constexpr puteal_example lifeRefusals[] = {
    refusal("life_cycle_cost($1000, $300/yr)", "life_cycle_cost takes replacements in $, not $300/yr"),
};

constexpr puteal_parameter volumeTakes[] = {
    Parameter("first_yearly", "$/yr", "what the first option costs a year however much is used"),
    Parameter("first_price", "$/gal", "what it costs for each gallon").hard(0, 100),
    Parameter("second_yearly", "$/yr", "what the second option costs a year however much is used"),
    Parameter("second_price", "$/gal", "what it costs for each gallon").hard(0, 100),
};
constexpr puteal_example volumeExamples[] = {
    example("break_even_volume($40/yr, $0.002/gal, $240/yr, $0.0005/gal)", "133333.333 gal/yr", 1e-8,
            "computed", "definition"),
    example("break_even_volume($0/yr, $1.80/kgal, $90/yr, $0/kgal)", "50000 gal/yr", 1e-12, "computed",
            "definition"),
};
constexpr puteal_example volumeRefusals[] = {
    refusal("break_even_volume($40/yr, $0.002/gal, $240/yr, $0.003/gal)",
            "one of the two is cheaper at any use: there is no break-even"),
};

} // namespace

constinit const puteal_function savingsRatioRow =
    Function("savings_to_investment_ratio", "Savings-to-investment ratio",
             "How many times over an extra investment comes back, both as present values. Above 1 it earns "
             "more than the discount rate. Compare over equal years and equal function.",
             call<savingsRatio>)
        .takes(ratioTakes)
        .gives("", "times the investment comes back")
        .by("savings / investment")
        .from(ratioSources)
        .shownBy(ratioExamples)
        .refusing(ratioRefusals);

constinit const puteal_function adjustedRateRow =
    Function("adjusted_internal_rate_of_return", "Adjusted internal rate of return",
             "Yearly return of an investment over the study when savings are put to work again at the "
             "discount rate.",
             call<adjustedRate>)
        .takes(adjustedTakes)
        .gives("", "rate a year")
        .by("(1 + rate) * ratio^(1 yr / time) - 1")
        .from(adjustedSources)
        .shownBy(adjustedExamples)
        .refusing(adjustedRefusals);

constinit const puteal_function discountedPaybackRow =
    Function("discounted_payback", "Discounted payback",
             "Years until even yearly savings have paid back an extra price with interest; within a year as "
             "the growth of the factors runs.",
             call<discountedPayback>)
        .takes(paybackTakes)
        .gives("yr", "discounted payback")
        .by("ln(1 - extra / saving * (1 / q - 1)) / ln(q), q = (1 + growth) / (1 + rate)")
        .from(paybackSources)
        .shownBy(paybackExamples)
        .refusing(paybackRefusals);

constinit const puteal_function lifeCycleCostRow =
    Function("life_cycle_cost", "Life-cycle cost",
             "What an option costs over the years of the study, all parts as present values at one rate. "
             "Compare only options of equal function over equal years.",
             call<lifeCycleCost>)
        .takes(lifeTakes)
        .gives("$", "life-cycle cost as present value")
        .by("investment + replacements - residual + energy + water + upkeep")
        .from(lifeSources)
        .shownBy(lifeExamples)
        .refusing(lifeRefusals);

constinit const puteal_function breakEvenVolumeRow =
    Function("break_even_volume", "Break-even use",
             "Yearly use of water at which two options cost the same: one dear by the year and cheap by the "
             "gallon, the other the reverse.",
             call<breakEvenVolume>)
        .takes(volumeTakes)
        .gives("gal/yr", "use at which both cost the same")
        .by("(second_yearly - first_yearly) / (first_price - second_price)")
        .from(paybackSources)
        .shownBy(volumeExamples)
        .refusing(volumeRefusals);

} // namespace cost
