/// docs/units.md, docs/functions.md and docs/sources.md are the program's own tables; PUTEAL_UPDATE=1 writes
/// them anew.
#include <QFile>
#include <QTest>

#include "functions/functions_page.h"
#include "functions/sources_page.h"
#include "show/pages.h"

using namespace puteal;

class PagesTest : public QObject
{
    Q_OBJECT
private:
    static void compare(const char *name, const std::string &page)
    {
        const QString path = QStringLiteral(PUTEAL_SOURCE_DIR "/docs/") + name;
        if (qEnvironmentVariableIsSet("PUTEAL_UPDATE")) {
            QFile file(path);
            QVERIFY(file.open(QIODevice::WriteOnly));
            file.write(page.data(), static_cast<qint64>(page.size()));
        }
        QFile file(path);
        QVERIFY2(file.open(QIODevice::ReadOnly), qPrintable(path));
        QCOMPARE(QString::fromStdString(page), QString::fromUtf8(file.readAll()));
    }

private slots:
    void units() { compare("units.md", unitsPage(UnitTable())); }
    void functions()
    {
        compare("functions.md", functionsPage(*Registry::create(UnitTable(), PluginFolders::standard())));
    }
    void sources()
    {
        compare("sources.md", sourcesPage(*Registry::create(UnitTable(), PluginFolders::standard())));
    }
};

QTEST_APPLESS_MAIN(PagesTest)
#include "pages_test.moc"
