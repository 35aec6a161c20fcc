/// Interned lists of choices.
#include <algorithm>

#include "units/value.h"

namespace puteal
{

std::uint32_t ChoiceLists::intern(const std::vector<std::string> &words)
{
    if (words.empty())
        return 0;
    const auto at = std::find(m_lists.begin(), m_lists.end(), words);
    if (at != m_lists.end())
        return static_cast<std::uint32_t>(at - m_lists.begin());
    m_lists.push_back(words);
    return static_cast<std::uint32_t>(m_lists.size() - 1);
}

std::optional<std::uint32_t> ChoiceLists::indexOf(std::uint32_t id, std::string_view word) const
{
    const auto &words = m_lists[id];
    const auto at = std::find(words.begin(), words.end(), word);
    if (at == words.end())
        return {};
    return static_cast<std::uint32_t>(at - words.begin());
}

} // namespace puteal
