/// Small workbooks from texts, and structural changes carried out on them, for tests.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "formula/rewrite_all.h"

namespace puteal::test
{

inline void setText(Sheet &sheet, std::uint32_t column, std::uint32_t line, const std::string &text)
{
    Cell cell = sheet.cell(column, line);
    cell.text = text.empty() ? nullptr : std::make_shared<const std::string>(text);
    sheet.setCell(column, line, std::move(cell));
}

inline void setName(Sheet &sheet, std::uint32_t column, std::uint32_t line, const std::string &name)
{
    Cell cell = sheet.cell(column, line);
    Attributes beside = cell.beside();
    beside.name = name;
    cell.attributes = std::make_shared<const Attributes>(beside);
    sheet.setCell(column, line, std::move(cell));
}

/// An empty sheet with amounts columns of these keys (`item` is a words column).
inline Sheet sheetOf(const std::string &key, const std::vector<std::string> &keys, std::uint32_t lines)
{
    Sheet sheet(key, key);
    for (const std::string &columnKey : keys) {
        Column column;
        column.key = columnKey;
        column.kind = columnKey == "item" ? ColumnKind::words : ColumnKind::amounts;
        sheet.insertColumn(sheet.columnCount(), column);
    }
    sheet.insertLines(0, lines);
    return sheet;
}

/// Does to the workbook what the change says, texts included.
inline RewrittenWorkbook carryOut(Workbook &book, const StructuralChange &change, const UnitTable &units)
{
    using Kind = StructuralChange::Kind;
    const RewrittenWorkbook rewritten = rewriteAll(book, change, units);
    Sheet &sheet = book.sheets[change.sheet];
    switch (change.kind) {
    case Kind::insertLines:
        sheet.insertLines(change.at, change.count);
        break;
    case Kind::deleteLines:
        sheet.deleteLines(change.at, change.count);
        break;
    case Kind::moveLines:
        sheet.moveLines(change.at, change.count, change.to);
        break;
    case Kind::renameName:
    case Kind::deleteName:
        if (const auto at = sheet.named(change.oldWord, change.sheet))
            setName(sheet, at->column, at->line, change.newWord);
        break;
    case Kind::renameColumn:
        sheet.column(*sheet.columnByKey(change.oldWord)).key = change.newWord;
        break;
    case Kind::renameSheet:
        sheet.setKey(change.newWord);
        break;
    case Kind::deleteColumn:
        sheet.deleteColumn(change.at);
        break;
    case Kind::deleteSheet:
        book.sheets.erase(book.sheets.begin() + change.sheet);
        break;
    }
    applyTexts(book, rewritten);
    return rewritten;
}

} // namespace puteal::test
