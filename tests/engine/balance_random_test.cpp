/// Running balances under random mixed edits: still one run, and the balance a plain loop works out.
#include <QTest>

#include <random>

#include "formula/binder.h"
#include "support/structure.h"

using namespace puteal;

namespace
{

constexpr unsigned seed = 20261125;
using Kind = StructuralChange::Kind;

const UnitTable &units()
{
    static const UnitTable table;
    return table;
}

/// A sheet with a seed and a running balance under it; every line takes its own payment off.
class Balance
{
public:
    explicit Balance(std::mt19937 &random) : m_random(random)
    {
        const std::uint32_t lines = 12 + draw(10);
        m_book.sheets.push_back(test::sheetOf("costs", {"payment", "balance"}, lines + 4));
        m_seed = 3;
        test::setText(m_book.sheets[0], 1, m_seed, "1000");
        for (std::uint32_t l = m_seed + 1; l < lines; ++l)
            fillLine(l, true);
        m_last = lines - 1;
        test::setText(m_book.sheets[0], 0, m_last + 1, "sum(payment[" + std::to_string(m_seed + 1) + ":-1])");
    }

    /// One change among the balance's own lines, or above it.
    void edit()
    {
        StructuralChange change;
        const std::uint32_t own = m_last - m_seed; // lines of the run
        switch (draw(4)) {
        case 0: // anywhere from below the seed to above the total
            change.kind = StructuralChange::Kind::insertLines;
            change.at = m_seed + 1 + draw(own + 1);
            change.count = 1 + draw(2);
            change.side = change.at == m_last + 1 || draw(2) ? InsertSide::below : InsertSide::above;
            test::carryOut(m_book, change, units());
            m_last += change.count;
            for (std::uint32_t l = change.at; l < change.at + change.count; ++l)
                fillLine(l, false);
            break;
        case 1:
            if (own < 4)
                break;
            change.kind = StructuralChange::Kind::deleteLines;
            change.count = 1 + draw(2);
            change.at = m_seed + 1 + draw(own - change.count + 1);
            test::carryOut(m_book, change, units());
            m_last -= change.count;
            break;
        case 2:
            change.kind = StructuralChange::Kind::moveLines;
            change.count = 1 + draw(std::min(3U, own));
            change.at = m_seed + 1 + draw(own - change.count + 1);
            change.to = m_seed + 1 + draw(own + 1);
            test::carryOut(m_book, change, units());
            break;
        default:
            change.kind = StructuralChange::Kind::insertLines;
            change.at = draw(m_seed);
            change.side = InsertSide::above;
            test::carryOut(m_book, change, units());
            ++m_seed;
            ++m_last;
            break;
        }
    }

    /// The balance is still one filled run from below the seed to the last line.
    bool isOnePiece() const
    {
        const auto run = filledRun(m_book, {0, 1, m_last}, units());
        return run.first == m_seed + 1 && run.second == m_last;
    }

    /// Every line's balance through its references equals the seed less the payments down to it.
    bool isTrue() const
    {
        double truth = 1000;
        for (std::uint32_t l = m_seed + 1; l <= m_last; ++l) {
            truth -= value({0, 0, l}, 0);
            if (std::abs(value({0, 1, l}, 0) - truth) > 1e-9)
                return false;
        }
        const auto tree = parseFormula(m_book.sheets[0].cell(0, m_last + 1).typed(), units());
        const auto bound =
            tree ? bind(*tree, m_book, {0, 0, m_last + 1}) : tl::unexpected<Error>(tree.error());
        return bound && bound->references[0].range == RangeAt{0, 0, m_seed, m_last};
    }

private:
    void fillLine(std::uint32_t line, bool withFormula)
    {
        test::setText(m_book.sheets[0], 0, line, std::to_string(1 + draw(90)));
        if (withFormula)
            test::setText(m_book.sheets[0], 1, line, "balance[-1] - payment");
    }

    /// A typed number, or `first - second` of what the two references are bound to.
    double value(const CellAt &at, int depth) const
    {
        const std::string &typed = m_book.sheets[0].cell(at.column, at.line).typed();
        const auto tree = parseFormula(typed, units());
        if (!tree || depth > 100)
            return std::nan("");
        if (tree->references.empty())
            return tree->nodes[tree->root].number;
        const auto bound = bind(*tree, m_book, at);
        if (!bound || bound->references.size() != 2)
            return std::nan("");
        return value(bound->references[0].cell, depth + 1) - value(bound->references[1].cell, depth + 1);
    }

    std::uint32_t draw(std::uint32_t below) { return static_cast<std::uint32_t>(m_random() % below); }

    std::mt19937 &m_random;
    Workbook m_book;
    std::uint32_t m_seed = 0, m_last = 0;
};

} // namespace

class BalanceRandomTest : public QObject
{
    Q_OBJECT
private slots:
    void runningBalancesSurvive();
};

void BalanceRandomTest::runningBalancesSurvive()
{
    std::mt19937 random(seed);
    for (int trial = 0; trial < 40; ++trial) {
        Balance balance(random);
        for (int e = 0; e < 20; ++e) {
            balance.edit();
            QVERIFY2(balance.isOnePiece(), qPrintable(QString("trial %1 after edit %2").arg(trial).arg(e)));
            QVERIFY2(balance.isTrue(), qPrintable(QString("trial %1 after edit %2").arg(trial).arg(e)));
        }
    }
}

QTEST_APPLESS_MAIN(BalanceRandomTest)
#include "balance_random_test.moc"
