/// What running formulas may ask about cells of a model with its values.
#include "recalc/hosts.h"

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

} // namespace puteal
