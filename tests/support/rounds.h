/// How many rounds a random test takes: all of them, or a tenth under slow instruments (PUTEAL_FEWER set).
#pragma once

#include <cstdlib>

namespace puteal::test
{

inline bool fewer()
{
    return std::getenv("PUTEAL_FEWER") != nullptr;
}
inline int rounds(int all)
{
    return fewer() ? (all + 9) / 10 : all;
}

} // namespace puteal::test
