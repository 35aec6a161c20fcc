/// Literals: numbers with units, money, dates; what looks like one and must not be guessed is refused.
#include <fmt/format.h>

#include "base/number.h"
#include "formula/parser.h"
#include "units/value.h"

namespace puteal
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

std::size_t digitsFrom(std::string_view text, std::size_t pos)
{
    std::size_t end = pos;
    while (end < text.size() && isDigit(text[end]))
        ++end;
    return end - pos;
}

/// `1,5` may be meant as one number: a whole number before the comma, figures alone behind it.
bool isOneArgument(std::string_view head, char behind)
{
    return head.find_first_not_of("0123456789") == std::string_view::npos && behind != '.' && behind != 'e' &&
           behind != 'E';
}

std::string paddedDate(std::string_view year, std::string_view month, std::string_view day)
{
    return fmt::format("{:0>4}-{:0>2}-{:0>2}", year, month, day);
}

} // namespace

NodeIndex Parser::number()
{
    const std::size_t begin = m_pos;
    const std::size_t end = begin + numberLength(m_text, begin);
    std::size_t dateEnd = begin;
    if (const NodeIndex date = dateLike(begin, dateEnd); dateEnd > begin)
        return date;
    Node result;
    result.kind = NodeKind::number;
    result.span.begin = static_cast<std::uint32_t>(begin);
    if (!numberForm(begin, end) || !value(begin, begin, end, result.typed))
        return none;
    m_pos = end;
    if (!unitAfter(result, end))
        return none;
    result.span.end = static_cast<std::uint32_t>(m_pos);
    result.number = tree.units[result.unit].toBase(result.typed);
    return add(std::move(result));
}

/// Reads m_text[digits, end); what overflows or underflows a double is refused.
bool Parser::value(std::size_t begin, std::size_t digits, std::size_t end, double &out)
{
    const std::string_view text = m_text.substr(digits, end - digits);
    const auto read = readNumber(text);
    const bool vanished = read && *read == 0.0 &&
                          text.substr(0, text.find_first_of("eE")).find_first_of("123456789") != text.npos;
    if (!read || vanished)
        return fails(ErrorKind::limit, fmt::format("`{}` is outside the range of numbers", piece(begin, end)),
                     begin, end);
    out = *read;
    return true;
}

/// `$5`, `$0.15/kWh`: a number of dollars, perhaps per something.
NodeIndex Parser::money()
{
    const std::size_t begin = m_pos;
    const std::size_t digits = begin + 1;
    if (!isDigit(at(digits))) {
        if (cellAddress(begin))
            return none;
        const std::size_t later = afterBlanks(digits);
        if (later > digits && isDigit(at(later)))
            failsWith(ErrorKind::syntax, "the amount follows the $ without a blank", begin, later,
                      "leave the blank out", "$");
        else
            fails(ErrorKind::syntax, "an amount is missing after $, for example $5", begin, begin + 1);
        return none;
    }
    const std::size_t end = digits + numberLength(m_text, digits);
    Node result;
    result.kind = NodeKind::number;
    if (!numberForm(digits, end) || !value(begin, digits, end, result.typed))
        return none;
    // the unit is spelled $/kWh: read it from a copy with the number cut out
    const std::string spelled = "$" + std::string(m_text.substr(end));
    auto scanned = scanUnit(spelled, 0, m_units);
    const auto shift = [&](Span s) {
        return span(s.begin == 0 ? begin : s.begin - 1 + end, s.end <= 1 ? end : s.end - 1 + end);
    };
    if (!scanned) {
        failsAs(std::move(scanned.error()));
        if (error.place.span)
            error.place.span = shift(*error.place.span);
        for (Fix &fix : error.fixes) {
            if (fix.span.begin == 0 && fix.text.starts_with('$'))
                fix.text.insert(1, piece(digits, end));
            fix.span = shift(fix.span);
        }
        return none;
    }
    m_pos = end;
    if (*scanned) {
        m_pos = end + (*scanned)->end - 1;
        result.unit = static_cast<std::uint32_t>(tree.units.size());
        tree.units.push_back((*scanned)->unit);
    }
    if (!slashWord(m_pos))
        return none;
    result.opSpan = span(end, m_pos);
    if (!substanceAfter(result))
        return none;
    result.span = span(begin, m_pos);
    result.number = tree.units[result.unit].toBase(result.typed);
    return add(std::move(result));
}

/// Three whole numbers joined by dashes or slashes are a date or refused, never arithmetic. `end` > begin
/// tells that such a thing stood there.
NodeIndex Parser::dateLike(std::size_t begin, std::size_t &end)
{
    const std::size_t first = digitsFrom(m_text, begin);
    const char joint = at(begin + first);
    if (joint != '-' && joint != '/')
        return none;
    const std::size_t secondAt = begin + first + 1, second = digitsFrom(m_text, secondAt);
    const std::size_t thirdAt = secondAt + second + 1, third = digitsFrom(m_text, thirdAt);
    if (second == 0 || third == 0 || at(thirdAt - 1) != joint || at(thirdAt + third) == '.')
        return none;
    end = thirdAt + third;
    const auto date = joint == '-' ? readDate(m_text.substr(begin, end - begin)) : std::nullopt;
    if (date) {
        Node result;
        result.kind = NodeKind::date;
        result.number = static_cast<double>(*date);
        result.span = span(begin, end);
        m_pos = end;
        return add(std::move(result));
    }
    const auto a = m_text.substr(begin, first), b = m_text.substr(secondAt, second),
               c = m_text.substr(thirdAt, third);
    const std::string apart = fmt::format("{} {} {} {} {}", a, joint, b, joint, c);
    fails(ErrorKind::syntax,
          fmt::format("`{}` could be a date: write a date as 2026-05-12, or {} to calculate",
                      piece(begin, end), apart),
          begin, end);
    for (const std::string &text : {paddedDate(a, b, c), paddedDate(c, a, b), paddedDate(c, b, a)})
        if (text.front() != '0' && readDate(text) &&
            (error.fixes.empty() || error.fixes.back().text != text) && error.fixes.size() < 2)
            addFix("write the date", begin, end, text);
    addFix("write blanks to calculate", begin, end, apart);
    return none;
}

