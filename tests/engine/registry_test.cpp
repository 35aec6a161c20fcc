/// Plugins as they are found: manifests good and bad, trust by place, libraries that match their manifest,
/// and calls.
#include <QTemporaryDir>
#include <QTest>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "functions/descriptor.h"

using namespace puteal;
namespace fs = std::filesystem;

namespace
{

const fs::path built = fs::path(PUTEAL_BUILD_DIR) / "lib/puteal/plugins";

std::string read(const fs::path &path)
{
    std::ifstream in(path, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

void write(const fs::path &path, const std::string &text)
{
    std::ofstream(path, std::ios::binary) << text;
}

/// A folder of our own with the softening plugin in it; `change` replaces the first `from` of the manifest by
/// `to`.
struct Folder {
    QTemporaryDir dir;
    fs::path path = fs::path(dir.path().toStdString()) / "plugins";
    Folder()
    {
        fs::create_directory(path);
        fs::copy_file(built / "softening.so", path / "softening.so");
        fs::copy_file(built / "softening.plugin.toml", path / "softening.plugin.toml");
    }
    void change(const std::string &from, const std::string &to)
    {
        std::string text = read(path / "softening.plugin.toml");
        const auto at = text.find(from);
        QVERIFY2(at != std::string::npos, from.c_str());
        write(path / "softening.plugin.toml", text.replace(at, from.size(), to));
    }
    std::shared_ptr<const Registry> shipped() const { return Registry::create(UnitTable(), {{}, {path}}); }
};

struct Heard {
    int refused = 0, cautions = 0, reasons = 0;
};
void onRefuse(puteal_reply *reply, uint32_t, const char *)
{
    reply->refused = 1;
    ++static_cast<Heard *>(reply->host)->refused;
}
void onCaution(puteal_reply *reply, const char *, const char *)
{
    ++static_cast<Heard *>(reply->host)->cautions;
}
void onReason(puteal_reply *reply, const char *)
{
    ++static_cast<Heard *>(reply->host)->reasons;
}

double call(const Registry &registry, const char *name, const std::vector<double> &numbers, Heard &heard)
{
    const auto *f = registry.find(name);
    const auto entry = registry.callOf(*f);
    if (!entry)
        return std::nan("");
    std::vector<puteal_argument> arguments;
    for (const double x : numbers)
        arguments.push_back({sizeof(puteal_argument), std::isnan(x) ? std::uint32_t{PUTEAL_MISSING} : 0U, x,
                             nullptr, 0, "it", "it"});
    puteal_reply reply{sizeof(puteal_reply), 0, 0, &heard, onRefuse, onCaution, onReason};
    (*entry)(arguments.data(), arguments.size(), &reply);
    return reply.number;
}

} // namespace

class RegistryTest : public QObject
{
    Q_OBJECT

private slots:
    void initTestCase()
    {
        QVERIFY2(fs::exists(built / "softening.plugin.toml"), "build the target plugins first");
    }

    void readsASignatureWithoutOpeningTheLibrary()
    {
        Folder folder;
        write(folder.path / "softening.so", "no library at all");
        const auto registry = folder.shipped();
        const auto *f = registry->find("compensated_hardness");
        QVERIFY(f);
        QCOMPARE(QString::fromStdString(f->call()),
                 QString("compensated_hardness(hardness, iron, [manganese], [iron_allowance], "
                         "[manganese_allowance])"));
        QCOMPARE(f->leastArguments(), std::size_t{2});
        QCOMPARE(f->mostArguments(), std::size_t{5});
        QCOMPARE(QString::fromStdString(f->parameters[1].pattern.unit.text), QString("mg/L as Fe"));
        QCOMPARE(f->parameters[3].fallback, 5.0);
        QCOMPARE(f->parameters[3].hardHigh, 20.0);
        QVERIFY(f->examples.size() >= 5);
        QCOMPARE(QString::fromStdString(f->examples[0].formula),
                 QString("compensated_hardness(18 gpg, 1.5 mg/L as Fe, 0 mg/L as Mn, 2 gpg/(mg{Fe}/L))"));
        QCOMPARE(QString::fromStdString(f->plugin), QString("softening"));
        // only the call finds out
        const auto entry = registry->callOf(*f);
        QVERIFY(!entry);
        QCOMPARE(entry.error().kind, ErrorKind::plugin);
        QVERIFY(entry.error().words.find("cannot open") == 0);
    }

    void callsAFunction()
    {
        Folder folder;
        Heard heard;
        QCOMPARE(call(*folder.shipped(), "compensated_hardness", {10, 1, 0, 5, 2}, heard), 15.0);
        QCOMPARE(heard.refused + heard.cautions + heard.reasons, 0);
        QCOMPARE(call(*folder.shipped(), "softener_iron_verdict", {0, 6, 0.5, 0, 0, 0, 15}, heard), 3.0);
        QCOMPARE(heard.reasons, 1);
    }

    void refusesABadPlugin_data()
    {
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::addColumn<QString>("problem");
        const auto described = Folder().shipped()->plugins()[0].functions.size();
        QVERIFY(described > 1);
        QTest::newRow("another contract")
            << "contract = 1"
            << "contract = 99"
            << "is built for contract 99, this program offers 1: install the version that fits";
        QTest::newRow("library not there")
            << "softening.so"
            << "other.so"
            << "its library other.so is not beside the manifest: install the plugin again";
        QTest::newRow("library elsewhere")
            << "softening.so"
            << "../softening.so"
            << "its manifest cannot be used: the manifest's library must be a file beside it";
        QTest::newRow("no id") << "id = \"softening\""
                               << ""
                               << "its manifest cannot be used: the manifest has no id";
        QTest::newRow("a function more than described")
            << "functions = ["
            << "functions = [\"one_more\", "
            << QString("its manifest cannot be used: the manifest lists %1 functions and describes %2")
                   .arg(described + 1)
                   .arg(described);
        QTest::newRow("a name the general functions have")
            << "\"compensated_hardness\""
            << "\"sum\""
            << "its function sum is already a general function";
    }
    void refusesABadPlugin()
    {
        QFETCH(QString, from);
        QFETCH(QString, to);
        QFETCH(QString, problem);
        Folder folder;
        folder.change(from.toStdString(), to.toStdString());
        const auto registry = folder.shipped();
        QCOMPARE(registry->plugins().size(), std::size_t{1});
        QCOMPARE(registry->plugins()[0].state, PluginInfo::State::refused);
        QCOMPARE(QString::fromStdString(registry->plugins()[0].problem), problem);
        QVERIFY(!registry->find("exchange_load"));
        QVERIFY(registry->find("sum"));
    }

    void refusesWhatIsNotToml()
    {
        Folder folder;
        write(folder.path / "softening.plugin.toml", "this is \"no manifest\n");
        const auto registry = folder.shipped();
        QCOMPARE(registry->plugins().size(), std::size_t{1});
        QCOMPARE(QString::fromStdString(registry->plugins()[0].id), QString("softening"));
        QVERIFY(registry->plugins()[0].problem.find("its manifest cannot be used: line 1") == 0);
    }

    void refusesWhatOthersCanWrite()
    {
        Folder folder;
        fs::permissions(folder.path / "softening.so", fs::perms::others_write, fs::perm_options::add);
        QCOMPARE(QString::fromStdString(folder.shipped()->plugins()[0].problem),
                 QString("its files can be written by others: take that right away (chmod o-w) first"));
        fs::permissions(folder.path / "softening.so", fs::perms::others_write, fs::perm_options::remove);
        QCOMPARE(folder.shipped()->plugins()[0].state, PluginInfo::State::enabled);
        fs::permissions(folder.path, fs::perms::others_write, fs::perm_options::add);
        const auto registry = folder.shipped();
        QCOMPARE(registry->plugins()[0].state, PluginInfo::State::refused);
        QVERIFY(registry->plugins()[0].problem.find("can be written by others") != std::string::npos);
    }

    void doesNotEnableWhatIsNotShipped()
    {
        Folder folder;
        const auto registry = Registry::create(UnitTable(), {{folder.path}, {}});
        QCOMPARE(registry->plugins()[0].state, PluginInfo::State::notEnabled);
        QVERIFY(!registry->find("compensated_hardness"));
        const auto error = registry->whyNot("compensated_hardness");
        QCOMPARE(error.kind, ErrorKind::plugin);
        QCOMPARE(
            QString::fromStdString(error.words),
            QString(
                "`compensated_hardness` needs the plugin softening, which is not shipped with this program; "
                "this version runs shipped plugins only"));
    }

    void aStrangerNeverHidesAShippedPlugin()
    {
        Folder stranger, own;
        const auto registry = Registry::create(UnitTable(), {{stranger.path}, {own.path}});
        QCOMPARE(registry->plugins().size(), std::size_t{2});
        QVERIFY(registry->find("compensated_hardness"));
        Heard heard;
        QCOMPARE(call(*registry, "compensated_hardness", {10, 1, 0, 5, 2}, heard), 15.0);
    }

    void theFirstOfAnIdWins()
    {
        Folder first, second;
        const auto registry = Registry::create(UnitTable(), {{}, {first.path, second.path, first.path}});
        QCOMPARE(registry->plugins().size(), std::size_t{2}); // the same folder twice is one folder
        QCOMPARE(registry->plugins()[0].state, PluginInfo::State::enabled);
        QCOMPARE(QString::fromStdString(registry->plugins()[1].problem),
                 QString::fromStdString("a plugin with the same id was found first in " +
                                        fs::canonical(first.path).string()));
    }

    void comparesTheLibraryWithItsManifest_data()
    {
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::addColumn<QString>("words");
        const QString differs =
            "`compensated_hardness` of plugin softening is not the one its manifest describes: "
            "%1 differs; install it again";
        QTest::newRow("a range") << "hard = [0, 100]"
                                 << "hard = [0, 1e9]" << differs.arg("parameter `iron`");
        QTest::newRow("a unit") << "unit = \"mg/L as Mn\""
                                << "unit = \"mg/L as Fe\"" << differs.arg("parameter `manganese`");
        QTest::newRow("a default") << "default = 5\n"
                                   << "default = 4\n"
                                   << differs.arg("parameter `iron_allowance`");
        QTest::newRow("the result") << "result_unit = \"gpg\""
                                    << "result_unit = \"grain/gal\"" << differs.arg("the result");
        QTest::newRow("the version")
            << "minor = "
            << "minor = 7"
            << "plugin softening is not the one its manifest describes: install it again";
    }
    void comparesTheLibraryWithItsManifest()
    {
        QFETCH(QString, from);
        QFETCH(QString, to);
        QFETCH(QString, words);
        Folder folder;
        folder.change(from.toStdString(), to.toStdString());
        const auto registry = folder.shipped();
        const auto entry = registry->callOf(*registry->find("compensated_hardness"));
        QVERIFY(!entry);
        QCOMPARE(QString::fromStdString(entry.error().words), words);
    }

    void saysWhichBlockIsDamaged()
    {
        Folder folder;
        folder.change("title = \"Compensated hardness\"", "title = ");
        const auto registry = folder.shipped();
        QVERIFY(!registry->find("compensated_hardness"));
        QVERIFY(registry->find("exchange_load"));
        QVERIFY(registry->whyNot("compensated_hardness")
                    .words.find("the manifest of plugin softening is damaged at") == 0);
        QCOMPARE(QString::fromStdString(registry->whyNot("compensated_hardnes").words),
                 QString("no function is named `compensated_hardnes`; compensated_hardness?"));
    }

    void fetchesBlocksWhenWantedAndOnlyOfWhatItKnows()
    {
        Folder folder;
        const auto registry = folder.shipped();
        folder.change("functions = [", "functions = [\"one_more\", ");
        QVERIFY(!registry->find("exchange_load"));
        QCOMPARE(
            QString::fromStdString(registry->whyNot("exchange_load").words),
            QString(
                "`exchange_load` needs the plugin softening: its manifest cannot be used: it changed while "
                "the program was running; start it again"));
        QCOMPARE(registry->plugins()[0].state, PluginInfo::State::refused);
    }

    void manifestsAreWrittenFromTheLibraries()
    {
        const auto registry = Registry::create(UnitTable(), {{}, {built}});
        for (const auto &plugin : registry->plugins()) {
            const auto text = manifestOf(plugin.library, UnitTable());
            QVERIFY2(text, text ? "" : text.error().words.c_str());
            QVERIFY2(*text == read(plugin.manifest), plugin.id.c_str());
        }
    }

    /// The heads of the manifests know every list of words without reading a block.
    void headsKnowTheListsOfWords()
    {
        const auto registry = Registry::create(UnitTable(), {{}, {built}});
        const auto lists = registry->choiceLists();
        const std::set<std::vector<std::string>> known(lists.begin(), lists.end());
        const auto all = listsOf(registry->functions());
        QVERIFY(all.size() >= 4);
        QVERIFY((known == std::set<std::vector<std::string>>(all.begin(), all.end())));
    }

    /// Whatever trivial numbers come, a function answers or refuses; it never crashes or throws.
    void everyFunctionStandsTrivialArguments()
    {
        const auto registry = Registry::create(UnitTable(), {{}, {built}});
        std::size_t called = 0;
        for (const auto &f : registry->functions()) {
            if (f.general != General::none)
                continue;
            const auto entry = registry->callOf(f);
            QVERIFY2(entry, entry ? "" : entry.error().words.c_str());
            for (const double x : {0.0, 1.0, 1e-300, 1e300, std::nan("")})
                QVERIFY2(standsCall(f, *entry, x), f.name.c_str());
            ++called;
        }
        QVERIFY(called >= 10);
    }

private:
    static bool standsCall(const FunctionInfo &f, puteal_call entry, double x)
    {
        std::vector<puteal_argument> arguments;
        const double items[] = {x, 1.0, x};
        for (const auto &p : f.parameters) {
            puteal_argument a{sizeof(puteal_argument), 0, x, nullptr, 0, "it", "it"};
            if (p.kind == ValueKind::choice)
                a.number = x > 0 && x < 2 ? 1 : 0;
            else if (p.kind == ValueKind::yesNo)
                a.number = x > 0 ? 1 : 0;
            else if (std::isnan(x) && !p.mayBeMissing)
                a.number = p.hasDefault ? p.fallback : 1.0;
            if (std::isnan(x) && p.mayBeMissing)
                a.flags = PUTEAL_MISSING;
            if (p.range) {
                a.items = items;
                a.count = 3;
            }
            arguments.push_back(a);
        }
        Heard heard;
        puteal_reply reply{sizeof(puteal_reply), 0, 0, &heard, onRefuse, onCaution, onReason};
        entry(arguments.data(), arguments.size(), &reply);
        const bool listed = f.resultKind != ValueKind::choice || reply.refused ||
                            (reply.number >= 0 && reply.number < static_cast<double>(f.resultChoices.size()));
        return listed && (reply.refused == 0) == (heard.refused == 0);
    }
};

QTEST_APPLESS_MAIN(RegistryTest)
#include "registry_test.moc"
