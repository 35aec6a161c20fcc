/// Generated from the descriptors: each function at, just inside and just outside each range of each
/// parameter, with a wrong substance, unit, word, and with each caution it declares.
#include <cmath>
#include <map>
#include <set>

#include <QTest>

#include <fmt/format.h>

#include "base/number.h"
#include "session/session.h"
#include "session/worked_example.h"

using namespace puteal;

namespace
{

/// One worked example taken apart: `name(argument, ...)`, with the cells it brings.
struct BaseCall {
    std::unique_ptr<Session> session;
    std::vector<std::string> arguments;
};

const PluginFolders &folders()
{
    static const PluginFolders built{{}, {std::string(PUTEAL_BUILD_DIR) + "/lib/puteal/plugins"}};
    return built;
}

/// Arguments of the call that is the whole formula; empty when it is more than one call.
std::vector<std::string> argumentsOf(const std::string &formula, const std::string &name)
{
    if (!formula.starts_with(name + "(") || !formula.ends_with(')'))
        return {};
    std::vector<std::string> parts(1);
    int depth = 0;
    bool quoted = false;
    for (std::size_t i = name.size() + 1; i + 1 < formula.size(); ++i) {
        const char c = formula[i];
        quoted = quoted != (c == '"');
        if (!quoted && (c == '(' || c == '[' || c == '{'))
            ++depth;
        if (!quoted && (c == ')' || c == ']' || c == '}') && --depth < 0)
            return {};
        if (!quoted && depth == 0 && c == ',')
            parts.emplace_back();
        else if (c != ' ' || !parts.back().empty())
            parts.back() += c;
    }
    return parts;
}

BaseCall baseOf(const FunctionInfo &f)
{
    for (const ExampleInfo &example : f.examples) {
        const WorkedExample worked = workedExample(example.formula);
        auto arguments = argumentsOf(worked.formula, f.name);
        if (arguments.empty())
            continue;
        if (worked.workbook.empty())
            return {Session::createNew(folders()), std::move(arguments)};
        if (auto session = Session::fromText(worked.workbook, folders()))
            return {std::move(*session), std::move(arguments)};
    }
    return {};
}

std::string literal(double x, const std::string &unit)
{
    if (unit.starts_with('$'))
        return fmt::format("{}${}{}", x < 0 ? "-" : "", shortest(std::fabs(x)), unit.substr(1));
    return unit.empty() ? shortest(x) : shortest(x) + " " + unit;
}

std::string quoted(const std::string &words)
{
    return '"' + words + '"';
}

/// The unit a parameter takes, its substance read off the word chosen for it.
std::string unitOf(const FunctionInfo &f, const ParameterInfo &p, const std::vector<std::string> &arguments)
{
    if (p.pattern.substanceFrom < 0)
        return p.pattern.unit.text;
    const auto from = static_cast<std::size_t>(p.pattern.substanceFrom);
    const ParameterInfo &chooser = f.parameters[from];
    for (std::size_t w = 0; w < chooser.choices.size(); ++w)
        if (from < arguments.size() ? arguments[from] == quoted(chooser.choices[w])
                                    : w == static_cast<std::size_t>(chooser.fallback))
            return chooser.choiceSubstances[w].empty()
                       ? p.pattern.unit.text
                       : p.pattern.unit.text + " as " + chooser.choiceSubstances[w];
    return p.pattern.unit.text;
}

std::string fallbackOf(const FunctionInfo &f, std::size_t i, const std::vector<std::string> &arguments)
{
    const ParameterInfo &p = f.parameters[i];
    if (p.kind == ValueKind::choice)
        return quoted(p.choices[static_cast<std::size_t>(p.fallback)]);
    if (p.kind == ValueKind::yesNo)
        return p.fallback != 0.0 ? "yes" : "no";
    if (p.kind == ValueKind::date)
        return dateText(static_cast<std::int64_t>(p.fallback));
    return literal(p.fallback, unitOf(f, p, arguments));
}

/// The base with argument `i` replaced; those left out before it are written out.
std::string with(const FunctionInfo &f, std::vector<std::string> arguments, std::size_t i,
                 const std::string &text)
{
    while (arguments.size() <= i)
        arguments.push_back(fallbackOf(f, arguments.size(), arguments));
    arguments[i] = text;
    return fmt::format("{}({})", f.name, fmt::join(arguments, ", "));
}

Program::Preview worked(const BaseCall &base, const std::string &formula)
{
    const Session &session = *base.session;
    return session.program().preview(session.workbook(), CellAt{0, 1, 0}, formula, session.values());
}

bool says(const Program::Preview &preview, const std::string &start)
{
    for (const Caution &caution : preview.cautions)
        if (caution.words.starts_with(start))
            return true;
    return false;
}

/// A step off an edge that survives the slack of comparisons.
double step(double edge)
{
    return edge == 0.0 ? 1e-6 : std::fabs(edge) * 1e-6;
}

struct Edge {
    double at;
    bool low; ///< outside is below
};

std::vector<Edge> edges(double low, double high)
{
    std::vector<Edge> all;
    if (std::isfinite(low))
        all.push_back({low, true});
    if (std::isfinite(high))
        all.push_back({high, false});
    return all;
}

/// Arguments of another unit, substance or kind than the parameter's.
std::vector<std::string> wrongFor(const ParameterInfo &p, const std::string &unit)
{
    if (p.kind != ValueKind::quantity)
        return {"3 gal"};
    std::vector<std::string> wrong{"\"words\"", "3 A"};
    if (const auto as = unit.find(" as "); as != std::string::npos)
        wrong.push_back("3 " + unit.substr(0, as) + " as " + (unit.ends_with(" as Sr") ? "Pb" : "Sr"));
    return wrong;
}

bool isSingleAmount(const ParameterInfo &p)
{
    return p.kind == ValueKind::quantity && !p.range && p.pattern.variables.empty();
}

} // namespace

