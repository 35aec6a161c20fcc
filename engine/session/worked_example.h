/// Reads a worked example that needs cells: columns first, the formula last.
#pragma once

#include <string>
#include <string_view>

namespace puteal
{

/// "year: 0 yr, 1 yr; first: $100, $150; sum(first[:])" becomes a workbook text with those columns on one
/// sheet and the formula that stands behind them. Without columns the workbook is "".
struct WorkedExample {
    std::string workbook; ///< for Session::fromText; the formula is tried on line 1 of the second column
    std::string formula;
};
WorkedExample workedExample(std::string_view text);

} // namespace puteal
