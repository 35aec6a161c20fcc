/// Rows of the oxidation plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace oxidation
{

extern const puteal_function oxidantDemandRow, alkalinityConsumedRow, solidsMadeRow;
extern const puteal_function ammoniaChlorineDemandRow, ironEquivalentsRow, permanganateDaysRow,
    permanganateChargeRow, ozoneOutputRow;

/// Oxidants, in the order of the choice list.
enum Oxidant : int { chlorine, peroxide, permanganate, ozone, oxygen, chlorineDioxide };
inline constexpr const char *oxidantWords[] = {"chlorine", "peroxide",         "permanganate", "ozone",
                                               "oxygen",   "chlorine dioxide", nullptr};
inline constexpr const char *oxidantSubstances[] = {"Cl2", "H2O2", "KMnO4", "O3", "O2", "ClO2", nullptr};

/// Parameters that most functions here share.
inline constexpr puteal::sdk::Parameter ironParameter =
    puteal::sdk::Parameter("iron", "mg/L as Fe", "dissolved iron to be oxidized").hard(0, 1000).usual(0, 30);
inline constexpr puteal::sdk::Parameter manganeseParameter =
    puteal::sdk::Parameter("manganese", "mg/L as Mn", "dissolved manganese to be oxidized")
        .hard(0, 100)
        .usual(0, 5);
inline constexpr puteal::sdk::Parameter sulfideParameter =
    puteal::sdk::Parameter("sulfide", "mg/L as H2S", "hydrogen sulfide, tested at the site")
        .hard(0, 100)
        .usual(0, 10);

/// The usual caution wherever an oxidizer is fed.
inline constexpr const char oxidizerSafety[] =
    "Oxidizers burn skin and eyes: goggles and gloves. Never bring bleach together with acid, ammonia, "
    "peroxide, "
    "permanganate or resin cleaner. Use a chemical that is certified for drinking water, follow its label "
    "and the "
    "local code. Feeding an oxidant against iron does not make water safe to drink.";

} // namespace oxidation
