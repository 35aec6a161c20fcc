/// The registry: names at start, a function's description when it is asked for, its library at the first
/// call.
#include "functions/registry.h"

#include <algorithm>
#include <map>
#include <mutex>

#include <fmt/format.h>

#include "base/text.h"
#include "functions/descriptions.h"
#include "functions/folders.h"
#include "functions/general.h"
#include "functions/other_words.h"

namespace puteal
{
namespace
{

class LazyRegistry final : public Registry
{
public:
    LazyRegistry(const UnitTable &units, FoundPlugins found);

    const FunctionInfo *find(std::string_view name) const override;
    std::span<const FunctionInfo> functions() const override;
    const std::vector<PluginInfo> &plugins() const override;
    std::vector<std::string> closestNames(std::string_view name) const override;
    Result<puteal_call> callOf(const FunctionInfo &function) const override;
    Error whyNot(std::string_view name) const override;
    std::vector<std::vector<std::string>> choiceLists() const override;

private:
    enum class State : std::uint8_t { unread, good, damaged };
    struct Blocks {
        bool tried = false;
        std::string problem; ///< why the manifest's blocks cannot be used
    };
    struct Library {
        bool tried = false;
        const puteal_plugin *plugin = nullptr;
        Error error;
    };

    bool isGeneral(std::size_t index) const { return m_origins[index].plugin == NameOrigin::general; }
    const std::string &pluginId(std::size_t index) const { return m_found[m_origins[index].plugin].info.id; }
    void readGroup(std::uint32_t group) const;
    void readBlock(std::size_t index) const;
    void makeBare(std::size_t index) const;
    bool readSlot(std::size_t index) const;
    const std::string &fetched(std::size_t plugin) const;
    const Library &openedLibrary(std::size_t plugin) const;
    Result<puteal_call> matchedCall(const FunctionInfo &function, std::size_t position,
                                    const puteal_plugin &plugin) const;

