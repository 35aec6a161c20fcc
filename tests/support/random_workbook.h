/// Random workbooks that a file can hold, for properties: every record and attribute of docs/file_format.md
/// occurs.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "sheet/workbook.h"

namespace puteal::test
{

/// Draws workbooks; `pick(n)` gives a number from 0 to n - 1.
class RandomWorkbook
{
public:
    explicit RandomWorkbook(std::function<unsigned(unsigned)> pick) : m_pick(std::move(pick)) {}

    Workbook draw()
    {
        Workbook book;
        book.formatMajor = 1 + m_pick(2);
        if (one(4))
            book.required = {"studies"};
        if (!one(4))
            book.title = words();
        if (one(2))
            book.uses = {{"softening", 1}, {"cost", 1 + m_pick(3)}};
        if (one(2))
            book.things = {"tank", "barrel"};
        book.below = static_cast<BelowRule>(m_pick(3));
        book.belowSaid = book.below != BelowRule::bound || one(2);
        book.si = one(2);
        book.unitsSaid = book.si || one(2);
        book.lists = {{"verdict", {"works", "marginal", "will not work"}},
                      {"colour", {words(), words() + "2"}}};
        book.sources = {{"L1", "laboratory", words()}, {"S2", "standard", words()}, {"W", "worked", words()}};
        const unsigned sheets = m_pick(4);
        for (unsigned s = 0; s < sheets; ++s)
            book.sheets.push_back(sheet("sheet" + std::to_string(s)));
        for (unsigned c = 0; c < m_pick(3); ++c)
            book.charts.push_back(
                {"chart" + std::to_string(c),
                 static_cast<ChartKind>(m_pick(3)),
                 words(),
                 "costs.year[:]",
                 {{"costs.paid[:]", "", ""}, {"costs.rest[2:9]", words(), one(2) ? "options.good" : ""}}});
        for (const char *before : {"title", "list verdict", "source L1", "chart chart0", "end workbook"})
            if (one(3) && (!book.title.empty() || before != std::string("title")))
                book.kept.push_back({before, kept()});
        if (book.charts.empty())
            for (Kept &record : book.kept)
                if (record.before == "chart chart0")
                    record.before = "end workbook";
        return book;
    }

