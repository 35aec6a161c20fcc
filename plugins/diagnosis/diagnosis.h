/// Rows of the diagnosis plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace diagnosis
{

extern const puteal_function ironFormRow, ironFormConfidenceRow, ironFormNextTestRow;
extern const puteal_function screenAtMostRow, screenAtLeastRow, screenNoneRow, screenNoRow, screenYesRow;
extern const puteal_function screenFormRow, screenFlowRow, screenBackwashRow;

} // namespace diagnosis
