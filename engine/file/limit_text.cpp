/// A limit beside a cell: comparison or span, nearness, health, mark, words.
#include "file/attribute_text.h"

#include <fmt/format.h>

#include "base/number.h"
#include "base/text.h"
#include "sheet/workbook.h"

namespace puteal
{

namespace
{

/// Takes closing quoted words off the end; false when they are broken.
bool takeWords(std::string_view &text, std::string &words)
{
    if (!text.ends_with('"'))
        return true;
    std::size_t open = std::string_view::npos, i = 0;
    while (i < text.size()) {
        if (text[i] != '"') {
            ++i;
            continue;
        }
        open = i++;
        while (i < text.size() && text[i] != '"')
            i += text[i] == '\\' ? 2U : 1U;
        ++i;
    }
    if (open == 0 || i != text.size() || text[open - 1] != ' ')
        return false;
    auto read = unquoted(text.substr(open));
    if (!read || read->empty())
        return false;
    words = std::move(*read);
    text = trimmed(text.substr(0, open));
    return true;
}

/// A mark at the end. A letter without digits directly after a number is a unit (`3 L`), not a mark.
void takeMark(std::string_view &text, MarkId &mark)
{
    const auto blank = text.rfind(' ');
    if (blank == std::string_view::npos || !isMarkId(text.substr(blank + 1)))
        return;
    const std::string_view before = trimmed(text.substr(0, blank));
    const auto previous = before.rfind(' ');
    const bool afterNumber =
        readNumber(previous == std::string_view::npos ? before : before.substr(previous + 1)).has_value();
    if (text.size() - blank == 2 && afterNumber)
        return;
    mark = text.substr(blank + 1);
    text = before;
}

void takeNear(std::string_view &text, std::string &near)
{
    constexpr std::string_view word = " near ";
    const auto at = text.rfind(word);
    if (at == std::string_view::npos || !text.ends_with(" %"))
        return;
    const std::size_t begin = at + word.size();
    if (begin + 2 > text.size())
        return;
    const std::string_view number = text.substr(begin, text.size() - 2 - begin);
    if (number.empty() || numberLength(number, 0) != number.size())
        return;
    near = number;
    text = trimmed(text.substr(0, at));
}

bool takeComparison(std::string_view text, LimitText &out)
{
    struct Sign {
        std::string_view typed, stored;
    };
    constexpr Sign signs[] = {{"<=", "<="},     {">=", ">="}, {"\u2264", "<="},
                              {"\u2265", ">="}, {"<", "<"},   {">", ">"}};
    for (const Sign &sign : signs)
        if (text.starts_with(sign.typed)) {
            out.comparison = sign.stored;
            out.low = trimmed(text.substr(sign.typed.size()));
            return !out.low.empty();
        }
    const auto dots = text.find(" .. ");
    if (dots == std::string_view::npos)
        return false;
    out.comparison = "..";
    out.low = trimmed(text.substr(0, dots));
    out.high = trimmed(text.substr(dots + 4));
    return !out.low.empty() && !out.high.empty();
}

std::string plainWords(const LimitText &limit)
{
    if (limit.comparison.empty())
        return limit.low;
    std::string out =
        limit.comparison == ".." ? limit.low + " .. " + limit.high : limit.comparison + ' ' + limit.low;
    if (!limit.near.empty())
        out += fmt::format(" near {} %", limit.near);
    if (limit.health)
        out += " health";
    if (!limit.mark.empty())
        out += ' ' + limit.mark;
    if (!limit.words.empty())
        out += ' ' + quoted(limit.words);
    return out;
}

} // namespace

LimitText readLimit(std::string_view text)
{
    LimitText out;
    std::string_view rest = text;
    if (takeWords(rest, out.words)) {
        takeMark(rest, out.mark);
        if (rest.ends_with(" health")) {
            out.health = true;
            rest = trimmed(rest.substr(0, rest.size() - 7));
        }
        takeNear(rest, out.near);
        if (takeComparison(rest, out))
            return out;
    }
    LimitText unread;
    unread.low = text;
    return unread;
}

std::string limitWords(const LimitText &limit)
{
    std::string text = plainWords(limit);
    if (limit.comparison.empty() || readLimit(text) == limit)
        return text;
    LimitText plain = limit;
    std::string &last = plain.comparison == ".." ? plain.high : plain.low;
    last = '(' + last + ')';
    return plainWords(plain);
}

} // namespace puteal
