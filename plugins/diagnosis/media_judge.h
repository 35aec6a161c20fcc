/// A water held against every limit of a medium: the questions, and the verdicts with their words.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "media.h"

namespace diagnosis
{

using puteal::sdk::Argument;
using puteal::sdk::Verdict;

/// Everything asked about the water, in the order of the arguments.
struct Water {
    const Argument &form, &ph, &iron, &manganese, &sulfide, &oxygen, &chlorine, &tannin, &feed;
    double near, nearPh;
};

/// All verdicts with their words; the worst grade decides and its words are the reason.
class Findings
{
public:
    void add(Verdict grade, std::string words, bool habit = false)
    {
        m_all.push_back({grade, std::move(words), habit});
        m_worst = std::max(m_worst, grade);
    }
    Verdict worst() const { return m_worst; }
    bool restOnHabit() const
    {
        return std::any_of(m_all.begin(), m_all.end(),
                           [&](const Finding &f) { return f.grade == m_worst && f.habit; });
    }
    std::string words() const
    {
        std::string out;
        for (const Finding &f : m_all)
            if (f.grade == m_worst)
                out += (out.empty() ? "" : "; ") + f.words;
        return out;
    }

private:
    struct Finding {
        Verdict grade;
        std::string words;
        bool habit;
    };
    std::vector<Finding> m_all;
    Verdict m_worst = puteal::sdk::works;
};

/// Judges every limit of the medium.
void judgeMedium(int medium, const Water &water, Findings &found);

} // namespace diagnosis
