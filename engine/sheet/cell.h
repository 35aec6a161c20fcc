/// One cell as it was typed, with what may stand beside it. The sheet stores texts; nothing here is computed.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace puteal
{

/// One of the marks of docs/file_format.md: letter and optional digits ("L1").
using MarkId = std::string;

/// A limit as typed; texts are formulas.
struct LimitText {
    std::string comparison; ///< "<=", ">=", "<", ">" or ".." for low .. high
    std::string low;        ///< the expression (for "..": the lower one)
    std::string high;       ///< only for ".."
    std::string near;       ///< "20" for `near 20 %`; empty = default
    bool health = false;
    MarkId mark;
    std::string words;
    friend bool operator==(const LimitText &, const LimitText &) = default;
};

/// What may stand beside a value. Every field empty = nothing there.
struct Attributes {
    std::string name;
    std::string unit; ///< set unit as typed
    std::vector<MarkId> sources;
    int figures = 0;                  ///< significant figures to show, 0 = default
    int places = -1;                  ///< decimal places to show, -1 = default
    std::string list;                 ///< choices by list name
    std::vector<std::string> choices; ///< choices given in place
    std::optional<LimitText> limit;
    std::string tolerance; ///< after "+- "
    std::string ask;
    bool hide = false;
    bool lock = false;
    std::string note;
    std::vector<std::string> unknown; ///< indented records of a newer version, kept as they are
    friend bool operator==(const Attributes &, const Attributes &) = default;
    bool empty() const { return *this == Attributes{}; }
};

/// A cell: the typed text (shared along a filled run) and its attributes. Both may be null.
struct Cell {
    std::shared_ptr<const std::string> text; ///< null or never empty
    std::shared_ptr<const Attributes> attributes;
    bool blank() const { return !text; }
    const std::string &typed() const
    {
        static const std::string none;
        return text ? *text : none;
    }
    const Attributes &beside() const
    {
        static const Attributes none;
        return attributes ? *attributes : none;
    }
    friend bool operator==(const Cell &a, const Cell &b)
    {
        return a.typed() == b.typed() && a.beside() == b.beside();
    }
};

enum class ColumnKind : std::uint8_t { words, amounts };

struct Column {
    std::string key;
    ColumnKind kind = ColumnKind::amounts;
    std::string title;
    std::uint32_t width = 12;
    Attributes attributes; ///< unit, figures, places, sources, list: defaults of the whole column
    friend bool operator==(const Column &, const Column &) = default;
};

} // namespace puteal
