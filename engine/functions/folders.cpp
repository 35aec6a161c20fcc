/// Looks through plugin folders; only what lies in a shipped folder and cannot be written by others is
/// enabled.
#include "functions/folders.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fmt/format.h>

namespace puteal
{
namespace
{

namespace fs = std::filesystem;

constexpr std::string_view ending = ".plugin.toml";
constexpr off_t mostBytes = 4 * 1024 * 1024; // a manifest is some 40 KB; a larger file is something else
constexpr std::size_t mostManifests = 500;
const std::string unusable = "its manifest cannot be used: ";

bool writableByOthers(const fs::path &path)
{
    struct stat facts {
    };
    return stat(path.c_str(), &facts) == 0 && (facts.st_mode & S_IWOTH) != 0 &&
           (facts.st_mode & S_ISVTX) == 0;
}

/// The folder without links and dots; empty when it is not there.
fs::path real(const fs::path &folder)
{
    std::error_code error;
    const auto path = fs::canonical(folder, error);
    return error ? fs::path() : path;
}

/// A manifest being read; says in `problem` why it cannot be.
class Reader
{
public:
    explicit Reader(const fs::path &path) : m_file(open(path.c_str(), O_RDONLY | O_CLOEXEC))
    {
        struct stat facts {
        };
        if (m_file < 0 || fstat(m_file, &facts) != 0 || !S_ISREG(facts.st_mode))
            problem = "the manifest cannot be read";
        else if (facts.st_size > mostBytes)
            problem = fmt::format("the manifest has {} bytes, the most is {}", facts.st_size, mostBytes);
    }
    Reader(const Reader &) = delete;
    Reader &operator=(const Reader &) = delete;
    ~Reader()
    {
        if (m_file >= 0)
            close(m_file);
    }

    /// The text up to the end of the file or, where `mark` is not empty, a piece that ends somewhere behind
    /// it.
    std::string text(std::string_view mark = {})
    {
        std::string all;
        std::array<char, 8192> piece;
        while (problem.empty() && (mark.empty() || all.find(mark) == std::string::npos)) {
            const ssize_t n = read(m_file, piece.data(), piece.size());
            if (n <= 0)
                break;
            all.append(piece.data(), static_cast<std::size_t>(n));
        }
        return all;
    }

