/// Limits asked for a day, values held against them, and the health referral: rows with their source.
#include <QTest>

#include "plugins/limits_calls.h"

using namespace limits_calls;

class LimitsTest : public QObject
{
    Q_OBJECT

private slots:
    void opens() { QVERIFY(plugin().isOpen()); }

    void limitsByDay()
    {
        const double iron = substance("iron"), lead = substance("lead"), arsenic = substance("arsenic"),
                     manganese = substance("manganese"), day = october;
        holds(
            plugin(),
            {
                // Canada Gazette, 28 December 2024: 0.1 from that day, 0.3 before
                {"Canada, iron, the day before",
                 "limit_in_force",
                 {iron, canada, dayOf(2024, 12, 27), forAesthetics},
                 0.3,
                 1e-12},
                {"Canada, iron, the day",
                 "limit_in_force",
                 {iron, canada, dayOf(2024, 12, 28), forAesthetics},
                 0.1,
                 1e-12},
                {"Canada, iron, since",
                 "limit_since",
                 {iron, canada, day, forAesthetics},
                 dayOf(2024, 12, 28),
                 1e-12},
                // 89 FR 86418: compliance 1 November 2027
                {"US, lead, before", "limit_in_force", {lead, us, dayOf(2027, 10, 31)}, 0.015, 1e-12},
                {"US, lead, after", "limit_in_force", {lead, us, dayOf(2027, 11, 1)}, 0.010, 1e-12},
                // 40 CFR 141.11(b): until January 23, 2006
                {"US, arsenic, before", "limit_in_force", {arsenic, us, dayOf(2006, 1, 22)}, 0.05, 1e-12},
                {"US, arsenic, after", "limit_in_force", {arsenic, us, dayOf(2006, 1, 23)}, 0.010, 1e-12},
                // WHO 1996 by FAO y4263e; dropped in 2011 (Frisbie et al. 2012)
                {"WHO, manganese 1998", "limit_in_force", {manganese, who, dayOf(1998, 6, 1)}, 0.5, 1e-12},
                {"WHO, manganese 2010", "limit_in_force", {manganese, who, dayOf(2010, 6, 1)}, 0.4, 1e-12},
                {"WHO, manganese 2026", "limit_in_force", {manganese, who, day}, 0.08, 1e-12},
                // IUPAC: 50 * 14.007 / 62.004
                {"WHO, nitrate as N", "limit_in_force", {substance("nitrate as N"), who, day}, 11.2952, 1e-5},
                {"Canada, nitrate as N",
                 "limit_in_force",
                 {substance("nitrate as N"), canada, day},
                 10,
                 1e-12},
                {"Canada, nitrate as NO3",
                 "limit_in_force",
                 {substance("nitrate as NO3"), canada, day},
                 45,
                 1e-12},
                // 10 * 62.004 / 14.007
                {"US, nitrate as NO3",
                 "limit_in_force",
                 {substance("nitrate as NO3"), us, day},
                 44.2664,
                 1e-5},
                // strictest: Canada for lead and uranium, WHO 3 as NO2 for nitrite
                {"strictest lead", "strictest_health_limit", {lead, day}, 0.005, 1e-12},
                {"strictest lead in 2005", "strictest_health_limit", {lead, dayOf(2005, 1, 1)}, 0.01, 1e-12},
                {"strictest uranium", "strictest_health_limit", {substance("uranium"), day}, 0.02, 1e-12},
                {"strictest nitrite",
                 "strictest_health_limit",
                 {substance("nitrite as N"), day},
                 3 * 14.007 / 46.005,
                 1e-12},
            });
    }

    /// Why names limit, jurisdiction, day, source; memory is said in words and as a caution.
    void reasons()
    {
        const Answer iron = limit("iron", canada, october, forAesthetics);
        QCOMPARE(iron.reason,
                 std::string("iron: aesthetic objective 0.1 mg/L as Fe (Canada, in force from 2024-12-28; "
                             "source canada_iron_2024)"));
        QVERIFY(!iron.warns("recalled") && !iron.warns("later_than_table"));
        const Answer lead = limit("lead", canada, october);
        QCOMPARE(lead.reason,
                 std::string("lead: health limit 0.005 mg/L as Pb (Canada, in force from 2019-03-08; source "
                             "canada_lead_2019)"));
        QVERIFY(!lead.warns("recalled") && limit("barium", canada, october).warns("recalled"));
        // an action level says beside its number what it is not
        QVERIFY(limit("lead", us, october).reason.ends_with("of public systems, no measure for one house)"));
        QCOMPARE(
            limit("nitrate as N", who, october).reason,
            std::string(
                "nitrate: guideline 11.3 mg/L as N, printed as 50 mg/L as NO3 (WHO, in force from 1996-01-01 "
                "at the latest; source fao_who)"));
        QVERIFY(limit("lead", us, dayOf(2028, 1, 1)).warns("later_than_table"));
    }

