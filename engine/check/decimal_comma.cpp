/// `f(7,2)` where 7.2 was meant: arguments that become right in number when a comma between figures is a
/// point.
#include <fmt/format.h>

#include "base/text.h"
#include "check/calls.h"
#include "check/fixes.h"
#include "check/words.h"

namespace puteal::checking
{

namespace
{

bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}

/// A comma tight between two bare whole numbers, with the figures on both sides of it.
struct TightComma {
    std::size_t begin = 0, comma = 0, end = 0;
};

std::vector<TightComma> tightCommas(const Draft &draft, const Call &call)
{
    const std::string &text = draft.tree.text;
    const auto at = [&](std::size_t i) { return i < text.size() ? text[i] : '\0'; };
    std::vector<TightComma> out;
    const auto &given = draft.node(call.node).children;
    for (std::size_t i = 0; i + 1 < given.size(); ++i) {
        TightComma here;
        here.begin = here.comma = draft.span(given[i]).end;
        here.end = here.comma + 1;
        while (here.begin > 0 && isDigit(text[here.begin - 1]))
            --here.begin;
        while (isDigit(at(here.end)))
            ++here.end;
        const char before = here.begin > 0 ? text[here.begin - 1] : '\0';
        const bool whole = before != '.' && before != '_' && !(before >= 'a' && before <= 'z') &&
                           !(before >= 'A' && before <= 'Z') && at(here.end) != '.';
        // the figures behind a comma that was taken belong to that number: 1,2,3 is a list
        const bool free = out.empty() || out.back().end <= here.begin;
        if (at(here.comma) == ',' && whole && free && here.begin < here.comma && here.end > here.comma + 1)
            out.push_back(here);
    }
    return out;
}

} // namespace

std::optional<Error> decimalComma(const Draft &draft, const Call &call)
{
    std::vector<TightComma> commas = tightCommas(draft, call);
    const std::size_t given = draft.node(call.node).children.size();
    const std::size_t least = call.function->leastArguments(), most = call.function->mostArguments();
    if (commas.empty() || given - commas.size() < least)
        return std::nullopt;
    if (given - commas.size() > most)
        return std::nullopt;
    const std::string &typed = draft.tree.text;
    const std::size_t begin = commas.front().begin, end = commas.back().end;
    std::string text = typed.substr(begin, end - begin);
    std::vector<std::string> numbers;
    for (const TightComma &comma : commas) {
        text[comma.comma - begin] = '.';
        numbers.push_back(text.substr(comma.begin - begin, comma.end - comma.begin));
    }
    const Span span{static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
    const std::string words = "write " + joined(numbers);
    Error error{ErrorKind::arguments, "a decimal is written with a point: " + words, {}, Place{span, {}, 0}};
    offer(draft, error, words, span, text);
    return error;
}

} // namespace puteal::checking
