/// Choice lists that several plugins share: equal words are one list for the engine, so they are spelled here
/// once.
#pragma once

#include "sdk/substances.h"

namespace puteal::sdk
{

/// Verdict on a method, best first.
inline constexpr const char *verdictWords[] = {"works", "marginal", "cannot tell yet", "will not work",
                                               nullptr};
enum Verdict : int { works, marginal, cannotTell, willNotWork };

/// Form the iron is in.
inline constexpr const char *ironFormWords[] = {"dissolved", "oxidized",  "mixed",   "bacterial",
                                                "organic",   "colloidal", "unknown", nullptr};
enum IronForm : int { dissolved, oxidized, mixed, bacterial, organic, colloidal, unknownForm };

/// How far an oxidant takes sulfide: the trade's usual allowance, one of the two chemical end points, or a
/// share of the sulfide to sulfate and the rest to sulfur.
inline constexpr const char *sulfideEndWords[] = {"usual", "to sulfur", "to sulfate", "share to sulfate",
                                                  nullptr};
enum SulfideEnd : int { usualEnd, toSulfur, toSulfate, shareToSulfate };

/// Electrons a sulfide gives up when this share of it goes to sulfate (8) and the rest to sulfur (2).
constexpr double sulfideElectronsOf(double share)
{
    return 2.0 + 6.0 * share;
}
/// The usual allowance is known for chlorine only: 3 mg of it for a mg of hydrogen sulfide [common practice,
/// no source]. The share below takes as many electrons; for other oxidants it is an assumption, so it is an
/// argument.
inline constexpr double usualChlorinePerSulfide = 3.0;
inline constexpr double usualElectronsPerSulfide =
    usualChlorinePerSulfide * molarMass("H2S") / (molarMass("Cl2") / 2.0);
inline constexpr double usualShareToSulfate = (usualElectronsPerSulfide - 2.0) / 6.0;

} // namespace puteal::sdk
