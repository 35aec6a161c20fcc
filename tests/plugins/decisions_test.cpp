/// Words that decide: order of a train, complaints, and follow-ups.
#include <QTest>

#include <random>
#include <set>

#include "plugins/check_rows.h"

using namespace called;

namespace
{

const Plugin &diagnosis()
{
    static const Plugin plugin("diagnosis");
    return plugin;
}

/// Position of a word in the list of a parameter.
double word(const char *function, std::size_t parameter, const std::string &text)
{
    const char *const *words = diagnosis().find(function)->parameters[parameter].choices;
    for (int i = 0; words[i]; ++i)
        if (text == words[i])
            return i;
    qFatal("no word %s", text.c_str());
    return -1;
}

std::vector<Given> train(const std::vector<const char *> &devices)
{
    std::vector<Given> given;
    for (const char *device : devices)
        given.push_back(*device ? Given(word("train_order", 0, device)) : missing());
    return given;
}

enum { right, possible, wrong };

/// Observations of a complaint, blank until set: stain, where, draw, smell, slime, after rest, pH.
std::vector<Given> seen(const char *stain, const char *where, const char *draw, const char *smell,
                        int slime = -1, int rest = -1, double ph = -1)
{
    const char *texts[] = {stain, where, draw, smell};
    std::vector<Given> given;
    for (std::size_t i = 0; i < 4; ++i)
        given.push_back(texts[i] ? Given(word("complaint_cause", i, texts[i])) : missing());
    given.push_back(slime < 0 ? missing() : Given(slime));
    given.push_back(rest < 0 ? missing() : Given(rest));
    given.push_back(ph < 0 ? missing() : Given(ph));
    return given;
}

} // namespace

class DecisionsTest : public QObject
{
    Q_OBJECT

private slots:
    // Orders: common practice, no source.
    void trains_data()
    {
        QTest::addColumn<QStringList>("devices");
        QTest::addColumn<int>("order");
        QTest::addColumn<QString>("why");
        const auto row = [](const char *rule, const QStringList &devices, int order, const char *why) {
            QTest::newRow(rule) << devices << order << why;
        };
        row("the whole order",
            {"sediment screen", "chemical feed", "pressure tank", "contact tank", "oxidizing filter",
             "neutralizer", "outdoor taps", "softener", "carbon"},
            right,
            "each of the 9 stages stands where practice puts it; each needs a bypass and a sample tap");
        row("cartridges of a cabin", {"pressure tank", "sediment cartridge", "iron cartridge", "carbon"},
            right, nullptr);
        row("an open tank and its booster",
            {"sediment screen", "aeration tank", "pressure tank", "oxidizing filter", "softener"}, right,
            nullptr);
        row("air over media ahead of the tank", {"air over media", "pressure tank"}, wrong,
            "air over media ahead of pressure tank: air over media stands behind the pressure tank");
        row("feed behind the tank", {"pressure tank", "chemical feed", "contact tank", "oxidizing filter"},
            wrong,
            "pressure tank ahead of chemical feed: the feed point stands before the pressure tank, with a "
            "check valve "
            "upstream");
        row("softened before the calcite", {"softener", "neutralizer"}, wrong,
            "softener ahead of neutralizer: calcite adds hardness: soften behind it");
        row("carbon ahead of the contact", {"chemical feed", "pressure tank", "carbon", "contact tank"},
            wrong, "carbon ahead of contact tank: carbon takes out the oxidant before it has worked");
        row("calcite ahead of an iron bed", {"neutralizer", "oxidizing filter"}, possible,
            "neutralizer ahead of oxidizing filter: a calcite bed ahead of the filter is right where the "
            "filter needs "
            "the pH and iron is at most 1 to 2 mg/L; more iron blinds it");
        row("rust onto the resin", {"chemical feed", "pressure tank", "contact tank", "softener", "carbon"},
            wrong, "softener: nothing holds the rust between the feed or air and the resin");
        row("soft water on the lawn", {"softener", "outdoor taps"}, wrong,
            "softener ahead of outdoor taps: outdoor taps stand before the softener: softened water wastes "
            "salt on a "
            "lawn");
        row("iron cartridge without its sediment cartridge ahead", {"iron cartridge", "sediment cartridge"},
            wrong, "iron cartridge ahead of sediment cartridge: particles blind the iron cartridge");
        row("a softener ahead of the tank", {"softener", "pressure tank"}, possible,
            "softener ahead of pressure tank: ahead of the pressure tank a device sees the rate of the pump, "
            "behind it that of the taps: size it for that");
        row("a feed behind the resin", {"softener", "chemical feed"}, possible,
            "softener ahead of chemical feed: iron and sulfide are treated ahead of the resin; a feed behind "
            "it "
            "spares it nothing");
        row("blanks are passed over", {"", "air over media", "none", "softener"}, right, nullptr);
        row("every mistake is told", {"softener", "neutralizer", "pressure tank", "chemical feed"}, wrong,
            "softener ahead of neutralizer: calcite adds hardness: soften behind it; pressure tank ahead of "
            "chemical "
            "feed: the feed point stands before the pressure tank, with a check valve upstream");
    }
    void trains()
    {
        QFETCH(QStringList, devices);
        QFETCH(int, order);
        QFETCH(QString, why);
        std::vector<Given> given;
        for (const QString &device : devices)
            given.push_back(device.isEmpty() ? missing()
                                             : Given(word("train_order", 0, device.toStdString())));
        const Answer answer = diagnosis().call("train_order", given);
        QVERIFY(!answer.refused);
        QCOMPARE(int(answer.number), order);
        if (!why.isNull())
            QCOMPARE(QString::fromStdString(answer.reason), why);
    }

