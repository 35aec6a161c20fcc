/// A plugin's function in a cell, every check on, against a native muParser function of as many arguments
/// that calculates the same.
#include "bench/recalc_sheets.h"
#include "recalc/evaluator.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

constexpr std::uint32_t lines = 20000;

double input(std::uint32_t column, std::uint32_t line)
{
    return 1.0 + ((line * 7919U + column * 104729U) % 1000U) / 500.0;
}

/// Head of fittings in ft: coefficient * v^2 / 2 g, from gpm and in. (As the plugin's minor_loss.)
double nativeLoss(double flow, double diameter, double coefficient)
{
    const double meters = diameter * 0.0254;
    const double v = flow * 3.785411784 / 1000.0 / 60.0 / (3.14159265358979323846 / 4.0 * meters * meters);
    return coefficient * v * v / (2.0 * 9.80665) / 0.3048;
}

} // namespace

int main(int argc, char **argv)
{
    const auto formula = shared("minor_loss(a, b, c)");
    const Workbook book = columnsBook(4, lines, [&](std::uint32_t c, std::uint32_t l) {
        constexpr const char *units[] = {" gpm", " in", ""};
        return c == 3 ? formula : shared(std::to_string(input(c, l)) + units[c]);
    });
    const UnitTable units;
    PluginFolders folders;
    folders.shipped = {PUTEAL_BUILD_DIR "/lib/puteal/plugins"};
    const Model model = buildModel(book, units, Registry::create(units, folders));
    Values values;
    Evaluator evaluator(model, values);
    evaluator.fill();
    evaluator.workAll();

    mu::Parser native;
    std::vector<double> slots(3, 1.0), inputs, results(lines);
    for (std::uint32_t c = 0; c < 3; ++c) {
        native.DefineVar("v" + std::to_string(c), &slots[c]);
        for (std::uint32_t l = 0; l < lines; ++l)
            inputs.push_back(std::stod(std::to_string(input(c, l))));
    }
    native.EnableOptimizer(false);
    native.DefineFun("loss", nativeLoss, false);
    native.SetExpr("loss(v0,v1,v2)");
    if (argc > 1) // so many passes of ours alone, for a profiler
        for (int i = std::atoi(argv[1]); i > 0; --i)
            evaluator.workAll();
    const auto floor = [&] {
        for (std::uint32_t l = 0; l < lines; ++l) {
            for (std::size_t k = 0; k < 3; ++k)
                slots[k] = inputs[k * lines + l];
            results[l] = native.Eval();
        }
    };
    floor();
    const double foot = units.find("ft_head")->factor;
    for (std::uint32_t l = 0; l < lines; ++l)
        if (std::fabs(results[l] - values.number[3 * lines + l] / foot) > 1e-9 * results[l] ||
            values.cautions[3 * lines + l] != 0) {
            std::fprintf(stderr, "line %u: %.17g and %.17g\n", l + 1, results[l],
                         values.number[3 * lines + l]);
            return 1;
        }
    // Every value is forgotten before a round, so that every one is stored anew.
    printCost(
        "plugin_function_of_three", 1.3, [&] { evaluator.workAll(); }, floor, [&] { evaluator.fill(); });
    return 0;
}
