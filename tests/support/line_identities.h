/// Lines with identities, and what references mean by them: the oracle of tests of structural changes.
#pragma once

#include <algorithm>
#include <string>
#include <unordered_map>
#include <vector>

#include <QtGlobal>

#include "formula/binder.h"
#include "formula/rewriter.h"

namespace puteal::test
{

using Ids = std::vector<int>;
constexpr int nowhereAbove = -1, nowhereBelow = -2;

inline const UnitTable &units()
{
    static const UnitTable table;
    return table;
}

inline const std::vector<ReferenceText> &referencesIn(const std::string &text)
{
    static std::unordered_map<std::string, std::vector<ReferenceText>> known;
    const auto [entry, isNew] = known.try_emplace(text);
    if (isNew) {
        const auto tree = parseFormula(text, units());
        if (!tree)
            qFatal("%s: %s", text.c_str(), tree.error().words.c_str());
        entry->second = tree->references;
    }
    return entry->second;
}

inline bool holds(const Ids &ids, int id)
{
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

inline int positionOf(const Ids &ids, int id)
{
    const auto found = std::find(ids.begin(), ids.end(), id);
    return found == ids.end() ? -1 : static_cast<int>(found - ids.begin());
}

/// What a reference means, by identities.
struct Meaning {
    bool points = false; ///< to lines that are there
    bool gone = false;
    std::uint32_t sheet = 0, column = 0;
    Ids lines; ///< one for a cell, all for a range
};

/// The identities of all lines, sheet by sheet, and what references mean by them.
struct World {
    std::vector<Ids> lines;

    /// The line an index means from `self`: an identity, or nowhere.
    int at(const IndexText &index, std::uint32_t sheet, int selfId) const
    {
        const Ids &ids = lines[sheet];
        const std::int64_t line = index.isSigned ? positionOf(ids, selfId) + index.value : index.value - 1;
        if (line < 0)
            return nowhereAbove;
        return line >= static_cast<std::int64_t>(ids.size()) ? nowhereBelow
                                                             : ids[static_cast<std::size_t>(line)];
    }

    Meaning meaning(const Workbook &book, const ReferenceText &text, std::uint32_t selfSheet,
                    int selfId) const
    {
        Meaning result;
        result.gone = text.gone;
        result.sheet = text.sheet.empty() ? selfSheet : *book.sheetByKey(text.sheet);
        const Sheet &sheet = book.sheets[result.sheet];
        const Ids &ids = lines[result.sheet];
        if (text.gone)
            return result;
        if (const auto cell = text.indexed ? std::nullopt : sheet.named(text.word, result.sheet)) {
            result.points = true;
            result.column = cell->column;
            result.lines = {ids[cell->line]};
            return result;
        }
        result.column = *sheet.columnByKey(text.word);
        if (!text.indexed || text.whole) {
            result.points = true;
            result.lines = text.whole ? ids : Ids{selfId};
            return result;
        }
        const int first = at(*text.first, result.sheet, selfId);
        const int last = text.last ? at(*text.last, result.sheet, selfId) : first;
        const int from = positionOf(ids, first), to = positionOf(ids, last);
        if (first < 0 || last < 0 || from > to)
            return result;
        result.points = true;
        result.lines.assign(ids.begin() + from, ids.begin() + to + 1);
        return result;
    }
};

/// A change told in identities.
struct Told {
    bool isInsertion = false, isMove = false, isDeletion = false;
    std::uint32_t sheet = 0;
    InsertSide side = InsertSide::above;
    Ids block;                  ///< put in, moved or deleted
    int above = -1, below = -1; ///< the lines at the gap, before
};

/// One formula before the change.
struct Formula {
    std::uint32_t sheet = 0, column = 0;
    int id = 0;
    std::string text;
    Ids run; ///< its filled run; itself when it stands alone
    bool inRun() const { return run.size() > 1; }
};

} // namespace puteal::test
