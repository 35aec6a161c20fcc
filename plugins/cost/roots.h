/// Rates at which sums of money at stated times balance.
#pragma once

#include <vector>

namespace cost
{

/// A sum of money at a time in years; out is negative.
struct Flow {
    double time, sum;
};

/// A rate at which the present value is nothing.
struct BalancingRate {
    double rate;
    bool crosses; ///< false: the present value only touches nothing there
};

inline constexpr double lowestBalance = -0.99, highestBalance = 10.0;

/// By rising time, sums of one time added, the greatest scaled to 1, zeros dropped.
std::vector<Flow> ordered(std::vector<Flow> flows);

/// How often the sign turns from sum to sum: by the rule of signs there are at most so many rates.
int signChanges(const std::vector<Flow> &flows);

/// Every rate from the lowest to the highest at which ordered flows balance, rising.
std::vector<BalancingRate> balancingRates(const std::vector<Flow> &flows);

} // namespace cost
