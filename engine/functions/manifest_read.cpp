/// Reads a manifest: its head at start, a block when its function is wanted.
#include "functions/manifest.h"

#include <cmath>

#include <fmt/format.h>

#include "functions/manifest_rows.h"

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

void readRange(const ManifestRow &row, const char *key, double &low, double &high)
{
    const auto *range = row.find(key);
    if (!range || range->items.size() != 2)
        return;
    const auto end = [&](std::size_t i, double otherwise) {
        const auto &item = range->items[i];
        return item.kind == ManifestValue::Kind::number ? item.number : otherwise;
    };
    low = end(0, -HUGE_VAL);
    high = end(1, HUGE_VAL);
}

ValueKind kindFrom(const std::string &word)
{
    return word == "yes/no"   ? ValueKind::yesNo
           : word == "choice" ? ValueKind::choice
           : word == "words"  ? ValueKind::words
           : word == "date"   ? ValueKind::date
                              : ValueKind::quantity;
}

ParameterInfo readParameter(const ManifestRow &row)
{
    ParameterInfo p;
    p.name = row.words("name");
    p.meaning = row.words("meaning");
    p.kind = kindFrom(row.words("kind"));
    p.pattern.text = row.words("unit");
    for (const auto &flag : row.list("flags")) {
        p.range = p.range || flag == "range";
        p.mayBeMissing = p.mayBeMissing || flag == "may be missing";
        p.mayBeBounded = p.mayBeBounded || flag == "may be bounded";
        p.repeats = p.repeats || flag == "repeats";
    }
    readRange(row, "hard", p.hardLow, p.hardHigh);
    readRange(row, "usual", p.usualLow, p.usualHigh);
    p.hasDefault = row.find("default") != nullptr;
    p.fallback = row.number("default", 0.0);
    p.fallbackMark = row.words("default_mark");
    p.choices = row.list("choices");
    p.choiceSubstances = row.list("choice_substances");
    return p;
}

/// What stands in the function's own table.
FunctionInfo readOwn(const ManifestRow &row)
{
    FunctionInfo f;
    f.name = row.words("name");
    f.title = row.words("title");
    f.purpose = row.words("purpose");
    f.resultKind = kindFrom(row.words("result_kind"));
    f.result.text = row.words("result_unit");
    f.resultChoices = row.list("result_choices");
    f.resultMeaning = row.words("result_meaning");
    f.relation = row.words("relation");
    f.safety = row.words("safety");
    f.sources = row.list("sources");
    return f;
}

/// What stands in a table below the function's.
void readBelow(const ManifestRow &row, FunctionInfo &f)
{
    if (row.table == "function.parameter")
        f.parameters.push_back(readParameter(row));
    else if (row.table == "function.example")
        f.examples.push_back({row.words("formula"), row.words("expected"), row.words("origin"),
                              row.words("source"), row.number("tolerance", 0.0)});
    else if (row.table == "function.refusal")
        f.refusals.push_back({row.words("formula"), row.words("expected"), "", "", 0.0});
    else if (row.table == "function.caution")
        f.cautions.push_back({row.words("key"), row.words("when")});
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
    const auto rows = readRows(known);
    if (!rows)
        return tl::unexpected(rows.error());
    const ManifestRow none;
    const auto &head = !rows->empty() && rows->front().table.empty() ? rows->front() : none;
    auto &info = manifest.info;
    info.id = head.words("id");
    info.title = head.words("title");
    info.library = head.words("library");
    info.major = static_cast<std::uint32_t>(head.number("major", 0));
    info.minor = static_cast<std::uint32_t>(head.number("minor", 0));
    manifest.contract = static_cast<std::uint32_t>(head.number("contract", 0));
    info.functions = head.list("functions");
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
    const auto rows = readRows(line);
    const auto *lists = rows && !rows->empty() ? rows->front().find("choice_lists") : nullptr;
    if (!lists)
        return all;
    all.reserve(lists->items.size());
    for (const auto &words : lists->items)
        all.push_back(wordsOf(&words));
    return all;
}

Result<void> readBlocks(std::string text, std::size_t functions, Manifest &manifest)
{
    manifest.text = std::move(text);
    manifest.blocks.reserve(functions);
    findBlocks(manifest);
    if (manifest.blocks.size() != functions) {
        return damaged(fmt::format("the manifest lists {} functions and describes {}", functions,
                                   manifest.blocks.size()));
    }
    return {};
}

Result<FunctionInfo> readFunction(std::string_view block, const UnitTable &units)
{
    const auto rows = readRows(block);
    if (!rows)
        return tl::unexpected(rows.error());
    const ManifestRow *own = nullptr;
    std::size_t functions = 0;
    for (const auto &row : *rows) {
        if (row.table == "function" && ++functions == 1)
            own = &row;
    }
    if (functions != 1)
        return damaged("a function block of the manifest is damaged");
    FunctionInfo f = readOwn(*own);
    for (const auto &row : *rows)
        readBelow(row, f);
    if (auto read = readPatterns(f, units); !read)
        return damaged(fmt::format("function `{}`: {}", f.name, read.error().words));
    return f;
}

Result<std::vector<SourceInfo>> readSources(std::string_view blocks)
{
    const auto rows = readRows(blocks);
    if (!rows)
        return tl::unexpected(rows.error());
    std::vector<SourceInfo> sources;
    for (const auto &row : *rows) {
        if (row.table == "source")
            sources.push_back({row.words("key"), row.words("mark"), row.words("words")});
    }
    return sources;
}

} // namespace puteal
