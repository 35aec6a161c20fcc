/// The descriptions of the functions a registry knows, made one by one.
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "functions/signature.h"

namespace puteal
{

/// Room for the descriptions of all functions, one beside the other; each is made when it is first wanted, so
/// that a short program pays for what it names only.
class Descriptions
{
public:
    explicit Descriptions(std::size_t count)
        : m_first(std::allocator<FunctionInfo>().allocate(count)), m_made(count, false)
    {
    }
    Descriptions(const Descriptions &) = delete;
    Descriptions &operator=(const Descriptions &) = delete;
    ~Descriptions()
    {
        for (std::size_t i = 0; i < m_made.size(); ++i) {
            if (m_made[i])
                std::destroy_at(m_first + i);
        }
        std::allocator<FunctionInfo>().deallocate(m_first, m_made.size());
    }

    const FunctionInfo &at(std::size_t index) const { return m_first[index]; }
    bool made(std::size_t index) const { return m_made[index]; }
    void make(std::size_t index, FunctionInfo description)
    {
        std::construct_at(m_first + index, std::move(description));
        m_made[index] = true;
    }
    /// Once all are made.
    std::span<const FunctionInfo> all() const { return {m_first, m_made.size()}; }

private:
    FunctionInfo *m_first;
    std::vector<bool> m_made;
};

} // namespace puteal
