/// Iron form from cup tests, and the verdict of a single limit: what a trainer would nod at, and what must
/// never happen.
#include <QTest>

#include <limits>

#include "plugins/called_plugin.h"

using namespace called;

namespace
{

enum { works, marginal, cannotTell, willNotWork };
enum { clear, tea, rust, black, milky };
enum { staysClear, rustDeposit, settles, staysEven };
enum { clears, stays };
const double yes = 1, no = 0;

const Plugin &diagnosis()
{
    static const Plugin plugin("diagnosis");
    return plugin;
}

/// The ten observations, all blank until set.
struct Seen {
    std::vector<Given> given = std::vector<Given>(10, missing());
    Seen &draw(double x) { return set(0, x); }
    Seen &standing(double x) { return set(1, x); }
    Seen &cup(double x) { return set(2, x); }
    Seen &slime(double x) { return set(3, x); }
    Seen &smell(double x) { return set(4, x); }
    Seen &pair(double total, double passed) { return set(5, total).set(6, passed); }
    Seen &tannin(const Given &x) { return set(7, x); }
    Seen &ph(double x) { return set(8, x); }
    Seen &waited(double x) { return set(9, x); }
    Seen &set(std::size_t i, const Given &x)
    {
        given[i] = x;
        return *this;
    }
};

} // namespace

class DiagnosisTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(diagnosis().isOpen()); }

    // Points and confidences: common practice, no source (author's judgment, said so in the function's help).
    void ironForm_data()
    {
        QTest::addColumn<QString>("form");
        QTest::addColumn<double>("confidence");
        QTest::addColumn<int>("which");
        m_seen.clear();
        const auto row = [this](const char *rule, const Seen &seen, const char *form, double confidence) {
            QTest::newRow(rule) << form << confidence << int(m_seen.size());
            m_seen.push_back(seen);
        };
        row("a blank sheet is unknown and no error", Seen(), "unknown", 0);
        row("pH alone is no observation", Seen().ph(6.4), "unknown", 0);
        row("clear, then a deposit, filtered share 0.93",
            Seen().draw(clear).standing(rustDeposit).pair(3, 2.79), "dissolved", 0.95);
        row("clear, then a deposit", Seen().draw(clear).standing(rustDeposit), "dissolved", 0.75);
        row("colored, settles, cup clears, share 0.10",
            Seen().draw(rust).standing(settles).cup(clears).pair(3, 0.3), "oxidized", 0.95);
        row("tea color that stays, tannin 1.2",
            Seen().draw(tea).standing(staysEven).cup(stays).tannin(1.2).pair(1.05, 1), "organic", 0.95);
        row("deposit and slime", Seen().draw(clear).standing(rustDeposit).slime(yes), "bacterial", 0.75);
        row("slime and swampy smell", Seen().slime(yes).smell(yes), "bacterial", 0.90);
        row("colored, even, cup clears, no tannin",
            Seen().draw(rust).standing(staysEven).cup(clears).tannin(0.05), "colloidal", 0.90);
        row("half of it passes the filter", Seen().draw(clear).standing(rustDeposit).pair(3, 1.5), "mixed",
            0.80);
        row("clear alone does not decide", Seen().draw(clear), "unknown", 0.50);
        row("below pH 7 a cup of two hours does not count",
            Seen().draw(clear).standing(rustDeposit).ph(6.4).waited(2), "unknown", 0.50);
        row("below pH 7 a cup of unknown wait does not count",
            Seen().draw(clear).standing(rustDeposit).ph(6.4), "unknown", 0.50);
        row("below pH 7 a cup of 24 h counts", Seen().draw(clear).standing(rustDeposit).ph(6.4).waited(24),
            "dissolved", 0.75);
        row("at pH 7 a cup of two hours counts", Seen().draw(clear).standing(rustDeposit).ph(7).waited(2),
            "dissolved", 0.75);
        row("the filtered share is ignored below 0.3 mg/L",
            Seen().draw(clear).standing(rustDeposit).pair(0.2, 0.02), "dissolved", 0.75);
        row("a filtered non-detect that shows less than a fifth counts",
            Seen().draw(rust).standing(settles).set(5, 3).set(6, below(0.05)), "oxidized", 0.95);
        row("a filtered non-detect that leaves it open does not",
            Seen().draw(clear).standing(rustDeposit).set(5, 0.4).set(6, below(0.3)), "dissolved", 0.75);
        row("tannin <0.5 is neither there nor absent",
            Seen().draw(tea).standing(staysEven).tannin(below(0.5)), "colloidal", 0.75);
    }
    void ironForm()
    {
        QFETCH(QString, form);
        QFETCH(double, confidence);
        QFETCH(int, which);
        const auto &given = m_seen[std::size_t(which)].given;
        QCOMPARE(QString::fromStdString(diagnosis().word("iron_form", given)), form);
        QCOMPARE(diagnosis().call("iron_form_confidence", given).number, confidence);
        QVERIFY(!diagnosis().call("iron_form", given).reason.empty());
    }

    void nextTest()
    {
        const auto next = [](const Seen &seen) {
            return diagnosis().word("iron_form_next_test", seen.given);
        };
        QCOMPARE(next(Seen()), std::string("24 h cup"));
        QCOMPARE(diagnosis().call("iron_form", Seen().given).reason, std::string("no observation yet"));
        QCOMPARE(next(Seen().draw(clear).standing(rustDeposit)),
                 std::string("laboratory pair, filtered and unfiltered"));
        QCOMPARE(next(Seen().draw(clear).standing(rustDeposit).pair(3, 2.8)), std::string("nothing more"));
        QCOMPARE(next(Seen().draw(rust).standing(settles)), std::string("reducing-agent cup"));
        QCOMPARE(next(Seen().draw(tea).standing(staysEven).cup(stays)), std::string("tannin test"));
        QCOMPARE(next(Seen().draw(clear).slime(yes)), std::string("bacteria test"));
        QCOMPARE(next(Seen().draw(clear).standing(rustDeposit).ph(6.4).waited(2)), std::string("24 h cup"));
    }

    void swappedBottlesAreRefused()
    {
        const Answer answer = diagnosis().call("iron_form", Seen().pair(2, 3).given);
        QVERIFY(answer.refused);
        QCOMPARE(answer.refusedArgument, 7u);
        QCOMPARE(answer.words,
                 std::string("the filtered sample shows more iron than the unfiltered one: look for swapped "
                             "bottles or a dirty filter"));
        QVERIFY(!diagnosis()
                     .call("iron_form", Seen().draw(clear).pair(3, 3.3).given)
                     .refused); // laboratory scatter
    }

    void screens_data()
    {
        QTest::addColumn<QString>("function");
        QTest::addColumn<int>("which");
        QTest::addColumn<int>("verdict");
        QTest::addColumn<QString>("why");
        m_given.clear();
        const auto row = [this](const char *rule, const char *f, std::vector<Given> given, int verdict,
                                const char *why) {
            QTest::newRow(rule) << f << int(m_given.size()) << verdict << why;
            m_given.push_back(std::move(given));
        };
        const Given iron = named(6.2, "raw iron", "6.2 mg/L as Fe"), limit = named(3, "", "3 mg/L as Fe");
        row("above a limit", "screen_at_most", {iron, limit}, willNotWork,
            "raw iron 6.2 mg/L as Fe is above the limit 3 mg/L as Fe");
        row("a literal is not named twice", "screen_at_most",
            {named(6.2, "6.2 mg/L as Fe", "6.2 mg/L as Fe"), limit}, willNotWork,
            "6.2 mg/L as Fe is above the limit 3 mg/L as Fe");
        row("at the limit", "screen_at_most", {named(3, "raw iron", "3 mg/L as Fe"), limit}, works,
            "raw iron 3 mg/L as Fe is within the limit 3 mg/L as Fe");
        row("a clock's 3.0000000000001", "screen_at_most", {3.0000000000001, 3.0}, works,
            " is within the limit ");
        row("near a limit", "screen_at_most", {named(2.5, "raw iron", "2.5 mg/L as Fe"), limit, 0.6},
            marginal, "raw iron 2.5 mg/L as Fe is close to the limit 3 mg/L as Fe");
        row("a blank test", "screen_at_most", {missing("raw iron"), limit}, cannotTell, "needs: raw iron");
        row("a non-detect below the limit", "screen_at_most", {below(0.05, "<0.05"), limit}, works,
            "<0.05 is within the limit 3 mg/L as Fe");
        row("a non-detect above the limit", "screen_at_most", {below(5, "<5 mg/L as Fe"), limit}, cannotTell,
            "<5 mg/L as Fe does not show whether it is at most 3 mg/L as Fe; ask for a finer test");
        row("more than the limit", "screen_at_most", {above(3, ">3 mg/L as Fe"), limit}, willNotWork,
            ">3 mg/L as Fe is above the limit 3 mg/L as Fe");
        row("more than less than the limit", "screen_at_most", {above(2, ">2 mg/L as Fe"), limit}, cannotTell,
            ">2 mg/L as Fe does not show whether it is at most 3 mg/L as Fe; ask for a finer test");
        row("pH below what is needed", "screen_at_least", {named(6.4, "pH", "6.4"), named(7, "", "7")},
            willNotWork, "pH 6.4 is below the limit 7");
        row("pH at what is needed", "screen_at_least", {7.0, 7.0}, works, " is above the limit ");
        row("pH near", "screen_at_least", {7.1, 7.0, 0.2}, marginal, " is close to the limit ");
        row("pH less than the limit", "screen_at_least", {below(7, "<7"), named(7, "", "7")}, willNotWork,
            "<7 is below the limit 7");
        row("pH more than the limit", "screen_at_least", {above(7, ">7"), named(7, "", "7")}, works,
            ">7 is above the limit 7");
        row("sulfide smelled", "screen_none",
            {named(0.4, "sulfide", "0.4 mg/L"), named(0.05, "", "0.05 mg/L")}, willNotWork,
            "sulfide 0.4 mg/L: none is tolerated, 0.05 mg/L is detectable");
        row("sulfide not detected", "screen_none", {below(0.05, "<0.05"), named(0.05, "", "0.05")}, works,
            "<0.05 is not above the detectable 0.05");
        row("sulfide not detected by a coarse test", "screen_none",
            {below(0.5, "<0.5"), named(0.05, "", "0.05")}, cannotTell,
            "<0.5 does not show that there is none; ask for a test that detects 0.05");
        row("bacteria untested", "screen_no", {missing("iron bacteria")}, cannotTell, "needs: iron bacteria");
        row("bacteria there", "screen_no", {named(yes, "iron bacteria", "yes")}, willNotWork,
            "iron bacteria: yes, must be no");
        row("a drain is needed and there", "screen_yes", {named(yes, "drain", "yes")}, works, "drain: yes");
        row("a drain is needed and not there", "screen_yes", {named(no, "drain", "no")}, willNotWork,
            "drain: no, must be yes");
        row("mixed iron needs both", "screen_form", {2.0, yes, no, no, no}, willNotWork,
            "does not take mixed iron");
        row("mixed iron, both taken", "screen_form", {2.0, yes, yes, no, no}, works, "takes mixed iron");
        row("colloidal counts as organic", "screen_form", {5.0, yes, yes, yes, no}, willNotWork,
            "does not take colloidal iron");
        row("unknown form", "screen_form", {named(6.0, "iron form", "unknown"), yes, yes, yes, yes},
            cannotTell, "needs: iron form");
        row("both flows low", "screen_flow", {2.0, 3.0, 1.0}, works,
            " is 2 gpm/ft^2 on the bed, limit 5 gpm/ft^2");
        row("a short peak", "screen_flow", {2.0, named(7, "peak flow", "7 gpm"), 1.0}, marginal,
            "peak flow 7 gpm is 7 gpm/ft^2 on the bed, limit 5 gpm/ft^2, good for 10 minutes only");
        row("too high a peak", "screen_flow", {2.0, named(11, "peak flow", "11 gpm"), 1.0}, willNotWork,
            "peak flow 11 gpm is 11 gpm/ft^2 on the bed, limit 10 gpm/ft^2");
        row("no peak known", "screen_flow", {2.0, missing("peak flow"), 1.0}, cannotTell, "needs: peak flow");
        row("no peak known, but too much already", "screen_flow",
            {named(6, "flow", "6 gpm"), missing("peak flow"), 1.0}, willNotWork,
            "flow 6 gpm is 6 gpm/ft^2 on the bed, limit 5 gpm/ft^2");
        row("the pump cannot wash it", "screen_backwash",
            {named(7, "pump flow", "7 gpm"), named(9.42, "", "9.42 gpm")}, willNotWork,
            "pump flow 7 gpm is less than the 9.42 gpm a wash needs");
        row("barely", "screen_backwash", {named(7, "pump flow", "7 gpm"), named(6.54, "", "6.54 gpm")},
            marginal, "pump flow 7 gpm is barely the 6.54 gpm a wash needs");
        row("flow not measured", "screen_backwash", {missing("pump flow"), 6.0}, cannotTell,
            "needs: pump flow");
    }
    void screens()
    {
        QFETCH(QString, function);
        QFETCH(int, which);
        QFETCH(int, verdict);
        QFETCH(QString, why);
        const Answer answer = diagnosis().call(function.toStdString(), m_given[std::size_t(which)]);
        QCOMPARE(int(answer.number), verdict);
        QCOMPARE(QString::fromStdString(answer.reason), why);
    }

    void moreNeverMakesAVerdictBetter()
    {
        for (double limit = 0.5; limit <= 4; limit += 0.5) {
            for (double near = 0; near <= limit; near += limit / 4) {
                double most = 0, least = 9, noneBefore = 0;
                for (double x = 0; x <= 9; x += 0.05) {
                    const double a = diagnosis().call("screen_at_most", {x, limit, near}).number;
                    const double b = diagnosis().call("screen_at_least", {x, limit, near}).number;
                    const double c = diagnosis().call("screen_none", {x, limit}).number;
                    QVERIFY(a >= most && b <= least && c >= noneBefore);
                    most = a, least = b, noneBefore = c;
                }
                QCOMPARE(most, double(willNotWork));
                QCOMPARE(least, double(works));
            }
        }
    }

    void lessFlowNeverMakesAWashWork()
    {
        double before = willNotWork;
        for (double available = 0; available <= 20; available += 0.1) {
            const double now = diagnosis().call("screen_backwash", {available, 9.42}).number;
            QVERIFY(now <= before);
            before = now;
        }
        QCOMPARE(before, double(works));
        double worst = works;
        for (double flow = 0; flow <= 12; flow += 0.05) {
            const double now = diagnosis().call("screen_flow", {flow, flow, 0.7854}).number;
            QVERIFY(now >= worst);
            worst = now;
        }
        QCOMPARE(worst, double(willNotWork));
    }

    void aBoundedReadingNeverSaysMoreThanItKnows()
    {
        // whatever the true value may be, the verdict on the bound is the verdict on it, or cannot tell yet
        for (double limit = 0.5; limit <= 3; limit += 0.25)
            for (double bound = 0.05; bound <= 4; bound += 0.05)
                for (double share = 0.0; share < 1.0; share += 0.1) {
                    const double known =
                        diagnosis().call("screen_at_most", {below(bound), limit, 0.2}).number;
                    const double real =
                        diagnosis().call("screen_at_most", {bound * share, limit, 0.2}).number;
                    QVERIFY(known == double(cannotTell) || known == real);
                    const double knownAbove =
                        diagnosis().call("screen_at_least", {above(bound), limit, 0.2}).number;
                    const double realAbove =
                        diagnosis().call("screen_at_least", {bound * (1.01 + share), limit, 0.2}).number;
                    QVERIFY(knownAbove == double(cannotTell) || knownAbove == realAbove);
                }
    }

private:
    std::vector<Seen> m_seen;
    std::vector<std::vector<Given>> m_given;
};

QTEST_APPLESS_MAIN(DiagnosisTest)
#include "diagnosis_test.moc"
