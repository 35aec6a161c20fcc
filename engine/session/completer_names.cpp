/// Names, columns, sheets and functions: those that begin with what was typed, then those its words tell of.
#include <algorithm>

#include "base/text.h"
#include "functions/search.h"
#include "session/completer.h"

namespace puteal
{

namespace
{

using Kind = Completion::Kind;
using Wants = TypingPlace::Wants;

constexpr std::size_t mostFound = 12; ///< functions found by words, beside those that begin so

std::string argumentsOf(const FunctionInfo &function)
{
    std::string out;
    for (const auto &parameter : function.parameters)
        out += (out.empty() ? "" : ", ") + argumentWords(parameter);
    return out;
}

struct Row {
    bool fits;
    std::string name;
    CellAt at;
};

void sortRows(std::vector<Row> &rows)
{
    std::sort(rows.begin(), rows.end(),
              [](const Row &a, const Row &b) { return a.fits != b.fits ? a.fits : a.name < b.name; });
}

} // namespace

std::string Completer::told(const CellAt &at) const
{
    const std::string label = m_session.labelOf(at), shown = m_session.view(at).shown;
    return shown.empty() ? label : label + "  " + shown;
}

/// Would the cell do for the argument that is being typed?
bool Completer::fits(const CellAt &at) const
{
    const StaticType type = m_session.view(at).type;
    if (!m_parameter || m_parameter->anyKind || type.kind != m_parameter->kind)
        return false;
    if (type.kind != ValueKind::quantity)
        return true;
    return m_parameter->pattern.variables.empty() &&
           type.quantity.dimension == m_parameter->pattern.unit.type.dimension;
}

void Completer::addNames(std::uint32_t s, const std::string &before)
{
    std::vector<Row> rows;
    for (const auto &[name, place] : m_workbook.sheets[s].names()) {
        const CellAt at{s, place.first, place.second};
        if (typed(name) && !(at == m_at))
            rows.push_back({fits(at), name, at});
    }
    sortRows(rows);
    for (const Row &row : rows)
        add(Kind::name, before + row.name, told(row.at));
}

void Completer::addColumns(std::uint32_t s)
{
    const Sheet &sheet = m_workbook.sheets[s];
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
        if (typed(sheet.column(c).key))
            add(Kind::column, sheet.column(c).key, "column: " + sheet.column(c).title);
}

/// After a point: what stands in that sheet.
void Completer::addOfSheet()
{
    const auto s = m_workbook.sheetByKey(m_place.sheet);
    if (!s)
        return;
    addNames(*s, "");
    addColumns(*s);
    addNamesFound(*s, "");
}

void Completer::addOperands()
{
    const auto sheets = static_cast<std::uint32_t>(m_workbook.sheets.size());
    if (m_place.wants == Wants::operand)
        addListedWords();
    addNames(m_at.sheet, "");
    addColumns(m_at.sheet);
    for (std::uint32_t s = 0; s < sheets; ++s)
        if (s != m_at.sheet && typed(m_workbook.sheets[s].key()))
            add(Kind::sheet, m_workbook.sheets[s].key() + ".", "sheet: " + m_workbook.sheets[s].title());
    for (std::uint32_t s = 0; s < sheets && searches(); ++s)
        if (s != m_at.sheet)
            addNames(s, m_workbook.sheets[s].key() + ".");
    addFunctions();
    addNamesFound(m_at.sheet, "");
    for (std::uint32_t s = 0; s < sheets; ++s)
        if (s != m_at.sheet)
            addNamesFound(s, m_workbook.sheets[s].key() + ".");
}

/// Cells in whose name or item a word begins so.
void Completer::addNamesFound(std::uint32_t s, const std::string &before)
{
    if (!searches())
        return;
    std::vector<Row> rows;
    for (const auto &[name, place] : m_workbook.sheets[s].names()) {
        const CellAt at{s, place.first, place.second};
        if (!(at == m_at) &&
            (hasWordBeginning(name, m_place.word) || hasWordBeginning(m_session.labelOf(at), m_place.word)))
            rows.push_back({fits(at), name, at});
    }
    sortRows(rows);
    for (const Row &row : rows)
        addFound(Kind::name, before + row.name, told(row.at));
}

void Completer::addFunctions()
{
    if (m_place.wants != Wants::operand)
        return;
    for (const FunctionInfo &function : registry().functions())
        if (typed(function.name))
            add(Kind::function, function.name, argumentsOf(function));
    if (!searches())
        return;
    const FunctionSearch search = searchFunctions(registry(), m_place.word);
    const std::size_t most = m_out.size() + mostFound;
    for (const FunctionInfo *function : search.found)
        if (search.everyWord && m_out.size() < most)
            addFound(Kind::function, function->name, function->title);
}

} // namespace puteal
