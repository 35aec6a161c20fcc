/// Guarded operations, compiled shapes and calls of plugin functions, rule by rule.
#include <QTest>

#include <bit>
#include <cmath>

#include "base/limits.h"
#include "compile/error_number.h"
#include "compile/guards.h"
#include "compile/shape.h"
#include "formula/tree.h"
#include "sdk/plugin.h"
#include "support/sheet_text.h"

using namespace puteal;
using puteal::test::SheetCell;
using puteal::test::sheetText;
using puteal::test::Worked;

namespace
{

QString q(const std::string &text)
{
    return QString::fromStdString(text);
}

/// need(iron, [manganese = 2]): speaks about everything a plugin may speak about.
double need(const sdk::Argument &iron, double manganese, sdk::Reply &reply)
{
    if (iron.missing()) {
        reply.reason(iron.label() + " was not tested");
        return 0;
    }
    if (iron.above())
        return reply.refuse(1, iron.label() + " is more than the test shows");
    if (iron.number() > 20)
        reply.caution("much", "much iron: " + iron.shown());
    if (iron.below())
        reply.reason(iron.label() + " is at most " + iron.shown());
    else if (manganese == 7)
        reply.reason(iron.label() + " is " + iron.shown());
    return iron.number() + 2 * manganese;
}

/// total(x): sum of a range in gallons, blanks left out; tells how many lines there were.
double total(const sdk::Argument &x)
{
    double sum = 0;
    for (const double v : x)
        sum += std::isnan(v) ? 0 : v;
    return sum + 1000 * static_cast<double>(x.count());
}

double nothing(double)
{
    return std::nan("");
}

class TwoFunctions final : public Registry
{
public:
    explicit TwoFunctions(const UnitTable &units)
        : m_general(Registry::general(units)),
          m_functions(m_general->functions().begin(), m_general->functions().end())
    {
        const auto quantity = [&](const char *name, const char *unit) {
            ParameterInfo p;
            p.name = name;
            p.pattern = *readPattern(unit, units, {});
            return p;
        };
        FunctionInfo f;
        f.plugin = "test";
        f.name = "need";
        f.parameters = {quantity("iron", "mg/L as Fe"), quantity("manganese", "mg/L as Mn")};
        f.parameters[0].mayBeMissing = f.parameters[0].mayBeBounded = true;
        f.parameters[0].hardLow = 0;
        f.parameters[0].hardHigh = 50;
        f.parameters[0].usualHigh = 30;
        f.parameters[1].hasDefault = true;
        f.parameters[1].fallback = 2;
        f.result = *readPattern("mg/L as Fe", units, {});
        add(f);
        f.name = "total";
        f.parameters = {quantity("x", "gal")};
        f.parameters[0].range = true;
        f.result = *readPattern("gal", units, {});
        add(f);
        f.name = "nothing";
        f.parameters = {quantity("x", "gal")};
        add(f);
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
        ++opened;
        return f.name == "need" ? sdk::call<need> : f.name == "total" ? sdk::call<total> : sdk::call<nothing>;
    }
    Error whyNot(std::string_view name) const override { return m_general->whyNot(name); }
    mutable int opened = 0;

private:
    void add(FunctionInfo f)
    {
        f.index = static_cast<std::uint32_t>(m_functions.size());
        m_functions.push_back(std::move(f));
    }
    std::shared_ptr<const Registry> m_general;
    std::vector<FunctionInfo> m_functions;
};

} // namespace

class CompileTest : public QObject
{
    Q_OBJECT
private slots:
    void errorNumbers();
    void bounds_data();
    void bounds();
    void steps_data();
    void steps();
    void shapes();
    void shapesAreBounded();
    void pluginCalls_data();
    void pluginCalls();
    void pluginRanges();
    void librariesOpenOnce();
};

void CompileTest::errorNumbers()
{
    const double x = errorNumber(ErrorKind::refused, 123456, 7);
    QVERIFY(std::isnan(x));
    QCOMPARE(errorKind(x), ErrorKind::refused);
    QCOMPARE(errorOrigin(x), 123456U);
    QCOMPARE(errorIndex(x), 7U);
    for (const double y : {x + 1.0, 2.0 * x, -x, std::sqrt(x), x / 3.0, 1.0 - x}) // arithmetic hands it on
        QCOMPARE(errorOrigin(y), 123456U);
    QCOMPARE(errorKind(std::sqrt(-1.0)), ErrorKind::notFinite);
    QCOMPARE(errorOrigin(std::sqrt(-1.0)), originHere);
    QVERIFY(isBlankNumber(errorNumber(ErrorKind::blank, 3)));
}

