/// From a library's C tables to FunctionInfo and PluginInfo: what the manifest is written from and compared
/// with.
#pragma once

#include "functions/registry.h"

namespace puteal
{

/// Everything a library says about itself.
struct PluginDescription {
    PluginInfo info;
    std::vector<FunctionInfo> functions; ///< `index` counts in the plugin
    std::vector<puteal_call> calls;      ///< same order
};

/// A library held open. Never closed: compiled formulas keep its functions' addresses.
/// Error: cannot open, no entry, another contract.
Result<const puteal_plugin *> openPlugin(const std::filesystem::path &library);

/// Copies the tables. Error: a table that cannot be read (bad unit, kind, missing text), naming function and
/// place.
Result<PluginDescription> describe(const puteal_plugin &plugin, const UnitTable &units);

/// Reads the pattern texts of a function's parameters and result. Error: the first that cannot be read.
Result<void> readPatterns(FunctionInfo &function, const UnitTable &units);

/// One function by position; for comparing with the manifest at the first call.
Result<FunctionInfo> describeFunction(const puteal_plugin &plugin, std::size_t position,
                                      const UnitTable &units);
puteal_call callAt(const puteal_plugin &plugin, std::size_t position);

/// The rules a function keeps to ship: names, sources, two examples, a refusal, relation, meaning. The first
/// one broken.
Result<void> keepsRules(const PluginDescription &plugin);

/// The different lists of words the functions take or give, in order.
std::vector<std::vector<std::string>> listsOf(std::span<const FunctionInfo> functions);

/// Where two descriptions of the same function differ in what a call depends on: "parameter `iron` differs";
/// "" = nowhere.
std::string difference(const FunctionInfo &a, const FunctionInfo &b);

} // namespace puteal
