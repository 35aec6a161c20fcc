/// docs/catalogue.md: every function it names exists, every function of the shipped plugins stands on it, and
/// its formulas can be worked out.
#include <QFile>
#include <QRegularExpression>
#include <QTest>

#include <set>

#include "functions/registry.h"
#include "session/session.h"

using namespace puteal;

namespace
{

QString page()
{
    QFile file(PUTEAL_SOURCE_DIR "/docs/catalogue.md");
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

const PluginFolders &shipped()
{
    static const PluginFolders folders{{}, {std::string(PUTEAL_BUILD_DIR) + "/lib/puteal/plugins"}};
    return folders;
}

/// [name](functions.md#name), as they stand.
std::set<std::string> named()
{
    std::set<std::string> names;
    static const QRegularExpression link(R"(\[([a-z0-9_]+)\]\(functions\.md#([a-z0-9_]+)\))");
    for (auto found = link.globalMatch(page()); found.hasNext();) {
        const auto match = found.next();
        if (match.captured(1) == match.captured(2))
            names.insert(match.captured(1).toStdString());
    }
    return names;
}

/// What stands in backquotes in the second column of the tables, and is no command.
QStringList formulas()
{
    QStringList out;
    static const QRegularExpression quoted("`([^`]+)`");
    for (const QString &line : page().split('\n')) {
        if (!line.startsWith("| "))
            continue;
        for (auto found = quoted.globalMatch(line.section(" | ", 1)); found.hasNext();) {
            const QString text = found.next().captured(1);
            if (!text.startsWith("puteal ") && !text.startsWith('"'))
                out += text;
        }
    }
    return out;
}

} // namespace

class CatalogueTest : public QObject
{
    Q_OBJECT

private slots:
    void everyFunctionNamedExists()
    {
        const auto registry = Registry::create(UnitTable(), shipped());
        const auto names = named();
        QVERIFY(names.size() >= 100);
        QStringList unknown;
        for (const std::string &name : names)
            if (!registry->find(name))
                unknown += QString::fromStdString(name);
        QCOMPARE(unknown.join(' '), QString());
    }

    void everyFunctionOfThePluginsIsThere()
    {
        const auto registry = Registry::create(UnitTable(), shipped());
        const auto names = named();
        QStringList missing;
        std::size_t count = 0;
        for (const PluginInfo &plugin : registry->plugins()) {
            if (plugin.state != PluginInfo::State::enabled)
                continue;
            for (const std::string &function : plugin.functions) {
                ++count;
                if (!names.contains(function))
                    missing += QString::fromStdString(function);
            }
        }
        QVERIFY(count >= 100);
        QCOMPARE(missing.join(' '), QString());
    }

    void everyLinkReadsAsItPoints()
    {
        static const QRegularExpression link(R"(\[([^\]]+)\]\(functions\.md#([^)]+)\))");
        for (auto found = link.globalMatch(page()); found.hasNext();) {
            const auto match = found.next();
            QCOMPARE(match.captured(2), match.captured(1));
        }
    }

    void everyFormulaIsWorkedOut()
    {
        const auto session = Session::createNew(shipped());
        const CellAt at{0, 1, 0};
        const QStringList all = formulas();
        QVERIFY(all.size() >= 20);
        for (const QString &formula : all) {
            QVERIFY(session->apply(SetText{at, formula.toStdString()}));
            const CellView view = session->view(at);
            QVERIFY2(!view.error && view.isFormula,
                     qPrintable(formula + ": " + (view.error ? view.error->words.c_str() : "no formula")));
        }
    }
};

QTEST_APPLESS_MAIN(CatalogueTest)
#include "catalogue_test.moc"
