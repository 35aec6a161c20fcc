/// Saving that leaves the old or the complete new file, never else, and names the cause when it cannot.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace puteal
{

/// The system calls, so that tests can make the n-th one fail.
class FileSystem
{
public:
    virtual ~FileSystem() = default;
    /// `pathInOut`: the target, then the new file beside it. Returns -1 + errno when it fails.
    virtual int openTemporary(std::string &pathInOut, unsigned mode) = 0;
    virtual long write(int fd, const char *data, std::size_t size) = 0;
    virtual int sync(int fd) = 0;
    virtual int close(int fd) = 0;
    virtual int rename(const std::string &from, const std::string &to) = 0;
    virtual int syncFolder(const std::string &folder) = 0;
    virtual int remove(const std::string &path) = 0;
    virtual long long size(int fd);                               ///< -1 + errno
    virtual int setMode(int fd, unsigned mode);                   ///< 0 or -1 + errno
    virtual int setOwner(int fd, unsigned owner, unsigned group); ///< 0 or -1 + errno
    virtual long readAt(int fd, char *data, std::size_t size, long long offset);
    static FileSystem &system();
};

/// Temporary beside the target, pieces of at most 64 KiB with counts checked, size checked, sync, rename,
/// folder sync, read back and compared. Follows a symbolic link; keeps owner, group and mode of an existing
/// file (a group that cannot be kept gets no more than all others); refuses a read-only target. Error words:
/// what happened, what is safe, what to do. `like`: a file whose owner and mode the target takes.
Result<void> saveSafely(const std::filesystem::path &target, std::string_view bytes,
                        FileSystem &system = FileSystem::system(), const std::filesystem::path &like = {});

/// Whole file, bounded by limits::fileBytes. Errors with the cause and the next step.
Result<std::string> readFile(const std::filesystem::path &path);

} // namespace puteal
