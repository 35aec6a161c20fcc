/// Looks through plugin folders; only what lies in a shipped folder and cannot be written by others is
/// enabled.
#include "functions/folders.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fmt/format.h>

#include "functions/general.h"

namespace puteal
{
namespace
{

namespace fs = std::filesystem;

constexpr std::string_view ending = ".plugin.toml";
constexpr off_t mostBytes = 4 * 1024 * 1024; // a manifest is some 40 KB; a larger file is something else
constexpr std::size_t mostManifests = 500;
constexpr std::size_t usualPlugins = 16, usualNames = 512;
const std::string unusable = "its manifest cannot be used: ";

bool writableByOthers(const struct stat &facts)
{
    return (facts.st_mode & S_IWOTH) != 0 && (facts.st_mode & S_ISVTX) == 0;
}

bool writableByOthers(const fs::path &path)
{
    struct stat facts {
    };
    return stat(path.c_str(), &facts) == 0 && writableByOthers(facts);
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
    /// Never waits: a pipe of that name would have nobody at its other end.
    explicit Reader(const std::string &path) : m_file(open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK))
    {
        if (m_file < 0 || fstat(m_file, &m_facts) != 0 || !S_ISREG(m_facts.st_mode))
            problem = "the manifest cannot be read";
        else if (m_facts.st_size > mostBytes)
            problem = fmt::format("the manifest has {} bytes, the most is {}", m_facts.st_size, mostBytes);
    }
    Reader(const Reader &) = delete;
    Reader &operator=(const Reader &) = delete;
    ~Reader()
    {
        if (m_file >= 0)
            close(m_file);
    }

    /// A piece of the text that ends somewhere behind `mark`, or all of it where the mark is not there.
    std::string until(std::string_view mark)
    {
        std::string all;
        std::array<char, 4096> piece;
        while (problem.empty() && all.find(mark) == std::string::npos) {
            const ssize_t n = read(m_file, piece.data(), piece.size());
            if (n <= 0)
                break;
            all.append(piece.data(), static_cast<std::size_t>(n));
        }
        return all;
    }
    std::string whole()
    {
        std::string all(problem.empty() ? static_cast<std::size_t>(m_facts.st_size) : 0, '\0');
        std::size_t have = 0;
        while (have < all.size()) {
            const ssize_t n = read(m_file, all.data() + have, all.size() - have);
            if (n <= 0)
                break;
            have += static_cast<std::size_t>(n);
        }
        all.resize(have);
        return all;
    }
    bool openToOthers() const { return writableByOthers(m_facts); }

