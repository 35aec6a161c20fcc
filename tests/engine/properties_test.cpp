/// Properties of evaluation: random formulas against a plain evaluator, rescaled base units, incremental
/// against full.
#include <QTest>

#include <bit>
#include <cmath>
#include <map>
#include <random>

#include <fmt/format.h>

#include "support/plain_evaluator.h"
#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::PlainEvaluator;
using puteal::test::SheetCell;
using puteal::test::sheetText;
using puteal::test::Worked;

namespace
{

constexpr unsigned seed = 20260512; // fixed: a failure comes again

/// Draws formulas that check: `pure` gives a pure number, `flow` a flow, `condition` yes or no.
class RandomFormula
{
public:
    explicit RandomFormula(unsigned start) : m_random(start) {}
    unsigned pick(unsigned n) { return std::uniform_int_distribution<unsigned>(0, n - 1)(m_random); }

    std::string pure(int depth)
    {
        if (depth <= 0)
            return leaf({"pp", "qq", "0.5", "3", "17.25", "1e-3", "pi"});
        switch (pick(14)) {
        case 0:
            return two(pure(depth - 1), "+", pure(depth - 1));
        case 1:
            return two(pure(depth - 1), "-", pure(depth - 1));
        case 2:
            return two(pure(depth - 1), "*", pure(depth - 1));
        case 3:
            return two(pure(depth - 1), "/", pure(depth - 1));
        case 4:
            return two(flow(depth - 1), "/", flow(depth - 1));
        case 5:
            return "(" + pure(depth - 1) + ")^" + leaf({"2", "3", "0.5", "-1", "0", "1.852"});
        case 6:
            return leaf({"sqrt(", "abs(", "exp(", "ln(", "log10(", "sin(", "atan(", "cbrt("}) +
                   pure(depth - 1) + ")";
        case 7:
            return "min(" + pure(depth - 1) + ", " + pure(depth - 1) + ")";
        case 8:
            return "max(" + pure(depth - 1) + ", " + pure(depth - 1) + ", 2)";
        case 9:
            return "clamp(" + pure(depth - 1) + ", -5, " + pure(depth - 1) + ")";
        case 10:
            return "(" + condition(depth - 1) + " ? " + pure(depth - 1) + " : " + pure(depth - 1) + ")";
        case 11:
            return "if_error(" + pure(depth - 1) + ", " + pure(depth - 1) + ")";
        case 12:
            return leaf({"round_to(", "ceil_to(", "floor_to("}) + pure(depth - 1) + ", " +
                   leaf({"0.25", "1", "pp"}) + ")";
        default:
            return "-(" + pure(depth - 1) + ")";
        }
    }
    std::string flow(int depth)
    {
        if (depth <= 0)
            return leaf({"flow", "use", "5 gpm", "30 gal/day", "2 L/min"});
        switch (pick(6)) {
        case 0:
            return two(flow(depth - 1), "+", flow(depth - 1));
        case 1:
            return two(flow(depth - 1), "-", flow(depth - 1));
        case 2:
            return two(flow(depth - 1), "*", pure(depth - 1));
        case 3:
            return two(flow(depth - 1), "/", pure(depth - 1));
        case 4:
            return "min(" + flow(depth - 1) + ", " + flow(depth - 1) + ")";
        default:
            return "(" + condition(depth - 1) + " ? " + flow(depth - 1) + " : " + flow(depth - 1) + ")";
        }
    }
    std::string condition(int depth)
    {
        if (depth <= 0)
            return leaf({"open", "yes", "flow > use", "pp <= qq", "pp != 3"});
        switch (pick(5)) {
        case 0:
            return "(" + condition(depth - 1) + " and " + condition(depth - 1) + ")";
        case 1:
            return "(" + condition(depth - 1) + " or " + condition(depth - 1) + ")";
        case 2:
            return "not (" + condition(depth - 1) + ")";
        case 3:
            return "(" + pure(depth - 1) + leaf({" < ", " <= ", " > ", " >= ", " == ", " != "}) +
                   pure(depth - 1) + ")";
        default:
            return "(" + flow(depth - 1) + leaf({" < ", " >= "}) + flow(depth - 1) + ")";
        }
    }

private:
    std::string leaf(std::initializer_list<const char *> choices)
    {
        return choices.begin()[pick(static_cast<unsigned>(choices.size()))];
    }
    static std::string two(const std::string &a, const char *op, const std::string &b)
    {
        return "(" + a + " " + op + " " + b + ")";
    }
    std::mt19937 m_random;
};

const std::vector<SheetCell> inputs{{"2.5", {"name pp"}},
                                    {"-0.75", {"name qq"}},
                                    {"7 gpm", {"name flow"}},
                                    {"300 gal/day", {"name use"}},
                                    {"no", {"name open"}}};

std::vector<std::string> drawFormulas(unsigned start, int count)
{
    RandomFormula random(start);
    std::vector<std::string> formulas;
    while (static_cast<int>(formulas.size()) < count) {
        const int depth = 1 + static_cast<int>(random.pick(3));
        std::string text = random.pick(3) == 0   ? random.flow(depth)
                           : random.pick(3) == 0 ? random.condition(depth)
                                                 : random.pure(depth);
        if (text.size() < 1500)
            formulas.push_back(std::move(text));
    }
    return formulas;
}

Worked workFormulas(const std::vector<std::string> &formulas, const UnitTable &table = Worked::shipped())
{
    std::vector<SheetCell> cells = inputs;
    for (const std::string &formula : formulas)
        cells.push_back({formula});
    return Worked(sheetText(cells),
                  &table == &Worked::shipped() ? Worked::general() : Registry::general(table), table);
}

/// Everything that two evaluations of one workbook must agree in.
std::string difference(const Worked &a, const Program &program, const Values &b)
{
    for (NodeId node = 0; node < program.nodeCount(); ++node) {
        const CellAt at = program.facts(node).at;
        const std::string place =
            "cell " + std::to_string(at.column) + "," + std::to_string(at.line + 1) + ": ";
        const bool words = program.facts(node).type.kind == ValueKind::words &&
                           a.values.status[node] == ErrorKind::none && b.status[node] == ErrorKind::none &&
                           !std::isnan(b.number[node]);
        if (words) {
            if (a.values.words.words(static_cast<std::uint32_t>(a.values.number[node])) !=
                b.words.words(static_cast<std::uint32_t>(b.number[node])))
                return place + "words differ";
        } else if (std::bit_cast<std::uint64_t>(a.values.number[node]) !=
                   std::bit_cast<std::uint64_t>(b.number[node])) {
            return fmt::format("{}numbers differ: {} {:x}, {} {:x}", place, a.values.number[node],
                               std::bit_cast<std::uint64_t>(a.values.number[node]), b.number[node],
                               std::bit_cast<std::uint64_t>(b.number[node]));
        }
        if (a.values.status[node] != b.status[node])
            return place + "kinds differ";
        const auto cautions = [&](const Values &v, std::uint32_t set) {
            std::vector<std::string> all;
            for (const std::uint32_t id : v.pool.members(set))
                all.push_back(v.pool.caution(id).key + v.pool.caution(id).words);
            std::sort(all.begin(), all.end());
            return all;
        };
        if (cautions(a.values, a.values.cautions[node]) != cautions(b, b.cautions[node]) ||
            cautions(a.values, a.values.ownCautions[node]) != cautions(b, b.ownCautions[node]))
            return place + "cautions differ";
        if (a.values.words.words(a.values.reason[node]) != b.words.words(b.reason[node]))
            return place + "reasons differ";
        const auto x = a.program->errorOf(node, a.values), y = program.errorOf(node, b);
        if (x.has_value() != y.has_value() || (x && x->words != y->words))
            return place + "errors differ: " + (x ? x->words : "") + " / " + (y ? y->words : "");
    }
    return {};
}

} // namespace

