/// A chain in which every cell needs the one above, its head edited, against bare Evals; and its growth when
/// doubled.
#include "bench/recalc_sheets.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

struct Chain {
    UnitTable units;
    Workbook book;
    std::unique_ptr<Program> program;
    Values values;
    std::uint32_t lines;
    double head = 1.0;

    explicit Chain(std::uint32_t count) : lines(count)
    {
        const auto formula = shared("a[-1] + 1");
        book = columnsBook(1, lines,
                           [&](std::uint32_t, std::uint32_t l) { return l == 0 ? shared("1") : formula; });
        program = Program::build(book, units, Registry::general(units));
        values = program->evaluate();
    }
    /// Edits the head and recalculates what follows.
    std::size_t edit()
    {
        head += 1.0;
        book.sheets[0].setCell(0, 0, Cell{shared(std::to_string(static_cast<int>(head))), nullptr});
        return program->update(book, {{0, 0, 0}}, values).counts.evaluated;
    }
    bool right() const { return values.number[lines - 1] == head + lines - 1; }
};

} // namespace

int main()
{
    constexpr std::uint32_t lines = 100000;
    Chain chain(lines), twice(2 * lines);
    if (chain.edit() != lines - 1 || !chain.right() || twice.edit() != 2 * lines - 1 || !twice.right()) {
        std::fprintf(stderr, "the chain is not what it should be\n");
        return 1;
    }
    BareFormula bare("v0+1", 1);
    std::vector<double> results(lines);
    double head = 1.0;
    const auto floor = [&] {
        results[0] = head += 1.0;
        for (std::uint32_t l = 1; l < lines; ++l) {
            bare.slots[0] = results[l - 1];
            results[l] = bare.parser.Eval();
        }
    };
    printCost(
        "chain_100000", 4, [&] { chain.edit(); }, floor);
    printCost(
        "chain_doubled", 2.4, [&] { twice.edit(); }, [&] { chain.edit(); });

    // One follower: the same edit in a large sheet and in a small one.
    const auto lonely = [](std::uint32_t count) {
        return columnsBook(
            2, count, [](std::uint32_t c, std::uint32_t) { return c == 0 ? shared("2") : shared("a * 3"); });
    };
    const UnitTable units;
    const Workbook largeBook = lonely(lines), smallBook = lonely(1000);
    const auto large = Program::build(largeBook, units, Registry::general(units)),
               small = Program::build(smallBook, units, Registry::general(units));
    Values largeValues = large->evaluate(), smallValues = small->evaluate();
    double number = 2.0;
    const auto editOf = [&](const Program &program, Values &values) {
        for (int i = 0; i < 1000; ++i)
            program.evaluateNumbers({{CellAt{0, 0, 500}, number += 1.0}}, values);
    };
    printCost(
        "one_follower_in_100000", 3, [&] { editOf(*large, largeValues); },
        [&] { editOf(*small, smallValues); });
    return chain.right() && largeValues.number[lines + 500] > 6 && results[lines - 1] == head + lines - 1 ? 0
                                                                                                          : 1;
}
