/// The tables of a piece of a manifest, whichever of two readers read it: the plain one for the few forms the
/// manifest tool writes, or the TOML library for everything else and for what is wrong.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"

namespace puteal
{

struct ManifestValue {
    enum class Kind : std::uint8_t { words, number, list, other };
    Kind kind = Kind::other;
    double number = 0.0;
    std::string words;
    std::vector<ManifestValue> items;
    friend bool operator==(const ManifestValue &, const ManifestValue &) = default;
};

/// One table: "" what stands before the first heading, "function", "function.parameter" ...
struct ManifestRow {
    std::string table;
    std::vector<std::pair<std::string, ManifestValue>> values;

    const ManifestValue *find(std::string_view key) const;
    std::string words(std::string_view key) const; ///< "" where there are none
    double number(std::string_view key, double otherwise) const;
    std::vector<std::string> list(std::string_view key) const; ///< an item that is no words is ""
    friend bool operator==(const ManifestRow &, const ManifestRow &) = default;
};

/// Words of a list; what is no words is "".
std::vector<std::string> wordsOf(const ManifestValue *list);

/// The tables of a text. Error: not TOML, with its line.
Result<std::vector<ManifestRow>> readRows(std::string_view text);
/// By the plain reader: none where the text holds anything but what the manifest tool writes, right or wrong.
std::optional<std::vector<ManifestRow>> readPlainRows(std::string_view text);
/// By the TOML library; rows below a heading follow it sorted by their tables' names.
Result<std::vector<ManifestRow>> readTomlRows(std::string_view text);

} // namespace puteal
