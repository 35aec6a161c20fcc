/// Lines in order without numbers; equal neighboring formulas as one filled run.
#include "file/sheet_writer.h"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "base/text.h"
#include "file/attribute_text.h"

namespace puteal
{

namespace
{

class SheetWriter
{
public:
    SheetWriter(const Sheet &sheet, const TextJudge &judge, std::string &out)
        : m_sheet(sheet), m_judge(judge), m_out(out), m_spans(sheet.columnCount()),
          m_common(sheet.columnCount())
    {
        for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
            m_prefix.push_back(sheet.column(c).key + ": ");
    }
    void write();

private:
    /// Lines of a column that belong together: a run, or equal texts that are none.
    struct Together {
        std::uint32_t begin = 0, end = 0;
        bool run = false;
    };

    void head();
    void lines();
    void block(std::uint32_t l, bool &stops);
    void cell(std::uint32_t c, std::uint32_t l, bool &stops);
    void tail(std::uint32_t c, const std::string &text);
    const Together &together(std::uint32_t c, std::uint32_t l);
    bool isRun(std::uint32_t c, std::uint32_t l, const std::string &text) const;
    void flushSkip();
    void keptFor(const std::vector<Kept> &kept, const std::string &before, std::string &out);
    bool hasColumn(const Kept &kept) const { return m_sheet.columnByKey(kept.before).has_value(); }
    void end();

