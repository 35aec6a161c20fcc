/// Splits a worked example into the cells it needs and its formula.
#include "session/worked_example.h"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

namespace puteal
{
namespace
{

std::string trimmed(std::string_view text)
{
    const auto first = text.find_first_not_of(' '), last = text.find_last_not_of(' ');
    return first == std::string_view::npos ? std::string()
                                           : std::string(text.substr(first, last - first + 1));
}

std::vector<std::string> split(std::string_view text, char at)
{
    std::vector<std::string> parts;
    for (std::size_t end = text.find(at); end != std::string_view::npos; end = text.find(at)) {
        parts.push_back(trimmed(text.substr(0, end)));
        text.remove_prefix(end + 1);
    }
    parts.push_back(trimmed(text));
    return parts;
}

struct Cells {
    std::string key;
    std::vector<std::string> typed;
};

std::string workbookOf(const std::vector<Cells> &columns)
{
    std::size_t lines = 1;
    std::string text = "puteal workbook 1\ntitle \"Worked example\"\nsheet example \"Worked example\"\n"
                       "column item words \"Item\" 14\ncolumn result amounts \"Result\" 14\n";
    for (const Cells &column : columns) {
        text += fmt::format("column {0} amounts \"{0}\" 14\n", column.key);
        lines = std::max(lines, column.typed.size());
    }
    for (std::size_t i = 0; i < lines; ++i) {
        text += "line\n";
        for (const Cells &column : columns)
            if (i < column.typed.size() && !column.typed[i].empty())
                text += fmt::format("{}: {}\n", column.key, column.typed[i]);
    }
    return text + fmt::format("end example {}\nend workbook\n", lines);
}

} // namespace

WorkedExample workedExample(std::string_view text)
{
    std::vector<std::string> parts = split(text, ';');
    std::vector<Cells> columns;
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
        const std::size_t colon = parts[i].find(':');
        if (colon == std::string::npos)
            return {{}, std::string(text)};
        columns.push_back(
            {parts[i].substr(0, colon), split(std::string_view(parts[i]).substr(colon + 1), ',')});
    }
    return {columns.empty() ? std::string() : workbookOf(columns), parts.back()};
}

} // namespace puteal
