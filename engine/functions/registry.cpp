/// The registry: names at start, a function's description when it is asked for, its library at the first
/// call.
#include "functions/registry.h"

#include <algorithm>
#include <mutex>
#include <unordered_map>

#include <fmt/format.h>

#include "base/text.h"
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
    LazyRegistry(const UnitTable &units, std::vector<FoundPlugin> found);

    const FunctionInfo *find(std::string_view name) const override;
    const std::vector<FunctionInfo> &functions() const override;
    const std::vector<PluginInfo> &plugins() const override;
    std::vector<std::string> closestNames(std::string_view name) const override;
    Result<puteal_call> callOf(const FunctionInfo &function) const override;
    Error whyNot(std::string_view name) const override;
    std::vector<std::vector<std::string>> choiceLists() const override;

private:
    static constexpr std::size_t noPlugin = static_cast<std::size_t>(-1);
    /// What is known of a function before it is read.
    struct Slot {
        std::size_t plugin = noPlugin; ///< in m_found; none for general functions
        std::size_t position = 0;      ///< in the plugin; general functions: their group
        bool read = false;
        std::string problem; ///< its block is damaged
        puteal_call call = nullptr;
    };
    struct Blocks {
        bool tried = false;
        std::string problem; ///< why the manifest's blocks cannot be used
    };
    struct Library {
        bool tried = false;
        const puteal_plugin *plugin = nullptr;
        Error error;
    };

    void addSlot(std::string_view name, const std::string &plugin, Slot slot);
    void addPlugin(std::size_t which);
    void readGroup(std::size_t group) const;
    bool readSlot(std::size_t index) const;
    const std::string &fetched(std::size_t plugin) const;
    const Library &openedLibrary(std::size_t plugin) const;
    Result<puteal_call> matchedCall(const FunctionInfo &function, const Slot &slot,
                                    const puteal_plugin &plugin) const;

    UnitTable m_units;
    mutable std::vector<FoundPlugin> m_found; ///< the blocks of their manifests are fetched when wanted
    std::unordered_map<std::string_view, std::size_t> m_index; ///< views into m_found's names and literals
    mutable std::recursive_mutex m_mutex;
    mutable std::vector<FunctionInfo> m_functions; ///< never grows after construction: pointers into it stay
    mutable std::vector<Slot> m_slots;
    mutable std::vector<Blocks> m_blocks;
    mutable std::vector<Library> m_libraries;
    mutable std::vector<PluginInfo> m_plugins;
    mutable std::vector<std::vector<std::string>> m_choiceLists; ///< read when a word is nothing else
    mutable bool m_allRead = false;
};

