/// What a year takes and costs in salt, chemical, cartridges and other supplies. (R1)
#include "cost.h"

namespace cost
{

using namespace puteal::sdk;

namespace
{

double chemicalPerYear(double use, double dose, double strength)
{
    return use * dose / strength;
}

double supplyCost(double use, double package, double price)
{
    return use / package * price;
}

double cartridgeCost(double price, double days, double cartridges)
{
    return price * cartridges * measure::dayPerYear / days;
}

constexpr puteal_parameter chemicalTakes[] = {
    Parameter("use", "gal/yr", "water that is dosed in a year").hard(0, 1e8).usual(5000, 500000),
    Parameter("dose", "'u", "what the water gets").hard(0, HUGE_VAL),
    Parameter("strength", "'u", "strength of what is bought, with what it loses by standing taken off")
        .hard(1e-9, HUGE_VAL),
};
constexpr const char *chemicalSources[] = {"definition", nullptr};
constexpr puteal_example chemicalExamples[] = {
    example("chemical_per_year(87600 gal/yr, 3 mg/L as Cl2, 52500 mg/L as Cl2)", "5.005714286 gal/yr", 1e-9,
            "computed", "definition"),
    example("chemical_per_year(100000 gal/yr, 2 mg/L as H2O2, 70000 mg/L as H2O2)", "2.857142857 gal/yr",
            1e-9, "computed", "definition"),
};
constexpr puteal_example chemicalRefusals[] = {
    refusal("chemical_per_year(-1 gal/yr, 3 mg/L as Cl2, 52500 mg/L as Cl2)",
            "`use` must be at least 0 gal/yr; it is -1 gal/yr"),
};

constexpr puteal_parameter supplyTakes[] = {
    Parameter("use", "'u/yr", "what is used in a year, as 547.5 lb/yr").hard(0, HUGE_VAL),
    Parameter("package", "'u", "what one package holds, as 40 lb").hard(1e-9, HUGE_VAL),
    Parameter("price", "$", "price of one package").hard(0, HUGE_VAL),
};
constexpr const char *supplySources[] = {"definition", nullptr};
constexpr puteal_example supplyExamples[] = {
    example("supply_cost(547.5 lb/yr as NaCl, 40 lb as NaCl, $8)", "$109.5/yr", 1e-12, "computed",
            "definition"),
    example("supply_cost(5 gal/yr, 2.5 gal, $12)", "$24/yr", 1e-12, "computed", "definition"),
    example("supply_cost(1 cartridge/yr, 4 cartridge, $60)", "$15/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example supplyRefusals[] = {
    refusal("supply_cost(5 gal/yr, 2.5 gal, -$12)", "`price` must be at least $0; it is -$12"),
};

constexpr puteal_parameter cartridgeTakes[] = {
    Parameter("price", "$/cartridge", "price of one cartridge").hard(0, 100000),
    Parameter("days", "day/cartridge", "days between changes, see cartridge_days")
        .hard(1, 3650)
        .usual(30, 365),
    Parameter("cartridges", "", "how many are changed together").hard(1, 100).usual(1, 4).otherwise(1, "A"),
};
constexpr const char *cartridgeSources[] = {"definition", nullptr};
constexpr puteal_example cartridgeExamples[] = {
    example("cartridge_cost($45/cartridge, 104 day/cartridge)", "$157.932692/yr", 1e-8, "computed",
            "definition"),
    example("cartridge_cost($18/cartridge, 73 day/cartridge, 2)", "$180/yr", 1e-12, "computed", "definition"),
};
constexpr puteal_example cartridgeRefusals[] = {
    refusal("cartridge_cost($45/cartridge, 0 day/cartridge)",
            "`days` must be at least 1 day/cartridge; it is 0 day/cartridge"),
};

} // namespace

constinit const puteal_function chemicalPerYearRow =
    Function("chemical_per_year", "Chemical a year",
             "Volume of bought chemical a year from the water dosed, the dose and the strength.",
             call<chemicalPerYear>)
        .takes(chemicalTakes)
        .gives("gal/yr", "chemical used in a year")
        .by("use * dose / strength")
        .from(chemicalSources)
        .shownBy(chemicalExamples)
        .refusing(chemicalRefusals)
        .safely("Keep no more than is used while it is fresh. Goggles and gloves; bleach never meets acid, "
                "ammonia, peroxide, permanganate or resin cleaner.");

constinit const puteal_function supplyCostRow =
    Function("supply_cost", "Cost of a supply",
             "Yearly cost of salt, chemical, media or anything bought by the package.", call<supplyCost>)
        .takes(supplyTakes)
        .gives("$/yr", "yearly cost")
        .by("use / package * price")
        .from(supplySources)
        .shownBy(supplyExamples)
        .refusing(supplyRefusals);

constinit const puteal_function cartridgeCostRow =
    Function("cartridge_cost", "Cost of cartridges",
             "Yearly cost of cartridges from their price and the days between changes.", call<cartridgeCost>)
        .takes(cartridgeTakes)
        .gives("$/yr", "yearly cost")
        .by("price * cartridges * 365 day/yr / days")
        .from(cartridgeSources)
        .shownBy(cartridgeExamples)
        .refusing(cartridgeRefusals);

} // namespace cost
