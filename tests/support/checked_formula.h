/// The small workbook the checker tests use, and one formula checked in it, told as text.
#pragma once

#include <string>

#include "check/units_row.h"
#include "formula/binder.h"
#include "support/small_book.h"

namespace puteal::test
{

inline void fillBook(SmallBook &book)
{
    const char *verdicts = "works|marginal|cannot tell yet|will not work";
    book.addNamed("water", {{"raw_iron", "6.2 mg/L as Fe"},
                            {"raw_manganese", "0.45 mg/L as Mn"},
                            {"hardness", "20 gpg"},
                            {"use", "300 gal/day"},
                            {"flow", "7 gpm"},
                            {"pressure", "40 psi"},
                            {"air", "14.7 psi_abs"},
                            {"ph", "6.8"},
                            {"share", "15 %"},
                            {"untold", "3 mg/L"},
                            {"nitrate", "8 mg/L as NO3"},
                            {"nitrite", "1 mg/L as NO2"},
                            {"nitrogen", "2 mg/L as N"},
                            {"sulfide", "1 mg/L as H2S"},
                            {"people", "4 people"},
                            {"use_per_person", "60 gal/(person*day)"},
                            {"life", "90 day/cartridge"},
                            {"temperature", "55 degF"},
                            {"warming", "5 delta_degF"},
                            {"sampled", "2026-05-12"},
                            {"installed", "2026-06-01"},
                            {"arsenic", "<0.005 mg/L as As"},
                            {"has_softener", "yes"},
                            {"freezes", "no"},
                            {"verdict", "marginal", "", verdicts},
                            {"iron_form", "oxidized", "", "dissolved|oxidized|mixed"},
                            {"oxidant", "ozone", "", "chlorine|peroxide|ozone"},
                            {"tank_words", "\"behind the shed\""},
                            {"price", "$1,250"},
                            {"energy_price", "$0.15/kWh"},
                            {"filter_area", ""},
                            {"lead", "", "mg/L as Pb"},
                            {"coliform", "", "", "absent|present"},
                            {"days_per_year", "365 day/yr"},
                            {"broken", "?"},
                            {"tank", "120 gal"},
                            {"diameter", "10 in"},
                            {"allowance", "5 gpg/(mg{Fe}/L)"},
                            {"salt", "6 lb as NaCl"},
                            {"outlets", "4 each"}});
    book.addColumns("costs",
                    {{{"year", "", "yr"}, {"1 yr", "2 yr", "3 yr", "4 yr"}},
                     {{"cost", ""}, {"$100", "$50", "", "$20"}},
                     {{"fits", ""}, {"yes", "no", "yes", "yes"}},
                     {{"option", ""}, {"\"softener\"", "\"cartridges\"", "\"air\"", "\"ozone\""}},
                     {{"verdicts", "", "", verdicts}, {"works", "marginal", "works", "will not work"}},
                     {{"mixed", ""}, {"5 gal", "6 gal", "7 psi", ""}},
                     {{"empty", ""}, {"", "", "", ""}},
                     {{"weak", ""}, {"3 gal", "?", "4 gal", "5 gal"}},
                     {{"count_it", ""}, {"1", "2", "3", "4"}}});
}

/// A formula as it came out of the checker.
struct CheckedFormula {
    std::shared_ptr<const Tree> tree;
    Result<Checked> checked = fail(ErrorKind::none, "");
};

/// Checks a formula. `where`: "" (a spare cell), "set UNIT", "choices a|b", "limit NAME" (a limit of that
/// cell) or "costs LINE" (the spare column of the sheet of columns).
inline CheckedFormula checkIn(SmallBook &book, const std::string &where, const std::string &formula)
{
    CheckContext context;
    context.workbook = &book.workbook;
    context.units = &book.units;
    context.registry = &book.registry;
    context.lists = &book.lists;
    context.types = &book;
    context.self = CellAt{0, 0, book.workbook.sheets[0].lineCount() - 1};
    Unit set;
    if (where.starts_with("set ")) {
        set = readUnit(where.substr(4), book.units).value();
        context.setUnit = &set;
    }
    if (where.starts_with("choices "))
        context.choiceList = book.listOf(where.substr(8));
    if (where.starts_with("limit "))
        context.expected = book.typeOf(*book.workbook.sheets[0].named(where.substr(6), 0)).type;
    if (where.starts_with("costs "))
        context.self = CellAt{1, 8, static_cast<std::uint32_t>(std::stoi(where.substr(6)) - 1)};
    CheckedFormula out;
    auto tree = parseFormula(formula, book.units);
    if (!tree) {
        out.checked = tl::unexpected<Error>(tree.error());
        return out;
    }
    out.tree = std::make_shared<const Tree>(std::move(*tree));
    const auto binding = bind(*out.tree, book.workbook, context.self);
    if (!binding) {
        out.checked = tl::unexpected<Error>(binding.error());
        return out;
    }
    out.checked = check(*out.tree, *binding, context);
    return out;
}

/// The type as a reader meets it: "mg/L as Fe", "yes/no", "one of works, marginal"; then what was dropped and
/// cautions.
inline std::string told(const SmallBook &book, const Checked &checked)
{
    std::string out;
    const QuantityType &type = checked.type.quantity;
    switch (checked.type.kind) {
    case ValueKind::quantity:
        out = checked.shown.text.empty() ? typeWords(type, book.units) : checked.shown.text;
        if (!type.substances.empty() && out.find(" as ") == std::string::npos &&
            out.find('{') == std::string::npos)
            out += " as " + UnitTable::substanceWord(type.substances.items().front().first);
        if (checked.shown.type != type)
            out += ", but of type " + typeWords(type, book.units);
        break;
    case ValueKind::yesNo:
        out = "yes/no";
        break;
    case ValueKind::choice:
        for (const std::string &word : book.lists.words(checked.type.list))
            out += (out.empty() ? "one of " : ", ") + word;
        break;
    case ValueKind::date:
        out = "date";
        break;
    case ValueKind::words:
        out = "words";
        break;
    case ValueKind::blank:
        out = "blank";
        break;
    }
    if (checked.type.bound != Bound::exact)
        out += "; a bound";
    for (const std::string &dropped : checked.thingsDropped)
        out += "; " + dropped;
    for (const Caution &caution : checked.cautions)
        out += "; caution: " + caution.words;
    return out;
}

/// "^^^^ ~~~" under a formula: the span and the other span.
inline std::string underlined(const std::string &formula, const Place &place)
{
    std::string marks(formula.size(), ' ');
    if (place.other)
        marks.replace(place.other->begin, place.other->end - place.other->begin,
                      std::string(place.other->end - place.other->begin, '~'));
    if (place.span)
        marks.replace(place.span->begin, place.span->end - place.span->begin,
                      std::string(place.span->end - place.span->begin, '^'));
    while (marks.ends_with(' '))
        marks.pop_back();
    return marks;
}

/// The formulas the fixes make, parted by " or ".
inline std::string fixed(const std::string &formula, const std::vector<Fix> &fixes)
{
    std::string out;
    for (const Fix &fix : fixes) {
        std::string text = formula;
        text.replace(fix.span.begin, fix.span.end - fix.span.begin, fix.text);
        out += (out.empty() ? "" : " or ") + text;
    }
    return out;
}

} // namespace puteal::test