    void oneStageIsNoTrain()
    {
        const Answer answer = diagnosis().call("train_order", train({"softener", "", "none"}));
        QVERIFY(answer.refused);
        QCOMPARE(answer.words, std::string("name two stages or more, in the order the water passes them"));
    }

    void aRightTrainStaysRightWithoutAStageAndTurnsWrongReversed()
    {
        const std::vector<const char *> whole{"sediment screen", "chemical feed",    "pressure tank",
                                              "contact tank",    "oxidizing filter", "neutralizer",
                                              "outdoor taps",    "softener",         "carbon"};
        for (std::size_t out = 0; out < whole.size(); ++out) {
            auto rest = whole;
            rest.erase(rest.begin() + std::ptrdiff_t(out));
            const Answer answer = diagnosis().call("train_order", train(rest));
            // without its filter the feed leaves rust to the resin
            QCOMPARE(int(answer.number), std::string(whole[out]) == "oxidizing filter" ? wrong : right);
        }
        auto back = whole;
        std::reverse(back.begin(), back.end());
        QCOMPARE(int(diagnosis().call("train_order", train(back)).number), wrong);
        // whatever two devices: at most one of the two orders is wrong
        const char *const *devices = diagnosis().find("train_order")->parameters[0].choices;
        for (int a = 1; devices[a]; ++a)
            for (int b = 1; devices[b]; ++b) {
                const bool both = diagnosis().call("train_order", {double(a), double(b)}).number == wrong &&
                                  diagnosis().call("train_order", {double(b), double(a)}).number == wrong;
                // an open tank alone on either side of the resin: ahead it leaves rust, behind it strips too
                // late
                const std::set<std::string> pair{devices[a], devices[b]};
                QVERIFY2(!both || pair == std::set<std::string>({"aeration tank", "softener"}),
                         qPrintable(QString("%1, %2").arg(devices[a], devices[b])));
            }
    }

