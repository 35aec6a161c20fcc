/// A template of 2,000 lines x 50 columns with 20 formulas a line: everything worked out anew, against gather
/// + Eval + store. How many cells an edit works out is an exact count and told beside it.
#include "bench/recalc_sheets.h"
#include "recalc/evaluator.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

constexpr std::uint32_t lines = 2000, inputs = 30, formulas = 20;

/// Column `c` as the sheet calls it.
std::string key(std::uint32_t c)
{
    static constexpr const char *first[] = {"a", "b", "c", "e", "f", "i", "j", "k", "n", "o"};
    return c < std::size(first) ? first[c] : "q" + std::to_string(c);
}

/// One formula column: the text with its operands as @0 .. @3, and their columns.
struct Form {
    const char *text;
    std::size_t operands;
};
constexpr Form forms[] = {{"@0 + 4*@1 + 2*@2", 3},
                          {"0.64*@0 + 1.3*@1 + 3*@2 + 0.5*@3", 4},
                          {"@0*@1*@2*365/(@3*1.2)", 4},
                          {"(1 - (1 + @0)^(-15))/@0", 1},
                          {"10.67*@0*(@1/(@2*@3^2.63))^1.852", 4}};

const Form &formOf(std::uint32_t f)
{
    return forms[f % std::size(forms)];
}
std::uint32_t operandOf(std::uint32_t f, std::uint32_t k)
{
    return (f * 3 + k * 7) % inputs;
}

std::string textOf(std::uint32_t f, const std::function<std::string(std::uint32_t)> &operand)
{
    std::string out;
    for (const char *at = formOf(f).text; *at; ++at)
        if (*at == '@')
            out += operand(static_cast<std::uint32_t>(*++at - '0'));
        else
            out += *at;
    return out;
}

double input(std::uint32_t column, std::uint32_t line)
{
    return 0.5 + ((line * 7919U + column * 104729U) % 1000U) / 250.0;
}

struct Floor {
    std::vector<std::unique_ptr<BareFormula>> bare;
    std::vector<double> values = std::vector<double>(std::size_t{lines} * (inputs + formulas));
    Floor()
    {
        for (std::uint32_t f = 0; f < formulas; ++f)
            bare.push_back(std::make_unique<BareFormula>(
                textOf(f, [](std::uint32_t k) { return "v" + std::to_string(k); }), formOf(f).operands));
        for (std::uint32_t c = 0; c < inputs; ++c)
            for (std::uint32_t l = 0; l < lines; ++l)
                values[std::size_t{c} * lines + l] = std::stod(std::to_string(input(c, l)));
    }
    void run()
    {
        for (std::uint32_t f = 0; f < formulas; ++f) {
            BareFormula &formula = *bare[f];
            const std::size_t count = formula.slots.size();
            const double *from[4] = {};
            for (std::uint32_t k = 0; k < count; ++k)
                from[k] = &values[std::size_t{operandOf(f, k)} * lines];
            double *to = &values[std::size_t{inputs + f} * lines];
            for (std::uint32_t l = 0; l < lines; ++l) {
                for (std::size_t k = 0; k < count; ++k)
                    formula.slots[k] = from[k][l];
                to[l] = formula.parser.Eval();
            }
        }
    }
};

} // namespace

int main()
{
    const Workbook book = columnsBook(inputs + formulas, lines, [](std::uint32_t c, std::uint32_t l) {
        static std::shared_ptr<const std::string> filled; // a column's lines share one text
        if (c < inputs)
            return shared(std::to_string(input(c, l)));
        if (l == 0)
            filled =
                shared(textOf(c - inputs, [&](std::uint32_t k) { return key(operandOf(c - inputs, k)); }));
        return filled;
    });
    const UnitTable units;
    const Model model = buildModel(book, units, Registry::general(units));
    Values values;
    Evaluator evaluator(model, values);
    evaluator.fill();
    evaluator.workAll();
    Floor floor;
    floor.run();
    for (std::size_t i = 0; i < floor.values.size(); ++i)
        if (!close(floor.values[i], values.number[i]) || values.status[i] != ErrorKind::none) {
            std::fprintf(stderr, "cell %zu differs\n", i);
            return 1;
        }
    // Every value is forgotten before a round, so that every one is stored anew.
    printCost(
        "wide_2000x50_recalculated", 2, [&] { evaluator.workAll(); }, [&] { floor.run(); },
        [&] { evaluator.fill(); });
    const auto program = Program::build(book, units, Registry::general(units));
    Values whole;
    printCost(
        "wide_2000x50_forgotten_and_recalculated", 2, [&] { whole = program->evaluate(); },
        [&] { floor.run(); });

    std::size_t readers = 0;
    for (std::uint32_t f = 0; f < formulas; ++f)
        for (std::uint32_t k = 0; k < formOf(f).operands; ++k)
            readers += operandOf(f, k) == 3 ? 1U : 0U;
    const auto changed = program->evaluateNumbers({{CellAt{0, 3, 700}, 9.5}}, whole);
    std::printf("{\"bench\":\"wide_one_input_edited\",\"evaluated\":%zu,\"dependants\":%zu}\n",
                changed.counts.evaluated, readers);
    return changed.counts.evaluated == readers ? 0 : 1;
}
