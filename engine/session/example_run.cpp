/// An example is a formula like any other: checked, compiled, evaluated and shown.
#include "session/example_run.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "functions/functions_page.h"
#include "session/worked_example.h"
#include "show/shown.h"

namespace puteal
{

namespace
{

/// Where an example is tried: the empty workbook, or one of its own when it brings cells along.
struct Stage {
    std::unique_ptr<Session> own;
    std::string formula;

    static Result<Stage> of(const ExampleInfo &example, const PluginFolders &folders)
    {
        const WorkedExample worked = workedExample(example.formula);
        Stage stage{nullptr, worked.formula};
        if (worked.workbook.empty())
            return stage;
        auto made = Session::fromText(worked.workbook, folders);
        if (!made)
            return tl::unexpected<Error>(made.error());
        stage.own = std::move(*made);
        return stage;
    }
    Program::Preview preview(const Session &empty, std::string_view text) const
    {
        const Session &session = own ? *own : empty;
        return session.program().preview(session.workbook(), CellAt{0, 1, 0}, text, session.values());
    }
};

bool isExpected(const Program::Preview &result, const Program::Preview &wanted, double tolerance)
{
    if (wanted.error || wanted.type.kind != ValueKind::quantity)
        return false;
    const double scale = std::max(std::fabs(wanted.number - wanted.shown.offset), 1e-300);
    const double off = std::fabs(result.number - wanted.number) / scale;
    return result.type.quantity.dimension == wanted.type.quantity.dimension &&
           result.type.quantity.substances == wanted.type.quantity.substances &&
           off <= std::max(tolerance, 1e-12);
}

} // namespace

ExampleRun runExample(const Session &empty, const ExampleInfo &example, const PluginFolders &folders)
{
    const auto stage = Stage::of(example, folders);
    if (!stage)
        return {false, stage.error().words};
    // lists of words are numbered by each workbook's own program
    const Program &program = stage->own ? stage->own->program() : empty.program();
    const auto result = stage->preview(empty, stage->formula);
    if (result.error)
        return {false, result.error->words};
    ExampleRun run;
    const auto wanted = stage->preview(empty, example.expected);
    const bool amount = result.type.kind == ValueKind::quantity;
    run.holds = amount && isExpected(result, wanted, example.tolerance);
    // in the unit of what is expected, so that the two can be compared by eye
    run.obtained = showPlain(result.type, result.number, result.words,
                             run.holds ? wanted.shown : result.shown, 7, program.lists(), program.units());
    run.holds =
        amount ? run.holds : run.obtained == example.expected || '"' + run.obtained + '"' == example.expected;
    return run;
}

ExampleRun runRefusal(const Session &empty, const ExampleInfo &refusal, const PluginFolders &folders)
{
    const auto stage = Stage::of(refusal, folders);
    if (!stage)
        return {false, stage.error().words};
    const auto result = stage->preview(empty, stage->formula);
    if (!result.error)
        return {false, "was not refused"};
    return {result.error->words == refusal.expected, result.error->words};
}

std::string helpWithResults(const FunctionInfo &function, const Registry &registry,
                            const PluginFolders &folders)
{
    const auto session = Session::createNew(folders);
    return functionHelp(function, registry, [&](const ExampleInfo &example) {
        const ExampleRun run = runExample(*session, example, folders);
        return run.holds ? run.obtained
                         : run.obtained + ", which is something else: do not rely on this function";
    });
}

} // namespace puteal
