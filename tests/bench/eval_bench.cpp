/// One compiled formula recalculated down a column, kinds and cautions kept beside the value, against gather
/// + Eval + store.
#include "bench/recalc_sheets.h"
#include "recalc/evaluator.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

struct Workload {
    const char *name, *ours, *bare;
    std::size_t operands;
    double figure;
};

// The reference formulas on pure numbers: compensated hardness, oxidant sum, backwash gallons a year, annuity
// factor, a loss with two powers, and one with guarded operators.
constexpr Workload workloads[] = {
    {"hardness", "a + 4*b + 2*c", "v0+4*v1+2*v2", 3, 1.5},
    {"oxidant", "0.64*a + 1.3*b + 3*c + 0.5*e", "0.64*v0+1.3*v1+3*v2+0.5*v3", 4, 1.5},
    {"backwash", "a*b*c*365/(e*1.2)", "v0*v1*v2*365/(v3*1.2)", 4, 1.5},
    {"annuity", "(1 - (1 + a)^(-15))/a", "(1-(1+v0)^(-15))/v0", 1, 1.5},
    {"pipe_loss", "10.67*a*(b/(c*e^2.63))^1.852", "10.67*v0*(v1/(v2*v3^2.63))^1.852", 4, 1.5},
    {"guarded", "a > b ? max(c, e) : min(c, e)", "v0>v1 ? max(v2,v3) : min(v2,v3)", 4, 2.0},
};

constexpr std::uint32_t lines = 20000;

double input(std::uint32_t column, std::uint32_t line)
{
    return 0.5 + ((line * 7919U + column * 104729U) % 1000U) / 250.0;
}

bool run(const Workload &workload)
{
    const auto formula = shared(workload.ours);
    const Workbook book = columnsBook(5, lines, [&](std::uint32_t c, std::uint32_t l) {
        return c == 4 ? formula : shared(std::to_string(input(c, l)));
    });
    const UnitTable units;
    const Model model = buildModel(book, units, Registry::general(units));
    Values values;
    Evaluator evaluator(model, values);
    evaluator.fill();
    evaluator.workAll();
    BareFormula bare(workload.bare, workload.operands);
    std::vector<double> inputs(4 * lines), results(lines);
    for (std::uint32_t i = 0; i < 4 * lines; ++i)
        inputs[i] = values.number[i];
    const auto floor = [&] {
        for (std::uint32_t l = 0; l < lines; ++l) {
            for (std::size_t k = 0; k < workload.operands; ++k)
                bare.slots[k] = inputs[k * lines + l];
            results[l] = bare.parser.Eval();
        }
    };
    floor();
    for (std::uint32_t l = 0; l < lines; ++l)
        if (!close(results[l], values.number[4 * lines + l]) ||
            values.status[4 * lines + l] != ErrorKind::none)
            return false;
    // Every value is forgotten before a round, so that every one is stored anew.
    printCost(
        std::string("eval_") + workload.name, workload.figure, [&] { evaluator.workAll(); }, floor,
        [&] { evaluator.fill(); });
    return true;
}

} // namespace

int main()
{
    for (const Workload &workload : workloads)
        if (!run(workload)) {
            std::fprintf(stderr, "%s: the values differ from the bare loop's\n", workload.name);
            return 1;
        }
    return 0;
}
