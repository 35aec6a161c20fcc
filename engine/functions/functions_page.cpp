/// The page of all functions, as docs/functions.md holds it; a test compares the two.
#include "functions/functions_page.h"

#include <algorithm>

#include <fmt/format.h>

#include "functions/general.h"
#include "functions/parameter_words.h"

namespace puteal
{
namespace
{

std::string functionText(const FunctionInfo &f)
{
    std::string text = fmt::format("### {}\n\n`{}`\n\n{}\n\n", f.name, f.call(), f.purpose);
    for (const auto &p : f.parameters)
        text += fmt::format("- `{}`: {}\n", p.name, parameterWords(p));
    text += fmt::format("- gives {}\n", resultWords(f));
    if (!f.relation.empty())
        text += fmt::format("- relation: `{}`\n", f.relation);
    if (!f.sources.empty())
        text += fmt::format("- sources: {}\n", fmt::join(f.sources, ", "));
    for (const auto &c : f.cautions)
        text += fmt::format("- caution `{}`: {}\n", c.key, c.when);
    if (!f.safety.empty())
        text += fmt::format("- safety: {}\n", f.safety);
    if (!f.examples.empty() || !f.refusals.empty())
        text += "\n| formula | shows | where from |\n| --- | --- | --- |\n";
    for (const auto &e : f.examples)
        text += fmt::format("| `{}` | {} | {}, {} |\n", e.formula, e.expected, e.origin, e.source);
    for (const auto &e : f.refusals)
        text += fmt::format("| `{}` | refused: {} | |\n", e.formula, e.expected);
    return text + "\n";
}

std::string sourcesText(const std::vector<SourceInfo> &sources)
{
    std::string text = "Sources:\n\n";
    for (const auto &s : sources)
        text += fmt::format("- {} ({}): {}\n", s.key, markWords(s.mark), s.words);
    return text + "\n";
}

std::string functionsOf(const Registry &registry, const std::string &plugin)
{
    std::string text;
    for (const auto &f : registry.functions()) {
        if (f.plugin == plugin)
            text += functionText(f);
    }
    return text;
}

} // namespace

std::string functionsPage(const Registry &registry)
{
    std::string text =
        "# Functions\n\nWritten by the program from its own tables (`PUTEAL_UPDATE=1 "
        "tests/pages_test`); do not edit. "
        "An argument in brackets may be left out. Figures of every example are checked by the tests.\n\n"
        "## General functions\n\n";
    text += functionsOf(registry, "");
    std::vector<const PluginInfo *> enabled;
    for (const auto &plugin : registry.plugins()) {
        if (plugin.state == PluginInfo::State::enabled)
            enabled.push_back(&plugin);
    }
    std::sort(enabled.begin(), enabled.end(), [](const auto *a, const auto *b) { return a->id < b->id; });
    for (const auto *plugin : enabled) {
        text += fmt::format("## {} (plugin {} {}.{})\n\n", plugin->title, plugin->id, plugin->major,
                            plugin->minor);
        text += functionsOf(registry, plugin->id) + sourcesText(plugin->sources);
    }
    return text;
}

} // namespace puteal