LazyRegistry::LazyRegistry(const UnitTable &units, std::vector<FoundPlugin> found)
    : m_units(units), m_found(std::move(found))
{
    const auto &groups = generalGroups();
    std::size_t most = 0;
    for (const auto &group : groups)
        most += group.names.size();
    for (const auto &plugin : m_found)
        most += plugin.info.functions.size();
    m_functions.reserve(most);
    m_slots.reserve(most);
    m_index.reserve(most);
    for (std::size_t group = 0; group < groups.size(); ++group) {
        for (const char *name : groups[group].names)
            addSlot(name, {}, {noPlugin, group, false, {}, nullptr});
    }
    for (std::size_t i = 0; i < m_found.size(); ++i)
        addPlugin(i);
    m_blocks.resize(m_found.size());
    m_libraries.resize(m_found.size());
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

void LazyRegistry::addSlot(std::string_view name, const std::string &plugin, Slot slot)
{
    FunctionInfo f;
    f.name = name;
    f.plugin = plugin;
    f.index = static_cast<std::uint32_t>(m_functions.size());
    m_index.emplace(name, m_functions.size());
    m_functions.push_back(std::move(f));
    m_slots.push_back(std::move(slot));
}

void LazyRegistry::addPlugin(std::size_t which)
{
    auto &info = m_found[which].info;
    if (info.state != PluginInfo::State::enabled)
        return;
    for (const auto &name : info.functions) {
        if (m_index.count(name)) {
            info.state = PluginInfo::State::refused;
            info.problem = fmt::format("its function {} is already a general function", name);
            return;
        }
    }
    for (std::size_t i = 0; i < info.functions.size(); ++i)
        addSlot(info.functions[i], info.id, {which, i, false, {}, nullptr});
}

/// Builds the group of general functions that holds a slot.
void LazyRegistry::readGroup(std::size_t group) const
{
    auto built = generalGroups()[group].build(m_units);
    for (auto &f : built) {
        const auto index = m_index.at(f.name);
        f.index = static_cast<std::uint32_t>(index);
        m_slots[index].read = true;
        m_functions[index] = std::move(f);
    }
}

/// Reads a function's block once; false when it is damaged.
bool LazyRegistry::readSlot(std::size_t index) const
{
    auto &slot = m_slots[index];
    if (!slot.read && slot.plugin == noPlugin) {
        readGroup(slot.position);
    } else if (!slot.read) {
        slot.read = true;
        auto &place = m_functions[index];
        if (slot.problem = fetched(slot.plugin); !slot.problem.empty())
            return false;
        auto f = readFunction(m_found[slot.plugin].manifest->blocks[slot.position], m_units);
        if (!f) {
            slot.problem = f.error().words;
        } else if (f->name != place.name) {
            slot.problem = fmt::format("its block describes `{}`", f->name);
        } else {
            f->plugin = place.plugin;
            f->index = place.index;
            place = std::move(*f);
        }
    }
    return slot.problem.empty();
}

const FunctionInfo *LazyRegistry::find(std::string_view name) const
{
    const auto found = m_index.find(name);
    if (found == m_index.end())
        return nullptr;
    const std::lock_guard lock(m_mutex);
    return readSlot(found->second) ? &m_functions[found->second] : nullptr;
}

const std::vector<FunctionInfo> &LazyRegistry::functions() const
{
    const std::lock_guard lock(m_mutex);
    for (std::size_t i = 0; !m_allRead && i < m_slots.size(); ++i)
        readSlot(i);
    m_allRead = true;
    return m_functions;
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
    std::vector<std::string> names;
    for (const auto &[known, index] : m_index)
        names.emplace_back(known);
    std::sort(names.begin(), names.end());
    return closest(name, names);
}

Error LazyRegistry::whyNot(std::string_view name) const
{
    const auto error = [](ErrorKind kind, std::string words) {
        return Error{kind, std::move(words), {}, {}};
    };
    if (const auto known = m_index.find(name); known != m_index.end()) {
        const std::lock_guard lock(m_mutex);
        const auto &slot = m_slots[known->second];
        if (slot.plugin != noPlugin && !m_blocks[slot.plugin].problem.empty()) {
            return error(ErrorKind::plugin,
                         fmt::format("`{}` needs the plugin {}: {}", name, m_functions[known->second].plugin,
                                     m_blocks[slot.plugin].problem));
        }
        return error(ErrorKind::plugin,
                     fmt::format("the manifest of plugin {} is damaged at `{}`: {}; install it again",
                                 m_functions[known->second].plugin, name, slot.problem));
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

Result<puteal_call> LazyRegistry::matchedCall(const FunctionInfo &function, const Slot &slot,
                                              const puteal_plugin &plugin) const
{
    const auto own = describeFunction(plugin, slot.position, m_units);
    if (!own)
        return tl::unexpected(own.error());
    if (const auto where = difference(function, *own); !where.empty()) {
        return fail(
            ErrorKind::plugin,
            fmt::format(
                "`{}` of plugin {} is not the one its manifest describes: {} differs; install it again",
                function.name, function.plugin, where));
    }
    const puteal_call call = callAt(plugin, slot.position);
    if (!call)
        return fail(ErrorKind::plugin,
                    fmt::format("`{}` of plugin {} has nothing to call", function.name, function.plugin));
    return call;
}

Result<puteal_call> LazyRegistry::callOf(const FunctionInfo &function) const
{
    const std::lock_guard lock(m_mutex);
    if (function.index >= m_slots.size() || m_slots[function.index].plugin == noPlugin)
        return fail(ErrorKind::plugin, fmt::format("`{}` is no function of a plugin", function.name));
    auto &slot = m_slots[function.index];
    if (slot.call)
        return slot.call;
    const auto &library = openedLibrary(slot.plugin);
    if (!library.plugin)
        return tl::unexpected(library.error);
    const auto call = matchedCall(function, slot, *library.plugin);
    if (call)
        slot.call = *call;
    return call;
}

} // namespace

std::shared_ptr<const Registry> Registry::create(const UnitTable &units, const PluginFolders &folders)
{
    return std::make_shared<LazyRegistry>(units, findPlugins(folders));
}

std::shared_ptr<const Registry> Registry::general(const UnitTable &units)
{
    return std::make_shared<LazyRegistry>(units, std::vector<FoundPlugin>());
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
