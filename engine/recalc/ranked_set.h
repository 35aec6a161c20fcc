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
    void insert(std::uint32_t rank)
    {
        std::size_t i = rank;
        for (auto &level : m_levels) {
            const std::uint64_t bit = 1ULL << (i & 63U);
            std::uint64_t &word = level[i >> 6U];
            const bool had = word != 0;
            word |= bit;
            if (had)
                return;
            i >>= 6U;
        }
    }
    bool empty() const { return m_levels.back().empty() || m_levels.back()[0] == 0; }
    /// Takes the least rank out. Only when not empty.
    std::uint32_t takeFirst()
    {
        std::size_t i = 0;
        for (std::size_t level = m_levels.size(); level-- > 0;)
            i = (i << 6U) | static_cast<std::size_t>(std::countr_zero(m_levels[level][i]));
        erase(i);
        return static_cast<std::uint32_t>(i);
    }

private:
    void erase(std::size_t i)
    {
        for (auto &level : m_levels) {
            std::uint64_t &word = level[i >> 6U];
            word &= ~(1ULL << (i & 63U));
            if (word != 0)
                return;
            i >>= 6U;
        }
    }
    std::vector<std::vector<std::uint64_t>> m_levels;
};

} // namespace puteal
