/// All functions that may be called: general ones and those of the plugins found; opens a library at the
/// first call.
#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "functions/signature.h"
#include "sdk/contract.h"

namespace puteal
{

struct PluginInfo {
    enum class State : std::uint8_t { enabled, notEnabled, refused };
    std::string id, title;
    std::uint32_t major = 0, minor = 0;
    std::filesystem::path library, manifest;
    State state = State::enabled;
    std::string problem; ///< why refused or not enabled, with the next step
    std::vector<SourceInfo> sources;
    std::vector<std::string> functions;
};

/// Where plugins are looked for, in order. Never the current folder, never beside a workbook.
struct PluginFolders {
    std::vector<std::filesystem::path> chosen;  ///< --plugin-dir
    std::vector<std::filesystem::path> shipped; ///< installed folder(s): trusted by place
    /// chosen from the arguments, PUTEAL_PLUGIN_PATH, the user's data folder, then the folder that belongs to
    /// the running program (../lib/puteal/plugins from its folder).
    static PluginFolders standard(const std::vector<std::filesystem::path> &chosen = {});
};

class Registry
{
public:
    /// General functions, then every manifest found. A bad plugin never fails the whole: it is listed as
    /// refused.
    static std::shared_ptr<const Registry> create(const UnitTable &units, const PluginFolders &folders);
    /// Only the general functions.
    static std::shared_ptr<const Registry> general(const UnitTable &units);
    virtual ~Registry() = default;

    virtual const FunctionInfo *find(std::string_view name) const = 0;
    /// All of them; those found before stay where they are.
    virtual std::span<const FunctionInfo> functions() const = 0;
    virtual const std::vector<PluginInfo> &plugins() const = 0;
    virtual std::vector<std::string> closestNames(std::string_view name) const = 0;
    /// Opens the library on first use; thread-safe. Errors: missing, not enabled, contract differs,
    /// descriptor differs from the manifest.
    virtual Result<puteal_call> callOf(const FunctionInfo &function) const = 0;
    const PluginInfo *plugin(std::string_view id) const;
    /// Why `find` gives nothing for a name: its plugin is not enabled, refused or damaged, or no such
    /// function (with the closest names).
    virtual Error whyNot(std::string_view name) const = 0;
    /// All lists of words that functions take or give; known without reading the functions' descriptions.
    virtual std::vector<std::vector<std::string>> choiceLists() const;
};

/// Writes the manifest of a plugin's library (used at build time). Error: cannot open, contract differs, a
/// descriptor without source, two examples, refusal, relation, or with a bad name, unit or choice.
Result<std::string> manifestOf(const std::filesystem::path &library, const UnitTable &units);

} // namespace puteal
