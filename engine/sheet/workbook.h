/// The workbook as typed: sheets of titled columns and lines, lists, sources, charts. The only truth.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/address.h"
#include "base/result.h"
#include "sheet/cell.h"

namespace puteal {

/// Comments, blank and unknown records that stand before a record and move with it.
struct Kept {
    /// "" = before the `line` (or `sheet`) record, else the column key (cell, column), "stop" = before `stop`, "=" =
    /// before the sheet's end, "expect REF" = before that expectation; in Workbook::kept the first two words of the
    /// record ("source L1", "chart years"), "plot CHART REF" or "end workbook".
    std::string before;
    std::string text;   ///< the record verbatim
    friend bool operator==(const Kept &, const Kept &) = default;
};

struct Line {
    std::vector<Kept> kept;
    bool skipped = false; ///< while it has no record of its own it is counted in a `skip`, not written as `line`
    friend bool operator==(const Line &a, const Line &b) { return a.kept == b.kept; }
};

/// `expect NAME = 25 gpg within 1 %`
struct Expectation {
    std::string reference;
    std::string tail; ///< everything after " = ", as typed
    friend bool operator==(const Expectation &, const Expectation &) = default;
};

struct Plot {
    std::string reference;
    std::string title;
    std::string only; ///< `plot costs.air[:] "Air" only options.air_serves`: drawn when that cell says yes; "" = always
    friend bool operator==(const Plot &, const Plot &) = default;
};
enum class ChartKind : std::uint8_t { lines, bars, steps };
struct Chart {
    std::string key;
    ChartKind kind = ChartKind::lines;
    std::string title;
    std::string x; ///< reference text
    std::vector<Plot> plots;
    friend bool operator==(const Chart &, const Chart &) = default;
};

struct SourceMark {
    MarkId id;        ///< "L1"
    std::string kind; ///< mark word: "laboratory" ...
    std::string words;
    friend bool operator==(const SourceMark &, const SourceMark &) = default;
};

struct PluginUse {
    std::string id;
    std::uint32_t major = 1;
    friend bool operator==(const PluginUse &, const PluginUse &) = default;
};

struct ChoiceListText {
    std::string name;
    std::vector<std::string> words;
    friend bool operator==(const ChoiceListText &, const ChoiceListText &) = default;
};

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
    const std::unordered_map<std::string, std::pair<std::uint32_t, std::uint32_t>> &names() const { return m_names; }

    /// All lines at once (file reader): one vector of cells a column, each as long as `lines`.
    void load(std::vector<std::vector<Cell>> cells, std::vector<Line> lines);

    std::vector<Expectation> expectations;
    std::vector<Kept> keptAtEnd;    ///< before `end`
    std::vector<Kept> keptAtHead;   ///< before `sheet`, or before a column (before = its key)

    /// The words of the line: text of the nearest filled words column left of `c`, else of the first filled one; "" if
    /// the line has none.
    const std::string &itemWords(std::uint32_t c, std::uint32_t l) const;

    friend bool operator==(const Sheet &, const Sheet &);

private:
    std::string m_key, m_title;
    std::vector<Column> m_columns;
    std::vector<std::vector<Cell>> m_cells; ///< [column][line]
    std::vector<Line> m_lines;
    std::uint32_t m_lineCount = 0;
    std::unordered_map<std::string, std::pair<std::uint32_t, std::uint32_t>> m_names; ///< name -> column, line
};

enum class BelowRule : std::uint8_t { bound, half, zero };

struct Workbook {
    std::uint32_t formatMajor = 1;
    std::vector<std::string> required; ///< words after !require
    std::string title;
    std::vector<PluginUse> uses;
    std::vector<std::string> things;
    BelowRule below = BelowRule::bound;
    bool belowSaid = false; ///< the record stood in the file
    bool si = false;        ///< units SI
    bool unitsSaid = false;
    std::vector<ChoiceListText> lists;
    std::vector<SourceMark> sources;
    std::vector<Sheet> sheets;
    std::vector<Chart> charts;
    std::vector<Kept> kept; ///< before a workbook record (before = its first two words), or "end workbook"

    std::optional<std::uint32_t> sheetByKey(std::string_view key) const;
    const Cell *cell(const CellAt &at) const; ///< null outside
    const ChoiceListText *listByName(std::string_view name) const;
    const SourceMark *sourceById(std::string_view id) const;
    friend bool operator==(const Workbook &, const Workbook &) = default;
};

/// Mark words by letter: L laboratory, F field_kit, M measured, D driller, S standard, H handbook, E equipment, P price,
/// T trade, R recalled, C customer, A assumed, W worked. Empty for an unknown letter.
std::string_view markWord(char letter);
/// The same for people: "field kit", "equipment data sheet".
std::string_view markTitle(char letter);
/// A letter with a mark word and at most three digits: "L", "L1".
bool isMarkId(std::string_view id);

/// Is this word a good cell name here? Error says why not: no name, unit word is checked by the caller through
/// `isUnitWord`, a column key of the sheet, a reserved word, taken in the sheet.
Result<void> checkName(const Sheet &sheet, std::string_view name, bool isUnitWord, std::optional<CellAt> self = {});

/// Is this a good column key: a letter or a word, not reserved, no other column's key, no name in the sheet?
Result<void> checkColumnKey(const Sheet &sheet, std::string_view key, std::optional<std::uint32_t> self = {});

/// Default keys of new columns: letters that are no unit words, in order.
std::string freeColumnKey(const Sheet &sheet);

} // namespace puteal