    std::string words()
    {
        static const std::vector<std::string> some{
            "Raw iron",           "a \"quoted\" word", "back\\slash",     "two\nlines",    "\ttab",
            "100 % # no comment", "µg/L ≤ 3",          " blank in front", "{raw_iron} {{", "x",
            "\u00e9t\u00e9",      "ctrl\x01"};
        return some[m_pick(static_cast<unsigned>(some.size()))];
    }

private:
    bool one(unsigned in) { return m_pick(in) == 0; }
    std::string kept()
    {
        static const std::vector<std::string> some{"", "# a comment", "#", "sticker green",
                                                   "#   spaced  out"};
        return some[m_pick(static_cast<unsigned>(some.size()))];
    }
    std::string amount()
    {
        static const std::vector<std::string> some{"3.20 mg/L as Fe",
                                                   "0",
                                                   "<0.05 mg/L",
                                                   "ND 0.05 mg/L",
                                                   "yes",
                                                   "2026-05-12",
                                                   "$1,250",
                                                   "3/4 in",
                                                   "-5 degC",
                                                   "15 %",
                                                   "\"words\"",
                                                   "raw_iron",
                                                   "iron + 1 mg/L",
                                                   "year[-1] + 1",
                                                   "3 +* (",
                                                   "1,5 mg/L",
                                                   "a # b",
                                                   "costs.cost[2:9] -> gal/day",
                                                   "\"{iron}\"",
                                                   "works",
                                                   "sum(cost[:])",
                                                   "line",
                                                   "end s 3",
                                                   "µ · ≤ 3"};
        return some[m_pick(static_cast<unsigned>(some.size()))];
    }
    LimitText limit()
    {
        LimitText out;
        out.comparison = std::vector<std::string>{"<=", ">=", "<", ">", ".."}[m_pick(5)];
        out.low = std::vector<std::string>{"0.3 mg/L as Fe", "3 L", "hardness * 2", "7.0"}[m_pick(4)];
        if (out.comparison == "..")
            out.high = "9.5 mg/L";
        if (one(2))
            out.near = "20";
        out.health = one(3);
        if (one(2))
            out.mark = "S2";
        if (one(2))
            out.words = words();
        return out;
    }
    Attributes attributes(bool formula)
    {
        Attributes out;
        if (one(3))
            out.sources = one(2) ? std::vector<MarkId>{"L1"} : std::vector<MarkId>{"W", "S2"};
        if (one(4))
            out.figures = 1 + static_cast<int>(m_pick(9));
        else if (one(4))
            out.places = static_cast<int>(m_pick(10));
        if (one(4)) {
            if (one(2))
                out.list = "verdict";
            else
                out.choices = {"ditch", words()};
        } else {
            if (one(3))
                out.unit = "mg/L as Fe";
            if (one(3))
                out.limit = limit();
        }
        if (one(4) && !formula)
            out.ask = words();
        else {
            out.hide = one(4);
            out.lock = one(4);
        }
        if (one(4))
            out.note = words();
        if (one(6))
            out.unknown = {"weather rainy", "# why"};
        return out;
    }
    Cell cell(const std::string &text, Attributes beside)
    {
        Cell out;
        if (!text.empty())
            out.text = std::make_shared<const std::string>(text);
        if (!beside.empty())
            out.attributes = std::make_shared<const Attributes>(std::move(beside));
        return out;
    }
    Sheet sheet(const std::string &key)
    {
        Sheet out(key, words());
        const unsigned columns = 1 + m_pick(4);
        for (unsigned c = 0; c < columns; ++c) {
            Column column;
            column.key = std::vector<std::string>{"a", "at", "line", "cost"}[c];
            column.kind = one(3) ? ColumnKind::words : ColumnKind::amounts;
            column.title = words();
            column.width = 1 + m_pick(40);
            if (one(4))
                column.attributes.figures = 2;
            if (one(5) && column.kind == ColumnKind::amounts)
                column.attributes.list = "verdict";
            out.insertColumn(c, column);
        }
        const unsigned lines = m_pick(12);
        out.insertLines(0, lines);
        for (unsigned c = 0; c < columns; ++c)
            for (unsigned l = 0; l < lines;)
                l = some(out, c, l, lines);
        for (unsigned l = 0; l < lines; ++l) {
            out.line(l).skipped = one(2);
            if (one(5))
                out.line(l).kept = {{"", kept()}, {"", kept()}};
        }
        if (one(3))
            out.expectations = {{"raw_iron", "25 gpg within 1 %"}, {"total", "= odd ="}};
        if (one(3))
            out.keptAtHead = {{"", kept()}, {"a", kept()}};
        if (one(3))
            out.keptAtEnd = {{"=", kept()}};
        return out;
    }
    /// One cell, a blank, or a stretch of equal cells with much the same beside them.
    unsigned some(Sheet &sheet, unsigned c, unsigned l, unsigned lines)
    {
        const bool isWords = sheet.column(c).kind == ColumnKind::words;
        if (one(3))
            return l + 1 + m_pick(3);
        const std::string text = one(5) ? "" : isWords ? words() : amount();
        const unsigned count = one(2) ? 1 : std::min(1 + m_pick(5), lines - l);
        const Attributes common = attributes(true);
        for (unsigned i = 0; i < count; ++i) {
            Attributes beside = one(4) ? attributes(true) : common;
            if (one(6))
                beside.name = "name" + std::to_string(c) + '_' + std::to_string(l + i);
            sheet.setCell(c, l + i, cell(text, beside));
        }
        return l + count;
    }

    std::function<unsigned(unsigned)> m_pick;
};

} // namespace puteal::test