void CompileTest::bounds_data()
{
    QTest::addColumn<int>("boundA");
    QTest::addColumn<double>("a");
    QTest::addColumn<int>("op");
    QTest::addColumn<int>("boundB");
    QTest::addColumn<double>("b");
    QTest::addColumn<QString>("decides");
    const auto row = [](const char *rule, Bound x, double a, Op op, Bound y, double b, const char *decides) {
        QTest::newRow(rule) << int(x) << a << int(op) << int(y) << b << QString(decides);
    };
    const Bound exact = Bound::exact, below = Bound::below, above = Bound::above;
    row("<1 is at most 2", below, 1, Op::atMost, exact, 2, "yes");
    row("<1 is less than 1", below, 1, Op::less, exact, 1, "yes");
    row("<3 may be at most 2", below, 3, Op::atMost, exact, 2, "not");
    row("<1 is not at least 1", below, 1, Op::atLeast, exact, 1, "no");
    row("<1 is at least 0", below, 1, Op::atLeast, exact, 0, "yes");
    row("<1 is not 5", below, 1, Op::equal, exact, 5, "no");
    row("<1 may be 0.5", below, 1, Op::equal, exact, 0.5, "not");
    row(">9 is more than 9", above, 9, Op::greater, exact, 9, "yes");
    row(">9 is not at most 9", above, 9, Op::atMost, exact, 9, "no");
    row(">9 may be at most 10", above, 9, Op::atMost, exact, 10, "not");
    row("5 is more than <5", exact, 5, Op::greater, below, 5, "yes");
    row("5 differs from >9", exact, 5, Op::notEqual, above, 9, "yes");
    row("<1 is less than >2", below, 1, Op::less, above, 2, "yes");
    row("<2 and >1 do not decide", below, 2, Op::less, above, 1, "not");
}

void CompileTest::bounds()
{
    QFETCH(int, boundA);
    QFETCH(double, a);
    QFETCH(int, op);
    QFETCH(int, boundB);
    QFETCH(double, b);
    QFETCH(QString, decides);
    const double result = compareBounded(op, boundA, boundB, a, b);
    QCOMPARE(std::isnan(result) ? QString("not") : QString(result != 0.0 ? "yes" : "no"), decides);
}

void CompileTest::steps_data()
{
    QTest::addColumn<QString>("form");
    QTest::addColumn<double>("x");
    QTest::addColumn<double>("step");
    QTest::addColumn<double>("gives");
    const auto row = [](const char *rule, const char *form, double x, double step, double gives) {
        QTest::newRow(rule) << QString(form) << x << step << gives;
    };
    row("up", "ceil", 2.1, 1, 3);
    row("up from just above a step", "ceil", 3.0000000000000004, 1, 3);
    row("down from just below a step", "floor", 89.99999999999999, 1, 90);
    row("down below zero", "floor", -2.5, 1, -3);
    row("a half goes away from zero", "round", 2.5, 1, 3);
    row("also below zero", "round", -2.5, 1, -3);
    row("a half within the slack", "round", 2.4999999999999996, 1, 3);
    row("a step of its own", "round", 13.4, 5, 15);
}

void CompileTest::steps()
{
    QFETCH(QString, form);
    QFETCH(double, x);
    QFETCH(double, step);
    QFETCH(double, gives);
    QCOMPARE(form == "ceil" ? ceilTo(x, step) : form == "floor" ? floorTo(x, step) : roundTo(x, step), gives);
    QVERIFY(std::isnan(ceilTo(x, 0.0)));
    QCOMPARE(errorOrigin(ceilTo(errorNumber(ErrorKind::blank, 5), step)), 5U);
}

void CompileTest::shapes()
{
    Shape shape("(kn(0,lt(r0,r1))?k0:(k0?(r0+r1):mx(r0,3)))");
    QVERIFY2(!shape.broken(), shape.problem().c_str());
    shape.operands()[0] = 1;
    shape.operands()[1] = 2;
    QCOMPARE(shape.eval(), 3.0);
    shape.operands()[0] = 5;
    QCOMPARE(shape.eval(), 5.0);
    shape.operands()[1] = errorNumber(ErrorKind::blank, 9);
    QCOMPARE(errorOrigin(shape.eval()), 9U);
    QVERIFY(Shape("r0+*").broken());
    QCOMPARE(shapeId("r0+1"), shapeId("r0+1"));
    QVERIFY(shapeId("r0+1") != shapeId("r0+2"));
    Shape precise("0.1+1e-300*r0+17.118061045270945");
    QCOMPARE(precise.eval() == 0.1 + 17.118061045270945 || std::isnan(precise.eval()), true);
}

void CompileTest::shapesAreBounded()
{
    ShapeCache &cache = ShapeCache::ofThread();
    const std::size_t before = cache.compiles();
    for (int round = 0; round < 2; ++round)
        for (int i = 0; i < 100; ++i)
            (void)cache.get(shapeId("r0+" + std::to_string(500000 + i)));
    QCOMPARE(cache.compiles() - before, std::size_t(100)); // one compile per distinct text
    for (std::size_t i = 0; i < limits::shapesPerThread + 50; ++i)
        (void)cache.get(shapeId("r0*" + std::to_string(700000 + i)));
    QVERIFY(cache.size() <= limits::shapesPerThread);
    Shape &again = cache.get(shapeId("r0+500000"));
    again.operands()[0] = 1;
    QCOMPARE(again.eval(), 500001.0);
}

