/// Cell addresses, sheets, capitals, dates and numbers written in the ways of other programs and of letters.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "base/number.h"
#include "formula/slips.h"
#include "units/value.h"

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
bool isUpper(char c)
{
    return c >= 'A' && c <= 'Z';
}

std::string lower(std::string_view text)
{
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(),
                   [](char c) { return isUpper(c) ? static_cast<char>(c - 'A' + 'a') : c; });
    return out;
}

/// Length of `A1`, `$A$1` or `R1C1` at the start of a text; the parts without their $.
struct Address {
    std::size_t length = 0;
    std::string column, line;
};

Address addressAt(std::string_view text)
{
    const auto at = [&](std::size_t i) { return i < text.size() ? text[i] : '\0'; };
    constexpr std::size_t mostLetters = 3, mostDigits = 7;
    Address out;
    std::size_t i = at(0) == '$' ? 1 : 0;
    for (; isUpper(at(i)); ++i)
        out.column += lower(text.substr(i, 1));
    i += at(i) == '$' ? 1U : 0U;
    for (; isDigit(at(i)); ++i)
        out.line += text[i];
    if (out.column == "r" && at(i) == 'C' && isDigit(at(i + 1)))
        for (++i; isDigit(at(i)); ++i)
            ;
    const bool whole = !isUpper(at(i)) && at(i) != '_' && at(i) != '(' && !(at(i) >= 'a' && at(i) <= 'z');
    const bool fits = !out.column.empty() && out.column.size() <= mostLetters && !out.line.empty() &&
                      out.line.size() <= mostDigits;
    out.length = whole && fits ? i : 0;
    return out;
}

constexpr std::array<std::string_view, 12> months{"january",   "february", "march",    "april",
                                                  "may",       "june",     "july",     "august",
                                                  "september", "october",  "november", "december"};

/// 1 to 12 for `May`, `sept`; 0 for none.
std::size_t monthOf(std::string_view word)
{
    const std::string small = lower(word);
    if (small.size() < 3)
        return 0;
    const auto *month =
        std::find_if(months.begin(), months.end(), [&](std::string_view m) { return m.starts_with(small); });
    return month == months.end() ? 0 : static_cast<std::size_t>(month - months.begin()) + 1;
}

} // namespace

bool Slips::cellAddress(std::size_t begin)
{
    const Address first = addressAt(m_text.substr(begin));
    if (first.length == 0)
        return false;
    std::size_t end = begin + first.length;
    std::string text = fmt::format("{}[{}]", first.column, first.line);
    if (at(end) == ':') {
        const Address last = addressAt(m_text.substr(end + 1));
        if (last.length > 0) {
            end += 1 + last.length;
            text = last.column == first.column ? fmt::format("{}[{}:{}]", first.column, first.line, last.line)
                                               : "";
        }
    }
    const std::string there = piece(begin, end);
    if (!text.empty() && isKnown(first.column))
        return !failsWith(ErrorKind::name, fmt::format("`{}` is written {} here", there, text), begin, end,
                          "write " + text, text);
    fails(ErrorKind::name,
          fmt::format("`{}` is no cell here: write its name, or its column and line, as in {}", there,
                      there.find(':') == std::string::npos ? "cost[8]" : "cost[2:8]"),
          begin, end);
    return true;
}

bool Slips::sheetSlip(std::size_t begin, std::string_view word)
{
    const std::size_t mark = begin + word.size();
    if (at(mark) != '!' || at(mark + 1) == '=' || wordAt(mark + 1).empty())
        return false;
    const std::string_view cell = wordAt(mark + 1);
    const std::size_t end = mark + 1 + cell.size();
    if (addressAt(m_text.substr(mark + 1)).length > 0)
        return !fails(
            ErrorKind::name,
            "a cell of another sheet is written with a point, as in water.raw_iron or water.amount[8]", begin,
            end);
    const std::string text = fmt::format("{}.{}", lower(word), lower(cell));
    return !failsWith(ErrorKind::name,
                      fmt::format("a cell of another sheet is written with a point: write {}", text), begin,
                      end, "write " + text, text);
}

bool Slips::capitalSlip(std::size_t begin, std::string_view word)
{
    const std::string small = lower(word);
    const std::size_t end = begin + word.size();
    if (small == "true" || small == "false") {
        const std::string text = small == "true" ? "yes" : "no";
        return !failsWith(ErrorKind::name, fmt::format("a condition is yes or no: write {}", text), begin,
                          end, "write " + text, text);
    }
    for (const std::string_view mark : {"BDL", "BRL", "BQL", "MDL", "LOD", "LOQ", "PQL"})
        if (word == mark)
            return !fails(ErrorKind::name,
                          "what was not detected is written ND 0.05 mg/L, with the limit it was tested to",
                          begin, end);
    if (word == "TNTC")
        return !fails(ErrorKind::name,
                      "too many to count is written > with the most that was counted, as in "
                      ">200 cfu/100mL",
                      begin, end);
    return false;
}

