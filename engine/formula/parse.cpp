/// parseFormula and parseWordsCell: bounds, plain twins, spans back to the typed bytes, tested fixes.
#include <algorithm>

#include <fmt/format.h>

#include "base/limits.h"
#include "base/text.h"
#include "formula/parser.h"
#include "formula/plain_formula.h"
#include "formula/tree.h"

namespace puteal
{

namespace
{

void mapSpans(Tree &tree, const PlainFormula &plain)
{
    const auto map = [&](Span &span) { span = plain.typedSpan(span); };
    for (Node &node : tree.nodes) {
        map(node.span);
        map(node.opSpan);
    }
    for (ReferenceText &reference : tree.references) {
        for (Span *span : {&reference.sheetSpan, &reference.wordSpan, &reference.bracketSpan})
            map(*span);
        for (auto *index : {&reference.first, &reference.last})
            if (*index)
                map((*index)->span);
    }
    for (auto *cautions : {&tree.notes, &tree.hints})
        for (Caution &caution : *cautions)
            if (caution.span)
                map(*caution.span);
}

void mapSpans(Error &error, const PlainFormula &plain)
{
    for (auto *span : {&error.place.span, &error.place.other})
        if (*span)
            **span = plain.typedSpan(**span);
    for (Fix &fix : error.fixes)
        fix.span = plain.typedSpan(fix.span);
}

std::string grouped1000(std::size_t n)
{
    return n < 1000 ? fmt::format("{}", n) : fmt::format("{},{:03}", n / 1000, n % 1000);
}

/// The program's own bounds and bytes that are no text.
std::optional<Error> tooLongOrUnclean(std::string_view text, bool isWordsCell)
{
    const std::size_t bound = isWordsCell ? limits::cellCharacters : limits::formulaCharacters;
    const auto size = static_cast<std::uint32_t>(text.size());
    if (text.size() > bound) {
        const std::size_t count = codePoints(text);
        if (count > bound) {
            std::size_t begin = 0;
            for (std::size_t seen = 0; begin < text.size(); ++begin)
                if ((static_cast<unsigned char>(text[begin]) & 0xC0U) != 0x80U && seen++ == bound)
                    break;
            return Error{ErrorKind::limit,
                         fmt::format("a {} may have {} characters; this one has {}",
                                     isWordsCell ? "cell" : "formula", grouped1000(bound),
                                     grouped1000(count)),
                         {},
                         Place{Span{static_cast<std::uint32_t>(begin), size}, {}, 0}};
        }
    }
    for (std::uint32_t i = 0; i < size; ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        if (c >= 0x80) {
            if (isCleanText(text))
                break;
            return Error{
                ErrorKind::syntax, "the text is damaged: it is not UTF-8", {}, Place{Span{0, size}, {}, 0}};
        }
        if ((c < 0x20 && c != '\t' && c != '\n') || c == 0x7F)
            return Error{ErrorKind::syntax,
                         "a control character has no meaning here",
                         {},
                         Place{Span{i, i + 1}, {}, 0}};
    }
    return std::nullopt;
}

struct Question {
    const UnitTable &units;
    KnownWord isKnownWord;
    const void *context;
    bool isWordsCell;
    bool withSuggestions = true;
};

Result<Tree> parseOnce(std::string_view text, const Question &question)
{
    if (auto error = tooLongOrUnclean(text, question.isWordsCell))
        return tl::unexpected<Error>(std::move(*error));
    const PlainFormula plain(text, question.isWordsCell);
    Parser parser(plain.text(), question.units, question.isKnownWord, question.context);
    parser.withSuggestions = question.withSuggestions;
    if (!(question.isWordsCell ? parser.wordsCell() : parser.formula())) {
        if (!parser.error.place.span)
            parser.error.place.span = Span{0, static_cast<std::uint32_t>(plain.text().size())};
        mapSpans(parser.error, plain);
        return tl::unexpected<Error>(std::move(parser.error));
    }
    if (!plain.same())
        mapSpans(parser.tree, plain);
    parser.tree.text = std::string(text);
    return std::move(parser.tree);
}

/// A fix is offered only if the text it makes parses, or fails behind the mended place for another reason.
bool fixWorks(std::string_view text, const Fix &fix, const Question &question)
{
    if (fix.span.end < fix.span.begin || fix.span.end > text.size())
        return false;
    std::string mended(text.substr(0, fix.span.begin));
    mended += fix.text;
    const std::size_t behind = mended.size();
    mended += text.substr(fix.span.end);
    Question quick = question;
    quick.withSuggestions = false;
    const auto tree = parseOnce(mended, quick);
    return tree || (tree.error().place.span && tree.error().place.span->begin >= behind &&
                    fix.span.end < text.size());
}

Result<Tree> parse(std::string_view text, const Question &question)
{
    auto tree = parseOnce(text, question);
    if (!tree) {
        auto &fixes = tree.error().fixes;
        fixes.erase(std::remove_if(fixes.begin(), fixes.end(),
                                   [&](const Fix &fix) { return !fixWorks(text, fix, question); }),
                    fixes.end());
    }
    return tree;
}

} // namespace

Result<Tree> parseFormula(std::string_view text, const UnitTable &units, KnownWord isKnownWord,
                          const void *context)
{
    return parse(text, {units, isKnownWord, context, false, true});
}

Result<Tree> parseWordsCell(std::string_view text, const UnitTable &units)
{
    return parse(text, {units, nullptr, nullptr, true, true});
}

} // namespace puteal