class PropertiesTest : public QObject
{
    Q_OBJECT
private slots:
    void randomFormulasMatchAPlainEvaluator();
    void doublingBaseUnitsChangesNothing();
    void rescalingBaseUnitsStaysWithinFourUlp_data();
    void rescalingBaseUnitsStaysWithinFourUlp();
    void incrementalEqualsFull_data();
    void incrementalEqualsFull();
};

void PropertiesTest::randomFormulasMatchAPlainEvaluator()
{
    const auto formulas = drawFormulas(seed, 3000);
    const Worked worked = workFormulas(formulas);
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    std::map<std::string, double> cells;
    for (std::size_t i = 0; i < inputs.size(); ++i)
        cells[inputs[i].beside[0].substr(5)] = worked.number(std::to_string(i + 1));
    int accepted = 0, failed = 0;
    for (std::size_t i = 0; i < formulas.size(); ++i) {
        const std::string cell = std::to_string(i + 1 + inputs.size());
        const NodeFacts &facts = worked.program->facts(worked.node(cell));
        if (!facts.checked)
            continue; // refused before it is worked out: nothing to compare
        ++accepted;
        const std::optional<double> plain = PlainEvaluator(*facts.tree, cells).value();
        const double ours = worked.number(cell);
        if (!plain) {
            ++failed;
            QVERIFY2(std::isnan(ours), (formulas[i] + " should be an error").c_str());
            QVERIFY2(!worked.error(cell).empty(), formulas[i].c_str());
        } else {
            QVERIFY2(ours == *plain, qPrintable(QString("%1: %2 and %3")
                                                    .arg(formulas[i].c_str())
                                                    .arg(ours, 0, 'g', 17)
                                                    .arg(*plain, 0, 'g', 17)));
        }
    }
    QVERIFY2(accepted > 2500, std::to_string(accepted).c_str());
    QVERIFY2(failed > 50, std::to_string(failed).c_str()); // errors are met too
}