/// `12 May 2026`, `May 12, 2026`, `12-May-2026`.
bool Slips::monthSlip(std::size_t begin, std::string_view word)
{
    const std::size_t month = monthOf(word);
    if (month == 0)
        return false;
    const auto skip = [this](std::size_t i) {
        while (at(i) == ' ' || at(i) == ',' || at(i) == '.' || at(i) == '-' || at(i) == '/')
            ++i;
        return i;
    };
    const auto digits = [this](std::size_t i) {
        std::size_t n = 0;
        while (isDigit(at(i + n)))
            ++n;
        return n;
    };
    std::size_t from = begin, next = skip(begin + word.size());
    std::string day;
    std::size_t i = begin; // a day before the month
    while (i > 0 &&
           (m_text[i - 1] == ' ' || m_text[i - 1] == '-' || m_text[i - 1] == '.' || m_text[i - 1] == '/'))
        --i;
    std::size_t dayEnd = i;
    while (i > 0 && isDigit(m_text[i - 1]))
        --i;
    if (dayEnd > i && dayEnd - i <= 2) {
        day = piece(i, dayEnd);
        from = i;
    } else if (const std::size_t n = digits(next); n == 1 || n == 2) {
        day = piece(next, next + n);
        next = skip(next + n);
    }
    if (day.empty() || digits(next) != 4)
        return false;
    const std::string text = fmt::format("{}-{:02}-{:0>2}", piece(next, next + 4), month, day);
    if (!readDate(text))
        return !fails(ErrorKind::syntax, fmt::format("`{}` is not in the calendar", text), from, next + 4);
    return !failsWith(ErrorKind::syntax, fmt::format("a date is year-month-day: write {}", text), from,
                      next + 4, "write " + text, text);
}

/// `12.5.2026`: the day first, as everywhere a date has points.
bool Slips::dateWithPoints(std::size_t begin, std::size_t end)
{
    const std::string typed = piece(begin, end);
    const std::size_t first = typed.find('.'), second = typed.find('.', first + 1);
    if (second == std::string::npos || typed.find('.', second + 1) != std::string::npos ||
        typed.size() - second - 1 != 4 || first > 2 || second - first - 1 > 2)
        return false;
    const std::string text = fmt::format("{}-{:0>2}-{:0>2}", typed.substr(second + 1),
                                         typed.substr(first + 1, second - first - 1), typed.substr(0, first));
    if (!readDate(text))
        return !fails(ErrorKind::syntax, "a date is year-month-day, as in 2026-05-12", begin, end);
    return !failsWith(ErrorKind::syntax, fmt::format("a date is year-month-day: write {}", text), begin, end,
                      "write " + text, text);
}

/// `1 200`, `1 000 000.5`: at most three figures, then groups of three.
bool Slips::blankGroups(std::size_t begin, std::size_t numberEnd, std::size_t pos)
{
    std::string joined = piece(begin, numberEnd);
    if (joined.size() > 3 || joined[0] == '0' || joined.find_first_not_of("0123456789") != std::string::npos)
        return false;
    std::size_t end = numberEnd;
    const auto groupAt = [this](std::size_t i) {
        return isDigit(at(i)) && isDigit(at(i + 1)) && isDigit(at(i + 2)) && !isDigit(at(i + 3));
    };
    for (std::size_t next = pos; groupAt(next); next = end + 1) {
        joined += piece(next, next + 3);
        end = next + 3;
        if (at(end) != ' ')
            break;
    }
    if (end == numberEnd)
        return false;
    if (at(end) == '.' && isDigit(at(end + 1)))
        for (joined += at(end++); isDigit(at(end)); ++end)
            joined += at(end);
    return !failsWith(ErrorKind::syntax,
                      fmt::format("numbers in a formula have no grouping blanks: write {}", joined), begin,
                      end, "write " + joined, joined);
}

/// `1_000`
bool Slips::groupedByMark(std::size_t begin, std::size_t numberEnd)
{
    if (at(numberEnd) != '_')
        return false;
    std::string joined = piece(begin, numberEnd);
    std::size_t end = numberEnd;
    for (; at(end) == '_' || isDigit(at(end)); ++end)
        if (isDigit(at(end)))
            joined += at(end);
    return !failsWith(ErrorKind::syntax,
                      fmt::format("numbers in a formula have no grouping marks: write {}", joined), begin,
                      end, "write " + joined, joined);
}

/// `cu ft`, `square feet`
bool Slips::spelledPower(std::size_t begin, std::size_t end)
{
    const std::string word = lower(m_text.substr(begin, end - begin));
    const int power = word == "cu" || word == "cubic" ? 3 : word == "sq" || word == "square" ? 2 : 0;
    const std::size_t next = afterBlanks(end + (power > 0 && at(end) == '.' ? 1 : 0));
    const UnitWord *unit = power > 0 ? m_units.find(wordAt(next)) : nullptr;
    if (!unit)
        return false;
    const std::string text = fmt::format("{}^{}", unit->word, power);
    const std::size_t stop = next + wordAt(next).size();
    return !failsWith(ErrorKind::unit, fmt::format("`{}` is no unit: write {}", piece(begin, stop), text),
                      begin, stop, "write " + text, text);
}

} // namespace puteal
