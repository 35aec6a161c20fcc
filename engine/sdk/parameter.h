/// Builder for a row of a function's parameter table.
#pragma once

#include <cmath>

#include "sdk/contract.h"

namespace puteal::sdk
{

/// Builds a parameter row; chain the setters.
struct Parameter : puteal_parameter {
    constexpr Parameter(const char *n, const char *u, const char *m)
        : puteal_parameter{sizeof(puteal_parameter),
                           PUTEAL_QUANTITY,
                           0,
                           n,
                           u,
                           m,
                           -HUGE_VAL,
                           HUGE_VAL,
                           -HUGE_VAL,
                           HUGE_VAL,
                           0.0,
                           "",
                           nullptr,
                           nullptr}
    {
    }
    constexpr Parameter hard(double low, double high) const
    {
        auto p = *this;
        p.hard_low = low;
        p.hard_high = high;
        return p;
    }
    constexpr Parameter usual(double low, double high) const
    {
        auto p = *this;
        p.usual_low = low;
        p.usual_high = high;
        return p;
    }
    constexpr Parameter otherwise(double value, const char *mark) const
    {
        auto p = *this;
        p.flags |= PUTEAL_HAS_DEFAULT;
        p.fallback = value;
        p.fallback_mark = mark;
        return p;
    }
    constexpr Parameter mayBeMissing() const
    {
        auto p = *this;
        p.flags |= PUTEAL_MAY_BE_MISSING;
        return p;
    }
    constexpr Parameter mayBeBounded() const
    {
        auto p = *this;
        p.flags |= PUTEAL_MAY_BE_BOUNDED;
        return p;
    }
    constexpr Parameter range() const
    {
        auto p = *this;
        p.flags |= PUTEAL_RANGE;
        return p;
    }
    constexpr Parameter repeats() const
    {
        auto p = *this;
        p.flags |= PUTEAL_REPEATS;
        return p;
    }
    constexpr Parameter yesNo() const
    {
        auto p = *this;
        p.kind = PUTEAL_YES_NO;
        return p;
    }
    /// A date; the function takes it as whole days since 1970-01-01, see dates.h.
    constexpr Parameter date() const
    {
        auto p = *this;
        p.kind = PUTEAL_DATE;
        return p;
    }
    constexpr Parameter oneOf(const char *const *words, const char *const *standFor = nullptr) const
    {
        auto p = *this;
        p.kind = PUTEAL_CHOICE;
        p.choices = words;
        p.choice_substances = standFor;
        return p;
    }
};

} // namespace puteal::sdk
