/// The cost plugin: money over time, parts of finite life, pumping energy.
///
/// Requirements
///  R1 Rates are pure numbers a year, times are times; a rate typed as 5 for 5 % is refused.
///  R2 A rate of 0 gives the limit, not a division by zero.
///  R3 Nothing is replaced at the end of the study.
///  R4 Costs that cross more than once report the last crossing.
///  R5 Energy rests on the conventional foot of water.
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
    source("finance_code", "H",
           "annuity checks in the tests of public finance code: 5, 10, 15 %, n = 5 and 10"),
    source("handbook135", "R",
           "life-cycle cost shape of NIST Handbook 135 and ASTM E917: recalled, not confirmed"),
    source("pumping_costs", "H",
           "water pumping costs, engineeringtoolbox.com d_1527: 0.746 * Q * h * c / (3960 * "
           "efficiencies)"),
    source("nist811", "S", "NIST SP 811, appendix B: conventional foot of water, kilowatt hour"),
    source("definition", "W", "worked out from the definition of the factor"),
    source("practice", "T", "common practice, no source"),
};

const puteal_function functions[] = {
    compoundRow,      presentValueFactorRow, annuityFactorRow, grownYearsRow,    yearlyEquivalentRow,
    timesReplacedRow, replacementsCostRow,   paybackTimeRow,   breakEvenYearRow, pumpingEnergyRow};
constinit const puteal_plugin self = plugin("cost", "Cost over years", 1, 0, sources, functions);

} // namespace
} // namespace cost

PUTEAL_EXPORT const puteal_plugin *puteal_plugin_entry()
{
    return &cost::self;
}
