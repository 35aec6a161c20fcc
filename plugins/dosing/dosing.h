/// Rows of the dosing plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace dosing
{

extern const puteal_function hypochloriteStrengthRow, peroxideStrengthRow, bleachResidualRow, stockVolumeRow;
extern const puteal_function bleachDecayRateRow, bleachLossRateRow, bleachAgeLimitRow, peroxideResidualRow;
extern const puteal_function dilutedVolumeRow, dilutionWaterRow, mixedStrengthRow, injectorDoseRow,
    solutionStrengthRow;
extern const puteal_function feedRateRow, feedSettingRow, solutionDaysRow, doseAtFlowRow;
extern const puteal_function contactTimeRow, contactVolumeRow, detentionTimeRow, bafflingFactorRow,
    tanksInSeriesRow, contactTankSizeRow;
extern const puteal_function hypochlorousPkaRow, hypochlorousShareRow, chlorinationKTimeRow;
extern const puteal_function virusCtRow, giardiaCtRow, ctValueRow, ctContactVolumeRow, logInactivationRow;
extern const puteal_function shockDoseRow, shockByRuleRow, shockLevelRow, shockSolutionVolumeRow,
    calciumHypochloriteDoseRow;
extern const puteal_function dechlorinationBedRow, dechlorinatedResidualRow, dechlorinationCarbonRow,
    peroxideOxygenRow;

inline constexpr const char bleachSafety[] =
    "Bleach burns eyes and skin: goggles and gloves. Never mix it with acid, ammonia, peroxide, permanganate "
    "or resin "
    "cleaner: poisonous gas. Use plain bleach that is certified for drinking water and follow its label and "
    "the local "
    "code. Chlorination against iron does not make water safe to drink.";
inline constexpr const char peroxideSafety[] =
    "Peroxide: goggles from 3 %, strong caution from 7 %, transport rules from 8 %. Vented cap "
    "only, no metals, "
    "never together with bleach, permanganate or a manganese-dioxide bed.";
inline constexpr const char feederSafety[] = "Oxidizers burn skin and eyes: goggles and gloves, a labeled "
                                             "container out of children's reach, a vented cap. Never "
                                             "bring two chemicals together. The feeder must stop when the "
                                             "water stops. Follow the label and the local code.";
inline constexpr const char disinfectionSafety[] =
    "Arithmetic of rules for public supplies; it says nothing about whether the water of this well may be "
    "drunk. "
    "Bacteria in a well are a matter for the health authority: ask it, test the water at a licensed "
    "laboratory, and "
    "find and mend the cause.";

/// Every function that takes contact and chlorine for inactivation says so each time. (R4)
inline void cautionHealth(puteal::sdk::Reply &reply)
{
    reply.caution("not_a_health_claim", "not a health claim: this is arithmetic of a rule for public "
                                        "supplies, so ask the health authority");
}
inline constexpr puteal_caution healthCaution =
    puteal::sdk::caution("not_a_health_claim", "always: ask the health authority");

/// Share of the nominal time that counts; the default is the poor class of the public table.
inline constexpr puteal::sdk::Parameter bafflingParameter =
    puteal::sdk::Parameter(
        "baffling", "",
        "share of the nominal time that counts: 0.1 unbaffled, 0.3 poor, 0.5 average, 0.7 superior")
        .hard(0.01, 1)
        .usual(0.1, 0.7)
        .otherwise(0.3, "H");
inline void cautionBaffling(double baffling, puteal::sdk::Reply &reply)
{
    if (puteal::sdk::lessThan(0.3, baffling)) // small tanks short-circuit [common practice, no source]
        reply.caution("optimistic", "a small tank without an inlet diffuser seldom does better than 0.3");
}
inline constexpr puteal_caution bafflingCaution = puteal::sdk::caution("optimistic", "baffling above 0.3");

} // namespace dosing
