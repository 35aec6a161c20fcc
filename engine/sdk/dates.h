/// Dates as plugins meet them: whole days since 1970-01-01 in the calendar of today, carried as a double.
#pragma once

#include <cmath>
#include <cstdio>
#include <string>

namespace puteal::sdk
{

/// Days since 1970-01-01 of a calendar date, so that a table of dates is read as it is written. Years are
/// counted from 1 March, so that the day a leap year adds comes last.
constexpr double dayOf(int year, int month, int day)
{
    constexpr int yearsPerEra = 400, daysPerEra = 146097, daysToEpoch = 719468;
    const int y = month <= 2 ? year - 1 : year;
    const int era = (y >= 0 ? y : y - (yearsPerEra - 1)) / yearsPerEra;
    const int yearOfEra = y - era * yearsPerEra;
    const int dayOfYear = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    const int dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    return static_cast<double>(era) * daysPerEra + dayOfEra - daysToEpoch;
}

/// "2024-12-28"; "no date" for what lies outside the years 1 to 9999.
inline std::string dateWords(double days)
{
    if (!(days >= dayOf(1, 1, 1) && days <= dayOf(9999, 12, 31)))
        return "no date";
    const double whole = std::floor(days);
    int year = 1970 + static_cast<int>(std::floor(whole / 365.2425)), month = 12;
    while (dayOf(year, 1, 1) > whole)
        --year;
    while (dayOf(year + 1, 1, 1) <= whole)
        ++year;
    while (dayOf(year, month, 1) > whole)
        --month;
    char text[32];
    std::snprintf(text, sizeof text, "%04d-%02d-%02d", year, month,
                  static_cast<int>(whole - dayOf(year, month, 1)) + 1);
    return text;
}

} // namespace puteal::sdk