    std::string problem;

private:
    int m_file;
    struct stat m_facts {
    };
};

/// Names of the manifests of a folder, sorted, so that the order does not depend on the disk.
std::vector<std::string> manifestsIn(const std::string &folder)
{
    std::vector<std::string> all;
    const std::unique_ptr<DIR, int (*)(DIR *)> open(opendir(folder.c_str()), closedir);
    while (open && all.size() < mostManifests) {
        const dirent *entry = readdir(open.get());
        if (!entry)
            break;
        const std::string_view name = entry->d_name;
        if (name.size() > ending.size() && name.ends_with(ending))
            all.emplace_back(name);
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
std::string wrongWith(const Manifest &manifest, const PluginInfo &info, bool manifestOpen)
{
    if (manifest.contract != PUTEAL_CONTRACT) {
        return fmt::format("is built for contract {}, this program offers {}: install the version that fits",
                           manifest.contract, PUTEAL_CONTRACT);
    }
    struct stat facts {
    };
    if (stat(info.library.c_str(), &facts) != 0 || !S_ISREG(facts.st_mode))
        return fmt::format("its library {} is not beside the manifest: install the plugin again",
                           info.library.filename().string());
    if (manifestOpen || writableByOthers(facts))
        return "its files can be written by others: take that right away (chmod o-w) first";
    return {};
}

FoundPlugin readPlugin(const std::string &folder, const std::string &name)
{
    FoundPlugin found;
    const std::string path = folder + '/' + name;
    Reader reader(path);
    auto manifest = std::make_unique<Manifest>();
    std::string problem = reader.problem;
    if (problem.empty()) {
        if (auto head = readHead(reader.until(headEnd), *manifest); !head)
            problem = unusable + head.error().words;
    }
    found.info = std::move(manifest->info);
    found.info.manifest = path;
    if (found.info.id.empty())
        found.info.id = name.substr(0, name.size() - ending.size());
    if (!problem.empty()) {
        refuse(found.info, problem);
        return found;
    }
    found.info.library = folder + '/' + found.info.library.native();
    if (auto wrong = wrongWith(*manifest, found.info, reader.openToOthers()); !wrong.empty())
        refuse(found.info, std::move(wrong));
    found.manifest = std::move(manifest);
    return found;
}

/// Names of an enabled plugin must not be taken by the general functions or an earlier plugin; takes them.
void settle(FoundPlugin &plugin, FoundPlugins &all)
{
    for (const auto &other : all.plugins) {
        if (other.info.state == PluginInfo::State::enabled && other.info.id == plugin.info.id) {
            refuse(plugin.info, fmt::format("a plugin with the same id was found first in {}",
                                            other.info.manifest.parent_path().string()));
            return;
        }
    }
    for (const auto &name : plugin.info.functions) {
        const auto at = all.names.find(name);
        if (!at)
            continue;
        const auto owner = all.origins[*at].plugin;
        refuse(plugin.info, owner == NameOrigin::general
                                ? fmt::format("its function {} is already a general function", name)
                                : fmt::format("its function {} is already one of the plugin {}", name,
                                              all.plugins[owner].info.id));
        return;
    }
    for (std::uint32_t i = 0; i < plugin.info.functions.size(); ++i) {
        if (all.names.add(plugin.info.functions[i]))
            all.origins.push_back({static_cast<std::uint32_t>(all.plugins.size()), i});
    }
}

void lookInto(const fs::path &folder, bool shipped, FoundPlugins &all)
{
    const bool open = writableByOthers(folder);
    for (const auto &name : manifestsIn(folder.native())) {
        auto plugin = readPlugin(folder.native(), name);
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
        all.plugins.push_back(std::move(plugin));
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
    Reader reader(plugin.info.manifest.native());
    std::string text = reader.whole();
    Manifest now;
    if (!reader.problem.empty())
        return fail(ErrorKind::plugin, unusable + reader.problem);
    if (!readHead(text, now) || now.info.functions != plugin.info.functions ||
        now.contract != plugin.manifest->contract)
        return fail(ErrorKind::plugin, unusable + "it changed while the program was running; start it again");
    if (auto blocks = readBlocks(std::move(text), plugin.info.functions.size(), *plugin.manifest); !blocks)
        return fail(ErrorKind::plugin, unusable + blocks.error().words);
    return {};
}

FoundPlugins onlyGeneral()
{
    FoundPlugins all;
    all.names = WordIndex(usualNames);
    all.origins.reserve(usualNames);
    const auto &groups = generalGroups();
    for (std::uint32_t group = 0; group < groups.size(); ++group) {
        for (const char *name : groups[group].names) {
            all.names.add(name);
            all.origins.push_back({NameOrigin::general, group});
        }
    }
    return all;
}

FoundPlugins findPlugins(const PluginFolders &folders)
{
    FoundPlugins all = onlyGeneral();
    all.plugins.reserve(usualPlugins);
    std::vector<fs::path> shipped, seen;
    for (const auto &folder : folders.shipped)
        shipped.push_back(real(folder));
    const auto look = [&](const fs::path &path) {
        if (path.empty() || std::find(seen.begin(), seen.end(), path) != seen.end())
            return;
        seen.push_back(path);
        lookInto(path, std::find(shipped.begin(), shipped.end(), path) != shipped.end(), all);
    };
    for (const auto &folder : folders.chosen)
        look(real(folder));
    for (const auto &path : shipped)
        look(path);
    return all;
}

} // namespace puteal
