/// The manifest beside a library: TOML, written at build time from the descriptors, read piece by piece.
///
/// Reading all of it at every start would cost more than the start itself, so its layout is fixed: a head
/// (id, title, contract, version, library, names of functions, lists of words), then [[source]] blocks, then
/// one [[function]] block a function. Only the head is read at start; the rest is fetched from the disk and
/// cut into blocks when one of its functions is wanted, and a block is a TOML document of its own.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "functions/descriptor.h"

namespace puteal
{

/// Text of a manifest; `library` is the file name beside it.
std::string manifestText(const PluginDescription &plugin, const std::string &library);

/// Where the head ends.
inline constexpr std::string_view headEnd = "\n[";

/// A manifest with its head read, and its blocks once they are wanted.
struct Manifest {
    PluginInfo info; ///< id, title, version, function names; `library` is the bare file name
    std::uint32_t contract = 0;
    std::string choiceLists; ///< the head's line of all lists of words its functions take or give, unread
    std::string text;        ///< whole; empty until its blocks are wanted
    /// One a function, in the order of the head's names; views into `text`.
    std::vector<std::string_view> blocks;
    std::string_view sources; ///< all [[source]] blocks

    Manifest() = default;
    Manifest(const Manifest &) = delete;
    Manifest &operator=(const Manifest &) = delete;
};

/// Fills `manifest` from its head; what follows the head is not looked at. Errors: not TOML, a missing field.
Result<void> readHead(std::string_view head, Manifest &manifest);
/// Finds the blocks in the whole text. Error: another number of them than of functions.
Result<void> readBlocks(std::string text, std::size_t functions, Manifest &manifest);
/// The lists of words in that line; none where it cannot be read.
std::vector<std::vector<std::string>> readChoiceLists(std::string_view line);
Result<FunctionInfo> readFunction(std::string_view block, const UnitTable &units);
Result<std::vector<SourceInfo>> readSources(std::string_view blocks);

} // namespace puteal
