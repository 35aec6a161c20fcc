/// The slip while typing: units row and result row.
#include <algorithm>

#include "check/units_row.h"
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

} // namespace puteal
