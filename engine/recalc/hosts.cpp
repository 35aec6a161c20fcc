/// What running formulas may ask about cells of a model with its values.
#include "recalc/hosts.h"

#include <algorithm>

namespace puteal
{

ShownFacts ModelHost::shownFacts(std::uint32_t node) const
{
    const CellType &type = m_model.typeOf(node);
    ShownFacts facts{type.type, type.shown, 0, -1};
    if (!m_model.isCell(node))
        return facts;
    const CellAt at = m_model.layout.cellOf(node);
    const Sheet &sheet = m_model.book.sheets[at.sheet];
    for (const Attributes *beside :
         {&sheet.cell(at.column, at.line).beside(), &sheet.column(at.column).attributes})
        if (facts.figures == 0 && facts.places < 0) {
            facts.figures = beside->figures;
            facts.places = beside->places;
        }
    return facts;
}

std::string ModelHost::label(std::uint32_t node) const
{
    if (m_model.isCell(node)) {
        const CellAt at = m_model.layout.cellOf(node);
        const std::string &words = m_model.book.sheets[at.sheet].itemWords(at.column, at.line);
        if (!words.empty())
            return words;
    }
    return cellWords(node);
}

std::uint32_t LookingHost::intern(std::string_view words)
{
    if (const auto known = m_values.words.find(words))
        return *known;
    const auto own = std::find(m_own.begin(), m_own.end(), words);
    const auto at = static_cast<std::size_t>(own - m_own.begin());
    if (own == m_own.end())
        m_own.emplace_back(words);
    return static_cast<std::uint32_t>(m_values.words.size() + at);
}

} // namespace puteal