    void kinds_data()
    {
        QTest::addColumn<QString>("name");
        QTest::addColumn<double>("place");
        QTest::addColumn<double>("purpose");
        QTest::addColumn<QString>("kind");
        const auto row = [](const char *name, double place, double purpose, const char *kind) {
            QTest::addRow("%s %g %g", name, place, purpose)
                << QString(name) << place << purpose << QString(kind);
        };
        row("iron", us, forAesthetics, "aesthetic objective");
        row("iron", us, forHealth, "none");
        row("lead", us, forHealth, "action level");
        row("lead", us, asGoal, "treatment goal");
        row("arsenic", who, forHealth, "guideline");
        row("manganese", us, forAdvice, "advisory");
        row("manganese", canada, forHealth, "health limit");
    }
    void kinds()
    {
        QFETCH(QString, name);
        QFETCH(double, place);
        QFETCH(double, purpose);
        QFETCH(QString, kind);
        QCOMPARE(QString::fromStdString(
                     plugin().word("limit_kind", {substance(qPrintable(name)), place, october, purpose})),
                 kind);
    }

    /// The checks the regulations allow by hand; near bands and bounded readings.
    void acceptances_data()
    {
        QTest::addColumn<QString>("finding");
        QTest::addColumn<QString>("shows");
        const auto row = [](const char *rule, const std::string &finding, const char *shows) {
            QTest::newRow(rule) << QString::fromStdString(finding) << QString(shows);
        };
        const double day = october;
        // 40 CFR 143.3: 0.3; Canada 0.1 from 28 December 2024
        row("iron 0.25, US", accepted("iron", 0.25, us, day, 0), "below the public limit");
        row("iron 0.25, US, within 20 %", accepted("iron", 0.25, us, day), "near a limit");
        row("iron 0.3 is at the limit", accepted("iron", 0.3, us, day, 0), "below the public limit");
        row("iron 0.25, Canada 2025", accepted("iron", 0.25, canada, dayOf(2025, 6, 1)),
            "aesthetic limit exceeded");
        row("iron 0.25, Canada 2024", accepted("iron", 0.25, canada, dayOf(2024, 6, 1), 0),
            "below the public limit");
        // manganese: 0.05 and advisory 0.3 in the US, 0.12 in Canada
        row("manganese 0.20, US", accepted("manganese", 0.20, us, day), "aesthetic limit exceeded");
        row("manganese 0.31, US", accepted("manganese", 0.31, us, day), "advisory exceeded");
        row("manganese 0.20, Canada", accepted("manganese", 0.20, canada, day), "health limit exceeded");
        row("manganese 0.10, WHO 2015: none", accepted("manganese", 0.10, who, dayOf(2015, 6, 1)),
            "no limit");
        // nitrate 50 as NO3 is 11.30 as N
        row("nitrate 50 as NO3, US", accepted("nitrate as NO3", 50.0, us, day), "health limit exceeded");
        row("nitrate 50 as NO3, WHO", accepted("nitrate as NO3", 50.0, who, day, 0),
            "below the public limit");
        // lead 0.012 between the two action levels
        row("lead 0.012, 2027", accepted("lead", 0.012, us, dayOf(2027, 10, 31)), "below the public limit");
        row("lead 0.012, after", accepted("lead", 0.012, us, dayOf(2027, 11, 1)), "health limit exceeded");
        // readings
        row("a bound below the limit", accepted("arsenic", below(0.005), us, day), "below the public limit");
        row("a bound at the limit", accepted("arsenic", below(0.010), us, day), "below the public limit");
        row("a bound above the limit", accepted("arsenic", below(0.02), us, day), "cannot tell");
        row("above a bound at the limit", accepted("arsenic", above(0.010), us, day),
            "health limit exceeded");
        row("above a bound under the limit", accepted("arsenic", above(0.005), us, day), "cannot tell");
        row("blank", accepted("arsenic", missing(), us, day), "missing test");
        row("blank without a limit", accepted("strontium", missing(), us, day), "no limit");
        // 40 CFR 143.3: 6.5 to 8.5; near 0.2
        row("pH 6.4", plugin().word("acceptance_ph", {6.4, us, day}), "aesthetic limit exceeded");
        row("pH 6.5", plugin().word("acceptance_ph", {6.5, us, day}), "near a limit");
        row("pH 6.7", plugin().word("acceptance_ph", {6.7, us, day}), "below the public limit");
        row("pH 8.4", plugin().word("acceptance_ph", {8.4, us, day}), "near a limit");
        row("pH 8.6", plugin().word("acceptance_ph", {8.6, us, day}), "aesthetic limit exceeded");
        row("pH blank", plugin().word("acceptance_ph", {missing(), us, day}), "missing test");
        row("color 16", plugin().word("acceptance_color", {16.0, us, day}), "aesthetic limit exceeded");
        row("odor 3", plugin().word("acceptance_odor", {3.0, us, day, 0.0}), "below the public limit");
        // WHO 1996: E. coli must not be detectable in any 100 mL
        const auto bacteria = [&](const Given &all, const Given &kind, double place) {
            return plugin().word("acceptance_bacteria", {all, kind, place, day});
        };
        row("E. coli 1", bacteria(5.0, 1.0, who), "health limit exceeded");
        row("E. coli 1, group blank", bacteria(missing(), 1.0, us), "health limit exceeded");
        row("none", bacteria(0.0, 0.0, us), "below the public limit");
        row("below 1 is none", bacteria(below(1), below(1), canada), "below the public limit");
        row("no group, kind blank", bacteria(0.0, missing(), us), "below the public limit");
        row("below 10 hides some", bacteria(below(10), below(10), who), "cannot tell");
        row("more than counted", bacteria(above(2419), 0.0, us), "health limit exceeded");
        // FAO y4263e table A3.1 names E. coli alone: coliform found are then not "below" a limit
        row("group found, kind not, WHO", bacteria(3.0, 0.0, who), "no limit");
        row("group found, kind blank", bacteria(5.0, missing(), who), "missing test");
        row("both blank", bacteria(missing(), missing(), us), "missing test");
    }
    void acceptances()
    {
        QFETCH(QString, finding);
        QFETCH(QString, shows);
        QCOMPARE(finding, shows);
    }

