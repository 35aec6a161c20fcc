/// Node numbers of cells: column by column, sheet by sheet, so that a range is a run of numbers.
#pragma once

#include <algorithm>
#include <vector>

#include "base/address.h"
#include "recalc/values.h"
#include "sheet/workbook.h"

namespace puteal
{

class Layout
{
public:
    void reset(const Workbook &workbook)
    {
        m_starts.clear();
        m_firstColumn.clear();
        m_sheetOf.clear();
        m_lines.clear();
        std::uint32_t next = 0;
        for (std::uint32_t s = 0; s < workbook.sheets.size(); ++s) {
            const Sheet &sheet = workbook.sheets[s];
            m_firstColumn.push_back(static_cast<std::uint32_t>(m_starts.size()));
            m_lines.push_back(sheet.lineCount());
            for (std::uint32_t c = 0; c < sheet.columnCount(); ++c) {
                m_starts.push_back(next);
                m_sheetOf.push_back(s);
                next += sheet.lineCount();
            }
        }
        m_firstColumn.push_back(static_cast<std::uint32_t>(m_starts.size()));
        m_cells = next;
    }
    std::uint32_t cells() const { return m_cells; }
    std::size_t columns() const { return m_starts.size(); }
    NodeId nodeOf(const CellAt &at) const
    {
        if (at.sheet >= m_lines.size() || at.line >= m_lines[at.sheet] ||
            m_firstColumn[at.sheet] + at.column >= m_firstColumn[at.sheet + 1])
            return noNode;
        return m_starts[m_firstColumn[at.sheet] + at.column] + at.line;
    }
    /// Number of the column among all columns of all sheets.
    std::uint32_t columnOf(NodeId cell) const
    {
        auto after = std::upper_bound(m_starts.begin(), m_starts.end(), cell);
        // Sheets without lines give columns that start where the next one does.
        return static_cast<std::uint32_t>(after - m_starts.begin()) - 1;
    }
    std::uint32_t startOf(std::uint32_t column) const { return m_starts[column]; }
    CellAt cellOf(NodeId cell) const
    {
        const std::uint32_t column = columnOf(cell);
        const std::uint32_t sheet = m_sheetOf[column];
        return {sheet, column - m_firstColumn[sheet], cell - m_starts[column]};
    }

private:
    std::vector<std::uint32_t> m_starts;      ///< first node of each column of all sheets
    std::vector<std::uint32_t> m_sheetOf;     ///< sheet of each column
    std::vector<std::uint32_t> m_firstColumn; ///< number of each sheet's first column
    std::vector<std::uint32_t> m_lines;       ///< by sheet
    std::uint32_t m_cells = 0;
};

} // namespace puteal
