/// `puteal functions`, `units`, `plugins`: what can be called and measured, and whether its examples still
/// hold.
#include <algorithm>
#include <cmath>
#include <map>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "cli/command.h"
#include "functions/functions_page.h"
#include "functions/search.h"
#include "session/example_run.h"

namespace puteal::cli
{

namespace
{

constexpr std::size_t mostFound = 25; // a screen

/// A group of functions with its count, by plugin id; general functions have none.
std::string groupText(const PluginInfo *plugin, const std::vector<const FunctionInfo *> &functions)
{
    std::string out = fmt::format(
        "{}: {} functions\n",
        plugin ? fmt::format("{} ({} {}.{})", plugin->title, plugin->id, plugin->major, plugin->minor)
               : std::string("General functions"),
        functions.size());
    for (const FunctionInfo *function : functions)
        out += fmt::format("  {:<33} {}\n", function->name, function->title);
    return out + "\n";
}

std::map<std::string, std::vector<const FunctionInfo *>> groupsOf(const Registry &registry)
{
    std::map<std::string, std::vector<const FunctionInfo *>> groups;
    for (const FunctionInfo &function : registry.functions())
        groups[function.plugin].push_back(&function);
    return groups;
}

constexpr const char nextStep[] =
    "puteal functions NAME tells what one is for, its arguments, sources and worked examples\n";

/// All functions; the last lines are what stays on the screen.
std::string allFunctions(const Registry &registry)
{
    std::string out, counts;
    for (const auto &[id, functions] : groupsOf(registry)) {
        const PluginInfo *plugin = id.empty() ? nullptr : registry.plugin(id);
        out += groupText(plugin, functions);
        counts += fmt::format("{:>4}  {:<12} {}\n", functions.size(), plugin ? plugin->id : "",
                              plugin ? plugin->title : "General functions");
    }
    return out + counts + fmt::format("{:>4}  in all\n\n", registry.functions().size()) + nextStep +
           "puteal functions WORD finds by a word of the trade, as in puteal functions head loss\n"
           "puteal functions PLUGIN lists those of one plugin\n";
}

/// A name of one word, as drawdown, is a word of the trade too: the other names that hold it.
std::string othersNamed(const FunctionInfo &function, const Registry &registry)
{
    std::vector<std::string> others;
    for (const FunctionInfo &other : registry.functions())
        if (("_" + other.name + "_").find("_" + function.name + "_") != std::string::npos &&
            other.name != function.name)
            others.push_back(other.name);
    return others.empty() ? std::string() : fmt::format("see also {}\n", joined(others));
}

std::string foundText(const std::string &words, const UnitTable &units, const FunctionSearch &search)
{
    std::string out;
    if (!search.everyWord)
        out += fmt::format("no function has all words of `{}`; these have some:\n", words);
    else
        out += fmt::format("{} {} for `{}`", search.found.size(),
                           search.found.size() == 1 ? "function" : "functions", words) +
               (search.alsoSaid.empty() ? std::string(":\n")
                                        : fmt::format(", also read as {}:\n", joined(search.alsoSaid)));
    const std::size_t shown = std::min(mostFound, search.found.size());
    for (std::size_t i = 0; i < shown; ++i)
        out += fmt::format("  {:<33} {}\n", search.found[i]->name, search.found[i]->title);
    if (shown < search.found.size())
        out += fmt::format("  and {} more: add a word\n", search.found.size() - shown);
    if (units.find(words))
        out += fmt::format("\n`{0}` is a unit: puteal units {0}", words);
    return out + "\n" + nextStep;
}

} // namespace

int functionsCommand(const Options &options)
{
    const UnitTable units;
    const auto registry = Registry::create(units, foldersOf(options));
    if (options.word.empty())
        return put(allFunctions(*registry));
    if (const FunctionInfo *function = registry->find(options.word))
        return put(helpWithResults(*function, *registry, foldersOf(options)) +
                   othersNamed(*function, *registry));
    if (const PluginInfo *plugin = registry->plugin(options.word);
        plugin && plugin->state == PluginInfo::State::enabled)
        return put(groupText(plugin, groupsOf(*registry)[plugin->id]) + nextStep);
    const FunctionSearch search = searchFunctions(*registry, options.word);
    // words joined by underscores are a name: half of them found is no answer to a slip in it
    const bool meansName = options.word.find('_') != std::string::npos;
    if (!search.found.empty() && (search.everyWord || !meansName))
        return put(foundText(options.word, units, search));
    const auto close = registry->closestNames(options.word);
    complain(fmt::format("no function is found for `{}`{}", options.word,
                         close.empty() ? std::string("; puteal functions lists all of them")
                                       : "; did you mean " + joined(close) + "?"));
    return wrongUse;
}

int unitsCommand(const Options &options)
{
    const UnitTable units;
    if (options.word.empty()) {
        std::string out;
        for (const UnitWord &unit : units.words())
            out += fmt::format("{:<12} {:<40} {}\n", unit.word, unit.name, unit.definition);
        return put(out);
    }
    const UnitWord *unit = units.find(options.word);
    if (const auto id = UnitTable::substanceId(options.word); !unit && id)
        return put(fmt::format("{}: {}, a substance: write it after \"as\", for example 3 mg/L as {}\n",
                               options.word, UnitTable::substanceName(*id), options.word));
    if (const auto composed = readUnit(options.word, units); !unit && composed && !composed->text.empty())
        return put(fmt::format("{}: {}\nis: 1 {} = {} of the base units dm, mg, s, K, mmol, A, $\n",
                               composed->text, spokenUnit(*composed, units), composed->text,
                               composed->factor));
    if (!unit) {
        const auto close = units.closestWords(options.word);
        complain(fmt::format("`{}` is no unit{}", options.word,
                             close.empty() ? std::string() : "; did you mean " + joined(close) + "?"));
        return wrongUse;
    }
    std::string_view source = unit->source;
    for (const UnitSource &row : UnitTable::sources())
        if (row.key == unit->source)
            source = row.words;
    std::string out = fmt::format("{}: {}\n", unit->word, unit->name);
    if (const auto spellings = unit->spellings(); !spellings.empty())
        out += fmt::format("also written: {}\n", fmt::join(spellings, ", "));
    out += fmt::format("is: {}\n", unit->definition);
    if (!unit->note.empty())
        out += fmt::format("note: {}\n", unit->note);
    out += fmt::format("source: {}\n", source);
    return put(out);
}

int pluginsCommand(const Options &options)
{
    const UnitTable units;
    const auto registry = Registry::create(units, foldersOf(options));
    std::string out;
    for (const PluginInfo &plugin : registry->plugins()) {
        const bool enabled = plugin.state == PluginInfo::State::enabled;
        out += fmt::format("{:<14} {}.{}  {} functions  {}\n", plugin.id, plugin.major, plugin.minor,
                           plugin.functions.size(), enabled ? plugin.title : plugin.problem);
    }
    if (out.empty())
        out = "no plugin was found\n";
    return put(out);
}

int verifyCommand(const Options &options)
{
    const PluginFolders folders = foldersOf(options);
    const auto session = Session::createNew(folders);
    const Registry &registry = session->program().registry();
    std::map<std::string, std::size_t> passed;
    std::size_t refusals = 0, failures = 0;
    std::string out;
    for (const FunctionInfo &function : registry.functions()) {
        for (const ExampleInfo &example : function.examples) {
            const ExampleRun run = runExample(*session, example, folders);
            if (run.holds) {
                ++passed[example.origin];
                continue;
            }
            ++failures;
            out += fmt::format("{}: {} should give {}, gives {}\n", function.name, example.formula,
                               example.expected, run.obtained);
        }
        for (const ExampleInfo &refusal : function.refusals) {
            const ExampleRun run = runRefusal(*session, refusal, folders);
            if (run.holds) {
                ++refusals;
                continue;
            }
            ++failures;
            out += fmt::format("{}: {} should be refused with \"{}\", but: {}\n", function.name,
                               refusal.formula, refusal.expected, run.obtained);
        }
    }
    if (registry.plugins().empty()) {
        complain("no plugin was found, so nothing of the trade was verified; is the folder "
                 "lib/puteal/plugins beside bin?");
        return pluginFailed;
    }
    for (const PluginInfo &plugin : registry.plugins())
        if (plugin.state != PluginInfo::State::enabled) {
            ++failures;
            out += fmt::format("plugin {}: {}\n", plugin.id, plugin.problem);
        }
    std::size_t all = 0;
    for (const auto &[origin, count] : passed) {
        out += fmt::format("{:<16} {:>4} hold\n", origin, count);
        all += count;
    }
    out += fmt::format("refusals         {:>4} hold\n{} functions, {} examples hold, {} fail\n", refusals,
                       registry.functions().size(), all + refusals, failures);
    if (const int written = put(out); written != good)
        return written;
    return failures == 0 ? good : pluginFailed;
}

} // namespace puteal::cli
