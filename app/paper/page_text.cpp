/// The page as text for a terminal.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "paper/page.h"

namespace puteal::paper
{

std::string wrapped(const std::string &text, std::size_t width, std::size_t indent)
{
    std::string out;
    std::size_t column = 0;
    std::size_t i = 0;
    const std::string pad(indent, ' ');
    while (i < text.size()) {
        std::size_t end = text.find(' ', i);
        if (end == std::string::npos)
            end = text.size();
        const std::string word = text.substr(i, end - i);
        const std::size_t length = codePoints(word);
        if (column > 0 && column + 1 + length > width) {
            out += "\n" + pad;
            column = indent;
        } else if (column > 0) {
            out += ' ';
            ++column;
        }
        out += word;
        column += length;
        i = end + 1;
    }
    return out;
}

namespace
{

std::string padded(const std::string &words, std::size_t width, bool right)
{
    const std::size_t length = codePoints(words);
    const std::string pad(length < width ? width - length : 0, ' ');
    return right ? pad + words : words + pad;
}

const char *sign(LimitState state)
{
    switch (state) {
    case LimitState::within:
        return "ok";
    case LimitState::near:
        return "!";
    case LimitState::outside:
        return "X";
    case LimitState::missingTest:
        return "?";
    case LimitState::noLimit:
        break;
    }
    return "";
}

void addSheet(std::string &out, const PageSheet &sheet, std::size_t width)
{
    out += sheet.title + "\n" + std::string(codePoints(sheet.title), '-') + "\n";
    std::vector<std::size_t> widths(sheet.columns.size(), 0);
    const bool table = sheet.columns.size() > 2;
    for (const PageLine &line : sheet.lines) {
        if (line.lead)
            continue;
        for (std::size_t c = 0; c < line.cells.size(); ++c)
            widths[c] =
                std::max(widths[c], std::min<std::size_t>(codePoints(line.cells[c].words), c == 0 ? 44 : 30));
    }
    if (table) {
        for (std::size_t c = 0; c < widths.size(); ++c) {
            widths[c] = std::max(widths[c], std::min<std::size_t>(codePoints(sheet.columns[c]), 30));
            out += padded(sheet.columns[c], widths[c], false) + "  ";
        }
        while (out.back() == ' ')
            out.pop_back();
        out += "\n";
    }
    for (const PageLine &line : sheet.lines) {
        std::string row;
        if (line.lead) {
            for (const PageCell &cell : line.cells)
                if (!cell.words.empty())
                    row += (row.empty() ? "" : "  ") + cell.words;
            out += wrapped(row, width, 2) + "\n";
            continue;
        }
        std::size_t column = 0;
        std::string below;
        for (std::size_t c = 0; c < line.cells.size(); ++c) {
            const PageCell &cell = line.cells[c];
            const std::size_t length = codePoints(cell.words);
            // Words that do not fit where they stand go below the line, over its whole width.
            if (!cell.amount && c > 0 && length > widths[c] && column + length > width) {
                below += "    " + wrapped(cell.words, width - 4, 4) + "\n";
                continue;
            }
            row += padded(cell.words, widths[c], cell.amount) + "  ";
            column += std::max(widths[c], length) + 2;
        }
        if (line.limit != LimitState::noLimit)
            row += fmt::format("{} {}", sign(line.limit), line.state);
        if (!line.marks.empty() && line.marks != "W")
            row += fmt::format("  [{}]", line.marks);
        while (!row.empty() && row.back() == ' ')
            row.pop_back();
        out += row + "\n" + below;
    }
    out += "\n";
}

void addList(std::string &out, const std::string &title, const std::vector<std::string> &items,
             std::size_t width)
{
    if (items.empty())
        return;
    out += title + "\n" + std::string(codePoints(title), '-') + "\n";
    for (const auto &item : items)
        out += "- " + wrapped(item, width - 2, 2) + "\n";
    out += "\n";
}

} // namespace

std::string pageText(const Page &page, std::size_t width)
{
    std::string out = page.title + "\n" + std::string(codePoints(page.title), '=') + "\n\n";
    for (const PageSheet &sheet : page.sheets)
        addSheet(out, sheet, width);
    addList(out, "When one becomes cheaper than the other", page.breakEven, width);
    addList(out, "Outside a limit, missing, or wrong", page.attention, width);
    addList(out, "Assumed", page.assumptions, width);
    addList(out, "Sources", page.sources, width);
    addList(out, "Cautions", page.cautions, width);
    while (out.size() > 1 && out[out.size() - 1] == '\n' && out[out.size() - 2] == '\n')
        out.pop_back();
    return out;
}

} // namespace puteal::paper
