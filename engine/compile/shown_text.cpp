/// A value as words inside a sentence: reasons, refusals, live words.
#include "compile/shown_text.h"

#include <cmath>

#include "units/shown_quantity.h"
#include "units/shown_value.h"

namespace puteal
{

std::string shownForReason(const EvalHost &host, const StaticType &type, const Unit &unit, double number,
                           int figures, int places)
{
    if (std::isnan(number))
        return "no value";
    if (type.kind == ValueKind::quantity)
        return showQuantity(number, type.bound, unit, Rounding{figures, places}).text();
    const bool isWords = type.kind == ValueKind::words;
    return showOther(type, number, isWords ? host.words(static_cast<std::uint32_t>(number)) : std::string(),
                     host.lists(), host.dayInBase());
}

std::string shownPiece(const EvalFrame &frame, NodeIndex node, double number)
{
    const CheckedNode &checked = frame.formula->checked->nodes[node];
    const Node &piece = frame.formula->tree->nodes[node];
    if (piece.kind == NodeKind::reference) {
        const std::uint32_t reference = frame.formula->firstAlike(piece.extra);
        for (const OperandUse use : {OperandUse::plain, OperandUse::byRule})
            if (const int slot = frame.formula->slotOf(reference, use); slot >= 0) {
                const ShownFacts facts = frame.host->shownFacts(frame.operands[slot]);
                return shownForReason(*frame.host, facts.type, facts.unit, number, facts.figures,
                                      facts.places);
            }
    }
    if (piece.kind == NodeKind::number)
        return pieceText(frame, node);
    return shownForReason(*frame.host, checked.type, checked.shown, number);
}

std::string pieceText(const EvalFrame &frame, NodeIndex node)
{
    const Span span = frame.formula->tree->nodes[node].span;
    return frame.formula->tree->text.substr(span.begin, span.end - span.begin);
}

} // namespace puteal
