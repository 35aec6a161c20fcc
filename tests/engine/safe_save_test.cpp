/// Saving under failing system calls: the old bytes or the new ones, never anything else, and the cause in
/// words.
#include <QTest>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>

#include <sys/stat.h>
#include <unistd.h>

#include <QTemporaryDir>

#include "file/safe_save.h"

using namespace puteal;
namespace fs = std::filesystem;

namespace
{

enum class Call { open, write, sync, close, rename, syncFolder, size, mode, owner, read };

/// The real system, but chosen calls fail; nothing happens any more after `killAfter` calls, as after kill
/// -9.
class Failing final : public FileSystem
{
public:
    Call call = Call::open;
    int nth = 0;           ///< which call of that kind fails, from 1; 0 = none
    bool andAfter = false; ///< and all later ones
    int error = EIO;
    int shortWrites = 0; ///< bytes a write takes at most, 0 = all
    int killAfter = -1;
    int calls = 0;
    bool corrupt = false; ///< what is read back differs

    int openTemporary(std::string &path, unsigned mode) override
    {
        return fails(Call::open) ? -1 : real().openTemporary(path, mode);
    }
    long write(int fd, const char *data, std::size_t size) override
    {
        if (fails(Call::write))
            return -1;
        return real().write(fd, data,
                            shortWrites > 0 ? std::min(size, static_cast<std::size_t>(shortWrites)) : size);
    }
    int sync(int fd) override { return fails(Call::sync) ? -1 : real().sync(fd); }
    int close(int fd) override
    {
        const bool bad = fails(Call::close);
        const int done = real().close(fd);
        if (bad)
            errno = error;
        return bad ? -1 : done;
    }
    int rename(const std::string &from, const std::string &to) override
    {
        return fails(Call::rename) ? -1 : real().rename(from, to);
    }
    int syncFolder(const std::string &folder) override
    {
        return fails(Call::syncFolder) ? -1 : real().syncFolder(folder);
    }
    int remove(const std::string &path) override { return killed() ? -1 : real().remove(path); }
    long long size(int fd) override { return fails(Call::size) ? -1 : real().size(fd); }
    int setMode(int fd, unsigned mode) override { return fails(Call::mode) ? -1 : real().setMode(fd, mode); }
    int setOwner(int fd, unsigned owner, unsigned group) override
    {
        return fails(Call::owner) ? -1 : real().setOwner(fd, owner, group);
    }
    long readAt(int fd, char *data, std::size_t size, long long offset) override
    {
        if (fails(Call::read))
            return -1;
        const long count = real().readAt(fd, data, size, offset);
        if (corrupt && count > 0)
            data[0] ^= 1;
        return count;
    }

private:
    static FileSystem &real() { return FileSystem::system(); }
    bool killed()
    {
        errno = EIO;
        return killAfter >= 0 && calls > killAfter;
    }
    bool fails(Call which)
    {
        ++calls;
        if (killed())
            return true;
        if (which != call || nth == 0)
            return false;
        ++m_seen;
        errno = error;
        return m_seen == nth || (andAfter && m_seen > nth);
    }
    int m_seen = 0;
};

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

const std::string oldBytes(300000, 'o');
const std::string newBytes(200001, 'n'); // four pieces

QString wordsOf(const Result<void> &result)
{
    return result ? QString("saved") : QString::fromStdString(result.error().words);
}

} // namespace

