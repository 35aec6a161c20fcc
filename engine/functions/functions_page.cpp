/// The page of all functions, as docs/functions.md holds it; a test compares the two.
#include "functions/functions_page.h"

#include <algorithm>
#include <cctype>

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

/// The functions of a plugin, "" for the general ones.
std::vector<const FunctionInfo *> functionsOf(const Registry &registry, const std::string &plugin)
{
    std::vector<const FunctionInfo *> out;
    for (const auto &f : registry.functions()) {
        if (f.plugin == plugin)
            out.push_back(&f);
    }
    return out;
}

/// What readers of Markdown make of a heading: lower case, blanks as hyphens, no other signs.
std::string anchorOf(std::string_view heading)
{
    std::string anchor;
    for (const char c : heading) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) || c == '_' || c == '-')
            anchor += static_cast<char>(std::tolower(byte));
        else if (c == ' ')
            anchor += '-';
    }
    return anchor;
}

struct Group {
    std::string heading;
    const PluginInfo *plugin; ///< none for the general functions
    std::vector<const FunctionInfo *> functions;
};

/// General functions, then each enabled plugin's, by plugin id.
std::vector<Group> groupsOf(const Registry &registry)
{
    std::vector<const PluginInfo *> enabled;
    for (const auto &plugin : registry.plugins()) {
        if (plugin.state == PluginInfo::State::enabled)
            enabled.push_back(&plugin);
    }
    std::sort(enabled.begin(), enabled.end(), [](const auto *a, const auto *b) { return a->id < b->id; });
    std::vector<Group> groups{{"General functions", nullptr, functionsOf(registry, "")}};
    for (const auto *plugin : enabled)
        groups.push_back(
            {fmt::format("{} (plugin {} {}.{})", plugin->title, plugin->id, plugin->major, plugin->minor),
             plugin, functionsOf(registry, plugin->id)});
    return groups;
}

std::string contentsText(const std::vector<Group> &groups)
{
    std::string text;
    for (const auto &group : groups) {
        text += fmt::format("- [{}](#{}), {} functions:\n", group.heading, anchorOf(group.heading),
                            group.functions.size());
        for (const auto *f : group.functions)
            text += fmt::format("  [{0}](#{0}){1}\n", f->name, f == group.functions.back() ? "" : ",");
    }
    return text + "\n";
}

} // namespace

std::string functionsPage(const Registry &registry)
{
    const auto groups = groupsOf(registry);
    std::string text =
        "# Functions\n\nWritten by the program from its own tables (`PUTEAL_UPDATE=1 "
        "tests/pages_test`); do not edit. "
        "An argument in brackets may be left out. Figures of every example are checked by the tests. "
        "Columns before a formula, as in `t: 1 day, 2 day; sum(t[:])`, are cells it needs: the part behind "
        "the last "
        "semicolon is what is typed. `puteal functions head loss` finds functions by a word of the "
        "trade.\n\n" +
        contentsText(groups);
    for (const auto &group : groups) {
        text += fmt::format("## {}\n\n", group.heading);
        for (const auto *f : group.functions)
            text += functionText(*f);
        if (group.plugin)
            text += sourcesText(group.plugin->sources);
    }
    return text;
}

} // namespace puteal
