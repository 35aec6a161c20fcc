/// Media of the trade and the printed or habitual limits of each, every number with where it comes from.
#pragma once

#include "sdk/plugin.h"

namespace diagnosis
{

inline constexpr const char *mediumWords[] = {"coated light medium",
                                              "manganese greensand",
                                              "coated sand",
                                              "manganese dioxide ore",
                                              "manganese contactor",
                                              "catalytic carbon",
                                              "carbon",
                                              "sand or anthracite",
                                              "calcite",
                                              "softening resin",
                                              "iron cartridge",
                                              nullptr};
enum MediumId : int {
    coatedLight,
    greensand,
    coatedSand,
    manganeseOre,
    contactor,
    catalyticCarbon,
    plainCarbon,
    sand,
    calcite,
    resin,
    ironCartridge,
    mediumCount
};

/// What is fed or let in ahead of the medium.
inline constexpr const char *feedWords[] = {"none", "air", "chlorine", "permanganate", "peroxide", nullptr};
enum Feed : int { noFeed, airFeed, chlorineFeed, permanganateFeed, peroxideFeed };

/// Where a number comes from, as a reason says it.
enum class From { practice, handbook, code };
constexpr const char *wordsOf(From from)
{
    return from == From::practice ? "common practice" : from == From::handbook ? "handbook" : "state code";
}

inline constexpr double unset = __builtin_nan("");

/// A limit with the figure up to which (or from which) a medium works, and the outermost printed figure.
struct Limit {
    double works = unset, outermost = unset;
    From from = From::practice, outermostFrom = From::practice;
    constexpr bool none() const { return works != works; }
};

/// Low and high end of a printed range; an end is unset where only a most or a least is printed.
struct Ends {
    double low = unset, high = unset;
    From from = From::practice, highFrom = from;
    constexpr bool none() const { return low != low && high != high; }
};

struct Medium {
    Limit leastPh, mostPh;
    Limit iron;                         ///< mg/L as Fe
    bool withManganese;                 ///< the iron limit counts iron and manganese together
    Limit manganese;                    ///< mg/L as Mn, where it has a limit of its own
    Limit sulfide;                      ///< mg/L as H2S
    Ends householdLoading, codeLoading; ///< service flow, gpm/ft^2
    Ends householdWash, codeWash;       ///< backwash, gpm/ft^2
    Ends depth;                         ///< in
};

/// The table, in the order of the words.
const Medium &mediumOf(int id);

} // namespace diagnosis
