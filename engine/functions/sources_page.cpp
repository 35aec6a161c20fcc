/// Builds the page of sources from the descriptors of the plugins.
#include "functions/sources_page.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "functions/functions_page.h"

namespace puteal
{

namespace
{

/// A table cell must not break its row.
std::string inTable(std::string words)
{
    for (std::size_t i = 0; (i = words.find('|', i)) != std::string::npos; i += 2)
        words.insert(i, "\\");
    return words;
}

struct Use {
    std::vector<std::string> functions;
    std::size_t examples = 0;
};

std::map<std::string, Use> usesOf(const PluginInfo &plugin, const Registry &registry)
{
    std::map<std::string, Use> uses;
    for (const std::string &name : plugin.functions) {
        const FunctionInfo *function = registry.find(name);
        if (!function)
            continue;
        for (const std::string &key : function->sources)
            uses[key].functions.push_back(name);
        for (const ExampleInfo &example : function->examples)
            ++uses[example.source].examples;
    }
    return uses;
}

} // namespace

std::string sourcesPage(const Registry &registry)
{
    std::string out = "# Sources\n\nWritten from the program's own tables. Each row: the key a function "
                      "cites, its mark (S standard, H handbook, "
                      "T trade practice,\nR recalled and unconfirmed, W worked out), and the functions and "
                      "worked examples that rest on it.\n";
    std::map<std::string, std::size_t> origins;
    std::string recalled;
    for (const PluginInfo &plugin : registry.plugins()) {
        const auto uses = usesOf(plugin, registry);
        out += fmt::format(
            "\n## {}\n\n| key | mark | source | functions | examples |\n| --- | --- | --- | --- | --- |\n",
            plugin.title);
        for (const SourceInfo &source : plugin.sources) {
            const auto found = uses.find(source.key);
            const Use use = found == uses.end() ? Use{} : found->second;
            out += fmt::format("| {} | {} | {} | {} | {} |\n", source.key, source.mark, inTable(source.words),
                               fmt::join(use.functions, ", "), use.examples);
        }
        for (const std::string &name : plugin.functions) {
            const FunctionInfo *function = registry.find(name);
            if (!function)
                continue;
            for (const ExampleInfo &example : function->examples) {
                ++origins[example.origin];
                if (example.origin == "memory")
                    recalled += fmt::format("- `{}`: {}\n", example.formula, example.expected);
            }
            for (const ParameterInfo &parameter : function->parameters)
                if (parameter.hasDefault && parameter.fallbackMark == "R")
                    recalled += fmt::format("- default of `{}` in `{}`: {}\n", parameter.name, name,
                                            defaultWords(parameter));
            for (const SourceInfo &source : plugin.sources)
                if (source.mark == "R" && std::find(function->sources.begin(), function->sources.end(),
                                                    source.key) != function->sources.end())
                    recalled += fmt::format("- `{}`: {}\n", name, source.words);
        }
    }
    out += "\n## Worked examples by origin\n\n| origin | examples |\n| --- | --- |\n";
    for (const auto &[origin, count] : origins)
        out += fmt::format("| {} | {} |\n", origin, count);
    out += "\n## What rests on memory\n\n" + (recalled.empty() ? std::string("Nothing.\n") : recalled);
    return out;
}

} // namespace puteal
