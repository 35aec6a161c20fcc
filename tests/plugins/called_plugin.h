/// Opens a built plugin and calls its functions straight through the C contract, as the host does.
#pragma once

#include <cmath>
#include <cstring>
#include <dlfcn.h>
#include <string>
#include <vector>

#include "sdk/contract.h"

namespace called
{

/// One argument: a number, yes/no, the index of a choice, or nothing.
struct Given {
    double number = 0.0;
    std::uint32_t flags = 0;
    std::string label, shown;
    std::vector<double> items;
    Given(double x) : number(x) {} // NOLINT: arguments are written as bare numbers
};
inline Given missing(const std::string &label = {})
{
    Given g(std::nan(""));
    g.flags = PUTEAL_MISSING;
    g.label = label;
    return g;
}
inline Given below(double x, const std::string &shown = {})
{
    Given g(x);
    g.flags = PUTEAL_BELOW;
    g.shown = shown;
    return g;
}
inline Given above(double x, const std::string &shown = {})
{
    Given g(x);
    g.flags = PUTEAL_ABOVE;
    g.shown = shown;
    return g;
}
inline Given named(double x, const std::string &label, const std::string &shown)
{
    Given g(x);
    g.label = label;
    g.shown = shown;
    return g;
}
inline Given column(std::vector<double> items)
{
    Given g(0.0);
    g.items = std::move(items);
    return g;
}

struct Answer {
    double number = std::nan("");
    bool refused = false;
    std::uint32_t refusedArgument = 0;
    std::string words, reason;         ///< of the refusal; of the result
    std::vector<std::string> cautions; ///< keys
    bool warns(const std::string &key) const
    {
        for (const auto &c : cautions)
            if (c == key)
                return true;
        return false;
    }
};

class Plugin
{
public:
    explicit Plugin(const char *name)
    {
        const std::string path = std::string(PUTEAL_BUILD_DIR) + "/lib/puteal/plugins/" + name + ".so";
        void *handle = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
        const auto entry =
            handle ? reinterpret_cast<puteal_plugin_entry_type>(dlsym(handle, PUTEAL_PLUGIN_ENTRY)) : nullptr;
        m_plugin = entry ? entry() : nullptr;
    }
    bool isOpen() const { return m_plugin != nullptr; }
    const puteal_plugin &table() const { return *m_plugin; }

    const puteal_function *find(const std::string &name) const
    {
        for (std::size_t i = 0; m_plugin && i < m_plugin->function_count; ++i)
            if (name == m_plugin->functions[i].name)
                return &m_plugin->functions[i];
        return nullptr;
    }

    /// Arguments left out at the end take their defaults.
    Answer call(const std::string &name, const std::vector<Given> &given) const
    {
        Answer answer;
        const puteal_function *f = find(name);
        if (!f || given.size() > f->parameter_count) {
            answer.words = "no such function, or too many arguments";
            return answer;
        }
        std::vector<puteal_argument> arguments(f->parameter_count);
        for (std::size_t i = 0; i < f->parameter_count; ++i) {
            puteal_argument &a = arguments[i];
            a = {sizeof(puteal_argument), 0, f->parameters[i].fallback, nullptr, 0, "", ""};
            if (i < given.size())
                a = {sizeof(puteal_argument), given[i].flags,        given[i].number,
                     given[i].items.data(),   given[i].items.size(), given[i].label.c_str(),
                     given[i].shown.c_str()};
        }
        puteal_reply reply{sizeof(puteal_reply), 0, std::nan(""), &answer, onRefuse, onCaution, onReason};
        f->call(arguments.data(), arguments.size(), &reply);
        answer.number = reply.number;
        return answer;
    }

    /// Word of a choice result.
    std::string word(const std::string &name, const std::vector<Given> &given) const
    {
        const Answer answer = call(name, given);
        const puteal_function *f = find(name);
        if (!f || answer.refused || std::isnan(answer.number))
            return "refused: " + answer.words;
        return f->result_choices[static_cast<std::size_t>(answer.number)];
    }

private:
    static Answer &of(puteal_reply *reply) { return *static_cast<Answer *>(reply->host); }
    static void onRefuse(puteal_reply *reply, std::uint32_t argument, const char *words)
    {
        reply->refused = 1;
        of(reply).refused = true;
        of(reply).refusedArgument = argument;
        of(reply).words = words;
    }
    static void onCaution(puteal_reply *reply, const char *key, const char *)
    {
        of(reply).cautions.emplace_back(key);
    }
    static void onReason(puteal_reply *reply, const char *words) { of(reply).reason = words; }

    const puteal_plugin *m_plugin = nullptr;
};

} // namespace called