void PropertiesTest::doublingBaseUnitsChangesNothing()
{
    // Powers of two rescale without rounding: every accepted formula must give the same bits in its own unit.
    const auto formulas = drawFormulas(seed + 1, 1000);
    const Worked plain = workFormulas(formulas);
    const UnitTable table({4, 0.5, 2, 1, 8, 1, 2});
    const Worked scaled = workFormulas(formulas, table);
    for (std::size_t i = 0; i < formulas.size(); ++i) {
        const std::string cell = std::to_string(i + 1 + inputs.size());
        const NodeFacts &a = plain.program->facts(plain.node(cell)),
                        &b = scaled.program->facts(scaled.node(cell));
        QCOMPARE(a.checked != nullptr, b.checked != nullptr);
        if (!a.checked)
            continue;
        const double x = a.shown.fromBase(plain.number(cell)), y = b.shown.fromBase(scaled.number(cell));
        QVERIFY2((std::isnan(x) && std::isnan(y)) || std::fabs(x - y) <= 1e-12 * std::fabs(x),
                 formulas[i].c_str());
    }
}

void PropertiesTest::rescalingBaseUnitsStaysWithinFourUlp_data()
{
    QTest::addColumn<QString>("formula");
    for (const char *formula :
         {"flow", "flow + use", "flow * 8 hr", "use / 5", "flow * 30 min + 40 gal", "flow / (3 gpm)",
          "max(flow, use)", "flow > use ? flow : use", "26000 gal / (4 * 62.5 gal/day)", "1 gpg -> mg/L",
          "$1,640 / (5 yr)", "ceil_to(flow, 1 gpm)"})
        QTest::newRow(formula) << QString(formula);
}

