/// A pump's curve read from two ranges, and what it gives at a flow.
#pragma once

#include <algorithm>
#include <vector>

#include "sdk/plugin.h"

namespace hydraulics
{

inline constexpr const char *curveWords[] = {"straight", "smooth", nullptr};
enum CurveShape : int { straight, smooth };

/// Lines of flow (gpm, rising) and head (ft, not rising), at a share of the speed they were drawn for.
class PumpCurve
{
public:
    PumpCurve(const puteal::sdk::Argument &flow, const puteal::sdk::Argument &head, double speed = 1.0)
        : m_flow(flow.begin(), flow.end()), m_head(head.begin(), head.end())
    {
        for (double &q : m_flow) // affinity laws: flow goes with the speed, head with its square
            q *= speed;
        for (double &h : m_head)
            h *= speed * speed;
        m_fault = check();
        if (!m_fault)
            setSlopes();
    }
    /// Why the lines are no curve, or nullptr.
    const char *fault() const { return m_fault; }
    bool isBlank() const
    {
        const auto blank = [](double x) { return std::isnan(x); };
        return std::all_of(m_flow.begin(), m_flow.end(), blank) ||
               std::all_of(m_head.begin(), m_head.end(), blank);
    }
    bool isCoarse() const { return m_flow.size() < 4; }
    double firstFlow() const { return m_flow.front(); }
    double lastFlow() const { return m_flow.back(); }
    bool reaches(double flow) const
    {
        return puteal::sdk::atMost(firstFlow(), flow) && puteal::sdk::atMost(flow, lastFlow());
    }

    double head(double flow, int shape) const
    {
        const auto above = std::upper_bound(m_flow.begin() + 1, m_flow.end() - 1, flow);
        const auto i = static_cast<std::size_t>(above - m_flow.begin()) - 1;
        const double width = m_flow[i + 1] - m_flow[i], t = (flow - m_flow[i]) / width;
        if (shape == straight)
            return m_head[i] + t * (m_head[i + 1] - m_head[i]);
        const double u = 1 - t; // cubic of Hermite
        return u * u * ((1 + 2 * t) * m_head[i] + t * width * m_slope[i]) +
               t * t * ((3 - 2 * t) * m_head[i + 1] - u * width * m_slope[i + 1]);
    }

private:
    const char *check() const
    {
        if (m_flow.size() != m_head.size())
            return "the two ranges of the pump curve must have the same lines";
        if (m_flow.size() < 2)
            return "a pump curve needs two lines at least, better four and more";
        for (std::size_t i = 0; i < m_flow.size(); ++i) {
            if (!std::isfinite(m_flow[i]) || !std::isfinite(m_head[i]))
                return "a line of the pump curve is blank: fill it or take it out of the range";
            if (i > 0 && !puteal::sdk::lessThan(m_flow[i - 1], m_flow[i]))
                return "the flows of the pump curve must rise from line to line";
            if (i > 0 && !puteal::sdk::atMost(m_head[i], m_head[i - 1]))
                return "the heads of the pump curve must fall from line to line";
        }
        return nullptr;
    }

    // Slopes that keep a falling curve falling: weighted harmonic means, a three-point rule at the ends
    // [Fritsch and Carlson 1980, and Butland's means: recalled, not confirmed].
    void setSlopes()
    {
        const std::size_t n = m_flow.size();
        std::vector<double> width(n - 1), rise(n - 1);
        for (std::size_t i = 0; i + 1 < n; ++i) {
            width[i] = m_flow[i + 1] - m_flow[i];
            rise[i] = (m_head[i + 1] - m_head[i]) / width[i];
        }
        m_slope.assign(n, rise.front());
        if (n == 2)
            return;
        for (std::size_t i = 1; i + 1 < n; ++i) {
            const double a = 2 * width[i] + width[i - 1], b = width[i] + 2 * width[i - 1];
            m_slope[i] = rise[i - 1] * rise[i] > 0 ? (a + b) / (a / rise[i - 1] + b / rise[i]) : 0.0;
        }
        m_slope.front() = endSlope(width[0], width[1], rise[0], rise[1]);
        m_slope.back() = endSlope(width[n - 2], width[n - 3], rise[n - 2], rise[n - 3]);
    }
    static double endSlope(double near, double far, double nearRise, double farRise)
    {
        const double slope = ((2 * near + far) * nearRise - near * farRise) / (near + far);
        if (slope * nearRise <= 0)
            return 0.0;
        return nearRise * farRise <= 0 && std::fabs(slope) > 3 * std::fabs(nearRise) ? 3 * nearRise : slope;
    }

    std::vector<double> m_flow, m_head, m_slope;
    const char *m_fault = nullptr;
};

} // namespace hydraulics
