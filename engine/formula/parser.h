/// The recursive-descent parser behind parseFormula: works on plain text, builds the tree's arena, stops at
/// the first error.
#pragma once

#include <limits>
#include <string>
#include <string_view>

#include "formula/slips.h"
#include "formula/tree.h"

namespace puteal
{

class Parser : public Slips
{
public:
    Parser(std::string_view plain, const UnitTable &units, KnownWord isKnownWord, const void *context)
        : Slips(plain, units, isKnownWord, context)
    {
    }

    /// Parses the whole text; false leaves `error`. Spans are offsets into the plain text.
    bool formula();
    bool wordsCell();

    bool withSuggestions = true; ///< false: only whether and where it fails is asked, close words cost time
    Tree tree;

private:
    static constexpr NodeIndex none = std::numeric_limits<NodeIndex>::max();

    /// One more level of nesting while it lives.
    class Level
    {
    public:
        Level(Parser &parser, std::size_t at);
        ~Level() { --m_parser.m_depth; }
        Level(const Level &) = delete;
        Level &operator=(const Level &) = delete;

    private:
        Parser &m_parser;
    };

    // parser_expression.cpp
    NodeIndex expression();
    NodeIndex orChain();
    NodeIndex andChain();
    NodeIndex comparison();
    NodeIndex sum();
    NodeIndex term();
    NodeIndex factor();
    NodeIndex power();
    NodeIndex atom();
    NodeIndex group();
    NodeIndex negation();
    NodeIndex notCall(std::size_t begin);
    NodeIndex call(std::size_t begin, std::string_view name);
    NodeIndex exponent(std::size_t baseBegin);
    NodeIndex unitInExponent(std::size_t baseBegin, std::size_t begin, std::size_t end);
    NodeIndex secondPower(NodeIndex base, NodeIndex exponent);
    NodeIndex ternary(NodeIndex condition);
    bool convert();
    bool convertUnit(Node &node);
    Op comparisonAt(std::size_t &length);
    bool fractionBefore(NodeIndex left, NodeIndex right);
    void hintConversion(NodeIndex left, NodeIndex right);

    // parser_literal.cpp
    NodeIndex number();
    NodeIndex money();
    NodeIndex dateLike(std::size_t begin, std::size_t &end);
    bool numberForm(std::size_t begin, std::size_t end);
    bool value(std::size_t begin, std::size_t digits, std::size_t end, double &out);
    bool commaForm(std::size_t begin, std::size_t end);
    bool decimalWithUnit(const std::string &head, std::size_t end, std::size_t stop);
    bool unitAfter(Node &node, std::size_t numberEnd);
    bool wordAfterNumber(const Node &node, std::size_t numberEnd, std::size_t pos);
    bool mixedFraction(const Node &node, std::size_t numberEnd, std::size_t pos);
    bool slashWord(std::size_t pos);
    bool starWord(const Node &node, std::size_t pos);
    bool substanceAfter(Node &node);
    bool noUnit(std::size_t begin, std::size_t end);
    NodeIndex addNumber(Node node, double typed, const Unit &unit);

    // parser_reference.cpp
    NodeIndex reference(std::size_t begin, std::string_view word);
    bool bracket(ReferenceText &reference, std::size_t begin);
    bool index(IndexText &out);
    bool indexIsExpression(std::size_t begin, std::size_t opened);
    bool lowerCase(std::size_t begin, std::string_view word, bool isCall);

    // parser_words.cpp
    NodeIndex quotedWords();
    bool livePart(LivePart &part);
    bool liveFormat(LivePart &part);
    bool escape(std::string &into);

    // parser_errors.cpp
    NodeIndex missingValue();
    bool leftover();
    bool unclosed(std::size_t opened);
    bool unknownCharacter(std::size_t pos);
    NodeIndex singleQuotes();
    NodeIndex exclamation();
    bool tooDeep(std::size_t at);
    bool replaceOperator(std::size_t begin, std::size_t end, std::string_view word);

    NodeIndex add(Node node);
    NodeIndex binary(Op op, Span opSpan, NodeIndex left, NodeIndex right);
    Node &node(NodeIndex i) { return tree.nodes[i]; }

    std::size_t m_depth = 0;
};

} // namespace puteal
