/// 100,000 cells that read one input, the input edited, against gather + Eval + store; and running totals
/// when doubled.
#include "bench/recalc_sheets.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

struct Totals {
    UnitTable units;
    Workbook book;
    std::unique_ptr<Program> program;
    Values values;
    double first = 1.0;

    explicit Totals(std::uint32_t lines)
    {
        const auto formula = shared("sum(a[1:+0])");
        book = columnsBook(2, lines,
                           [&](std::uint32_t c, std::uint32_t) { return c == 0 ? shared("1") : formula; });
        program = Program::build(book, units, Registry::general(units));
        values = program->evaluate();
    }
    void edit() { program->evaluateNumbers({{CellAt{0, 0, 0}, first += 1.0}}, values); }
};

} // namespace

int main()
{
    constexpr std::uint32_t lines = 100000;
    const auto formula = shared("a[1] * 1.2 + b");
    Workbook book =
        columnsBook(3, lines, [&](std::uint32_t c, std::uint32_t l) -> std::shared_ptr<const std::string> {
            if (c == 2)
                return formula;
            return c == 1 || l == 0 ? shared(std::to_string(1 + l % 100)) : nullptr;
        });
    const UnitTable units;
    const auto program = Program::build(book, units, Registry::general(units));
    Values values = program->evaluate();
    BareFormula bare("v0*1.2+v1", 2);
    std::vector<double> others(values.number.begin() + lines, values.number.begin() + 2 * lines),
        results(lines);
    double input = 1.0, bareInput = 1.0;
    const auto floor = [&] {
        bareInput += 1.0;
        for (std::uint32_t l = 0; l < lines; ++l) {
            bare.slots[0] = bareInput;
            bare.slots[1] = others[l];
            results[l] = bare.parser.Eval();
        }
    };
    const auto ours = [&] {
        return program->evaluateNumbers({{CellAt{0, 0, 0}, input += 1.0}}, values).counts.evaluated;
    };
    floor();
    if (ours() != lines) {
        std::fprintf(stderr, "not every reader was worked out\n");
        return 1;
    }
    for (std::uint32_t l = 0; l < lines; ++l)
        if (!close(results[l], values.number[2 * lines + l])) {
            std::fprintf(stderr, "line %u differs\n", l + 1);
            return 1;
        }
    printCost("shared_input_100000", 3, ours, floor);

    Totals totals(10000), twice(20000);
    printCost(
        "running_totals_doubled", 2.4, [&] { twice.edit(); }, [&] { totals.edit(); });
    return twice.values.number[2 * 20000 - 1] == twice.first + 19999 ? 0 : 1;
}
