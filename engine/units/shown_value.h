/// Kinds of values in words, and values that are no quantities as text that can be typed back.
#pragma once

#include <string>

#include "units/value.h"

namespace puteal
{

/// "quantity", "yes/no", "choice", "date", "words", "blank".
const char *kindWord(ValueKind kind);

/// yes or no, the listed word, the date, the words; "" for a blank and for a quantity
/// (units/shown_quantity.h).
std::string showOther(const StaticType &type, double number, const std::string &words,
                      const ChoiceLists &lists, double dayInBase);

} // namespace puteal
