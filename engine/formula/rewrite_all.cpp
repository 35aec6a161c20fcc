/// Walks every text of a workbook once; runs and parsed texts are found once, not once a cell.
#include "formula/rewrite_all.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <unordered_map>

#include <fmt/format.h>

#include "formula/filled_run.h"
#include "formula/reference_rewriter.h"

namespace puteal
{

using Kind = StructuralChange::Kind;

namespace
{

class Walk
{
public:
    Walk(const Workbook &before, const StructuralChange &change, const UnitTable &units)
        : m_before(before), m_change(change), m_units(units), m_rewriter(before, change, units)
    {
    }

    RewrittenWorkbook result;
    void sheets();
    void charts();

private:
    void column(std::uint32_t sheet, std::uint32_t column);
    void run(const CellAt &first, std::uint32_t last);
    void beside(const CellAt &at);
    void takenOver(const CellAt &first, std::uint32_t last, const Tree &tree);
    void expectations(std::uint32_t sheet);
    Rewritten text(TextPart part, const std::string &typed, bool isWords, const FormulaPlace &place,
                   std::uint32_t index = 0, std::uint32_t plot = 0);
    const Tree *treeOf(const std::string &typed, bool isWords);
    std::optional<CellAt> after(const CellAt &at) const;
    bool isListedWord(const CellAt &at) const;
    std::string label(const CellAt &at) const;
    void note(const std::string &label, const Rewritten &rewritten);

