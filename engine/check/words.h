/// Words for pieces of a formula in messages.
#pragma once

#include <string>

#include "check/draft.h"

namespace puteal::checking
{

/// The piece as typed, whole.
std::string source(const Draft &draft, NodeIndex i);
/// The same, cut to a length that suits a sentence.
std::string brief(const Draft &draft, NodeIndex i);
/// As typed, in parentheses where an operator put beside it would bind tighter.
std::string wrapped(const Draft &draft, NodeIndex i);
/// Backticks round what is no literal.
std::string quotedPiece(const Draft &draft, NodeIndex i);
/// "`use` (gal/day)", "5 (a pure number)", "1 mg/L as Fe", "10 gpg (as CaCO3)".
std::string named(const Draft &draft, NodeIndex i);
/// The unit a piece is shown in with its substances, "a pure number" for none.
std::string unitOf(const Draft &draft, NodeIndex i);
std::string unitWords(const Draft &draft, const Unit &unit, const QuantityType &type);
/// "an amount", "yes/no", "a choice", "a date", "words", "blank".
std::string kindWords(const StaticType &type);
std::string listWords(const Draft &draft, std::uint32_t list);
/// "as Fe", "as Cl2 per Fe".
std::string substanceWords(const QuantityType &type);
/// A cell as the message calls it: its name, else sheet and place.
std::string cellWords(const Draft &draft, const CellAt &at);

} // namespace puteal::checking
