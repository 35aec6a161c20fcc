/// Times two pieces of work in turns and gives the median of their ratios: other load then hits both alike.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <vector>

namespace puteal::test
{

template<class Work>
double milliseconds(Work work)
{
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

/// Processor time of the calling thread: on a shared machine the clock on the wall also counts the others'
/// work, and more of it the longer a piece takes.
template<class Work>
double processorMilliseconds(Work work)
{
    const auto now = [] {
        timespec t{};
        clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
        return static_cast<double>(t.tv_sec) * 1e3 + static_cast<double>(t.tv_nsec) * 1e-6;
    };
    const double start = now();
    work();
    return now() - start;
}

inline double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    return values.empty() ? 0.0 : values[values.size() / 2];
}

struct Ratio {
    double ours = 0, floor = 0;            ///< medians, milliseconds
    double ratio = 0, least = 0, most = 0; ///< floor / ours of each round: speed as a part of the floor's
};

/// `rounds` rounds of ours, then the floor; `between` tidies up outside the clock.
template<class Ours, class Floor, class Between>
Ratio speedAgainst(Ours ours, Floor floor, Between between, int rounds = 9)
{
    std::vector<double> left, right, ratios;
    for (int round = 0; round < rounds; ++round) {
        left.push_back(milliseconds(ours));
        right.push_back(milliseconds(floor));
        ratios.push_back(right.back() / left.back());
        between();
    }
    return {median(left), median(right), median(ratios), *std::min_element(ratios.begin(), ratios.end()),
            *std::max_element(ratios.begin(), ratios.end())};
}

inline void printRatio(const char *workload, const Ratio &r, const char *more = "")
{
    std::printf("{\"workload\": \"%s\", \"ours_ms\": %.3f, \"floor_ms\": %.3f, \"ratio\": %.3f, \"spread\": "
                "[%.3f, %.3f]%s}\n",
                workload, r.ours, r.floor, r.ratio, r.least, r.most, more);
}

} // namespace puteal::test
