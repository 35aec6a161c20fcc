/// One reference after the other: renames, deleted things, single indices.
#include "formula/reference_rewriter.h"

#include <algorithm>

#include <fmt/format.h>

#include "formula/filled_run.h"

namespace puteal
{

using Kind = StructuralChange::Kind;

ReferenceRewriter::ReferenceRewriter(const Workbook &before, const StructuralChange &change,
                                     const UnitTable &units)
    : m_before(before), m_change(change), m_map(change), m_takeovers(puteal::takeovers(before, change, units))
{
}

/// Is the change among the run's own lines? Lines put in that join it, lines of it deleted, lines of it
/// moved.
ReferenceRewriter::Job ReferenceRewriter::job(const Tree &tree, const FormulaPlace &place,
                                              Rewritten &result) const
{
    Job job{tree, place, result, {}, false, false, false};
    if (!place.inRun || place.before.sheet != m_change.sheet || !m_map.movesLines())
        return job;
    job.joined = std::any_of(m_takeovers.begin(), m_takeovers.end(), [&](const Takeover &taken) {
        return taken.column == place.before.column && taken.fromLine >= place.runFirst &&
               taken.fromLine <= place.runLast;
    });
    if (m_map.isInsertion())
        job.ownChange = job.joined;
    else
        job.ownChange = m_map.blockFirst() >= place.runFirst && m_map.blockEnd() <= place.runLast + 1;
    if (m_map.isMove() && job.joined) { // lines moved in: all of them must join
        const Sheet &sheet = m_before.sheets[m_change.sheet];
        job.ownChange = true;
        for (std::uint32_t line = m_map.blockFirst(); line < m_map.blockEnd(); ++line)
            job.ownChange = job.ownChange && isFree(sheet.cell(place.before.column, line));
    }
    return job;
}

Rewritten ReferenceRewriter::rewrite(const Tree &tree, const FormulaPlace &place) const
{
    Rewritten result;
    Job work = job(tree, place, result);
    for (const ReferenceText &text : tree.references)
        reference(work, text);
    result.text = apply(work);
    result.changed = !work.edits.empty();
    return result;
}

std::string ReferenceRewriter::takenText(const Tree &tree, const FormulaPlace &place) const
{
    Rewritten result;
    Job work = job(tree, place, result);
    work.asTaken = true;
    for (const ReferenceText &text : tree.references)
        reference(work, text);
    return apply(work);
}

std::string ReferenceRewriter::apply(Job &job) const
{
    std::sort(job.edits.begin(), job.edits.end(),
              [](const TextEdit &a, const TextEdit &b) { return a.span.begin < b.span.begin; });
    std::string text;
    std::uint32_t done = 0;
    for (const TextEdit &edit : job.edits) {
        text.append(job.tree.text, done, edit.span.begin - done);
        text += edit.text;
        done = edit.span.end;
    }
    return text.append(job.tree.text, done);
}

void ReferenceRewriter::reference(Job &job, const ReferenceText &text) const
{
    const auto sheet =
        text.sheet.empty() ? std::optional(job.place.before.sheet) : m_before.sheetByKey(text.sheet);
    if (!sheet || *sheet >= m_before.sheets.size() || *sheet != m_change.sheet)
        return;
    if (m_change.kind == Kind::renameSheet) {
        if (!text.sheet.empty())
            job.edits.push_back({text.sheetSpan, m_change.newWord});
        return;
    }
    if (text.gone)
        return;
    const Sheet &target = m_before.sheets[*sheet];
    const bool isName = !text.indexed && target.named(text.word, *sheet).has_value();
    if (!isName && !target.columnByKey(text.word))
        return;
    switch (m_change.kind) {
    case Kind::renameName:
    case Kind::renameColumn:
        return renamed(job, text, *sheet, isName);
    case Kind::deleteName:
        return isName && text.word == m_change.oldWord ? setGone(job, text) : void();
    case Kind::deleteSheet:
        return text.sheet.empty() ? void() : setGone(job, text);
    case Kind::deleteColumn:
        return deletedColumn(job, text, *sheet);
    default:
        break;
    }
    if (isName)
        return deletedNameLine(job, text, *sheet);
    if (text.first && !text.last)
        single(job, text, *sheet);
    else if (text.first)
        range(job, text, *sheet);
}

void ReferenceRewriter::renamed(Job &job, const ReferenceText &text, std::uint32_t, bool isName) const
{
    if (text.word == m_change.oldWord && isName == (m_change.kind == Kind::renameName))
        job.edits.push_back({text.wordSpan, m_change.newWord});
}

void ReferenceRewriter::deletedColumn(Job &job, const ReferenceText &text, std::uint32_t sheet) const
{
    const Sheet &target = m_before.sheets[sheet];
    const auto cell = text.indexed ? std::nullopt : target.named(text.word, sheet);
    const auto column = cell ? std::optional(cell->column) : target.columnByKey(text.word);
    if (column == m_change.at)
        setGone(job, text);
}

void ReferenceRewriter::deletedNameLine(Job &job, const ReferenceText &text, std::uint32_t sheet) const
{
    const auto cell = m_before.sheets[sheet].named(text.word, sheet);
    if (cell && !m_map.after(cell->line))
        setGone(job, text);
}

void ReferenceRewriter::setGone(Job &job, const ReferenceText &text) const
{
    const Span span = text.bracketSpan.end > text.bracketSpan.begin
                          ? text.bracketSpan
                          : Span{text.wordSpan.end, text.wordSpan.end};
    job.edits.push_back({span, "[gone]"});
    job.result.lostTarget = true;
}

/// Writes an index so that it means `line` (afterwards), signed or not as it was.
void ReferenceRewriter::setIndex(Job &job, const IndexText &index, std::uint32_t line) const
{
    const std::int64_t value =
        index.isSigned ? std::int64_t{line} - std::int64_t{job.place.after.line} : std::int64_t{line} + 1;
    if (value != index.value)
        job.edits.push_back(
            {index.span, index.isSigned ? fmt::format("{:+}", value) : fmt::format("{}", value)});
}

/// The line an index means now; none when it points nowhere.
std::optional<std::uint32_t> ReferenceRewriter::lineOf(const Job &job, const IndexText &index,
                                                       std::uint32_t sheet) const
{
    if (index.isSigned && sheet != job.place.before.sheet)
        return std::nullopt;
    const std::int64_t line =
        index.isSigned ? std::int64_t{job.place.before.line} + index.value : index.value - 1;
    if (line < 0 || line >= std::int64_t{m_before.sheets[sheet].lineCount()})
        return std::nullopt;
    return static_cast<std::uint32_t>(line);
}

void ReferenceRewriter::single(Job &job, const ReferenceText &text, std::uint32_t sheet) const
{
    const auto line = lineOf(job, *text.first, sheet);
    if (!line) // points nowhere: left as typed
        return;
    if (text.first->isSigned && signedIndex(job, text.first->value) == Index::asWritten)
        return;
    if (const auto after = m_map.after(*line))
        setIndex(job, *text.first, *after);
    else
        setGone(job, text);
}

/// May the signed index stand as written although it then means another cell?
ReferenceRewriter::Index ReferenceRewriter::signedIndex(const Job &job, std::int64_t offset) const
{
    if (offset == 0 || job.asTaken)
        return Index::asWritten;
    const FormulaPlace &place = job.place;
    if (!place.inRun)
        return Index::onTarget;
    const std::int64_t target = std::int64_t{place.before.line} + offset;
    const bool ownTarget = target >= place.runFirst && target <= place.runLast;
    return (ownTarget || job.ownChange) && reachesRun(job, offset) ? Index::asWritten : Index::onTarget;
}

/// Would the index as written mean a line of the run, one that joins it, or a cell the run leaned on before
/// with the same index? Nothing else may slip under it.
bool ReferenceRewriter::reachesRun(const Job &job, std::int64_t offset) const
{
    const FormulaPlace &place = job.place;
    const std::uint32_t lines = m_before.sheets[place.before.sheet].lineCount();
    const std::int64_t line = std::int64_t{place.after.line} + offset;
    const std::int64_t leanFirst = std::int64_t{place.runFirst} + offset;
    const std::int64_t leanLast = std::int64_t{place.runLast} + offset;
    if (line < 0)
        return leanFirst < 0;
    if (line >= std::int64_t{m_map.lineCountAfter(lines)})
        return leanLast >= std::int64_t{lines};
    const auto was = m_map.before(static_cast<std::uint32_t>(line));
    if (!was)
        return job.joined;
    if (*was >= place.runFirst && *was <= place.runLast)
        return true;
    if (m_map.isMove() &&
        m_map.inBlock(*was)) // also the cell leaned on, when it is put among the lines of the run
        return job.joined && isFree(m_before.sheets[place.before.sheet].cell(place.before.column, *was));
    return std::int64_t{*was} >= leanFirst && std::int64_t{*was} <= leanLast;
}

// ---- the door
// -----------------------------------------------------------------------------------------------------

Rewritten rewrite(const Tree &tree, const Workbook &before, const FormulaPlace &place,
                  const StructuralChange &change, const UnitTable &units)
{
    return ReferenceRewriter(before, change, units).rewrite(tree, place);
}

Rewritten rewrite(std::string_view text, bool isWordsCell, const Workbook &before, const FormulaPlace &place,
                  const StructuralChange &change, const UnitTable &units)
{
    const auto tree = isWordsCell ? parseWordsCell(text, units) : parseFormula(text, units);
    if (tree && !tree->references.empty())
        return rewrite(*tree, before, place, change, units);
    Rewritten result;
    result.text = std::string(text);
    return result;
}

std::string takenText(const Tree &tree, const Workbook &before, const FormulaPlace &place,
                      const StructuralChange &change, const UnitTable &units)
{
    return ReferenceRewriter(before, change, units).takenText(tree, place);
}

} // namespace puteal
