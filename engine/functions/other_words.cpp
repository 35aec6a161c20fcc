/// The tables of words known from mathematics and spreadsheets for what is named or written otherwise here.
#include "functions/other_words.h"

namespace puteal
{

std::vector<std::string> otherWordsFor(std::string_view name)
{
    static const std::pair<std::string_view, std::vector<std::string>> rows[] = {
        {"log", {"log10", "ln"}},
        {"average", {"mean"}},
        {"avg", {"mean"}},
        {"total", {"sum"}},
        {"maximum", {"max"}},
        {"minimum", {"min"}},
        {"smallest", {"min"}},
        {"largest", {"max"}},
        {"iferror", {"if_error"}},
        {"countif", {"count_true"}},
        {"vlookup", {"lookup"}},
        {"hlookup", {"lookup"}},
        {"xlookup", {"lookup"}},
        {"index", {"pick"}},
        {"npv", {"net_present_value"}},
        {"irr", {"internal_rate_of_return"}},
        {"pmt", {"loan_payment"}},
    };
    for (const auto &[word, here] : rows)
        if (word == name)
            return here;
    return {};
}

std::string_view signFor(std::string_view name)
{
    static constexpr std::pair<std::string_view, std::string_view> rows[] = {
        {"if", "condition ? this : that"},
        {"pow", "base^exponent"},
        {"power", "base^exponent"},
        {"round", "round_to(x, 0.01), with the step to round to"},
        {"ceil", "ceil_to(x, 1), with the step to round up to"},
        {"ceiling", "ceil_to(x, 1), with the step to round up to"},
        {"roundup", "ceil_to(x, 1), with the step to round up to"},
        {"floor", "floor_to(x, 1), with the step to round down to"},
        {"rounddown", "floor_to(x, 1), with the step to round down to"},
        {"int", "floor_to(x, 1), with the step to round down to"},
        {"trunc", "floor_to(x, 1), with the step to round down to"},
        {"mod", "x - floor_to(x, step)"},
        {"isblank", "not(known(x))"},
        {"convert", "amount -> unit"},
        {"concat", "words with the cells in braces, as in \"{use} of {tank}\""},
        {"concatenate", "words with the cells in braces, as in \"{use} of {tank}\""},
        {"today", "the date in a cell, as 2026-05-12, and the name of that cell"},
        {"now", "the date in a cell, as 2026-05-12, and the name of that cell"},
        {"date", "a date as 2026-05-12"},
        {"median", "percentile(x, 50 %)"},
    };
    for (const auto &[word, here] : rows)
        if (word == name)
            return here;
    return {};
}

} // namespace puteal