class EdgesTest : public QObject
{
    Q_OBJECT

    std::shared_ptr<const Registry> m_registry = Registry::create(UnitTable(), folders());

    void rows()
    {
        QTest::addColumn<QString>("name");
        for (const FunctionInfo &f : m_registry->functions())
            if (f.general == General::none)
                QTest::newRow(f.name.c_str()) << QString::fromStdString(f.name);
    }
    const FunctionInfo &current() const
    {
        QFETCH(QString, name);
        return *m_registry->find(name.toStdString());
    }

private slots:
    void hardRanges_data() { rows(); }
    /// Outside is refused with the range in the words; at the edge and inside the range is never the reason.
    void hardRanges()
    {
        const FunctionInfo &f = current();
        const BaseCall base = baseOf(f);
        QVERIFY2(base.session, "no worked example is just a call of the function");
        for (std::size_t i = 0; i < f.parameters.size(); ++i) {
            const ParameterInfo &p = f.parameters[i];
            if (!isSingleAmount(p))
                continue;
            const std::string unit = unitOf(f, p, base.arguments);
            for (const Edge &edge : edges(p.hardLow, p.hardHigh)) {
                const std::string words =
                    fmt::format("`{}` must be at {} ", p.name, edge.low ? "least" : "most");
                const double out = edge.at + (edge.low ? -step(edge.at) : step(edge.at));
                const double in = edge.at - (edge.low ? -step(edge.at) : step(edge.at));
                const std::string outside = with(f, base.arguments, i, literal(out, unit));
                const auto refused = worked(base, outside);
                QVERIFY2(refused.error, outside.c_str());
                QVERIFY2(refused.error->words.starts_with(words),
                         (outside + ": " + refused.error->words).c_str());
                for (const double x : {edge.at, in}) {
                    const std::string inside = with(f, base.arguments, i, literal(x, unit));
                    const auto accepted = worked(base, inside);
                    QVERIFY2(!accepted.error || !accepted.error->words.starts_with(words),
                             (inside + ": " + (accepted.error ? accepted.error->words : "")).c_str());
                }
            }
        }
    }

    void usualRanges_data() { rows(); }
    /// Outside what is usual a caution names the range; at the edge and inside it does not.
    void usualRanges()
    {
        const FunctionInfo &f = current();
        const BaseCall base = baseOf(f);
        QVERIFY2(base.session, "no worked example is just a call of the function");
        for (std::size_t i = 0; i < f.parameters.size(); ++i) {
            const ParameterInfo &p = f.parameters[i];
            if (!isSingleAmount(p))
                continue;
            QVERIFY2(std::isinf(p.usualLow) || atMost(p.hardLow, p.usualLow), p.name.c_str());
            QVERIFY2(std::isinf(p.usualHigh) || atMost(p.usualHigh, p.hardHigh), p.name.c_str());
            const std::string unit = unitOf(f, p, base.arguments);
            for (const Edge &edge : edges(p.usualLow, p.usualHigh)) {
                const std::string words =
                    fmt::format("`{}` is usually at {} ", p.name, edge.low ? "least" : "most");
                const double out = edge.at + (edge.low ? -step(edge.at) : step(edge.at));
                const double in = edge.at - (edge.low ? -step(edge.at) : step(edge.at));
                if (edge.low ? atMost(p.hardLow, out) : atMost(out, p.hardHigh)) {
                    const std::string outside = with(f, base.arguments, i, literal(out, unit));
                    const auto cautioned = worked(base, outside);
                    QVERIFY2(cautioned.error || says(cautioned, words), (outside + ": no caution").c_str());
                }
                for (const double x : {edge.at, in}) {
                    const std::string inside = with(f, base.arguments, i, literal(x, unit));
                    QVERIFY2(!says(worked(base, inside), words), (inside + ": a caution").c_str());
                }
            }
        }
    }

