/// Distinct cell types.
#include "recalc/model.h"

namespace puteal
{

TypeTable::TypeTable()
{
    CellType type;
    m_types.push_back(std::make_shared<const CellType>(type));
    type.failed = true;
    m_types.push_back(std::make_shared<const CellType>(type));
    type.circular = true;
    m_types.push_back(std::make_shared<const CellType>(type));
}

TypeId TypeTable::intern(const CellType &type)
{
    std::vector<TypeId> &alike = m_ids[type.shown.text];
    for (const TypeId id : alike) {
        const CellType &known = *m_types[id];
        if (known.type == type.type && known.shown == type.shown && known.failed == type.failed)
            return id;
    }
    const auto id = static_cast<TypeId>(m_types.size());
    m_types.push_back(std::make_shared<const CellType>(type));
    alike.push_back(id);
    return id;
}

} // namespace puteal
