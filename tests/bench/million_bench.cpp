/// 1,000,000 filled formula cells worked out, against gather + Eval + store; and the cells a second.
#include "bench/recalc_sheets.h"
#include "compile/shape.h"
#include "recalc/evaluator.h"

using namespace puteal;
using namespace puteal::test;

int main()
{
    constexpr std::uint32_t lines = 100000, inputs = 3, columns = 13;
    const auto formula = shared("a + 4*b + 2*c");
    const Workbook book = columnsBook(columns, lines, [&](std::uint32_t c, std::uint32_t l) {
        return c < inputs ? shared(std::to_string((l * 7919U + c * 104729U) % 1000U)) : formula;
    });
    const UnitTable units;
    const std::size_t compiledBefore = ShapeCache::ofThread().compiles();
    const Model model = buildModel(book, units, Registry::general(units));
    Values values;
    Evaluator evaluator(model, values);
    evaluator.fill();
    evaluator.workAll();
    const std::size_t compiled = ShapeCache::ofThread().compiles() - compiledBefore;
    BareFormula bare("v0+4*v1+2*v2", 3);
    std::vector<double> results(std::size_t{lines} * (columns - inputs));
    const std::vector<double> given(values.number.begin(), values.number.begin() + inputs * lines);
    const auto floor = [&] {
        for (std::uint32_t c = 0; c < columns - inputs; ++c)
            for (std::uint32_t l = 0; l < lines; ++l) {
                for (std::size_t k = 0; k < inputs; ++k)
                    bare.slots[k] = given[k * lines + l];
                results[std::size_t{c} * lines + l] = bare.parser.Eval();
            }
    };
    floor();
    for (std::size_t i = 0; i < results.size(); ++i)
        if (results[i] != values.number[inputs * lines + i]) {
            std::fprintf(stderr, "cell %zu differs\n", i);
            return 1;
        }
    printCost(
        "filled_1000000_recalculated", 3, [&] { evaluator.workAll(); }, floor, [&] { evaluator.fill(); });
    evaluator.fill();
    const double took = processorMilliseconds([&] { evaluator.workAll(); });
    std::printf(
        "{\"bench\":\"filled_1000000_cells_a_second\",\"millions\":%.1f,\"figure\":10,\"compiled\":%zu}\n",
        static_cast<double>(results.size()) / took / 1e3, compiled);
    return compiled == 1 ? 0 : 1;
}
