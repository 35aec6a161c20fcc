/// Looks names, keys, sheets and indices up in the workbook.
#include "formula/binder.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"
#include "units/unit.h"

namespace puteal
{

namespace
{

/// Only messages need units here: a bare unit word where a name was wanted.
const UnitTable &shippedUnits()
{
    static const UnitTable units;
    return units;
}

class Binder
{
public:
    Binder(const Tree &tree, const Workbook &workbook, const CellAt &self, const WordLookup &lookup)
        : m_tree(tree), m_workbook(workbook), m_self(self), m_lookup(lookup)
    {
    }

    Result<BoundReference> reference(const ReferenceText &text) const;

private:
    Result<std::uint32_t> sheetOf(const ReferenceText &text) const;
    Result<BoundReference> bare(const ReferenceText &text, std::uint32_t sheet) const;
    Result<BoundReference> indexed(const ReferenceText &text, std::uint32_t sheet) const;
    Result<std::uint32_t> line(const ReferenceText &text, const IndexText &index, std::uint32_t sheet) const;
    tl::unexpected<Error> unknown(const ReferenceText &text, std::uint32_t sheet) const;
    std::string addressed(const ReferenceText &text, std::uint32_t sheet) const;
    bool mayBeChoice(const ReferenceText &text) const;
    std::vector<std::string> wordsOf(std::uint32_t sheet) const;

