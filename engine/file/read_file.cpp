/// Reads a whole plain file within the bound.
#include <cerrno>
#include <cstring>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <fmt/format.h>

#include "base/limits.h"
#include "file/safe_save.h"

namespace puteal
{

namespace
{

std::string openingCause(int error, const std::string &path)
{
    switch (error) {
    case ENOENT:
    case ENOTDIR:
        return fmt::format("there is no file {}: look at the name and the folder", path);
    case EACCES:
    case EPERM:
        return fmt::format("you may not read {}: ask its owner for leave, or copy it", path);
    case EIO:
        return fmt::format("the disk reports a fault in {}: take the copy kept beside it", path);
    default:
        return fmt::format("{} cannot be read, the system said: {}", path, std::strerror(error));
    }
}

/// Closes on every way out.
struct Descriptor {
    int fd = -1;
    ~Descriptor()
    {
        if (fd >= 0)
            ::close(fd);
    }
};

} // namespace

Result<std::string> readFile(const std::filesystem::path &path)
{
    // without O_NONBLOCK a named pipe would hold the program until somebody writes
    const Descriptor file{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)};
    struct stat info = {};
    if (file.fd < 0 || ::fstat(file.fd, &info) != 0)
        return fail(ErrorKind::file, openingCause(errno, path.string()));
    if (!S_ISREG(info.st_mode))
        return fail(ErrorKind::file, fmt::format("{} is no plain file: name a workbook", path.string()));
    const auto size = static_cast<std::size_t>(info.st_size);
    if (size > limits::fileBytes)
        return fail(ErrorKind::file, fmt::format("{} has {} bytes, {} are the most: split the workbook",
                                                 path.string(), size, limits::fileBytes));
    std::string bytes(size + 1, '\0'); // one more, to notice a file that grows
    std::size_t done = 0;
    while (done < bytes.size()) {
        const long count = ::read(file.fd, bytes.data() + done, bytes.size() - done);
        if (count < 0 && errno == EINTR)
            continue;
        if (count < 0)
            return fail(ErrorKind::file, openingCause(errno, path.string()));
        if (count == 0)
            break;
        done += static_cast<std::size_t>(count);
    }
    if (done != size)
        return fail(ErrorKind::file,
                    fmt::format("{} changed while it was read: open it again", path.string()));
    bytes.resize(size);
    return bytes;
}

} // namespace puteal
