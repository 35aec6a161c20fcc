/// An open table with linear search; words are never taken out.
#include "base/word_index.h"

namespace puteal
{
namespace
{

constexpr std::size_t fewestPlaces = 16;

/// Fowler, Noll and Vo's hash (1a, 64 bits), with its upper half folded in; recalled constants.
std::size_t hashOf(std::string_view word)
{
    std::uint64_t hash = 14695981039346656037ULL;
    for (const char c : word)
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
    return static_cast<std::size_t>(hash ^ (hash >> 32));
}

} // namespace

WordIndex::WordIndex(std::size_t most)
{
    m_words.reserve(most);
    grow(most);
}

/// Where the word stands or could stand; there is always a free place.
std::size_t WordIndex::placeOf(std::string_view word) const
{
    const std::size_t mask = m_places.size() - 1;
    std::size_t place = hashOf(word) & mask;
    while (m_places[place] != 0 && m_words[m_places[place] - 1] != word)
        place = (place + 1) & mask;
    return place;
}

void WordIndex::grow(std::size_t most)
{
    std::size_t places = fewestPlaces;
    while (places < 2 * most)
        places *= 2;
    m_places.assign(places, 0);
    for (std::size_t i = 0; i < m_words.size(); ++i)
        m_places[placeOf(m_words[i])] = static_cast<std::uint32_t>(i + 1);
}

bool WordIndex::add(std::string_view word)
{
    if (2 * (m_words.size() + 1) > m_places.size())
        grow(2 * (m_words.size() + 1));
    auto &place = m_places[placeOf(word)];
    if (place != 0)
        return false;
    m_words.push_back(word);
    place = static_cast<std::uint32_t>(m_words.size());
    return true;
}

std::optional<std::size_t> WordIndex::find(std::string_view word) const
{
    const auto place = m_places[placeOf(word)];
    return place == 0 ? std::nullopt : std::optional<std::size_t>(place - 1);
}

} // namespace puteal
