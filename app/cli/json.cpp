/// Values, cells and workbooks as JSON.
#include "cli/json.h"

#include <cmath>

#include <nlohmann/json.hpp>

#include "units/shown_value.h"

namespace puteal::cli
{

using Json = nlohmann::ordered_json;

namespace
{

/// "mg/L as Fe" -> "mg{Fe}/L": JSON always has braces.
std::string braced(const Unit &unit)
{
    const auto as = unit.text.find(" as ");
    if (as == std::string::npos)
        return unit.text;
    static const char *const carriers[] = {"mg",    "ug",  "kg",   "g",    "lb",  "oz",
                                           "grain", "ton", "mmol", "umol", "mol", "meq"};
    const std::string substance = unit.text.substr(as + 4);
    std::string text = unit.text.substr(0, as);
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool starts = i == 0 || !std::isalpha(static_cast<unsigned char>(text[i - 1]));
        if (!starts)
            continue;
        for (const std::string carrier : carriers)
            if (text.compare(i, carrier.size(), carrier) == 0 &&
                (i + carrier.size() == text.size() ||
                 !std::isalnum(static_cast<unsigned char>(text[i + carrier.size()]))))
                return text.insert(i + carrier.size(), "{" + substance + "}");
    }
    return unit.text;
}

} // namespace

Json valueJson(const StaticType &type, double number, const std::string &words, const Unit &unit,
               const Program &program)
{
    Json out;
    out["kind"] = kindWord(type.kind);
    switch (type.kind) {
    case ValueKind::quantity:
        out["value"] = unit.fromBase(number);
        out["unit"] = braced(unit);
        if (type.bound != Bound::exact)
            out["bound"] = type.bound == Bound::below ? "below" : "above";
        break;
    case ValueKind::yesNo:
        out["value"] = number != 0.0;
        break;
    case ValueKind::choice: {
        const auto &list = program.lists().words(type.list);
        const auto index = static_cast<std::size_t>(number);
        out["value"] = index < list.size() ? list[index] : std::string();
        break;
    }
    case ValueKind::date:
        out["value"] = showValue(type, number, words, unit, {}, program.lists(), program.units());
        break;
    case ValueKind::words:
        out["value"] = words;
        break;
    case ValueKind::blank:
        out["value"] = nullptr;
        break;
    }
    return out;
}

Json cellJson(const Session &session, const CellAt &at)
{
    static const char *const states[] = {"within", "near", "outside", "no limit", "missing test"};
    const CellView view = session.view(at);
    Json out;
    if (!view.name.empty())
        out["name"] = view.name;
    out["typed"] = view.typed;
    if (view.error) {
        out["error"] = view.error->words;
    } else {
        const std::string words = view.type.kind == ValueKind::words ? view.shown : std::string();
        out.update(valueJson(view.type, view.number, words, view.unit, session.program()));
        out["shown"] = view.shown;
    }
    if (!view.limit.empty()) {
        out["limit"] = view.limit;
        out["state"] = states[static_cast<int>(view.state)];
        if (view.health)
            out["health"] = true;
    }
    if (!view.reason.empty())
        out["reason"] = view.reason;
    if (!view.cautions.empty())
        out["cautions"] = view.cautions;
    if (!view.sources.empty())
        out["sources"] = view.sources;
    return out;
}

Json workbookJson(const Session &session, const std::string &onlySheet)
{
    const Workbook &book = session.workbook();
    Json out;
    out["title"] = book.title;
    out["sheets"] = Json::array();
    for (std::uint32_t s = 0; s < book.sheets.size(); ++s) {
        const Sheet &sheet = book.sheets[s];
        if (!onlySheet.empty() && sheet.key() != onlySheet)
            continue;
        Json page{{"key", sheet.key()}, {"title", sheet.title()}, {"lines", Json::array()}};
        for (std::uint32_t l = 0; l < sheet.lineCount(); ++l) {
            Json line{{"line", l + 1}};
            bool any = false;
            for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
                if (const Cell &cell = sheet.cell(c, l); !cell.blank() || cell.attributes) {
                    line[sheet.column(c).key] = cellJson(session, {s, c, l});
                    any = true;
                }
            if (any)
                page["lines"].push_back(std::move(line));
        }
        out["sheets"].push_back(std::move(page));
    }
    return out;
}

} // namespace puteal::cli
