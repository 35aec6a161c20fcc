/// Saving: never over a file that somebody else changed, never without the copy of the last save.
#include <fmt/format.h>

#include "file/reader.h"
#include "file/safe_save.h"
#include "session/session_state.h"

namespace puteal
{

namespace
{

namespace fs = std::filesystem;

Error notSaved(const std::string &cause, const std::string &next)
{
    return {ErrorKind::write,
            fmt::format("not saved: {}; the file on disk is as it was; {}", cause, next),
            {},
            {}};
}

bool isSameFile(const fs::path &a, const fs::path &b)
{
    std::error_code none;
    return a == b || fs::equivalent(a, b, none);
}

/// The old bytes go beside the file, with its owner and mode.
Result<void> keepBeside(const fs::path &path, const std::string &old)
{
    fs::path beside = path;
    beside += ".before";
    const auto kept = saveSafely(beside, old, FileSystem::system(), path);
    // A copy that is in place but not surely kept will do: saving itself meets the same fault and tells it.
    return kept || readFile(beside) == old ? Result<void>() : kept;
}

} // namespace

/// What the file to be replaced must allow: it is still what was read or saved last, and a copy can be kept.
Result<void> SessionState::mayReplace(const fs::path &path, const std::string &bytes, bool keepCopy) const
{
    std::error_code none;
    if (!fs::exists(path, none))
        return {};
    const auto old = readFile(path);
    if (!old) {
        if (fs::is_regular_file(path, none))
            return tl::unexpected(notSaved(old.error().words, "save under another name"));
        return {}; // saving says that it is no plain file
    }
    if (*old == bytes)
        return {};
    if (!m_path.empty() && isSameFile(path, m_path) && FileMark(*old) != m_onDisk)
        return tl::unexpected(
            notSaved(path.string() + " was changed by somebody else since it was opened or saved",
                     "save under another name, then compare the two"));
    return keepCopy ? keepBeside(path, *old) : Result<void>();
}

bool SessionState::changedOnDisk() const
{
    std::error_code none;
    if (m_path.empty() || !fs::exists(m_path, none))
        return false;
    const auto there = readFile(m_path);
    return there && FileMark(*there) != m_onDisk;
}

void SessionState::acceptDisk()
{
    if (const auto there = readFile(m_path))
        m_onDisk = FileMark(*there);
}

Result<void> SessionState::save(const fs::path &path, bool keepCopy)
{
    const std::string bytes = fileText();
    const auto back = readWorkbook(bytes, shippedUnitWord);
    if (!back)
        return tl::unexpected(
            notSaved("it could not be read again, " + back.error().words, "mend that and save again"));
    if (!(*back == m_workbook))
        return tl::unexpected(
            notSaved("the text would not read back as the same workbook", "undo the last change"));
    if (auto may = mayReplace(path, bytes, keepCopy); !may)
        return may;
    const auto saved = saveSafely(path, bytes);
    // A new file that is in place but not surely kept is ours all the same.
    if (saved || readFile(path) == bytes) {
        m_path = path;
        m_onDisk = FileMark(bytes);
    }
    if (saved)
        m_saved = m_done;
    return saved;
}

} // namespace puteal
