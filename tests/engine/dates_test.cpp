/// Dates given to and got from a plugin's function, through the checker and the real call.
#include <QTest>

#include <cmath>

#include "sdk/plugin.h"
#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::Worked;

namespace
{

QString q(const std::string &text)
{
    return QString::fromStdString(text);
}

/// follow_up(sampled, [from]): 30 days after the later of the two, on that day; refuses a day before 1990.
double followUp(double sampled, double from, sdk::Reply &reply)
{
    if (sampled < sdk::dayOf(1990, 1, 1))
        return reply.refuse(1, "a sample of " + sdk::dateWords(sampled) + " is too old to follow up");
    if (sampled == sdk::dayOf(2026, 6, 1))
        return sampled + 0.5;
    return std::fmax(sampled, from) + 30;
}

/// day_number(sampled): the days as they cross the border, for tests of that.
double dayNumber(const sdk::Argument &sampled, sdk::Reply &reply)
{
    reply.reason(sampled.label() + " is " + sampled.shown());
    return sampled.missing() ? -1 : sampled.number();
}

double half(double x)
{
    return x / 2;
}

class DateFunctions final : public Registry
{
public:
    explicit DateFunctions(const UnitTable &units)
        : m_general(Registry::general(units)),
          m_functions(m_general->functions().begin(), m_general->functions().end())
    {
        const ParameterInfo sampled = date("sampled");
        ParameterInfo from = date("from"), undated = sampled, x, iron;
        from.hasDefault = true;
        from.fallback = sdk::dayOf(2026, 1, 31);
        undated.mayBeMissing = true;
        x.name = "x";
        iron.name = "iron";
        iron.pattern = *readPattern("mg/L as Fe", units, {});
        add("follow_up", {sampled, from}, ValueKind::date);
        add("day_number", {undated}, ValueKind::quantity);
        add("half", {x}, ValueKind::quantity);
        add("half_iron", {iron}, ValueKind::quantity);
    }
    const FunctionInfo *find(std::string_view name) const override
    {
        for (const FunctionInfo &f : m_functions)
            if (f.name == name)
                return &f;
        return nullptr;
    }
    std::span<const FunctionInfo> functions() const override { return m_functions; }
    const std::vector<PluginInfo> &plugins() const override { return m_general->plugins(); }
    std::vector<std::string> closestNames(std::string_view name) const override
    {
        return m_general->closestNames(name);
    }
    Result<puteal_call> callOf(const FunctionInfo &f) const override
    {
        return f.name == "follow_up"    ? sdk::call<followUp>
               : f.name == "day_number" ? sdk::call<dayNumber>
                                        : sdk::call<half>;
    }
    Error whyNot(std::string_view name) const override { return m_general->whyNot(name); }

private:
    static ParameterInfo date(const char *name)
    {
        ParameterInfo p;
        p.name = name;
        p.kind = ValueKind::date;
        return p;
    }
    void add(const char *name, std::vector<ParameterInfo> parameters, ValueKind gives)
    {
        FunctionInfo f;
        f.plugin = "test";
        f.name = name;
        f.parameters = std::move(parameters);
        f.resultKind = gives;
        f.index = static_cast<std::uint32_t>(m_functions.size());
        m_functions.push_back(std::move(f));
    }
    std::shared_ptr<const Registry> m_general;
    std::vector<FunctionInfo> m_functions;
};

} // namespace

class DatesTest : public QObject
{
    Q_OBJECT

private slots:
    void pluginDates_data()
    {
        QTest::addColumn<QString>("formula");
        QTest::addColumn<QString>("shows");
        QTest::addColumn<QString>("reason");
        const auto row = [](const char *rule, const char *formula, const char *shows,
                            const char *reason = "") {
            QTest::newRow(rule) << QString(formula) << QString(shows) << QString(reason);
        };
        row("a date literal, with the default", "follow_up(2025-05-12)", "2026-03-02");
        row("a cell that holds a date", "follow_up(sampled)", "2026-06-11");
        row("a date moved by a time", "follow_up(sampled + 3 day, 2020-01-01)", "2026-06-14");
        row("what it gives is a date", "follow_up(sampled) - sampled -> day", "30 day");
        row("days since 1970-01-01 cross the border", "day_number(2026-05-12)", "20585",
            "2026-05-12 is 2026-05-12");
        row("before 1970 they are negative", "day_number(1969-12-31)", "-1", "1969-12-31 is 1969-12-31");
        row("part of a day counts for its day", "day_number(sampled + 23 hr)", "20585",
            "sampled + 23 hr is 2026-05-12");
        row("a leap day", "2024-02-28 + 1 day", "2024-02-29");
        row("none in a year of hundreds", "2100-02-28 + 1 day", "2100-03-01");
        row("a year later", "2024-02-29 + 365 day", "2025-02-28");
        row("hours before midnight", "2026-05-12 - 1 hr", "2026-05-11");
        row("the last day there is", "9999-12-30 + 1 day", "9999-12-31");
        row("its last hour", "9999-12-31 + 23 hr", "9999-12-31");
        row("the first day there is", "0001-01-02 - 1 day", "0001-01-01");
        const char *const outside = "error: this date lies outside the calendar: years go from 1 to 9999";
        row("no day after the last", "9999-12-31 + 1 day", outside);
        row("no hour before the first", "0001-01-01 - 1 hr", outside);
        row("far away", "sampled + 1e300 day", outside);
        row("far away on the way to a function", "follow_up(sampled + 1e9 day)", outside);
        row("far away and back is no way", "sampled + 1e9 day - 1e9 day", outside);
        row("a blank is passed as missing", "day_number(undated)", "-1", "Undated is no value");
        row("a blank it must have", "follow_up(undated)", "error: `undated` is blank");
        row("refused by the function", "follow_up(1989-12-31)",
            "error: a sample of 1989-12-31 is too old to follow up");
        row("a part of a day is no date", "follow_up(2026-06-01)",
            "error: `follow_up` gave no usable result for these arguments: tell the author of the plugin "
            "`test`");
        row("an amount", "follow_up(30 day)", "error: follow_up takes sampled as a date, not 30 day");
        row("a number", "follow_up(20585)",
            "error: follow_up takes sampled as a date, not 20585 (a pure number)");
        row("words", "follow_up(\"2026-05-12\")",
            "error: follow_up takes sampled as a date, not \"2026-05-12\"");
        row("yes or no", "follow_up(sampled, yes)", "error: follow_up takes from as a date, not yes");
        row("a date where an amount belongs", "half_iron(sampled)",
            "error: half_iron takes iron as an amount, not `sampled` (a date)");
        row("a date where a pure number belongs", "half(2026-05-12)",
            "error: half takes x as an amount, not 2026-05-12");
    }

    void pluginDates()
    {
        QFETCH(QString, formula);
        QFETCH(QString, shows);
        QFETCH(QString, reason);
        const std::string text =
            "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\n"
            "column x amounts \"Amount\" 12\n"
            "line\nitem: Sampled\nx: 2026-05-12\n  name sampled\n"
            "line\nitem: Undated\nat x\n  name undated\n"
            "line\nx: " +
            formula.toStdString() + "\nend s 3\nend workbook\n";
        UnitTable units;
        const Worked worked(text, std::make_shared<DateFunctions>(units), units);
        QCOMPARE(q(worked.shown("3")), shows);
        if (worked.error("3").empty())
            QCOMPARE(q(worked.reason("3")), reason);
    }
};

QTEST_APPLESS_MAIN(DatesTest)
#include "dates_test.moc"
