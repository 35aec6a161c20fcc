/// Reading and writing what stands beside a value.
#include "file/attribute_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "file/line_scanner.h"
#include "sheet/typed_text.h"
#include "sheet/workbook.h"

namespace puteal
{

namespace
{

std::string twice(std::string_view what)
{
    return fmt::format("`{0}` stands twice here: keep one `{0}`", what);
}

std::string addWords(std::string_view keyword, Parts rest, std::string &field)
{
    if (!field.empty())
        return twice(keyword);
    if (!rest.quotedWords(field) || !rest.atEnd() || field.empty())
        return fmt::format("`{0}` takes words in quotation marks, as in {0} \"...\"", keyword);
    return {};
}

std::string addDigit(std::string_view keyword, std::string_view rest, int least, int &field, int unset)
{
    if (field != unset)
        return twice(keyword);
    if (rest.size() != 1 || rest[0] < '0' + least || rest[0] > '9')
        return fmt::format("`{0}` takes one digit from {1} to 9, as in {0} 2", keyword, least);
    field = rest[0] - '0';
    return {};
}

std::string addTail(std::string_view keyword, std::string_view rest, std::string_view example,
                    std::string &field)
{
    if (!field.empty())
        return twice(keyword);
    if (!isCleanTyped(rest) || rest.empty())
        return fmt::format("`{0}` takes one text after one blank, as in {0} {1}", keyword, example);
    field = rest;
    return {};
}

std::string addSources(std::string_view rest, Attributes &out)
{
    if (!out.sources.empty())
        return twice("source");
    Parts parts(rest);
    while (!parts.atEnd()) {
        const std::string_view mark = parts.word();
        if (!isMarkId(mark))
            return "`source` takes declared marks, as in source L1 P2";
        if (std::find(out.sources.begin(), out.sources.end(), mark) != out.sources.end())
            return fmt::format("the mark {} stands twice here: keep one", mark);
        out.sources.emplace_back(mark);
    }
    return out.sources.empty() ? "`source` takes declared marks, as in source L1 P2" : "";
}

std::string addChoices(std::string_view rest, Attributes &out)
{
    constexpr const char *usage = "`choices` takes the name of a list or words in quotation marks, as in "
                                  "choices \"dry well\" \"septic\"";
    if (!out.list.empty() || !out.choices.empty())
        return twice("choices");
    if (isName(rest)) {
        out.list = rest;
        return {};
    }
    Parts parts(rest);
    while (!parts.atEnd()) {
        std::string words;
        if (!parts.quotedWords(words) || words.empty())
            return usage;
        if (std::find(out.choices.begin(), out.choices.end(), words) != out.choices.end())
            return fmt::format("the choice {} stands twice here: keep one", quoted(words));
        out.choices.push_back(std::move(words));
    }
    return out.choices.empty() ? usage : "";
}

std::string addFlag(std::string_view keyword, std::string_view rest, bool &flag)
{
    if (flag)
        return twice(keyword);
    if (!rest.empty())
        return fmt::format("`{}` stands alone: take the rest of the line away", keyword);
    flag = true;
    return {};
}

std::string addLimit(std::string_view rest, Attributes &out)
{
    if (out.limit)
        return twice("limit");
    if (rest.empty() || !isCleanTyped(rest))
        return "`limit` takes a comparison or a span after one blank, as in limit <= 3 mg/L";
    out.limit = readLimit(rest);
    return {};
}

std::string addTolerance(std::string_view rest, Attributes &out)
{
    if (!rest.starts_with("+- "))
        return "`tolerance` takes +- and an amount, as in tolerance +- 0.2 mg/L";
    return addTail("tolerance", rest.substr(3), "+- 0.2 mg/L", out.tolerance);
}

std::string addUnknown(std::string_view record, std::string_view keyword, Attributes &out)
{
    const bool lower = !record.empty() && record[0] >= 'a' && record[0] <= 'z';
    const bool comment = !record.empty() && (record[0] == '#' || record[0] == ' ');
    if (keyword.ends_with(':'))
        return "cells stand without blanks in front: take the two blanks away";
    if (!lower && !comment)
        return fmt::format("`{}` is nothing that stands under a cell: take it away", keyword.substr(0, 40));
    out.unknown.emplace_back(record);
    return {};
}

} // namespace

std::string addAttribute(std::string_view record, Attributes &out)
{
    const std::size_t blank = std::min(record.find(' '), record.size());
    const std::string_view keyword = record.substr(0, blank);
    const std::string_view rest = blank < record.size() ? record.substr(blank + 1) : std::string_view{};
    if (keyword == "name")
        return addTail(keyword, rest, "raw_iron", out.name);
    if (keyword == "unit")
        return addTail(keyword, rest, "mg/L", out.unit);
    if (keyword == "source")
        return addSources(rest, out);
    if (keyword == "figures")
        return addDigit(keyword, rest, 1, out.figures, 0);
    if (keyword == "places")
        return addDigit(keyword, rest, 0, out.places, -1);
    if (keyword == "choices")
        return addChoices(rest, out);
    if (keyword == "limit")
        return addLimit(rest, out);
    if (keyword == "tolerance")
        return addTolerance(rest, out);
    if (keyword == "ask")
        return addWords(keyword, Parts(rest), out.ask);
    if (keyword == "note")
        return addWords(keyword, Parts(rest), out.note);
    if (keyword == "hide")
        return addFlag(keyword, rest, out.hide);
    if (keyword == "lock")
        return addFlag(keyword, rest, out.lock);
    return addUnknown(record, keyword, out);
}

} // namespace puteal
