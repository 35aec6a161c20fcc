/// Rows of the cost plugin's functions; each is defined beside the function it describes.
#pragma once

#include <vector>

#include "sdk/plugin.h"

namespace cost
{

// factors.cpp
extern const puteal_function compoundAmountRow, presentValueFactorRow, annuityFactorRow, escalatedAnnuityRow,
    equivalentCostRow;
// series.cpp
extern const puteal_function capitalRecoveryRow, sinkingFundRow, seriesCompoundRow, gradientWorthRow,
    gradientSeriesRow, geometricGradientRow, escalatedFactorRow;
// rates.cpp
extern const puteal_function realRateRow, nominalRateRow, effectiveRateRow, escalatedPriceRow, loanPaymentRow;
// sums.cpp
extern const puteal_function netPresentValueRow, netPresentValueAtRow, modifiedRateRow;
// returns.cpp
extern const puteal_function internalRateRow, internalRateAtRow;
// replacing.cpp
extern const puteal_function timesReplacedRow, replacementsCostRow, simplePaybackRow, breakEvenYearRow;
// worth.cpp
extern const puteal_function savingsRatioRow, adjustedRateRow, discountedPaybackRow, lifeCycleCostRow,
    breakEvenVolumeRow;
// lasting.cpp
extern const puteal_function residualValueRow, yearlyReserveRow, capitalizedCostRow, lifeByHoursRow,
    lifeByVolumeRow, commonStudyRow;
// habits.cpp
extern const puteal_function usualLifeRow, serviceIntervalRow;
// quoting.cpp
extern const puteal_function priceByMarginRow, priceByMarkupRow, marginFromMarkupRow, salesTaxRow,
    countsAsCheapestRow;
// supplies.cpp
extern const puteal_function chemicalPerYearRow, supplyCostRow, cartridgeCostRow;
// energy.cpp
extern const puteal_function pumpingEnergyRow, deviceEnergyRow;

/// Rates are pure numbers a year; 5 typed for 5 % is refused by the range.
inline constexpr double lowestRate = -0.5, highestRate = 1.0;
inline constexpr puteal::sdk::Parameter rateParameter =
    puteal::sdk::Parameter("rate", "", "rate a year, as 5 %").hard(lowestRate, highestRate).usual(0, 0.15);
inline constexpr puteal::sdk::Parameter growthParameter =
    puteal::sdk::Parameter("growth", "", "price rise a year, as 3 %")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15);
inline constexpr puteal::sdk::Parameter discountParameter =
    puteal::sdk::Parameter("discount", "", "discount rate a year, as 5 %")
        .hard(lowestRate, highestRate)
        .usual(0, 0.15);
inline constexpr puteal::sdk::Parameter studyTime =
    puteal::sdk::Parameter("time", "yr", "years counted").hard(0, 200).usual(0, 40);

inline constexpr const char wholeYearsWanted[] = "yearly sums need whole years: round the time to a year";
inline constexpr const char blankLine[] = "a line is blank: fill it or take it out of the range";

/// Whole years in a time, or -1.
inline int wholeYears(double time)
{
    if (!(std::fabs(time) < 1e6)) // no study is that long, and an int holds it
        return -1;
    const double whole = std::round(time);
    return puteal::sdk::nearlyEqual(time, whole) || std::fabs(time - whole) < 1e-9 ? static_cast<int>(whole)
                                                                                   : -1;
}

/// Present value of one unit a year, paid at the end of each of so many years: P/A.
inline double annuity(double rate, int years)
{
    return rate == 0.0 ? years : -std::expm1(-years * std::log1p(rate)) / rate;
}

/// What one unit a year, paid at the end of each year, has become when the last is paid: F/A.
inline double seriesCompound(double rate, double years)
{
    return rate == 0.0 ? years : std::expm1(years * std::log1p(rate)) / rate;
}

/// True when every line of a range holds a number.
inline bool isFilled(const puteal::sdk::Argument &range)
{
    for (const double x : std::vector<double>(range.begin(), range.end()))
        if (!std::isfinite(x))
            return false;
    return true;
}

} // namespace cost
