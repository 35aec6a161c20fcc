/// One sheet: titled columns and lines of cells, the names in it, the comments between its records.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/address.h"
#include "sheet/records.h"

namespace puteal
{

/// One sheet: columns by key, cells column by column.
class Sheet
{
public:
    Sheet(std::string key, std::string title) : m_key(std::move(key)), m_title(std::move(title)) {}

    const std::string &key() const { return m_key; }
    const std::string &title() const { return m_title; }
    void setKey(std::string key) { m_key = std::move(key); }
    void setTitle(std::string title) { m_title = std::move(title); }

    std::uint32_t columnCount() const { return static_cast<std::uint32_t>(m_columns.size()); }
    std::uint32_t lineCount() const { return m_lineCount; }
    const Column &column(std::uint32_t c) const { return m_columns[c]; }
    Column &column(std::uint32_t c) { return m_columns[c]; }
    std::optional<std::uint32_t> columnByKey(std::string_view key) const;
    const Cell &cell(std::uint32_t c, std::uint32_t l) const { return m_cells[c][l]; }
    /// The cell's attributes with the column's filled in where the cell has none.
    Attributes effective(std::uint32_t c, std::uint32_t l) const;
    const Line &line(std::uint32_t l) const { return m_lines[l]; }
    Line &line(std::uint32_t l) { return m_lines[l]; }

    /// Replaces a cell; keeps the name index.
    void setCell(std::uint32_t c, std::uint32_t l, Cell cell);
    void insertLines(std::uint32_t at, std::uint32_t count);
    /// Comments of deleted lines stay: they belong to the line that follows, or to the sheet's end.
    void deleteLines(std::uint32_t at, std::uint32_t count);
    /// Moves `count` lines from `from` so that they stand before the line that is now at `to`.
    void moveLines(std::uint32_t from, std::uint32_t count, std::uint32_t to);
    void insertColumn(std::uint32_t at, Column column);
    void deleteColumn(std::uint32_t at);

    /// The cell with a name, if any. (A name is unique in its sheet.)
    std::optional<CellAt> named(std::string_view name, std::uint32_t sheetIndex) const;
    const std::unordered_map<std::string, std::pair<std::uint32_t, std::uint32_t>> &names() const
    {
        return m_names;
    }

    /// All lines at once (file reader): one vector of cells a column, each as long as `lines`.
    void load(std::vector<std::vector<Cell>> cells, std::vector<Line> lines);

    std::vector<Expectation> expectations;
    std::vector<Kept> keptAtEnd;  ///< before `end`
    std::vector<Kept> keptAtHead; ///< before `sheet`, or before a column (before = its key)

    /// The words of the line: text of the nearest filled words column left of `c`, else of the first filled
    /// one; "" if the line has none.
    const std::string &itemWords(std::uint32_t c, std::uint32_t l) const;

    /// All comments and other kept records of the sheet, sorted.
    std::vector<std::string_view> keptTexts() const;

    /// Equal sheets hold the same kept records; before which record one stands is no difference: a comment
    /// whose cell was cleared belongs to the next record once it is written.
    friend bool operator==(const Sheet &, const Sheet &);

private:
    std::string m_key, m_title;
    std::vector<Column> m_columns;
    std::vector<std::vector<Cell>> m_cells; ///< [column][line]
    std::vector<Line> m_lines;
    std::uint32_t m_lineCount = 0;
    std::unordered_map<std::string, std::pair<std::uint32_t, std::uint32_t>>
        m_names; ///< name -> column, line
};

} // namespace puteal
