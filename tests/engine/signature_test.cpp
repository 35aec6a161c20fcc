/// Signatures: unit patterns, argument counts, the general functions' descriptors, and the rules a plugin
/// keeps to ship.
#include <QTest>

#include <set>

#include "functions/descriptor.h"
#include "functions/functions_page.h"
#include "functions/general.h"
#include "functions/manifest.h"
#include "functions/parameter_words.h"
#include "sdk/plugin.h"

using namespace puteal;

namespace
{

double one(double x)
{
    return x;
}

double two(double x, double y)
{
    return x + y;
}

/// Makes the parameter of goodPlugin() a date.
void dated(PluginDescription &plugin)
{
    ParameterInfo &p = plugin.functions[0].parameters[0];
    p.kind = ValueKind::date;
    p.pattern = UnitPattern{};
    p.hardLow = -HUGE_VAL;
    p.hardHigh = HUGE_VAL;
}

/// A plugin that keeps every rule; a test row breaks one.
PluginDescription goodPlugin()
{
    static constexpr puteal_source sources[] = {sdk::source("book", "H", "a book")};
    static constexpr const char *keys[] = {"book", nullptr};
    static constexpr puteal_parameter takes[] = {
        sdk::Parameter("x", "gal", "a volume").hard(0, 10).otherwise(1, "A")};
    static constexpr puteal_example examples[] = {
        sdk::example("twice_x(1 gal)", "2 gal", 0, "published", "book"),
        sdk::example("twice_x(2 gal)", "4 gal", 0, "computed", "book")};
    static constexpr puteal_example refusals[] = {sdk::refusal("twice_x(-1 gal)", "no")};
    static const puteal_function functions[] = {sdk::Function("twice_x", "Twice", "Doubles.", sdk::call<one>)
                                                    .takes(takes)
                                                    .gives("gal", "twice the volume")
                                                    .by("2 * x")
                                                    .from(keys)
                                                    .shownBy(examples)
                                                    .refusing(refusals)};
    static const puteal_plugin plugin = sdk::plugin("trial", "Trial", 1, 2, sources, functions);
    return *describe(plugin, UnitTable());
}

using Break = void (*)(PluginDescription &);

} // namespace
Q_DECLARE_METATYPE(Break)

