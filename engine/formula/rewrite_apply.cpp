/// Puts rewritten texts into the changed workbook.
#include <memory>

#include "formula/rewrite_all.h"

namespace puteal
{

namespace
{

/// Writes texts into cells; equal texts one after another (a filled run) share one string.
class TextWriter
{
public:
    void write(Workbook &after, const CellAt &at, const std::string &text);

private:
    std::shared_ptr<const std::string> m_last;
};

void TextWriter::write(Workbook &after, const CellAt &at, const std::string &text)
{
    if (!m_last || *m_last != text)
        m_last = std::make_shared<const std::string>(text);
    Sheet &sheet = after.sheets[at.sheet];
    Cell cell = sheet.cell(at.column, at.line);
    cell.text = m_last;
    sheet.setCell(at.column, at.line, std::move(cell));
}

void setBeside(Workbook &after, const TextChange &change)
{
    Sheet &sheet = after.sheets[change.after.sheet];
    Cell cell = sheet.cell(change.after.column, change.after.line);
    Attributes attributes = cell.beside();
    if (change.part == TextPart::ask)
        attributes.ask = change.newText;
    else if (change.part == TextPart::note)
        attributes.note = change.newText;
    else if (change.part == TextPart::choice)
        attributes.choices.at(change.index) = change.newText;
    else if (attributes.limit && change.part == TextPart::limitLow)
        attributes.limit->low = change.newText;
    else if (attributes.limit && change.part == TextPart::limitHigh)
        attributes.limit->high = change.newText;
    else if (attributes.limit)
        attributes.limit->words = change.newText;
    cell.attributes = std::make_shared<const Attributes>(std::move(attributes));
    sheet.setCell(change.after.column, change.after.line, std::move(cell));
}

} // namespace

void applyTexts(Workbook &after, const RewrittenWorkbook &rewritten)
{
    TextWriter writer;
    for (const TextChange &change : rewritten.changes) {
        switch (change.part) {
        case TextPart::cell:
            writer.write(after, change.after, change.newText);
            break;
        case TextPart::expectReference:
            after.sheets[change.after.sheet].expectations[change.index].reference = change.newText;
            break;
        case TextPart::expectTail:
            after.sheets[change.after.sheet].expectations[change.index].tail = change.newText;
            break;
        case TextPart::chartX:
            after.charts[change.index].x = change.newText;
            break;
        case TextPart::plotReference:
            after.charts[change.index].plots[change.plot].reference = change.newText;
            break;
        case TextPart::plotTitle:
            after.charts[change.index].plots[change.plot].title = change.newText;
            break;
        case TextPart::plotOnly:
            after.charts[change.index].plots[change.plot].only = change.newText;
            break;
        default:
            setBeside(after, change);
            break;
        }
    }
    for (const TakenCell &taken : rewritten.taken)
        writer.write(after, taken.after, taken.text);
}

} // namespace puteal
