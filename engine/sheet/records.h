/// Records of a workbook beside its cells: comments, expectations, charts, sources, plugins, lists.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "sheet/cell.h"

namespace puteal
{

/// Comments, blank and unknown records that stand before a record and move with it.
struct Kept {
    /// "" = before the `line` (or `sheet`) record, else the column key (cell, column), "stop" = before
    /// `stop`, "=" = before the sheet's end, "expect REF" = before that expectation; in Workbook::kept the
    /// first two words of the record ("source L1", "chart years"), "plot CHART REF" or "end workbook".
    std::string before;
    std::string text; ///< the record verbatim
    friend bool operator==(const Kept &, const Kept &) = default;
};

struct Line {
    std::vector<Kept> kept;
    bool skipped =
        false; ///< while it has no record of its own it is counted in a `skip`, not written as `line`
    friend bool operator==(const Line &a, const Line &b) { return a.kept == b.kept; }
};

/// `expect NAME = 25 gpg within 1 %`
struct Expectation {
    std::string reference;
    std::string tail; ///< everything after " = ", as typed
    friend bool operator==(const Expectation &, const Expectation &) = default;
};

struct Plot {
    std::string reference;
    std::string title;
    std::string only; ///< `plot costs.air[:] "Air" only options.air_serves`: drawn when that cell says yes;
                      ///< "" = always
    friend bool operator==(const Plot &, const Plot &) = default;
};
enum class ChartKind : std::uint8_t { lines, bars, steps };
struct Chart {
    std::string key;
    ChartKind kind = ChartKind::lines;
    std::string title;
    std::string x; ///< reference text
    std::vector<Plot> plots;
    friend bool operator==(const Chart &, const Chart &) = default;
};

struct SourceMark {
    MarkId id;        ///< "L1"
    std::string kind; ///< mark word: "laboratory" ...
    std::string words;
    friend bool operator==(const SourceMark &, const SourceMark &) = default;
};

struct PluginUse {
    std::string id;
    std::uint32_t major = 1;
    friend bool operator==(const PluginUse &, const PluginUse &) = default;
};

struct ChoiceListText {
    std::string name;
    std::vector<std::string> words;
    friend bool operator==(const ChoiceListText &, const ChoiceListText &) = default;
};

} // namespace puteal
