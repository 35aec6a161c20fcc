/// Pieces of a formula as messages call them.
#include "check/words.h"

#include <fmt/format.h>

#include "base/text.h"

namespace puteal::checking
{

namespace
{

constexpr std::size_t longestPiece = 48;

bool isLiteralPiece(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    if (node.kind == NodeKind::negate)
        return isLiteralPiece(draft, node.children[0]);
    return node.kind == NodeKind::number || node.kind == NodeKind::words || node.kind == NodeKind::yesNo ||
           node.kind == NodeKind::date;
}

} // namespace

std::string source(const Draft &draft, NodeIndex i)
{
    const Span &span = draft.span(i);
    return draft.tree.text.substr(span.begin, span.end - span.begin);
}

std::string brief(const Draft &draft, NodeIndex i)
{
    std::string text = source(draft, i);
    if (codePoints(text) <= longestPiece)
        return text;
    std::size_t cut = longestPiece - 3;
    while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0U) == 0x80U)
        --cut;
    text.resize(cut);
    while (!text.empty() && text.back() == ' ')
        text.pop_back();
    return text + "...";
}

std::string wrapped(const Draft &draft, NodeIndex i)
{
    const Node &node = draft.node(i);
    const bool loose = node.kind == NodeKind::ternary || node.kind == NodeKind::negate ||
                       (node.kind == NodeKind::binary && node.op != Op::power);
    std::string text = source(draft, i);
    return loose && !text.starts_with('(') ? "(" + text + ")" : text;
}

std::string quotedPiece(const Draft &draft, NodeIndex i)
{
    return isLiteralPiece(draft, i) ? brief(draft, i) : "`" + brief(draft, i) + "`";
}

std::string substanceWords(const QuantityType &type)
{
    std::string over, under;
    for (const auto &[id, sixths] : type.substances.items()) {
        std::string &side = sixths > 0 ? over : under;
        side += (side.empty() ? "" : ", ") + UnitTable::substanceWord(id);
    }
    std::string words = "as " + (over.empty() ? under : over);
    return over.empty() || under.empty() ? words : words + " per " + under;
}

std::string unitWords(const Draft &draft, const Unit &unit, const QuantityType &type)
{
    if (unit.text.empty())
        return type.isPure() ? "a pure number" : typeWords(type, draft.units(), draft.context.system);
    const bool toldOf =
        unit.text.find(" as ") != std::string::npos || unit.text.find('{') != std::string::npos;
    if (type.substances.empty() || toldOf)
        return unit.text;
    return unit.text + " " + substanceWords(type);
}

std::string unitOf(const Draft &draft, NodeIndex i)
{
    return unitWords(draft, draft.at(i).shown, draft.quantity(i));
}

std::string kindWords(const StaticType &type)
{
    switch (type.kind) {
    case ValueKind::blank:
        return "blank";
    case ValueKind::quantity:
        return "an amount";
    case ValueKind::yesNo:
        return "yes/no";
    case ValueKind::choice:
        return "a choice";
    case ValueKind::date:
        return "a date";
    case ValueKind::words:
        return "words";
    }
    return {};
}

std::string named(const Draft &draft, NodeIndex i)
{
    const CheckedNode &checked = draft.at(i);
    const std::string piece = quotedPiece(draft, i);
    if (checked.type.kind != ValueKind::quantity)
        return isLiteralPiece(draft, i) ? piece : fmt::format("{} ({})", piece, kindWords(checked.type));
    const std::string unit = unitOf(draft, i);
    if (!isLiteralPiece(draft, i) || checked.shown.text.empty())
        return fmt::format("{} ({})", piece, unit);
    // a unit that says of what by itself, as gpg does, is told
    return unit == checked.shown.text ? piece
                                      : fmt::format("{} ({})", piece, substanceWords(checked.type.quantity));
}

std::string listWords(const Draft &draft, std::uint32_t list)
{
    std::string words;
    for (const std::string &word : draft.context.lists->words(list))
        words += (words.empty() ? "" : ", ") + word;
    return words;
}

std::string cellWords(const Draft &draft, const CellAt &at)
{
    const Workbook *workbook = draft.context.workbook;
    if (!workbook || !workbook->cell(at))
        return "a cell";
    const Sheet &sheet = workbook->sheets[at.sheet];
    const std::string &name = workbook->cell(at)->beside().name;
    const std::string place =
        name.empty() ? fmt::format("{}[{}]", sheet.column(at.column).key, at.line + 1) : name;
    return at.sheet == draft.context.self.sheet ? place : sheet.key() + "." + place;
}

} // namespace puteal::checking
