/// Properties of the workbook text: writing and reading are inverse, damage is refused or read the same for
/// good.
#include <QTest>

#include <clocale>
#include <random>

#include <rapidcheck.h>

#include "file/reader.h"
#include "file/writer.h"
#include "support/big_workbook.h"
#include "support/random_workbook.h"

using namespace puteal;

namespace
{

constexpr unsigned seed = 20261125; // fixed, so that a failure can be seen again
constexpr int mutations = 20000;

std::vector<std::string> splitLines(const std::string &text)
{
    std::vector<std::string> lines;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t feed = std::min(text.find('\n', at), text.size() - 1);
        lines.push_back(text.substr(at, feed + 1 - at));
        at = feed + 1;
    }
    return lines;
}

std::string joinLines(const std::vector<std::string> &lines)
{
    std::string text;
    for (const std::string &line : lines)
        text += line;
    return text;
}

/// Damage as disks, editors and merges do it.
std::string damaged(const std::string &text, std::mt19937 &random)
{
    const auto below = [&](std::size_t n) {
        return static_cast<std::size_t>(random() % std::max<std::size_t>(n, 1));
    };
    std::string out = text;
    auto lines = splitLines(text);
    const auto line = [&] { return lines.begin() + static_cast<std::ptrdiff_t>(below(lines.size())); };
    switch (below(9)) {
    case 0: // line lost
        lines.erase(line());
        return joinLines(lines);
    case 1: { // line doubled
        const auto at = line();
        lines.insert(at, std::string(*at));
        return joinLines(lines);
    }
    case 2: // lines swapped
        std::iter_swap(line(), line());
        return joinLines(lines);
    case 3: { // line moved from elsewhere
        const std::string copy = *line();
        lines.insert(line(), copy);
        return joinLines(lines);
    }
    case 4: // cut
        return text.substr(0, below(text.size()));
    case 5: // bit flipped
        out[below(out.size())] ^= static_cast<char>(1U << below(8));
        return out;
    case 6: // byte put in
        out.insert(below(out.size()), 1, "\n :\"#\\x0"[below(8)]);
        return out;
    case 7: // bytes lost
        out.erase(below(out.size()), 1 + below(5));
        return out;
    default: { // digits changed
        const std::size_t at = out.find_first_of("0123456789", below(out.size()));
        if (at != std::string::npos)
            out[at] = static_cast<char>('0' + below(10));
        return out;
    }
    }
}

/// Empty when all is well, else what is wrong.
std::string refusedOrStable(const std::string &text, bool &reads)
{
    const auto book = readWorkbook(text);
    reads = book.has_value();
    if (!book)
        return book.error().words.empty() || book.error().kind != ErrorKind::file ? "refused without words"
                                                                                  : "";
    const std::string written = writeWorkbook(*book);
    const auto again = readWorkbook(written);
    if (!again)
        return "what was written is refused: " + again.error().words;
    if (!(*again == *book))
        return "what was written is another workbook";
    return writeWorkbook(*again) == written ? "" : "written twice it differs";
}

std::string difference(const std::string &a, const std::string &b)
{
    const auto left = splitLines(a), right = splitLines(b);
    for (std::size_t i = 0; i < std::max(left.size(), right.size()); ++i) {
        const std::string l = i < left.size() ? left[i] : "(end)", r = i < right.size() ? right[i] : "(end)";
        if (l != r)
            return "line " + std::to_string(i + 1) + ": " + l + "against: " + r;
    }
    return {};
}

} // namespace

class FilePropertyTest : public QObject
{
    Q_OBJECT
private slots:
    void initTestCase() { qputenv("RC_PARAMS", "seed=20261125 max_success=1000"); }

    void readingGivesBackWhatWasWritten()
    {
        const bool holds = rc::check("read(write(w)) == w, and written again it is the same bytes", [] {
            test::RandomWorkbook random(
                [](unsigned n) { return *rc::gen::resize(100, rc::gen::inRange(0U, n)); });
            const Workbook book = random.draw();
            const std::string written = writeWorkbook(book);
            const auto again = readWorkbook(written);
            if (!again)
                RC_FAIL(again.error().words + "\n" + written);
            const std::string twice = writeWorkbook(*again);
            if (twice != written)
                RC_FAIL(difference(written, twice) + "\n" + written);
            if (!(*again == book))
                RC_FAIL("another workbook came back:\n" + written);
        });
        QVERIFY(holds);
    }

    void damageIsRefusedOrReadForGood()
    {
        std::mt19937 random(seed);
        test::RandomWorkbook source([&](unsigned n) { return static_cast<unsigned>(random() % n); });
        std::string text;
        int accepted = 0;
        for (int i = 0; i < mutations; ++i) {
            if (i % 20 == 0)
                text = writeWorkbook(source.draw());
            std::string bad = damaged(text, random);
            if (i % 3 == 0 && !bad.empty())
                bad = damaged(bad, random);
            bool reads = false;
            const std::string wrong = refusedOrStable(bad, reads);
            QVERIFY2(wrong.empty(), (wrong + "\n" + bad).c_str());
            accepted += reads;
        }
        QVERIFY2(accepted > mutations / 20 && accepted < mutations,
                 "the damage should be refused now and then, not always");
    }

    void everyCutIsRefused()
    {
        std::mt19937 random(seed);
        test::RandomWorkbook source([&](unsigned n) { return static_cast<unsigned>(random() % n); });
        for (int i = 0; i < 6; ++i) {
            const std::string text = writeWorkbook(source.draw());
            for (std::size_t size = 0; size < text.size(); ++size)
                QVERIFY2(!readWorkbook(std::string_view(text).substr(0, size)), text.substr(0, size).c_str());
        }
    }

    void everyLostCountedLineIsRefused()
    {
        const std::string text = test::bigWorkbookText(20, 2);
        const auto lines = splitLines(text);
        for (std::size_t i = 0; i < lines.size(); ++i)
            if (lines[i] == "line\n") {
                auto fewer = lines;
                fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
                QVERIFY(!readWorkbook(joinLines(fewer)));
            }
    }

    void bytesDoNotDependOnTheLocale()
    {
        const std::string text = test::bigWorkbookText(50, 3);
        const auto book = readWorkbook(text);
        QVERIFY(book);
        for (const char *name : {"C", "C.UTF-8", "de_DE.UTF-8", "fr_FR.UTF-8", "tr_TR.UTF-8"}) {
            if (!std::setlocale(LC_ALL, name))
                continue; // not on every machine; the first two are
            QCOMPARE(QString::fromStdString(writeWorkbook(*book)), QString::fromStdString(text));
            QVERIFY(readWorkbook(text) && *readWorkbook(text) == *book);
        }
        std::setlocale(LC_ALL, "C");
    }

    void largeWorkbooks()
    {
        const std::string cells = test::bigWorkbookText(3000, 9);
        const auto big = readWorkbook(cells);
        QVERIFY(big);
        QCOMPARE(big->sheets[0].cell(9, 2999).typed(), std::string("210.01 mg/L"));
        QCOMPARE(writeWorkbook(*big).size(), cells.size());
        QVERIFY(writeWorkbook(*big) == cells);
        const std::string runs = test::filledWorkbookText(5000, 4);
        const auto filled = readWorkbook(runs);
        QVERIFY(filled);
        QCOMPARE(filled->sheets[0].cell(3, 4999).typed(), std::string("c3[-1] + 1"));
        QVERIFY(writeWorkbook(*filled) == runs);
    }
};

QTEST_APPLESS_MAIN(FilePropertyTest)
#include "file_property_test.moc"
