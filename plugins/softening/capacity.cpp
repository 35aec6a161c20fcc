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

struct Row {
    double salt, grains; // lb of salt and grains of hardness, both for a cubic foot of resin
};
constexpr Row roundRows[] = {{6, 20000}, {8, 24000}, {10, 27000}, {15, 30000}}; // round figures of the trade
constexpr Row lowerRows[] = {{7.5, 22000}, {10, 25000}, {15, 30000}};           // other trade sizing notes
constexpr Row standardRows[] = {{5, 22200}, {10, 29000}, {15, 31300}};          // [Keller, part 2, table 3]
constexpr Row fineRows[] = {{5, 23900}, {10, 31500}, {15, 34000}};              // [Keller, part 2, table 3]

struct Rows {
    const Row *first;
    std::size_t count;
    const Row &last() const { return first[count - 1]; }
};
template<std::size_t N>
constexpr Rows all(const Row (&rows)[N])
{
    return {rows, N};
}
constexpr Rows rowsOf(int table)
{
    return table == standardMesh      ? all(standardRows)
           : table == fineMesh        ? all(fineRows)
           : table == lowerRoundTable ? all(lowerRows)
                                      : all(roundRows);
}

/// Linear between rows, flat above the last, in proportion below the first: no row is promised more than it
/// prints.
double fromRows(const Rows &rows, double salt)
{
    if (lessThan(salt, rows.first->salt))
        return rows.first->grains * salt / rows.first->salt;
    for (std::size_t i = 1; i < rows.count; ++i) {
        const Row &low = rows.first[i - 1], &high = rows.first[i];
        if (atMost(salt, high.salt))
            return low.grains + (salt - low.salt) / (high.salt - low.salt) * (high.grains - low.grains);
    }
    return rows.last().grains;
}

// Public works may count 20,000 grain a cubic foot, at 0.3 lb of salt for each thousand [va590, il604].
constexpr double codeCapacity = 20000, codeGrainsPerPound = 1000 / 0.3;

double capacityAt(double salt, int table)
{
    if (table == logarithmicFit)
        return 10286 * std::log(salt) + 1326.3; // coefficients of the training slides
    if (table == publicCode)
        return std::fmin(codeCapacity, salt * codeGrainsPerPound);
    return fromRows(rowsOf(table), salt);
}

void cautionOutside(double salt, int table, Reply &reply)
{
    if (table == publicCode) {
        if (lessThan(codeCapacity, salt * codeGrainsPerPound))
            reply.caution("code_ceiling",
                          "public codes count no more than 20,000 grain/ft^3, whatever the salt dose");
    } else if (table == logarithmicFit) {
        if (lessThan(salt, 5) || lessThan(15, salt))
            reply.caution("extrapolated", "the fit is printed for 5 to 15 lb/ft^3");
    } else if (lessThan(salt, rowsOf(table).first->salt)) {
        reply.caution("extrapolated", "the table begins at " + figures(rowsOf(table).first->salt) +
                                          " lb/ft^3; below it the capacity is taken in proportion to the "
                                          "salt, and hardness leakage rises");
    } else if (lessThan(rowsOf(table).last().salt, salt)) {
        reply.caution("extrapolated", "the table ends at " + figures(rowsOf(table).last().salt) +
                                          " lb/ft^3; more salt is counted as giving no more capacity");
    }
}

double resinCapacity(double salt, int table, Reply &reply)
{
    cautionOutside(salt, table, reply);
    return capacityAt(salt, table);
}

constexpr puteal_parameter capacityTakes[] = {
    Parameter("salt_dose", "lb/ft^3 as NaCl", "salt for one regeneration of a cubic foot of resin")
        .hard(1, 25)
        .usual(4, 15),
    Parameter(
        "table", "",
        "whose figures: round table = the trade's 20,000 at 6 lb, 24,000 at 8, 27,000 at 10, 30,000 at 15; "
        "logarithmic fit = training slides; standard and fine mesh = Keller's table by bead size, 31,300 "
        "and 34,000 at 15 lb; lower round table = other trade notes, 22,000 at 7.5 lb; public code = "
        "state rules for public works, at most 20,000 at 0.3 lb a thousand grain")
        .oneOf(resinTables)
        .otherwise(roundTable, "T"),
};
constexpr const char *capacitySources[] = {"trade_sizing", "keller",     "trade_fit", "va590",
                                           "il604",        "ten_states", nullptr};
