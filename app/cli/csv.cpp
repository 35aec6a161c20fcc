/// Sheets as comma-separated values.
#include "cli/csv.h"

#include <fmt/format.h>

namespace puteal::cli
{

std::string csvField(const std::string &words, bool isNumber)
{
    std::string field = words;
    // Text that starts like this is run as a formula elsewhere [OWASP, CSV injection]; a typed number stays a
    // number.
    if (!isNumber && !field.empty() && std::string_view("=+-@\t\r").find(field[0]) != std::string_view::npos)
        field.insert(field.begin(), '\'');
    if (field.find_first_of(",\"\r\n") == std::string::npos)
        return field;
    std::string out = "\"";
    for (const char c : field) {
        out += c;
        if (c == '"')
            out += '"';
    }
    return out + "\"";
}

std::string workbookCsv(const Session &session, const std::string &onlySheet)
{
    const Workbook &book = session.workbook();
    std::string out;
    for (std::uint32_t s = 0; s < book.sheets.size(); ++s) {
        const Sheet &sheet = book.sheets[s];
        if (!onlySheet.empty() && sheet.key() != onlySheet)
            continue;
        out += "sheet,line";
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            out += "," + csvField(sheet.column(c).title, false);
        out += "\r\n";
        for (std::uint32_t l = 0; l < sheet.lineCount(); ++l) {
            std::string row = fmt::format("{},{}", sheet.key(), l + 1);
            bool any = false;
            for (std::uint32_t c = 0; c < sheet.columnCount(); ++c) {
                const CellView view = session.view({s, c, l});
                any = any || !view.shown.empty();
                row += "," + csvField(view.shown, view.type.kind == ValueKind::quantity && !view.error);
            }
            if (any)
                out += row + "\r\n";
        }
    }
    return out;
}

} // namespace puteal::cli
