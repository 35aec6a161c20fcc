/// Writes beside the target, checks what was written, then renames.
#include "file/safe_save.h"

#include <cerrno>
#include <cstring>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fmt/format.h>

#include "file/system_cause.h"

namespace puteal
{

namespace
{

namespace fs = std::filesystem;

constexpr std::size_t pieceBytes = 64 * 1024; // larger single writes can come back short on a full disk
constexpr int linksFollowed = 32;

Error notSaved(const std::string &cause, const std::string &next)
{
    return {ErrorKind::write,
            fmt::format("not saved: {}; the file on disk is as it was; {}", cause, next),
            {},
            {}};
}

Error notSaved(int cause, const fs::path &target, std::size_t bytes)
{
    return notSaved(causeWords(cause, target, bytes), nextStep(cause));
}

/// Where the bytes really go: the end of a chain of symbolic links (which need not exist yet).
Result<fs::path> followed(fs::path target)
{
    for (int i = 0; i < linksFollowed; ++i) {
        std::error_code none;
        if (!fs::is_symlink(fs::symlink_status(target, none)))
            return target;
        const fs::path to = fs::read_symlink(target, none);
        if (none)
            break;
        target = to.is_absolute() ? to : target.parent_path() / to;
    }
    return tl::unexpected(notSaved("the symbolic links at " + target.string() + " lead in a circle",
                                   "save under another name"));
}

/// One attempt; removes its temporary unless the rename worked.
class Attempt
{
public:
    Attempt(const fs::path &target, std::string_view bytes, FileSystem &system, const fs::path &like)
        : m_target(target), m_bytes(bytes), m_system(system), m_like(like)
    {
    }
    ~Attempt()
    {
        if (m_fd >= 0)
            m_system.close(m_fd);
        if (!m_temporary.empty())
            m_system.remove(m_temporary);
    }
    Attempt(const Attempt &) = delete;
    Attempt &operator=(const Attempt &) = delete;

    Result<void> run();

private:
    Result<void> open();
    bool keepOwnerAndMode(const struct stat &of);
    Result<void> writeAll();
    Result<void> settle();
    Result<void> compare();
    tl::unexpected<Error> failed() const { return tl::unexpected(notSaved(errno, m_target, m_bytes.size())); }

    const fs::path &m_target;
    std::string_view m_bytes;
    FileSystem &m_system;
    const fs::path &m_like;  ///< empty = the target itself, if it is there
    std::string m_temporary; ///< empty = nothing to remove
    int m_fd = -1;
};

Result<void> Attempt::open()
{
    struct stat there = {};
    bool hasModel = ::stat(m_target.c_str(), &there) == 0;
    if (hasModel) {
        if (!S_ISREG(there.st_mode))
            return tl::unexpected(
                notSaved(m_target.string() + " is no plain file", "save under another name"));
        if (::access(m_target.c_str(), W_OK) != 0 || (there.st_mode & 0222) == 0)
            return tl::unexpected(
                notSaved(m_target.string() + " is read-only", "save a copy under another name"));
    }
    if (!m_like.empty())
        hasModel = ::stat(m_like.c_str(), &there) == 0;
    std::string path = m_target.string();
    m_fd = m_system.openTemporary(path, hasModel ? 0600 : 0666); // nobody looks in before its mode is set
    if (m_fd < 0)
        return failed();
    m_temporary = path;
    return !hasModel || keepOwnerAndMode(there) ? Result<void>() : failed();
}

/// Rights are never widened: where the group cannot be kept, the new one gets no more than all others.
bool Attempt::keepOwnerAndMode(const struct stat &of)
{
    constexpr auto asItIs = static_cast<unsigned>(-1);
    unsigned mode = of.st_mode & 07777;
    if (m_system.setOwner(m_fd, of.st_uid, of.st_gid) != 0 && m_system.setOwner(m_fd, asItIs, of.st_gid) != 0)
        mode = (mode & 0707) | ((mode & 07) << 3);
    return m_system.setMode(m_fd, mode) == 0;
}

Result<void> Attempt::writeAll()
{
    for (std::size_t done = 0; done < m_bytes.size();) {
        const std::size_t piece = std::min(pieceBytes, m_bytes.size() - done);
        const long count = m_system.write(m_fd, m_bytes.data() + done, piece);
        if (count < 0 && errno == EINTR)
            continue;
        if (count == 0)
            errno = ENOSPC;
        if (count <= 0)
            return failed();
        done += static_cast<std::size_t>(count);
    }
    return {};
}

Result<void> Attempt::settle()
{
    const long long size = m_system.size(m_fd);
    if (size < 0)
        return failed();
    if (static_cast<std::size_t>(size) != m_bytes.size())
        return tl::unexpected(
            notSaved(fmt::format("the disk took {} of {} bytes", size, m_bytes.size()), nextStep(ENOSPC)));
    if (m_system.sync(m_fd) != 0)
        return failed();
    if (auto same = compare(); !same)
        return same;
    const int closed = m_system.close(m_fd);
    m_fd = -1;
    return closed == 0 ? Result<void>() : failed();
}

/// What comes back from the disk must be what went out, before the old file is given up.
Result<void> Attempt::compare()
{
    std::string piece(pieceBytes, '\0');
    for (std::size_t done = 0; done < m_bytes.size();) {
        const long count = m_system.readAt(m_fd, piece.data(), piece.size(), static_cast<long long>(done));
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0)
            return failed();
        const auto got = static_cast<std::size_t>(count);
        if (got == 0 || m_bytes.substr(done, got) != std::string_view(piece).substr(0, got))
            return tl::unexpected(notSaved("the disk gave back other bytes than were written",
                                           "save to another disk and have this one checked"));
        done += got;
    }
    return {};
}

Result<void> Attempt::run()
{
    for (auto step : {&Attempt::open, &Attempt::writeAll, &Attempt::settle})
        if (auto done = (this->*step)(); !done)
            return done;
    if (m_system.rename(m_temporary, m_target.string()) != 0)
        return failed();
    m_temporary.clear();
    const std::string folder =
        m_target.has_parent_path() ? m_target.parent_path().string() : std::string(".");
    if (m_system.syncFolder(folder) != 0)
        return tl::unexpected(Error{ErrorKind::write,
                                    fmt::format("saved, but not surely kept: {}; the new file is in place "
                                                "and complete, a power cut now could bring "
                                                "the old one back; save again",
                                                causeWords(errno, m_target, m_bytes.size())),
                                    {},
                                    {}});
    return {};
}

} // namespace

Result<void> saveSafely(const fs::path &target, std::string_view bytes, FileSystem &system,
                        const fs::path &like)
{
    if (target.empty() || !target.has_filename())
        return tl::unexpected(notSaved("there is no file name", "give the file a name"));
    const auto real = followed(target);
    if (!real)
        return tl::unexpected(real.error());
    return Attempt(*real, bytes, system, like).run();
}

} // namespace puteal