    UnitTable m_units;
    mutable std::vector<FoundPlugin> m_found; ///< the blocks of their manifests are fetched when wanted
    const WordIndex m_names;
    const std::vector<NameOrigin> m_origins; ///< one a name, as all that follow
    mutable std::recursive_mutex m_mutex;
    mutable std::vector<State> m_states;
    mutable Descriptions m_functions;
    mutable std::map<std::size_t, std::string> m_problems; ///< of damaged blocks
    mutable std::vector<puteal_call> m_calls;
    mutable std::vector<Blocks> m_blocks;
    mutable std::vector<Library> m_libraries;
    mutable std::vector<PluginInfo> m_plugins;
    mutable std::vector<std::vector<std::string>> m_choiceLists; ///< read when a word is nothing else
    mutable bool m_allRead = false;
};

LazyRegistry::LazyRegistry(const UnitTable &units, FoundPlugins found)
    : m_units(units), m_found(std::move(found.plugins)), m_names(std::move(found.names)),
      m_origins(std::move(found.origins)), m_states(m_origins.size(), State::unread),
      m_functions(m_origins.size()), m_calls(m_origins.size(), nullptr), m_blocks(m_found.size()),
      m_libraries(m_found.size())
{
}

/// Fetches a plugin's blocks once; what is wrong with them, or "".
const std::string &LazyRegistry::fetched(std::size_t plugin) const
{
    auto &blocks = m_blocks[plugin];
    if (!blocks.tried) {
        blocks.tried = true;
        if (auto done = fetchBlocks(m_found[plugin]); !done)
            blocks.problem = done.error().words;
    }
    return blocks.problem;
}

/// Builds a group of general functions.
void LazyRegistry::readGroup(std::uint32_t group) const
{
    for (auto &f : generalGroups()[group].build(m_units)) {
        const auto index = *m_names.find(f.name);
        f.index = static_cast<std::uint32_t>(index);
        m_functions.make(index, std::move(f));
        m_states[index] = State::good;
    }
}

void LazyRegistry::readBlock(std::size_t index) const
{
    const auto [plugin, position] = m_origins[index];
    m_states[index] = State::damaged;
    auto &problem = m_problems[index];
    if (problem = fetched(plugin); !problem.empty())
        return;
    auto f = readFunction(m_found[plugin].manifest->blocks[position], m_units);
    if (!f) {
        problem = f.error().words;
    } else if (f->name != m_names.words()[index]) {
        problem = fmt::format("its block describes `{}`", f->name);
    } else {
        f->plugin = pluginId(index);
        f->index = static_cast<std::uint32_t>(index);
        m_functions.make(index, std::move(*f));
        m_states[index] = State::good;
        m_problems.erase(index);
    }
}

/// Reads a function's description once; false when it is damaged.
bool LazyRegistry::readSlot(std::size_t index) const
{
    if (m_states[index] == State::unread) {
        if (isGeneral(index))
            readGroup(m_origins[index].position);
        else
            readBlock(index);
    }
    return m_states[index] == State::good;
}

/// A damaged function is listed with its name and plugin.
void LazyRegistry::makeBare(std::size_t index) const
{
    FunctionInfo f;
    f.name = m_names.words()[index];
    f.plugin = pluginId(index);
    f.index = static_cast<std::uint32_t>(index);
    m_functions.make(index, std::move(f));
}

const FunctionInfo *LazyRegistry::find(std::string_view name) const
{
    const auto index = m_names.find(name);
    if (!index)
        return nullptr;
    const std::lock_guard lock(m_mutex);
    return readSlot(*index) ? &m_functions.at(*index) : nullptr;
}

std::span<const FunctionInfo> LazyRegistry::functions() const
{
    const std::lock_guard lock(m_mutex);
    for (std::size_t i = 0; !m_allRead && i < m_states.size(); ++i) {
        if (!readSlot(i))
            makeBare(i);
    }
    m_allRead = true;
    return m_functions.all();
}

const std::vector<PluginInfo> &LazyRegistry::plugins() const
{
    const std::lock_guard lock(m_mutex);
    if (m_plugins.size() != m_found.size()) {
        for (std::size_t i = 0; i < m_found.size(); ++i) {
            const auto &found = m_found[i];
            m_plugins.push_back(found.info);
            if (!found.manifest)
                continue;
            if (const auto &problem = fetched(i); !problem.empty()) {
                if (found.info.state != PluginInfo::State::refused) {
                    m_plugins.back().state = PluginInfo::State::refused;
                    m_plugins.back().problem = problem;
                }
                continue;
            }
            if (auto sources = readSources(found.manifest->sources))
                m_plugins.back().sources = std::move(*sources);
        }
    }
    return m_plugins;
}

std::vector<std::string> LazyRegistry::closestNames(std::string_view name) const
{
    if (auto known = otherWordsFor(name); !known.empty())
        return known;
    if (!signFor(name).empty())
        return {};
    std::vector<std::string> names(m_names.words().begin(), m_names.words().end());
    std::sort(names.begin(), names.end());
    return closest(name, names);
}

Error LazyRegistry::whyNot(std::string_view name) const
{
    const auto error = [](ErrorKind kind, std::string words) {
        return Error{kind, std::move(words), {}, {}};
    };
    if (const auto known = m_names.find(name); known && !isGeneral(*known)) {
        const std::lock_guard lock(m_mutex);
        if (const auto &problem = m_blocks[m_origins[*known].plugin].problem; !problem.empty())
            return error(ErrorKind::plugin,
                         fmt::format("`{}` needs the plugin {}: {}", name, pluginId(*known), problem));
        const auto damaged = m_problems.find(*known);
        return error(ErrorKind::plugin,
                     fmt::format("the manifest of plugin {} is damaged at `{}`: {}; install it again",
                                 pluginId(*known), name,
                                 damaged == m_problems.end() ? std::string() : damaged->second));
    }
    for (const auto &found : m_found) {
        const auto &names = found.info.functions;
        if (std::find(names.begin(), names.end(), name) != names.end() &&
            found.info.state != PluginInfo::State::enabled) {
            return error(ErrorKind::plugin, fmt::format("`{}` needs the plugin {}, which {}", name,
                                                        found.info.id, found.info.problem));
        }
    }
    if (const auto sign = signFor(name); !sign.empty())
        return error(ErrorKind::name, fmt::format("no function is named `{}`: write {}", name, sign));
    const auto near = closestNames(name);
    return error(ErrorKind::name,
                 near.empty() ? fmt::format("no function is named `{}`", name)
                              : fmt::format("no function is named `{}`; {}?", name, fmt::join(near, ", ")));
}

std::vector<std::vector<std::string>> LazyRegistry::choiceLists() const
{
    const std::lock_guard lock(m_mutex);
    if (m_choiceLists.empty()) {
        m_choiceLists.push_back(generalChoices());
        for (const auto &found : m_found) {
            if (found.info.state != PluginInfo::State::enabled)
                continue;
            for (auto &list : readChoiceLists(found.manifest->choiceLists))
                m_choiceLists.push_back(std::move(list));
        }
    }
    return m_choiceLists;
}

const LazyRegistry::Library &LazyRegistry::openedLibrary(std::size_t which) const
{
    auto &library = m_libraries[which];
    if (library.tried)
        return library;
    library.tried = true;
    const auto &info = m_found[which].info;
    const auto opened = openPlugin(info.library);
    if (!opened) {
        library.error = opened.error();
    } else if (!(*opened)->id || info.id != (*opened)->id || info.major != (*opened)->major ||
               info.minor != (*opened)->minor || info.functions.size() != (*opened)->function_count) {
        library.error =
            Error{ErrorKind::plugin,
                  fmt::format("plugin {} is not the one its manifest describes: install it again", info.id),
                  {},
                  {}};
    } else {
        library.plugin = *opened;
    }
    return library;
}

Result<puteal_call> LazyRegistry::matchedCall(const FunctionInfo &function, std::size_t position,
                                              const puteal_plugin &plugin) const
{
    const auto own = describeFunction(plugin, position, m_units);
    if (!own)
        return tl::unexpected(own.error());
    if (const auto where = difference(function, *own); !where.empty()) {
        return fail(
            ErrorKind::plugin,
            fmt::format(
                "`{}` of plugin {} is not the one its manifest describes: {} differs; install it again",
                function.name, function.plugin, where));
    }
    const puteal_call call = callAt(plugin, position);
    if (!call)
        return fail(ErrorKind::plugin,
                    fmt::format("`{}` of plugin {} has nothing to call", function.name, function.plugin));
    return call;
}

Result<puteal_call> LazyRegistry::callOf(const FunctionInfo &function) const
{
    const std::lock_guard lock(m_mutex);
    if (function.index >= m_origins.size() || isGeneral(function.index))
        return fail(ErrorKind::plugin, fmt::format("`{}` is no function of a plugin", function.name));
    auto &known = m_calls[function.index];
    if (known)
        return known;
    const auto [plugin, position] = m_origins[function.index];
    const auto &library = openedLibrary(plugin);
    if (!library.plugin)
        return tl::unexpected(library.error);
    const auto call = matchedCall(function, position, *library.plugin);
    if (call)
        known = *call;
    return call;
}

} // namespace

std::shared_ptr<const Registry> Registry::create(const UnitTable &units, const PluginFolders &folders)
{
    return std::make_shared<LazyRegistry>(units, findPlugins(folders));
}

std::shared_ptr<const Registry> Registry::general(const UnitTable &units)
{
    return std::make_shared<LazyRegistry>(units, onlyGeneral());
}

std::vector<std::vector<std::string>> Registry::choiceLists() const
{
    return listsOf(functions());
}

const PluginInfo *Registry::plugin(std::string_view id) const
{
    for (const auto &info : plugins()) {
        if (info.id == id)
            return &info;
    }
    return nullptr;
}

} // namespace puteal
