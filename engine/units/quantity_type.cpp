/// Exponents of dimensions and labels add, subtract and scale.
#include "units/quantity_type.h"

#include <algorithm>

namespace puteal
{

namespace
{

bool fits(int sixths)
{
    return sixths >= -126 && sixths <= 126;
}

QuantityType combined(const QuantityType &a, const QuantityType &b, int sign)
{
    QuantityType result = a;
    result.scale = Scale::plain;
    for (std::size_t i = 0; i < baseCount; ++i)
        result.dimension.sixths[i] = static_cast<std::int8_t>(
            std::clamp(a.dimension.sixths[i] + sign * b.dimension.sixths[i], -127, 127));
    for (const auto &[id, sixths] : b.things.items())
        result.things.add(id, sign * sixths);
    for (const auto &[id, sixths] : b.substances.items())
        result.substances.add(id, sign * sixths);
    return result;
}

/// n/d times the exponent when that is whole and in range.
bool scaled(int sixths, int numerator, int denominator, int &out)
{
    const int product = sixths * numerator;
    if (product % denominator != 0)
        return false;
    out = product / denominator;
    return fits(out);
}

bool raiseLabels(const Labels &a, int numerator, int denominator, Labels &out)
{
    for (const auto &[id, sixths] : a.items()) {
        int value = 0;
        if (!scaled(sixths, numerator, denominator, value))
            return false;
        out.add(id, value);
    }
    return true;
}

} // namespace

std::int8_t Labels::sixths(std::uint16_t id) const
{
    for (const auto &[other, sixths] : m_items)
        if (other == id)
            return sixths;
    return 0;
}

void Labels::add(std::uint16_t id, int sixths)
{
    auto at = std::lower_bound(m_items.begin(), m_items.end(), id,
                               [](const auto &item, std::uint16_t x) { return item.first < x; });
    const bool found = at != m_items.end() && at->first == id;
    const int sum = std::clamp((found ? at->second : 0) + sixths, -127, 127);
    if (sum == 0) {
        if (found)
            m_items.erase(at);
    } else if (found) {
        at->second = static_cast<std::int8_t>(sum);
    } else {
        m_items.insert(at, {id, static_cast<std::int8_t>(sum)});
    }
}

int Labels::sum() const
{
    int total = 0;
    for (const auto &item : m_items)
        total += item.second;
    return total;
}

QuantityType product(const QuantityType &a, const QuantityType &b)
{
    return combined(a, b, 1);
}

QuantityType quotient(const QuantityType &a, const QuantityType &b)
{
    return combined(a, b, -1);
}

bool raise(const QuantityType &a, int numerator, int denominator, QuantityType &out)
{
    QuantityType result;
    if (denominator == 0)
        return false;
    for (std::size_t i = 0; i < baseCount; ++i) {
        int value = 0;
        if (!scaled(a.dimension.sixths[i], numerator, denominator, value))
            return false;
        result.dimension.sixths[i] = static_cast<std::int8_t>(value);
    }
    if (!raiseLabels(a.things, numerator, denominator, result.things) ||
        !raiseLabels(a.substances, numerator, denominator, result.substances))
        return false;
    out = result;
    return true;
}

} // namespace puteal
