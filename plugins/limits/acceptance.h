/// The findings of an acceptance, best first, and how several limits make one.
#pragma once

#include "limits.h"
#include "reading.h"

namespace limits
{

inline constexpr const char *acceptanceWords[] = {"below the public limit",
                                                  "near a limit",
                                                  "no limit",
                                                  "aesthetic limit exceeded",
                                                  "advisory exceeded",
                                                  "cannot tell",
                                                  "missing test",
                                                  "health limit exceeded",
                                                  nullptr};
enum Grade : int { under, close, unlimited, aestheticOver, advisoryOver, unclear, untested, healthOver };
constexpr Grade overGrade(Purpose purpose)
{
    return purpose == forAesthetics ? aestheticOver : purpose == forAdvice ? advisoryOver : healthOver;
}

/// The worst grade decides, and its words are the reason.
class Acceptance
{
public:
    void add(Grade grade, const std::string &words)
    {
        if (!m_words.empty() && grade == m_grade && m_words != words)
            m_words += "; " + words;
        else if (m_words.empty() || grade > m_grade)
            m_words = words;
        m_grade = grade > m_grade ? grade : m_grade;
    }
    /// A row that was held against the value.
    void uses(const Limit &row)
    {
        if (!m_recalled && row.value == recalled)
            m_recalled = &row;
    }
    int say(const Asked &what, int place, double date, puteal::sdk::Reply &reply)
    {
        if (m_words.empty())
            add(unlimited, "the table has no limit for " + nameOf(what) + " of " + placeWords[place] +
                               " on " + puteal::sdk::dateWords(date));
        return say(date, reply);
    }
    int say(double date, puteal::sdk::Reply &reply) const
    {
        laterCaution(date, reply);
        if (m_recalled)
            recalledCaution(*m_recalled, reply);
        reply.reason(m_words);
        return m_grade;
    }

private:
    Grade m_grade = under;
    std::string m_words;
    const Limit *m_recalled = nullptr;
};

} // namespace limits
