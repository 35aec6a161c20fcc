/// The real system calls behind saving.
#include <atomic>
#include <cerrno>
#include <cstdio>
#include <string>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "file/safe_save.h"

namespace puteal
{

namespace
{

class PosixFileSystem final : public FileSystem
{
public:
    int openTemporary(std::string &path, unsigned mode) override
    {
        static std::atomic<unsigned> serial{0};
        const auto slash = path.rfind('/');
        const std::size_t name = slash == std::string::npos ? 0 : slash + 1;
        const std::string folder = path.substr(0, name);
        const std::string stem = path.substr(name, 200); // leaves room for what is put around it
        for (int tries = 0; tries < 100; ++tries) {
            std::string candidate = folder + '.' + stem + ".saving-" + std::to_string(::getpid()) + '-' +
                                    std::to_string(serial++);
            const int fd =
                ::open(candidate.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, mode);
            if (fd >= 0) {
                path = std::move(candidate);
                return fd;
            }
            if (errno != EEXIST)
                return -1;
        }
        return -1;
    }
    long write(int fd, const char *data, std::size_t size) override { return ::write(fd, data, size); }
    int sync(int fd) override { return ::fsync(fd); }
    int close(int fd) override { return ::close(fd); }
    int rename(const std::string &from, const std::string &to) override
    {
        return std::rename(from.c_str(), to.c_str());
    }
    int syncFolder(const std::string &folder) override
    {
        const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (fd < 0)
            return -1;
        int done = ::fsync(fd);
        if (done != 0 &&
            (errno == EINVAL || errno == ENOTSUP)) // file systems without it promise nothing anyway
            done = 0;
        const int cause = errno;
        ::close(fd);
        errno = cause;
        return done;
    }
    int remove(const std::string &path) override { return ::unlink(path.c_str()); }
};

} // namespace

long long FileSystem::size(int fd)
{
    struct stat info = {};
    return ::fstat(fd, &info) == 0 ? static_cast<long long>(info.st_size) : -1;
}

int FileSystem::setMode(int fd, unsigned mode)
{
    return ::fchmod(fd, static_cast<mode_t>(mode));
}

int FileSystem::setOwner(int fd, unsigned owner, unsigned group)
{
    return ::fchown(fd, owner, group);
}

long FileSystem::readAt(int fd, char *data, std::size_t size, long long offset)
{
    return ::pread(fd, data, size, offset);
}

FileSystem &FileSystem::system()
{
    static PosixFileSystem real;
    return real;
}

} // namespace puteal
