/// `puteal check FILE`: limits, missing tests, expectations, errors; and `puteal recount FILE`.
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "file/reader.h"
#include "file/safe_save.h"

namespace puteal::cli
{

namespace
{

const char *gradeWord(Finding::Grade grade)
{
    switch (grade) {
    case Finding::Grade::error:
        return "error";
    case Finding::Grade::outside:
        return "outside";
    case Finding::Grade::healthOutside:
        return "health, outside";
    case Finding::Grade::missingTest:
        return "missing test";
    case Finding::Grade::healthMissing:
        return "health, missing test";
    case Finding::Grade::near:
        return "near";
    case Finding::Grade::caution:
        return "caution";
    case Finding::Grade::expectation:
        break;
    }
    return "expectation";
}

} // namespace

int checkCommand(const Options &options)
{
    if (options.format == Format::csv || options.format == Format::html) {
        complain("check prints text or json: leave --format out, or write --format json");
        return wrongUse;
    }
    int code = good;
    const Session *session = openWith(options, code);
    if (!session)
        return code;
    const auto findings = session->findings();
    const auto expectations = session->expectations();
    std::size_t met = 0;
    for (const auto &result : expectations)
        met += result.met ? 1 : 0;
    const SheetCounts counts = session->counts();
    if (options.format == Format::json) {
        nlohmann::ordered_json out{{"within", counts.within},
                                   {"near", counts.near},
                                   {"outside", counts.outside},
                                   {"missing", counts.missing},
                                   {"errors", counts.errors},
                                   {"expectations", expectations.size()},
                                   {"met", met},
                                   {"findings", nlohmann::ordered_json::array()}};
        for (const Finding &finding : findings)
            out["findings"].push_back(
                {{"grade", gradeWord(finding.grade)}, {"place", finding.place}, {"words", finding.words}});
        if (const int written = put(out.dump(2) + "\n"); written != good)
            return written;
        return verdictOf(*session);
    }
    std::string out;
    for (const Finding &finding : findings)
        out += fmt::format("{}: {}: {}\n", gradeWord(finding.grade), finding.place, finding.words);
    out += fmt::format("{} within, {} near, {} outside, {} missing; {} of {} expectations met; {} formulas, "
                       "{} with an error\n",
                       counts.within, counts.near, counts.outside, counts.missing, met, expectations.size(),
                       counts.formulas, counts.errors);
    if (const int written = put(out); written != good)
        return written;
    return verdictOf(*session);
}

int recountCommand(const Options &options)
{
    const auto bytes = readFile(options.file);
    if (!bytes) {
        complain(bytes.error());
        return cannotRead;
    }
    const auto text = recounted(*bytes);
    if (!text) {
        complain(text.error());
        return cannotRead;
    }
    if (*text == *bytes)
        return put("the counts are right; nothing was changed\n");
    if (const auto saved = saveSafely(options.file, *text); !saved) {
        complain(saved.error());
        return cannotWrite;
    }
    return put("the counts were set right; look at the merged lines before you use the results\n");
}

} // namespace puteal::cli
