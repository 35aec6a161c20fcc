/// The sum over 100,000 cells, one member edited, against a compensated sum over the same numbers.
#include "bench/recalc_sheets.h"

using namespace puteal;
using namespace puteal::test;

namespace
{

/// Neumaier's compensated sum [A. Neumaier, ZAMM 54, 1974], written for this bench alone.
double compensated(const std::vector<double> &items)
{
    double sum = 0.0, lost = 0.0;
    for (const double x : items) {
        const double next = sum + x;
        if (std::fabs(sum) >= std::fabs(x))
            lost += (sum - next) + x;
        else
            lost += (x - next) + sum;
        sum = next;
    }
    return sum + lost;
}

} // namespace

int main()
{
    constexpr std::uint32_t lines = 100000, member = 54321;
    const Workbook book =
        columnsBook(2, lines, [](std::uint32_t c, std::uint32_t l) -> std::shared_ptr<const std::string> {
            if (c == 0)
                return shared(std::to_string(l % 1000) + "." + std::to_string(l % 97));
            return l == 0 ? shared("sum(a[1:100000])") : nullptr;
        });
    const UnitTable units;
    const auto program = Program::build(book, units, Registry::general(units));
    Values values = program->evaluate();
    std::vector<double> items(values.number.begin(), values.number.begin() + lines);
    double edited = 1.0, bareEdited = 1.0, bareSum = 0.0;
    const auto ours = [&] {
        edited += 0.25;
        return program->evaluateNumbers({{CellAt{0, 0, member}, edited}}, values).counts.evaluated;
    };
    const auto floor = [&] {
        items[member] = bareEdited += 0.25;
        bareSum = compensated(items);
    };
    if (ours() != 1 || (floor(), values.number[lines] != bareSum)) {
        std::fprintf(stderr, "the sum is not the bare one\n");
        return 1;
    }
    const auto many = [](auto &work) {
        for (int i = 0; i < 10; ++i)
            work();
    };
    printCost(
        "sum_100000_member_edited_10_times", 2, [&] { many(ours); }, [&] { many(floor); });
    return values.number[lines] == bareSum ? 0 : 1;
}
