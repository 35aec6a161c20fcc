/// Reads a manifest: its head at start, a block when its function is wanted. The only file that includes
/// toml++.
#include "functions/manifest.h"

#include <cmath>

#include <fmt/format.h>
// Compiled in: loading one more shared library would cost every start more than this file costs the build.
#define TOML_HEADER_ONLY 1
#include <toml++/toml.h>

namespace puteal
{
namespace
{

constexpr std::string_view functionMark = "\n[[function]]\n";
constexpr std::string_view sourceMark = "\n[[source]]\n";
constexpr std::string_view listsMark = "\nchoice_lists = ";

tl::unexpected<Error> damaged(const std::string &words)
{
    return fail(ErrorKind::plugin, words);
}

Result<toml::table> parsed(std::string_view text)
{
    try {
        return toml::parse(text);
    } catch (const toml::parse_error &e) {
        return damaged(fmt::format("line {}: {}", e.source().begin.line, e.description()));
    }
}

std::string words(const toml::table &table, const char *key)
{
    return table[key].value_or(std::string());
}

double number(const toml::table &table, const char *key, double otherwise)
{
    return table[key].value_or(otherwise);
}

std::vector<std::string> list(const toml::array *array)
{
    std::vector<std::string> all;
    if (array) {
        for (const auto &item : *array)
            all.push_back(item.value_or(std::string()));
    }
    return all;
}

std::vector<std::string> list(const toml::table &table, const char *key)
{
    return list(table[key].as_array());
}

/// Calls `use` for every table of an array of tables; a missing array is an empty one.
template<class Use>
void eachTable(const toml::table &table, const char *key, Use use)
{
    if (const auto *array = table[key].as_array()) {
        for (const auto &item : *array) {
            if (const auto *row = item.as_table())
                use(*row);
        }
    }
}

void readRange(const toml::table &table, const char *key, double &low, double &high)
{
    if (const auto *array = table[key].as_array(); array && array->size() == 2) {
        low = (*array)[0].value_or(-HUGE_VAL);
        high = (*array)[1].value_or(HUGE_VAL);
    }
}

ValueKind kindFrom(const std::string &word)
{
    return word == "yes/no"   ? ValueKind::yesNo
           : word == "choice" ? ValueKind::choice
           : word == "words"  ? ValueKind::words
           : word == "date"   ? ValueKind::date
                              : ValueKind::quantity;
}

ParameterInfo readParameter(const toml::table &table)
{
    ParameterInfo p;
    p.name = words(table, "name");
    p.meaning = words(table, "meaning");
    p.kind = kindFrom(words(table, "kind"));
    p.pattern.text = words(table, "unit");
    for (const auto &flag : list(table, "flags")) {
        p.range = p.range || flag == "range";
        p.mayBeMissing = p.mayBeMissing || flag == "may be missing";
        p.mayBeBounded = p.mayBeBounded || flag == "may be bounded";
        p.repeats = p.repeats || flag == "repeats";
    }
    readRange(table, "hard", p.hardLow, p.hardHigh);
    readRange(table, "usual", p.usualLow, p.usualHigh);
    p.hasDefault = table.contains("default");
    p.fallback = number(table, "default", 0.0);
    p.fallbackMark = words(table, "default_mark");
    p.choices = list(table, "choices");
    p.choiceSubstances = list(table, "choice_substances");
    return p;
}

/// Finds the blocks; each starts at its mark and ends where the next one begins.
void findBlocks(Manifest &manifest)
{
    const std::string_view text = manifest.text;
    const auto first = text.find(functionMark);
    const auto source = text.find(sourceMark);
    if (source != std::string_view::npos && (first == std::string_view::npos || source < first))
        manifest.sources = text.substr(source, first == std::string_view::npos ? first : first - source);
    for (auto at = first; at != std::string_view::npos;) {
        const auto next = text.find(functionMark, at + 1);
        manifest.blocks.push_back(text.substr(at, next == std::string_view::npos ? next : next - at));
        at = next;
    }
}

} // namespace

Result<void> readHead(std::string_view text, Manifest &manifest)
{
    // The lists of words are half of the head and wanted only where a word is nothing else: they are read
    // then.
    std::string known(text.substr(0, text.find(headEnd)));
    if (const auto lists = known.find(listsMark); lists != std::string::npos) {
        const auto end = known.find('\n', lists + 1);
        manifest.choiceLists = known.substr(lists + 1, end == std::string::npos ? end : end - lists - 1);
        known.erase(lists + 1, manifest.choiceLists.size());
    }
    const auto head = parsed(known);
    if (!head)
        return tl::unexpected(head.error());
    auto &info = manifest.info;
    info.id = words(*head, "id");
    info.title = words(*head, "title");
    info.library = words(*head, "library");
    info.major = static_cast<std::uint32_t>(number(*head, "major", 0));
    info.minor = static_cast<std::uint32_t>(number(*head, "minor", 0));
    manifest.contract = static_cast<std::uint32_t>(number(*head, "contract", 0));
    info.functions = list(*head, "functions");
    if (info.id.empty())
        return damaged("the manifest has no id");
    if (info.library.empty())
        return damaged("the manifest names no library");
    if (info.library.has_parent_path() || info.library == "..")
        return damaged("the manifest's library must be a file beside it");
    if (info.functions.empty())
        return damaged("the manifest lists no function");
    return {};
}

std::vector<std::vector<std::string>> readChoiceLists(std::string_view line)
{
    std::vector<std::vector<std::string>> all;
    const auto table = parsed(line);
    const auto *lists = table ? (*table)["choice_lists"].as_array() : nullptr;
    if (!lists)
        return all;
    all.reserve(lists->size());
    for (const auto &words : *lists)
        all.push_back(list(words.as_array()));
    return all;
}

Result<void> readBlocks(std::string text, Manifest &manifest)
{
    manifest.text = std::move(text);
    findBlocks(manifest);
    const auto &info = manifest.info;
    if (manifest.blocks.size() != info.functions.size()) {
        return damaged(fmt::format("the manifest lists {} functions and describes {}", info.functions.size(),
                                   manifest.blocks.size()));
    }
    return {};
}

Result<FunctionInfo> readFunction(std::string_view block, const UnitTable &units)
{
    const auto document = parsed(block);
    if (!document)
        return tl::unexpected(document.error());
    const auto *array = (*document)["function"].as_array();
    const auto *table = array && array->size() == 1 ? (*array)[0].as_table() : nullptr;
    if (!table)
        return damaged("a function block of the manifest is damaged");
    FunctionInfo f;
    f.name = words(*table, "name");
    f.title = words(*table, "title");
    f.purpose = words(*table, "purpose");
    f.resultKind = kindFrom(words(*table, "result_kind"));
    f.result.text = words(*table, "result_unit");
    f.resultChoices = list(*table, "result_choices");
    f.resultMeaning = words(*table, "result_meaning");
    f.relation = words(*table, "relation");
    f.safety = words(*table, "safety");
    f.sources = list(*table, "sources");
    eachTable(*table, "parameter", [&](const auto &row) { f.parameters.push_back(readParameter(row)); });
    eachTable(*table, "example", [&](const auto &row) {
        f.examples.push_back({words(row, "formula"), words(row, "expected"), words(row, "origin"),
                              words(row, "source"), number(row, "tolerance", 0.0)});
    });
    eachTable(*table, "refusal", [&](const auto &row) {
        f.refusals.push_back({words(row, "formula"), words(row, "expected"), "", "", 0.0});
    });
    eachTable(*table, "caution", [&](const auto &row) {
        f.cautions.push_back({words(row, "key"), words(row, "when")});
    });
    if (auto read = readPatterns(f, units); !read)
        return damaged(fmt::format("function `{}`: {}", f.name, read.error().words));
    return f;
}

Result<std::vector<SourceInfo>> readSources(std::string_view blocks)
{
    const auto document = parsed(blocks);
    if (!document)
        return tl::unexpected(document.error());
    std::vector<SourceInfo> sources;
    eachTable(*document, "source", [&](const auto &row) {
        sources.push_back({words(row, "key"), words(row, "mark"), words(row, "words")});
    });
    return sources;
}

} // namespace puteal
