/// Messages about amounts that do not go together, with the ways out.
#pragma once

#include "check/agreement.h"
#include "check/draft.h"

namespace puteal::checking
{

/// What the formula tried to do with two amounts.
enum class Verb : std::uint8_t { add, subtract, compare, choose };

/// "cannot add `hardness` (gpg as CaCO3) and `iron` (mg/L as Fe): different substances; for ... use ...".
/// `whole` is the node a fix may replace as a whole (the operation), or the left operand where there is none.
tl::unexpected<Error> clash(const Draft &draft, Verb verb, NodeIndex whole, NodeIndex a, NodeIndex b,
                            Misfit why);

/// "compensated_hardness takes iron in mg/L as Fe, not `use` (gal/day)".
tl::unexpected<Error> wrongUnit(const Draft &draft, const FunctionInfo &function,
                                const ParameterInfo &parameter, NodeIndex node, const Unit &wanted,
                                Misfit why);

/// "cannot show `use` (gal/day) in mg/L", or the same against the cell's set unit. `child` is what is shown.
tl::unexpected<Error> wrongResult(const Draft &draft, NodeIndex child, const Unit &wanted, bool set,
                                  Misfit why, const Span &where);

/// Adds what to do about different substances: the table of pairs, or saying of what. `whole` as in clash().
void explainSubstance(const Draft &draft, Error &error, Verb verb, NodeIndex whole, NodeIndex a, NodeIndex b);

} // namespace puteal::checking
