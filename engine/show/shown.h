/// Values to text, errors to one line, a calculation in three steps. Everything shown can be typed back.
#pragma once

#include <string>
#include <vector>

#include "recalc/program.h"

namespace puteal {

/// How many figures or places to show; figures 0 and places -1 mean the default (3 figures; money 2 places).
struct Rounding {
    int figures = 0;
    int places = -1;
};

/// A number with its unit as text that can be typed back: "6.84 mg/L as Cl2", "$1,640", "<0.05 mg/L", "104 day".
struct ShownQuantity {
    std::string number; ///< "6.84", "$1,640", "<0.05"
    std::string unit;   ///< "mg/L as Cl2", "" for money and pure numbers ("/yr" part stays with money: "$45.00/yr")
    std::string text() const { return unit.empty() ? number : number + " " + unit; }
};
ShownQuantity showQuantity(double base, Bound bound, const Unit &unit, const Rounding &rounding);

/// Any value: yes/no words, listed word, date, quantity, words as they are.
std::string showValue(const StaticType &type, double number, const std::string &words, const Unit &unit,
                      const Rounding &rounding, const ChoiceLists &lists, const UnitTable &units);

/// `eval` style: up to `figures` significant figures, trailing zeros dropped.
std::string showPlain(const StaticType &type, double number, const std::string &words, const Unit &unit, int figures,
                      const ChoiceLists &lists, const UnitTable &units);

/// One line for an error: its words, then the first fix in words. Never ends with a full stop.
std::string errorLine(const Error &error);

/// A formula with a caret line under the span(s), for terminals.
std::string pointed(std::string_view text, const Error &error);

/// The three steps of a cell: formula, numbers put in (as shown), result; conversions and dropped things as notes.
struct Calculation {
    std::string title;                ///< "Oxidant need"
    std::string name;                 ///< cell name or address words
    std::vector<std::string> formula; ///< broken at top-level + and -, one line each
    std::vector<std::string> putIn;   ///< same breaks, references replaced by what they show
    std::vector<std::string> terms;   ///< values of the top-level terms when there are two or more
    std::string result;
    std::vector<std::string> notes;   ///< conversions, "per cartridge, one at a time", relation of plugin functions
    std::string reason;
    std::vector<std::string> cautions;
    std::string error;
};
Calculation calculationOf(const Program &program, const Workbook &workbook, const Values &values, const CellAt &at);

} // namespace puteal
