/// Look-ups in a workbook and the marks of sources.
#include "sheet/workbook.h"

#include <algorithm>
#include <array>
#include <tuple>

namespace puteal
{

namespace
{

struct MarkRow {
    char letter;
    std::string_view word, title;
};

constexpr std::array<MarkRow, 13> markRows{{{'L', "laboratory", "laboratory"},
                                            {'F', "field_kit", "field kit"},
                                            {'M', "measured", "measured on site"},
                                            {'D', "driller", "driller's log"},
                                            {'S', "standard", "standard"},
                                            {'H', "handbook", "handbook"},
                                            {'E', "equipment", "equipment data sheet"},
                                            {'P', "price", "price list"},
                                            {'T', "trade", "trade practice"},
                                            {'R', "recalled", "recalled and unconfirmed"},
                                            {'C', "customer", "customer"},
                                            {'A', "assumed", "assumed"},
                                            {'W', "worked", "worked out"}}};

const MarkRow *markRow(char letter)
{
    for (const MarkRow &row : markRows)
        if (row.letter == letter)
            return &row;
    return nullptr;
}

} // namespace

std::string_view markWord(char letter)
{
    const MarkRow *row = markRow(letter);
    return row ? row->word : std::string_view{};
}

std::string_view markTitle(char letter)
{
    const MarkRow *row = markRow(letter);
    return row ? row->title : std::string_view{};
}

bool isMarkId(std::string_view id)
{
    if (id.empty() || id.size() > 4 || !markRow(id.front()))
        return false;
    for (const char c : id.substr(1))
        if (c < '0' || c > '9')
            return false;
    return true;
}

bool operator==(const Workbook &a, const Workbook &b)
{
    const auto texts = [](const Workbook &book) {
        std::vector<std::string_view> out;
        for (const Kept &record : book.kept)
            out.push_back(record.text);
        std::sort(out.begin(), out.end());
        return out;
    };
    const auto settings = [](const Workbook &book) {
        return std::tie(book.formatMajor, book.required, book.title, book.uses, book.things, book.below,
                        book.belowSaid, book.si, book.unitsSaid, book.lists, book.sources, book.charts);
    };
    return settings(a) == settings(b) && a.sheets == b.sheets && texts(a) == texts(b);
}

std::optional<std::uint32_t> Workbook::sheetByKey(std::string_view key) const
{
    for (std::uint32_t s = 0; s < sheets.size(); ++s)
        if (sheets[s].key() == key)
            return s;
    return std::nullopt;
}

const Cell *Workbook::cell(const CellAt &at) const
{
    if (at.sheet >= sheets.size())
        return nullptr;
    const Sheet &sheet = sheets[at.sheet];
    if (at.column >= sheet.columnCount() || at.line >= sheet.lineCount())
        return nullptr;
    return &sheet.cell(at.column, at.line);
}

const ChoiceListText *Workbook::listByName(std::string_view name) const
{
    for (const ChoiceListText &list : lists)
        if (list.name == name)
            return &list;
    return nullptr;
}

const SourceMark *Workbook::sourceById(std::string_view id) const
{
    for (const SourceMark &source : sources)
        if (source.id == id)
            return &source;
    return nullptr;
}

} // namespace puteal
