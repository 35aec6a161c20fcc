/// Exact counts behind the promises of speed: what an edit works out, what filled cells compile, what edits
/// leave behind.
#include <set>

#include <QTest>

#include "compile/shape.h"
#include "file/reader.h"
#include "functions/registry.h"
#include "recalc/links.h"
#include "recalc/program.h"

using namespace puteal;

namespace
{

constexpr std::uint32_t inputs = 30, formulas = 20;

/// A sheet whose first columns hold numbers and whose others are filled from top to bottom.
std::string filledText(std::uint32_t lines, std::uint32_t numbers, const std::vector<std::string> &filled)
{
    const auto columns = numbers + static_cast<std::uint32_t>(filled.size());
    std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\n", stop = "stop";
    for (std::uint32_t c = 0; c < columns; ++c)
        text += "column q" + std::to_string(c) + " amounts \"C\" 9\n";
    for (std::uint32_t l = 0; l < lines; ++l) {
        text += "line\n";
        for (std::uint32_t c = 0; c < numbers; ++c)
            text += "q" + std::to_string(c) + ": " + std::to_string((l * 31 + c * 17) % 100 + 1) + "\n";
        for (std::uint32_t c = numbers; c < columns && l == 0; ++c)
            text += "fill q" + std::to_string(c) + ": " + filled[c - numbers] + "\n";
    }
    for (std::uint32_t c = numbers; c < columns; ++c)
        stop += " q" + std::to_string(c);
    return text + stop + "\nend s " + std::to_string(lines) + "\nend workbook\n";
}

/// Columns a formula column reads: two inputs, and every third one the formula before it.
std::vector<std::uint32_t> readBy(std::uint32_t f)
{
    std::vector<std::uint32_t> columns{(f * 7) % inputs, (f * 11 + 1) % inputs};
    if (f % 3 == 2)
        columns.push_back(inputs + f - 1);
    return columns;
}

std::vector<std::string> wideFormulas()
{
    std::vector<std::string> texts;
    for (std::uint32_t f = 0; f < formulas; ++f) {
        std::string text = "1.5";
        for (const std::uint32_t c : readBy(f))
            text += " + q" + std::to_string(c);
        texts.push_back(text);
    }
    return texts;
}

/// Formula columns that depend on a column, by walking what each one reads.
std::vector<std::uint32_t> dependantsOf(std::uint32_t column)
{
    std::vector<std::uint32_t> found;
    for (std::uint32_t f = 0; f < formulas; ++f)
        for (const std::uint32_t c : readBy(f))
            if (c == column || std::find(found.begin(), found.end(), c) != found.end()) {
                found.push_back(inputs + f);
                break;
            }
    return found;
}

struct Built {
    UnitTable units;
    Workbook book;
    std::unique_ptr<Program> program;
    explicit Built(const std::string &text)
    {
        auto read = readWorkbook(text);
        if (!read)
            qFatal("%s", read.error().words.c_str());
        book = std::move(*read);
        program = Program::build(book, units, Registry::general(units));
    }
};

} // namespace

class CountsTest : public QObject
{
    Q_OBJECT
private slots:
    void wideTemplate();
    void oneCompileAShape();
    void slicesAreTakenAgain();
};

/// A template of 2,000 lines x 50 columns with 20 formulas a line: an edit works out its dependants, no
/// other.
void CountsTest::wideTemplate()
{
    constexpr std::uint32_t lines = 2000, line = 1234;
    Built wide(filledText(lines, inputs, wideFormulas()));
    Values values = wide.program->evaluate();
    std::size_t most = 0;
    for (std::uint32_t column = 0; column < inputs; ++column) {
        const std::vector<std::uint32_t> dependants = dependantsOf(column);
        most = std::max(most, dependants.size());
        wide.book.sheets[0].setCell(column, line,
                                    Cell{std::make_shared<const std::string>("1000.5"), nullptr});
        const Changed changed = wide.program->update(wide.book, {{0, column, line}}, values);
        QCOMPARE(changed.counts.evaluated, dependants.size());
        std::vector<NodeId> expected{wide.program->nodeOf({0, column, line})};
        for (const std::uint32_t c : dependants)
            expected.push_back(wide.program->nodeOf({0, c, line}));
        QCOMPARE(changed.nodes, expected);
    }
    QVERIFY(most >= 3); // some input is read through another formula
}

/// 100,000 filled cells compile once for each distinct shape, and never again.
void CountsTest::oneCompileAShape()
{
    // The first three are one shape: two operands added, the second one 17.0625 times.
    const std::vector<std::string> texts{"q0 + q1*17.0625",       "q1 + q2*17.0625",        "q2 + q3*17.0625",
                                         "q0*q1*17.0625",         "q0*q1*q2*17.0625",       "q0^2*17.0625",
                                         "max(q0, q1)*17.0625",   "q3 > 50 ? q1 : 17.0625", "-q1*17.0625",
                                         "(q0 + q1)/(q2*17.0625)"};
    const std::size_t distinct = texts.size() - 2, before = ShapeCache::ofThread().compiles();
    const Built filled(filledText(10000, 4, texts));
    const Values values = filled.program->evaluate();
    QCOMPARE(ShapeCache::ofThread().compiles() - before, distinct);
    QCOMPARE(values.number[filled.program->nodeOf({0, 4, 0})], 1.0 + 18.0 * 17.0625);
    QCOMPARE(values.number[filled.program->nodeOf({0, 6, 9999})], 4.0 + 21.0 * 17.0625);
    (void)filled.program->evaluate();
    QCOMPARE(ShapeCache::ofThread().compiles() - before, distinct);
}

/// What a formula refers to is given back when the formula goes: typing for hours does not make a sheet grow.
void CountsTest::slicesAreTakenAgain()
{
    Links links;
    const Links::Slice two = links.add({7, 8}), three = links.add({1, 2, 3}), other = links.add({5, 6});
    const std::size_t size = links.size();
    links.drop(two);
    links.drop(other);
    links.drop(three);
    links.drop(0);
    const Links::Slice again = links.add({9, 10}), third = links.add({11, 12}), longer = links.add({4, 5, 6});
    QCOMPARE(std::set<Links::Slice>({again, third}), std::set<Links::Slice>({two, other}));
    QCOMPARE(longer, three);
    QCOMPARE(links.size(), size);
    const auto items = [&](Links::Slice slice) {
        const auto all = links.items(slice);
        return std::vector<std::uint32_t>(all.begin(), all.end());
    };
    QCOMPARE(items(again), (std::vector<std::uint32_t>{9, 10}));
    QCOMPARE(items(third), (std::vector<std::uint32_t>{11, 12}));
    QCOMPARE(items(longer), (std::vector<std::uint32_t>{4, 5, 6}));
    QVERIFY(links.add({1, 2}) >= size); // nothing is free any more
}

QTEST_APPLESS_MAIN(CountsTest)
#include "counts_test.moc"
