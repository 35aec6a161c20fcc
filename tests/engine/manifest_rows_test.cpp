/// The plain reader of manifests against the TOML library: what it reads means the same there, and what is
/// wrong it never reads. Reference: toml++ 3, a general reader of TOML 1.0.
#include <QTest>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "functions/manifest.h"
#include "functions/manifest_rows.h"
#include "support/rounds.h"

using namespace puteal;
using test::rounds;
namespace fs = std::filesystem;

namespace
{

using Rows = std::vector<ManifestRow>;

/// The library sorts keys and tables by name; order counts only among tables of one name.
Rows sorted(Rows rows)
{
    for (auto &row : rows)
        std::sort(row.values.begin(), row.values.end(),
                  [](const auto &a, const auto &b) { return a.first < b.first; });
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto &a, const auto &b) { return a.table < b.table; });
    return rows;
}

/// Heads, sources and function blocks of all manifests built.
std::vector<std::string> pieces()
{
    std::vector<std::string> all;
    for (const auto &entry : fs::directory_iterator(fs::path(PUTEAL_BUILD_DIR) / "lib/puteal/plugins")) {
        if (entry.path().extension() != ".toml")
            continue;
        std::ifstream in(entry.path(), std::ios::binary);
        std::stringstream text;
        text << in.rdbuf();
        Manifest manifest;
        if (!readHead(text.str(), manifest) ||
            !readBlocks(text.str(), manifest.info.functions.size(), manifest))
            continue;
        all.push_back(text.str().substr(0, text.str().find(headEnd)));
        all.emplace_back(manifest.sources);
        all.insert(all.end(), manifest.blocks.begin(), manifest.blocks.end());
    }
    std::sort(all.begin(), all.end()); // the disk has its own order
    return all;
}

/// Breaks a text, or nearly: letters put in, taken out and changed, lines doubled and taken out.
std::string changed(std::string text, std::mt19937 &random)
{
    static const std::string letters = "[]\"\\'\n\r\t .,=#_-+0159eainfutr{}:\x7f\xc3\xa9";
    const auto below = [&](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    for (std::size_t i = below(3) + 1; i > 0 && !text.empty(); --i) {
        const std::size_t at = below(text.size());
        const std::size_t line = text.rfind('\n', at) == std::string::npos ? 0 : text.rfind('\n', at);
        const std::size_t end = std::min(text.find('\n', line + 1), text.size());
        switch (below(6)) {
        case 0:
            text.insert(at, 1, letters[below(letters.size())]);
            break;
        case 1:
            text.erase(at, 1);
            break;
        case 2:
            text.insert(end, text.substr(line, end - line));
            break;
        case 3:
            text.erase(line, end - line);
            break;
        case 4:
            std::swap(text[at], text[below(text.size())]);
            break;
        default:
            text[at] = letters[below(letters.size())];
        }
    }
    return text;
}

} // namespace

class ManifestRowsTest : public QObject
{
    Q_OBJECT

private slots:
    void readsWhatTheToolWrites()
    {
        const auto all = pieces();
        QVERIFY(all.size() > 300);
        for (const auto &piece : all) {
            const auto plain = readPlainRows(piece);
            QVERIFY2(plain, piece.c_str());
            const auto reference = readTomlRows(piece);
            QVERIFY2(reference, piece.c_str());
            QVERIFY2(sorted(*plain) == sorted(*reference), piece.c_str());
        }
    }

