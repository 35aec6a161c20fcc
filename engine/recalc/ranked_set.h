/// A set of ranks taken out in ascending order: marking, testing and taking cost a few word operations at any
/// size.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace puteal
{

/// Bits in levels of 64: a set bit above says that some bit below is set.
class RankedSet
{
public:
    explicit RankedSet(std::size_t size = 0) { reserve(size); }
    /// Room for ranks below `size`. Only while empty; never shrinks, so that a set can be used again and
    /// again.
    void reserve(std::size_t size)
    {
        if (!m_levels.empty() && size <= m_levels.front().size() * 64)
            return;
        m_levels.clear();
        do {
            size = (size + 63) / 64;
            m_levels.emplace_back(size, 0);
        } while (size > 1);
    }
    void insert(std::uint32_t rank) { insertAscending(&rank, &rank + 1); }
    /// Ranks in ascending order, as the readers of one cell are: a word at a time.
    void insertAscending(const std::uint32_t *rank, const std::uint32_t *end)
    {
        std::vector<std::uint64_t> &words = m_levels.front();
        while (rank != end) {
            const std::uint32_t at = *rank >> 6U;
            std::uint64_t bits = 0;
            do
                bits |= 1ULL << (*rank & 63U);
            while (++rank != end && *rank >> 6U == at);
            const bool had = words[at] != 0;
            words[at] |= bits;
            if (!had)
                insertAbove(at);
        }
    }
    bool empty() const { return m_levels.back().empty() || m_levels.back()[0] == 0; }
    /// Takes every rank out in ascending order and calls take(rank), which may insert greater ones.
    template<class Take>
    void takeEach(Take take)
    {
        while (!empty()) {
            std::size_t at = 0;
            for (std::size_t level = m_levels.size(); --level > 0;)
                at = (at << 6U) | static_cast<std::size_t>(std::countr_zero(m_levels[level][at]));
            for (std::uint64_t &word = m_levels[0][at]; word != 0;) {
                const auto bit = static_cast<std::uint32_t>(std::countr_zero(word));
                word &= word - 1;
                take(static_cast<std::uint32_t>(at << 6U) | bit);
            }
            eraseAbove(at);
        }
    }

private:
    /// The word at this place of the lowest level is no longer empty, or is empty now: the levels above say
    /// so.
    void insertAbove(std::size_t at)
    {
        for (std::size_t level = 1; level < m_levels.size(); ++level) {
            std::uint64_t &word = m_levels[level][at >> 6U];
            const bool had = word != 0;
            word |= 1ULL << (at & 63U);
            if (had)
                return;
            at >>= 6U;
        }
    }
    void eraseAbove(std::size_t at)
    {
        for (std::size_t level = 1; level < m_levels.size(); ++level) {
            std::uint64_t &word = m_levels[level][at >> 6U];
            word &= ~(1ULL << (at & 63U));
            if (word != 0)
                return;
            at >>= 6U;
        }
    }
    std::vector<std::vector<std::uint64_t>> m_levels;
};

} // namespace puteal