    void followUpsAreWalkedToTheirEnd()
    {
        // length of each list and its first and last check: common practice, no source
        const struct {
            const char *finding;
            int steps;
            const char *first, *last;
        } lists[] = {{"iron up after a softener", 5, "bypass", "resin"},
                     {"iron up after a feed, no residual", 3, "feed pump prime", "solution age"},
                     {"iron up after a feed, residual there", 2, "channeled bed", "wash flow at the drain"},
                     {"manganese up", 4, "pH", "regeneration"},
                     {"pink water", 3, "rinse", "ozone dose"},
                     {"chlorine after carbon", 3, "flow", "overfeed"},
                     {"smell back", 3, "raw sulfide", "heater anode"},
                     {"pressure fell", 3, "cartridge", "valve screen"},
                     {"pH off after calcite", 4, "bed level", "long standing"},
                     {"slime back", 3, "shock again", "wellhead"}};
        for (const auto &list : lists) {
            const double finding = word("follow_up_check", 0, list.finding);
            QCOMPARE(diagnosis().word("follow_up_check", {finding}), std::string(list.first));
            QCOMPARE(diagnosis().word("follow_up_check", {finding, double(list.steps)}),
                     std::string(list.last));
            QVERIFY(diagnosis().call("follow_up_check", {finding, double(list.steps + 1)}).refused);
            std::set<double> met;
            for (int step = 1; step <= list.steps; ++step) {
                const Answer answer = diagnosis().call("follow_up_check", {finding, double(step)});
                QVERIFY(met.insert(answer.number).second);
                QVERIFY(QString::fromStdString(answer.reason)
                            .startsWith(QString("step %1 of %2: ").arg(step).arg(list.steps)));
            }
        }
        QCOMPARE(diagnosis().call("follow_up_check", {word("follow_up_check", 0, "smell back")}).reason,
                 std::string(
                     "step 1 of 3: sulfide of the well may have risen: test it at the site; then bacteria in "
                     "the carbon, heater anode"));
    }

    void complaints_data()
    {
        QTest::addColumn<int>("which");
        QTest::addColumn<QString>("cause");
        m_given.clear();
        const auto row = [this](const char *rule, std::vector<Given> given, const char *cause) {
            QTest::newRow(rule) << int(m_given.size()) << cause;
            m_given.push_back(std::move(given));
        };
        // noticeable effects: US EPA, Secondary Drinking Water Standards: Guidance for Nuisance Chemicals
        row("iron: reddish or orange staining", seen("rust", nullptr, nullptr, nullptr), "iron");
        row("manganese: black staining", seen("black", nullptr, nullptr, nullptr), "manganese");
        row("copper: blue-green staining", seen("blue-green", nullptr, nullptr, nullptr), "plumbing");
        // Virginia Cooperative Extension 356-488
        row("black water that smells is iron sulfide", seen("black", nullptr, "black", "cold and hot"),
            "sulfide");
        // Bedford Regional Water Authority
        row("pink grows from the air", seen("pink", "one fixture", nullptr, nullptr), "bacteria in the air");
        // the rest: common practice, no source
        row("nothing seen", seen(nullptr, nullptr, nullptr, nullptr), "undecided");
        row("pH alone is no complaint", seen(nullptr, nullptr, nullptr, nullptr, -1, -1, 6.2), "undecided");
        row("rust at one fixture after a rest", seen("rust", "one fixture", "clear", nullptr, 0, 1, 6.3),
            "plumbing");
        row("smell on the hot side only", seen("none", "hot side only", "clear", "hot only"), "water heater");
        row("smell from both taps", seen("none", "everywhere", "clear", "cold and hot"), "sulfide");
        row("slime in the tank", seen("rust", "toilet tank", nullptr, nullptr, 1), "iron bacteria");
        row("tea color and no stain", seen("none", "everywhere", "yellow or tea", "none"), "tannin");
        row("rust and black together", seen("rust and black", "everywhere", "clear", "none"), "manganese");
        row("blue-green in run water of pH 6.2", seen("blue-green", "everywhere", "clear", "none", 0, 0, 6.2),
            "plumbing");
    }
    void complaints()
    {
        QFETCH(int, which);
        QFETCH(QString, cause);
        const auto &given = m_given[std::size_t(which)];
        QCOMPARE(QString::fromStdString(diagnosis().word("complaint_cause", given)), cause);
        QVERIFY(!diagnosis().call("complaint_cause", given).reason.empty());
    }

