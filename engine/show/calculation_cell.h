/// The cell whose calculation is written, and how the cells it refers to show; internal to this folder.
#pragma once

#include <optional>
#include <string>

#include "show/shown.h"

namespace puteal
{

/// One cell with what its calculation is written from.
struct CalculationCell {
    const Program &program;
    const Workbook &workbook;
    const Values &values;
    CellAt at;
    const NodeFacts &facts;
};

/// What another cell shows, as it stands in a formula (words and choices quoted); none when it is blank or
/// has an error.
std::optional<std::string> shownInFormula(const CalculationCell &cell, const CellAt &at);

/// The piece under `node` as typed.
std::string pieceAsTyped(const Tree &tree, NodeIndex node);

/// The piece under `node` with references replaced by what they show.
std::string piecePutIn(const CalculationCell &cell, NodeIndex node);

/// What the piece under `node` comes to: "yes", "3.97 mg/L as Cl2"; empty when that cannot be told. Amounts
/// are shown in `unit` when it fits.
std::string pieceValue(const CalculationCell &cell, NodeIndex node, const Unit *unit);

/// Is the condition under `node` true here? None when that cannot be told.
std::optional<bool> conditionHolds(const CalculationCell &cell, NodeIndex node);

/// "3.785 L per gal" for units that differ between what goes in and what comes out.
std::vector<std::string> conversionNotes(const CalculationCell &cell);

} // namespace puteal
