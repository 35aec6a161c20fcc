/// Every example sheet: read and written gives the same bytes, and what it expects comes out.
#include <QDir>
#include <QTest>

#include "file/reader.h"
#include "file/safe_save.h"
#include "file/writer.h"
#include "session/session.h"

using namespace puteal;

class ExampleFilesTest : public QObject
{
    Q_OBJECT

private slots:
    void files_data()
    {
        QTest::addColumn<QString>("path");
        const QDir folder(PUTEAL_SOURCE_DIR "/sheets");
        const auto names = folder.entryList({"*.puteal"}, QDir::Files, QDir::Name);
        QVERIFY(names.size() >= 3);
        for (const QString &name : names)
            QTest::newRow(qPrintable(name)) << folder.filePath(name);
    }

    /// So that the first save of a copy changes only what was edited. PUTEAL_UPDATE=1 rewrites a file once.
    void files()
    {
        QFETCH(QString, path);
        const auto text = readFile(path.toStdString());
        QVERIFY(text);
        const auto book = readWorkbook(*text);
        QVERIFY2(book, book ? "" : book.error().words.c_str());
        const std::string written = writeWorkbook(*book);
        if (qEnvironmentVariableIsSet("PUTEAL_UPDATE")) {
            QFile file(path);
            QVERIFY(file.open(QIODevice::WriteOnly));
            file.write(QByteArray::fromStdString(written));
            return;
        }
        const auto lines = QString::fromStdString(*text).split('\n');
        const auto again = QString::fromStdString(written).split('\n');
        for (qsizetype i = 0; i < std::min(lines.size(), again.size()); ++i)
            QVERIFY2(lines[i] == again[i],
                     qPrintable(QString("line %1 would be saved as: %2").arg(i + 1).arg(again[i])));
        QCOMPARE(again.size(), lines.size());
    }

    void expectations_data() { files_data(); }
    void expectations()
    {
        QFETCH(QString, path);
        const auto session = Session::open(path.toStdString());
        QVERIFY2(session, session ? "" : session.error().words.c_str());
        const auto checks = (*session)->expectations();
        QVERIFY2(!checks.empty(), "an example is its own test: give it expectations");
        for (const auto &check : checks)
            QVERIFY2(check.met, qPrintable(QString::fromStdString(check.words)));
    }
};

QTEST_APPLESS_MAIN(ExampleFilesTest)
#include "example_files_test.moc"
