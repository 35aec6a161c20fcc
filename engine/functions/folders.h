/// Looks through plugin folders: which manifests there are, and which of them may be trusted.
#pragma once

#include <memory>
#include <vector>

#include "functions/manifest.h"

namespace puteal
{

/// One manifest found, in the order of the folders; refused and not enabled ones too.
struct FoundPlugin {
    PluginInfo info;
    std::unique_ptr<Manifest> manifest; ///< its head; null when it could not be read
};

/// Fetches the blocks of a manifest whose head was read. Error: it cannot be read any more, or is another one
/// by now, or lists other functions than it describes.
Result<void> fetchBlocks(FoundPlugin &plugin);

/// Reads the heads of all manifests. The first enabled plugin of an id wins; nothing else ever hides it.
std::vector<FoundPlugin> findPlugins(const PluginFolders &folders);

} // namespace puteal
