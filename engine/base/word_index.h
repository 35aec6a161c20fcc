/// Finds words of a list by one flat table: no piece of memory and no comparison of the whole list a word.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace puteal
{

/// Words in the order they were added; whoever adds one keeps its letters where they are.
class WordIndex
{
public:
    /// With room for so many words.
    explicit WordIndex(std::size_t most = 0);

    /// False, and nothing changes, where the word is there already.
    bool add(std::string_view word);
    /// Its position in `words`.
    std::optional<std::size_t> find(std::string_view word) const;
    const std::vector<std::string_view> &words() const { return m_words; }

private:
    std::size_t placeOf(std::string_view word) const;
    void grow(std::size_t most);

    std::vector<std::string_view> m_words;
    /// Twice as many places as words or more, a power of two; 1 + position of a word, 0 = free.
    std::vector<std::uint32_t> m_places;
};

} // namespace puteal
