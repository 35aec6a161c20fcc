/// What to do so that one piece fits a wanted unit: words added to an error, and tried fixes.
#pragma once

#include <string>

#include "check/agreement.h"
#include "check/draft.h"

namespace puteal::checking
{

/// "5 gal/day", "$5/kWh": the literal's number with another unit.
std::string numberIn(const Draft &draft, NodeIndex literal, const Unit &unit);

/// Adds advice and fixes for making `node` fit `wanted`; `why` is what keeps it from fitting.
void advise(const Draft &draft, Error &error, NodeIndex node, const Unit &wanted, Misfit why);

/// "`x` is per person: multiply by people" and its kin; nothing when the things agree.
void adviseThings(const Draft &draft, Error &error, NodeIndex node, const QuantityType &wanted);

/// A pure number where a unit is wanted. `difference`: beside a temperature reading it would be a difference.
void adviseUnit(const Draft &draft, Error &error, NodeIndex node, const Unit &wanted, bool difference);

/// The one substance of a type to the power one, as a word; empty when there is none or it is not that
/// simple.
std::string soleSubstance(const QuantityType &type);

} // namespace puteal::checking
