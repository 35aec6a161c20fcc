/// errno values a person meets when saving or opening, each with a next step.
#include "file/system_cause.h"

#include <cerrno>
#include <cstring>

#include <fmt/format.h>

namespace puteal
{

namespace
{

std::string kilobytes(std::uintmax_t bytes)
{
    return fmt::format("{} kB", (bytes + 999) / 1000);
}

std::string folderOf(const std::filesystem::path &target)
{
    return target.has_parent_path() ? target.parent_path().string() : std::string("the present folder");
}

} // namespace

std::string causeWords(int error, const std::filesystem::path &target, std::size_t bytes)
{
    switch (error) {
    case ENOSPC: {
        std::error_code none;
        const auto space =
            std::filesystem::space(target.has_parent_path() ? target.parent_path() : ".", none);
        if (none)
            return fmt::format("the disk is full (needs {})", kilobytes(bytes));
        return fmt::format("the disk is full (needs {}, {} free)", kilobytes(bytes),
                           kilobytes(space.available));
    }
    case EDQUOT:
        return fmt::format("your share of the disk is used up (needs {})", kilobytes(bytes));
    case EIO:
        return "the disk reports a fault";
    case EROFS:
        return fmt::format("{} is on a disk that cannot be written", folderOf(target));
    case EACCES:
    case EPERM:
        return fmt::format("you may not write in {}", folderOf(target));
    case ENOENT:
    case ENOTDIR:
        return fmt::format("there is no folder {}", folderOf(target));
    case ENAMETOOLONG:
        return "the file name is too long";
    case EMFILE:
    case ENFILE:
        return "too many files are open";
    case EFBIG:
        return "the file would be larger than the disk allows";
    default:
        return fmt::format("the system said: {}", std::strerror(error));
    }
}

std::string nextStep(int error)
{
    switch (error) {
    case ENOSPC:
    case EDQUOT:
        return "free some space or save elsewhere";
    case EIO:
        return "save to another disk and have this one checked";
    case EACCES:
    case EPERM:
    case EROFS:
    case EFBIG:
        return "save in another folder";
    case ENOENT:
    case ENOTDIR:
        return "make the folder or save in another one";
    case ENAMETOOLONG:
        return "save under a shorter name";
    case EMFILE:
    case ENFILE:
        return "close some programs and save again";
    default:
        return "save again, or elsewhere";
    }
}

} // namespace puteal
