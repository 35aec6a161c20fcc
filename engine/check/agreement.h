/// Taking over units, substances, counted things and listed words from the other side.
#pragma once

#include "check/draft.h"

namespace puteal::checking
{

/// What may take the substance and the counted things of the other side; a cell never takes counted things.
enum class Adopt : std::uint8_t { none, literals, cells };
/// In what two types differ; the first difference counts.
enum class Misfit : std::uint8_t { none, dimension, scale, things, substance };

/// A number as typed, with or without a minus.
bool isLiteral(const Draft &draft, NodeIndex i);
/// A `0` without a unit: fits any unit except a temperature reading.
bool isBareZero(const Draft &draft, NodeIndex i);

/// A unit such as day/yr that cancels to a pure number but is not the number one: a bare number beside it is
/// a trap.
bool cancels(const Unit &unit);
/// A pure number that was given no unit, other than 0.
bool isUnitless(const Draft &draft, NodeIndex i);

/// Makes node `i` fit `wanted` as far as `mode` lets it; a cell that takes a substance gives a caution.
Misfit fit(Draft &draft, NodeIndex i, const QuantityType &wanted, Adopt mode);
/// The same for two sides, whichever can take the other's.
Misfit agree(Draft &draft, NodeIndex a, NodeIndex b, Adopt mode);
/// Gives a node (and the number under a minus) another type of the same dimension.
void retype(Draft &draft, NodeIndex i, const QuantityType &type);

/// Quoted words without live parts, or a ternary, if_error, because or worst of such: may become a listed
/// word.
bool isWordsOnly(const Draft &draft, NodeIndex i);
/// Makes such words listed words. Error: not in the list.
Done becomeChoice(Draft &draft, NodeIndex i, std::uint32_t list);
/// Where one side is a choice and the other quoted words, makes them listed words.
Done shareChoices(Draft &draft, NodeIndex a, NodeIndex b);

} // namespace puteal::checking
