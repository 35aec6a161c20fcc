/// The data of a program: what was read from each cell, the formulas shared by cells, the graph and its
/// order.
#pragma once

#include <map>
#include <memory>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "compile/compile.h"
#include "recalc/layout.h"
#include "recalc/links.h"
#include "recalc/ordering.h"
#include "recalc/program.h"

namespace puteal
{

/// What a node holds as far as is known without values.
enum class Content : std::uint8_t {
    blank,
    number,  ///< typed quantity, yes/no, choice, date: `typed`
    words,   ///< typed words
    formula, ///< runs `entry`
    state,   ///< a limit's state
    failed   ///< cannot be read, bound or checked, or is circular: `typed` is its error number
};

using TypeId = std::uint32_t;
inline constexpr TypeId blankType = 0, failedType = 1, circularType = 2;

/// Distinct cell types; ids 0 to 2 are fixed.
class TypeTable
{
public:
    TypeTable();
    TypeId intern(const CellType &type);
    const CellType &operator[](TypeId id) const { return *m_types[id]; }

private:
    std::vector<std::shared_ptr<const CellType>> m_types;
    std::unordered_map<std::string, std::vector<TypeId>> m_ids; ///< by shown unit
};

/// A parsed text; 0 of the table is none.
struct ParsedText {
    std::shared_ptr<const Tree> tree;
    std::vector<std::uint32_t> stateReferences; ///< references inside state(...)
};

/// A checked and compiled formula, shared by cells whose references have equal types.
struct Entry {
    std::shared_ptr<const Checked> checked;
    std::shared_ptr<const CompiledFormula> compiled;
    TypeId type = failedType;
};

struct HiddenNode {
    NodeRole role = NodeRole::limitLow;
    CellAt at;
};
struct LimitNodes {
    NodeId low = noNode, high = noNode, state = noNode;
};

/// A set unit and choices, as a cell or its column gives them.
struct CellContext {
    const Unit *setUnit = nullptr;
    std::uint32_t list = 0;
    std::shared_ptr<const Error> error; ///< a unit or list that cannot be read
};

struct KeyHash {
    std::size_t operator()(const std::vector<std::uint32_t> &key) const noexcept
    {
        std::uint64_t h = 0x9E3779B97F4A7C15ULL;
        for (const std::uint32_t k : key)
            h = (h ^ k) * 0xFF51AFD7ED558CCDULL, h ^= h >> 29U;
        return static_cast<std::size_t>(h);
    }
};

struct Model {
    Model(Workbook theBook, UnitTable theUnits) : book(std::move(theBook)), units(std::move(theUnits)) {}

    Workbook book;
    UnitTable units;
    std::shared_ptr<const Registry> registry;
    mutable ChoiceLists lists;
    double day = 86400.0; ///< in base time
    Layout layout;

    // by node
    std::vector<Content> content;
    std::vector<double> typed;
    std::vector<std::uint32_t> tree;  ///< into `texts`, 0 = none
    std::vector<std::uint32_t> entry; ///< into `entries`
    std::vector<Links::Slice> links, operands;
    std::vector<TypeId> types;
    std::vector<std::uint8_t> bounds; ///< Bound of typed and formula values
    std::vector<std::uint8_t> worked; ///< takes part in the order
    std::vector<std::uint32_t> rank;  ///< place in `order.nodes`, noNode = none
    std::size_t boundedCells = 0;

    std::unordered_map<NodeId, Error> errors;               ///< of failed nodes
    std::unordered_map<NodeId, std::string> words;          ///< typed words of amounts cells
    std::unordered_map<NodeId, std::vector<Caution>> notes; ///< from reading typed units
    std::vector<HiddenNode> hidden;                ///< node - layout.cells(); the first is "no limit"
    std::unordered_map<NodeId, LimitNodes> limits; ///< by cell

    // shared
    std::vector<ParsedText> texts{ParsedText{}};
    std::unordered_map<std::string, std::uint32_t> formulaTexts, wordsTexts;
    std::vector<Entry> entries;
    std::unordered_map<std::vector<std::uint32_t>, std::uint32_t, KeyHash> checked;
    TypeTable typeTable;
    mutable std::map<std::string, std::shared_ptr<const Unit>> setUnits;
    mutable std::unordered_map<std::string, std::shared_ptr<const Error>> badUnits;