void CompileTest::pluginCalls_data()
{
    QTest::addColumn<QString>("formula");
    QTest::addColumn<QString>("shows");
    QTest::addColumn<QString>("reason");
    QTest::addColumn<QString>("caution");
    const auto row = [](const char *rule, const char *formula, const char *shows, const char *reason = "",
                        const char *caution = "") {
        QTest::newRow(rule) << QString(formula) << QString(shows) << QString(reason) << QString(caution);
    };
    row("in the parameter's unit, with the default", "need(iron)", "10 mg/L as Fe");
    row("another unit converts", "need(0.006 g/L as Fe)", "10 mg/L as Fe");
    row("label and value in a reason", "need(iron, 7 mg/L as Mn)", "20 mg/L as Fe",
        "Raw iron is 6.00 mg/L as Fe");
    row("an expression is called by its text", "need(iron * 2, 7 mg/L as Mn)", "26 mg/L as Fe",
        "iron * 2 is 12.0 mg/L as Fe");
    row("a blank is passed as missing", "need(untested)", "0 mg/L as Fe", "Not tested was not tested");
    row("a reading known only as a bound", "need(trace)", "4.05 mg/L as Fe",
        "Trace is at most <0.0500 mg/L as Fe");
    row("a caution of the function", "need(25 mg/L as Fe)", "29 mg/L as Fe", "", "much iron: 25 mg/L as Fe");
    row("unusual", "need(40 mg/L as Fe) * 1", "44 mg/L as Fe", "",
        "`iron` is usually at most 30 mg/L as Fe; here it is 40 mg/L as Fe");
    row("refused before the call", "need(80 mg/L as Fe)",
        "error: `iron` must be at most 50 mg/L as Fe; it is 80 mg/L as Fe");
    row("the hard end itself is allowed", "need(50 mg/L as Fe) - 54 mg/L as Fe", "0 mg/L as Fe", "",
        "`iron` is usually at most 30 mg/L as Fe; here it is 50 mg/L as Fe");
    row("refused by the function", "need(over)", "error: Over is more than the test shows");
    row("an error passes by", "need(iron / 0)", "error: divides by zero");
    row("no number", "nothing(3 gal)",
        "error: `nothing` gave no usable result for these arguments: tell the author of the plugin `test`");
}

void CompileTest::pluginCalls()
{
    QFETCH(QString, formula);
    QFETCH(QString, shows);
    QFETCH(QString, reason);
    QFETCH(QString, caution);
    const std::string text = "puteal workbook 1\ntitle \"t\"\nsheet s \"S\"\ncolumn item words \"Item\" 20\n"
                             "column x amounts \"Amount\" 12\n"
                             "line\nitem: Raw iron\nx: 6 mg/L as Fe\n  name iron\n"
                             "line\nitem: Not tested\nat x\n  name untested\n  unit mg/L as Fe\n"
                             "line\nitem: Trace\nx: <0.05 mg/L as Fe\n  name trace\n"
                             "line\nitem: Over\nx: >40 mg/L as Fe\n  name over\n"
                             "line\nx: " +
                             formula.toStdString() + "\nend s 5\nend workbook\n";
    UnitTable units;
    const Worked worked(text, std::make_shared<TwoFunctions>(units), units);
    QCOMPARE(q(worked.shown("5")), shows);
    if (worked.error("5").empty()) {
        QCOMPARE(q(worked.reason("5")), reason);
        const auto cautions = worked.cautions("5");
        QVERIFY2(caution.isEmpty() == cautions.empty(), cautions.empty() ? "" : cautions.front().c_str());
        QVERIFY(caution.isEmpty() ||
                std::find(cautions.begin(), cautions.end(), caution.toStdString()) != cautions.end());
    }
}

void CompileTest::pluginRanges()
{
    UnitTable units;
    const Worked worked(sheetText({{"3 gal"}, {""}, {"5 gal"}, {"total(x[1:3])"}}),
                        std::make_shared<TwoFunctions>(units), units);
    QCOMPARE(q(worked.shown("4")), QString("3008 gal"));
}

void CompileTest::librariesOpenOnce()
{
    UnitTable units;
    const auto registry = std::make_shared<TwoFunctions>(units);
    const Worked worked(sheetText({{"1 mg/L as Fe"}, {"need(x[-1])"}, {"need(x[-1])"}, {"need(x[-1])"}}),
                        registry, units);
    QCOMPARE(registry->opened, 1); // three cells, one formula, one library
}

QTEST_APPLESS_MAIN(CompileTest)
#include "compile_test.moc"
