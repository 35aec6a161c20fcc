/// Rows of the oxidation plugin's functions; each is defined beside the function it describes.
#pragma once

#include "sdk/plugin.h"

namespace oxidation
{

extern const puteal_function oxidantDemandRow, alkalinityConsumedRow, solidsMadeRow, alkalinityRemainingRow;
extern const puteal_function ammoniaChlorineDemandRow, organicChlorineDemandRow, oxidantDoseRow,
    ozoneOutputRow;
extern const puteal_function usualChlorineRow, usualPermanganateRow, chlorineResidualRow;
extern const puteal_function permanganateSulfideRow, permanganateYearRow;
extern const puteal_function arsenicDemandRow, nitriteDemandRow, manganeseReleasedRow, coatedBedRow,
    timeAllowedRow;
extern const puteal_function ironEquivalentsRow, permanganateDaysRow, permanganateChargeRow,
    permanganatePowerRow;

/// Oxidants, in the order of the choice list; new ones go to the end.
enum Oxidant : int {
    chlorine,
    peroxide,
    permanganate,
    ozone,
    oxygen,
    chlorineDioxide,
    sodiumHypochlorite,
    calciumHypochlorite,
    sodiumPermanganate,
    chlorineGas,
    dioxideToChloride
};
inline constexpr const char *oxidantWords[] = {"chlorine",
                                               "peroxide",
                                               "permanganate",
                                               "ozone",
                                               "oxygen",
                                               "chlorine dioxide",
                                               "sodium hypochlorite",
                                               "calcium hypochlorite",
                                               "sodium permanganate",
                                               "chlorine gas",
                                               "chlorine dioxide to chloride",
                                               nullptr};
inline constexpr const char *oxidantSubstances[] = {"Cl2",   "H2O2",    "KMnO4",  "O3",  "O2",   "ClO2",
                                                    "NaOCl", "CaCl2O2", "NaMnO4", "Cl2", "ClO2", nullptr};

// Electrons one formula unit of the oxidant takes up (half reactions of general chemistry; permanganate to
// manganese dioxide as in EPA 815-R-99-014; chlorine dioxide to chlorite, its end point in neutral water, or
// to chloride; calcium hypochlorite holds two hypochlorites).
inline constexpr int electronsTaken[] = {2, 2, 3, 2, 4, 1, 2, 4, 3, 2, 5};

/// Grams of oxidant that take one mole of electrons.
constexpr double equivalentWeight(int oxidant)
{
    return puteal::sdk::molarMass(oxidantSubstances[oxidant]) / electronsTaken[oxidant];
}

/// Kinds of chlorine: what is known of chlorine holds for them.
constexpr bool isChlorine(int oxidant)
{
    return oxidant == chlorine || oxidant == sodiumHypochlorite || oxidant == calciumHypochlorite ||
           oxidant == chlorineGas;
}

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
inline constexpr puteal::sdk::Parameter sulfideEndParameter =
    puteal::sdk::Parameter(
        "sulfide_end", "",
        "how far sulfide is taken: the trade's usual allowance, an end point of chemistry, or "
        "a share of it to sulfate")
        .oneOf(puteal::sdk::sulfideEndWords)
        .otherwise(puteal::sdk::usualEnd, "T");
inline constexpr puteal::sdk::Parameter shareParameter =
    puteal::sdk::Parameter(
        "share_to_sulfate", "",
        "share of the sulfide that ends as sulfate, the rest as sulfur; used by \"share to "
        "sulfate\" and by \"usual\" of an oxidant that is not chlorine")
        .hard(0, 1)
        .otherwise(puteal::sdk::usualShareToSulfate, "A");

/// The usual caution wherever an oxidizer is fed.
inline constexpr const char oxidizerSafety[] =
    "Oxidizers burn skin and eyes: goggles and gloves. Never bring bleach together with acid, ammonia, "
    "peroxide, "
    "permanganate or resin cleaner. Use a chemical that is certified for drinking water, follow its label "
    "and the "
    "local code. Feeding an oxidant against iron does not make water safe to drink.";

} // namespace oxidation
