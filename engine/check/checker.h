/// Checks a bound tree against units, substances, kinds and signatures; knows static types, never values.
#pragma once

#include <memory>
#include <vector>

#include "formula/binder.h"
#include "functions/registry.h"

namespace puteal
{

/// What the checker may ask of a cell it refers to.
struct CellType {
    StaticType type;     ///< a blank with a set unit or choices: kind blank with quantity / list filled in
    Unit shown;          ///< unit the cell is shown in (typed or set unit, formula's own)
    bool failed = false; ///< it has an error of its own or waits
    bool circular = false;
};

/// Tells the checker the type of every cell the formula refers to. It also asks about other cells when it
/// looks for a fix; one that was not checked yet is best told as blank.
class TypeSource
{
public:
    virtual ~TypeSource() = default;
    virtual CellType typeOf(const CellAt &at) const = 0;
};

/// Where the value of one argument (or default) comes from.
struct ArgumentPlan {
    enum class From : std::uint8_t { node, range, constant };
    From from = From::node;
    NodeIndex node = 0;    ///< node, range: the argument's node
    double constant = 0.0; ///< default, in base units; choice: index in the parameter's list
    std::uint32_t parameter = 0;
};

/// What the checker found for one node; same index as Tree::nodes.
struct CheckedNode {
    StaticType type;
    Unit shown; ///< unit to show this piece in (calculation, units row)
    /// number, pi, date (base units), yesNo, listed word (index); a date moved by a time: one day in base
    /// time; calls of as_caco3, as_element, plain: the factor the argument is multiplied by
    double constant = 0.0;
    bool isConstantChoice = false;          ///< quoted words that became a listed word
    const FunctionInfo *function = nullptr; ///< calls
    /// Calls, in parameter order (repeats: one each). A parameter left out that has no default has no entry.
    /// Where the parameter may be missing, a node that `isBlank` or whose kind is blank is passed on as
    /// missing.
    std::vector<ArgumentPlan> arguments;
    /// A reference to a blank cell whose type is known (set unit, choices). Read as a value it is the
    /// run-time error
    /// "`x` is blank" of this formula; `known`, `state` and parameters that may be missing take it.
    bool isBlank = false;
    /// This piece is known to fail but stands where that does not matter yet (a branch, if_error, known, a
    /// live part of words): emit this error as its value; nothing below it was checked.
    std::shared_ptr<const Error> error;
};

struct Checked {
    StaticType type;
    Unit shown; ///< -> unit, else set unit, else first operand unit of that type, else the default table
    std::vector<CheckedNode> nodes;
    std::vector<Caution> cautions;
    std::vector<std::string> thingsDropped; ///< "per cartridge, one at a time"
};

struct CheckContext {
    const Workbook *workbook = nullptr; ///< names for messages
    const UnitTable *units = nullptr;
    const Registry *registry = nullptr;
    ChoiceLists *lists = nullptr;
    const TypeSource *types = nullptr;
    UnitSystem system = UnitSystem::us;
    CellAt self;
    const Unit *setUnit = nullptr; ///< the result must fit it; null = none
    std::uint32_t choiceList = 0;  ///< the cell's choices: quoted words become choices
    StaticType
        expected; ///< limits: type of the cell the limit belongs to (literals adopt); kind blank = none
};

/// Error words and fixes as in docs/formula.md; every fix was parsed, bound and checked before it is offered.
Result<Checked> check(const Tree &tree, const Binding &binding, const CheckContext &context);

} // namespace puteal
