/// Results beside the sheet: one double a node, the rest in arrays and pools beside it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/result.h"

namespace puteal
{

using NodeId = std::uint32_t; ///< a cell or a hidden formula (limit, state, expectation) of a Program
inline constexpr NodeId noNode = 0xFFFFFFFFU;

/// Interned words: equal words have equal ids; 0 is "".
class WordsPool
{
public:
    WordsPool();
    WordsPool(const WordsPool &other);
    WordsPool &operator=(const WordsPool &other);
    WordsPool(WordsPool &&) noexcept = default;
    WordsPool &operator=(WordsPool &&) noexcept = default;
    ~WordsPool() = default;
    std::uint32_t intern(std::string_view words);
    std::optional<std::uint32_t> find(std::string_view words) const;
    const std::string &words(std::uint32_t id) const { return *m_words[id]; }
    std::size_t size() const { return m_words.size(); }

private:
    std::unordered_map<std::string, std::uint32_t> m_ids;
    std::vector<const std::string *> m_words;
};

/// Interned sets of cautions: 0 is the empty set.
class CautionPool
{
public:
    CautionPool();
    std::uint32_t intern(const Caution &caution);      ///< id of one caution
    std::uint32_t set(std::vector<std::uint32_t> ids); ///< sorted, unique
    std::uint32_t united(std::uint32_t a, std::uint32_t b);
    const std::vector<std::uint32_t> &members(std::uint32_t set) const { return m_sets[set]; }
    const Caution &caution(std::uint32_t id) const { return m_cautions[id]; }

private:
    std::vector<Caution> m_cautions;
    std::vector<std::vector<std::uint32_t>> m_sets;
    std::unordered_map<std::string, std::uint32_t> m_cautionIds, m_setIds;
    std::unordered_map<std::uint64_t, std::uint32_t> m_unions;
};

/// One evaluation's results. number is NaN where status is not none.
struct Values {
    std::vector<double> number;
    std::vector<std::uint8_t> marked;         ///< 1: some of the next four stand beside the number
    std::vector<ErrorKind> status;            ///< per node
    std::vector<std::uint32_t> cautions;      ///< set id: own and inherited
    std::vector<std::uint32_t> ownCautions;   ///< set id: arisen here
    std::vector<std::uint32_t> reason;        ///< words id, 0 = none
    std::unordered_map<NodeId, Error> errors; ///< full error of nodes whose error arose at run time
    WordsPool words;
    CautionPool pool;
};

} // namespace puteal