    std::string problem;

private:
    int m_file;
};

/// Manifests of a folder by name, so that the order does not depend on the disk.
std::vector<fs::path> manifestsIn(const fs::path &folder)
{
    std::vector<fs::path> all;
    std::error_code error;
    for (fs::directory_iterator it(folder, error), end; !error && it != end && all.size() < mostManifests;
         it.increment(error)) {
        const std::string name = it->path().filename().string();
        if (name.size() > ending.size() &&
            name.compare(name.size() - ending.size(), ending.size(), ending) == 0)
            all.push_back(it->path());
    }
    std::sort(all.begin(), all.end());
    return all;
}

void refuse(PluginInfo &info, std::string words)
{
    info.state = PluginInfo::State::refused;
    info.problem = std::move(words);
}

/// What is wrong with the plugin itself, wherever it lies; "" = nothing.
std::string wrongWith(const Manifest &manifest, const PluginInfo &info)
{
    if (manifest.contract != PUTEAL_CONTRACT) {
        return fmt::format("is built for contract {}, this program offers {}: install the version that fits",
                           manifest.contract, PUTEAL_CONTRACT);
    }
    std::error_code error;
    if (!fs::is_regular_file(info.library, error))
        return fmt::format("its library {} is not beside the manifest: install the plugin again",
                           info.library.filename().string());
    if (writableByOthers(info.library) || writableByOthers(info.manifest))
        return "its files can be written by others: take that right away (chmod o-w) first";
    return {};
}

FoundPlugin readPlugin(const fs::path &path)
{
    FoundPlugin found;
    Reader reader(path);
    auto manifest = std::make_unique<Manifest>();
    std::string problem = reader.problem;
    if (problem.empty()) {
        if (auto head = readHead(reader.text(headEnd), *manifest); !head)
            problem = unusable + head.error().words;
    }
    found.info = manifest->info;
    found.info.manifest = path;
    if (found.info.id.empty()) {
        const std::string name = path.filename().string();
        found.info.id = name.substr(0, name.size() - ending.size());
    }
    if (!problem.empty()) {
        refuse(found.info, problem);
        return found;
    }
    found.info.library = path.parent_path() / manifest->info.library;
    if (auto wrong = wrongWith(*manifest, found.info); !wrong.empty())
        refuse(found.info, std::move(wrong));
    found.manifest = std::move(manifest);
    return found;
}

/// Names of an enabled plugin must not be taken by an earlier one.
void settle(FoundPlugin &plugin, const std::vector<FoundPlugin> &earlier)
{
    for (const auto &other : earlier) {
        if (other.info.state != PluginInfo::State::enabled)
            continue;
        if (other.info.id == plugin.info.id) {
            refuse(plugin.info, fmt::format("a plugin with the same id was found first in {}",
                                            other.info.manifest.parent_path().string()));
            return;
        }
        for (const auto &name : plugin.info.functions) {
            const auto &taken = other.info.functions;
            if (std::find(taken.begin(), taken.end(), name) != taken.end()) {
                refuse(plugin.info,
                       fmt::format("its function {} is already one of the plugin {}", name, other.info.id));
                return;
            }
        }
    }
}

void lookInto(const fs::path &folder, bool shipped, std::vector<FoundPlugin> &all)
{
    const bool open = writableByOthers(folder);
    for (const auto &path : manifestsIn(folder)) {
        auto plugin = readPlugin(path);
        auto &info = plugin.info;
        if (open)
            refuse(info, fmt::format(
                             "the folder {} can be written by others: take that right away (chmod o-w) first",
                             folder.string()));
        if (info.state == PluginInfo::State::enabled && !shipped) {
            info.state = PluginInfo::State::notEnabled;
            info.problem = "is not shipped with this program; this version runs shipped plugins only";
        }
        if (info.state == PluginInfo::State::enabled)
            settle(plugin, all);
        all.push_back(std::move(plugin));
    }
}

} // namespace

PluginFolders PluginFolders::standard(const std::vector<fs::path> &chosen)
{
    PluginFolders folders;
    std::error_code error;
    for (const auto &folder : chosen)
        folders.chosen.push_back(fs::absolute(folder, error));
    if (const char *path = std::getenv("PUTEAL_PLUGIN_PATH")) {
        std::string_view rest = path;
        while (!rest.empty()) {
            const auto end = rest.find(':');
            const fs::path folder(rest.substr(0, end));
            if (folder.is_absolute()) // a relative one would follow the current folder
                folders.chosen.push_back(folder);
            rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
        }
    }
    const char *data = std::getenv("XDG_DATA_HOME");
    const char *home = std::getenv("HOME");
    if (data && fs::path(data).is_absolute())
        folders.chosen.push_back(fs::path(data) / "puteal/plugins");
    else if (home && fs::path(home).is_absolute())
        folders.chosen.push_back(fs::path(home) / ".local/share/puteal/plugins");
    const auto program = fs::read_symlink("/proc/self/exe", error);
    if (!error)
        folders.shipped.push_back(program.parent_path().parent_path() / "lib/puteal/plugins");
    return folders;
}

Result<void> fetchBlocks(FoundPlugin &plugin)
{
    Reader reader(plugin.info.manifest);
    std::string text = reader.text();
    Manifest now;
    if (!reader.problem.empty())
        return fail(ErrorKind::plugin, unusable + reader.problem);
    if (!readHead(text, now) || now.info.functions != plugin.info.functions ||
        now.contract != plugin.manifest->contract)
        return fail(ErrorKind::plugin, unusable + "it changed while the program was running; start it again");
    if (auto blocks = readBlocks(std::move(text), *plugin.manifest); !blocks)
        return fail(ErrorKind::plugin, unusable + blocks.error().words);
    return {};
}

std::vector<FoundPlugin> findPlugins(const PluginFolders &folders)
{
    std::vector<fs::path> shipped, seen;
    for (const auto &folder : folders.shipped)
        shipped.push_back(real(folder));
    auto ordered = folders.chosen;
    ordered.insert(ordered.end(), folders.shipped.begin(), folders.shipped.end());
    std::vector<FoundPlugin> all;
    for (const auto &folder : ordered) {
        const auto path = real(folder);
        if (path.empty() || std::find(seen.begin(), seen.end(), path) != seen.end())
            continue;
        seen.push_back(path);
        lookInto(path, std::find(shipped.begin(), shipped.end(), path) != shipped.end(), all);
    }
    return all;
}

} // namespace puteal
