/// Choice lists that several plugins share: equal words are one list for the engine, so they are spelled here
/// once.
#pragma once

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

/// How far an oxidant takes sulfide: the trade's usual allowance, or one of the two chemical end points.
inline constexpr const char *sulfideEndWords[] = {"usual", "to sulfur", "to sulfate", nullptr};
enum SulfideEnd : int { usualEnd, toSulfur, toSulfate };

} // namespace puteal::sdk
