/// Calls of the limits plugin by the words a sheet would use, and the health tests of one water.
#pragma once

#include "plugins/check_rows.h"
#include "sdk/dates.h"

namespace limits_calls
{

using namespace called;
using puteal::sdk::dayOf;

inline const Plugin &plugin()
{
    static const Plugin one("limits");
    return one;
}

/// Position of a word in the choice list of a function's parameter.
inline double word(const char *function, std::size_t parameter, const std::string &wanted)
{
    const puteal_function *f = plugin().find(function);
    for (int i = 0; f && f->parameters[parameter].choices[i]; ++i)
        if (wanted == f->parameters[parameter].choices[i])
            return i;
    return -1;
}

inline constexpr double us = 0, canada = 1, who = 2;
inline constexpr double forHealth = 0, forAdvice = 1, forAesthetics = 2, asGoal = 3;
inline double substance(const char *name)
{
    return word("limit_in_force", 0, name);
}
inline Answer limit(const char *name, double place, double day, double purpose = forHealth)
{
    return plugin().call("limit_in_force", {substance(name), place, day, purpose});
}
inline std::string accepted(const char *name, const Given &value, double place, double day, double near = 20)
{
    return plugin().word("acceptance", {substance(name), value, place, day, near});
}

inline const double october = dayOf(2026, 10, 12);

/// The health tests of one water; NaN is a blank test.
struct Water {
    double day = october;
    Given arsenic = 0.003, nitrate = 1.2, nitrite = 0.0, lead = 0.0, uranium = 0.004;
    Given bacteria = 0.0, fuel = 0.0, publicUse = 0.0;
    Given manganese = 0.02, sodium = 18.0, sulfate = 46.0;
    std::vector<Given> given() const
    {
        return {day,      arsenic, nitrate,   nitrite,   lead,   uranium,
                bacteria, fuel,    publicUse, manganese, sodium, sulfate};
    }
    Answer referral() const { return plugin().call("health_referral", given()); }
    std::string word() const { return plugin().word("health_referral", given()); }
    std::string finding() const { return plugin().word("health_finding", given()); }
};
inline constexpr double caution = 1, testsMissing = 2, stop = 3;

} // namespace limits_calls
