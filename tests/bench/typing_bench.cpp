/// Microseconds from a typed quantity to its checked value, and from a new formula to a program that is ready
/// to run, beside a bare from_chars and a bare muParser compile; and what an edit of one cell takes in all.
#include <charconv>

#include "bench/recalc_sheets.h"
#include "compile/shape.h"
#include "recalc/model.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

constexpr std::size_t each = 1000; ///< pieces a round

/// Nine rounds in turns; medians of the microseconds a piece.
template<class Ours, class Floor>
void printEach(const char *name, double figure, Ours ours, Floor floor)
{
    std::vector<double> left, right;
    for (int round = 0; round < 9; ++round) {
        left.push_back(processorMilliseconds(ours) * 1e3 / each);
        right.push_back(processorMilliseconds(floor) * 1e3 / each);
    }
    std::printf(
        "{\"bench\":\"%s\",\"ours_us\":%.3f,\"floor_us\":%.3f,\"spread_us\":[%.3f,%.3f],\"figure_us\":%g}\n",
        name, median(left), median(right), *std::min_element(left.begin(), left.end()),
        *std::max_element(left.begin(), left.end()), figure);
}

/// Typed cells of every common kind of unit, every text different.
std::vector<std::string> typedQuantities()
{
    constexpr const char *units[] = {" mg/L as Fe", " gpg", " gpm", " gal/(person*day)", " psi", " in", ""};
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < each; ++i)
        texts.push_back(std::to_string(i / 7) + "." + std::to_string(i % 10) + units[i % std::size(units)]);
    return texts;
}

bool quantities(const UnitTable &units)
{
    const auto texts = typedQuantities();
    const ChoiceLists lists;
    const TypedContext context{&units, &lists, 0, nullptr};
    double sum = 0.0, bareSum = 0.0, checkSum = 0.0;
    for (const std::string &text : texts) {
        const auto typed = readTyped(text, context);
        if (!typed || typed->form != TypedForm::value)
            return false;
        checkSum += typed->value.unit.fromBase(typed->value.number) - std::stod(text);
    }
    if (std::fabs(checkSum) > 1e-9)
        return false;
    printEach(
        "typed_quantity_to_checked_value", 1,
        [&] {
            for (const std::string &text : texts)
                sum += readTyped(text, context)->value.number;
        },
        [&] {
            for (const std::string &text : texts) {
                double x = 0;
                std::from_chars(text.data(), text.data() + text.size(), x);
                bareSum += x;
            }
        });
    return sum > 0 && bareSum > 0;
}

/// The reference formulas with units; @ becomes a number not met before.
struct Form {
    const char *ours, *bare;
};
constexpr Form forms[] = {
    {"a + @*b + 2*c", "r0+@*r1+2*r2"},
    {"0.64*a + 1.3*b + 3*c + @*a", "0.64*r0+1.3*r1+3*r2+@*r0"},
    {"e * f * @ / 1.2", "r0*r1*@/1.2"},
    {"(1 - (1 + i)^(-@))/i", "(1-(1+r0)^(-@))/r0"},
    {"@ ft * j * (e/(1 gpm))^1.852 / (k/(1 in))^4.87", "@*r0*(r1/63)^1.852/(r2/0.254)^4.87"},
};

std::string filled(const char *form, int number)
{
    std::string out;
    for (const char *at = form; *at; ++at)
        if (*at == '@')
            out += "1." + std::to_string(number);
        else
            out += *at;
    return out;
}

Workbook formulaBook(std::uint32_t lines)
{
    constexpr const char *inputs[] = {"6.2 mg/L", "0.4 mg/L", "1.8 mg/L", "7 gpm", "20 min",
                                      "0.05",     "3",        "1.049 in", "12"};
    Workbook book = columnsBook(10, lines, [&](std::uint32_t c, std::uint32_t) {
        return c < std::size(inputs) ? shared(inputs[c]) : shared("a*2");
    });
    return book;
}

/// One formula taken through every stage to a compiled object.
double takeIn(const Model &model, const std::string &text, const CellAt &at)
{
    auto tree = parseText(model, text, false, 0);
    const auto shared = std::make_shared<const Tree>(std::move(tree.value()));
    const auto binding = bindAt(model, *shared, at);
    const ModelTypes types(model);
    auto checked = std::make_shared<const Checked>(
        check(*shared, binding.value(), checkContext(model, at, types)).value());
    const auto compiled = compileFormula(shared, checked, *model.registry, shared->root).value();
    return ShapeCache::ofThread().get(compiled->shape).broken() ? 1.0 : 0.0;
}

/// The same expression in a muParser of its own.
double bareCompile(const std::string &text)
{
    mu::Parser parser;
    double slots[3] = {1.0, 1.0, 1.0};
    parser.EnableOptimizer(false);
    for (int i = 0; i < 3; ++i)
        parser.DefineVar("r" + std::to_string(i), &slots[i]);
    parser.SetExpr(text);
    return parser.Eval();
}

bool formulas(const UnitTable &units)
{
    const Workbook book = formulaBook(100);
    const Model model = buildModel(book, units, Registry::general(units));
    int number = 0, bareNumber = 0;
    double broken = 0.0, bareSum = 0.0;
    const CellAt at{0, 9, 50};
    printEach(
        "new_formula_to_checked_program", 25,
        [&] {
            for (std::size_t i = 0; i < each; ++i)
                broken += takeIn(model, filled(forms[i % std::size(forms)].ours, ++number), at);
        },
        [&] {
            for (std::size_t i = 0; i < each; ++i)
                bareSum += bareCompile(filled(forms[i % std::size(forms)].bare, ++bareNumber));
        });
    return broken == 0.0 && bareSum != 0.0;
}

/// The whole way of an edit in a sheet of 1,000 cells: a quantity, then a new formula.
bool edits(const UnitTable &units)
{
    Workbook book = formulaBook(100);
    const auto program = Program::build(book, units, Registry::general(units));
    Values values = program->evaluate();
    const auto type = [&](std::uint32_t column, std::string text) {
        book.sheets[0].setCell(column, 50, Cell{shared(std::move(text)), nullptr});
        return program->update(book, {{0, column, 50}}, values).nodes.size();
    };
    std::size_t changed = 0;
    int number = 0;
    printEach(
        "edit_of_a_formula_and_of_a_quantity_each", 50,
        [&] {
            for (std::size_t i = 0; i < each; ++i)
                changed += type(9, "a*1." + std::to_string(++number));
        },
        [&] {
            for (std::size_t i = 0; i < each; ++i)
                changed += type(0, "1." + std::to_string(++number) + " mg/L");
        });
    const NodeId last = program->nodeOf({0, 9, 50});
    return changed > 0 && values.status[last] == ErrorKind::none;
}

} // namespace

int main()
{
    const UnitTable units;
    if (quantities(units) && formulas(units) && edits(units))
        return 0;
    std::fprintf(stderr, "something was not read as it should be\n");
    return 1;
}
