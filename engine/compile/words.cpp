/// Words of formulas and words cells: live parts put in, a part that fails showing its text and the reason.
#include <fmt/format.h>

#include <cmath>

#include "compile/error_number.h"
#include "compile/frame.h"
#include "compile/shown_text.h"

namespace puteal
{

namespace
{

/// Node of the cell a live part reads, if it reads one alone.
std::uint32_t cellOf(const EvalFrame &frame, NodeIndex n)
{
    const Node &node = frame.formula->tree->nodes[n];
    if (node.kind == NodeKind::convert)
        return cellOf(frame, node.children[0]);
    if (node.kind != NodeKind::reference)
        return noCell;
    const int slot = frame.formula->slotOf(frame.formula->firstAlike(node.extra), OperandUse::plain);
    return slot < 0 ? noCell : frame.operands[slot];
}

std::string failedPart(const EvalFrame &frame, NodeIndex n, double value)
{
    const CheckedNode &checked = frame.formula->checked->nodes[n];
    const std::uint32_t cell = cellOf(frame, n);
    if (checked.error && (cell == noCell || !std::isnan(value)))
        return checked.error->words;
    const std::uint32_t origin = errorOrigin(value);
    if (errorKind(value) == ErrorKind::blank && origin != originHere)
        return fmt::format("`{}` is blank", frame.host->cellWords(origin));
    if (origin != originHere)
        return origin == cell ? fmt::format("`{}` has an error", frame.host->cellWords(origin))
                              : fmt::format("waits for `{}`", frame.host->cellWords(origin));
    return "no value";
}

std::string livePart(const EvalFrame &frame, const LivePart &part)
{
    const CheckedNode &checked = frame.formula->checked->nodes[part.value];
    const std::uint32_t cell = cellOf(frame, part.value);
    double value = errorNumber(ErrorKind::waiting, originHere);
    if (!checked.error || cell != noCell)
        value = cell != noCell ? frame.number[cell] : evaluatePiece(frame, part.value);
    if (std::isnan(value) || checked.error)
        return fmt::format("{{{}}} ({})", pieceText(frame, part.value), failedPart(frame, part.value, value));
    const bool asCell = cell != noCell && frame.formula->tree->nodes[part.value].kind == NodeKind::reference;
    ShownFacts facts{checked.type, checked.shown, 0, -1};
    if (cell != noCell) {
        ShownFacts own = frame.host->shownFacts(cell);
        facts.figures = own.figures;
        facts.places = own.places;
        if (asCell)
            facts = own;
    }
    if (part.figures > 0)
        facts.figures = part.figures, facts.places = -1;
    if (part.places >= 0)
        facts.places = part.places;
    return shownForReason(*frame.host, facts.type, facts.unit, value, facts.figures, facts.places);
}

} // namespace

double evaluateWords(EvalFrame &frame, std::uint32_t words)
{
    if (!frame.formula)
        return errorNumber(ErrorKind::waiting, originHere);
    const Node &node = frame.formula->tree->nodes[frame.formula->words[words]];
    const std::vector<LivePart> &parts = frame.formula->tree->wordsParts[node.extra];
    if (parts.empty())
        return frame.host->intern(node.name);
    std::string text;
    for (const LivePart &part : parts) {
        text += part.before;
        text += livePart(frame, part);
    }
    return frame.host->intern(text + node.name);
}

} // namespace puteal
