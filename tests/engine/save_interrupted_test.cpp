/// Saving while the program is killed, the disk is full, or a file may not grow: the old bytes or the new
/// ones, in real processes and on a real small disk.
#include <QTest>

#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>

#include <sched.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QTemporaryDir>

#include "file/safe_save.h"
#include "support/rounds.h"

using namespace puteal;
namespace fs = std::filesystem;

namespace
{

constexpr int cannotMount = 77;

std::string content(const fs::path &path)
{
    std::ifstream in(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void put(const fs::path &path, const std::string &bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

std::ptrdiff_t filesIn(const fs::path &folder)
{
    return std::distance(fs::directory_iterator(folder), fs::directory_iterator());
}

/// Runs in a process of its own; its exit code says which step failed, 0 = none.
template<class Work>
int inChild(Work work)
{
    const pid_t child = ::fork();
    if (child == 0)
        ::_exit(work());
    int status = 0;
    ::waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

/// Saves on a disk of 400 KB on which less and less is free; returns the step that failed.
int onASmallDisk(const fs::path &disk)
{
    if (::unshare(CLONE_NEWNS) != 0 || ::mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0 ||
        ::mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=400k") != 0)
        return cannotMount;
    const std::string oldBytes(100000, 'o'), newBytes(150000, 'n');
    const fs::path path = disk / "well.puteal", ballast = disk / "ballast";
    int saved = 0, refused = 0;
    for (std::size_t used = 0; used < 300000; used += 4096) {
        put(path, oldBytes);
        put(ballast, std::string(used, 'b'));
        if (content(path) != oldBytes || fs::file_size(ballast) != used)
            return 1;
        const auto result = saveSafely(path, newBytes);
        if (filesIn(disk) != 2)
            return 2;
        if (content(path) != (result ? newBytes : oldBytes))
            return 3;
        if (!result && (!result.error().words.starts_with("not saved: the disk is full (needs 150 kB, ") ||
                        !result.error().words.ends_with(
                            "; the file on disk is as it was; free some space or save elsewhere")))
            return 4;
        ++(result ? saved : refused);
    }
    return saved > 10 && refused > 10 ? 0 : 5;
}

/// Saves where a file may have at most so many bytes.
int withSmallFiles(const fs::path &path)
{
    const std::string oldBytes = content(path);
    ::signal(SIGXFSZ, SIG_IGN);
    for (const rlim_t most : {0U, 1U, 65535U, 65536U, 65537U, 199999U}) {
        const rlimit limit{most, RLIM_INFINITY};
        if (::setrlimit(RLIMIT_FSIZE, &limit) != 0)
            return 1;
        const auto result = saveSafely(path, std::string(200000, 'n'));
        if (result || content(path) != oldBytes || filesIn(path.parent_path()) != 1)
            return 2;
        if (result.error().words != "not saved: the file would be larger than the disk allows; the file on "
                                    "disk is as it was; save in another folder")
            return 3;
    }
    const rlimit enough{200000, RLIM_INFINITY};
    if (::setrlimit(RLIMIT_FSIZE, &enough) != 0)
        return 1;
    const std::string newBytes(200000, 'n');
    return saveSafely(path, newBytes) && content(path) == newBytes ? 0 : 4;
}

} // namespace

class SaveInterruptedTest : public QObject
{
    Q_OBJECT
    QTemporaryDir m_folder;
    fs::path m_path;

private slots:
    void init()
    {
        for (const auto &entry : fs::directory_iterator(m_folder.path().toStdString()))
            fs::remove_all(entry.path());
        m_path = fs::path(m_folder.path().toStdString()) / "well.puteal";
        put(m_path, std::string(300000, 'o'));
    }

    void killedAtRandomMoments()
    {
        const std::string texts[] = {std::string(300000, 'o'), std::string(200001, 'n')};
        std::mt19937 random(20260413);
        int inTheMiddle = 0, afterASave = 0;
        for (int round = 0; round < puteal::test::rounds(500); ++round) {
            const std::string before = content(m_path);
            const pid_t child = ::fork();
            if (child == 0)
                for (unsigned i = 0;; ++i)
                    if (!saveSafely(m_path, texts[i % 2]))
                        ::_exit(1);
            ::usleep(static_cast<unsigned>(random() % 8000));
            ::kill(child, SIGKILL);
            int status = 0;
            ::waitpid(child, &status, 0);
            QVERIFY2(WIFSIGNALED(status), "a save failed");
            const std::string now = content(m_path);
            QVERIFY2(now == texts[0] || now == texts[1], qPrintable(QString("torn in round %1").arg(round)));
            afterASave += now != before ? 1 : 0;
            inTheMiddle += filesIn(m_path.parent_path()) > 1 ? 1 : 0;
            // what the killed one left beside hinders nobody
            QVERIFY(filesIn(m_path.parent_path()) <= 2);
            QVERIFY(saveSafely(m_path, texts[round % 2]));
            for (const auto &entry : fs::directory_iterator(m_path.parent_path()))
                if (entry.path() != m_path)
                    fs::remove(entry.path());
        }
        QVERIFY2(inTheMiddle > 0 && afterASave > 0,
                 qPrintable(QString("%1 in the middle, %2 after a save").arg(inTheMiddle).arg(afterASave)));
        qInfo("killed %d times in the middle of a save, %d times after one", inTheMiddle, afterASave);
    }

    void aFullDiskCostsNothing()
    {
        fs::create_directory(m_path.parent_path() / "disk");
        const int failed = inChild([this] { return onASmallDisk(m_path.parent_path() / "disk"); });
        if (failed == cannotMount)
            QSKIP("a small disk can be mounted only by root");
        QCOMPARE(failed, 0);
    }

    void aFileThatMayNotGrowCostsNothing()
    {
        QCOMPARE(inChild([this] { return withSmallFiles(m_path); }), 0);
    }
};

QTEST_APPLESS_MAIN(SaveInterruptedTest)
#include "save_interrupted_test.moc"
