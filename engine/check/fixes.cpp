/// Trying a fix on the whole formula.
#include "check/fixes.h"

#include <algorithm>

namespace puteal::checking
{

namespace
{

constexpr std::size_t mostFixes = 3;

/// What a bare word may be here, for the parser.
bool isKnownHere(const void *context, std::string_view word)
{
    const auto &check = *static_cast<const CheckContext *>(context);
    if (check.registry && check.registry->find(word))
        return true;
    const Workbook *workbook = check.workbook;
    if (!workbook || check.self.sheet >= workbook->sheets.size())
        return false;
    const Sheet &sheet = workbook->sheets[check.self.sheet];
    return sheet.columnByKey(word).has_value() || sheet.named(word, check.self.sheet).has_value() ||
           workbook->sheetByKey(word).has_value();
}

/// The whole text of a words column is words: it starts without a quote, or the quote is one of its own.
bool isWordsCell(const Tree &tree)
{
    const Node &root = tree.nodes[tree.root];
    return root.kind == NodeKind::words && (tree.text.empty() || tree.text.front() != '"');
}

bool countsPersons(const Draft &draft, const CellAt &at)
{
    const CellType cell = draft.context.types->typeOf(at);
    const QuantityType &type = cell.type.quantity;
    if (cell.failed || cell.type.kind != ValueKind::quantity || !type.dimension.isPure() ||
        !type.substances.empty())
        return false;
    return type.things.items().size() == 1 && type.things.items().front().second == 6 &&
           draft.units().thingWord(type.things.items().front().first) == "person";
}

std::string personsIn(const Draft &draft, std::uint32_t sheetIndex)
{
    std::string best;
    for (const auto &[name, at] : draft.context.workbook->sheets[sheetIndex].names()) {
        const CellAt cell{sheetIndex, at.first, at.second};
        if (cell == draft.context.self || !countsPersons(draft, cell))
            continue;
        if (best.empty() || name == "people" || (best != "people" && name < best))
            best = name;
    }
    return best;
}

} // namespace

bool works(const Draft &draft, const Span &span, const std::string &text)
{
    if (!draft.context.workbook)
        return false;
    std::string changed = draft.tree.text;
    changed.replace(span.begin, span.end - span.begin, text);
    const Result<Tree> tree = isWordsCell(draft.tree)
                                  ? parseWordsCell(changed, draft.units())
                                  : parseFormula(changed, draft.units(), &isKnownHere, &draft.context);
    if (!tree)
        return false;
    const Result<Binding> binding = bind(*tree, *draft.context.workbook, draft.context.self);
    return binding && checkWithoutFixes(*tree, *binding, draft.context).has_value();
}

bool offer(const Draft &draft, Error &error, std::string words, const Span &span, const std::string &text)
{
    if (!draft.offerFixes || error.fixes.size() >= mostFixes || !works(draft, span, text))
        return false;
    error.fixes.push_back(Fix{std::move(words), span, text});
    return true;
}

bool offerAloud(const Draft &draft, Error &error, const std::string &words, const Span &span,
                const std::string &text)
{
    if (!offer(draft, error, words, span, text))
        return false;
    error.words += "; " + words;
    return true;
}

std::string peopleWord(const Draft &draft)
{
    const Workbook *workbook = draft.context.workbook;
    if (!workbook || !draft.offerFixes || draft.context.self.sheet >= workbook->sheets.size())
        return {};
    std::string here = personsIn(draft, draft.context.self.sheet);
    for (std::uint32_t s = 0; here.empty() && s < workbook->sheets.size(); ++s)
        if (std::string there = personsIn(draft, s); !there.empty())
            here = workbook->sheets[s].key() + "." + there;
    return here;
}

} // namespace puteal::checking