    /// A slip of the year is refused, not answered with "no limit"; any lead is said in words.
    void acceptanceOfOldDaysAndOfLead()
    {
        const double arsenic = substance("arsenic"), lead = substance("lead"), old = dayOf(1926, 10, 12);
        QCOMPARE(plugin().call("acceptance", {arsenic, 0.5, us, old}).refusedArgument, 4U);
        QVERIFY(plugin().call("acceptance_ph", {5.0, us, old}).refused);
        QVERIFY(plugin().call("acceptance_color", {50.0, us, old}).refused);
        QCOMPARE(plugin().call("acceptance_bacteria", {5.0, 1.0, us, old}).refusedArgument, 4U);
        QVERIFY(!plugin().call("acceptance", {arsenic, 0.5, us, dayOf(1977, 6, 24)}).refused);
        QVERIFY(plugin().call("acceptance", {lead, 0.012, us, october}).warns("lead_found"));
        QVERIFY(!plugin().call("acceptance", {lead, below(0.001), us, october}).warns("lead_found"));
        QVERIFY(!plugin().call("acceptance", {arsenic, 0.012, us, october}).warns("lead_found"));
    }

    void referrals()
    {
        QCOMPARE(Water{}.word(), std::string("nothing on these tests"));
        const auto with = [](auto change) {
            Water w;
            change(w);
            return w.word() + ", " + w.finding();
        };
        QCOMPARE(with([](Water &w) { w.arsenic = 0.02; }), std::string("stop and refer, arsenic"));
        QCOMPARE(with([](Water &w) { w.nitrate = 25; }), std::string("stop and refer, nitrate"));
        QCOMPARE(with([](Water &w) { w.nitrite = 0.95; }), std::string("stop and refer, nitrite"));
        // WHO: the parts of both limits together at most 1 [recalled]: 7.9 / 10 + 0.7 / 0.913 = 1.56
        const auto both = [](Water &w) {
            w.nitrate = 7.9;
            w.nitrite = 0.7;
        };
        QCOMPARE(with(both), std::string("stop and refer, nitrite"));
        Water shown;
        both(shown);
        QVERIFY(shown.referral().reason.find("add up to 1.56, above 1") != std::string::npos);
        QCOMPARE(with([](Water &w) {
                     w.nitrate = 5;
                     w.nitrite = 0.4;
                 }), // 0.5 + 0.438
                 std::string("nothing on these tests, nothing on these tests"));
        QCOMPARE(with([](Water &w) {
                     w.nitrate = 7.9;
                     w.nitrite = below(0.5);
                 }), // 0.79 + up to 0.547
                 std::string("caution and go on, near a health limit"));
        QCOMPARE(with([](Water &w) { w.lead = 0.006; }), std::string("stop and refer, lead"));
        QCOMPARE(with([](Water &w) { w.lead = 0.001; }), std::string("caution and go on, some lead"));
        QCOMPARE(with([](Water &w) { w.lead = below(0.001); }),
                 std::string("nothing on these tests, nothing on these "
                             "tests"));
        QCOMPARE(with([](Water &w) { w.lead = below(0.010); }), std::string("tests missing, tests missing"));
        QCOMPARE(with([](Water &w) { w.uranium = 0.025; }), std::string("stop and refer, uranium"));
        QCOMPARE(with([](Water &w) { w.uranium = 0.018; }),
                 std::string("caution and go on, near a health limit"));
        QCOMPARE(with([](Water &w) { w.bacteria = 1; }), std::string("caution and go on, total coliform"));
        QCOMPARE(with([](Water &w) { w.bacteria = 2; }), std::string("stop and refer, E. coli"));
        QCOMPARE(with([](Water &w) { w.fuel = 1; }), std::string("stop and refer, fuel or solvent smell"));
        QCOMPARE(with([](Water &w) { w.publicUse = 1; }), std::string("stop and refer, public system"));
        QCOMPARE(with([](Water &w) { w.manganese = 0.13; }), std::string("caution and go on, manganese"));
        QCOMPARE(with([](Water &w) { w.sodium = 25; }), std::string("caution and go on, sodium"));
        QCOMPARE(with([](Water &w) { w.sulfate = 300; }), std::string("caution and go on, sulfate"));
    }
    /// The reason lists every finding, worst first, with limit and value.
    void referralReasonNamesLimitAndValue()
    {
        Water w;
        w.nitrate = named(25, "Nitrate", "25.0 mg/L as N");
        w.sodium = named(30, "Sodium", "30.0 mg/L as Na");
        w.uranium = missing();
        QCOMPARE(
            w.referral().reason,
            std::string(
                "nitrate 25.0 mg/L as N is above the health limit 10 mg/L as N (US, in force from "
                "1977-06-24, "
                "day recalled; source cfr265_iii); uranium was not tested; sodium 30.0 mg/L as Na is above "
                "the advisory 20 mg/L as Na (US, in force from 2003-01-01 at the latest; source "
                "epa_sodium)"));
    }
    void everyFindingHasItsContact()
    {
        const puteal_function *f = plugin().find("health_contact");
        QVERIFY(f);
        const std::vector<const char *> wanted = {"certified laboratory",
                                                  "physician",
                                                  "physician",
                                                  "certified laboratory",
                                                  "licensed plumber",
                                                  "health department",
                                                  "licensed well contractor",
                                                  "certified laboratory",
                                                  "state drinking-water program",
                                                  "health department",
                                                  "health department",
                                                  "health department",
                                                  "health department",
                                                  "health department",
                                                  "state environmental office",
                                                  "health department",
                                                  "poison control or emergency services"};
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            QVERIFY(f->parameters[0].choices[i]);
            QCOMPARE(plugin().word("health_contact", {double(i)}), std::string(wanted[i]));
            QVERIFY(!plugin().call("health_contact", {double(i)}).reason.empty());
        }
        QVERIFY(!f->parameters[0].choices[wanted.size()]);
    }
};

QTEST_APPLESS_MAIN(LimitsTest)
#include "limits_test.moc"
