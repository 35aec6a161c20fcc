/// Edits of what stands beside a cell, and of the workbook's own records: sources, lists, charts,
/// expectations.
#include <algorithm>

#include <fmt/format.h>

#include "session/applier.h"

namespace puteal
{

Result<UndoStep> Applier::make(const SetAttributes &edit)
{
    if (auto there = place(edit.at); !there)
        return tl::unexpected(there.error());
    if (auto good = nameFits(edit.at, edit.attributes.name); !good)
        return tl::unexpected(good.error());
    if (!edit.attributes.unit.empty())
        if (auto unit = readUnit(edit.attributes.unit, state.m_units); !unit)
            return tl::unexpected(unit.error());
    if (!edit.attributes.list.empty() && !state.m_workbook.listByName(edit.attributes.list))
        return fail(ErrorKind::name,
                    fmt::format("there is no list `{}` in this workbook", edit.attributes.list));
    const auto isDeclaredHere = [&](const std::string &mark) {
        return std::any_of(edit.declared.begin(), edit.declared.end(),
                           [&](const SourceMark &source) { return source.id == mark; });
    };
    for (const auto &mark : edit.attributes.sources)
        if (!state.m_workbook.sourceById(mark) && !isDeclaredHere(mark))
            return fail(ErrorKind::name,
                        fmt::format("the source {} is not declared; declare it first", mark));
    Cell cell = *state.m_workbook.cell(edit.at);
    cell.attributes = edit.attributes.empty() ? nullptr : std::make_shared<const Attributes>(edit.attributes);
    if (!edit.declared.empty())
        return declaredWith(edit, std::move(cell));
    UndoStep step;
    step.words = fmt::format("what stands beside line {}", edit.at.line + 1);
    step.focus = edit.at;
    change(step, edit.at, std::move(cell));
    return step;
}

Result<UndoStep> Applier::declaredWith(const SetAttributes &edit, Cell cell)
{
    for (const SourceMark &source : edit.declared) {
        if (auto good = markFits(source); !good)
            return tl::unexpected(good.error());
        if (state.m_workbook.sourceById(source.id))
            return fail(ErrorKind::name, fmt::format("there is a source {} already", source.id));
    }
    UndoStep step = whole(
        fmt::format("source {} at line {}", edit.declared.front().id, edit.at.line + 1), [&](Workbook &book) {
            book.sources.insert(book.sources.end(), edit.declared.begin(), edit.declared.end());
            book.sheets[edit.at.sheet].setCell(edit.at.column, edit.at.line, std::move(cell));
        });
    step.focus = edit.at;
    return step;
}

Result<void> Applier::markFits(const SourceMark &source) const
{
    if (source.id.empty() || markWord(source.id[0]).empty() || markWord(source.id[0]) != source.kind)
        return fail(ErrorKind::name,
                    fmt::format("the source mark {} needs a letter of the list with its word", source.id));
    return {};
}

Result<UndoStep> Applier::make(const SetSources &edit)
{
    for (const SourceMark &source : edit.sources)
        if (auto good = markFits(source); !good)
            return tl::unexpected(good.error());
    return whole("declare sources", [&](Workbook &book) { book.sources = edit.sources; });
}

Result<UndoStep> Applier::make(const SetLists &edit)
{
    return whole("declare lists", [&](Workbook &book) { book.lists = edit.lists; });
}

Result<UndoStep> Applier::make(const SetTitle &edit)
{
    return whole("title of the workbook", [&](Workbook &book) { book.title = edit.title; });
}

Result<UndoStep> Applier::make(const SetCharts &edit)
{
    return whole("charts", [&](Workbook &book) { book.charts = edit.charts; });
}

Result<UndoStep> Applier::make(const SetExpectations &edit)
{
    if (edit.sheet >= state.m_workbook.sheets.size())
        return fail(ErrorKind::range, "there is no such sheet");
    return whole("expectations",
                 [&](Workbook &book) { book.sheets[edit.sheet].expectations = edit.expectations; });
}

} // namespace puteal
