/// Plain-text help on one function.
#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "functions/functions_page.h"
#include "functions/general.h"
#include "functions/parameter_words.h"

namespace puteal
{
namespace
{

constexpr std::size_t width = 100;

/// Words in lines of at most `width`, all indented.
std::string wrapped(const std::string &words, std::size_t indent)
{
    std::string text, line;
    const std::string blank(indent, ' ');
    std::size_t at = 0;
    while (at < words.size()) {
        const auto end = std::min(words.find(' ', at), words.size());
        const auto word = words.substr(at, end - at);
        if (!line.empty() && indent + codePoints(line) + 1 + codePoints(word) > width) {
            text += blank + line + "\n";
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
        at = end + 1;
    }
    return text + blank + line + "\n";
}

const std::vector<SourceInfo> &sourcesOf(const FunctionInfo &f, const Registry &registry)
{
    if (const auto *plugin = registry.plugin(f.plugin))
        return plugin->sources;
    return generalSources();
}

std::string sourcesText(const FunctionInfo &f, const Registry &registry)
{
    std::string text = "sources\n";
    for (const auto &source : sourcesOf(f, registry)) {
        if (std::find(f.sources.begin(), f.sources.end(), source.key) != f.sources.end())
            text += wrapped(fmt::format("{} ({}): {}", source.key, markWords(source.mark), source.words), 2);
    }
    return text;
}

/// The formula as it is typed into a cell; columns that an example brings along stand under it.
std::string formulaText(const std::string &example)
{
    std::vector<std::string> parts;
    std::size_t at = 0;
    for (auto end = example.find(';'); end != std::string::npos; end = example.find(';', at)) {
        parts.push_back(example.substr(at, end - at));
        at = example.find_first_not_of(' ', end + 1);
    }
    std::string text = fmt::format("  {}\n", example.substr(at));
    for (const auto &column : parts)
        text += wrapped("with column " + column, 6);
    return text;
}

std::string examplesText(const FunctionInfo &f,
                         const std::function<std::string(const ExampleInfo &)> &obtained)
{
    std::string text;
    if (!f.examples.empty())
        text += "examples\n";
    for (const auto &e : f.examples)
        text += formulaText(e.formula) + fmt::format("      expected {} ({}, {}){}\n", e.expected, e.origin,
                                                     e.source,
                                                     obtained ? "; obtained " + obtained(e) : std::string());
    if (!f.refusals.empty())
        text += "refused\n";
    for (const auto &e : f.refusals)
        text += formulaText(e.formula) + wrapped(e.expected, 6);
    return text;
}

} // namespace

std::string functionHelp(const FunctionInfo &function, const Registry &registry,
                         const std::function<std::string(const ExampleInfo &)> &obtained)
{
    const auto &f = function;
    std::string text = fmt::format("{}\n{}\n\n", f.call(), f.title) + wrapped(f.purpose, 0);
    text += "\narguments\n";
    for (const auto &p : f.parameters)
        text += fmt::format("  {}\n", p.name) + wrapped(parameterWords(p), 6);
    text += "gives\n" + wrapped(resultWords(f), 2);
    if (!f.relation.empty())
        text += fmt::format("relation\n  {}\n", f.relation);
    text += sourcesText(f, registry) + examplesText(f, obtained);
    if (!f.cautions.empty())
        text += "cautions\n";
    for (const auto &c : f.cautions)
        text += wrapped(fmt::format("{}: {}", c.key, c.when), 2);
    if (!f.safety.empty())
        text += "safety\n" + wrapped(f.safety, 2);
    if (const auto *plugin = registry.plugin(f.plugin))
        text += fmt::format("\nfrom plugin {} {}.{}\n", plugin->id, plugin->major, plugin->minor);
    return text;
}

} // namespace puteal