class SignatureTest : public QObject
{
    Q_OBJECT

private slots:
    void readsPatterns_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("fixed");
        QTest::addColumn<QString>("variables");
        QTest::newRow("pure number") << ""
                                     << ""
                                     << "";
        QTest::newRow("unit with substance") << "mg/L as Fe"
                                             << "mg/L as Fe"
                                             << "";
        QTest::newRow("unit with braces") << "gpg/(mg{Fe}/L)"
                                          << "gpg/(mg{Fe}/L)"
                                          << "";
        QTest::newRow("any unit") << "'u"
                                  << ""
                                  << "u6 ";
        QTest::newRow("two variables") << "'y/'x"
                                       << ""
                                       << "y6 x-6 ";
        QTest::newRow("root") << "'u^(1/2)"
                              << ""
                              << "u3 ";
        QTest::newRow("square in a product") << "gal*'u^2"
                                             << "gal"
                                             << "u12 ";
        QTest::newRow("variable by time") << "'u/yr"
                                          << "1/yr"
                                          << "u6 ";
        QTest::newRow("substance of a choice") << "mg/L as 'oxidant"
                                               << "mg/L"
                                               << "s0 ";
    }
    void readsPatterns()
    {
        QFETCH(QString, text);
        QFETCH(QString, fixed);
        QFETCH(QString, variables);
        const auto pattern = readPattern(text.toStdString(), UnitTable(), parameters());
        QVERIFY2(pattern, pattern ? "" : pattern.error().words.c_str());
        QCOMPARE(QString::fromStdString(pattern->unit.text), fixed);
        std::string found;
        for (const auto &[letter, sixths] : pattern->variables)
            found += letter + std::to_string(sixths) + " ";
        if (pattern->substanceFrom >= 0)
            found += "s" + std::to_string(pattern->substanceFrom) + " ";
        QCOMPARE(QString::fromStdString(found), variables);
        QCOMPARE(QString::fromStdString(pattern->text), text);
    }

    void refusesPatterns_data()
    {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("words");
        QTest::newRow("variable without a letter")
            << "'1"
            << "\"'1\" is no unit variable: write 'u, 'u^2 or 'u^(1/2)";
        QTest::newRow("power of a seventh") << "'u^(1/7)"
                                            << "\"'u^(1/7)\" is no unit variable: write 'u, 'u^2 or 'u^(1/2)";
        QTest::newRow("no such choice") << "mg/L as 'metal"
                                        << "no choice parameter `metal` with substances beside its words";
        QTest::newRow("a choice without substances")
            << "mg/L as 'table"
            << "no choice parameter `table` with substances beside its words";
    }
    void refusesPatterns()
    {
        QFETCH(QString, text);
        QFETCH(QString, words);
        const auto pattern = readPattern(text.toStdString(), UnitTable(), parameters());
        QVERIFY(!pattern);
        QCOMPARE(QString::fromStdString(pattern.error().words), words);
    }
    void refusesUnknownUnits() { QVERIFY(!readPattern("gallonz/day", UnitTable(), {})); }

    void generalFunctionsAreComplete()
    {
        std::size_t at = 0;
        const auto all = generalFunctions(UnitTable());
        std::set<General> kinds;
        for (const auto &group : generalGroups()) {
            for (const char *name : group.names) {
                QVERIFY(at < all.size());
                QCOMPARE(QString::fromStdString(all[at].name), QString(name));
                kinds.insert(all[at].general);
                ++at;
            }
        }
        QCOMPARE(at, all.size());
        QCOMPARE(kinds.size(), static_cast<std::size_t>(General::gauge)); // every kind but `none`
        for (const auto &f : all) {
            QVERIFY2(!f.purpose.empty() && !f.relation.empty() && !f.resultMeaning.empty(), f.name.c_str());
            for (const auto &p : f.parameters)
                QVERIFY2(!p.meaning.empty() && !p.name.empty(), f.name.c_str());
        }
    }

    void callsOfGeneralFunctions_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<QString>("call");
        QTest::addColumn<std::size_t>("least");
        QTest::addColumn<std::size_t>("most");
        const std::size_t many = 64;
        QTest::newRow("open") << "sum"
                              << "sum(x..., [only])" << std::size_t{1} << many;
        QTest::newRow("last after open") << "percentile"
                                         << "percentile(x..., p)" << std::size_t{2} << many;
        QTest::newRow("optional") << "least_at"
                                  << "least_at(x, [only], [place])" << std::size_t{1} << std::size_t{3};
        QTest::newRow("plain") << "clamp"
                               << "clamp(x, low, high)" << std::size_t{3} << std::size_t{3};
    }
    void callsOfGeneralFunctions()
    {
        QFETCH(QString, name);
        QFETCH(QString, call);
        QFETCH(std::size_t, least);
        QFETCH(std::size_t, most);
        const auto registry = Registry::general(UnitTable());
        const auto *f = registry->find(name.toStdString());
        QVERIFY(f);
        QCOMPARE(QString::fromStdString(f->call()), call);
        QCOMPARE(f->leastArguments(), least);
        QCOMPARE(f->mostArguments(), most);
        QCOMPARE(f, &registry->functions()[f->index]);
    }

    void aPluginKeepsTheRules_data()
    {
        QTest::addColumn<Break>("breaks");
        QTest::addColumn<QString>("words");
        const auto row = [](const char *rule, Break breaks, const char *words) {
            QTest::newRow(rule) << breaks << QString(words);
        };
        row(
            "good", [](PluginDescription &) {}, "");
        row(
            "id", [](PluginDescription &p) { p.info.id = "Trial"; },
            "the plugin's id \"Trial\" is not lower_snake_case");
        row(
            "source mark", [](PluginDescription &p) { p.info.sources[0].mark = "X"; },
            "source \"book\" of plugin `trial` needs a lower_snake_case key, one mark of LFMDSHEPTRCAW and "
            "words");
        row(
            "name", [](PluginDescription &p) { p.functions[0].name = "Twice"; },
            "function `Twice`: its name is not lower_snake_case or is a reserved word");
        row(
            "source", [](PluginDescription &p) { p.functions[0].sources.clear(); },
            "function `twice_x`: it needs a source");
        row(
            "unknown source", [](PluginDescription &p) { p.functions[0].sources[0] = "paper"; },
            "function `twice_x`: it names the source \"paper\", which the plugin does not list");
        row(
            "two examples", [](PluginDescription &p) { p.functions[0].examples.pop_back(); },
            "function `twice_x`: it needs at least two worked examples");
        row(
            "example calls it", [](PluginDescription &p) { p.functions[0].examples[1].formula = "1 gal"; },
            "function `twice_x`: the example 1 gal does not call it");
        row(
            "origin", [](PluginDescription &p) { p.functions[0].examples[0].origin = "hearsay"; },
            "function `twice_x`: the example twice_x(1 gal) needs an origin: published, computed, common "
            "practice or memory");
        row(
            "refusal", [](PluginDescription &p) { p.functions[0].refusals.clear(); },
            "function `twice_x`: it needs at least one refusal example");
        row(
            "relation", [](PluginDescription &p) { p.functions[0].relation.clear(); },
            "function `twice_x`: it needs its relation as text");
        row(
            "result meaning", [](PluginDescription &p) { p.functions[0].resultMeaning.clear(); },
            "function `twice_x`: it needs the meaning of its result");
        row(
            "mark of a default",
            [](PluginDescription &p) { p.functions[0].parameters[0].fallbackMark.clear(); },
            "function `twice_x`: parameter `x`: a default needs a source mark of one letter");
        row(
            "default in range", [](PluginDescription &p) { p.functions[0].parameters[0].fallback = 11; },
            "function `twice_x`: parameter `x`: its default lies outside its own hard range");
        row(
            "a date", [](PluginDescription &p) { dated(p); }, "");
        row(
            "a date with a unit",
            [](PluginDescription &p) {
                dated(p);
                p.functions[0].parameters[0].pattern.text = "day";
            },
            "function `twice_x`: parameter `x`: only a quantity has a unit");
        row(
            "a date with a range",
            [](PluginDescription &p) {
                dated(p);
                p.functions[0].parameters[0].hardLow = 0;
            },
            "function `twice_x`: parameter `x`: a date takes no range: refuse it in the function");
        row(
            "a bounded date",
            [](PluginDescription &p) {
                dated(p);
                p.functions[0].parameters[0].mayBeBounded = true;
            },
            "function `twice_x`: parameter `x`: a date is a single value and never a bounded reading");
        row(
            "half a day",
            [](PluginDescription &p) {
                dated(p);
                p.functions[0].parameters[0].fallback = 0.5;
            },
            "function `twice_x`: parameter `x`: its default is no whole day");
        row(
            "range order",
            [](PluginDescription &p) {
                p.functions[0].parameters[0].usualLow = 7, p.functions[0].parameters[0].usualHigh = 3;
            },
            "function `twice_x`: parameter `x`: a range needs its low end first");
        row(
            "required after optional",
            [](PluginDescription &p) {
                p.functions[0].parameters.push_back(p.functions[0].parameters[0]);
                p.functions[0].parameters[1].name = "y";
                p.functions[0].parameters[1].hasDefault = false;
            },
            "function `twice_x`: parameter `y` must have a default, as one before it has");
    }
    void aPluginKeepsTheRules()
    {
        QFETCH(Break, breaks);
        QFETCH(QString, words);
        auto plugin = goodPlugin();
        breaks(plugin);
        const auto kept = keepsRules(plugin);
        QCOMPARE(kept ? QString() : QString::fromStdString(kept.error().words), words);
    }

    /// A date goes through descriptor, manifest and help, and a library that differs in it is noticed.
    void datesAreDescribed()
    {
        static constexpr puteal_source sources[] = {sdk::source("book", "H", "a book")};
        static constexpr puteal_parameter takes[] = {
            sdk::Parameter("sampled", "", "day of the sample").date(),
            sdk::Parameter("from", "", "not before").date().otherwise(sdk::dayOf(2024, 12, 28), "A")};
        static const puteal_function functions[] = {
            sdk::Function("follow_up", "Follow-up", "When.", sdk::call<two>)
                .takes(takes)
                .givesDate("that day")};
        static const puteal_plugin plugin = sdk::plugin("trial", "Trial", 1, 2, sources, functions);
        const auto described = describe(plugin, UnitTable());
        QVERIFY2(described, described ? "" : described.error().words.c_str());
        Manifest manifest;
        const std::string text = manifestText(*described, "trial.so");
        QVERIFY(readHead(text, manifest));
        QVERIFY(readBlocks(text, manifest.info.functions.size(), manifest));
        const auto read = readFunction(manifest.blocks.at(0), UnitTable());
        QVERIFY2(read, read ? "" : read.error().words.c_str());
        QCOMPARE(read->parameters[0].kind, ValueKind::date);
        QCOMPARE(read->parameters[1].fallback, sdk::dayOf(2024, 12, 28));
        QCOMPARE(read->resultKind, ValueKind::date);
        QCOMPARE(difference(described->functions[0], *read), std::string());
        auto other = *read;
        other.parameters[0].kind = ValueKind::quantity;
        QCOMPARE(difference(described->functions[0], other), std::string("parameter `sampled`"));
        QCOMPARE(parameterWords(read->parameters[0]), std::string("a date; day of the sample"));
        QCOMPARE(parameterWords(read->parameters[1]),
                 std::string("a date; not before; 2024-12-28 when left out (assumed)"));
        QCOMPARE(resultWords(*read), std::string("a date: that day"));
    }
    /// A kind of a later contract is refused, never read as something else.
    void unknownKindsAreRefused()
    {
        static constexpr puteal_source sources[] = {sdk::source("book", "H", "a book")};
        static puteal_parameter takes[] = {sdk::Parameter("x", "", "something new")};
        takes[0].kind = 5;
        static const puteal_function functions[] = {
            sdk::Function("new_f", "New", "New.", sdk::call<one>).takes(takes).gives("", "something")};
        static const puteal_plugin plugin = sdk::plugin("trial", "Trial", 1, 2, sources, functions);
        const auto described = describe(plugin, UnitTable());
        QVERIFY(!described);
        QCOMPARE(described.error().words,
                 std::string("function `new_f`: value kind 5 is not known to this version"));
    }

    void helpSaysWhatACallNeeds()
    {
        const auto registry = Registry::general(UnitTable());
        const auto help = QString::fromStdString(functionHelp(*registry->find("clamp"), *registry));
        for (const char *words : {"clamp(x, low, high)", "any unit 'u; the value", "expected 10 gpm (",
                                  "relation\n  min(max(x, low), high)"})
            QVERIFY2(help.contains(words), qPrintable(help));
        QCOMPARE(QString::fromStdString(rangeWords(0, 100, "mg/L as Fe")), QString("0 to 100 mg/L as Fe"));
        QCOMPARE(QString::fromStdString(rangeWords(0, HUGE_VAL, "gpg")), QString("0 gpg or more"));
        QCOMPARE(QString::fromStdString(rangeWords(-HUGE_VAL, 5, "")), QString("at most 5"));
        QCOMPARE(QString::fromStdString(rangeWords(-HUGE_VAL, HUGE_VAL, "gpg")), QString());
    }

private:
    static std::vector<ParameterInfo> parameters()
    {
        std::vector<ParameterInfo> all(2);
        all[0].name = "oxidant";
        all[0].kind = ValueKind::choice;
        all[0].choices = {"chlorine", "ozone"};
        all[0].choiceSubstances = {"Cl2", "O3"};
        all[1].name = "table";
        all[1].kind = ValueKind::choice;
        all[1].choices = {"round", "fine"};
        return all;
    }
};

QTEST_APPLESS_MAIN(SignatureTest)
#include "signature_test.moc"
