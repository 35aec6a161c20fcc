/// Interned words and sets of cautions.
#include <algorithm>

#include "recalc/values.h"

namespace puteal
{

WordsPool::WordsPool()
{
    intern({});
}

WordsPool::WordsPool(const WordsPool &other) : m_ids(other.m_ids), m_words(other.m_words.size())
{
    for (const auto &[words, id] : m_ids)
        m_words[id] = &words;
}

WordsPool &WordsPool::operator=(const WordsPool &other)
{
    if (this != &other)
        *this = WordsPool(other);
    return *this;
}

std::uint32_t WordsPool::intern(std::string_view words)
{
    const auto [at, isNew] =
        m_ids.try_emplace(std::string(words), static_cast<std::uint32_t>(m_words.size()));
    if (isNew)
        m_words.push_back(&at->first);
    return at->second;
}

std::optional<std::uint32_t> WordsPool::find(std::string_view words) const
{
    const auto at = m_ids.find(std::string(words));
    return at == m_ids.end() ? std::nullopt : std::optional(at->second);
}

CautionPool::CautionPool()
{
    set({});
}

std::uint32_t CautionPool::intern(const Caution &caution)
{
    std::string key = caution.key + '\n' + caution.words;
    if (caution.span)
        key += '\n' + std::to_string(caution.span->begin) + ' ' + std::to_string(caution.span->end);
    const auto [at, isNew] =
        m_cautionIds.try_emplace(std::move(key), static_cast<std::uint32_t>(m_cautions.size()));
    if (isNew)
        m_cautions.push_back(caution);
    return at->second;
}

std::uint32_t CautionPool::set(std::vector<std::uint32_t> ids)
{
    std::sort(ids.begin(), ids.end());
    ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
    const std::string key(reinterpret_cast<const char *>(ids.data()), ids.size() * sizeof(std::uint32_t));
    const auto [at, isNew] = m_setIds.try_emplace(key, static_cast<std::uint32_t>(m_sets.size()));
    if (isNew)
        m_sets.push_back(std::move(ids));
    return at->second;
}

std::uint32_t CautionPool::united(std::uint32_t a, std::uint32_t b)
{
    if (a == b || b == 0)
        return a;
    if (a == 0)
        return b;
    if (a > b)
        std::swap(a, b);
    const std::uint64_t key = (std::uint64_t{a} << 32U) | b;
    if (const auto known = m_unions.find(key); known != m_unions.end())
        return known->second;
    std::vector<std::uint32_t> both = m_sets[a];
    both.insert(both.end(), m_sets[b].begin(), m_sets[b].end());
    const std::uint32_t id = set(std::move(both));
    m_unions.emplace(key, id);
    return id;
}

} // namespace puteal
