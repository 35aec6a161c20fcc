/// Opens a library and copies its C tables into the engine's own form.
#include "functions/descriptor.h"

#include <algorithm>

#include <dlfcn.h>

#include <fmt/format.h>

namespace puteal
{
namespace
{

std::string text(const char *words)
{
    return words ? words : "";
}

std::vector<std::string> texts(const char *const *words)
{
    std::vector<std::string> all;
    for (; words && *words; ++words)
        all.emplace_back(*words);
    return all;
}

/// Row `i` of a table whose rows may be longer than ours: structs only ever grow at the end and carry their
/// size.
template<class T>
const T &rowAt(const T *rows, std::size_t i)
{
    return *reinterpret_cast<const T *>(reinterpret_cast<const char *>(rows) + i * rows->size);
}

Result<ValueKind> kindOf(std::uint32_t kind)
{
    switch (kind) {
    case PUTEAL_QUANTITY:
        return ValueKind::quantity;
    case PUTEAL_YES_NO:
        return ValueKind::yesNo;
    case PUTEAL_CHOICE:
        return ValueKind::choice;
    case PUTEAL_WORDS:
        return ValueKind::words;
    case PUTEAL_DATE:
        return ValueKind::date;
    default:
        return fail(ErrorKind::plugin, fmt::format("value kind {} is not known to this version", kind));
    }
}

Result<ParameterInfo> parameterFrom(const puteal_parameter &raw)
{
    ParameterInfo p;
    p.name = text(raw.name);
    p.meaning = text(raw.meaning);
    const auto kind = kindOf(raw.kind);
    if (!kind)
        return tl::unexpected(kind.error());
    p.kind = *kind;
    p.range = (raw.flags & PUTEAL_RANGE) != 0;
    p.repeats = (raw.flags & PUTEAL_REPEATS) != 0;
    p.mayBeMissing = (raw.flags & PUTEAL_MAY_BE_MISSING) != 0;
    p.mayBeBounded = (raw.flags & PUTEAL_MAY_BE_BOUNDED) != 0;
    p.hasDefault = (raw.flags & PUTEAL_HAS_DEFAULT) != 0;
    p.fallback = raw.fallback;
    p.fallbackMark = text(raw.fallback_mark);
    p.pattern.text = text(raw.unit);
    p.choices = texts(raw.choices);
    if (raw.choice_substances) {
        for (std::size_t i = 0; i < p.choices.size(); ++i)
            p.choiceSubstances.push_back(text(raw.choice_substances[i]));
    }
    p.hardLow = raw.hard_low;
    p.hardHigh = raw.hard_high;
    p.usualLow = raw.usual_low;
    p.usualHigh = raw.usual_high;
    return p;
}

std::vector<ExampleInfo> examplesFrom(const puteal_example *rows, std::size_t count)
{
    std::vector<ExampleInfo> all;
    for (std::size_t i = 0; i < count; ++i) {
        const auto &row = rowAt(rows, i);
        all.push_back(
            {text(row.formula), text(row.expected), text(row.origin), text(row.source), row.tolerance});
    }
    return all;
}

Result<FunctionInfo> functionFrom(const puteal_function &raw, const UnitTable &units)
{
    FunctionInfo f;
    f.name = text(raw.name);
    f.title = text(raw.title);
    f.purpose = text(raw.purpose);
    for (std::size_t i = 0; i < raw.parameter_count; ++i) {
        auto p = parameterFrom(rowAt(raw.parameters, i));
        if (!p)
            return tl::unexpected(p.error());
        f.parameters.push_back(std::move(*p));
    }
    const auto kind = kindOf(raw.result_kind);
    if (!kind)
        return tl::unexpected(kind.error());
    f.resultKind = *kind;
    f.result.text = text(raw.result_unit);
    f.resultChoices = texts(raw.result_choices);
    f.resultMeaning = text(raw.result_meaning);
    f.relation = text(raw.relation);
    f.safety = text(raw.safety);
    f.sources = texts(raw.sources);
    f.examples = examplesFrom(raw.examples, raw.example_count);
    f.refusals = examplesFrom(raw.refusals, raw.refusal_count);
    for (std::size_t i = 0; i < raw.caution_count; ++i)
        f.cautions.push_back({text(rowAt(raw.cautions, i).key), text(rowAt(raw.cautions, i).when)});
    if (auto read = readPatterns(f, units); !read)
        return tl::unexpected(read.error());
    return f;
}

} // namespace

Result<void> readPatterns(FunctionInfo &f, const UnitTable &units)
{
    for (auto &p : f.parameters) {
        auto pattern = readPattern(p.pattern.text, units, f.parameters);
        if (!pattern)
            return fail(ErrorKind::plugin, fmt::format("parameter `{}`: {}", p.name, pattern.error().words));
        p.pattern = std::move(*pattern);
    }
    auto result = readPattern(f.result.text, units, f.parameters);
    if (!result)
        return fail(ErrorKind::plugin, fmt::format("result: {}", result.error().words));
    f.result = std::move(*result);
    return {};
}

Result<const puteal_plugin *> openPlugin(const std::filesystem::path &library)
{
    void *handle = dlopen(library.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (!handle) {
        const char *why = dlerror();
        return fail(ErrorKind::plugin,
                    fmt::format("cannot open {}: {}", library.string(), why ? why : "unknown reason"));
    }
    const auto entry = reinterpret_cast<puteal_plugin_entry_type>(dlsym(handle, PUTEAL_PLUGIN_ENTRY));
    if (!entry)
        return fail(ErrorKind::plugin, fmt::format("{} is no plugin: it does not export {}", library.string(),
                                                   PUTEAL_PLUGIN_ENTRY));
    const puteal_plugin *plugin = entry();
    if (!plugin || plugin->size < sizeof(puteal_plugin))
        return fail(ErrorKind::plugin, fmt::format("{} hands over no description", library.string()));
    if (plugin->contract != PUTEAL_CONTRACT) {
        return fail(ErrorKind::plugin,
                    fmt::format("{} is built for contract {}, this program offers {}: rebuild the plugin",
                                library.string(), plugin->contract, PUTEAL_CONTRACT));
    }
    return plugin;
}

Result<FunctionInfo> describeFunction(const puteal_plugin &plugin, std::size_t position,
                                      const UnitTable &units)
{
    const auto &raw = rowAt(plugin.functions, position);
    auto f = functionFrom(raw, units);
    if (!f)
        return fail(ErrorKind::plugin, fmt::format("function `{}`: {}", text(raw.name), f.error().words));
    f->plugin = text(plugin.id);
    f->index = static_cast<std::uint32_t>(position);
    return f;
}

puteal_call callAt(const puteal_plugin &plugin, std::size_t position)
{
    return rowAt(plugin.functions, position).call;
}

std::vector<std::vector<std::string>> listsOf(std::span<const FunctionInfo> functions)
{
    std::vector<std::vector<std::string>> all;
    const auto add = [&](const std::vector<std::string> &words) {
        if (!words.empty() && std::find(all.begin(), all.end(), words) == all.end())
            all.push_back(words);
    };
    for (const auto &f : functions) {
        add(f.resultChoices);
        for (const auto &p : f.parameters)
            add(p.choices);
    }
    return all;
}

Result<PluginDescription> describe(const puteal_plugin &plugin, const UnitTable &units)
{
    PluginDescription all;
    all.info.id = text(plugin.id);
    all.info.title = text(plugin.title);
    all.info.major = plugin.major;
    all.info.minor = plugin.minor;
    for (std::size_t i = 0; i < plugin.source_count; ++i) {
        const auto &row = rowAt(plugin.sources, i);
        all.info.sources.push_back({text(row.key), text(row.mark), text(row.words)});
    }
    for (std::size_t i = 0; i < plugin.function_count; ++i) {
        auto f = describeFunction(plugin, i, units);
        if (!f)
            return tl::unexpected(f.error());
        all.info.functions.push_back(f->name);
        all.calls.push_back(callAt(plugin, i));
        all.functions.push_back(std::move(*f));
    }
    return all;
}

} // namespace puteal
