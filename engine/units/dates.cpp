/// Calendar dates as typed and as numbers.
#include "units/dates.h"

#include <cmath>

#include "units/value.h"

namespace puteal
{

std::optional<std::int64_t> readDate(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return {};
    int part[3] = {};
    const std::string_view pieces[3] = {text.substr(0, 4), text.substr(5, 2), text.substr(8, 2)};
    for (int i = 0; i < 3; ++i)
        for (const char c : pieces[i]) {
            if (c < '0' || c > '9')
                return {};
            part[i] = 10 * part[i] + (c - '0');
        }
    const auto days = static_cast<std::int64_t>(sdk::dayOf(part[0], part[1], part[2]));
    if (dateText(days) != text) // a day that is not in the calendar would come back as another one
        return {};
    return days;
}

std::string dateText(std::int64_t daysSince1970)
{
    return sdk::dateWords(static_cast<double>(daysSince1970));
}

double wholeDays(double number, double dayInBase)
{
    constexpr double almostNextDay = 1e-9; // sums of times may fall short by rounding
    return std::floor(number / dayInBase + almostNextDay);
}

} // namespace puteal