    void leavesOtherFormsToTheLibrary_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<bool>("plain");
        QTest::addColumn<bool>("toml");
        const auto row = [](const char *rule, const char *text, bool plain, bool toml) {
            QTest::newRow(rule) << QByteArray(text) << plain << toml;
        };
        row("nothing", "", true, true);
        row("comment", "# words \"here\"\nid = \"a\"\n", true, true);
        row("control character in a comment", "# a\x01 b\n", false, false);
        row("line end at the end missing", "id = \"a\"", true, true);
        row("words behind a value", "id = \"a\" b\n", false, false);
        row("comment behind a value", "id = \"a\" # b\n", false, true);
        row("no blanks", "id=\"a\"\n", false, true);
        row("a key twice", "id = \"a\"\nid = \"b\"\n", false, false);
        row("escapes", "id = \"a \\\"b\\\" \\\\c\"\n", true, true);
        row("a code point", "id = \"\\u00B5g\"\n", false, true);
        row("letters beyond ASCII", "id = \"\xc2\xb5g\"\n", false, true);
        row("half a letter", "id = \"\xc2\"\n", false, false);
        row("many lines", "id = \"\"\"a\nb\"\"\"\n", false, true);
        row("a line end in words", "id = \"a\nb\"\n", false, false);
        row("words without end", "id = \"a", false, false);
        row("literal words", "id = 'a'\n", false, true);
        row("numbers", "a = [0, -5, 3.25, 1e-07, 2.5e+20, inf, -inf]\n", true, true);
        row("a long whole number", "a = 1234567890123456\n", false, true);
        row("a leading zero", "a = 05\n", false, false);
        row("a point without digits", "a = 5.\n", false, false);
        row("a number too large", "a = 1e999\n", false, false);
        row("a plus", "a = +5\n", false, true);
        row("separated digits", "a = 1_000\n", false, true);
        row("yes or no", "a = true\n", false, true);
        row("a day", "a = 2026-11-26\n", false, true);
        row("lists of lists", "a = [[\"b\", \"c\"], [\"d\"]]\n", true, true);
        row("lists three deep", "a = [[[\"b\"]]]\n", false, true);
        row("lists without end", ("a = " + std::string(100000, '[')).c_str(), false, false);
        row("an empty list", "a = []\n", false, true);
        row("a list over lines", "a = [\n1,\n2]\n", false, true);
        row("a list without end", "a = [1, 2\n", false, false);
        row("tables", "[[b]]\nc = 1\n\n[[b.d]]\ne = 2\n[[b.d]]\ne = 3\n[[b]]\nc = 4\n", true, true);
        row("a table of a key", "b = 1\n[[b]]\n", false, false);
        row("a table below a key", "[[b]]\nd = 1\n[[b.d]]\n", false, false);
        row("below no table", "[[b.d]]\ne = 1\n", false, true);
        row("one table", "[b]\nc = 1\n", false, true);
        row("a heading without end", "[[b]\nc = 1\n", false, false);
        row("a heading that begins with no key", "[!b]\nc = 1\n", false, false);
        row("blank before a key", " id = \"a\"\n", false, true);
        row("other line ends", "id = \"a\"\r\n", false, true);
    }
    void leavesOtherFormsToTheLibrary()
    {
        QFETCH(QByteArray, text);
        QFETCH(bool, plain);
        QFETCH(bool, toml);
        const auto ours = readPlainRows(text.toStdString());
        const auto theirs = readTomlRows(text.toStdString());
        QCOMPARE(ours.has_value(), plain);
        QCOMPARE(theirs.has_value(), toml);
        if (plain)
            QVERIFY(sorted(*ours) == sorted(*theirs));
        const auto read = readRows(text.toStdString());
        QCOMPARE(read.has_value(), toml);
        if (toml)
            QVERIFY(sorted(*read) == sorted(*theirs));
        else
            QCOMPARE(read.error().words, theirs.error().words);
    }

    void readsNothingElseThanTheLibrary()
    {
        std::mt19937 random(20261126);
        const auto all = pieces();
        QVERIFY(!all.empty());
        std::size_t read = 0, refused = 0;
        for (int round = 0; round < rounds(30000); ++round) {
            const auto text = changed(all[static_cast<std::size_t>(round) % all.size()], random);
            const auto plain = readPlainRows(text);
            const auto reference = readTomlRows(text);
            refused += reference ? 0U : 1U;
            if (!plain)
                continue;
            ++read;
            QVERIFY2(reference, text.c_str());
            QVERIFY2(sorted(*plain) == sorted(*reference), text.c_str());
        }
        QVERIFY(read > 100 && refused > 100);
    }
};

QTEST_APPLESS_MAIN(ManifestRowsTest)
#include "manifest_rows_test.moc"