    void theNamedCauseHasMostPoints()
    {
        std::mt19937 engine(7);
        const auto pick = [&](int n) { return std::uniform_int_distribution<int>(-1, n - 1)(engine); };
        int named = 0;
        for (int round = 0; round < 3000; ++round) {
            std::vector<Given> given;
            for (const int n : {6, 5, 5, 3, 2, 2}) {
                const int x = pick(n);
                given.push_back(x < 0 ? missing() : Given(x));
            }
            given.push_back(pick(2) < 0 ? missing() : Given(6.5));
            const int cause = int(diagnosis().call("complaint_cause", given).number);
            double most = -99, second = -99;
            for (int c = 0; c < 8; ++c) {
                auto asked = given;
                asked.insert(asked.begin(), double(c));
                const double points = diagnosis().call("complaint_score", asked).number;
                if (c == cause)
                    most = points;
                else
                    second = std::max(second, points);
            }
            if (cause == 8) {
                QVERIFY(most == -99);
                continue;
            }
            QVERIFY(most >= 3 && most > second);
            ++named;
        }
        QVERIFY(named > 300);
    }

    void milkyWaterAsksForMethaneFirst()
    {
        const Answer answer = diagnosis().call("complaint_cause", seen("rust", nullptr, "milky", nullptr));
        QVERIFY(QString::fromStdString(answer.reason).contains("ask for a methane test first"));
    }

    void feeders()
    {
        enum { works, marginal, cannotTell, willNotWork };
        enum { switched, constantPressure, variableSpeed };
        enum { withPump, flowSwitch, proportional };
        const auto verdict = [](std::vector<Given> given) {
            return int(diagnosis().call("screen_feeder", std::move(given)).number);
        };
        // worked out: 10 gpm over 1 gpm is ten times the dose
        const Answer ten =
            diagnosis().call("screen_feeder", {double(constantPressure), double(withPump),
                                               named(10, "", "10 gpm"), named(1, "", "1 gpm")});
        QCOMPARE(int(ten.number), willNotWork);
        QCOMPARE(ten.reason,
                 std::string("set for 10 gpm the feeder gives 10 times the dose at 1 gpm on a pump of "
                             "constant pressure, limit 1.1: make it proportional to flow"));
        // verdicts: common practice, no source
        QCOMPARE(verdict({double(switched), double(withPump), missing(), missing()}), works);
        QCOMPARE(verdict({double(variableSpeed), double(proportional), missing(), missing()}), works);
        QCOMPARE(verdict({double(variableSpeed), double(flowSwitch), 8.0, 5.0}), marginal);
        QCOMPARE(verdict({double(variableSpeed), double(flowSwitch), 8.0, missing()}), cannotTell);
        QCOMPARE(verdict({missing(), double(withPump), 8.0, 5.0}), cannotTell);
        QCOMPARE(verdict({double(switched), missing(), 8.0, 5.0}), cannotTell);
        // less flow at the tap never makes a feeder better
        for (const int control : {withPump, flowSwitch}) {
            int before = willNotWork;
            for (double least = 0.1; least <= 10; least += 0.1) {
                const int now = verdict({double(constantPressure), double(control), 10.0, least});
                QVERIFY(now <= before);
                before = now;
            }
            QCOMPARE(before, int(works));
        }
    }

    void drainsAndGrades()
    {
        enum { works, marginal, cannotTell, willNotWork };
        // softener waste: barred from septic systems, drywell with approval [Massachusetts DEP, Title 5]
        const auto rule = [](const char *words) { return word("screen_discharge", 0, words); };
        const char *code = "Massachusetts DEP, Title 5", *habit = "common practice, no source";
        holds(diagnosis(), {{code, "screen_discharge", {rule("not allowed")}, double(willNotWork), 0},
                            {code, "screen_discharge", {rule("allowed with a permit")}, double(marginal), 0},
                            {habit, "screen_discharge", {rule("ask")}, double(cannotTell), 0},
                            {habit, "screen_discharge", {missing()}, double(cannotTell), 0},
                            {habit, "screen_cartridge_grade", {30}, double(willNotWork), 0},
                            {habit, "screen_cartridge_grade", {1}, double(marginal), 0},
                            {habit, "screen_cartridge_grade", {missing()}, double(cannotTell), 0}});
    }

private:
    std::vector<std::vector<Given>> m_given;
};

QTEST_APPLESS_MAIN(DecisionsTest)
#include "decisions_test.moc"