class SafeSaveTest : public QObject
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
        put(m_path, oldBytes);
    }

    void savesAndReadsBack()
    {
        QCOMPARE(wordsOf(saveSafely(m_path, newBytes)), QString("saved"));
        QVERIFY(content(m_path) == newBytes);
        QVERIFY(*readFile(m_path) == newBytes);
        QCOMPARE(filesIn(m_path.parent_path()), std::ptrdiff_t{1});
        QCOMPARE(wordsOf(saveSafely(m_path, "")), QString("saved"));
        QVERIFY(content(m_path).empty());
        QVERIFY(readFile(m_path)->empty());
    }
    void makesANewFile()
    {
        const fs::path fresh = m_path.parent_path() / "new.puteal";
        QCOMPARE(wordsOf(saveSafely(fresh, newBytes)), QString("saved"));
        QVERIFY(content(fresh) == newBytes);
    }

    void failingCall_data()
    {
        QTest::addColumn<int>("call");
        QTest::addColumn<int>("nth");
        QTest::addColumn<int>("error");
        QTest::addColumn<QString>("cause"); ///< beginning of the message
        QTest::addColumn<QString>("next");  ///< its end
        const QString safe = "; the file on disk is as it was; ";
        const auto row = [&](const char *rule, Call call, int nth, int error, const QString &cause,
                             const QString &next) {
            QTest::newRow(rule) << static_cast<int>(call) << nth << error << "not saved: " + cause
                                << safe + next;
        };
        const QString disk = "save to another disk and have this one checked";
        row("no room for a file", Call::open, 1, ENOSPC, "the disk is full (needs 201 kB, ",
            "free some space or save elsewhere");
        row("folder may not be written", Call::open, 1, EACCES, "you may not write in ",
            "save in another folder");
        row("disk is read-only", Call::open, 1, EROFS, "", "save in another folder");
        row("folder is gone", Call::open, 1, ENOENT, "there is no folder ",
            "make the folder or save in another one");
        row("name too long", Call::open, 1, ENAMETOOLONG, "the file name is too long",
            "save under a shorter name");
        row("too many files", Call::open, 1, EMFILE, "too many files are open",
            "close some programs and save again");
        row("mode cannot be kept", Call::mode, 1, EPERM, "you may not write in ", "save in another folder");
        row("first write, full", Call::write, 1, ENOSPC, "the disk is full (needs 201 kB, ",
            "free some space or save elsewhere");
        row("third write, full", Call::write, 3, ENOSPC, "the disk is full (needs 201 kB, ",
            "free some space or save elsewhere");
        row("share of the disk", Call::write, 2, EDQUOT, "your share of the disk is used up (needs 201 kB)",
            "free some space or save elsewhere");
        row("last write, fault", Call::write, 4, EIO, "the disk reports a fault", disk);
        row("too large", Call::write, 1, EFBIG, "the file would be larger than the disk allows",
            "save in another folder");
        row("size unknown", Call::size, 1, EIO, "the disk reports a fault", disk);
        row("not forced to the disk", Call::sync, 1, EIO, "the disk reports a fault", disk);
        row("cannot be read back", Call::read, 2, EIO, "the disk reports a fault", disk);
        row("closing fails", Call::close, 1, EIO, "the disk reports a fault", disk);
        row("rename refused", Call::rename, 1, EPERM, "you may not write in ", "save in another folder");
        row("rename fault", Call::rename, 1, EIO, "the disk reports a fault", disk);
    }
    void failingCall()
    {
        QFETCH(int, call);
        QFETCH(int, nth);
        QFETCH(int, error);
        QFETCH(QString, cause);
        QFETCH(QString, next);
        for (const bool andAfter : {false, true}) {
            Failing system;
            system.call = static_cast<Call>(call);
            system.nth = nth;
            system.error = error;
            system.andAfter = andAfter;
            const auto saved = saveSafely(m_path, newBytes, system);
            QVERIFY2(!saved, "it says saved");
            QVERIFY2(wordsOf(saved).startsWith(cause), qPrintable(wordsOf(saved)));
            QVERIFY2(wordsOf(saved).endsWith(next), qPrintable(wordsOf(saved)));
            QVERIFY(saved.error().kind == ErrorKind::write);
            QVERIFY2(content(m_path) == oldBytes, "the old bytes");
            QCOMPARE(filesIn(m_path.parent_path()), std::ptrdiff_t{1}); // no litter
        }
    }

    void folderNotForcedLeavesTheNewFile()
    {
        Failing system;
        system.call = Call::syncFolder;
        system.nth = 1;
        QCOMPARE(wordsOf(saveSafely(m_path, newBytes, system)),
                 QString("saved, but not surely kept: the disk reports a fault; the new file is in place and "
                         "complete, a power "
                         "cut now could bring the old one back; save again"));
        QVERIFY(content(m_path) == newBytes);
        QCOMPARE(filesIn(m_path.parent_path()), std::ptrdiff_t{1});
    }
    void shortWritesAreGoneOnWith()
    {
        Failing system;
        system.shortWrites = 1000;
        QCOMPARE(wordsOf(saveSafely(m_path, newBytes, system)), QString("saved"));
        QVERIFY(content(m_path) == newBytes);
        system.call = Call::write;
        system.nth = 1;
        system.error = EINTR; // an interrupted call is made again
        QCOMPARE(wordsOf(saveSafely(m_path, oldBytes, system)), QString("saved"));
        QVERIFY(content(m_path) == oldBytes);
    }
    void otherBytesFromTheDiskAreNoticed()
    {
        Failing system;
        system.corrupt = true;
        QCOMPARE(wordsOf(saveSafely(m_path, newBytes, system)),
                 QString("not saved: the disk gave back other bytes than were written; the file on disk is "
                         "as it was; save to "
                         "another disk and have this one checked"));
        QVERIFY(content(m_path) == oldBytes);
        QCOMPARE(filesIn(m_path.parent_path()), std::ptrdiff_t{1});
    }
    void killedAnywhere()
    {
        Failing counting;
        QVERIFY(saveSafely(m_path, newBytes, counting));
        QVERIFY(counting.calls > 10);
        int kept = 0, replaced = 0;
        for (int after = 0; after < counting.calls; ++after) {
            init();
            Failing system;
            system.killAfter = after;
            (void)saveSafely(m_path, newBytes, system);
            const std::string now = content(m_path);
            QVERIFY2(now == oldBytes || now == newBytes, "torn");
            (now == oldBytes ? kept : replaced) += 1;
        }
        QVERIFY(kept > 0 && replaced > 0);
    }

    void linkStaysALink()
    {
        const fs::path folder = m_path.parent_path(), link = folder / "link.puteal",
                       chain = folder / "chain.puteal";
        fs::create_symlink("well.puteal", link);
        fs::create_symlink(link, chain);
        QCOMPARE(wordsOf(saveSafely(chain, newBytes)), QString("saved"));
        QVERIFY(fs::is_symlink(link) && fs::is_symlink(chain));
        QVERIFY(content(m_path) == newBytes);
        fs::create_symlink("not_yet.puteal", folder / "dangling.puteal");
        QCOMPARE(wordsOf(saveSafely(folder / "dangling.puteal", newBytes)), QString("saved"));
        QVERIFY(content(folder / "not_yet.puteal") == newBytes);
        fs::create_symlink("ring.puteal", folder / "ring.puteal");
        QVERIFY(wordsOf(saveSafely(folder / "ring.puteal", newBytes))
                    .startsWith("not saved: the symbolic links at "));
    }
    void modeStays()
    {
        ::chmod(m_path.c_str(), 0640);
        QVERIFY(saveSafely(m_path, newBytes));
        struct stat info = {};
        QCOMPARE(::stat(m_path.c_str(), &info), 0);
        QCOMPARE(info.st_mode & 07777, 0640U);
    }
    void ownerAndGroupStay()
    {
        if (::geteuid() != 0)
            QSKIP("only root may give files to others");
        QCOMPARE(::chown(m_path.c_str(), 4321, 5432), 0);
        ::chmod(m_path.c_str(), 0660);
        QVERIFY(saveSafely(m_path, newBytes));
        struct stat info = {};
        QCOMPARE(::stat(m_path.c_str(), &info), 0);
        QCOMPARE(info.st_uid, 4321U);
        QCOMPARE(info.st_gid, 5432U);
        QCOMPARE(info.st_mode & 07777, 0660U);
    }
    void aGroupThatCannotBeKeptGetsNoMoreThanAll_data()
    {
        QTest::addColumn<unsigned>("before");
        QTest::addColumn<int>("refused"); ///< calls that set the owner
        QTest::addColumn<unsigned>("after");
        QTest::newRow("owner and group refused") << 0664U << 2 << 0644U;
        QTest::newRow("nothing for all others") << 0660U << 2 << 0600U;
        QTest::newRow("only the owner refused") << 0660U << 1 << 0660U;
    }
    void aGroupThatCannotBeKeptGetsNoMoreThanAll()
    {
        QFETCH(unsigned, before);
        QFETCH(int, refused);
        QFETCH(unsigned, after);
        ::chmod(m_path.c_str(), before);
        Failing system;
        system.call = Call::owner;
        system.nth = 1;
        system.andAfter = refused > 1;
        system.error = EPERM;
        QCOMPARE(wordsOf(saveSafely(m_path, newBytes, system)), QString("saved"));
        struct stat info = {};
        QCOMPARE(::stat(m_path.c_str(), &info), 0);
        QCOMPARE(info.st_mode & 07777, after);
        QVERIFY(content(m_path) == newBytes);
    }
    void takesOwnerAndModeOfAnotherFile()
    {
        ::chmod(m_path.c_str(), 0600);
        const fs::path beside = m_path.string() + ".before";
        for (const bool isThere : {false, true}) { // the second time with a wider mode of its own
            QCOMPARE(wordsOf(saveSafely(beside, oldBytes, FileSystem::system(), m_path)), QString("saved"));
            struct stat info = {};
            QCOMPARE(::stat(beside.c_str(), &info), 0);
            QVERIFY2((info.st_mode & 07777) == 0600U, isThere ? "again" : "new");
            ::chmod(beside.c_str(), 0644);
        }
    }
    void readOnlyIsRefused()
    {
        ::chmod(m_path.c_str(), 0444);
        QCOMPARE(
            wordsOf(saveSafely(m_path, newBytes)),
            QString(
                "not saved: %1 is read-only; the file on disk is as it was; save a copy under another name")
                .arg(QString::fromStdString(m_path.string())));
        QVERIFY(content(m_path) == oldBytes);
    }
    void whatIsNoFileIsRefused()
    {
        const std::string folder = m_path.parent_path().string();
        QCOMPARE(
            wordsOf(saveSafely(folder, newBytes)),
            QString("not saved: %1 is no plain file; the file on disk is as it was; save under another name")
                .arg(QString::fromStdString(folder)));
        QCOMPARE(
            wordsOf(saveSafely("", newBytes)),
            QString("not saved: there is no file name; the file on disk is as it was; give the file a name"));
        QCOMPARE(wordsOf(saveSafely(m_path.parent_path() / "gone" / "x.puteal", newBytes)),
                 QString("not saved: there is no folder %1/gone; the file on disk is as it was; make the "
                         "folder or save in "
                         "another one")
                     .arg(QString::fromStdString(folder)));
    }

    void readingRefuses()
    {
        const auto words = [](const fs::path &path) {
            const auto read = readFile(path);
            return read ? QString("read") : QString::fromStdString(read.error().words);
        };
        const fs::path folder = m_path.parent_path();
        const QString base = QString::fromStdString(folder.string());
        QCOMPARE(words(folder / "none"),
                 QString("there is no file %1/none: look at the name and the folder").arg(base));
        QCOMPARE(words(folder), QString("%1 is no plain file: name a workbook").arg(base));
        QCOMPARE(::mkfifo((folder / "pipe").c_str(), 0600), 0);
        QCOMPARE(words(folder / "pipe"), QString("%1/pipe is no plain file: name a workbook").arg(base));
        put(folder / "large", "");
        fs::resize_file(folder / "large", 64U * 1024U * 1024U + 1U); // sparse
        QCOMPARE(words(folder / "large"),
                 QString("%1/large has 67108865 bytes, 67108864 are the most: split the workbook").arg(base));
    }
};

QTEST_APPLESS_MAIN(SafeSaveTest)
#include "safe_save_test.moc"
