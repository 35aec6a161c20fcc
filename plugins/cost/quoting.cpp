/// From cost to price, and which options count as equally cheap. (R8)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double priceByMargin(double cost, double margin)
{
    return cost / (1.0 - margin);
}

double priceByMarkup(double cost, double markup)
{
    return cost * (1.0 + markup);
}

double marginFromMarkup(double markup)
{
    return markup / (1.0 + markup);
}

double salesTax(double parts, double labor, double rate, bool laborTaxed)
{
    return (parts + (laborTaxed ? labor : 0.0)) * rate;
}

double countsAsCheapest(double cost, const Argument &costs, double band, Reply &reply)
{
    if (costs.count() == 0 || !isFilled(costs))
        return reply.refuse(2, blankLine);
    double lowest = HUGE_VAL;
    for (std::size_t i = 0; i < costs.count(); ++i)
        lowest = std::fmin(lowest, costs.begin()[i]);
    if (lessThan(lowest, 0))
        return reply.refuse(2, "a band around a gain means nothing: compare costs above $0/yr");
    return atMost(cost, lowest * (1.0 + band)) ? 1.0 : 0.0;
}

constexpr puteal_parameter marginTakes[] = {
    Parameter("cost", "$", "what the job costs with overhead").hard(0, HUGE_VAL),
    Parameter("margin", "", "share of the price that is profit, as 30 %").hard(-0.5, 0.95).usual(0, 0.6),
};
constexpr const char *quotingSources[] = {"definition", "practice", nullptr};
constexpr puteal_example marginExamples[] = {
    example("price_by_margin($700, 30 %)", "$1000", 1e-12, "computed", "definition"),
    example("price_by_margin($1000, 0)", "$1000", 1e-12, "computed", "definition"),
};
constexpr puteal_example marginRefusals[] = {
    refusal("price_by_margin($700, 30)",
            "`margin` must be at most 0.95; it is 30: for 30 percent write 30 %"),
};

constexpr Parameter markupParameter =
    Parameter("markup", "", "what is put on top, as a share of the cost, as 43 %")
        .hard(-0.5, 20)
        .usual(0, 1.5);
constexpr puteal_parameter markupTakes[] = {
    Parameter("cost", "$", "what the job costs with overhead").hard(0, HUGE_VAL),
    markupParameter,
};
constexpr puteal_example markupExamples[] = {
    example("price_by_markup($700, 30 %)", "$910", 1e-12, "computed", "definition"),
    example("price_by_markup($700, 42.8571428571 %)", "$1000", 1e-10, "computed", "definition"),
};
constexpr puteal_example markupRefusals[] = {
    refusal("price_by_markup($700, 30)", "`markup` must be at most 20; it is 30"),
};

constexpr puteal_parameter fromTakes[] = {markupParameter};
constexpr puteal_example fromExamples[] = {
    example("margin_from_markup(100 %)", "50 %", 1e-12, "computed", "definition"),
    example("margin_from_markup(25 %)", "20 %", 1e-12, "computed", "definition"),
};
constexpr puteal_example fromRefusals[] = {
    refusal("margin_from_markup(25)", "`markup` must be at most 20; it is 25"),
};

constexpr puteal_parameter taxTakes[] = {
    Parameter("parts", "$", "price of equipment and material").hard(0, HUGE_VAL),
    Parameter("labor", "$", "price of work").hard(0, HUGE_VAL),
    Parameter("rate", "", "rate of the tax, as 6 %").hard(0, 0.5).usual(0, 0.12),
    Parameter("labor_taxed", "", "work is taxed too").yesNo().otherwise(0, "A"),
};
constexpr puteal_example taxExamples[] = {
    example("sales_tax($1000, $500, 6 %)", "$60", 1e-12, "computed", "definition"),
    example("sales_tax($1000, $500, 6 %, yes)", "$90", 1e-12, "computed", "definition"),
};
constexpr puteal_example taxRefusals[] = {
    refusal("sales_tax($1000, $500, 6)", "`rate` must be at most 0.5; it is 6: for 6 percent write 6 %"),
};

constexpr puteal_parameter cheapestTakes[] = {
    Parameter("cost", "$/yr", "average yearly cost of this option"),
    Parameter("costs", "$/yr", "average yearly costs of all options of equal function").range(),
    Parameter("band", "", "how far above the lowest still counts as equal")
        .hard(0, 1)
        .usual(0, 0.25)
        .otherwise(0.1, "T"),
};
constexpr puteal_example cheapestExamples[] = {
    example("all: $815.27/yr, $914.34/yr, $890/yr; counts_as_cheapest($890/yr, all[:])", "yes", 0,
            "common practice", "practice"),
    example("all: $815.27/yr, $914.34/yr, $890/yr; counts_as_cheapest($914.34/yr, all[:])", "no", 0,
            "common practice", "practice"),
    example("all: $815.27/yr, $914.34/yr, $890/yr; counts_as_cheapest($890/yr, all[:], 0)", "no", 0,
            "computed", "definition"),
};
constexpr puteal_example cheapestRefusals[] = {
    refusal("all: $815.27/yr, ; counts_as_cheapest($890/yr, all[:])", blankLine),
};

} // namespace

constinit const puteal_function priceByMarginRow =
    Function("price_by_margin", "Price by margin",
             "Price of which a share is profit. A margin of 30 % asks for more than a markup of 30 %.",
             call<priceByMargin>)
        .takes(marginTakes)
        .gives("$", "price before tax")
        .by("cost / (1 - margin)")
        .from(quotingSources)
        .shownBy(marginExamples)
        .refusing(marginRefusals);

constinit const puteal_function priceByMarkupRow =
    Function("price_by_markup", "Price by markup",
             "Price from the cost and what is put on top of it. A markup of 30 % leaves a margin of 23 %.",
             call<priceByMarkup>)
        .takes(markupTakes)
        .gives("$", "price before tax")
        .by("cost * (1 + markup)")
        .from(quotingSources)
        .shownBy(markupExamples)
        .refusing(markupRefusals);

constinit const puteal_function marginFromMarkupRow =
    Function("margin_from_markup", "Margin of a markup",
             "Share of the price that is profit when a share of the cost is put on top.",
             call<marginFromMarkup>)
        .takes(fromTakes)
        .gives("", "share of the price")
        .by("markup / (1 + markup)")
        .from(quotingSources)
        .shownBy(fromExamples)
        .refusing(fromRefusals);

constinit const puteal_function salesTaxRow =
    Function("sales_tax", "Sales tax", "Tax on a job by parts and work.", call<salesTax>)
        .takes(taxTakes)
        .gives("$", "tax")
        .by("(parts, and labor where it is taxed) * rate")
        .from(quotingSources)
        .shownBy(taxExamples)
        .refusing(taxRefusals)
        .safely("States differ on what is taxed, and some exempt water treatment or work built into a house: "
                "ask the revenue office.");

constinit const puteal_function countsAsCheapestRow =
    Function("counts_as_cheapest", "Counts as cheapest",
             "Whether an option lies so near the lowest average yearly cost that both count as equal; then "
             "the sturdier one is chosen.",
             call<countsAsCheapest>)
        .takes(cheapestTakes)
        .givesYesNo("within the band above the lowest")
        .by("cost <= least of costs * (1 + band)")
        .from(quotingSources)
        .shownBy(cheapestExamples)
        .refusing(cheapestRefusals);

} // namespace cost
