/// Dates as numbers: which there are, and how a date moved by hours counts.
#pragma once

#include "sdk/dates.h"

namespace puteal
{

/// The first and the last day a date can have (days since 1970-01-01): the years 1 to 9999.
inline constexpr double firstDay = sdk::dayOf(1, 1, 1), lastDay = sdk::dayOf(9999, 12, 31);

/// Whole days since 1970-01-01 of a date in base time; a date moved by hours counts for its day.
double wholeDays(double number, double dayInBase);

} // namespace puteal