    const Workbook &m_before;
    const StructuralChange &m_change;
    const UnitTable &m_units;
    ReferenceRewriter m_rewriter;
    std::unordered_map<std::string, std::unique_ptr<Tree>> m_formulas, m_words; ///< null: no reference in it
};

/// A tree with references, or null.
const Tree *Walk::treeOf(const std::string &typed, bool isWords)
{
    if (isWords && typed.find('{') == std::string::npos)
        return nullptr;
    auto &known = isWords ? m_words : m_formulas;
    const auto [entry, isNew] = known.try_emplace(typed);
    if (isNew) {
        auto tree = isWords ? parseWordsCell(typed, m_units) : parseFormula(typed, m_units);
        if (tree && !tree->references.empty())
            entry->second = std::make_unique<Tree>(std::move(*tree));
    }
    return entry->second.get();
}

std::optional<CellAt> Walk::after(const CellAt &at) const
{
    CellAt there = at;
    if (m_change.kind == Kind::deleteSheet) {
        if (at.sheet == m_change.sheet)
            return std::nullopt;
        there.sheet -= at.sheet > m_change.sheet ? 1U : 0U;
    } else if (at.sheet == m_change.sheet && m_change.kind == Kind::deleteColumn) {
        if (at.column == m_change.at)
            return std::nullopt;
        there.column -= at.column > m_change.at ? 1U : 0U;
    } else if (at.sheet == m_change.sheet) {
        const auto line = m_rewriter.lines().after(at.line);
        if (!line)
            return std::nullopt;
        there.line = *line;
    }
    return there;
}

std::string Walk::label(const CellAt &at) const
{
    const Sheet &sheet = m_before.sheets[at.sheet];
    const std::string &name = sheet.cell(at.column, at.line).beside().name;
    const auto standsAt = after(at);
    return name.empty() ? fmt::format("`{}` on line {} of {}", sheet.column(at.column).key,
                                      (standsAt ? standsAt->line : at.line) + 1, sheet.key())
                        : fmt::format("`{}`", name);
}

void Walk::note(const std::string &who, const Rewritten &rewritten)
{
    if (rewritten.lostTarget)
        result.notes.push_back(fmt::format("a reference in {} is gone", who));
    if (rewritten.rangeGained || rewritten.rangeLost)
        result.notes.push_back(fmt::format("{} now {} {} line{}", who,
                                           rewritten.rangeIsSummed ? "adds" : "reads", rewritten.rangeLines,
                                           rewritten.rangeLines == 1 ? "" : "s"));
}

Rewritten Walk::text(TextPart part, const std::string &typed, bool isWords, const FormulaPlace &place,
                     std::uint32_t index, std::uint32_t plot)
{
    const Tree *tree = typed.empty() ? nullptr : treeOf(typed, isWords);
    if (!tree)
        return {};
    Rewritten rewritten = m_rewriter.rewrite(*tree, place);
    if (rewritten.changed)
        result.changes.push_back({part, place.before, place.after, index, plot, typed, rewritten.text});
    return rewritten;
}

void Walk::sheets()
{
    for (std::uint32_t s = 0; s < m_before.sheets.size(); ++s) {
        if (m_change.kind == Kind::deleteSheet && s == m_change.sheet)
            continue;
        for (std::uint32_t c = 0; c < m_before.sheets[s].columnCount(); ++c)
            if (m_change.kind != Kind::deleteColumn || s != m_change.sheet || c != m_change.at)
                column(s, c);
        expectations(s);
    }
}

/// A bare listed word in a cell with choices is a value, although it looks like a name.
bool Walk::isListedWord(const CellAt &at) const
{
    const Sheet &sheet = m_before.sheets[at.sheet];
    const std::string &typed = sheet.cell(at.column, at.line).typed();
    const auto holds = [&](const std::vector<std::string> &words) {
        return std::find(words.begin(), words.end(), typed) != words.end();
    };
    const Attributes &own = sheet.cell(at.column, at.line).beside();
    const Attributes &all = sheet.column(at.column).attributes;
    for (const Attributes *attributes : {&own, &all}) {
        const ChoiceListText *list =
            attributes->list.empty() ? nullptr : m_before.listByName(attributes->list);
        if (holds(attributes->choices) || (list && holds(list->words)))
            return true;
    }
    return false;
}

void Walk::column(std::uint32_t s, std::uint32_t c)
{
    const Sheet &sheet = m_before.sheets[s];
    const bool isWords = sheet.column(c).kind == ColumnKind::words;
    std::uint32_t line = 0;
    while (line < sheet.lineCount()) {
        const Cell &cell = sheet.cell(c, line);
        std::uint32_t last = line;
        if (!cell.blank() && !isWords)
            while (last + 1 < sheet.lineCount() && sheet.cell(c, last + 1).text &&
                   (sheet.cell(c, last + 1).text == cell.text || *sheet.cell(c, last + 1).text == *cell.text))
                ++last;
        if (!cell.blank() && isWords) {
            const CellAt at{s, c, line};
            if (const auto standsAt = after(at))
                note(label(at), text(TextPart::cell, cell.typed(), true, {at, *standsAt, false, 0, 0}));
        } else if (!cell.blank()) {
            run({s, c, line}, last);
        }
        for (std::uint32_t i = line; i <= last; ++i)
            if (sheet.cell(c, i).attributes)
                beside({s, c, i});
        line = last + 1;
    }
}

/// Equal texts first..last of an amounts column: a filled run, or a cell that stands alone.
void Walk::run(const CellAt &first, std::uint32_t last)
{
    const std::string &typed = m_before.sheets[first.sheet].cell(first.column, first.line).typed();
    const Tree *tree = treeOf(typed, false);
    if (!tree)
        return;
    Rewritten all;
    for (CellAt at = first; at.line <= last; ++at.line) {
        const auto standsAt = after(at);
        if (!standsAt || isListedWord(at))
            continue;
        const FormulaPlace place{at, *standsAt, first.line < last, first.line, last};
        const Rewritten rewritten = text(TextPart::cell, typed, false, place);
        if (first.line == last)
            note(label(at), rewritten);
        all.lostTarget = all.lostTarget || rewritten.lostTarget;
    }
    if (first.line < last) // a run is told of once
        note(fmt::format("the formulas of `{}` in {}", m_before.sheets[first.sheet].column(first.column).key,
                         m_before.sheets[first.sheet].key()),
             all);
    takenOver(first, last, *tree);
}

void Walk::takenOver(const CellAt &first, std::uint32_t last, const Tree &tree)
{
    const auto taken =
        std::find_if(m_rewriter.takeovers().begin(), m_rewriter.takeovers().end(), [&](const Takeover &t) {
            return first.sheet == m_change.sheet && t.column == first.column && t.fromLine >= first.line &&
                   t.fromLine <= last;
        });
    if (taken == m_rewriter.takeovers().end() || first.line == last)
        return;
    const CellAt from{first.sheet, first.column, taken->fromLine};
    const auto standsAt = after(from);
    if (!standsAt)
        return;
    const std::string text = m_rewriter.takenText(tree, {from, *standsAt, true, first.line, last});
    const LineMap &map = m_rewriter.lines();
    const Sheet &sheet = m_before.sheets[first.sheet];
    std::uint32_t count = 0;
    for (std::uint32_t i = 0; i < map.count(); ++i) {
        if (map.isMove() && !isFree(sheet.cell(first.column, map.blockFirst() + i)))
            continue;
        result.taken.push_back({{first.sheet, first.column, map.landing() + i}, text});
        ++count;
    }
    if (count > 0)
        result.notes.push_back(
            fmt::format("{} take{} over the formula of `{}` in {}",
                        count == 1 ? std::string("1 line") : fmt::format("{} lines", count),
                        count == 1 ? "s" : "", sheet.column(first.column).key, sheet.key()));
}

void Walk::beside(const CellAt &at)
{
    const auto standsAt = after(at);
    if (!standsAt)
        return;
    const Attributes &attributes = m_before.sheets[at.sheet].cell(at.column, at.line).beside();
    const FormulaPlace place{at, *standsAt, false, 0, 0};
    const auto rewriteOne = [&](TextPart part, const std::string &typed, bool isWords,
                                std::uint32_t index = 0) {
        const Rewritten rewritten = text(part, typed, isWords, place, index);
        if (rewritten.lostTarget)
            result.notes.push_back(fmt::format("a reference beside {} is gone", label(at)));
    };
    if (attributes.limit) {
        rewriteOne(TextPart::limitLow, attributes.limit->low, false);
        rewriteOne(TextPart::limitHigh, attributes.limit->high, false);
        rewriteOne(TextPart::limitWords, attributes.limit->words, true);
    }
    rewriteOne(TextPart::ask, attributes.ask, true);
    rewriteOne(TextPart::note, attributes.note, true);
    for (std::uint32_t i = 0; i < attributes.choices.size(); ++i)
        rewriteOne(TextPart::choice, attributes.choices[i], true, i);
}

/// The words between which an expectation's tail holds formulas: `25 gpg within 1 %`.
constexpr std::string_view within = " within ";

void Walk::expectations(std::uint32_t s)
{
    const auto &all = m_before.sheets[s].expectations;
    const CellAt at{s, 0, 0};
    const auto standsAt = m_change.kind == Kind::deleteSheet ? after(at) : std::optional(at);
    if (!standsAt)
        return;
    const FormulaPlace place{at, *standsAt, false, 0, 0};
    for (std::uint32_t i = 0; i < all.size(); ++i) {
        if (text(TextPart::expectReference, all[i].reference, false, place, i).lostTarget)
            result.notes.push_back(fmt::format("an expectation of {} lost its cell `{}`",
                                               m_before.sheets[s].key(), all[i].reference));
        const std::size_t split = std::min(all[i].tail.find(within), all[i].tail.size());
        const Tree *tree = treeOf(all[i].tail.substr(0, split), false);
        if (!tree)
            continue;
        const Rewritten rewritten = m_rewriter.rewrite(*tree, place);
        if (rewritten.changed)
            result.changes.push_back({TextPart::expectTail, at, *standsAt, i, 0, all[i].tail,
                                      rewritten.text + all[i].tail.substr(split)});
    }
}

/// Charts stand outside the sheets: their references count from the first line of the first sheet.
void Walk::charts()
{
    const FormulaPlace place{};
    for (std::uint32_t i = 0; i < m_before.charts.size(); ++i) {
        const Chart &chart = m_before.charts[i];
        const auto told = [&](const Rewritten &rewritten) {
            note(fmt::format("chart `{}`", chart.key), rewritten);
        };
        told(text(TextPart::chartX, chart.x, false, place, i));
        for (std::uint32_t p = 0; p < chart.plots.size(); ++p) {
            told(text(TextPart::plotReference, chart.plots[p].reference, false, place, i, p));
            told(text(TextPart::plotOnly, chart.plots[p].only, false, place, i, p));
            told(text(TextPart::plotTitle, chart.plots[p].title, true, place, i, p));
        }
    }
}

} // namespace

RewrittenWorkbook rewriteAll(const Workbook &before, const StructuralChange &change, const UnitTable &units)
{
    Walk walk(before, change, units);
    walk.sheets();
    walk.charts();
    return std::move(walk.result);
}

} // namespace puteal
