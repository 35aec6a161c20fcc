/// What was seen and measured on the water, and the score of each iron form that follows from it.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "sdk/plugin.h"

namespace diagnosis
{

/// Words of the choices, in the order of their enums.
inline constexpr const char *drawWords[] = {"clear", "yellow or tea", "rust", "black", "milky", nullptr};
enum Draw : int { drawnClear, drawnTea, drawnRust, drawnBlack, drawnMilky };
inline constexpr const char *standingWords[] = {"clear after 24 h", "rust deposit", "settles", "stays even",
                                                nullptr};
enum Standing : int { staysClear, rustDeposit, settles, staysEven };
inline constexpr const char *cupWords[] = {"clears", "stays", nullptr};
enum Cup : int { cupClears, cupStays };

/// The arguments of the iron form functions, in their order.
struct Observations {
    const puteal::sdk::Argument &draw, &standing, &reducingCup, &slime, &swampySmell, &totalIron,
        &dissolvedIron, &tannin, &ph, &waited;
    bool none() const;
};

/// Share of the iron that passes the filter, where the readings decide it.
enum class FilteredShare { notKnown, low, between, high };

/// Forms that carry points; the first five of the shared list of forms, without "mixed".
enum Scored : unsigned {
    scoredDissolved,
    scoredOxidized,
    scoredBacterial,
    scoredOrganic,
    scoredColloidal,
    scoredCount
};

struct Scoring {
    std::array<int, scoredCount> points{};
    std::vector<std::string> evidence; ///< what counted, in words
    std::vector<std::string> notes;    ///< what did not count and why
    FilteredShare share = FilteredShare::notKnown;
    bool standingCounts = false;

    void add(std::array<int, scoredCount> row, std::string words);
    Scored best() const;
};

/// The verdict over a scoring: index in the shared list of iron forms, and the confidence 0 .. 1.
struct FormVerdict {
    puteal::sdk::IronForm form = puteal::sdk::unknownForm;
    double confidence = 0.0;
};

inline constexpr int enoughPoints = 4; // a form is named from here [common practice, no source]

Scoring scoreOf(const Observations &seen);
FormVerdict verdictOf(const Observations &seen, const Scoring &scoring);

} // namespace diagnosis
