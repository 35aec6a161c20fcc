/// Writes a workbook in the order of docs/file_format.md.
#include "file/writer.h"

#include <algorithm>
#include <unordered_set>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "file/sheet_writer.h"

namespace puteal
{

namespace
{

class BookWriter
{
public:
    explicit BookWriter(const Workbook &book) : m_book(book), m_placed(book.kept.size(), false) {}
    std::string write();

private:
    void keptFor(const std::string &before);
    void record(const std::string &anchor, const std::string &text)
    {
        keptFor(anchor);
        (m_out += text) += '\n';
    }
    void settings();
    void declarations();
    void undeclared();
    void chart(const Chart &chart);

    const Workbook &m_book;
    std::vector<bool> m_placed;
    std::string m_out;
};

void BookWriter::keptFor(const std::string &before)
{
    for (std::size_t i = 0; i < m_book.kept.size(); ++i)
        if (!m_placed[i] && m_book.kept[i].before == before) {
            (m_out += m_book.kept[i].text) += '\n';
            m_placed[i] = true;
        }
}

void BookWriter::settings()
{
    m_out += fmt::format("puteal workbook {}\n", m_book.formatMajor);
    for (const std::string &word : m_book.required)
        record("!require " + word, "!require " + word);
    if (!m_book.title.empty())
        record("title", "title " + quoted(m_book.title));
    for (const PluginUse &use : m_book.uses)
        record("uses " + use.id, fmt::format("uses {} {}", use.id, use.major));
    for (const std::string &thing : m_book.things)
        record("thing " + thing, "thing " + thing);
    if (m_book.belowSaid || m_book.below != BelowRule::bound)
        record("below", m_book.below == BelowRule::bound  ? "below bound"
                        : m_book.below == BelowRule::half ? "below half"
                                                          : "below zero");
    if (m_book.unitsSaid || m_book.si)
        record("units", m_book.si ? "units SI" : "units US");
}

void BookWriter::declarations()
{
    for (const ChoiceListText &list : m_book.lists) {
        std::string text = "list " + list.name;
        for (const std::string &word : list.words)
            (text += ' ') += quoted(word);
        record("list " + list.name, text);
    }
    for (const SourceMark &source : m_book.sources)
        record("source " + source.id,
               fmt::format("source {} {} {}", source.id, source.kind, quoted(source.words)));
    undeclared();
}

/// A mark that is used but was never declared gets a record, so that the file always opens again.
void BookWriter::undeclared()
{
    std::unordered_set<std::string> known;
    for (const SourceMark &source : m_book.sources)
        known.insert(source.id);
    const Attributes *last = nullptr;
    const auto declare = [&](const MarkId &mark) {
        if (isMarkId(mark) && known.insert(mark).second)
            m_out += fmt::format("source {} {} \"not described yet\"\n", mark, markWord(mark.front()));
    };
    const auto look = [&](const Attributes &beside) {
        for (const MarkId &mark : beside.sources)
            declare(mark);
        if (beside.limit && !beside.limit->mark.empty())
            declare(beside.limit->mark);
    };
    for (const Sheet &sheet : m_book.sheets)
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c) {
            look(sheet.column(c).attributes);
            for (std::uint32_t l = 0; l < sheet.lineCount(); ++l)
                if (const Attributes *beside = sheet.cell(c, l).attributes.get(); beside && beside != last)
                    look(*(last = beside));
        }
}

void BookWriter::chart(const Chart &chart)
{
    const char *kind = chart.kind == ChartKind::lines  ? "lines"
                       : chart.kind == ChartKind::bars ? "bars"
                                                       : "steps";
    record("chart " + chart.key,
           fmt::format("chart {} {} {} x {}", chart.key, kind, quoted(chart.title), cleanTyped(chart.x)));
    for (const Plot &plot : chart.plots) {
        std::string text = "plot " + cleanTyped(plot.reference);
        if (!plot.title.empty())
            (text += ' ') += quoted(plot.title);
        if (!plot.only.empty())
            (text += " only ") += cleanTyped(plot.only);
        record("plot " + chart.key + ' ' + plot.reference, text);
    }
}

std::string BookWriter::write()
{
    std::size_t guess = 0;
    for (const Sheet &sheet : m_book.sheets)
        guess += std::size_t{sheet.lineCount()} * (sheet.columnCount() * std::size_t{18} + 5);
    m_out.reserve(std::min(guess, limits::fileBytes));
    settings();
    declarations();
    const TextJudge judge(m_book.things, m_book.lists);
    for (const Sheet &sheet : m_book.sheets)
        writeSheet(sheet, judge, m_out);
    for (const Chart &each : m_book.charts)
        chart(each);
    for (std::size_t i = 0; i < m_placed.size(); ++i)
        if (!m_placed[i])
            (m_out += m_book.kept[i].text) += '\n';
    m_out += "end workbook\n";
    return std::move(m_out);
}

} // namespace

std::string writeWorkbook(const Workbook &workbook)
{
    return BookWriter(workbook).write();
}

} // namespace puteal