    const Sheet &m_sheet;
    const TextJudge &m_judge;
    std::string &m_out;
    std::string m_block; ///< records of one line
    std::vector<Together> m_spans;
    std::vector<Attributes> m_common;  ///< of the run a column is in
    std::vector<std::string> m_prefix; ///< "key: "
    std::uint32_t m_skip = 0;
};

void SheetWriter::keptFor(const std::vector<Kept> &kept, const std::string &before, std::string &out)
{
    for (const Kept &record : kept)
        if (record.before == before)
            (out += record.text) += '\n';
}

void SheetWriter::write()
{
    head();
    lines();
    end();
}

void SheetWriter::head()
{
    keptFor(m_sheet.keptAtHead, "", m_out);
    m_out += fmt::format("sheet {} {}\n", m_sheet.key(), quoted(m_sheet.title()));
    for (std::uint32_t c = 0; c < m_sheet.columnCount(); ++c) {
        const Column &column = m_sheet.column(c);
        keptFor(m_sheet.keptAtHead, column.key, m_out);
        m_out += fmt::format("column {} {} {} {}\n", column.key,
                             column.kind == ColumnKind::words ? "words" : "amounts", quoted(column.title),
                             std::clamp(column.width, 1U, 1000U));
        writeAttributes(column.attributes, m_out);
    }
    for (const Kept &record : m_sheet.keptAtHead)
        if (!record.before.empty() && !hasColumn(record))
            (m_out += record.text) += '\n';
}

void SheetWriter::flushSkip()
{
    if (m_skip > 0)
        m_out += fmt::format("skip {}\n", m_skip);
    m_skip = 0;
}

void SheetWriter::lines()
{
    for (std::uint32_t l = 0; l < m_sheet.lineCount(); ++l) {
        const Line &line = m_sheet.line(l);
        m_block.clear();
        bool stops = false;
        block(l, stops);
        const bool record = !m_block.empty();
        if (!line.kept.empty()) {
            flushSkip();
            keptFor(line.kept, "", m_out);
        }
        if (!record && line.skipped) {
            for (const Kept &kept : line.kept) // their record is gone: they belong to what follows
                if (!kept.before.empty())
                    (m_out += kept.text) += '\n';
            ++m_skip;
            continue;
        }
        flushSkip();
        m_out += "line\n";
        m_out += m_block;
        if (!record)
            for (const Kept &kept : line.kept)
                if (!kept.before.empty())
                    (m_out += kept.text) += '\n';
    }
    flushSkip();
}

void SheetWriter::block(std::uint32_t l, bool &stops)
{
    const auto &kept = m_sheet.line(l).kept;
    for (std::uint32_t c = 0; c < m_sheet.columnCount(); ++c)
        cell(c, l, stops);
    if (stops) {
        m_block += "stop";
        for (std::uint32_t c = 0; c < m_sheet.columnCount(); ++c)
            if (m_spans[c].run && m_spans[c].end == l + 1 && !m_sheet.cell(c, l).blank())
                (m_block += ' ') += m_sheet.column(c).key;
        m_block += '\n';
    }
    if (kept.empty() || m_block.empty())
        return;
    // Rare: comments inside a line. Written anew with each in front of its record.
    std::string plain;
    plain.swap(m_block);
    for (std::uint32_t c = 0; c < m_sheet.columnCount(); ++c) {
        keptFor(kept, m_sheet.column(c).key, m_block);
        bool ignored = false;
        cell(c, l, ignored);
    }
    for (const Kept &record : kept)
        if (!record.before.empty() && !hasColumn(record))
            (m_block += record.text) += '\n';
    if (stops)
        m_block += plain.substr(plain.rfind('\n', plain.size() - 2) + 1);
}

const SheetWriter::Together &SheetWriter::together(std::uint32_t c, std::uint32_t l)
{
    Together &span = m_spans[c];
    if (l < span.end && l >= span.begin)
        return span;
    span = Together{l, l + 1, false};
    const std::string &text = *m_sheet.cell(c, l).text;
    const auto goesOn = [&] {
        if (span.end >= m_sheet.lineCount())
            return false;
        const auto &next = m_sheet.cell(c, span.end).text;
        return next && (next.get() == &text || *next == text);
    };
    if (!goesOn()) // nearly every typed cell
        return span;
    while (goesOn())
        ++span.end;
    span.run = isRun(c, l, text);
    if (!span.run)
        return span;
    Attributes &common = m_common[c] = m_sheet.cell(c, l).beside();
    common.name.clear();
    for (std::uint32_t line = l + 1; line < span.end; ++line)
        if (m_sheet.cell(c, line).attributes != m_sheet.cell(c, line - 1).attributes)
            common = shared(common, m_sheet.cell(c, line).beside());
    return span;
}

bool SheetWriter::isRun(std::uint32_t c, std::uint32_t l, const std::string &text) const
{
    if (m_sheet.column(c).kind == ColumnKind::words || !m_judge.refersToCell(text))
        return false;
    const Attributes beside = m_sheet.effective(c, l);
    const bool choice = !beside.list.empty() || !beside.choices.empty();
    return !choice || m_judge.isFormula(text); // a bare listed word is no formula
}

void SheetWriter::tail(std::uint32_t c, const std::string &text)
{
    m_block += m_prefix[c];
    if (isCleanTyped(text))
        m_block += text;
    else
        m_block += cleanTyped(text);
    m_block += '\n';
}

void SheetWriter::cell(std::uint32_t c, std::uint32_t l, bool &stops)
{
    const Cell &cell = m_sheet.cell(c, l);
    const std::string &key = m_sheet.column(c).key;
    const bool isWords = m_sheet.column(c).kind == ColumnKind::words;
    if (cell.blank() || (!isWords && !isCleanTyped(*cell.text) && cleanTyped(*cell.text).empty())) {
        if (cell.attributes && !cell.attributes->empty()) {
            ((m_block += "at ") += key) += '\n';
            writeAttributes(*cell.attributes, m_block);
        }
        return;
    }
    if (isWords) {
        ((m_block += m_prefix[c]) += quoted(*cell.text)) += '\n';
        if (cell.attributes)
            writeAttributes(*cell.attributes, m_block);
        return;
    }
    const Together &span = together(c, l);
    if (!span.run) {
        tail(c, *cell.text);
        if (cell.attributes)
            writeAttributes(*cell.attributes, m_block);
        return;
    }
    if (l == span.begin) {
        m_block += "fill ";
        tail(c, *cell.text);
        writeAttributes(m_common[c], m_block);
    }
    if (cell.attributes) {
        const Attributes own = beyond(*cell.attributes, m_common[c]);
        if (!own.empty()) {
            ((m_block += "at ") += key) += '\n';
            writeAttributes(own, m_block);
        }
    }
    stops = stops || l + 1 == span.end;
}

void SheetWriter::end()
{
    for (const Expectation &expectation : m_sheet.expectations) {
        keptFor(m_sheet.keptAtEnd, "expect " + expectation.reference, m_out);
        m_out +=
            fmt::format("expect {} = {}\n", cleanTyped(expectation.reference), cleanTyped(expectation.tail));
    }
    for (const Kept &record : m_sheet.keptAtEnd) {
        const bool placed =
            std::any_of(m_sheet.expectations.begin(), m_sheet.expectations.end(),
                        [&](const Expectation &e) { return record.before == "expect " + e.reference; });
        if (!placed)
            (m_out += record.text) += '\n';
    }
    m_out += fmt::format("end {} {}\n", m_sheet.key(), m_sheet.lineCount());
}

} // namespace

void writeSheet(const Sheet &sheet, const TextJudge &judge, std::string &out)
{
    SheetWriter(sheet, judge, out).write();
}

} // namespace puteal
