/// Sheets for the benches of recalculation, and the bare loop they are held against.
#pragma once

#include <cmath>
#include <functional>
#include <iterator>
#include <memory>
#include <string>
#include <vector>

#include <muParser.h>

#include "bench/rounds.h"
#include "recalc/program.h"

namespace puteal::test
{

/// A sheet of amounts columns `a`, `b` ... `o`, `q10`, `q11` ...; `text(column, line)` gives the typed text.
inline Workbook
columnsBook(std::uint32_t columns, std::uint32_t lines,
            const std::function<std::shared_ptr<const std::string>(std::uint32_t, std::uint32_t)> &text)
{
    static constexpr const char *keys[] = {"a", "b", "c", "e", "f", "i", "j", "k", "n", "o"};
    Workbook book;
    book.sheets.emplace_back("s", "Sheet");
    Sheet &sheet = book.sheets[0];
    for (std::uint32_t c = 0; c < columns; ++c) {
        Column column;
        column.key = c < std::size(keys) ? keys[c] : "q" + std::to_string(c);
        sheet.insertColumn(c, column);
    }
    sheet.insertLines(0, lines);
    for (std::uint32_t c = 0; c < columns; ++c)
        for (std::uint32_t l = 0; l < lines; ++l)
            if (auto typed = text(c, l))
                sheet.setCell(c, l, Cell{std::move(typed), nullptr});
    return book;
}

inline std::shared_ptr<const std::string> shared(std::string text)
{
    return std::make_shared<const std::string>(std::move(text));
}

/// muParser alone with variables v0 ..: gather, Eval, store is the floor of every bench.
struct BareFormula {
    mu::Parser parser;
    std::vector<double> slots;
    BareFormula(const std::string &text, std::size_t operands) : slots(operands, 1.0)
    {
        parser.EnableOptimizer(false);
        for (std::size_t i = 0; i < operands; ++i)
            parser.DefineVar("v" + std::to_string(i), &slots[i]);
        parser.SetExpr(text);
        parser.Eval();
    }
    BareFormula(const BareFormula &) = delete;
    BareFormula &operator=(const BareFormula &) = delete;
};

/// Prints how many times the floor ours takes: nine rounds in turns, the median of their ratios. `prepare`
/// goes before each of ours.
template<class Ours, class Floor>
void printCost(
    const std::string &workload, double figure, Ours ours, Floor floor,
    const std::function<void()> &prepare = [] {})
{
    constexpr int rounds = 9;
    std::vector<double> left, right, ratios;
    for (int round = 0; round < rounds; ++round) {
        prepare(); // not timed
        left.push_back(processorMilliseconds(ours));
        right.push_back(processorMilliseconds(floor));
        ratios.push_back(left.back() / right.back());
    }
    std::printf("{\"bench\":\"%s\",\"ours_ms\":%.4f,\"floor_ms\":%.4f,\"ratio\":%.2f,\"spread\":[%.2f,%.2f],"
                "\"figure\":%g}\n",
                workload.c_str(), median(left), median(right), median(ratios),
                *std::min_element(ratios.begin(), ratios.end()),
                *std::max_element(ratios.begin(), ratios.end()), figure);
}

inline bool close(double a, double b)
{
    return std::fabs(a - b) <= 1e-12 * std::fmax(std::fabs(a), std::fabs(b));
}

} // namespace puteal::test