void PropertiesTest::rescalingBaseUnitsStaysWithinFourUlp()
{
    QFETCH(QString, formula);
    const std::vector<std::string> formulas{formula.toStdString()};
    const Worked plain = workFormulas(formulas);
    const std::string cell = std::to_string(1 + inputs.size());
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> factor(0.1, 10.0);
    for (int round = 0; round < 20; ++round) {
        std::array<double, baseCount> rescale{};
        for (double &f : rescale)
            f = factor(random);
        const UnitTable table(rescale);
        const Worked scaled = workFormulas(formulas, table);
        const NodeFacts &a = plain.program->facts(plain.node(cell)),
                        &b = scaled.program->facts(scaled.node(cell));
        if (!a.checked) {
            QVERIFY(!b.checked);
            return;
        }
        const double x = a.shown.fromBase(plain.number(cell)), y = b.shown.fromBase(scaled.number(cell));
        const double ulp = std::nextafter(std::fabs(x), HUGE_VAL) - std::fabs(x);
        QVERIFY2(std::fabs(x - y) <= 4 * ulp,
                 qPrintable(QString("%1 and %2").arg(x, 0, 'g', 17).arg(y, 0, 'g', 17)));
    }
}

void PropertiesTest::incrementalEqualsFull_data()
{
    QTest::addColumn<int>("lines");
    QTest::addColumn<int>("edits");
    QTest::newRow("few cells, many edits") << 8 << 150;
    QTest::newRow("more cells") << 60 << 120;
}

void PropertiesTest::incrementalEqualsFull()
{
    QFETCH(int, lines);
    QFETCH(int, edits);
    RandomFormula random(seed + static_cast<unsigned>(lines));
    const auto line = [&] { return std::to_string(1 + random.pick(static_cast<unsigned>(lines))); };
    const auto draw = [&]() -> std::string {
        const std::string a = "x[" + line() + "]", b = "x[" + line() + "]";
        switch (random.pick(16)) {
        case 0:
            return "";
        case 1:
            return "3 gpm";
        case 2:
            return "<2 gpm";
        case 3:
            return std::to_string(random.pick(4)) + " gpm";
        case 4:
            return "5 ft";
        case 5:
            return a + " + " + b;
        case 6:
            return a + " * 2";
        case 7:
            return a + " > " + b + " ? " + a + " : 1 gpm";
        case 8: {
            const unsigned first = 1 + random.pick(static_cast<unsigned>(lines)),
                           last = first + random.pick(4);
            return "sum(x[" + std::to_string(first) + ":" +
                   std::to_string(std::min<unsigned>(last, static_cast<unsigned>(lines))) + "])";
        }
        case 9:
            return "if_error(" + a + ", 2 gpm)";
        case 10:
            return "because(" + a + ", \"line {" + b + "}\")";
        case 11:
            return "1 gpm / (" + a + " / (1 gpm))";
        case 12:
            return "min(" + a + ", " + b + ", 9 gpm)";
        case 13:
            return "known(" + a + ") ? 1 gpm : 2 gpm";
        case 14:
            return "state(" + a + ") == \"within\" ? " + b + " : 4 gpm";
        default:
            return a + " - 1 gpm";
        }
    };
    std::vector<SheetCell> cells;
    for (int i = 0; i < lines; ++i)
        cells.push_back(
            {draw(), i % 3 == 0 ? std::vector<std::string>{"limit <= 5 gpm"} : std::vector<std::string>{}});
    Worked worked(sheetText(cells));
    QVERIFY2(worked.problem.empty(), worked.problem.c_str());
    for (int edit = 0; edit < edits; ++edit) {
        const std::string cell = line(), text = draw();
        worked.type(cell, text);
        const auto fresh = Program::build(worked.book, worked.units, worked.registry);
        const std::string differs = difference(worked, *fresh, fresh->evaluate());
        QVERIFY2(differs.empty(),
                 (differs + " after edit " + std::to_string(edit) + ", line " + cell + ": " + text).c_str());
    }
}

QTEST_APPLESS_MAIN(PropertiesTest)
#include "properties_test.moc"
