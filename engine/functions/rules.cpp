/// The rules a plugin's descriptors keep to ship, and where a library and its manifest differ.
#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

#include "base/text.h"
#include "functions/descriptor.h"

namespace puteal
{
namespace
{

constexpr const char *marks = "LFMDSHEPTRCAW";

tl::unexpected<Error> broken(const std::string &words)
{
    return fail(ErrorKind::plugin, words);
}

bool ordered(double low, double high)
{
    return low <= high; // false for NaN
}

/// "" when the parameter keeps the rules.
std::string wrongWith(const ParameterInfo &p, bool isLast)
{
    if (!isName(p.name, true))
        return "its name is not lower_snake_case";
    if (p.meaning.empty())
        return "it needs a meaning, one line for help";
    if (p.kind == ValueKind::choice && p.choices.size() < 2)
        return "a choice needs at least two words";
    if (p.kind != ValueKind::choice && !p.choices.empty())
        return "it lists words but is no choice";
    if (std::set<std::string>(p.choices.begin(), p.choices.end()).size() != p.choices.size())
        return "a word of its list stands twice";
    for (const auto &substance : p.choiceSubstances) {
        if (!substance.empty() && !UnitTable::substanceId(substance))
            return fmt::format("\"{}\" is no substance of the table", substance);
    }
    if (p.kind != ValueKind::quantity && !p.pattern.text.empty())
        return "only a quantity has a unit";
    if (!ordered(p.hardLow, p.hardHigh) || !ordered(p.usualLow, p.usualHigh))
        return "a range needs its low end first";
    if (p.kind == ValueKind::date &&
        (p.hardLow > -HUGE_VAL || p.hardHigh < HUGE_VAL || p.usualLow > -HUGE_VAL || p.usualHigh < HUGE_VAL))
        return "a date takes no range: refuse it in the function";
    if (p.kind == ValueKind::date && (p.range || p.mayBeBounded))
        return "a date is a single value and never a bounded reading";
    if (p.hasDefault && p.fallbackMark.size() != 1)
        return "a default needs a source mark of one letter";
    if (p.hasDefault && std::string(marks).find(p.fallbackMark) == std::string::npos)
        return fmt::format("\"{}\" is no source mark", p.fallbackMark);
    if (p.hasDefault && (p.fallback < p.hardLow || p.fallback > p.hardHigh))
        return "its default lies outside its own hard range";
    if (p.hasDefault && p.kind == ValueKind::choice &&
        !(p.fallback >= 0 && p.fallback < static_cast<double>(p.choices.size())))
        return "its default is no word of its list";
    if (p.hasDefault && p.kind == ValueKind::date && p.fallback != std::floor(p.fallback))
        return "its default is no whole day";
    if (p.repeats && !isLast)
        return "only the last parameter may repeat";
    return {};
}

std::string wrongWithExamples(const FunctionInfo &f, const std::set<std::string> &keys)
{
    static const std::set<std::string> origins{"published", "computed", "common practice", "memory"};
    if (f.examples.size() < 2)
        return "it needs at least two worked examples";
    if (f.refusals.empty())
        return "it needs at least one refusal example";
    for (const auto &e : f.examples) {
        if (e.formula.find(f.name + "(") == std::string::npos)
            return fmt::format("the example {} does not call it", e.formula);
        if (e.expected.empty())
            return fmt::format("the example {} expects nothing", e.formula);
        if (!origins.count(e.origin))
            return fmt::format(
                "the example {} needs an origin: published, computed, common practice or memory", e.formula);
        if (!keys.count(e.source))
            return fmt::format("the example {} names the source \"{}\", which the plugin does not list",
                               e.formula, e.source);
        if (!(e.tolerance >= 0 && e.tolerance <= 1))
            return fmt::format("the tolerance of the example {} is not between 0 and 1", e.formula);
    }
    for (const auto &e : f.refusals) {
        if (e.formula.empty() || e.expected.empty())
            return "a refusal example needs a formula and the whole message";
    }
    return {};
}

std::string wrongWith(const FunctionInfo &f, const std::set<std::string> &keys)
{
    if (!isName(f.name) || isReservedWord(f.name))
        return "its name is not lower_snake_case or is a reserved word";
    if (f.title.empty() || f.purpose.empty())
        return "it needs a title and what it is for";
    if (f.relation.empty())
        return "it needs its relation as text";
    if (f.resultMeaning.empty())
        return "it needs the meaning of its result";
    if (f.resultKind == ValueKind::choice && f.resultChoices.size() < 2)
        return "a choice result needs at least two words";
    if (f.sources.empty())
        return "it needs a source";
    for (const auto &key : f.sources) {
        if (!keys.count(key))
            return fmt::format("it names the source \"{}\", which the plugin does not list", key);
    }
    bool optional = false;
    std::set<std::string> names;
    for (std::size_t i = 0; i < f.parameters.size(); ++i) {
        const auto &p = f.parameters[i];
        if (const auto wrong = wrongWith(p, i + 1 == f.parameters.size()); !wrong.empty())
            return fmt::format("parameter `{}`: {}", p.name, wrong);
        if (!names.insert(p.name).second)
            return fmt::format("two parameters are named `{}`", p.name);
        if (optional && !p.hasDefault)
            return fmt::format("parameter `{}` must have a default, as one before it has", p.name);
        optional = optional || p.hasDefault;
    }
    return wrongWithExamples(f, keys);
}

std::string patternKey(const UnitPattern &p)
{
    return fmt::format("{}|{}", p.text, p.substanceFrom);
}

bool sameParameter(const ParameterInfo &a, const ParameterInfo &b)
{
    return a.name == b.name && a.kind == b.kind && a.range == b.range && a.repeats == b.repeats &&
           a.mayBeMissing == b.mayBeMissing && a.mayBeBounded == b.mayBeBounded &&
           a.hasDefault == b.hasDefault && a.fallback == b.fallback &&
           patternKey(a.pattern) == patternKey(b.pattern) && a.choices == b.choices &&
           a.choiceSubstances == b.choiceSubstances && a.hardLow == b.hardLow && a.hardHigh == b.hardHigh &&
           a.usualLow == b.usualLow && a.usualHigh == b.usualHigh;
}

} // namespace

Result<void> keepsRules(const PluginDescription &plugin)
{
    const auto &info = plugin.info;
    if (!isName(info.id) || isReservedWord(info.id))
        return broken(fmt::format("the plugin's id \"{}\" is not lower_snake_case", info.id));
    if (info.title.empty())
        return broken(fmt::format("plugin `{}` needs a title", info.id));
    if (plugin.functions.empty())
        return broken(fmt::format("plugin `{}` has no function", info.id));
    std::set<std::string> keys;
    for (const auto &source : info.sources) {
        if (!isName(source.key, true) || source.words.empty() || source.mark.size() != 1 ||
            std::string(marks).find(source.mark) == std::string::npos)
            return broken(fmt::format(
                "source \"{}\" of plugin `{}` needs a lower_snake_case key, one mark of {} and words",
                source.key, info.id, marks));
        if (!keys.insert(source.key).second)
            return broken(fmt::format("source \"{}\" of plugin `{}` stands twice", source.key, info.id));
    }
    std::set<std::string> names;
    for (std::size_t i = 0; i < plugin.functions.size(); ++i) {
        const auto &f = plugin.functions[i];
        if (!names.insert(f.name).second)
            return broken(fmt::format("function `{}` stands twice in plugin `{}`", f.name, info.id));
        if (const auto wrong = wrongWith(f, keys); !wrong.empty())
            return broken(fmt::format("function `{}`: {}", f.name, wrong));
        if (!plugin.calls[i])
            return broken(fmt::format("function `{}` has nothing to call", f.name));
    }
    return {};
}

std::string difference(const FunctionInfo &a, const FunctionInfo &b)
{
    if (a.name != b.name)
        return fmt::format("the name (`{}` and `{}`)", a.name, b.name);
    if (a.parameters.size() != b.parameters.size())
        return "the number of parameters";
    for (std::size_t i = 0; i < a.parameters.size(); ++i) {
        if (!sameParameter(a.parameters[i], b.parameters[i]))
            return fmt::format("parameter `{}`", a.parameters[i].name);
    }
    if (a.resultKind != b.resultKind || patternKey(a.result) != patternKey(b.result) ||
        a.resultChoices != b.resultChoices)
        return "the result";
    return {};
}

} // namespace puteal
