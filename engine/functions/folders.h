/// Looks through plugin folders: which manifests there are, and which of them may be trusted.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "base/word_index.h"
#include "functions/manifest.h"

namespace puteal
{

/// One manifest found, in the order of the folders; refused and not enabled ones too.
struct FoundPlugin {
    PluginInfo info;
    std::unique_ptr<Manifest> manifest; ///< its head; null when it could not be read
};

/// Whose a function's name is.
struct NameOrigin {
    static constexpr std::uint32_t general = static_cast<std::uint32_t>(-1);
    std::uint32_t plugin = general; ///< position among the plugins found
    std::uint32_t position = 0;     ///< in the plugin; of a general function: its group
};

/// What may be called by name: the general functions, then those of each enabled plugin.
struct FoundPlugins {
    std::vector<FoundPlugin> plugins;
    WordIndex names;                 ///< views into the plugins' names and into literals
    std::vector<NameOrigin> origins; ///< one a name, same order
};

/// Fetches the blocks of a manifest whose head was read. Error: it cannot be read any more, or is another one
/// by now, or lists other functions than it describes.
Result<void> fetchBlocks(FoundPlugin &plugin);

/// No plugins.
FoundPlugins onlyGeneral();
/// Reads the heads of all manifests. The first enabled plugin of an id wins; nothing else ever hides it.
FoundPlugins findPlugins(const PluginFolders &folders);

} // namespace puteal
