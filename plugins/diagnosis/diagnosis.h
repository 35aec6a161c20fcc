/// Rows of the diagnosis plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace diagnosis
{

extern const puteal_function ironFormRow, ironFormConfidenceRow, ironFormNextTestRow;
extern const puteal_function screenAtMostRow, screenAtLeastRow, screenNoneRow, screenNoRow, screenYesRow;
extern const puteal_function screenFormRow, screenFlowRow, screenBackwashRow;
extern const puteal_function mediaCheckRow, mediaPhRow, mediaIronRow, mediaSulfideRow, mediaLoadingRow,
    mediaWashRow, mediaDepthRow;
extern const puteal_function leastOxidationPhRow;
extern const puteal_function screenFeederRow, screenDischargeRow, screenGradeRow;
extern const puteal_function trainOrderRow, followUpRow;
extern const puteal_function fieldKitRow, sampleStateRow, testPlaceRow, cupTimeRow, casingPurgeRow,
    purgeSteadyRow;
extern const puteal_function complaintCauseRow, complaintScoreRow, bleachCupRow, sheenRow;

} // namespace diagnosis
