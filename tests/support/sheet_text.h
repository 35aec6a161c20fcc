/// Small workbooks as text for tests of recalculation: one sheet `s` with an item and amounts columns.
#pragma once

#include <string>
#include <vector>

#include "file/reader.h"
#include "functions/registry.h"
#include "recalc/program.h"
#include "units/shown_quantity.h"

namespace puteal::test
{

/// A cell of a test sheet: its text, and attribute records without their indent ("name flow", "limit <= 3").
struct SheetCell {
    std::string text;
    std::vector<std::string> beside{};
};

/// A sheet of one amounts column `x`; cell i stands on line i + 1.
inline std::string sheetText(const std::vector<SheetCell> &cells, const std::string &records = {},
                             const std::string &expectations = {})
{
    std::string text = "puteal workbook 1\ntitle \"test\"\n" + records +
                       "sheet s \"Sheet\"\ncolumn x amounts \"Amount\" 12\n";
    for (const SheetCell &cell : cells) {
        text += "line\n";
        if (cell.text.empty() && cell.beside.empty())
            continue;
        text += cell.text.empty() ? "at x\n" : "x: " + cell.text + "\n";
        for (const std::string &record : cell.beside)
            text += "  " + record + "\n";
    }
    return text + expectations + "end s " + std::to_string(cells.size()) + "\nend workbook\n";
}

/// A workbook, its program and values; cells of column `x` of the first sheet by name or line.
struct Worked {
    const UnitTable &units;
    std::shared_ptr<const Registry> registry;
    Workbook book;
    std::unique_ptr<Program> program;
    Values values;
    std::string problem; ///< the file could not be read

    /// The shipped table and the general functions, made once.
    static const UnitTable &shipped()
    {
        static const UnitTable table;
        return table;
    }
    static std::shared_ptr<const Registry> general()
    {
        static const std::shared_ptr<const Registry> functions = Registry::general(shipped());
        return functions;
    }

    explicit Worked(const std::string &text, std::shared_ptr<const Registry> functions = general(),
                    const UnitTable &table = shipped())
        : units(table), registry(std::move(functions))
    {
        auto read = readWorkbook(text);
        if (!read) {
            problem = read.error().words;
            return;
        }
        book = std::move(*read);
        program = Program::build(book, units, registry);
        values = program->evaluate();
    }

    CellAt at(const std::string &cell) const
    {
        if (const auto named = book.sheets[0].named(cell, 0))
            return *named;
        return {0, book.sheets[0].columnCount() - 1, static_cast<std::uint32_t>(std::stoul(cell)) - 1};
    }
    NodeId node(const std::string &cell) const { return program->nodeOf(at(cell)); }
    double number(const std::string &cell) const { return values.number[node(cell)]; }
    std::string error(const std::string &cell) const
    {
        const auto found = program->errorOf(node(cell), values);
        return found ? found->words : std::string();
    }
    std::string reason(const std::string &cell) const
    {
        return values.words.words(values.reason[node(cell)]);
    }
    std::vector<std::string> cautions(const std::string &cell, bool own = true) const
    {
        std::vector<std::string> words;
        const std::uint32_t set = own ? values.ownCautions[node(cell)] : values.cautions[node(cell)];
        for (const std::uint32_t id : values.pool.members(set))
            words.push_back(values.pool.caution(id).words);
        return words;
    }
    /// Shown with up to six figures; an error as its words.
    std::string shown(const std::string &cell) const
    {
        if (!problem.empty())
            return "file: " + problem;
        if (const std::string words = error(cell); !words.empty())
            return "error: " + words;
        const NodeFacts &facts = program->facts(node(cell));
        const double x = number(cell);
        switch (facts.type.kind) {
        case ValueKind::quantity:
            return showTrimmed(x, facts.type.bound, facts.shown, 6).text();
        case ValueKind::yesNo:
            return x != 0.0 ? "yes" : "no";
        case ValueKind::choice:
            return program->lists().words(facts.type.list).at(static_cast<std::size_t>(x));
        case ValueKind::words:
            return values.words.words(static_cast<std::uint32_t>(x));
        case ValueKind::date:
            return dateText(static_cast<std::int64_t>(x / units.find("day")->factor));
        default:
            return "";
        }
    }
    /// Types into a cell as a session would: the sheet first, then the program.
    Changed type(const std::string &cell, const std::string &text)
    {
        const CellAt where = at(cell);
        Cell changed = book.sheets[where.sheet].cell(where.column, where.line);
        changed.text = text.empty() ? nullptr : std::make_shared<const std::string>(text);
        book.sheets[where.sheet].setCell(where.column, where.line, std::move(changed));
        return program->update(book, {where}, values);
    }
};

} // namespace puteal::test
