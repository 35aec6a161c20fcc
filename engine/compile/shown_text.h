/// A value as words inside a sentence: reasons, refusals, live words.
#pragma once

#include <string>

#include "compile/frame.h"

namespace puteal
{

/// The number of a quantity in its unit ("6.2 mg/L as Fe", "$1,640", "<0.05 mg/L"); other kinds as their
/// words. figures 0 and places -1: 3 figures, money 2 places.
std::string shownForReason(const EvalHost &host, const StaticType &type, const Unit &unit, double number,
                           int figures = 0, int places = -1);

/// A value of the piece under `node` (what `evaluatePiece` or an argument gave), shown as the formula shows
/// it.
std::string shownPiece(const EvalFrame &frame, NodeIndex node, double number);

/// The typed text of a piece.
std::string pieceText(const EvalFrame &frame, NodeIndex node);

} // namespace puteal
