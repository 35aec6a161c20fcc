/// Words every screening function builds its reason from.
#pragma once

#include <string>

#include "sdk/plugin.h"

namespace diagnosis
{

using puteal::sdk::Argument;
using puteal::sdk::Reply;
using puteal::sdk::Verdict;

inline std::string described(const Argument &a)
{
    return a.label().empty() || a.label() == a.shown() ? a.shown() : a.label() + " " + a.shown();
}

inline std::string named(const Argument &a)
{
    return a.label().empty() ? std::string("a test") : a.label();
}

inline int settle(Verdict verdict, const std::string &why, Reply &reply)
{
    reply.reason(why);
    return verdict;
}

inline int needs(const Argument &a, Reply &reply)
{
    return settle(puteal::sdk::cannotTell, "needs: " + named(a), reply);
}

} // namespace diagnosis
