/// In which unit a piece of a formula is shown.
#pragma once

#include "check/draft.h"

namespace puteal::checking
{

/// The first operand unit of that type under node `i`, else the first of that dimension, else the default
/// table's. A plugin's function is an operand in its declared unit (in SI workbooks its arguments come
/// first). Things and substances are spelled in.
Unit shownFor(const Draft &draft, NodeIndex i, const QuantityType &type);

/// `unit` respelled to carry the things and substances of `type`; the default table's where that cannot be.
Unit respelled(const Draft &draft, const Unit &unit, const QuantityType &type);

} // namespace puteal::checking
