/// `puteal eval FORMULA`: one formula without a workbook.
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "cli/json.h"

namespace puteal::cli
{

int evalCommand(const Options &options)
{
    if (options.format == Format::csv || options.format == Format::html) {
        complain("eval prints text or json: leave --format out, or write --format json");
        return wrongUse;
    }
    const Session &session = kept(Session::createNew(foldersOf(options)));
    const Program &program = session.program();
    const CellAt at{0, 1, 0};
    const auto preview = program.preview(session.workbook(), at, options.formula, session.values());
    if (preview.error) {
        complainAt(options.formula, *preview.error);
        return preview.error->kind == ErrorKind::plugin ? pluginFailed : formulaError;
    }
    if (preview.type.kind == ValueKind::blank) {
        complain("there is no formula; write for example puteal eval '10 gpg -> mg/L'");
        return wrongUse;
    }
    const std::string shown = showPlain(preview.type, preview.number, preview.words, preview.shown,
                                        options.figures, program.lists(), program.units());
    for (const Caution &caution : preview.cautions)
        complain("note: " + caution.words);
    if (options.format == Format::json) {
        nlohmann::ordered_json out =
            valueJson(preview.type, preview.number, preview.words, preview.shown, program);
        out["shown"] = shown;
        if (!preview.reason.empty())
            out["reason"] = preview.reason;
        for (const Caution &caution : preview.cautions)
            out["cautions"].push_back(caution.words);
        return put(out.dump(2) + "\n");
    }
    return put(shown + "\n");
}

} // namespace puteal::cli
