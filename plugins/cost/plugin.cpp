/// The cost plugin: money over time, returns, parts of finite life, supplies, energy.
///
/// Requirements
///  R1 Rates are pure numbers a year, times are times; a rate typed as 5 for 5 % is refused.
///  R2 A rate of 0 gives the limit, not a division by zero.
///  R3 Nothing is replaced at the end of the study.
///  R4 Costs that cross more than once report the last crossing.
///  R5 Energy rests on the conventional foot of water.
///  R6 Factors carry their names in engineering economy; a sum is nominal unless the sheet says otherwise,
///  and
///     the help says which rate goes with which prices.
///  R7 A rate of return is given only when it is the one rate that balances; otherwise the words list them.
///  R8 Lives, intervals and bands that only the trade's habit knows carry a caution or stand as an argument.
#include "cost.h"

using namespace puteal::sdk;

namespace cost
{
namespace
{

constexpr puteal_source sources[] = {
    source("interest_tables", "H",
           "Discrete cash flow: compound interest factors, table for 0.25 % (textbook appendix), "
           "vdocuments.us/discrete-cash-flow"),
    source("interest_tables_half", "H",
           "Compound interest factors for discrete compounding, table for 0.5 % (textbook appendix A), "
           "scribd.com/doc/77495433"),
    source("financial_library", "H",
           "examples and tests of the public numpy-financial library, "
           "github.com/numpy/numpy-financial, numpy_financial/tests/test_financial.py"),
    source("finance_code", "H",
           "annuity checks in the tests of public finance code: 5, 10, 15 %, n = 5 and 10"),
    source("handbook135", "R",
           "life-cycle cost shape of NIST Handbook 135 and ASTM E917: recalled, not confirmed"),
    source("cfr_436", "S",
           "10 CFR 436 subpart A: 436.22 takes the nth root of the final value of savings over the present "
           "value of investment and replacements less salvage"),
    source("astm_e964", "S",
           "ASTM E964, benefit-to-cost and savings-to-investment ratios for buildings and building systems"),
    source("astm_e1057", "S",
           "ASTM E1057, internal rate of return and adjusted internal rate of return for investments in "
           "buildings"),
    source("nbs_83_2657", "H",
           "NBSIR 83-2657, Recommended Practice for Measuring Net Benefits and Internal Rates of Return for "
           "Investments in Buildings and Building Systems, 1983"),
    source("pumping_costs", "H",
           "water pumping costs, engineeringtoolbox.com d_1527: 0.746 * Q * h * c / (3960 * "
           "efficiencies)"),
    source("nist811", "S", "NIST SP 811, appendix B: conventional foot of water, kilowatt hour"),
    source("definition", "W", "worked out from the definition of the factor"),
    source("recalled", "R", "recalled, not confirmed"),
    source("practice", "T", "common practice, no source"),
};

const puteal_function functions[] = {
    compoundAmountRow,    presentValueFactorRow, annuityFactorRow,   escalatedAnnuityRow,  equivalentCostRow,
    capitalRecoveryRow,   sinkingFundRow,        seriesCompoundRow,  gradientWorthRow,     gradientSeriesRow,
    geometricGradientRow, escalatedFactorRow,    realRateRow,        nominalRateRow,       effectiveRateRow,
    escalatedPriceRow,    loanPaymentRow,        netPresentValueRow, netPresentValueAtRow, internalRateRow,
    internalRateAtRow,    modifiedRateRow,       savingsRatioRow,    adjustedRateRow,      timesReplacedRow,
    replacementsCostRow,  residualValueRow,      yearlyReserveRow,   capitalizedCostRow,   lifeCycleCostRow,
    simplePaybackRow,     discountedPaybackRow,  breakEvenYearRow,   breakEvenVolumeRow,   chemicalPerYearRow,
    supplyCostRow,        cartridgeCostRow,      pumpingEnergyRow,   deviceEnergyRow,      lifeByHoursRow,
    lifeByVolumeRow,      commonStudyRow,        usualLifeRow,       serviceIntervalRow,   priceByMarginRow,
    priceByMarkupRow,     marginFromMarkupRow,   salesTaxRow,        countsAsCheapestRow};
constinit const puteal_plugin self = plugin("cost", "Cost over years", 1, 1, sources, functions);

} // namespace
} // namespace cost

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &cost::self;
}
