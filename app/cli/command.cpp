/// Opening with --set, messages, exit codes.
#include "cli/command.h"

#include <fmt/format.h>

#include "base/text.h"
#include "units/value.h"

namespace puteal::cli
{

void complain(const std::string &words)
{
    fmt::print(stderr, "puteal: {}\n", words);
}

void complain(const Error &error)
{
    if (error.place.fileLine > 0 && error.words.find("line") == std::string::npos)
        fmt::print(stderr, "puteal: file line {}: {}\n", error.place.fileLine, error.words);
    else
        complain(error.words);
    for (const Fix &fix : error.fixes)
        fmt::print(stderr, "  try: {}\n", fix.words.empty() ? fix.text : fix.words);
}

void complainAt(std::string_view text, const Error &error)
{
    fmt::print(stderr, "{}\n", pointed(text, error));
    complain(error.words);
    for (const Fix &fix : error.fixes) {
        fmt::print(stderr, "  try: {}\n", fix.words.empty() ? fix.text : fix.words);
        std::string whole(text);
        if (fix.span.end <= whole.size() && fix.span.begin <= fix.span.end) {
            whole.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
            fmt::print(stderr, "       {}\n", whole);
        }
    }
}

int put(const std::string &text)
{
    const bool written =
        std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
    if (written)
        return good;
    complain("the output could not be written; is the disk full or the pipe closed?");
    return cannotWrite;
}

PluginFolders foldersOf(const Options &options)
{
    return PluginFolders::standard({options.pluginFolders.begin(), options.pluginFolders.end()});
}

namespace
{

/// Is the typed text a value this cell can take? Says why not.
Result<void> fits(const Session &session, const CellAt &at, const std::string &name, const std::string &text)
{
    const auto &program = session.program();
    const NodeFacts &facts = program.facts(program.nodeOf(at));
    const bool inWords = session.workbook().sheets[at.sheet].column(at.column).kind == ColumnKind::words;
    if (inWords || (facts.type.kind == ValueKind::blank && facts.type.list == 0) || facts.error)
        return {};
    const Program::Preview preview = program.preview(session.workbook(), at, text, session.values());
    if (facts.type.list != 0 && preview.error && isName(text)) {
        std::vector<std::string> words;
        for (const std::string &word : program.lists().words(facts.type.list))
            words.push_back(quoted(word));
        return fail(ErrorKind::use,
                    fmt::format("--set {}: `{}` is not a choice here: {}", name, text, joined(words)));
    }
    if (facts.type.kind == ValueKind::words && preview.error && isName(text))
        return fail(ErrorKind::use,
                    fmt::format("--set {}: words stand in double quotation marks: write '{}=\"{}\"'", name,
                                name, text));
    if (facts.type.kind == ValueKind::words || facts.type.kind == ValueKind::blank)
        return preview.error ? Result<void>(fail(ErrorKind::use,
                                                 fmt::format("--set {}: {}", name, preview.error->words)))
                             : Result<void>();
    if (facts.type.kind == ValueKind::yesNo && (preview.error || preview.type.kind != ValueKind::yesNo))
        return fail(ErrorKind::use, fmt::format("--set {}: `{}` is neither yes nor no", name, text));
    if (preview.error)
        return fail(ErrorKind::use, fmt::format("--set {}: {}", name, preview.error->words));
    if (preview.tree)
        return fail(ErrorKind::use,
                    fmt::format("--set {}: `{}` is a formula; say a value, as in --set {}=\"{}\"", name, text,
                                name, session.view(at).shown));
    const bool sameKind = preview.type.kind == facts.type.kind;
    const bool sameDimension = preview.type.quantity.dimension == facts.type.quantity.dimension &&
                               preview.type.quantity.scale == facts.type.quantity.scale;
    if (!sameKind || !sameDimension)
        return fail(ErrorKind::use, fmt::format("--set {}: `{}` does not fit; the cell holds {}", name, text,
                                                session.view(at).shown));
    return {};
}

/// A bare number takes the unit the cell holds, as it does when typed there.
std::string withUnit(const Session &session, const CellAt &at, const std::string &text)
{
    const Program &program = session.program();
    const NodeFacts &facts = program.facts(program.nodeOf(at));
    const Program::Preview typed = program.preview(session.workbook(), at, text, session.values());
    const bool bare =
        !typed.error && !typed.tree && typed.type.kind == ValueKind::quantity && typed.shown.text.empty();
    if (!bare || facts.type.kind != ValueKind::quantity || facts.shown.text.empty())
        return text;
    return facts.shown.text.front() == '$' ? "$" + text + facts.shown.text.substr(1)
                                           : text + " " + facts.shown.text;
}

bool setOne(Session &session, const std::string &assignment, int &code)
{
    const auto equals = assignment.find('=');
    if (equals == std::string::npos || equals == 0) {
        complain(
            fmt::format("--set {}: write NAME=VALUE, as in --set raw_iron=\"3 mg/L as Fe\"", assignment));
        code = wrongUse;
        return false;
    }
    const std::string name(trimmed(std::string_view(assignment).substr(0, equals)));
    std::string text(trimmed(std::string_view(assignment).substr(equals + 1)));
    const auto at = session.find(name);
    if (!at) {
        complain(fmt::format("--set {}: {}", name, at.error().words));
        code = wrongUse;
        return false;
    }
    text = withUnit(session, *at, text);
    if (!text.empty())
        if (const auto fitting = fits(session, *at, name, text); !fitting) {
            complain(fitting.error().words);
            code = wrongUse;
            return false;
        }
    if (const auto applied = session.apply(SetText{*at, text}); !applied) {
        complain(fmt::format("--set {}: {}", name, applied.error().words));
        code = wrongUse;
        return false;
    }
    return true;
}

} // namespace

Session &kept(std::unique_ptr<Session> session)
{
    static auto &all = *new std::vector<std::unique_ptr<Session>>;
    return *all.emplace_back(std::move(session));
}

Session *openWith(const Options &options, int &code)
{
    if (options.file == "-") {
        complain("a workbook is read from a file, not from standard input: name the file");
        code = cannotRead;
        return nullptr;
    }
    auto session = Session::open(options.file, foldersOf(options));
    if (!session) {
        const Error &error = session.error();
        // The reader's sentences name the place; only the file is missing from them.
        const bool placed = error.words.find("file line") != std::string::npos || error.place.fileLine == 0;
        const bool named = error.words.find(options.file) != std::string::npos;
        complain(named ? error.words
                 : placed
                     ? fmt::format("{}: {}", options.file, error.words)
                     : fmt::format("{}, file line {}: {}", options.file, error.place.fileLine, error.words));
        code = cannotRead;
        return nullptr;
    }
    for (const auto &note : (*session)->openingNotes())
        complain(note);
    for (const auto &assignment : options.sets)
        if (!setOne(**session, assignment, code))
            return nullptr;
    return &kept(std::move(*session));
}

int verdictOf(const Session &session)
{
    int code = good;
    for (const Finding &finding : session.findings()) {
        using Grade = Finding::Grade;
        if (finding.grade == Grade::error) {
            const auto error = session.view(finding.at).error;
            return error && error->kind == ErrorKind::plugin ? pluginFailed : formulaError;
        }
        if (finding.grade == Grade::outside || finding.grade == Grade::healthOutside ||
            finding.grade == Grade::healthMissing || finding.grade == Grade::expectation)
            code = outside;
    }
    return code;
}

} // namespace puteal::cli
