/// Values to text, errors to one line, a calculation in three steps. Everything shown can be typed back.
#pragma once

#include <string>
#include <vector>

#include "recalc/program.h"
#include "units/shown_quantity.h"

namespace puteal
{

/// Any value: yes/no words, listed word, date, quantity, words as they are.
std::string showValue(const StaticType &type, double number, const std::string &words, const Unit &unit,
                      const Rounding &rounding, const ChoiceLists &lists, const UnitTable &units);

/// `eval` style: up to `figures` significant figures, trailing zeros dropped.
std::string showPlain(const StaticType &type, double number, const std::string &words, const Unit &unit,
                      int figures, const ChoiceLists &lists, const UnitTable &units);

/// One line for an error: its words, then the first fix in words. Never ends with a full stop.
std::string errorLine(const Error &error);

/// A formula with a caret line under the span(s), for terminals; of a long one the part pointed at.
std::string pointed(std::string_view text, const Error &error);

/// The three steps of a cell: formula, numbers put in (as shown), result; conversions and dropped things as
/// notes.
struct Calculation {
    std::string title;                ///< "Oxidant need"
    std::string name;                 ///< cell name or address words
    std::vector<std::string> formula; ///< broken at top-level + and -, one line each
    std::vector<std::string> putIn;   ///< same breaks, references replaced by what they show
    std::vector<std::string> terms;   ///< values of the top-level terms when there are two or more
    std::string result;
    std::vector<std::string>
        notes; ///< conversions, "per cartridge, one at a time", relation of plugin functions
    std::string reason;
    std::vector<std::string> cautions;
    std::string error;
};
Calculation calculationOf(const Program &program, const Workbook &workbook, const Values &values,
                          const CellAt &at);

} // namespace puteal
