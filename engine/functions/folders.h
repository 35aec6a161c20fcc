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
    std::unique_ptr<Manifest> manifest; ///< null when it could not be read
};

/// Reads the heads of all manifests. The first enabled plugin of an id wins; nothing else ever hides it.
std::vector<FoundPlugin> findPlugins(const PluginFolders &folders);

} // namespace puteal
