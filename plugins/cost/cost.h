/// Rows of the cost plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace cost
{

extern const puteal_function compoundRow, presentValueFactorRow, annuityFactorRow, grownYearsRow,
    yearlyEquivalentRow;
extern const puteal_function timesReplacedRow, replacementsCostRow, paybackTimeRow, breakEvenYearRow;
extern const puteal_function pumpingEnergyRow;

/// Rates are pure numbers a year; 5 typed for 5 % is refused by the range.
inline constexpr double lowestRate = -0.5, highestRate = 1.0;
inline constexpr puteal::sdk::Parameter rateParameter =
    puteal::sdk::Parameter("rate", "", "rate a year, as 5 %").hard(lowestRate, highestRate).usual(0, 0.15);

/// Whole years in a time, or -1.
inline int wholeYears(double time)
{
    if (!(std::fabs(time) < 1e6)) // no study is that long, and an int holds it
        return -1;
    const double whole = std::round(time);
    return puteal::sdk::nearlyEqual(time, whole) || std::fabs(time - whole) < 1e-9 ? static_cast<int>(whole)
                                                                                   : -1;
}

} // namespace cost
