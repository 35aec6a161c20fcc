/// The slip while typing: units row, result row, and what could come next.
#include <algorithm>

#include <fmt/format.h>

#include "check/units_row.h"
#include "sdk/substances.h"
#include "session/session_state.h"

namespace puteal
{

/// The formula with the pieces an error names replaced by their units, so that a clash is seen in the units
/// row too.
std::string SessionState::clashingUnits(const CellAt &at, std::string_view text, const Error &error) const
{
    if ((error.kind != ErrorKind::unit && error.kind != ErrorKind::substance) || !error.place.span)
        return {};
    std::vector<Span> pieces{*error.place.span};
    if (error.place.other)
        pieces.push_back(*error.place.other);
    std::sort(pieces.begin(), pieces.end(), [](const Span &a, const Span &b) { return a.begin < b.begin; });
    std::string row;
    std::size_t done = 0;
    for (const Span &piece : pieces) {
        if (piece.begin < done || piece.end > text.size() || piece.begin >= piece.end)
            return {};
        const auto alone =
            m_program->preview(m_workbook, at, text.substr(piece.begin, piece.end - piece.begin), m_values,
                               Program::Whole::piece);
        if (alone.error && alone.type.kind != ValueKind::quantity)
            return {};
        row += text.substr(done, piece.begin - done);
        row += alone.tree && alone.checked ? unitsRow(*alone.tree, *alone.checked, m_units)
               : alone.type.kind != ValueKind::quantity
                   ? std::string(text.substr(piece.begin, piece.end - piece.begin))
               : alone.shown.text.empty() ? "number"
                                          : alone.shown.text;
        done = piece.end;
    }
    return row + std::string(text.substr(done));
}

SlipView SessionState::slip(const CellAt &at, std::string_view text) const
{
    SlipView slip;
    slip.preview = m_program->preview(m_workbook, at, text, m_values);
    const auto &preview = slip.preview;
    if (preview.tree && preview.checked)
        slip.units = unitsRow(*preview.tree, *preview.checked, m_units);
    else if (!preview.error && preview.type.kind == ValueKind::quantity)
        slip.units = preview.shown.text.empty() ? "a pure number" : preview.shown.text;
    else if (preview.error)
        slip.units = clashingUnits(at, text, *preview.error);
    if (preview.error && slip.units.empty())
        slip.units = unitsSoFar(at, text, preview.tree);
    if (preview.error)
        slip.result = errorLine(*preview.error);
    else if (preview.type.kind != ValueKind::blank)
        slip.result = showValue(preview.type, preview.number, preview.words, preview.shown, roundingOf(at),
                                m_program->lists(), m_units);
    return slip;
}

namespace
{

bool wordByte(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '%' || c == '$';
}

std::string argumentsOf(const FunctionInfo &function)
{
    std::string out;
    for (const auto &parameter : function.parameters) {
        out += out.empty() ? "" : ", ";
        out += parameter.name;
        if (!parameter.pattern.text.empty())
            out += " " + parameter.pattern.text;
        if (parameter.kind == ValueKind::date)
            out += " (year-month-day)";
    }
    return out;
}

} // namespace

std::vector<Completion> SessionState::complete(const CellAt &at, std::string_view text, std::size_t caret,
                                               std::size_t &start) const
{
    using Kind = Completion::Kind;
    caret = std::min(caret, text.size());
    start = caret;
    while (start > 0 && wordByte(text[start - 1]))
        --start;
    const std::string_view word = text.substr(start, caret - start);
    // Which kind of word can stand here? After a number a unit, after "as " a substance, after "." a cell of
    // that sheet.
    std::size_t before = start;
    while (before > 0 && text[before - 1] == ' ')
        --before;
    const std::string_view left = text.substr(0, before);
    const bool afterAs = left.size() >= 3 && (left.substr(left.size() - 3) == " as") && before < start;
    const bool afterNumber =
        !left.empty() && std::isdigit(static_cast<unsigned char>(left.back())) && before < start;
    const bool inUnit = !left.empty() && (left.back() == '/' || left.back() == '>') && left.size() >= 2;
    std::vector<Completion> out;
    const auto matches = [&](std::string_view candidate) {
        return candidate.size() >= word.size() &&
               std::equal(word.begin(), word.end(), candidate.begin(), [](char a, char b) {
                   return std::tolower(static_cast<unsigned char>(a)) ==
                          std::tolower(static_cast<unsigned char>(b));
               });
    };
    if (afterAs) {
        for (std::size_t i = 0; i < sdk::substanceCount; ++i)
            if (matches(sdk::substances[i].word))
                out.push_back({Kind::substance, sdk::substances[i].word, sdk::substances[i].name});
        return out;
    }
    const auto addUnits = [&] {
        if (word.empty() && !afterNumber)
            return;
        for (const UnitWord &unit : m_units.words())
            if (matches(unit.word))
                out.push_back({Kind::unit, unit.word, std::string(unit.name)});
    };
    if (afterNumber) {
        addUnits();
        return out;
    }
    if (start > 0 && text[start - 1] == '.') {
        std::size_t keyStart = start - 1;
        while (keyStart > 0 && wordByte(text[keyStart - 1]))
            --keyStart;
        if (const auto s = m_workbook.sheetByKey(text.substr(keyStart, start - 1 - keyStart))) {
            for (const auto &[name, place] : m_workbook.sheets[*s].names())
                if (matches(name))
                    out.push_back({Kind::name, name, labelOf({*s, place.first, place.second})});
            std::sort(out.begin(), out.end(), [](const auto &a, const auto &b) { return a.text < b.text; });
            return out;
        }
    }
    if (word.empty())
        return out;
    const Sheet &sheet = m_workbook.sheets[at.sheet];
    for (const auto &[name, place] : sheet.names())
        if (matches(name)) {
            const CellView cell = view({at.sheet, place.first, place.second});
            out.push_back(
                {Kind::name, name,
                 fmt::format("{}  {}", labelOf({at.sheet, place.first, place.second}), cell.shown)});
        }
    std::sort(out.begin(), out.end(), [](const auto &a, const auto &b) { return a.text < b.text; });
    for (std::uint32_t s = 0; s < m_workbook.sheets.size(); ++s) {
        const Sheet &other = m_workbook.sheets[s];
        if (s == at.sheet)
            continue;
        if (matches(other.key()))
            out.push_back({Kind::sheet, other.key(), other.title()});
        if (word.size() < 2)
            continue;
        for (const auto &[name, place] : other.names())
            if (matches(name))
                out.push_back(
                    {Kind::name, other.key() + "." + name, labelOf({s, place.first, place.second})});
    }
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
        if (matches(sheet.column(c).key))
            out.push_back({Kind::column, sheet.column(c).key, sheet.column(c).title});
    for (const FunctionInfo &function : m_registry->functions())
        if (matches(function.name))
            out.push_back({Kind::function, function.name, argumentsOf(function)});
    if (inUnit)
        addUnits();
    return out;
}

} // namespace puteal
