/// The command line, a folder a case: `command` (arguments, one a line), `out`, `err`, `code`. $SHEETS is the
/// folder of example sheets, $CASE the case's own folder. A file `output` names where standard output goes
/// instead (a full device). PUTEAL_UPDATE=1 writes the files anew (then read
/// the difference).
#include <QDir>
#include <QProcess>
#include <QTest>

class CliTest : public QObject
{
    Q_OBJECT
private:
    static QString read(const QString &path)
    {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
    }
    static void write(const QString &path, const QString &text)
    {
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(text.toUtf8());
    }

private slots:
    void cases_data()
    {
        QTest::addColumn<QString>("folder");
        const QDir cases(QStringLiteral(PUTEAL_SOURCE_DIR "/tests/cli/cases"));
        const auto names = cases.entryList(QDir::Dirs | QDir::NoDotAndDotDot, QDir::Name);
        QVERIFY(names.size() >= 20);
        for (const QString &name : names)
            QTest::newRow(qPrintable(name)) << cases.filePath(name);
    }
    void cases()
    {
        QFETCH(QString, folder);
        QStringList arguments = read(folder + "/command").split('\n', Qt::SkipEmptyParts);
        QVERIFY2(!arguments.isEmpty(), "the case has no command");
        for (QString &argument : arguments)
            argument.replace("$SHEETS", PUTEAL_SOURCE_DIR "/sheets").replace("$CASE", folder);
        QProcess process;
        if (const QString elsewhere = read(folder + "/output").trimmed(); !elsewhere.isEmpty())
            process.setStandardOutputFile(elsewhere);
        process.start(QStringLiteral(PUTEAL_BUILD_DIR "/bin/puteal"), arguments);
        QVERIFY(process.waitForFinished(60000));
        const auto neutral = [&](const QByteArray &bytes) {
            return QString::fromUtf8(bytes)
                .replace(folder, "$CASE")
                .replace(PUTEAL_SOURCE_DIR "/sheets", "$SHEETS");
        };
        const QString out = neutral(process.readAllStandardOutput()),
                      err = neutral(process.readAllStandardError());
        const QString code = QString::number(process.exitCode()) + "\n";
        if (qEnvironmentVariableIsSet("PUTEAL_UPDATE")) {
            write(folder + "/out", out);
            write(folder + "/err", err);
            write(folder + "/code", code);
        }
        QCOMPARE(err, read(folder + "/err"));
        QCOMPARE(out, read(folder + "/out"));
        QCOMPARE(code, read(folder + "/code"));
        QCOMPARE(process.exitStatus(), QProcess::NormalExit);
    }
};

QTEST_APPLESS_MAIN(CliTest)
#include "cli_test.moc"
