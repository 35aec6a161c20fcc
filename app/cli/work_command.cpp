/// `puteal work FILE`: recalculates a workbook and prints it, a sheet, a cell or the page for people.
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "cli/csv.h"
#include "cli/json.h"
#include "file/safe_save.h"
#include "paper/page.h"

namespace puteal::cli
{

namespace
{

int printCell(const Session &session, const Options &options)
{
    // a bare name is looked for in the sheet that was named
    const bool bare = !options.sheet.empty() && options.cell.find('.') == std::string::npos;
    const auto at = session.find(bare ? options.sheet + "." + options.cell : options.cell);
    if (!at) {
        complain(at.error().words);
        return wrongUse;
    }
    const CellView view = session.view(*at);
    if (options.format == Format::json) {
        if (const int code = put(cellJson(session, *at).dump(2) + "\n"); code != good)
            return code;
    } else if (view.error) {
        complain(fmt::format("{}: {}", session.placeWords(*at), errorLine(*view.error)));
    } else if (const int code = put(view.shown + "\n"); code != good) {
        return code;
    }
    if (!view.error)
        return good;
    return view.error->kind == ErrorKind::plugin ? pluginFailed : formulaError;
}

} // namespace

int workCommand(const Options &options)
{
    int code = good;
    if (!options.cell.empty() && (options.format == Format::csv || options.format == Format::html)) {
        complain("--cell prints text or json: leave --format out, or write --format json");
        return wrongUse;
    }
    const Session *session = openWith(options, code);
    if (!session)
        return code;
    if (!options.sheet.empty() && !session->workbook().sheetByKey(options.sheet)) {
        std::vector<std::string> keys;
        for (const Sheet &sheet : session->workbook().sheets)
            keys.push_back(sheet.key());
        complain(fmt::format("there is no sheet `{}`; this workbook has {}", options.sheet,
                             fmt::join(keys, ", ")));
        return wrongUse;
    }
    if (!options.cell.empty())
        return printCell(*session, options);

    const auto onlySheet = [&](paper::Page page) {
        if (!options.sheet.empty())
            page.sheets.erase(std::remove_if(page.sheets.begin(), page.sheets.end(),
                                             [&](const auto &sheet) { return sheet.key != options.sheet; }),
                              page.sheets.end());
        return page;
    };
    const auto scope = options.page ? paper::PageScope::result : paper::PageScope::everything;
    std::string picture;
    if (!options.picture.empty()) {
        const auto bytes = readFile(options.picture);
        if (!bytes) {
            complain(bytes.error());
            return cannotRead;
        }
        // Inside a page only the element itself may stand.
        const auto start = bytes->find("<svg");
        picture = start == std::string::npos ? std::string() : bytes->substr(start);
    }
    std::string out;
    switch (options.format) {
    case Format::text:
        out = paper::pageText(onlySheet(paper::buildPage(*session, scope)));
        break;
    case Format::html:
        out = paper::pageHtml(onlySheet(paper::buildPage(*session, scope)), picture);
        break;
    case Format::json:
        out = workbookJson(*session, options.sheet).dump(2) + "\n";
        break;
    case Format::csv:
        out = workbookCsv(*session, options.sheet);
        break;
    }
    if (const int written = put(out); written != good)
        return written;
    for (const Finding &finding : session->findings())
        if (finding.grade == Finding::Grade::error)
            complain(fmt::format("{}: {}", finding.place, finding.words));
    return verdictOf(*session);
}

} // namespace puteal::cli
