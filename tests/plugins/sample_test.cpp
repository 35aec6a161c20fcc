/// Is a sample or a reading good enough to decide by: place, age, field kits, purging, pH of an oxidation.
#include <QTest>

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

enum { within, near, outside, noLimit, missingTest };

} // namespace

class SampleTest : public QObject
{
    Q_OBJECT

private slots:
    void samples()
    {
        const auto state = [](std::vector<Given> given) {
            return int(diagnosis().call("sample_state", std::move(given)).number);
        };
        enum { rawTap, afterDevice, firstDraw };
        enum { no, yes };
        QCOMPARE(state({double(rawTap), 44.0, double(yes)}), within);
        QCOMPARE(state({double(rawTap), 365.0, double(yes)}), within);
        QCOMPARE(state({double(rawTap), 366.0, double(yes)}), near);
        QCOMPARE(state({double(rawTap), 44.0, double(no)}), near);
        QCOMPARE(state({double(rawTap), 44.0, missing()}), missingTest);
        QCOMPARE(state({double(rawTap), missing(), double(yes)}), missingTest);
        QCOMPARE(state({missing(), 44.0, double(yes)}), missingTest);
        QCOMPARE(state({double(afterDevice), 44.0, double(yes)}), outside);
        QCOMPARE(state({double(firstDraw), 44.0, double(yes)}), outside);
        QCOMPARE(state({double(firstDraw), 44.0, missing(), 1.0}), within); // asked about the plumbing
        QCOMPARE(state({double(rawTap), 44.0, double(yes), 1.0}), outside);
        QCOMPARE(
            diagnosis()
                .call("sample_state", {double(rawTap), named(400, "age", "400 day"), double(yes), 0.0,
                                       named(365, "", "365 day")})
                .reason,
            std::string("the sample is 400 day old, limit 365 day: take a new one before anything is sold"));
    }

    void fieldKits()
    {
        const Given limit = named(0.3, "", "0.3 mg/L as Fe"), step = named(0.1, "", "0.1 mg/L as Fe");
        const auto state = [&](const Given &reading, double side = 0) {
            return int(diagnosis().call("field_kit_state", {reading, limit, step, side}).number);
        };
        QCOMPARE(state(0.1), within);
        QCOMPARE(state(0.2), near);
        QCOMPARE(state(0.3), near);
        QCOMPARE(state(0.4), near);
        QCOMPARE(state(0.5), outside);
        QCOMPARE(state(0.5, 1), within);
        QCOMPARE(state(0.1, 1), outside);
        QCOMPARE(state(below(0.2)), within);
        QCOMPARE(state(below(0.3)), near);
        QCOMPARE(state(above(0.4)), outside);
        QCOMPARE(state(above(0.1)), near);
        QCOMPARE(state(missing("iron")), missingTest);
        QCOMPARE(
            diagnosis().call("field_kit_state", {named(0.2, "iron", "0.2 mg/L as Fe"), limit, step}).reason,
            std::string(
                "iron 0.2 mg/L as Fe does not decide against the limit 0.3 mg/L as Fe with a step of 0.1 "
                "mg/L as Fe: send a sample to a laboratory"));
        // whatever the true value within half a step of the reading, a state that decides is right
        for (double reading = 0; reading <= 1; reading += 0.01)
            for (double off = -0.05; off <= 0.05; off += 0.01) {
                const int s = state(reading);
                QVERIFY(s == near || (s == within) == (reading + off <= 0.3));
            }
    }

    void placesOfTests()
    {
        // "test at the site or fix it in a bottle that serves nothing else" [Virginia Coop. Extension
        // 356-488]
        const char *sheet = "Virginia Cooperative Extension 356-488";
        const double sulfide = word("test_place_state", 0, "hydrogen sulfide"),
                     ph = word("test_place_state", 0, "pH"), iron = word("test_place_state", 0, "iron");
        holds(diagnosis(),
              {{sheet, "test_place_state", {sulfide, 0.0}, double(within), 0},
               {sheet, "test_place_state", {sulfide, 1.0}, double(outside), 0},
               {sheet, "test_place_state", {sulfide, 2.0}, double(within), 0},
               {"common practice", "test_place_state", {ph, 1.0}, double(outside), 0},
               {"common practice", "test_place_state", {ph, 2.0}, double(outside), 0},
               {"common practice", "test_place_state", {iron, 1.0}, double(within), 0},
               {"common practice", "test_place_state", {iron, 0.0}, double(near), 0},
               {"common practice", "test_place_state", {ph, missing()}, double(missingTest), 0}});
    }

