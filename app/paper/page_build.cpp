/// Gathers what stands on a page from the session.
#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "paper/page.h"

namespace puteal::paper
{

namespace
{

/// "field_kit" in the file is "field kit" for people.
std::string markForPeople(std::string word)
{
    std::replace(word.begin(), word.end(), '_', ' ');
    return word;
}

PageSheet sheetOf(const Session &session, std::uint32_t s)
{
    const Sheet &sheet = session.workbook().sheets[s];
    PageSheet out{sheet.key(), sheet.title(), {}, {}};
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
        out.columns.push_back(sheet.column(c).title);
    for (std::uint32_t l = 0; l < sheet.lineCount(); ++l) {
        PageLine line;
        line.number = l + 1;
        bool any = false, amounts = false;
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c) {
            const CellAt at{s, c, l};
            const Cell &cell = sheet.cell(c, l);
            const bool amountColumn = sheet.column(c).kind == ColumnKind::amounts;
            if (cell.beside().hide) {
                line.cells.push_back({"hidden", amountColumn});
                continue;
            }
            const CellView view = session.view(at);
            const bool number = view.type.kind == ValueKind::quantity || view.type.kind == ValueKind::date;
            line.cells.push_back({view.error ? "(" + view.shown + ")" : view.shown, amountColumn && number});
            any = any || !view.shown.empty();
            amounts = amounts || (amountColumn && !cell.blank());
            if (view.state != LimitState::noLimit) {
                line.limit = view.state;
                if (view.state != LimitState::within)
                    line.state = view.stateWords;
            }
            if (amountColumn && !cell.blank())
                for (const auto &mark : view.sources)
                    if (line.marks.find(mark) == std::string::npos)
                        line.marks += (line.marks.empty() ? "" : " ") + mark;
        }
        line.lead = any && !amounts;
        if (any)
            out.lines.push_back(std::move(line));
    }
    return out;
}

} // namespace

Page buildPage(const Session &session, PageScope scope)
{
    const Workbook &book = session.workbook();
    Page page;
    page.title = book.title;
    if (scope == PageScope::everything)
        for (std::uint32_t s = 0; s < book.sheets.size(); ++s)
            page.sheets.push_back(sheetOf(session, s));
    else if (!book.sheets.empty())
        page.sheets.push_back(sheetOf(session, static_cast<std::uint32_t>(book.sheets.size()) - 1));

    for (const Chart &chart : book.charts) {
        const ChartView view = session.chart(chart.key);
        for (const auto &sentence : view.crossings)
            page.breakEven.push_back(sentence);
    }
    for (const Finding &finding : session.findings()) {
        using Grade = Finding::Grade;
        if (finding.grade == Grade::caution || finding.grade == Grade::near)
            continue;
        page.attention.push_back(finding.grade == Grade::expectation
                                     ? finding.words
                                     : fmt::format("{}: {}", session.labelOf(finding.at), finding.words));
    }
    std::set<std::string> used;
    for (std::uint32_t s = 0; s < book.sheets.size(); ++s) {
        const Sheet &sheet = book.sheets[s];
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            for (std::uint32_t l = 0; l < sheet.lineCount(); ++l) {
                if (const auto &limit = sheet.cell(c, l).beside().limit; limit && !limit->mark.empty())
                    used.insert(limit->mark);
                if (sheet.cell(c, l).blank() || sheet.column(c).kind != ColumnKind::amounts)
                    continue;
                const auto marks = sheet.effective(c, l).sources;
                used.insert(marks.begin(), marks.end());
                const bool assumed =
                    std::any_of(marks.begin(), marks.end(), [](const MarkId &m) { return m[0] == 'A'; });
                if (assumed)
                    page.assumptions.push_back(fmt::format("{}: {} ({})", session.labelOf({s, c, l}),
                                                           session.view({s, c, l}).shown, sheet.title()));
            }
    }
    for (const SourceMark &source : book.sources)
        if (used.count(source.id))
            page.sources.push_back(
                fmt::format("{}  {}: {}", source.id, markForPeople(source.kind), source.words));
    page.cautions = {
        "This page does not say that the water is safe to drink. Health results outside their limit go to "
        "the health department "
        "or a physician before anything is bought.",
        "Local codes, the health department and licensed trades (well, plumbing, electrical, septic) decide "
        "over this page.",
        "Chemicals: read the label and safety sheet, wear goggles and gloves, never mix chlorine with acid, "
        "ammonia, peroxide, "
        "permanganate or resin cleaner. Pressure and power off before a device is opened.",
    };
    return page;
}

} // namespace puteal::paper