    void wrongArguments_data() { rows(); }
    /// One argument of another substance, unit, word or kind: refused before any calculation, naming the
    /// parameter.
    void wrongArguments()
    {
        const FunctionInfo &f = current();
        const BaseCall base = baseOf(f);
        QVERIFY2(base.session, "no worked example is just a call of the function");
        for (std::size_t i = 0; i < f.parameters.size(); ++i) {
            const ParameterInfo &p = f.parameters[i];
            if (p.range || p.anyKind || !p.pattern.variables.empty())
                continue;
            if (p.kind == ValueKind::choice)
                refuses(base, with(f, base.arguments, i, quoted("no such word")),
                        fmt::format("\"no such word\" is not in the list: {}", fmt::join(p.choices, ", ")));
            for (const std::string &text : wrongFor(p, unitOf(f, p, base.arguments)))
                refuses(base, with(f, base.arguments, i, text), fmt::format("{} takes {} ", f.name, p.name));
        }
    }

    void refusals_data() { rows(); }
    void refusals()
    {
        const FunctionInfo &f = current();
        QVERIFY2(!f.refusals.empty(), "a function says what it refuses");
        QVERIFY2(f.examples.size() >= 2, "a function has two worked examples");
        QVERIFY2(!f.sources.empty(), "a function has a source");
    }

    /// Each caution a function declares can be met: looked for at the edges, between them and in pairs of
    /// them.
    void cautions()
    {
        QStringList unmet;
        std::size_t declared = 0;
        for (const FunctionInfo &f : m_registry->functions()) {
            if (f.general != General::none || f.cautions.empty())
                continue;
            declared += f.cautions.size();
            std::set<std::string> open;
            for (const CautionInfo &caution : f.cautions)
                open.insert(caution.key);
            look(f, open);
            for (const std::string &key : open)
                unmet << QString::fromStdString(f.name + ": " + key);
        }
        QVERIFY2(declared > 40, qPrintable(QString::number(declared)));
        QVERIFY2(unmet.isEmpty(), qPrintable(unmet.join("\n")));
    }

private:
    static void refuses(const BaseCall &base, const std::string &formula, const std::string &start)
    {
        const auto refused = worked(base, formula);
        QVERIFY2(refused.error, formula.c_str());
        QVERIFY2(refused.error->words.starts_with(start), (formula + ": " + refused.error->words).c_str());
    }

    static std::vector<std::string> valuesFor(const FunctionInfo &f, std::size_t i,
                                              const std::vector<std::string> &arguments)
    {
        const ParameterInfo &p = f.parameters[i];
        std::vector<std::string> values;
        for (const std::string &word : p.choices)
            values.push_back(quoted(word));
        if (p.kind == ValueKind::yesNo)
            values = {"yes", "no"};
        if (p.kind == ValueKind::date)
            values = {"1960-02-29", "2000-01-01", "2026-11-25", "2040-12-31"};
        if (!isSingleAmount(p))
            return values;
        std::set<double> numbers;
        for (const double x : {p.hardLow, p.usualLow, p.usualHigh, p.hardHigh})
            if (std::isfinite(x))
                numbers.insert({x, x + step(x), x - step(x), 1.5 * x});
        const double low = std::isfinite(p.usualLow) ? p.usualLow : p.hardLow;
        const double high = std::isfinite(p.usualHigh) ? p.usualHigh : p.hardHigh;
        for (const double part : {0.02, 0.1, 0.25, 0.5, 0.75, 0.9})
            if (std::isfinite(low) && std::isfinite(high))
                numbers.insert(low + part * (high - low));
        for (const double x : numbers)
            if (atMost(p.hardLow, x) && atMost(x, p.hardHigh))
                values.push_back(literal(x, unitOf(f, p, arguments)));
        return values;
    }

    static void meet(const BaseCall &base, const std::string &formula, std::set<std::string> &open)
    {
        for (const Caution &caution : worked(base, formula).cautions)
            open.erase(caution.key);
    }

    void look(const FunctionInfo &f, std::set<std::string> &open) const
    {
        const BaseCall base = baseOf(f);
        if (!base.session)
            return;
        for (const ExampleInfo &example : f.examples) { // each with the cells it brings
            const WorkedExample own = workedExample(example.formula);
            if (own.workbook.empty())
                meet(base, own.formula, open);
            else if (auto session = Session::fromText(own.workbook, folders()))
                meet({std::move(*session), {}}, own.formula, open);
        }
        for (std::size_t i = 0; i < f.parameters.size() && !open.empty(); ++i)
            for (const std::string &a : valuesFor(f, i, base.arguments))
                meet(base, with(f, base.arguments, i, a), open);
        for (std::size_t i = 0; i < f.parameters.size(); ++i)
            for (std::size_t k = i + 1; k < f.parameters.size() && !open.empty(); ++k)
                for (const std::string &a : valuesFor(f, i, base.arguments)) {
                    auto both = argumentsOf(with(f, base.arguments, i, a), f.name);
                    for (const std::string &b : valuesFor(f, k, both))
                        meet(base, with(f, both, k, b), open);
                }
    }
};

QTEST_APPLESS_MAIN(EdgesTest)
#include "edges_test.moc"
