/// What running formulas may ask about cells of a model with its values.
#pragma once

#include <deque>

#include "compile/frame.h"
#include "recalc/model.h"

namespace puteal
{

/// Reads a model and values; where new words go is up to the two kinds below.
class ModelHost : public EvalHost
{
public:
    ModelHost(const Model &model, const Values &values) : m_model(model), m_values(values) {}
    std::uint32_t reasonOf(std::uint32_t node) const override { return m_values.reason[node]; }
    ShownFacts shownFacts(std::uint32_t node) const override;
    std::string label(std::uint32_t node) const override;
    std::string cellWords(std::uint32_t node) const override
    {
        return puteal::cellWords(m_model, node, m_sheet);
    }
    const ChoiceLists &lists() const override { return m_model.lists; }
    double dayInBase() const override { return m_model.day; }
    /// Cells of other sheets than this one are called with their sheet.
    void seenFrom(std::uint32_t sheet) { m_sheet = sheet; }

protected:
    const Model &m_model;
    const Values &m_values;
    std::uint32_t m_sheet = 0;
};

/// New words go into the values.
class EvaluatingHost : public ModelHost
{
public:
    EvaluatingHost(const Model &model, Values &values) : ModelHost(model, values), m_pool(values.words) {}
    std::uint32_t intern(std::string_view words) override { return m_pool.intern(words); }
    const std::string &words(std::uint32_t id) const override { return m_pool.words(id); }

private:
    WordsPool &m_pool;
};

/// Values stay as they are: new words live as long as the host.
class LookingHost : public ModelHost
{
public:
    using ModelHost::ModelHost;
    std::uint32_t intern(std::string_view words) override; ///< equal words get equal ids, as in the values
    const std::string &words(std::uint32_t id) const override
    {
        const std::size_t known = m_values.words.size();
        return id < known ? m_values.words.words(id) : m_own[id - known];
    }

private:
    std::deque<std::string> m_own;
};

} // namespace puteal