/// Refuses `.5`, `5.`, `1.2.3`, `1,5` and `1,250`.
bool Parser::numberForm(std::size_t begin, std::size_t end)
{
    if (at(begin) == '.') {
        const std::size_t stop = begin + 1 + digitsFrom(m_text, begin + 1);
        return failsWith(ErrorKind::syntax,
                         fmt::format("a number starts with a digit: write 0{}", piece(begin, stop)), begin,
                         stop, fmt::format("write 0{}", piece(begin, stop)), "0" + piece(begin, stop));
    }
    if (at(end) == '.' && at(end + 1) == '.')
        return fails(ErrorKind::syntax, "`..` stands only in a limit: a formula takes one value here", end,
                     end + 2);
    if (at(end) == '.') {
        std::size_t stop = end + 1;
        while (isDigit(at(stop)) || (at(stop) == '.' && isDigit(at(stop + 1))))
            ++stop;
        if (stop > end + 1 && dateWithPoints(begin, stop))
            return false;
        if (stop > end + 1)
            return fails(ErrorKind::syntax,
                         fmt::format("`{}` is no number: it has two points", piece(begin, stop)), begin,
                         stop);
        return failsWith(ErrorKind::syntax,
                         fmt::format("a number does not end with a point: write {}", piece(begin, end)),
                         begin, stop, fmt::format("write {}", piece(begin, end)), piece(begin, end));
    }
    return at(end) != ',' || commaForm(begin, end);
}

/// In a call `2,5 mg/L` is a decimal to most who type it; read as two arguments it would shift all others.
bool Parser::decimalWithUnit(const std::string &head, std::size_t end, std::size_t stop)
{
    std::size_t after = stop;
    while (at(after) == ' ')
        ++after;
    const bool unit = at(after) == '%' || m_units.isUnitWord(wordAt(after));
    if (!unit || head.find_first_not_of("0123456789") != std::string::npos)
        return false;
    const std::size_t begin = end - head.size();
    const std::string decimals = piece(end + 1, stop), text = head + "." + decimals,
                      apart = head + ", " + decimals;
    failsWith(ErrorKind::syntax, fmt::format("a decimal is written with a point: write {}", text), begin,
              stop, fmt::format("write {}", text), text);
    addFix(fmt::format("write {} for separate arguments", apart), begin, stop, apart);
    return true;
}

/// A comma tight between digits: a grouped number, a decimal comma, or (in a call) the next argument.
bool Parser::commaForm(std::size_t begin, std::size_t end)
{
    const std::string head = piece(begin, end);
    std::size_t stop = end;
    std::string joined = head;
    bool groups =
        head.find_first_not_of("0123456789") == std::string::npos && head.size() <= 3 && head[0] != '0';
    std::size_t count = 0;
    while (at(stop) == ',' && isDigit(at(stop + 1))) {
        const std::size_t digits = digitsFrom(m_text, stop + 1);
        groups = groups && digits == 3;
        joined += piece(stop + 1, stop + 1 + digits);
        stop += 1 + digits;
        ++count;
    }
    if (count == 1 && m_inArguments && !groups && decimalWithUnit(head, end, stop))
        return false;
    if (count == 0 || (m_inArguments && !groups)) {
        const bool listed = begin > 0 && at(begin - 1) == ','; // 1,2,3
        if (count == 1 && !listed && isOneArgument(head, at(stop)))
            tree.notes.push_back(
                {"read_as_two",
                 fmt::format("`{}` is read as two arguments, {} and {}; for a decimal write {}",
                             piece(begin, stop), head, piece(end + 1, stop),
                             head + "." + piece(end + 1, stop)),
                 span(begin, stop)});
        return true; // in a call the next argument, else told where the comma stands
    }
    if (groups) {
        if (at(stop) == '.' && isDigit(at(stop + 1))) {
            const std::size_t more = stop + 1 + digitsFrom(m_text, stop + 1);
            joined += piece(stop, more);
            stop = more;
        }
        failsWith(ErrorKind::syntax,
                  fmt::format("numbers in a formula have no grouping commas: write {}", joined), begin, stop,
                  fmt::format("write {}", joined), joined);
        if (m_inArguments) {
            std::string apart = piece(begin, stop);
            for (std::size_t i = 0; (i = apart.find(',', i)) != std::string::npos; i += 2)
                apart.replace(i, 1, ", ");
            addFix(fmt::format("write {} for separate arguments", apart), begin, stop, apart);
        }
        return false;
    }
    const std::size_t decimals = end + 1 + digitsFrom(m_text, end + 1);
    if (count == 1 && head.find_first_not_of("0123456789") == std::string::npos) {
        const std::string text = head + "." + piece(end + 1, decimals);
        return failsWith(ErrorKind::syntax,
                         fmt::format("a comma stands only between arguments: write {}", text), begin, stop,
                         fmt::format("write {}", text), text);
    }
    return fails(ErrorKind::syntax, "a comma stands only between arguments", end, end + 1);
}

} // namespace puteal
