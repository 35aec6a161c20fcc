/// A formula as a tree with spans: what was typed, before names mean cells.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "units/unit.h"

namespace puteal
{

enum class NodeKind : std::uint8_t {
    number, ///< literal with unit (money too)
    words,  ///< quoted words, perhaps with live parts
    yesNo,
    date,
    pi,
    reference,
    call,
    negate,
    logicalNot,
    binary,
    ternary,
    convert ///< root only: child -> unit
};

enum class Op : std::uint8_t {
    add,
    subtract,
    multiply,
    divide,
    power,
    equal,
    notEqual,
    less,
    atMost,
    greater,
    atLeast,
    logicalAnd,
    logicalOr
};

using NodeIndex = std::uint32_t;

/// An index in brackets: unsigned counts lines from 1; signed is relative to the formula's own line.
struct IndexText {
    bool isSigned = false;
    std::int64_t value = 0;
    Span span;
    friend bool operator==(const IndexText &, const IndexText &) = default;
};

/// A reference as written: [sheet.] word [ [..] ].
struct ReferenceText {
    std::string sheet;                    ///< "" = this sheet
    std::string word;                     ///< name or column key
    bool indexed = false;                 ///< has [index], [a:b] or [:]
    bool whole = false;                   ///< [:]
    bool gone = false;                    ///< [gone]
    std::optional<IndexText> first, last; ///< last only for a range
    Span sheetSpan, wordSpan;
    Span bracketSpan; ///< including the brackets; empty when there are none
};

/// A live part of words: {name}, {name -> unit}, {name, 3 figures}, {name, 2 places}. The expression is a
/// node.
struct LivePart {
    std::string before;  ///< literal words before it (escapes resolved)
    NodeIndex value = 0; ///< reference or convert node
    int figures = 0;     ///< 0 = as the cell shows it
    int places = -1;
};

struct Node {
    NodeKind kind = NodeKind::number;
    Op op = Op::add;
    Span span;           ///< the whole piece, with its own parentheses if it has some
    Span opSpan;         ///< operator, function name, unit after ->
    double number = 0.0; ///< number: in base units; yesNo 0/1; date: days since 1970-01-01 (the checker makes
                         ///< base time of it)
    double typed = 0.0;  ///< number as typed, in `unit`
    std::uint32_t unit =
        0; ///< number, convert: index into Tree::units (0 = the pure number), `as X` already in it
    std::uint32_t extra = 0; ///< words: index into Tree::wordsParts; reference: into Tree::references
    std::string name; ///< call: function; words: tail after the last live part; convert with only "as X": ""
    std::int32_t asSubstance = -1; ///< number, convert: the `as X` that was written, -1 = none
    std::vector<NodeIndex> children;
};

struct Tree {
    std::string text; ///< as typed
    std::vector<Node> nodes;
    NodeIndex root = 0;
    std::vector<Unit> units{Unit{}};
    std::vector<std::vector<LivePart>> wordsParts;
    std::vector<ReferenceText> references;
    std::vector<Caution> notes; ///< from reading: ppm, hints
    std::vector<Caution> hints; ///< while typing only: bare 365, 24 ...
};

/// Parses a formula of an amounts cell, a limit or an option. Errors point at the smallest wrong piece and
/// offer tested fixes (each parses). Cell names matter only to tell `3 mg/iron` from a mistyped unit:
/// `isKnownWord` answers whether a word is a name, key, sheet or function here (may be null).
using KnownWord = bool (*)(const void *context, std::string_view word);
Result<Tree> parseFormula(std::string_view text, const UnitTable &units, KnownWord isKnownWord = nullptr,
                          const void *context = nullptr);

/// Parses the text of a words column (everything is words; {..} live; {{ a brace) into a tree whose root is a
/// words node. A wrong live part is an error with its span.
Result<Tree> parseWordsCell(std::string_view text, const UnitTable &units);

/// Prints a tree back in canonical spacing; parseFormula of it gives the same tree (spans apart).
std::string printFormula(const Tree &tree);
/// The same for a tree of parseWordsCell.
std::string printWordsCell(const Tree &tree);

} // namespace puteal
