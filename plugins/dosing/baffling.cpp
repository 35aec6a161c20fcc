/// Share of the nominal time that counts: classes of the public tables, and stirred tanks in a row. (R4)
#include "dosing.h"

#include <algorithm>

#include "sdk/roots.h"

namespace dosing
{

using namespace puteal::sdk;

namespace
{

constexpr const char *bafflingWords[] = {"plug flow", "near plug flow", "superior",
                                         "average",   "poor",           "unbaffled with diffuser",
                                         "unbaffled", "no contact",     nullptr};
// Classes of the federal rule, and three that Pennsylvania adds [EPA 816-R-03-004; PA DEP].
constexpr double bafflingFactors[] = {1.0, 0.9, 0.7, 0.5, 0.3, 0.2, 0.1, 0.0};

double bafflingFactor(int kind)
{
    return bafflingFactors[kind];
}

/// Share of the water that has left `count` equal stirred tanks in a row after `time`, in nominal times.
double leftBy(double time, int count)
{
    const double x = time * count;
    double term = std::exp(-x), inside = 0;
    for (int k = 0; k < count; ++k) {
        inside += term;
        term *= x / (k + 1);
    }
    return 1.0 - inside;
}

double tanksInSeries(double tanks, Reply &reply)
{
    if (!nearlyEqual(tanks, std::round(tanks)))
        return reply.refuse(1, "tanks are counted: give a whole number");
    constexpr double least = 1, most = 1000; // far beyond the range of the argument
    const int count = static_cast<int>(std::clamp(std::round(tanks), least, most));
    // After one nominal time more than a tenth has left, however many tanks; a tenth: the definition of T10.
    const double share = crossing(0, 1, [&](double time) { return leftBy(time, count) - 0.1; });
    cautionBaffling(share, reply);
    return share;
}

constexpr puteal_parameter classTakes[] = {
    Parameter("class", "", "how the water is led through the tank").oneOf(bafflingWords),
};
constexpr const char *classSources[] = {"baffling_table", "baffling_pennsylvania", nullptr};
constexpr puteal_example classExamples[] = {
    example("baffling_factor(\"unbaffled\")", "0.1", 1e-9, "published", "baffling_table"),
    example("baffling_factor(\"poor\")", "0.3", 1e-9, "published", "baffling_table"),
    example("baffling_factor(\"average\")", "0.5", 1e-9, "published", "baffling_table"),
    example("baffling_factor(\"superior\")", "0.7", 1e-9, "published", "baffling_table"),
    example("baffling_factor(\"unbaffled with diffuser\")", "0.2", 1e-9, "published",
            "baffling_pennsylvania"),
    example("baffling_factor(\"near plug flow\")", "0.9", 1e-9, "published", "baffling_pennsylvania"),
};
constexpr puteal_example classRefusals[] = {
    refusal("contact_volume(5 min, 8 gpm, baffling_factor(\"no contact\"))",
            "`baffling` must be at least 0.01; it is 0"),
};

constexpr puteal_parameter seriesTakes[] = {
    Parameter("tanks", "", "equal stirred tanks one behind the other").hard(1, 100).usual(1, 10),
};
constexpr const char *seriesSources[] = {"geometry", "practice", nullptr};
constexpr puteal_example seriesExamples[] = {
    example("tanks_in_series_baffling(1)", "0.105361", 1e-5, "computed", "geometry"),
    example("tanks_in_series_baffling(2)", "0.265906", 1e-5, "computed", "geometry"),
    example("tanks_in_series_baffling(3)", "0.367355", 1e-5, "computed", "geometry"),
    example("tanks_in_series_baffling(4)", "0.436192", 2e-6, "computed", "geometry"),
    example("tanks_in_series_baffling(5)", "0.486518", 2e-6, "computed", "geometry"),
    example("tanks_in_series_baffling(6)", "0.525316", 2e-6, "computed", "geometry"),
    example("tanks_in_series_baffling(8)", "0.582015", 2e-6, "computed", "geometry"),
    example("tanks_in_series_baffling(10)", "0.622130", 1e-5, "computed", "geometry"),
    example("tanks_in_series_baffling(20)", "0.726263", 1e-5, "computed", "geometry"),
};
constexpr puteal_example seriesRefusals[] = {
    refusal("tanks_in_series_baffling(0)", "`tanks` must be at least 1; it is 0"),
    refusal("tanks_in_series_baffling(2.5)", "tanks are counted: give a whole number"),
};
constexpr puteal_caution seriesCautions[] = {bafflingCaution};

} // namespace

constinit const puteal_function bafflingFactorRow =
    Function("baffling_factor", "Baffling factor",
             "Share of the nominal time that counts, by the classes of the public rule.",
             call<bafflingFactor>)
        .takes(classTakes)
        .gives("", "time that nine tenths of the water stay, over the nominal time")
        .by("table: unbaffled 0.1, poor 0.3, average 0.5, superior 0.7, plug flow 1; Pennsylvania: no "
            "contact 0, unbaffled with diffuser 0.2, near plug flow 0.9")
        .from(classSources)
        .shownBy(classExamples)
        .refusing(classRefusals)
        .safely(disinfectionSafety);

constinit const puteal_function tanksInSeriesRow =
    Function("tanks_in_series_baffling", "Baffling of tanks in a row",
             "Share of the nominal time that nine tenths of the water stay in equal, well stirred tanks one "
             "behind the "
             "other. Small real tanks do worse, since water takes short cuts in them.",
             call<tanksInSeries>)
        .takes(seriesTakes)
        .gives("", "time that nine tenths of the water stay, over the nominal time")
        .by("x at which 1 - exp(-n x) * sum over k < n of (n x)^k / k! is 0.1")
        .from(seriesSources)
        .shownBy(seriesExamples)
        .refusing(seriesRefusals)
        .warning(seriesCautions)
        .safely(disinfectionSafety);

} // namespace dosing
