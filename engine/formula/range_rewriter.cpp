/// Ranges in a structural change.
#include <algorithm>

#include "formula/reference_rewriter.h"

namespace puteal
{

/// Where the lines that are put in belong to the range although they stand outside it: at its edge by the
/// command, and between it and a total that touches it.
RangeEdges ReferenceRewriter::edgesOf(const Job &job, const LineRange &range, std::uint32_t sheet,
                                      bool isSigned) const
{
    RangeEdges edges;
    if (m_map.isInsertion()) {
        edges.takesAbove = m_change.side == InsertSide::above;
        edges.takesBelow = m_change.side == InsertSide::below;
    }
    const FormulaPlace &place = job.place;
    if (sheet != place.before.sheet || (m_map.isMove() && m_map.inBlock(place.before.line)))
        return edges;
    // a run of totals over one range touches it as a whole
    const bool asRun = place.inRun && !isSigned;
    const std::uint32_t top = asRun ? place.runFirst : place.before.line;
    const std::uint32_t bottom = asRun ? place.runLast : place.before.line;
    edges.takesBelow = edges.takesBelow || top == range.last + 1;
    edges.takesAbove = edges.takesAbove || bottom + 1 == range.first;
    return edges;
}

void ReferenceRewriter::range(Job &job, const ReferenceText &text, std::uint32_t sheet) const
{
    const auto first = lineOf(job, *text.first, sheet), last = lineOf(job, *text.last, sheet);
    if (!first || !last || *first > *last)
        return brokenRange(job, text, sheet);
    const bool isSigned = text.first->isSigned || text.last->isSigned;
    const LineRange before{*first, *last};
    const bool keepFirst = text.first->isSigned && signedIndex(job, text.first->value) == Index::asWritten;
    const bool keepLast = text.last->isSigned && signedIndex(job, text.last->value) == Index::asWritten;
    LineRange wide = before; // an end shared by the run follows the widest range of the run
    if (job.ownChange && keepLast && !text.first->isSigned)
        wide.last = std::max(wide.last, job.place.runLast + wide.last - job.place.before.line);
    if (job.ownChange && keepFirst && !text.last->isSigned)
        wide.first = std::min(wide.first, job.place.runFirst + wide.first - job.place.before.line);
    wide.last = std::min(wide.last, m_before.sheets[sheet].lineCount() - 1);
    const auto own = rangeAfter(before, m_map, edgesOf(job, before, sheet, isSigned));
    const auto shared = wide == before ? own : rangeAfter(wide, m_map, edgesOf(job, wide, sheet, isSigned));
    const std::int64_t line = job.place.after.line;
    const std::int64_t none = -1;
    const std::int64_t newFirst = keepFirst ? line + text.first->value
                                  : shared  ? std::int64_t{shared->first}
                                            : none;
    const std::int64_t newLast = keepLast ? line + text.last->value
                                 : shared ? std::int64_t{shared->last}
                                          : none;
    const auto lines = std::int64_t{m_map.lineCountAfter(m_before.sheets[sheet].lineCount())};
    const bool windows = keepFirst && keepLast;
    if (windows && (newFirst < 0 || newLast >= lines))
        return; // the edge of a filled window: left as typed
    if (newFirst >= 0 && newFirst <= newLast && newLast < lines) {
        const LineRange after{static_cast<std::uint32_t>(newFirst), static_cast<std::uint32_t>(newLast)};
        if (!keepFirst)
            setIndex(job, *text.first, after.first);
        if (!keepLast)
            setIndex(job, *text.last, after.last);
        return noteRange(job, text, before, after);
    }
    if (job.asTaken)
        return;
    if (!own)
        return setGone(job, text);
    setIndex(job, *text.first, own->first);
    setIndex(job, *text.last, own->last);
    noteRange(job, text, before, *own);
}

/// A range that is reversed or leaves the sheet: what still points to a line follows it, the rest stays as
/// typed.
void ReferenceRewriter::brokenRange(Job &job, const ReferenceText &text, std::uint32_t sheet) const
{
    for (const auto *index : {&*text.first, &*text.last}) {
        const auto line = lineOf(job, *index, sheet);
        if (!line || index->isSigned)
            continue;
        if (const auto after = m_map.after(*line))
            setIndex(job, *index, *after);
    }
}

/// Did the range win or lose lines?
void ReferenceRewriter::noteRange(Job &job, const ReferenceText &text, const LineRange &before,
                                  const LineRange &after) const
{
    const std::uint32_t kept = m_map.kept(before.first, before.last, after.first, after.last);
    const bool gained = kept < after.last - after.first + 1, lost = kept < before.last - before.first + 1;
    if (!gained && !lost)
        return;
    job.result.rangeGained = job.result.rangeGained || gained;
    job.result.rangeLost = job.result.rangeLost || lost;
    job.result.rangeLines = after.last - after.first + 1;
    const auto isThis = [&](NodeIndex i) {
        const Node &node = job.tree.nodes[i];
        return node.kind == NodeKind::reference && &job.tree.references[node.extra] == &text;
    };
    for (const Node &node : job.tree.nodes)
        if (node.kind == NodeKind::call && node.name == "sum" &&
            std::any_of(node.children.begin(), node.children.end(), isThis))
            job.result.rangeIsSummed = true;
}

} // namespace puteal
