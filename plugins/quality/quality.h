/// Rows of the quality plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace quality
{

extern const puteal_function totalHardnessRow, hardnessClassRow, dissolvedSolidsRow;
extern const puteal_function calciumHardnessRow, magnesiumRow, disagreementRow, carbonateHardnessRow,
    noncarbonateHardnessRow;
extern const puteal_function ionAsCaco3Row, caco3AsIonRow, nitrogenAsRow, sulfurAsRow;
extern const puteal_function cationChargeRow, anionChargeRow, ionBalanceRow, solidsByIonsRow;
extern const puteal_function conductivityRow, solidsFactorRow, ppmByMassRow;
extern const puteal_function freeCarbonDioxideRow, carbonateShareRow, alkalinityPartRow;
extern const puteal_function saturationPhRow, langelierRow, ryznarRow, aggressiveIndexRow, langelierClassRow,
    ryznarClassRow;
extern const puteal_function calciteHardnessRow, calcitePerYearRow, sodaAshRow;
extern const puteal_function toNeutralizeRow, neutralizerDoseRow, neutralizerAlkalinityRow, neutralizedPhRow,
    neutralizerMediumRow;
extern const puteal_function blendDoseRow, blendHardnessRow, sodaAshSodiumRow, sodaAshPerYearRow,
    calciteFlowRow;

/// Parameters that several functions share.
inline constexpr puteal::sdk::Parameter phParameter =
    puteal::sdk::Parameter("ph", "", "pH measured at the site").hard(0, 14).usual(5, 9);
inline constexpr puteal::sdk::Parameter alkalinityParameter =
    puteal::sdk::Parameter("alkalinity", "mg/L as CaCO3", "total alkalinity").hard(0, 5000).usual(10, 600);
inline constexpr puteal::sdk::Parameter removedParameter =
    puteal::sdk::Parameter("carbon_dioxide_removed", "mg/L as CO2",
                           "free carbon dioxide taken away by the neutralizer")
        .hard(0, 2000)
        .usual(0, 200);

} // namespace quality
