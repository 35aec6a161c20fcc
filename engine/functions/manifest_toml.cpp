/// Reads the tables of a manifest by the TOML library. The only file that includes toml++.
#include "functions/manifest_rows.h"

#include <fmt/format.h>
// Compiled in: loading one more shared library would cost every start more than this file costs the build.
#define TOML_HEADER_ONLY 1
#include <toml++/impl/preprocessor.h>
// The library promises the compiler that a heading begins with a key, and stops where that is not so. A
// damaged manifest breaks the promise; without it the library says what is wrong.
#undef TOML_ASSERT_ASSUME
#define TOML_ASSERT_ASSUME(expr) static_assert(true)
#include <toml++/toml.h>

namespace puteal
{
namespace
{

using Kind = ManifestValue::Kind;

ManifestValue valueOf(const toml::node &node)
{
    ManifestValue value;
    if (const auto *array = node.as_array()) {
        value.kind = Kind::list;
        value.items.reserve(array->size());
        for (const auto &item : *array)
            value.items.push_back(valueOf(item));
    } else if (const auto words = node.value<std::string>()) {
        value.kind = Kind::words;
        value.words = *words;
    } else if (const auto number = node.value<double>()) {
        value.kind = Kind::number;
        value.number = *number;
    }
    return value;
}

/// A table's own values, then the tables of its arrays of tables.
void addRows(const toml::table &table, const std::string &name, std::vector<ManifestRow> &rows)
{
    const auto isTables = [](const toml::node &node) {
        return node.is_array() && !node.as_array()->empty() && node.as_array()->is_homogeneous<toml::table>();
    };
    ManifestRow row{name, {}};
    for (const auto &[key, node] : table) {
        if (!isTables(node))
            row.values.emplace_back(key.str(), valueOf(node));
    }
    if (!name.empty() || !row.values.empty())
        rows.push_back(std::move(row));
    for (const auto &[key, node] : table) {
        if (!isTables(node))
            continue;
        const std::string below = name.empty() ? std::string(key.str()) : name + '.' + std::string(key.str());
        for (const auto &item : *node.as_array())
            addRows(*item.as_table(), below, rows);
    }
}

} // namespace

Result<std::vector<ManifestRow>> readTomlRows(std::string_view text)
{
    try {
        std::vector<ManifestRow> rows;
        addRows(toml::parse(text), {}, rows);
        return rows;
    } catch (const toml::parse_error &e) {
        return fail(ErrorKind::plugin, fmt::format("line {}: {}", e.source().begin.line, e.description()));
    }
}

} // namespace puteal
