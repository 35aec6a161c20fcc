/// What a cubic foot of resin carries for a salt dose, and what a pound of salt achieves.
#include <cstddef>

#include "softening.h"

using namespace puteal::sdk;

namespace softening
{
namespace
{

// ----------------------------------------------------------------------------------------------
// resin_capacity (R3)

constexpr const char *tables[] = {"round table", "logarithmic fit", "standard mesh", "fine mesh", nullptr};
enum Table : int { roundTable, logarithmicFit, standardMesh, fineMesh };

struct Row {
    double salt, grains; // lb of salt and grains of hardness, both for a cubic foot of resin
};
constexpr Row roundRows[] = {{6, 20000}, {8, 24000}, {10, 27000}, {15, 30000}}; // round figures of the trade
constexpr Row standardRows[] = {{5, 22200}, {10, 29000}, {15, 31300}};          // [Keller, part 2, table 3]
constexpr Row fineRows[] = {{5, 23900}, {10, 31500}, {15, 34000}};              // [Keller, part 2, table 3]

/// Linear between rows, flat above the last, in proportion below the first: no row is promised more than it
/// prints.
template<std::size_t N>
double fromRows(const Row (&rows)[N], double salt, Reply &reply)
{
    if (lessThan(salt, rows[0].salt)) {
        reply.caution("extrapolated", "the table begins at " + figures(rows[0].salt) +
                                          " lb/ft^3; below it the capacity "
                                          "is taken in proportion to the salt, and hardness leakage rises");
        return rows[0].grains * salt / rows[0].salt;
    }
    for (std::size_t i = 1; i < N; ++i) {
        if (atMost(salt, rows[i].salt)) {
            const double share = (salt - rows[i - 1].salt) / (rows[i].salt - rows[i - 1].salt);
            return rows[i - 1].grains + share * (rows[i].grains - rows[i - 1].grains);
        }
    }
    reply.caution("extrapolated", "the table ends at " + figures(rows[N - 1].salt) +
                                      " lb/ft^3; more salt is counted as "
                                      "giving no more capacity");
    return rows[N - 1].grains;
}

double resinCapacity(double salt, int table, Reply &reply)
{
    switch (table) {
    case logarithmicFit:
        if (lessThan(salt, 5) || lessThan(15, salt))
            reply.caution("extrapolated", "the fit is printed for 5 to 15 lb/ft^3");
        return 10286 * std::log(salt) + 1326.3; // coefficients of the training slides
    case standardMesh:
        return fromRows(standardRows, salt, reply);
    case fineMesh:
        return fromRows(fineRows, salt, reply);
    default:
        return fromRows(roundRows, salt, reply);
    }
}

constexpr puteal_parameter capacityTakes[] = {
    Parameter("salt_dose", "lb/ft^3 as NaCl", "salt for one regeneration of a cubic foot of resin")
        .hard(1, 25)
        .usual(4, 15),
    Parameter("table", "", "whose figures: the trade's round figures, a fit, or a table by bead size")
        .oneOf(tables)
        .otherwise(roundTable, "T"),
};
constexpr const char *capacitySources[] = {"trade_sizing", "keller", "trade_fit", "va590", nullptr};
constexpr puteal_example capacityExamples[] = {
    example("resin_capacity(6 lb/ft^3 as NaCl)", "20000 grain/ft^3 as CaCO3", 1e-9, "published", "va590"),
    example("resin_capacity(8 lb/ft^3 as NaCl)", "24000 grain/ft^3 as CaCO3", 1e-9, "published",
            "trade_sizing"),
    example("resin_capacity(10 lb/ft^3 as NaCl, \"standard mesh\")", "29000 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(12 lb/ft^3 as NaCl)", "28200 grain/ft^3 as CaCO3", 1e-9, "computed",
            "trade_sizing"),
    example("resin_capacity(6 lb/ft^3 as NaCl, \"logarithmic fit\")", "19756.3 grain/ft^3 as CaCO3", 1e-5,
            "computed", "trade_fit"),
};
constexpr puteal_example capacityRefusals[] = {
    refusal("resin_capacity(30 lb/ft^3 as NaCl)",
            "`salt_dose` must be at most 25 lb/ft^3 as NaCl; it is 30 lb/ft^3 as NaCl"),
};
constexpr puteal_caution extrapolates[] = {
    caution("extrapolated", "a salt dose outside the rows of the chosen table")};

// ---------------------------------------------------------------------------------------------------
// salt_efficiency

// One equivalent of salt restores at most one equivalent of hardness [IUPAC 2021]: 5,994 grain a pound.
constexpr double grainsPerPoundAtMost =
    molarMass("CaCO3") / 2 / molarMass("NaCl") * measure::gramPerPound * 1000 / measure::mgPerGrain;

double saltEfficiency(double capacity, double salt, Reply &reply)
{
    const double efficiency = capacity / salt;
    if (lessThan(grainsPerPoundAtMost, efficiency)) {
        return reply.refuse(
            1, "no resin takes out more than 5,994 grain of hardness for a pound of salt; check the "
               "capacity and the salt dose");
    }
    if (lessThan(efficiency, 3350)) // the standard's efficiency rating [NSF/ANSI 44 clause 7 as quoted]
        reply.caution("below_rating", "below 3,350 grain a pound, the efficiency rating of NSF/ANSI 44");
    return efficiency;
}

constexpr puteal_parameter efficiencyTakes[] = {
    Parameter("capacity", "grain/ft^3 as CaCO3", "hardness taken out between regenerations")
        .hard(0, 60000)
        .usual(8000, 40000),
    Parameter("salt_dose", "lb/ft^3 as NaCl", "salt for one regeneration of the same resin")
        .hard(0.1, 25)
        .usual(4, 15),
};
constexpr const char *efficiencySources[] = {"iupac2021", "hb44", "nsf44", "chemistry_line", nullptr};
constexpr puteal_example efficiencyExamples[] = {
    example("salt_efficiency(43683 grain/ft^3 as CaCO3, 7.294 lb/ft^3 as NaCl)", "5989 grain{CaCO3}/lb{NaCl}",
            1e-3, "published", "chemistry_line"),
    example("salt_efficiency(20000 grain/ft^3 as CaCO3, 6 lb/ft^3 as NaCl)", "3333.333 grain{CaCO3}/lb{NaCl}",
            1e-6, "computed", "nsf44"),
    example("salt_efficiency(30000 grain/ft^3 as CaCO3, 15 lb/ft^3 as NaCl)", "2000 grain{CaCO3}/lb{NaCl}",
            1e-9, "computed", "nsf44"),
};
constexpr puteal_example efficiencyRefusals[] = {
    refusal("salt_efficiency(30000 grain/ft^3 as CaCO3, 4 lb/ft^3 as NaCl)",
            "no resin takes out more than 5,994 grain of hardness for a pound of salt; check the capacity "
            "and the salt "
            "dose"),
};
constexpr puteal_caution efficiencyCautions[] = {caution("below_rating", "less than 3,350 grain a pound")};

} // namespace

constinit const puteal_function resinCapacityRow =
    Function("resin_capacity", "Resin capacity for a salt dose",
             "Hardness that a cubic foot of gel cation resin takes out between regenerations with a given "
             "salt dose, "
             "brined in the direction of service.",
             call<resinCapacity>)
        .takes(capacityTakes)
        .gives("grain/ft^3 as CaCO3", "capacity of a cubic foot of resin")
        .by("linear in the rows of the chosen table; fit: 10286 * ln(salt_dose) + 1326.3")
        .from(capacitySources)
        .shownBy(capacityExamples)
        .refusing(capacityRefusals)
        .warning(extrapolates);

constinit const puteal_function saltEfficiencyRow =
    Function("salt_efficiency", "Salt efficiency", "Hardness taken out for each pound of salt.",
             call<saltEfficiency>)
        .takes(efficiencyTakes)
        .gives("grain{CaCO3}/lb{NaCl}", "hardness taken out for a pound of salt")
        .by("capacity / salt_dose")
        .from(efficiencySources)
        .shownBy(efficiencyExamples)
        .refusing(efficiencyRefusals)
        .warning(efficiencyCautions);

} // namespace softening
