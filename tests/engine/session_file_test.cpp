/// A session and its file: the copy beside it, files that others changed, saves that fail.
#include <QTest>

#include <filesystem>
#include <fstream>
#include <iterator>

#include <sys/stat.h>

#include <QTemporaryDir>

#include "session/session.h"

using namespace puteal;
namespace fs = std::filesystem;

namespace
{

const char *const text = R"(puteal workbook 1
sheet water "Water"
column amount amounts "Amount" 10
line
amount: 5 gal
end water 1
end workbook
)";
constexpr CellAt first{0, 0, 0};

QString content(const fs::path &path)
{
    std::ifstream in(path, std::ios::binary);
    return QString::fromStdString({std::istreambuf_iterator<char>(in), {}});
}

void put(const fs::path &path, const std::string &bytes)
{
    std::ofstream(path, std::ios::binary) << bytes;
}

/// The file with that amount in its only cell.
QString with(const char *amount)
{
    return QString(text).replace("5 gal", amount);
}

QString wordsOf(const Result<void> &result)
{
    return result ? QString("saved") : QString::fromStdString(result.error().words);
}

} // namespace

class SessionFileTest : public QObject
{
    Q_OBJECT
    QTemporaryDir m_folder;
    fs::path m_path, m_beside;
    std::unique_ptr<Session> m_session;

    void type(const char *amount) { QVERIFY(m_session->apply(SetText{first, amount})); }

private slots:
    void init()
    {
        for (const auto &entry : fs::directory_iterator(m_folder.path().toStdString()))
            fs::remove_all(entry.path());
        m_path = fs::path(m_folder.path().toStdString()) / "well.puteal";
        m_beside = m_path.string() + ".before";
        put(m_path, text);
        auto session = Session::open(m_path);
        QVERIFY(session);
        m_session = std::move(*session);
    }

    void theLastSaveIsKeptBeside()
    {
        type("6 gal");
        QCOMPARE(wordsOf(m_session->save(m_path)), QString("saved"));
        QCOMPARE(content(m_beside), with("5 gal"));
        QCOMPARE(wordsOf(m_session->save(m_path)), QString("saved")); // nothing new: the copy stays
        QCOMPARE(content(m_beside), with("5 gal"));
        type("7 gal");
        QCOMPARE(wordsOf(m_session->save(m_path, false)), QString("saved"));
        QCOMPARE(content(m_beside), with("5 gal"));
        QCOMPARE(content(m_path), with("7 gal"));
    }
    void theCopyIsNoMoreOpenThanTheFile()
    {
        ::chmod(m_path.c_str(), 0600);
        type("6 gal");
        QVERIFY(m_session->save(m_path));
        struct stat info = {};
        QCOMPARE(::stat(m_beside.c_str(), &info), 0);
        QCOMPARE(info.st_mode & 07777, 0600U);
    }
    void withoutACopyNothingIsReplaced()
    {
        fs::create_directory(m_beside);
        type("6 gal");
        QCOMPARE(
            wordsOf(m_session->save(m_path)),
            QString("not saved: %1 is no plain file; the file on disk is as it was; save under another name")
                .arg(QString::fromStdString(m_beside.string())));
        QCOMPARE(content(m_path), with("5 gal"));
        QVERIFY(m_session->unsaved());
    }

    void whatSomebodyElseChangedIsNotReplaced()
    {
        const QString refusal =
            QString("not saved: %1 was changed by somebody else since it was opened or saved; "
                    "the file on disk is as it was; save under another name, then compare the "
                    "two")
                .arg(QString::fromStdString(m_path.string()));
        type("6 gal");
        put(m_path, with("9 gal").toStdString());
        QCOMPARE(wordsOf(m_session->save(m_path)), refusal);
        QCOMPARE(wordsOf(m_session->save(m_path, false)), refusal);
        fs::create_symlink(m_path, m_path.parent_path() / "link.puteal"); // the same file by another name
        QVERIFY(!m_session->save(m_path.parent_path() / "link.puteal"));
        QCOMPARE(content(m_path), with("9 gal"));
        QVERIFY(!fs::exists(m_beside));
        QVERIFY(m_session->unsaved());

        const fs::path other = m_path.parent_path() / "mine.puteal";
        QCOMPARE(wordsOf(m_session->save(other)), QString("saved"));
        QCOMPARE(content(other), with("6 gal"));
        type("7 gal"); // from now on the other file is this session's
        QCOMPARE(wordsOf(m_session->save(other)), QString("saved"));
    }
    void whatSomebodyElseChangedIsReplacedWhenAccepted()
    {
        type("6 gal");
        QVERIFY(!m_session->changedOnDisk());
        put(m_path, with("9 gal").toStdString());
        QVERIFY(m_session->changedOnDisk());
        m_session->acceptDisk();
        QVERIFY(!m_session->changedOnDisk());
        put(m_path, with("10 gal").toStdString()); // accepted was the other state
        QVERIFY(!m_session->save(m_path));
        m_session->acceptDisk();
        QCOMPARE(wordsOf(m_session->save(m_path)), QString("saved"));
        QCOMPARE(content(m_path), with("6 gal"));
        QCOMPARE(content(m_beside), with("10 gal"));
    }
    void theSameTextFromSomebodyElseIsNoChange()
    {
        type("6 gal");
        put(m_path, with("6 gal").toStdString());
        QCOMPARE(wordsOf(m_session->save(m_path)), QString("saved"));
        QVERIFY(!m_session->unsaved());
    }
    void aFileThatWasRemovedIsMadeAgain()
    {
        type("6 gal");
        fs::remove(m_path);
        QCOMPARE(wordsOf(m_session->save(m_path)), QString("saved"));
        QCOMPARE(content(m_path), with("6 gal"));
    }
    void anotherFileThatWasChosenIsReplacedAndKeptBeside()
    {
        const fs::path other = m_path.parent_path() / "other.puteal";
        put(other, "somebody's");
        QCOMPARE(wordsOf(m_session->save(other)), QString("saved"));
        QCOMPARE(content(other), with("5 gal"));
        QCOMPARE(content(other.string() + ".before"), QString("somebody's"));
    }
};

QTEST_APPLESS_MAIN(SessionFileTest)
#include "session_file_test.moc"
