/// A sheet's columns, lines and cells, and the index of its names.
#include "sheet/sheet.h"

#include <algorithm>
#include <iterator>

#include "sheet/workbook.h"

namespace puteal
{

namespace
{

template<class T>
void eraseRange(std::vector<T> &items, std::uint32_t at, std::uint32_t count)
{
    const auto first = items.begin() + at;
    items.erase(first, first + count);
}

template<class T>
void insertDefault(std::vector<T> &items, std::uint32_t at, std::uint32_t count, const T &value)
{
    items.insert(items.begin() + at, count, value);
}

/// Moves `count` items from `from` so that they stand before the item now at `to`.
template<class T>
void moveItems(std::vector<T> &items, std::uint32_t from, std::uint32_t count, std::uint32_t to)
{
    const auto begin = items.begin();
    if (to < from)
        std::rotate(begin + to, begin + from, begin + from + count);
    else
        std::rotate(begin + from, begin + from + count, begin + to);
}

/// The kept records of deleted lines, all now in front of what follows.
std::vector<Kept> loosened(const std::vector<Line> &lines, std::uint32_t at, std::uint32_t count,
                           const std::string &before)
{
    std::vector<Kept> out;
    for (std::uint32_t l = at; l < at + count; ++l)
        for (const Kept &kept : lines[l].kept)
            out.push_back({before, kept.text});
    return out;
}

} // namespace

std::optional<std::uint32_t> Sheet::columnByKey(std::string_view key) const
{
    for (std::uint32_t c = 0; c < m_columns.size(); ++c)
        if (m_columns[c].key == key)
            return c;
    return std::nullopt;
}

void Sheet::setCell(std::uint32_t c, std::uint32_t l, Cell cell)
{
    Cell &old = m_cells[c][l];
    if (old.attributes && !old.attributes->name.empty()) {
        const auto found = m_names.find(old.attributes->name);
        if (found != m_names.end() && found->second == std::pair(c, l))
            m_names.erase(found);
    }
    if (cell.attributes && !cell.attributes->name.empty())
        m_names[cell.attributes->name] = {c, l};
    if (cell.attributes && cell.attributes->empty())
        cell.attributes.reset();
    if (cell.text && cell.text->empty())
        cell.text.reset();
    old = std::move(cell);
}

void Sheet::insertLines(std::uint32_t at, std::uint32_t count)
{
    at = std::min(at, m_lineCount);
    Line fresh;
    fresh.skipped =
        at == m_lineCount; // lines put between others get a record of their own: branches then merge
    insertDefault(m_lines, at, count, fresh);
    for (auto &column : m_cells)
        insertDefault(column, at, count, Cell{});
    for (auto &[name, place] : m_names)
        if (place.second >= at)
            place.second += count;
    m_lineCount += count;
}

void Sheet::deleteLines(std::uint32_t at, std::uint32_t count)
{
    if (at >= m_lineCount)
        return;
    count = std::min(count, m_lineCount - at);
    const bool atEnd = at + count == m_lineCount;
    auto stay = loosened(m_lines, at, count, atEnd ? "=" : "");
    if (!stay.empty()) {
        auto &next = atEnd ? keptAtEnd : m_lines[at + count].kept;
        next.insert(next.begin(), std::make_move_iterator(stay.begin()), std::make_move_iterator(stay.end()));
    }
    eraseRange(m_lines, at, count);
    for (auto &column : m_cells)
        eraseRange(column, at, count);
    for (auto it = m_names.begin(); it != m_names.end();) {
        std::uint32_t &line = it->second.second;
        if (line >= at && line < at + count) {
            it = m_names.erase(it);
            continue;
        }
        if (line >= at + count)
            line -= count;
        ++it;
    }
    m_lineCount -= count;
}

void Sheet::moveLines(std::uint32_t from, std::uint32_t count, std::uint32_t to)
{
    if (from >= m_lineCount || to > m_lineCount)
        return;
    count = std::min(count, m_lineCount - from);
    if (to >= from && to <= from + count)
        return;
    moveItems(m_lines, from, count, to);
    for (auto &column : m_cells)
        moveItems(column, from, count, to);
    for (auto &[name, place] : m_names) {
        std::uint32_t &line = place.second;
        if (line >= from && line < from + count)
            line = to < from ? to + (line - from) : to - count + (line - from);
        else if (to < from && line >= to && line < from)
            line += count;
        else if (to > from && line >= from + count && line < to)
            line -= count;
    }
}

void Sheet::insertColumn(std::uint32_t at, Column column)
{
    at = std::min(at, columnCount());
    m_columns.insert(m_columns.begin() + at, std::move(column));
    m_cells.insert(m_cells.begin() + at, std::vector<Cell>(m_lineCount));
    for (auto &[name, place] : m_names)
        if (place.first >= at)
            ++place.first;
}

void Sheet::deleteColumn(std::uint32_t at)
{
    if (at >= columnCount())
        return;
    m_columns.erase(m_columns.begin() + at);
    m_cells.erase(m_cells.begin() + at);
    for (auto it = m_names.begin(); it != m_names.end();) {
        if (it->second.first == at) {
            it = m_names.erase(it);
            continue;
        }
        if (it->second.first > at)
            --it->second.first;
        ++it;
    }
}

void Sheet::load(std::vector<std::vector<Cell>> cells, std::vector<Line> lines)
{
    m_cells = std::move(cells);
    m_lines = std::move(lines);
    m_lineCount = static_cast<std::uint32_t>(m_lines.size());
    m_names.clear();
    for (std::uint32_t c = 0; c < m_cells.size(); ++c)
        for (std::uint32_t l = 0; l < m_lineCount; ++l)
            if (const auto &beside = m_cells[c][l].attributes; beside && !beside->name.empty())
                m_names[beside->name] = {c, l};
}

std::optional<CellAt> Sheet::named(std::string_view name, std::uint32_t sheetIndex) const
{
    const auto found = m_names.find(std::string(name));
    if (found == m_names.end())
        return std::nullopt;
    return CellAt{sheetIndex, found->second.first, found->second.second};
}

Attributes Sheet::effective(std::uint32_t c, std::uint32_t l) const
{
    Attributes out = m_cells[c][l].beside();
    const Attributes &column = m_columns[c].attributes;
    const bool choice = !out.list.empty() || !out.choices.empty();
    if (out.unit.empty() && !choice)
        out.unit = column.unit;
    if (!choice && m_cells[c][l].beside().unit.empty() && !out.limit && out.tolerance.empty()) {
        out.list = column.list;
        out.choices = column.choices;
    }
    if (out.figures == 0 && out.places < 0) {
        out.figures = column.figures;
        out.places = column.places;
    }
    if (out.sources.empty())
        out.sources = column.sources;
    return out;
}

const std::string &Sheet::itemWords(std::uint32_t c, std::uint32_t l) const
{
    for (std::uint32_t left = std::min(c, columnCount()); left-- > 0;)
        if (m_columns[left].kind == ColumnKind::words && !m_cells[left][l].blank())
            return m_cells[left][l].typed();
    for (std::uint32_t any = 0; any < columnCount(); ++any)
        if (any != c && m_columns[any].kind == ColumnKind::words && !m_cells[any][l].blank())
            return m_cells[any][l].typed();
    return Cell{}.typed();
}

std::vector<std::string_view> Sheet::keptTexts() const
{
    std::vector<std::string_view> texts;
    const auto take = [&](const std::vector<Kept> &kept) {
        for (const Kept &record : kept)
            texts.push_back(record.text);
    };
    take(keptAtHead);
    for (const Line &each : m_lines)
        take(each.kept);
    take(keptAtEnd);
    std::sort(texts.begin(), texts.end());
    return texts;
}

bool operator==(const Sheet &a, const Sheet &b)
{
    return a.m_key == b.m_key && a.m_title == b.m_title && a.m_columns == b.m_columns &&
           a.m_lineCount == b.m_lineCount && a.expectations == b.expectations && a.m_cells == b.m_cells &&
           a.keptTexts() == b.keptTexts();
}

} // namespace puteal
