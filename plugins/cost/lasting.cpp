/// Parts of finite life in the long run: what is left at the end, what to put aside, what lasts forever. (R2,
/// R3)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double residualValue(double price, double life, double study)
{
    double end = life; // of the part in use
    while (lessThan(end, study))
        end += life;
    return price * std::fmax(0.0, end - study) / life;
}

double yearlyReserve(double price, double life, double rate)
{
    return price / seriesCompound(rate, life);
}

double capitalizedCost(double cost, double rate)
{
    return cost / rate;
}

constexpr Parameter life = Parameter("life", "yr", "how long the part lasts").hard(0.05, 200).usual(0.5, 30);

constexpr puteal_parameter residualTakes[] = {
    Parameter("price", "$", "price of the part"),
    life,
    Parameter("study", "yr", "length of the study; nothing is replaced at its end").hard(0, 200).usual(1, 40),
};
constexpr const char *lastingSources[] = {"handbook135", "definition", nullptr};
constexpr puteal_example residualExamples[] = {
    example("residual_value($380, 7 yr, 15 yr)", "$325.714286", 1e-8, "computed", "definition"),
    example("residual_value($380, 7 yr, 14 yr)", "$0", 1e-12, "computed", "definition"),
    example("residual_value($1200, 20 yr, 15 yr)", "$300", 1e-12, "computed", "definition"),
};
constexpr puteal_example residualRefusals[] = {
    refusal("residual_value($380, 0 yr, 15 yr)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter reserveTakes[] = {
    Parameter("price", "$", "price of one replacement, labor included"),
    life,
    rateParameter.otherwise(0, "A"),
};
constexpr const char *reserveSources[] = {"interest_tables", "interest_tables_half", "definition", nullptr};
constexpr puteal_example reserveExamples[] = {
    example("yearly_reserve($1000, 12 yr, 0.25 %)", "$82.19/yr", 6e-5, "published", "interest_tables"),
    example("yearly_reserve($1000, 15 yr, 0.5 %)", "$64.36/yr", 8e-5, "published", "interest_tables_half"),
    example("yearly_reserve($450, 6 yr, 5 %)", "$66.157861/yr", 1e-8, "computed", "definition"),
    example("yearly_reserve($450, 6 yr)", "$75/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example reserveRefusals[] = {
    refusal("yearly_reserve($450, 0 yr, 5 %)", "`life` must be at least 0.05 yr; it is 0 yr"),
};

constexpr puteal_parameter foreverTakes[] = {
    Parameter("cost", "$/yr", "even yearly cost without an end"),
    Parameter("rate", "", "rate a year, as 5 %").hard(0.001, highestRate).usual(0.01, 0.15),
};
constexpr const char *foreverSources[] = {"definition", nullptr};
constexpr puteal_example foreverExamples[] = {
    example("capitalized_cost($66.157861/yr, 5 %)", "$1323.15722", 1e-9, "computed", "definition"),
    example("capitalized_cost($100/yr, 4 %)", "$2500", 1e-12, "computed", "definition"),
};
constexpr puteal_example foreverRefusals[] = {
    refusal("capitalized_cost($100/yr, 0)", "`rate` must be at least 0.001; it is 0"),
};

} // namespace

constinit const puteal_function residualValueRow =
    Function("residual_value", "Value left at the end",
             "What the last part of finite life is still worth at the end of the study, in a straight line "
             "over its life. Discount it by present_value_factor.",
             call<residualValue>)
        .takes(residualTakes)
        .gives("$", "value at the end of the study")
        .by("price * (time the part in use would still last) / life")
        .from(lastingSources)
        .shownBy(residualExamples)
        .refusing(residualRefusals);

constinit const puteal_function yearlyReserveRow =
    Function("yearly_reserve", "Yearly reserve for a replacement",
             "Even yearly sum to put aside so that it pays a part when its life ends.", call<yearlyReserve>)
        .takes(reserveTakes)
        .gives("$/yr", "sum to put aside at the end of each year")
        .by("price * rate / ((1 + rate)^(life / 1 yr) - 1); price / life at rate 0")
        .from(reserveSources)
        .shownBy(reserveExamples)
        .refusing(reserveRefusals);

constinit const puteal_function capitalizedCostRow =
    Function("capitalized_cost", "Capitalized cost",
             "Present value of a yearly cost that never ends, as care for a system that is always renewed.",
             call<capitalizedCost>)
        .takes(foreverTakes)
        .gives("$", "present value")
        .by("cost / rate")
        .from(foreverSources)
        .shownBy(foreverExamples)
        .refusing(foreverRefusals);

} // namespace cost