constexpr puteal_example capacityExamples[] = {
    example("resin_capacity(6 lb/ft^3 as NaCl)", "20000 grain/ft^3 as CaCO3", 1e-9, "published", "va590"),
    example("resin_capacity(8 lb/ft^3 as NaCl)", "24000 grain/ft^3 as CaCO3", 1e-9, "published",
            "trade_sizing"),
    example("resin_capacity(10 lb/ft^3 as NaCl)", "27000 grain/ft^3 as CaCO3", 1e-9, "published",
            "trade_sizing"),
    example("resin_capacity(15 lb/ft^3 as NaCl)", "30000 grain/ft^3 as CaCO3", 1e-9, "published",
            "trade_sizing"),
    example("resin_capacity(5 lb/ft^3 as NaCl, \"standard mesh\")", "22200 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(10 lb/ft^3 as NaCl, \"standard mesh\")", "29000 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(15 lb/ft^3 as NaCl, \"standard mesh\")", "31300 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(5 lb/ft^3 as NaCl, \"fine mesh\")", "23900 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(10 lb/ft^3 as NaCl, \"fine mesh\")", "31500 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(15 lb/ft^3 as NaCl, \"fine mesh\")", "34000 grain/ft^3 as CaCO3", 1e-9,
            "published", "keller"),
    example("resin_capacity(7.5 lb/ft^3 as NaCl, \"lower round table\")", "22000 grain/ft^3 as CaCO3", 1e-9,
            "published", "trade_sizing"),
    example("resin_capacity(10 lb/ft^3 as NaCl, \"lower round table\")", "25000 grain/ft^3 as CaCO3", 1e-9,
            "published", "trade_sizing"),
    example("resin_capacity(6 lb/ft^3 as NaCl, \"public code\")", "20000 grain/ft^3 as CaCO3", 1e-9,
            "published", "il604"),
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
    caution("extrapolated", "a salt dose outside the rows of the chosen table"),
    caution("code_ceiling", "public code and a salt dose above 6 lb/ft^3"),
};

// ---------------------------------------------------------------------------------------------------
// salt_dose_for_capacity: the same tables read the other way (R3)

double saltDoseFor(double capacity, int table, Reply &reply)
{
    double low = 1, high = 25; // the range resin_capacity takes
    if (lessThan(capacityAt(high, table), capacity))
        return reply.refuse(1, "no salt dose of this table gives that capacity: take more resin, or another "
                               "table");
    if (lessThan(capacity, capacityAt(low, table)))
        return reply.refuse(1, "even 1 lb/ft^3 gives more than that capacity: take less resin");
    for (int i = 0; i < 60; ++i) { // bisection: the least dose that reaches the capacity
        const double middle = (low + high) / 2;
        (lessThan(capacityAt(middle, table), capacity) ? low : high) = middle;
    }
    cautionOutside(high, table, reply);
    if (lessThan(high, 4))
        reply.caution("leakage", "below 4 lb/ft^3 hardness leaks through: take more salt or less resin");
    return high;
}

constexpr puteal_parameter doseTakes[] = {
    Parameter("capacity", "grain/ft^3 as CaCO3", "capacity wanted of a cubic foot of resin")
        .hard(1, 60000)
        .usual(8000, 40000),
    Parameter("table", "", "whose figures, see resin_capacity").oneOf(resinTables).otherwise(roundTable, "T"),
};
constexpr puteal_example doseExamples[] = {
    example("salt_dose_for_capacity(20000 grain/ft^3 as CaCO3)", "6 lb/ft^3 as NaCl", 1e-9, "published",
            "va590"),
    example("salt_dose_for_capacity(24000 grain/ft^3 as CaCO3)", "8 lb/ft^3 as NaCl", 1e-9, "published",
            "trade_sizing"),
    example("salt_dose_for_capacity(29000 grain/ft^3 as CaCO3, \"standard mesh\")", "10 lb/ft^3 as NaCl",
            1e-9, "published", "keller"),
    example("salt_dose_for_capacity(22000 grain/ft^3 as CaCO3)", "7 lb/ft^3 as NaCl", 1e-9, "computed",
            "trade_sizing"),
};
constexpr puteal_example doseRefusals[] = {
    refusal("salt_dose_for_capacity(32000 grain/ft^3 as CaCO3)",
            "no salt dose of this table gives that capacity: take more resin, or another table"),
};
constexpr puteal_caution doseCautions[] = {
    caution("extrapolated", "a salt dose outside the rows of the chosen table"),
    caution("leakage", "less than 4 lb/ft^3"),
};

// ---------------------------------------------------------------------------------------------------
// salt_efficiency

// One equivalent of salt restores at most one equivalent of hardness [IUPAC 2021]: 5,994 grain a pound.
constexpr double grainsPerPoundAtMost = grainsPerPound(molarMass("NaCl"));

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
    // 7.3 lb would restore 43,700 grain if every ion did its work
    example("salt_efficiency(43700 grain/ft^3 as CaCO3, 7.3 lb/ft^3 as NaCl)", "5989 grain{CaCO3}/lb{NaCl}",
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
        .by("linear in the rows of the chosen table; fit: 10286 * ln(salt_dose) + 1326.3; public code: "
            "salt_dose / 0.3 lb a thousand grain, at most 20000")
        .from(capacitySources)
        .shownBy(capacityExamples)
        .refusing(capacityRefusals)
        .warning(extrapolates);

constinit const puteal_function saltDoseForCapacityRow =
    Function(
        "salt_dose_for_capacity", "Salt dose for a capacity",
        "The least salt dose at which the chosen table gives a capacity: for a bed that is larger than it "
        "must be, and saves salt.",
        call<saltDoseFor>)
        .takes(doseTakes)
        .gives("lb/ft^3 as NaCl", "salt for one regeneration of a cubic foot of resin")
        .by("the salt_dose with resin_capacity(salt_dose, table) = capacity")
        .from(capacitySources)
        .shownBy(doseExamples)
        .refusing(doseRefusals)
        .warning(doseCautions);

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
