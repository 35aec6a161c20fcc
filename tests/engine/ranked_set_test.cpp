/// The set of ranks that orders recalculation, against a plain ordered set.
#include <QTest>

#include <random>
#include <set>

#include "recalc/ranked_set.h"

using namespace puteal;

class RankedSetTest : public QObject
{
    Q_OBJECT

private slots:
    void takesAscendingWithWhatIsInsertedMeanwhile_data();
    void takesAscendingWithWhatIsInsertedMeanwhile();
};

void RankedSetTest::takesAscendingWithWhatIsInsertedMeanwhile_data()
{
    QTest::addColumn<std::uint32_t>("size");
    // One word, a word and one more, one and two levels full, three levels begun.
    for (const std::uint32_t size : {1U, 63U, 64U, 65U, 4096U, 4097U, 300000U})
        QTest::addRow("%u", size) << size;
}

/// What is taken may wake greater ranks, in the word that is being taken and in later ones.
void RankedSetTest::takesAscendingWithWhatIsInsertedMeanwhile()
{
    QFETCH(std::uint32_t, size);
    std::mt19937 random(20261126U + size);
    RankedSet set(size);
    for (int round = 0; round < 40; ++round) {
        std::set<std::uint32_t> plain;
        const auto some = [&](std::uint32_t from, std::uint32_t most) {
            std::set<std::uint32_t> ranks;
            for (std::uint32_t i = random() % (most + 1); from < size && i > 0; --i) {
                // Near ones fall into the same word, far ones not.
                const std::uint32_t reach = random() % 2 == 0 ? std::min(size - from, 80U) : size - from;
                ranks.insert(from + random() % reach);
            }
            const std::vector<std::uint32_t> list(ranks.begin(), ranks.end());
            set.insertAscending(list.data(), list.data() + list.size());
            plain.insert(ranks.begin(), ranks.end());
        };
        some(0, 50);
        set.insert(size - 1);
        plain.insert(size - 1);
        int wakes = 60;
        std::vector<std::uint32_t> taken, expected;
        set.takeEach([&](std::uint32_t rank) {
            taken.push_back(rank);
            expected.push_back(*plain.begin());
            plain.erase(plain.begin());
            if (wakes-- > 0)
                some(rank + 1, 4);
        });
        QCOMPARE(taken, expected);
        QVERIFY(plain.empty());
        QVERIFY(set.empty());
    }
}

QTEST_APPLESS_MAIN(RankedSetTest)
#include "ranked_set_test.moc"
