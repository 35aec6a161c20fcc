/// Writes the manifest of a plugin from its descriptors.
#include <filesystem>
#include <iterator>

#include <fmt/format.h>

#include "functions/manifest.h"

namespace puteal
{
namespace
{

std::string basicString(const std::string &words)
{
    std::string text = "\"";
    for (const char c : words) {
        if (c == '"' || c == '\\')
            text += '\\', text += c;
        else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F)
            text += fmt::format("\\u{:04X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        else
            text += c;
    }
    return text + '"';
}

class Writer
{
public:
    void block(const char *name) { m_text += fmt::format("\n[[{}]]\n", name); }
    void put(const char *key, const std::string &words)
    {
        if (!words.empty())
            m_text += fmt::format("{} = {}\n", key, basicString(words));
    }
    void put(const char *key, double number) { m_text += fmt::format("{} = {}\n", key, number); }
    void put(const char *key, std::uint32_t number) { m_text += fmt::format("{} = {}\n", key, number); }
    void put(const char *key, const std::vector<std::string> &words)
    {
        if (!words.empty())
            m_text += fmt::format("{} = {}\n", key, array(words));
    }
    void put(const char *key, const std::vector<std::vector<std::string>> &lists)
    {
        std::vector<std::string> arrays;
        arrays.reserve(lists.size());
        for (const auto &words : lists)
            arrays.push_back(array(words));
        if (!arrays.empty())
            m_text += fmt::format("{} = [{}]\n", key, fmt::join(arrays, ", "));
    }
    /// Left out where both ends are open.
    void putRange(const char *key, double low, double high)
    {
        if (low > -HUGE_VAL || high < HUGE_VAL)
            m_text += fmt::format("{} = [{}, {}]\n", key, low, high);
    }
    std::string take() { return std::move(m_text); }

private:
    static std::string array(const std::vector<std::string> &words)
    {
        std::vector<std::string> strings;
        strings.reserve(words.size());
        for (const auto &w : words)
            strings.push_back(basicString(w));
        return fmt::format("[{}]", fmt::join(strings, ", "));
    }

    std::string m_text;
};

std::string kindWord(ValueKind kind)
{
    switch (kind) {
    case ValueKind::yesNo:
        return "yes/no";
    case ValueKind::choice:
        return "choice";
    case ValueKind::words:
        return "words";
    case ValueKind::date:
        return "date";
    default:
        return {}; // a quantity goes without saying
    }
}

void putParameter(Writer &out, const ParameterInfo &p)
{
    out.block("function.parameter");
    out.put("name", p.name);
    out.put("kind", kindWord(p.kind));
    out.put("unit", p.pattern.text);
    out.put("meaning", p.meaning);
    std::vector<std::string> flags;
    const std::pair<bool, const char *> all[] = {{p.range, "range"},
                                                 {p.mayBeMissing, "may be missing"},
                                                 {p.mayBeBounded, "may be bounded"},
                                                 {p.repeats, "repeats"}};
    for (const auto &[on, word] : all) {
        if (on)
            flags.emplace_back(word);
    }
    out.put("flags", flags);
    out.putRange("hard", p.hardLow, p.hardHigh);
    out.putRange("usual", p.usualLow, p.usualHigh);
    if (p.hasDefault) {
        out.put("default", p.fallback);
        out.put("default_mark", p.fallbackMark);
    }
    out.put("choices", p.choices);
    out.put("choice_substances", p.choiceSubstances);
}

void putFunction(Writer &out, const FunctionInfo &f)
{
    out.block("function");
    out.put("name", f.name);
    out.put("title", f.title);
    out.put("purpose", f.purpose);
    out.put("result_kind", kindWord(f.resultKind));
    out.put("result_unit", f.result.text);
    out.put("result_choices", f.resultChoices);
    out.put("result_meaning", f.resultMeaning);
    out.put("relation", f.relation);
    out.put("safety", f.safety);
    out.put("sources", f.sources);
    for (const auto &p : f.parameters)
        putParameter(out, p);
    for (const auto &e : f.examples) {
        out.block("function.example");
        out.put("formula", e.formula);
        out.put("expected", e.expected);
        out.put("tolerance", e.tolerance);
        out.put("origin", e.origin);
        out.put("source", e.source);
    }
    for (const auto &e : f.refusals) {
        out.block("function.refusal");
        out.put("formula", e.formula);
        out.put("expected", e.expected);
    }
    for (const auto &c : f.cautions) {
        out.block("function.caution");
        out.put("key", c.key);
        out.put("when", c.when);
    }
}

} // namespace

std::string manifestText(const PluginDescription &plugin, const std::string &library)
{
    Writer out;
    const auto &info = plugin.info;
    out.put("id", info.id);
    out.put("title", info.title);
    out.put("contract", std::uint32_t{PUTEAL_CONTRACT});
    out.put("major", info.major);
    out.put("minor", info.minor);
    out.put("library", library);
    out.put("functions", info.functions);
    out.put("choice_lists", listsOf(plugin.functions));
    for (const auto &source : info.sources) {
        out.block("source");
        out.put("key", source.key);
        out.put("mark", source.mark);
        out.put("words", source.words);
    }
    for (const auto &f : plugin.functions)
        putFunction(out, f);
    return "# Written at build time from the library's own descriptors; the order of the blocks matters.\n" +
           out.take();
}

Result<std::string> manifestOf(const std::filesystem::path &library, const UnitTable &units)
{
    const auto plugin = openPlugin(library);
    if (!plugin)
        return tl::unexpected(plugin.error());
    const auto description = describe(**plugin, units);
    if (!description)
        return tl::unexpected(description.error());
    if (auto kept = keepsRules(*description); !kept)
        return tl::unexpected(kept.error());
    return manifestText(*description, library.filename().string());
}

} // namespace puteal