    void cupsAndPurges()
    {
        const char *habit = "common practice, no source";
        // 150 ft of 6 in hold 220.32 gal: three volumes at 0.8 gpm take 13.8 h
        holds(diagnosis(), {{habit, "cup_standing_time", {6.9}, 24, 0},
                            {habit, "cup_standing_time", {7.0}, 2, 0},
                            {habit, "cup_standing_time", {missing()}, 24, 0},
                            {"worked out", "casing_purge_time", {220.32, 0.8}, 826.2, 1e-9},
                            {"worked out", "casing_purge_time", {65, 5}, 39, 1e-9}});
        QVERIFY(diagnosis().call("casing_purge_time", {220.32, 0.8}).warns("long"));
        QVERIFY(!diagnosis().call("casing_purge_time", {65, 5}).warns("long"));
    }

    void steadyReadings()
    {
        // within 1 degC and 0.1 pH [Colorado mine record, doc 641310 p. 17]
        const auto steady = [](std::vector<double> t, std::vector<double> p) {
            return diagnosis().call("purge_steady", {column(std::move(t)), column(std::move(p))});
        };
        QCOMPARE(steady({14, 11, 10.5, 10.4, 10.4}, {7.9, 7.4, 7.2, 7.2, 7.15}).number, 1.0);
        QCOMPARE(steady({14, 11, 10.5}, {7.2, 7.2, 7.2}).number, 0.0);
        QCOMPARE(steady({10.5, 10.4, 10.4}, {7.6, 7.4, 7.2}).number, 0.0);
        QVERIFY(steady({10.5, 10.4}, {7.2, 7.2}).refused);
        QVERIFY(steady({10.5, 10.4, std::nan("")}, {7.2, 7.2, 7.2}).refused);
        QVERIFY(steady({10.5, 10.4, 10.4}, {7.2, 7.2}).refused);
        // blank lines at the end are readings to come; one between is not
        const double none = std::nan("");
        QCOMPARE(steady({14, 10.5, 10.4, 10.4, none, none}, {7.9, 7.2, 7.2, 7.15, none, none}).number, 1.0);
        QVERIFY(steady({10.5, none, 10.4, 10.4}, {7.2, none, 7.2, 7.2}).refused);
        QVERIFY(steady({10.5, 10.4, none}, {7.2, 7.2, none}).refused);
        QVERIFY(steady({none, none}, {none, none}).refused);
        QCOMPARE(
            steady({10.5, 10.4, 10.4}, {7.6, 7.4, 7.2}).reason,
            std::string(
                "temperature holds within 1 delta_degC and pH does not hold within 0.1 of the mean of the "
                "last 3 readings"));
    }

    void leastPhByRoute()
    {
        const auto ph = [](const char *route, const char *target, double figure) {
            return diagnosis()
                .call("least_oxidation_ph",
                      {word("least_oxidation_ph", 0, route), word("least_oxidation_ph", 1, target), figure})
                .number;
        };
        // [environmental engineering handbook, table of oxidizing media]
        QCOMPARE(ph("air over a coated medium", "iron", 0), 6.8);
        QCOMPARE(ph("permanganate bed", "manganese", 0), 6.7);
        // [AWWA Opflow, December 2021]
        QCOMPARE(ph("chlorine over manganese dioxide", "manganese", 0), 6.0);
        // a comfortable figure is never under the lowest one; manganese never asks for less than iron without
        // a bed
        const char *const *routes = diagnosis().find("least_oxidation_ph")->parameters[0].choices;
        for (int r = 0; routes[r]; ++r)
            for (double target : {0.0, 1.0}) {
                const Answer low = diagnosis().call("least_oxidation_ph", {double(r), target, 0.0}),
                             easy = diagnosis().call("least_oxidation_ph", {double(r), target, 1.0});
                QCOMPARE(low.refused, easy.refused);
                QVERIFY(low.refused || low.number <= easy.number);
            }
        QVERIFY(ph("air in a tank", "manganese", 0) > ph("air in a tank", "iron", 0));
        QVERIFY(ph("chlorine", "manganese", 0) > ph("chlorine", "iron", 0));
    }
};

QTEST_APPLESS_MAIN(SampleTest)
#include "sample_test.moc"