    const Tree &m_tree;
    const Workbook &m_workbook;
    const CellAt &m_self;
    const WordLookup &m_lookup;
};

Span whole(const ReferenceText &text)
{
    const bool hasSheet = !text.sheet.empty();
    return {hasSheet ? text.sheetSpan.begin : text.wordSpan.begin,
            std::max(text.wordSpan.end, text.bracketSpan.end)};
}

std::string spelled(const ReferenceText &text)
{
    std::string words = text.sheet.empty() ? text.word : text.sheet + "." + text.word;
    const auto index = [](const IndexText &i) {
        return i.isSigned ? fmt::format("{:+}", i.value) : fmt::format("{}", i.value);
    };
    if (text.gone)
        words += "[gone]";
    else if (text.whole)
        words += "[:]";
    else if (text.first && text.last)
        words += fmt::format("[{}:{}]", index(*text.first), index(*text.last));
    else if (text.first)
        words += fmt::format("[{}]", index(*text.first));
    return words;
}

std::string suggestions(const std::vector<std::string> &words)
{
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "; " : i + 1 == words.size() ? " or " : ", ") + words[i];
    return text.empty() ? text : text + "?";
}

tl::unexpected<Error> withFixes(ErrorKind kind, std::string words, Span span,
                                const std::vector<std::string> &texts)
{
    Error error{kind, std::move(words), {}, Place{span, {}, 0}};
    for (const std::string &text : texts)
        error.fixes.push_back({fmt::format("write {}", text), span, text});
    return tl::unexpected<Error>(std::move(error));
}

Result<std::uint32_t> Binder::sheetOf(const ReferenceText &text) const
{
    if (text.sheet.empty()) {
        if (m_self.sheet < m_workbook.sheets.size())
            return m_self.sheet;
        return fail(ErrorKind::name,
                    fmt::format("`{}`: name the sheet too, as in costs.total", spelled(text)), whole(text));
    }
    if (const auto sheet = m_workbook.sheetByKey(text.sheet))
        return *sheet;
    std::vector<std::string> keys;
    for (const Sheet &sheet : m_workbook.sheets)
        keys.push_back(sheet.key());
    const auto close = closest(text.sheet, keys);
    return withFixes(ErrorKind::name, fmt::format("there is no sheet `{}`{}", text.sheet, suggestions(close)),
                     text.sheetSpan, close);
}

Result<BoundReference> Binder::reference(const ReferenceText &text) const
{
    if (text.gone)
        return fail(ErrorKind::gone,
                    fmt::format("the cell that `{}` named was deleted: choose another", text.word),
                    whole(text));
    const auto sheet = sheetOf(text);
    if (!sheet)
        return tl::unexpected<Error>(sheet.error());
    return text.indexed ? indexed(text, *sheet) : bare(text, *sheet);
}

Result<BoundReference> Binder::bare(const ReferenceText &text, std::uint32_t sheetIndex) const
{
    const Sheet &sheet = m_workbook.sheets[sheetIndex];
    if (const auto cell = sheet.named(text.word, sheetIndex))
        return BoundReference{false, *cell, {}};
    const auto column = sheet.columnByKey(text.word);
    if (!column)
        return unknown(text, sheetIndex);
    if (sheetIndex != m_self.sheet || m_self.line >= sheet.lineCount()) {
        const std::string all = spelled(text) + "[:]";
        return withFixes(
            ErrorKind::range,
            fmt::format(
                "`{}` is a column of another sheet: say which line, as in {}[8], or write {} for all of it",
                spelled(text), spelled(text), all),
            whole(text), {all});
    }
    return BoundReference{false, {sheetIndex, *column, m_self.line}, {}};
}

Result<BoundReference> Binder::indexed(const ReferenceText &text, std::uint32_t sheetIndex) const
{
    const Sheet &sheet = m_workbook.sheets[sheetIndex];
    const auto column = sheet.columnByKey(text.word);
    if (!column) {
        if (!sheet.named(text.word, sheetIndex))
            return unknown(text, sheetIndex);
        const std::string name = text.sheet.empty() ? text.word : text.sheet + "." + text.word;
        return withFixes(ErrorKind::name,
                         fmt::format("`{}` is one cell and takes no line: write {}", name, name), whole(text),
                         {name});
    }
    if (text.whole) {
        if (sheet.lineCount() == 0)
            return fail(ErrorKind::range, fmt::format("sheet `{}` has no line", sheet.key()), whole(text));
        return BoundReference{true, {}, {sheetIndex, *column, 0, sheet.lineCount() - 1}};
    }
    const auto first = line(text, *text.first, sheetIndex);
    if (!first)
        return tl::unexpected<Error>(first.error());
    if (!text.last)
        return BoundReference{false, {sheetIndex, *column, *first}, {}};
    const auto last = line(text, *text.last, sheetIndex);
    if (!last)
        return tl::unexpected<Error>(last.error());
    if (*first > *last) {
        ReferenceText turned = text;
        std::swap(turned.first, turned.last);
        return withFixes(ErrorKind::range,
                         fmt::format("`{}` runs upward here, from line {} to line {}: write {}",
                                     spelled(text), *first + 1, *last + 1, spelled(turned)),
                         whole(text), {spelled(turned)});
    }
    return BoundReference{true, {}, {sheetIndex, *column, *first, *last}};
}

/// The line (from 0) an index means, as seen from the formula's own line.
Result<std::uint32_t> Binder::line(const ReferenceText &text, const IndexText &index,
                                   std::uint32_t sheetIndex) const
{
    const Sheet &sheet = m_workbook.sheets[sheetIndex];
    if (index.isSigned && sheetIndex != m_self.sheet)
        return fail(ErrorKind::range,
                    fmt::format("`{}` counts from a line of another sheet: say which line, or name the cell",
                                spelled(text)),
                    whole(text));
    if (!index.isSigned && index.value == 0)
        return fail(ErrorKind::range, "lines are counted from 1", index.span);
    const std::int64_t at = index.isSigned ? std::int64_t{m_self.line} + index.value : index.value - 1;
    if (at < 0)
        return fail(ErrorKind::range,
                    fmt::format("`{}` points above the first line, seen from line {}", spelled(text),
                                m_self.line + 1),
                    index.span);
    if (at >= sheet.lineCount())
        return fail(ErrorKind::range,
                    index.isSigned ? fmt::format("`{}` points below the last line, seen from line {}",
                                                 spelled(text), m_self.line + 1)
                                   : fmt::format("sheet `{}` has {} lines, so there is no line {}",
                                                 sheet.key(), sheet.lineCount(), index.value),
                    index.span);
    return static_cast<std::uint32_t>(at);
}

std::vector<std::string> Binder::wordsOf(std::uint32_t sheetIndex) const
{
    const Sheet &sheet = m_workbook.sheets[sheetIndex];
    std::vector<std::string> words;
    for (const auto &entry : sheet.names())
        words.push_back(entry.first);
    std::sort(words.begin(), words.end()); // the index has no order; messages need one
    for (std::uint32_t c = 0; c < sheet.columnCount(); ++c)
        words.push_back(sheet.column(c).key);
    return words;
}

/// `a1` where a column is called a: a[1]; empty where nothing is so called.
std::string Binder::addressed(const ReferenceText &text, std::uint32_t sheetIndex) const
{
    const std::size_t digits = text.word.find_first_of("0123456789");
    if (text.indexed || digits == std::string::npos || digits == 0 ||
        text.word.find_first_not_of("0123456789", digits) != std::string::npos)
        return {};
    const std::string key = text.word.substr(0, digits);
    if (!m_workbook.sheets[sheetIndex].columnByKey(key))
        return {};
    return fmt::format("{}{}[{}]", text.sheet.empty() ? "" : text.sheet + ".", key, text.word.substr(digits));
}

/// A listed word is compared, given to a function, or a result; it is no part of a sum.
bool Binder::mayBeChoice(const ReferenceText &text) const
{
    const auto isIt = [&](NodeIndex i) {
        const Node &node = m_tree.nodes[i];
        return node.kind == NodeKind::reference && &m_tree.references[node.extra] == &text;
    };
    if (m_tree.nodes.empty() || isIt(m_tree.root))
        return true;
    for (const Node &node : m_tree.nodes)
        if (std::any_of(node.children.begin(), node.children.end(), isIt))
            return node.kind == NodeKind::call || node.kind == NodeKind::ternary ||
                   (node.kind == NodeKind::binary && (node.op == Op::equal || node.op == Op::notEqual));
    return true;
}

/// No cell, no column: the word may be a unit, a listed word, a cell of another sheet, or mistyped.
tl::unexpected<Error> Binder::unknown(const ReferenceText &text, std::uint32_t sheetIndex) const
{
    const std::string prefix = text.sheet.empty() ? "" : text.sheet + ".";
    std::vector<std::string> fixes;
    if (text.sheet.empty())
        for (std::uint32_t s = 0; s < m_workbook.sheets.size() && fixes.size() < 3; ++s)
            if (s != sheetIndex && m_workbook.sheets[s].named(text.word, s))
                fixes.push_back(m_workbook.sheets[s].key() + "." + text.word);
    // A cell of that very name on another sheet is meant sooner than a word of some list.
    if (const std::string line = addressed(text, sheetIndex); !line.empty())
        return withFixes(ErrorKind::name,
                         fmt::format("no cell or column is called `{}{}`: a line of a column is written {}",
                                     prefix, text.word, line),
                         whole(text), {line});
    if (text.sheet.empty() && !text.indexed && fixes.empty()) {
        const auto listed = [&](const ChoiceListText &list) {
            return std::find(list.words.begin(), list.words.end(), text.word) != list.words.end();
        };
        if (mayBeChoice(text) &&
            (std::any_of(m_workbook.lists.begin(), m_workbook.lists.end(), listed) ||
             (m_lookup.isListedWord && m_lookup.isListedWord(m_lookup.context, text.word))))
            return withFixes(ErrorKind::name,
                             fmt::format("`{}` is a listed word: put it in quotation marks", text.word),
                             text.wordSpan, {quoted(text.word)});
        if (shippedUnits().isUnitWord(text.word) ||
            std::count(m_workbook.things.begin(), m_workbook.things.end(), text.word) > 0)
            return withFixes(ErrorKind::unit, fmt::format("`{}` is a unit and needs a number", text.word),
                             text.wordSpan, {"1 " + text.word});
    }
    if (text.sheet.empty() && !text.indexed && (text.word == "true" || text.word == "false")) {
        const std::string condition = text.word == "true" ? "yes" : "no";
        return withFixes(ErrorKind::name, fmt::format("a condition is yes or no: write {}", condition),
                         text.wordSpan, {condition});
    }
    for (const std::string &word : closest(text.word, wordsOf(sheetIndex)))
        if (fixes.size() < 3)
            fixes.push_back(prefix + word);
    const Span span{text.sheet.empty() ? text.wordSpan.begin : text.sheetSpan.begin, text.wordSpan.end};
    return withFixes(
        ErrorKind::name,
        fmt::format("no cell or column is called `{}{}`{}", prefix, text.word, suggestions(fixes)), span,
        fixes);
}

} // namespace

Result<Binding> bind(const Tree &tree, const Workbook &workbook, const CellAt &self, const WordLookup &lookup)
{
    const Binder binder(tree, workbook, self, lookup);
    Binding binding;
    binding.references.reserve(tree.references.size());
    for (const ReferenceText &text : tree.references) {
        auto bound = binder.reference(text);
        if (!bound)
            return tl::unexpected<Error>(std::move(bound.error()));
        binding.references.push_back(*bound);
    }
    return binding;
}

bool isBareWordIn(const Tree &tree, std::string_view word)
{
    return std::any_of(tree.references.begin(), tree.references.end(), [&](const ReferenceText &reference) {
        return reference.sheet.empty() && reference.word == word && !reference.gone;
    });
}

bool isKnownWordIn(const void *context, std::string_view word)
{
    const auto &known = *static_cast<const KnownWords *>(context);
    if (known.isFunction && known.isFunction(known.functions, word))
        return true;
    if (known.workbook->sheetByKey(word))
        return true;
    if (known.sheet >= known.workbook->sheets.size())
        return false;
    const Sheet &sheet = known.workbook->sheets[known.sheet];
    return sheet.columnByKey(word) || sheet.named(word, known.sheet);
}

} // namespace puteal