    // graph
    Links pool; ///< what formulas refer to
    Links operandPool;
    Order order;
    std::vector<std::uint32_t> readerStart; ///< by node, and one more: into `readerRanks`
    std::vector<std::uint32_t> readerRanks; ///< readers of single cells, by rank, ascending for each cell
    RangeIndex ranges;

    std::size_t nodes() const { return content.size(); }
    /// Places in the order of what reads the cell itself (not over a range).
    std::span<const std::uint32_t> readersOf(NodeId node) const
    {
        return {readerRanks.data() + readerStart[node], readerRanks.data() + readerStart[node + 1]};
    }
    NodeId noLimitNode() const { return layout.cells(); }
    bool isCell(NodeId node) const { return node < layout.cells(); }
    CellAt cellOf(NodeId node) const
    {
        return isCell(node) ? layout.cellOf(node) : hidden[node - layout.cells()].at;
    }
    NodeRole roleOf(NodeId node) const
    {
        return isCell(node) ? NodeRole::cell : hidden[node - layout.cells()].role;
    }
    const CellType &typeOf(NodeId node) const { return typeTable[types[node]]; }
    OrderInput orderInput() const { return {&pool, &links, &worked, layout.cells()}; }
};

// cells.cpp: from texts to contents
CellContext contextOf(const Model &model, const CellAt &at);
void readCell(Model &model, NodeId node);
void addLimitNodes(Model &model, NodeId cell);
/// Takes a formula text into a node: parsed, bound, linked; or the error.
void takeFormula(Model &model, NodeId node, const std::string &text, bool isWords);
Result<std::uint32_t> parsedText(Model &model, const std::string &text, bool isWords, std::uint32_t sheet);
/// Items of links for a bound tree.
std::vector<std::uint32_t> linkItems(const Model &model, const ParsedText &text, const Binding &binding);
Result<Binding> bindAt(const Model &model, const Tree &tree, const CellAt &at);
/// The tree of a text as it would stand on a sheet.
Result<Tree> parseText(const Model &model, const std::string &text, bool isWords, std::uint32_t sheet);
/// A typed quantity held against a set unit: adopts its substance and things, or the error.
std::optional<Error> fitSetUnit(const Unit &set, TypedValue &value, const std::string &text);
void setFailed(Model &model, NodeId node, Error error, std::uint32_t origin);

// graph.cpp: order, readers, cycles
void buildGraph(Model &model);
void markCycles(Model &model);

// checking.cpp: types in order
/// Types of ranges met so far, by first node: extended, not begun again. Valid for one pass in order.
struct RangeTypes {
    std::uint32_t done = 0;
    std::vector<TypeId> types;
};
using RangeTypesMemo = std::unordered_map<NodeId, RangeTypes>;
void checkNode(Model &model, NodeId node, RangeTypesMemo &memo);
void checkAll(Model &model);
CheckContext checkContext(const Model &model, const CellAt &at, const TypeSource &types);
/// A function of the formula that does not exist: the nearer error where it also closes a circle.
std::optional<Error> unknownFunction(const Model &model, const Tree &tree, const Binding &binding,
                                     const CheckContext &context);
/// A limit is wanted: it must fit the cell it belongs to.
void expectTypeOf(const Model &model, CheckContext &context);
/// Node of each slot, then first node and count of each range, for a compiled formula at a place.
std::vector<std::uint32_t> operandItems(const Model &model, const CompiledFormula &compiled,
                                        const Binding &binding);

class ModelTypes : public TypeSource
{
public:
    explicit ModelTypes(const Model &model) : m_model(model) {}
    CellType typeOf(const CellAt &at) const override;

private:
    const Model &m_model;
};

// names.cpp: how messages call cells
/// Name, or key and line ("cost[3]"), with the sheet's key where it is another sheet's.
std::string cellWords(const Model &model, NodeId node, std::uint32_t fromSheet);

// build.cpp
Model buildModel(const Workbook &workbook, const UnitTable &units, std::shared_ptr<const Registry> registry);
/// Reads every cell, orders, checks; parsed texts and checked formulas met before are taken over.
void rebuild(Model &model);

} // namespace puteal
