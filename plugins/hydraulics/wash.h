/// What the backwash tests share: verdicts with reasons, and the parameters all of them take. (R7)
#pragma once

#include <string>

#include "sdk/plugin.h"

namespace hydraulics
{

inline constexpr double nearShare =
    0.1; // flows, times and heads within a tenth are near [common practice, no source]

/// The verdict of "have at least need", with its reason: limit, its value, the value here.
inline double atLeast(double have, double need, const std::string &words, puteal::sdk::Reply &reply)
{
    if (puteal::sdk::lessThan(have, need)) {
        reply.reason(words + ": too little; an under-washed bed looks fine for months, then fouls");
        return puteal::sdk::willNotWork;
    }
    const bool near = puteal::sdk::lessThan(have, need * (1.0 + nearShare));
    reply.reason(words + (near ? ": enough, by less than a tenth" : ": enough"));
    return near ? puteal::sdk::marginal : puteal::sdk::works;
}

inline double needsFirst(const char *what, puteal::sdk::Reply &reply)
{
    reply.reason(std::string("needs ") + what);
    return puteal::sdk::cannotTell;
}

inline std::string feet(double x)
{
    return puteal::sdk::figures(x, 4) + " ft";
}

inline std::string gpm(double x)
{
    return puteal::sdk::figures(x, 4) + " gpm";
}

inline constexpr puteal::sdk::Parameter washFlow =
    puteal::sdk::Parameter("wash_flow", "gpm", "flow of the wash, see backwash_flow")
        .hard(0, 10000)
        .usual(2, 30)
        .mayBeMissing();
inline constexpr puteal::sdk::Parameter washTime =
    puteal::sdk::Parameter("wash_time", "min", "length of the wash with its rinse")
        .hard(0, 600)
        .usual(5, 30)
        .mayBeMissing();
inline constexpr const char *washSources[] = {"definition", "practice", nullptr};

} // namespace hydraulics
