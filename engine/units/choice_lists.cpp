/// Interned lists of choices and calendar dates.
#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "units/value.h"

namespace puteal
{

std::uint32_t ChoiceLists::intern(const std::vector<std::string> &words)
{
    if (words.empty())
        return 0;
    const auto at = std::find(m_lists.begin(), m_lists.end(), words);
    if (at != m_lists.end())
        return static_cast<std::uint32_t>(at - m_lists.begin());
    m_lists.push_back(words);
    return static_cast<std::uint32_t>(m_lists.size() - 1);
}

std::optional<std::uint32_t> ChoiceLists::indexOf(std::uint32_t id, std::string_view word) const
{
    const auto &words = m_lists[id];
    const auto at = std::find(words.begin(), words.end(), word);
    if (at == words.end())
        return {};
    return static_cast<std::uint32_t>(at - words.begin());
}

namespace
{

// Days of the proleptic Gregorian calendar in eras of 400 years that begin on 1 March.
constexpr std::int64_t daysPerEra = 146097, yearsPerEra = 400, daysToEpoch = 719468;

std::int64_t daysFrom(std::int64_t year, std::int64_t month, std::int64_t day)
{
    const std::int64_t y = month <= 2 ? year - 1 : year;
    const std::int64_t era = (y >= 0 ? y : y - yearsPerEra + 1) / yearsPerEra;
    const std::int64_t yearOfEra = y - era * yearsPerEra;
    const std::int64_t dayOfYear = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    const std::int64_t dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    return era * daysPerEra + dayOfEra - daysToEpoch;
}

std::int64_t lastDay(std::int64_t year, std::int64_t month)
{
    static constexpr std::int64_t days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    return month == 2 && leap ? 29 : days[month - 1];
}

} // namespace

std::optional<std::int64_t> readDate(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return {};
    std::int64_t part[3] = {};
    const std::string_view pieces[3] = {text.substr(0, 4), text.substr(5, 2), text.substr(8, 2)};
    for (int i = 0; i < 3; ++i)
        for (const char c : pieces[i]) {
            if (c < '0' || c > '9')
                return {};
            part[i] = 10 * part[i] + (c - '0');
        }
    if (part[0] < 1 || part[1] < 1 || part[1] > 12 || part[2] < 1 || part[2] > lastDay(part[0], part[1]))
        return {};
    return daysFrom(part[0], part[1], part[2]);
}

std::string dateText(std::int64_t daysSince1970)
{
    const std::int64_t z = daysSince1970 + daysToEpoch;
    const std::int64_t era = (z >= 0 ? z : z - daysPerEra + 1) / daysPerEra;
    const std::int64_t dayOfEra = z - era * daysPerEra;
    const std::int64_t yearOfEra = (dayOfEra - dayOfEra / 1460 + dayOfEra / 36524 - dayOfEra / 146096) / 365;
    const std::int64_t dayOfYear = dayOfEra - (365 * yearOfEra + yearOfEra / 4 - yearOfEra / 100);
    const std::int64_t shifted = (5 * dayOfYear + 2) / 153;
    const std::int64_t day = dayOfYear - (153 * shifted + 2) / 5 + 1;
    const std::int64_t month = shifted + (shifted < 10 ? 3 : -9);
    return fmt::format("{:04}-{:02}-{:02}", yearOfEra + era * yearsPerEra + (month <= 2 ? 1 : 0), month, day);
}

} // namespace puteal
